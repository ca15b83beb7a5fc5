//! From a sheet to edits: one for each thing stated, in an order in which a feed never comes before its parts.
//!
//! The identity of a record follows from its name in the sheet (UUID version 5, RFC 9562, 5.5), because the draws of a
//! forecast are keyed by it: the same sheet gives the same forecast in every survey made from it.

use std::collections::BTreeSet;

use facts::fact::{Edit, SubjectId};
use house::record::field::{self, Field, FieldValue};
use house::record::{Differs, Feed, FeedFrom, Is, Named, Room};
use uuid::{Uuid, uuid};

use super::draft::{FeedRow, PartRow, RunRow, Sheet, Told};

/// The name space of records told by sheets: a random UUID, made once.
const SHEETS: Uuid = uuid!("6f1d0c52-94c4-4f0e-8a8e-5b2f1f2f7c11");

/// The identity of a record by a name that no other of its kind has.
pub fn id_of(is: Is, name: &str) -> SubjectId {
    SubjectId::from_uuid(Uuid::new_v5(&SHEETS, format!("{} {name}", is.name()).as_bytes()))
}

impl Sheet {
    /// The edits that write this sheet into a new survey.
    pub fn edits(&self, survey: SubjectId) -> Vec<Edit> {
        let mut writer = Writer::default();
        self.write_about(survey, &mut writer);
        for Told { record, notes } in &self.rooms {
            writer.record(Is::Room, record.id, record, notes);
        }
        let ids: Vec<_> = self.parts.iter().map(|part| id_of(Is::Part, &part.tag)).collect();
        for (part, id) in self.parts.iter().zip(&ids) {
            writer.part(*id, part, &self.rooms);
        }
        for (part, id) in self.parts.iter().zip(&ids) {
            writer.feed(*id, part, &ids);
        }
        for Told { record, notes } in &self.services {
            writer.record(Is::Service, record.id, record, notes);
        }
        for Told { record, notes } in &self.readings {
            writer.record(Is::Reading, record.id, record, notes);
        }
        writer.edits
    }

    fn write_about(&self, survey: SubjectId, writer: &mut Writer) {
        let about = &self.about;
        writer.edits.push(Is::Survey.begin(survey));
        writer.state(survey, field::survey::NAME, about.name.as_deref());
        writer.state(survey, field::survey::PLACE, about.place.as_deref());
        writer.state(survey, field::survey::INTERNET, about.internet.as_ref());
        writer.state(survey, field::survey::BUILDING, about.building.as_ref());
        writer.state(survey, field::survey::NETWORK, about.network.as_ref());
        writer.notes(survey, &about.notes);
    }
}

#[derive(Default)]
struct Writer {
    edits: Vec<Edit>,
    /// The measurements written so far.
    measurements: BTreeSet<SubjectId>,
}

impl Writer {
    /// What a sheet tells of a field; nothing where it leaves it out.
    fn state<T: ?Sized + FieldValue>(&mut self, id: SubjectId, field: Field<T>, value: Option<&T>) {
        self.edits.extend(value.map(|value| field.set(id, value)));
    }

    fn record(&mut self, is: Is, id: SubjectId, record: &impl Differs, notes: &[String]) {
        self.edits.push(is.begin(id));
        self.edits.extend(record.stated());
        self.notes(id, notes);
    }

    fn notes(&mut self, about: SubjectId, notes: &[String]) {
        for (number, text) in notes.iter().enumerate() {
            let id = id_of(Is::Note, &format!("{number} {about}"));
            self.edits.extend([
                Is::Note.begin(id),
                field::note::ABOUT.set(id, &about),
                field::note::TEXT.set(id, text),
            ]);
        }
    }

    fn part(&mut self, id: SubjectId, part: &PartRow, rooms: &[Told<Room>]) {
        let room = part.room.and_then(|at| rooms.get(at)).map(|room| room.record.id);
        self.edits.extend([
            Is::Part.begin(id),
            field::part::TAG.set(id, &part.tag),
            field::part::KIND.set(id, &part.kind),
        ]);
        self.state(id, field::part::LABEL, part.label.as_deref());
        self.state(id, field::part::RATING, part.rating.as_ref());
        self.state(id, field::part::WHERE, part.place.as_deref());
        self.state(id, field::part::ROOM, room.as_ref());
        self.state(id, field::part::PLUGGED, part.plugged.as_deref());
        self.state(id, field::part::ADAPTER, part.adapter.as_ref());
        self.state(id, field::part::BEHIND_ADAPTER, part.behind_adapter.as_ref());
        self.state(id, field::part::SHARING, part.sharing.as_ref());
        self.state(id, field::part::DEVICE_FILTER, part.device_filter.as_ref());
        if let Some(measured) = &part.measured {
            self.edits.push(field::part::MEASUREMENT.set(id, &measured.id));
            // Two parts of one make may name one file.
            if self.measurements.insert(measured.id) {
                self.edits.extend(measured.edits.iter().cloned());
            }
        }
        self.state(id, field::part::ENTRY_KIND, part.entry_kind.as_ref());
        self.state(id, field::part::ENTRY_STATE, part.entry_state.as_ref());
        self.edits.extend(part.ends.iter().map(|(port, end)| field::END.set(id, *port, end)));
        self.notes(id, &part.notes);
    }

    fn feed(&mut self, id: SubjectId, part: &PartRow, parts: &[SubjectId]) {
        let feed = match &part.feed {
            None => return,
            Some(FeedRow::Nothing) => Feed::Nothing,
            Some(FeedRow::From { part, port, run }) => {
                let Some(feeder) = parts.get(*part) else { return };
                let run = run.as_ref().map(|run| self.run(run, id));
                Feed::From(FeedFrom { part: *feeder, port: *port, run })
            }
        };
        self.edits.push(field::part::FEED.set(id, &feed));
    }

    fn run(&mut self, run: &RunRow, to: SubjectId) -> SubjectId {
        let id = id_of(Is::Run, &to.to_string());
        self.edits.push(Is::Run.begin(id));
        self.state(id, field::run::TAG, run.tag.as_deref());
        self.state(id, field::run::CABLE, run.cable.as_ref());
        self.state(id, field::run::LENGTH, run.length.as_ref());
        self.state(id, field::run::CONNECTOR_NEAR, run.near.as_ref());
        self.state(id, field::run::CONNECTOR_FAR, run.far.as_ref());
        id
    }
}

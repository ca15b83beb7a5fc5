//! From a sheet to edits: one for each thing stated, in an order in which a feed never comes before its parts.
//!
//! The identity of a record follows from its name in the sheet (UUID version 5, RFC 9562, 5.5), because the draws of a
//! forecast are keyed by it: the same sheet gives the same forecast in every survey made from it.

use std::collections::BTreeSet;

use facts::fact::{Edit, SubjectId};
use house::record::field::{self, end_field};
use house::record::{Feed, FeedFrom, PowerFeed};
use serde::Serialize;
use serde_json::Value;
use uuid::{Uuid, uuid};

use super::draft::{FeedRow, PartRow, RunRow, ServiceRow, Sheet};

/// The name space of records told by sheets: a random UUID, made once.
const SHEETS: Uuid = uuid!("6f1d0c52-94c4-4f0e-8a8e-5b2f1f2f7c11");

impl Sheet {
    /// The edits that write this sheet into a new survey.
    pub fn edits(&self, survey: SubjectId) -> Vec<Edit> {
        let mut writer = Writer::default();
        self.write_about(survey, &mut writer);
        let rooms: Vec<_> = self
            .rooms
            .iter()
            .map(|room| {
                let id = writer.record("room", &room.name);
                writer.state(id, field::NAME, &room.name);
                writer.state_if(id, field::WISH, room.wish.as_ref());
                writer.notes(id, &room.notes);
                id
            })
            .collect();
        let parts: Vec<_> = self
            .parts
            .iter()
            .map(|part| {
                let id = writer.record("part", &part.tag);
                writer.part(id, part, &rooms);
                id
            })
            .collect();
        for (part, id) in self.parts.iter().zip(&parts) {
            writer.feed(*id, part, &parts);
        }
        for (room, id) in self.rooms.iter().zip(&rooms) {
            writer.state_if(*id, field::SERVED_FROM, room.served_from.and_then(|at| parts.get(at)));
        }
        for (number, service) in self.services.iter().enumerate() {
            let id = writer.record("service", &number.to_string());
            writer.service(id, service, &parts);
        }
        for (number, reading) in self.readings.iter().enumerate() {
            let id = writer.record("reading", &number.to_string());
            writer.state_if(id, field::ABOUT, reading.at.and_then(|at| parts.get(at)));
            writer.state(id, field::MEASURED, reading.measured);
            writer.state_if(id, field::HOW, reading.how.as_ref());
            writer.notes(id, &reading.notes);
        }
        writer.edits
    }

    fn write_about(&self, survey: SubjectId, writer: &mut Writer) {
        let about = &self.about;
        writer.state(survey, field::IS, "survey");
        writer.state_if(survey, field::NAME, about.name.as_ref());
        writer.state_if(survey, field::PLACE, about.place.as_ref());
        writer.state_if(survey, field::INTERNET, about.internet.as_ref());
        writer.state_if(survey, field::BUILDING, about.building.as_ref());
        writer.state_if(survey, field::NETWORK, about.network.as_ref());
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
    /// A new record of this kind, by a name that no other of its kind has.
    fn record(&mut self, is: &str, name: &str) -> SubjectId {
        let id = SubjectId::from_uuid(Uuid::new_v5(&SHEETS, format!("{is} {name}").as_bytes()));
        self.state(id, field::IS, is);
        id
    }

    fn state(&mut self, id: SubjectId, field: &str, value: impl Serialize) {
        // Every value here is plain data that JSON can hold.
        let value = serde_json::to_value(value).unwrap_or(Value::Null);
        self.edits.push(Edit::new(id, field, value));
    }

    fn state_if(&mut self, id: SubjectId, field: &str, value: Option<&(impl Serialize + ?Sized)>) {
        if let Some(value) = value {
            self.state(id, field, value);
        }
    }

    fn notes(&mut self, about: SubjectId, notes: &[String]) {
        for (number, text) in notes.iter().enumerate() {
            let id = self.record("note", &format!("{number} {about}"));
            self.state(id, field::ABOUT, about);
            self.state(id, field::TEXT, text);
        }
    }

    fn part(&mut self, id: SubjectId, part: &PartRow, rooms: &[SubjectId]) {
        self.state(id, field::TAG, &part.tag);
        self.state(id, field::KIND, part.kind);
        self.state_if(id, field::LABEL, part.label.as_ref());
        self.state_if(id, field::RATING, part.rating.as_ref());
        self.state_if(id, field::WHERE, part.place.as_ref());
        self.state_if(id, field::ROOM, part.room.and_then(|at| rooms.get(at)));
        self.state_if(id, field::PLUGGED, part.plugged.as_ref());
        self.state_if(id, field::ADAPTER, part.adapter.as_ref());
        self.state_if(id, field::SHARING, part.sharing.as_ref());
        self.state_if(id, field::DEVICE_FILTER, part.device_filter.as_ref());
        if let Some(measured) = &part.measured {
            self.state(id, field::MEASUREMENT, measured.id);
            // Two parts of one make may name one file.
            if self.measurements.insert(measured.id) {
                self.edits.extend(measured.edits.iter().cloned());
            }
        }
        self.state_if(id, field::ENTRY_KIND, part.entry_kind.as_ref());
        self.state_if(id, field::ENTRY_STATE, part.entry_state.as_ref());
        for (port, end) in &part.ends {
            self.state(id, &end_field(*port), end);
        }
        self.notes(id, &part.notes);
    }

    fn service(&mut self, id: SubjectId, service: &ServiceRow, parts: &[SubjectId]) {
        let part = |at: usize| parts.get(at).copied();
        let power = service.power.and_then(|(from, to)| Some(PowerFeed { from: part(from)?, to: part(to)? }));
        self.state(id, field::KIND, service.kind);
        self.state_if(id, field::TOP, service.top_mhz.as_ref());
        self.state_if(id, field::ENTRY, service.entry.and_then(part).as_ref());
        self.state_if(id, field::SIGNAL, service.signal.as_ref());
        self.state_if(id, field::MODEM, service.modem.as_ref());
        self.state_if(id, field::SINGLE_CABLE, service.single_cable.as_ref());
        self.state_if(id, field::OTHER_NETWORK, service.network.as_ref());
        self.state_if(id, field::POWER, power.as_ref());
        self.notes(id, &service.notes);
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
        self.state(id, field::FEED, feed);
    }

    fn run(&mut self, run: &RunRow, to: SubjectId) -> SubjectId {
        let id = self.record("run", &to.to_string());
        self.state_if(id, field::TAG, run.tag.as_ref());
        self.state_if(id, field::CABLE, run.cable.as_ref());
        self.state_if(id, field::LENGTH, run.length.as_ref());
        self.state_if(id, field::CONNECTOR_NEAR, run.near.as_ref());
        self.state_if(id, field::CONNECTOR_FAR, run.far.as_ref());
        id
    }
}

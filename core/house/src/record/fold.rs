//! From facts to typed records.
//!
//! A value that this version cannot read is listed in [`Survey::unread`], one that cannot be in [`Survey::impossible`], and
//! both are otherwise ignored: nothing is ever shown as something it is not, and nothing is thrown away.

use std::collections::{BTreeMap, BTreeSet};

use facts::fact::reserved::MOST_PARTS;
use facts::fact::{Fact, FactId, Ledger, Removal, SubjectId, SurveyId};
use facts::{FactsError, Result};
use serde::de::DeserializeOwned;

use super::field::{self, Field, FieldValue};
use super::measurement::{MOST_MEASUREMENT_BYTES, put_together};
use super::member::Member;
use super::possible::can_be;
use super::table::every_field;
use super::{
    Asked, Before, Is, Note, Part, PartKind, Photo, PortEnd, Reading, Room, Run, Service, Survey, Wiring,
    Work,
};
use crate::rating::PartRating;

/// Folds the shown facts of a ledger into records.
///
/// # Errors
/// [`FactsError::TooManyParts`] above [`MOST_PARTS`].
pub fn fold(ledger: &Ledger, survey: SurveyId) -> Result<Survey> {
    let mut reader = Reader::new(ledger, survey.subject(), None);
    reader.read_survey();
    for subject in ledger.subjects() {
        if matches!(ledger.removal(subject), Removal::Removed { .. }) {
            continue;
        }
        reader.read_asked(subject);
        match reader.value::<Is>(subject, field::IS) {
            Some(Is::Part) => reader.read_part(subject),
            Some(Is::Run) => reader.read_run(subject),
            Some(Is::Room) => reader.read_room(subject),
            Some(Is::Service) => reader.read_service(subject),
            Some(Is::Reading) => reader.read_reading(subject),
            Some(Is::Note) => reader.read_note(subject),
            Some(Is::Measurement) => reader.read_measurement(subject),
            Some(Is::Photo) => reader.read_photo(subject),
            Some(Is::Work) => reader.read_work(subject),
            Some(Is::Survey) | None => {}
        }
    }
    reader.find_measurements();
    reader.find_done_since();
    let Reader { mut survey, mut feeds, .. } = reader;
    if survey.parts.len() > MOST_PARTS {
        return Err(FactsError::TooManyParts { found: survey.parts.len(), most: MOST_PARTS });
    }
    feeds.sort_unstable();
    let stated: Vec<_> = feeds.into_iter().map(|(_, part)| part).collect();
    survey.wiring = Wiring::replay(&survey.parts, &stated);
    survey.rewire();
    Ok(survey)
}

/// A record that takes its members from the facts about it.
trait Folded {
    fn take_fields(&mut self, reader: &mut Reader<'_>);
}

macro_rules! folded {
    ($($record:ident $Record:ident {
        $($(#[$about:meta])+ $NAME:ident $name:literal: $value:ty
            $(=> $member:ident $(if $only:ident)?)?;)+
    })+) => {
        $(impl Folded for $Record {
            fn take_fields(&mut self, reader: &mut Reader<'_>) {
                $($(
                    if let Some(value) = reader.field(self.id, field::$record::$NAME) {
                        Member::<$value>::put(&mut self.$member, value);
                    }
                )?)+
            }
        })+
    };
}

every_field!(folded);

struct Reader<'a> {
    ledger: &'a Ledger,
    survey: Survey,
    feeds: Vec<(FactId, SubjectId)>,
    /// Only what was said before this fact counts.
    before: Option<FactId>,
}

impl<'a> Reader<'a> {
    fn new(ledger: &'a Ledger, survey: SubjectId, before: Option<FactId>) -> Self {
        Self { ledger, survey: Survey::new(survey), feeds: Vec::new(), before }
    }

    /// The shown value of a field, typed; `None` if there is none or it is `null` or cannot be read.
    fn field<T: ?Sized + FieldValue>(&mut self, subject: SubjectId, field: Field<T>) -> Option<T::Owned> {
        self.value(subject, field.name())
    }

    /// The same by a field's name.
    fn value<T: DeserializeOwned>(&mut self, subject: SubjectId, field: &str) -> Option<T> {
        let fact = match self.before {
            None => self.ledger.shown(subject, field)?,
            Some(before) => {
                let said = self.ledger.history(subject, field);
                said.into_iter().rfind(|fact| fact.id() < before && !fact.is_forgotten())?
            }
        };
        if fact.value().is_null() {
            return None;
        }
        let read = T::deserialize(fact.value()).ok();
        if read.is_none() {
            self.survey.unread.push((subject, field.into()));
        } else if !can_be(field, fact.value()) {
            self.survey.impossible.push((subject, field.into()));
            return None;
        }
        read
    }

    fn read_survey(&mut self) {
        let id = self.survey.id;
        let mut survey = std::mem::replace(&mut self.survey, Survey::new(id));
        self.fields(&mut survey);
        survey.unread.append(&mut self.survey.unread);
        survey.impossible.append(&mut self.survey.impossible);
        self.survey = survey;
    }

    /// Reads the fields of a record.
    fn fields<T: Folded>(&mut self, record: &mut T) {
        record.take_fields(self);
    }

    fn read_part(&mut self, id: SubjectId) {
        let mut part = Part::new(id, PartKind::Unknown);
        self.fields(&mut part);
        if let Some(reading) = part.read_print() {
            part.rating = std::mem::take(&mut part.rating).or(PartRating::of_reading(&reading));
        }
        for name in self.ledger.fields(id).map(str::to_owned).collect::<Vec<_>>() {
            if let Some(port) = field::END.number(&name)
                && let Some(end) = self.value::<PortEnd>(id, &name)
            {
                part.ends.insert(port, end);
            }
        }
        if let Some(fact) = self.ledger.shown(id, field::FEED) {
            self.feeds.push((fact.id(), id));
        }
        self.survey.parts.insert(id, part);
    }

    fn read_run(&mut self, id: SubjectId) {
        let mut run = Run::new(id);
        self.fields(&mut run);
        self.survey.runs.insert(id, run);
    }

    fn read_room(&mut self, id: SubjectId) {
        let mut room = Room { id, name: String::new(), wish: None, served_from: None };
        self.fields(&mut room);
        self.survey.rooms.insert(id, room);
    }

    fn read_service(&mut self, id: SubjectId) {
        if let Some(kind) = self.field(id, field::service::KIND) {
            let mut service = Service::new(id, kind);
            self.fields(&mut service);
            self.survey.services.insert(id, service);
        }
    }

    fn read_reading(&mut self, id: SubjectId) {
        if let Some(measured) = self.field(id, field::reading::MEASURED) {
            let mut reading = Reading { id, about: None, port: None, measured, how: None };
            self.fields(&mut reading);
            self.survey.readings.insert(id, reading);
        }
    }

    fn read_note(&mut self, id: SubjectId) {
        if let Some(text) = self.field(id, field::note::TEXT) {
            let mut note = Note { id, about: None, text };
            self.fields(&mut note);
            self.survey.notes.insert(id, note);
        }
    }

    fn read_work(&mut self, id: SubjectId) {
        let change = self.field(id, field::work::CHANGE);
        if let (Some(change), Some(outcome)) = (change, self.field(id, field::work::OUTCOME)) {
            let before = self.before(id);
            self.survey.works.insert(id, Work { id, change, outcome, before });
        }
    }

    /// Ids of facts carry time: work stands in the order in which it was done, and a reading whose figure was written before
    /// a piece of work was taken before it.
    fn find_done_since(&mut self) {
        let made = |work: &SubjectId| Some(self.ledger.history(*work, field::CHANGE).first()?.id());
        self.survey.works.sort_by_cached_key(|work, _| made(work));
        let done: Vec<_> = self.survey.works.keys().filter_map(|work| Some((made(work)?, *work))).collect();
        for reading in self.survey.readings.keys().copied() {
            let Some(read) = self.ledger.shown(reading, field::reading::MEASURED.name()) else { continue };
            let later: Vec<_> =
                done.iter().filter(|(made, _)| *made > read.id()).map(|(_, work)| *work).collect();
            if !later.is_empty() {
                self.survey.done_since.insert(reading, later);
            }
        }
    }

    /// What a piece of work wrote anew or took out, as it was before it.
    fn before(&self, work: SubjectId) -> Before {
        let made = self.ledger.history(work, field::CHANGE).first().map(|fact| fact.act());
        let facts = made.map(|act| self.ledger.of_act(act)).unwrap_or_default();
        let mut before = Reader::new(self.ledger, self.survey.id, facts.iter().map(|fact| fact.id()).min());
        for subject in facts.iter().map(|fact| fact.subject()).collect::<BTreeSet<_>>() {
            match before.value::<Is>(subject, field::IS) {
                Some(Is::Part) => before.read_part(subject),
                Some(Is::Run) => before.read_run(subject),
                _ => {}
            }
        }
        let Survey { parts, runs, .. } = before.survey;
        Before { parts: parts.into_values().collect(), runs: runs.into_values().collect() }
    }

    /// Of two spellings of one question the newest answer counts.
    fn read_asked(&mut self, id: SubjectId) {
        let mut newest: BTreeMap<Asked, &Fact> = BTreeMap::new();
        for name in self.ledger.fields(id) {
            if let Some(question) = Asked::of_field(name)
                && let Some(fact) = self.ledger.shown(id, name).filter(|fact| !fact.value().is_null())
                && newest.get(&question).is_none_or(|known| known.id() < fact.id())
            {
                newest.insert(question, fact);
            }
        }
        let answers = newest.into_iter().map(|(question, fact)| ((id, question), fact.value().clone()));
        self.survey.asked.extend(answers);
    }

    /// The text is put together from its pieces; what is not whole is listed as unread.
    fn read_measurement(&mut self, id: SubjectId) {
        let ports = self.field(id, field::measurement::PORTS);
        let digest = self.field(id, field::measurement::DIGEST).unwrap_or_default();
        let mut text = String::new();
        for number in 0.. {
            let name = field::TEXT_PIECE.name(number);
            if text.len() > MOST_MEASUREMENT_BYTES || self.ledger.shown(id, &name).is_none() {
                break;
            }
            text.push_str(&self.value::<String>(id, &name).unwrap_or_default());
        }
        match ports.and_then(|ports| put_together(ports, &digest, &text)) {
            Some(part) => {
                self.survey.measurements.insert(id, part);
            }
            None => self.survey.unread.push((id, field::DIGEST.into())),
        }
    }

    /// Gives each part its measurement, which may have been read after it.
    fn find_measurements(&mut self) {
        let ids: Vec<_> = self.survey.parts.keys().copied().collect();
        for id in ids {
            let Some(named) = self.field(id, field::part::MEASUREMENT) else { continue };
            let found = self.survey.measurements.get(&named).cloned();
            match (found, self.survey.parts.get_mut(&id)) {
                (Some(found), Some(part)) => part.measured = Some(found),
                _ => self.survey.unread.push((id, field::MEASUREMENT.into())),
            }
        }
    }

    /// A photo that was forgotten has no image any more and is none.
    fn read_photo(&mut self, id: SubjectId) {
        if let Some(image) = self.field(id, field::photo::IMAGE) {
            let mut photo =
                Photo { id, image, of: None, role: None, file_name: None, taken: None, print: None };
            self.fields(&mut photo);
            self.survey.photos.insert(id, photo);
        }
    }
}

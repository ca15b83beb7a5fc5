//! From facts to typed records.
//!
//! A value that this version cannot read is listed in [`Survey::unread`] and otherwise ignored: nothing is ever
//! shown as something it is not, and nothing is thrown away.

use std::collections::BTreeSet;

use facts::fact::reserved::MOST_PARTS;
use facts::fact::{FactId, Ledger, PhotoImage, Removal, SubjectId, SurveyId};
use facts::{FactsError, Result};
use serde::de::DeserializeOwned;

use super::field::{self, port_of_end_field};
use super::measurement::{MOST_MEASUREMENT_BYTES, put_together};
use super::{
    Before, Note, Part, PartKind, Photo, PortEnd, Reading, Room, Run, Service, Survey, Wiring, Work,
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
        let Some(is) = reader.value::<String>(subject, field::IS) else { continue };
        match is.as_str() {
            "part" => reader.read_part(subject),
            "run" => reader.read_run(subject),
            "room" => reader.read_room(subject),
            "service" => reader.read_service(subject),
            "reading" => reader.read_reading(subject),
            "note" => reader.read_note(subject),
            "measurement" => reader.read_measurement(subject),
            "photo" => reader.read_photo(subject),
            "work" => reader.read_work(subject),
            "survey" => {}
            _ => reader.survey.unread.push((subject, field::IS.into())),
        }
    }
    reader.find_measurements();
    let Reader { mut survey, mut feeds, .. } = reader;
    if survey.parts.len() > MOST_PARTS {
        return Err(FactsError::TooManyParts { found: survey.parts.len(), most: MOST_PARTS });
    }
    feeds.sort_unstable();
    let stated: Vec<_> = feeds.into_iter().map(|(_, part)| part).collect();
    survey.wiring = Wiring::replay(&survey.parts, &stated);
    Ok(survey)
}

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
        let read = serde_json::from_value(fact.value().clone()).ok();
        if read.is_none() {
            self.survey.unread.push((subject, field.into()));
        }
        read
    }

    fn read_survey(&mut self) {
        let id = self.survey.id;
        self.survey.name = self.value(id, field::NAME);
        self.survey.place = self.value(id, field::PLACE);
        self.survey.internet = self.value(id, field::INTERNET);
        self.survey.building = self.value(id, field::BUILDING);
        self.survey.network = self.value(id, field::NETWORK).unwrap_or_default();
    }

    fn read_part(&mut self, id: SubjectId) {
        let kind = self.value(id, field::KIND).unwrap_or(PartKind::Unknown);
        let mut part = Part::new(id, kind);
        part.tag = self.value(id, field::TAG);
        part.place = self.value(id, field::WHERE);
        part.feed = self.value(id, field::FEED);
        part.label = self.value(id, field::LABEL);
        part.room = self.value(id, field::ROOM);
        part.plugged = self.value(id, field::PLUGGED);
        part.adapter = self.value(id, field::ADAPTER);
        part.sharing = self.value(id, field::SHARING);
        part.device_filter = self.value(id, field::DEVICE_FILTER).unwrap_or_default();
        if let Some(entry_kind) = self.value(id, field::ENTRY_KIND) {
            part.entry_kind = entry_kind;
        }
        if let Some(entry_state) = self.value(id, field::ENTRY_STATE) {
            part.entry_state = entry_state;
        }
        let of_label = part.label.as_deref().map(PartRating::of_label);
        let typed: Option<PartRating> = self.value(id, field::RATING);
        part.rating = match (typed, of_label) {
            (Some(typed), Some(of_label)) => typed.or(of_label),
            (Some(rating), None) | (None, Some(rating)) => rating,
            (None, None) => PartRating::default(),
        };
        for name in self.ledger.fields(id).map(str::to_owned).collect::<Vec<_>>() {
            if let Some(port) = port_of_end_field(&name)
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
        run.tag = self.value(id, field::TAG);
        if let Some(cable) = self.value(id, field::CABLE) {
            run.cable = cable;
        }
        run.length = self.value(id, field::LENGTH);
        if let Some(connector) = self.value(id, field::CONNECTOR_NEAR) {
            run.connector_near = connector;
        }
        if let Some(connector) = self.value(id, field::CONNECTOR_FAR) {
            run.connector_far = connector;
        }
        self.survey.runs.insert(id, run);
    }

    fn read_room(&mut self, id: SubjectId) {
        let name = self.value(id, field::NAME).unwrap_or_default();
        let wish = self.value(id, field::WISH);
        let served_from = self.value(id, field::SERVED_FROM);
        self.survey.rooms.insert(id, Room { id, name, wish, served_from });
    }

    fn read_service(&mut self, id: SubjectId) {
        if let Some(kind) = self.value(id, field::KIND) {
            let service = Service {
                id,
                kind,
                top_mhz: self.value(id, field::TOP),
                entry: self.value(id, field::ENTRY),
                signal: self.value(id, field::SIGNAL),
                modem: self.value(id, field::MODEM),
                single_cable: self.value(id, field::SINGLE_CABLE),
                network: self.value(id, field::OTHER_NETWORK),
                power: self.value(id, field::POWER),
            };
            self.survey.services.insert(id, service);
        }
    }

    fn read_reading(&mut self, id: SubjectId) {
        if let Some(measured) = self.value(id, field::MEASURED) {
            let about = self.value(id, field::ABOUT);
            let port = self.value(id, field::PORT);
            let how = self.value(id, field::HOW);
            self.survey.readings.insert(id, Reading { id, about, port, measured, how });
        }
    }

    fn read_note(&mut self, id: SubjectId) {
        if let Some(text) = self.value(id, field::TEXT) {
            let about = self.value(id, field::ABOUT);
            self.survey.notes.insert(id, Note { id, about, text });
        }
    }

    fn read_work(&mut self, id: SubjectId) {
        if let (Some(change), Some(outcome)) = (self.value(id, field::CHANGE), self.value(id, field::OUTCOME))
        {
            let before = self.before(id);
            self.survey.works.insert(id, Work { id, change, outcome, before });
        }
    }

    /// What a piece of work wrote anew or took out, as it was before it.
    fn before(&self, work: SubjectId) -> Before {
        let made = self.ledger.history(work, field::CHANGE).first().map(|fact| fact.act());
        let facts = made.map(|act| self.ledger.of_act(act)).unwrap_or_default();
        let mut before = Reader::new(self.ledger, self.survey.id, facts.iter().map(|fact| fact.id()).min());
        for subject in facts.iter().map(|fact| fact.subject()).collect::<BTreeSet<_>>() {
            match before.value::<String>(subject, field::IS).as_deref() {
                Some("part") => before.read_part(subject),
                Some("run") => before.read_run(subject),
                _ => {}
            }
        }
        let Survey { parts, runs, .. } = before.survey;
        Before { parts: parts.into_values().collect(), runs: runs.into_values().collect() }
    }

    fn read_asked(&mut self, id: SubjectId) {
        for name in self.ledger.fields(id) {
            if let Some(question) = field::question_of_asked_field(name)
                && let Some(fact) = self.ledger.shown(id, name)
                && !fact.value().is_null()
            {
                self.survey.asked.insert((id, question.to_owned()), fact.value().clone());
            }
        }
    }

    /// The text is put together from its pieces; what is not whole is listed as unread.
    fn read_measurement(&mut self, id: SubjectId) {
        let (ports, digest) = (
            self.value::<usize>(id, field::PORTS),
            self.value::<String>(id, field::DIGEST).unwrap_or_default(),
        );
        let mut text = String::new();
        for number in 0.. {
            let name = field::text_field(number);
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
            let Some(named) = self.value::<SubjectId>(id, field::MEASUREMENT) else { continue };
            let found = self.survey.measurements.get(&named).cloned();
            match (found, self.survey.parts.get_mut(&id)) {
                (Some(found), Some(part)) => part.measured = Some(found),
                _ => self.survey.unread.push((id, field::MEASUREMENT.into())),
            }
        }
    }

    /// A photo that was forgotten has no image any more and is none.
    fn read_photo(&mut self, id: SubjectId) {
        if let Some(image) = self.value::<PhotoImage>(id, field::IMAGE) {
            let of = self.value(id, field::OF);
            let role = self.value(id, field::ROLE);
            self.survey.photos.insert(id, Photo { id, image, of, role });
        }
    }
}

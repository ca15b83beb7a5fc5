//! From facts to typed records.
//!
//! A value that this version cannot read is listed in [`Survey::unread`] and otherwise ignored: nothing is ever
//! shown as something it is not, and nothing is thrown away.

use serde::de::DeserializeOwned;

use super::field::{self, port_of_end_field};
use super::{Note, Part, PartKind, Photo, PhotoImage, PortEnd, Reading, Room, Run, Service, Survey, Wiring};
use crate::error::SurveyError;
use crate::fact::{FactId, Ledger, Removal, SubjectId, SurveyId};
use crate::rating::PartRating;

/// A survey larger than this is not a house.
pub const MOST_PARTS: usize = 2_000;

/// Folds the shown facts of a ledger into records.
///
/// # Errors
/// [`SurveyError::TooManyParts`] above [`MOST_PARTS`].
pub fn fold(ledger: &Ledger, survey: SurveyId) -> Result<Survey, SurveyError> {
    let mut reader = Reader { ledger, survey: Survey::new(survey.subject()), feeds: Vec::new() };
    reader.read_survey();
    for subject in ledger.subjects() {
        if matches!(ledger.removal(subject), Removal::Removed { .. }) {
            continue;
        }
        let Some(is) = reader.value::<String>(subject, field::IS) else { continue };
        match is.as_str() {
            "part" => reader.read_part(subject),
            "run" => reader.read_run(subject),
            "room" => reader.read_room(subject),
            "service" => reader.read_service(subject),
            "reading" => reader.read_reading(subject),
            "note" => reader.read_note(subject),
            "photo" => reader.read_photo(subject),
            "survey" => {}
            _ => reader.survey.unread.push((subject, field::IS.into())),
        }
    }
    let Reader { mut survey, mut feeds, .. } = reader;
    if survey.parts.len() > MOST_PARTS {
        return Err(SurveyError::TooManyParts { found: survey.parts.len(), most: MOST_PARTS });
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
}

impl Reader<'_> {
    /// The shown value of a field, typed; `None` if there is none or it is `null` or cannot be read.
    fn value<T: DeserializeOwned>(&mut self, subject: SubjectId, field: &str) -> Option<T> {
        let fact = self.ledger.shown(subject, field)?;
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
        self.survey.rooms.insert(id, Room { id, name, wish });
    }

    fn read_service(&mut self, id: SubjectId) {
        if let Some(kind) = self.value(id, field::KIND) {
            let top_mhz = self.value(id, field::TOP);
            self.survey.services.insert(id, Service { id, kind, top_mhz });
        }
    }

    fn read_reading(&mut self, id: SubjectId) {
        if let Some(measured) = self.value(id, field::MEASURED) {
            let about = self.value(id, field::ABOUT);
            self.survey.readings.insert(id, Reading { id, about, measured });
        }
    }

    fn read_note(&mut self, id: SubjectId) {
        if let Some(text) = self.value(id, field::TEXT) {
            let about = self.value(id, field::ABOUT);
            self.survey.notes.insert(id, Note { id, about, text });
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

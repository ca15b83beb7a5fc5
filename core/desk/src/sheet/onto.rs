//! A sheet held against a survey that is there: what stands in it and is told otherwise by the sheet.
//!
//! Parts are the same by their tags, rooms by their names, services by their kinds in order, cables by the part that they
//! lead to, readings and notes by all that they say. What a sheet leaves out stays as it is: nothing is removed or emptied.

use std::collections::{BTreeMap, BTreeSet};

use facts::fact::{Edit, Fact, Ledger, SubjectId};
use house::rating::PartRating;
use house::record::{Feed, FeedFrom, Is, Survey, field};
use serde_json::Value;

use super::draft::{FeedRow, Sheet};
use super::edits::id_of;

/// The parts of a survey by what a sheet calls them.
pub struct Called(BTreeMap<String, SubjectId>);

impl Called {
    /// By their tags; a part without one is called by nothing. Fails with a tag that two parts have.
    ///
    /// # Errors
    /// The tag.
    pub fn by_tags(survey: &Survey) -> Result<Self, String> {
        let mut called = BTreeMap::new();
        for part in survey.parts.values() {
            let Some(tag) = part.tag.as_ref() else { continue };
            if called.insert(tag.clone(), part.id).is_some() {
                return Err(tag.clone());
            }
        }
        Ok(Self(called))
    }

    /// By their tags, and by names of our own where they have none or one that is not theirs alone.
    pub fn all(survey: &Survey) -> Self {
        let mut called: BTreeMap<String, SubjectId> = BTreeMap::new();
        for (place, part) in survey.parts.values().enumerate() {
            let own = part.tag.clone().filter(|tag| super::part::is_tag(tag) && !called.contains_key(tag));
            called.insert(own.unwrap_or_else(|| format!("\u{b7}{place}")), part.id);
        }
        Self(called)
    }

    /// The same where a part is called otherwise.
    #[must_use]
    pub fn renamed(mut self, part: SubjectId, name: &str) -> Self {
        self.0.retain(|_, id| *id != part);
        self.0.insert(name.to_owned(), part);
        self
    }

    /// Every part with what it is called.
    pub fn iter(&self) -> impl Iterator<Item = (&str, SubjectId)> {
        self.0.iter().map(|(name, id)| (name.as_str(), *id))
    }

    /// What a part is called.
    pub fn name_of(&self, part: SubjectId) -> Option<&str> {
        self.iter().find(|(_, id)| *id == part).map(|(name, _)| name)
    }
}

/// What a sheet says otherwise than the survey, as edits of it: nothing of what stands so already.
pub fn edits_onto(sheet: &Sheet, survey: &Survey, ledger: &Ledger, called: &Called) -> Vec<Edit> {
    let ids = identities(sheet, survey, ledger, called);
    let mut edits = Vec::new();
    for mut edit in sheet.edits(survey.id) {
        if let Some(real) = ids.get(&edit.subject) {
            edit.subject = *real;
        }
        name_anew(&mut edit.value, &ids);
        let there = ledger.shown(edit.subject, &edit.field).map(Fact::value);
        beside_what_stands(&mut edit, there);
        if there != Some(&edit.value) {
            edits.push(edit);
        }
    }
    without_empty_records(edits, ledger)
}

/// The ids that stand in the survey for those that follow from the names in the sheet.
fn identities(
    sheet: &Sheet,
    survey: &Survey,
    ledger: &Ledger,
    called: &Called,
) -> BTreeMap<SubjectId, SubjectId> {
    let held: BTreeSet<SubjectId> = ledger.subjects().collect();
    // An id of which something is said already, be it removed, is another thing's.
    let fresh = |id: SubjectId| if held.contains(&id) { SubjectId::random() } else { id };
    let mut ids = BTreeMap::new();
    for room in &sheet.rooms {
        let same = survey.rooms.values().find(|there| there.name == room.record.name);
        ids.insert(room.record.id, same.map_or_else(|| fresh(room.record.id), |there| there.id));
    }
    for part in &sheet.parts {
        let id = id_of(Is::Part, &part.tag);
        ids.insert(id, called.0.get(&part.tag).copied().unwrap_or_else(|| fresh(id)));
    }
    for part in &sheet.parts {
        let Some(FeedRow::From { run: Some(run), .. }) = &part.feed else { continue };
        let to = id_of(Is::Part, &part.tag);
        let id = id_of(Is::Run, &to.to_string());
        let there = ids.get(&to).and_then(|real| feed_of(survey, *real)).and_then(|feed| feed.run);
        let tagged = || survey.runs.values().find(|there| there.tag.is_some() && there.tag == run.tag);
        let real = there.or_else(|| tagged().map(|run| run.id)).unwrap_or_else(|| fresh(id));
        ids.insert(id, real);
    }
    let mut services: Vec<_> = survey.services.values().collect();
    for service in &sheet.services {
        let id = service.record.id;
        let same = services.iter().position(|there| there.kind == service.record.kind);
        ids.insert(id, same.map_or_else(|| fresh(id), |at| services.remove(at).id));
    }
    for reading in &sheet.readings {
        let record = &reading.record;
        let about = record.about.map(|about| ids.get(&about).copied().unwrap_or(about));
        let same = survey.readings.values().find(|there| {
            (there.measured, there.about, there.port, there.how)
                == (record.measured, about, record.port, record.how)
        });
        ids.insert(record.id, same.map_or_else(|| fresh(record.id), |there| there.id));
    }
    for (about, notes) in notes_of(sheet, survey.id) {
        let real = ids.get(&about).copied().unwrap_or(about);
        for (number, text) in notes.iter().enumerate() {
            let id = id_of(Is::Note, &format!("{number} {about}"));
            let same = survey.notes.values().find(|there| there.about == Some(real) && there.text == *text);
            ids.insert(id, same.map_or_else(|| fresh(id), |there| there.id));
        }
    }
    ids
}

/// The notes of a sheet, by what they are about.
fn notes_of(sheet: &Sheet, survey: SubjectId) -> Vec<(SubjectId, &[String])> {
    let mut notes = vec![(survey, sheet.about.notes.as_slice())];
    notes.extend(sheet.rooms.iter().map(|told| (told.record.id, told.notes.as_slice())));
    notes.extend(sheet.parts.iter().map(|part| (id_of(Is::Part, &part.tag), part.notes.as_slice())));
    notes.extend(sheet.services.iter().map(|told| (told.record.id, told.notes.as_slice())));
    notes.extend(sheet.readings.iter().map(|told| (told.record.id, told.notes.as_slice())));
    notes
}

/// What feeds a part over which cable, as it was said.
pub fn feed_of(survey: &Survey, part: SubjectId) -> Option<FeedFrom> {
    match &survey.parts.get(&part)?.feed {
        Some(Feed::From(feed)) => Some(feed.clone()),
        _ => None,
    }
}

/// Puts the survey's ids in place of the sheet's, wherever a value names one.
pub fn name_anew(value: &mut Value, ids: &BTreeMap<SubjectId, SubjectId>) {
    match value {
        Value::String(text) => {
            let id = text.parse::<uuid::Uuid>().ok().map(SubjectId::from_uuid);
            if let Some(real) = id.and_then(|id| ids.get(&id)) {
                *text = real.to_string();
            }
        }
        Value::Array(values) => values.iter_mut().for_each(|value| name_anew(value, ids)),
        Value::Object(members) => members.values_mut().for_each(|value| name_anew(value, ids)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

/// Of a value of several parts, what the sheet leaves out stays: the rest of a rating, the cable of a feed.
fn beside_what_stands(edit: &mut Edit, there: Option<&Value>) {
    let Some(there) = there else { return };
    if edit.field == field::RATING {
        let ratings = (field::part::RATING.read(&edit.value), field::part::RATING.read(there));
        if let (Some(said), Some(stood)) = ratings {
            *edit = field::part::RATING.set(edit.subject, &PartRating::or(said, stood));
        }
    } else if edit.field == field::FEED {
        let feeds = (field::part::FEED.read(&edit.value), field::part::FEED.read(there));
        if let (Some(Feed::From(said)), Some(Feed::From(stood))) = feeds
            && said.run.is_none()
        {
            let feed = Feed::From(FeedFrom { run: stood.run, ..said });
            *edit = field::part::FEED.set(edit.subject, &feed);
        }
    }
}

/// What is new needs to say what it is; of what was there that is no change.
fn without_empty_records(edits: Vec<Edit>, ledger: &Ledger) -> Vec<Edit> {
    let says_more: BTreeSet<SubjectId> =
        edits.iter().filter(|edit| edit.field != field::IS).map(|edit| edit.subject).collect();
    let is_needed = |edit: &Edit| {
        edit.field != field::IS
            || (says_more.contains(&edit.subject) && ledger.shown(edit.subject, field::IS).is_none())
    };
    edits.into_iter().filter(is_needed).collect()
}

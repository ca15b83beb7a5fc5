//! What a user means by a word: a tag, the name of a room, `survey`, or an id.

use std::collections::BTreeSet;
use std::fmt::Display;

use facts::fact::{Removal, SubjectId};
use facts::store::Store;
use house::naming;
use house::record::{Survey, fold};
use house::story::with_removed;
use phrase::Phrase;

use crate::error::DeskError;

/// The word for the survey as a whole.
const WHOLE: &str = "survey";
/// The shortest beginning of an id that is taken for one.
const SHORTEST: usize = 4;
/// How many ids are named where a word means several things.
const MOST_NAMED: usize = 5;
/// How alike (Jaro and Winkler, 0 to 1) a word must be to be offered instead.
const ALIKE: f64 = 0.8;

/// The things of a survey by what people call them.
pub struct Names {
    survey: Survey,
    ids: BTreeSet<SubjectId>,
}

impl Names {
    /// The things that are shown.
    pub fn shown(store: &Store) -> Result<Self, DeskError> {
        let survey = fold(store.ledger(), store.survey_id())?;
        let mut ids = BTreeSet::from([survey.id]);
        ids.extend(survey.parts.keys());
        ids.extend(survey.runs.keys());
        ids.extend(survey.rooms.keys());
        ids.extend(survey.services.keys());
        ids.extend(survey.notes.keys());
        ids.extend(survey.photos.keys());
        ids.extend(survey.readings.keys());
        Ok(Self { survey, ids })
    }

    /// Everything that was ever spoken of, removed or not.
    pub fn whole(store: &Store) -> Result<Self, DeskError> {
        let mut ids: BTreeSet<SubjectId> = store.ledger().subjects().collect();
        ids.insert(store.survey_id().subject());
        Ok(Self { survey: with_removed(store.ledger(), store.survey_id().subject())?, ids })
    }

    /// The things that are hidden because somebody removed them.
    pub fn removed(store: &Store) -> Result<Self, DeskError> {
        let mut names = Self::whole(store)?;
        let ledger = store.ledger();
        names.ids.retain(|&id| matches!(ledger.removal(id), Removal::Removed { .. }));
        Ok(names)
    }

    /// What a word means, of that the field is asked for: a part, or the cable that feeds it where only that has the field, as
    /// `set` takes it.
    ///
    /// # Errors
    /// As [`Names::find`].
    pub fn find_with(
        &self,
        word: &str,
        has_field: impl Fn(SubjectId) -> bool,
    ) -> Result<SubjectId, DeskError> {
        let subject = self.find(word)?;
        let cable = || self.survey.wiring.feed(subject)?.run.filter(|run| has_field(*run));
        Ok(if has_field(subject) { subject } else { cable().unwrap_or(subject) })
    }

    /// The survey that the names come from.
    pub const fn survey(&self) -> &Survey {
        &self.survey
    }

    /// What a word means.
    ///
    /// # Errors
    /// [`DeskError::NoSuchThing`] or [`DeskError::Ambiguous`].
    pub fn find(&self, word: &str) -> Result<SubjectId, DeskError> {
        if word == WHOLE {
            return Ok(self.survey.id);
        }
        let named = |is: &dyn Fn(&str) -> bool| -> Vec<SubjectId> {
            self.names().filter(|(name, _)| is(name)).map(|(_, id)| id).collect()
        };
        let lower = word.to_lowercase();
        let mut found = named(&|name| name == word);
        if found.is_empty() {
            found = named(&|name| name.to_lowercase() == lower);
        }
        if found.is_empty() {
            found = by_beginning(self.ids.iter().copied(), word);
        }
        one(&found).ok_or_else(|| self.not_one(word, &found))
    }

    /// The word that means a thing, to be typed: its tag or name where that is enough and needs no quotes, else its id.
    pub fn word(&self, subject: SubjectId) -> String {
        if subject == self.survey.id {
            return WHOLE.to_owned();
        }
        let is_plain = |name: &str| name.chars().all(|sign| sign.is_alphanumeric() || "-_.".contains(sign));
        let own = self.names().find(|(name, id)| *id == subject && is_plain(name) && !name.starts_with('-'));
        let own =
            own.map(|(name, _)| name).filter(|name| self.find(name).is_ok_and(|found| found == subject));
        own.map_or_else(|| subject.to_string(), str::to_owned)
    }

    fn names(&self) -> impl Iterator<Item = (&str, SubjectId)> {
        let survey = &self.survey;
        let parts = survey.parts.values().filter_map(|part| Some((part.tag.as_deref()?, part.id)));
        let runs = survey.runs.values().filter_map(|run| Some((run.tag.as_deref()?, run.id)));
        let rooms = survey.rooms.values().map(|room| (room.name.as_str(), room.id));
        parts.chain(runs).chain(rooms).filter(|(_, id)| self.ids.contains(id))
    }

    fn not_one(&self, word: &str, found: &[SubjectId]) -> DeskError {
        let likeness = |name: &str| strsim::jaro_winkler(&name.to_lowercase(), &word.to_lowercase());
        let near = self
            .names()
            .map(|(name, _)| (likeness(name), name))
            .filter(|(likeness, _)| *likeness >= ALIKE)
            .max_by(|(one, _), (two, _)| one.total_cmp(two));
        let told = |id: &SubjectId| {
            let name = naming::thing(&self.survey, *id);
            Phrase::new("desk-id-named").text("id", id.to_string()).phrase("thing", name)
        };
        refuse(word, found, near.map(|(_, name)| name.to_owned()), told)
    }
}

/// The ids that begin so.
pub fn by_beginning<T: Display>(ids: impl Iterator<Item = T>, word: &str) -> Vec<T> {
    let lower = word.to_ascii_lowercase();
    if lower.len() < SHORTEST {
        return Vec::new();
    }
    ids.filter(|id| id.to_string().starts_with(&lower)).collect()
}

/// The one id that begins so.
///
/// # Errors
/// [`DeskError::NoSuchThing`] or [`DeskError::Ambiguous`].
pub fn one_by_beginning<T: Display + Copy>(ids: impl Iterator<Item = T>, word: &str) -> Result<T, DeskError> {
    let found = by_beginning(ids, word);
    let told = |id: &T| Phrase::new("desk-id").text("id", id.to_string());
    one(&found).ok_or_else(|| refuse(word, &found, None, told))
}

fn one<T: Copy>(found: &[T]) -> Option<T> {
    match found {
        [only] => Some(*only),
        _ => None,
    }
}

fn refuse<T>(word: &str, found: &[T], near: Option<String>, told: impl Fn(&T) -> Phrase) -> DeskError {
    let word = word.to_owned();
    if found.is_empty() {
        return DeskError::NoSuchThing { word, near };
    }
    let some = found.iter().take(MOST_NAMED).map(told).collect();
    DeskError::Ambiguous { word, count: found.len(), found: some }
}

//! What the guide remembers about a survey on this device: where one was, what is half answered, what was put off.
//!
//! It is kept beside the survey's drafts: it outlives the app, is never exported, and no other device needs it. Where
//! one was and what is half answered is kept about each second, without a sync; what was put off is an answer, and lies
//! apart from it, so that a memory that cannot be read loses none of it.

use std::collections::BTreeSet;
use std::time::{Duration, Instant};

use facts::Result;
use facts::fact::SubjectId;
use facts::photo::Piece;
use facts::store::{Draft, MAX_DRAFT_BYTES, Store};
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::pending::Pending;
use super::stakes::Stakes;
use crate::clock;
use crate::place::{Place, Question, Round};

/// The name under which it lies among the drafts.
const FIELD: &str = "guide";

/// The name under which what was put off lies there.
const LATER_FIELD: &str = "guide.later";

/// The form in which it is kept. One of a later form is as good as none; one without a number is of the first.
const VERSION: u64 = 1;

/// So often it is kept while somebody types or looks around.
const EVERY: Duration = Duration::from_secs(1);

/// The most screens that one can go back through.
const MOST_BACK: usize = 60;

/// Of so many screens it is kept what was given on them when they were left half answered.
const MOST_LEFT: usize = 30;

/// Of so many photos it is kept which part is read.
const MOST_PARTS: usize = 200;

/// What the guide remembers.
#[derive(Debug, Clone, Default, Serialize, Deserialize)]
#[serde(default)]
pub(crate) struct Memory {
    /// The form that it is kept in.
    version: u64,
    /// The way to the screen that is shown: the last is the screen itself.
    pub(crate) way: Vec<Place>,
    /// What the screen was given and is not an answer yet.
    pub(crate) pending: Pending,
    /// The last round after whose end somebody wanted to go on.
    pub(crate) asked_on: Option<Round>,
    /// How unsure the forecast is while questions are open, as it was worked out last.
    pub(crate) stakes: Stakes,
    /// The cautions that were read in this survey on this device. Should they be lost, they are read once more.
    pub(crate) read: BTreeSet<String>,
    /// Of photos the part that somebody chose to be read, the oldest first.
    parts: Vec<(SubjectId, Piece)>,
    /// Questions put off.
    #[serde(skip)]
    pub(crate) later: BTreeSet<Question>,
    /// What was given on screens that were left before it was an answer, the oldest first.
    left: Vec<(Place, Pending)>,
    /// Whether something was written since one came to this screen: what it was given is an answer then.
    #[serde(skip)]
    pub(crate) has_answered: bool,
    /// What of it is on the disk.
    #[serde(skip)]
    kept: Kept,
}

/// What is on the disk.
#[derive(Debug, Clone, Default)]
struct Kept {
    text: String,
    at: Option<Instant>,
    /// How many cautions were read.
    read: usize,
    later: BTreeSet<Question>,
    /// Questions put off that this release does not know: they stay.
    strange: Vec<Value>,
}

/// When it is to be kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Keep {
    /// Now, and on the disk: the log of the survey begins with it, so that no draft has to be synced after that.
    Synced,
    /// Now: something was answered, or nobody looks any more.
    Now,
    /// If the last time was a second ago.
    Soon,
}

impl Memory {
    /// What was remembered. What cannot be read any more is forgotten: where one was, and what was half answered.
    pub(crate) fn of(store: &Store) -> Result<Self> {
        let subject = store.survey_id().subject();
        let drafts = store.drafts()?;
        let kept = |field: &str| -> Option<Value> {
            let mut of_survey = drafts.iter().filter(|draft| draft.subject == subject);
            serde_json::from_str(&of_survey.find(|draft| draft.field == field)?.text).ok()
        };
        let told = kept(FIELD);
        // Earlier releases kept what was put off with the rest.
        let apart = kept(LATER_FIELD);
        let is_apart = apart.is_some();
        let later = apart.or_else(|| told.as_ref()?.get("later").cloned());
        let is_known = |told: &Value| told.get("version").map_or(Some(0), Value::as_u64) <= Some(VERSION);
        let told = told.filter(is_known).and_then(|told| serde_json::from_value(told).ok());
        let mut memory: Self = told.unwrap_or_default();
        memory.version = VERSION;
        memory.kept.read = memory.read.len();
        for question in later.as_ref().and_then(Value::as_array).into_iter().flatten() {
            match serde_json::from_value(question.clone()) {
                Ok(known) => _ = memory.later.insert(known),
                Err(_) => memory.kept.strange.push(question.clone()),
            }
        }
        if is_apart {
            memory.kept.later.clone_from(&memory.later);
        }
        Ok(memory)
    }

    /// Keeps it. What was put off since is on the disk when this returns.
    pub(crate) fn keep(&mut self, store: &mut Store, when: Keep) -> Result<()> {
        self.keep_later(store)?;
        // What was read is asked once: it is kept at once.
        let has_read = self.read.len() != self.kept.read;
        let is_due = has_read || self.kept.at.is_none_or(|at| at.elapsed() >= EVERY);
        if when == Keep::Soon && !is_due {
            return Ok(());
        }
        let text = self.told();
        if text == self.kept.text && when != Keep::Synced {
            return Ok(());
        }
        let draft = draft(store, FIELD, text);
        let is_kept = match when {
            Keep::Synced => store.save_draft(&draft).map(|()| true)?,
            Keep::Now | Keep::Soon => store.save_draft_unsynced(&draft)?,
        };
        if is_kept {
            (self.kept.text, self.kept.at) = (draft.text, Some(Instant::now()));
            self.kept.read = self.read.len();
        }
        Ok(())
    }

    fn keep_later(&mut self, store: &mut Store) -> Result<()> {
        if self.later == self.kept.later {
            return Ok(());
        }
        let known = self.later.iter().filter_map(|question| serde_json::to_value(question).ok());
        let all: Vec<Value> = known.chain(self.kept.strange.iter().cloned()).collect();
        store.save_draft(&draft(store, LATER_FIELD, Value::from(all).to_string()))?;
        self.kept.later.clone_from(&self.later);
        Ok(())
    }

    /// As text. What was left half answered longest ago goes where it becomes too long.
    fn told(&mut self) -> String {
        loop {
            let text = serde_json::to_string(self).unwrap_or_default();
            if text.len() <= MAX_DRAFT_BYTES || self.left.is_empty() {
                return text;
            }
            self.left.remove(0);
        }
    }

    /// Forgets what was given and is not an answer: it may say what is to be forgotten.
    pub(crate) fn drop_given(&mut self) {
        self.pending = Pending::default();
        self.left.clear();
        self.parts.clear();
    }

    /// The part of a photo that is read; all of it where nobody chose one.
    pub(crate) fn part_of(&self, photo: SubjectId) -> Option<Piece> {
        self.parts.iter().find(|(of, _)| *of == photo).map(|(_, part)| *part)
    }

    /// Somebody chose the part of a photo that is read.
    pub(crate) fn choose_part(&mut self, photo: SubjectId, part: Piece) {
        self.parts.retain(|(of, _)| *of != photo);
        if part != Piece::WHOLE {
            self.parts.push((photo, part));
        }
        if self.parts.len() > MOST_PARTS {
            self.parts.remove(0);
        }
    }

    /// Somebody wants to go on after the end of a round.
    pub(crate) fn ask_on(&mut self, round: Round) {
        self.asked_on = self.asked_on.max(Some(round));
    }

    /// Goes on to a screen.
    pub(crate) fn go(&mut self, place: Place) {
        self.leave();
        if self.way.last() != Some(&place) {
            self.way.push(place);
        }
        if self.way.len() > MOST_BACK {
            self.way.remove(0);
        }
        self.arrive();
        // Whoever comes back looks on; whoever comes anew sees all.
        self.pending.end_search();
    }

    /// Goes on to a screen in place of the one that is shown.
    pub(crate) fn swap(&mut self, place: Place) {
        self.leave();
        self.way.pop();
        self.go(place);
    }

    /// Goes back one screen; returns whether there was one.
    pub(crate) fn back(&mut self) -> bool {
        self.leave();
        let is_one = self.way.pop().is_some() && !self.way.is_empty();
        self.arrive();
        is_one
    }

    /// Keeps what is half answered with the screen that is left.
    fn leave(&mut self) {
        let given = std::mem::take(&mut self.pending);
        let Some(place) = self.way.last() else { return };
        self.left.retain(|(left, _)| left != place);
        if !given.is_empty() && !std::mem::take(&mut self.has_answered) {
            self.left.push((place.clone(), given));
        }
        if self.left.len() > MOST_LEFT {
            self.left.remove(0);
        }
    }

    /// Changes what is half answered on a screen that was left.
    pub(crate) fn change_left(&mut self, place: &Place, change: impl FnOnce(&mut Pending)) {
        if let Some(at) = self.left.iter().position(|(left, _)| left == place) {
            if let Some((_, given)) = self.left.get_mut(at) {
                change(given);
            }
            self.left.retain(|(_, given)| !given.is_empty());
        }
    }

    /// Takes up what was half answered on the screen that is shown now.
    fn arrive(&mut self) {
        self.has_answered = false;
        let Some(place) = self.way.last() else { return };
        if let Some(at) = self.left.iter().position(|(left, _)| left == place) {
            self.pending = self.left.remove(at).1;
        }
    }
}

fn draft(store: &Store, field: &str, text: String) -> Draft {
    Draft { subject: store.survey_id().subject(), field: field.into(), text, saved_ms: clock::now_ms() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::{FieldPlace, Key};
    use facts::fact::AuthorId;

    fn survey() -> (tempfile::TempDir, Store) {
        let home = tempfile::tempdir().unwrap();
        let store = Store::create(&home.path().join("house.legwork"), AuthorId::random()).unwrap();
        (home, store)
    }

    fn texts(store: &Store) -> Vec<(String, String)> {
        store.drafts().unwrap().into_iter().map(|draft| (draft.field, draft.text)).collect()
    }

    #[test]
    fn what_was_put_off_counts_as_nothing_typed_and_the_memory_does_not() {
        use facts::store::NOTHING_TYPED;
        assert!(LATER_FIELD.ends_with(NOTHING_TYPED) && !FIELD.ends_with(NOTHING_TYPED));
    }

    #[test]
    fn what_was_looked_for_is_kept_on_the_way_back_and_where_one_left_off() {
        let (_home, mut store) = survey();
        let mut memory = Memory::of(&store).unwrap();
        let find = |memory: &Memory| memory.pending.written(&Key::Find).map(str::to_owned);
        let list = || Place::Field(FieldPlace::Runs);
        memory.go(list());
        memory.pending.write(&Key::Find, "kitchen");
        memory.go(Place::Overview);
        assert!(memory.back());
        assert_eq!(find(&memory).as_deref(), Some("kitchen"));
        memory.go(Place::Overview);
        memory.go(list());
        assert_eq!(find(&memory), None);
        memory.pending.write(&Key::Find, "kitchen");
        memory.keep(&mut store, Keep::Now).unwrap();
        assert_eq!(find(&Memory::of(&store).unwrap()).as_deref(), Some("kitchen"));
    }

    #[test]
    fn a_lost_memory_loses_nothing_that_was_put_off() {
        let unreadable =
            ["half {", "[]", "7", r#"{"version":1,"way":"no way"}"#, r#"{"version":2,"way":[]}"#];
        for text in unreadable {
            let (_home, mut store) = survey();
            let mut memory = Memory::of(&store).unwrap();
            memory.go(Place::Overview);
            memory.later.extend([Question::WaysIn, Question::Plan]);
            memory.keep(&mut store, Keep::Now).unwrap();
            store.save_draft(&draft(&store, FIELD, text.into())).unwrap();
            let memory = Memory::of(&store).unwrap();
            assert!(memory.way.is_empty(), "{text}");
            assert_eq!(memory.later, BTreeSet::from([Question::WaysIn, Question::Plan]), "{text}");
        }
    }

    #[test]
    fn what_an_earlier_release_kept_is_read_and_what_a_later_one_put_off_stays() {
        let (_home, mut store) = survey();
        // As written before there was a version, the part of it that counts.
        let before = r#"{"way":["overview","more"],"pending":{},"later":["plan"],"left":[]}"#;
        store.save_draft(&draft(&store, FIELD, before.into())).unwrap();
        let memory = Memory::of(&store).unwrap();
        assert_eq!(memory.way, [Place::Overview, Place::More]);
        assert_eq!(memory.later, BTreeSet::from([Question::Plan]));
        store.save_draft(&draft(&store, LATER_FIELD, r#"["plan",{"asked-later":1}]"#.into())).unwrap();
        let mut memory = Memory::of(&store).unwrap();
        memory.later.clear();
        memory.keep(&mut store, Keep::Soon).unwrap();
        assert!(texts(&store).contains(&(LATER_FIELD.into(), r#"[{"asked-later":1}]"#.into())));
    }

    #[test]
    fn it_is_kept_at_most_each_second_and_at_once_where_that_matters() {
        let (_home, mut store) = survey();
        let mut memory = Memory::of(&store).unwrap();
        memory.go(Place::Overview);
        memory.keep(&mut store, Keep::Soon).unwrap();
        let first = texts(&store);
        memory.go(Place::More);
        memory.keep(&mut store, Keep::Soon).unwrap();
        assert_eq!(texts(&store), first);
        memory.keep(&mut store, Keep::Now).unwrap();
        assert_ne!(texts(&store), first);
        assert_eq!(Memory::of(&store).unwrap().way, [Place::Overview, Place::More]);
        // So much half answered that no draft holds it: the oldest goes.
        for number in 0..20 {
            memory.left.push((Place::More, Pending::default()));
            memory
                .left
                .last_mut()
                .unwrap()
                .1
                .write(&crate::place::Key::Open(number.to_string()), "x".repeat(8_000));
        }
        memory.keep(&mut store, Keep::Now).unwrap();
        let left = Memory::of(&store).unwrap().left;
        assert!((5..9).contains(&left.len()) && left.last() == memory.left.last(), "{}", left.len());
    }
}

//! Facts, things and authors of a survey in words, for every place that tells who said what.

use std::borrow::Cow;
use std::cell::OnceCell;
use std::collections::BTreeMap;

use facts::Result;
use facts::fact::{AuthorId, FORGET, Fact, Ledger, REMOVED, SubjectId, SurveyId};
use phrase::{Arg, Phrase};
use serde_json::Value;

use super::speak::{author, field_name, thing};
use crate::naming;
use crate::record::{Survey, field, fold};

/// What is told of: the survey, all that was ever said, and who reads.
#[derive(Debug, Clone)]
pub struct Stands<'a> {
    /// The survey in which things have their names.
    pub survey: Cow<'a, Survey>,
    /// All that was ever said.
    pub ledger: &'a Ledger,
    /// Who is told: `you` in words.
    pub me: AuthorId,
}

/// Tells what stands in a survey.
pub struct StoryTeller<'a> {
    survey: Cow<'a, Survey>,
    ledger: &'a Ledger,
    me: AuthorId,
    authors: BTreeMap<SubjectId, AuthorId>,
    /// With what was removed, which has a name only there. Worked out when it is first needed.
    whole: OnceCell<Option<Survey>>,
}

impl<'a> StoryTeller<'a> {
    /// A teller of what stands there.
    pub fn of(stands: impl Into<Stands<'a>>) -> Self {
        let Stands { survey, ledger, me } = stands.into();
        let authors = ledger.facts().map(Fact::by).map(|author| (author.subject(), author)).collect();
        Self { survey, ledger, me, authors, whole: OnceCell::new() }
    }

    /// The survey in which things have their names.
    pub fn survey(&self) -> &Survey {
        &self.survey
    }

    /// All that was ever said.
    pub const fn ledger(&self) -> &'a Ledger {
        self.ledger
    }

    /// The authors, by the subject of what is said about them.
    pub fn authors(&self) -> &BTreeMap<SubjectId, AuthorId> {
        &self.authors
    }

    /// An author: you, a name, or that none was given.
    pub fn author(&self, who: AuthorId) -> Phrase {
        author(self.ledger, who, self.me)
    }

    /// The survey in which a thing has its name.
    fn knowing(&self, subject: SubjectId) -> &Survey {
        let is_shown = subject == self.survey.id
            || self.survey.parts.contains_key(&subject)
            || self.survey.runs.contains_key(&subject)
            || self.survey.rooms.contains_key(&subject)
            || self.survey.services.contains_key(&subject)
            || self.survey.notes.contains_key(&subject)
            || self.survey.photos.contains_key(&subject)
            || self.survey.readings.contains_key(&subject)
            || self.survey.works.contains_key(&subject);
        if is_shown {
            return &self.survey;
        }
        let whole = self.whole.get_or_init(|| with_removed(self.ledger, self.survey.id).ok());
        whole.as_ref().unwrap_or(&self.survey)
    }

    /// A thing.
    pub fn thing(&self, subject: SubjectId) -> Phrase {
        if let Some(author) = self.authors.get(&subject) {
            return self.author(*author);
        }
        if self.ledger.fields(subject).next().is_none() && subject != self.survey.id {
            return Phrase::new("told-thing-new");
        }
        let survey = self.knowing(subject);
        if let Some(run) = survey.runs.get(&subject) {
            let fed = survey.wiring.feeds().find(|(_, feed)| feed.run == Some(subject));
            return match fed {
                Some((part, _)) if run.tag.is_none() => naming::run_to(survey, part),
                _ => thing(survey, subject),
            };
        }
        if let Some(about) = survey.photos.get(&subject).and_then(|photo| photo.of) {
            return Phrase::new("told-photo-of").phrase("thing", thing(survey, about));
        }
        if let Some(note) = survey.notes.get(&subject) {
            let short: String = note.text.chars().take(40).collect();
            let id = if short == note.text { "told-note" } else { "told-note-longer" };
            return Phrase::new(id).text("text", short);
        }
        if let Some(service) = survey.services.get(&subject) {
            return naming::service(service.kind);
        }
        if let Some(about) = survey.readings.get(&subject).and_then(|reading| reading.about) {
            return Phrase::new("told-reading-of").phrase("thing", thing(survey, about));
        }
        thing(survey, subject)
    }

    /// A field of a thing.
    pub fn about(&self, subject: SubjectId, name: &str) -> Phrase {
        if name == field::NAME
            && let Some(author) = self.authors.get(&subject)
        {
            let id = if *author == self.me { "told-own-name" } else { "told-name-of" };
            return Phrase::new(id).phrase("author", self.author(*author));
        }
        Phrase::new("told-field-of").phrase("field", field_name(name)).phrase("thing", self.thing(subject))
    }

    /// What a value says.
    pub fn value(&self, name: &str, value: &Value) -> Phrase {
        if name == field::IS {
            return Phrase::new("told-is");
        }
        super::value::value(&self.survey, name, value)
    }

    /// What a fact says, without who and when.
    pub fn fact(&self, fact: &Fact) -> Phrase {
        let subject = fact.subject();
        if fact.field() == FORGET {
            let count = fact.value().get("facts").and_then(Value::as_array).map_or(0, Vec::len);
            return Phrase::new("told-fact-forgets").with("count", Arg::Count(count as u64));
        }
        let about = |id: &str| Phrase::new(id).phrase("thing", self.thing(subject));
        match (fact.field(), fact.value()) {
            _ if fact.is_forgotten() => {
                Phrase::new("told-fact-forgotten").phrase("about", self.about(subject, fact.field()))
            }
            (REMOVED, Value::Null) => about("told-fact-brought-back"),
            (REMOVED, _) => about("told-fact-removed"),
            (field::IS, _) if subject == self.survey.id => Phrase::new("told-fact-begun"),
            (field::IS, _) => about("told-fact-added"),
            (name, value) => Phrase::new("told-fact")
                .phrase("about", self.about(subject, name))
                .phrase("value", self.value(name, value)),
        }
    }

    /// Who wrote a fact, and when.
    pub fn by(&self, fact: &Fact) -> Phrase {
        Phrase::new("told-by")
            .phrase("author", self.author(fact.by()))
            .with("when", Arg::When(fact.id().ms()))
    }
}

/// A survey as it would be if nothing had been removed: removed things have a name only there.
///
/// # Errors
/// What a fact reports that fits no other, or the fold of them.
pub fn with_removed(ledger: &Ledger, survey: SubjectId) -> Result<Survey> {
    let mut whole = Ledger::new();
    for fact in ledger.facts().filter(|fact| fact.field() != REMOVED) {
        whole.insert(fact.clone())?;
    }
    fold(&whole, SurveyId::from_uuid(survey.uuid()))
}

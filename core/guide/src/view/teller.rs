//! Facts, things and authors in words.

use std::cell::OnceCell;
use std::collections::BTreeMap;

use facts::fact::{AuthorId, FORGET, Fact, Ledger, REMOVED, SubjectId};
use house::naming;
use house::record::{Survey, field, fold};
use house::story;
use phrase::{Arg, Phrase};
use serde_json::Value;
use telling::words::date_and_time;

use crate::session::Scene;

/// The day of a time in milliseconds since 1970, of UTC.
pub(crate) fn day(ms: u64) -> String {
    date_and_time(ms).split(' ').next().unwrap_or_default().to_owned()
}

/// Tells what stands in a survey.
pub(crate) struct Teller<'a> {
    survey: &'a Survey,
    pub(crate) ledger: &'a Ledger,
    me: AuthorId,
    authors: BTreeMap<SubjectId, AuthorId>,
    /// With what was removed, which has a name only there. Worked out when it is first needed.
    whole: OnceCell<Option<Survey>>,
}

impl<'a> Teller<'a> {
    pub(crate) fn of(scene: &Scene<'a>) -> Self {
        let authors = scene.ledger.facts().map(Fact::by).map(|author| (author.subject(), author)).collect();
        Self { survey: scene.survey, ledger: scene.ledger, me: scene.me, authors, whole: OnceCell::new() }
    }

    /// The authors, by the subject of what is said about them.
    pub(crate) fn authors(&self) -> &BTreeMap<SubjectId, AuthorId> {
        &self.authors
    }

    /// An author: you, a name, or that none was given.
    pub(crate) fn author(&self, who: AuthorId) -> Phrase {
        story::author(self.ledger, who, self.me)
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
            return self.survey;
        }
        let whole = self.whole.get_or_init(|| with_removed(self.ledger, self.survey.id));
        whole.as_ref().unwrap_or(self.survey)
    }

    /// A thing.
    pub(crate) fn thing(&self, subject: SubjectId) -> Phrase {
        if let Some(author) = self.authors.get(&subject) {
            return self.author(*author);
        }
        if self.ledger.fields(subject).next().is_none() {
            return Phrase::new("share-thing-new");
        }
        let survey = self.knowing(subject);
        if let Some(run) = survey.runs.get(&subject) {
            let fed = survey.wiring.feeds().find(|(_, feed)| feed.run == Some(subject));
            return match fed {
                Some((part, _)) if run.tag.is_none() => naming::run_to(survey, part),
                _ => story::thing(survey, subject),
            };
        }
        if let Some(about) = survey.photos.get(&subject).and_then(|photo| photo.of) {
            return Phrase::new("share-photo-of").phrase("thing", story::thing(survey, about));
        }
        if let Some(note) = survey.notes.get(&subject) {
            let short: String = note.text.chars().take(40).collect();
            let id = if short == note.text { "share-note" } else { "share-note-longer" };
            return Phrase::new(id).text("text", short);
        }
        if let Some(service) = survey.services.get(&subject) {
            return naming::service(service.kind);
        }
        if let Some(about) = survey.readings.get(&subject).and_then(|reading| reading.about) {
            return Phrase::new("share-reading-of").phrase("thing", story::thing(survey, about));
        }
        story::thing(survey, subject)
    }

    /// A field of a thing.
    pub(crate) fn about(&self, subject: SubjectId, name: &str) -> Phrase {
        if name == field::NAME
            && let Some(author) = self.authors.get(&subject)
        {
            let id = if *author == self.me { "share-own-name" } else { "share-name-of" };
            return Phrase::new(id).phrase("author", self.author(*author));
        }
        Phrase::new("share-field-of")
            .phrase("field", story::field_name(name))
            .phrase("thing", self.thing(subject))
    }

    /// What a value says.
    pub(crate) fn value(&self, name: &str, value: &Value) -> Phrase {
        if name == field::IS {
            return Phrase::new("share-is");
        }
        story::value(self.survey, name, value)
    }

    /// What a fact says, without who and when.
    pub(crate) fn fact(&self, fact: &Fact) -> Phrase {
        let subject = fact.subject();
        if fact.field() == FORGET {
            let count = fact.value().get("facts").and_then(Value::as_array).map_or(0, Vec::len);
            return Phrase::new("share-fact-forgets").with("count", Arg::Count(count as u64));
        }
        let about = |id: &str| Phrase::new(id).phrase("thing", self.thing(subject));
        match (fact.field(), fact.value()) {
            _ if fact.is_forgotten() => {
                Phrase::new("share-fact-forgotten").phrase("about", self.about(subject, fact.field()))
            }
            (REMOVED, Value::Null) => about("share-fact-brought-back"),
            (REMOVED, _) => about("share-fact-removed"),
            (field::IS, _) if subject == self.survey.id => Phrase::new("share-fact-begun"),
            (field::IS, _) => about("share-fact-added"),
            (name, value) => Phrase::new("share-fact")
                .phrase("about", self.about(subject, name))
                .phrase("value", self.value(name, value)),
        }
    }

    /// Who wrote a fact, and when.
    pub(crate) fn by(&self, fact: &Fact) -> Phrase {
        Phrase::new("share-by")
            .phrase("author", self.author(fact.by()))
            .text("when", date_and_time(fact.id().ms()))
    }
}

/// A survey as it would be if nothing had been removed.
fn with_removed(ledger: &Ledger, survey: SubjectId) -> Option<Survey> {
    let mut whole = Ledger::new();
    for fact in ledger.facts().filter(|fact| fact.field() != REMOVED) {
        whole.insert(fact.clone()).ok()?;
    }
    fold(&whole, facts::fact::SurveyId::from_uuid(survey.uuid())).ok()
}

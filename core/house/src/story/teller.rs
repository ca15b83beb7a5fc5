//! Facts, things and authors of a survey in words, for every place that tells who said what.

use std::borrow::Cow;
use std::cell::OnceCell;
use std::collections::BTreeMap;
use std::str::FromStr;

use facts::Result;
use facts::act::Said;
use facts::fact::{AuthorId, Disagreement, FORGET, Fact, Ledger, REMOVED, SubjectId, SurveyId};
use phrase::{Arg, Phrase};
use serde_json::Value;

use super::speak::{author, field_name, forgets};
use crate::naming::{self, thing};
use crate::record::{Feed, Is, Named, Survey, field, fold};

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

    /// A teller of what stands in a ledger.
    ///
    /// # Errors
    /// What [`fold`] reports.
    pub fn folded(ledger: &'a Ledger, survey: SurveyId, me: AuthorId) -> Result<Self> {
        Ok(Self::of(Stands { survey: Cow::Owned(fold(ledger, survey)?), ledger, me }))
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

    /// The survey in which a thing has its name: as it is shown, or with what was removed.
    fn knowing(&self, subject: SubjectId) -> &Survey {
        self.knowing_all(&[subject])
    }

    fn knowing_all(&self, subjects: &[SubjectId]) -> &Survey {
        if subjects.iter().all(|&subject| naming::knows(&self.survey, subject)) {
            return &self.survey;
        }
        let whole = self.whole.get_or_init(|| with_removed(self.ledger, self.survey.id).ok());
        whole.as_ref().unwrap_or(&self.survey)
    }

    /// The survey in which everything has its name that a value speaks of.
    fn knowing_what(&self, value: &Value) -> &Survey {
        let mut named = Vec::new();
        named_in(value, &mut named);
        named.retain(|&subject| self.ledger.fields(subject).next().is_some());
        self.knowing_all(&named)
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
        let found = thing(survey, subject);
        match found.id.as_str() {
            "thing-run-untagged" => self.former_run(subject).unwrap_or(found),
            "thing-gone" => self.what_it_was(subject).unwrap_or(found),
            _ => found,
        }
    }

    /// A cable that nobody is fed over any more, by what it joined when somebody last said so.
    fn former_run(&self, run: SubjectId) -> Option<Phrase> {
        let fed_over = |fact: &&Fact| {
            let feed = field::part::FEED.read(fact.value());
            matches!(feed, Some(Feed::From(from)) if from.run == Some(run))
        };
        let feeds = self.ledger.facts().rev().filter(|fact| fact.field() == field::part::FEED.name());
        let last = feeds.filter(|fact| !fact.is_forgotten()).find(fed_over)?;
        let Some(Feed::From(from)) = field::part::FEED.read(last.value()) else { return None };
        let survey = self.knowing_all(&[from.part, last.subject()]);
        Some(Phrase::new("run-former").phrase("run", naming::run_between(survey, from.part, last.subject())))
    }

    /// What is in no record any more, by what was said of it: a photo whose picture was forgotten is a photo all the same.
    fn what_it_was(&self, subject: SubjectId) -> Option<Phrase> {
        if self.ledger.fields(subject).any(|name| name == FORGET) {
            return Some(Phrase::new("thing-forget"));
        }
        let said = self.ledger.history(subject, field::IS);
        let Some(is) = said.iter().rev().find(|fact| !fact.is_forgotten()) else {
            return (!said.is_empty()).then(|| Phrase::new("thing-forgotten"));
        };
        let is = Is::of_name(is.value().as_str()?)?;
        Some(Phrase::new(format!("thing-was-{}", is.name())))
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
        super::value::value(self.knowing_what(value), name, value)
    }

    /// One line of a story: who said what, when, and who replaced it.
    pub fn said(&self, said: &Said<'_>) -> Phrase {
        super::speak::said(self.ledger, self.knowing_what(said.fact.value()), said, self.me)
    }

    /// A disagreement in one sentence.
    pub fn disagreement(&self, found: &Disagreement<'_>) -> Phrase {
        super::speak::disagreement(self.ledger, found, self.me, self.thing(found.subject), |fact| {
            self.value(found.field, fact.value())
        })
    }

    /// A removal in a list of removed things.
    pub fn removal(&self, subject: SubjectId, fact: &Fact) -> Phrase {
        super::speak::removal(self.ledger, self.thing(subject), fact, self.me)
    }

    /// What a fact says, without who and when.
    pub fn fact(&self, fact: &Fact) -> Phrase {
        let subject = fact.subject();
        if fact.field() == FORGET {
            return forgets(fact);
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

/// The things that a value names.
fn named_in(value: &Value, found: &mut Vec<SubjectId>) {
    match value {
        Value::String(text) => found.extend(SubjectId::from_str(text)),
        Value::Array(items) => items.iter().for_each(|item| named_in(item, found)),
        Value::Object(members) => members.values().for_each(|member| named_in(member, found)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
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

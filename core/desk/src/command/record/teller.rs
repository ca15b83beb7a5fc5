//! Facts, things and authors of a survey, in words and as JSON.

use facts::fact::{ActId, AuthorId, Disagreement, Fact, FactId, Ledger, SubjectId, SurveyId, Wish};
use facts::store::Store;
use house::record::field;
use house::story::{self, Said};
use phrase::Phrase;
use serde::Serialize;
use serde_json::Value;

use super::author_json::AuthorJson;
use crate::command::context::Context;
use crate::error::DeskError;

/// How many characters of an id are shown; more are asked for where they do not tell things apart.
pub const SHORT: usize = 8;

/// A thing that facts speak of.
#[derive(Serialize)]
pub struct ThingJson {
    id: SubjectId,
    kind: Option<String>,
    tag: Option<String>,
    pub told: String,
}

/// One thing said.
#[derive(Serialize)]
pub struct SaidJson {
    record: FactId,
    act: ActId,
    written_ms: u64,
    author: AuthorJson,
    thing: ThingJson,
    field: String,
    value: Value,
    told: String,
    forgotten: bool,
    replaced_by: Vec<FactId>,
}

/// Tells what stands in one survey, removed things included.
pub struct RecordTeller<'a> {
    context: &'a Context,
    told: story::StoryTeller<'a>,
    me: AuthorId,
}

impl<'a> RecordTeller<'a> {
    /// Tells what stands in this survey now.
    pub fn new(context: &'a Context, store: &'a Store) -> Result<Self, DeskError> {
        Self::of(context, store.ledger(), store.survey_id(), store.author())
    }

    /// Tells what stands in a ledger.
    pub fn of(
        context: &'a Context,
        ledger: &'a Ledger,
        survey: SurveyId,
        me: AuthorId,
    ) -> Result<Self, DeskError> {
        Ok(Self { context, told: story::StoryTeller::folded(ledger, survey, me)?, me })
    }

    /// A thing, as a phrase.
    pub fn thing_phrase(&self, subject: SubjectId) -> Phrase {
        self.told.thing(subject)
    }

    /// A thing, as JSON.
    pub fn thing(&self, subject: SubjectId) -> ThingJson {
        let text = |name| Some(self.told.ledger().shown(subject, name)?.value().as_str()?.to_owned());
        ThingJson {
            id: subject,
            kind: text(field::IS),
            tag: text(field::TAG),
            told: self.context.say(&self.thing_phrase(subject)),
        }
    }

    /// A disagreement in one sentence.
    pub fn disagreement(&self, found: &Disagreement<'_>) -> Phrase {
        self.told.disagreement(found)
    }

    /// A removal in a list of removed things.
    pub fn removal(&self, subject: SubjectId, fact: &Fact) -> Phrase {
        self.told.removal(subject, fact)
    }

    /// An author, as a phrase.
    pub fn author_phrase(&self, author: AuthorId) -> Phrase {
        self.told.author(author)
    }

    /// An author, as JSON.
    pub fn author(&self, author: AuthorId) -> AuthorJson {
        AuthorJson::of(self.told.ledger(), author, self.me)
    }

    /// What a value says.
    pub fn value(&self, name: &str, value: &Value) -> String {
        self.context.say(&self.told.value(name, value))
    }

    /// One line of a story, as a phrase.
    pub fn said_phrase(&self, said: &Said<'_>) -> Phrase {
        self.told.said(said)
    }

    /// One line of a story, as JSON.
    pub fn said(&self, said: &Said<'_>) -> SaidJson {
        let fact = said.fact;
        SaidJson {
            record: fact.id(),
            act: fact.act(),
            written_ms: fact.id().ms(),
            author: self.author(fact.by()),
            thing: self.thing(fact.subject()),
            field: fact.field().to_owned(),
            value: fact.value().clone(),
            told: self.context.say(&self.said_phrase(said)),
            forgotten: fact.is_forgotten(),
            replaced_by: said.replaced_by.iter().map(|later| later.id()).collect(),
        }
    }

    /// A fact with what replaced it.
    pub fn story_of(&self, fact: &Fact) -> Option<Said<'a>> {
        let story = story::of_field(self.told.ledger(), fact.subject(), fact.field());
        story.into_iter().find(|said| said.fact.id() == fact.id())
    }
}

/// A field of a thing. `teller` knows the survey that it belongs to, if any does.
pub fn field_of(teller: Option<&RecordTeller<'_>>, subject: SubjectId, field: &str) -> Phrase {
    let thing = teller.map_or_else(|| Phrase::new("told-thing-new"), |teller| teller.thing_phrase(subject));
    Phrase::new("desk-field-of").phrase("field", story::field_name(field)).phrase("thing", thing)
}

/// What somebody wants forgotten, and in whose name that is told.
pub fn wish(teller: Option<&RecordTeller<'_>>, wish: &Wish) -> Phrase {
    let by = match (wish.by, teller) {
        (Some(author), Some(teller)) => teller.author_phrase(author),
        (Some(author), None) => Phrase::new("author-unnamed").text("id", short(author)),
        (None, _) => Phrase::new("desk-wish-nobody"),
    };
    let what = field_of(teller, wish.subject, &wish.field);
    Phrase::new("desk-wish-to-forget").phrase("what", what).phrase("author", by)
}

/// The beginning of an id.
pub fn short(id: impl std::fmt::Display) -> String {
    id.to_string().chars().take(SHORT).collect()
}

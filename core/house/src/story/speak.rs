//! Stories as phrases.

use facts::act::{Said, author_name};
use facts::fact::{AuthorId, Disagreement, Fact, Ledger, REMOVED, SubjectId};
use phrase::{Arg, Phrase};
use serde_json::Value;

use super::value::value;
use crate::naming;
use crate::record::{Survey, field};

/// How many characters of an author's id stand for somebody without a name.
const SHORT: usize = 8;

/// An author: `you`, their name, or that they gave none.
pub fn author(ledger: &Ledger, who: AuthorId, me: AuthorId) -> Phrase {
    match author_name(ledger, who) {
        _ if who == me => Phrase::new("author-you"),
        Some(name) => Phrase::new("author-named").text("name", name),
        None => {
            Phrase::new("author-unnamed").text("id", who.to_string().chars().take(SHORT).collect::<String>())
        }
    }
}

/// The name of a field: `length`, `what is on leg 3`.
pub fn field_name(name: &str) -> Phrase {
    if let Some(port) = name.strip_prefix("end.").and_then(|port| port.parse().ok()) {
        return Phrase::new("field-end").with("port", Arg::Count(port));
    }
    if name.starts_with("text.") {
        return Phrase::new("field-text-piece");
    }
    if name.starts_with("asked.") {
        return Phrase::new("field-asked");
    }
    match name {
        field::IS
        | field::NAME
        | field::PLACE
        | field::INTERNET
        | field::BUILDING
        | field::NETWORK
        | field::KIND
        | field::TAG
        | field::FEED
        | field::LABEL
        | field::RATING
        | field::WHERE
        | field::ROOM
        | field::PLUGGED
        | field::ADAPTER
        | field::ENTRY_KIND
        | field::ENTRY_STATE
        | field::CABLE
        | field::LENGTH
        | field::CONNECTOR_NEAR
        | field::CONNECTOR_FAR
        | field::WISH
        | field::TEXT
        | field::ABOUT
        | field::MEASURED
        | field::PORT
        | field::TOP
        | field::IMAGE
        | field::OF
        | field::ROLE
        | field::ENTRY
        | field::SIGNAL
        | field::MODEM
        | field::SINGLE_CABLE
        | field::OTHER_NETWORK
        | field::POWER
        | field::HOW
        | field::SERVED_FROM
        | field::SHARING
        | field::DEVICE_FILTER
        | field::CHANGE
        | field::OUTCOME
        | field::MEASUREMENT
        | field::PORTS
        | field::DIGEST => Phrase::new(format!("field-{name}")),
        other => Phrase::new("field-other").text("name", other),
    }
}

/// Anything that a fact speaks of: a part, a run, a room, the survey.
pub fn thing(survey: &Survey, subject: SubjectId) -> Phrase {
    if survey.parts.contains_key(&subject) {
        return naming::part(survey, subject);
    }
    if let Some(run) = survey.runs.get(&subject) {
        return match &run.tag {
            Some(tag) => Phrase::new("thing-run").text("tag", tag),
            None => Phrase::new("thing-run-untagged"),
        };
    }
    if let Some(room) = survey.rooms.get(&subject) {
        return Phrase::new("thing-room").text("name", &room.name);
    }
    Phrase::new(match subject {
        _ if subject == survey.id => "thing-survey",
        _ if survey.notes.contains_key(&subject) => "thing-note",
        _ if survey.measurements.contains_key(&subject) => "thing-measurement",
        _ if survey.photos.contains_key(&subject) => "thing-photo",
        _ if survey.readings.contains_key(&subject) => "thing-reading",
        _ if survey.services.contains_key(&subject) => "thing-service",
        _ if survey.works.contains_key(&subject) => "thing-work",
        _ => "thing-gone",
    })
}

/// One line of a story: who said what, when, and who replaced it.
pub fn said(ledger: &Ledger, survey: &Survey, said: &Said<'_>, me: AuthorId) -> Phrase {
    let line = statement(ledger, survey, said.fact, me);
    match said.replaced_by.last() {
        None => line,
        Some(later) => Phrase::new("said-replaced")
            .phrase("said", line)
            .phrase("author", author(ledger, later.by(), me))
            .with("when", Arg::When(later.id().ms())),
    }
}

fn statement(ledger: &Ledger, survey: &Survey, fact: &Fact, me: AuthorId) -> Phrase {
    let id = match (fact.field(), fact.value()) {
        _ if fact.is_forgotten() => "said-forgotten",
        (REMOVED, Value::Null) => "said-brought-back",
        (REMOVED, _) => "said-removed",
        (_, Value::Null) => "said-emptied",
        _ => "said-set",
    };
    // A change is told in the names of the house that it was proposed for.
    let work = survey.works.get(&fact.subject()).filter(|_| fact.field() == field::CHANGE);
    let told = work.map_or_else(|| value(survey, fact.field(), fact.value()), |work| work.what(survey));
    Phrase::new(id)
        .phrase("author", author(ledger, fact.by(), me))
        .phrase("field", field_name(fact.field()))
        .phrase("value", told)
        .with("when", Arg::When(fact.id().ms()))
}

/// A disagreement: what it is about, then each side with its author, then what they came from.
pub fn disagreement(ledger: &Ledger, survey: &Survey, found: &Disagreement<'_>, me: AuthorId) -> Phrase {
    let sides = found.sides.iter().map(|side| {
        let side = Phrase::new("disagreement-side")
            .phrase("author", author(ledger, side.by(), me))
            .phrase("value", value(survey, found.field, side.value()));
        Arg::Phrase(Box::new(side))
    });
    let origin = found.origin.iter().rev().find(|fact| !fact.is_forgotten() && !fact.value().is_null());
    let phrase = Phrase::new(if origin.is_some() { "disagreement" } else { "disagreement-from-nothing" })
        .phrase("thing", thing(survey, found.subject))
        .phrase("field", field_name(found.field))
        .with("sides", Arg::Several(sides.collect()));
    match origin {
        Some(origin) => phrase.phrase("origin", value(survey, found.field, origin.value())),
        None => phrase,
    }
}

/// A removal in a list of removed things. `thing` names it as it was; a removed thing is in no survey any more.
pub fn removal(ledger: &Ledger, thing: Phrase, fact: &Fact, me: AuthorId) -> Phrase {
    Phrase::new("removed-thing")
        .phrase("thing", thing)
        .phrase("author", author(ledger, fact.by(), me))
        .with("when", Arg::When(fact.id().ms()))
}

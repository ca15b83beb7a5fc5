//! Stories as phrases.

use facts::act::{Said, author_name};
use facts::fact::{AuthorId, Disagreement, FORGET, Fact, Ledger, REMOVED};
use phrase::{Arg, Phrase};
use serde_json::Value;

use super::value::value;
use crate::record::{Asked, Survey, field};

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
    if let Some(port) = field::END.number(name) {
        return Phrase::new("field-end").with("port", Arg::Count(port));
    }
    if field::TEXT_PIECE.number::<usize>(name).is_some() {
        return Phrase::new("field-text-piece");
    }
    if Asked::is_field(name) {
        return Phrase::new("field-asked");
    }
    if name == REMOVED || name == FORGET || field::lines().any(|line| line.name == name) {
        return Phrase::new(format!("field-{name}"));
    }
    Phrase::new("field-other").text("name", name)
}

/// One line of a story: who said what, when, and who replaced it.
pub(super) fn said(ledger: &Ledger, survey: &Survey, said: &Said<'_>, me: AuthorId) -> Phrase {
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
    if fact.field() == FORGET {
        return Phrase::new("said-forgets")
            .phrase("author", author(ledger, fact.by(), me))
            .phrase("what", forgets(fact))
            .with("when", Arg::When(fact.id().ms()));
    }
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

/// How much a fact told to forget.
pub(super) fn forgets(fact: &Fact) -> Phrase {
    let count = fact.value().get("facts").and_then(Value::as_array).map_or(0, Vec::len);
    Phrase::new("told-fact-forgets").with("count", Arg::Count(count as u64))
}

/// A disagreement: what it is about, then each side with its author, then what they came from. `thing` names what it is
/// about, `told` tells what one of its facts says.
pub(super) fn disagreement(
    ledger: &Ledger,
    found: &Disagreement<'_>,
    me: AuthorId,
    thing: Phrase,
    told: impl Fn(&Fact) -> Phrase,
) -> Phrase {
    let sides = found.sides.iter().map(|side| {
        let side = Phrase::new("disagreement-side")
            .phrase("author", author(ledger, side.by(), me))
            .phrase("value", told(side));
        Arg::Phrase(Box::new(side))
    });
    let origin = found.origin.iter().rev().find(|fact| !fact.is_forgotten() && !fact.value().is_null());
    let phrase = Phrase::new(if origin.is_some() { "disagreement" } else { "disagreement-from-nothing" })
        .phrase("thing", thing)
        .phrase("field", field_name(found.field))
        .with("sides", Arg::Several(sides.collect()));
    match origin {
        Some(origin) => phrase.phrase("origin", told(origin)),
        None => phrase,
    }
}

/// A removal in a list of removed things. `thing` names it as it was; a removed thing is in no survey any more.
pub(super) fn removal(ledger: &Ledger, thing: Phrase, fact: &Fact, me: AuthorId) -> Phrase {
    Phrase::new("removed-thing")
        .phrase("thing", thing)
        .phrase("author", author(ledger, fact.by(), me))
        .with("when", Arg::When(fact.id().ms()))
}

//! `legwork settle`: ending a disagreement by a choice.

use std::path::Path;

use facts::error::FactsError;
use facts::fact::{ActId, FactId};
use phrase::Phrase;
use serde::Serialize;
use serde_json::Value;

use super::names::{Names, by_beginning};
use super::open_to_write;
use super::teller::{RecordTeller, ThingJson};
use crate::command::context::Context;
use crate::error::{DeskError, WrongThing};

#[derive(Serialize)]
struct SettledJson {
    act: ActId,
    thing: ThingJson,
    field: String,
    value: Value,
    told: String,
}

/// Settles it.
pub fn run(context: &Context, folder: &Path, thing: &str, field: &str, side: &str) -> Result<(), DeskError> {
    let mut store = open_to_write(folder)?;
    let differs = |subject| store.ledger().disagreement(subject, field).is_some();
    let subject = Names::whole(&store)?.find_with(thing, differs)?;
    let found = store.ledger().disagreement(subject, field).ok_or(FactsError::NothingToSettle)?;
    let sides: Vec<FactId> = found.sides.iter().map(|side| side.id()).collect();
    let chosen = chosen(&sides, side)?;
    let act = store.settle(subject, field, chosen)?;
    let value = store.ledger().shown(subject, field).map_or(Value::Null, |fact| fact.value().clone());
    let teller = RecordTeller::new(context, &store)?;
    let told = Phrase::new("desk-settled")
        .phrase("thing", teller.thing_phrase(subject))
        .phrase("field", house::story::field_name(field))
        .text("value", teller.value(field, &value));
    let told = context.say(&told);
    let as_json = SettledJson { act, thing: teller.thing(subject), field: field.to_owned(), value, told };
    context.answer(&as_json, |page| page.paragraph(0, &as_json.told))
}

/// The side that a word chooses: its number, or the id of its record.
fn chosen(sides: &[FactId], word: &str) -> Result<FactId, DeskError> {
    let by_number = word.parse::<usize>().ok().and_then(|number| sides.get(number.checked_sub(1)?).copied());
    let by_id = || match by_beginning(sides.iter().copied(), word).as_slice() {
        [only] => Some(*only),
        _ => None,
    };
    let none = || DeskError::WrongThing { word: word.to_owned(), what: WrongThing::NoSide };
    by_number.or_else(by_id).ok_or_else(none)
}

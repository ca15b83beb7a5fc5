//! `legwork set`: one field of one thing, or several of it, as the sheet would say them.

use std::path::Path;

use facts::fact::{ActId, Edit, Fact};
use serde::Serialize;
use serde_json::Value;

use super::names::Names;
use super::open_to_write;
use super::teller::{RecordTeller, ThingJson, field_of};
use crate::command::context::Context;
use crate::error::DeskError;
use crate::sheet::{Among, Says, edits_of_values};

/// The word for a value that nobody knows.
const NOT_KNOWN: &str = "not-known";

#[derive(Serialize)]
struct SetJson {
    act: Option<ActId>,
    thing: ThingJson,
    set: Vec<FieldJson>,
}

#[derive(Serialize)]
struct FieldJson {
    thing: ThingJson,
    field: String,
    value: Value,
    told: String,
}

/// Sets them, all or none.
pub fn run(context: &Context, folder: &Path, thing: &str, told: &[String]) -> Result<(), DeskError> {
    let mut store = open_to_write(folder)?;
    let names = Names::shown(&store)?;
    let subject = names.find(thing)?;
    let told: Vec<(&str, Says<'_>)> =
        told.chunks(2).filter_map(|pair| Some((pair.first()?.as_str(), says(pair.get(1)?)))).collect();
    let among = Among { survey: names.survey(), ledger: store.ledger(), folder: Path::new(".") };
    let edits = edits_of_values(&among, subject, &told).map_err(|(field, why)| DeskError::NotSet {
        word: thing.to_owned(),
        field,
        why: Box::new(why),
    })?;
    let is_new = |edit: &&Edit| {
        let shown = store.ledger().shown(edit.subject, &edit.field).map(Fact::value);
        shown != Some(&edit.value) && !(shown.is_none() && edit.value.is_null())
    };
    let changed: Vec<_> = edits.iter().filter(is_new).cloned().collect();
    let act = if changed.is_empty() { None } else { Some(store.write(&changed)?) };
    let teller = RecordTeller::new(context, &store)?;
    let one = |edit: &Edit| FieldJson {
        thing: teller.thing(edit.subject),
        field: edit.field.clone(),
        value: edit.value.clone(),
        told: teller.value(&edit.field, &edit.value),
    };
    let as_json = SetJson { act, thing: teller.thing(subject), set: changed.iter().map(one).collect() };
    context.answer(&as_json, |page| {
        if changed.is_empty() {
            page.paragraph(0, &context.word("desk-set-nothing"));
            return;
        }
        page.paragraph(0, &context.word("desk-set"));
        for (edit, said) in changed.iter().zip(&as_json.set) {
            let field = field_of(Some(&teller), edit.subject, &edit.field);
            page.rows(2, &[(context.say(&field), said.told.clone())]);
        }
    })
}

fn says(value: &str) -> Says<'_> {
    if value == NOT_KNOWN { Says::NotKnown } else { Says::Value(value) }
}

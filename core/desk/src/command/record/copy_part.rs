//! `legwork copy-part`: another part like one that is there, under a tag of its own.

use std::path::Path;

use facts::fact::{ActId, Edit, SubjectId};
use house::record::{Is, field};
use serde::Serialize;

use super::names::Names;
use super::open_to_write;
use super::teller::{RecordTeller, ThingJson};
use crate::command::context::Context;
use crate::error::{DeskError, WrongThing};
use crate::sheet::{Among, Says, ValueFault, edits_of_values};

/// What makes a part one like another: not where it is, what feeds it, what was found at it.
const ALIKE: [&str; 4] = [field::KIND, field::LABEL, field::RATING, field::MEASUREMENT];

#[derive(Serialize)]
struct CopiedJson {
    act: ActId,
    part: ThingJson,
    like: ThingJson,
}

/// Copies it.
pub fn run(context: &Context, folder: &Path, thing: &str, tag: &str) -> Result<(), DeskError> {
    let mut store = open_to_write(folder)?;
    let names = Names::shown(&store)?;
    let like = names.find(thing)?;
    if !names.survey().parts.contains_key(&like) {
        return Err(DeskError::WrongThing { word: thing.to_owned(), what: WrongThing::NotAPart });
    }
    // The tag is looked at as one that is set.
    let among = Among { survey: names.survey(), ledger: store.ledger(), folder: Path::new(".") };
    let not_set = |(field, why): (String, ValueFault)| DeskError::NotSet {
        word: thing.to_owned(),
        field,
        why: Box::new(why),
    };
    let taken = || not_set((field::TAG.to_owned(), ValueFault::Taken));
    if names.survey().parts.get(&like).is_some_and(|part| part.tag.as_deref() == Some(tag)) {
        return Err(taken());
    }
    edits_of_values(&among, like, &[(field::TAG, Says::Value(tag))]).map_err(not_set)?;
    let part = SubjectId::random();
    let mut edits = vec![Is::Part.begin(part), field::part::TAG.set(part, tag)];
    for name in ALIKE {
        if let Some(fact) = store.ledger().shown(like, name).filter(|fact| !fact.value().is_null()) {
            edits.push(Edit::new(part, name, fact.value().clone()));
        }
    }
    let act = store.write(&edits)?;
    let teller = RecordTeller::new(context, &store)?;
    let as_json = CopiedJson { act, part: teller.thing(part), like: teller.thing(like) };
    context.answer(&as_json, |page| {
        let told = phrase::Phrase::new("desk-part-copied")
            .phrase("part", teller.thing_phrase(part))
            .phrase("like", teller.thing_phrase(like));
        page.paragraph(0, &context.say(&told));
    })
}

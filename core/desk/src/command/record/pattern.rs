//! `legwork surveys pattern`: a survey of the next flat, built as this one: its parts, cables, labels and rooms, and nothing of
//! who lives there, what was measured, photographed or noted.

use std::collections::BTreeMap;

use facts::fact::{Edit, Ledger, SubjectId};
use facts::store::Store;
use house::record::{Is, Named, Survey, field};
use serde_json::Value;

use crate::sheet::name_anew;

/// The fields of each kind of record that a pattern takes along.
fn taken(is: &str, name: &str) -> bool {
    let fields: &[&str] = match is {
        "part" => &[
            field::KIND,
            field::TAG,
            field::WHERE,
            field::FEED,
            field::LABEL,
            field::RATING,
            field::ROOM,
            field::ENTRY_KIND,
            field::MEASUREMENT,
        ],
        "run" => &[field::TAG, field::CABLE, field::LENGTH, field::CONNECTOR_NEAR, field::CONNECTOR_FAR],
        "room" => &[field::NAME],
        "service" => &[field::KIND, field::TOP, field::ENTRY, field::SIGNAL, field::SINGLE_CABLE],
        "measurement" => {
            return name == field::PORTS
                || name == field::DIGEST
                || field::TEXT_PIECE.number::<usize>(name).is_some();
        }
        _ => &[],
    };
    fields.contains(&name) || (is == "part" && field::END.number::<u8>(name).is_some())
}

/// The edits that make the survey `new` after the pattern of `store`. Every thing is a new one.
pub fn edits(store: &Store, survey: &Survey, new: SubjectId, name: &str) -> Vec<Edit> {
    let ledger = store.ledger();
    let things: Vec<(SubjectId, &'static str)> = (survey.rooms.keys().map(|id| (*id, Is::Room)))
        .chain(survey.parts.keys().map(|id| (*id, Is::Part)))
        .chain(survey.runs.keys().map(|id| (*id, Is::Run)))
        .chain(survey.services.keys().map(|id| (*id, Is::Service)))
        .chain(survey.measurements.keys().map(|id| (*id, Is::Measurement)))
        .map(|(id, is)| (id, is.name()))
        .collect();
    let ids: BTreeMap<SubjectId, SubjectId> =
        things.iter().map(|(id, _)| (*id, SubjectId::random())).chain([(survey.id, new)]).collect();
    let mut edits = vec![Is::Survey.begin(new), field::survey::NAME.set(new, name)];
    for building in [field::BUILDING, field::NETWORK] {
        edits.extend(said(ledger, survey.id, building).map(|value| Edit::new(new, building, value)));
    }
    // What is named comes before what names it, so that no feed leads to what is not there yet.
    for (id, is) in &things {
        let Some(own) = ids.get(id) else { continue };
        edits.push(Edit::new(*own, field::IS, *is));
        for name in ledger.fields(*id).filter(|name| taken(is, name) && *name != field::FEED) {
            edits.extend(anew(ledger, *id, *own, name, &ids));
        }
    }
    for id in survey.parts.keys() {
        edits.extend(ids.get(id).and_then(|own| anew(ledger, *id, *own, field::FEED, &ids)));
    }
    edits
}

fn said(ledger: &Ledger, subject: SubjectId, name: &str) -> Option<Value> {
    ledger.shown(subject, name).map(|fact| fact.value().clone()).filter(|value| !value.is_null())
}

fn anew(
    ledger: &Ledger,
    from: SubjectId,
    to: SubjectId,
    name: &str,
    ids: &BTreeMap<SubjectId, SubjectId>,
) -> Option<Edit> {
    let mut value = said(ledger, from, name)?;
    name_anew(&mut value, ids);
    Some(Edit::new(to, name, value))
}

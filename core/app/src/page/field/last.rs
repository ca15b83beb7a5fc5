//! The same as last time: the answer that this device gave last to the same kind of question.

use serde_json::Value;
use survey::fact::{Fact, SubjectId};
use survey::record::{PartKind, field};
use survey::story;
use survey::words::Phrase;

use crate::ask::Question;
use crate::deed::Deed;
use crate::scene::Scene;

/// An answer that may be given again.
pub(in crate::page) struct Same {
    /// What the press says.
    pub(in crate::page) words: Phrase,
    /// What is picked and written then.
    pub(in crate::page) given: Vec<Deed>,
}

/// The newest fact of this device about a field of any of these things.
fn newest<'a>(scene: &Scene<'a>, things: impl Iterator<Item = SubjectId>, name: &str) -> Option<&'a Fact> {
    let told = things.filter_map(|thing| scene.ledger.shown(thing, name));
    told.filter(|fact| fact.by() == scene.me && !fact.value().is_null()).max_by_key(|fact| fact.id())
}

/// What was answered last to this kind of question, unless it stands here already.
pub(in crate::page) fn same_as_last(scene: &Scene<'_>, question: &Question) -> Option<Same> {
    let survey = scene.survey;
    let runs = |but: SubjectId| survey.runs.keys().copied().filter(move |run| *run != but);
    let parts = |but: SubjectId| survey.parts.keys().copied().filter(move |part| *part != but);
    let pick = |key: &str, picked: Vec<String>| Deed::Pick { key: key.into(), picked };
    let (name, fact, given) = match question {
        Question::Cable(run) => {
            let fact = newest(scene, runs(*run), field::CABLE)?;
            let series = fact.value().as_str().filter(|series| *series != "unknown")?;
            (field::CABLE, fact, vec![pick("series", vec![series.to_owned()])])
        }
        Question::ConnectorsOf(run) => {
            let near = newest(scene, runs(*run), field::CONNECTOR_NEAR);
            let far = newest(scene, runs(*run), field::CONNECTOR_FAR);
            let last = near.into_iter().chain(far).max_by_key(|fact| fact.id())?;
            let end =
                |name: &str| scene.ledger.shown(last.subject(), name).and_then(|fact| fact.value().as_str());
            let word = |name: &str| end(name).filter(|word| *word != "unknown").map(str::to_owned);
            let near = word(field::CONNECTOR_NEAR);
            let far = word(field::CONNECTOR_FAR);
            let words = last.value().as_str().filter(|word| *word != "unknown").map(|_| last)?;
            let near = near.map(|near| pick("near", vec![near]));
            let far = far.map(|far| pick("far", vec![far]));
            (field::CONNECTOR_NEAR, words, near.into_iter().chain(far).collect())
        }
        Question::Label(part) => {
            let kind = survey.parts.get(part).map(|part| part.kind);
            let same_kind = |id: &SubjectId| {
                let of = survey.parts.get(id).map(|part| part.kind);
                kind == Some(PartKind::Unknown) || of == kind
            };
            let fact = newest(scene, parts(*part).filter(same_kind), field::LABEL)?;
            let words = fact.value().as_str()?.to_owned();
            (field::LABEL, fact, vec![Deed::Write { key: "text".into(), words }])
        }
        Question::Plugged(outlet) => {
            let fact = newest(scene, parts(*outlet), field::PLUGGED)?;
            let devices = fact.value().as_array()?.iter().filter_map(Value::as_str);
            let mut picked: Vec<String> = devices.map(str::to_owned).collect();
            if picked.is_empty() {
                picked.push("nothing".into());
            }
            (field::PLUGGED, fact, vec![pick("plugged", picked)])
        }
        _ => return None,
    };
    let here = about(question).and_then(|thing| scene.ledger.shown(thing, name));
    if here.is_some_and(|here| here.value() == fact.value()) {
        return None;
    }
    let value = story::value(survey, name, fact.value());
    Some(Same { words: Phrase::new("free-same").phrase("value", value), given })
}

fn about(question: &Question) -> Option<SubjectId> {
    match question {
        Question::Cable(thing)
        | Question::ConnectorsOf(thing)
        | Question::Label(thing)
        | Question::Plugged(thing) => Some(*thing),
        _ => None,
    }
}

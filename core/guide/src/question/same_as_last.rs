//! The same as last time: the answer that this device gave last to the same kind of question.

use facts::fact::{Fact, SubjectId};
use house::record::{PartKind, field};
use house::story;
use phrase::{Arg, Phrase};
use serde_json::Value;

use crate::done::Done;
use crate::place::{Key, Question};
use crate::session::SurveySnapshot;

/// A word of a closed list that tells nothing.
const UNKNOWN: &str = "unknown";

/// Plugs of which one is much like the next.
const GOOD: [&str; 2] = ["compression", "crimp"];

/// An answer that may be given again.
pub(crate) struct Same {
    /// What the press says.
    pub(crate) words: Phrase,
    /// What is picked and written then.
    pub(crate) given: Vec<Done>,
    /// Whether that answers the whole question.
    pub(crate) leads_on: bool,
}

/// The newest fact of this device about a field of any of these things.
fn newest<'a>(
    snapshot: &SurveySnapshot<'a>,
    things: impl Iterator<Item = SubjectId>,
    name: &str,
) -> Option<&'a Fact> {
    let told = things.filter_map(|thing| snapshot.ledger.shown(thing, name));
    told.filter(|fact| fact.by() == snapshot.me && !fact.value().is_null()).max_by_key(|fact| fact.id())
}

/// What was answered last to this kind of question, unless it stands here already.
pub(crate) fn same_as_last(snapshot: &SurveySnapshot<'_>, question: &Question) -> Option<Same> {
    let survey = snapshot.survey;
    let runs = |but: SubjectId| survey.runs.keys().copied().filter(move |run| *run != but);
    let parts = |but: SubjectId| survey.parts.keys().copied().filter(move |part| *part != but);

    let (facts, given) = match question {
        Question::Cable(run) => {
            let fact = newest(snapshot, runs(*run), field::CABLE)?;
            let series = fact.value().as_str().filter(|series| *series != UNKNOWN)?;
            (vec![fact], vec![Done::Pick(Key::Series, vec![series.to_owned()])])
        }
        Question::ConnectorsOf(run) => {
            let ends = [(Key::Near, field::CONNECTOR_NEAR), (Key::Far, field::CONNECTOR_FAR)];
            let last = ends.iter().filter_map(|(_, name)| newest(snapshot, runs(*run), name));
            let cable = last.max_by_key(|fact| fact.id())?.subject();
            let known = |(key, name): (Key, &str)| {
                let fact = snapshot.ledger.shown(cable, name)?;
                // A bad plug is looked at anew each time.
                let word = fact.value().as_str().filter(|word| GOOD.contains(word))?;
                Some((fact, Done::Pick(key, vec![word.to_owned()])))
            };
            // Both ends good, or nothing.
            let known: Option<Vec<_>> = ends.into_iter().map(known).collect();
            known?.into_iter().unzip()
        }
        Question::Label(part) => {
            let kind = survey.parts.get(part).map(|part| part.kind);
            let same_kind = |id: &SubjectId| {
                let of = survey.parts.get(id).map(|part| part.kind);
                kind == Some(PartKind::Unknown) || of == kind
            };
            let fact = newest(snapshot, parts(*part).filter(same_kind), field::LABEL)?;
            let words = fact.value().as_str()?.to_owned();
            (vec![fact], vec![Done::Write(Key::Text, words)])
        }
        Question::Plugged(outlet) => {
            let fact = newest(snapshot, parts(*outlet), field::PLUGGED)?;
            let devices = fact.value().as_array()?.iter().filter_map(Value::as_str);
            let mut picked: Vec<String> = devices.map(str::to_owned).collect();
            if picked.is_empty() {
                picked.push("nothing".into());
            }
            (vec![fact], vec![Done::Pick(Key::Plugged, picked)])
        }
        _ => return None,
    };
    let here = about(question)?;
    let stands = |fact: &&Fact| {
        snapshot.ledger.shown(here, fact.field()).is_some_and(|here| here.value() == fact.value())
    };
    if facts.iter().all(stands) {
        return None;
    }
    let said = facts.iter().map(|fact| story::value(survey, fact.field(), fact.value()));
    let said = said.map(|phrase| Arg::Phrase(Box::new(phrase))).collect();
    let value = Phrase::new("value-several").with("several", Arg::Several(said));
    // How long a cable is no other one tells, unless nobody knows of that one either.
    let is_long = |run: &SubjectId| survey.runs.get(run).is_some_and(|run| run.length.is_some());
    let leads_on = match question {
        Question::Cable(run) => {
            let typed =
                snapshot.pending().typed(&Key::Length).is_some_and(|(typed, _)| !typed.trim().is_empty());
            typed || is_long(run) || facts.iter().any(|fact| !is_long(&fact.subject()))
        }
        _ => true,
    };
    Some(Same { words: Phrase::new("free-same").phrase("value", value), given, leads_on })
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

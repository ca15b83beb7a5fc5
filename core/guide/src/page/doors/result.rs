//! The rows of the overview that lead to what follows from the survey, each with how far it is.

use advice::verdict::{answers, is_tested, met};
use advice::worklist::{are_adapters_placed, has_no_adapters};
use house::record::OutcomeKind;
use phrase::{Arg, Phrase};

use super::Doors;
use crate::place::{Key, Place, ResultPlace};
use crate::session::Scene;
use crate::view::stages;

/// The rows: key, name, and what stands beside it.
pub(crate) fn doors(scene: &Scene<'_>) -> Doors {
    let mut doors = vec![
        (Key::Forecast, Phrase::new("forecast"), Some(through(scene))),
        (
            Key::Findings,
            Phrase::new("findings"),
            scene.worked().map(|worked| count("door-findings", worked.findings.len())),
        ),
        (Key::Work, Phrase::new("work"), Some(work(scene))),
        (Key::Private, Phrase::new("private"), Some(privacy(scene))),
        (Key::Tests, Phrase::new("tests"), Some(tested(scene))),
        (Key::Compare, Phrase::new("compare"), None),
        (Key::Handover, Phrase::new("handover"), Some(given(scene))),
    ];
    if has_no_adapters(scene.survey) {
        let placed = are_adapters_placed(scene.survey);
        let told = Phrase::new(if placed { "door-done" } else { "open" });
        let place = doors.iter().position(|(key, ..)| *key == Key::Private).unwrap_or_default();
        doors.insert(place, (Key::Placing, Phrase::new("placing"), Some(told)));
    }
    doors
}

/// Where such a row leads.
pub(crate) fn door(key: &Key) -> Option<Place> {
    ResultPlace::of_key(key).map(Place::Result)
}

fn count(id: &str, count: usize) -> Phrase {
    Phrase::new(id).with("count", Arg::Count(count as u64))
}

fn through(scene: &Scene<'_>) -> Phrase {
    let Some(worked) = scene.worked() else { return Phrase::new("door-not-worked-out") };
    let answers = answers(scene.survey, worked.forecast());
    if answers.is_empty() {
        return count("door-rooms", worked.forecast().rooms.len());
    }
    let met = Arg::Count(met(&answers) as u64);
    Phrase::new("door-rooms-met").with("met", met).with("of", Arg::Count(answers.len() as u64))
}

fn work(scene: &Scene<'_>) -> Phrase {
    let done = scene.survey.works.values().filter(|work| work.outcome.end == OutcomeKind::Done).count();
    match scene.worked() {
        Some(worked) => {
            count("door-work-left", worked.list.steps.len()).with("done", Arg::Count(done as u64))
        }
        None => count("door-work-done", done),
    }
}

fn privacy(scene: &Scene<'_>) -> Phrase {
    let told = scene.survey.answer(scene.survey.id, stages::PASSWORD_SET).and_then(|answer| answer.as_str());
    Phrase::new(if told == Some("yes") { "door-done" } else { "open" })
}

fn tested(scene: &Scene<'_>) -> Phrase {
    let outlets = stages::outlets(scene.survey);
    let done = outlets.iter().filter(|outlet| is_tested(scene.survey, **outlet)).count();
    count("door-tested", done).with("of", Arg::Count(outlets.len() as u64))
}

fn given(scene: &Scene<'_>) -> Phrase {
    Phrase::new(match stages::given(scene) {
        0 => "open",
        1 => "door-half",
        _ => "door-done",
    })
}

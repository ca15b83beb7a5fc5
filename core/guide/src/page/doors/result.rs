//! The rows of the overview that lead to what follows from the survey, each with how far it is.

use advice::adapters::{adapters_to_come, are_adapters_placed, has_no_adapters};
use advice::verdict::{answers, is_tested, met};
use house::record::{Asked, OutcomeKind, Reply};
use phrase::{Arg, Phrase};

use super::Doors;
use crate::place::{Key, Place, ResultPlace};
use crate::session::SurveySnapshot;
use crate::view::stages;

/// The rows: key, name, and what stands beside it.
pub(crate) fn doors(snapshot: &SurveySnapshot<'_>) -> Doors {
    let mut doors = vec![
        (Key::Forecast, Phrase::new("forecast"), Some(through(snapshot))),
        (
            Key::Findings,
            Phrase::new("findings"),
            snapshot.worked().map(|worked| count("door-findings", worked.findings.len())),
        ),
        (Key::Work, Phrase::new("work"), Some(work(snapshot))),
        (Key::Private, Phrase::new("private"), Some(privacy(snapshot))),
        (Key::Tests, Phrase::new("tests"), Some(tested(snapshot))),
        (Key::Compare, Phrase::new("compare"), None),
        (Key::Handover, Phrase::new("handover"), Some(given(snapshot))),
    ];
    if has_no_adapters(snapshot.survey) || !adapters_to_come(snapshot.survey).is_empty() {
        let placed = are_adapters_placed(snapshot.survey);
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

fn through(snapshot: &SurveySnapshot<'_>) -> Phrase {
    let Some(worked) = snapshot.worked() else { return Phrase::new("door-not-worked-out") };
    let answers = answers(snapshot.survey, worked.forecast());
    if answers.is_empty() {
        return count("door-rooms", worked.forecast().rooms.len());
    }
    let met = Arg::Count(met(&answers) as u64);
    Phrase::new("door-rooms-met").with("met", met).with("of", Arg::Count(answers.len() as u64))
}

fn work(snapshot: &SurveySnapshot<'_>) -> Phrase {
    let done = snapshot.survey.works.values().filter(|work| work.outcome.end == OutcomeKind::Done).count();
    match snapshot.worked() {
        Some(worked) => {
            count("door-work-left", worked.list.steps.len()).with("done", Arg::Count(done as u64))
        }
        None => count("door-work-done", done),
    }
}

fn privacy(snapshot: &SurveySnapshot<'_>) -> Phrase {
    let told = snapshot.survey.reply(snapshot.survey.id, Asked::PrivatePassword);
    Phrase::new(if told == Some(Reply::Yes) { "door-done" } else { "open" })
}

fn tested(snapshot: &SurveySnapshot<'_>) -> Phrase {
    let outlets = stages::outlets(snapshot.survey);
    let done = outlets.iter().filter(|outlet| is_tested(snapshot.survey, **outlet)).count();
    count("door-tested", done).with("of", Arg::Count(outlets.len() as u64))
}

fn given(snapshot: &SurveySnapshot<'_>) -> Phrase {
    Phrase::new(match stages::given(snapshot) {
        0 => "open",
        1 => "door-half",
        _ => "door-done",
    })
}

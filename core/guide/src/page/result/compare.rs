//! Forecast against test: what was measured beside what was expected, and where to look where it is less.

use advice::finding::{FindingKind, Lies, held_against};
use advice::forecast::{PathForecast, Reach};
use advice::unknown::{Matters, Unknown};
use coax::Span;
use facts::fact::SubjectId;
use house::record::{Reading, ReadingKind, Survey, TestReach};
use phrase::{Arg, Phrase};

use super::{findings, reading, telling, unknowns, waiting};
use crate::place::key_of;
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Scene, Weighed, Worked};
use crate::view::{Sketch, shown, stages};

/// A test to the internet that reaches this share of the plan's rate is held by the plan.
const AT_THE_PLAN: f64 = 0.9;

/// The most rows of one kind below the rooms.
const ROWS: usize = 30;

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("compare"));
    let Some(worked) = waiting::worked(scene, &mut sketch) else { return sketch.screen };
    let survey = scene.survey;
    let outlets: Vec<_> = stages::outlets(survey)
        .into_iter()
        .filter(|outlet| survey.readings_at(*outlet).any(|told| reading::is_of_test(told.measured)))
        .collect();
    let below: Vec<_> = outlets.iter().copied().filter(|outlet| is_below(survey, worked, *outlet)).collect();
    let lead = match (outlets.is_empty(), below.is_empty()) {
        (true, _) => "compare-none",
        (false, true) => "compare-all-fine",
        (false, false) if below.iter().all(|outlet| is_as_wished(survey, *outlet)) => {
            "compare-below-as-wished"
        }
        (false, false) => "compare-some-below",
    };
    sketch.words(WordsRole::Lead, &Phrase::new(lead).with("below", Arg::Count(below.len() as u64)));
    if !outlets.is_empty() {
        sketch.words(WordsRole::Why, &Phrase::new("compare-why"));
    }
    let first = shown::page(scene, outlets.len()) * shown::ROWS;
    let page = outlets.iter().skip(first).take(shown::ROWS);
    let rows = page.map(|outlet| row(scene, &sketch, worked, *outlet)).collect();
    sketch.rows(&Phrase::new("compare-rooms"), rows);
    shown::turn(scene, &mut sketch, outlets.len());
    let mut asked: Vec<&Weighed> = Vec::new();
    for unknown in below.iter().flat_map(|outlet| on_way(survey, worked, *outlet)) {
        if !asked.contains(&unknown) && asked.len() < ROWS {
            asked.push(unknown);
        }
    }
    let rows = asked.into_iter().map(|unknown| unknowns::row(scene, &sketch, unknown)).collect();
    sketch.rows(&Phrase::new("compare-unknown"), rows);
    let found = worked.findings.iter().filter(|finding| is_of_test(finding.kind)).take(ROWS);
    let rows = found.map(|finding| findings::row(&sketch, worked, finding)).collect();
    sketch.rows(&Phrase::new("compare-findings"), rows);
    sketch.press("handover", &Phrase::new("to-handover"), PressWeight::Main);
    sketch.press("tests", &Phrase::new("to-tests"), PressWeight::Other);
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

fn is_of_test(kind: FindingKind) -> bool {
    matches!(
        kind,
        FindingKind::MeasuredBelowForecast
            | FindingKind::LossAboveForecast
            | FindingKind::SocketHoldsTest
            | FindingKind::OneWaySlower
            | FindingKind::LossUnderLoad
            | FindingKind::SpeedSwings
            | FindingKind::MeasuredAboveForecast
    )
}

fn path(worked: &Worked, outlet: SubjectId) -> Option<&PathForecast> {
    match &worked.forecast().room(outlet)?.reach {
        Reach::Estimated(path) => Some(path),
        _ => None,
    }
}

/// What a rate that was measured can tell of the coax.
enum Tells {
    /// It is of the coax.
    Coax,
    /// Some of the way was by radio.
    Radio,
    /// The internet plan holds it.
    Plan,
    /// It went out to the internet, which may be slower for other reasons.
    Internet,
}

fn tells(survey: &Survey, told: &Reading, down_mbps: f64) -> Tells {
    let at_plan = survey.internet.is_some_and(|plan| down_mbps >= plan.down_mbps * AT_THE_PLAN);
    match told.how {
        Some(how) if how.reach == TestReach::Internet && at_plan => Tells::Plan,
        Some(how) if how.over_radio => Tells::Radio,
        Some(how) if how.reach == TestReach::Internet => Tells::Internet,
        // Nobody said how: at the plan's rate the plan may well have held it.
        None if at_plan && survey.internet.is_some_and(|plan| down_mbps <= plan.down_mbps * 1.1) => {
            Tells::Plan
        }
        _ => Tells::Coax,
    }
}

/// Where a measured rate lies, as the end of a message's name, and the range that was to be expected of such a test.
fn lies(told: &Reading, mbps: f64, forecast: Span) -> (&'static str, Span, Option<f64>) {
    let (lies, expected) = held_against(mbps, forecast, told.how.and_then(|how| how.socket_mbps));
    match lies {
        Lies::Below => ("below", expected, None),
        Lies::Within => ("within", expected, None),
        Lies::Above => ("above", expected, None),
        Lies::AtSocket(socket) => ("at-socket", expected, Some(socket)),
        Lies::NearSocket(socket) => ("near-socket", expected, Some(socket)),
    }
}

/// Whether a test over the cable gives what is wished at an outlet.
fn is_as_wished(survey: &Survey, outlet: SubjectId) -> bool {
    let Some(wish) = survey.wish_at(outlet) else { return false };
    let over_cable = |told: &Reading, down_mbps| matches!(tells(survey, told, down_mbps), Tells::Coax);
    let mut rates = survey.readings_at(outlet).filter_map(|told| match told.measured {
        ReadingKind::Throughput { down_mbps, up_mbps } if over_cable(told, down_mbps) => {
            Some((down_mbps, up_mbps))
        }
        _ => None,
    });
    rates.any(|(down_mbps, up_mbps)| down_mbps >= wish.down_mbps && up_mbps >= wish.up_mbps)
}

/// Whether something measured at an outlet that tells of the coax lies below the range that was expected.
fn is_below(survey: &Survey, worked: &Worked, outlet: SubjectId) -> bool {
    let Some(path) = path(worked, outlet) else { return false };
    survey.readings_at(outlet).any(|told| match told.measured {
        ReadingKind::Throughput { down_mbps, up_mbps } => {
            matches!(tells(survey, told, down_mbps), Tells::Coax)
                && [(down_mbps, path.down), (up_mbps, path.up)]
                    .iter()
                    .any(|(mbps, range)| lies(told, *mbps, *range).0 == "below")
        }
        measured => measured.path_loss_db().is_some_and(|loss| loss > path.loss.high),
    })
}

fn row(scene: &Scene<'_>, sketch: &Sketch<'_>, worked: &Worked, outlet: SubjectId) -> RowEntry {
    let survey = scene.survey;
    let path = path(worked, outlet);
    let as_wished = is_as_wished(survey, outlet);
    let of_test = survey.readings_at(outlet).filter(|told| reading::is_of_test(told.measured));
    let mut told: Vec<Phrase> = as_wished.then(|| Phrase::new("compare-wish-met")).into_iter().collect();
    told.extend(of_test.take(12).flat_map(|told| against(survey, told, path)));
    if path.is_none() {
        told.push(Phrase::new("compare-no-forecast"));
    }
    let told = told.into_iter().map(|phrase| sketch.say(&phrase)).collect::<Vec<_>>().join(" ");
    let culprit =
        path.filter(|_| is_below(survey, worked, outlet)).and_then(|path| culprit(survey, path, as_wished));
    sketch.row(
        Some(key_of("room", outlet)),
        &shown::outlet(survey, outlet),
        Some(&Phrase::new("text").text("text", told)),
        culprit.as_ref(),
    )
}

/// One reading against the forecast, a sentence for each way.
fn against(survey: &Survey, told: &Reading, path: Option<&PathForecast>) -> Vec<Phrase> {
    let plain =
        || vec![Phrase::new("compare-reading").phrase("reading", house::naming::reading(told.measured))];
    let Some(path) = path else { return plain() };
    match told.measured {
        ReadingKind::Throughput { down_mbps, up_mbps } => {
            let id = match tells(survey, told, down_mbps) {
                Tells::Coax => {
                    let ways = [("down", down_mbps, path.down), ("up", up_mbps, path.up)];
                    return ways
                        .map(|(way, mbps, range)| {
                            let (lies, expected, socket) = lies(told, mbps, range);
                            let phrase = Phrase::new(format!("compare-{lies}"))
                                .text("way", way)
                                .with("measured", Arg::RateAsRead(mbps))
                                .with("expected", Arg::RateRange(expected));
                            match socket {
                                Some(socket) => phrase.with("socket", Arg::RateAsRead(socket)),
                                None => phrase,
                            }
                        })
                        .into();
                }
                Tells::Radio => "compare-radio",
                Tells::Plan => "compare-plan",
                Tells::Internet => "compare-internet",
            };
            vec![Phrase::new(id).phrase("reading", house::naming::reading(told.measured))]
        }
        measured => match measured.path_loss_db() {
            Some(loss) => {
                let id = if loss > path.loss.high { "compare-loss-above" } else { "compare-loss-within" };
                let phrase = Phrase::new(id).with("measured", Arg::Loss(loss));
                vec![phrase.with("expected", Arg::LossRange(path.loss))]
            }
            None => plain(),
        },
    }
}

fn culprit(survey: &Survey, path: &PathForecast, as_wished: bool) -> Option<Phrase> {
    let dearest = telling::dearest(path)?;
    let place = telling::cost_place(survey, dearest.at);
    let id = if as_wished { "compare-culprit-if-wanted" } else { "compare-culprit" };
    let splitter = if telling::is_splitter(survey, dearest.at) { "yes" } else { "no" };
    let phrase = Phrase::new(id).phrase("place", place).text("splitter", splitter);
    Some(phrase.with("loss", Arg::Loss(dearest.db)))
}

/// What is not known on the way to an outlet.
fn on_way<'a>(
    survey: &'a Survey,
    worked: &'a Worked,
    outlet: SubjectId,
) -> impl Iterator<Item = &'a Weighed> {
    let weakest = worked.forecast().weakest_first().first().map(|(room, _)| room.outlet);
    worked.unknowns.iter().filter(move |weighed| {
        let unknown = &weighed.unknown;
        let on_way = match &unknown.matters {
            Matters::Weakest => weakest == Some(outlet) || shares_way(survey, worked, unknown, outlet),
            Matters::OnWayTo(outlets) => outlets.contains(&outlet),
            _ => false,
        };
        on_way && unknowns::question(survey, unknown).is_some()
    })
}

/// What lies on the way to the weakest room may lie on the way to others too.
fn shares_way(survey: &Survey, worked: &Worked, unknown: &Unknown, outlet: SubjectId) -> bool {
    let bridge = worked.forecast().bridge;
    let way = bridge.and_then(|bridge| survey.wiring.way_between(bridge, outlet));
    way.is_some_and(|way| way.contains(&unknown.about))
}

//! Forecast against test: what was measured beside what was expected, and where to look where it is less.

use advice::finding::FindingKind;
use advice::forecast::told;
use advice::unknown::{Matters, Unknown};
use advice::verdict::RoomVerdict;
use facts::fact::SubjectId;
use house::record::Survey;
use phrase::{Arg, Phrase};

use super::{findings, telling, unknowns, waiting};
use crate::place::Key;
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{SurveySnapshot, Weighed, Worked, question_of};
use crate::view::{ScreenBuilder, shown, stages};

/// The most rows of one kind below the rooms.
const ROWS: usize = 30;

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("compare"));
    let Some(worked) = waiting::worked(snapshot, &mut builder) else { return builder.screen };
    let survey = snapshot.survey;
    let rooms: Vec<_> = stages::outlets(survey)
        .into_iter()
        .map(|outlet| RoomVerdict::at(survey, outlet, Some(worked.forecast())))
        .filter(|room| !room.readings.is_empty())
        .collect();
    builder.words(WordsRole::Lead, &lead(&rooms));
    if !rooms.is_empty() {
        builder.words(WordsRole::Why, &Phrase::new("compare-why"));
    }
    let first = shown::page(snapshot, rooms.len()) * shown::ROWS;
    let page = rooms.iter().skip(first).take(shown::ROWS);
    let rows = page.map(|room| row(snapshot, &builder, worked, room)).collect();
    builder.rows(&Phrase::new("compare-rooms"), rows);
    shown::turn(snapshot, &mut builder, rooms.len());
    let mut asked: Vec<&Weighed> = Vec::new();
    let short = rooms.iter().filter(|room| room.falls_short());
    for unknown in short.flat_map(|room| on_way(survey, worked, room.outlet)) {
        if !asked.contains(&unknown) && asked.len() < ROWS {
            asked.push(unknown);
        }
    }
    let rows = asked.into_iter().map(|unknown| unknowns::row(snapshot, &builder, unknown)).collect();
    builder.rows(&Phrase::new("compare-unknown"), rows);
    let found = worked.findings.iter().filter(|finding| is_of_test(finding.kind)).take(ROWS);
    let rows = found.map(|finding| findings::row(&builder, worked, finding)).collect();
    builder.rows(&Phrase::new("compare-findings"), rows);
    // A test that failed leads on to what comes next for it.
    let has_failed = !worked.list.failed.is_empty();
    if has_failed {
        builder.press(&Key::Work, &Phrase::new("compare-to-work"), PressWeight::Main);
    }
    let handover = if has_failed { PressWeight::Other } else { PressWeight::Main };
    builder.press(&Key::Handover, &Phrase::new("to-handover"), handover);
    builder.press(&Key::Tests, &Phrase::new("to-tests"), PressWeight::Other);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

fn is_of_test(kind: FindingKind) -> bool {
    matches!(
        kind,
        FindingKind::MeasuredBelowForecast
            | FindingKind::LossAboveForecast
            | FindingKind::SocketHoldsTest
            | FindingKind::NoLink
            | FindingKind::LinkComesAndGoes
            | FindingKind::NodesFewer
            | FindingKind::NodeAlone
            | FindingKind::HundredSomewhere
            | FindingKind::OneWaySlower
            | FindingKind::LossUnderLoad
            | FindingKind::LossWhileQuiet
            | FindingKind::InternetBelowPlan
            | FindingKind::InternetLosesPackets
            | FindingKind::SpeedSwings
            | FindingKind::MeasuredAboveForecast
    )
}

/// How many rooms fall short of what was expected, and whether that hinders what is wished.
fn lead(rooms: &[RoomVerdict<'_>]) -> Phrase {
    let short = rooms.iter().filter(|room| room.falls_short());
    // Of every room that was measured over the cable, where something is wished there; of one that falls short, only if so.
    let as_wished = |room: &&RoomVerdict<'_>| room.is_wished || room.falls_short();
    let over_coax = rooms.iter().filter(|room| room.is_measured_over_coax() || room.falls_short());
    let all_as_wished = over_coax.filter(as_wished).all(RoomVerdict::is_as_wished);
    let count = short.count();
    let id = match count {
        _ if rooms.is_empty() => "compare-none",
        0 => "compare-all-fine",
        _ if all_as_wished => "compare-below-as-wished",
        _ => "compare-some-below",
    };
    Phrase::new(id).with("below", Arg::Count(count as u64))
}

fn row(
    snapshot: &SurveySnapshot<'_>,
    builder: &ScreenBuilder<'_>,
    worked: &Worked,
    room: &RoomVerdict<'_>,
) -> RowEntry {
    let survey = snapshot.survey;
    let path = worked.forecast().path(room.outlet);
    let as_wished = room.is_as_wished();
    let mut told: Vec<Phrase> = as_wished.then(|| Phrase::new("compare-wish-met")).into_iter().collect();
    told.extend(
        room.readings
            .iter()
            .take(12)
            .flat_map(|(reading, verdict)| verdict.phrases(reading, survey.internet)),
    );
    if path.is_none() {
        told.push(Phrase::new("compare-no-forecast"));
    }
    let told = told.into_iter().map(|phrase| builder.say(&phrase)).collect::<Vec<_>>().join(" ");
    let culprit = room.falls_short().then(|| culprit(survey, worked, room)).flatten();
    builder.row(
        Some(Key::Room(room.outlet)),
        &shown::outlet(survey, room.outlet),
        Some(&Phrase::new("text").text("text", told)),
        culprit.as_ref(),
    )
}

/// Where to look first: what on the way is most likely at fault, and what the work list does next for the room; or, where more
/// is expected than is wished, what costs most on the way.
fn culprit(survey: &Survey, worked: &Worked, room: &RoomVerdict<'_>) -> Option<Phrase> {
    if !room.is_as_wished() {
        let failed = worked.list.failed.iter().find(|failed| failed.outlet == room.outlet)?;
        let next = failed.phrase(survey, &worked.list);
        let Some(suspect) = failed.suspect else { return Some(next) };
        let phrase = Phrase::new("compare-suspect").phrase("place", told::place(survey, suspect.at));
        return Some(phrase.text("ground", suspect.ground.name()).phrase("next", next));
    }
    let dearest = worked.forecast().path(room.outlet)?.dearest()?;
    let place = told::place(survey, dearest.at);
    let splitter = if telling::is_splitter(survey, dearest.at) { "yes" } else { "no" };
    let phrase = Phrase::new("compare-culprit-if-wanted").phrase("place", place).text("splitter", splitter);
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
            Matters::OnFailedWay(outlets) | Matters::OnWayTo(outlets) => outlets.contains(&outlet),
            _ => false,
        };
        on_way && question_of(survey, unknown).is_some()
    })
}

/// What lies on the way to the weakest room may lie on the way to others too.
fn shares_way(survey: &Survey, worked: &Worked, unknown: &Unknown, outlet: SubjectId) -> bool {
    let bridge = worked.forecast().bridge;
    let way = bridge.and_then(|bridge| survey.wiring.way_between(bridge, outlet));
    way.is_some_and(|way| way.contains(&unknown.about))
}

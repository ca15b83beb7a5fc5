//! What gets through to each room, in words.

use ::house::naming;
use ::house::record::{Asked, Reply};
use advice::forecast::{Forecast, RoomForecast, channels_left_beside};
use advice::verdict::{Lack, Lacking, Together, Wished, answers, summary};
use advice::worklist::BridgePlace;
use phrase::{Arg, Phrase};

use super::bars::{self, Bars};
use super::{telling, unknowns, waiting};
use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Question, Round};
use crate::question::{Onward, Open, lacking, onward, round_of_next};
use crate::screen::{PressWeight, RowEntry, RowMark, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot, Worked};
use crate::view::{ScreenBuilder, shown};

/// How many unknowns are offered here at once.
const WORTH: usize = 3;

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("forecast"));
    let Some(worked) = waiting::worked(snapshot, &mut builder) else { return builder.screen };
    let forecast = worked.forecast();
    builder.words(WordsRole::Lead, &lead(snapshot, forecast));
    places(snapshot, &mut builder, worked);
    first(snapshot, &mut builder);
    rooms(snapshot, &mut builder, forecast);
    if let Some(left) = channels_left_beside(snapshot.survey, forecast).and_then(|left| left.phrase()) {
        builder.words(WordsRole::Plain, &left);
    }
    together(snapshot, &mut builder, forecast);
    going_back(snapshot, &mut builder, worked);
    presses(snapshot, &mut builder, worked);
    builder.screen
}

/// Whether all is answered that a forecast stands on, and something is open that may change it: then it is a first one.
fn is_first(snapshot: &SurveySnapshot<'_>) -> bool {
    round_of_next(snapshot) == Some(Round::Worth)
}

/// A first, wide forecast says what it takes for granted.
fn first(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
    if is_first(snapshot) {
        builder.words(WordsRole::Plain, &Phrase::new("forecast-first"));
        let granted = Open::of(snapshot).granted();
        let rows = granted.iter().map(|granted| builder.row(None, granted, None, None)).collect();
        builder.rows(&Phrase::new("granted"), rows);
    }
}

fn lead(snapshot: &SurveySnapshot<'_>, forecast: &Forecast) -> Phrase {
    if forecast.bridge.is_none() {
        let survey = snapshot.survey;
        let nowhere = survey.reply(survey.id, Asked::RouterAt) == Some(Reply::None);
        return Phrase::new(if nowhere { "forecast-no-outlet-there" } else { "forecast-no-bridge" });
    }
    summary(&answers(snapshot.survey, forecast))
}

/// Where the network could start: one press leads to the question.
fn places(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, worked: &Worked) {
    if worked.list.places.is_empty() {
        return;
    }
    builder.words(WordsRole::Heading, &Phrase::new("bridge-places"));
    builder.words(WordsRole::Plain, &Phrase::new("bridge-places-why"));
    let row = |place: &BridgePlace| {
        let head = shown::outlet(snapshot.survey, place.outlet);
        builder.row(Some(Key::Ask(Question::RouterAt)), &head, Some(&place.phrase()), None)
    };
    let rows = worked.list.places.iter().map(row).collect();
    builder.rows(&Phrase::new("bridge-places-rows"), rows);
}

fn rooms(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, forecast: &Forecast) {
    let of = forecast.rooms.len();
    let first = shown::page(snapshot, of) * shown::ROWS;
    let bars = Bars::of(snapshot);
    let page = forecast.rooms.iter().skip(first).take(shown::ROWS);
    let rows: Vec<RowEntry> = page.map(|room| row(snapshot, builder, room, bars.as_ref())).collect();
    if of == 0 {
        builder.words(WordsRole::Plain, &Phrase::new("report-forecast-none"));
    }
    builder.rows(&Phrase::new("forecast-rooms"), rows);
    shown::turn(snapshot, builder, of);
    let without = answers(snapshot.survey, forecast).into_iter().filter(|answer| answer.outlet.is_none());
    let rows = without
        .take(30)
        .map(|answer| {
            let head = naming::of_room(snapshot.survey, answer.room);
            let says = Phrase::new("forecast-no-outlet");
            let key = Key::Ask(lacking::question_for(snapshot, Lack::Outlet(answer.room.id)));
            builder.row(Some(key), &head, Some(&says), None).marked(RowMark::NotKnown)
        })
        .collect();
    builder.rows(&Phrase::new("forecast-without"), rows);
}

fn row(
    snapshot: &SurveySnapshot<'_>,
    builder: &ScreenBuilder<'_>,
    room: &RoomForecast,
    bars: Option<&Bars<'_>>,
) -> RowEntry {
    let survey = snapshot.survey;
    let wish = Wished::at(survey, room).map(|wished| wished.phrase());
    let says = telling::reach(survey, room.outlet, &room.reach);
    let head = shown::outlet(survey, room.outlet);
    let row = builder.row(Some(Key::Room(room.outlet)), &head, Some(&says), wish.as_ref());
    let row = row.bar(bars.and_then(|bars| bars.of_room(room)));
    match bars::mark(survey, room) {
        Some(mark) => row.marked(mark),
        None => row,
    }
}

fn together(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, forecast: &Forecast) {
    if Together::is_too_much(forecast) && !answers(snapshot.survey, forecast).is_empty() {
        builder.words(WordsRole::Plain, &Phrase::new("answer-not-together"));
    }
    if forecast.bridge.is_some() && !forecast.rooms.is_empty() {
        let time = Arg::MillisecondsRange(forecast.round_trip_ms);
        builder.words(WordsRole::Aside, &Phrase::new("report-round-trip").with("time", time));
        builder.words(WordsRole::Aside, &Phrase::new("forecast-how"));
    }
}

fn going_back(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, worked: &Worked) {
    let worth: Vec<_> = unknowns::worth_going_back(snapshot, worked).take(WORTH).collect();
    if worth.is_empty() {
        return;
    }
    builder.words(WordsRole::Heading, &Phrase::new("unknowns-worth"));
    builder.words(WordsRole::Why, &Phrase::new("unknowns-why"));
    let rows = worth.into_iter().map(|unknown| unknowns::row(snapshot, builder, unknown)).collect();
    builder.rows(&Phrase::new("unknowns-first"), rows);
}

fn presses(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, worked: &Worked) {
    let on = if is_first(snapshot) {
        builder.press(&Key::Next, &Phrase::new("forecast-ask-on"), PressWeight::Main);
        PressWeight::Other
    } else {
        PressWeight::Main
    };
    let lacking = Lacking::of(snapshot.survey);
    if lacking.is_of_all() {
        let is_taken = lacking::presses(snapshot, builder, &lacking, on);
        let weight = if is_taken { PressWeight::Other } else { on };
        builder.press(&Key::Findings, &Phrase::new("to-findings"), weight);
    } else {
        builder.press(&Key::Findings, &Phrase::new("to-findings"), on);
    }
    builder.press(&Key::Map, &Phrase::new("to-map"), PressWeight::Other);
    if !worked.unknowns.is_empty() {
        builder.press(&Key::Unknowns, &Phrase::new("to-unknowns"), PressWeight::Other);
    }
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
}

/// What only this screen has: from here on with the questions, without being told again that enough is asked.
pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    let Some(Key::Next) = done.pressed() else { return Ok(Move::Stay) };
    if let Onward::Enough(round) = session.with_snapshot(onward)? {
        session.open_survey()?.memory.ask_on(round);
    }
    Ok(Move::Next)
}

//! What gets through to each room, in words.

use advice::forecast::{Forecast, RoomForecast};
use advice::verdict::{Together, Wished, answers, summary};
use phrase::{Arg, Phrase};

use super::bars::{self, Bars};
use super::{telling, unknowns, waiting};
use crate::place::{Key, Question};
use crate::screen::{PressWeight, RowEntry, RowMark, Screen, WordsRole};
use crate::session::{Scene, Worked};
use crate::view::{Sketch, shown};

/// How many unknowns are offered here at once.
const WORTH: usize = 3;

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("forecast"));
    let Some(worked) = waiting::worked(scene, &mut sketch) else { return sketch.screen };
    let forecast = worked.forecast();
    sketch.words(WordsRole::Lead, &lead(scene, forecast));
    rooms(scene, &mut sketch, forecast);
    together(scene, &mut sketch, forecast);
    going_back(scene, &mut sketch, worked);
    presses(&mut sketch, worked);
    sketch.screen
}

fn lead(scene: &Scene<'_>, forecast: &Forecast) -> Phrase {
    if forecast.bridge.is_none() {
        let survey = scene.survey;
        let nowhere =
            survey.answer(survey.id, "router-at").and_then(|answer| answer.as_str()) == Some("none");
        return Phrase::new(if nowhere { "forecast-no-outlet-there" } else { "forecast-no-bridge" });
    }
    summary(&answers(scene.survey, forecast))
}

fn rooms(scene: &Scene<'_>, sketch: &mut Sketch<'_>, forecast: &Forecast) {
    let of = forecast.rooms.len();
    let first = shown::page(scene, of) * shown::ROWS;
    let bars = Bars::of(scene);
    let page = forecast.rooms.iter().skip(first).take(shown::ROWS);
    let rows: Vec<RowEntry> = page.map(|room| row(scene, sketch, room, bars.as_ref())).collect();
    if of == 0 {
        sketch.words(WordsRole::Plain, &Phrase::new("report-forecast-none"));
    }
    sketch.rows(&Phrase::new("forecast-rooms"), rows);
    shown::turn(scene, sketch, of);
    let without = answers(scene.survey, forecast).into_iter().filter(|answer| answer.outlet.is_none());
    let rows = without
        .take(30)
        .map(|answer| {
            let head = Phrase::new("text").text("text", &answer.room.name);
            let says = Phrase::new("forecast-no-outlet");
            sketch.row(None, &head, Some(&says), None).marked(RowMark::NotKnown)
        })
        .collect();
    sketch.rows(&Phrase::new("forecast-without"), rows);
}

fn row(scene: &Scene<'_>, sketch: &Sketch<'_>, room: &RoomForecast, bars: Option<&Bars<'_>>) -> RowEntry {
    let survey = scene.survey;
    let wish = Wished::at(survey, room).map(|wished| telling::wish(&wished));
    let says = telling::reach(survey, room.outlet, &room.reach);
    let head = shown::outlet(survey, room.outlet);
    let row = sketch.row(Some(Key::Room(room.outlet)), &head, Some(&says), wish.as_ref());
    let row = row.bar(bars.and_then(|bars| bars.of_room(room)));
    match bars::mark(survey, room) {
        Some(mark) => row.marked(mark),
        None => row,
    }
}

fn together(scene: &Scene<'_>, sketch: &mut Sketch<'_>, forecast: &Forecast) {
    if Together::is_too_much(forecast) && !answers(scene.survey, forecast).is_empty() {
        sketch.words(WordsRole::Plain, &Phrase::new("answer-not-together"));
    }
    if forecast.bridge.is_some() && !forecast.rooms.is_empty() {
        let time = Arg::MillisecondsRange(forecast.round_trip_ms);
        sketch.words(WordsRole::Aside, &Phrase::new("report-round-trip").with("time", time));
        sketch.words(WordsRole::Aside, &Phrase::new("forecast-how"));
    }
}

fn going_back(scene: &Scene<'_>, sketch: &mut Sketch<'_>, worked: &Worked) {
    let worth: Vec<_> = unknowns::worth_going_back(scene, worked).take(WORTH).collect();
    if worth.is_empty() {
        return;
    }
    sketch.words(WordsRole::Heading, &Phrase::new("unknowns-worth"));
    sketch.words(WordsRole::Why, &Phrase::new("unknowns-why"));
    let rows = worth.into_iter().map(|unknown| unknowns::row(scene, sketch, unknown)).collect();
    sketch.rows(&Phrase::new("unknowns-first"), rows);
}

fn presses(sketch: &mut Sketch<'_>, worked: &Worked) {
    if worked.forecast().bridge.is_none() {
        let key = Key::Ask(Question::RouterAt);
        sketch.press(&key, &Phrase::new("forecast-say-router"), PressWeight::Main);
        sketch.press(&Key::Findings, &Phrase::new("to-findings"), PressWeight::Other);
    } else {
        sketch.press(&Key::Findings, &Phrase::new("to-findings"), PressWeight::Main);
    }
    sketch.press(&Key::Map, &Phrase::new("to-map"), PressWeight::Other);
    if !worked.unknowns.is_empty() {
        sketch.press(&Key::Unknowns, &Phrase::new("to-unknowns"), PressWeight::Other);
    }
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
}

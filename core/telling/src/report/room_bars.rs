//! What each room gets, as bars with their words.

use advice::forecast::{Forecast, RoomForecast};
use advice::verdict::{RoomAnswer, Wished, answers, answers_to_come};
use house::naming;
use maud::{Markup, PreEscaped, html};
use phrase::{Arg, Phrase};

use super::page_one::Stands;
use super::teller::ReportTeller;
use crate::figure::{BarSign, RoomBar, SCALE_STEP_MBPS, bar_sign, room_bar, svg};

/// So many rooms stand on page one; the others stand in the table of the forecast.
const MOST_ROOMS: usize = 6;

/// One room to be told.
struct Told {
    name: String,
    tag: Option<String>,
    bar: RoomBar,
    wished: Option<Wished>,
    /// Why there is no forecast.
    why_none: Option<Phrase>,
}

/// The heading, the bars and their key.
pub(super) fn list(teller: &ReportTeller<'_>, stands: Stands) -> Markup {
    let rooms = rooms(teller);
    let shown = shown(&rooms);
    let scale_end = RoomBar::scale_end(shown.iter().map(|room| &room.bar));
    let step = Arg::RateAsRead(SCALE_STEP_MBPS);
    html! {
        h2 { (teller.word("report-rooms")) }
        @if rooms.is_empty() {
            p { (teller.word("report-forecast-none")) }
        } @else {
            p.aside { (teller.say(&Phrase::new("report-rooms-scale").with("step", step))) }
            ul.rooms {
                @for (place, room) in shown.iter().enumerate() { (row(teller, room, place, scale_end)) }
            }
            (key(teller, shown))
            @if rooms.len() > shown.len() {
                @let left = Arg::Count((rooms.len() - shown.len()) as u64);
                @let more = teller.say(&Phrase::new("report-more-rooms").with("count", left).text("alone", stands.word()));
                p.says { @if stands == Stands::First { a href="#forecast" { (more) } } @else { (more) } }
            }
        }
    }
}

/// How many rooms stand on page one.
pub(super) fn count(teller: &ReportTeller<'_>) -> usize {
    shown(&rooms(teller)).len()
}

/// Those that stand on page one: scale and key are theirs alone.
fn shown(rooms: &[Told]) -> &[Told] {
    rooms.get(..MOST_ROOMS).unwrap_or(rooms)
}

/// Rooms with a wish first, in the order of their names; then every other outlet that is to have an adapter.
fn rooms(teller: &ReportTeller<'_>) -> Vec<Told> {
    let (survey, forecast) = (teller.survey(), teller.forecast());
    let asked = answers(survey, forecast);
    let mut told: Vec<_> = asked.iter().map(|answer| of_answer(teller, answer)).collect();
    let served: Vec<_> = asked.iter().filter_map(|answer| Some(answer.outlet?.outlet)).collect();
    let others = forecast.rooms.iter().filter(|room| !served.contains(&room.outlet));
    told.extend(others.map(|room| of_outlet(teller, room)));
    told
}

fn when_done<'a>(teller: &ReportTeller<'a>) -> Option<&'a Forecast> {
    let done = teller.input.when_done.filter(|_| !teller.input.steps.is_empty());
    done.map(|(_, forecast)| forecast)
}

fn of_answer(teller: &ReportTeller<'_>, answer: &RoomAnswer<'_>) -> Told {
    let mut told = match answer.outlet {
        Some(outlet) => of_outlet(teller, outlet),
        None => Told {
            name: String::new(),
            tag: None,
            bar: RoomBar { after: to_come(teller, answer), ..RoomBar::default() },
            wished: None,
            why_none: Some(Phrase::new("report-room-no-outlet")),
        },
    };
    told.name = teller.say(&naming::of_room(teller.survey(), answer.room));
    told.bar.wish = Some(answer.wished.wish.down_mbps);
    told.wished = Some(answer.wished);
    told
}

/// What a room that has no outlet yet is likely to get once all steps are done.
fn to_come(teller: &ReportTeller<'_>, answer: &RoomAnswer<'_>) -> Option<f64> {
    let (house, forecast) = teller.input.when_done?;
    let then = answers_to_come(house, forecast);
    let outlet = then.iter().find(|then| then.room.id == answer.room.id)?.outlet?;
    Some(forecast.path(outlet.outlet)?.down.likely)
}

fn of_outlet(teller: &ReportTeller<'_>, room: &RoomForecast) -> Told {
    let survey = teller.survey();
    let bar = RoomBar::of(survey, teller.forecast(), when_done(teller), room);
    Told {
        name: teller.room_name(room.outlet),
        tag: teller.part(room.outlet).and_then(|part| part.tag.clone()),
        bar,
        wished: Wished::at(survey, room),
        why_none: bar.range.is_none().then(|| advice::forecast::told::no_path(survey, &room.reach)),
    }
}

fn row(teller: &ReportTeller<'_>, room: &Told, place: usize, scale_end: f64) -> Markup {
    let words = words(teller, room);
    let wish = room.wished.as_ref().map(|wished| teller.say(&wished.phrase()));
    let said = words.iter().map(|(_, text)| text.clone()).collect::<Vec<_>>().join("; ");
    let said = wish.iter().cloned().chain(Some(said)).collect::<Vec<_>>().join(" ");
    let name = Phrase::new("report-bar-name").text("room", &room.name);
    let figure = room_bar(&room.bar, scale_end, name, Phrase::new("text-said").text("text", said));
    html! {
        li {
            p.room-name {
                b { (ReportTeller::own(&room.name)) }
                @if let Some(tag) = &room.tag { " " span.tag { (ReportTeller::own(tag)) } }
            }
            (PreEscaped(svg(&figure, &format!("bar-{place}"), teller.language)))
            @if let Some(wish) = &wish { p.says { b { (wish) } } }
            p.says {
                @for (place, (kind, text)) in words.iter().enumerate() {
                    @if place > 0 { "; " }
                    @match kind {
                        Kind::Plain => (text),
                        Kind::Measured => b.measured { (text) },
                    }
                }
            }
        }
    }
}

/// How words on a room are set.
enum Kind {
    Plain,
    Measured,
}

fn words(teller: &ReportTeller<'_>, room: &Told) -> Vec<(Kind, String)> {
    let rate = |id: &str, mbps: f64| teller.say(&Phrase::new(id).with("rate", Arg::Rate(mbps)));
    let mut words = Vec::new();
    if let Some(why) = &room.why_none {
        words.push((Kind::Plain, teller.say(why)));
    }
    if let Some(range) = room.bar.range {
        words.push((Kind::Plain, teller.say(&advice::forecast::told::rate(range))));
    }
    // The sentence on the wish tells the test that decides: the bar's mark may be of another one.
    let decided = room.wished.and_then(|wished| wished.measured).map(|measured| measured.down_mbps);
    let told = decided.is_some() && decided == room.bar.measured;
    if let Some(measured) = room.bar.measured.filter(|_| room.bar.capped || !told) {
        let id = match (room.bar.capped, told) {
            (false, _) => "report-room-measured",
            (true, false) => "report-room-measured-capped",
            (true, true) => "report-room-capped",
        };
        let phrase = Phrase::new(id).with("rate", Arg::RateAsRead(measured));
        words.push((Kind::Measured, teller.say(&phrase)));
    }
    if let Some(after) = room.bar.after {
        words.push((Kind::Plain, rate("report-room-after", after)));
    }
    words
}

/// What the marks of the bars mean: those that stand on one.
fn key(teller: &ReportTeller<'_>, rooms: &[Told]) -> Markup {
    let bars: Vec<_> = rooms.iter().map(|room| room.bar).collect();
    html! {
        ul.bar-key {
            @for (place, (sign, word)) in BarSign::on(&bars).into_iter().enumerate() {
                @let figure = bar_sign(sign, word.clone());
                li {
                    span aria-hidden="true" { (PreEscaped(svg(&figure, &format!("bar-key-{place}"), teller.language))) }
                    (teller.say(&word))
                }
            }
        }
    }
}

//! What gets through to each room, both ways.

use advice::forecast::{Reach, RoomForecast, channels_left_beside, told};
use advice::verdict::{Stands, Together, Wished, doubt_of_link};
use house::naming;
use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::page::Section;
use super::table::table;
use super::teller::ReportTeller;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let heads = teller.words(&[
        "head-outlet",
        "head-wish",
        "head-met",
        "head-down",
        "head-up",
        "head-loss",
        "head-limit",
    ]);
    let rows: Vec<_> = teller.forecast().rooms.iter().map(|room| row(teller, room)).collect();
    let draws = Arg::Count(u64::from(teller.forecast().draws));
    let body = html! {
        @if rows.is_empty() {
            p { (teller.word("report-forecast-none")) }
        } @else {
            p { (teller.say(&Phrase::new("report-forecast-how").with("draws", draws))) }
            (table(&teller.word("report-forecast-caption"), &heads, &rows))
        }
        @let lines = around(teller);
        @if !lines.is_empty() { ul { @for line in lines { li { (line) } } } }
    };
    Section { id: "forecast", heading: "report-forecast", body }
}

fn row(teller: &ReportTeller<'_>, room: &RoomForecast) -> Vec<Markup> {
    let wished = Wished::at(teller.survey(), room);
    let wish = wished.map_or_else(
        || Phrase::new("wish-of-none"),
        |Wished { wish, .. }| {
            Phrase::new("wish-both")
                .with("down", Arg::Rate(wish.down_mbps))
                .with("up", Arg::Rate(wish.up_mbps))
        },
    );
    let met = wished.map_or("met-not-asked", |wished| match wished.stands() {
        Stands::Met => "met-yes",
        Stands::LikelyMet => "met-likely",
        Stands::HangsOnByPass => "met-hangs-on-by-pass",
        Stands::NotYet => "met-not-yet",
        Stands::LikelyNot => "met-unlikely",
        Stands::NotKnown => "met-not-known",
    });
    let mut cells =
        vec![teller.name(room.outlet), teller.cell(&wish), html! { strong { (teller.word(met)) } }];
    cells.extend(reached(teller, room));
    cells
}

/// Both rates, the loss and the limit; or why there are none.
fn reached(teller: &ReportTeller<'_>, room: &RoomForecast) -> [Markup; 4] {
    let Reach::Estimated(path) = &room.reach else {
        let none = || html! { "–" };
        return [teller.cell(&told::no_path(teller.survey(), &room.reach)), none(), none(), none()];
    };
    let limit = teller.cell(&told::limit(path.limit));
    let unsure = doubt_of_link(teller.survey(), room);
    let limit = html! { (limit) @if let Some(unsure) = unsure { ". " (teller.say(&unsure)) } };
    let loss = Phrase::new("loss-likely").with("likely", Arg::Loss(path.loss.likely));
    let loss = teller.cell(&loss.with("high", Arg::Loss(path.loss.high)));
    [teller.cell(&told::rate(path.down)), teller.cell(&told::rate(path.up)), loss, limit]
}

/// What holds for all rooms together.
fn around(teller: &ReportTeller<'_>) -> Vec<String> {
    let forecast = teller.forecast();
    let mut lines = Vec::new();
    if !forecast.channels.is_empty() {
        let bands = forecast.channels.iter().map(|(at, width)| Arg::Band(at - width / 2.0, at + width / 2.0));
        lines.push(
            teller.say(&Phrase::new("report-channels").with("channels", Arg::Several(bands.collect()))),
        );
    }
    let left = channels_left_beside(teller.survey(), forecast).and_then(|left| left.phrase());
    lines.extend(left.map(|left| teller.say(&left)));
    if forecast.bridge.is_some() {
        let time = Arg::MillisecondsRange(forecast.round_trip_ms);
        lines.push(teller.say(&Phrase::new("report-round-trip").with("time", time)));
    }
    lines.extend(Together::of(forecast).map(|together| teller.say(&together.phrase())));
    for leak in &forecast.street {
        let entry = naming::part(teller.survey(), leak.entry);
        let phrase =
            Phrase::new("street-leak").phrase("entry", entry).with("loss", Arg::LossRange(leak.loss));
        lines.push(teller.say(&phrase));
    }
    lines
}

//! What gets through to each room, both ways.

use coax::Span;
use maud::{Markup, html};

use super::page::Section;
use super::table::table;
use super::teller::Teller;
use advice::forecast::{Limit, Reach, RoomForecast, SharedCapacity};
use advice::wish::Met;
use house::naming;
use phrase::{Arg, Phrase};

/// The section.
pub(super) fn section(teller: &Teller<'_>) -> Section {
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
    Section { id: "forecast", heading: "report-forecast", across: false, body }
}

fn row(teller: &Teller<'_>, room: &RoomForecast) -> Vec<Markup> {
    let wish = room.room.and_then(|id| teller.survey().rooms.get(&id)?.wish);
    let wished = wish.map_or_else(
        || Phrase::new("wish-of-none"),
        |wish| {
            Phrase::new("wish-both")
                .with("down", Arg::Rate(wish.down_mbps))
                .with("up", Arg::Rate(wish.up_mbps))
        },
    );
    let met = wish.map_or("met-not-asked", |wish| match Met::at(teller.survey(), wish, room) {
        Met::Yes => "met-yes",
        Met::Likely => "met-likely",
        Met::Unlikely => "met-unlikely",
        Met::NotKnown => "met-not-known",
    });
    let mut cells =
        vec![teller.name(room.outlet), teller.cell(&wished), html! { strong { (teller.word(met)) } }];
    cells.extend(reached(teller, &room.reach));
    cells
}

/// Both rates, the loss and the limit; or why there are none.
fn reached(teller: &Teller<'_>, reach: &Reach) -> [Markup; 4] {
    let none = |phrase: Phrase| [teller.cell(&phrase), html! { "–" }, html! { "–" }, html! { "–" }];
    match reach {
        Reach::Estimated(path) => {
            let limit = teller.cell(&Phrase::new(match path.limit {
                Limit::Path => "limit-path",
                Limit::Version => "limit-version",
                Limit::EthernetPort => "limit-ethernet",
                Limit::Band => "limit-band",
            }));
            let unsure = (path.links < 0.995)
                .then(|| Phrase::new("links-share").with("share", Arg::Share(path.links)));
            let limit = html! { (limit) @if let Some(unsure) = unsure { ". " (teller.say(&unsure)) } };
            let loss = Phrase::new("loss-likely").with("likely", Arg::Loss(path.loss.likely));
            let loss = teller.cell(&loss.with("high", Arg::Loss(path.loss.high)));
            [teller.cell(&rate(path.down)), teller.cell(&rate(path.up)), loss, limit]
        }
        Reach::NoBridge => none(Phrase::new("reach-no-bridge")),
        Reach::Loose(part) => {
            none(Phrase::new("reach-loose").phrase("part", naming::part(teller.survey(), *part)))
        }
        Reach::OtherTree => none(Phrase::new("reach-other-tree")),
        Reach::NoChannel => none(Phrase::new("reach-no-channel")),
    }
}

fn rate(span: Span) -> Phrase {
    Phrase::new("rate-likely").with("likely", Arg::Rate(span.likely)).with("low", Arg::Rate(span.low))
}

/// What holds for all rooms together.
fn around(teller: &Teller<'_>) -> Vec<String> {
    let forecast = teller.forecast();
    let mut lines = Vec::new();
    if !forecast.channels.is_empty() {
        let bands = forecast.channels.iter().map(|(at, width)| Arg::Band(at - width / 2.0, at + width / 2.0));
        lines.push(
            teller.say(&Phrase::new("report-channels").with("channels", Arg::Several(bands.collect()))),
        );
    }
    if forecast.bridge.is_some() {
        let time = Arg::MillisecondsRange(forecast.round_trip_ms);
        lines.push(teller.say(&Phrase::new("report-round-trip").with("time", time)));
    }
    if let Some(SharedCapacity { airtime }) = forecast.shared {
        let (message, share) = match airtime {
            Span { high, .. } if high <= 1.0 => ("shared-fits", high),
            Span { likely, .. } if likely <= 1.0 => ("shared-likely", likely),
            Span { likely, .. } if likely.is_infinite() => ("shared-never", likely),
            Span { likely, .. } => ("shared-not", likely),
        };
        lines.push(teller.say(&Phrase::new(message).with("share", Arg::Share(share))));
    }
    for leak in &forecast.street {
        let entry = naming::part(teller.survey(), leak.entry);
        let phrase =
            Phrase::new("street-leak").phrase("entry", entry).with("loss", Arg::LossRange(leak.loss));
        lines.push(teller.say(&phrase));
    }
    lines
}

//! `legwork forecast`: what gets through to each room.

use advice::forecast::{self, CostAt, Forecast, PathForecast, Reach, RoomForecast};
use advice::wish::Met;
use coax::link::Limit;
use house::naming;
use house::record::{Survey, Wish};
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::Context;
use super::json::{PartJson, SpanJson, WishJson, part, rounded, span, wish};
use crate::error::DeskError;
use crate::page::Page;

/// The most places told where a path loses its signal.
const MOST_COSTS_TOLD: usize = 3;

/// Works the forecast out and tells it.
pub fn run(context: &Context, survey: &Survey) -> Result<(), DeskError> {
    let forecast = forecast::forecast(survey, &forecast::Options::default())?;
    context.answer(&as_json(survey, &forecast), |page| tell(context, survey, &forecast, page))
}

fn wish_at(survey: &Survey, room: &RoomForecast) -> Option<Wish> {
    survey.rooms.get(&room.room?)?.wish
}

/// Tells a forecast in words.
pub fn tell(context: &Context, survey: &Survey, forecast: &Forecast, page: &mut Page) {
    page.heading(&context.word("desk-forecast"));
    match forecast.bridge {
        Some(bridge) => {
            let bridge = naming::part(survey, bridge);
            page.paragraph(0, &context.say(&Phrase::new("desk-forecast-from").phrase("bridge", bridge)));
        }
        None => page.paragraph(0, &context.word("desk-forecast-no-bridge")),
    }
    for room in &forecast.rooms {
        tell_room(context, survey, room, page);
    }
    if forecast.rooms.is_empty() {
        page.paragraph(0, &context.word("desk-forecast-no-rooms"));
        return;
    }
    page.gap();
    if let Some(shared) = forecast.shared {
        let message = match shared.airtime.likely {
            share if share.is_infinite() => "desk-shared-never",
            share if share > 1.0 => "desk-shared-too-much",
            _ => "desk-shared-fits",
        };
        page.paragraph(
            0,
            &context.say(&Phrase::new(message).with("share", Arg::Share(shared.airtime.likely))),
        );
    }
    for leak in &forecast.street {
        let leak = Phrase::new("desk-street")
            .phrase("entry", naming::part(survey, leak.entry))
            .with("loss", Arg::LossRange(leak.loss));
        page.paragraph(0, &context.say(&leak));
    }
    let round_trip = Arg::MillisecondsRange(forecast.round_trip_ms);
    page.paragraph(0, &context.say(&Phrase::new("desk-round-trip").with("time", round_trip)));
    page.paragraph(0, &context.word("desk-forecast-ranges"));
}

fn tell_room(context: &Context, survey: &Survey, room: &RoomForecast, page: &mut Page) {
    page.title(&context.say(&naming::part(survey, room.outlet)));
    let wish = wish_at(survey, room);
    let path = match &room.reach {
        Reach::Estimated(path) => path,
        other => {
            page.paragraph(2, &context.say(&why_none(survey, other)));
            return;
        }
    };
    let mut rows = vec![
        (context.word("desk-down"), context.say(&rate(path.down))),
        (context.word("desk-up"), context.say(&rate(path.up))),
    ];
    if let Some(wish) = wish {
        rows.push((context.word("desk-wish"), context.say(&wish_phrase(wish, Met::of(wish, path)))));
    }
    rows.push((context.word("desk-loss"), context.say(&loss(survey, path))));
    rows.push((context.word("desk-limit"), context.word(limit_message(path.limit))));
    if path.links < 0.995 {
        rows.push((
            context.word("desk-links"),
            context.say(&Phrase::new("desk-links-share").with("share", Arg::Share(path.links))),
        ));
    }
    page.rows(2, &rows);
}

fn rate(mbps: coax::Span) -> Phrase {
    Phrase::new("desk-rate").with("rate", Arg::RateRange(mbps))
}

fn wish_phrase(wish: Wish, met: Met) -> Phrase {
    Phrase::new("desk-wish-told")
        .with("down", Arg::Rate(wish.down_mbps))
        .with("up", Arg::Rate(wish.up_mbps))
        .phrase("met", Phrase::new(met_message(met)))
}

fn met_message(met: Met) -> &'static str {
    match met {
        Met::Yes => "desk-met-yes",
        Met::Likely => "desk-met-likely",
        Met::Unlikely => "desk-met-unlikely",
        Met::NotKnown => "desk-met-not-known",
    }
}

/// The loss of a path, and the places that cost most.
fn loss(survey: &Survey, path: &PathForecast) -> Phrase {
    let mut costs = path.costs.clone();
    costs.sort_by(|a, b| b.db.total_cmp(&a.db));
    let most = costs.iter().filter(|cost| cost.db >= 1.0).take(MOST_COSTS_TOLD).map(|cost| {
        let place = match cost.at {
            CostAt::Part(id) => naming::part(survey, id),
            CostAt::RunTo(id) => run_in_short(survey, id),
        };
        let cost = Phrase::new("desk-cost").phrase("place", place).with("loss", Arg::Loss(cost.db));
        Arg::Phrase(Box::new(cost))
    });
    let most: Vec<_> = most.collect();
    let message = if most.is_empty() { "desk-loss-only" } else { "desk-loss-most" };
    Phrase::new(message).with("loss", Arg::LossRange(path.loss)).with("costs", Arg::Several(most))
}

/// A run by its tag and the tag of the part it leads to, where it has one.
fn run_in_short(survey: &Survey, to: facts::fact::SubjectId) -> Phrase {
    let run = survey.wiring.feed(to).and_then(|feed| survey.runs.get(&feed.run?));
    match run.and_then(|run| run.tag.as_ref()) {
        Some(tag) => Phrase::new("desk-cost-run").text("tag", tag).phrase("to", naming::mark(survey, to)),
        None => naming::run_to(survey, to),
    }
}

fn limit_message(limit: Limit) -> &'static str {
    match limit {
        Limit::Path => "limit-path",
        Limit::Version => "limit-version",
        Limit::EthernetPort => "limit-ethernet",
        Limit::Band => "limit-band",
    }
}

fn why_none(survey: &Survey, reach: &Reach) -> Phrase {
    match reach {
        Reach::Estimated(_) | Reach::NoBridge => Phrase::new("reach-no-bridge"),
        Reach::Loose(part) => Phrase::new("reach-loose").phrase("part", naming::part(survey, *part)),
        Reach::OtherTree => Phrase::new("reach-other-tree"),
        Reach::NoChannel => Phrase::new("reach-no-channel"),
    }
}

/// A forecast as JSON.
#[derive(Serialize)]
pub struct ForecastJson {
    seed: u64,
    draws: u32,
    bridge: Option<PartJson>,
    channels: Vec<ChannelJson>,
    adapters: usize,
    rooms: Vec<RoomJson>,
    street: Vec<StreetJson>,
    airtime: Option<SpanJson>,
    round_trip_ms: SpanJson,
}

#[derive(Serialize)]
struct ChannelJson {
    centre_mhz: f64,
    width_mhz: f64,
}

#[derive(Serialize)]
struct RoomJson {
    outlet: PartJson,
    reach: &'static str,
    wish: Option<WishJson>,
    wish_met: Option<&'static str>,
    down_mbps: Option<SpanJson>,
    up_mbps: Option<SpanJson>,
    phy_down_mbps: Option<SpanJson>,
    phy_up_mbps: Option<SpanJson>,
    loss_db: Option<SpanJson>,
    links: Option<f64>,
    limit: Option<&'static str>,
    costs: Vec<CostJson>,
}

#[derive(Serialize)]
struct CostJson {
    at: &'static str,
    part: PartJson,
    db: f64,
}

#[derive(Serialize)]
struct StreetJson {
    entry: PartJson,
    loss_db: SpanJson,
}

/// A forecast as JSON.
pub fn as_json(survey: &Survey, forecast: &Forecast) -> ForecastJson {
    ForecastJson {
        seed: forecast.seed,
        draws: forecast.draws,
        bridge: forecast.bridge.map(|bridge| part(survey, bridge)),
        channels: forecast
            .channels
            .iter()
            .map(|(centre, width)| ChannelJson { centre_mhz: *centre, width_mhz: *width })
            .collect(),
        adapters: forecast.nodes,
        rooms: forecast.rooms.iter().map(|room| room_as_json(survey, room)).collect(),
        street: forecast
            .street
            .iter()
            .map(|leak| StreetJson { entry: part(survey, leak.entry), loss_db: span(leak.loss, 1) })
            .collect(),
        airtime: forecast.shared.map(|shared| span(shared.airtime, 3)),
        round_trip_ms: span(forecast.round_trip_ms, 1),
    }
}

fn room_as_json(survey: &Survey, room: &RoomForecast) -> RoomJson {
    let wished = wish_at(survey, room);
    let path = match &room.reach {
        Reach::Estimated(path) => Some(path.as_ref()),
        _ => None,
    };
    let rate = |of: fn(&PathForecast) -> coax::Span| path.map(|path| span(of(path), 0));
    RoomJson {
        outlet: part(survey, room.outlet),
        reach: match room.reach {
            Reach::Estimated(_) => "estimated",
            Reach::NoBridge => "no_bridge",
            Reach::Loose(_) => "loose",
            Reach::OtherTree => "other_tree",
            Reach::NoChannel => "no_channel",
        },
        wish: wished.map(wish),
        wish_met: wished.map(|wish| match Met::of_reach(wish, &room.reach) {
            Met::Yes => "yes",
            Met::Likely => "likely",
            Met::Unlikely => "unlikely",
            Met::NotKnown => "not_known",
        }),
        down_mbps: rate(|path| path.down),
        up_mbps: rate(|path| path.up),
        phy_down_mbps: rate(|path| path.phy_down),
        phy_up_mbps: rate(|path| path.phy_up),
        loss_db: path.map(|path| span(path.loss, 1)),
        links: path.map(|path| rounded(path.links, 3)),
        limit: path.map(|path| match path.limit {
            Limit::Path => "path",
            Limit::Version => "version",
            Limit::EthernetPort => "ethernet_port",
            Limit::Band => "band",
        }),
        costs: path.map_or_else(Vec::new, |path| {
            path.costs
                .iter()
                .map(|cost| {
                    let (at, id) = match cost.at {
                        CostAt::Part(id) => ("part", id),
                        CostAt::RunTo(id) => ("run_to", id),
                    };
                    CostJson { at, part: part(survey, id), db: rounded(cost.db, 1) }
                })
                .collect()
        }),
    }
}

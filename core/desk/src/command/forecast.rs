//! `legwork forecast`: what gets through to each room.

use advice::forecast::{
    CostAt, Forecast, PathForecast, Reach, RoomForecast, World, channels_left_beside, told,
};
use advice::verdict::{Hangs, HeldOf, RoomVerdict, Stands, Together, Verdict, WishMeasured, Wished};
use advice::worklist::BridgePlace;
use coax::link::Limit;
use facts::fact::SubjectId;
use house::naming;
use house::record::{Named, Reading, ServiceKind, Survey};
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::context::Context;
use super::json::{PartJson, SpanJson, WishJson, part, rounded, span, wish};
use super::worked::Opened;
use crate::error::DeskError;
use crate::printed::Page;

/// The most places told where a path loses its signal.
const MOST_COSTS_TOLD: usize = 3;

/// Works the forecast out and tells it.
pub fn run(context: &Context, opened: &Opened) -> Result<(), DeskError> {
    let (forecast, survey) = (opened.forecast(context)?, &opened.survey);
    let places = opened.bridge_places(context)?;
    let json = ForecastJson {
        bridge_places: places.iter().map(|place| place_as_json(survey, place)).collect(),
        ..as_json(survey, &forecast, Of::AsFound)
    };
    context.answer(&json, |page| {
        tell(context, survey, &forecast, page);
        tell_places(context, survey, &places, page);
    })
}

/// Of which house a forecast is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Of {
    /// The house as found: what was measured in it counts.
    AsFound,
    /// A house that is still to come.
    ToCome,
}

impl Of {
    fn hangs<'a>(self, survey: &Survey, room: &'a RoomForecast) -> Option<Hangs<'a>> {
        match self {
            Self::AsFound => Hangs::at(survey, room),
            Self::ToCome => Hangs::to_come(survey, room),
        }
    }

    fn wished(self, survey: &Survey, room: &RoomForecast) -> Option<Wished> {
        match self {
            Self::AsFound => Wished::at(survey, room),
            Self::ToCome => Wished::to_come(survey, room),
        }
    }
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
    if let Some(left) = channels_left_beside(survey, forecast).and_then(|left| left.phrase()) {
        page.paragraph(0, &context.say(&left));
    }
    if let Some(together) = Together::of(forecast) {
        page.paragraph(0, &context.say(&together.phrase()));
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

/// Where the network could start.
fn tell_places(context: &Context, survey: &Survey, places: &[BridgePlace], page: &mut Page) {
    if places.is_empty() {
        return;
    }
    page.heading(&context.word("bridge-places"));
    page.paragraph(0, &context.word("bridge-places-why"));
    for place in places {
        page.title(&context.say(&naming::part(survey, place.outlet)));
        page.paragraph(2, &context.say(&place.phrase()));
    }
}

fn tell_room(context: &Context, survey: &Survey, room: &RoomForecast, page: &mut Page) {
    page.title(&context.say(&naming::part(survey, room.outlet)));
    let wish = Wished::at(survey, room)
        .map(|wished| (context.word("desk-wish"), context.say(&wish_phrase(&wished))));
    let path = match &room.reach {
        Reach::Estimated(path) => path,
        other => {
            page.paragraph(2, &context.say(&told::no_path(survey, other)));
            page.rows(2, &Vec::from_iter(wish));
            return;
        }
    };
    let mut rows = vec![
        (context.word("desk-down"), context.say(&rate(path.down))),
        (context.word("desk-up"), context.say(&rate(path.up))),
    ];
    rows.extend(wish);
    rows.push((context.word("desk-loss"), context.say(&loss(survey, path))));
    rows.push((context.word("desk-limit"), context.say(&told::limit(path.limit))));
    if let Some(hangs) = Hangs::at(survey, room) {
        rows.push((context.word("desk-hangs"), context.say(&hangs.phrase(survey))));
    } else if path.may_not_link() {
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

fn wish_phrase(wished: &Wished) -> Phrase {
    let met = match (wished.stands(), wished.measured) {
        (Stands::Met, Some(rates)) => as_measured("desk-met-measured", rates),
        (Stands::NotYet, Some(rates)) => as_measured("desk-not-met-measured", rates),
        (Stands::Met, None) => Phrase::new("desk-met-yes"),
        (Stands::HangsOnByPass, _) => Phrase::new("desk-met-hangs"),
        (Stands::LikelyMet, _) => Phrase::new("desk-met-likely"),
        (Stands::LikelyNot | Stands::NotYet, _) => Phrase::new("desk-met-unlikely"),
        (Stands::NotKnown, _) => Phrase::new("desk-met-not-known"),
    };
    Phrase::new("desk-wish-told")
        .with("down", Arg::Rate(wished.wish.down_mbps))
        .with("up", Arg::Rate(wished.wish.up_mbps))
        .phrase("met", met)
}

fn as_measured(id: &'static str, rates: WishMeasured) -> Phrase {
    Phrase::new(id).with("down", Arg::RateAsRead(rates.down_mbps)).with("up", Arg::RateAsRead(rates.up_mbps))
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
fn run_in_short(survey: &Survey, to: SubjectId) -> Phrase {
    let run = survey.wiring.feed(to).and_then(|feed| survey.runs.get(&feed.run?));
    match run.and_then(|run| run.tag.as_ref()) {
        Some(tag) => Phrase::new("desk-cost-run").text("tag", tag).phrase("to", naming::mark(survey, to)),
        None => naming::run_to(survey, to),
    }
}

/// Where the network could start, and what gets through from there.
#[derive(Serialize)]
struct BridgePlaceJson {
    outlet: PartJson,
    has_modem: bool,
    forecast: ForecastJson,
}

/// A forecast as JSON.
#[derive(Serialize)]
pub struct ForecastJson {
    seed: u64,
    draws: u32,
    bridge: Option<PartJson>,
    bridge_places: Vec<BridgePlaceJson>,
    channels: Vec<ChannelJson>,
    channels_left: Option<ChannelsLeftJson>,
    nodes: usize,
    rooms: Vec<RoomJson>,
    street: Vec<StreetJson>,
    airtime: Option<SpanJson>,
    round_trip_ms: SpanJson,
}

/// How many channels are left beside the services that need some of the band.
#[derive(Serialize)]
struct ChannelsLeftJson {
    left: usize,
    full: usize,
    by: Vec<ServiceKind>,
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
    wish_met_by: Option<&'static str>,
    down_mbps: Option<SpanJson>,
    up_mbps: Option<SpanJson>,
    phy_down_mbps: Option<SpanJson>,
    phy_up_mbps: Option<SpanJson>,
    loss_db: Option<SpanJson>,
    links: Option<f64>,
    moca_bypass: Option<ByPassJson>,
    limit: Option<&'static str>,
    costs: Vec<CostJson>,
    tests: Vec<TestJson>,
}

/// What gets through with the by-passes on a way of which nobody knows, and without.
#[derive(Serialize)]
struct ByPassJson {
    amplifiers: Vec<PartJson>,
    odds: f64,
    with: WorldJson,
    without: WorldJson,
    hangs_on_it: bool,
}

#[derive(Serialize)]
struct WorldJson {
    down_mbps: SpanJson,
    up_mbps: SpanJson,
    links: f64,
}

/// A reading of an outlet test, and what it says.
#[derive(Serialize)]
struct TestJson {
    reading: SubjectId,
    tells: &'static str,
    held: Vec<HeldJson>,
    #[serde(skip_serializing_if = "Option::is_none")]
    link: Option<&'static str>,
}

/// A figure that was measured, beside what was to be expected of it.
#[derive(Serialize)]
struct HeldJson {
    what: &'static str,
    measured: f64,
    expected: SpanJson,
    beside: &'static str,
    outside_by: f64,
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
pub fn as_json(survey: &Survey, forecast: &Forecast, of: Of) -> ForecastJson {
    ForecastJson {
        seed: forecast.seed,
        draws: forecast.draws,
        bridge: forecast.bridge.map(|bridge| part(survey, bridge)),
        bridge_places: Vec::new(),
        channels: forecast
            .channels
            .iter()
            .map(|(centre, width)| ChannelJson { centre_mhz: *centre, width_mhz: *width })
            .collect(),
        channels_left: channels_left_beside(survey, forecast).map(|found| ChannelsLeftJson {
            left: found.left,
            full: found.full,
            by: found.by,
        }),
        nodes: forecast.nodes,
        rooms: forecast.rooms.iter().map(|room| room_as_json(survey, forecast, room, of)).collect(),
        street: forecast
            .street
            .iter()
            .map(|leak| StreetJson { entry: part(survey, leak.entry), loss_db: span(leak.loss, 1) })
            .collect(),
        airtime: forecast.shared.map(|shared| span(shared.airtime, 3)),
        round_trip_ms: span(forecast.round_trip_ms, 1),
    }
}

fn place_as_json(survey: &Survey, place: &BridgePlace) -> BridgePlaceJson {
    BridgePlaceJson {
        outlet: part(survey, place.outlet),
        has_modem: place.has_modem,
        forecast: as_json(&place.house, &place.forecast, Of::ToCome),
    }
}

fn room_as_json(survey: &Survey, forecast: &Forecast, room: &RoomForecast, of: Of) -> RoomJson {
    let wished = of.wished(survey, room);
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
            Reach::FedByNothing(_) => "fed_by_nothing",
            Reach::NoChannel => "no_channel",
        },
        wish: wished.map(|wished| wish(wished.wish)),
        wish_met: wished.map(|wished| wished.met.name()),
        wish_met_by: wished.map(|wished| if wished.measured.is_some() { "test" } else { "forecast" }),
        down_mbps: rate(|path| path.down),
        up_mbps: rate(|path| path.up),
        phy_down_mbps: rate(|path| path.phy_down),
        phy_up_mbps: rate(|path| path.phy_up),
        loss_db: path.map(|path| span(path.loss, 1)),
        links: path.map(|path| rounded(path.links, 3)),
        moca_bypass: path.and_then(|path| path.by_pass.as_deref()).map(|worlds| ByPassJson {
            amplifiers: worlds.amplifiers.iter().map(|id| part(survey, *id)).collect(),
            odds: rounded(worlds.odds, 3),
            with: world_as_json(&worlds.with),
            without: world_as_json(&worlds.without),
            hangs_on_it: of.hangs(survey, room).is_some(),
        }),
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
        tests: match of {
            Of::AsFound => {
                let tests = RoomVerdict::at(survey, room.outlet, Some(forecast)).readings;
                tests.iter().map(|(reading, verdict)| test_as_json(reading, verdict)).collect()
            }
            Of::ToCome => Vec::new(),
        },
    }
}

fn world_as_json(world: &World) -> WorldJson {
    WorldJson { down_mbps: span(world.down, 0), up_mbps: span(world.up, 0), links: rounded(world.links, 3) }
}

fn test_as_json(reading: &Reading, verdict: &Verdict) -> TestJson {
    let held = verdict.held.iter().map(|held| {
        // Rates of forecasts have no decimals here, losses one; what somebody read keeps its own.
        let decimals = i32::from(held.of == HeldOf::Loss);
        HeldJson {
            what: held.of.name(),
            measured: rounded(held.measured, 3),
            expected: span(held.expected, decimals),
            beside: held.beside.name(),
            outside_by: rounded(held.outside_by(), 1),
        }
    });
    TestJson {
        reading: reading.id,
        tells: verdict.tells.name(),
        held: held.collect(),
        link: verdict.link.map(Named::name),
    }
}

//! The forecast itself: draw, solve, rate, and read off the percentiles.

use std::collections::BTreeMap;

use coax::link;
use facts::fact::SubjectId;
use house::record::Survey;

use super::drawn_house::House;
use super::nodes::{Node, nodes_of};
use super::outcome::{Forecast, Reach, RoomForecast};
use crate::error::AdviceError;

/// The most parts drawn in all draws together: 60 parts are drawn 200 times, and a house of more parts less often, so that
/// a house is forecast about as fast as that, however large.
const MOST_PARTS_DRAWN: usize = 12_000;

/// However large a house is, it is drawn so often: the lowest and the highest tenth are then of three draws each.
const FEWEST_DRAWS: u32 = 32;

/// So often a house is drawn before it is asked whether that does; then twice as often, and again.
pub(super) const FIRST_DRAWS: u32 = 128;

/// At so many frequencies, 5 MHz apart, a house is looked at before it is asked whether they do; then at twice as many.
const FIRST_POINTS: usize = 111;

/// How a forecast is made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Options {
    /// Draws over the unknowns, at the most.
    pub draws: u32,
    /// The seed: the same seed gives the same forecast.
    pub seed: u64,
    /// Frequencies over Extended D, at the most.
    pub points: usize,
    /// Whether fewer draws and frequencies do, as soon as every rate stands (`settled.rs`), and where a house has many parts; else
    /// it takes just so many.
    pub settles: bool,
}

impl Default for Options {
    /// 256 draws and 441 frequencies, 1.25 MHz apart, at the most.
    fn default() -> Self {
        Self { draws: 256, seed: 1, points: 441, settles: true }
    }
}

impl Options {
    /// Just as another forecast was made: the two can be held against each other draw by draw.
    #[must_use]
    pub fn as_made(forecast: &Forecast) -> Self {
        Self { draws: forecast.draws, seed: forecast.seed, points: forecast.frequencies, settles: false }
    }

    /// How often a house of so many parts is drawn at the most.
    fn draws_over(&self, parts: usize) -> u32 {
        if !self.settles {
            return self.draws.max(1);
        }
        let affordable = u32::try_from(MOST_PARTS_DRAWN / parts.max(1)).unwrap_or(u32::MAX);
        self.draws.clamp(1, affordable.max(FEWEST_DRAWS))
    }

    /// At how many frequencies a house is looked at first.
    pub(super) fn first_points(&self) -> usize {
        let all = self.points.max(16);
        if self.settles { all.min(FIRST_POINTS) } else { all }
    }
}

/// What gets through to each room that has, or is to have, an adapter.
///
/// # Errors
/// Whatever the physics refuses about a part; a survey folded from facts that were checked gives none.
pub fn forecast(survey: &Survey, options: &Options) -> Result<Forecast, AdviceError> {
    forecast_watched(survey, options, &mut || true)
}

/// The same, watched: `goes_on` is asked before each draw whether to go on.
///
/// # Errors
/// [`AdviceError::Stopped`] once it says no; else as [`forecast()`].
pub fn forecast_watched(
    survey: &Survey,
    options: &Options,
    goes_on: &mut dyn FnMut() -> bool,
) -> Result<Forecast, AdviceError> {
    let mut prepared = Prepared::of(survey, options)?;
    if let Some(house) = &mut prepared.house {
        house.work_out(&mut prepared.forecast, &mut prepared.reaches, goes_on)?;
    }
    Ok(prepared.closed())
}

/// A forecast before anything is drawn.
pub(super) struct Prepared<'a> {
    survey: &'a Survey,
    rooms: Vec<Node>,
    pub(super) forecast: Forecast,
    pub(super) reaches: BTreeMap<SubjectId, Reach>,
    /// What there is to draw; `None` without a bridge.
    pub(super) house: Option<House<'a>>,
}

impl<'a> Prepared<'a> {
    pub(super) fn of(survey: &'a Survey, options: &'a Options) -> Result<Self, AdviceError> {
        let nodes = nodes_of(survey);
        let bridge = nodes.first().filter(|node| node.bridge).copied();
        let forecast = Forecast {
            seed: options.seed,
            draws: options.draws_over(survey.parts.len()),
            frequencies: options.first_points(),
            bridge: bridge.map(|node| node.outlet),
            channels: Vec::new(),
            nodes: nodes.len(),
            rooms: Vec::new(),
            street: Vec::new(),
            shared: None,
            round_trip_ms: link::round_trip_added(),
        };
        let rooms: Vec<Node> =
            nodes.iter().filter(|node| Some(node.outlet) != forecast.bridge).copied().collect();
        let reaches: BTreeMap<SubjectId, Reach> =
            rooms.iter().map(|room| (room.outlet, reach_on_trees(survey, bridge, room))).collect();
        let house = bridge.map(|bridge| {
            let reached = rooms.iter().filter(|room| joined(&reaches, room)).copied().collect();
            House::new(survey, bridge, reached, options)
        });
        Ok(Self { survey, rooms, forecast, reaches, house: house.transpose()? })
    }

    /// The forecast, with every room.
    pub(super) fn closed(self) -> Forecast {
        let Self { survey, rooms, mut forecast, mut reaches, .. } = self;
        forecast.rooms = rooms
            .iter()
            .filter_map(|room| {
                let reach = reaches.remove(&room.outlet)?;
                let room_id = survey.parts.get(&room.outlet).and_then(|part| part.room);
                Some(RoomForecast { outlet: room.outlet, room: room_id, reach })
            })
            .collect();
        let name = |room: &RoomForecast| {
            room.room.and_then(|id| survey.rooms.get(&id)).map(|room| room.name.clone())
        };
        forecast.rooms.sort_by_key(name);
        forecast
    }
}

/// Whether a room is on the bridge's tree: until its path is worked out it stands as `NoChannel`.
fn joined(reaches: &BTreeMap<SubjectId, Reach>, room: &Node) -> bool {
    matches!(reaches.get(&room.outlet), Some(Reach::NoChannel))
}

/// What the trees tell of a room, before anything is worked out; [`Reach::NoChannel`] where it is on the bridge's tree.
pub(crate) fn reach_on_trees(survey: &Survey, bridge: Option<Node>, room: &Node) -> Reach {
    let Some(bridge) = bridge else { return Reach::NoBridge };
    let wiring = &survey.wiring;
    let dead = |outlet: SubjectId| survey.parts.get(&outlet).is_some_and(|part| survey.is_dead_outlet(part));
    let (ours, theirs) = (wiring.head_of(bridge.outlet), wiring.head_of(room.outlet));
    match (wiring.loose().contains_key(&ours), wiring.loose().contains_key(&theirs)) {
        _ if ours == theirs => Reach::NoChannel,
        _ if dead(room.outlet) => Reach::FedByNothing(room.outlet),
        _ if dead(bridge.outlet) => Reach::FedByNothing(bridge.outlet),
        (_, true) => Reach::Loose(theirs),
        (true, false) => Reach::Loose(ours),
        (false, false) => Reach::OtherTree,
    }
}

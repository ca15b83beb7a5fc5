//! The forecast itself: draw, solve, rate, and read off the percentiles.

use std::collections::BTreeMap;

use coax::link;
use facts::fact::SubjectId;
use house::record::Survey;

use super::drawn_house::House;
use super::nodes::{Node, nodes_of};
use super::options::Options;
use super::outcome::{Forecast, Reach, RoomForecast};
use crate::error::AdviceError;

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

//! What a step gains, room by room.

use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};

use crate::forecast::{Forecast, Limit};

/// What gets to a room, Mb/s; all zero where nothing does.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct RoomRates {
    /// The likely net rate towards the room.
    pub likely_mbps: f64,
    /// The net rate reached nine times in ten.
    pub low_mbps: f64,
    /// The likely PHY rate: what the coax carries, whatever the adapters' network sockets let through.
    pub phy_mbps: f64,
    /// Whether a network socket of the two adapters is what holds the rate.
    pub held_by_port: bool,
}

/// What a step gains at one outlet, towards it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Gain {
    /// The outlet.
    pub outlet: SubjectId,
    /// Before the step.
    pub before: RoomRates,
    /// After it.
    pub after: RoomRates,
}

fn rates(forecast: &Forecast, outlet: SubjectId) -> RoomRates {
    forecast.path(outlet).map_or_else(RoomRates::default, |path| RoomRates {
        likely_mbps: path.down.likely,
        low_mbps: path.down.low,
        phy_mbps: path.phy_down.likely,
        held_by_port: path.limit == Limit::EthernetPort,
    })
}

/// What the rooms that are there no more had.
pub(super) fn lost(before: &Forecast, after: &Forecast) -> Vec<Gain> {
    let is_gone = |outlet: &SubjectId| after.room(*outlet).is_none();
    let gone = before.rooms.iter().map(|room| room.outlet).filter(is_gone);
    gone.map(|outlet| Gain { outlet, before: rates(before, outlet), after: RoomRates::default() }).collect()
}

/// What every room gains, in the forecast's order.
pub(super) fn gains(before: &Forecast, after: &Forecast) -> Vec<Gain> {
    let gain = |outlet| Gain { outlet, before: rates(before, outlet), after: rates(after, outlet) };
    after.rooms.iter().map(|room| gain(room.outlet)).collect()
}

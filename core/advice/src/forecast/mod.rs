//! What gets through to each room: the wiring as it was found, solved for many seeded draws over its unknowns.
//!
//! This folder turns records into circuits and rates. It does not know what is wrong in a house (findings) or what
//! to do about it (work list).

mod again;
mod among;
mod asked;
mod built;
mod by_pass_worlds;
mod circuit;
mod costs;
mod drawn_house;
mod draws;
mod enough;
mod laid;
mod many;
mod nodes;
mod options;
mod outcome;
mod percentile;
mod pieces;
mod placement;
mod rethrown;
mod run;
mod settled;
mod solved;
mod taken;
mod throws;
mod together;
pub mod told;
mod total_effect;
mod version_net;
mod views;
mod way;
mod weak;
mod worlds;

pub(crate) use again::{Open, What};
pub use built::MeteredAt;
pub(crate) use built::TV_AND_MODEM;
pub use by_pass_worlds::{ByPassWorlds, World};
pub(crate) use circuit::{Circuit, Terminal};
pub(crate) use drawn_house::Told;
pub use nodes::{Node, PortKnown, nodes_of};
pub use options::Options;
pub use outcome::{
    Cost, CostAt, Curve, Forecast, Limit, PathForecast, Reach, RoomForecast, SharedCapacity, StreetLeak,
};
pub(crate) use percentile::spread;
pub(crate) use rethrown::{Moved, total_effects};
pub(crate) use run::reach_on_trees;
pub use run::{forecast, forecast_watched};
pub(crate) use taken::channels_left;
pub use taken::{ChannelsLeft, TakenBand, bands_taken, channels_left_beside};
pub(crate) use together::{Forecaster, forecast_each, forecast_each_watched};
pub use version_net::net_without_cable;
pub use weak::WeakWay;

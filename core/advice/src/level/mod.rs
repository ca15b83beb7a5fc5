//! The signal levels of the other services: what arrives at each TV and modem, and what a change costs them.
//!
//! Worked out with the exact solution of the tree, devices taken as 75-ohm loads. Where nobody measured a level anywhere on
//! the tree none is claimed, only gains and losses on the way and the change of them. This folder says nothing about the room
//! network (forecast) and proposes nothing (findings, refusals).

mod broken;
mod change;
mod clean;
mod done;
mod entry_levels;
mod fit;
mod found;
mod held;
mod missing;
mod moved;
mod outlets;
mod solve;
mod told;
mod window;

pub use broken::Broken;
pub use change::{BandChange, OutletChange, change};
pub(crate) use change::{Beside, NOTICEABLE_DB};
pub(crate) use clean::ratios_at;
pub use clean::{ANTENNA_CLEAN, CABLE_CLEAN, CleanNeed, clean_need_of};
pub use done::{DoneLevel, OutletDone};
pub(crate) use entry_levels::NEIGHBOUR_MHZ;
pub use fit::Fit;
pub(crate) use found::sends;
pub use found::{DownLevel, Levels, OutletLevels, UpLevel, levels};
pub use held::{LevelHeld, Stretch, place_phrase};
pub use missing::{LostAt, Missed, Unexplained, levels_beside, unexplained};
pub(crate) use moved::Moved;
pub use moved::MovedOut;
pub use outlets::{Served, served_outlets};
pub(crate) use outlets::{UPSTREAM_MHZ, measured_at};
pub use told::{LevelTold, told};
pub use window::{
    ANALOG_TV, ANTENNA_TV, BOTH_TV, DIGITAL_TV, EN_64_QAM, EN_256_QAM, EN_ANALOG_TV, EN_ANTENNA_TV,
    MODEM_RECEIVES, MODEM_SENDS, Recommended, SATELLITE, Window, european_windows_of,
    least_visual_millivolts, least_visual_millivolts_at_drop, level_of_millivolts, modem_sends_most,
    window_of,
};

/// How levels are worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Options {
    /// Draws over the unknowns.
    pub draws: u32,
    /// The seed: the same seed gives the same figures.
    pub seed: u64,
}

impl Default for Options {
    /// 32 draws.
    fn default() -> Self {
        Self { draws: 32, seed: 1 }
    }
}

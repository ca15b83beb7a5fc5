//! The verdict on a reading, on a room, on a wish: worked out once, told in many places.
//!
//! - [`Tells`]: what a reading tells of at all (the coax, a network socket, a radio, the plan, the internet).
//! - [`Beside`]: where what was measured stands beside what was to be expected of it, decided on figures that are not
//!   rounded; [`Held::outside_by`] says by how much.
//! - [`Verdict`]: both, for one reading, and [its words](Verdict::phrases); [`RoomVerdict`]: all readings at one outlet, and what follows for it.
//! - [`Fault`]: what the tests at an outlet show to be wrong on the way there; [`NodesTold`]: what an adapter's count of its
//!   network tells.
//! - [`Met`], [`Wished`] and [`answers`]: whether a wish is met at an outlet and in a room, as found, as measured, or once
//!   all work is done.
//! - [`Lacking`]: of which rooms nothing can be told yet, and what is missing.
//! - [`Hangs`]: whether what an outlet gets hangs on a by-pass of which nobody knows.
//! - [`LevelHeld`]: where a level that was measured stands beside what the wiring explains, and on which stretch the two
//!   part.
//! - [`Together`]: whether all wishes fit at once.
//!
//! Findings, the work list, every screen, the report, the command and its JSON read these and compare no figure of their
//! own. Whoever needs another threshold puts it here. The rules in words: `docs/method.md`, section 6. This folder changes
//! nothing and holds no sentence.

mod fault;
mod hangs;
mod lacking;
mod nodes;
mod phrase;
mod reading;
mod room;
mod tells;
mod together;
mod version;
mod wish;

pub use crate::beside::{Beside, Held, HeldOf};
pub use crate::level::{LevelHeld, Stretch, levels_beside, place_phrase};
pub use fault::{Fault, LOSS_PERCENT};
pub use hangs::{Hangs, doubt_of_link};
pub use lacking::{Lack, Lacking};
pub use nodes::{NodesBeside, NodesTold};
pub(crate) use nodes::{other_networks, provider_nodes};
pub use reading::Verdict;
pub use room::{RoomVerdict, Throughput, is_a_speed, is_a_test, is_tested};
pub use tells::{Tells, is_of_test};
pub use together::Together;
pub(crate) use version::wanted_at;
pub use version::{VersionLimit, version_limits};
pub use wish::{
    Met, RoomAnswer, Stands, WishMeasured, Wished, answers, answers_to_come, is_given, met, summary,
};

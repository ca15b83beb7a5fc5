//! The physics of a house's coaxial wiring tree: pure functions, no clock, no input or output.

pub mod dice;
pub mod estimates;
pub mod link;
pub mod quantity;
pub mod span;

pub use dice::Dice;
pub use estimates::Estimate;
pub use link::{EthernetPort, LinkDraw, LinkError, LinkRate, Node, Placement, Version};
pub use quantity::{
    Celsius, DecibelMillivolts, DecibelMilliwatts, Decibels, MegabitsPerSecond, Megahertz, Metres,
    Milliseconds,
};
pub use span::{Backing, Span};

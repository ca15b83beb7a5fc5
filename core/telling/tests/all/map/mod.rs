//! The wiring map and the loss plot: nothing overlaps, nothing is left out, whatever the house.

mod drawn_houses;
mod layouts;
mod measured;
mod pictures;
mod plot;
mod signs;

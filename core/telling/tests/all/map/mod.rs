//! The wiring map, the loss plot and the bars: nothing overlaps, nothing is left out, whatever the house.

mod bars;
mod drawn_houses;
mod layouts;
mod measured;
mod pictures;
mod plot;
mod signs;

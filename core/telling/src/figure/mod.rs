//! Figures as data: the wiring map and the plots are lists of marks in a unit box.
//!
//! A shell draws the marks on its canvas and sends touches back by part; the report and the local page write them as
//! SVG. No mark has a colour, only a role of ink: what matters is said by shape and by a word, so a figure reads the
//! same in print, in the dark and to whoever tells no colours apart. This folder does not know what stands around a figure.

mod bar;
pub mod map;
mod mark;
mod measure;
pub mod plot;
mod sheet;
mod strokes;
mod svg;

pub use bar::{BarSign, RoomBar, SCALE_STEP_MBPS, bar_sign, room_bar};
pub use map::{Folding, Layout, ShownMap, WiringMap};
pub use mark::{Anchor, Dash, Figure, Fill, Ink, Mark, Pen, Point, Shape, Touch, Weight};
pub use measure::{even_width, fitted, legible, text_width, wrapped};
pub use plot::{loss_plot, loss_plot_in};
pub use strokes::{Piece, pieces};
pub use svg::svg;

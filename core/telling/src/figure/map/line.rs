//! The line of a cable: its series, its state.

use super::node::Cable;
use crate::figure::mark::{Dash, Ink, Pen, Weight};
use crate::figure::sheet::{Sheet, pen};

/// The trunk of a fork: part of the splitter, no cable.
pub(super) const TRUNK: Pen = pen(Weight::Plain, Dash::Solid);
/// What is loose: in wide strokes, to an open ring.
pub(super) const LOOSE: Pen = pen(Weight::Plain, Dash::Dashed);

/// The line of a cable.
pub(super) const fn of(cable: Cable) -> Pen {
    match cable {
        Cable::Six => pen(Weight::Cable, Dash::Solid),
        Cable::Stout => pen(Weight::Thick, Dash::Solid),
        Cable::Thin => pen(Weight::Thin, Dash::Struck),
        Cable::Unknown => pen(Weight::Cable, Dash::Dotted),
        Cable::Provider => pen(Weight::Thin, Dash::Double),
        Cable::New => pen(Weight::Cable, Dash::Long),
    }
}

/// Draws a cable from its feeder's middle to its part's.
pub(super) fn put(sheet: &mut Sheet, from: (f64, f64), to: (f64, f64), cable: Cable) {
    sheet.dip(Ink::Cable);
    sheet.line(from, to, of(cable));
}

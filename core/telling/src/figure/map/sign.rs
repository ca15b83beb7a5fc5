//! The signs of the map: what a part is, and how it stands. Their table is in `docs/map.md`.

use house::record::PartKind;

use super::node::{Node, State};
use crate::figure::mark::{Anchor, Dash, Fill, Ink, Pen, Weight};
use crate::figure::sheet::{NO_LINE, PLAIN, Sheet, THIN, Type, pen};

/// How far a sign reaches from its middle, in CSS pixels.
pub(super) const REACH: f64 = 10.0;
/// The type on a triangle.
const STEP: Type = Type::of(11.0).strong(true).anchored(Anchor::Middle);
/// The type of a question mark.
const QUESTION: Type = Type::of(20.0).anchored(Anchor::Middle);

/// The line of a part's sign: in dots while it is not certain, heavier where the work changes it.
fn line(node: &Node) -> Pen {
    if node.step.is_some() {
        pen(Weight::Cable, Dash::Solid)
    } else if node.state == State::Unknown {
        pen(Weight::Plain, Dash::Dotted)
    } else {
        PLAIN
    }
}

/// Draws what a part is.
pub(super) fn put(sheet: &mut Sheet, node: &Node, at: (f64, f64)) {
    sheet.dip(Ink::Cable);
    let ((x, y), line) = (at, line(node));
    let triangle = [(x - 9.0, y - 9.0), (x + 9.0, y), (x - 9.0, y + 9.0)];
    match node.kind {
        PartKind::Entry => sheet.area(&triangle, line, Fill::Solid),
        PartKind::GroundBlock => {
            sheet.about(at, (16.0, 13.0), 0.0, line, Fill::Ground);
            sheet.line((x, y - 6.5), (x, y + 1.0), THIN);
            sheet.line((x - 5.0, y + 1.0), (x + 5.0, y + 1.0), THIN);
            sheet.line((x - 3.0, y + 3.6), (x + 3.0, y + 3.6), THIN);
        }
        PartKind::EntryFilter | PartKind::HighPassFilter => {
            sheet.about(at, (20.0, 11.0), 5.0, line, Fill::Ground);
            for by in [-4.0, 4.0] {
                sheet.line((x + by, y - 5.0), (x + by, y + 5.0), THIN);
            }
        }
        PartKind::Splitter | PartKind::SatelliteCombiner => {
            let wedge = [(x - 9.0, y - 4.0), (x + 9.0, y - 9.0), (x + 9.0, y + 9.0), (x - 9.0, y + 4.0)];
            sheet.area(&wedge, line, Fill::Ground);
        }
        PartKind::Amplifier => sheet.area(&triangle, line, Fill::Ground),
        PartKind::Tap => {
            sheet.about(at, (15.0, 15.0), 0.0, line, Fill::Ground);
            sheet.line((x, y - 7.5), (x, y + 7.5), THIN);
        }
        PartKind::Outlet if node.bridge => {
            sheet.about(at, (19.0, 19.0), 0.0, line, Fill::Ground);
            sheet.circle(at, 6.0, line, Fill::None);
            sheet.circle(at, 2.0, NO_LINE, Fill::Solid);
        }
        PartKind::Outlet => {
            sheet.circle(at, 8.0, line, Fill::Ground);
            sheet.circle(at, 2.2, NO_LINE, Fill::Solid);
        }
        PartKind::Terminator => {
            sheet.about(at, (8.0, 14.0), 0.0, line, Fill::Solid);
        }
        PartKind::Barrel => sheet.about(at, (16.0, 8.0), 0.0, line, Fill::Ground),
        PartKind::Pad | PartKind::PowerInserter | PartKind::Unknown => {
            sheet.about(at, (15.0, 15.0), 0.0, line, Fill::Ground);
        }
    }
}

/// Draws several parts behind one another, the first in front.
pub(super) fn put_stack(sheet: &mut Sheet, node: &Node, (x, y): (f64, f64)) {
    for by in [6.0, 3.0, 0.0] {
        put(sheet, node, (x + by, y));
    }
}

/// Draws how a part stands, if there is anything to draw.
pub(super) fn put_state(sheet: &mut Sheet, node: &Node, at: (f64, f64)) {
    match (node.step, node.state) {
        (Some(step), _) => put_step(sheet, step, at),
        (None, State::Weak) => put_flag(sheet, at),
        (None, State::Unknown) => put_question(sheet, at),
        (None, State::Well) => {}
    }
}

/// A triangle with the number of a step, as at a revision of a drawing.
pub(super) fn put_step(sheet: &mut Sheet, step: usize, (x, y): (f64, f64)) {
    sheet.dip(Ink::Text);
    sheet.area(&[(x, y - 9.0), (x + 10.0, y + 8.0), (x - 10.0, y + 8.0)], PLAIN, Fill::Ground);
    sheet.text((x, y + 6.0), step.to_string(), STEP);
}

/// A flag: weak, or wrong.
pub(super) fn put_flag(sheet: &mut Sheet, (x, y): (f64, f64)) {
    sheet.dip(Ink::Weak);
    sheet.line((x - 5.0, y - 8.0), (x - 5.0, y + 8.0), pen(Weight::Cable, Dash::Solid));
    sheet.area(&[(x - 5.0, y - 8.0), (x + 7.0, y - 4.0), (x - 5.0, y)], PLAIN, Fill::Solid);
}

/// A question mark: to be found out.
pub(super) fn put_question(sheet: &mut Sheet, (x, y): (f64, f64)) {
    sheet.dip(Ink::Text);
    sheet.text((x, y + 7.0), "?", QUESTION);
}

/// A sign that something is folded here.
pub(super) fn put_fold(sheet: &mut Sheet, (x, y): (f64, f64)) {
    sheet.dip(Ink::Quiet);
    sheet.path(&[(x - 5.0, y - 3.0), (x, y + 2.0), (x + 5.0, y - 3.0)], pen(Weight::Cable, Dash::Solid));
}

/// An open ring: the end of what is loose.
pub(super) fn put_ring(sheet: &mut Sheet, at: (f64, f64)) {
    sheet.dip(Ink::Cable);
    sheet.circle(at, 3.5, PLAIN, Fill::Ground);
}

/// A dot where a cable leaves the trunk of a fork.
pub(super) fn put_port(sheet: &mut Sheet, at: (f64, f64)) {
    sheet.dip(Ink::Cable);
    sheet.circle(at, 3.0, NO_LINE, Fill::Solid);
}

//! The print on a cable's jacket: where its series stands.

use telling::figure::{Anchor, Figure};
use telling::words::Language;

use super::paper::{DOTTED, PLAIN, Paper, WIDTH};

pub(super) fn draw(language: &Language) -> Figure {
    let mut paper = Paper::new(language);
    let y = 30.0;
    paper.cable(24.0, WIDTH - 24.0, y, 24.0);
    paper.line((2.0, y), (22.0, y), DOTTED);
    paper.line((WIDTH - 22.0, y), (WIDTH - 2.0, y), DOTTED);
    paper.print((50.0, y + 4.0), "RG-6", Anchor::Start);
    paper.print((110.0, y + 4.0), "75 OHM   3000 MHz   000482 FT", Anchor::Start);
    paper.line((62.0, y + 34.0), (62.0, y + 9.0), PLAIN);
    paper.label((88.0, y + 48.0), "picture-series", 168.0);
    paper.label((250.0, y + 48.0), "picture-other-print", 150.0);
    paper.figure("jacket", y + 90.0)
}

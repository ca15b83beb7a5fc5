//! A splitter's print: where its numbers stand and what they say.

use telling::figure::{Anchor, Figure, Fill};
use telling::words::Language;

use super::paper::{PLAIN, Paper, WIDTH};

pub(super) fn draw(language: &Language) -> Figure {
    let mut paper = Paper::new(language);
    let (left, right, top, bottom) = (80.0, 260.0, 74.0, 158.0);
    let middle = WIDTH / 2.0;
    paper.thread_down(middle, top - 26.0, top, 22.0);
    paper.frame((left, top), (right - left, bottom - top), 4.0, Fill::Faint);
    paper.print((middle, top + 15.0), "IN", Anchor::Middle);
    paper.print((middle, top + 38.0), "5-1000 MHz", Anchor::Middle);
    for output in 0..4_u8 {
        let x = left + 27.0 + f64::from(output) * 42.0;
        paper.thread_down(x, bottom, bottom + 26.0, 22.0);
        paper.print((x, bottom - 20.0), "-7 dB", Anchor::Middle);
        paper.print((x, bottom - 6.0), "OUT", Anchor::Middle);
    }
    // What the two kinds of numbers say.
    paper.line((258.0, top - 20.0), (middle + 36.0, top + 30.0), PLAIN);
    paper.label((270.0, 18.0), "picture-made-for", 136.0);
    paper.line((36.0, bottom - 8.0), (left + 10.0, bottom - 23.0), PLAIN);
    paper.label((40.0, bottom + 8.0), "picture-loss-each", 76.0);
    paper.figure("splitter-print", bottom + 56.0)
}

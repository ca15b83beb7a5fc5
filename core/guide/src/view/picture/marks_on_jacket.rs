//! The running number on a cable's jacket at its two ends: their difference is the length.

use telling::figure::{Anchor, Figure};
use telling::words::Language;

use super::paper::{PLAIN, Paper, WIDTH};

pub(super) fn draw(language: &Language) -> Figure {
    let mut paper = Paper::new(language);
    let y = 40.0;
    let middle = WIDTH / 2.0;
    paper.thread_across(4.0, 20.0, y, 16.0);
    paper.cable(20.0, middle - 24.0, y, 22.0);
    paper.cable(middle + 24.0, WIDTH - 20.0, y, 22.0);
    paper.thread_across(WIDTH - 20.0, WIDTH - 4.0, y, 16.0);
    // A wave in the middle: the cable is longer than the drawing.
    for shift in [-8.0, 8.0] {
        let wave = [(0.0, -14.0), (5.0, -5.0), (-5.0, 5.0), (0.0, 14.0)];
        paper.path(&wave.map(|(x, down)| (middle + shift + x, y + down)), PLAIN);
    }
    paper.print((82.0, y + 4.0), "000482 FT", Anchor::Middle);
    paper.print((WIDTH - 82.0, y + 4.0), "000524 FT", Anchor::Middle);
    for x in [82.0, WIDTH - 82.0] {
        paper.line((x, y + 30.0), (x, y + 9.0), PLAIN);
    }
    paper.label((82.0, y + 46.0), "picture-one-end", 140.0);
    paper.label((WIDTH - 82.0, y + 46.0), "picture-other-end", 140.0);
    paper.heading((middle, y + 92.0), "picture-difference", WIDTH - 16.0);
    paper.figure("marks-on-jacket", y + 116.0)
}

//! A ground block with its wire. It is only looked at.

use telling::figure::{Anchor, Figure, Fill};
use telling::words::Language;

use super::paper::{PLAIN, Paper, THICK, WIDTH};

pub(super) fn draw(language: &Language) -> Figure {
    let mut paper = Paper::new(language);
    let (middle, y) = (WIDTH / 2.0, 84.0);
    paper.cable(0.0, middle - 62.0, y, 12.0);
    paper.thread_across(middle - 62.0, middle - 34.0, y, 22.0);
    paper.frame((middle - 34.0, y - 24.0), (68.0, 48.0), 3.0, Fill::Faint);
    paper.thread_across(middle + 34.0, middle + 62.0, y, 22.0);
    paper.cable(middle + 62.0, WIDTH, y, 12.0);
    // The hole for a mounting screw, and the clamp with its screw that holds the wire.
    paper.frame((middle - 26.0, y - 18.0), (9.0, 9.0), 4.5, Fill::None);
    paper.frame((middle - 9.0, y + 24.0), (18.0, 14.0), 2.0, Fill::Medium);
    paper.line((middle - 6.0, y + 31.0), (middle + 6.0, y + 31.0), PLAIN);
    paper
        .path(&[(middle, y + 38.0), (middle, y + 62.0), (middle + 8.0, y + 74.0), (middle, y + 84.0)], THICK);
    ground(&mut paper, middle, y + 84.0);
    paper.label((62.0, 48.0), "picture-from-outside", 116.0);
    paper.label((WIDTH - 62.0, 48.0), "picture-into-the-house", 116.0);
    paper.heading((middle, 20.0), "picture-is-ground-block", 300.0);
    paper.label((middle + 84.0, y + 68.0), "picture-ground-wire", 130.0);
    paper.print((middle, y + 4.0), "GND", Anchor::Middle);
    paper.figure("ground-block", y + 110.0)
}

/// The sign for ground: three bars, each shorter (IEC 60617, symbol S00200).
pub(super) fn ground(paper: &mut Paper<'_>, x: f64, y: f64) {
    for (bar, half) in [(0.0, 14.0), (6.0, 9.0), (12.0, 4.0)] {
        paper.line((x - half, y + bar), (x + half, y + bar), PLAIN);
    }
}

//! The outputs of a splitter: one in use, one with a cap on it, one open.

use telling::figure::{Anchor, Figure, Fill};
use telling::words::Language;

use super::paper::{Paper, THIN, WIDTH};

pub(super) fn draw(language: &Language) -> Figure {
    let mut paper = Paper::new(language);
    let (top, bottom) = (34.0, 84.0);
    paper.thread_down(WIDTH / 2.0, top - 24.0, top, 22.0);
    paper.frame((24.0, top), (WIDTH - 48.0, bottom - top), 4.0, Fill::Faint);
    paper.print((WIDTH / 2.0, top + 16.0), "IN", Anchor::Middle);
    let places = [66.0, WIDTH / 2.0, WIDTH - 66.0];
    for x in places {
        paper.print((x, bottom - 7.0), "OUT", Anchor::Middle);
    }
    let [used, capped, open] = places;
    paper.thread_down(used, bottom, bottom + 12.0, 22.0);
    paper.frame((used - 15.0, bottom + 12.0), (30.0, 22.0), 2.0, Fill::Medium);
    paper.frame((used - 6.0, bottom + 34.0), (12.0, 30.0), 0.0, Fill::Faint);
    paper.thread_down(capped, bottom, bottom + 12.0, 22.0);
    paper.frame((capped - 15.0, bottom + 12.0), (30.0, 26.0), 5.0, Fill::Medium);
    paper.line((capped - 5.0, bottom + 12.0), (capped - 5.0, bottom + 38.0), THIN);
    paper.line((capped + 5.0, bottom + 12.0), (capped + 5.0, bottom + 38.0), THIN);
    paper.thread_down(open, bottom, bottom + 28.0, 22.0);
    let below = bottom + 84.0;
    paper.label((used, below), "picture-output-used", 104.0);
    paper.label((capped, below), "picture-output-capped", 104.0);
    paper.label((open, below), "picture-output-open", 104.0);
    paper.figure("outputs", below + 36.0)
}

//! An entry filter in line behind a ground block.

use telling::figure::{Anchor, Figure, Fill};
use telling::words::Language;

use super::ground_block::ground;
use super::paper::{DOTTED, PLAIN, Paper, THIN};

pub(super) fn draw(language: &Language) -> Figure {
    let mut paper = Paper::new(language);
    let y = 86.0;
    // From the street to the ground block.
    paper.line((4.0, y), (28.0, y), DOTTED);
    paper.cable(28.0, 52.0, y, 10.0);
    paper.thread_across(52.0, 68.0, y, 18.0);
    paper.frame((68.0, y - 18.0), (44.0, 36.0), 3.0, Fill::Faint);
    paper.path(&[(90.0, y + 18.0), (90.0, y + 46.0)], THIN);
    ground(&mut paper, 90.0, y + 46.0);
    paper.thread_across(112.0, 128.0, y, 18.0);
    // The filter: a nut, a plain cylinder with its print, a thread.
    paper.frame((128.0, y - 14.0), (14.0, 28.0), 1.0, Fill::Medium);
    paper.line((128.0, y), (142.0, y), THIN);
    paper.frame((142.0, y - 11.0), (76.0, 22.0), 2.0, Fill::None);
    paper.print((180.0, y + 4.0), "5-1002 MHz", Anchor::Middle);
    paper.thread_across(218.0, 234.0, y, 16.0);
    paper.frame((234.0, y - 13.0), (14.0, 26.0), 1.0, Fill::Medium);
    paper.cable(248.0, 310.0, y, 10.0);
    paper.line((310.0, y), (336.0, y), DOTTED);
    paper.heading((212.0, 18.0), "picture-is-entry-filter", 200.0);
    paper.line((188.0, y - 32.0), (188.0, y - 13.0), PLAIN);
    paper.label((60.0, 18.0), "picture-is-ground-block", 112.0);
    paper.line((90.0, 54.0), (90.0, y - 18.0), PLAIN);
    paper.label((40.0, y + 34.0), "picture-from-outside", 76.0);
    paper.label((276.0, y + 34.0), "picture-to-first-splitter", 124.0);
    paper.figure("entry-filter", y + 80.0)
}

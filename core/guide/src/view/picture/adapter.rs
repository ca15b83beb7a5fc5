//! An adapter between the outlet in the wall and the router.

use telling::figure::{Anchor, Figure, Fill};
use telling::words::Language;

use super::paper::{PLAIN, Paper, THICK, THIN, WIDTH};

pub(super) fn draw(language: &Language) -> Figure {
    let mut paper = Paper::new(language);
    let y = 98.0;
    // The outlet: a plate with one threaded plug.
    paper.frame((10.0, y - 32.0), (48.0, 64.0), 4.0, Fill::Faint);
    paper.thread_across(34.0, 68.0, y, 18.0);
    paper.cable(68.0, 128.0, y, 8.0);
    paper.frame((128.0, y - 26.0), (84.0, 52.0), 5.0, Fill::Faint);
    paper.print((136.0, y + 4.0), "COAX", Anchor::Start);
    paper.print((204.0, y + 4.0), "LAN", Anchor::End);
    // A network cable is thinner, and ends in a plug with a latch.
    paper.line((212.0, y), (262.0, y), THICK);
    paper.frame((256.0, y - 6.0), (12.0, 12.0), 1.0, Fill::Medium);
    paper.frame((268.0, y - 30.0), (62.0, 60.0), 5.0, Fill::Faint);
    paper.print((276.0, y + 4.0), "LAN 1", Anchor::Start);
    // Aerials, as many routers have.
    paper.line((280.0, y - 30.0), (276.0, y - 44.0), PLAIN);
    paper.line((318.0, y - 30.0), (322.0, y - 44.0), PLAIN);
    // Pointers from the names of the two cables.
    paper.line((98.0, 48.0), (98.0, y - 5.0), THIN);
    paper.line((236.0, 48.0), (236.0, y - 2.0), THIN);
    let below = y + 50.0;
    paper.label((44.0, below), "picture-is-outlet", 88.0);
    paper.label((90.0, 18.0), "picture-coax-cable", 150.0);
    paper.label((250.0, 18.0), "picture-network-cable", 150.0);
    paper.heading((WIDTH / 2.0, below), "picture-is-adapter", 110.0);
    paper.label((294.0, below), "picture-is-router", 90.0);
    paper.figure("adapter", below + 26.0)
}

//! The back of a router: the row of equal LAN sockets, and the WAN socket that stands apart.

use telling::figure::{Anchor, Figure, Fill};
use telling::words::Language;

use super::paper::{PLAIN, Paper, WIDTH};

pub(super) fn draw(language: &Language) -> Figure {
    let mut paper = Paper::new(language);
    let (top, bottom) = (10.0, 76.0);
    paper.frame((8.0, top), (WIDTH - 16.0, bottom - top), 6.0, Fill::Faint);
    socket(&mut paper, 34.0, top + 14.0);
    paper.print((51.0, bottom - 8.0), "WAN", Anchor::Middle);
    for place in 0..4_u8 {
        let x = 132.0 + f64::from(place) * 46.0;
        socket(&mut paper, x, top + 14.0);
        paper.print((x + 17.0, bottom - 8.0), &format!("LAN {}", place + 1), Anchor::Middle);
    }
    paper.line((51.0, bottom + 14.0), (51.0, bottom + 2.0), PLAIN);
    paper.label((62.0, bottom + 30.0), "picture-wan", 112.0);
    // One bracket under the whole row.
    let (left, right) = (132.0, 304.0);
    paper.path(
        &[(left, bottom + 4.0), (left, bottom + 10.0), (right, bottom + 10.0), (right, bottom + 4.0)],
        PLAIN,
    );
    paper.label((218.0, bottom + 30.0), "picture-lan", 190.0);
    paper.figure("router-ports", bottom + 72.0)
}

/// A network socket: a square hole with the notch for the plug's latch.
pub(super) fn socket(paper: &mut Paper<'_>, x: f64, y: f64) {
    paper.frame((x, y), (34.0, 30.0), 1.0, Fill::None);
    let notch = [
        (5.0, 6.0),
        (29.0, 6.0),
        (29.0, 20.0),
        (22.0, 20.0),
        (22.0, 25.0),
        (12.0, 25.0),
        (12.0, 20.0),
        (5.0, 20.0),
    ];
    paper.area(&notch.map(|(right, down)| (x + right, y + down)), PLAIN, Fill::Medium);
}

//! The plug of a coax cable, done well and done badly, side by side: seen from the side, the end towards the right.

use telling::figure::{Figure, Fill};
use telling::words::Language;

use super::paper::{DOTTED, PLAIN, Paper, THICK, THIN, WIDTH};

pub(super) fn draw(language: &Language) -> Figure {
    let mut paper = Paper::new(language);
    let half = WIDTH / 2.0;
    let y = 68.0;
    paper.heading((half / 2.0, 22.0), "picture-plug-good", half - 16.0);
    paper.heading((half * 1.5, 22.0), "picture-plug-bad", half - 16.0);
    paper.line((half, 8.0), (half, 176.0), THIN);
    good(&mut paper, 8.0, y);
    bad(&mut paper, half + 8.0, y);
    paper.label((half / 2.0, y + 52.0), "picture-plug-good-signs", half - 20.0);
    paper.label((half * 1.5, y + 52.0), "picture-plug-bad-signs", half - 20.0);
    paper.figure("plugs", 184.0)
}

/// The sleeve sits flush on the jacket; the pin is straight and stands a little out of the nut.
fn good(paper: &mut Paper<'_>, x: f64, y: f64) {
    paper.cable(x, x + 50.0, y, 18.0);
    paper.frame((x + 50.0, y - 14.0), (44.0, 28.0), 2.0, Fill::None);
    paper.line((x + 62.0, y - 14.0), (x + 62.0, y + 14.0), THIN);
    nut(paper, x + 94.0, y);
    paper.line((x + 120.0, y), (x + 130.0, y), THICK);
}

/// Bare strands and insulation show behind the sleeve, which sits askew; the pin is bent.
fn bad(paper: &mut Paper<'_>, x: f64, y: f64) {
    paper.cable(x, x + 34.0, y + 3.0, 18.0);
    paper.line((x + 34.0, y + 2.0), (x + 54.0, y), PLAIN);
    for (start, bend, end) in [(-4.0, -12.0, -18.0), (-2.0, -5.0, -4.0), (8.0, 10.0, 7.0), (11.0, 20.0, 24.0)]
    {
        paper.path(&[(x + 34.0, y + start), (x + 42.0, y + bend), (x + 50.0, y + end)], THIN);
    }
    let corners = [(x + 54.0, y - 17.0), (x + 94.0, y - 13.0), (x + 94.0, y + 15.0), (x + 54.0, y + 11.0)];
    paper.area(&corners, PLAIN, Fill::None);
    nut(paper, x + 94.0, y);
    paper.path(&[(x + 120.0, y), (x + 129.0, y - 2.0), (x + 138.0, y - 14.0)], THICK);
    paper.line((x + 120.0, y), (x + 142.0, y), DOTTED);
}

fn nut(paper: &mut Paper<'_>, x: f64, y: f64) {
    paper.frame((x, y - 17.0), (26.0, 34.0), 1.0, Fill::Medium);
    paper.line((x, y - 6.0), (x + 26.0, y - 6.0), THIN);
    paper.line((x, y + 6.0), (x + 26.0, y + 6.0), THIN);
}

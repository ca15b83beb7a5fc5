//! A rate as a bar: pencil hatch from low to high, a stroke at the likely, a gate at the wish, a pen mark where it was
//! measured, a post where it is after the work.

use std::fmt::Write;

use guide::screen::RowBar;
use maud::{Markup, PreEscaped, html};

/// Width of the drawing, units.
const WIDTH: f64 = 640.0;
/// What stays free at both ends.
const EDGE: f64 = 6.0;
/// Where the scale lies, and how high the hatch stands over it.
const FOOT: f64 = 30.0;
const HIGH: f64 = 14.0;
/// Strokes of the hatch stand so far apart.
const APART: f64 = 5.0;

/// The bar. It says nothing that the words beside it do not.
pub(super) fn bar(bar: &RowBar) -> Markup {
    let end = if bar.scale_end > 0.0 { bar.scale_end } else { 1.0 };
    let at = |rate: f64| EDGE + rate.clamp(0.0, end) / end * (WIDTH - 2.0 * EDGE);
    let mut out = String::new();
    let mut path = |class: &str, way: std::fmt::Arguments<'_>| {
        // Writing to a string never fails.
        let _ = write!(out, "<path class=\"{class}\" d=\"{way}\"/>");
    };
    path("bx", format_args!("M{EDGE} {FOOT}H{:.1}", WIDTH - EDGE));
    let step = step_of(end);
    let mut mark = 0.0;
    while mark <= end {
        path("bt", format_args!("M{:.1} {FOOT}v5", at(mark)));
        mark += step;
    }
    if bar.high > 0.0 {
        let (from, to) = (at(bar.low), at(bar.high).max(at(bar.low) + 3.0));
        path("bh", format_args!("M{from:.1} {FOOT}v-{HIGH}H{to:.1}v{HIGH}z"));
        let mut x = from + 2.0;
        while x < to - 1.0 {
            let run = (to - x).min(0.6 * HIGH);
            path("bk", format_args!("M{x:.1} {FOOT}l{run:.1} -{:.1}", run / 0.6));
            x += APART;
        }
        path("bl", format_args!("M{:.1} 12V{FOOT}", at(bar.likely)));
    }
    if let Some(wish) = bar.wish {
        let x = at(wish);
        path("bw", format_args!("M{x:.1} 5V34"));
        path("bw f", format_args!("M{:.1} 2h10l-5 7z", x - 5.0));
    }
    if let Some(measured) = bar.measured {
        let x = at(measured);
        if bar.capped {
            path("bc", format_args!("M{x:.1} {FOOT}h26m-6 -5l6 5-6 5"));
        }
        path("bm", format_args!("M{x:.1} 23l6.5 7-6.5 7-6.5-7z"));
    }
    if let Some(after) = bar.after {
        let x = at(after);
        path("ba", format_args!("M{x:.1} 12V{FOOT}"));
        path("ba f", format_args!("M{:.1} 12h12v5h-12z", x - 6.0));
    }
    html! {
        svg.bar viewBox=(format!("0 0 {WIDTH} 40")) preserveAspectRatio="none" aria-hidden="true" { (PreEscaped(out)) }
    }
}

/// Marks on the scale stand at whole hundreds or thousands, at most ten.
fn step_of(end: f64) -> f64 {
    [50.0, 100.0, 250.0, 500.0, 1000.0, 2500.0]
        .into_iter()
        .find(|step| end / step <= 10.0)
        .unwrap_or(end / 10.0)
}

/// A share of a whole, in thousandths.
pub(super) fn share(thousandths: u32) -> Markup {
    html! {
        svg.lossbar viewBox="0 0 1000 10" preserveAspectRatio="none" aria-hidden="true" {
            rect width=(thousandths.clamp(4, 1000)) height="10" {}
        }
    }
}

//! A room's rate as a bar on a scale: pencil hatch from low to high with a stroke at the likely, a gate at the wish, a pen
//! mark where it was measured, a post where it is expected once all steps are done.

use advice::forecast::{Forecast, RoomForecast};
use advice::verdict::RoomVerdict;
use coax::Span;
use house::record::Survey;
use phrase::Phrase;

use super::mark::{Dash, Figure, Fill, Ink, Pen, Weight};
use super::sheet::{PLAIN, Sheet, THIN, pen};

/// What stands on one bar, all towards the room, Mb/s.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RoomBar {
    /// The forecast; `None` where nothing gets there or it is not known.
    pub range: Option<Span>,
    /// What is wished.
    pub wish: Option<f64>,
    /// What was measured.
    pub measured: Option<f64>,
    /// Whether the test's own network socket held what was measured: there may be more.
    pub capped: bool,
    /// What is likely once the work list is done.
    pub after: Option<f64>,
}

/// Scales end at the next of these above all that is shown, and have a mark at each, Mb/s.
pub const SCALE_STEP_MBPS: f64 = 500.0;

impl RoomBar {
    /// The bar of an outlet; `when_done` is the forecast once all steps are done, if there are any.
    pub fn of(
        survey: &Survey,
        forecast: &Forecast,
        when_done: Option<&Forecast>,
        room: &RoomForecast,
    ) -> Self {
        let measured = RoomVerdict::at(survey, room.outlet, Some(forecast)).throughput();
        Self {
            range: forecast.path(room.outlet).map(|path| path.down),
            wish: survey.wish_at(room.outlet).map(|wish| wish.down_mbps),
            measured: measured.map(|rates| rates.down_mbps),
            capped: measured.is_some_and(|rates| rates.is_capped),
            after: when_done.and_then(|done| Some(done.path(room.outlet)?.down.likely)),
        }
    }

    /// Where a scale must end so that all of these fit on it, Mb/s.
    pub fn scale_end<'a>(bars: impl IntoIterator<Item = &'a Self>) -> f64 {
        let most = bars.into_iter().map(Self::most).fold(0.0, f64::max);
        (most / SCALE_STEP_MBPS).ceil().max(1.0) * SCALE_STEP_MBPS
    }

    fn most(&self) -> f64 {
        let measured = self.measured.map(|rate| if self.capped { rate * WITH_ARROW } else { rate });
        let all = [self.range.map(|range| range.high), self.wish, measured, self.after];
        all.into_iter().flatten().filter(|rate| rate.is_finite()).fold(0.0, f64::max)
    }
}

const WIDTH: f64 = 326.0;
const HEIGHT: f64 = 40.0;
/// Where the scale begins and ends, from either side.
const SIDE: f64 = 6.0;
const AXIS: f64 = 30.0;
/// From what a test could show at most on to the tip of the arrow that says there may be more.
const ARROW: f64 = 24.0;
/// So much further a scale goes for an arrow, so that all of it lies on the figure.
const WITH_ARROW: f64 = (WIDTH - 2.0 * SIDE) / (WIDTH - SIDE - ARROW);
const TOP: f64 = 16.0;
const GATE: Pen = pen(Weight::Plain, Dash::Dashed);
const POST: Pen = pen(Weight::Thick, Dash::Solid);

/// The bar of a room on a scale that ends at `scale_end`, Mb/s.
pub fn room_bar(bar: &RoomBar, scale_end: f64, name: Phrase, description: Phrase) -> Figure {
    let mut sheet = Sheet::default();
    let x = |mbps: f64| SIDE + (mbps / scale_end).clamp(0.0, 1.0) * (WIDTH - 2.0 * SIDE);
    sheet.dip(Ink::Quiet);
    let steps = (scale_end / SCALE_STEP_MBPS).round();
    let mut step = 0.0;
    while step <= steps {
        let at = x(step * SCALE_STEP_MBPS);
        sheet.line((at, AXIS), (at, AXIS + 5.0), THIN);
        step += 1.0;
    }
    sheet.dip(Ink::Text);
    sheet.line((SIDE, AXIS), (WIDTH - SIDE, AXIS), PLAIN);
    if let Some(range) = bar.range {
        hatch(&mut sheet, x(range.low), x(range.high));
        likely(&mut sheet, x(range.likely), TOP - 4.0);
    }
    if let Some(wish) = bar.wish {
        gate(&mut sheet, x(wish));
    }
    if let Some(after) = bar.after {
        post(&mut sheet, x(after));
    }
    if let Some(measured) = bar.measured {
        pen_mark(&mut sheet, x(measured), bar.capped);
    }
    sheet.figure((WIDTH, HEIGHT), name, description)
}

/// The range, in pencil: what is reckoned, not seen.
fn hatch(sheet: &mut Sheet, from: f64, to: f64) {
    let to = to.max(from + 3.0);
    sheet.dip(Ink::Pencil);
    sheet.rect((from, TOP), (to - from, AXIS - TOP), THIN, Fill::Medium);
    let mut at = from + 1.0;
    while at < to - 1.0 {
        // Slanting strokes, cut off at the end of the range.
        let run = (to - at).min((AXIS - TOP) * 0.6);
        sheet.line((at, AXIS), (at + run, AXIS - run / 0.6), THIN);
        at += 5.0;
    }
}

fn likely(sheet: &mut Sheet, at: f64, top: f64) {
    sheet.dip(Ink::Text);
    sheet.line((at, top), (at, AXIS), POST);
}

fn gate(sheet: &mut Sheet, at: f64) {
    sheet.dip(Ink::Text);
    sheet.line((at, 9.0), (at, AXIS + 4.0), GATE);
    sheet.area(&[(at - 5.0, 2.0), (at + 5.0, 2.0), (at, 9.0)], PLAIN, Fill::None);
}

fn post(sheet: &mut Sheet, at: f64) {
    sheet.dip(Ink::Accent);
    sheet.line((at, TOP - 4.0), (at, AXIS), PLAIN);
    sheet.rect((at - 6.0, TOP - 4.0), (12.0, 5.0), PLAIN, Fill::Solid);
}

fn pen_mark(sheet: &mut Sheet, at: f64, capped: bool) {
    sheet.dip(Ink::Measured);
    if capped {
        // As much as the test could show; there may be more. On a scale that ends there the arrow reaches to the edge.
        let tip = (at + ARROW).min(WIDTH);
        sheet.line((at, AXIS), (tip, AXIS), PLAIN);
        for wing in [-4.0, 4.0] {
            sheet.line((tip - 5.0, AXIS + wing), (tip, AXIS), PLAIN);
        }
    }
    let diamond = [(at, AXIS - 7.0), (at + 6.0, AXIS), (at, AXIS + 7.0), (at - 6.0, AXIS)];
    sheet.area(&diamond, THIN, Fill::Solid);
}

/// A mark of a bar, to stand beside its word in the key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BarSign {
    /// The gate.
    Wish,
    /// The hatch with its stroke.
    Forecast,
    /// The pen mark.
    Measured,
    /// The post.
    After,
}

impl BarSign {
    /// The marks that stand on any of these bars, in the order of the key, each with its word.
    pub fn on(bars: &[RoomBar]) -> Vec<(Self, Phrase)> {
        let any = |has: fn(&RoomBar) -> bool| bars.iter().any(has);
        let signs = [
            (any(|bar| bar.wish.is_some()), Self::Wish, "report-key-wished"),
            (any(|bar| bar.range.is_some()), Self::Forecast, "report-key-forecast"),
            (any(|bar| bar.measured.is_some()), Self::Measured, "report-key-measured"),
            (any(|bar| bar.after.is_some()), Self::After, "report-key-after"),
        ];
        let there = signs.into_iter().filter(|(there, ..)| *there);
        there.map(|(_, sign, word)| (sign, Phrase::new(word))).collect()
    }
}

/// One mark of a bar by itself, as it stands in the key.
pub fn bar_sign(sign: BarSign, name: Phrase) -> Figure {
    let mut sheet = Sheet::default();
    let (width, at) = if sign == BarSign::Forecast { (40.0, 26.0) } else { (20.0, 10.0) };
    match sign {
        BarSign::Wish => gate(&mut sheet, at),
        BarSign::Forecast => {
            hatch(&mut sheet, 2.0, 38.0);
            likely(&mut sheet, at, TOP - 4.0);
        }
        BarSign::Measured => pen_mark(&mut sheet, at, false),
        BarSign::After => post(&mut sheet, at),
    }
    sheet.figure((width, HEIGHT), name.clone(), name)
}

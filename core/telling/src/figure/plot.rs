//! Loss over frequency, with the range in which it lies, one panel a room; our channels and the bands that others need
//! are shaded and named.

use advice::forecast::{Curve, Forecast, PathForecast, RoomForecast, TakenBand, bands_taken};
use house::naming;
use house::record::Survey;
use phrase::{Arg, Phrase};

use super::map::COLUMN;
use super::mark::{Anchor, Dash, Figure, Fill, Ink, Pen, Point, Shape, Weight};
use super::measure::{legible, wrapped};
use super::sheet::{NO_LINE, PLAIN, Sheet, THIN, Type, pen};
use crate::words::Language;

/// How many rooms are shown at most: the weakest.
pub const MOST_ROOMS: usize = 3;

const LEFT: f64 = 40.0;
const RIGHT: f64 = 14.0;
const TITLE: f64 = 28.0;
const HEAD_LINE: f64 = 20.0;
const LINE: f64 = 18.0;
const PANEL: f64 = 170.0;
const UNDER: f64 = 52.0;
const SMALL: Type = Type::of(13.0);
const HEAD: Type = Type::of(15.0).strong(true);
const LIKELY: Pen = pen(Weight::Cable, Dash::Solid);
const RANGE: Pen = pen(Weight::Thin, Dash::Dotted);
/// From one stroke of a hatch to the next.
const HATCH: f64 = 12.0;
/// The length of a sample in the key.
const SAMPLE: f64 = 28.0;
/// Losses beyond this are drawn at the foot of the panel: no link works there.
const MOST_DB: f64 = 120.0;
/// An axis shows at least so many dB.
const LEAST_SPAN_DB: f64 = 40.0;

/// The loss over frequency of the weakest rooms, as wide as a column of a page; `None` where no room's loss was worked out.
pub fn loss_plot(survey: &Survey, forecast: &Forecast, language: &Language) -> Option<Figure> {
    loss_plot_in(survey, forecast, COLUMN, language)
}

/// The same, so many CSS pixels wide.
pub fn loss_plot_in(survey: &Survey, forecast: &Forecast, width: f64, language: &Language) -> Option<Figure> {
    let rooms: Vec<_> = forecast
        .weakest_first()
        .into_iter()
        .filter(|(_, path)| path.curve.mhz.len() > 1)
        .take(MOST_ROOMS)
        .collect();
    let axes = Axes::around(rooms.iter().map(|(_, path)| &path.curve), &forecast.channels, width)?;
    let mut taken = bands_taken(survey, forecast);
    taken.retain(|band| band.high_mhz > axes.low_mhz && band.low_mhz < axes.high_mhz);
    let mut plot =
        Plot { sheet: Sheet::default(), axes, channels: &forecast.channels, taken: &taken, language };
    let mut top = 0.0;
    for (room, path) in &rooms {
        top = plot.panel(top, &title(survey, room, path), &path.curve);
    }
    let names = rooms.iter().map(|(room, _)| Arg::Phrase(Box::new(naming::part(survey, room.outlet))));
    let description = Phrase::new("plot-description")
        .with("rooms", Arg::Several(names.collect()))
        .with("channels", channel_list(&forecast.channels))
        .with("many", Arg::Count(taken.len() as u64))
        .with("taken", Arg::Several(taken.iter().map(|band| Arg::Phrase(Box::new(told(band)))).collect()));
    Some(plot.sheet.figure((width, top), Phrase::new("plot-name"), description))
}

fn title(survey: &Survey, room: &RoomForecast, path: &PathForecast) -> Phrase {
    let place = naming::part(survey, room.outlet);
    Phrase::new("plot-panel").phrase("place", place).with("loss", Arg::LossRange(path.loss))
}

/// A band that somebody else needs, and who.
fn told(band: &TakenBand) -> Phrase {
    Phrase::new("plot-taken")
        .phrase("service", naming::service(band.by))
        .with("band", Arg::Band(band.low_mhz, band.high_mhz))
}

/// The channels as a list of bands, for a sentence.
fn channel_list(channels: &[(f64, f64)]) -> Arg {
    let bands = channels.iter().map(|(centre, width)| Arg::Band(centre - width / 2.0, centre + width / 2.0));
    Arg::Several(bands.collect())
}

#[derive(Debug, Clone, Copy)]
struct Axes {
    low_mhz: f64,
    high_mhz: f64,
    low_db: f64,
    high_db: f64,
    width: f64,
}

impl Axes {
    fn around<'a>(
        curves: impl Iterator<Item = &'a Curve>,
        channels: &[(f64, f64)],
        width: f64,
    ) -> Option<Self> {
        let (mut mhz, mut db) = (Vec::new(), Vec::new());
        for curve in curves {
            mhz.extend(curve.mhz.iter().copied());
            db.extend(curve.low.iter().chain(&curve.likely).chain(&curve.high).copied());
        }
        if mhz.is_empty() {
            return None;
        }
        mhz.extend(channels.iter().flat_map(|(centre, width)| [centre - width / 2.0, centre + width / 2.0]));
        let least =
            |values: &[f64]| values.iter().copied().filter(|v| v.is_finite()).fold(f64::INFINITY, f64::min);
        let most = |values: &[f64]| {
            values.iter().copied().filter(|v| v.is_finite()).fold(f64::NEG_INFINITY, f64::max)
        };
        let (low_mhz, high_mhz) = (least(&mhz), most(&mhz));
        let high_db = ((most(&db) + 2.0) / 10.0).ceil().clamp(0.0, MOST_DB / 10.0) * 10.0;
        let low_db = ((least(&db) - 2.0) / 10.0).floor() * 10.0;
        let low_db = low_db.min(high_db - LEAST_SPAN_DB).clamp(-40.0, MOST_DB - LEAST_SPAN_DB);
        let high_db = high_db.max(low_db + LEAST_SPAN_DB);
        (low_mhz < high_mhz).then_some(Self { low_mhz, high_mhz, low_db, high_db, width })
    }

    fn across(self) -> f64 {
        self.width - LEFT - RIGHT
    }

    fn x(self, mhz: f64) -> f64 {
        let mhz = mhz.clamp(self.low_mhz, self.high_mhz);
        LEFT + (mhz - self.low_mhz) / (self.high_mhz - self.low_mhz) * self.across()
    }

    fn y(self, frame: f64, db: f64) -> f64 {
        let db = if db.is_nan() { self.high_db } else { db.clamp(self.low_db, self.high_db) };
        frame + (db - self.low_db) / (self.high_db - self.low_db) * PANEL
    }
}

struct Plot<'a> {
    sheet: Sheet,
    axes: Axes,
    channels: &'a [(f64, f64)],
    taken: &'a [TakenBand],
    language: &'a Language,
}

impl Plot<'_> {
    /// Draws a panel from `top` down; gives where the next one starts.
    fn panel(&mut self, top: f64, title: &Phrase, curve: &Curve) -> f64 {
        let title = self.say(title);
        let width = self.axes.width;
        let mut y = top;
        for line in wrapped(&title, HEAD.size, true, width, 2) {
            self.sheet.dip(Ink::Text);
            self.sheet.text((0.0, y + 18.0), line, HEAD);
            y += HEAD_LINE;
        }
        y = self.key(y + TITLE - HEAD_LINE);
        self.sheet.dip(Ink::Quiet);
        let axis = self.word("plot-y-axis");
        self.sheet.text((0.0, y + 14.0), SMALL.fitted(&axis, width), SMALL);
        y += LINE;
        for band in self.taken {
            let (left, right) = (self.axes.x(band.low_mhz), self.axes.x(band.high_mhz));
            let name = self.say(&told(band));
            self.over((left, right), y + 14.0, &[name], width);
            y += LINE;
        }
        let frame = y + LINE;
        self.channels(frame);
        for band in self.taken {
            self.hatch((self.axes.x(band.low_mhz), self.axes.x(band.high_mhz)), (frame, frame + PANEL));
        }
        self.grid(frame);
        self.range(frame, curve);
        let likely = self.points(frame, &curve.mhz, &curve.likely);
        self.sheet.dip(Ink::Text);
        self.sheet.draw(Shape::Polyline { points: likely, closed: false }, LIKELY, Fill::None);
        self.sheet.line((LEFT, frame + PANEL), (width - RIGHT, frame + PANEL), PLAIN);
        frame + PANEL + UNDER
    }

    fn say(&self, phrase: &Phrase) -> String {
        legible(&self.language.say(phrase)).into_owned()
    }

    fn word(&self, id: &str) -> String {
        self.say(&Phrase::new(id))
    }

    fn points(&self, frame: f64, mhz: &[f64], db: &[f64]) -> Vec<Point> {
        let place = |(f, a): (&f64, &f64)| Point { x: self.axes.x(*f), y: self.axes.y(frame, *a) };
        mhz.iter().zip(db).map(place).collect()
    }

    fn range(&mut self, frame: f64, curve: &Curve) {
        let mut points = self.points(frame, &curve.mhz, &curve.low);
        points.extend(self.points(frame, &curve.mhz, &curve.high).into_iter().rev());
        self.sheet.dip(Ink::Pencil);
        self.sheet.draw(Shape::Polyline { points, closed: true }, RANGE, Fill::Medium);
    }

    /// Text over a stretch of the frame, moved sideways where it would leave the sheet: the first that there is room for.
    fn over(&mut self, (left, right): (f64, f64), y: f64, names: &[String], room: f64) {
        let Some(name) = names.iter().find(|name| SMALL.width(name) <= room).or(names.last()) else { return };
        let name = SMALL.fitted(name, room);
        let half = SMALL.width(&name) / 2.0;
        let middle = f64::midpoint(left, right).min(self.axes.width - half).max(half);
        self.sheet.dip(Ink::Quiet);
        self.sheet.text((middle, y), name, SMALL.anchored(Anchor::Middle));
    }

    /// The key over the panel; gives where it ends.
    fn key(&mut self, top: f64) -> f64 {
        let mut samples = vec!["plot-likely", "plot-range", "plot-ours"];
        if !self.taken.is_empty() {
            samples.push("plot-others");
        }
        let (mut x, mut y) = (0.0, top);
        for id in samples {
            let width = self.axes.width;
            let word = SMALL.fitted(&self.word(id), width - SAMPLE - 8.0);
            let wide = SAMPLE + 8.0 + SMALL.width(&word);
            if x > 0.0 && x + wide > width {
                (x, y) = (0.0, y + LINE + 2.0);
            }
            let (over, under) = (y + 3.0, y + 15.0);
            match id {
                "plot-likely" => {
                    self.sheet.dip(Ink::Text);
                    self.sheet.line((x, y + 9.0), (x + SAMPLE, y + 9.0), LIKELY);
                }
                "plot-range" => {
                    self.sheet.dip(Ink::Pencil);
                    self.sheet.rect((x, over), (SAMPLE, under - over), RANGE, Fill::Medium);
                }
                "plot-ours" => self.shade((x, x + SAMPLE), (over, under)),
                _ => self.hatch((x, x + SAMPLE), (over, under)),
            }
            self.sheet.dip(Ink::Text);
            self.sheet.text((x + SAMPLE + 8.0, y + 14.0), word, SMALL);
            x += wide + 18.0;
        }
        y + LINE + 6.0
    }

    /// A channel of ours: a faint ground between two edges, and a bracket at its foot.
    fn shade(&mut self, (left, right): (f64, f64), (top, bottom): (f64, f64)) {
        self.sheet.dip(Ink::Accent);
        self.sheet.rect((left + 1.0, top), (right - left - 2.0, bottom - top), NO_LINE, Fill::Faint);
        let bracket = [
            (left + 1.0, bottom - 5.0),
            (left + 1.0, bottom),
            (right - 1.0, bottom),
            (right - 1.0, bottom - 5.0),
        ];
        self.sheet.path(&bracket, PLAIN);
    }

    /// A band that others need: slanting strokes.
    fn hatch(&mut self, (left, right): (f64, f64), (top, bottom): (f64, f64)) {
        self.sheet.dip(Ink::Warning);
        self.sheet.rect((left, top), (right - left, bottom - top), THIN, Fill::None);
        let high = bottom - top;
        let mut at = left - high + HATCH / 2.0;
        while at < right {
            // From the foot at `at` up to the right, cut at both edges.
            let (from, to) = (at.max(left), (at + high).min(right));
            if to > from {
                self.sheet.line((from, bottom - (from - at)), (to, bottom - (to - at)), THIN);
            }
            at += HATCH;
        }
    }

    /// The channels in use, shaded, each with its name over the frame.
    fn channels(&mut self, frame: f64) {
        for (centre, width) in self.channels {
            let (left, right) = (self.axes.x(centre - width / 2.0), self.axes.x(centre + width / 2.0));
            self.shade((left, right), (frame, frame + PANEL));
            let long = self.say(&Phrase::new("plot-channel").with("mhz", Arg::Frequency(*centre)));
            let short = format!("{centre:.0}");
            if SMALL.width(&short) <= right - left {
                self.over((left, right), frame - 5.0, &[long, short], right - left - 4.0);
            }
        }
    }

    fn grid(&mut self, frame: f64) {
        let (bottom, edge) = (frame + PANEL, self.axes.width - RIGHT);
        for mhz in steps(self.axes.low_mhz, self.axes.high_mhz, self.axes.across() / 90.0) {
            let x = self.axes.x(mhz);
            self.sheet.dip(Ink::Text);
            self.sheet.line((x, bottom), (x, bottom + 5.0), PLAIN);
            let text = format!("{mhz:.0}");
            // A number that would stand out of the box is left to its neighbours.
            if x + SMALL.width(&text) / 2.0 <= self.axes.width {
                self.sheet.dip(Ink::Quiet);
                self.sheet.text((x, bottom + 19.0), text, SMALL.anchored(Anchor::Middle));
            }
        }
        for db in steps(self.axes.low_db, self.axes.high_db, 5.0) {
            let y = self.axes.y(frame, db);
            self.sheet.hair((LEFT, y), edge - LEFT);
            self.sheet.dip(Ink::Quiet);
            self.sheet.text((LEFT - 6.0, y + 4.5), format!("{db:.0}"), SMALL.anchored(Anchor::End));
        }
        let frequency = SMALL.fitted(&self.word("plot-x-axis"), edge - LEFT);
        self.sheet.dip(Ink::Quiet);
        self.sheet.text((edge, bottom + 37.0), frequency, SMALL.anchored(Anchor::End));
    }
}

/// Round numbers from `low` to `high`, about `count` of them.
fn steps(low: f64, high: f64, count: f64) -> Vec<f64> {
    let rough = (high - low) / count;
    let decade = 10_f64.powf(rough.log10().floor());
    let step =
        [1.0, 2.0, 5.0, 10.0].into_iter().map(|n| n * decade).find(|step| *step >= rough).unwrap_or(rough);
    let mut at = (low / step).ceil() * step;
    let mut steps = Vec::new();
    while at <= high + step * 1e-9 && steps.len() < 100 {
        steps.push(at);
        at += step;
    }
    steps
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn axes_are_marked_at_round_numbers() {
        assert_eq!(steps(1125.0, 1675.0, 6.0), [1200.0, 1300.0, 1400.0, 1500.0, 1600.0]);
        assert_eq!(steps(0.0, 60.0, 5.0), [0.0, 20.0, 40.0, 60.0]);
    }
}

//! Loss over frequency, with the range in which it lies, one panel a room.

use advice::forecast::{Curve, Forecast, PathForecast, RoomForecast};
use house::naming;
use house::record::Survey;
use phrase::{Arg, Phrase};

use super::mark::{Anchor, Dash, Figure, Fill, Ink, Pen, Point, Shape, Weight};
use super::measure::{fitted, legible, text_width};
use super::sheet::{PLAIN, Sheet, THIN, Type, pen};
use crate::words::Language;

/// How many rooms are shown at most: the weakest.
pub const MOST_ROOMS: usize = 3;

const WIDTH: f64 = 760.0;
const LEFT: f64 = 64.0;
const RIGHT: f64 = 20.0;
const ABOVE: f64 = 64.0;
const PANEL: f64 = 190.0;
const UNDER: f64 = 52.0;
const TICK_TYPE: Type = Type::of(12.0);
const WORD_TYPE: Type = Type::of(13.0);
const HEAD_TYPE: Type = Type::of(15.0).strong(true);
const MEDIAN: Pen = pen(Weight::Thick, Dash::Solid);
const CHANNEL_EDGE: Pen = pen(Weight::Thin, Dash::Dashed);
/// Losses beyond this are drawn at the foot of the panel: no link works there.
const MOST_DB: f64 = 120.0;

/// The loss over frequency of the weakest rooms; `None` where no room's loss was worked out.
pub fn loss_plot(survey: &Survey, forecast: &Forecast, language: &Language) -> Option<Figure> {
    let rooms: Vec<_> = forecast
        .weakest_first()
        .into_iter()
        .filter(|(_, path)| path.curve.mhz.len() > 1)
        .take(MOST_ROOMS)
        .collect();
    let axes = Axes::around(rooms.iter().map(|(_, path)| &path.curve), &forecast.channels)?;
    let mut plot = Plot { sheet: Sheet::default(), axes, language };
    let mut top = 0.0;
    for (room, path) in &rooms {
        plot.panel(top, &title(survey, room, path), &path.curve, &forecast.channels);
        top += ABOVE + PANEL + UNDER;
    }
    let names = rooms.iter().map(|(room, _)| Arg::Phrase(Box::new(naming::part(survey, room.outlet))));
    let description = Phrase::new("plot-description")
        .with("rooms", Arg::Several(names.collect()))
        .with("channels", channel_list(&forecast.channels));
    Some(plot.sheet.figure((WIDTH, top), Phrase::new("plot-name"), description))
}

fn title(survey: &Survey, room: &RoomForecast, path: &PathForecast) -> Phrase {
    let place = naming::part(survey, room.outlet);
    Phrase::new("plot-panel").phrase("place", place).with("loss", Arg::LossRange(path.loss))
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
}

impl Axes {
    fn around<'a>(curves: impl Iterator<Item = &'a Curve>, channels: &[(f64, f64)]) -> Option<Self> {
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
        let low_db = least(&db).clamp(-40.0, 0.0);
        let high_db = most(&db).clamp(10.0, MOST_DB);
        (low_mhz < high_mhz).then(|| Self {
            low_mhz,
            high_mhz,
            low_db: (low_db / 10.0).floor() * 10.0,
            high_db: (high_db / 10.0).ceil() * 10.0,
        })
    }

    fn x(self, mhz: f64) -> f64 {
        LEFT + (mhz - self.low_mhz) / (self.high_mhz - self.low_mhz) * (WIDTH - LEFT - RIGHT)
    }

    fn y(self, top: f64, db: f64) -> f64 {
        let db = if db.is_nan() { self.high_db } else { db.clamp(self.low_db, self.high_db) };
        top + ABOVE + (db - self.low_db) / (self.high_db - self.low_db) * PANEL
    }
}

struct Plot<'a> {
    sheet: Sheet,
    axes: Axes,
    language: &'a Language,
}

impl Plot<'_> {
    fn panel(&mut self, top: f64, title: &Phrase, curve: &Curve, channels: &[(f64, f64)]) {
        let (frame_top, width) = (top + ABOVE, WIDTH - LEFT - RIGHT);
        let title = legible(&self.language.say(title)).into_owned();
        self.sheet.text((0.0, top + 20.0), fitted(&title, HEAD_TYPE.size, true, WIDTH), HEAD_TYPE);
        self.channels(frame_top, channels);
        self.ticks(top);
        self.band(top, curve);
        let likely = self.points(top, &curve.mhz, &curve.likely);
        self.sheet.dip(Ink::Text);
        self.sheet.draw(Shape::Polyline { points: likely, closed: false }, MEDIAN, Fill::None);
        self.sheet.rect((LEFT, frame_top), (width, PANEL), THIN, Fill::None);
        self.key(top);
    }

    fn points(&self, top: f64, mhz: &[f64], db: &[f64]) -> Vec<Point> {
        let place = |(f, a): (&f64, &f64)| Point { x: self.axes.x(*f), y: self.axes.y(top, *a) };
        mhz.iter().zip(db).map(place).collect()
    }

    fn band(&mut self, top: f64, curve: &Curve) {
        let mut points = self.points(top, &curve.mhz, &curve.low);
        points.extend(self.points(top, &curve.mhz, &curve.high).into_iter().rev());
        self.sheet.dip(Ink::Pencil);
        self.sheet.draw(
            Shape::Polyline { points, closed: true },
            pen(Weight::Thin, Dash::Dotted),
            Fill::Medium,
        );
    }

    /// The key over the panel: what the line and the area are.
    fn key(&mut self, top: f64) {
        let y = top + 40.0;
        let mut x = LEFT;
        self.sheet.line((x, y - 4.0), (x + 28.0, y - 4.0), MEDIAN);
        x = self.word(x + 34.0, y, "plot-likely") + 24.0;
        self.sheet.dip(Ink::Pencil);
        self.sheet.rect((x, y - 10.0), (28.0, 12.0), pen(Weight::Thin, Dash::Dotted), Fill::Medium);
        self.sheet.dip(Ink::Text);
        self.word(x + 34.0, y, "plot-range");
    }

    fn word(&mut self, x: f64, y: f64, id: &str) -> f64 {
        let text = self.language.say(&Phrase::new(id));
        let end = x + text_width(&text, WORD_TYPE.size, false);
        self.sheet.text((x, y), text, WORD_TYPE);
        end
    }

    /// The channels in use, shaded, each with its name over the frame.
    fn channels(&mut self, frame_top: f64, channels: &[(f64, f64)]) {
        self.sheet.dip(Ink::Quiet);
        for (centre, width) in channels {
            let (left, right) = (self.axes.x(centre - width / 2.0), self.axes.x(centre + width / 2.0));
            self.sheet.rect((left, frame_top), (right - left, PANEL), CHANNEL_EDGE, Fill::Faint);
            let name = self.language.say(&Phrase::new("plot-channel").with("mhz", Arg::Frequency(*centre)));
            if text_width(&name, TICK_TYPE.size, false) <= right - left {
                let middle = f64::midpoint(left, right);
                self.sheet.text((middle, frame_top - 6.0), name, TICK_TYPE.anchored(Anchor::Middle));
            }
        }
    }

    fn ticks(&mut self, top: f64) {
        self.sheet.dip(Ink::Quiet);
        let bottom = top + ABOVE + PANEL;
        for mhz in steps(self.axes.low_mhz, self.axes.high_mhz, 6.0) {
            let x = self.axes.x(mhz);
            self.sheet.line((x, bottom), (x, bottom + 5.0), PLAIN);
            let middle = TICK_TYPE.anchored(Anchor::Middle);
            let text = format!("{mhz:.0}");
            // A number that would stand out of the box is left to its neighbours.
            if x - text_width(&text, TICK_TYPE.size, false) / 2.0 >= LEFT - 20.0 && x <= WIDTH - RIGHT {
                self.sheet.text((x, bottom + 18.0), text, middle);
            }
        }
        for db in steps(self.axes.low_db, self.axes.high_db, 5.0) {
            let y = self.axes.y(top, db);
            self.sheet.line((LEFT, y), (WIDTH - RIGHT, y), THIN);
            self.sheet.text((LEFT - 6.0, y + 4.0), format!("{db:.0}"), TICK_TYPE.anchored(Anchor::End));
        }
        let (frequency, loss) =
            (self.language.say(&Phrase::new("plot-x-axis")), self.language.say(&Phrase::new("plot-y-axis")));
        self.sheet.text((WIDTH - RIGHT, bottom + 36.0), frequency, WORD_TYPE.anchored(Anchor::End));
        self.sheet.text((0.0, top + ABOVE - 14.0), loss, TICK_TYPE);
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

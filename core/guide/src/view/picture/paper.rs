//! Paper to draw on: a few strokes that every drawing here is made of.

use phrase::Phrase;
use telling::figure::{Anchor, Dash, Figure, Fill, Ink, Mark, Pen, Point, Shape, Weight, wrapped};
use telling::words::Language;

/// The width of every drawing, in units of 1/96 inch: what a phone held upright shows without shrinking it.
pub(super) const WIDTH: f64 = 340.0;
/// Heights of the type that explains: the first at which all is said.
const TYPES: [f64; 4] = [13.0, 12.0, 11.0, SMALLEST];
const SMALLEST: f64 = 10.0;
/// The most lines of one label.
const MOST_LINES: usize = 3;
/// The height of the type that is printed on a thing.
const PRINT: f64 = 11.0;

/// The line of cables and parts.
pub(super) const PLAIN: Pen = Pen { weight: Weight::Plain, dash: Dash::Solid };
/// The line of threads, wires and pointers.
pub(super) const THIN: Pen = Pen { weight: Weight::Thin, dash: Dash::Solid };
/// The line of what is to be seen first.
pub(super) const THICK: Pen = Pen { weight: Weight::Thick, dash: Dash::Solid };
/// The line of what goes on beyond the drawing.
pub(super) const DOTTED: Pen = Pen { weight: Weight::Plain, dash: Dash::Dotted };

/// A drawing in the making, measured in units of 1/96 inch from the upper left corner.
pub(super) struct Paper<'a> {
    language: &'a Language,
    marks: Vec<Mark>,
}

impl<'a> Paper<'a> {
    pub(super) fn new(language: &'a Language) -> Self {
        Self { language, marks: Vec::new() }
    }

    fn mark(&mut self, shape: Shape, pen: Pen, fill: Fill) {
        // What is drawn is what is there; thin lines are threads and pointers.
        let ink = match &shape {
            Shape::Text { .. } => Ink::Text,
            _ if pen == THIN => Ink::Quiet,
            _ => Ink::Cable,
        };
        self.marks.push(Mark { shape, pen, fill, ink, touch: None, name: None, about: None });
    }

    pub(super) fn line(&mut self, from: (f64, f64), to: (f64, f64), pen: Pen) {
        self.mark(Shape::Line { from: point(from), to: point(to) }, pen, Fill::None);
    }

    pub(super) fn path(&mut self, points: &[(f64, f64)], pen: Pen) {
        let points = points.iter().copied().map(point).collect();
        self.mark(Shape::Polyline { points, closed: false }, pen, Fill::None);
    }

    /// An area between corners.
    pub(super) fn area(&mut self, points: &[(f64, f64)], pen: Pen, fill: Fill) {
        let points = points.iter().copied().map(point).collect();
        self.mark(Shape::Polyline { points, closed: true }, pen, fill);
    }

    /// A box from its upper left corner.
    pub(super) fn frame(&mut self, corner: (f64, f64), (width, height): (f64, f64), round: f64, fill: Fill) {
        self.mark(Shape::Rect { corner: point(corner), width, height, round }, PLAIN, fill);
    }

    /// A cable lying across, `thick` high about `y`.
    pub(super) fn cable(&mut self, from: f64, to: f64, y: f64, thick: f64) {
        self.frame((from, y - thick / 2.0), (to - from, thick), 0.0, Fill::Faint);
    }

    /// A threaded plug lying across, about `y`.
    pub(super) fn thread_across(&mut self, from: f64, to: f64, y: f64, thick: f64) {
        self.frame((from, y - thick / 2.0), (to - from, thick), 0.0, Fill::None);
        let turns = steps((to - from) / 4.0);
        for turn in 1..turns {
            let x = from + f64::from(turn) * (to - from) / f64::from(turns);
            self.line((x, y - thick / 2.0), (x, y + thick / 2.0), THIN);
        }
    }

    /// A threaded plug standing upright, about `x`.
    pub(super) fn thread_down(&mut self, x: f64, from: f64, to: f64, thick: f64) {
        self.frame((x - thick / 2.0, from), (thick, to - from), 0.0, Fill::None);
        let turns = steps((to - from) / 4.0);
        for turn in 1..turns {
            let y = from + f64::from(turn) * (to - from) / f64::from(turns);
            self.line((x - thick / 2.0, y), (x + thick / 2.0, y), THIN);
        }
    }

    /// What is printed on a thing, as it stands there in every country.
    pub(super) fn print(&mut self, at: (f64, f64), text: &str, anchor: Anchor) {
        self.lettering(at, text.to_owned(), PRINT, anchor, false);
    }

    /// What a thing is called, in lines about `x` from the baseline `y` down, no wider than `room`.
    pub(super) fn label(&mut self, (x, y): (f64, f64), id: &'static str, room: f64) {
        self.words((x, y), id, room, false);
    }

    /// The same in heavier type.
    pub(super) fn heading(&mut self, at: (f64, f64), id: &'static str, room: f64) {
        self.words(at, id, room, true);
    }

    fn words(&mut self, (x, y): (f64, f64), id: &'static str, room: f64, strong: bool) {
        let said = self.language.say(&Phrase::new(id));
        // A line stands alone, so marks of direction that span several words would be torn apart.
        let said: String = said.chars().filter(|sign| !phrase::turns_direction(*sign)).collect();
        let (size, lines) = TYPES
            .into_iter()
            .map(|size| (size, wrapped(&said, size, strong, room, MOST_LINES)))
            .find(|(_, lines)| lines.join(" ") == said)
            .unwrap_or_else(|| (SMALLEST, wrapped(&said, SMALLEST, strong, room, MOST_LINES)));
        let mut y = y;
        for line in lines {
            self.lettering((x, y), line, size, Anchor::Middle, strong);
            y += size * 1.2;
        }
    }

    fn lettering(&mut self, at: (f64, f64), text: String, size: f64, anchor: Anchor, strong: bool) {
        let shape = Shape::Text { at: point(at), text, size, anchor, strong, even: false };
        self.mark(shape, Pen { weight: Weight::None, dash: Dash::Solid }, Fill::Solid);
    }

    /// The drawing as far as `height`, under the messages `picture-<name>` and its `.about`.
    pub(super) fn figure(self, name: &str, height: f64) -> Figure {
        let name = Phrase::new(format!("picture-{name}"));
        let description = name.attribute("about");
        let marks = self.marks.into_iter().map(|mark| Mark { shape: in_unit_box(mark.shape), ..mark });
        Figure { marks: marks.collect(), aspect: WIDTH / height, natural_width: WIDTH, name, description }
    }
}

fn point((x, y): (f64, f64)) -> Point {
    Point { x, y }
}

/// A whole number of steps, at least one and at most 40.
fn steps(many: f64) -> u8 {
    (1..=40).rev().find(|steps| f64::from(*steps) <= many).unwrap_or(1)
}

fn in_unit_box(shape: Shape) -> Shape {
    let place = |p: Point| Point { x: p.x / WIDTH, y: p.y / WIDTH };
    match shape {
        Shape::Line { from, to } => Shape::Line { from: place(from), to: place(to) },
        Shape::Rect { corner, width, height, round } => Shape::Rect {
            corner: place(corner),
            width: width / WIDTH,
            height: height / WIDTH,
            round: round / WIDTH,
        },
        Shape::Polyline { points, closed } => {
            Shape::Polyline { points: points.into_iter().map(place).collect(), closed }
        }
        Shape::Text { at, text, size, anchor, strong, even } => {
            Shape::Text { at: place(at), text, size: size / WIDTH, anchor, strong, even }
        }
    }
}

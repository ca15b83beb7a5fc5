//! A sheet to lay out a figure on, in CSS pixels; made into a unit box at the end.

use phrase::Phrase;

use super::mark::{Anchor, Dash, Figure, Fill, Ink, Mark, Pen, Point, Shape, Touch, Weight};
use super::measure::{cut, even_width, text_width};

/// Marks being laid out, in CSS pixels from the upper left corner.
#[derive(Debug)]
pub(super) struct Sheet {
    marks: Vec<Mark>,
    ink: Ink,
    touch: Option<Touch>,
}

impl Default for Sheet {
    fn default() -> Self {
        Self { marks: Vec::new(), ink: Ink::Text, touch: None }
    }
}

/// The look of a line of text.
#[derive(Debug, Clone, Copy)]
pub(super) struct Type {
    /// Height of the type, pixels.
    pub size: f64,
    /// Which point of the text stands at its place.
    pub anchor: Anchor,
    /// Whether it is set in heavier type.
    pub strong: bool,
    /// Whether it is set in type of one width.
    pub even: bool,
}

impl Type {
    /// Type of this height from its left end.
    pub(super) const fn of(size: f64) -> Self {
        Self { size, anchor: Anchor::Start, strong: false, even: false }
    }

    /// The same type, heavier.
    pub(super) const fn strong(self, strong: bool) -> Self {
        Self { strong, ..self }
    }

    /// The same type, each letter as wide as the other.
    pub(super) const fn even(self) -> Self {
        Self { even: true, ..self }
    }

    /// The widest that a text may be in it, pixels.
    pub(super) fn width(self, text: &str) -> f64 {
        if self.even { even_width(text, self.size) } else { text_width(text, self.size, self.strong) }
    }

    /// The text, cut with an ellipsis if it would be wider than `room`.
    pub(super) fn fitted(self, text: &str, room: f64) -> String {
        cut(text, room, |text| self.width(text))
    }

    /// The same type about another anchor.
    pub(super) const fn anchored(self, anchor: Anchor) -> Self {
        Self { anchor, ..self }
    }
}

/// A line of this weight and break.
pub(super) const fn pen(weight: Weight, dash: Dash) -> Pen {
    Pen { weight, dash }
}

/// The line of signs.
pub(super) const PLAIN: Pen = pen(Weight::Plain, Dash::Solid);
/// The line of frames and grids.
pub(super) const THIN: Pen = pen(Weight::Thin, Dash::Solid);
/// No line.
pub(super) const NO_LINE: Pen = pen(Weight::None, Dash::Solid);

impl Sheet {
    /// Takes up another ink for what is drawn from now on. Words stay in the ink of words, but for remarks.
    pub(super) const fn dip(&mut self, ink: Ink) {
        self.ink = ink;
    }

    /// Adds a mark of this shape and gives it back, to be named or made touchable.
    pub(super) fn draw(&mut self, shape: Shape, pen: Pen, fill: Fill) {
        let ink = match (&shape, self.ink) {
            (Shape::Text { .. }, Ink::Quiet) => Ink::Quiet,
            (Shape::Text { .. }, _) => Ink::Text,
            (_, ink) => ink,
        };
        self.marks.push(Mark { shape, pen, fill, ink, touch: self.touch, name: None, about: None });
    }

    /// A line from point to point.
    pub(super) fn line(&mut self, (x1, y1): (f64, f64), (x2, y2): (f64, f64), pen: Pen) {
        self.draw(Shape::Line { from: Point { x: x1, y: y1 }, to: Point { x: x2, y: y2 } }, pen, Fill::None);
    }

    /// A rectangle from its upper left corner.
    pub(super) fn rect(&mut self, (x, y): (f64, f64), (width, height): (f64, f64), pen: Pen, fill: Fill) {
        self.draw(Shape::Rect { corner: Point { x, y }, width, height, round: 0.0 }, pen, fill);
    }

    /// A line of text with its baseline at `y`.
    pub(super) fn text(&mut self, (x, y): (f64, f64), text: impl Into<String>, font: Type) {
        let Type { size, anchor, strong, even } = font;
        let shape = Shape::Text { at: Point { x, y }, text: text.into(), size, anchor, strong, even };
        self.draw(shape, NO_LINE, Fill::Solid);
    }

    /// A line through several points.
    pub(super) fn path(&mut self, points: &[(f64, f64)], pen: Pen) {
        let points = points.iter().map(|(x, y)| Point { x: *x, y: *y }).collect();
        self.draw(Shape::Polyline { points, closed: false }, pen, Fill::None);
    }

    /// An area between corners.
    pub(super) fn area(&mut self, points: &[(f64, f64)], pen: Pen, fill: Fill) {
        let points = points.iter().map(|(x, y)| Point { x: *x, y: *y }).collect();
        self.draw(Shape::Polyline { points, closed: true }, pen, fill);
    }

    /// A rectangle with round corners about a middle.
    pub(super) fn about(
        &mut self,
        (x, y): (f64, f64),
        (width, height): (f64, f64),
        round: f64,
        pen: Pen,
        fill: Fill,
    ) {
        let corner = Point { x: x - width / 2.0, y: y - height / 2.0 };
        self.draw(Shape::Rect { corner, width, height, round }, pen, fill);
    }

    /// A circle.
    pub(super) fn circle(&mut self, middle: (f64, f64), radius: f64, pen: Pen, fill: Fill) {
        self.about(middle, (2.0 * radius, 2.0 * radius), radius, pen, fill);
    }

    /// A line that only guides the eye, lighter than any that stands for something.
    pub(super) fn hair(&mut self, (x, y): (f64, f64), length: f64) {
        let ink = self.ink;
        self.ink = Ink::Quiet;
        self.rect((x, y - 0.5), (length, 1.0), NO_LINE, Fill::Medium);
        self.ink = ink;
    }

    /// What a touch means on all that is drawn from now on.
    pub(super) const fn touches(&mut self, touch: Option<Touch>) {
        self.touch = touch;
    }

    /// Says what the mark drawn last stands for, and what there is to say of it.
    pub(super) fn stands_for(&mut self, name: String, about: String) {
        if let Some(mark) = self.marks.last_mut() {
            (mark.name, mark.about) = (Some(name), Some(about));
        }
    }

    /// The figure of this sheet, `width` by `height` pixels.
    pub(super) fn figure(self, (width, height): (f64, f64), name: Phrase, description: Phrase) -> Figure {
        let width = width.max(1.0);
        let marks =
            self.marks.into_iter().map(|mark| Mark { shape: scaled(mark.shape, 1.0 / width), ..mark });
        Figure {
            marks: marks.collect(),
            aspect: width / height.max(1.0),
            natural_width: width,
            name,
            description,
        }
    }
}

/// The figure as who reads from right to left expects it: the left side at the right. Texts keep their own direction.
pub(super) fn mirrored(figure: Figure) -> Figure {
    let marks = figure.marks.into_iter().map(|mark| Mark { shape: mirrored_shape(mark.shape), ..mark });
    Figure { marks: marks.collect(), ..figure }
}

fn mirrored_shape(shape: Shape) -> Shape {
    let point = |p: Point| Point { x: 1.0 - p.x, y: p.y };
    match shape {
        Shape::Line { from, to } => Shape::Line { from: point(from), to: point(to) },
        Shape::Rect { corner, width, height, round } => {
            Shape::Rect { corner: Point { x: 1.0 - corner.x - width, y: corner.y }, width, height, round }
        }
        Shape::Polyline { points, closed } => {
            Shape::Polyline { points: points.into_iter().map(point).collect(), closed }
        }
        Shape::Text { at, text, size, anchor, strong, even } => {
            let anchor = match anchor {
                Anchor::Start => Anchor::End,
                Anchor::Middle => Anchor::Middle,
                Anchor::End => Anchor::Start,
            };
            Shape::Text { at: point(at), text, size, anchor, strong, even }
        }
    }
}

/// The shape with every measure multiplied by `by`.
pub(super) fn scaled(shape: Shape, by: f64) -> Shape {
    let point = |p: Point| Point { x: p.x * by, y: p.y * by };
    match shape {
        Shape::Line { from, to } => Shape::Line { from: point(from), to: point(to) },
        Shape::Rect { corner, width, height, round } => {
            Shape::Rect { corner: point(corner), width: width * by, height: height * by, round: round * by }
        }
        Shape::Polyline { points, closed } => {
            Shape::Polyline { points: points.into_iter().map(point).collect(), closed }
        }
        Shape::Text { at, text, size, anchor, strong, even } => {
            Shape::Text { at: point(at), text, size: size * by, anchor, strong, even }
        }
    }
}

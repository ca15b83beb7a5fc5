//! A sheet to lay out a figure on, in CSS pixels; made into a unit box at the end.

use facts::fact::SubjectId;
use phrase::Phrase;

use super::mark::{Anchor, Dash, Figure, Fill, Ink, Mark, Pen, Point, Shape, Weight};

/// Marks being laid out, in CSS pixels from the upper left corner.
#[derive(Debug)]
pub(super) struct Sheet {
    marks: Vec<Mark>,
    ink: Ink,
}

impl Default for Sheet {
    fn default() -> Self {
        Self { marks: Vec::new(), ink: Ink::Text }
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
}

impl Type {
    /// Type of this height from its left end.
    pub(super) const fn of(size: f64) -> Self {
        Self { size, anchor: Anchor::Start, strong: false }
    }

    /// The same type, heavier.
    pub(super) const fn strong(self, strong: bool) -> Self {
        Self { strong, ..self }
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

/// The line of cables and parts.
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
        self.marks.push(Mark { shape, pen, fill, ink, part: None, name: None });
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
        let Type { size, anchor, strong } = font;
        let shape = Shape::Text { at: Point { x, y }, text: text.into(), size, anchor, strong };
        self.draw(shape, NO_LINE, Fill::Solid);
    }

    /// Says that the mark drawn last stands for a part.
    pub(super) fn stands_for(&mut self, part: SubjectId, name: Option<String>) {
        if let Some(mark) = self.marks.last_mut() {
            mark.part = Some(part);
            mark.name = name;
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
        Shape::Text { at, text, size, anchor, strong } => {
            Shape::Text { at: point(at), text, size: size * by, anchor, strong }
        }
    }
}

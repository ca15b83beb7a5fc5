//! Drawings: marks in a unit box, as a shell draws them on its canvas.

use survey::figure::{Anchor, Dash, Figure, Fill, Mark, Shape, Weight};
use survey::words::Language;

/// A place in a drawing: x from 0 (left) to 1 (right), y from 0 (top) downwards, in the same unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

/// How thick a line is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MarkWeight {
    /// No line at all.
    Absent,
    /// For grids and frames.
    Thin,
    /// For cables and parts.
    Plain,
    /// For what is to be seen first.
    Thick,
}

/// How a line is broken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MarkDash {
    /// Unbroken.
    Solid,
    /// In strokes.
    Dashed,
    /// In dots.
    Dotted,
}

/// The inside of a shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MarkFill {
    /// See-through.
    Absent,
    /// A hint of ink.
    Faint,
    /// More of it.
    Medium,
    /// Ink.
    Solid,
}

/// Which point of a line of type stands at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MarkAnchor {
    /// Its left end.
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

/// The shape of a mark.
#[derive(Debug, Clone, PartialEq)]
pub enum MarkShape {
    /// A straight line.
    Stroke {
        /// One end.
        from: Spot,
        /// The other end.
        to: Spot,
    },
    /// An upright rectangle.
    Frame {
        /// Its upper left corner.
        corner: Spot,
        /// Width.
        width: f64,
        /// Height.
        height: f64,
        /// Radius of its corners.
        round: f64,
    },
    /// A line through several spots.
    Path {
        /// The spots in order.
        spots: Vec<Spot>,
        /// Whether the last is joined to the first.
        closed: bool,
    },
    /// One line of type on its baseline.
    Lettering {
        /// Where its anchor stands.
        at: Spot,
        /// What it says.
        words: String,
        /// Height of the type.
        size: f64,
        /// Which point of it stands at `at`.
        anchor: MarkAnchor,
        /// Whether it is set in heavier type.
        strong: bool,
    },
}

/// One mark of a drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct FigureMark {
    /// Its shape.
    pub shape: MarkShape,
    /// How thick its line is.
    pub weight: MarkWeight,
    /// How its line is broken.
    pub dash: MarkDash,
    /// Its inside.
    pub fill: MarkFill,
    /// The key that a touch on it presses, if it leads on.
    pub key: Option<String>,
    /// What it stands for, for those who do not see it; empty for what only adorns.
    pub name: String,
}

/// A drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct FigureBlock {
    /// Its name.
    pub name: String,
    /// What it shows, in sentences.
    pub description: String,
    /// Width over height.
    pub aspect: f64,
    /// The width at which it was laid out to be read, in units of 1/96 inch.
    pub natural_width: f64,
    /// The marks; later ones lie over earlier ones.
    pub marks: Vec<FigureMark>,
}

impl FigureBlock {
    /// A figure of the core. `key` gives the key of the part that a mark means.
    pub(crate) fn of(
        figure: &Figure,
        language: &Language,
        key: impl Fn(survey::fact::SubjectId) -> String,
    ) -> Self {
        Self {
            name: language.say(&figure.name),
            description: language.say(&figure.description),
            aspect: figure.aspect,
            natural_width: figure.natural_width,
            marks: figure.marks.iter().map(|mark| mark_of(mark, mark.part.map(&key))).collect(),
        }
    }
}

fn spot(point: survey::figure::Point) -> Spot {
    Spot { x: point.x, y: point.y }
}

fn mark_of(mark: &Mark, key: Option<String>) -> FigureMark {
    FigureMark {
        shape: shape(&mark.shape),
        weight: match mark.pen.weight {
            Weight::None => MarkWeight::Absent,
            Weight::Thin => MarkWeight::Thin,
            Weight::Plain => MarkWeight::Plain,
            Weight::Thick => MarkWeight::Thick,
        },
        dash: match mark.pen.dash {
            Dash::Solid => MarkDash::Solid,
            Dash::Dashed => MarkDash::Dashed,
            Dash::Dotted => MarkDash::Dotted,
        },
        fill: match mark.fill {
            Fill::None => MarkFill::Absent,
            Fill::Faint => MarkFill::Faint,
            Fill::Medium => MarkFill::Medium,
            Fill::Solid => MarkFill::Solid,
        },
        key,
        name: mark.name.clone().unwrap_or_default(),
    }
}

fn shape(shape: &Shape) -> MarkShape {
    match shape {
        Shape::Line { from, to } => MarkShape::Stroke { from: spot(*from), to: spot(*to) },
        Shape::Rect { corner, width, height, round } => {
            MarkShape::Frame { corner: spot(*corner), width: *width, height: *height, round: *round }
        }
        Shape::Polyline { points, closed } => {
            MarkShape::Path { spots: points.iter().copied().map(spot).collect(), closed: *closed }
        }
        Shape::Text { at, text, size, anchor, strong } => MarkShape::Lettering {
            at: spot(*at),
            words: text.clone(),
            size: *size,
            anchor: match anchor {
                Anchor::Start => MarkAnchor::Start,
                Anchor::Middle => MarkAnchor::Middle,
                Anchor::End => MarkAnchor::End,
            },
            strong: *strong,
        },
    }
}

//! What a figure is made of.

use facts::fact::SubjectId;
use phrase::Phrase;

/// A place in a figure's unit box: x from 0 (left) to 1 (right), y from 0 (top) to `1 / aspect` (bottom). Both axes
/// have the same scale, so a shell multiplies by the width that it draws in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

/// How thick a line is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weight {
    /// No line at all.
    None,
    /// For grids and frames.
    Thin,
    /// For signs of parts.
    Plain,
    /// For cables: heavier than what they join.
    Cable,
    /// For what the reader shall see first.
    Thick,
}

/// How a line is broken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dash {
    /// Unbroken.
    Solid,
    /// In strokes.
    Dashed,
    /// In dots.
    Dotted,
    /// In long strokes: what is not there yet.
    Long,
    /// Unbroken, with a short slanting stroke every so often: a thin cable.
    Struck,
    /// Two lines side by side: what is not ours, and stays closed.
    Double,
}

/// What a mark is drawn with: a role, for which each page and each screen has its own ink, by day and by night. It
/// only adds to what is said already by shape, by line and by a word.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ink {
    /// Words, numbers, and what else is to be read.
    Text,
    /// What stands back: remarks, frames, grids.
    Quiet,
    /// What is meant, in a drawing of many things.
    Accent,
    /// What was seen: parts and cables.
    Cable,
    /// The weakest way.
    Weak,
    /// What was measured.
    Measured,
    /// What wants looking after.
    Warning,
    /// What is reckoned and not seen.
    Pencil,
}

impl Ink {
    /// Its name, the same wherever figures are drawn: the one table by which a page finds its ink.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Text => "text",
            Self::Quiet => "quiet",
            Self::Accent => "accent",
            Self::Cable => "cable",
            Self::Weak => "weak",
            Self::Measured => "measured",
            Self::Warning => "warning",
            Self::Pencil => "pencil",
        }
    }
}

/// The line of a shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pen {
    /// How thick.
    pub weight: Weight,
    /// How broken.
    pub dash: Dash,
}

/// The inside of a shape, as a share of the ink.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fill {
    /// See-through.
    None,
    /// A hint of ink.
    Faint,
    /// More of it.
    Medium,
    /// Ink.
    Solid,
    /// The ground that the figure lies on, opaque: hides what lies beneath.
    Ground,
}

/// Which point of a text stands at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Its left end.
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

/// The shape of a mark.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A straight line.
    Line {
        /// One end.
        from: Point,
        /// The other end.
        to: Point,
    },
    /// An upright rectangle.
    Rect {
        /// Its upper left corner.
        corner: Point,
        /// Width, in the unit of the box.
        width: f64,
        /// Height, in the unit of the box.
        height: f64,
        /// Radius of its corners.
        round: f64,
    },
    /// A line through several points, perhaps closed to an area.
    Polyline {
        /// The points in order.
        points: Vec<Point>,
        /// Whether the last is joined to the first.
        closed: bool,
    },
    /// One line of text on its baseline.
    Text {
        /// Where its anchor stands, on the baseline.
        at: Point,
        /// What it says, in the reader's language.
        text: String,
        /// Height of the type, in the unit of the box.
        size: f64,
        /// Which point of it stands at `at`.
        anchor: Anchor,
        /// Whether it is set in heavier type.
        strong: bool,
        /// Whether it is set in type of one width, as on the tags of the cables.
        even: bool,
    },
}

/// What a touch on a mark means.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Touch {
    /// This part.
    Part(SubjectId),
    /// To unfold what is folded at this part.
    Unfold(SubjectId),
}

/// One mark of a figure.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// Its shape.
    pub shape: Shape,
    /// Its line. Text has none.
    pub pen: Pen,
    /// Its inside. Text is always solid.
    pub fill: Fill,
    /// The ink of its line and its inside.
    pub ink: Ink,
    /// What a touch on it means. A mark without line and inside is only there to be touched.
    pub touch: Option<Touch>,
    /// What it stands for, for those who do not see it; `None` for what only adorns.
    pub name: Option<String>,
    /// What there is to say of that, a line each, whole even where the lettering is cut; `None` where it is what is written.
    pub about: Option<String>,
}

impl Mark {
    /// The part that a touch on it means.
    pub fn part(&self) -> Option<SubjectId> {
        match self.touch {
            Some(Touch::Part(part)) => Some(part),
            Some(Touch::Unfold(_)) | None => None,
        }
    }
}

/// A figure: marks in a unit box.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// The marks; later ones lie over earlier ones.
    pub marks: Vec<Mark>,
    /// Width over height.
    pub aspect: f64,
    /// The width at which it was laid out to be read, in CSS pixels (1/96 inch). Drawn smaller, its text shrinks.
    pub natural_width: f64,
    /// Its name, for those who do not see it and for a caption.
    pub name: Phrase,
    /// What it shows, in sentences.
    pub description: Phrase,
}

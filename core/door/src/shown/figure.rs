//! Drawings: marks in a unit box, for a canvas.

use guide::screen::{
    Aloud, FigureBlock, FigureDrawn, FigureLayout, FigureMark, MarkAnchor, MarkDash, MarkFill, MarkInk,
    MarkShape, MarkWeight, Spot,
};

/// A place in a drawing: x from 0 (left) to 1 (right), y from 0 (top) downwards, in the same unit.
#[uniffi::remote(Record)]
pub struct Spot {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

/// How thick a line is.
#[uniffi::remote(Enum)]
pub enum MarkWeight {
    /// No line at all.
    Absent,
    /// For grids and frames.
    Thin,
    /// For signs of parts.
    Plain,
    /// For cables.
    Cable,
    /// For what is to be seen first.
    Thick,
}

/// How a line is broken.
#[uniffi::remote(Enum)]
pub enum MarkDash {
    /// Unbroken.
    Solid,
    /// In strokes.
    Dashed,
    /// In dots.
    Dotted,
    /// In long strokes: what is not there yet.
    Long,
    /// Unbroken, with a short slanting stroke every 12 units of 1/96 inch: a thin cable.
    Struck,
    /// Two lines 4 units of 1/96 inch apart: what is not ours.
    Double,
}

/// What a mark is drawn with. A shell has an ink for each, by day and by night; it only adds to what line and word say.
#[uniffi::remote(Enum)]
pub enum MarkInk {
    /// Words, numbers, and what else is to be read.
    Text,
    /// What stands back.
    Quiet,
    /// What is meant, among many things.
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

/// The inside of a shape.
#[uniffi::remote(Enum)]
pub enum MarkFill {
    /// See-through.
    Absent,
    /// A hint of ink.
    Faint,
    /// More of it.
    Medium,
    /// Ink.
    Solid,
    /// The ground that the drawing lies on, opaque: hides what lies beneath.
    Ground,
}

/// Which point of a line of type stands at its place.
#[uniffi::remote(Enum)]
pub enum MarkAnchor {
    /// Its left end.
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

/// The shape of a mark.
#[uniffi::remote(Enum)]
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
        /// Whether it is set in type of one width, as on the tags of the cables.
        even: bool,
    },
}

/// One mark of a drawing.
#[uniffi::remote(Record)]
pub struct FigureMark {
    /// Its shape.
    pub shape: MarkShape,
    /// How thick its line is.
    pub weight: MarkWeight,
    /// How its line is broken.
    pub dash: MarkDash,
    /// Its inside.
    pub fill: MarkFill,
    /// The ink of its line and its inside.
    pub ink: MarkInk,
    /// The key that a touch on it presses, if it leads on.
    pub key: Option<String>,
    /// What a screen reader says of it: what it stands for, and what is written in it. Without a label it only adorns.
    pub aloud: Aloud,
    /// Whether another mark stands for the same: a screen reader passes over this one.
    pub repeats: bool,
}

/// A drawing, as the screen names it. `Guide::figure` gives its marks.
#[uniffi::remote(Record)]
pub struct FigureBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// Which drawing it is.
    pub figure: String,
    /// Another one whenever something in it has changed, the language too.
    pub version: String,
    /// Its name.
    pub name: String,
    /// What it shows, in sentences.
    pub description: String,
    /// Width over height.
    pub aspect: f64,
    /// The width at which it was laid out to be read, in units of 1/96 inch.
    pub natural_width: f64,
    /// The same laid out for less room, the narrowest first. A shell takes the widest layout whose `natural_width` fits.
    pub narrower: Vec<FigureLayout>,
    /// The same in lines of text, for a shell that draws nothing; empty where words stand beside it.
    pub lines: Vec<String>,
    /// The keys that its marks press in any layout, each once.
    pub keys: Vec<String>,
}

/// One layout of a drawing.
#[uniffi::remote(Record)]
pub struct FigureLayout {
    /// Which drawing it is.
    pub figure: String,
    /// Another one whenever something in it has changed, the language too.
    pub version: String,
    /// Width over height.
    pub aspect: f64,
    /// The width at which it was laid out to be read, in units of 1/96 inch.
    pub natural_width: f64,
}

/// The marks of a drawing.
#[uniffi::remote(Record)]
pub struct FigureDrawn {
    /// Which drawing it is.
    pub figure: String,
    /// Its version.
    pub version: String,
    /// Width over height.
    pub aspect: f64,
    /// The width at which it was laid out to be read, in units of 1/96 inch.
    pub natural_width: f64,
    /// The marks; later ones lie over earlier ones.
    pub marks: Vec<FigureMark>,
}

//! Drawings: marks in a unit box, as a shell draws them on its canvas. A screen only names its drawings; a shell fetches
//! one when its version has changed.

use std::collections::BTreeMap;
use std::hash::{Hash, Hasher};
use std::mem::discriminant;

use telling::figure::{Anchor, Dash, Figure, Fill, Ink, Mark, Point, Shape, Touch, Weight, pieces};
use telling::words::Language;

use super::{Aloud, AloudRole};
use crate::place::Key;
use crate::short_hash::hash_of_all;

/// A place in a drawing: x from 0 (left) to 1 (right), y from 0 (top) downwards, in the same unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

impl Hash for Spot {
    fn hash<H: Hasher>(&self, state: &mut H) {
        [self.x, self.y].map(f64::to_bits).hash(state);
    }
}

/// How thick a line is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
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
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum MarkDash {
    /// Unbroken.
    Solid,
    /// In strokes.
    Dashed,
    /// In dots.
    Dotted,
    /// In long strokes: what is not there yet.
    Long,
}

/// What a mark is drawn with. A shell has an ink for each, by day and by night; it only adds to what line and word say.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
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
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
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
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum MarkAnchor {
    /// Its left end.
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

/// A straight line.
#[derive(Debug, Clone, Copy, PartialEq, Hash)]
pub struct MarkLine {
    /// One end.
    pub from: Spot,
    /// The other end.
    pub to: Spot,
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
    /// Several straight lines: a thin cable with its short slanting strokes, the double line of what is not ours.
    Strokes {
        /// The lines.
        lines: Vec<MarkLine>,
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

impl Hash for MarkShape {
    fn hash<H: Hasher>(&self, state: &mut H) {
        discriminant(self).hash(state);
        match self {
            Self::Stroke { from, to } => (from, to).hash(state),
            Self::Frame { corner, width, height, round } => {
                (corner, [width, height, round].map(|length| length.to_bits())).hash(state);
            }
            Self::Strokes { lines } => lines.hash(state),
            Self::Path { spots, closed } => (spots, closed).hash(state),
            Self::Lettering { at, words, size, anchor, strong, even } => {
                (at, words, size.to_bits(), anchor, strong, even).hash(state);
            }
        }
    }
}

/// One mark of a drawing.
#[derive(Debug, Clone, PartialEq, Hash)]
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

/// A drawing, as the screen names it. [`figure`](crate::Guide::figure) gives its marks.
#[derive(Debug, Clone, PartialEq)]
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
#[derive(Debug, Clone, PartialEq, Default)]
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
#[derive(Debug, Clone, PartialEq)]
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

impl FigureDrawn {
    /// A figure of the core, called so on the screen. `key` gives the key of what a touch on a mark means, if that
    /// leads on.
    pub(crate) fn of(figure: &Figure, name: impl Into<String>, key: impl Fn(Touch) -> Option<Key>) -> Self {
        let named = named(figure);
        let marks = figure.marks.iter().enumerate().map(|(place, mark)| {
            let touched = mark.touch.and_then(|touch| Some((touch, named.get(&touch)?)));
            let repeats = touched.is_some_and(|(_, (first, _))| *first != place);
            let aloud = match touched {
                Some((touch, (_, name))) => {
                    let said = || mark.about.clone().unwrap_or_else(|| written_in(figure, touch, name));
                    let value = if repeats { String::new() } else { said() };
                    let role = if key(touch).is_some() { AloudRole::LeadsOn } else { AloudRole::Fact };
                    Aloud::new(role, name).value(value)
                }
                None => Aloud::new(AloudRole::Fact, mark.name.clone().unwrap_or_default()),
            };
            let key = mark.touch.and_then(&key).map(|key| key.to_string());
            FigureMark { aloud, repeats, ..mark_of(mark, figure.natural_width, key) }
        });
        let marks: Vec<_> = marks.collect();
        Self {
            figure: name.into(),
            version: hash_of_all(&(figure.aspect.to_bits(), &marks)),
            aspect: figure.aspect,
            natural_width: figure.natural_width,
            marks,
        }
    }

    /// The block that names it on a screen.
    pub(crate) fn block(&self, figure: &Figure, language: &Language) -> FigureBlock {
        Self::block_of(&[self], figure, language)
    }

    /// The block that names a drawing in several layouts, the widest last; all show `figure`.
    pub(crate) fn block_of(layouts: &[&Self], figure: &Figure, language: &Language) -> FigureBlock {
        let of_all = layouts.iter().flat_map(|drawn| &drawn.marks);
        let mut keys: Vec<_> = of_all.filter_map(|mark| mark.key.clone()).collect();
        keys.sort_unstable();
        keys.dedup();
        let mut layouts: Vec<_> = layouts
            .iter()
            .map(|drawn| FigureLayout {
                figure: drawn.figure.clone(),
                version: drawn.version.clone(),
                aspect: drawn.aspect,
                natural_width: drawn.natural_width,
            })
            .collect();
        let widest = layouts.pop().unwrap_or_default();
        FigureBlock {
            id: widest.figure.clone(),
            aloud: Aloud::default(),
            figure: widest.figure,
            version: widest.version,
            name: language.say(&figure.name),
            description: language.say(&figure.description),
            aspect: widest.aspect,
            natural_width: widest.natural_width,
            narrower: layouts,
            lines: Vec::new(),
            keys,
        }
    }
}

/// What is written of a thing in a figure besides its name, a line each.
fn written_in(figure: &Figure, touch: Touch, name: &str) -> String {
    let of_it = figure.marks.iter().filter(|mark| mark.touch == Some(touch));
    let lines = of_it.filter_map(|mark| match &mark.shape {
        Shape::Text { text, .. } if text != name => Some(text.as_str()),
        _ => None,
    });
    lines.collect::<Vec<_>>().join("\n")
}

/// The name of each thing to touch in a figure, and the place of the mark that stands for it: the first that is named.
fn named(figure: &Figure) -> BTreeMap<Touch, (usize, String)> {
    let mut named = BTreeMap::new();
    for (place, mark) in figure.marks.iter().enumerate() {
        if let (Some(touch), Some(name)) = (mark.touch, &mark.name) {
            named.entry(touch).or_insert_with(|| (place, name.clone()));
        }
    }
    // What only stands in letters is called by them.
    for (place, mark) in figure.marks.iter().enumerate() {
        if let (Some(touch), Shape::Text { text, .. }) = (mark.touch, &mark.shape) {
            named.entry(touch).or_insert_with(|| (place, text.clone()));
        }
    }
    named
}

fn spot(point: Point) -> Spot {
    Spot { x: point.x, y: point.y }
}

fn mark_of(mark: &Mark, natural_width: f64, key: Option<String>) -> FigureMark {
    FigureMark {
        shape: strokes(mark, natural_width).unwrap_or_else(|| shape(&mark.shape)),
        weight: match mark.pen.weight {
            Weight::None => MarkWeight::Absent,
            Weight::Thin => MarkWeight::Thin,
            Weight::Plain => MarkWeight::Plain,
            Weight::Cable => MarkWeight::Cable,
            Weight::Thick => MarkWeight::Thick,
        },
        dash: match mark.pen.dash {
            // What no dash can draw comes as lines.
            Dash::Solid | Dash::Struck | Dash::Double => MarkDash::Solid,
            Dash::Dashed => MarkDash::Dashed,
            Dash::Dotted => MarkDash::Dotted,
            Dash::Long => MarkDash::Long,
        },
        fill: match mark.fill {
            Fill::None => MarkFill::Absent,
            Fill::Faint => MarkFill::Faint,
            Fill::Medium => MarkFill::Medium,
            Fill::Solid => MarkFill::Solid,
            Fill::Ground => MarkFill::Ground,
        },
        ink: match mark.ink {
            Ink::Text => MarkInk::Text,
            Ink::Quiet => MarkInk::Quiet,
            Ink::Accent => MarkInk::Accent,
            Ink::Cable => MarkInk::Cable,
            Ink::Weak => MarkInk::Weak,
            Ink::Measured => MarkInk::Measured,
            Ink::Warning => MarkInk::Warning,
            Ink::Pencil => MarkInk::Pencil,
        },
        key,
        aloud: Aloud::default(),
        repeats: false,
    }
}

/// The lines of a mark whose line no dash can draw. How far they stand apart is said in units of 1/96 inch.
fn strokes(mark: &Mark, natural_width: f64) -> Option<MarkShape> {
    let way = match &mark.shape {
        Shape::Line { from, to } => vec![*from, *to],
        Shape::Polyline { points, .. } => points.clone(),
        Shape::Rect { .. } | Shape::Text { .. } => return None,
    };
    let by = |point: Point, scale: f64| Point { x: point.x * scale, y: point.y * scale };
    let at = |point: Point| spot(by(point, 1.0 / natural_width));
    let way: Vec<_> = way.into_iter().map(|point| by(point, natural_width)).collect();
    let lines: Vec<_> = pieces(&way, mark.pen.dash)
        .into_iter()
        .map(|(from, to)| MarkLine { from: at(from), to: at(to) })
        .collect();
    (!lines.is_empty()).then_some(MarkShape::Strokes { lines })
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
        Shape::Text { at, text, size, anchor, strong, even } => MarkShape::Lettering {
            at: spot(*at),
            words: text.clone(),
            size: *size,
            anchor: match anchor {
                Anchor::Start => MarkAnchor::Start,
                Anchor::Middle => MarkAnchor::Middle,
                Anchor::End => MarkAnchor::End,
            },
            strong: *strong,
            even: *even,
        },
    }
}

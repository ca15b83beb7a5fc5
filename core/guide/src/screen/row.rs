//! Rows: lists of things, some of which lead on.

use coax::Span;
use phrase::Phrase;
use telling::figure::{Figure, RoomBar, room_bar};

use super::{Aloud, FigureDrawn, Severity};

/// A sign beside a row. It never stands alone: the same is said in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RowMark {
    /// An empty box: still to be done.
    Box,
    /// A ticked box: done, or met.
    Done,
    /// A flag: weak, or not met.
    Weak,
    /// A question mark: not known.
    NotKnown,
}

/// How many of how many are done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DoneOf {
    /// Done.
    pub done: u32,
    /// In all; at least `done`.
    pub of: u32,
}

/// A rate as a bar: a range, never a single figure. All in Mb/s.
#[derive(Debug, Clone, PartialEq)]
pub struct RowBar {
    /// Where the bar's scale ends, from 0 on; the same for all rows of a block.
    pub scale_end: f64,
    /// What it is at least, nine times in ten.
    pub low: f64,
    /// What it is likely.
    pub likely: f64,
    /// What it is at most, nine times in ten.
    pub high: f64,
    /// What is wished for.
    pub wish: Option<f64>,
    /// What was measured.
    pub measured: Option<f64>,
    /// Whether something else than the cable held what was measured, so that the cable may carry more.
    pub capped: bool,
    /// What it is likely after the whole work list.
    pub after: Option<f64>,
    /// The same in words.
    pub words: String,
}

impl RowBar {
    /// What stands on the bar.
    pub fn marks(&self) -> RoomBar {
        let range = Some(Span { low: self.low, likely: self.likely, high: self.high });
        let (wish, measured, capped, after) = (self.wish, self.measured, self.capped, self.after);
        RoomBar { range, wish, measured, capped, after }
    }

    /// The bar drawn, as it stands in the report too.
    pub fn figure(&self) -> Figure {
        let said = Phrase::new("text-said").text("text", &self.words);
        room_bar(&self.marks(), self.scale_end, said.clone(), said)
    }

    /// The same as marks, for a shell that draws them on its canvas.
    pub fn drawn(&self) -> FigureDrawn {
        FigureDrawn::of(&self.figure(), "bar", |_| None)
    }
}

/// One row.
#[derive(Debug, Clone, PartialEq)]
pub struct RowEntry {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// Its key if it leads on or is switched.
    pub key: Option<String>,
    /// What it is about.
    pub head: String,
    /// What it says of that; may be empty.
    pub says: String,
    /// A remark in smaller print; may be empty.
    pub remark: String,
    /// The sign beside it.
    pub mark: Option<RowMark>,
    /// How many of how many are done, where the row is a stage.
    pub done_of: Option<DoneOf>,
    /// A rate as a bar.
    pub bar: Option<RowBar>,
    /// Which share of the whole it is, in thousandths.
    pub share: Option<u32>,
    /// Whether it is switched on; `None` where it is no switch.
    pub switched: Option<bool>,
    /// How much weighs what it says.
    pub severity: Severity,
}

impl RowEntry {
    /// With a sign beside it.
    pub(crate) fn marked(self, mark: RowMark) -> Self {
        Self { mark: Some(mark), ..self }
    }

    /// With a box: ticked if it is done.
    pub(crate) fn ticked(self, done: bool) -> Self {
        self.marked(if done { RowMark::Done } else { RowMark::Box })
    }

    /// As a stage, of which so many are done.
    pub(crate) fn stage(self, done: usize, of: usize) -> Self {
        let count = |number| u32::try_from(number).unwrap_or(u32::MAX);
        let done_of = DoneOf { done: count(done), of: count(of) };
        Self { done_of: Some(done_of), ..self }
    }

    /// With a bar.
    pub(crate) fn bar(self, bar: Option<RowBar>) -> Self {
        Self { bar, ..self }
    }

    /// As a share of a whole, 0 to 1.
    pub(crate) fn share(self, share: f64) -> Self {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 1000")]
        let thousandths = (share.clamp(0.0, 1.0) * 1000.0).round() as u32;
        Self { share: Some(thousandths), ..self }
    }

    /// As a switch.
    pub(crate) fn switched(self, on: bool) -> Self {
        Self { switched: Some(on), ..self }
    }

    /// With how much it weighs.
    pub(crate) fn weighs(self, severity: Severity) -> Self {
        Self { severity, ..self }
    }
}

/// Rows.
#[derive(Debug, Clone, PartialEq)]
pub struct RowsBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it: its heading.
    pub aloud: Aloud,
    /// What the rows are.
    pub name: String,
    /// The rows in order.
    pub rows: Vec<RowEntry>,
}

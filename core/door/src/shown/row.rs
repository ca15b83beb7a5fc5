//! Rows and their bars.

use guide::screen::{Aloud, DoneOf, RowBar, RowEntry, RowMark, RowsBlock, Severity};

/// A sign beside a row. It never stands alone: the same is said in words.
#[uniffi::remote(Enum)]
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
#[uniffi::remote(Record)]
pub struct DoneOf {
    /// Done.
    pub done: u32,
    /// In all; at least `done`.
    pub of: u32,
}

/// A rate as a bar: a range, never a single figure. All in Mb/s.
#[uniffi::remote(Record)]
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

/// One row.
#[uniffi::remote(Record)]
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

/// Rows.
#[uniffi::remote(Record)]
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

//! What is drawn: a screen is a title and a list of blocks, words and numbers ready to show.
//!
//! A shell draws each kind of block in its platform's way and sends back [`Deed`](crate::Deed)s with the block's key.
//! It never needs to know what a block is about. Everything here is a plain record or enum; names are chosen so that
//! they clash with nothing in Kotlin or Swift.

mod ability;
mod aloud;
mod block;
mod card;
mod dock;
mod figure;
mod input;
mod items;
mod need;
mod notice;
mod offers;
mod press;
mod row;
mod severity;
mod way;
mod words;

pub use ability::Ability;
pub use aloud::{Aloud, AloudRole};
pub use block::Block;
pub use card::{
    LabelBlock, LabelFigure, PartBlock, PhotoPartBlock, PhotoPiece, PhotoShown, PhotoSlotBlock, ReadingBlock,
    TouchedSpot,
};
pub use dock::DockShown;
pub use figure::{
    FigureBlock, FigureDrawn, FigureLayout, FigureMark, MarkAnchor, MarkDash, MarkFill, MarkInk, MarkLine,
    MarkShape, MarkWeight, Spot,
};
pub use input::{ChoiceBlock, ChoiceOption, NumberBlock, NumberKind, UnitOption, WritingBlock, WritingKind};
pub use items::Item;
pub use need::{FileAsked, FileKind, Need};
pub use notice::{NoticeRole, NoticeShown};
pub use press::{ConfirmBlock, HowFarBlock, PressBlock, PressWeight};
pub use row::{DoneOf, RowBar, RowEntry, RowMark, RowsBlock};
pub use severity::Severity;
pub use way::WayTaken;
pub use words::{CautionBlock, LONG_WORDS, MOST_HEAD, WordsBlock, WordsRole};

/// How far the guide has come.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HowFar {
    /// Questions answered.
    pub done: u32,
    /// Questions there are, as far as can be told now; at least `done`.
    pub of: u32,
    /// The same in words.
    pub words: String,
}

/// One screen.
#[derive(Debug, Clone, PartialEq)]
pub struct Screen {
    /// A stable name of this kind of screen, the same in every language and for every house: for tests.
    pub name: String,
    /// The id of the place: the same whenever it is drawn anew, another one for every other place. Where somebody has
    /// scrolled to, and what has the focus, holds as long as this stays the same.
    pub place: String,
    /// How one came here from the screen before.
    pub way: WayTaken,
    /// What the screen is about; read first by a screen reader.
    pub title: String,
    /// Where we are, from the whole to the part: the survey, the stage.
    pub trail: Vec<String>,
    /// How far the guide has come; `None` where that means nothing.
    pub how_far: Option<HowFar>,
    /// What is said about the last deed; it stands above everything else.
    pub notices: Vec<NoticeShown>,
    /// What it shows, from top to bottom. Never more than [`MOST_ROWS`] rows in all.
    pub blocks: Vec<Block>,
    /// What of it stands in the dock at its foot.
    pub dock: DockShown,
    /// What the screen would like the device to do.
    pub abilities: Vec<Ability>,
    /// Whether there is a way back.
    pub back: bool,
    /// Whether its words are read from right to left; a shell then draws it mirrored. Drawings stay as they are.
    pub right_to_left: bool,
}

/// The most rows, options and marks-free blocks of one screen; longer lists come in pages.
pub const MOST_ROWS: usize = 200;

impl Screen {
    /// Every way on that the screen offers: the keys of what can be pressed, picked, written, measured, confirmed or
    /// given a photo.
    pub fn keys(&self) -> Vec<&str> {
        self.blocks.iter().flat_map(Block::keys).collect()
    }

    /// Every sentence of the screen in reading order, as a screen reader would say it.
    pub fn spoken(&self) -> Vec<&str> {
        let mut spoken = vec![self.title.as_str()];
        spoken.extend(self.trail.iter().map(String::as_str));
        spoken.extend(self.how_far.iter().map(|far| far.words.as_str()));
        spoken.extend(self.notices.iter().map(|notice| notice.words.as_str()));
        spoken.extend(self.blocks.iter().flat_map(Block::spoken));
        spoken
    }

    /// How many rows, options and other blocks it has.
    pub fn rows(&self) -> usize {
        let size = |block: &Block| match block {
            Block::Rows(rows) => rows.rows.len(),
            Block::Choice(choice) => choice.options.len(),
            Block::Label(label) => label.figures.len(),
            Block::PhotoSlot(slot) => slot.photos.len(),
            _ => 1,
        };
        self.blocks.iter().map(size).sum()
    }
}

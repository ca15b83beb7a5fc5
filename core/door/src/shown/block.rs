//! A block: one of the kinds of thing that a screen is made of. The compiler asks for each kind of the guide.

use guide::screen::{
    Block, CautionBlock, ChoiceBlock, ConfirmBlock, FigureBlock, HowFarBlock, LabelBlock, NumberBlock,
    PartBlock, PhotoSlotBlock, PressBlock, ReadingBlock, RowsBlock, WordsBlock, WritingBlock,
};

/// One block of a screen.
#[uniffi::remote(Enum)]
pub enum Block {
    /// Words to read.
    Words(#[uniffi(name = "block")] WordsBlock),
    /// What can hurt someone, and who should do it.
    Caution(#[uniffi(name = "block")] CautionBlock),
    /// One or several of a few answers.
    Choice(#[uniffi(name = "block")] ChoiceBlock),
    /// Words to write.
    Writing(#[uniffi(name = "block")] WritingBlock),
    /// A number with its unit.
    Number(#[uniffi(name = "block")] NumberBlock),
    /// A place for photos.
    PhotoSlot(#[uniffi(name = "block")] PhotoSlotBlock),
    /// A label's photo beside its text.
    Label(#[uniffi(name = "block")] LabelBlock),
    /// Something measured.
    Reading(#[uniffi(name = "block")] ReadingBlock),
    /// One part.
    Part(#[uniffi(name = "block")] PartBlock),
    /// Rows, some of which lead on.
    Rows(#[uniffi(name = "block")] RowsBlock),
    /// A drawing.
    Figure(#[uniffi(name = "block")] FigureBlock),
    /// How far something has come that takes a while.
    HowFar(#[uniffi(name = "block")] HowFarBlock),
    /// Something to press.
    Press(#[uniffi(name = "block")] PressBlock),
    /// Something to press that is asked about once more.
    Confirm(#[uniffi(name = "block")] ConfirmBlock),
}

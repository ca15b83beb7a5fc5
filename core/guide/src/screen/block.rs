//! Blocks that tell something, and blocks that are pressed.

use super::{
    ChoiceBlock, FigureBlock, LabelBlock, NumberBlock, PartBlock, PhotoSlotBlock, ReadingBlock, WritingBlock,
};

/// One block of a screen.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// Words to read.
    Words(WordsBlock),
    /// What can hurt someone, and who should do it.
    Caution(CautionBlock),
    /// One or several of a few answers.
    Choice(ChoiceBlock),
    /// Words to write.
    Writing(WritingBlock),
    /// A number with its unit.
    Number(NumberBlock),
    /// A place for photos.
    PhotoSlot(PhotoSlotBlock),
    /// A label's photo beside its text.
    Label(LabelBlock),
    /// Something measured.
    Reading(ReadingBlock),
    /// One part.
    Part(PartBlock),
    /// Rows, some of which lead on.
    Rows(RowsBlock),
    /// A drawing.
    Figure(FigureBlock),
    /// How far something has come that takes a while.
    HowFar(HowFarBlock),
    /// Something to press.
    Press(PressBlock),
    /// Something to press that is asked about once more.
    Confirm(ConfirmBlock),
}

/// What words are for; a shell sets them accordingly.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WordsRole {
    /// What the screen says or asks first.
    Lead,
    /// Why it is asked.
    Why,
    /// What it looks like, or how it is done.
    How,
    /// A heading within the screen.
    Heading,
    /// Anything else.
    Plain,
    /// Smaller print: a source, a remark.
    Aside,
    /// What was wrong with what was given, and what to do.
    Problem,
}

/// Words to read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WordsBlock {
    /// What they are for.
    pub role: WordsRole,
    /// The words.
    pub words: String,
}

/// A caution. A shell sets it apart by shape and by its heading, never by colour alone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CautionBlock {
    /// Its heading: that it is a caution.
    pub name: String,
    /// What can hurt someone or cut something off, with the reason, and who should do it.
    pub words: String,
}

/// One row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RowEntry {
    /// Its key if it leads on.
    pub key: Option<String>,
    /// What it is about.
    pub head: String,
    /// What it says of that; may be empty.
    pub says: String,
    /// A remark in smaller print; may be empty.
    pub remark: String,
}

/// Rows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RowsBlock {
    /// What the rows are.
    pub name: String,
    /// The rows in order.
    pub rows: Vec<RowEntry>,
}

/// How far something has come that takes a while.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HowFarBlock {
    /// What is being done.
    pub name: String,
    /// Thousandths done; `None` while that cannot be told.
    pub thousandths: Option<u32>,
    /// The key to stop it, and what that button says.
    pub stop: Option<PressBlock>,
}

/// How much a press stands out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PressWeight {
    /// The way on.
    Main,
    /// Another way.
    Other,
    /// A way out: later, not now.
    Quiet,
}

/// Something to press.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PressBlock {
    /// Its key.
    pub key: String,
    /// What it says.
    pub words: String,
    /// How much it stands out.
    pub weight: PressWeight,
}

/// Something to press that is asked about once more before it is done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ConfirmBlock {
    /// Its key; pressed only after the second question was answered with yes.
    pub key: String,
    /// What it says.
    pub words: String,
    /// The second question, with what follows from a yes.
    pub question: String,
    /// What the yes says.
    pub yes: String,
    /// What the no says.
    pub no: String,
}

impl Block {
    /// The keys by which this block answers.
    pub fn keys(&self) -> Vec<&str> {
        match self {
            Self::Choice(choice) => vec![&choice.key],
            Self::Writing(writing) => vec![&writing.key],
            Self::Number(number) => vec![&number.key],
            Self::PhotoSlot(slot) => {
                let open = slot.photos.iter().filter_map(|photo| photo.key.as_deref());
                std::iter::once(slot.key.as_str()).chain(open).collect()
            }
            Self::Label(label) => label.figures.iter().filter_map(|figure| figure.key.as_deref()).collect(),
            Self::Part(part) => part.key.iter().map(String::as_str).collect(),
            Self::Rows(rows) => rows.rows.iter().filter_map(|row| row.key.as_deref()).collect(),
            Self::Figure(figure) => figure.marks.iter().filter_map(|mark| mark.key.as_deref()).collect(),
            Self::HowFar(far) => far.stop.iter().map(|stop| stop.key.as_str()).collect(),
            Self::Press(press) => vec![&press.key],
            Self::Confirm(confirm) => vec![&confirm.key],
            Self::Words(_) | Self::Caution(_) | Self::Reading(_) => Vec::new(),
        }
    }

    /// What a screen reader says of it, its name first.
    pub fn spoken(&self) -> Vec<&str> {
        match self {
            Self::Words(words) => vec![&words.words],
            Self::Caution(caution) => vec![&caution.name, &caution.words],
            Self::Choice(choice) => choice.spoken(),
            Self::Writing(writing) => writing.spoken(),
            Self::Number(number) => number.spoken(),
            Self::PhotoSlot(slot) => slot.spoken(),
            Self::Label(label) => label.spoken(),
            Self::Reading(reading) => reading.spoken(),
            Self::Part(part) => part.spoken(),
            Self::Rows(rows) => {
                let said = rows.rows.iter().flat_map(|row| [&row.head, &row.says, &row.remark]);
                std::iter::once(&rows.name).chain(said).map(String::as_str).filter(said_at_all).collect()
            }
            Self::Figure(figure) => vec![&figure.name, &figure.description],
            Self::HowFar(far) => vec![&far.name],
            Self::Press(press) => vec![&press.words],
            Self::Confirm(confirm) => vec![&confirm.words, &confirm.question],
        }
    }
}

pub(super) fn said_at_all(words: &&str) -> bool {
    !words.is_empty()
}

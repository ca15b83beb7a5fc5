//! A block: one of the kinds of thing that a screen is made of.

use super::{
    CautionBlock, ChoiceBlock, ConfirmBlock, FigureBlock, HowFarBlock, LabelBlock, NumberBlock, PartBlock,
    PhotoPartBlock, PhotoSlotBlock, PressBlock, ReadingBlock, RowsBlock, WordsBlock, WritingBlock,
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
    /// A photo of which a part is chosen.
    PhotoPart(PhotoPartBlock),
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

impl Block {
    /// The keys by which this block answers.
    pub fn keys(&self) -> Vec<&str> {
        match self {
            Self::Choice(choice) => vec![&choice.key],
            Self::Writing(writing) => vec![&writing.key],
            Self::Number(number) => vec![&number.key],
            Self::PhotoSlot(slot) => {
                let open = slot.photos.iter().filter_map(|photo| photo.key.as_deref());
                std::iter::once(slot.key.as_str()).chain(slot.print_key.as_deref()).chain(open).collect()
            }
            Self::PhotoPart(part) => vec![&part.key],
            Self::Label(label) => label.figures.iter().filter_map(|figure| figure.key.as_deref()).collect(),
            Self::Part(part) => part.key.iter().map(String::as_str).collect(),
            Self::Rows(rows) => rows.rows.iter().filter_map(|row| row.key.as_deref()).collect(),
            Self::Figure(figure) => figure.keys.iter().map(String::as_str).collect(),
            Self::HowFar(far) => far.stop.iter().map(|stop| stop.key.as_str()).collect(),
            Self::Press(press) => vec![&press.key],
            Self::Confirm(confirm) => vec![&confirm.key],
            Self::Words(_) | Self::Caution(_) | Self::Reading(_) => Vec::new(),
        }
    }

    /// What a screen reader says of it, its name first: every sentence that it holds.
    pub fn spoken(&self) -> Vec<&str> {
        let mut said: Vec<&str> = match self {
            Self::Words(words) => vec![words.words.as_str(), &words.head],
            Self::Caution(caution) => vec![&caution.name, &caution.head, &caution.words],
            Self::Choice(choice) => {
                let options = choice.options.iter().flat_map(|option| [&option.words, &option.about]);
                std::iter::once(&choice.name).chain(options).map(String::as_str).collect()
            }
            Self::Writing(writing) => vec![&writing.name, &writing.text, &writing.hint],
            Self::Number(number) => {
                let units = number.units.iter().map(|unit| unit.words.as_str());
                [number.name.as_str(), &number.text, &number.hint].into_iter().chain(units).collect()
            }
            Self::PhotoSlot(slot) => {
                let photos = slot.photos.iter().map(|photo| photo.name.as_str());
                std::iter::once(slot.name.as_str()).chain(photos).collect()
            }
            Self::PhotoPart(part) => {
                let now = part.part.as_ref().map_or("", |piece| piece.name.as_str());
                vec![part.name.as_str(), &part.photo.name, now]
            }
            Self::Label(label) => {
                let figures =
                    label.figures.iter().flat_map(|figure| [&figure.name, &figure.says, &figure.doubt]);
                let whole = [&label.name, &label.text].into_iter().chain(figures).chain(&label.doubts);
                whole.map(String::as_str).collect()
            }
            Self::Reading(reading) => vec![&reading.name, &reading.says, &reading.remark],
            Self::Part(part) => {
                [&part.tag, &part.name].into_iter().chain(&part.lines).map(String::as_str).collect()
            }
            Self::Rows(rows) => {
                let mut said = vec![rows.name.as_str()];
                for row in &rows.rows {
                    said.extend([row.head.as_str(), &row.says, &row.remark]);
                    said.extend(row.bar.as_ref().map(|bar| bar.words.as_str()));
                }
                said
            }
            Self::Figure(figure) => vec![&figure.name, &figure.description],
            Self::HowFar(far) => vec![&far.name],
            Self::Press(press) => vec![&press.words],
            Self::Confirm(confirm) => vec![&confirm.words, &confirm.question, &confirm.yes, &confirm.no],
        };
        said.retain(|words| !words.is_empty());
        said
    }
}

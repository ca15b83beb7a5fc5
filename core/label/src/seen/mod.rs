//! From what a machine saw on a photo of a label to a suggestion, with doubt.
//!
//! Whoever looks at a picture hands over its printed rows as two looks saw them, each letter with how certain it was. Of each
//! number this says whether it is sure, and if not, why not. Sure is a number only if both looks saw it, each of its letters was
//! certain, nothing hints that a part of it is missing, it is one that such labels carry, and what the label states with it does
//! not contradict what else it states. All else is asked. Nothing is known here of pictures: a place is a row and its letters.

mod agreement;
mod guess;
mod jacket;
mod member;
mod number;
mod plausible;
mod torn;
mod unsure;

use std::ops::Range;

pub use jacket::{
    JacketLength, LONGEST_CABLE_METRES, LengthAmong, LengthUnsure, NoLength, ONE_END_METRES, metres_between,
};
pub use member::{Member, SeenMember};
pub use number::{SeenNumber, SeenUnit};
pub use unsure::Unsure;

use agreement::Believed;
use member::Certain;

use crate::reading::LabelReading;

/// What one look saw of a printed row.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SeenLine {
    /// Its letters, each with how certain it is, 0 to 1.
    pub letters: Vec<(char, f32)>,
    /// Whether more may stand before its beginning and behind its end: the picture ends there, or ink goes on.
    pub is_cut: (bool, bool),
}

/// A printed row as two looks saw it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SeenRow {
    /// `None` where a look saw nothing of it.
    pub looks: [Option<SeenLine>; 2],
}

/// Where on the label something stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeenPlace {
    /// The row, from 0.
    pub row: usize,
    /// The look whose letters are counted, 0 or 1.
    pub look: usize,
    /// Which letters of that look's line.
    pub letters: Range<usize>,
}

/// What a photo of a label suggests.
#[derive(Debug, Clone, PartialEq)]
pub struct Suggestion {
    /// The text, a line a row: what somebody would have typed.
    pub text: String,
    /// Every number with a unit.
    pub numbers: Vec<SeenNumber>,
    /// What the text states, as if it had been typed.
    pub reading: LabelReading,
    /// Each thing that it states, and whether that is sure.
    pub members: Vec<SeenMember>,
}

impl Suggestion {
    /// The marks of length on a cable's jacket: two of them, one at each end, give its length. None where the label is no
    /// jacket's.
    pub fn marks(&self) -> impl Iterator<Item = &SeenNumber> + Clone {
        let is_jacket = self.reading.kind.is_none_or(|kind| kind == crate::PartKind::Cable);
        self.numbers
            .iter()
            .filter(move |number| is_jacket && matches!(number.unit, SeenUnit::Feet | SeenUnit::Metres))
    }

    /// What is sure, and nothing else: what one touch takes.
    pub fn sure(&self) -> LabelReading {
        let mut sure = LabelReading::default();
        for seen in self.members.iter().filter(|seen| seen.is_sure()) {
            seen.member.copy(&self.reading, &mut sure);
        }
        sure
    }
}

/// Suggests what a label states.
///
/// ```
/// use label::seen::{SeenLine, SeenRow, suggest};
///
/// let line = |text: &str| SeenLine { letters: text.chars().map(|sign| (sign, 0.999)).collect(), is_cut: (false, false) };
/// let row = |text: &str| SeenRow { looks: [Some(line(text)), Some(line(text))] };
/// let seen = suggest(&[row("4-WAY SPLITTER"), row("BAND 5-1002MHz"), row("OUT -7.2dB")]);
/// assert!(seen.members.iter().all(|member| member.is_sure()));
///
/// // One look saw less of it.
/// let torn = SeenRow { looks: [Some(line("BAND 5-1002MHz")), Some(line("BAND 5-100MHz"))] };
/// assert!(!suggest(&[torn]).numbers[1].is_sure());
/// ```
pub fn suggest(rows: &[SeenRow]) -> Suggestion {
    let seen: Vec<agreement::AgreedRow> =
        rows.iter().enumerate().map(|(at, row)| agreement::agreed(at, row)).collect();
    let text = |line: &dyn Fn(&agreement::AgreedRow) -> String| {
        seen.iter().map(line).filter(|line| !line.trim().is_empty()).collect::<Vec<_>>().join("\n")
    };
    let believed = |is_it: fn(&Believed) -> bool| {
        let rows = rows.iter().zip(&seen).filter(move |(row, _)| is_it(&Believed::of(row)));
        rows.map(|(_, row)| row.text_of(row.chosen))
    };
    let together = |is_it| crate::read(&believed(is_it).collect::<Vec<_>>().join("\n"));
    let certain = Certain {
        rows: believed(|row| row.by_both).map(|row| crate::read(&row)).collect(),
        words: together(|row| row.as_words),
        whole_words: together(|row| row.as_words && row.is_whole),
    };
    let of_looks = [0, 1].map(|look| crate::read(&text(&|row| row.text_of(look))));
    let text = text(&|row| row.text_of(row.chosen));
    let reading = crate::read(&text);
    let mut numbers: Vec<SeenNumber> = seen.into_iter().flat_map(|row| row.numbers).collect();
    plausible::doubt(&mut numbers);
    member::doubt_what_does_not_fit(&reading, &mut numbers);
    let members = member::members(&reading, &of_looks, &numbers, &certain);
    Suggestion { text, numbers, reading, members }
}

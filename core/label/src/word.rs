//! What one run of letters and digits is: a word, a number, a unit, or several of these written together.

use super::number::{Numeral, looks_like_digits};
use super::unit::{self, Spelling};
use super::vocabulary::{self, Term};

/// What a piece of the text is.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum What {
    /// A number.
    Number(Numeral),
    /// A unit.
    Unit(Spelling),
    /// A word of the trade.
    Term(Term),
    /// Letters that all look like digits and are no known word. Never read as a number.
    Letters,
    /// A word that means nothing here.
    Word,
    /// A part or serial number, or what cannot be told from one. The unit is the one it ends in.
    Code(Option<Spelling>),
    /// A sign.
    Sign(Sign),
}

/// A sign between words and numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sign {
    /// A dash or minus.
    Dash,
    /// A sign that only stands for a range.
    Range,
    /// A slash or ampersand.
    Slash,
    /// A comma.
    Comma,
    /// A dot.
    Dot,
    /// A colon or equals sign.
    Colon,
    /// A plus.
    Plus,
    /// More or less than: the figure is a bound.
    Bound,
    /// At.
    At,
    /// The end of a line, or what divides as a line's end does.
    Break,
    /// What makes codes of what it joins.
    Joint,
    /// Any other.
    Other,
}

/// One piece of a word, and how many characters long it is.
pub(super) type Piece = (What, usize);

/// The pieces of a run of letters, digits, and dots or commas between digits; in small letters.
pub(super) fn pieces(word: &str) -> Vec<Piece> {
    let length = word.chars().count();
    if let Some(pieces) = known(word) {
        return pieces;
    }
    for divider in [',', '.'] {
        if let Some(pieces) = divided(word, divider) {
            return pieces;
        }
    }
    if let Some(term) = vocabulary::term_misread(word) {
        return vec![(What::Term(term), length)];
    }
    let has_digit = word.chars().any(char::is_numeric);
    vec![(if has_digit { What::Code(last_unit(word)) } else { What::Word }, length)]
}

/// The unit that a code ends in, if it is one of two letters or more.
fn last_unit(word: &str) -> Option<Spelling> {
    unit::endings(word).map(|(_, spelling)| spelling).find(|spelling| !spelling.clings)
}

/// The pieces of a word that is understood in full.
fn known(word: &str) -> Option<Vec<Piece>> {
    let length = word.chars().count();
    if let Some(term) = vocabulary::term(word) {
        return Some(vec![(What::Term(term), length)]);
    }
    if let Some(spelling) = unit::spelled(word).filter(|spelling| !spelling.clings) {
        return Some(vec![(What::Unit(spelling), length)]);
    }
    if let Some(number) = Numeral::parse(word) {
        return Some(vec![(What::Number(number), length)]);
    }
    if looks_like_digits(word) {
        return Some(vec![(What::Letters, length)]);
    }
    number_with_unit(word)
        .or_else(|| term_with_number(word))
        .or_else(|| number_with_term(word))
        .or_else(|| one_by(word))
}

/// `3.5db`, `iso25db`; letters that look like digits before a unit are kept as letters.
fn number_with_unit(word: &str) -> Option<Vec<Piece>> {
    unit::endings(word).find_map(|(before, spelling)| {
        let length = before.chars().count();
        let mut pieces = if let Some(number) = Numeral::parse(before) {
            vec![(What::Number(number), length)]
        } else if spelling.clings {
            return None;
        } else if looks_like_digits(before) && vocabulary::term(before).is_none() {
            vec![(What::Letters, length)]
        } else {
            term_with_number(before).filter(|pieces| matches!(pieces.last(), Some((What::Number(_), _))))?
        };
        pieces.push((What::Unit(spelling), spelling.text.chars().count()));
        Some(pieces)
    })
}

/// Whether a number can be in a word at all: most words hold none, and each would be tried against all that is known.
fn has_digit(word: &str) -> bool {
    word.contains(|ch: char| ch.is_ascii_digit())
}

/// `out1`, `tap12db`: the longest word of the trade, then a number.
fn term_with_number(word: &str) -> Option<Vec<Piece>> {
    has_digit(word).then_some(())?;
    let (spelled, term, rest) = vocabulary::words()
        .filter_map(|(spelled, term)| Some((spelled, term, word.strip_prefix(spelled)?)))
        .filter(|(_, _, rest)| rest.starts_with(|ch: char| ch.is_ascii_digit()))
        .max_by_key(|(spelled, _, _)| spelled.len())?;
    let mut pieces = vec![(What::Term(term), spelled.chars().count())];
    if let Some(number) = Numeral::parse(rest) {
        pieces.push((What::Number(number), rest.chars().count()));
    } else {
        pieces.extend(number_with_unit(rest)?);
    }
    Some(pieces)
}

/// `8way`, `1in`: a number, then the longest word of the trade.
fn number_with_term(word: &str) -> Option<Vec<Piece>> {
    has_digit(word).then_some(())?;
    let (spelled, term, number) = vocabulary::words()
        .filter_map(|(spelled, term)| Some((spelled, term, word.strip_suffix(spelled)?)))
        .filter_map(|(spelled, term, before)| Some((spelled, term, Numeral::parse(before)?)))
        .max_by_key(|(spelled, _, _)| spelled.len())?;
    let length = word.chars().count() - spelled.chars().count();
    Some(vec![(What::Number(number), length), (What::Term(term), spelled.chars().count())])
}

/// `1x4`: one input, four outputs.
fn one_by(word: &str) -> Option<Vec<Piece>> {
    let (one, outputs) = word.split_once('x')?;
    let (first, second) = (Numeral::parse(one)?, Numeral::parse(outputs)?);
    Some(vec![
        (What::Number(first), one.len()),
        (What::Term(Term::By), 1),
        (What::Number(second), outputs.len()),
    ])
}

/// The pieces of words written together with a divider between them, if each is understood.
fn divided(word: &str, divider: char) -> Option<Vec<Piece>> {
    let mut groups = word.split(divider).skip(1).peekable();
    let parts_thousands = |group: &str| group.len() == 3 && group.chars().all(|ch| ch.is_ascii_digit());
    if groups.peek().is_none() || groups.all(parts_thousands) {
        // None, or groups of three as in the number of a patent.
        return None;
    }
    let sign = if divider == ',' { Sign::Comma } else { Sign::Dot };
    let mut all = Vec::new();
    for (place, part) in word.split(divider).enumerate() {
        if place > 0 {
            all.push((What::Sign(sign), 1));
        }
        all.extend(known(part)?);
    }
    Some(all)
}

//! The numbers with a unit in one line, and where they stand.

use std::ops::Range;

use super::unsure::Unsure;
use super::{SeenLine, SeenPlace};
use crate::normalise::marks;
use crate::number::{Numeral, digit_like};
use crate::token::{Token, tokens};
use crate::unit::Unit;
use crate::vocabulary::Term;
use crate::word::{Sign, What};

/// No figure whose unit is a guess is larger, in decibels.
pub(super) const MOST_GUESSED_DB: f64 = 60.0;

/// What a number counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SeenUnit {
    /// Megahertz; gigahertz are turned into these.
    Megahertz,
    /// Decibels.
    Decibels,
    /// Outputs: "4-WAY".
    Outputs,
    /// Volts.
    Volts,
    /// Feet: a mark on a cable's jacket.
    Feet,
    /// Metres: the same.
    Metres,
}

impl SeenUnit {
    /// Its symbol.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Megahertz => "MHz",
            Self::Decibels => "dB",
            Self::Outputs => "way",
            Self::Volts => "V",
            Self::Feet => "ft",
            Self::Metres => "m",
        }
    }
}

/// A number that was seen on a label.
#[derive(Debug, Clone, PartialEq)]
pub struct SeenNumber {
    /// Its value in its unit, without a sign.
    pub value: f64,
    /// What it counts.
    pub unit: SeenUnit,
    /// As it stands there.
    pub written: String,
    /// Where it stands.
    pub place: SeenPlace,
    /// Why it is asked; nothing if it is sure.
    pub unsure: Vec<Unsure>,
}

impl SeenNumber {
    /// Whether nothing speaks against it.
    pub fn is_sure(&self) -> bool {
        self.unsure.is_empty()
    }

    /// Adds why it is not sure, once.
    pub(super) fn doubt(&mut self, why: Unsure) {
        if !self.unsure.contains(&why) {
            self.unsure.push(why);
        }
    }
}

/// A number as one look saw it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Sight {
    /// Its value in its unit.
    pub value: f64,
    pub unit: SeenUnit,
    pub written: String,
    /// Which letters of the line.
    pub letters: Range<usize>,
    /// How certain the least certain of these is, and of what stands right beside them.
    pub certainty: f32,
    /// Whether a letter was read as a digit.
    pub has_letters: bool,
    /// Whether its unit, what stands beside it, or anything else in its row is not understood.
    pub is_unclear: bool,
    /// Whether digits of it may stand beside it that were not seen.
    pub is_torn: bool,
    /// Whether nothing stands before it in its row but signs, and behind it.
    pub is_outermost: (bool, bool),
}

/// The numbers of a line, from left to right. What cannot be told from the number of a part, such as "INPU12V", is looked at once
/// more with a blank before its digits: what is found then is offered, and asked.
pub(super) fn numbers(line: &SeenLine) -> Vec<Sight> {
    let (mut found, has_code) = sights(line);
    if !has_code {
        return found;
    }
    let (mut parted, mut origin) = (SeenLine { is_cut: line.is_cut, ..SeenLine::default() }, Vec::new());
    let mut last = ' ';
    for (at, letter) in line.letters.iter().enumerate() {
        if last.is_alphabetic() && letter.0.is_ascii_digit() {
            parted.letters.push((' ', 1.0));
            origin.push(at);
        }
        parted.letters.push(*letter);
        origin.push(at);
        last = letter.0;
    }
    origin.push(line.letters.len());
    for sight in sights(&parted).0 {
        let at = |place: usize| origin.get(place).copied().unwrap_or(line.letters.len());
        let letters = at(sight.letters.start)..at(sight.letters.end);
        if !found.iter().any(|known| known.letters.start < letters.end && letters.start < known.letters.end) {
            found.push(Sight { letters, is_unclear: true, ..sight });
        }
    }
    found.sort_by_key(|sight| sight.letters.start);
    found
}

/// The numbers of a line as it is, and whether there are codes in it.
fn sights(line: &SeenLine) -> (Vec<Sight>, bool) {
    let text: String = line.letters.iter().map(|(sign, _)| sign).collect();
    let starts: Vec<usize> = text.char_indices().map(|(at, _)| at).collect();
    let letter_at = |byte: usize| starts.partition_point(|start| *start < byte);
    let tokens = tokens(&marks(&text));
    let stands = |token: &Token| !matches!(token.what, What::Sign(_));
    let (first, last) = (tokens.iter().position(stands), tokens.iter().rposition(stands));
    let is_foreign = |token: &Token| matches!(token.what, What::Word | What::Code(_) | What::Letters);
    let is_length =
        |token: &Token| length_word(text.get(token.start..token.end).unwrap_or_default()).is_some();
    let is_foreign = tokens.iter().any(|token| is_foreign(token) && !is_length(token));
    let row = Row { tokens: &tokens, text: &text };
    let found = (0..tokens.len())
        .filter_map(|at| {
            let token = tokens.get(at)?;
            let Counted { value, unit, is_misread, has_letters } = row.counted(at)?;
            let letters = letter_at(token.start)..letter_at(token.end);
            Some(Sight {
                value,
                unit,
                written: text.get(token.start..token.end)?.to_owned(),
                certainty: certainty(line, &letters),
                letters,
                has_letters,
                is_unclear: is_misread || is_foreign || row.may_name_an_output(at),
                is_torn: row.may_be_an_end(at, unit, value) || row.may_lack_a_digit_at_a_sign(at, unit),
                is_outermost: (first == Some(at), last == Some(at)),
            })
        })
        .collect();
    (found, tokens.iter().any(|token| matches!(token.what, What::Code(_))))
}

/// The least certain of some letters and of those right beside them.
fn certainty(line: &SeenLine, letters: &Range<usize>) -> f32 {
    let around = letters.start.saturating_sub(1)..(letters.end + 1).min(line.letters.len());
    let all = line.letters.get(around).unwrap_or_default();
    // How sure a blank is tells of its width, not of the digit beside it.
    all.iter().filter(|(sign, _)| *sign != ' ').map(|(_, certainty)| *certainty).fold(1.0, f32::min)
}

/// A number and what it counts.
struct Counted {
    value: f64,
    unit: SeenUnit,
    /// Whether the unit is a guess.
    is_misread: bool,
    has_letters: bool,
}

/// The tokens of a row.
pub(super) struct Row<'t> {
    pub tokens: &'t [Token],
    pub text: &'t str,
}

/// What lengths are written in, as words.
fn length_word(word: &str) -> Option<SeenUnit> {
    match word.to_lowercase().as_str() {
        "feet" | "foot" => Some(SeenUnit::Feet),
        "metres" | "meters" | "metre" | "meter" => Some(SeenUnit::Metres),
        _ => None,
    }
}

impl Row<'_> {
    pub(super) fn what(&self, at: usize) -> Option<&What> {
        self.tokens.get(at).map(|token| &token.what)
    }

    pub(super) fn number(&self, at: usize) -> Option<&Numeral> {
        match self.what(at) {
            Some(What::Number(number)) => Some(number),
            _ => None,
        }
    }

    pub(super) fn is_range(&self, at: usize) -> bool {
        matches!(
            self.what(at),
            Some(What::Sign(Sign::Dash | Sign::Range) | What::Term(Term::To | Term::Through))
        )
    }

    pub(super) fn has(&self, wanted: Term) -> bool {
        self.tokens.iter().any(|token| token.term() == Some(wanted))
    }

    /// The number at a place and what it counts: by the unit behind it, or else by what the row lets guess.
    fn counted(&self, at: usize) -> Option<Counted> {
        if self.what(at) == Some(&What::Letters) {
            // All letters: "BdB" may be 8 dB.
            let word = self.tokens.get(at).and_then(|token| self.text.get(token.start..token.end))?;
            let digits: Option<String> = word.to_lowercase().chars().map(digit_like).collect();
            let value = digits?.parse().ok()?;
            let (unit, ..) = self.unit_behind(at).filter(|(unit, ..)| *unit == SeenUnit::Decibels)?;
            return Some(Counted { value, unit, is_misread: true, has_letters: true });
        }
        let number = self.number(at)?;
        let has_letters = number.has_letters;
        if let Some((unit, is_giga, is_misread)) = self.unit_behind(at) {
            let value = if is_giga { number.times_thousand() } else { number.value() };
            return Some(Counted { value, unit, is_misread, has_letters });
        }
        let (value, unit) = self.guessed(at, number)?;
        Some(Counted { value, unit, is_misread: true, has_letters })
    }

    /// Whether it stands so close behind a word for an output that the first of its digits may be the output's own: `OUT37dB`.
    fn may_name_an_output(&self, at: usize) -> bool {
        let before = at.checked_sub(1).and_then(|before| self.tokens.get(before));
        let is_close = self.tokens.get(at).is_some_and(|token| !token.spaced);
        is_close
            && before.is_some_and(|token| {
                matches!(token.term(), Some(Term::Output | Term::Outputs | Term::Leg | Term::Port))
            })
    }

    /// What a number counts by what stands behind it, whether it is in thousands, and whether the unit is misspelled.
    pub(super) fn unit_behind(&self, at: usize) -> Option<(SeenUnit, bool, bool)> {
        let is_way = |at: usize| self.what(at) == Some(&What::Term(Term::Way));
        if is_way(at + 1) || (self.what(at + 1) == Some(&What::Sign(Sign::Dash)) && is_way(at + 2)) {
            return Some((SeenUnit::Outputs, false, false));
        }
        let follows_range =
            at.checked_sub(2).is_some_and(|lower| self.is_range(lower + 1) && self.number(lower).is_some());
        match self.what(at + 1)? {
            What::Unit(spelling) => {
                let (unit, is_giga) = match (spelling.unit, spelling.text) {
                    (Unit::Decibel, _) => (SeenUnit::Decibels, false),
                    (Unit::Megahertz, _) => (SeenUnit::Megahertz, false),
                    (Unit::Gigahertz, _) => (SeenUnit::Megahertz, true),
                    (Unit::ShortMega, _) if follows_range => return Some((SeenUnit::Megahertz, false, true)),
                    (Unit::ShortMega, _) => (SeenUnit::Metres, false),
                    (Unit::Other, "v" | "vdc" | "vac") => (SeenUnit::Volts, false),
                    (Unit::Other, "ft") => (SeenUnit::Feet, false),
                    _ => return None,
                };
                Some((unit, is_giga, spelling.misread))
            }
            What::Word => {
                let token = self.tokens.get(at + 1)?;
                length_word(self.text.get(token.start..token.end)?).map(|unit| (unit, false, false))
            }
            // The unit of a range, and of a list, stands behind the last of its numbers.
            _ if self.is_range(at + 1) && self.number(at + 2).is_some() => {
                self.unit_behind(at + 2).filter(|(unit, ..)| *unit == SeenUnit::Megahertz)
            }
            What::Sign(Sign::Slash | Sign::Comma) if self.number(at + 2).is_some() => {
                self.unit_behind(at + 2).filter(|(unit, ..)| *unit == SeenUnit::Decibels)
            }
            _ => None,
        }
    }
}

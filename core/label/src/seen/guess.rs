//! What a number without a unit may count: never sure, but better offered than left to be typed.

use super::number::{MOST_GUESSED_DB, Row, SeenUnit};
use super::plausible::has_tenths;
use crate::number::Numeral;
use crate::usual::is_edge;
use crate::vocabulary::Term;
use crate::word::{Sign, What};

/// What "dB" becomes where its letters are read as digits.
const UNIT_AS_DIGITS: [&str; 5] = ["08", "48", "68", "00", "0"];
/// Words beside which a figure in decibels stands.
const FIGURE_WORDS: [Term; 13] = [
    Term::Output,
    Term::Outputs,
    Term::Through,
    Term::Tap,
    Term::Loss,
    Term::Insertion,
    Term::Isolation,
    Term::ReturnLoss,
    Term::Gain,
    Term::ReturnGain,
    Term::Rejection,
    Term::Attenuation,
    Term::Attenuator,
];

impl Row<'_> {
    /// What the row lets guess of a number that no unit stands behind.
    pub(super) fn guessed(&self, at: usize, number: &Numeral) -> Option<(f64, SeenUnit)> {
        let value = number.value();
        if self.is_of_a_band(at) {
            return Some((value, SeenUnit::Megahertz));
        }
        if self.has(Term::Splitter) && number.is_whole() && (2.0..=16.0).contains(&value) {
            return Some((value, SeenUnit::Outputs));
        }
        if !self.unit_is_missing(at) {
            return None;
        }
        let is_figure = FIGURE_WORDS.into_iter().any(|word| self.has(word));
        if is_figure && value <= MOST_GUESSED_DB && has_tenths(value) {
            return Some((value, SeenUnit::Decibels));
        }
        // "24dB" read as 2408: the unit looks like digits.
        let figure = UNIT_AS_DIGITS.iter().find_map(|unit| number.plain().strip_suffix(unit))?;
        let value: f64 = figure.trim_end_matches('.').parse().ok()?;
        (value <= MOST_GUESSED_DB).then_some((value, SeenUnit::Decibels))
    }

    /// Whether it and its neighbour are two edges in their order, the sign between them or the unit behind them worn away.
    fn is_of_a_band(&self, at: usize) -> bool {
        let edge = |at: Option<usize>| {
            at.and_then(|at| self.number(at)).map(Numeral::value).filter(|edge| is_edge(*edge))
        };
        let Some(own) = edge(Some(at)) else { return false };
        let lower = at.checked_sub(1).filter(|sign| self.is_range(*sign));
        let lower = edge(lower.and_then(|sign| sign.checked_sub(1)));
        let upper = if self.is_range(at + 1) { edge(Some(at + 2)) } else { None };
        let has_unit = matches!(self.unit_behind(at + 1), Some((SeenUnit::Megahertz, ..)));
        let close = edge(Some(at + 1)).filter(|_| has_unit);
        lower.is_some_and(|lower| lower < own)
            || upper.is_some_and(|upper| own < upper)
            || close.is_some_and(|upper| own < upper)
    }

    /// Whether the row ends at a number, but for signs and letters that are left of a unit, and is none of a range's.
    fn unit_is_missing(&self, at: usize) -> bool {
        let is_left_over = |what: &What| matches!(what, What::Sign(_) | What::Word | What::Letters);
        let is_last = self.tokens.iter().skip(at + 1).all(|token| is_left_over(&token.what));
        let is_upper =
            at.checked_sub(2).is_some_and(|lower| self.number(lower).is_some() && self.is_range(lower + 1));
        let behind = self.tokens.get(at + 1).is_some_and(|token| token.is_sign(Sign::Dash));
        is_last && !is_upper && !behind
    }
}

//! How many outputs there are, and which output a figure is for.

use super::doubt::Doubt;
use super::item::{Grammar, Item, Lost};
use super::unit::Unit;
use super::vocabulary::Term;
use super::word::Sign;

/// The most outputs that a part in a house has.
pub(super) const MOST_OUTPUTS: u8 = 32;

impl Grammar<'_> {
    /// `4-WAY`, `two way`, `8 outputs`, `1x4`; `OUT1`, `OUT 2/3`.
    pub(super) fn count(&mut self, at: usize) -> Option<usize> {
        self.outputs_counted(at).or_else(|| self.outputs_named(at))
    }

    fn outputs_counted(&mut self, at: usize) -> Option<usize> {
        let way = at + 1 + usize::from(self.is_sign(at + 1, Sign::Dash));
        if self.is_letters(at) && self.term(way) == Some(Term::Way) {
            return Some(self.lose(Lost::Count, at, way + 1));
        }
        let count = self.small_count(at).filter(|count| (1..=MOST_OUTPUTS).contains(count))?;
        let mut doubts = self.spelling_doubts(at, at + 1);
        let by_many = if count == 1 { self.one_by_many(at) } else { None };
        if by_many.is_some() {
            return by_many;
        }
        match self.term(way) {
            Some(Term::Way) => {}
            Some(Term::Output) if self.follows_input_count(at) && self.output_number(way + 1).is_none() => {}
            Some(Term::Outputs) if self.number(way + 1).is_none() || self.spaced(way + 1) => {}
            Some(Term::Port) if self.output_number(way + 1).is_none() && count > 1 => {
                doubts.push(Doubt::PortsAsOutputs { written: self.written(at, way + 1) });
            }
            _ => return None,
        }
        let together = |loose| format!("{}{count}", self.number(loose).map_or("", |number| number.plain()));
        let is_torn = |loose: &usize| together(*loose).parse::<u8>().is_ok_and(|count| count <= MOST_OUTPUTS);
        if let Some(torn) = self.torn_from(at).filter(is_torn) {
            return Some(self.lose(Lost::Count, torn, way + 1));
        }
        self.items.push(Item::Legs(count, doubts));
        Some(way + 1)
    }

    /// Whether `1 IN` stands before: then `8 OUT` is a count and not an output's name.
    fn follows_input_count(&self, at: usize) -> bool {
        let count = |place: Option<usize>| place.and_then(|place| self.small_count(place));
        at.checked_sub(1).and_then(|input| self.term(input)) == Some(Term::Input)
            && count(at.checked_sub(2)) == Some(1)
    }

    /// `1x4`, `1:4`, with no blanks inside.
    fn one_by_many(&mut self, at: usize) -> Option<usize> {
        let by = self.term(at + 1) == Some(Term::By);
        let joined = by || self.is_sign(at + 1, Sign::Colon);
        let glued = !self.spaced(at + 1) && !self.spaced(at + 2);
        let count = self.number(at + 2).filter(|number| number.is_whole())?.count()?;
        let alone =
            self.unit(at + 3).is_none() && self.number(at + 3).is_none() && !self.is_sign(at + 3, Sign::Dash);
        if !(joined && glued && (by || alone) && (2..=MOST_OUTPUTS).contains(&count)) {
            return None;
        }
        let doubts = self.spelling_doubts(at, at + 3);
        self.items.push(Item::Legs(count, doubts));
        Some(at + 3)
    }

    fn outputs_named(&mut self, at: usize) -> Option<usize> {
        match self.term(at)? {
            Term::OutputUnclear => {
                self.items.push(Item::Outputs(vec![0]));
                return Some(at + 1);
            }
            Term::Output | Term::Outputs | Term::Leg | Term::Port => {}
            _ => return None,
        }
        let mut outputs = self.two_outputs(at + 1).or_else(|| Some(vec![self.output_number(at + 1)?]))?;
        let mut next = at + 2;
        loop {
            let runs_on = self.is_sign(next, Sign::Dash) && !self.is_minus(next);
            let lists = self.is_sign(next, Sign::Slash) || self.is_sign(next, Sign::Comma);
            let Some(number) = self.output_number(next + 1).filter(|_| runs_on || lists) else { break };
            match outputs.last() {
                Some(&from) if runs_on && from > 0 && from < number => outputs.extend(from + 1..=number),
                _ if runs_on => break,
                _ => outputs.push(number),
            }
            next += 2;
        }
        self.items.push(Item::Outputs(outputs));
        Some(next)
    }

    /// `1,2`, which alone would be a number with a decimal comma.
    fn two_outputs(&self, at: usize) -> Option<Vec<u8>> {
        let (first, second) = self.number(at)?.pair().filter(|_| self.unit(at + 1).is_none())?;
        (second <= MOST_OUTPUTS).then(|| vec![first, second])
    }

    /// An output's number: whole, small, without a unit. One with letters in it is 0, an output unknown.
    fn output_number(&self, at: usize) -> Option<u8> {
        let number = self.number(at).filter(|number| number.is_whole())?;
        let way = at + 1 + usize::from(self.is_sign(at + 1, Sign::Dash));
        let has_meaning = self.unit(at + 1).is_some() || self.term(way) == Some(Term::Way);
        if has_meaning || self.starts_a_band(at) {
            return None;
        }
        let count = number.count().filter(|count| (1..=MOST_OUTPUTS).contains(count))?;
        Some(if number.has_letters { 0 } else { count })
    }

    /// Whether the number at `at` begins a range that is neither one of outputs nor ends in decibels.
    fn starts_a_band(&self, at: usize) -> bool {
        let Some(end) = self.range_sign(at + 1).filter(|_| !self.is_minus(at + 1)) else { return false };
        let Some(number) = self.number(end) else { return self.is_letters(end) };
        let is_output = number.is_whole() && number.count().is_some_and(|count| count <= MOST_OUTPUTS);
        let in_decibels = self.unit(end + 1).is_some_and(|spelling| spelling.unit == Unit::Decibel);
        !(in_decibels || (is_output && self.unit(end + 1).is_none()))
    }
}

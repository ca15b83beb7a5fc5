//! Figures in decibels, and bare numbers that may be such.

use super::doubt::Doubt;
use super::item::{Figure, Grammar, Item, Lost, Standing};
use super::losses::UNMARKED_LOSS_DB;
use super::number::Numeral;
use super::unit::Unit;
use super::vocabulary::Term;
use super::word::{Sign, What};

/// One number of a list that shares a unit.
struct Entry {
    number: Numeral,
    sign: Option<Sign>,
    at: usize,
}

impl Grammar<'_> {
    fn is_decibel(&self, at: usize) -> bool {
        self.unit(at).is_some_and(|spelling| spelling.unit == Unit::Decibel)
    }

    /// A figure (`-3.5dB`), a list with one unit (`3.5/7/7 dB`), or a bare number.
    pub(super) fn decibels(&mut self, at: usize) -> Option<usize> {
        let first = self.entry(at)?;
        let after = first.at + 1;
        if self.is_decibel(after) {
            if self.is_loss_of_a_length(after + 1) {
                return Some(after + 1);
            }
            // A minus after a blank begins a figure of its own: "DOCSIS 3.1 -3.5dB".
            let is_apart = first.sign.is_some() && self.spaced(at);
            if let Some(torn) = self.torn_from(at).filter(|_| !is_apart) {
                self.items.pop_if(|item| matches!(item, Item::Figure(figure) if !figure.has_unit));
                return Some(self.lose(Lost::Decibels, torn, after + 1));
            }
            let end = self.take(&[first], after, true);
            return Some(self.go_on(end));
        }
        if let Some(spelling) = self.unit(after) {
            // Volts, amperes and the like are passed over; a sign before a frequency is left to its own rule.
            return (first.sign.is_none() || !spelling.unit.is_frequency()).then_some(after + 1);
        }
        let upper = self.range_sign(after).filter(|_| !self.is_minus(after));
        if let Some(end) = upper.and_then(|upper| self.signed_range(at, upper)) {
            return Some(end);
        }
        if let Some((list, unit_at)) = self.list(at) {
            return Some(self.take_list(at, &list, unit_at));
        }
        self.loose = Some(first.at);
        let has_header = self.header == Some(Unit::Decibel);
        Some(self.take(&[first], after, has_header))
    }

    /// `-20~+60°C`, `-3.5 to -4.5 dB`: no figure; in decibels that is told.
    fn signed_range(&mut self, at: usize, upper: usize) -> Option<usize> {
        let second = self.entry(upper)?;
        let mut end = second.at + 1;
        while let Some(third) = self.range_sign(end).and_then(|next| self.entry(next)) {
            end = third.at + 1;
        }
        let unit = self.unit(end).map(|spelling| spelling.unit);
        match unit {
            Some(Unit::Decibel) => {
                let written = self.written(at, end + 1);
                self.items.push(Item::Lost(Lost::Decibels, Doubt::DecibelRange { written }));
            }
            Some(unit) if unit.is_frequency() => return None,
            _ => {}
        }
        Some(end + usize::from(unit.is_some()))
    }

    /// A number with its sign.
    fn entry(&self, at: usize) -> Option<Entry> {
        let sign = match self.token(at).map(|token| &token.what) {
            Some(What::Sign(sign @ (Sign::Dash | Sign::Plus))) => Some(*sign),
            _ => None,
        };
        let after_letters =
            at.checked_sub(1).is_some_and(|before| self.is_letters(before)) && !self.spaced(at);
        if sign.is_some() && after_letters {
            // What stands before may be the lower end of a range.
            return None;
        }
        let number_at = at + usize::from(sign.is_some());
        let number = self.number(number_at)?.clone();
        Some(Entry { number, sign, at: number_at })
    }

    /// A list of numbers with a unit after the last: the numbers, and where the unit stands.
    fn list(&self, at: usize) -> Option<(Vec<Entry>, usize)> {
        let mut list = vec![self.entry(at)?];
        let divider = list.last()?.at + 1;
        if self.follows_word(at) && self.spaced(divider + 1) {
            // The number is the word's; what the comma parts from it stands for itself: "FOO 3.1, 3.5dB".
            return None;
        }
        loop {
            let next = list.last()?.at + 1;
            if self.is_decibel(next) {
                return Some((list, next));
            }
            let divided = self.is_sign(next, Sign::Slash) || self.is_sign(next, Sign::Comma);
            let is_signed = list.first().is_some_and(|entry| entry.sign.is_some());
            let runs_on = divided || (is_signed && self.is_minus(next));
            if !runs_on {
                return None;
            }
            let entry = self.entry(next + usize::from(divided))?;
            let is_range = self.range_sign(entry.at + 1).is_some() && !self.is_minus(entry.at + 1);
            if is_range || list.len() > 32 {
                return None;
            }
            list.push(entry);
        }
    }

    fn take_list(&mut self, at: usize, list: &[Entry], unit_at: usize) -> usize {
        let is_apart = self.number(at).is_none() && self.spaced(at);
        let is_torn = (self.torn_from(at).is_some() && !is_apart) || self.is_split_decimal(list);
        if is_torn {
            return self.lose(Lost::Decibels, at, unit_at + 1);
        }
        self.take(list, unit_at, true)
    }

    /// `3.5dB, 7, 7`: the members of a list after the one that has the unit.
    fn go_on(&mut self, end: usize) -> usize {
        let mut next = end;
        loop {
            let divided = self.is_sign(next, Sign::Slash) || self.is_sign(next, Sign::Comma);
            let at = next + usize::from(divided);
            let is_member = self.is_bare_number(at)
                && self.entry(at).is_some_and(|entry| UNMARKED_LOSS_DB.contains(&entry.number.value()));
            let Some(entry) = self.entry(at).filter(|_| is_member) else { return next };
            self.loose = Some(at);
            next = at + 1;
            self.take(&[entry], next, false);
            if let Some(Item::Figure(figure)) = self.items.last_mut() {
                figure.is_listed = true;
            }
        }
    }

    /// `3, 5 dB`: two losses, or one with a blank after its decimal comma.
    fn is_split_decimal(&self, list: &[Entry]) -> bool {
        match list {
            [first, second] => {
                self.is_sign(first.at + 1, Sign::Comma)
                    && second.sign.is_none()
                    && first.number.is_whole()
                    && second.number.is_whole()
            }
            _ => false,
        }
    }

    /// Adds the figures of a list; `unit_at` is the place after the last number.
    fn take(&mut self, list: &[Entry], unit_at: usize, has_unit: bool) -> usize {
        let has_unit_token = self.is_decibel(unit_at);
        let mut end = unit_at + usize::from(has_unit_token);
        let unit_doubts = self.spelling_doubts(unit_at, end);
        let standing = self.standing(&mut end);
        for entry in list {
            let from = entry.at - usize::from(entry.sign.is_some());
            let to = if list.len() == 1 { unit_at + usize::from(has_unit_token) } else { entry.at + 1 };
            let mut doubts = self.spelling_doubts(entry.at, entry.at + 1);
            doubts.extend(unit_doubts.iter().cloned());
            let figure = Figure {
                size: entry.number.value(),
                minus: entry.sign == Some(Sign::Dash),
                plus: entry.sign == Some(Sign::Plus),
                has_unit,
                is_listed: false,
                follows_word: self.follows_word(from),
                standing,
                written: self.written(from, to),
                doubts,
            };
            self.items.push(Item::Figure(figure));
        }
        end
    }

    /// Whether a figure is called typical or guaranteed, before it or else after it.
    fn standing(&mut self, end: &mut usize) -> Standing {
        let named = |term| match term {
            Some(Term::Typical) => Some(Standing::Typical),
            Some(Term::Guaranteed) => Some(Standing::Guaranteed),
            _ => None,
        };
        let before = match self.items.last() {
            Some(Item::Word(term)) => named(Some(*term)),
            _ => None,
        };
        if let Some(standing) = before {
            self.items.pop();
            return standing;
        }
        let word = *end + usize::from(self.is_sign(*end, Sign::Other) || self.is_sign(*end, Sign::Dot));
        match named(self.term(word)) {
            Some(standing) => {
                *end = word + 1 + usize::from(self.is_sign(word + 1, Sign::Dot));
                standing
            }
            None => Standing::Plain,
        }
    }

    /// `/100ft`, `/m`: the figure before is a cable's loss over a length.
    fn is_loss_of_a_length(&self, at: usize) -> bool {
        let per = self.is_sign(at, Sign::Slash) || self.term(at) == Some(Term::Each);
        let unit_at = at + 1 + usize::from(self.number(at + 1).is_some());
        let is_length = self.unit(unit_at).is_some_and(|spelling| matches!(spelling.text, "ft" | "m"))
            || self.token(unit_at).is_some_and(|token| {
                token.what == What::Word
                    && !token.spaced
                    && self.written(unit_at, unit_at + 1).eq_ignore_ascii_case("m")
            });
        per && is_length
    }
}

/// Keeps each doubt once.
pub(super) fn add_once(doubts: &mut Vec<Doubt>, more: impl IntoIterator<Item = Doubt>) {
    for doubt in more {
        if !doubts.contains(&doubt) {
            doubts.push(doubt);
        }
    }
}

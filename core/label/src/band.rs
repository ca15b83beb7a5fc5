//! Ranges of frequencies and single frequencies.

use super::doubt::Doubt;
use super::item::{Band, Grammar, Item, Lost};
use super::number::Numeral;
use super::rated_band::BARE_UPPER_EDGE_MHZ;
use super::unit::Unit;
use super::usual::is_edge;
use super::vocabulary::Term;
use super::word::{Sign, What};

/// The lower edge of what begins at direct current, in megahertz.
pub(super) const FROM_DC_MHZ: f64 = 0.0;

/// The two sides of a range before their meaning is settled.
struct Range {
    /// The lower number; absent for "DC".
    low: Option<Numeral>,
    low_unit: Option<Unit>,
    high: Numeral,
    high_unit: Option<Unit>,
    /// Whether the upper number was put together from two groups of digits.
    is_joined: bool,
    /// One past the last token.
    end: usize,
}

impl Grammar<'_> {
    /// One past a sign or word for "to" at `at`.
    pub(super) fn range_sign(&self, at: usize) -> Option<usize> {
        let is_range = self.is_sign(at, Sign::Dash)
            || self.is_sign(at, Sign::Range)
            || matches!(self.term(at), Some(Term::To | Term::Through));
        is_range.then_some(at + 1)
    }

    fn frequency_unit(&self, at: usize) -> Option<Unit> {
        self.unit(at).map(|spelling| spelling.unit).filter(|unit| unit.is_frequency())
    }

    /// A range of frequencies, with or without units; also ranges of other things, which are passed over.
    pub(super) fn band(&mut self, at: usize) -> Option<usize> {
        let from_dc = self.term(at) == Some(Term::DirectCurrent);
        let low = self.number(at).cloned();
        if low.is_none() && !from_dc {
            return None;
        }
        let low_unit = self.frequency_unit(at + 1).filter(|_| !from_dc);
        let sign = at + 1 + usize::from(low_unit.is_some());
        let upper = self.range_sign(sign)?;
        let is_minus = self.is_minus(sign);
        if self.is_letters(upper) && !is_minus {
            // The upper edge is all letters: it may be a number, but none that may be read.
            let unit = self.frequency_unit(upper + 1);
            let has_header = self.header.is_some_and(Unit::is_frequency);
            let is_frequency = unit.is_some() || low_unit.is_some() || has_header;
            if !is_frequency && low.is_some_and(|low| is_edge(low.value())) {
                return Some(self.lose(Lost::Unknown, at, upper + 1));
            }
            return is_frequency
                .then(|| self.lose(Lost::Frequency, at, upper + 1 + usize::from(unit.is_some())));
        }
        let range = self.range(low, low_unit, upper)?;
        let after = self.unit(range.end).map(|spelling| spelling.unit).filter(|_| range.high_unit.is_none());
        let is_bare = range.low_unit.is_none() && range.high_unit.is_none();
        match after {
            Some(Unit::Decibel) if is_minus || low_unit.is_some() || from_dc => return None,
            Some(Unit::Decibel)
                if self.range_sign(range.end + 1).is_none_or(|next| self.number(next).is_none()) =>
            {
                let written = self.written(at, range.end + 1);
                self.items.push(Item::Lost(Lost::Decibels, Doubt::DecibelRange { written }));
                return Some(range.end + 1);
            }
            Some(Unit::Hertz) => return Some(self.lose(Lost::Frequency, at, range.end + 1)),
            Some(Unit::Other) if low_unit.is_none() => return Some(range.end + 1),
            _ => {}
        }
        let is_from_dc_to_edge = range.high.value() >= BARE_UPPER_EDGE_MHZ && is_edge(range.high.value());
        if is_bare && (is_minus || (from_dc && !is_from_dc_to_edge)) {
            return None;
        }
        if let Some(end) = self.chain(range.end) {
            return Some(self.lose_chain(at, end));
        }
        let shared = if is_bare { self.shared_unit(range.end) } else { None };
        Some(self.take_band(at, &range, shared))
    }

    /// The upper side of a range, and the units of both.
    fn range(&self, low: Option<Numeral>, low_unit: Option<Unit>, upper: usize) -> Option<Range> {
        let high = self.number(upper)?.clone();
        let gap =
            self.number(upper + 1).filter(|_| self.spaced(upper + 1)).and_then(|group| high.joined(group));
        if let (Some(joined), Some(unit)) = (gap, self.frequency_unit(upper + 2)) {
            return Some(Range {
                low,
                low_unit,
                high: joined,
                high_unit: Some(unit),
                is_joined: true,
                end: upper + 3,
            });
        }
        let high_unit = self.frequency_unit(upper + 1);
        let end = upper + 1 + usize::from(high_unit.is_some());
        Some(Range { low, low_unit, high, high_unit, is_joined: false, end })
    }

    /// Where a range runs on into a third number, the place one past the last: `3-5-1000`.
    fn chain(&self, end: usize) -> Option<usize> {
        let mut last = end;
        while let Some(next) = self.range_sign(last).filter(|_| !self.is_minus(last)) {
            let is_figure = self.unit(next + 1).is_some_and(|spelling| spelling.unit == Unit::Decibel);
            if self.number(next).is_none() || (last == end && is_figure && self.unit(end - 1).is_some()) {
                break;
            }
            last = next + 1 + usize::from(self.unit(next + 1).is_some());
        }
        (last > end).then_some(last)
    }

    fn lose_chain(&mut self, at: usize, end: usize) -> usize {
        match self.unit(end - 1).map(|spelling| spelling.unit) {
            Some(Unit::Decibel) => self.lose(Lost::Decibels, at, end),
            Some(unit) if unit.is_frequency() => self.lose(Lost::Frequency, at, end),
            _ => end,
        }
    }

    /// The unit of a second range after a slash, which is the first one's too: `5-42/54-1002 MHz`.
    fn shared_unit(&self, end: usize) -> Option<Unit> {
        let is_range = self.is_sign(end, Sign::Slash)
            && self.number(end + 1).is_some()
            && self.range_sign(end + 2).is_some()
            && self.number(end + 3).is_some();
        is_range.then(|| self.frequency_unit(end + 4)).flatten()
    }

    /// Settles what a range means and adds it, or that it cannot be read.
    fn take_band(&mut self, at: usize, range: &Range, shared: Option<Unit>) -> usize {
        let written = self.written(at, range.end);
        if let Some(torn) = self.edge_torn_from(at).filter(|_| range.low.is_some()) {
            return self.lose(Lost::Frequency, torn, range.end);
        }
        let header = self.header.filter(|unit| unit.is_frequency());
        let high_unit = range.high_unit.or(shared).or(header);
        let has_unit = high_unit.is_some() || range.low_unit.is_some();
        let mut doubts = self.spelling_doubts(at, range.end);
        if range.low_unit.is_some_and(Unit::is_giga) && range.high_unit.is_none() {
            return self.lose(Lost::Frequency, at, range.end);
        }
        let Some(high) = edge(&range.high, high_unit, &written, &mut doubts) else {
            return self.lose(Lost::Frequency, at, range.end);
        };
        if range.is_joined && !is_edge(high) {
            return self.lose(Lost::Frequency, at, range.end);
        }
        let low = match &range.low {
            None => Some(FROM_DC_MHZ),
            Some(low) => match lower_edge(low, range.low_unit, high_unit, high, &written, &mut doubts) {
                Some(low) => Some(low),
                None => return self.lose(Lost::Frequency, at, range.end),
            },
        };
        if let Some(low) = low.filter(|low| *low >= high) {
            if has_unit {
                let doubt = Doubt::BandBackwards { written, from: low, to: high };
                self.items.push(Item::Lost(Lost::Frequency, doubt));
            }
            return range.end;
        }
        let is_from_dc = range.low.is_none();
        let unusual = low.into_iter().filter(|_| !is_from_dc).chain([high]).filter(|edge| !is_edge(*edge));
        doubts.extend(unusual.map(|edge| Doubt::EdgeUnusual { edge }));
        let is_attached = at.checked_sub(1).is_some_and(|before| {
            self.is_sign(before, Sign::At)
                || self.term(before) == Some(Term::At)
                || self.written(before, at) == "("
        });
        let follows_word = self.follows_word(at);
        self.items.push(Item::Band(Band { low, high, has_unit, is_attached, follows_word, written, doubts }));
        range.end
    }

    /// One frequency, or two with a slash.
    pub(super) fn frequency(&mut self, at: usize) -> Option<usize> {
        let number = self.number(at)?.clone();
        let (second, unit_at) = match self.number(at + 2) {
            Some(second) if self.is_sign(at + 1, Sign::Slash) => (Some(second.clone()), at + 3),
            _ => (None, at + 1),
        };
        let unit = self.unit(unit_at).map(|spelling| spelling.unit)?;
        let end = unit_at + 1;
        if unit == Unit::Hertz {
            let is_mains = [Some(&number), second.as_ref()].into_iter().flatten().all(is_mains_frequency);
            return Some(if is_mains { end } else { self.lose(Lost::Frequency, at, end) });
        }
        if !matches!(unit, Unit::Megahertz | Unit::Gigahertz) {
            return None;
        }
        if self.is_broken_range(at) {
            let from = self.torn_from(at).unwrap_or(at);
            return Some(self.lose(Lost::Frequency, from, end));
        }
        if at
            .checked_sub(1)
            .is_some_and(|before| self.is_sign(before, Sign::At) || self.term(before) == Some(Term::At))
        {
            return Some(end);
        }
        let written = self.written(at, end);
        let mut doubts = self.spelling_doubts(at, end);
        let values =
            [Some(&number), second.as_ref()].map(|number| edge(number?, Some(unit), &written, &mut doubts));
        let item = match values {
            [Some(low), Some(high)] => Item::Split(low, high, written, doubts),
            [Some(value), None] if second.is_none() => Item::Frequency(value, written, doubts),
            _ => return Some(self.lose(Lost::Frequency, at, end)),
        };
        self.items.push(item);
        Some(end)
    }

    /// Whether the frequency at `at` is what is left of a range, or a number torn apart.
    fn is_broken_range(&self, at: usize) -> bool {
        if self.torn_from(at).is_some() {
            return true;
        }
        let Some(sign) = at.checked_sub(1).filter(|sign| self.range_sign(*sign).is_some()) else {
            return false;
        };
        sign.checked_sub(1).and_then(|before| self.token(before)).is_some_and(|before| {
            !matches!(before.what, What::Term(_) | What::Sign(Sign::Break | Sign::Comma | Sign::Other))
        })
    }
}

/// A number as an edge in megahertz; nothing where it cannot be told what it means.
fn edge(number: &Numeral, unit: Option<Unit>, written: &str, doubts: &mut Vec<Doubt>) -> Option<f64> {
    if unit.is_some_and(Unit::is_giga) {
        return Some(number.times_thousand());
    }
    let value = number.value();
    let Some(thousands) = number.value_in_thousands() else { return Some(value) };
    let read = [thousands, value].into_iter().find(|value| is_edge(*value))?;
    doubts.push(Doubt::Thousands { written: written.to_owned(), read });
    Some(read)
}

/// The lower edge, which may have the upper edge's unit or be in megahertz below one in gigahertz.
fn lower_edge(
    low: &Numeral,
    low_unit: Option<Unit>,
    high_unit: Option<Unit>,
    high: f64,
    written: &str,
    doubts: &mut Vec<Doubt>,
) -> Option<f64> {
    if low_unit.is_some() || !high_unit.is_some_and(Unit::is_giga) {
        return edge(low, low_unit.or(high_unit), written, doubts);
    }
    let same_unit = edge(low, high_unit, written, doubts)?;
    if same_unit < high {
        return Some(same_unit);
    }
    let megahertz = edge(low, Some(Unit::Megahertz), written, doubts)?;
    doubts.push(Doubt::BandUnitsMixed { written: written.to_owned(), low: megahertz });
    Some(megahertz)
}

/// The mains run at 50 or 60 hertz; any other figure in hertz is a misread larger unit.
fn is_mains_frequency(number: &Numeral) -> bool {
    matches!(number.plain(), "50" | "60")
}

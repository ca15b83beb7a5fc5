//! What the tokens make together: bands, figures, counts, and words that say what these are.

use super::doubt::Doubt;
use super::kind::{CableSeries, PowerPass};
use super::token::Token;
use super::unit::{Spelling, Unit};
use super::vocabulary::{PHRASES, Term};
use super::word::{Sign, What};

/// A range of frequencies as written.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Band {
    /// Lower edge in megahertz: 0 for "DC to".
    pub low: Option<f64>,
    /// Upper edge in megahertz.
    pub high: f64,
    /// Whether a unit stands beside it.
    pub has_unit: bool,
    /// Whether a bracket or "at" ties it to the figure before it.
    pub is_attached: bool,
    /// Whether a word that means nothing here stands right before it.
    pub follows_word: bool,
    /// As written.
    pub written: String,
    /// Doubts to be told if it is used.
    pub doubts: Vec<Doubt>,
}

/// Whether a figure is called typical or guaranteed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Standing {
    /// Neither.
    Plain,
    /// Typical or nominal.
    Typical,
    /// A maximum or minimum.
    Guaranteed,
}

/// A figure in decibels, or a bare number that may be one.
#[derive(Debug, Clone, PartialEq)]
#[expect(clippy::struct_excessive_bools, reason = "each is a mark in print, on its own")]
pub(super) struct Figure {
    /// Its size, without sign.
    pub size: f64,
    /// Whether a minus stands before it.
    pub minus: bool,
    /// Whether a plus stands before it.
    pub plus: bool,
    /// Whether a unit stands beside it.
    pub has_unit: bool,
    /// Whether it goes on a list whose first figure has a unit: `3.5dB, 7, 7`.
    pub is_listed: bool,
    /// Whether a word that means nothing here stands right before it.
    pub follows_word: bool,
    /// Typical or guaranteed.
    pub standing: Standing,
    /// As written.
    pub written: String,
    /// Doubts to be told if it is used.
    pub doubts: Vec<Doubt>,
}

/// What cannot be read, and what it would have been.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Lost {
    /// A frequency or band.
    Frequency,
    /// A figure in decibels.
    Decibels,
    /// A count of legs.
    Count,
    /// A count of outputs behind "POWER PASS": of those that pass power, or of all.
    PassingCount,
    /// Perhaps a band, perhaps the number of a part.
    Unknown,
}

/// One thing on the label.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Item {
    /// A range of frequencies.
    Band(Band),
    /// One frequency in megahertz, as written.
    Frequency(f64, String, Vec<Doubt>),
    /// Two frequencies with a slash: the edges between the return and the forward band.
    Split(f64, f64, String, Vec<Doubt>),
    /// A figure.
    Figure(Figure),
    /// A count of outputs.
    Legs(u8, Vec<Doubt>),
    /// The outputs that figures beside it are for; 0 for a number that cannot be read.
    Outputs(Vec<u8>),
    /// Direct current.
    Power(PowerPass),
    /// A cable's series.
    Series(CableSeries),
    /// Something unreadable.
    Lost(Lost, Doubt),
    /// A word of the trade.
    Word(Term),
    /// The end of a line, or a comma between words.
    Break,
}

/// The items of a label.
pub(super) fn items(text: &str, tokens: &[Token]) -> Vec<Item> {
    let mut grammar = Grammar { text, tokens, items: Vec::new(), loose: None, header: None };
    let mut at = 0;
    while at < tokens.len() {
        let next = grammar
            .power(at)
            .or_else(|| grammar.count(at))
            .or_else(|| grammar.band(at))
            .or_else(|| grammar.frequency(at))
            .or_else(|| grammar.decibels(at))
            .or_else(|| grammar.phrase(at))
            .unwrap_or_else(|| grammar.lone(at));
        // Every rule takes at least one token; the bound makes the loop's end plain.
        at = next.max(at + 1);
    }
    grammar.items
}

/// Reads tokens from left to right. Each rule looks at the tokens from a place, adds its items if it fits, and
/// says which token is next.
pub(super) struct Grammar<'t> {
    pub text: &'t str,
    pub tokens: &'t [Token],
    pub items: Vec<Item>,
    /// The last token that is a number nothing accounts for: a figure right after it may be torn.
    pub loose: Option<usize>,
    /// The unit that stands before its numbers: `MHz 5-1000`.
    pub header: Option<Unit>,
}

impl Grammar<'_> {
    pub fn token(&self, at: usize) -> Option<&Token> {
        self.tokens.get(at)
    }

    pub fn term(&self, at: usize) -> Option<Term> {
        self.token(at).and_then(Token::term)
    }

    pub fn is_sign(&self, at: usize, sign: Sign) -> bool {
        self.token(at).is_some_and(|token| token.is_sign(sign))
    }

    pub fn number(&self, at: usize) -> Option<&super::number::Numeral> {
        match self.token(at).map(|token| &token.what) {
            Some(What::Number(number)) => Some(number),
            _ => None,
        }
    }

    pub fn unit(&self, at: usize) -> Option<Spelling> {
        match self.token(at).map(|token| &token.what) {
            Some(What::Unit(spelling)) => Some(*spelling),
            _ => None,
        }
    }

    pub fn is_letters(&self, at: usize) -> bool {
        self.token(at).is_some_and(|token| token.what == What::Letters)
    }

    pub fn spaced(&self, at: usize) -> bool {
        self.token(at).is_some_and(|token| token.spaced)
    }

    /// A small count, in digits or as a word.
    pub fn small_count(&self, at: usize) -> Option<u8> {
        match self.term(at) {
            Some(Term::Count(count)) => Some(count),
            _ => self.number(at).filter(|number| number.is_whole()).and_then(super::number::Numeral::count),
        }
    }

    /// A dash that reads as a minus: a blank before it and none after.
    pub fn is_minus(&self, at: usize) -> bool {
        self.is_sign(at, Sign::Dash) && self.spaced(at) && !self.spaced(at + 1)
    }

    /// The text of the tokens from `from` up to but not including `to`, blanks made single.
    pub fn written(&self, from: usize, to: usize) -> String {
        let start = self.token(from).map_or(0, |token| token.start);
        let end = self.token(to.saturating_sub(1)).map_or(start, |token| token.end);
        let words: Vec<&str> = self.text.get(start..end).unwrap_or_default().split_whitespace().collect();
        words.join(" ")
    }

    /// Doubts about letters in numbers and misspelled units among the tokens from `from` up to `to`.
    pub fn spelling_doubts(&self, from: usize, to: usize) -> Vec<Doubt> {
        let mut doubts = Vec::new();
        for at in from..to {
            match self.token(at).map(|token| &token.what) {
                Some(What::Number(number)) if number.has_letters => doubts.push(Doubt::LettersForDigits {
                    written: self.written(at, at + 1),
                    read: number.plain().to_owned(),
                }),
                Some(What::Unit(spelling)) if spelling.misread => doubts.push(Doubt::UnitMisread {
                    written: self.written(at, at + 1),
                    read: spelling.unit.symbol(),
                }),
                _ => {}
            }
        }
        doubts
    }

    /// Adds that the tokens from `from` up to `to` cannot be read.
    pub fn lose(&mut self, lost: Lost, from: usize, to: usize) -> usize {
        let written = self.written(from, to);
        self.items.push(Item::Lost(lost, Doubt::Unreadable { written }));
        to
    }

    /// The place before `at` of a number that nothing accounts for, with at most a blank or a dot between: the
    /// two may be one number torn apart.
    pub fn torn_from(&self, at: usize) -> Option<usize> {
        if let Some(word) = self.letters_before_dot(at) {
            return Some(word);
        }
        let loose = self.loose?;
        let adjacent = loose + 1 == at || (loose + 2 == at && self.is_sign(loose + 1, Sign::Dot));
        adjacent.then_some(loose)
    }

    /// `IL.5dB`: a loss of a half, or 11.5 with letters for digits.
    fn letters_before_dot(&self, at: usize) -> Option<usize> {
        let word = at.checked_sub(2)?;
        let divided = self.is_sign(at - 1, Sign::Dot) || self.is_sign(at - 1, Sign::Comma);
        let is_glued = !self.spaced(at) && !self.spaced(at - 1);
        let text = self.written(word, word + 1).to_lowercase();
        let is_like_digits = text.len() <= 2 && super::number::looks_like_digits(&text);
        let is_whole = self.number(at).is_some_and(super::number::Numeral::is_whole);
        (divided && is_glued && is_like_digits && is_whole).then_some(word)
    }

    /// As [`torn_from`](Self::torn_from), where the number at `at` is an edge: only if the two together are a
    /// usual edge, since a loss may well stand before a band.
    pub fn edge_torn_from(&self, at: usize) -> Option<usize> {
        let loose = self.torn_from(at)?;
        let (Some(first), Some(second)) = (self.number(loose), self.number(at)) else { return Some(loose) };
        let together: f64 = format!("{}{}", first.plain(), second.plain()).parse().unwrap_or(f64::NAN);
        (loose + 2 == at || super::usual::is_edge(together)).then_some(loose)
    }

    /// Runs of words that mean one thing, and single words.
    fn phrase(&mut self, at: usize) -> Option<usize> {
        let term = self.term(at)?;
        if let Some(next) = self.series(at, term) {
            return Some(next);
        }
        if term == Term::DirectCurrent && self.is_coupler_name(at) {
            self.items.push(Item::Word(Term::Coupler));
            return Some(at + 1);
        }
        let (mut meaning, mut next) = (term, at + 1);
        let joined = self.is_sign(at + 1, Sign::Dash) || self.is_sign(at + 1, Sign::Slash);
        let is_numbered = self.number(at + 3).is_some() && !self.spaced(at + 3);
        if term == Term::Output && joined && self.term(at + 2) == Some(Term::Output) && !is_numbered {
            // "OUT-OUT"; side by side without a sign they only name two ports.
            (meaning, next) = (Term::Isolation, at + 3);
        }
        for (run, of_run) in PHRASES {
            if let Some(end) = self.run_end(at, run) {
                (meaning, next) = (*of_run, end);
                break;
            }
        }
        self.items.push(Item::Word(meaning));
        if term == Term::Unitless && self.number(next).is_some() && self.unit(next + 1).is_none() {
            return Some(self.after_ratio(next));
        }
        if term == Term::Network && self.is_bare_number(next) {
            next += usize::from(self.is_network_version(next));
        }
        Some(next)
    }

    /// One past the last token of a run of words, dashes between them passed over.
    fn run_end(&self, at: usize, run: &[Term]) -> Option<usize> {
        let mut next = at;
        for (place, term) in run.iter().enumerate() {
            if place > 0 && self.is_sign(next, Sign::Dash) {
                next += 1;
            }
            if self.term(next) != Some(*term) {
                return None;
            }
            next += 1;
        }
        Some(next)
    }

    /// `RG-6`, `RG6`, `series 6`, `6 series`.
    fn series(&mut self, at: usize, term: Term) -> Option<usize> {
        let numbered = |place: usize| {
            let number = self.number(place)?;
            (number.is_whole() && !number.has_letters)
                .then(|| number.count())
                .flatten()
                .and_then(|number| CableSeries::numbered(number.into()))
        };
        let (series, next) = match term {
            Term::Series(series) => (series, at + 1),
            Term::SeriesWord => match (numbered(at + 1), at.checked_sub(1).and_then(numbered)) {
                (Some(series), _) => (series, at + 2),
                (None, Some(series)) => (series, at + 1),
                (None, None) => return None,
            },
            Term::Jacket => {
                let place = at + 1 + usize::from(self.is_sign(at + 1, Sign::Dash));
                (numbered(place)?, place + 1)
            }
            _ => return None,
        };
        self.items.push(Item::Series(series));
        Some(next)
    }

    /// Whether a dash at `at` joins a word to what stands before it.
    fn is_word_joined(&self, at: usize) -> bool {
        let is_word = self.token(at + 1).is_some_and(|token| token.what == What::Word && !token.spaced);
        self.is_sign(at, Sign::Dash) && !self.spaced(at) && is_word
    }

    /// A token that no rule takes.
    fn lone(&mut self, at: usize) -> usize {
        let Some(token) = self.token(at) else { return at + 1 };
        match token.what.clone() {
            What::Number(_) => self.loose = Some(at),
            What::Unit(spelling) if spelling.unit.is_frequency() || spelling.unit == Unit::Decibel => {
                self.header = Some(spelling.unit);
            }
            // "ISDB-T" is a kind of television, not a figure.
            What::Letters if self.unit(at + 1).is_some() && self.is_word_joined(at + 2) => return at + 3,
            What::Letters if self.unit(at + 1).is_some_and(|spelling| lost_unit(spelling).is_some()) => {
                let lost = self.unit(at + 1).and_then(lost_unit).unwrap_or(Lost::Decibels);
                return self.lose(lost, at, at + 2);
            }
            What::Letters => {
                let upper = self.range_sign(at + 1).filter(|_| !self.is_minus(at + 1));
                let edge = upper.and_then(|upper| self.number(upper)).map(super::number::Numeral::value);
                let has_header = self.header.is_some_and(Unit::is_frequency);
                let is_last = upper.is_some_and(|upper| self.unit(upper + 1).is_none());
                if let Some(upper) = upper.filter(|upper| self.is_letters(*upper)) {
                    if has_header {
                        return self.lose(Lost::Frequency, at, upper + 1);
                    }
                    if self.is_sign(upper + 1, Sign::Slash) && self.number(upper + 2).is_some() {
                        return self.lose(Lost::Unknown, at, upper + 1);
                    }
                }
                let is_lost = is_last && edge.is_some_and(|edge| has_header || super::usual::is_edge(edge));
                if let Some(upper) = upper.filter(|_| is_lost) {
                    let lost = if has_header { Lost::Frequency } else { Lost::Unknown };
                    return self.lose(lost, at, upper + 1);
                }
            }
            What::Code(Some(spelling)) => {
                if let Some(lost) = lost_unit(spelling) {
                    return self.lose(lost, at, at + 1);
                }
            }
            What::Code(None) => {
                if let Some(lost) = self.unit(at + 1).and_then(lost_unit) {
                    return self.lose(lost, at, at + 2);
                }
            }
            What::Sign(Sign::Break | Sign::Comma) => {
                self.items.push(Item::Break);
                self.header = self.header.filter(|_| token_is_line(self.token(at)));
            }
            What::Sign(Sign::Slash) if self.parts_members(at) => self.items.push(Item::Break),
            What::Sign(Sign::Other) if self.written(at, at + 1) == "±" => {
                self.items.push(Item::Word(Term::Unmeasured));
            }
            _ => {}
        }
        at + 1
    }
}

fn token_is_line(token: Option<&Token>) -> bool {
    token.is_some_and(|token| token.is_sign(Sign::Break))
}

/// What is lost with an unreadable number before this unit.
fn lost_unit(spelling: Spelling) -> Option<Lost> {
    match spelling.unit {
        Unit::Decibel => Some(Lost::Decibels),
        Unit::Megahertz | Unit::Gigahertz | Unit::Hertz => Some(Lost::Frequency),
        Unit::ShortMega | Unit::ShortGiga | Unit::Other => None,
    }
}

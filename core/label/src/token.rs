//! Cuts a label's text into words, numbers, units and signs, and sets part numbers apart.

use super::normalise::Mark;
use super::number::digit_like;
use super::unit::{self, Unit};
use super::vocabulary::{self, Term};
use super::word::{Sign, What, pieces};

/// One word, number, unit or sign.
#[derive(Debug, Clone)]
pub(super) struct Token {
    /// What it is.
    pub what: What,
    /// First byte in the text.
    pub start: usize,
    /// One past the last byte in the text.
    pub end: usize,
    /// Whether a blank stands before it.
    pub spaced: bool,
}

impl Token {
    /// Whether it is this sign.
    pub fn is_sign(&self, sign: Sign) -> bool {
        self.what == What::Sign(sign)
    }

    /// The word of the trade that it is.
    pub fn term(&self) -> Option<Term> {
        match self.what {
            What::Term(term) => Some(term),
            _ => None,
        }
    }
}

/// The tokens of a text.
pub(super) fn tokens(marks: &[Mark]) -> Vec<Token> {
    let mut cutter = Cutter { marks, tokens: Vec::new(), spaced: false };
    let mut at = 0;
    while at < marks.len() {
        at = cutter.cut(at);
    }
    codes_set_apart(&cutter.tokens)
}

struct Cutter<'m> {
    marks: &'m [Mark],
    tokens: Vec<Token>,
    spaced: bool,
}

impl Cutter<'_> {
    fn ch(&self, at: usize) -> char {
        self.marks.get(at).map_or(' ', |mark| mark.ch)
    }

    /// Cuts one token (or passes over a blank) and says where the next begins.
    fn cut(&mut self, at: usize) -> usize {
        let ch = self.ch(at);
        if ch == ' ' {
            self.spaced = true;
            return at + 1;
        }
        if is_letter(ch) {
            return self.cut_abbreviation(at).unwrap_or_else(|| self.cut_word(at));
        }
        let follows_blank = self.spaced || self.tokens.last().is_none_or(|token| token.is_sign(Sign::Dash));
        if ch == '.' && follows_blank && self.ch(at + 1).is_ascii_digit() {
            return self.cut_below_one(at);
        }
        let sign = sign(ch);
        let mut end = at + 1;
        while self.ch(end) == ch && matches!(sign, Sign::Dash | Sign::Dot | Sign::Range) {
            end += 1;
        }
        let sign = if sign == Sign::Dot && end > at + 1 { Sign::Range } else { sign };
        self.push(What::Sign(sign), at, end);
        end
    }

    fn push(&mut self, what: What, from: usize, to: usize) {
        let start = self.marks.get(from).map_or(0, |mark| mark.start);
        let end = self.marks.get(to.saturating_sub(1)).map_or(start, |mark| mark.end);
        self.tokens.push(Token { what, start, end, spaced: self.spaced });
        self.spaced = false;
    }

    /// `r.l.`, `p.o.e.`, `s/n`: single letters with dots or a slash between.
    fn cut_abbreviation(&mut self, at: usize) -> Option<usize> {
        let mut letters = String::new();
        let (mut next, mut dot) = (at, ' ');
        while self.ch(next).is_ascii_lowercase() && !is_letter(self.ch(next + 1)) {
            letters.push(self.ch(next));
            next += 1;
            if !matches!(self.ch(next), '.' | '/') || (dot != ' ' && dot != self.ch(next)) {
                break;
            }
            dot = self.ch(next);
            if self.ch(next + 1).is_ascii_lowercase() {
                next += 1;
            } else if dot == '.' && letters.len() > 1 {
                next += 1;
                break;
            } else {
                break;
            }
        }
        let term = match (letters.as_str(), dot) {
            ("sn" | "pn" | "mn", '/') => Term::CodeAhead,
            ("wo", '/') => Term::No,
            (letters, '.') if letters.len() > 1 => vocabulary::term(letters)?,
            _ => return None,
        };
        self.push(What::Term(term), at, next);
        Some(next)
    }

    fn cut_word(&mut self, at: usize) -> usize {
        let mut end = at + 1;
        while is_letter(self.ch(end)) || self.joins_digits(at, end) {
            end += 1;
        }
        let word: String = (at..end).map(|place| self.ch(place)).collect();
        if self.cling_to_number(&word, at, end) {
            return end;
        }
        let mut from = at;
        for (what, length) in pieces(&word) {
            self.push(what, from, from + length);
            from += length;
        }
        end
    }

    /// Whether the dot or comma at `at` stands inside the number that the word from `from` ends in.
    fn joins_digits(&self, from: usize, at: usize) -> bool {
        let next = self.ch(at + 1);
        if !matches!(self.ch(at), '.' | ',' | '\'') || !(next.is_ascii_digit() || digit_like(next).is_some())
        {
            return false;
        }
        let run: String = (from..at)
            .rev()
            .map(|place| self.ch(place))
            .take_while(|&ch| ch.is_ascii_digit() || digit_like(ch).is_some())
            .collect();
        let starts_word = (from..at).rev().nth(run.len()).is_none_or(|place| !self.ch(place).is_alphabetic());
        if run.chars().any(|ch| ch.is_ascii_digit()) {
            return true;
        }
        let run: String = run.chars().rev().collect();
        starts_word
            && (1..=2).contains(&run.len())
            && next.is_ascii_digit()
            && vocabulary::term(&run).is_none()
    }

    /// A unit of one letter after a number and a blank, or the second half of a unit torn apart (`M Hz`).
    fn cling_to_number(&mut self, word: &str, at: usize, end: usize) -> bool {
        let Some(last) = self.tokens.last_mut() else { return false };
        let torn = match (&last.what, word) {
            (What::Unit(spelling), "hz") if spelling.unit == Unit::ShortMega => unit::spelled("mhz"),
            (What::Unit(spelling), "hz") if spelling.unit == Unit::ShortGiga => unit::spelled("ghz"),
            _ => None,
        };
        if let Some(spelling) = torn {
            last.what = What::Unit(spelling);
            last.end = self.marks.get(end - 1).map_or(last.end, |mark| mark.end);
            self.spaced = false;
            return true;
        }
        let clinging = unit::spelled(word).filter(|spelling| spelling.clings);
        match (&last.what, clinging) {
            (What::Number(_), Some(spelling)) => {
                self.push(What::Unit(spelling), at, end);
                true
            }
            _ => false,
        }
    }

    /// `.5`: a number without its nought.
    fn cut_below_one(&mut self, at: usize) -> usize {
        let spaced = self.spaced;
        let place = self.tokens.len();
        let end = self.cut_word(at + 1);
        let start = self.marks.get(at).map_or(0, |mark| mark.start);
        if let Some(token) = self.tokens.get_mut(place) {
            token.start = start;
            token.spaced = spaced;
            token.what = match &token.what {
                What::Number(number) => number.below_one().map_or(What::Code(None), What::Number),
                _ => What::Code(None),
            };
        }
        end
    }
}

/// Whether a character belongs to words and numbers. Letters of scripts that are written without blanks do
/// not: they part what stands around them; but any sort of digit does.
fn is_letter(ch: char) -> bool {
    ch.is_ascii_alphanumeric()
        || matches!(ch, '\u{C0}'..='\u{24F}' | '\u{300}'..='\u{36F}' | '\u{400}'..='\u{4FF}' | '°')
            && !matches!(ch, '\u{D7}' | '\u{F7}')
        || ch.is_numeric()
}

fn sign(ch: char) -> Sign {
    match ch {
        '-' => Sign::Dash,
        '~' => Sign::Range,
        '/' | '&' => Sign::Slash,
        ',' => Sign::Comma,
        '.' => Sign::Dot,
        ':' | '=' => Sign::Colon,
        '+' => Sign::Plus,
        '<' | '>' => Sign::Bound,
        '@' => Sign::At,
        '\n' | ';' | '|' | '\u{2022}' => Sign::Break,
        '_' | '#' | '\'' | '\\' => Sign::Joint,
        _ => Sign::Other,
    }
}

/// Makes one code of each run without blanks in which digits are joined to a word that means nothing here, and
/// of what a word such as "serial" announces.
fn codes_set_apart(tokens: &[Token]) -> Vec<Token> {
    let mut kept: Vec<Token> = Vec::with_capacity(tokens.len());
    let mut announced = false;
    let mut rest = tokens;
    while let Some(first) = rest.first() {
        let length = 1 + rest.iter().skip(1).take_while(|token| joins_on(token)).count();
        let length = if joins(first) { length } else { 1 };
        let (run, after) = rest.split_at(length.min(rest.len()));
        rest = after;
        let is_announcer = run.iter().any(|token| token.term() == Some(Term::CodeAhead));
        if is_code(run) || (announced && is_announced(run)) {
            let unit = if announced { None } else { code_unit(run) };
            let end = run.last().map_or(first.end, |token| token.end);
            kept.push(Token { what: What::Code(unit), start: first.start, end, spaced: first.spaced });
        } else {
            kept.extend_from_slice(run);
        }
        let keeps_waiting =
            run.iter().all(|token| matches!(token.what, What::Sign(_)) || token.term() == Some(Term::No));
        announced = is_announcer || (announced && keeps_waiting);
    }
    kept
}

fn joins(token: &Token) -> bool {
    !matches!(
        token.what,
        What::Sign(
            Sign::Slash
                | Sign::Comma
                | Sign::Colon
                | Sign::Range
                | Sign::Bound
                | Sign::At
                | Sign::Break
                | Sign::Other
        )
    )
}

fn joins_on(token: &Token) -> bool {
    !token.spaced && joins(token)
}

fn is_code(run: &[Token]) -> bool {
    let has = |test: fn(&What) -> bool| run.iter().any(|token| test(&token.what));
    has(|what| matches!(what, What::Code(_)))
        || has(|what| matches!(what, What::Number(_)))
            && has(|what| matches!(what, What::Word | What::Sign(Sign::Joint)))
}

/// After "serial" and the like: digits without a unit and without a word such as "way".
fn is_announced(run: &[Token]) -> bool {
    run.iter().any(|token| matches!(token.what, What::Number(_)))
        && !run.iter().any(|token| match token.what {
            What::Unit(spelling) => !spelling.clings,
            What::Term(term) => term != Term::CodeAhead,
            _ => false,
        })
}

fn code_unit(run: &[Token]) -> Option<unit::Spelling> {
    run.iter().rev().find_map(|token| match token.what {
        What::Code(unit) => unit,
        What::Unit(spelling) if !spelling.clings => Some(spelling),
        _ => None,
    })
}

//! The units of the trade, by what they measure.

use super::Fault;
use super::number::is_dash;
use crate::quantity::{DBMV_OF_ZERO_DBM_75_OHM, DBUV_OF_ZERO_DBMV, METRES_PER_FOOT};

/// What a figure measures; it is held in the unit named here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// A length, metres.
    Length,
    /// A ratio of powers, dB.
    Ratio,
    /// A level across 75 ohm, dBmV.
    Level,
    /// A power, dBm; of a level, what it is into 75 ohm.
    Power,
    /// A frequency, MHz.
    Frequency,
    /// A rate, Mb/s.
    Rate,
    /// A time, ms.
    Time,
    /// A share, percent.
    Share,
    /// A number of things.
    Count,
}

/// A unit: so many of its measure's own for one of it, and so many more at zero.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// How it is known on a screen.
    pub key: &'static str,
    /// How people write it; capital letters make no difference.
    names: &'static [&'static str],
    factor: f64,
    zero: f64,
}

const fn unit(key: &'static str, names: &'static [&'static str], factor: f64) -> Unit {
    Unit { key, names, factor, zero: 0.0 }
}

/// A level whose zero lies elsewhere.
const fn level(key: &'static str, names: &'static [&'static str], zero: f64) -> Unit {
    Unit { key, names, factor: 1.0, zero }
}

const DBMV: &[&str] = &["dbmv"];
/// The micro sign and the Greek letter look alike.
const DBUV: &[&str] = &["dbuv", "db\u{b5}v", "db\u{3bc}v"];
const DBM: &[&str] = &["dbm"];

static LENGTHS: [Unit; 5] = [
    unit("m", &["m", "metre", "metres", "meter", "meters"], 1.0),
    unit("ft", &["ft", "foot", "feet", "'", "\u{2032}", "\u{2019}"], METRES_PER_FOOT),
    unit("in", &["in", "inch", "inches", "\"", "\u{2033}", "\u{201d}"], METRES_PER_FOOT / 12.0),
    unit("cm", &["cm"], 0.01),
    unit("mm", &["mm"], 0.001),
];
static RATIOS: [Unit; 1] = [unit("db", &["db"], 1.0)];
static LEVELS: [Unit; 3] = [
    level("dbmv", DBMV, 0.0),
    level("dbuv", DBUV, -DBUV_OF_ZERO_DBMV),
    level("dbm", DBM, DBMV_OF_ZERO_DBM_75_OHM),
];
static POWERS: [Unit; 3] = [
    level("dbm", DBM, 0.0),
    level("dbmv", DBMV, -DBMV_OF_ZERO_DBM_75_OHM),
    level("dbuv", DBUV, -DBUV_OF_ZERO_DBMV - DBMV_OF_ZERO_DBM_75_OHM),
];
static FREQUENCIES: [Unit; 3] =
    [unit("mhz", &["mhz"], 1.0), unit("ghz", &["ghz"], 1000.0), unit("khz", &["khz"], 0.001)];
static RATES: [Unit; 3] = [
    unit("mbps", &["mb/s", "mbit/s", "mbps", "m"], 1.0),
    unit("gbps", &["gb/s", "gbit/s", "gbps", "gig", "g"], 1000.0),
    unit("kbps", &["kb/s", "kbit/s", "kbps"], 0.001),
];
static TIMES: [Unit; 2] = [unit("ms", &["ms"], 1.0), unit("s", &["s"], 1000.0)];
static SHARES: [Unit; 1] = [unit("percent", &["%", "percent"], 1.0)];
static COUNTS: [Unit; 1] = [unit("count", &[], 1.0)];

impl Unit {
    /// So many of it, in the measure's own unit.
    pub fn own(&self, value: f64) -> f64 {
        value * self.factor + self.zero
    }

    /// A figure in the measure's own unit, in this one.
    pub fn of_own(&self, own: f64) -> f64 {
        (own - self.zero) / self.factor
    }

    /// Whether its number may stand without it behind a greater unit: `12 ft 6`.
    pub(super) fn may_be_bare(&self) -> bool {
        self.key == "in"
    }
}

impl Measure {
    /// Every measure.
    pub const ALL: [Self; 9] = [
        Self::Length,
        Self::Ratio,
        Self::Level,
        Self::Power,
        Self::Frequency,
        Self::Rate,
        Self::Time,
        Self::Share,
        Self::Count,
    ];

    /// Its units, its own first.
    pub fn units(self) -> &'static [Unit] {
        match self {
            Self::Length => &LENGTHS,
            Self::Ratio => &RATIOS,
            Self::Level => &LEVELS,
            Self::Power => &POWERS,
            Self::Frequency => &FREQUENCIES,
            Self::Rate => &RATES,
            Self::Time => &TIMES,
            Self::Share => &SHARES,
            Self::Count => &COUNTS,
        }
    }

    /// The unit of a key.
    pub fn unit(self, key: &str) -> Option<&'static Unit> {
        self.units().iter().find(|unit| unit.key == key)
    }

    /// The unit whose figure may follow one of `unit`, as inches follow feet.
    pub(super) fn smaller(self, unit: &Unit) -> Option<&'static Unit> {
        match (self, unit.key) {
            (Self::Length, "ft") => self.unit("in"),
            (Self::Length, "m") => self.unit("cm"),
            _ => None,
        }
    }

    /// The unit that a text begins with, as a whole word, and what follows; none where none stands there.
    pub(super) fn leading_unit(self, text: &str) -> Result<(Option<&'static Unit>, &str), Fault> {
        let start = text.trim_start();
        let word = match start.chars().next() {
            Some(sign) if is_mark(sign) => start.get(..sign.len_utf8()),
            _ => start.get(..start.find(ends_word).unwrap_or(start.len())),
        };
        let word = word.unwrap_or_default();
        let rest = start.get(word.len()..).unwrap_or_default();
        let word = word.trim_end_matches('.');
        if self == Self::Rate && counts_bytes(word) {
            return Err(Fault::Bytes);
        }
        let is_named = |unit: &&Unit| unit.names.iter().any(|name| *name == word.to_lowercase());
        match self.units().iter().find(is_named) {
            Some(unit) => Ok((Some(unit), rest)),
            None => Ok((None, text)),
        }
    }
}

/// Marks of feet and inches, which are words of their own.
fn is_mark(sign: char) -> bool {
    matches!(sign, '\'' | '"' | '\u{2032}' | '\u{2033}' | '\u{2019}' | '\u{201d}' | '%')
}

fn ends_word(sign: char) -> bool {
    sign.is_whitespace() || sign.is_ascii_digit() || sign == ',' || is_dash(sign) || is_mark(sign)
}

/// A capital B means bytes, but where the word says bits.
fn counts_bytes(word: &str) -> bool {
    word.contains('B') && !word.to_lowercase().contains("bit")
}

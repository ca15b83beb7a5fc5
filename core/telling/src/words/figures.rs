//! How numbers are written: as many digits as they deserve, with the marks of the reader's locale.

use super::Marks;

/// Which unit of length comes first. The other always stands beside it in brackets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum LengthUnit {
    /// Metres first.
    #[default]
    Metres,
    /// Feet first.
    Feet,
}

/// The writing of numbers for one reader. Units and ranges stand in the messages `written-...`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Figures {
    /// Which unit of length comes first.
    pub length_unit: LengthUnit,
    /// The signs with which the locale writes numbers; a [`Language`](super::Language) puts its own here.
    pub marks: Marks,
}

impl Figures {
    /// Figures for a reader who has one unit of length first.
    pub fn with_first(length_unit: LengthUnit) -> Self {
        Self { length_unit, ..Self::default() }
    }

    /// A number of things; like all numbers but rates, its thousands are not parted.
    pub fn count(self, count: u64) -> String {
        self.marks.written(&count.to_string(), false)
    }

    /// A number as it would be typed: at most two decimals, its thousands not parted.
    pub fn as_typed(self, value: f64) -> String {
        let rounded = (value * 100.0).round() / 100.0;
        self.plain(rounded)
    }

    /// A length in either unit: whole from 10 up, tenths below.
    pub(super) fn short(self, value: f64) -> String {
        if value < 10.0 { self.tenths(value) } else { self.whole(value) }
    }

    /// A loss or gain: whole decibels from 10 up, tenths below; `None` beyond all that is told apart.
    pub(super) fn loss(self, db: f64) -> Option<String> {
        match db {
            db if db.is_infinite() => None,
            db if db.abs() >= 10.0 => Some(self.whole(db)),
            db => Some(self.tenths(db)),
        }
    }

    /// A level with its sign: `+3`, with a true minus where the locale has none of its own.
    pub(super) fn level(self, dbmv: f64) -> String {
        let text = self.tenths(dbmv).replace('-', "\u{2212}");
        if dbmv >= 0.05 { format!("{}{text}", self.marks.plus()) } else { text }
    }

    /// A rate as it is shown, its thousands parted.
    pub(super) fn rate(self, mbps: f64) -> String {
        self.marks.written(&format!("{:.0}", rounded_rate(mbps)), true)
    }

    /// A rate that somebody read or wrote, as it is: tenths where there are any, its thousands parted.
    pub(super) fn rate_as_read(self, mbps: f64) -> String {
        self.marks.written(&format!("{}", (mbps * 10.0).round() / 10.0 + 0.0), true)
    }

    /// A number without decimals.
    pub(super) fn whole(self, value: f64) -> String {
        self.marks.written(&format!("{value:.0}"), false)
    }

    /// A number with one decimal, or none if it would be zero.
    pub(super) fn tenths(self, value: f64) -> String {
        self.plain((value * 10.0).round() / 10.0)
    }

    fn plain(self, value: f64) -> String {
        // Adding zero turns a negative zero into a plain one.
        self.marks.written(&format!("{}", value + 0.0), false)
    }
}

/// The number to show for a rate, Mb/s.
pub fn rounded_rate(mbps: f64) -> f64 {
    let step = match mbps {
        m if m >= 1000.0 => 50.0,
        m if m >= 200.0 => 10.0,
        m if m >= 20.0 => 5.0,
        _ => 1.0,
    };
    (mbps / step).round() * step
}

/// The difference to show between two rates, Mb/s: of the figures as they are shown, or the columns would not add up.
/// Positive where the later one is higher, 0 where both read alike.
pub fn shown_gain(before_mbps: f64, after_mbps: f64) -> f64 {
    rounded_rate(after_mbps) - rounded_rate(before_mbps)
}

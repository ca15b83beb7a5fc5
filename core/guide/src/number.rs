//! Numbers as people type them, with their unit: feet and inches or metres, dB, dBmV, MHz, Mb/s. They come here with
//! the marks of English: the guide puts them in place of the reader's own, and [`ScreenBuilder`](crate::view::ScreenBuilder) puts
//! those back.

use coax::quantity::METRES_PER_FOOT;
use phrase::{Arg, Phrase};
use telling::words::LengthUnit;

use crate::screen::NumberKind;

/// What a number measures. It is held in the unit named here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Quantity {
    /// A length, metres.
    Length,
    /// A loss or gain, dB.
    Loss,
    /// A level, dBmV.
    Level,
    /// A power, dBm.
    Power,
    /// A frequency, MHz.
    Frequency,
    /// A rate, Mb/s.
    Rate,
    /// A time, ms.
    Time,
    /// A share, percent.
    Share,
    /// A modulation error ratio, dB.
    ErrorRatio,
    /// A number of things.
    Count,
}

impl Quantity {
    /// The units that it may be typed in, the reader's own first.
    pub(crate) fn units(self, length: LengthUnit) -> &'static [&'static str] {
        match (self, length) {
            (Self::Length, LengthUnit::Metres) => &["m", "ft"],
            (Self::Length, LengthUnit::Feet) => &["ft", "m"],
            (Self::Loss | Self::ErrorRatio, _) => &["db"],
            (Self::Level, _) => &["dbmv"],
            (Self::Power, _) => &["dbm"],
            (Self::Frequency, _) => &["mhz"],
            (Self::Rate, _) => &["mbps", "gbps"],
            (Self::Time, _) => &["ms"],
            (Self::Share, _) => &["percent"],
            (Self::Count, _) => &["count"],
        }
    }

    /// What numbers may be typed.
    pub(crate) const fn kind(self) -> NumberKind {
        match self {
            Self::Count => NumberKind::Whole,
            Self::Level | Self::Power => NumberKind::Signed,
            Self::Length
            | Self::Loss
            | Self::Frequency
            | Self::Rate
            | Self::Time
            | Self::Share
            | Self::ErrorRatio => NumberKind::Decimal,
        }
    }

    /// Whether its unit may be typed after it: a pad of digits has no letters. Where there is but one unit, none has to be
    /// told.
    pub(crate) fn takes_letters(self, length: LengthUnit) -> bool {
        self.units(length).len() > 1
    }

    /// The least and the greatest that is taken, in its own unit.
    const fn bounds(self) -> (f64, f64) {
        match self {
            Self::Length => (0.0, 500.0),
            Self::Loss => (0.0, 120.0),
            Self::Level => (-80.0, 80.0),
            Self::Power => (-120.0, 30.0),
            Self::Frequency => (1.0, 3000.0),
            Self::Rate => (0.0, 100_000.0),
            Self::Time => (0.0, 60_000.0),
            Self::Share => (0.0, 100.0),
            Self::ErrorRatio => (0.0, 60.0),
            Self::Count => (0.0, 64.0),
        }
    }
}

/// Reads a number that was typed with the unit `unit` chosen beside it; a unit typed after it wins.
///
/// # Errors
/// What is wrong, with an example of what is taken.
pub(crate) fn read(typed: &str, unit: &str, quantity: Quantity) -> Result<f64, Phrase> {
    let value = if quantity == Quantity::Length { length(typed, unit) } else { plain(typed, unit) };
    let value = value
        .filter(|value| value.is_finite())
        .ok_or_else(|| Phrase::new("number-not-read").with("typed", Arg::Typed(typed.trim().into())))?;
    let (least, most) = quantity.bounds();
    if value < least || value > most {
        let phrase = Phrase::new("number-out-of-range").with("least", Arg::Number(least));
        return Err(phrase.with("most", Arg::Number(most)));
    }
    if quantity == Quantity::Count && value.fract() != 0.0 {
        return Err(Phrase::new("number-not-whole"));
    }
    Ok(value)
}

/// A number as it would be typed again.
pub(crate) fn write(value: f64, unit: &str) -> String {
    short(match unit {
        "ft" => value / METRES_PER_FOOT,
        "gbps" => value / 1000.0,
        _ => value,
    })
}

fn short(value: f64) -> String {
    let rounded = (value * 100.0).round() / 100.0;
    format!("{}", rounded + 0.0)
}

fn plain(typed: &str, unit: &str) -> Option<f64> {
    let text = typed.trim().to_lowercase();
    let end = text.find(|sign: char| !(sign.is_ascii_digit() || "+-\u{2212}.,\u{a0} ".contains(sign)));
    let (digits, written) = end.map_or((text.as_str(), ""), |end| text.split_at(end));
    let value = decimal(digits)?;
    let factor = match written.trim() {
        "" => f64::from(if unit == "gbps" { 1000.0_f32 } else { 1.0 }),
        "g" | "gb/s" | "gbps" | "gbit/s" | "gig" | "ghz" => 1000.0,
        "m" | "mb/s" | "mbps" | "mbit/s" | "mhz" | "db" | "dbmv" | "dbm" | "ms" | "%" => 1.0,
        _ => return None,
    };
    Some(value * factor)
}

/// `12`, `12.5 m`, `40 ft`, `12'6"`, `12 ft 6 in`.
fn length(typed: &str, unit: &str) -> Option<f64> {
    let text = typed
        .trim()
        .to_lowercase()
        .replace(['\u{2032}', '\u{2019}'], "'")
        .replace(['\u{2033}', '\u{201d}'], "\"");
    let mut rest = text.as_str();
    let mut metres = 0.0;
    let mut last: Option<&str> = None;
    while !rest.trim_start().is_empty() {
        rest = rest.trim_start();
        let end =
            rest.find(|sign: char| !(sign.is_ascii_digit() || ".,".contains(sign))).unwrap_or(rest.len());
        let (digits, after) = rest.split_at(end);
        let value = decimal(digits)?;
        let after = after.trim_start();
        let end = after.find(|sign: char| sign.is_ascii_digit()).unwrap_or(after.len());
        let (written, after) = after.split_at(end);
        let this = match written.trim().trim_end_matches('.') {
            "" if last == Some("ft") => "in",
            "" => unit,
            "m" | "metre" | "metres" | "meter" | "meters" => "m",
            "ft" | "foot" | "feet" | "'" => "ft",
            "in" | "inch" | "inches" | "\"" => "in",
            "cm" => "cm",
            _ => return None,
        };
        metres += value
            * match this {
                "m" => 1.0,
                "ft" => METRES_PER_FOOT,
                "in" => METRES_PER_FOOT / 12.0,
                "cm" => 0.01,
                _ => return None,
            };
        last = Some(this);
        rest = after;
    }
    last.map(|_| metres)
}

/// A decimal number with a point or a comma; a comma before exactly three digits at the end parts thousands.
fn decimal(digits: &str) -> Option<f64> {
    let text: String = digits
        .chars()
        .filter(|sign| !matches!(sign, ' ' | '\u{a0}'))
        .collect::<String>()
        .replace('\u{2212}', "-");
    let commas = text.matches(',').count();
    let text = match text.split_once(',') {
        None => text,
        Some((whole, after)) if commas == 1 && !text.contains('.') && (after.len() != 3 || whole == "0") => {
            format!("{whole}.{after}")
        }
        Some(_) => {
            let mut groups = text.split('.').next().unwrap_or_default().split(',').skip(1);
            if !groups.all(|group| group.len() == 3) {
                return None;
            }
            text.replace(',', "")
        }
    };
    text.parse().ok()
}

#[cfg(test)]
#[expect(
    clippy::float_cmp,
    reason = "figures that are exact in decimal notation, rounded where they are not in binary"
)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_taken_that_cannot_be() {
        let named = [
            (Quantity::Length, "metres"),
            (Quantity::Loss, "tap_db"),
            (Quantity::Level, "dbmv"),
            (Quantity::Power, "sent_dbm"),
            (Quantity::Frequency, "top_mhz"),
            (Quantity::Rate, "down_mbps"),
            (Quantity::Time, "ms"),
            (Quantity::Share, "percent"),
            (Quantity::ErrorRatio, "db"),
            (Quantity::Count, "legs"),
        ];
        for (quantity, name) in named {
            let (least, most) = quantity.bounds();
            for figure in [least, most] {
                assert!(house::record::possible::can_be(name, &figure.into()), "{quantity:?} {figure}");
            }
        }
    }

    fn metres(typed: &str, unit: &str) -> f64 {
        (read(typed, unit, Quantity::Length).unwrap() * 1e6).round() / 1e6
    }

    #[test]
    fn lengths_are_taken_either_way() {
        // 0.3048 m a foot and 12 inches a foot, by definition.
        assert_eq!(metres("12.5", "m"), 12.5);
        assert_eq!(metres("12,5", "m"), 12.5);
        assert_eq!(metres("10", "ft"), 3.048);
        assert_eq!(metres("10 ft", "m"), 3.048);
        assert_eq!(metres("12'6\"", "m"), 3.81);
        assert_eq!(metres("12 ft 6 in", "m"), 3.81);
        assert_eq!(metres("12 ft 6", "ft"), 3.81);
        assert_eq!(metres("250 cm", "m"), 2.5);
    }

    #[test]
    fn rates_and_levels_too() {
        assert_eq!(read("1,000", "mbps", Quantity::Rate).unwrap(), 1000.0);
        assert_eq!(read("2.5", "gbps", Quantity::Rate).unwrap(), 2500.0);
        assert_eq!(read("1 Gb/s", "mbps", Quantity::Rate).unwrap(), 1000.0);
        assert_eq!(read("\u{2212}6", "dbmv", Quantity::Level).unwrap(), -6.0);
    }

    #[test]
    fn a_keyboard_has_a_minus_where_less_than_nothing_is_taken_and_only_there() {
        let all = [
            Quantity::Length,
            Quantity::Loss,
            Quantity::Level,
            Quantity::Power,
            Quantity::Frequency,
            Quantity::Rate,
            Quantity::Time,
            Quantity::Share,
            Quantity::ErrorRatio,
            Quantity::Count,
        ];
        for quantity in all {
            let unit = quantity.units(LengthUnit::Metres).first().copied().unwrap();
            let is_signed = quantity.kind() == NumberKind::Signed;
            assert_eq!(read("-1", unit, quantity).is_ok(), is_signed, "{quantity:?}");
            let is_whole = quantity.kind() == NumberKind::Whole;
            assert_eq!(read("1.5", unit, quantity).is_err(), is_whole, "{quantity:?}");
        }
    }

    #[test]
    fn a_keyboard_has_letters_where_a_number_may_be_told_by_its_unit_alone() {
        let takes = |quantity: Quantity| quantity.takes_letters(LengthUnit::Metres);
        // The same digits are another length and another rate by the unit that is typed after them.
        for (quantity, typed) in [(Quantity::Length, "10 ft"), (Quantity::Rate, "10 Gb/s")] {
            let unit = quantity.units(LengthUnit::Metres)[0];
            assert_ne!(read(typed, unit, quantity), read("10", unit, quantity));
            assert!(takes(quantity) && quantity.takes_letters(LengthUnit::Feet), "{quantity:?}");
        }
        // Not so a level, a count or a share.
        for (quantity, typed, unit) in [
            (Quantity::Level, "10 dBmV", "dbmv"),
            (Quantity::Count, "10", "count"),
            (Quantity::Share, "10 %", "percent"),
        ] {
            assert_eq!(read(typed, unit, quantity), read("10", unit, quantity));
            assert!(!takes(quantity), "{quantity:?}");
        }
    }

    #[test]
    fn what_is_no_number_is_refused_with_an_example() {
        for typed in ["", "about ten", "1.2.3", "--4", "12 yards", "1e9", "900", "NaN", "1,00,0"] {
            assert!(read(typed, "m", Quantity::Length).is_err(), "{typed}");
        }
        assert!(read("2.5", "count", Quantity::Count).is_err());
    }
}

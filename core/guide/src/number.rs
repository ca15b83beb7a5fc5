//! Numbers as people type them, in the units that a screen offers and within what can be; read by [`coax::typed`]. They come
//! here with the marks of English: the guide puts them in place of the reader's own, and
//! [`ScreenBuilder`](crate::view::ScreenBuilder) puts those back.

use coax::typed::{self, Fault, Measure};
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
            (Self::Level, _) => &["dbmv", "dbuv", "dbm"],
            (Self::Power, _) => &["dbm", "dbmv", "dbuv"],
            (Self::Frequency, _) => &["mhz", "ghz"],
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

    /// Whether letters are wanted with it: a pad of digits has none. Feet and inches are two figures in one text, and a
    /// rate comes with its unit from where it is read; what a meter shows is typed in digits alone, many times over, and
    /// its unit is chosen beside it.
    pub(crate) fn takes_letters(self) -> bool {
        matches!(self, Self::Length | Self::Rate)
    }

    /// What it is to whoever reads figures.
    const fn measure(self) -> Measure {
        match self {
            Self::Length => Measure::Length,
            Self::Loss | Self::ErrorRatio => Measure::Ratio,
            Self::Level => Measure::Level,
            Self::Power => Measure::Power,
            Self::Frequency => Measure::Frequency,
            Self::Rate => Measure::Rate,
            Self::Time => Measure::Time,
            Self::Share => Measure::Share,
            Self::Count => Measure::Count,
        }
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
    let value = typed::figure(typed, quantity.measure(), unit).map_err(|fault| not_read(typed, fault))?;
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

/// Why a figure is not read, and what to do.
fn not_read(typed: &str, fault: Fault) -> Phrase {
    let text = |text: &str| Arg::Typed(text.trim().into());
    match fault {
        Fault::NoFigure => Phrase::new("number-not-read").with("typed", text(typed)),
        Fault::Bytes => Phrase::new("number-bytes").with("typed", text(typed)),
        Fault::InDoubt(doubt) => Phrase::new("number-in-doubt")
            .with("typed", text(typed))
            .with("thousands", text(&doubt.thousands))
            .with("decimal", text(&doubt.decimal)),
    }
}

/// A number as it would be typed again in a unit.
pub(crate) fn write(value: f64, quantity: Quantity, unit: &str) -> String {
    typed::written(value, quantity.measure(), unit)
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

    const ALL: [Quantity; 10] = [
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
        assert_eq!(read("1000", "mbps", Quantity::Rate).unwrap(), 1000.0);
        assert_eq!(read("1,5", "gbps", Quantity::Rate).unwrap(), 1500.0);
        assert_eq!(read("2.5", "gbps", Quantity::Rate).unwrap(), 2500.0);
        assert_eq!(read("1 Gb/s", "mbps", Quantity::Rate).unwrap(), 1000.0);
        assert_eq!(read("\u{2212}6", "dbmv", Quantity::Level).unwrap(), -6.0);
        // 0 dBmV is 60 dBµV at any impedance.
        assert_eq!(read("64.5", "dbuv", Quantity::Level).unwrap(), 4.5);
        assert_eq!(read("64.5 dBuV", "dbmv", Quantity::Level).unwrap(), 4.5);
        assert_eq!(read("1.2", "ghz", Quantity::Frequency).unwrap(), 1200.0);
    }

    #[test]
    fn a_doubt_is_told_with_both_its_readings() {
        let told = read("1,000", "mbps", Quantity::Rate).unwrap_err();
        assert_eq!(told.id, "number-in-doubt");
        let said = crate::words::english(telling::words::Figures::default()).say(&told);
        assert!(said.contains("1000") && said.contains("1.0"), "{said}");
        assert_eq!(read("100 MB/s", "mbps", Quantity::Rate).unwrap_err().id, "number-bytes");
    }

    #[test]
    fn a_keyboard_has_a_minus_where_less_than_nothing_is_taken_and_only_there() {
        for quantity in ALL {
            let unit = quantity.units(LengthUnit::Metres).first().copied().unwrap();
            let is_signed = quantity.kind() == NumberKind::Signed;
            assert_eq!(read("-1", unit, quantity).is_ok(), is_signed, "{quantity:?}");
            let is_whole = quantity.kind() == NumberKind::Whole;
            assert_eq!(read("1.5", unit, quantity).is_err(), is_whole, "{quantity:?}");
        }
    }

    #[test]
    fn a_keyboard_has_letters_where_one_unit_beside_the_number_does_not_do() {
        // Feet and inches are two units in one text.
        assert_eq!(metres("12 ft 6 in", "m"), 3.81);
        assert!(Quantity::Length.takes_letters());
        // What a meter shows is digits alone, and every unit of it can be chosen.
        for quantity in [Quantity::Level, Quantity::Power, Quantity::Frequency] {
            assert!(!quantity.takes_letters() && quantity.units(LengthUnit::Metres).len() > 1);
        }
    }

    #[test]
    fn every_unit_that_is_offered_is_known_and_has_its_word() {
        let words = crate::words::english(telling::words::Figures::default());
        for quantity in ALL {
            for length in [LengthUnit::Metres, LengthUnit::Feet] {
                for unit in quantity.units(length) {
                    assert!(quantity.measure().unit(unit).is_some(), "{quantity:?} {unit}");
                    assert!(words.knows(&format!("unit-{unit}")), "{unit}");
                }
            }
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

//! What is typed, by figures from outside, and laws of what is shown.

use proptest::prelude::*;

use super::*;

fn close(one: f64, other: f64) -> bool {
    (one - other).abs() < 1e-6
}

fn read(text: &str, measure: Measure) -> Result<f64, Fault> {
    figure(text, measure, measure.units()[0].key)
}

#[test]
fn lengths_in_the_units_of_both_sides_of_the_sea() {
    // 0.3048 m a foot, 12 inches a foot, by definition (international yard and pound agreement, 1959).
    let typed = [
        ("12.5", 12.5),
        ("12,5 m", 12.5),
        ("40 ft", 12.192),
        ("5'6\"", 1.6764),
        ("5' 6", 1.6764),
        ("5 ft 6 in", 1.6764),
        ("5 ft. 6 in.", 1.6764),
        ("5\u{2032}6\u{2033}", 1.6764),
        ("5\u{2019}6\u{201d}", 1.6764),
        ("6 in", 0.1524),
        ("30 cm", 0.3),
        ("2 m 50 cm", 2.5),
        ("12,5 ft", 3.81),
    ];
    for (text, metres) in typed {
        let length = read(text, Measure::Length);
        assert!(length.as_ref().is_ok_and(|length| close(*length, metres)), "{text}: {length:?}");
    }
    assert_eq!(figure("10", Measure::Length, "ft"), Ok(3.048));
    for text in
        ["", "m", "12 6", "12 yards", "5 ft 6 ft", "6 in 5 ft", "2 m 3 ft", "1e3", "--4", "1.2.3", "ten"]
    {
        assert_eq!(read(text, Measure::Length), Err(Fault::NoFigure), "{text}");
    }
}

#[test]
fn levels_in_the_three_units_of_meters() {
    // 1 mV is 1000 uV: 20 log10(1000) = 60 dB at any impedance. 1 mW across 75 ohm is sqrt(0.075) V:
    // 20 log10(sqrt(0.075) / 0.001) = 48.75 dBmV, and 108.75 dBuV (Application Note 808, "CATV dBm, dBmV, and dBuV
    // Conversions", 17 July 2002).
    let across_75_ohm = 20.0 * (0.075_f64.sqrt() / 0.001).log10();
    let typed = [
        ("3", 3.0),
        ("-3,5 dBmV", -3.5),
        ("\u{2212}6 dbmv", -6.0),
        ("60 dBuV", 0.0),
        ("63.5 dB\u{b5}V", 3.5),
        ("63.5 dB\u{3bc}V", 3.5),
        ("0 dBm", across_75_ohm),
        ("-48.75 dBm", across_75_ohm - 48.75),
    ];
    for (text, dbmv) in typed {
        let level = read(text, Measure::Level);
        assert!(level.as_ref().is_ok_and(|level| close(*level, dbmv)), "{text}: {level:?}");
    }
    let power = read("108.750612 dBuV", Measure::Power).unwrap();
    assert!(close(power, 0.0), "{power}");
    assert!(close(read("48.75 dBmV", Measure::Power).unwrap(), 48.75 - across_75_ohm));
    assert_eq!(read("3 dB", Measure::Level), Err(Fault::NoFigure));
}

#[test]
fn frequencies_rates_and_the_rest() {
    let typed = [
        ("1.218 GHz", Measure::Frequency, 1218.0),
        ("1218", Measure::Frequency, 1218.0),
        ("2,3 GHz", Measure::Frequency, 2300.0),
        ("54 MHz", Measure::Frequency, 54.0),
        ("1 Gb/s", Measure::Rate, 1000.0),
        ("2,5 gbps", Measure::Rate, 2500.0),
        ("800 MBit/s", Measure::Rate, 800.0),
        ("7,5 dB", Measure::Ratio, 7.5),
        ("0.3 s", Measure::Time, 300.0),
        ("0,5 %", Measure::Share, 0.5),
        ("1 218,5", Measure::Frequency, 1218.5),
        ("1.234,5", Measure::Rate, 1234.5),
        ("1,234.5", Measure::Rate, 1234.5),
        ("1,234,567", Measure::Rate, 1_234_567.0),
    ];
    for (text, measure, own) in typed {
        let figure = read(text, measure);
        assert!(figure.as_ref().is_ok_and(|figure| close(*figure, own)), "{text}: {figure:?}");
    }
    assert_eq!(read("100 MB/s", Measure::Rate), Err(Fault::Bytes));
    assert_eq!(read("5 ms", Measure::Frequency), Err(Fault::NoFigure));
    for text in ["1,00,0", "1,2,3", "1.2,3.4", "1,23.456,7"] {
        assert_eq!(read(text, Measure::Rate), Err(Fault::NoFigure), "{text}");
    }
}

#[test]
fn a_comma_before_three_digits_is_a_doubt_and_nothing_else_is() {
    for (text, thousands, decimal) in [("1,000", "1000", "1.0"), ("-12,250 Mb/s", "-12250", "-12.25")] {
        let doubt = Doubt { thousands: thousands.into(), decimal: decimal.into() };
        assert_eq!(read(text, Measure::Rate), Err(Fault::InDoubt(doubt.clone())), "{text}");
        // Each of the two can be typed without a doubt.
        let [great, small] =
            [&doubt.thousands, &doubt.decimal].map(|text| read(text, Measure::Rate).unwrap());
        assert!(close(great, small * 1000.0), "{great} {small}");
    }
    for (text, value) in
        [("1,5", 1.5), ("0,125", 0.125), (",125", 0.125), ("1,25", 1.25), ("1234,567", 1234.567)]
    {
        assert_eq!(read(text, Measure::Rate), Ok(value), "{text}");
    }
}

fn measures() -> impl Strategy<Value = (Measure, &'static str)> {
    let all: Vec<_> = Measure::ALL
        .into_iter()
        .flat_map(|measure| measure.units().iter().map(move |unit| (measure, unit.key)))
        .collect();
    proptest::sample::select(all)
}

proptest! {
    /// What was typed with up to two decimals is shown so, and what is shown can be typed again and is the same figure.
    #[test]
    fn what_is_shown_can_be_typed_again(hundredths in -50_000_i64..500_000, (measure, unit) in measures()) {
        let typed = hundredths as f64 / 100.0;
        let own = figure(&format!("{typed}"), measure, unit).unwrap();
        let shown = written(own, measure, unit);
        prop_assert_eq!(&shown, &format!("{}", typed + 0.0));
        let again = figure(&shown, measure, unit).unwrap();
        prop_assert!(close(again, own), "{} {}", again, own);
        // With a comma too, and with its unit behind it.
        let comma = shown.replace('.', ",");
        prop_assert_eq!(figure(&comma, measure, unit), Ok(again));
    }

    /// In whichever unit a figure is shown, typed again it is shown the same.
    #[test]
    fn shown_in_another_unit_it_stays(own in -500.0..5_000.0_f64, (measure, unit) in measures()) {
        let shown = written(own, measure, unit);
        let again = figure(&shown, measure, unit).unwrap();
        prop_assert_eq!(written(again, measure, unit), shown);
        let one = measure.unit(unit).unwrap();
        prop_assert!((one.of_own(again) - one.of_own(own)).abs() <= 0.000_051);
    }

    /// Nothing typed is ever read as two figures, and nothing makes it fall over.
    #[test]
    fn whatever_is_typed(text in "\\PC{0,24}", (measure, unit) in measures()) {
        if let Ok(figure) = figure(&text, measure, unit) {
            prop_assert!(figure.is_finite());
        }
    }
}

//! Quantities as people write them: a number or a range, with its unit. A bare number is never taken.

use coax::typed::{self, Fault, Measure};
use house::rating::Band;
use house::record::possible::{MOST_DB, MOST_DBM, MOST_DBMV, MOST_MBPS, MOST_METRES, MOST_MHZ, MOST_MS};
use house::record::{LengthKnown, RunLength};
use phrase::{Arg, Phrase};

/// One or two numbers with their unit, and the words around them.
struct Written<'t> {
    low: f64,
    high: Option<f64>,
    before: &'t str,
    after: &'t str,
}

/// Reads `[before] NUMBER [UNIT] [- NUMBER] UNIT [after]`; the one reader of what people type says what a figure and a unit
/// is. `wrong` is what the sheet expects here, for all but a doubt.
fn written(text: &str, measure: Measure, wrong: impl Fn() -> Phrase) -> Result<Written<'_>, Phrase> {
    let told = |fault| match fault {
        Fault::InDoubt(doubt) => {
            Phrase::new("sheet-in-doubt").text("thousands", doubt.thousands).text("decimal", doubt.decimal)
        }
        Fault::NoFigure | Fault::Bytes => wrong(),
    };
    let start = text.find(|c: char| c.is_ascii_digit() || is_dash(c) || c == '+').ok_or_else(&wrong)?;
    let (before, rest) = text.split_at_checked(start).ok_or_else(&wrong)?;
    let first = typed::leading(rest, measure).map_err(told)?;
    let (low, high, rest) = match range_sign(first.rest) {
        None => (first.own.ok_or_else(&wrong)?, None, first.rest),
        Some(rest) => {
            let second = typed::leading(rest, measure).map_err(told)?;
            let high = second.own.ok_or_else(&wrong)?;
            // The first has the second's unit where it has none of its own.
            let low = || second.unit.map(|unit| unit.own(first.number));
            (first.own.or_else(low).ok_or_else(&wrong)?, Some(high), second.rest)
        }
    };
    Ok(Written { low, high, before: before.trim(), after: rest.trim() })
}

fn is_dash(c: char) -> bool {
    matches!(c, '-' | '\u{2010}'..='\u{2015}' | '\u{2212}')
}

fn range_sign(text: &str) -> Option<&str> {
    let text = text.trim_start();
    text.strip_prefix(|c| is_dash(c) || c == '~').or_else(|| text.strip_prefix("to "))
}

/// One number with its unit and nothing else; `wrong` is what the sheet expects here.
fn single(text: &str, measure: Measure, wrong: impl Fn() -> Phrase) -> Result<f64, Phrase> {
    let it = written(text, measure, &wrong)?;
    let is_alone = it.high.is_none() && it.before.is_empty() && it.after.is_empty();
    if is_alone { Ok(it.low) } else { Err(wrong()) }
}

/// The words for two parts that are screwed together, with no cable between them.
const SCREWED_ON: [&str; 3] = ["none", "screwed on", "screwed straight on"];

/// A length: `12 m`, `40 ft`, `5'6"`, `10-15 m`, `10-15 m, likely 11 m`, `about 12 m`, `12 m measured`.
pub fn length(text: &str) -> Result<RunLength, Phrase> {
    let wrong = || Phrase::new("sheet-length");
    if SCREWED_ON.contains(&text.trim().to_lowercase().as_str()) {
        return Ok(RunLength::SCREWED_ON);
    }
    let (text, likely) = match text.split_once(", likely ") {
        Some((range, likely)) => (range, Some(single(likely, Measure::Length, wrong)?)),
        None => (text, None),
    };
    let it = written(text, Measure::Length, wrong)?;
    let known = match it.after {
        "" | "guessed" => LengthKnown::Guessed,
        "paced" => LengthKnown::Paced,
        "measured" => LengthKnown::Measured,
        _ => return Err(wrong()),
    };
    if !(it.before.is_empty() || it.before == "about" && known != LengthKnown::Measured) {
        return Err(wrong());
    }
    let right = |metres: f64| metres > 0.0 && metres <= MOST_METRES;
    if !right(it.low) || !it.high.is_none_or(right) {
        return Err(Phrase::new("sheet-length-limits").with("most", Arg::Length(MOST_METRES)));
    }
    match it.high {
        None if likely.is_some() => Err(wrong()),
        None => Ok(RunLength::stated(it.low, known)),
        Some(high) if high < it.low => Err(Phrase::new("sheet-length-order")),
        Some(high) if likely.is_some_and(|likely| !(it.low..=high).contains(&likely)) => {
            Err(Phrase::new("sheet-length-likely"))
        }
        Some(high) => Ok(RunLength {
            metres: likely.unwrap_or_else(|| f64::midpoint(it.low, high)),
            low_metres: it.low,
            high_metres: high,
            known,
        }),
    }
}

fn right_frequency(mhz: f64) -> bool {
    (0.0..=MOST_MHZ).contains(&mhz)
}

/// A figure that can be, or what the sheet expects.
fn within(value: f64, right: impl Fn(f64) -> bool, wrong: impl Fn() -> Phrase) -> Result<f64, Phrase> {
    if right(value) { Ok(value) } else { Err(wrong()) }
}

/// A frequency, MHz: `1218 MHz`, `1.2 GHz`.
pub fn frequency(text: &str) -> Result<f64, Phrase> {
    let wrong = || Phrase::new("sheet-frequency").with("most", Arg::Frequency(MOST_MHZ));
    within(single(text, Measure::Frequency, wrong)?, |mhz| right_frequency(mhz) && mhz > 0.0, wrong)
}

/// A band: `5-1000 MHz`, `5 MHz to 2.3 GHz`.
pub fn band(text: &str) -> Result<Band, Phrase> {
    let wrong = || Phrase::new("sheet-band").with("most", Arg::Frequency(MOST_MHZ));
    let it = written(text, Measure::Frequency, wrong)?;
    let is_alone = it.before.is_empty() && it.after.is_empty();
    let (low, high) = it.high.filter(|_| is_alone).map(|high| (it.low, high)).ok_or_else(wrong)?;
    if !right_frequency(low) || !right_frequency(high) {
        return Err(wrong());
    }
    if low >= high {
        return Err(Phrase::new("sheet-band-order"));
    }
    Ok(Band { low_mhz: low, high_mhz: high })
}

/// A loss, gain, isolation or rejection, dB, not below 0.
pub fn decibels(text: &str) -> Result<f64, Phrase> {
    let wrong = || Phrase::new("sheet-decibels");
    within(single(text, Measure::Ratio, wrong)?, |db| (0.0..=MOST_DB).contains(&db), wrong)
}

/// A gain that may be a loss, dB.
pub fn signed_decibels(text: &str) -> Result<f64, Phrase> {
    let wrong = || Phrase::new("sheet-signed-decibels");
    within(single(text, Measure::Ratio, wrong)?, |db| db.abs() <= MOST_DB, wrong)
}

/// A level, dBmV: `3 dBmV`, `63 dBµV`, `-45.75 dBm`, each across 75 ohm.
pub fn level(text: &str) -> Result<f64, Phrase> {
    let wrong = || Phrase::new("sheet-level");
    within(single(text, Measure::Level, wrong)?, |level| level.abs() <= MOST_DBMV, wrong)
}

/// The power of an adapter, dBm, or as a level across 75 ohm.
pub fn power(text: &str) -> Result<f64, Phrase> {
    let wrong = || Phrase::new("sheet-power-dbm");
    within(single(text, Measure::Power, wrong)?, |power| power.abs() <= MOST_DBM, wrong)
}

/// A share, percent: the one quantity whose unit stands in the field's name, so that a bare number is taken too.
pub fn percent(text: &str) -> Result<f64, Phrase> {
    let wrong = || Phrase::new("sheet-percent");
    let share = match text.trim().parse() {
        Ok(bare) => bare,
        Err(_) => single(text, Measure::Share, wrong)?,
    };
    within(share, |share| (0.0..=100.0).contains(&share), wrong)
}

/// A rate, Mb/s: `800 Mb/s`, `1 Gb/s`.
pub fn rate(text: &str) -> Result<f64, Phrase> {
    let wrong = || Phrase::new("sheet-rate").with("most", Arg::Rate(MOST_MBPS));
    within(single(text, Measure::Rate, wrong)?, |mbps| mbps > 0.0 && mbps <= MOST_MBPS, wrong)
}

/// A rate that was measured, Mb/s; nothing at all is one.
///
/// # Errors
/// What is taken.
pub fn measured_rate(text: &str) -> Result<f64, Phrase> {
    let wrong = || Phrase::new("sheet-rate-measured").with("most", Arg::Rate(MOST_MBPS));
    within(single(text, Measure::Rate, wrong)?, |mbps| (0.0..=MOST_MBPS).contains(&mbps), wrong)
}

/// A time, ms.
pub fn milliseconds(text: &str) -> Result<f64, Phrase> {
    let wrong = || Phrase::new("sheet-milliseconds");
    within(single(text, Measure::Time, wrong)?, |ms| ms > 0.0 && ms <= MOST_MS, wrong)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(a: f64, b: f64) -> bool {
        (a - b).abs() < 1e-9
    }

    #[test]
    fn lengths_are_read_as_people_write_them() {
        // 0.3048 m a foot, by definition.
        for (text, metres) in [("12 m", 12.0), ("12m", 12.0), ("40 ft", 12.192), ("about 10 feet", 3.048)] {
            let read = length(text).unwrap();
            assert!(close(read.metres, metres), "{text}: {read:?}");
            assert_eq!(read.known, LengthKnown::Guessed);
            assert!(read.low_metres < read.metres && read.metres < read.high_metres);
        }
        for text in ["10-15 m", "10 m - 15 m", "10 to 15 m", "10\u{2013}15 m", "10~15 m"] {
            let read = length(text).unwrap();
            assert!(close(read.low_metres, 10.0) && close(read.high_metres, 15.0), "{text}: {read:?}");
        }
        let read = length("10-15 m, likely 36 ft").unwrap();
        assert!(close(read.low_metres, 10.0) && close(read.metres, 10.9728) && close(read.high_metres, 15.0));
        for (text, metres) in
            [("12,5 m", 12.5), ("30 cm", 0.3), ("5'6\"", 1.6764), ("5 ft 6 in measured", 1.6764)]
        {
            let read = length(text).unwrap();
            assert!(close(read.metres, metres), "{text}: {read:?}");
        }
        assert!(length("none").unwrap().is_screwed_on() && length("Screwed on").unwrap().is_screwed_on());
        assert!(!length("10 cm measured").unwrap().is_screwed_on());
        assert_eq!(length("12 m measured").unwrap().known, LengthKnown::Measured);
        assert_eq!(length("30 ft paced").unwrap().known, LengthKnown::Paced);
    }

    #[test]
    fn lengths_that_are_none_are_told_apart() {
        let wrong = |text| length(text).unwrap_err().id;
        assert_eq!(wrong("12"), "sheet-length");
        assert_eq!(wrong("12 m long"), "sheet-length");
        assert_eq!(wrong("1,000 m"), "sheet-in-doubt");
        assert_eq!(wrong("12 cubits"), "sheet-length");
        assert_eq!(wrong("m"), "sheet-length");
        assert_eq!(wrong("1.2.3 m"), "sheet-length");
        assert_eq!(wrong("about 12 m measured"), "sheet-length");
        assert_eq!(wrong("-3 m"), "sheet-length-limits");
        assert_eq!(wrong("\u{2212}3 m"), "sheet-length-limits");
        assert_eq!(wrong("0 m"), "sheet-length-limits");
        assert_eq!(wrong("9999 m"), "sheet-length-limits");
        assert_eq!(wrong("15-10 m"), "sheet-length-order");
        assert_eq!(wrong("10-15 m, likely 16 m"), "sheet-length-likely");
        assert_eq!(wrong("12 m, likely 12 m"), "sheet-length");
        assert_eq!(wrong("10-15 m, likely"), "sheet-length");
    }

    #[test]
    fn bands_and_frequencies() {
        for text in ["5-1000 MHz", "5 MHz to 1 GHz", "5 - 1000 mhz", "0.005-1 GHz"] {
            let read = band(text).unwrap();
            assert!(close(read.low_mhz, 5.0) && close(read.high_mhz, 1000.0), "{text}: {read:?}");
        }
        assert_eq!(band("1000-5 MHz").unwrap_err().id, "sheet-band-order");
        assert_eq!(band("5-1000").unwrap_err().id, "sheet-band");
        assert_eq!(band("1000 MHz").unwrap_err().id, "sheet-band");
        assert!(close(frequency("1.2 GHz").unwrap(), 1200.0));
        assert!(frequency("-5 MHz").is_err());
    }

    #[test]
    fn rates_levels_and_decibels() {
        assert!(close(rate("1 Gb/s").unwrap(), 1000.0));
        assert!(close(rate("800Mb/s").unwrap(), 800.0));
        assert!(rate("800").is_err() && rate("0 Mb/s").is_err() && rate("800 MB/s").is_err());
        assert!(close(level("-3.5 dBmV").unwrap(), -3.5));
        // 0 dBmV is 60 dBµV at any impedance; 0 dBm is 48.75 dBmV across 75 ohm (Application Note 808, "CATV dBm, dBmV, and
        // dBuV Conversions", 17 July 2002).
        assert!(close(level("56.5 dB\u{b5}V").unwrap(), -3.5) && close(level("56,5 dBuV").unwrap(), -3.5));
        assert!((level("-48.75 dBm").unwrap()).abs() < 0.001);
        assert!(close(power("-40 dBm").unwrap(), -40.0));
        assert!((power("8.75 dBmV").unwrap() + 40.0).abs() < 0.001);
        assert!(power("-40").is_err() && level("3").is_err());
        assert!(close(percent("0.5 %").unwrap(), 0.5) && close(percent("0.5").unwrap(), 0.5));
        assert!(percent("101").is_err() && percent("-1").is_err() && percent("nan").is_err());
        assert!(close(decibels("7 dB").unwrap(), 7.0));
        assert!(decibels("-7 dB").is_err());
        assert!(close(signed_decibels("-7 dB").unwrap(), -7.0));
        assert!(close(milliseconds("3.5 ms").unwrap(), 3.5));
    }
}

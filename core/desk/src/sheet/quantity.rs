//! Quantities as people write them: a number or a range, with its unit. A bare number is never taken.

use coax::Metres;
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

/// Reads `[before] NUMBER [UNIT] [- NUMBER] UNIT [after]`; `units` gives what one of each is worth.
fn written<'t>(text: &'t str, units: &[(&str, f64)]) -> Option<Written<'t>> {
    let start = text.find(|c: char| c.is_ascii_digit() || is_dash(c) || c == '+')?;
    let (before, rest) = text.split_at(start);
    let (first, rest) = number(rest)?;
    let (first_unit, rest) = unit(rest, units);
    let (low, high, rest) = match range_sign(rest) {
        None => (first * first_unit?, None, rest),
        Some(rest) => {
            let (second, rest) = number(rest)?;
            let (second_unit, rest) = unit(rest, units);
            let second_unit = second_unit?;
            (first * first_unit.unwrap_or(second_unit), Some(second * second_unit), rest)
        }
    };
    Some(Written { low, high, before: before.trim(), after: rest.trim() })
}

fn is_dash(c: char) -> bool {
    matches!(c, '-' | '\u{2010}'..='\u{2015}' | '\u{2212}')
}

fn number(text: &str) -> Option<(f64, &str)> {
    let text = text.trim_start();
    let unsigned = text.strip_prefix(|c| is_dash(c) || c == '+');
    let negative = unsigned.is_some() && !text.starts_with('+');
    let digits = unsigned.unwrap_or(text);
    let end = digits.find(|c: char| !(c.is_ascii_digit() || c == '.')).unwrap_or(digits.len());
    let (digits, rest) = digits.split_at(end);
    let value: f64 = digits.parse().ok().filter(|value: &f64| value.is_finite())?;
    Some((if negative { -value } else { value }, rest))
}

/// The unit that the text starts with, whole word only; `None` where none stands there.
fn unit<'t>(text: &'t str, units: &[(&str, f64)]) -> (Option<f64>, &'t str) {
    let trimmed = text.trim_start();
    let end = trimmed.find(|c: char| c.is_whitespace() || is_dash(c)).unwrap_or(trimmed.len());
    let (word, rest) = trimmed.split_at(end);
    match units.iter().find(|(name, _)| name.eq_ignore_ascii_case(word)) {
        Some((_, worth)) => (Some(*worth), rest),
        None => (None, text),
    }
}

fn range_sign(text: &str) -> Option<&str> {
    let text = text.trim_start();
    text.strip_prefix(|c| is_dash(c) || c == '~').or_else(|| text.strip_prefix("to "))
}

/// One number with its unit and nothing else.
fn single(text: &str, units: &[(&str, f64)]) -> Option<f64> {
    written(text, units)
        .filter(|it| it.high.is_none() && it.before.is_empty() && it.after.is_empty())
        .map(|it| it.low)
}

/// A length: `12 m`, `40 ft`, `10-15 m`, `10-15 m, likely 11 m`, `about 12 m`, `12 m measured`.
pub fn length(text: &str) -> Result<RunLength, Phrase> {
    let foot = Metres::from_feet(1.0).value();
    let units = [
        ("m", 1.0),
        ("metre", 1.0),
        ("metres", 1.0),
        ("meter", 1.0),
        ("meters", 1.0),
        ("ft", foot),
        ("foot", foot),
        ("feet", foot),
    ];
    let wrong = || Phrase::new("sheet-length");
    let (text, likely) = match text.split_once(", likely ") {
        Some((range, likely)) => (range, Some(single(likely, &units).ok_or_else(wrong)?)),
        None => (text, None),
    };
    let it = written(text, &units).ok_or_else(wrong)?;
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

const FREQUENCY_UNITS: [(&str, f64); 2] = [("MHz", 1.0), ("GHz", 1000.0)];

fn right_frequency(mhz: f64) -> bool {
    (0.0..=MOST_MHZ).contains(&mhz)
}

/// A frequency, MHz: `1218 MHz`, `1.2 GHz`.
pub fn frequency(text: &str) -> Result<f64, Phrase> {
    single(text, &FREQUENCY_UNITS)
        .filter(|mhz| right_frequency(*mhz) && *mhz > 0.0)
        .ok_or_else(|| Phrase::new("sheet-frequency").with("most", Arg::Frequency(MOST_MHZ)))
}

/// A band: `5-1000 MHz`, `5 MHz to 2.3 GHz`.
pub fn band(text: &str) -> Result<Band, Phrase> {
    let wrong = || Phrase::new("sheet-band").with("most", Arg::Frequency(MOST_MHZ));
    let it = written(text, &FREQUENCY_UNITS).filter(|it| it.before.is_empty() && it.after.is_empty());
    let (low, high) = it.and_then(|it| Some((it.low, it.high?))).ok_or_else(wrong)?;
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
    signed_decibels(text).ok().filter(|db| *db >= 0.0).ok_or_else(|| Phrase::new("sheet-decibels"))
}

/// A gain that may be a loss, dB.
pub fn signed_decibels(text: &str) -> Result<f64, Phrase> {
    single(text, &[("dB", 1.0)])
        .filter(|db| db.abs() <= MOST_DB)
        .ok_or_else(|| Phrase::new("sheet-signed-decibels"))
}

/// A level, dBmV.
pub fn level(text: &str) -> Result<f64, Phrase> {
    single(text, &[("dBmV", 1.0)])
        .filter(|level| level.abs() <= MOST_DBMV)
        .ok_or_else(|| Phrase::new("sheet-level"))
}

/// The power of an adapter, dBm.
pub fn power(text: &str) -> Result<f64, Phrase> {
    single(text, &[("dBm", 1.0)])
        .filter(|power| power.abs() <= MOST_DBM)
        .ok_or_else(|| Phrase::new("sheet-power-dbm"))
}

/// A share, percent: the one quantity whose unit stands in the field's name, so that a bare number is taken too.
pub fn percent(text: &str) -> Result<f64, Phrase> {
    let bare = || text.trim().parse().ok();
    single(text, &[("%", 1.0)])
        .or_else(bare)
        .filter(|share| (0.0..=100.0).contains(share))
        .ok_or_else(|| Phrase::new("sheet-percent"))
}

/// A rate, Mb/s: `800 Mb/s`, `1 Gb/s`.
pub fn rate(text: &str) -> Result<f64, Phrase> {
    measured_rate(text)
        .ok()
        .filter(|mbps| *mbps > 0.0)
        .ok_or_else(|| Phrase::new("sheet-rate").with("most", Arg::Rate(MOST_MBPS)))
}

/// A rate that was measured, Mb/s; nothing at all is one.
///
/// # Errors
/// What is taken.
pub fn measured_rate(text: &str) -> Result<f64, Phrase> {
    let units = [
        ("Mb/s", 1.0),
        ("Mbit/s", 1.0),
        ("Mbps", 1.0),
        ("Gb/s", 1000.0),
        ("Gbit/s", 1000.0),
        ("Gbps", 1000.0),
    ];
    // A capital B means bytes.
    let bits = Some(text).filter(|text| !text.contains('B'));
    bits.and_then(|text| single(text, &units))
        .filter(|mbps| *mbps >= 0.0 && *mbps <= MOST_MBPS)
        .ok_or_else(|| Phrase::new("sheet-rate-measured").with("most", Arg::Rate(MOST_MBPS)))
}

/// A time, ms.
pub fn milliseconds(text: &str) -> Result<f64, Phrase> {
    single(text, &[("ms", 1.0)])
        .filter(|ms| *ms > 0.0 && *ms <= MOST_MS)
        .ok_or_else(|| Phrase::new("sheet-milliseconds"))
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
        assert_eq!(length("12 m measured").unwrap().known, LengthKnown::Measured);
        assert_eq!(length("30 ft paced").unwrap().known, LengthKnown::Paced);
    }

    #[test]
    fn lengths_that_are_none_are_told_apart() {
        let wrong = |text| length(text).unwrap_err().id;
        assert_eq!(wrong("12"), "sheet-length");
        assert_eq!(wrong("12 m long"), "sheet-length");
        assert_eq!(wrong("12 cm"), "sheet-length");
        assert_eq!(wrong("12,5 m"), "sheet-length");
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
        assert!(close(power("-40 dBm").unwrap(), -40.0));
        assert!(power("-40 dBmV").is_err() && power("-40").is_err());
        assert!(close(percent("0.5 %").unwrap(), 0.5) && close(percent("0.5").unwrap(), 0.5));
        assert!(percent("101").is_err() && percent("-1").is_err() && percent("nan").is_err());
        assert!(close(decibels("7 dB").unwrap(), 7.0));
        assert!(decibels("-7 dB").is_err());
        assert!(close(signed_decibels("-7 dB").unwrap(), -7.0));
        assert!(close(milliseconds("3.5 ms").unwrap(), 3.5));
    }
}

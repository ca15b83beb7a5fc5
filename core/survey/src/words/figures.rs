//! How numbers are written: as many digits as they deserve, with their unit.

use coax::{Metres, Span};

/// Which unit of length comes first. The other always stands beside it in brackets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum LengthUnit {
    /// Metres first.
    #[default]
    Metres,
    /// Feet first.
    Feet,
}

/// The writing of numbers for one reader.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Figures {
    /// Which unit of length comes first.
    pub length_unit: LengthUnit,
}

impl Figures {
    /// A length: `12 m (39 ft)`.
    pub fn length(self, metres: f64) -> String {
        self.lengths(&[metres])
    }

    /// A length with its range: `about 12 m, 8 to 18 (39 ft, 26 to 59)`, or only the length if it is exact.
    pub fn length_range(self, span: Span) -> String {
        if span.is_exact() {
            return self.length(span.likely);
        }
        let (low, likely, high) = (Metres(span.low), Metres(span.likely), Metres(span.high));
        let metres = format!("{} m, {} to {}", short(likely.0), short(low.0), short(high.0));
        let feet = format!("{} ft, {} to {}", short(likely.feet()), short(low.feet()), short(high.feet()));
        match self.length_unit {
            LengthUnit::Metres => format!("about {metres} ({feet})"),
            LengthUnit::Feet => format!("about {feet} ({metres})"),
        }
    }

    fn lengths(self, metres: &[f64]) -> String {
        let join = |values: Vec<String>| values.join(" to ");
        let in_metres = format!("{} m", join(metres.iter().map(|m| short(*m)).collect()));
        let in_feet = format!("{} ft", join(metres.iter().map(|m| short(Metres(*m).feet())).collect()));
        match self.length_unit {
            LengthUnit::Metres => format!("{in_metres} ({in_feet})"),
            LengthUnit::Feet => format!("{in_feet} ({in_metres})"),
        }
    }

    /// A loss or gain: whole decibels from 10 up, tenths below.
    pub fn loss(self, db: f64) -> String {
        format!("{} dB", plain_loss(db))
    }

    /// A loss with its range: `23 dB (19 to 31)`.
    pub fn loss_range(self, span: Span) -> String {
        let (low, likely, high) = (plain_loss(span.low), plain_loss(span.likely), plain_loss(span.high));
        if low == high { format!("{likely} dB") } else { format!("{likely} dB ({low} to {high})") }
    }

    /// A level in dBmV: `+3 dBmV`.
    pub fn level(self, dbmv: f64) -> String {
        let text = tenths(dbmv).replace('-', "\u{2212}");
        let sign = if dbmv > 0.0 && text != "0" { "+" } else { "" };
        format!("{sign}{text} dBmV")
    }

    /// A rate: `2,350 Mb/s`; rounded to 50 above 1,000, to 10 above 200, to 5 above 20.
    pub fn rate(self, mbps: f64) -> String {
        format!("{} Mb/s", grouped(rounded_rate(mbps)))
    }

    /// A rate that somebody read or wrote, as it is: `905 Mb/s`; tenths where there are any.
    pub fn rate_as_read(self, mbps: f64) -> String {
        let whole = tenths(mbps);
        let (digits, tenth) = whole.split_once('.').unwrap_or((&whole, ""));
        let grouped = digits.parse().map_or_else(|_| digits.to_owned(), grouped);
        if tenth.is_empty() { format!("{grouped} Mb/s") } else { format!("{grouped}.{tenth} Mb/s") }
    }

    /// A rate with its range: `900 Mb/s (600 to 940)`.
    pub fn rate_range(self, span: Span) -> String {
        let [low, likely, high] = [span.low, span.likely, span.high].map(|mbps| grouped(rounded_rate(mbps)));
        if low == high { format!("{likely} Mb/s") } else { format!("{likely} Mb/s ({low} to {high})") }
    }

    /// A frequency: `1125 MHz`.
    pub fn frequency(self, mhz: f64) -> String {
        format!("{} MHz", tenths(mhz))
    }

    /// A band: `5 to 1002 MHz`.
    pub fn band(self, low: f64, high: f64) -> String {
        format!("{} to {} MHz", tenths(low), tenths(high))
    }

    /// A time in milliseconds.
    pub fn milliseconds(self, ms: f64) -> String {
        format!("{} ms", tenths(ms))
    }

    /// A time in milliseconds with its range: `3 ms (2 to 7)`.
    pub fn milliseconds_range(self, span: Span) -> String {
        format!("{} ms ({} to {})", tenths(span.likely), tenths(span.low), tenths(span.high))
    }

    /// A share in percent.
    pub fn share(self, fraction: f64) -> String {
        format!("{:.0} %", fraction * 100.0)
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

fn grouped(number: f64) -> String {
    let digits = format!("{number:.0}");
    let (sign, digits) = digits.strip_prefix('-').map_or(("", digits.as_str()), |rest| ("-", rest));
    let mut text = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    format!("{sign}{text}")
}

fn plain_loss(db: f64) -> String {
    if db.is_infinite() {
        return "more than 100".into();
    }
    if db.abs() >= 10.0 { format!("{db:.0}") } else { tenths(db) }
}

fn short(value: f64) -> String {
    if value < 10.0 { tenths(value) } else { format!("{value:.0}") }
}

fn tenths(value: f64) -> String {
    let rounded = (value * 10.0).round() / 10.0;
    // Adding zero turns a negative zero into a plain one.
    format!("{}", rounded + 0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_units_of_length_stand_side_by_side() {
        // 0.3048 m a foot, by definition.
        assert_eq!(Figures::default().length(15.24), "15 m (50 ft)");
        assert_eq!(Figures { length_unit: LengthUnit::Feet }.length(3.048), "10 ft (3 m)");
        let span = Span::new(8.0, 12.0, 18.0);
        assert_eq!(Figures::default().length_range(span), "about 12 m, 8 to 18 (39 ft, 26 to 59)");
    }

    #[test]
    fn digits_follow_what_the_number_deserves() {
        let figures = Figures::default();
        assert_eq!(figures.rate(2373.2), "2,350 Mb/s");
        assert_eq!(figures.rate(944.0), "940 Mb/s");
        assert_eq!(figures.rate(0.0), "0 Mb/s");
        assert_eq!(figures.rate_as_read(905.0), "905 Mb/s");
        assert_eq!(figures.rate_as_read(2351.25), "2,351.3 Mb/s");
        assert_eq!(figures.rate_as_read(0.5), "0.5 Mb/s");
        assert_eq!(figures.loss(23.4), "23 dB");
        assert_eq!(figures.loss(3.46), "3.5 dB");
        assert_eq!(figures.loss(-0.01), "0 dB");
        assert_eq!(figures.level(-6.0), "\u{2212}6 dBmV");
        assert_eq!(figures.level(3.0), "+3 dBmV");
        assert_eq!(figures.loss_range(Span::new(19.0, 23.0, 31.2)), "23 dB (19 to 31)");
    }
}

//! Values of a phrase written out, with their units and ranges.

use coax::{Metres, Span};
use phrase::{Arg, Phrase};

use super::figures::rounded_rate;
use super::language::Language;
use super::{LengthUnit, moment};

impl Language {
    /// A value as it stands in a sentence of this language.
    pub fn write(&self, arg: &Arg) -> String {
        let figures = self.figures();
        match arg {
            Arg::Text(text) => text.clone(),
            Arg::Count(count) | Arg::Minutes(count) => figures.count(*count),
            Arg::Number(number) => figures.as_typed(*number),
            Arg::Typed(typed) => figures.marks.as_typed(typed),
            Arg::When(ms) => moment::in_locale(*ms, self.locale()),
            Arg::Length(metres) => {
                let in_metres = self.one("written-metres", figures.short(*metres));
                self.both_lengths("written-length", in_metres, |language| {
                    language.one("written-feet", figures.short(Metres(*metres).feet()))
                })
            }
            Arg::LengthRange(span) if span.is_exact() => self.write(&Arg::Length(span.likely)),
            Arg::LengthRange(span) => {
                // A span whose ends read alike is one figure.
                let range = |[one, several]: [&str; 2], unit: fn(f64) -> f64| {
                    let [low, likely, high] =
                        [span.low, span.likely, span.high].map(|of| figures.short(unit(of)));
                    if low == high { self.one(one, likely) } else { self.range(several, [low, likely, high]) }
                };
                let in_metres = range(["written-metres", "written-metres-range"], |metres| metres);
                self.both_lengths("written-length-about", in_metres, |_| {
                    range(["written-feet", "written-feet-range"], |metres| Metres(metres).feet())
                })
            }
            Arg::Loss(db) => self.one("written-loss", self.loss(*db)),
            Arg::LossRange(span) => self.spread("written-loss", span, |db| self.loss(db)),
            Arg::Level(dbmv) => self.one("written-level", figures.level(*dbmv)),
            Arg::Rate(mbps) => self.one("written-rate", figures.rate(*mbps)),
            Arg::RateAsRead(mbps) => self.one("written-rate", figures.rate_as_read(*mbps)),
            Arg::RateRange(span) => self.spread("written-rate", span, |mbps| figures.rate(mbps)),
            Arg::RateRangeBeside { range, read } => self.spread("written-rate", range, |mbps| {
                if keeps_sides(*range, *read) { figures.rate(mbps) } else { figures.rate_as_read(mbps) }
            }),
            Arg::Frequency(mhz) => self.one("written-frequency", figures.tenths(*mhz)),
            Arg::Band(low, high) => {
                let band = Phrase::new("written-band").text("low", figures.tenths(*low));
                self.say(&band.text("high", figures.tenths(*high)))
            }
            Arg::Milliseconds(ms) => self.one("written-milliseconds", figures.tenths(*ms)),
            Arg::MillisecondsRange(span) => {
                let numbers = [span.low, span.likely, span.high].map(|ms| figures.tenths(ms));
                self.range("written-milliseconds-range", numbers)
            }
            Arg::Share(fraction) => self.one("written-share", figures.whole(fraction * 100.0)),
            Arg::Phrase(phrase) => self.say(phrase),
            Arg::Several(args) => self.list(args),
        }
    }

    /// The day of a moment, milliseconds since 1970, of UTC.
    pub fn day(&self, ms: u64) -> String {
        moment::day_in_locale(ms, self.locale())
    }

    fn one(&self, id: &str, number: String) -> String {
        self.say(&Phrase::new(id).text("number", number))
    }

    fn range(&self, id: &str, [low, likely, high]: [String; 3]) -> String {
        self.say(&Phrase::new(id).text("low", low).text("likely", likely).text("high", high))
    }

    /// A value with its range, or the value alone where both ends read alike.
    fn spread(&self, id: &str, span: &Span, write: impl Fn(f64) -> String) -> String {
        let [low, likely, high] = [span.low, span.likely, span.high].map(write);
        if low == high {
            self.one(id, likely)
        } else {
            self.range(&format!("{id}-range"), [low, likely, high])
        }
    }

    fn loss(&self, db: f64) -> String {
        self.figures().loss(db).unwrap_or_else(|| self.say(&Phrase::new("written-loss-beyond")))
    }

    /// The reader's own unit first, the other in brackets.
    fn both_lengths(&self, id: &str, metres: String, feet: impl Fn(&Self) -> String) -> String {
        let (first, second) = match self.figures().length_unit {
            LengthUnit::Metres => (metres, feet(self)),
            LengthUnit::Feet => (feet(self), metres),
        };
        self.say(&Phrase::new(id).text("first", first).text("second", second))
    }

    fn list(&self, args: &[Arg]) -> String {
        let said: Vec<_> = args.iter().map(|arg| self.write(arg)).collect();
        match said.split_last() {
            None => String::new(),
            Some((only, [])) => only.clone(),
            Some((last, rest)) => {
                let comma = self.say(&Phrase::new("list-comma"));
                let rest = rest.join(&comma);
                self.say(&Phrase::new("list-last").text("rest", rest).text("last", last.clone()))
            }
        }
    }
}

/// Whether a rate as it is shown lies on the same sides of the ends of a range as they are usually rounded as it does unrounded.
fn keeps_sides(range: Span, read: f64) -> bool {
    let shown = (read * 10.0).round() / 10.0;
    [range.low, range.high].iter().all(|end| read.total_cmp(end) == shown.total_cmp(&rounded_rate(*end)))
}

#[cfg(test)]
mod tests {
    use super::super::Figures;
    use super::*;

    fn written(arg: &Arg) -> String {
        Language::english(Figures::default()).write(arg)
    }

    #[test]
    fn both_units_of_length_stand_side_by_side() {
        // 0.3048 m a foot, by definition.
        assert_eq!(written(&Arg::Length(15.24)), "15 m (50 ft)");
        let feet_first = Language::english(Figures::with_first(LengthUnit::Feet));
        assert_eq!(feet_first.write(&Arg::Length(3.048)), "10 ft (3 m)");
        let span = Span::new(8.0, 12.0, 18.0);
        assert_eq!(written(&Arg::LengthRange(span)), "about 12 m, 8 to 18 (39 ft, 26 to 59)");
        let narrow = Span::new(3.96, 4.0, 4.04);
        assert_eq!(written(&Arg::LengthRange(narrow)), "about 4 m (13 ft)");
    }

    #[test]
    fn digits_follow_what_the_number_deserves() {
        assert_eq!(written(&Arg::Rate(2373.2)), "2,350 Mb/s");
        assert_eq!(written(&Arg::Rate(944.0)), "940 Mb/s");
        assert_eq!(written(&Arg::Rate(0.0)), "0 Mb/s");
        assert_eq!(written(&Arg::RateAsRead(905.0)), "905 Mb/s");
        assert_eq!(written(&Arg::RateAsRead(2351.25)), "2,351.3 Mb/s");
        assert_eq!(written(&Arg::RateAsRead(0.5)), "0.5 Mb/s");
        assert_eq!(written(&Arg::Loss(23.4)), "23 dB");
        assert_eq!(written(&Arg::Loss(3.46)), "3.5 dB");
        assert_eq!(written(&Arg::Loss(-0.01)), "0 dB");
        assert_eq!(written(&Arg::Loss(f64::INFINITY)), "more than 100 dB");
        assert_eq!(written(&Arg::Level(-6.0)), "\u{2212}6 dBmV");
        assert_eq!(written(&Arg::Level(3.0)), "+3 dBmV");
        assert_eq!(written(&Arg::Level(0.04)), "0 dBmV");
        assert_eq!(written(&Arg::LossRange(Span::new(19.0, 23.0, 31.2))), "23 dB (19 to 31)");
    }

    #[test]
    fn a_range_is_never_rounded_past_the_rate_beside_it() {
        let beside = |range, read| written(&Arg::RateRangeBeside { range, read });
        assert_eq!(beside(Span::new(3104.0, 3300.0, 3478.0), 2000.0), "3,300 Mb/s (3,100 to 3,500)");
        // Rounded to fives, 22.4 would be 20, below the 21 that lies under it.
        assert_eq!(beside(Span::new(22.4, 31.0, 44.0), 21.0), "31 Mb/s (22.4 to 44)");
        assert_eq!(beside(Span::new(22.4, 31.0, 44.0), 19.0), "30 Mb/s (20 to 45)");
        assert_eq!(beside(Span::new(22.4, 31.0, 44.0), 19.97), "31 Mb/s (22.4 to 44)");
    }

    #[test]
    fn another_locale_writes_its_own_marks_in_every_form() {
        // German parts thousands by a point and decimals by a comma (CLDR 48, de).
        let german = Language::of(&"de".parse().unwrap(), LengthUnit::Metres);
        assert_eq!(
            german.write(&Arg::RateRange(Span::new(1000.0, 2373.2, 2400.0))),
            "2.350 Mb/s (1.000 to 2.400)"
        );
        assert_eq!(german.write(&Arg::Loss(3.46)), "3,5 dB");
        // Eastern Arabic-Indic digits in what a message counts by, and in a number of its own (CLDR 48, fa).
        let persian =
            Language::of(&"fa".parse().unwrap(), LengthUnit::Metres).with(&["many = { $n }/{ 2.5 }"]);
        assert_eq!(
            persian.say(&Phrase::new("many").with("n", Arg::Count(120))),
            "\u{2068}۱۲۰\u{2069}/\u{2068}۲٫۵\u{2069}"
        );
        assert_eq!(persian.write(&Arg::Count(120)), "۱۲۰");
    }
}

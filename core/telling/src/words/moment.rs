//! A moment as a person reads it: date and time of UTC. Shells show local time instead where they know it.

use icu_datetime::FixedCalendarDateTimeFormatter;
use icu_datetime::fieldsets::YMD;
use icu_datetime::input::{Date, DateTime, Time};
use icu_locale_core::Locale;
use unic_langid::LanguageIdentifier;

/// Milliseconds since 1970 as date and time of UTC: `2026-11-25 10:39` (ISO 8601-1:2019, with a space for the T).
pub fn date_and_time(ms: u64) -> String {
    let Moment { year, month, day, hour, minute } = Moment::of(ms);
    format!("{year:04}-{month:02}-{day:02} {hour:02}:{minute:02}")
}

/// The same as a locale writes it. English stays with the year first: its readers do not agree on whether the day or
/// the month comes first.
pub(super) fn in_locale(ms: u64, locale: &LanguageIdentifier) -> String {
    let is_english = locale.language.as_str() == "en";
    (!is_english).then(|| spoken(ms, locale)).flatten().unwrap_or_else(|| date_and_time(ms))
}

/// `None` for a moment or a locale that the library does not know.
fn spoken(ms: u64, locale: &LanguageIdentifier) -> Option<String> {
    let Moment { year, month, day, hour, minute } = Moment::of(ms);
    let locale: Locale = locale.to_string().parse().ok()?;
    let date = Date::try_new_gregorian(i32::try_from(year).ok()?, month, day).ok()?;
    let time = Time::try_new(hour, minute, 0, 0).ok()?;
    let form = FixedCalendarDateTimeFormatter::try_new(locale.into(), YMD::medium().with_time_hm()).ok()?;
    Some(form.format(&DateTime { date, time }).to_string())
}

struct Moment {
    year: u64,
    month: u8,
    day: u8,
    hour: u8,
    minute: u8,
}

impl Moment {
    /// The moment so many milliseconds after 1970 began. Years are counted from March, so that the leap day is a
    /// year's last (H. Hinnant, "chrono-compatible low-level date algorithms", 2013).
    fn of(ms: u64) -> Self {
        let minutes = ms / 60_000;
        let (days, minute) = (minutes / 1440, minutes % 1440);
        let days = days + 719_468;
        let (era, of_era) = (days / 146_097, days % 146_097);
        let year = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
        let of_year = of_era - (365 * year + year / 4 - year / 100);
        let shifted = (5 * of_year + 2) / 153;
        let day = of_year - (153 * shifted + 2) / 5 + 1;
        let month = if shifted < 10 { shifted + 3 } else { shifted - 9 };
        let small = |number: u64| u8::try_from(number).unwrap_or(u8::MAX);
        Self {
            year: era * 400 + year + u64::from(month <= 2),
            month: small(month),
            day: small(day),
            hour: small(minute / 60),
            minute: small(minute % 60),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Seconds from GNU date (coreutils 9): `date -u -d '2000-02-29 23:59' +%s` and so on.
    #[test]
    fn dates_as_gnu_date_gives_them() {
        for (seconds, text) in [
            (0, "1970-01-01 00:00"),
            (951_868_740, "2000-02-29 23:59"),
            (1_709_164_800, "2024-02-29 00:00"),
            (1_795_603_140, "2026-11-25 10:39"),
            (4_107_542_400, "2100-03-01 00:00"),
            (253_402_300_799, "9999-12-31 23:59"),
        ] {
            assert_eq!(date_and_time(seconds * 1000), text);
        }
    }

    #[test]
    fn a_date_is_written_as_the_locale_writes_it() {
        // The pattern of a medium date with a short time for each locale (CLDR 48): 25.11.2026, 10:39 and so on.
        let ms = 1_795_603_140_000;
        let written = |locale: &str| in_locale(ms, &locale.parse().unwrap());
        assert_eq!(written("en"), "2026-11-25 10:39");
        assert_eq!(written("de"), "25.11.2026, 10:39");
        assert_eq!(written("fr"), "25 nov. 2026, 10:39");
    }
}

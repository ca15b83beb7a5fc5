//! A moment as a person reads it: date and time of UTC. Shells show local time instead where they know it.

use icu_datetime::FixedCalendarDateTimeFormatter;
use icu_datetime::fieldsets::YMD;
use icu_datetime::input::{Date, DateTime, Time, UtcOffset, ZonedDateTime};
use icu_locale_core::Locale;
use unic_langid::LanguageIdentifier;

/// Milliseconds since 1970 as date and time of UTC: `2026-11-25 10:39` (ISO 8601-1:2019, with a space for the T).
pub fn date_and_time(ms: u64) -> String {
    let Moment { year, month, day, time } = Moment::of(ms);
    format!("{year:04}-{month:02}-{day:02} {:02}:{:02}", time.hour.number(), time.minute.number())
}

/// The day alone, of UTC: `2026-11-25`; as the locale writes it, but for English, as [`in_locale`] says.
pub(super) fn day_in_locale(ms: u64, locale: &LanguageIdentifier) -> String {
    let Moment { year, month, day, .. } = Moment::of(ms);
    let spoken = || {
        let locale: Locale = locale.to_string().parse().ok()?;
        let date = Date::try_new_gregorian(year, month, day).ok()?;
        let form = FixedCalendarDateTimeFormatter::try_new(locale.into(), YMD::medium()).ok()?;
        Some(form.format(&date).to_string())
    };
    let is_english = locale.language.as_str() == "en";
    (!is_english).then(spoken).flatten().unwrap_or_else(|| format!("{year:04}-{month:02}-{day:02}"))
}

/// Date and time as a locale writes them. English stays with the year first: its readers do not agree on whether the day or
/// the month comes first.
pub(super) fn in_locale(ms: u64, locale: &LanguageIdentifier) -> String {
    let is_english = locale.language.as_str() == "en";
    (!is_english).then(|| spoken(ms, locale)).flatten().unwrap_or_else(|| date_and_time(ms))
}

/// `None` for a moment or a locale that the library does not know.
fn spoken(ms: u64, locale: &LanguageIdentifier) -> Option<String> {
    let Moment { year, month, day, time } = Moment::of(ms);
    let locale: Locale = locale.to_string().parse().ok()?;
    let date = Date::try_new_gregorian(year, month, day).ok()?;
    let form = FixedCalendarDateTimeFormatter::try_new(locale.into(), YMD::medium().with_time_hm()).ok()?;
    Some(form.format(&DateTime { date, time }).to_string())
}

/// A day of the Gregorian calendar and the time of that day, of UTC.
struct Moment {
    year: i32,
    month: u8,
    day: u8,
    time: Time,
}

impl Moment {
    /// The moment so many milliseconds after 1970 began; one beyond what 63 bits hold is the last that they do.
    fn of(ms: u64) -> Self {
        let ms = i64::try_from(ms).unwrap_or(i64::MAX);
        let ZonedDateTime { date, time, .. } =
            ZonedDateTime::from_epoch_milliseconds_and_utc_offset(ms, UtcOffset::zero());
        let (year, month, day) = (date.year().extended_year(), date.month().number(), date.day_of_month().0);
        Self { year, month, day, time }
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
        let day = |locale: &str| day_in_locale(ms, &locale.parse().unwrap());
        assert_eq!([day("en"), day("de"), day("fr")], ["2026-11-25", "25.11.2026", "25 nov. 2026"]);
    }
}

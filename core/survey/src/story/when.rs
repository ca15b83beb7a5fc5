//! When something was written, as text.

/// Milliseconds since 1970 as date and time of UTC: `2026-11-25 10:39`. Shells show local time instead where they
/// know the zone.
pub fn date_and_time(ms: u64) -> String {
    let minutes = ms / 60_000;
    let (days, minute) = (minutes / 1440, minutes % 1440);
    let (year, month, day) = civil(days);
    format!("{year:04}-{month:02}-{day:02} {:02}:{:02}", minute / 60, minute % 60)
}

/// The date of a day counted from 1970-01-01 in the Gregorian calendar. Years are counted from March, so that the
/// leap day is a year's last (H. Hinnant, "chrono-compatible low-level date algorithms", 2013).
fn civil(days: u64) -> (u64, u64, u64) {
    let days = days + 719_468;
    let (era, of_era) = (days / 146_097, days % 146_097);
    let year_of_era = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let shifted = (5 * of_year + 2) / 153;
    let day = of_year - (153 * shifted + 2) / 5 + 1;
    let month = if shifted < 10 { shifted + 3 } else { shifted - 9 };
    (era * 400 + year_of_era + u64::from(month <= 2), month, day)
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
}

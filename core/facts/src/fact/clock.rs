//! The clock that gives facts their ids.
//!
//! Each id is later than every id that this device has made or taken in, even when the wall clock jumps back:
//! milliseconds = max(now, last + 1). A fact therefore always has a greater id than the facts it replaces.

use std::fmt;
use std::time::{SystemTime, UNIX_EPOCH};

use super::id::FactId;
use crate::error::FactsError;

/// A date that has certainly passed, 2026-01-01 UTC, for builds that state none in `SOURCE_DATE_EPOCH`.
const PASSED_MS: u64 = 1_767_225_600_000;

/// How far ahead of this device a fact may be dated: a year of 366 days, in milliseconds.
pub const MAX_AHEAD_MS: u64 = 366 * 24 * 3600 * 1000;

/// The latest wall clock that is believed, about the year 6429. It leaves ids room to rise for ever.
const MAX_WALL_MS: u64 = 1 << 47;

type WallClock = Box<dyn Fn() -> u64 + Send + Sync>;

/// Makes the ids of facts, each greater than all before.
pub struct FactClock {
    wall_ms: WallClock,
    last_ms: u64,
}

impl FactClock {
    /// A clock that follows the device's own.
    pub fn system() -> Self {
        Self::with_wall(|| {
            // Before 1970 counts as 1970.
            let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
            u64::try_from(since.as_millis()).unwrap_or(u64::MAX)
        })
    }

    /// A clock that follows `wall_ms`: milliseconds since 1970-01-01 UTC.
    pub fn with_wall(wall_ms: impl Fn() -> u64 + Send + Sync + 'static) -> Self {
        Self { wall_ms: Box::new(wall_ms), last_ms: 0 }
    }

    /// The next id.
    pub fn next_id(&mut self) -> FactId {
        self.last_ms = self.now_ms().max(self.last_ms.saturating_add(1));
        FactId::at(self.last_ms)
    }

    /// Makes all later ids greater than `seen`.
    pub fn raise(&mut self, seen: FactId) {
        self.last_ms = self.last_ms.max(seen.ms());
    }

    /// Refuses an id dated more than a year ahead of the later of wall clock and build date. So a file with a
    /// forged far future cannot drag this clock along, and a device whose clock stands in 1970 refuses nothing
    /// that was written up to a year after it was built.
    ///
    /// # Errors
    /// [`FactsError::FromTheFuture`].
    pub fn check(&self, id: FactId) -> Result<(), FactsError> {
        if id.ms() > self.now_ms().max(build_date_ms()).saturating_add(MAX_AHEAD_MS) {
            return Err(FactsError::FromTheFuture { id });
        }
        Ok(())
    }

    /// What the wall clock says, milliseconds since 1970.
    pub(crate) fn now_ms(&self) -> u64 {
        (self.wall_ms)().min(MAX_WALL_MS)
    }
}

impl Default for FactClock {
    fn default() -> Self {
        Self::system()
    }
}

impl fmt::Debug for FactClock {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.debug_struct("FactClock").field("last_ms", &self.last_ms).finish_non_exhaustive()
    }
}

/// When this program was built, in milliseconds since 1970, or a date before that if the build did not say.
fn build_date_ms() -> u64 {
    let stated = option_env!("SOURCE_DATE_EPOCH").and_then(|seconds| seconds.parse::<u64>().ok());
    stated.map_or(PASSED_MS, |seconds| seconds.saturating_mul(1000).max(PASSED_MS))
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;
    use std::sync::atomic::{AtomicU64, Ordering};

    use super::*;

    fn adjustable(start: u64) -> (Arc<AtomicU64>, FactClock) {
        let wall = Arc::new(AtomicU64::new(start));
        let read = Arc::clone(&wall);
        (wall, FactClock::with_wall(move || read.load(Ordering::Relaxed)))
    }

    #[test]
    fn rises_even_when_the_wall_clock_jumps_back() {
        let (wall, mut clock) = adjustable(2_000_000_000_000);
        let mut last = clock.next_id();
        for now in [2_000_000_000_000, 1_000, 0, 2_000_000_000_005, 1_999_999_999_999, u64::MAX, 5] {
            wall.store(now, Ordering::Relaxed);
            for _ in 0..3 {
                let next = clock.next_id();
                assert!(next > last && next.ms() > last.ms(), "wall at {now}");
                last = next;
            }
        }
    }

    #[test]
    fn follows_the_wall_clock_when_that_is_ahead() {
        let (wall, mut clock) = adjustable(1_800_000_000_000);
        assert_eq!(clock.next_id().ms(), 1_800_000_000_000);
        wall.store(1_800_000_007_000, Ordering::Relaxed);
        assert_eq!(clock.next_id().ms(), 1_800_000_007_000);
    }

    #[test]
    fn is_raised_by_what_it_sees() {
        let (_, mut clock) = adjustable(1_800_000_000_000);
        let seen = FactId::at(1_800_000_900_000);
        clock.raise(seen);
        assert_eq!(clock.next_id().ms(), 1_800_000_900_001);
        clock.raise(FactId::at(3));
        assert_eq!(clock.next_id().ms(), 1_800_000_900_002);
    }

    #[test]
    fn refuses_what_is_more_than_a_year_ahead() {
        let now = 2_500_000_000_000;
        let (_, clock) = adjustable(now);
        assert!(clock.check(FactId::at(now + MAX_AHEAD_MS)).is_ok());
        let later = FactId::at(now + MAX_AHEAD_MS + 1);
        assert!(matches!(clock.check(later), Err(FactsError::FromTheFuture { id }) if id == later));
        assert!(clock.check(FactId::at(FactId::MAX_MS)).is_err());
    }

    #[test]
    fn a_device_back_in_1970_takes_what_was_written_since_it_was_built() {
        let (_, clock) = adjustable(0);
        assert!(clock.check(FactId::at(PASSED_MS + 30 * 24 * 3600 * 1000)).is_ok());
    }

    #[test]
    fn a_wall_clock_beyond_all_bounds_leaves_room_to_rise() {
        let (_, mut clock) = adjustable(u64::MAX);
        let first = clock.next_id();
        assert!(clock.next_id() > first);
        assert!(clock.check(FactId::at(FactId::MAX_MS)).is_err());
    }
}

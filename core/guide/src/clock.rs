//! The time by this device's clock.

use std::time::{SystemTime, UNIX_EPOCH};

/// Milliseconds since 1970; 0 where the clock stands before that.
pub(crate) fn now_ms() -> u64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    u64::try_from(since.as_millis()).unwrap_or(u64::MAX)
}

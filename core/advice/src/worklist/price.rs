//! What a change costs whoever makes it, in the coin of what it gains: Mb/s of a wished rate.

use house::record::{ChangeKind, Survey};

use super::care::takes_cable;
use super::effort::effort;
use super::need::WORTH_MBPS;

/// A minute of work (our own choice): who wishes for 100 Mb/s more works for it, an hour and a half at the most.
const MINUTE_MBPS: f64 = 1.0;

/// A part that has to be bought (our own choice).
const PART_MBPS: f64 = 5.0;

/// An adapter that has to be bought (our own choice: it is some ten times as dear as a splitter or a filter, from memory).
const ADAPTER_MBPS: f64 = 50.0;

/// Cable that is laid or traced, which mostly takes a ladder or an attic (our own choice).
const HEIGHTS_MBPS: f64 = 30.0;

/// What it costs. No change costs less than what is worth any work at all.
pub(super) fn price(change: ChangeKind, house: &Survey) -> f64 {
    let effort = effort(change, house);
    let parts: u64 = effort.parts.iter().map(|part| part.count).sum();
    let heights = if takes_cable(change) { HEIGHTS_MBPS } else { 0.0 };
    let each = if matches!(change, ChangeKind::NewerAdapter { .. }) { ADAPTER_MBPS } else { PART_MBPS };
    (effort.minutes as f64 * MINUTE_MBPS + parts as f64 * each + heights).max(WORTH_MBPS)
}

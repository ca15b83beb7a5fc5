//! What a link over coax adds to a packet's round trip.

use crate::estimates::link::ROUND_TRIP;
use crate::span::Span;

/// The round trip added, in milliseconds: 2 to 7, likely 3. Sources: [`ROUND_TRIP`].
pub const fn round_trip_added() -> Span {
    ROUND_TRIP.span
}

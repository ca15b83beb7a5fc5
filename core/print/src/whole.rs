//! Numbers of pixels out of measures, and back.

/// A measure as a number of pixels, rounded; what is no number, and what is below nothing, is nothing.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held within what is there before"
)]
pub(crate) fn whole(measure: f32) -> usize {
    measure.round().clamp(0.0, 16_777_216.0) as usize
}

/// A measure as a number of pixels, rounded down.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held within what is there before"
)]
pub(crate) fn floor(measure: f32) -> usize {
    measure.clamp(0.0, 16_777_216.0) as usize
}

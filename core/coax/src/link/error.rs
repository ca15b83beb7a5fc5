//! What can be wrong with what a link is asked to work on.

use crate::quantity::Megahertz;

/// Why a link could not be worked out.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LinkError {
    /// The frequencies are fewer than two, not rising, or not positive finite numbers.
    #[error(
        "frequency number {place} of the path is {frequency}: give at least two frequencies above zero, each higher than the last"
    )]
    Grid {
        /// Which frequency, counted from 0.
        place: usize,
        /// Its value; zero if there is none.
        frequency: Megahertz,
    },
    /// A power transfer for each frequency is needed.
    #[error(
        "the path has {frequencies} frequencies and {transfers} power transfers: give one for each frequency"
    )]
    Lengths {
        /// Number of frequencies.
        frequencies: usize,
        /// Number of power transfers.
        transfers: usize,
    },
    /// A power transfer is negative, infinite or not a number.
    #[error("the power transfer at {frequency} is {transfer}: it must be a finite number, zero or more")]
    Transfer {
        /// At which frequency.
        frequency: Megahertz,
        /// Its value.
        transfer: f64,
    },
    /// The path was solved over too few frequencies for the channel.
    #[error(
        "the path is known from {low} to {high}, but a channel takes {from} to {to}: solve it over the whole channel"
    )]
    Uncovered {
        /// Lowest known frequency.
        low: Megahertz,
        /// Highest known frequency.
        high: Megahertz,
        /// Lower edge of the channel's used band.
        from: Megahertz,
        /// Upper edge of the channel's used band.
        to: Megahertz,
    },
    /// A drawn value of the link is infinite or not a number.
    #[error(
        "transmit power, noise or gap of the link is not a usable number: give finite values in decibels"
    )]
    Draw,
    /// A version of the standard that is not known.
    #[error("'{text}' is no version known here: write 1.0, 1.1, 2.0, 2.0 bonded or 2.5")]
    UnknownVersion {
        /// What was written.
        text: String,
    },
    /// A frequency that a channel mask has no bit for.
    #[error("{frequency} has no bit in the channel mask: it counts in steps of 25 MHz from {low} to {high}")]
    OffGrid {
        /// The frequency.
        frequency: Megahertz,
        /// The mask's lowest frequency.
        low: Megahertz,
        /// The mask's highest frequency.
        high: Megahertz,
    },
}

//! Every figure that no document we could read backs, in one place, with its range and its backing: nothing else in
//! this crate is guessed.

use crate::span::{Backing, Span};

/// A figure with its range, its unit and what stands behind it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate {
    /// A name that is the same for ever, for words and documents to look it up by.
    pub name: &'static str,
    /// The range.
    pub span: Span,
    /// The unit as written after a number.
    pub unit: &'static str,
    /// What stands behind it.
    pub backing: Backing,
}

/// Writes down estimates and their list `ALL`, so that none can be left out of it.
macro_rules! estimates {
    ($($(#[$doc:meta])* $name:ident = $text:literal, $low:expr, $likely:expr, $high:expr, $unit:literal, $backing:expr;)*) => {
        $($(#[$doc])*
        pub const $name: $crate::estimates::Estimate = $crate::estimates::Estimate {
            name: $text,
            span: $crate::span::Span { low: $low, likely: $likely, high: $high },
            unit: $unit,
            backing: $backing,
        };)*
        /// All of this section.
        pub const ALL: &[$crate::estimates::Estimate] = &[$($name),*];
    };
}

/// All sections.
pub const ALL: &[&[Estimate]] = &[parts::ALL];

/// Estimates about parts: cables, splitters, filters, amplifiers, joints.
pub mod parts {
    use super::Backing::{CommonPractice, Estimate as Held, FromMemory};

    estimates! {
        /// Impedance of a run of cable.
        CABLE_IMPEDANCE = "cable-impedance", 73.0, 75.0, 77.0, "ohm", CommonPractice;
        /// How far a 6-series run's loss is from the fitted sheet's.
        SIX_SPREAD = "cable-six-spread", 0.97, 1.0, 1.05, "times",
            Held("6-series sheets at 1675 MHz lie between 8.3 and 8.7 dB/100 ft");
        /// `k1` of the 59 series at `k2 = 0`, through the table's 1000 MHz.
        FIFTY_NINE_K1 = "cable-fifty-nine-k1", 0.247, 0.2568, 0.275, "dB/100 ft", FromMemory;
        /// `k2` of the 59 series: an unconstrained fit to a table that ends at 1000 MHz turns it negative.
        FIFTY_NINE_K2 = "cable-fifty-nine-k2", 0.0, 0.0, 0.0006, "dB/100 ft", FromMemory;
        /// `k1` of the 7 series.
        SEVEN_K1 = "cable-seven-k1", 0.160, 0.1647, 0.172, "dB/100 ft", FromMemory;
        /// `k2` of the 7 series.
        SEVEN_K2 = "cable-seven-k2", 0.0, 0.000_049, 0.0004, "dB/100 ft", FromMemory;
        /// `k1` of the 11 series.
        ELEVEN_K1 = "cable-eleven-k1", 0.120, 0.1256, 0.132, "dB/100 ft", FromMemory;
        /// `k2` of the 11 series.
        ELEVEN_K2 = "cable-eleven-k2", 0.0, 0.000_281, 0.0006, "dB/100 ft", FromMemory;
        /// Where an unknown series lies between 6 (0) and 59 (1).
        UNKNOWN_SERIES = "cable-unknown-series", 0.0, 0.4, 1.0, "of the way from 6 to 59 series", CommonPractice;
        /// Power of frequency that 6-series loss follows below 55 MHz: 0.58 dB at 5, 1.60 dB at 55 MHz.
        SIX_LOW_POWER = "cable-six-low-power", 0.4232, 0.4232, 0.4232, "", FromMemory;
        /// The same of 59: 0.86 and 2.05 dB.
        FIFTY_NINE_LOW_POWER = "cable-fifty-nine-low-power", 0.3622, 0.3622, 0.3622, "", FromMemory;
        /// The same of 7: 0.47 and 1.25 dB.
        SEVEN_LOW_POWER = "cable-seven-low-power", 0.4079, 0.4079, 0.4079, "", FromMemory;
        /// The same of 11: 0.38 and 0.96 dB.
        ELEVEN_LOW_POWER = "cable-eleven-low-power", 0.3865, 0.3865, 0.3865, "", FromMemory;
        /// Velocity of a foam cable.
        CABLE_VELOCITY = "cable-velocity", 0.81, 0.83, 0.85, "of light's", CommonPractice;

        /// Slope of a splitter's leg loss.
        SPLITTER_SLOPE = "splitter-slope", 0.0, 0.2, 0.5, "dB/GHz", CommonPractice;
        /// Leg to leg loss in the rated band.
        SPLITTER_ISOLATION = "splitter-isolation", 20.0, 25.0, 30.0, "dB", CommonPractice;
        /// Leg to leg loss of a splitter rated for MoCA, which is made to let rooms hear each other.
        SPLITTER_ISOLATION_RATED_FOR_MOCA = "splitter-isolation-rated-for-moca", 14.0, 18.0, 25.0, "dB",
            Held("US 11,895,435 B2 (2024), abstract: less than about 16 dB between outputs is the target");
        /// Return loss in the rated band.
        SPLITTER_RETURN_LOSS = "splitter-return-loss", 14.0, 18.0, 20.0, "dB", CommonPractice;
        /// Extra loss a pass above the rated band, reached at the ramp.
        SPLITTER_EXTRA_ABOVE = "splitter-extra-above-rating", 1.0, 3.0, 10.0, "dB", CommonPractice;
        /// Leg to leg loss above the rated band.
        SPLITTER_ISOLATION_ABOVE = "splitter-isolation-above-rating", 10.0, 20.0, 40.0, "dB", CommonPractice;
        /// Return loss above the rated band.
        SPLITTER_RETURN_LOSS_ABOVE = "splitter-return-loss-above-rating", 6.0, 10.0, 14.0, "dB", CommonPractice;
        /// How far above the rated top the figures above the rating are reached.
        SPLITTER_RAMP = "splitter-ramp", 250.0, 350.0, 450.0, "MHz", CommonPractice;
        /// Delay from a splitter's input half way to a leg.
        SPLITTER_DELAY = "splitter-delay", 0.1, 0.3, 0.6, "ns", CommonPractice;
        /// Top of the band of a splitter whose label is not readable.
        SPLITTER_UNKNOWN_TOP = "splitter-unknown-top", 860.0, 1000.0, 1002.0, "MHz", CommonPractice;

        /// Return loss of an entry filter in its pass band.
        FILTER_RETURN_LOSS = "filter-return-loss", 18.0, 20.0, 25.0, "dB",
            Held("a published data sheet (2019): 18 dB min to 860 MHz");
        /// How much more than its label an entry filter rejects.
        FILTER_MARGIN = "filter-margin", 0.0, 3.0, 10.0, "dB", CommonPractice;
        /// Delay of an entry filter.
        FILTER_DELAY = "filter-delay", 0.4, 0.8, 2.0, "ns", CommonPractice;

        /// Loss of an amplifier outside its bands.
        AMPLIFIER_OPAQUE = "amplifier-opaque", 40.0, 60.0, 80.0, "dB", CommonPractice;
        /// Return loss of an amplifier.
        AMPLIFIER_RETURN_LOSS = "amplifier-return-loss", 10.0, 14.0, 18.0, "dB", CommonPractice;
        /// Delay of an amplifier.
        AMPLIFIER_DELAY = "amplifier-delay", 1.0, 3.0, 8.0, "ns", CommonPractice;
        /// Loss of each stage of two inside an amplifier's housing.
        AMPLIFIER_STAGE = "amplifier-stage", 3.3, 3.5, 3.8, "dB", CommonPractice;

        /// Return loss of a sound joint.
        JOINT_RETURN_LOSS = "joint-return-loss", 20.0, 26.0, 34.0, "dB", CommonPractice;
        /// Loss of a barrel (coupler of two cables).
        BARREL_LOSS = "barrel-loss", 0.1, 0.2, 0.5, "dB", CommonPractice;
        /// Loss of a wall plate.
        WALL_PLATE_LOSS = "wall-plate-loss", 0.2, 0.3, 0.5, "dB", CommonPractice;
        /// Loss of a ground block.
        GROUND_BLOCK_LOSS = "ground-block-loss", 0.1, 0.2, 0.4, "dB", CommonPractice;

        /// Loss that sound connectors add.
        SOUND_LOSS = "condition-sound", 0.0, 0.05, 0.15, "dB", CommonPractice;
        /// Loss that connectors nobody has looked at add.
        UNSURE_LOSS = "condition-unsure", 0.0, 0.2, 1.0, "dB", CommonPractice;
        /// Loss of a connector only turned on by hand.
        HAND_TIGHT_LOSS = "condition-hand-tight", 0.1, 0.6, 3.0, "dB", CommonPractice;
        /// Loss of a twist-on connector.
        TWIST_ON_LOSS = "condition-twist-on", 0.3, 1.5, 6.0, "dB", CommonPractice;
        /// Loss of a corroded connector.
        CORRODED_LOSS = "condition-corroded", 0.5, 3.0, 12.0, "dB", CommonPractice;
        /// How much of a good return loss a bad connector takes away.
        BAD_JOINT_RETURN_LOSS = "condition-bad-return-loss", 8.0, 12.0, 20.0, "dB", CommonPractice;
    }
}

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
pub const ALL: &[&[Estimate]] = &[parts::ALL, house::ALL, link::ALL];

/// Estimates about parts: cables, splitters, filters, amplifiers, joints.
pub mod parts {
    use super::Backing::{CommonPractice, Estimate as Held, FromMemory};

    estimates! {
        /// Impedance of a run of cable.
        CABLE_IMPEDANCE = "cable-impedance", 73.0, 75.0, 77.0, "ohm", CommonPractice;
        /// How far a 6-series run's loss is from the fitted sheet's.
        SIX_SPREAD = "cable-six-spread", 0.97, 1.0, 1.05, "times",
            Held("8.71 dB/100 ft at 1675 MHz (herereadthis/timballisto), 8.31 (from memory)");
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

        /// The frequency at which a splitter's label states its losses; the slope turns about it.
        SPLITTER_STATED_AT = "splitter-stated-at", 800.0, 800.0, 800.0, "MHz", CommonPractice;
        /// Slope of a splitter's leg loss.
        SPLITTER_SLOPE = "splitter-slope", 0.0, 0.2, 0.5, "dB/GHz", CommonPractice;
        /// Leg to leg loss in the rated band.
        SPLITTER_ISOLATION = "splitter-isolation", 20.0, 25.0, 30.0, "dB", CommonPractice;
        /// Leg to leg loss of a splitter rated for MoCA, which is made to let rooms hear each other.
        SPLITTER_ISOLATION_RATED_FOR_MOCA = "splitter-isolation-rated-for-moca", 14.0, 18.0, 25.0, "dB",
            Held("US 11,895,435 B2 (2024): less than 16 dB");
        /// Leg to leg loss of a splitter whose label reaches over the MoCA band and does not name it: it may be either.
        SPLITTER_ISOLATION_WIDE = "splitter-isolation-wide", 14.0, 22.0, 30.0, "dB", CommonPractice;
        /// Return loss in the rated band.
        SPLITTER_RETURN_LOSS = "splitter-return-loss", 14.0, 18.0, 20.0, "dB", CommonPractice;
        /// Extra loss a pass above the rated band, reached at the ramp.
        SPLITTER_EXTRA_ABOVE = "splitter-extra-above-rating", 1.0, 3.0, 10.0, "dB", CommonPractice;
        /// The chance that a splitter is one of those that lose far more above their rated band.
        SPLITTER_HEAVY_ABOVE_ODDS = "splitter-heavy-above-odds", 0.2, 0.2, 0.2, "", CommonPractice;
        /// Extra loss a pass of such a one.
        SPLITTER_HEAVY_ABOVE = "splitter-heavy-above-rating", 10.0, 15.0, 25.0, "dB", CommonPractice;
        /// Leg to leg loss above the rated band.
        SPLITTER_ISOLATION_ABOVE = "splitter-isolation-above-rating", 10.0, 20.0, 40.0, "dB", CommonPractice;
        /// Return loss above the rated band.
        SPLITTER_RETURN_LOSS_ABOVE = "splitter-return-loss-above-rating", 6.0, 10.0, 14.0, "dB", CommonPractice;
        /// How far above the rated top the figures above the rating are reached.
        SPLITTER_RAMP = "splitter-ramp", 250.0, 350.0, 450.0, "MHz", CommonPractice;
        /// Delay from a splitter's input half way to a leg.
        SPLITTER_DELAY = "splitter-delay", 0.1, 0.3, 0.6, "ns", CommonPractice;
        /// Loss of each split in two beyond the ideal 3.01 dB, where a part is known by its whole loss only.
        SPLITTER_STAGE_EXCESS = "splitter-stage-excess", 0.5, 0.5, 0.5, "dB",
            Held("3.5 dB a split in two: \"How much signal do I lose going through a splitter?\", skywarnforum.org");
        /// What a splitter to get, or one at an outlet, loses to a leg behind one split in two.
        SPLITTER_NEW_ONE_STAGE = "splitter-new-one-stage", 3.7, 3.7, 3.7, "dB",
            Held("labels photographed in the public repository N7Alpha/coaxial-cable-network");
        /// The same behind two: the weaker legs of a three-way, all of a four-way.
        SPLITTER_NEW_TWO_STAGES = "splitter-new-two-stages", 7.3, 7.3, 7.3, "dB",
            Held("labels photographed in the public repository N7Alpha/coaxial-cable-network: legs of a three-way");
        /// Loss to each leg of a splitter to get that has five or six.
        SPLITTER_NEW_SIX = "splitter-new-six-way", 9.5, 9.5, 9.5, "dB", CommonPractice;
        /// Loss to each leg of a larger one.
        SPLITTER_NEW_EIGHT = "splitter-new-eight-way", 11.0, 11.0, 11.0, "dB", CommonPractice;
        /// Top of the band of a splitter whose label is not readable.
        SPLITTER_UNKNOWN_TOP = "splitter-unknown-top", 860.0, 1000.0, 1002.0, "MHz", CommonPractice;

        /// Return loss of an entry filter in its pass band.
        FILTER_RETURN_LOSS = "filter-return-loss", 18.0, 20.0, 25.0, "dB",
            Held("data sheet of a ground-block filter, 2019 (N7Alpha/coaxial-cable-network): 18 dB or more to 860 MHz");
        /// How much more than its label an entry filter rejects.
        FILTER_MARGIN = "filter-margin", 0.0, 3.0, 10.0, "dB", CommonPractice;
        /// Delay of an entry filter.
        FILTER_DELAY = "filter-delay", 0.4, 0.8, 2.0, "ns", CommonPractice;

        /// Loss that a band filter adds in its pass bands.
        BAND_FILTER_LOSS = "band-filter-loss", 0.5, 1.0, 2.0, "dB", CommonPractice;
        /// How much a filter whose label does not say rejects.
        FILTER_REJECTION = "filter-rejection", 30.0, 40.0, 60.0, "dB", CommonPractice;
        /// From the edge of a band filter's pass band to where it rejects, as a share of the edge's frequency.
        FILTER_GAP = "filter-gap", 0.06, 0.12, 0.25, "of the edge's frequency",
            Held("data sheet of a ground-block filter, 2019 (N7Alpha/coaxial-cable-network): 1002 to 1125 MHz");

        /// How much better a tap hears its input than its through output.
        TAP_DIRECTIVITY = "tap-directivity", 8.0, 14.0, 20.0, "dB", CommonPractice;
        /// Loss to a tap's through output beyond what the taps take.
        TAP_THROUGH_EXCESS = "tap-through-excess", 0.3, 0.6, 1.2, "dB", CommonPractice;

        /// Where a satellite combiner's lower band ends on most labels.
        COMBINER_LOW_TOP = "combiner-low-top", 806.0, 806.0, 806.0, "MHz", CommonPractice;
        /// The least width of its turnover, whatever its label says: some let the bands touch or overlap.
        COMBINER_LEAST_GAP = "combiner-least-gap", 0.06, 0.06, 0.06, "of the lower band's top", CommonPractice;
        /// Loss of a satellite combiner to its port for the lower band.
        COMBINER_LOW_LOSS = "combiner-low-loss", 0.3, 0.7, 1.5, "dB", CommonPractice;
        /// Loss of a satellite combiner to its satellite port.
        COMBINER_SATELLITE_LOSS = "combiner-satellite-loss", 0.5, 1.2, 2.5, "dB", CommonPractice;
        /// How far a satellite combiner keeps either band from the other's port.
        COMBINER_ISOLATION = "combiner-isolation", 20.0, 30.0, 45.0, "dB", CommonPractice;
        /// Return loss of a satellite combiner in either band.
        COMBINER_RETURN_LOSS = "combiner-return-loss", 8.0, 12.0, 18.0, "dB", CommonPractice;

        /// Return loss of a pad.
        PAD_RETURN_LOSS = "pad-return-loss", 14.0, 20.0, 26.0, "dB", CommonPractice;
        /// Loss of a power inserter to what is not power.
        POWER_INSERTER_LOSS = "power-inserter-loss", 0.3, 0.6, 1.5, "dB", CommonPractice;
        /// Loss of a device to the socket by which it passes the cable on.
        PASSED_ON_LOSS = "passed-on-loss", 0.5, 3.7, 6.0, "dB", CommonPractice;
        /// Loss from the cable to a device that passes the cable on.
        PASSING_DEVICE_LOSS = "passing-device-loss", 0.5, 3.7, 6.0, "dB", CommonPractice;

        /// Between the bands of the two ways an amplifier's diplex filter turns over within this share of the split: the way to
        /// the house begins at 54 MHz over a way back to 42, at 105 over 85, at 258 over 204.
        AMPLIFIER_TURNOVER = "amplifier-turnover", 0.26, 0.26, 0.26, "of the split's frequency", FromMemory;
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
        /// Loss of conductors twisted together by hand, or of a connector whose shield is off.
        BAD_JOINT_LOSS = "condition-bad-joint", 1.0, 4.0, 15.0, "dB", CommonPractice;
        /// Return loss of the same: with the next echo on the cable it makes a ripple.
        BAD_JOINT_ECHO = "condition-bad-joint-echo", 3.0, 6.0, 12.0, "dB", CommonPractice;
        /// Return loss of any other bad connector.
        BAD_JOINT_RETURN_LOSS = "condition-bad-return-loss", 8.0, 12.0, 20.0, "dB", CommonPractice;
    }
}

/// Estimates about what a survey leaves open: runs nobody measured, ends nobody saw, devices in the MoCA band.
pub mod house {
    use super::Backing::{CommonPractice, Estimate as Held};

    estimates! {
        /// Length of a run that nobody has measured, paced or guessed.
        UNKNOWN_RUN = "unknown-run-length", 2.0, 10.0, 30.0, "m", CommonPractice;
        /// What a length may be that was measured.
        LENGTH_MEASURED = "length-measured", 0.98, 1.0, 1.02, "times what was said", CommonPractice;
        /// The same of one that was paced.
        LENGTH_PACED = "length-paced", 0.8, 1.0, 1.2, "times what was said", CommonPractice;
        /// The same of one that was guessed.
        LENGTH_GUESSED = "length-guessed", 0.67, 1.0, 1.5, "times what was said", CommonPractice;
        /// What a level misses at another frequency than the one at which that was measured: a bad joint or a broken shield
        /// takes more here, less there.
        MISSING_ELSEWHERE = "missing-elsewhere", 0.5, 1.0, 1.5, "times what was measured", CommonPractice;
        /// Length of a cable to be laid that nobody has paced; its range is that of a guess.
        NEW_RUN = "new-run-length", 15.0, 15.0, 15.0, "m", CommonPractice;
        /// Length of the jumper between two parts that are put side by side.
        JUMPER = "jumper-length", 0.3, 0.3, 0.3, "m", CommonPractice;
        /// Length of a cable that leaves a port for nobody knows where.
        LOOSE_END = "loose-end-length", 1.0, 8.0, 20.0, "m", CommonPractice;
        /// Temperature of cable inside a house.
        INDOORS = "cable-temperature", 10.0, 22.0, 45.0, "°C", CommonPractice;
        /// What a TV, TV box or modem sends back in the MoCA band, as an amplitude.
        DEVICE_REFLECTION = "device-reflection", 0.2, 0.6, 0.95, "", CommonPractice;
        /// Return loss of what stands behind an entry: the street's cable, and the tap at its other end, which is made for the
        /// band of TV and modem. Twice 30 m of 6 series lose 17 dB at 1.4 GHz; a drop may be a few metres long.
        ENTRY_RETURN_LOSS = "entry-return-loss", 6.0, 18.0, 30.0, "dB", CommonPractice;
        /// Delay of what comes back from there, one way: 5 to 60 m of cable.
        ENTRY_DELAY = "entry-delay", 20.0, 120.0, 240.0, "ns", CommonPractice;
        /// What a 75-ohm cap sends back: at least 20 dB return loss.
        CAP_REFLECTION = "cap-reflection", 0.0, 0.03, 0.1, "", CommonPractice;
        /// By how much the loss between two adapters is not what this model of the house makes of it: how parts behave that are
        /// nowhere written down, what nobody saw. How it was set: docs/method.md, section 4.
        MODEL_ERROR = "model-error", -2.0, 0.0, 3.0, "dB", Held("calibration against an independent model");
        /// The chance that a free port that nobody looked at is open, and not capped or in use.
        UNSEEN_OPEN = "unseen-port-open", 0.6, 0.6, 0.6, "", CommonPractice;
        /// Loss of a part that nobody has identified.
        UNKNOWN_PART = "unknown-part-loss", 0.2, 3.5, 12.0, "dB", CommonPractice;
        /// How far a part's loss is from its label.
        LABEL_SPREAD = "label-spread", -0.3, 0.0, 0.5, "dB", CommonPractice;
        /// Loss to a leg beyond the ideal split where the label is not readable.
        UNREAD_LEG_EXCESS = "unread-leg-excess", 0.4, 1.0, 2.0, "dB", CommonPractice;
        /// Loss of a tap whose label is not readable.
        UNREAD_TAP = "unread-tap-loss", 6.0, 12.0, 27.0, "dB", CommonPractice;
        /// Pass loss of an entry filter whose label is not readable.
        FILTER_PASS_LOSS = "filter-pass-loss", 0.3, 0.5, 1.0, "dB", CommonPractice;
        /// Gain of an amplifier whose label is not readable.
        AMPLIFIER_GAIN = "amplifier-gain", 6.0, 12.0, 20.0, "dB", CommonPractice;
        /// How far an amplifier's gain, either way, is from its label.
        AMPLIFIER_GAIN_SPREAD = "amplifier-gain-spread", -1.0, 0.0, 1.0, "dB", CommonPractice;
        /// Where the way back ends at an amplifier whose label does not say.
        AMPLIFIER_SPLIT = "amplifier-split", 42.0, 42.0, 42.0, "MHz", CommonPractice;
        /// Where an amplifier's gain ends whose label does not say so, or names one band for its gain and its by-pass.
        AMPLIFIER_TOP = "amplifier-top", 1002.0, 1002.0, 1002.0, "MHz", CommonPractice;
        /// The least width of an amplifier's band above its split.
        AMPLIFIER_LEAST_BAND = "amplifier-least-band", 50.0, 50.0, 50.0, "MHz", CommonPractice;
        /// Return gain of an amplifier whose label does not say.
        AMPLIFIER_RETURN_GAIN = "amplifier-return-gain", -6.0, 0.0, 5.0, "dB", CommonPractice;
        /// The chance that an amplifier on which nobody has read anything has a by-pass.
        AMPLIFIER_BYPASS_UNREAD = "amplifier-bypass-unread", 0.3, 0.3, 0.3, "", CommonPractice;
        /// The same where its label was read and names none: those that have one say so.
        AMPLIFIER_BYPASS_NOT_NAMED = "amplifier-bypass-not-named", 0.1, 0.1, 0.1, "", CommonPractice;
        /// Loss of an amplifier's by-pass in the MoCA band, without what the splitters in its housing take.
        AMPLIFIER_BYPASS = "amplifier-bypass-loss", 1.0, 4.0, 8.0, "dB", CommonPractice;
    }
}

/// Estimates about the link: what nodes send, hear and lose.
pub mod link {
    use super::Backing::{CommonPractice, Estimate as Held, FromMemory};

    estimates! {
        /// Power a node sends in one channel. The MoCA 1.1 Reference Specification (developer.rdkcentral.com, 21 Jun 2022)
        /// reads "between 4 dBm to +8 dBm", the sign of the 4 in doubt; TR-181 lets a 2.5 beacon be set from -10 to +7 dBm.
        /// Taken for each channel of a bonded network, since no readable source says whether they share one power.
        TRANSMIT_POWER = "transmit-power", -4.0, 3.0, 8.0, "dBm",
            Held("MoCA 1.1 Reference Specification, sign in doubt");
        /// Return loss of a node in Extended D: at least 5 dB in bands A to D by the MoCA 1.1 Reference Specification, connector
        /// and return loss (developer.rdkcentral.com, 21 Jun 2022); how much better real ones are is common practice.
        ADAPTER_RETURN_LOSS = "adapter-return-loss", 5.0, 10.0, 18.0, "dB",
            Held("MoCA 1.1 Reference Specification: at least 5 dB");
        /// From a node's connector to what sends it back.
        ADAPTER_DELAY = "adapter-delay", 0.1, 0.6, 1.5, "ns", CommonPractice;
        /// Noise figure of a node's receiver, its own band filter included.
        NOISE_FIGURE = "noise-figure", 5.0, 8.0, 11.0, "dB",
            FromMemory;
        /// Noise that leaks into a house's wiring, as power density over that of a 290 K resistor.
        INGRESS = "ingress", -10.0, 0.0, 8.0, "dB",
            FromMemory;
        /// The gap between Shannon's limit and what the code of a real link needs. 3 to 5 dB is what the minimum carrier
        /// to noise ratios of a comparable coded system on coax (DOCSIS 3.1, from memory) leave over Shannon's row.
        GAP = "gap", 3.0, 4.0, 5.0, "dB",
            Held("1.x with no cable: PHY 240 (homenetworkingdepot.com) to 304 Mb/s");
        /// What a node leaves unused on top of the gap, so that small changes of the path cost no packets. TR-181 shows that
        /// such a margin is set in steps of 0.5 dB (Rlapm.PhyMargin, MoCA 2.0 clause 7.15.2), not how large it is.
        MARGIN = "margin", 1.0, 2.0, 3.0, "dB",
            Held("1.x with no cable: PHY 240 (homenetworkingdepot.com) to 304 Mb/s");
        /// Signal over a 1.x transmitter's and receiver's own distortion and phase noise: what is left with no cable at all.
        SNR_CAP_1X = "snr-cap-1x", 28.0, 31.5, 38.0, "dB",
            Held("1.x with no cable: PHY 240 (homenetworkingdepot.com) to 304 Mb/s");
        /// PHY rate of a 1.x channel with every subcarrier at its most bits: 275 by the top row of the MoCA 1.1 Reference
        /// Specification's Table 1-2 and an encyclopedia article; 304 worked out from 224 subcarriers (from memory) of 8 bits at
        /// 50 MS/s, the shortest cyclic prefix and the code of 192 in 208 bytes (US 2009/0254794 A1).
        PHY_FULL_1X = "phy-full-1x", 275.0, 275.0, 304.0, "Mb/s",
            Held("MoCA 1.1 Reference Specification, Table 1-2: 275 or more");
        /// The same for 2.x, which carries two bits more on each subcarrier.
        SNR_CAP_2X = "snr-cap-2x", 39.5, 42.0, 44.0, "dB",
            Held("bonded 2.0: 800 Mb/s in 11 homes (ecnmag.com, April 2017)");
        /// How far the noise on single subcarriers lies from the channel's, up or down. Without it a flat path would carry
        /// the same whole number of bits everywhere: 275 or 240.6 Mb/s at 1.x and nothing between, which testers do not show.
        SUBCARRIER_SPREAD = "subcarrier-spread", 2.5, 3.0, 3.5, "dB",
            Held("1.x with no cable: PHY 240 (homenetworkingdepot.com) to 304 Mb/s");
        /// Where a 2.0 network's MAC efficiency lies between the least (0) and the most (1) of what is told.
        MAC_POSITION = "mac-position", 0.0, 0.4, 1.0, "",
            Held("bonded 2.0: 800 Mb/s in 11 homes (ecnmag.com, April 2017)");
        /// The same of 1.0: its two told figures, 100 and 135 Mb/s, are as likely as what lies between (encyclopedia article).
        MAC_POSITION_1_0 = "mac-position-1-0", 0.0, 0.1, 1.0, "",
            Held("about 100 Mb/s net (encyclopedia article Multimedia over Coax Alliance; lightreading.com, 16 November 2007)");
        /// The same of 1.1: from what a conforming node must reach (139.87 Mb/s) to the headline of 175.
        MAC_POSITION_1_1 = "mac-position-1-1", 0.0, 0.6, 1.0, "",
            Held("MoCA 1.1: at least 139.87 Mb/s (Table 1-2), headline 175");
        /// The same of 2.5, from 2,250 to the published 2,500 of 3,500: no source says that every pair reaches it.
        MAC_POSITION_2_5 = "mac-position-2-5", 0.0, 0.8, 1.0, "", CommonPractice;
        /// The least power of a channel that a node still works with, at its connector. TR-181 has nodes keep a margin for each
        /// receive level from 0 down to -65 dBm (Rlapm.GlobalAggrRxPwrLevel, MoCA 2.0 clause 7.15.2) and none for less.
        LEAST_RECEIVED = "least-received", -76.0, -70.0, -65.0, "dBm",
            Held("TR-181 Issue 2, Rlapm: 0 to -65 dBm");
        /// Below this net rate a link counts as none: nobody would call it a network, and no published table goes so low (the
        /// lowest row of the MoCA 1.1 Reference Specification's Table 1-2 is 39.82 Mb/s).
        USABLE_RATE = "usable-rate", 15.0, 15.0, 15.0, "Mb/s", CommonPractice;
        /// What a link over coax adds to a packet's round trip. Published: less than 3.5 ms on average for 2.0
        /// (tvtechnology.com, June 2010, a press release's words), less than 2.5 ms one way for 2.5 (an overview at
        /// yenra.com); a house's owner reads about 3 ms. The trade's "about 2 ms" is common practice, no source.
        ROUND_TRIP = "round-trip", 2.0, 3.0, 7.0, "ms",
            Held("2.0: < 3.5 ms (tvtechnology.com, June 2010); 2.5: < 2.5 ms one way (yenra.com)");
    }
}

/// What the unbalanced three-way splitter loses that is to be had, leg by leg, dB.
pub const fn new_three_way() -> [f64; 3] {
    let [one, two] = [parts::SPLITTER_NEW_ONE_STAGE.span.likely, parts::SPLITTER_NEW_TWO_STAGES.span.likely];
    [one, two, two]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_range_is_in_order_and_every_name_stands_once() {
        let all: Vec<Estimate> = ALL.iter().flat_map(|section| section.iter().copied()).collect();
        for (at, estimate) in all.iter().enumerate() {
            let Span { low, likely, high } = estimate.span;
            assert!(low <= likely && likely <= high, "{}", estimate.name);
            assert!(all.iter().skip(at + 1).all(|other| other.name != estimate.name), "{}", estimate.name);
        }
    }
}

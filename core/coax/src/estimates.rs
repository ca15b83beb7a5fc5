//! Every figure of this crate that no published document backs, in one place: its range, unit and what it was held
//! against. They are tuned only against the published anchors named here, never against a single house.

use crate::span::{Backing, Span};

/// A figure that had to be estimated, as a user may be shown it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate {
    /// What it is, in the trade's words.
    pub name: &'static str,
    /// Lowest, likely and highest value, in `unit`.
    pub span: Span,
    /// The unit's symbol; empty for a bare ratio.
    pub unit: &'static str,
    /// What stands behind it.
    pub backing: Backing,
}

const fn span(low: f64, likely: f64, high: f64) -> Span {
    Span { low, likely, high }
}

/// Power a node sends in one channel. The MoCA 1.1 Reference Specification (developer.rdkcentral.com, 21 Jun 2022)
/// reads "between 4 dBm to +8 dBm", the sign of the 4 in doubt; TR-181 lets a 2.5 beacon be set from -10 to +7 dBm.
/// Taken for each channel of a bonded network, since no readable source says whether they share one power.
pub const TRANSMIT_POWER: Estimate = Estimate {
    name: "transmit power per channel",
    span: span(-4.0, 3.0, 8.0),
    unit: "dBm",
    backing: Backing::Estimate("MoCA 1.1 Reference Specification, node output power, sign in doubt"),
};

/// Noise figure of a node's receiver, its own band filter included.
pub const NOISE_FIGURE: Estimate = Estimate {
    name: "receiver noise figure",
    span: span(5.0, 8.0, 11.0),
    unit: "dB",
    backing: Backing::FromMemory,
};

/// Noise that leaks into a house's wiring, as power density over that of a 290 K resistor.
pub const INGRESS: Estimate = Estimate {
    name: "ingress over thermal noise",
    span: span(-10.0, 0.0, 8.0),
    unit: "dB",
    backing: Backing::FromMemory,
};

/// The gap between Shannon's limit and what the code of a real link needs. 3 to 5 dB is what the minimum carrier
/// to noise ratios of a comparable coded system on coax (DOCSIS 3.1, from memory) leave over Shannon's row.
pub const GAP: Estimate = Estimate {
    name: "coding gap to Shannon's limit",
    span: span(3.0, 4.0, 5.0),
    unit: "dB",
    backing: Backing::Estimate("zero-length 1.x path: PHY rate of 240 to 270 Mb/s"),
};

/// What a node leaves unused on top of the gap, so that small changes of the path cost no packets. TR-181 shows that
/// such a margin is set in steps of 0.5 dB (Rlapm.PhyMargin, MoCA 2.0 clause 7.15.2), not how large it is.
pub const MARGIN: Estimate = Estimate {
    name: "margin kept by the node",
    span: span(1.0, 2.0, 3.0),
    unit: "dB",
    backing: Backing::Estimate("zero-length 1.x path: PHY rate of 240 to 270 Mb/s"),
};

/// Signal over a 1.x transmitter's and receiver's own distortion and phase noise: what is left with no cable at all.
pub const SNR_CAP_1X: Estimate = Estimate {
    name: "signal to own imperfection, versions 1.x",
    span: span(29.5, 31.0, 32.5),
    unit: "dB",
    backing: Backing::Estimate("zero-length 1.x path: PHY rate of 240 to 270 Mb/s"),
};

/// The same for 2.x, which carries two bits more on each subcarrier.
pub const SNR_CAP_2X: Estimate = Estimate {
    name: "signal to own imperfection, versions 2.x",
    span: span(39.5, 42.0, 44.0),
    unit: "dB",
    backing: Backing::Estimate("bonded 2.0 in ordinary houses: at least 800 Mb/s net in 11 of 11"),
};

/// How far the noise on single subcarriers lies from the channel's, up or down. Without it a flat path would carry
/// the same whole number of bits everywhere: 275 or 240.6 Mb/s at 1.x and nothing between, which testers do not show.
pub const SUBCARRIER_SPREAD: Estimate = Estimate {
    name: "spread of noise over subcarriers, up and down",
    span: span(2.5, 3.0, 3.5),
    unit: "dB",
    backing: Backing::Estimate("zero-length 1.x path: PHY rate of 240 to 270 Mb/s"),
};

/// Where a network's MAC efficiency lies between the least (0) and the most (1) that published figures give.
pub const MAC_POSITION: Estimate = Estimate {
    name: "MAC efficiency between its published ends",
    span: span(0.0, 0.4, 1.0),
    unit: "",
    backing: Backing::Estimate("MoCA 1.0 at about 100 Mb/s net; bonded 2.0 in houses at least 800 Mb/s net"),
};

/// What a link over coax adds to a packet's round trip. Published: less than 3.5 ms on average for 2.0
/// (tvtechnology.com, June 2010, a press release's words), less than 2.5 ms one way for 2.5 (an overview at
/// yenra.com); a house's owner reads about 3 ms. The trade's "about 2 ms" is common practice, no source.
pub const ROUND_TRIP: Estimate = Estimate {
    name: "round trip added by the coax link",
    span: span(2.0, 3.0, 7.0),
    unit: "ms",
    backing: Backing::Estimate("2.0: < 3.5 ms on average; 2.5: < 2.5 ms one way; about 3 ms read in a house"),
};

/// Every estimate of the link.
pub const LINK: &[&Estimate] = &[
    &TRANSMIT_POWER,
    &NOISE_FIGURE,
    &INGRESS,
    &GAP,
    &MARGIN,
    &SNR_CAP_1X,
    &SNR_CAP_2X,
    &SUBCARRIER_SPREAD,
    &MAC_POSITION,
    &ROUND_TRIP,
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_range_is_in_order_and_named_once() {
        for (at, estimate) in LINK.iter().enumerate() {
            let Span { low, likely, high } = estimate.span;
            assert!(low <= likely && likely <= high, "{}", estimate.name);
            assert!(LINK.iter().skip(at + 1).all(|other| other.name != estimate.name), "{}", estimate.name);
        }
    }
}

//! One draw of what is not known about two nodes and their network.

use crate::dice::Dice;
use crate::estimates::link as estimates;
use crate::link::version::Version;
use crate::quantity::{DecibelMilliwatts, Decibels, MegabitsPerSecond};

/// One possible set of the values that no published figure settles. Ranges and backing: [`crate::estimates::link`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LinkDraw {
    /// Power sent in each channel.
    pub tx_power: DecibelMilliwatts,
    /// Noise figure of the receiver.
    pub noise_figure: Decibels,
    /// Density of ingress over that of thermal noise.
    pub ingress: Decibels,
    /// Gap of the code to Shannon's limit.
    pub gap: Decibels,
    /// What the node keeps on top of the gap.
    pub margin: Decibels,
    /// Signal over transmitter's and receiver's own imperfection between nodes that speak 1.x.
    pub snr_cap_1x: Decibels,
    /// The same between nodes that speak 2.x.
    pub snr_cap_2x: Decibels,
    /// How far the noise on single subcarriers lies from the channel's, up or down.
    pub subcarrier_spread: Decibels,
    /// Where MAC efficiency lies between its published ends, 0 to 1.
    pub mac_efficiency: MacEfficiency,
    /// The least power of a channel that the receiver still works with.
    pub least_received: DecibelMilliwatts,
    /// PHY rate of a 1.x channel with every subcarrier at its most bits.
    pub phy_full_1x: MegabitsPerSecond,
}

/// Where MAC efficiency lies between its published ends, 0 to 1, by the version that two nodes speak.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MacEfficiency {
    /// 2.5.
    pub v2_5: f64,
    /// 2.0, bonded or not.
    pub v2_0: f64,
    /// 1.0.
    pub v1_0: f64,
    /// 1.1.
    pub v1_1: f64,
}

impl MacEfficiency {
    /// That of two nodes that speak `version`.
    pub const fn of(self, version: Version) -> f64 {
        match version {
            Version::V1_0 => self.v1_0,
            Version::V1_1 => self.v1_1,
            Version::V2_0 | Version::V2_0Bonded => self.v2_0,
            Version::V2_5 => self.v2_5,
        }
    }
}

impl LinkDraw {
    /// A draw from the estimates' ranges. Always consumes the same number of throws.
    pub fn draw(dice: &mut Dice) -> Self {
        Self {
            tx_power: DecibelMilliwatts(dice.span(estimates::TRANSMIT_POWER.span)),
            noise_figure: Decibels(dice.span(estimates::NOISE_FIGURE.span)),
            ingress: Decibels(dice.span(estimates::INGRESS.span)),
            gap: Decibels(dice.span(estimates::GAP.span)),
            margin: Decibels(dice.span(estimates::MARGIN.span)),
            snr_cap_1x: Decibels(dice.span(estimates::SNR_CAP_1X.span)),
            snr_cap_2x: Decibels(dice.span(estimates::SNR_CAP_2X.span)),
            subcarrier_spread: Decibels(dice.span(estimates::SUBCARRIER_SPREAD.span)),
            mac_efficiency: MacEfficiency {
                v2_0: dice.span(estimates::MAC_POSITION.span),
                v2_5: dice.span(estimates::MAC_POSITION_2_5.span),
                v1_0: dice.span(estimates::MAC_POSITION_1_0.span),
                v1_1: dice.span(estimates::MAC_POSITION_1_1.span),
            },
            least_received: DecibelMilliwatts(dice.span(estimates::LEAST_RECEIVED.span)),
            phy_full_1x: MegabitsPerSecond(dice.span(estimates::PHY_FULL_1X.span)),
        }
    }

    /// The draw in which everything is at its likely value.
    pub fn likely() -> Self {
        Self::draw(&mut Dice::likely([0; 16]))
    }

    /// PHY rate of one channel with every subcarrier at its most bits, between two nodes that speak `version`.
    pub fn full_phy(&self, version: Version) -> MegabitsPerSecond {
        if version.is_1x() { self.phy_full_1x } else { version.phy_per_channel().value }
    }

    /// The imperfection that counts between two nodes that speak `version`.
    pub fn snr_cap(&self, version: Version) -> Decibels {
        if version.is_1x() { self.snr_cap_1x } else { self.snr_cap_2x }
    }
}

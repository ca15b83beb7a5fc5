//! Versions of the standard and their published figures.

use std::fmt;
use std::str::FromStr;

use crate::link::error::LinkError;
use crate::quantity::{MegabitsPerSecond, Megahertz};
use crate::span::Backing;

/// A version of the MoCA standard, from the oldest to the newest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Version {
    /// 1.0 (2006).
    V1_0,
    /// 1.1 (2007).
    V1_1,
    /// 2.0 (2010), one channel.
    V2_0,
    /// 2.0 with two bonded channels.
    V2_0Bonded,
    /// 2.5 (2016), up to five bonded channels.
    V2_5,
}

/// A figure and what backs it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure<T> {
    /// The figure.
    pub value: T,
    /// What backs it.
    pub backing: Backing,
}

const fn figure<T: Copy>(value: T, backing: Backing) -> Figure<T> {
    Figure { value, backing }
}

const PRESS_2_0: Backing = Backing::Published("MoCA 2.0 press release, 16 June 2010");
const ENCYCLOPEDIA: Backing = Backing::Published("encyclopedia article \"Multimedia over Coax Alliance\"");
const NODE_ID: Backing = Backing::Published("TR-181 Issue 2, type MocaNodeID");
/// Read in a field test set's user manual, section "MoCA functional overview"; its maker is not named here.
const TESTER: Backing = Backing::FromMemory;

/// The spacing of subcarriers, the same in all versions: 50 MHz / 256 = 100 MHz / 512 = 195.3125 kHz.
pub const SUBCARRIER_SPACING: Megahertz = Megahertz(0.195_312_5);

/// The version that two nodes use between them: the highest that both support, which is the older of the two
/// (encyclopedia article "Multimedia over Coax Alliance"; 2.0 press release, 16 June 2010).
pub fn common(a: Version, b: Version) -> Version {
    a.min(b)
}

/// The most nodes a network may have: 16, or 8 as soon as one node is 1.0.
///
/// 16 (IDs 0 to 15) and 8 (IDs 0 to 7): TR-181 Issue 2, type `MocaNodeID`. That a single 1.0 node brings the
/// whole network down to 8 is from memory.
pub fn most_nodes(versions: impl IntoIterator<Item = Version>) -> Figure<usize> {
    match versions.into_iter().min() {
        Some(Version::V1_0) => figure(Version::V1_0.most_nodes().value, Backing::FromMemory),
        Some(oldest) => oldest.most_nodes(),
        None => Version::V2_5.most_nodes(),
    }
}

impl Version {
    /// All versions, oldest first.
    pub const ALL: [Self; 5] = [Self::V1_0, Self::V1_1, Self::V2_0, Self::V2_0Bonded, Self::V2_5];

    /// Whether it is 1.0 or 1.1, with channels of 50 MHz.
    pub const fn is_1x(self) -> bool {
        matches!(self, Self::V1_0 | Self::V1_1)
    }

    /// Width of one channel: 50 MHz for 1.x, 100 MHz for 2.x (2.0 press release, 16 June 2010; TR-181 `NumChannels`).
    pub const fn channel_width(self) -> Figure<Megahertz> {
        figure(Megahertz(if self.is_1x() { 50.0 } else { 100.0 }), PRESS_2_0)
    }

    /// Tones of one channel: 256 for 1.x (US 2009/0254794 A1, background), 512 for 2.x (TR-181 `MeshScMod.ModM25`).
    pub const fn tones(self) -> Figure<u32> {
        if self.is_1x() {
            figure(256, Backing::Published("US patent application 2009/0254794 A1, background"))
        } else {
            figure(512, Backing::Published("TR-181 Issue 2, MeshScMod.ModM25"))
        }
    }

    /// Subcarriers of one channel that carry bits: 224 of 256 for 1.x, 480 of 512 for 2.x. From memory.
    pub const fn used_subcarriers(self) -> Figure<u32> {
        figure(if self.is_1x() { 224 } else { 480 }, Backing::FromMemory)
    }

    /// The band of one channel that carries bits: used subcarriers times their spacing, 43.75 or 93.75 MHz.
    pub fn used_width(self) -> Megahertz {
        SUBCARRIER_SPACING * f64::from(self.used_subcarriers().value)
    }

    /// Most bits on one subcarrier: 8 (256-QAM) for 1.x, 10 (1024-QAM) for 2.x (from memory of a field test set's
    /// manual).
    pub const fn most_bits(self) -> Figure<u32> {
        figure(if self.is_1x() { 8 } else { 10 }, TESTER)
    }

    /// Most channels in use at once: 1, 1, 1, 2, 5 (encyclopedia article; TR-181 `NumChannels` 1 to 5 for 2.5).
    pub const fn most_channels(self) -> Figure<usize> {
        match self {
            Self::V1_0 | Self::V1_1 | Self::V2_0 => figure(1, ENCYCLOPEDIA),
            Self::V2_0Bonded => figure(2, ENCYCLOPEDIA),
            Self::V2_5 => figure(5, Backing::Published("TR-181 Issue 2, NumChannels")),
        }
    }

    /// PHY rate of one channel with every subcarrier at its most bits: 275 Mb/s for 1.x (encyclopedia article; top
    /// row of Table 1-2, MoCA 1.1 Reference Specification), 700 Mb/s for 2.x (2.0 press release, 16 June 2010).
    pub const fn phy_per_channel(self) -> Figure<MegabitsPerSecond> {
        if self.is_1x() {
            figure(
                MegabitsPerSecond(275.0),
                Backing::Published("MoCA 1.1 Reference Specification, Table 1-2, top row"),
            )
        } else {
            figure(MegabitsPerSecond(700.0), PRESS_2_0)
        }
    }

    /// The highest PHY rate that was published; 1.x nodes may show more
    /// ([`PHY_FULL_1X`](crate::estimates::link::PHY_FULL_1X)): 275 for 1.x, 700 and 1400 for 2.0 and 2.0 bonded (2.0 press release, 16 June 2010),
    /// 3500 for 2.5 (five times 700, derived).
    pub fn phy_ceiling(self) -> Figure<MegabitsPerSecond> {
        let one = self.phy_per_channel();
        let backing = if self == Self::V2_5 {
            Backing::Derived("five channels of 700 Mb/s; MoCA 2.0 press release, 16 June 2010")
        } else {
            one.backing
        };
        figure(one.value * self.most_channels().value as f64, backing)
    }

    /// The highest MAC rate in a network of `nodes` nodes. 1.0: 135 (the encyclopedia article gives 100 in its table,
    /// 135 in its text: the higher is the ceiling). 1.1: 175. 2.0: 500 between two nodes, 400 in a network of more;
    /// bonded 1000 and 800 (all 2.0 press release, 16 June 2010). 2.5: 2500 (encyclopedia article).
    pub const fn mac_ceiling(self, nodes: usize) -> Figure<MegabitsPerSecond> {
        let two = nodes <= 2;
        let (value, backing) = match self {
            Self::V1_0 => (135.0, ENCYCLOPEDIA),
            Self::V1_1 => (175.0, PRESS_2_0),
            Self::V2_0 => (if two { 500.0 } else { 400.0 }, PRESS_2_0),
            Self::V2_0Bonded => (if two { 1000.0 } else { 800.0 }, PRESS_2_0),
            Self::V2_5 => (2500.0, ENCYCLOPEDIA),
        };
        figure(MegabitsPerSecond(value), backing)
    }

    /// Most nodes in a network all of this version: 8 for 1.0, 16 for the others (TR-181 Issue 2, `MocaNodeID`).
    pub const fn most_nodes(self) -> Figure<usize> {
        figure(if matches!(self, Self::V1_0) { 8 } else { 16 }, NODE_ID)
    }
}

impl fmt::Display for Version {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.pad(match self {
            Self::V1_0 => "1.0",
            Self::V1_1 => "1.1",
            Self::V2_0 => "2.0",
            Self::V2_0Bonded => "2.0 bonded",
            Self::V2_5 => "2.5",
        })
    }
}

impl FromStr for Version {
    type Err = LinkError;

    /// Reads "1.0", "1.1", "2.0", "2.0 bonded" or "2.5", in any case, with or without "MoCA" before it, with a space,
    /// hyphen or nothing before "bonded".
    fn from_str(text: &str) -> Result<Self, LinkError> {
        let bare: String =
            text.to_lowercase().chars().filter(|c| !c.is_whitespace() && !matches!(c, '-' | '_')).collect();
        match bare.strip_prefix("moca").unwrap_or(&bare) {
            "1.0" => Ok(Self::V1_0),
            "1.1" => Ok(Self::V1_1),
            "2.0" => Ok(Self::V2_0),
            "2.0bonded" => Ok(Self::V2_0Bonded),
            "2.5" => Ok(Self::V2_5),
            _ => Err(LinkError::UnknownVersion { text: text.to_owned() }),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read_back() {
        for version in Version::ALL {
            assert_eq!(version.to_string().parse(), Ok(version));
        }
        assert_eq!("MoCA 2.0-Bonded".parse(), Ok(Version::V2_0Bonded));
        for wrong in ["", "2", "2.6", "moca", "2.5 bonded", "1.0.1"] {
            assert!(wrong.parse::<Version>().is_err(), "{wrong}");
        }
    }

    #[test]
    fn a_pair_speaks_the_older_version() {
        assert_eq!(common(Version::V2_5, Version::V1_1), Version::V1_1);
        assert_eq!(common(Version::V2_0, Version::V2_0Bonded), Version::V2_0);
    }

    #[test]
    fn one_old_node_makes_the_network_small() {
        assert_eq!(most_nodes([Version::V2_5, Version::V1_0]).value, 8);
        assert_eq!(most_nodes([Version::V2_5, Version::V1_1]).value, 16);
    }
}

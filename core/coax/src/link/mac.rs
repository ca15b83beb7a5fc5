//! MAC rate from PHY rate: what the sharing of the medium leaves.

use crate::link::version::Version;
use crate::quantity::MegabitsPerSecond;

/// PHY rate and least MAC rate in Mb/s, flat channel, packets of 1518 octets: MoCA 1.1 Reference Specification,
/// Table 1-2 (developer.rdkcentral.com, 21 Jun 2022). The row printed "220" breaks the table's step of 25 Mb/s and
/// its ratio; 200 is taken to be meant.
const LEAST_1_1: [(f64, f64); 10] = [
    (0.0, 0.0),
    (75.0, 39.82),
    (100.0, 54.65),
    (125.0, 68.32),
    (150.0, 81.98),
    (175.0, 95.64),
    (200.0, 107.74),
    (225.0, 119.45),
    (250.0, 130.78),
    (275.0, 139.87),
];

/// The least MAC rate that a conforming 1.1 node reaches at a PHY rate: straight lines through the rows of Table 1-2
/// of the MoCA 1.1 Reference Specification, and from its lowest row to zero.
pub fn least_mac_rate_1_1(phy: MegabitsPerSecond) -> MegabitsPerSecond {
    let phy = phy.value().max(0.0);
    let rows = LEAST_1_1.iter().zip(LEAST_1_1.iter().skip(1));
    let top = LEAST_1_1.last().map_or(0.0, |row| row.1);
    MegabitsPerSecond(
        rows.into_iter().find(|(_, upper)| phy <= upper.0).map_or(top, |(lower, upper)| {
            lower.1 + (phy - lower.0) * (upper.1 - lower.1) / (upper.0 - lower.0)
        }),
    )
}

/// MAC rate of a pair in a network of `nodes` nodes on `channels` channels, at a PHY rate.
///
/// `position` (0 to 1) says where it lies between what published figures give as least and most:
///
/// - 1.0: 100 to 135 of 270 (encyclopedia article's table and text; a trade notice's "270 to about 100").
/// - 1.1: [`least_mac_rate_1_1`] to 175 of 275 (2.0 press release, 16 June 2010; encyclopedia article).
/// - 2.0, bonded or not: 500 of 700 between two nodes. Among more, 400 of 700 to 500 of 700: the release gives 400
///   for any network of more than two, but what is lost goes to the nodes' requests for time, so three lose less than
///   sixteen, and houses with such a network were measured at 800 Mb/s of TCP and more on two channels.
/// - 2.5: 2250 (common practice, no source) to 2500 of 3500 (encyclopedia article; five times the 2.0 release's 700).
///
/// Never above the version's published MAC rate, in proportion to the channels in use.
#[inline]
pub fn mac_rate(
    version: Version,
    phy: MegabitsPerSecond,
    channels: usize,
    nodes: usize,
    position: f64,
) -> MegabitsPerSecond {
    let phy_rate = phy.value().max(0.0);
    let (least, most) = match version {
        Version::V1_0 => (phy_rate * (100.0 / 270.0), phy_rate * (135.0 / 270.0)),
        Version::V1_1 => (least_mac_rate_1_1(phy).value(), phy_rate * (175.0 / 275.0)),
        Version::V2_0 | Version::V2_0Bonded if nodes > 2 => {
            (phy_rate * (400.0 / 700.0), phy_rate * (500.0 / 700.0))
        }
        Version::V2_0 | Version::V2_0Bonded => (phy_rate * (500.0 / 700.0), phy_rate * (500.0 / 700.0)),
        Version::V2_5 => (phy_rate * (2250.0 / 3500.0), phy_rate * (2500.0 / 3500.0)),
    };
    let share = channels as f64 / version.most_channels().value as f64;
    let ceiling = version.mac_ceiling(nodes).value.value() * share.min(1.0);
    MegabitsPerSecond((least + position.clamp(0.0, 1.0) * (most - least)).min(ceiling))
}

//! Where in the band a network may run.
//!
//! Adapters sold at retail tune Extended D only (from memory), so no other band is offered here.

use crate::link::version::Version;
use crate::quantity::Megahertz;

pub use crate::trade::{EXTENDED_D_HIGH, EXTENDED_D_LOW};

/// Distance of neighbouring 2.x channels' centres when bonded.
const CHANNEL_STEP: f64 = 100.0;

/// One channel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Channel {
    /// Its centre.
    pub centre: Megahertz,
    /// Its full width.
    pub width: Megahertz,
}

impl Channel {
    /// Its lower edge.
    pub fn low(self) -> Megahertz {
        self.centre - self.width * 0.5
    }

    /// Its upper edge.
    pub fn high(self) -> Megahertz {
        self.centre + self.width * 0.5
    }
}

/// Primary channel's offset from the beacon. TR-181 Issue 2, `PrimaryOffset`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PrimaryOffset {
    /// -25 MHz.
    Below,
    /// None.
    At,
    /// +25 MHz.
    Above,
}

impl PrimaryOffset {
    const ALL: [Self; 3] = [Self::Below, Self::At, Self::Above];

    /// The offset in megahertz.
    pub const fn megahertz(self) -> Megahertz {
        Megahertz(match self {
            Self::Below => -25.0,
            Self::At => 0.0,
            Self::Above => 25.0,
        })
    }
}

/// On which side of the beacon the secondary channel of 2.0 bonded lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Primary at -25 MHz, secondary at -125 MHz.
    Below,
    /// Primary at +25 MHz, secondary at +125 MHz.
    Above,
}

/// A place in the band where a network may run: its beacon and its channels.
#[derive(Debug, Clone, PartialEq)]
pub struct Placement {
    beacon: Channel,
    channels: Vec<Channel>,
}

impl Placement {
    /// A 1.x network on the channel of 50 MHz around `centre`.
    pub fn of_1x(centre: Megahertz) -> Self {
        let beacon = beacon_at(centre);
        Self { beacon, channels: vec![beacon] }
    }

    /// A 2.0 network on one channel.
    pub fn single(beacon: Megahertz, offset: PrimaryOffset) -> Self {
        Self { beacon: beacon_at(beacon), channels: vec![wide(beacon + offset.megahertz())] }
    }

    /// A bonded 2.0 network: primary and secondary channel on the same side of the beacon, so that they touch.
    /// TR-181 Issue 2, `SecondaryOffset` of -125 and +125 MHz; same side: derived.
    pub fn bonded(beacon: Megahertz, side: Side) -> Self {
        let (primary, secondary) = match side {
            Side::Below => (-25.0, -125.0),
            Side::Above => (25.0, 125.0),
        };
        Self {
            beacon: beacon_at(beacon),
            channels: vec![wide(beacon + Megahertz(primary)), wide(beacon + Megahertz(secondary))],
        }
    }

    /// A 2.5 network on `count` touching channels, the lowest of them `below` channels under the primary
    /// (TR-181 Issue 2, `FirstOffset` 0 to -4; MoCA 2.5 Table 17-1). `None` unless the primary is among them and they
    /// are 1 to 5.
    pub fn contiguous(beacon: Megahertz, offset: PrimaryOffset, below: u32, count: u32) -> Option<Self> {
        if below >= count || count > 5 {
            return None;
        }
        let primary = beacon + offset.megahertz();
        let above = (1..count - below).map(f64::from);
        let under = (1..=below).map(|n| -f64::from(n));
        let channels = std::iter::once(0.0)
            .chain(above)
            .chain(under)
            .map(|steps| wide(primary + Megahertz(CHANNEL_STEP * steps)))
            .collect();
        Some(Self { beacon: beacon_at(beacon), channels })
    }

    /// The beacon's channel of 50 MHz, where 1.x nodes take part in a network of newer ones.
    pub fn beacon(&self) -> Channel {
        self.beacon
    }

    /// All channels: the primary first, then those that touch it upwards, then downwards.
    pub fn channels(&self) -> &[Channel] {
        &self.channels
    }

    /// The channels that a pair speaking `version` uses when the network runs here: 1.x the beacon's 50 MHz if it is
    /// one of their own channels (D1 to D8), 2.0 the primary, 2.0 bonded the primary and one that touches it, 2.5 all.
    /// Empty if the pair cannot work here: a 2.x pair needs a placement of 2.x.
    pub fn channels_for(&self, version: Version) -> &[Channel] {
        if version.is_1x() {
            let tunable = d_centres().any(|centre| (centre - self.beacon.centre).value().abs() < 1e-6);
            return if tunable { std::slice::from_ref(&self.beacon) } else { &[] };
        }
        let is_2x = self.channels.first().is_some_and(|first| first.width >= version.channel_width().value);
        let count = if is_2x { version.most_channels().value.min(self.channels.len()) } else { 0 };
        self.channels.get(..count).unwrap_or_default()
    }

    /// Lower edge of the band taken.
    pub fn low(&self) -> Megahertz {
        self.channels.iter().fold(
            self.beacon.low(),
            |low, channel| {
                if channel.low() < low { channel.low() } else { low }
            },
        )
    }

    /// Upper edge of the band taken.
    pub fn high(&self) -> Megahertz {
        self.channels.iter().fold(self.beacon.high(), |high, channel| {
            if channel.high() > high { channel.high() } else { high }
        })
    }

    /// Whether any channel shares some frequency with a band from `low` to `high`; touching edges do not count.
    pub fn overlaps(&self, low: Megahertz, high: Megahertz) -> bool {
        self.channels.iter().chain([&self.beacon]).any(|channel| channel.low() < high && low < channel.high())
    }
}

fn wide(centre: Megahertz) -> Channel {
    Channel { centre, width: Version::V2_5.channel_width().value }
}

fn beacon_at(centre: Megahertz) -> Channel {
    Channel { centre, width: Version::V1_1.channel_width().value }
}

/// Centres of D1 to D8: 1150, 1200 ... 1500 MHz. MoCA 1.1 Reference Specification, Table 1-1.
fn d_centres() -> impl Iterator<Item = Megahertz> {
    (0..8).map(|n| Megahertz(1150.0 + 50.0 * f64::from(n)))
}

/// Beacons of 2.x in Extended D: 1150, 1200 ... 1600 MHz. With offsets of 25 MHz the primary channels then reach every
/// place on the 25 MHz grid of TR-181's `MocaChannelMask`.
fn beacons() -> impl Iterator<Item = Megahertz> {
    (0..10).map(|n| Megahertz(1150.0 + 50.0 * f64::from(n)))
}

fn singles() -> impl Iterator<Item = Placement> {
    beacons().flat_map(|beacon| PrimaryOffset::ALL.map(|offset| Placement::single(beacon, offset)))
}

fn in_extended_d(placement: &Placement) -> bool {
    placement.low() >= EXTENDED_D_LOW && placement.high() <= EXTENDED_D_HIGH
}

/// Every placement in Extended D for a network whose newest node is of `version`, those with most channels first.
pub fn placements(version: Version) -> Vec<Placement> {
    let all: Vec<Placement> = match version {
        Version::V1_0 | Version::V1_1 => d_centres().map(Placement::of_1x).collect(),
        Version::V2_0 => singles().collect(),
        Version::V2_0Bonded => beacons()
            .flat_map(|beacon| [Side::Above, Side::Below].map(|side| Placement::bonded(beacon, side)))
            .chain(singles())
            .collect(),
        Version::V2_5 => (1..=5)
            .rev()
            .flat_map(|count| (0..count).map(move |below| (count, below)))
            .flat_map(|(count, below)| {
                beacons().flat_map(move |beacon| {
                    PrimaryOffset::ALL
                        .into_iter()
                        .filter_map(move |offset| Placement::contiguous(beacon, offset, below, count))
                })
            })
            .collect(),
    };
    all.into_iter().filter(in_extended_d).collect()
}

/// The placements that share no frequency with any of the bands `taken` (lower and upper edge). May be empty.
pub fn placements_avoiding(version: Version, taken: &[(Megahertz, Megahertz)]) -> Vec<Placement> {
    let free = |placement: &Placement| !taken.iter().any(|&(low, high)| placement.overlaps(low, high));
    placements(version).into_iter().filter(free).collect()
}

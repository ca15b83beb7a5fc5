//! Ethernet ports of adapters and what they leave of a link.

use std::fmt;

use crate::quantity::MegabitsPerSecond;

/// Octets one full Ethernet frame takes on the line: 1500 MTU + 14 header + 4 check + 12 gap + 7 preamble + 1 start.
/// RFC 6349 (August 2011), clause 4.1.1.
const FRAME_ON_LINE: f64 = 1538.0;

/// Octets of TCP payload in it: MTU less 20 of IPv4 and 20 of TCP header. RFC 6349, clause 4.1.1.
const TCP_PAYLOAD: f64 = 1460.0;

/// An adapter's Ethernet port.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum EthernetPort {
    /// 100 Mb/s.
    Fast,
    /// 1 Gb/s.
    Gigabit,
    /// 2.5 Gb/s.
    TwoPointFive,
    /// 10 Gb/s.
    TenGigabit,
}

impl EthernetPort {
    /// All ports, slowest first.
    pub const ALL: [Self; 4] = [Self::Fast, Self::Gigabit, Self::TwoPointFive, Self::TenGigabit];

    /// The line rate.
    pub const fn line_rate(self) -> MegabitsPerSecond {
        MegabitsPerSecond(match self {
            Self::Fast => 100.0,
            Self::Gigabit => 1000.0,
            Self::TwoPointFive => 2500.0,
            Self::TenGigabit => 10_000.0,
        })
    }

    /// The most TCP payload that passes the port: 94.9 % of the line rate.
    pub fn payload_rate(self) -> MegabitsPerSecond {
        tcp_payload_rate(self.line_rate())
    }
}

impl fmt::Display for EthernetPort {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.pad(match self {
            Self::Fast => "100 Mb/s",
            Self::Gigabit => "1 Gb/s",
            Self::TwoPointFive => "2.5 Gb/s",
            Self::TenGigabit => "10 Gb/s",
        })
    }
}

/// Whole full-sized frames a second on a line: `rate / (1538 x 8)`. RFC 6349 (August 2011), clause 4.1.1.
pub fn frames_per_second(line_rate: MegabitsPerSecond) -> f64 {
    (line_rate.value() * 1e6 / (FRAME_ON_LINE * 8.0)).floor()
}

/// The most TCP payload (IPv4, no options) on an Ethernet line: `rate x 1460 / 1538`. RFC 6349 (August 2011), 4.1.1.
pub fn tcp_payload_rate(line_rate: MegabitsPerSecond) -> MegabitsPerSecond {
    line_rate * (TCP_PAYLOAD / FRAME_ON_LINE)
}

//! What the network sockets of a test do to it: a computer with an ordinary socket ends a fast test long before the coax
//! does.

use coax::link::{EthernetPort, tcp_payload_rate};
use coax::{MegabitsPerSecond, Span};

/// A rate counts as outside the range that was expected only by more than this share.
pub(super) const LEEWAY: f64 = 0.05;

/// The same where a socket sets the range: computers and their programs seldom fill one wholly (common practice, no
/// source).
const SOCKET_LEEWAY: f64 = 0.1;

/// A rate within this share of what a socket passes is taken as held by it where nobody said which socket it was: what
/// TCP options, IPv6 and UDP make of the same line lies within 1.5 % of it, RFC 6349 (2011), section 4.1.1, worked out.
const NEAR: f64 = 0.05;

/// The sockets that are usual in computers, routers and switches, and slow enough to be taken for the coax.
const USUAL: [EthernetPort; 2] = [EthernetPort::Fast, EthernetPort::Gigabit];

/// Where a measured rate lies towards what was expected of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lies {
    /// Below the range: something on the way takes more than is known.
    Below,
    /// Within it.
    Within,
    /// At what the test's slowest network socket passes, which was named.
    AtSocket(f64),
    /// About what a usual network socket passes, Mb/s by its name; nobody said which one the test had.
    NearSocket(f64),
    /// Above it.
    Above,
}

/// Where a rate measured over wire within the house lies, Mb/s, and the range that was to be expected of this test: the
/// forecast's, capped by what the slowest socket passes where somebody said which that is.
pub fn held_against(measured_mbps: f64, forecast: Span, socket_mbps: Option<u32>) -> (Lies, Span) {
    let below = |low: f64, leeway: f64| measured_mbps < low * (1.0 - leeway);
    if measured_mbps > forecast.high * (1.0 + LEEWAY) {
        return (Lies::Above, forecast);
    }
    let Some(socket) = socket_mbps.map(f64::from) else {
        let lies = match near_socket(measured_mbps) {
            _ if !below(forecast.low, LEEWAY) => Lies::Within,
            Some(socket) => Lies::NearSocket(socket),
            None => Lies::Below,
        };
        return (lies, forecast);
    };
    let passes = tcp_payload_rate(MegabitsPerSecond(socket)).value();
    let capped = Span::new(forecast.low.min(passes), forecast.likely.min(passes), forecast.high.min(passes));
    let leeway = if passes < forecast.low { SOCKET_LEEWAY } else { LEEWAY };
    let lies = if below(capped.low, leeway) {
        Lies::Below
    } else if below(forecast.low, LEEWAY) {
        Lies::AtSocket(socket)
    } else {
        Lies::Within
    };
    (lies, capped)
}

fn near_socket(mbps: f64) -> Option<f64> {
    let near = |port: &EthernetPort| (mbps / port.payload_rate().value() - 1.0).abs() <= NEAR;
    USUAL.into_iter().find(near).map(|port| port.line_rate().value())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The rates that TCP reaches are those of RFC 6349 (2011), section 4.1.1: 94.9 % of the line, 949 and 94.9 Mb/s.
    #[test]
    fn a_socket_is_not_taken_for_the_coax() {
        let fast_coax = Span::new(2300.0, 2350.0, 2370.0);
        let lies = |mbps, socket| held_against(mbps, fast_coax, socket).0;
        assert_eq!(lies(940.0, Some(1000)), Lies::AtSocket(1000.0));
        assert_eq!(lies(940.0, None), Lies::NearSocket(1000.0));
        assert_eq!(lies(94.0, None), Lies::NearSocket(100.0));
        assert_eq!(lies(94.0, Some(100)), Lies::AtSocket(100.0));
        assert_eq!(lies(2340.0, Some(2500)), Lies::Within);
        let (_, range) = held_against(940.0, fast_coax, Some(1000));
        assert!((range.high - 949.3).abs() < 0.1 && range.is_exact());
    }

    #[test]
    fn what_no_socket_explains_is_below() {
        let fast_coax = Span::new(2300.0, 2350.0, 2370.0);
        let lies = |mbps, socket| held_against(mbps, fast_coax, socket).0;
        // Far below what the socket passes, or between the sockets.
        assert_eq!(lies(500.0, Some(1000)), Lies::Below);
        assert_eq!(lies(500.0, None), Lies::Below);
        assert_eq!(lies(940.0, Some(2500)), Lies::Below);
        assert_eq!(lies(94.0, Some(1000)), Lies::Below);
    }

    #[test]
    fn where_the_coax_is_the_slower_one_the_socket_says_nothing() {
        let slow_coax = Span::new(600.0, 700.0, 800.0);
        assert_eq!(held_against(650.0, slow_coax, Some(1000)), (Lies::Within, slow_coax));
        assert_eq!(held_against(400.0, slow_coax, Some(1000)), (Lies::Below, slow_coax));
        assert_eq!(held_against(940.0, slow_coax, None).0, Lies::Above);
    }
}

//! Where what was measured stands beside what was to be expected, and what the network sockets of a test do to it: a computer
//! with an ordinary socket ends a fast test long before the coax does.
//!
//! All is decided here, on figures that are not rounded. Words that show rounded figures follow
//! ([`Arg::RateRangeBeside`](phrase::Arg::RateRangeBeside) writes as many digits as it takes).

use coax::link::{EthernetPort, tcp_payload_rate};
use coax::{MegabitsPerSecond, Span};
use phrase::Arg;

use crate::forecast::PathForecast;

/// A rate counts as outside the range that was expected only by more than this share of the range's end.
const LEEWAY: f64 = 0.05;

/// The same above a range that ends where the adapters do: what they reach over a clean path is told as 240 to 304 Mb/s by
/// different people (`estimates.rs`), and more of it than expected tells of them, not of the wiring. Beyond that they are others
/// than the survey says.
const CEILING_LEEWAY: f64 = 0.15;

/// And by more than so many Mb/s: tests end in tenths, and two in a row differ by more (common practice, no source).
const LEEWAY_MBPS: f64 = 1.0;

/// A loss counts as outside the range that was expected only by more than so many decibels.
pub(crate) const LEEWAY_DB: f64 = 1.0;

/// The same as [`LEEWAY`] where a socket sets the range: computers and their programs seldom fill one wholly (common
/// practice, no source).
const SOCKET_LEEWAY: f64 = 0.1;

/// A rate within this share of what a socket passes is taken as held by it where nobody said which socket it was: what
/// TCP options, IPv6 and UDP make of the same line lies within 1.5 % of it, RFC 6349 (2011), section 4.1.1, worked out.
const NEAR: f64 = 0.05;

/// A rate of at least this share of what a socket of 100 Mb/s passes, where far more was to be expected, is taken as held by
/// such a socket or cable: tests over one give 75 to 95 Mb/s (common practice, no source).
const UNDER_HUNDRED: f64 = 0.75;

/// The socket that is usual in computers, routers and switches, and slow enough to be taken for the coax.
const USUAL: EthernetPort = EthernetPort::Gigabit;

/// Where something measured stands beside what was to be expected of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Beside {
    /// A rate below the range, or a loss above it: something on the way takes more than is known.
    Worse,
    /// In the range, or so little outside that it tells nothing.
    AsExpected,
    /// At what the test's slowest network socket passes, which was named, Mb/s.
    AtSocket(f64),
    /// About what a usual network socket passes, Mb/s by its name; nobody said which one the test had.
    NearSocket(f64),
    /// Just under what a network socket or cable of 100 Mb/s passes, or anywhere under it over coax that is well: such a
    /// piece lies somewhere on the way outside the coax, and is looked for before the coax.
    NearHundred,
    /// A rate above the range, or a loss below it.
    Better,
}

impl Beside {
    /// The socket that held the test, Mb/s by its name.
    pub const fn socket_mbps(self) -> Option<f64> {
        match self {
            Self::AtSocket(mbps) | Self::NearSocket(mbps) => Some(mbps),
            Self::NearHundred => Some(100.0),
            _ => None,
        }
    }

    /// Its name in data: `worse`.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Worse => "worse",
            Self::AsExpected => "as_expected",
            Self::AtSocket(_) => "at_socket",
            Self::NearSocket(_) => "near_socket",
            Self::NearHundred => "near_hundred",
            Self::Better => "better",
        }
    }

    /// What is told before what.
    pub(crate) const fn order(self) -> u8 {
        match self {
            Self::Worse => 0,
            Self::Better => 1,
            Self::AtSocket(_) | Self::NearSocket(_) | Self::NearHundred => 2,
            Self::AsExpected => 3,
        }
    }
}

/// What it is that was measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum HeldOf {
    /// Throughput towards the room, Mb/s.
    Down,
    /// Throughput from the room, Mb/s.
    Up,
    /// A PHY rate, of whichever way, Mb/s.
    Phy,
    /// The loss between the adapters, dB.
    Loss,
}

impl HeldOf {
    /// Its name in data, with its unit: `down_mbps`.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Down => "down_mbps",
            Self::Up => "up_mbps",
            Self::Phy => "phy_mbps",
            Self::Loss => "loss_db",
        }
    }
}

/// One figure that was measured, beside what was to be expected of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held {
    /// What it is.
    pub of: HeldOf,
    /// As it was read, in the unit of [`HeldOf`].
    pub measured: f64,
    /// What was to be expected of such a test: the forecast's range, capped by what the slowest socket passes where somebody
    /// said which that is.
    pub expected: Span,
    /// Where the one stands beside the other.
    pub beside: Beside,
}

impl Held {
    /// A rate measured over cable within the house, Mb/s. `socket_mbps` is the slowest network socket of the test;
    /// `at_ceiling` that the adapters and not the coax are what holds the rate.
    pub(crate) fn throughput(
        of: HeldOf,
        measured: f64,
        forecast: Span,
        socket_mbps: Option<u32>,
        at_ceiling: bool,
    ) -> Self {
        let (beside, expected) = rate_beside(measured, forecast, socket_mbps, at_ceiling);
        Self { of, measured, expected, beside }
    }

    /// The same where the coax on the way was seen to be well: a rate that a socket of 100 Mb/s could pass is then held by
    /// such a piece, not by the coax.
    pub(crate) fn over_well_coax(self) -> Self {
        let under =
            self.measured > 0.0 && self.measured <= EthernetPort::Fast.payload_rate().value() * (1.0 + NEAR);
        let held = self.beside == Beside::Worse && under;
        Self { beside: if held { Beside::NearHundred } else { self.beside }, ..self }
    }

    /// A PHY rate, Mb/s. Adapters' pages show one rate, and seldom of which way: it is held against the ranges of both ways
    /// together.
    pub(crate) fn phy_rate(measured: f64, path: &PathForecast) -> Self {
        let (down, up) = (path.phy_down, path.phy_up);
        let slower = down.likely.min(up.likely);
        let expected = Span::new(down.low.min(up.low), slower, down.high.max(up.high));
        let beside = if is_below(measured, expected.low, LEEWAY) {
            Beside::Worse
        } else if is_above(measured, expected.high, path.is_at_ceiling()) {
            Beside::Better
        } else {
            Beside::AsExpected
        };
        Self { of: HeldOf::Phy, measured, expected, beside }
    }

    /// A loss, dB.
    pub(crate) fn loss(measured: f64, expected: Span) -> Self {
        let beside = if measured > expected.high + LEEWAY_DB {
            Beside::Worse
        } else if measured < expected.low - LEEWAY_DB {
            Beside::Better
        } else {
            Beside::AsExpected
        };
        Self { of: HeldOf::Loss, measured, expected, beside }
    }

    /// By how much it lies outside the range, in its unit, never below 0; 0 inside. What counts as expected may lie outside by
    /// less than the leeway.
    pub fn outside_by(&self) -> f64 {
        (self.expected.low - self.measured).max(self.measured - self.expected.high).max(0.0)
    }

    /// Whether it lies in the range itself, not only within the leeway around it.
    pub fn is_inside(&self) -> bool {
        self.outside_by() <= 0.0
    }

    /// What was measured, for a message.
    pub fn measured_arg(&self) -> Arg {
        match self.of {
            HeldOf::Loss => Arg::Loss(self.measured),
            HeldOf::Down | HeldOf::Up | HeldOf::Phy => Arg::RateAsRead(self.measured),
        }
    }

    /// What was to be expected, for a message that also has [`measured_arg`](Self::measured_arg).
    pub fn expected_arg(&self) -> Arg {
        match self.of {
            HeldOf::Loss => Arg::LossRange(self.expected),
            HeldOf::Down | HeldOf::Up | HeldOf::Phy => {
                Arg::RateRangeBeside { range: self.expected, read: self.measured }
            }
        }
    }
}

fn is_below(measured: f64, low: f64, leeway: f64) -> bool {
    measured < low - (low * leeway).max(LEEWAY_MBPS)
}

fn is_above(measured: f64, high: f64, at_ceiling: bool) -> bool {
    let leeway = if at_ceiling { CEILING_LEEWAY } else { LEEWAY };
    measured > high + (high * leeway).max(LEEWAY_MBPS)
}

/// Where a rate measured over cable within the house stands, Mb/s, and the range that was to be expected of this test: the
/// given one, capped by what the slowest socket passes where somebody said which that is. `at_ceiling`: the adapters and not the
/// coax are what holds the rate.
pub(crate) fn rate_beside(
    measured_mbps: f64,
    range: Span,
    socket_mbps: Option<u32>,
    at_ceiling: bool,
) -> (Beside, Span) {
    let is_below = |low: f64, leeway: f64| is_below(measured_mbps, low, leeway);
    if is_above(measured_mbps, range.high, at_ceiling) {
        return (Beside::Better, range);
    }
    let Some(socket) = socket_mbps.map(f64::from) else {
        let beside = match near_socket(measured_mbps) {
            _ if !is_below(range.low, LEEWAY) => Beside::AsExpected,
            _ if is_near_hundred(measured_mbps) => Beside::NearHundred,
            Some(socket) => Beside::NearSocket(socket),
            None => Beside::Worse,
        };
        return (beside, range);
    };
    let passes = tcp_payload_rate(MegabitsPerSecond(socket)).value();
    let capped = Span::new(range.low.min(passes), range.likely.min(passes), range.high.min(passes));
    let leeway = if passes < range.low { SOCKET_LEEWAY } else { LEEWAY };
    let beside = if is_below(capped.low, leeway) && is_near_hundred(measured_mbps) {
        Beside::NearHundred
    } else if is_below(capped.low, leeway) {
        Beside::Worse
    } else if is_below(range.low, LEEWAY) {
        Beside::AtSocket(socket)
    } else {
        Beside::AsExpected
    };
    (beside, capped)
}

fn is_near_hundred(mbps: f64) -> bool {
    let share = mbps / EthernetPort::Fast.payload_rate().value();
    (UNDER_HUNDRED..=1.0 + NEAR).contains(&share)
}

fn near_socket(mbps: f64) -> Option<f64> {
    let is_near = (mbps / USUAL.payload_rate().value() - 1.0).abs() <= NEAR;
    is_near.then(|| USUAL.line_rate().value())
}

#[cfg(test)]
mod tests {
    use super::*;

    const FAST_COAX: Span = Span { low: 2300.0, likely: 2350.0, high: 2370.0 };

    fn beside(mbps: f64, socket: Option<u32>) -> Beside {
        rate_beside(mbps, FAST_COAX, socket, false).0
    }

    /// The rates that TCP reaches are those of RFC 6349 (2011), section 4.1.1: 94.9 % of the line, 949 and 94.9 Mb/s.
    #[test]
    fn a_socket_is_not_taken_for_the_coax() {
        assert_eq!(beside(940.0, Some(1000)), Beside::AtSocket(1000.0));
        assert_eq!(beside(940.0, None), Beside::NearSocket(1000.0));
        assert_eq!(beside(94.0, None), Beside::NearHundred);
        assert_eq!(beside(94.0, Some(100)), Beside::AtSocket(100.0));
        assert_eq!(beside(2340.0, Some(2500)), Beside::AsExpected);
        let (_, range) = rate_beside(940.0, FAST_COAX, Some(1000), false);
        assert!((range.high - 949.3).abs() < 0.1 && range.is_exact());
    }

    #[test]
    fn what_no_socket_explains_is_worse_than_expected() {
        // Far below what the socket passes, or between the sockets.
        assert_eq!(beside(500.0, Some(1000)), Beside::Worse);
        assert_eq!(beside(500.0, None), Beside::Worse);
        assert_eq!(beside(940.0, Some(2500)), Beside::Worse);
    }

    /// A cable of two pairs makes two sockets of 1 Gb/s run at 100 Mb/s (IEEE 802.3, auto-negotiation; from memory), whatever is
    /// printed on them.
    #[test]
    fn just_under_a_hundred_a_socket_or_cable_is_named_before_the_coax() {
        for mbps in [75.0, 80.0, 94.0, 99.0] {
            assert_eq!(
                (beside(mbps, None), beside(mbps, Some(1000))),
                (Beside::NearHundred, Beside::NearHundred)
            );
        }
        assert_eq!((beside(60.0, None), beside(110.0, Some(1000))), (Beside::Worse, Beside::Worse));
        // Coax that is to give no more is no riddle.
        assert_eq!(rate_beside(80.0, Span::new(70.0, 90.0, 120.0), None, false).0, Beside::AsExpected);
    }

    #[test]
    fn over_coax_that_is_well_any_rate_under_a_hundred_is_held_outside_it() {
        let held =
            |mbps| Held::throughput(HeldOf::Down, mbps, FAST_COAX, None, false).over_well_coax().beside;
        assert_eq!((held(40.0), held(300.0), held(0.0)), (Beside::NearHundred, Beside::Worse, Beside::Worse));
    }

    #[test]
    fn where_the_coax_is_the_slower_one_the_socket_says_nothing() {
        let slow_coax = Span::new(600.0, 700.0, 800.0);
        assert_eq!(rate_beside(650.0, slow_coax, Some(1000), false), (Beside::AsExpected, slow_coax));
        assert_eq!(rate_beside(400.0, slow_coax, Some(1000), false), (Beside::Worse, slow_coax));
        assert_eq!(rate_beside(940.0, slow_coax, None, false).0, Beside::Better);
    }

    /// The end of the range is 46.9 dB, shown as 47: what lies within 1 dB of it is no finding and no fault on a screen.
    #[test]
    fn a_loss_at_the_end_of_the_range_is_as_expected() {
        let expected = Span::new(37.0, 42.0, 46.9);
        for (loss, beside) in [
            (47.2, Beside::AsExpected),
            (47.9, Beside::AsExpected),
            (48.0, Beside::Worse),
            (36.0, Beside::AsExpected),
            (35.9, Beside::Better),
        ] {
            assert_eq!(Held::loss(loss, expected).beside, beside, "{loss}");
        }
        assert!((Held::loss(48.0, expected).outside_by() - 1.1).abs() < 1e-9);
        assert!(Held::loss(40.0, expected).is_inside() && !Held::loss(47.2, expected).is_inside());
    }
}

//! A tap (directional coupler): most passes through, a little goes to one tap port or several.

use super::Splitter;
use crate::error::CoaxError;
use crate::lanes::Real;
use crate::multiport::Multiport;

/// A coupler of a through output and a coupled arm, and for several tap ports a splitter behind the arm.
///
/// Port 0 is the input, port 1 the through output, ports 2 and up the taps. The coupler is a [`Splitter`] of two unlike
/// legs, which is what a lossless coupler is whose fourth port ends inside in a load that reflects `q`: from the output
/// to the arm passes `q` times both amplitudes, so `q` is the directivity (signal-flow graph of the four-port: Pozar,
/// "Microwave Engineering", section on directional couplers). Two passive parts joined are passive.
#[derive(Debug, Clone, PartialEq)]
pub struct Tap {
    coupler: Splitter,
    behind: Option<Splitter>,
}

impl Tap {
    /// A tap of a coupler (first leg: the through output, second: the arm) and a splitter of 2 to 8 legs behind the arm.
    ///
    /// # Errors
    /// [`CoaxError::BadCount`] for other numbers of legs.
    pub fn new(coupler: Splitter, behind: Option<Splitter>) -> Result<Self, CoaxError> {
        let wrong = |what, given, must| Err(CoaxError::BadCount { what, given, must });
        if coupler.ports() != 3 {
            return wrong("the legs of a tap's coupler", coupler.ports() - 1, "2");
        }
        if let Some(splitter) = behind.as_ref().filter(|splitter| !(3..=9).contains(&splitter.ports())) {
            return wrong("the ports of a tap", splitter.ports() - 1, "1 to 8");
        }
        Ok(Self { coupler, behind })
    }

    /// How many ports it has.
    pub fn ports(&self) -> usize {
        2 + self.behind.as_ref().map_or(1, |splitter| splitter.ports() - 1)
    }

    /// The coupler, and what stands behind its arm.
    pub(super) fn splitters(&self) -> (Option<&Splitter>, Option<&Splitter>) {
        (Some(&self.coupler), self.behind.as_ref())
    }

    /// Joins the matrices of both.
    #[inline(always)]
    pub(super) fn scatter<R: Real>(
        &self,
        coupler: &mut Multiport<R>,
        behind: &Multiport<R>,
        into: &mut Multiport<R>,
    ) {
        if self.behind.is_some() {
            *into = coupler.joined(2, behind, 0);
            into.make_symmetric();
        } else {
            std::mem::swap(into, coupler);
        }
    }
}

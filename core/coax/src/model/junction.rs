//! Conductors tied together with no splitter between: a bare tee.

use crate::error::CoaxError;
use crate::lanes::{Phasor, Real};
use crate::multiport::Multiport;

/// An ideal parallel junction of `n` ports: `S_ii = 2/n - 1`, `S_ij = 2/n` (the admittances of the other arms add;
/// textbook).
#[derive(Debug, Clone, PartialEq)]
pub struct Junction {
    ports: usize,
}

impl Junction {
    /// A junction of `ports` ports.
    ///
    /// # Errors
    /// [`CoaxError::BadCount`] unless there are 1 to 64 ports.
    pub fn new(ports: usize) -> Result<Self, CoaxError> {
        if (1..=64).contains(&ports) {
            Ok(Self { ports })
        } else {
            Err(CoaxError::BadCount { what: "the arms of a junction", given: ports, must: "1 to 64" })
        }
    }

    /// How many ports it has.
    pub fn ports(&self) -> usize {
        self.ports
    }

    #[inline(always)]
    pub(super) fn scatter<R: Real>(&self, into: &mut Multiport<R>) {
        let across = 2.0 / self.ports as f64;
        for to in 0..self.ports {
            for from in 0..self.ports {
                let value = if to == from { across - 1.0 } else { across };
                into.set(to, from, Phasor::real(R::of(value)));
            }
        }
    }
}

//! A joint without length: barrel, ground block, wall plate.

use super::two_port::TwoPort;
use crate::error::{CoaxError, at_least};
use crate::lanes::{Phasor, Real};
use crate::look::Look;
use crate::quantity::Decibels;

/// A through of a small loss and a small reflection: `S21 = S12 = t p`, `S11 = S22 = j r p`, `t^2 + r^2 <= 1`. With no
/// loss, no reflection and no delay it is exactly nothing.
#[derive(Debug, Clone, PartialEq)]
pub struct Link {
    through: f64,
    reflection: f64,
    delay_ns: f64,
}

impl Link {
    /// A joint of this loss and this return loss (infinite: no reflection). The return loss is taken as higher than given if
    /// the loss leaves no power for the reflection.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative figure.
    pub fn new(loss: Decibels, return_loss: Decibels, delay_ns: f64) -> Result<Self, CoaxError> {
        at_least("a joint's loss", loss.value(), 0.0, "dB", "0 dB or more")?;
        at_least("a joint's delay", delay_ns, 0.0, "ns", "0 ns or more")?;
        if return_loss.value() != f64::INFINITY {
            at_least("a joint's return loss", return_loss.value(), 0.0, "dB", "0 dB or more")?;
        }
        let through = (-loss).amplitude();
        let reflection = (-return_loss).amplitude().min((1.0 - through * through).max(0.0).sqrt());
        Ok(Self { through, reflection, delay_ns })
    }

    /// A joint that loses nothing but what it sends back.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative figure.
    pub fn reflecting(return_loss: Decibels) -> Result<Self, CoaxError> {
        at_least("a joint's return loss", return_loss.value(), 0.0, "dB", "0 dB or more")?;
        let reflection = (-return_loss).amplitude();
        Ok(Self { through: (1.0 - reflection * reflection).max(0.0).sqrt(), reflection, delay_ns: 0.0 })
    }

    /// The same joint with what it does so many nanoseconds away from either side.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative figure.
    pub fn with_delay(self, delay_ns: f64) -> Result<Self, CoaxError> {
        at_least("a joint's delay", delay_ns, 0.0, "ns", "0 ns or more")?;
        Ok(Self { delay_ns, ..self })
    }

    /// A joint that does nothing.
    pub fn ideal() -> Self {
        Self { through: 1.0, reflection: 0.0, delay_ns: 0.0 }
    }

    #[inline(always)]
    pub(super) fn two_port<R: Real>(&self, look: &mut Look<R>) -> TwoPort<R> {
        let p = if self.delay_ns == 0.0 { Phasor::real(R::of(1.0)) } else { look.delayed(self.delay_ns) };
        let back = Phasor::imaginary(R::of(self.reflection)) * p;
        TwoPort { near: back, through: p.scaled(R::of(self.through)), far: back }
    }
}

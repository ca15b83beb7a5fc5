//! A filter that passes one band and sends another back, as the entry filter does.

use num_complex::Complex64;

use super::{delayed, logistic};
use crate::error::{CoaxError, at_least};
use crate::quantity::{Decibels, Megahertz};
use crate::scatter::ScatterMatrix;

/// Through loss rises from `pass` to `stop` around `turnover`; what is neither passed nor dissipated comes back.
///
/// `att = pass + (stop - pass)/(1 + exp(-(f - turnover)/width))`, `t = 10^(-att/20)`, `r = sqrt(10^(-diss/10) - t^2)`,
/// `S11 = S22 = r p`, `S21 = S12 = -j t p`, `p` a delay. The quarter turn between the two makes the part passive: its
/// singular values are all `10^(-diss/20)` (a property of every symmetric lossless two-port; Pozar, "Microwave
/// Engineering", section on the scattering matrix).
#[derive(Debug, Clone, PartialEq)]
pub struct EntryFilter {
    pass: f64,
    stop: f64,
    turnover: f64,
    width: f64,
    dissipated: f64,
    delay_ns: f64,
}

impl EntryFilter {
    /// A filter with this through loss well inside either band, the middle and the width of the turnover (a negative
    /// width: the band below is the stopped one), the loss by dissipation and the delay in nanoseconds.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative loss, delay or turnover, or a width of 0.
    pub fn new(
        pass: Decibels,
        stop: Decibels,
        turnover: Megahertz,
        width: Megahertz,
        dissipated: Decibels,
        delay_ns: f64,
    ) -> Result<Self, CoaxError> {
        Ok(Self {
            pass: at_least("a filter's pass loss", pass.value(), 0.0, "dB", "0 dB or more")?,
            stop: at_least("a filter's rejection", stop.value(), 0.0, "dB", "0 dB or more")?,
            turnover: at_least("a filter's turnover", turnover.value(), 0.0, "MHz", "0 MHz or more")?,
            width: at_least("a filter's turnover width", width.value().abs(), 1e-6, "MHz", "other than 0")
                .map(|_| width.value())?,
            dissipated: at_least("a filter's dissipation", dissipated.value(), 0.0, "dB", "0 dB or more")?,
            delay_ns: at_least("a filter's delay", delay_ns, 0.0, "ns", "0 ns or more")?,
        })
    }

    /// Through loss at `frequency` between matched ends.
    pub fn loss(&self, frequency: Megahertz) -> Decibels {
        let share = logistic((frequency.value() - self.turnover) / self.width);
        Decibels(self.pass + (self.stop - self.pass) * share)
    }

    pub(super) fn scatter(&self, frequency: Megahertz, into: &mut ScatterMatrix) {
        write_reflecting(self.loss(frequency), Decibels(self.dissipated), frequency, self.delay_ns, into);
    }
}

/// Writes a two-port of this through loss that sends back what it neither passes nor dissipates.
pub(super) fn write_reflecting(
    loss: Decibels,
    dissipated: Decibels,
    frequency: Megahertz,
    delay_ns: f64,
    into: &mut ScatterMatrix,
) {
    let kept = (-dissipated).power();
    // A through loss below the dissipation cannot be: passivity wins.
    let t = (-loss).amplitude().min(kept.sqrt());
    let r = (kept - t * t).max(0.0).sqrt();
    let p = delayed(frequency, delay_ns);
    into.set(0, 0, r * p);
    into.set(1, 1, r * p);
    into.set_both(0, 1, Complex64::new(0.0, -t) * p);
}

//! A filter that passes one band and sends another back, as the entry filter does.

use super::two_port::TwoPort;
use crate::error::{CoaxError, at_least};
use crate::lanes::{Phasor, Real};
use crate::look::Look;
use crate::quantity::{Decibels, Megahertz};

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
        Decibels(self.loss_at(frequency.value()))
    }

    #[inline(always)]
    fn loss_at<R: Real>(&self, megahertz: R) -> R {
        let share = ((megahertz - R::of(self.turnover)) / R::of(self.width)).logistic();
        R::of(self.pass) + R::of(self.stop - self.pass) * share
    }

    #[inline(always)]
    pub(super) fn two_port<R: Real>(&self, look: &mut Look<R>) -> TwoPort<R> {
        reflecting(self.loss_at(look.megahertz), self.dissipated, self.delay_ns, look)
    }
}

/// A two-port of this through loss that sends back what it neither passes nor dissipates.
#[inline(always)]
pub(super) fn reflecting<R: Real>(loss: R, dissipated: f64, delay_ns: f64, look: &mut Look<R>) -> TwoPort<R> {
    let kept = (-Decibels(dissipated)).power();
    // A through loss below the dissipation cannot be: passivity wins.
    let t = (-loss).amplitude().min(R::of(kept.sqrt()));
    let r = (R::of(kept) - t * t).max(R::of(0.0)).sqrt();
    let p = look.delayed(delay_ns);
    TwoPort { near: p.scaled(r), through: Phasor::imaginary(-t) * p, far: p.scaled(r) }
}

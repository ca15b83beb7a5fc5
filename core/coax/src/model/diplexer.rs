//! A satellite combiner (diplexer): two bands, each with a port of its own, on one common port.

use super::turn;
use crate::error::{CoaxError, at_least};
use crate::lanes::{Phasor, Real};
use crate::look::Look;
use crate::multiport::Multiport;
use crate::quantity::{Decibels, Megahertz};

/// A passive reciprocal three-port: port 0 is the common one, 1 carries the band below `turnover`, 2 the band above.
///
/// With `t` the amplitudes to the two band ports, `w = t/|t|`, `v` perpendicular to `w`, `r` the common port's reflection and
/// `k` the amplitude that dissipation leaves, the matrix is `[[r, t'], [t, -r I - (k - r) v v']]` with `r^2 + |t|^2 = k^2`,
/// between phases of the ports: all its singular values are `k` (the same algebra as [`super::Splitter`]). So a port sends
/// back what is outside its band.
#[derive(Debug, Clone, PartialEq)]
pub struct Diplexer {
    /// Loss below and above, in dB.
    losses: [f64; 2],
    isolation: f64,
    return_loss: f64,
    turnover: f64,
    width: f64,
    delay_ns: f64,
    /// By port, in radians.
    phases: [f64; 3],
}

impl Diplexer {
    /// A diplexer of these losses inside the lower and the upper band, this loss from the common port to the port of the
    /// other band, this return loss inside the bands, the middle and the width of the turnover, the delay in nanoseconds from
    /// port to port and the phase of each port's plane, in radians.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative figure, a turnover without width or a phase that is not finite.
    pub fn new(
        losses: [Decibels; 2],
        isolation: Decibels,
        return_loss: Decibels,
        turnover: Megahertz,
        width: Megahertz,
        delay_ns: f64,
        phases: [f64; 3],
    ) -> Result<Self, CoaxError> {
        for loss in losses {
            at_least("a combiner's loss", loss.value(), 0.0, "dB", "0 dB or more")?;
        }
        for phase in phases {
            at_least("a combiner's phase", phase, f64::MIN, "rad", "a finite number")?;
        }
        Ok(Self {
            losses: losses.map(Decibels::value),
            isolation: at_least("a combiner's isolation", isolation.value(), 0.0, "dB", "0 dB or more")?,
            return_loss: at_least(
                "a combiner's return loss",
                return_loss.value(),
                0.0,
                "dB",
                "0 dB or more",
            )?,
            turnover: at_least("a combiner's turnover", turnover.value(), 0.0, "MHz", "0 MHz or more")?,
            width: at_least("a combiner's turnover width", width.value(), 1e-6, "MHz", "above 0 MHz")?,
            delay_ns: at_least("a combiner's delay", delay_ns, 0.0, "ns", "0 ns or more")?,
            phases,
        })
    }

    pub(super) fn scatter(&self, megahertz: f64, into: &mut Multiport<f64>) {
        let up = ((megahertz - self.turnover) / self.width).logistic();
        let [low, high] = self.losses;
        let amplitude =
            |own: f64, away: f64| (-Decibels(own + (self.isolation.max(own) - own) * away)).amplitude();
        let t = [amplitude(low, up), amplitude(high, 1.0 - up)];
        let here = low + (high - low) * up;
        let power = t[0] * t[0] + t[1] * t[1];
        let echo = (-Decibels(self.return_loss)).power();
        let kept = ((-Decibels(here)).power() + echo).max(power).min(1.0);
        // More power out than in is a misread label: passivity wins.
        let shrink = if power > kept { (kept / power).sqrt() } else { 1.0 };
        let r = (kept - power).max(0.0).sqrt();
        let q = (kept.sqrt() - r).max(0.0);
        let size = power.sqrt();
        let v = if size > 0.0 { [t[1] / size, -t[0] / size] } else { [1.0, 0.0] };
        // Half of the delay at each port: a diagonal of phases on both sides.
        let half = Look::at(megahertz).delayed(self.delay_ns / 2.0);
        let p = self.phases.map(|phase| half * Phasor::of(turn(phase)));
        into.set(0, 0, (p[0] * p[0]).scaled(r));
        for a in 0..2 {
            into.set_both(0, a + 1, (p[0] * p[a + 1]).scaled(t[a] * shrink));
            into.set(a + 1, a + 1, (p[a + 1] * p[a + 1]).scaled(-q * v[a] * v[a] - r));
        }
        into.set_both(1, 2, (p[1] * p[2]).scaled(-q * v[0] * v[1]));
    }
}

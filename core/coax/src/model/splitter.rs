//! A splitter or tap.

use num_complex::Complex64;

use super::turn;
use crate::error::{CoaxError, at_least};
use crate::estimates::parts;
use crate::lanes::{Phasor, Real};
use crate::look::Look;
use crate::multiport::Multiport;
use crate::quantity::{Decibels, Megahertz};

/// The frequency at which the legs have their stated loss; the slope turns about it.
const STATED_AT_MHZ: f64 = parts::SPLITTER_STATED_AT.span.likely;

/// How a splitter behaves above the band it is made for. It grows smoothly from nothing at `top`.
#[derive(Debug, Clone, PartialEq)]
pub struct AboveRating {
    /// The upper edge of the band on the label.
    pub top: Megahertz,
    /// Extra loss from input to leg, in dB, at `top + ramp`.
    pub extra_loss: Decibels,
    /// Leg to leg loss (root mean square) at `top + ramp` and above.
    pub isolation: Decibels,
    /// Return loss at `top + ramp` and above.
    pub return_loss: Decibels,
    /// How far above `top` these figures are reached; the extra loss grows on beyond it, as the fourth root.
    pub ramp: Megahertz,
}

/// A splitter of any number of legs, alike or not (a tap is a splitter of two unlike legs).
///
/// With `t` the amplitudes to the legs, `tau = |t|`, `w = t/tau` and `r` the reflection at the input, the matrix is
/// `[[r, t'], [t, -conj(r) I + q V F V']]`: `V` an orthonormal basis of what is perpendicular to `w`, `F` a diagonal of
/// phases. What the input excites and what it does not are then separate blocks with the singular values
/// `sqrt(|r|^2 + tau^2)` and at most `|r| + q`; both are kept at or below 1, so the part is passive whatever the phases.
/// Delays stand outside as a diagonal of phases on both sides, which changes no singular value. `q` gives the legs the
/// stated isolation as a root mean square over phases. (Linear algebra; the passivity condition `I - S^H S >= 0`: Pozar,
/// "Microwave Engineering", section on the scattering matrix.)
#[derive(Debug, Clone, PartialEq)]
pub struct Splitter {
    /// Amplitude through each leg at 800 MHz.
    legs: Vec<f64>,
    /// Loss of the leg that loses least, dB.
    least_loss: f64,
    /// Slope of the legs' loss in dB/GHz.
    slope: f64,
    isolation: InAndAbove,
    return_loss: InAndAbove,
    above: Option<Above>,
    /// One phase (as a factor) and one delay (ns) for each way between legs: one fewer than legs.
    modes: Vec<(Complex64, f64)>,
    /// Phase (as a factor) and delay (ns) of the input's reflection.
    echo: (Complex64, f64),
    /// Delay of each port in ns, input first.
    delays: Vec<f64>,
    /// `V`, one vector of a length of `legs` for each mode.
    basis: Vec<Vec<f64>>,
    /// Root mean square of the leg to leg entries of `V F V'` over all phases.
    spread: f64,
}

/// What a splitter does above its band, and its isolation and return loss there.
#[derive(Debug, Clone, PartialEq)]
struct Above {
    rating: AboveRating,
    isolation: InAndAbove,
    return_loss: InAndAbove,
}

/// A loss whose amplitude is asked for at every frequency and is the same within the band.
#[derive(Debug, Clone, Copy, PartialEq)]
struct InAndAbove {
    /// Within the band, dB.
    loss: f64,
    /// The same as an amplitude.
    amplitude: f64,
}

impl InAndAbove {
    fn new(loss: f64) -> Self {
        Self { loss, amplitude: (-Decibels(loss)).amplitude() }
    }

    /// The amplitude where this share of the way to what it is above the band is gone.
    #[inline(always)]
    fn towards<R: Real>(self, there: InAndAbove, share: R) -> R {
        // All the way up the ramp, and where there is no way between, no power is taken.
        if self.loss.is_finite() && (-share).any_above(-1.0) {
            (R::of(-self.loss) - R::of(there.loss - self.loss) * share).amplitude()
        } else {
            R::of(there.amplitude)
        }
    }
}

impl Splitter {
    /// A splitter of these leg losses, isolation between legs and return loss, with no slope, no delay, all phases 0 and no
    /// upper edge.
    ///
    /// # Errors
    /// [`CoaxError::BadCount`] unless it has 1 to 63 legs; [`CoaxError::BadFigure`] for a negative figure.
    pub fn new(legs: &[Decibels], isolation: Decibels, return_loss: Decibels) -> Result<Self, CoaxError> {
        if !(1..=63).contains(&legs.len()) {
            return Err(CoaxError::BadCount {
                what: "the legs of a splitter",
                given: legs.len(),
                must: "1 to 63",
            });
        }
        for leg in legs {
            at_least("a leg's loss", leg.value(), 0.0, "dB", "0 dB or more")?;
        }
        let isolation = not_negative("a splitter's isolation", isolation)?;
        let return_loss = not_negative("a splitter's return loss", return_loss)?;
        let amplitudes: Vec<f64> = legs.iter().map(|&leg| (-leg).amplitude()).collect();
        let basis = perpendicular_to(&amplitudes);
        let spread = coupling_spread(&basis, legs.len());
        Ok(Self {
            legs: amplitudes,
            least_loss: legs.iter().map(|leg| leg.value()).fold(f64::INFINITY, f64::min),
            slope: 0.0,
            isolation: InAndAbove::new(isolation),
            return_loss: InAndAbove::new(return_loss),
            above: None,
            modes: vec![(Complex64::ONE, 0.0); basis.len()],
            echo: (Complex64::ONE, 0.0),
            delays: vec![0.0; legs.len() + 1],
            basis,
            spread,
        })
    }

    /// The same splitter whose leg loss changes by `slope` dB for each GHz, about 800 MHz.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a slope that is negative or not finite.
    pub fn with_slope(self, slope: f64) -> Result<Self, CoaxError> {
        let slope = at_least("a splitter's slope", slope, 0.0, "dB/GHz", "0 or more")?;
        Ok(Self { slope, ..self })
    }

    /// The same splitter with this behaviour above its band.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative figure, or a top or ramp that is not positive.
    pub fn with_above_rating(self, above: AboveRating) -> Result<Self, CoaxError> {
        at_least("a splitter's upper edge", above.top.value(), 1e-3, "MHz", "above 0 MHz")?;
        at_least("a splitter's ramp above its edge", above.ramp.value(), 1e-3, "MHz", "above 0 MHz")?;
        at_least("a splitter's extra loss", above.extra_loss.value(), 0.0, "dB", "0 dB or more")?;
        let isolation = not_negative("a splitter's isolation above its edge", above.isolation)?;
        let return_loss = not_negative("a splitter's return loss above its edge", above.return_loss)?;
        let [isolation, return_loss] = [isolation, return_loss].map(InAndAbove::new);
        Ok(Self { above: Some(Above { rating: above, isolation, return_loss }), ..self })
    }

    /// The same splitter with phases and delays taken one after another from two sources: `phase` in radians, `delay` in
    /// nanoseconds. The ways between legs are turned among each other by such phases too, so that over many draws no pair of
    /// legs is nearer to each other than another.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a delay that is negative or not finite, or a phase that is not finite.
    pub fn with_phases(
        mut self,
        mut phase: impl FnMut() -> f64,
        mut delay: impl FnMut() -> f64,
    ) -> Result<Self, CoaxError> {
        for value in &mut self.delays {
            *value = at_least("a splitter's delay", delay(), 0.0, "ns", "0 ns or more")?;
        }
        for mode in &mut self.modes {
            let radians = at_least("a splitter's phase", phase(), f64::MIN, "rad", "a finite number")?;
            *mode = (turn(radians), at_least("a splitter's delay", delay(), 0.0, "ns", "0 ns or more")?);
        }
        let radians = at_least("a splitter's phase", phase(), f64::MIN, "rad", "a finite number")?;
        // The legs reflect the conjugate: kept causal by a delay no longer than theirs.
        let shortest = self.delays.iter().copied().fold(f64::INFINITY, f64::min);
        self.echo = (turn(radians), delay().min(2.0 * shortest));
        // Three rounds of rotations, each of a mode and the next: after two, outputs of six are up to 1.2 dB apart from each other.
        for _ in 0..3 {
            for at in 1..self.basis.len() {
                let radians = at_least("a splitter's phase", phase(), f64::MIN, "rad", "a finite number")?;
                if let Some([one, other]) = self.basis.get_mut(at - 1..=at) {
                    rotate(one, other, radians);
                }
            }
        }
        self.spread = coupling_spread(&self.basis, self.legs.len());
        Ok(self)
    }

    /// How many ports it has: its legs and the input.
    pub fn ports(&self) -> usize {
        self.legs.len() + 1
    }

    /// How far above its band frequencies are, if any is: 0 in the band, 1 at `top + ramp`.
    #[inline(always)]
    fn beyond<R: Real>(&self, megahertz: R) -> Option<(&Above, R)> {
        let above = self.above.as_ref()?;
        let x = (megahertz - R::of(above.rating.top.value())) / R::of(above.rating.ramp.value());
        x.any_above(0.0).then_some((above, x))
    }

    /// Loss in dB added to every leg; isolation and return loss as amplitudes.
    #[inline(always)]
    fn figures<R: Real>(&self, megahertz: R) -> (R, R, R) {
        let slope = (megahertz - R::of(STATED_AT_MHZ)) * R::of(self.slope * 1e-3);
        let Some((above, x)) = self.beyond(megahertz) else {
            return (slope, R::of(self.isolation.amplitude), R::of(self.return_loss.amplitude));
        };
        // Flat at the edge, 1 with a level slope at 1: no corner at either end.
        let ramp = x.max(R::of(0.0)).min(R::of(1.0));
        let share = ramp * ramp * (R::of(3.0) - ramp - ramp);
        let growth = share * x.max(R::of(1.0)).sqrt().sqrt();
        (
            slope + R::of(above.rating.extra_loss.value()) * growth,
            self.isolation.towards(above.isolation, share),
            self.return_loss.towards(above.return_loss, share),
        )
    }

    #[inline(always)]
    pub(super) fn scatter<R: Real>(&self, look: &mut Look<R>, into: &mut Multiport<R>) {
        let one = R::of(1.0);
        let (added, isolation, return_loss) = self.figures(look.megahertz);
        // The same for every leg, so that the legs keep their proportions and `basis` stays perpendicular to them.
        let share = (-added.max(R::of(-self.least_loss))).amplitude();
        let power = R::of(self.legs.iter().map(|t| t * t).sum::<f64>()) * share * share;
        // More power out than in is a misread label: passivity wins.
        let shrink = one / power.max(one).sqrt();
        let left = (one - power.min(one)).max(R::of(0.0)).sqrt();
        let size = return_loss.min(left);
        let r = (Phasor::of(self.echo.0) * look.delayed(self.echo.1)).scaled(size);
        into.set(0, 0, r);
        for (k, &t) in self.legs.iter().enumerate() {
            into.set_both(0, k + 1, Phasor::real(R::of(t) * share * shrink));
            into.set(k + 1, k + 1, -r.conjugate());
        }
        if self.spread > 0.0 {
            let q = (isolation * R::of(self.spread.recip())).min(one - size);
            for ((turned, ns), vector) in self.modes.iter().zip(&self.basis) {
                let mode = (Phasor::of(*turned) * look.delayed(*ns)).scaled(q);
                for (k, here) in vector.iter().enumerate() {
                    for (l, there) in vector.iter().enumerate().skip(k) {
                        let sum = into.at(k + 1, l + 1) + mode.scaled(R::of(here * there));
                        into.set_both(k + 1, l + 1, sum);
                    }
                }
            }
        }
        for (port, &ns) in self.delays.iter().enumerate() {
            if ns != 0.0 {
                into.delay(port, look.delayed(ns));
            }
        }
    }
}

fn not_negative(what: &'static str, value: Decibels) -> Result<f64, CoaxError> {
    if value.value() == f64::INFINITY {
        Ok(f64::INFINITY)
    } else {
        at_least(what, value.value(), 0.0, "dB", "0 dB or more")
    }
}

/// An orthonormal basis of all that is perpendicular to `t`: the cosine basis (whose vectors spread evenly over the
/// legs, so that every pair of legs couples), reflected so that its constant vector falls on `t`.
fn perpendicular_to(t: &[f64]) -> Vec<Vec<f64>> {
    let n = t.len();
    let size = t.iter().map(|x| x * x).sum::<f64>().sqrt();
    let first = (n as f64).sqrt().recip();
    // Householder: the mirror between the constant vector and t.
    let mirror: Vec<f64> = t.iter().map(|x| if size > 0.0 { first - x / size } else { 0.0 }).collect();
    let norm: f64 = mirror.iter().map(|x| x * x).sum();
    (1..n)
        .map(|m| {
            let cosine: Vec<f64> = (0..n)
                .map(|k| {
                    let angle = std::f64::consts::PI * m as f64 * (k as f64 + 0.5) / n as f64;
                    (2.0 / n as f64).sqrt() * angle.cos()
                })
                .collect();
            let along: f64 = cosine.iter().zip(&mirror).map(|(a, b)| a * b).sum();
            let back = if norm > 1e-24 { 2.0 * along / norm } else { 0.0 };
            cosine.iter().zip(&mirror).map(|(a, b)| a - back * b).collect()
        })
        .collect()
}

/// Turns two vectors of a basis in the plane that they span.
fn rotate(one: &mut [f64], other: &mut [f64], radians: f64) {
    let (sine, cosine) = radians.sin_cos();
    for (a, b) in one.iter_mut().zip(other) {
        (*a, *b) = (cosine * *a - sine * *b, sine * *a + cosine * *b);
    }
}

/// Root mean square over pairs of legs and independent phases of the entries of `V F V'`.
fn coupling_spread(basis: &[Vec<f64>], legs: usize) -> f64 {
    let pairs = legs * legs.saturating_sub(1) / 2;
    if pairs == 0 {
        return 0.0;
    }
    let mut sum = 0.0;
    for vector in basis {
        for k in 0..legs {
            for l in 0..k {
                sum += (vector[k] * vector[l]).powi(2);
            }
        }
    }
    (sum / pairs as f64).sqrt()
}

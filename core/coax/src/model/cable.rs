//! A run of coaxial cable.

use super::Link;
use super::two_port::TwoPort;
use crate::error::{CoaxError, at_least};
use crate::lanes::{Phasor, Real};
use crate::look::Look;
use crate::quantity::{Decibels, Megahertz, Metres};

/// The impedance against which everything is measured, in ohm (type F connectors and MoCA ports: "MoCA 1.1 Reference
/// Specification", Connector and Return Loss).
pub const REFERENCE_OHM: f64 = 75.0;

/// The speed of light in a vacuum, in m/s (exact by definition of the metre, 1983).
pub const SPEED_OF_LIGHT: f64 = 299_792_458.0;

/// Below this frequency the two-term law is left if a low-band power is given.
const LOW_BAND_TOP_MHZ: f64 = 55.0;

/// A uniform line.
///
/// Loss per 100 m is `k1 sqrt(f) + k2 f` decibels (f in MHz; skin effect and dielectric: "Modern Cable Television
/// Technology", 2nd ed., as quoted in R. Hranac, "Coaxial Cable Attenuation", broadbandlibrary.com), velocity is a
/// fixed share of light's, impedance is real. `S11 = S22 = r (1 - e^2)/(1 - r^2 e^2)`,
/// `S21 = S12 = (1 - r^2) e/(1 - r^2 e^2)` with `e = exp(-gamma l)` and `r = (Z - 75)/(Z + 75)` (any text on
/// transmission lines).
#[derive(Debug, Clone, PartialEq)]
pub struct Cable {
    length: f64,
    impedance: f64,
    k1: f64,
    k2: f64,
    velocity: f64,
    fixed_loss: f64,
    low_band_power: Option<f64>,
    /// What sends waves back at the ends, by port.
    joints: [Option<Link>; 2],
}

impl Cable {
    /// A run by the plain law: length, impedance in ohm, `k1` and `k2` in dB/100 m (f in MHz), velocity as a share of
    /// light's.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative length or loss, an impedance that is not positive or a velocity that is not
    /// above 0 and at most 1.
    pub fn new(length: Metres, impedance: f64, k1: f64, k2: f64, velocity: f64) -> Result<Self, CoaxError> {
        at_least("a cable's length", length.value(), 0.0, "m", "0 m or more")?;
        at_least("a cable's impedance", impedance, 1e-3, "ohm", "above 0 ohm")?;
        at_least("a cable's k1", k1, 0.0, "dB/100 m", "0 or more")?;
        at_least("a cable's k2", k2, 0.0, "dB/100 m", "0 or more")?;
        at_least("a cable's velocity", velocity, 1e-3, "of light's", "above 0 and at most 1")?;
        at_least("a cable's velocity, seen from 1 down", 1.0 - velocity, 0.0, "", "0 or more")?;
        Ok(Self {
            length: length.value(),
            impedance,
            k1,
            k2,
            velocity,
            fixed_loss: 0.0,
            low_band_power: None,
            joints: [None, None],
        })
    }

    /// The same run with a loss at its connectors that does not change with frequency.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative loss.
    pub fn with_fixed_loss(self, loss: Decibels) -> Result<Self, CoaxError> {
        let fixed_loss = at_least("a cable's connector loss", loss.value(), 0.0, "dB", "0 dB or more")?;
        Ok(Self { fixed_loss, ..self })
    }

    /// The same run with a loss that below 55 MHz follows `(f/55)^power`, joined to the law at 55 MHz: in
    /// copper-clad steel the current reaches the steel there, and the two-term law is up to 30 % too low at 5 MHz.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative power.
    pub fn with_low_band_power(self, power: f64) -> Result<Self, CoaxError> {
        let power = at_least("a cable's low-band power", power, 0.0, "", "0 or more")?;
        Ok(Self { low_band_power: Some(power), ..self })
    }

    /// The same run with a joint at the end of `port` (0 or 1) that sends waves back.
    ///
    /// # Errors
    /// [`CoaxError::BadCount`] for another port.
    pub fn with_joint(mut self, port: usize, joint: Link) -> Result<Self, CoaxError> {
        let end = self.joints.get_mut(port).ok_or(CoaxError::BadCount {
            what: "the port of a cable",
            given: port,
            must: "0 or 1",
        })?;
        *end = Some(joint);
        Ok(self)
    }

    /// The loss of the run by itself, between ends of its own impedance.
    pub fn loss(&self, frequency: Megahertz) -> Decibels {
        Decibels(
            self.loss_per_100_m(frequency.value(), frequency.value().sqrt()) * self.length / 100.0
                + self.fixed_loss,
        )
    }

    /// The run's length.
    pub fn length(&self) -> Metres {
        Metres(self.length)
    }

    #[inline(always)]
    fn law<R: Real>(&self, megahertz: R, root: R) -> R {
        R::of(self.k1) * root + R::of(self.k2) * megahertz
    }

    #[inline(always)]
    fn loss_per_100_m<R: Real>(&self, megahertz: R, root: R) -> R {
        let mut loss = self.law(megahertz, root);
        if let Some(power) = self.low_band_power
            && (-megahertz).any_above(-LOW_BAND_TOP_MHZ)
        {
            let top = self.law(LOW_BAND_TOP_MHZ, LOW_BAND_TOP_MHZ.sqrt());
            for lane in 0..R::COUNT {
                let at = megahertz.lane(lane);
                if at < LOW_BAND_TOP_MHZ {
                    loss.set_lane(lane, top * (at / LOW_BAND_TOP_MHZ).powf(power));
                }
            }
        }
        loss
    }

    #[inline(always)]
    pub(super) fn two_port<R: Real>(&self, look: &mut Look<R>) -> TwoPort<R> {
        let mut run = self.line(look);
        if let [Some(joint), _] = &self.joints {
            run = joint.two_port(look).then(run);
        }
        if let [_, Some(joint)] = &self.joints {
            run = run.then(joint.two_port(look));
        }
        run
    }

    /// The run without its joints.
    #[inline(always)]
    fn line<R: Real>(&self, look: &mut Look<R>) -> TwoPort<R> {
        let loss = self.loss_per_100_m(look.megahertz, look.root) * R::of(self.length / 100.0)
            + R::of(self.fixed_loss);
        let e = look.delayed(self.delay_ns()).scaled((-loss).amplitude());
        let r = (self.impedance - REFERENCE_OHM) / (self.impedance + REFERENCE_OHM);
        let (one, twice) = (Phasor::real(R::of(1.0)), e * e);
        let echoes = (one - twice.scaled(R::of(r * r))).inverse();
        let back = (one - twice).scaled(R::of(r)) * echoes;
        TwoPort { near: back, through: e.scaled(R::of(1.0 - r * r)) * echoes, far: back }
    }

    /// How long a wave takes through the run, in nanoseconds.
    fn delay_ns(&self) -> f64 {
        self.length / (SPEED_OF_LIGHT * self.velocity) * 1e9
    }
}

//! A house amplifier: gain down above its split, a return path up below it, nearly opaque elsewhere.

use super::{Splitter, turn};
use crate::error::{CoaxError, at_least};
use crate::estimates::parts;
use crate::lanes::{Phasor, Real};
use crate::look::Look;
use crate::multiport::Multiport;
use crate::quantity::{Decibels, Megahertz};
use crate::trade::{EXTENDED_D_HIGH, EXTENDED_D_LOW};

/// The most that a round trip through the core (down and up again) may amount to, as an amplitude. With both its ends
/// reflecting at most 0.6 it then settles with any ends: `(1 - 0.6)^2 > 0.1`.
const MOST_LOOP: f64 = 0.1;

/// The amplifying two-port inside: port 0 towards the street.
#[derive(Debug, Clone, PartialEq)]
pub struct AmplifierCore {
    /// Gain towards the outlets between the split and `forward_top`.
    pub forward_gain: Decibels,
    /// Gain towards the street below the split.
    pub return_gain: Decibels,
    /// Top of the return band.
    pub split: Megahertz,
    /// Top of the forward band.
    pub forward_top: Megahertz,
    /// Loss where it neither amplifies nor returns.
    pub opaque_loss: Decibels,
    /// Loss of a passive way round in 1125 to 1675 MHz, both ways, if there is one.
    pub bypass_loss: Option<Decibels>,
    /// Return loss of both its ends.
    pub return_loss: Decibels,
    /// Delay in nanoseconds.
    pub delay_ns: f64,
    /// Phases of the reflections at its two ends, in radians.
    pub phases: [f64; 2],
}

/// The gain falls off about this share of the forward band's top, within so much of it (common practice, no source).
const TOP_AT: f64 = 1.03;
const TOP_WIDTH: f64 = 0.0075;

/// A by-pass is half way down so far outside the MoCA band, and falls within so much (common practice, no source).
const BYPASS_EDGE_MHZ: f64 = 15.0;
const BYPASS_WIDTH_MHZ: f64 = 3.0;

/// The MoCA band in which a by-pass passes (SCTE 235 announcement, broadbandtechreport.com, 14 March 2017).
const BYPASS_BAND_MHZ: (f64, f64) = (EXTENDED_D_LOW.value(), EXTENDED_D_HIGH.value());

impl AmplifierCore {
    fn check(&self) -> Result<(), CoaxError> {
        at_least("an amplifier's forward gain", self.forward_gain.value(), -60.0, "dB", "-60 dB or more")?;
        at_least(
            "an amplifier's forward gain, seen from 60 dB down",
            60.0 - self.forward_gain.value(),
            0.0,
            "dB",
            "0 or more",
        )?;
        at_least("an amplifier's return gain", self.return_gain.value(), -60.0, "dB", "-60 dB or more")?;
        at_least(
            "an amplifier's return gain, seen from 60 dB down",
            60.0 - self.return_gain.value(),
            0.0,
            "dB",
            "0 or more",
        )?;
        at_least("an amplifier's split", self.split.value(), 1.0, "MHz", "1 MHz or more")?;
        at_least(
            "an amplifier's forward band above its split",
            (self.forward_top - self.split).value(),
            1.0,
            "MHz",
            "1 MHz or more",
        )?;
        at_least(
            "an amplifier's loss outside its bands",
            self.opaque_loss.value(),
            20.0,
            "dB",
            "20 dB or more",
        )?;
        at_least(
            "an amplifier's by-pass loss",
            self.bypass_loss.map_or(0.0, Decibels::value),
            0.0,
            "dB",
            "0 dB or more",
        )?;
        at_least("an amplifier's return loss", self.return_loss.value(), 5.0, "dB", "5 dB or more")?;
        at_least("an amplifier's delay", self.delay_ns, 0.0, "ns", "0 ns or more")?;
        for phase in self.phases {
            at_least("an amplifier's phase", phase, f64::MIN, "rad", "a finite number")?;
        }
        Ok(())
    }

    /// Amplitudes downwards and upwards.
    #[inline(always)]
    fn ways<R: Real>(&self, f: R) -> (R, R) {
        let split = self.split.value();
        let gap = parts::AMPLIFIER_TURNOVER.span.likely * split;
        // Logistic in dB from full to opaque: eight widths across the turnover.
        let rise = ((f - R::of(split + gap / 2.0)) / R::of(gap / 16.0)).logistic();
        let top = self.forward_top.value();
        let fall = ((R::of(top * TOP_AT) - f) / R::of(top * TOP_WIDTH)).logistic();
        let opaque = self.opaque_loss.value();
        let down = R::of(self.forward_gain.value() + opaque) * rise * fall - R::of(opaque);
        let up = R::of(self.return_gain.value() + opaque) * (R::of(1.0) - rise) - R::of(opaque);
        (down.amplitude(), up.amplitude())
    }

    #[inline(always)]
    fn scatter<R: Real>(&self, look: &mut Look<R>, core: &mut Multiport<R>) {
        let f = look.megahertz;
        let (down, up) = self.ways(f);
        // A filter that let both through would howl; makers see to it that it does not: the weaker way gives in.
        let weaker = down.min(up).min(R::of(MOST_LOOP) / down.max(up));
        let amplified = (down.below(up, weaker, down), down.below(up, up, weaker));
        let back = R::of((-self.return_loss).amplitude());
        let p = look.delayed(self.delay_ns);
        let [near, far] = self.phases;
        let mut near = (Phasor::of(turn(near)) * p).scaled(back);
        let mut far = (Phasor::of(turn(far)) * p).scaled(back);
        let (mut down, mut up) = (p.scaled(amplified.0), p.scaled(amplified.1));
        if let Some(loss) = self.bypass_loss {
            let (low, high) = BYPASS_BAND_MHZ;
            // Half way down (in amplitude) there, full at the edges.
            let within = ((f - R::of(low - BYPASS_EDGE_MHZ)) / R::of(BYPASS_WIDTH_MHZ)).logistic()
                * ((R::of(high + BYPASS_EDGE_MHZ) - f) / R::of(BYPASS_WIDTH_MHZ)).logistic();
            let round = R::of((-loss).amplitude()) * within;
            // The way round is passive: through and back together at most 1, a quarter turn apart.
            let back = back.min((R::of(1.0) - round * round).max(R::of(0.0)).sqrt());
            let (through, back) = (p.scaled(round), Phasor::imaginary(back) * p);
            let most = amplified.0.max(amplified.1);
            down = through.where_below(most, round, down);
            up = through.where_below(most, round, up);
            near = back.where_below(most, round, near);
            far = back.where_below(most, round, far);
        }
        core.set(1, 0, down);
        core.set(0, 1, up);
        core.set(0, 0, near);
        core.set(1, 1, far);
    }
}

/// An amplifying core with what stands around it in the same housing: perhaps a splitter before it, whose second leg is an
/// output that is not amplified (for a modem or voice), and perhaps a splitter behind it.
///
/// Port 0 is the input, then the outputs in order, then the output that is not amplified.
#[derive(Debug, Clone, PartialEq)]
pub struct Amplifier {
    core: AmplifierCore,
    before: Option<Splitter>,
    behind: Option<Splitter>,
}

impl Amplifier {
    /// An amplifier of these pieces. `before` must have two legs: the first to the core.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a figure of the core that cannot be, [`CoaxError::BadCount`] if `before` has not two
    /// legs.
    pub fn new(
        core: AmplifierCore,
        before: Option<Splitter>,
        behind: Option<Splitter>,
    ) -> Result<Self, CoaxError> {
        core.check()?;
        if let Some(before) = before.as_ref().filter(|before| before.ports() != 3) {
            return Err(CoaxError::BadCount {
                what: "the legs of an amplifier's input splitter",
                given: before.ports() - 1,
                must: "2",
            });
        }
        Ok(Self { core, before, behind })
    }

    /// How many ports it has.
    pub fn ports(&self) -> usize {
        1 + self.behind.as_ref().map_or(1, |splitter| splitter.ports() - 1)
            + usize::from(self.before.is_some())
    }

    /// The splitters before the core and behind it.
    pub(super) fn splitters(&self) -> (Option<&Splitter>, Option<&Splitter>) {
        (self.before.as_ref(), self.behind.as_ref())
    }

    /// Joins their matrices to the core.
    #[inline(always)]
    pub(super) fn scatter<R: Real>(
        &self,
        look: &mut Look<R>,
        before: &Multiport<R>,
        behind: &Multiport<R>,
        into: &mut Multiport<R>,
    ) {
        let mut whole = Multiport::new(2);
        self.core.scatter(look, &mut whole);
        if self.behind.is_some() {
            whole = whole.joined(1, behind, 0);
        }
        if self.before.is_some() {
            // Ports now: input, unamplified output, outputs. The unamplified one goes last.
            let joined = before.joined(1, &whole, 0);
            let n = joined.ports();
            let old = |port: usize| match port {
                0 => 0,
                port if port + 1 == n => 1,
                port => port + 1,
            };
            whole = Multiport::new(n);
            for to in 0..n {
                for from in 0..n {
                    whole.set(to, from, joined.at(old(to), old(from)));
                }
            }
        }
        *into = whole;
    }
}

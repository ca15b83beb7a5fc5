//! A run of cable as found: series, length, temperature, connectors.

use super::{Condition, at_least};
use crate::dice::{Dice, Throw};
use crate::error::CoaxError;
use crate::estimates::parts;
use crate::model::{Cable, Link, Model};
use crate::quantity::{Celsius, Decibels, METRES_PER_FOOT, Metres};
use crate::span::Span;

/// The series printed on the jacket.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum CableSeries {
    /// 6 series, the usual one.
    Six,
    /// 59 series, thinner.
    FiftyNine,
    /// 7 series.
    Seven,
    /// 11 series, thicker.
    Eleven,
    /// Not readable: somewhere between 6 and 59.
    #[default]
    Unknown,
}

/// dB/100 ft at f in MHz: relative least squares over typical figures of 6-series cable, 57 to 2150 MHz (from memory of a maker's
/// support article: 1.5 at TV channel 2, 3.0 at 13, 4.5 at 14, 5.6 at 51, 6.4 at 950 MHz, 9.7 at 2150 MHz); worst fit error 2.5 %.
const SIX_K1: f64 = 0.200_63;
const SIX_K2: f64 = 0.000_245;

/// Rise of loss per degree Celsius above 20: tech tip "Coaxial Cable Attenuation Changes versus Temperature" gives 0.0011
/// per degree Fahrenheit above 68; times 1.8.
const PER_CELSIUS: f64 = 0.0011 * 1.8;
const STATED_AT: Celsius = Celsius(20.0);

/// What is known of a run of cable.
#[derive(Debug, Clone, PartialEq)]
pub struct CableRating {
    /// The series.
    pub series: CableSeries,
    /// Its length in metres.
    pub length: Span,
    /// Its temperature in degrees Celsius.
    pub temperature: Span,
    /// The connectors at its ends, the one nearer the street (port 0) first.
    pub connectors: [Condition; 2],
}

impl CableRating {
    /// A concrete run.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative length or a temperature below -100.
    pub fn draw(&self, dice: &mut Dice) -> Result<Model, CoaxError> {
        at_least("a cable's length", self.length, 0.0, "m", "0 m or more")?;
        at_least("a cable's temperature", self.temperature, -100.0, "°C", "-100 °C or more")?;
        let length = Metres(dice.span_of(Throw::Length, self.length));
        let warm = dice.span(self.temperature) - STATED_AT.value();
        let impedance = dice.span(parts::CABLE_IMPEDANCE.span);
        let velocity = dice.span(parts::CABLE_VELOCITY.span);
        let [near, far] = self.connectors;
        let (worse, other) = (near.max(far), near.min(far));
        let mut loss = dice.span(worse.loss());
        let (k1, k2, low_power) = self.series.law(dice);
        let worse_echo = Decibels(dice.span(worse.return_loss()));
        let (other_loss, other_echo) = (dice.span(other.loss()), Decibels(dice.span(other.return_loss())));
        // What sound connectors lose is stated for the two of a run; a poor one's loss is its own.
        if other.is_poor() {
            loss += other_loss;
        }
        let factor = temperature_factor(warm) * 100.0 / (100.0 * METRES_PER_FOOT);
        let cable = Cable::new(length, impedance, k1 * factor, k2 * factor, velocity)?
            .with_low_band_power(low_power)?
            .with_fixed_loss(Decibels(loss))?;
        let worse_port = usize::from(far > near);
        let ends = [(worse_port, worse, worse_echo), (1 - worse_port, other, other_echo)];
        let heard = ends.into_iter().filter(|(_, condition, _)| condition.is_heard_as_an_echo());
        let with_echoes = heard
            .into_iter()
            .try_fold(cable, |cable, (port, _, echo)| cable.with_joint(port, Link::reflecting(echo)?));
        with_echoes.map(Model::Cable)
    }
}

/// By how much loss is multiplied `warm` degrees Celsius above 20: `1 + 0.0011 (t_F - 68)`. Tech tip "Coaxial Cable
/// Attenuation Changes versus Temperature".
pub(crate) fn temperature_factor(warm: f64) -> f64 {
    (1.0 + PER_CELSIUS * warm).max(0.0)
}

impl CableSeries {
    /// `k1`, `k2` in dB/100 ft and the power followed below 55 MHz. Always three throws.
    fn law(self, dice: &mut Dice) -> (f64, f64, f64) {
        let a = dice.unit();
        let b = dice.unit();
        let c = dice.span_of(Throw::Series, parts::UNKNOWN_SERIES.span);
        let likely = dice.is_likely();
        let take = |span: Span, p: f64| if likely { span.likely } else { span.quantile(p) };
        let six = || {
            let spread = take(parts::SIX_SPREAD.span, a);
            (SIX_K1 * spread, SIX_K2 * spread, parts::SIX_LOW_POWER.span.likely)
        };
        let fifty_nine = || {
            (
                take(parts::FIFTY_NINE_K1.span, a),
                take(parts::FIFTY_NINE_K2.span, b),
                parts::FIFTY_NINE_LOW_POWER.span.likely,
            )
        };
        match self {
            Self::Six => six(),
            Self::FiftyNine => fifty_nine(),
            Self::Seven => (
                take(parts::SEVEN_K1.span, a),
                take(parts::SEVEN_K2.span, b),
                parts::SEVEN_LOW_POWER.span.likely,
            ),
            Self::Eleven => (
                take(parts::ELEVEN_K1.span, a),
                take(parts::ELEVEN_K2.span, b),
                parts::ELEVEN_LOW_POWER.span.likely,
            ),
            Self::Unknown => {
                let (x, y) = (six(), fifty_nine());
                let between = |x: f64, y: f64| x + (y - x) * c;
                (between(x.0, y.0), between(x.1, y.1), between(x.2, y.2))
            }
        }
    }
}

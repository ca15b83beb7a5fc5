//! Thermal noise, and the noise a receiver works against.

use crate::quantity::{DecibelMilliwatts, Decibels, Megahertz};

/// Boltzmann's constant in joule per kelvin: exact by the definition of the SI, 2019.
const BOLTZMANN: f64 = 1.380_649e-23;

/// The standard noise temperature in kelvin.
const STANDARD_TEMPERATURE: f64 = 290.0;

/// Thermal noise in one hertz at 290 K, in milliwatts: -173.975 dBm.
const THERMAL_PER_HERTZ: f64 = BOLTZMANN * STANDARD_TEMPERATURE * 1e3;

/// Thermal noise power `k T B` in a bandwidth at 290 K.
pub fn thermal_noise(bandwidth: Megahertz) -> DecibelMilliwatts {
    DecibelMilliwatts(10.0 * (THERMAL_PER_HERTZ * bandwidth.hertz()).log10())
}

/// Noise density at a receiver in milliwatts per hertz: `k T F` plus ingress, which is given over `k T`.
pub fn noise_density(noise_figure: Decibels, ingress: Decibels) -> f64 {
    THERMAL_PER_HERTZ * (noise_figure.power() + ingress.power())
}

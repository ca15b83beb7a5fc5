//! Levels, powers and noise.

use coax::link::{noise_density, thermal_noise};
use coax::{DecibelMillivolts, DecibelMilliwatts, Decibels, Megahertz};

use super::check::{Check, check};

const NOISE: &str = "definition: kT at 290 K, k exact in the SI of 2019";
const NOTE: &str = "Application Note 808, CATV dBm, dBmV, and dBuV Conversions, 17 July 2002";

#[test]
fn thermal_noise_by_its_definition() {
    for (what, width, expected, within) in [
        ("kT, dBm/Hz", 1e-6, -173.975, 5e-4),
        ("noise in 50 MHz, dBm", 50.0, -96.99, 0.0051),
        ("noise in 100 MHz, dBm", 100.0, -93.975, 5e-4),
        ("noise in 500 MHz, dBm", 500.0, -86.99, 0.0051),
        ("noise in one subcarrier of 195.3125 kHz, dBm", 0.195_312_5, -121.068, 5e-4),
    ] {
        check(NOISE, what, expected, within, thermal_noise(Megahertz(width)).value());
    }
    check(NOISE, "noise in 100 MHz, dBmV", -45.22, 0.0051, thermal_noise(Megahertz(100.0)).dbmv().value());
    let four = thermal_noise(Megahertz(4.0)).dbmv().value();
    check(NOISE, "noise in 4 MHz, dBmV", -59.20, 0.0051, four);
    check("the cable trade's rule of thumb", "noise in 4 MHz, dBmV", -59.0, 0.25, four);
}

#[test]
fn noise_figure_and_ingress_add_as_powers() {
    // A 3 dB receiver doubles kT (to the rounding of 3 dB); ingress as strong as that adds as much again.
    let friis = "Friis: noise powers add";
    let kt = thermal_noise(Megahertz(1e-6)).value();
    let density = |figure, ingress| 10.0 * noise_density(Decibels(figure), Decibels(ingress)).log10();
    check(friis, "noise of a 3 dB receiver over kT, dB", 3.0, 1e-9, density(3.0, -300.0) - kt);
    check(friis, "the same with as much ingress, dB", 6.0103, 1e-4, density(3.0, 3.0) - kt);
}

#[test]
fn level_and_power_across_75_ohm() {
    Check::Copied.about(NOTE, "0 dBmV, dBm", -48.7506, 5e-5, DecibelMillivolts(0.0).dbm().value());
    Check::Copied.about(NOTE, "-20 dBm, dBmV", 28.7506, 5e-5, DecibelMilliwatts(-20.0).dbmv().value());
    Check::Copied.about(NOTE, "0 dBm, dBmV", 48.7506, 5e-5, DecibelMilliwatts(0.0).dbmv().value());
    // The regulation's voltages are the levels that the trade names after them: V^2 = 75 ohm x P.
    let rule = "47 CFR 76.605(a)(3): 1 mV and 1.41 mV across 75 ohm";
    let millivolts =
        |level: f64| (75.0 * 1e3 * Decibels(DecibelMillivolts(level).dbm().value()).power()).sqrt();
    check(rule, "0 dBmV, mV", 1.0, 1e-9, millivolts(0.0));
    check(rule, "+2.98 dBmV, mV", 1.41, 0.001, millivolts(2.98));
}

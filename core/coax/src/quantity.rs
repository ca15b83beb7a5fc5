//! Quantities with their unit in the type, so that decibels are never added to metres, nor one level to another.

use std::ops::{Add, Mul, Neg, Sub};

/// A number with its unit in the type.
macro_rules! unit {
    ($(#[$doc:meta])* $name:ident, $unit:literal) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(pub f64);

        impl $name {
            /// The unit's symbol as written after a number.
            pub const UNIT: &'static str = $unit;

            /// The bare number, in this type's unit.
            pub const fn value(self) -> f64 {
                self.0
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                std::fmt::Display::fmt(&self.0, out)?;
                write!(out, " {}", $unit)
            }
        }
    };
}

/// A quantity of which two make a third, and which can be scaled.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $unit:literal) => {
        unit!($(#[$doc])* $name, $unit);

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }
    };
}

/// A level: a place on a scale whose zero is a fixed power. Two of them add up to nothing that has a meaning; their
/// difference is a ratio, and a ratio moves one along the scale.
macro_rules! level {
    ($(#[$doc:meta])* $name:ident, $unit:literal) => {
        unit!($(#[$doc])* $name, $unit);

        impl Add<Decibels> for $name {
            type Output = Self;
            fn add(self, gain: Decibels) -> Self {
                Self(self.0 + gain.0)
            }
        }

        impl Sub<Decibels> for $name {
            type Output = Self;
            fn sub(self, loss: Decibels) -> Self {
                Self(self.0 - loss.0)
            }
        }

        impl Sub for $name {
            type Output = Decibels;
            fn sub(self, other: Self) -> Decibels {
                Decibels(self.0 - other.0)
            }
        }
    };
}

quantity!(
    /// A frequency in megahertz.
    Megahertz,
    "MHz"
);
quantity!(
    /// A ratio of powers in decibels. As a *loss* it is positive, as a *gain* too: the field's name says which.
    Decibels,
    "dB"
);
quantity!(
    /// A length in metres.
    Metres,
    "m"
);
level!(
    /// A power relative to one milliwatt.
    ///
    /// ```compile_fail,E0308
    /// let _ = coax::DecibelMilliwatts(3.0) + coax::DecibelMilliwatts(3.0);
    /// ```
    DecibelMilliwatts,
    "dBm"
);
level!(
    /// A level relative to one millivolt across 75 ohm.
    ///
    /// ```
    /// use coax::{DecibelMillivolts, Decibels};
    ///
    /// assert_eq!(DecibelMillivolts(10.0) - Decibels(7.0), DecibelMillivolts(3.0));
    /// assert_eq!(DecibelMillivolts(3.0) + Decibels(7.0), DecibelMillivolts(10.0));
    /// assert_eq!(DecibelMillivolts(10.0) - DecibelMillivolts(3.0), Decibels(7.0));
    /// ```
    ///
    /// Two levels do not add up:
    ///
    /// ```compile_fail,E0308
    /// let _ = coax::DecibelMillivolts(10.0) + coax::DecibelMillivolts(3.0);
    /// ```
    DecibelMillivolts,
    "dBmV"
);
quantity!(
    /// A data rate in megabits (10^6 bits) a second.
    MegabitsPerSecond,
    "Mb/s"
);
quantity!(
    /// A time in milliseconds.
    Milliseconds,
    "ms"
);
quantity!(
    /// A temperature in degrees Celsius.
    Celsius,
    "°C"
);

/// Metres in one foot (exact by definition: international foot, 1959).
pub const METRES_PER_FOOT: f64 = 0.3048;

impl Metres {
    /// A length given in feet.
    pub fn from_feet(feet: f64) -> Self {
        Self(feet * METRES_PER_FOOT)
    }

    /// This length in feet.
    pub fn feet(self) -> f64 {
        self.0 / METRES_PER_FOOT
    }
}

impl Megahertz {
    /// This frequency in hertz.
    pub fn hertz(self) -> f64 {
        self.0 * 1e6
    }
}

impl Decibels {
    /// The amplitude ratio of a *gain* of this many decibels: `10^(dB/20)`.
    pub fn amplitude(self) -> f64 {
        10_f64.powf(self.0 / 20.0)
    }

    /// The power ratio of a *gain* of this many decibels: `10^(dB/10)`.
    pub fn power(self) -> f64 {
        10_f64.powf(self.0 / 10.0)
    }

    /// The gain in decibels of a power ratio; minus infinity for zero.
    pub fn of_power(ratio: f64) -> Self {
        Self(10.0 * ratio.log10())
    }

    /// The gain in decibels of an amplitude ratio; minus infinity for zero.
    pub fn of_amplitude(ratio: f64) -> Self {
        Self(20.0 * ratio.log10())
    }
}

/// What 0 dBm is in dBmV across 75 ohm: `20 log10(sqrt(0.075) / 0.001)` = 48.7506.
/// Application Note 808, "CATV dBm, dBmV, and dBuV Conversions", 17 July 2002.
pub const DBMV_OF_ZERO_DBM_75_OHM: f64 = 48.750_612_633_917_0;

/// What 0 dBmV is in dBµV, at any impedance: a millivolt is 1000 microvolts, `20 log10(1000)`.
pub const DBUV_OF_ZERO_DBMV: f64 = 60.0;

impl DecibelMilliwatts {
    /// The same power as a level across 75 ohm.
    pub fn dbmv(self) -> DecibelMillivolts {
        DecibelMillivolts(self.0 + DBMV_OF_ZERO_DBM_75_OHM)
    }
}

impl DecibelMillivolts {
    /// The same level as a power into 75 ohm.
    pub fn dbm(self) -> DecibelMilliwatts {
        DecibelMilliwatts(self.0 - DBMV_OF_ZERO_DBM_75_OHM)
    }
}

//! A multiport whose every entry is written out.

use crate::error::CoaxError;
use crate::lanes::{Phasor, Real};
use crate::look::Look;
use crate::multiport::Multiport;

/// One entry of an [`ExplicitMultiport`]: `sign 10^(-(loss + slope f/GHz)/20) exp(-j 2 pi f delay)`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Entry {
    /// Loss at 0 Hz in dB; none: the entry is exactly zero.
    pub loss: Option<f64>,
    /// Further loss in dB for each GHz.
    pub slope: f64,
    /// Delay in nanoseconds.
    pub delay_ns: f64,
    /// +1 or -1 (or any factor).
    pub sign: f64,
}

/// A multiport given entry by entry; measured parts and reference networks are written so. Nothing is checked but that
/// the figures are finite: it may be active.
#[derive(Debug, Clone, PartialEq)]
pub struct ExplicitMultiport {
    ports: usize,
    entries: Vec<Entry>,
    reciprocal: bool,
}

impl ExplicitMultiport {
    /// A multiport of `ports` ports from `ports * ports` entries, row by row (row: the port the wave leaves by).
    ///
    /// # Errors
    /// [`CoaxError::BadCount`] unless there are 1 to 64 ports and as many entries as their square;
    /// [`CoaxError::BadFigure`] for a figure that is not finite.
    pub fn new(ports: usize, entries: Vec<Entry>) -> Result<Self, CoaxError> {
        if !(1..=64).contains(&ports) {
            return Err(CoaxError::BadCount {
                what: "the ports of a multiport",
                given: ports,
                must: "1 to 64",
            });
        }
        if entries.len() != ports * ports {
            return Err(CoaxError::BadCount {
                what: "the entries of a multiport",
                given: entries.len(),
                must: "the square of its ports",
            });
        }
        for entry in &entries {
            for value in [entry.loss.unwrap_or(0.0), entry.slope, entry.delay_ns, entry.sign] {
                if !value.is_finite() {
                    return Err(CoaxError::BadFigure {
                        what: "an entry of a multiport",
                        value,
                        unit: "",
                        must: "a finite number",
                    });
                }
            }
        }
        let reciprocal = (0..ports)
            .all(|row| (0..row).all(|column| entries[row * ports + column] == entries[column * ports + row]));
        Ok(Self { ports, entries, reciprocal })
    }

    /// How many ports it has.
    pub fn ports(&self) -> usize {
        self.ports
    }

    /// Whether the entries are alike across the diagonal.
    pub fn is_reciprocal(&self) -> bool {
        self.reciprocal
    }

    #[inline(always)]
    pub(super) fn scatter<R: Real>(&self, look: &mut Look<R>, into: &mut Multiport<R>) {
        for (index, entry) in self.entries.iter().enumerate() {
            let mut value = Phasor::real(R::of(0.0));
            if let Some(loss) = entry.loss {
                let gain = R::of(-loss) - look.megahertz * R::of(entry.slope * 1e-3);
                value = look.delayed(entry.delay_ns).scaled(gain.amplitude() * R::of(entry.sign));
            }
            into.set(index / self.ports, index % self.ports, value);
        }
    }
}

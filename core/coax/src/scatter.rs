//! The scattering matrix of a part at one frequency.

use num_complex::Complex64;

use crate::lanes::Phasor;
use crate::multiport::Multiport;

/// An n by n complex scattering matrix at one frequency, reference 75 ohm: `b = S a`, where `a` travels into the
/// part and `b` out of it; `S[to, from]`. Time runs as `e^{+jwt}`, so a delay turns phases backwards.
#[derive(Debug, Clone, PartialEq)]
pub struct ScatterMatrix(pub(crate) Multiport<f64>);

impl ScatterMatrix {
    /// A matrix of zeros.
    pub fn new(ports: usize) -> Self {
        Self(Multiport::new(ports))
    }

    /// How many ports (rows, columns) it has.
    pub fn ports(&self) -> usize {
        self.0.ports()
    }

    /// The wave out of port `to` for a wave of 1 into port `from`; zero beyond the last port.
    pub fn at(&self, to: usize, from: usize) -> Complex64 {
        let Phasor { re, im } = self.0.at(to, from);
        Complex64::new(re, im)
    }

    /// Sets one entry; nothing beyond the last port.
    pub fn set(&mut self, to: usize, from: usize, value: Complex64) {
        self.0.set(to, from, Phasor::of(value));
    }

    /// Sets an entry and the one across the diagonal.
    pub fn set_both(&mut self, a: usize, b: usize, value: Complex64) {
        self.0.set_both(a, b, Phasor::of(value));
    }

    /// Makes it `ports` by `ports` zeros, keeping its memory.
    pub fn reset(&mut self, ports: usize) {
        self.0.reset(ports);
    }

    /// The part that two parts form when port `p` of this one is joined to port `q` of `other`: first this one's
    /// remaining ports in order, then the other's, with all echoes between the two.
    #[must_use]
    pub fn joined(&self, p: usize, other: &Self, q: usize) -> Self {
        Self(self.0.joined(p, &other.0, q))
    }
}

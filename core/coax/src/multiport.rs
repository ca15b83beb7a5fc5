//! A part's matrix at one frequency or at eight, over one arithmetic.

#![expect(
    clippy::inline_always,
    reason = "the arithmetic must be compiled anew inside each instruction set's copy of what calls it"
)]

use crate::lanes::{Phasor, Real};

/// An n by n scattering matrix, entry by entry over [`Real`]: `S[to, from]`.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Multiport<R> {
    ports: usize,
    entries: Vec<Phasor<R>>,
}

impl<R: Real> Multiport<R> {
    /// A matrix of zeros.
    #[inline(always)]
    pub fn new(ports: usize) -> Self {
        Self { ports, entries: vec![Phasor::real(R::of(0.0)); ports * ports] }
    }

    /// Makes it `ports` by `ports` zeros, keeping its memory.
    #[inline(always)]
    pub fn reset(&mut self, ports: usize) {
        self.ports = ports;
        self.entries.clear();
        self.entries.resize(ports * ports, Phasor::real(R::of(0.0)));
    }

    #[inline(always)]
    pub fn ports(&self) -> usize {
        self.ports
    }

    /// The wave out of port `to` for a wave of 1 into port `from`; zero beyond the last port.
    #[inline(always)]
    pub fn at(&self, to: usize, from: usize) -> Phasor<R> {
        let entry = self.entries.get(to * self.ports + from).filter(|_| from < self.ports);
        entry.copied().unwrap_or(Phasor::real(R::of(0.0)))
    }

    /// Writes its entries row by row with the ports in this order.
    #[inline(always)]
    pub fn write_in_order(&self, order: &[usize], into: &mut [Phasor<R>]) {
        let mut entries = into.iter_mut();
        for &to in order {
            for &from in order {
                if let Some(entry) = entries.next() {
                    *entry = self.at(to, from);
                }
            }
        }
    }

    /// Sets one entry; nothing beyond the last port.
    #[inline(always)]
    pub fn set(&mut self, to: usize, from: usize, value: Phasor<R>) {
        if let Some(entry) = self.entries.get_mut(to * self.ports + from).filter(|_| from < self.ports) {
            *entry = value;
        }
    }

    /// Sets an entry and the one across the diagonal.
    #[inline(always)]
    pub fn set_both(&mut self, a: usize, b: usize, value: Phasor<R>) {
        self.set(a, b, value);
        self.set(b, a, value);
    }

    /// Puts delays, given as the factors by which they turn a wave, outside the ports.
    #[inline(always)]
    pub fn delay(&mut self, port: usize, by: Phasor<R>) {
        for other in 0..self.ports {
            self.set(port, other, self.at(port, other) * by);
            self.set(other, port, self.at(other, port) * by);
        }
    }

    /// Makes a matrix that is symmetric but for rounding so to the last bit.
    #[inline(always)]
    pub fn make_symmetric(&mut self) {
        for a in 0..self.ports {
            for b in 0..a {
                let mean = (self.at(a, b) + self.at(b, a)).scaled(R::of(0.5));
                self.set_both(a, b, mean);
            }
        }
    }

    /// The part that two parts form when port `p` of this one is joined to port `q` of `other`: first this one's remaining
    /// ports in order, then the other's. The sum of all echoes between the two joined ports is the geometric series
    /// `1/(1 - S_pp T_qq)` (any text on signal-flow graphs; Pozar, "Microwave Engineering", section on signal flow graphs).
    #[inline(always)]
    pub fn joined(&self, p: usize, other: &Self, q: usize) -> Self {
        let one = Phasor::real(R::of(1.0));
        let echoes = (one - self.at(p, p) * other.at(q, q)).inverse();
        let here = |k: usize| k + usize::from(k >= p);
        let there = |k: usize| k + usize::from(k >= q);
        let (near, far) = (self.ports - 1, other.ports - 1);
        let mut whole = Self::new(near + far);
        for row in 0..near {
            let to = here(row);
            for column in 0..near {
                let from = here(column);
                let back = self.at(to, p) * other.at(q, q) * echoes * self.at(p, from);
                whole.set(row, column, self.at(to, from) + back);
            }
            for column in 0..far {
                whole.set(row, near + column, self.at(to, p) * echoes * other.at(q, there(column)));
            }
        }
        for row in 0..far {
            let to = there(row);
            for column in 0..near {
                whole.set(near + row, column, other.at(to, q) * echoes * self.at(p, here(column)));
            }
            for column in 0..far {
                let from = there(column);
                let back = other.at(to, q) * self.at(p, p) * echoes * other.at(q, from);
                whole.set(near + row, near + column, other.at(to, from) + back);
            }
        }
        whole
    }
}

//! The scattering matrix of a part at one frequency.

use num_complex::Complex64;

/// An n by n complex scattering matrix at one frequency, reference 75 ohm: `b = S a`, where `a` travels into the
/// part and `b` out of it; `S[to, from]`. Time runs as `e^{+jwt}`, so a delay turns phases backwards.
#[derive(Debug, Clone, PartialEq)]
pub struct ScatterMatrix {
    ports: usize,
    entries: Vec<Complex64>,
}

impl ScatterMatrix {
    /// A matrix of zeros.
    pub fn new(ports: usize) -> Self {
        Self { ports, entries: vec![Complex64::ZERO; ports * ports] }
    }

    /// How many ports (rows, columns) it has.
    pub fn ports(&self) -> usize {
        self.ports
    }

    /// The wave out of port `to` for a wave of 1 into port `from`; zero beyond the last port.
    pub fn at(&self, to: usize, from: usize) -> Complex64 {
        if to < self.ports && from < self.ports {
            self.entries[to * self.ports + from]
        } else {
            Complex64::ZERO
        }
    }

    /// Sets one entry; nothing beyond the last port.
    pub fn set(&mut self, to: usize, from: usize, value: Complex64) {
        if to < self.ports && from < self.ports {
            self.entries[to * self.ports + from] = value;
        }
    }

    /// Sets an entry and the one across the diagonal.
    pub fn set_both(&mut self, a: usize, b: usize, value: Complex64) {
        self.set(a, b, value);
        self.set(b, a, value);
    }

    /// Makes it `ports` by `ports` zeros, keeping its memory.
    pub fn reset(&mut self, ports: usize) {
        self.ports = ports;
        self.entries.clear();
        self.entries.resize(ports * ports, Complex64::ZERO);
    }

    /// The part that two parts form when port `p` of this one is joined to port `q` of `other`: first this one's
    /// remaining ports in order, then the other's. The sum of all echoes between the two joined ports is the
    /// geometric series `1/(1 - S_pp T_qq)` (any text on signal-flow graphs; Pozar, "Microwave Engineering",
    /// section on signal flow graphs).
    #[must_use]
    pub fn joined(&self, p: usize, other: &Self, q: usize) -> Self {
        let echoes = (1.0 - self.at(p, p) * other.at(q, q)).inv();
        let here: Vec<usize> = (0..self.ports).filter(|&k| k != p).collect();
        let there: Vec<usize> = (0..other.ports).filter(|&k| k != q).collect();
        let mut whole = Self::new(here.len() + there.len());
        for (row, &to) in here.iter().enumerate() {
            for (column, &from) in here.iter().enumerate() {
                let back = self.at(to, p) * other.at(q, q) * echoes * self.at(p, from);
                whole.set(row, column, self.at(to, from) + back);
            }
            for (column, &from) in there.iter().enumerate() {
                whole.set(row, here.len() + column, self.at(to, p) * echoes * other.at(q, from));
            }
        }
        for (row, &to) in there.iter().enumerate() {
            for (column, &from) in here.iter().enumerate() {
                whole.set(here.len() + row, column, other.at(to, q) * echoes * self.at(p, from));
            }
            for (column, &from) in there.iter().enumerate() {
                let back = other.at(to, q) * self.at(p, p) * echoes * other.at(q, from);
                whole.set(here.len() + row, here.len() + column, other.at(to, from) + back);
            }
        }
        whole
    }
}

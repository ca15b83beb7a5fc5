//! A part that was measured: scattering matrices at its own frequencies.

use num_complex::Complex64;

use super::turn;
use crate::error::CoaxError;
use crate::lanes::Phasor;
use crate::multiport::Multiport;
use crate::quantity::Megahertz;
use crate::scatter::ScatterMatrix;

/// Entries across the diagonal that differ by less (as amplitudes) are taken for alike: -60 dB is the instrument's noise.
const ALIKE: f64 = 1e-3;

/// A passive part may seem to give this much more amplitude than it takes: calibration is no better (0.09 dB).
const PASSIVE_WITHIN: f64 = 0.01;

/// Entries below this amplitude say nothing of how fast phases turn.
const LOUD: f64 = 0.1;

/// Sweeps of the phase fit; a two-port without reflections needs one.
const SWEEPS: usize = 24;

/// A multiport from measured matrices, reference 75 ohm.
///
/// Between two measured frequencies each port's plane is first moved by the phase `phi_i` that makes the entries stand still
/// best (`S_ij` turns by `-(phi_i + phi_j)`, least squares weighted by amplitude); then real and imaginary parts are
/// interpolated linearly. Moving planes changes no singular value and a mean of two passive matrices is passive (the norm is
/// convex), so what is passive at its frequencies is so in between; and a cable keeps its loss there, where plain
/// interpolation would cut the chord of its turning phase. Outside its frequencies the nearest matrix holds: ask
/// [`Measured::covers`].
#[derive(Debug, Clone, PartialEq)]
pub struct Measured {
    ports: usize,
    /// In MHz, rising.
    frequencies: Vec<f64>,
    /// For each frequency row by row.
    entries: Vec<Complex64>,
    /// For each gap between frequencies the ports' phases.
    phases: Vec<f64>,
    reciprocal: bool,
    passive: bool,
    fastest_turn: f64,
}

impl Measured {
    /// The most ports.
    pub const MOST_PORTS: usize = 16;
    /// The most entries of all matrices together.
    pub const MOST_ENTRIES: usize = 1 << 20;

    /// A part from its matrices at rising frequencies, 0 MHz or more.
    ///
    /// # Errors
    /// [`CoaxError::BadCount`] for no frequencies, as many matrices as not frequencies, matrices of unlike sizes or too
    /// large, [`CoaxError::BadFrequency`] for frequencies that do not rise and [`CoaxError::BadFigure`] for an entry that is
    /// not finite.
    pub fn new(frequencies: &[Megahertz], matrices: &[ScatterMatrix]) -> Result<Self, CoaxError> {
        let ports = matrices.first().map_or(0, ScatterMatrix::ports);
        let count = |what, given, must| Err(CoaxError::BadCount { what, given, must });
        if !(1..=Self::MOST_PORTS).contains(&ports) {
            return count("the ports of a measured part", ports, "1 to 16");
        }
        if frequencies.len() != matrices.len() {
            return count("the matrices of a measured part", matrices.len(), "one for each frequency");
        }
        if frequencies.len() * ports * ports > Self::MOST_ENTRIES {
            return count("the frequencies of a measured part", frequencies.len(), "fewer");
        }
        let mut last = -1.0;
        for (index, frequency) in frequencies.iter().enumerate() {
            let f = frequency.value();
            if !(f.is_finite() && f >= 0.0 && f > last) {
                return Err(CoaxError::BadFrequency {
                    why: format!("number {index} of a measured part is {frequency}"),
                });
            }
            last = f;
        }
        let mut entries = Vec::with_capacity(frequencies.len() * ports * ports);
        let mut reciprocal = true;
        for matrix in matrices {
            if matrix.ports() != ports {
                return count("the ports of a measured part", matrix.ports(), "the same at all frequencies");
            }
            for to in 0..ports {
                for from in 0..ports {
                    let value = matrix.at(to, from);
                    if !value.is_finite() {
                        return Err(CoaxError::BadFigure {
                            what: "an entry of a measured part",
                            value: value.norm(),
                            unit: "",
                            must: "a finite number",
                        });
                    }
                    reciprocal &= (value - matrix.at(from, to)).norm() <= ALIKE;
                    entries.push(value);
                }
            }
        }
        let mut part = Self {
            ports,
            frequencies: frequencies.iter().map(|frequency| frequency.value()).collect(),
            entries,
            phases: Vec::new(),
            reciprocal,
            passive: true,
            fastest_turn: 0.0,
        };
        part.prepare();
        Ok(part)
    }

    /// How many ports it has.
    pub fn ports(&self) -> usize {
        self.ports
    }

    /// Whether it carries waves alike both ways.
    pub fn is_reciprocal(&self) -> bool {
        self.reciprocal
    }

    /// Whether it gives no more than it takes at any of its frequencies, to within 0.09 dB.
    pub fn is_passive(&self) -> bool {
        self.passive
    }

    /// The lowest and the highest frequency at which it was measured.
    pub fn range(&self) -> (Megahertz, Megahertz) {
        let end = |frequency: Option<&f64>| Megahertz(frequency.copied().unwrap_or_default());
        (end(self.frequencies.first()), end(self.frequencies.last()))
    }

    /// Whether it was measured over all of a band. Outside it is only held at its ends: a doubt to show.
    pub fn covers(&self, low: Megahertz, high: Megahertz) -> bool {
        let (lowest, highest) = self.range();
        lowest <= low && high <= highest
    }

    /// The most, in radians, that an entry louder than -20 dB turns from one frequency to the next. Above a half turn nobody can
    /// tell which way it went: a doubt to show.
    pub fn fastest_turn(&self) -> f64 {
        self.fastest_turn
    }

    /// The same part with its ports in another order: port `k` of the new one is port `order[k]` of this one.
    ///
    /// # Errors
    /// [`CoaxError::BadCount`] unless `order` names every port once.
    pub fn with_ports(&self, order: &[usize]) -> Result<Self, CoaxError> {
        let mut sorted = order.to_vec();
        sorted.sort_unstable();
        if !sorted.into_iter().eq(0..self.ports) {
            return Err(CoaxError::BadCount {
                what: "the ports in a new order",
                given: order.len(),
                must: "every port of the part, once",
            });
        }
        let matrices: Vec<ScatterMatrix> = self
            .matrices()
            .map(|old| {
                let mut new = ScatterMatrix::new(self.ports);
                for (to, &old_to) in order.iter().enumerate() {
                    for (from, &old_from) in order.iter().enumerate() {
                        let value = old.get(old_to * self.ports + old_from).copied().unwrap_or_default();
                        new.set(to, from, value);
                    }
                }
                new
            })
            .collect();
        let frequencies: Vec<Megahertz> = self.frequencies.iter().map(|&f| Megahertz(f)).collect();
        Self::new(&frequencies, &matrices)
    }

    fn matrices(&self) -> std::slice::ChunksExact<'_, Complex64> {
        self.entries.chunks_exact(self.ports * self.ports)
    }

    /// Fills in what follows from the entries.
    fn prepare(&mut self) {
        let n = self.ports;
        if self.reciprocal {
            for matrix in self.entries.chunks_exact_mut(n * n) {
                for a in 0..n {
                    for b in 0..a {
                        let mean = (matrix[a * n + b] + matrix[b * n + a]) * 0.5;
                        matrix[a * n + b] = mean;
                        matrix[b * n + a] = mean;
                    }
                }
            }
        }
        self.passive = self.matrices().all(|matrix| is_bounded_by(matrix, n, 1.0 + PASSIVE_WITHIN));
        let mut phases = Vec::with_capacity(self.frequencies.len().saturating_sub(1) * n);
        let mut fastest: f64 = 0.0;
        for (here, next) in self.matrices().zip(self.matrices().skip(1)) {
            for (a, b) in here.iter().zip(next) {
                if a.norm().min(b.norm()) >= LOUD {
                    fastest = fastest.max((b * a.conj()).arg().abs());
                }
            }
            phases.extend(standing_still(here, next, n));
        }
        self.phases = phases;
        self.fastest_turn = fastest;
    }

    pub(super) fn scatter(&self, f: f64, into: &mut Multiport<f64>) {
        let n = self.ports;
        let size = n * n;
        let above = self.frequencies.partition_point(|&at| at <= f);
        let last = self.frequencies.len() - 1;
        let matrix = |index: usize| &self.entries[index * size..(index + 1) * size];
        if above == 0 || above > last {
            for (index, &value) in matrix(above.min(last)).iter().enumerate() {
                into.set(index / n, index % n, Phasor::of(value));
            }
            return;
        }
        let (here, next) = (matrix(above - 1), matrix(above));
        let phases = &self.phases[(above - 1) * n..above * n];
        let (low, high) = (self.frequencies[above - 1], self.frequencies[above]);
        let x = (f - low) / (high - low);
        for to in 0..n {
            // The same arithmetic for both directions, so that what is alike both ways stays so to the last bit.
            for from in 0..n {
                let phase = phases[to.min(from)] + phases[to.max(from)];
                let stood = next[to * n + from] * turn(phase);
                let between = (here[to * n + from] * (1.0 - x) + stood * x) * turn(-x * phase);
                into.set(to, from, Phasor::of(between));
            }
        }
    }
}

/// The phases by which the ports' planes move so that the entries of `next` come to stand on those of `here`: least squares
/// by sweeps over the ports (Gauss-Seidel), which converge since the normal equations are positive semidefinite.
fn standing_still(here: &[Complex64], next: &[Complex64], n: usize) -> Vec<f64> {
    let step: Vec<(f64, f64)> = here
        .iter()
        .zip(next)
        .map(|(a, b)| {
            let product = a * b.conj();
            (product.norm(), product.arg())
        })
        .collect();
    let mut phases = vec![0.0; n];
    for _ in 0..SWEEPS {
        for i in 0..n {
            let (mut sum, mut weight) = (0.0, 0.0);
            for j in 0..n {
                if i == j {
                    let (w, turned) = step[i * n + i];
                    sum += 2.0 * w * turned;
                    weight += 4.0 * w;
                } else {
                    for (w, turned) in [step[i * n + j], step[j * n + i]] {
                        sum += w * (turned - phases[j]);
                        weight += w;
                    }
                }
            }
            if weight > 0.0 {
                phases[i] = sum / weight;
            }
        }
    }
    phases
}

/// Whether the largest singular value is at most `bound`: `bound^2 I - S^H S` has no negative pivot (Sylvester's criterion).
fn is_bounded_by(matrix: &[Complex64], n: usize, bound: f64) -> bool {
    let mut left = vec![Complex64::ZERO; n * n];
    for i in 0..n {
        for j in 0..n {
            let product: Complex64 = (0..n).map(|k| matrix[k * n + i].conj() * matrix[k * n + j]).sum();
            left[i * n + j] = if i == j { bound * bound - product } else { -product };
        }
    }
    for p in 0..n {
        let pivot = left[p * n + p].re;
        if pivot <= 0.0 {
            return false;
        }
        for i in p + 1..n {
            let factor = left[i * n + p] / pivot;
            for j in p..n {
                let above = left[p * n + j];
                left[i * n + j] -= factor * above;
            }
        }
    }
    true
}

//! A plain, slow twin of the solver: parts are joined one port after another at one frequency, by the formula for two joined
//! ports, with the standard library's functions. It shares neither the order of work nor the arithmetic of the lanes.

use crate::houses::{House, amplifier, house, passive_part};
use crate::linear::Dense;
use coax::{FrequencyGrid, Megahertz, Model, PartIndex, ScatterMatrix, Wanted};
use num_complex::Complex64;
use proptest::prelude::*;
use std::sync::Arc;

/// A matrix between ports, each known by its part and its number there.
struct Ports {
    names: Vec<(usize, usize)>,
    s: Dense,
}

impl Ports {
    fn of(part: usize, model: &Model, frequency: Megahertz) -> Self {
        let mut matrix = ScatterMatrix::new(0);
        model.scatter(frequency, &mut matrix);
        let n = model.ports();
        let at = (0..n * n).map(|index| matrix.at(index / n, index % n)).collect();
        Self { names: (0..n).map(|port| (part, port)).collect(), s: Dense { n, at } }
    }

    /// Both side by side, joined to each other nowhere.
    fn beside(&self, other: &Self) -> Self {
        let names: Vec<_> = self.names.iter().chain(&other.names).copied().collect();
        let mut s = Dense::zero(names.len());
        for (from, first) in [(self, 0), (other, self.s.n)] {
            for to in 0..from.s.n {
                for column in 0..from.s.n {
                    s.put(first + to, first + column, from.s.get(to, column));
                }
            }
        }
        Self { names, s }
    }

    fn place(&self, name: (usize, usize)) -> usize {
        self.names.iter().position(|own| *own == name).unwrap()
    }

    /// What is left where a wave out of some ports goes into others: `S + S_k (P^-1 - S_kk)^-1 S_k`, `P` what each turns into each.
    fn closed(&self, joined: &[(usize, usize)], into: impl Fn(usize, usize) -> Complex64) -> Self {
        let k: Vec<usize> = joined.iter().map(|name| self.place(*name)).collect();
        let left: Vec<usize> = (0..self.s.n).filter(|port| !k.contains(port)).collect();
        // b_k = S_kk P b_k + S_k a, whatever comes in at the others.
        let mut system = Dense::zero(k.len());
        for (i, &row) in k.iter().enumerate() {
            for j in 0..k.len() {
                let one = if i == j { Complex64::ONE } else { Complex64::ZERO };
                let back: Complex64 = (0..k.len()).map(|l| self.s.get(row, k[l]) * into(l, j)).sum();
                system.put(i, j, one - back);
            }
        }
        let mut s = Dense::zero(left.len());
        for (j, &from) in left.iter().enumerate() {
            let out = system.solve(&k.iter().map(|&row| self.s.get(row, from)).collect::<Vec<_>>());
            for (i, &to) in left.iter().enumerate() {
                let echo: Complex64 = (0..k.len())
                    .map(|l| {
                        let comes_in: Complex64 = (0..k.len()).map(|m| into(l, m) * out[m]).sum();
                        self.s.get(to, k[l]) * comes_in
                    })
                    .sum();
                s.put(i, j, self.s.get(to, from) + echo);
            }
        }
        Self { names: left.iter().map(|&port| self.names[port]).collect(), s }
    }
}

/// The matrix between a house's outlets, part after part.
fn plain(house: &House, frequency: Megahertz) -> Dense {
    let mut whole = Ports::of(0, &house.models[0], frequency);
    let swap = |l: usize, m: usize| if l == m { Complex64::ZERO } else { Complex64::ONE };
    // A part is joined to one that stands before it.
    for (part, model) in house.models.iter().enumerate().skip(1) {
        whole = whole.beside(&Ports::of(part, model, frequency));
        for &(a, b) in house.joins.iter().filter(|(_, (below, _))| *below == part) {
            whole = whole.closed(&[a, b], swap);
        }
    }
    for &(place, reflection) in &house.ends {
        whole = whole.closed(&[place], |_, _| reflection);
    }
    let n = house.outlets.len();
    let places: Vec<usize> = house.outlets.iter().map(|outlet| whole.place(*outlet)).collect();
    let at = (0..n * n).map(|index| whole.s.get(places[index / n], places[index % n])).collect();
    Dense { n, at }
}

/// Parts of a house in which nothing rings, so that twelve digits can be asked for.
pub fn quiet_part() -> impl Strategy<Value = Arc<Model>> {
    passive_part().prop_filter("a bare tee may ring", |model| !matches!(**model, Model::Junction(_)))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Over more than two groups of frequencies, the last one not full; on an even grid, where waves are turned on from one block
    /// to the next, and on one that is not.
    #[test]
    fn the_vector_finds_what_its_plain_twin_finds(
        house in house(prop_oneof![8 => quiet_part(), 1 => amplifier()], 8),
        root in any::<prop::sample::Index>(),
        is_even in any::<bool>(),
    ) {
        let (network, outlets) = house.network();
        let tree = network.tree(PartIndex(root.index(house.models.len()))).unwrap();
        let grid = if is_even {
            FrequencyGrid::even(Megahertz(5.0), Megahertz(1675.0), 139).unwrap()
        } else {
            FrequencyGrid::new((0..139).map(|k| Megahertz(5.0 * 1.043_f64.powi(k))).collect()).unwrap()
        };
        let all = tree.sample(&grid).unwrap().solve(Wanted::All).unwrap();
        for (index, &frequency) in grid.frequencies().iter().enumerate().step_by(3) {
            let expected = plain(&house, frequency);
            for (i, &to) in outlets.iter().enumerate() {
                for (j, &from) in outlets.iter().enumerate() {
                    let (found, wanted) = (all.transfer(to, from).unwrap()[index], expected.get(i, j));
                    let apart = (found - wanted).norm();
                    prop_assert!(
                        apart <= 1e-12 * (1.0 + wanted.norm()),
                        "S[{i},{j}] at {frequency:?}: {found} not {wanted}, {apart:e}"
                    );
                }
            }
        }
    }
}

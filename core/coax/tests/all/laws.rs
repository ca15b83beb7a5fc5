//! Laws that hold for every house: compared with a dense solution written for the tests, and with physics.

use std::sync::Arc;

use crate::houses::{House, amplifier, dense_of, house, passive_part};
use crate::linear::Dense;
use coax::model::{Amplifier, AmplifierCore, Cable, Junction, Link};
use coax::rated::{CableRating, CableSeries, Condition};
use coax::{
    BranchNumbers, Branches, CoaxError, Decibels, Dice, End, FrequencyGrid, Megahertz, Metres, Model,
    Network, PartIndex, Samples, Span, Sweep, Wanted,
};
use num_complex::Complex64;
use proptest::prelude::*;

/// Every band that a house's coax carries, and a number that does not fill the solver's blocks.
const MEGAHERTZ: [f64; 11] = [5.0, 41.0, 60.0, 204.0, 600.0, 1000.0, 1125.0, 1240.0, 1400.0, 1675.0, 2150.0];

fn grid() -> FrequencyGrid {
    FrequencyGrid::new(MEGAHERTZ.map(Megahertz).to_vec()).unwrap()
}

/// The place of one among those that were met, where it is put if it is new.
fn numbered<T: Clone>(met: &mut Vec<T>, one: &T, is_same: impl Fn(&T, &T) -> bool) -> usize {
    met.iter().position(|other| is_same(one, other)).unwrap_or_else(|| {
        met.push(one.clone());
        met.len() - 1
    })
}

/// A bare tee with two reflecting arms may ring: then the answers agree to fewer digits.
fn close(found: Complex64, expected: Complex64) -> bool {
    (found - expected).norm() <= 1e-9 * (1.0 + expected.norm())
}

/// An amplifier whose gain and whose loss outside its bands are the worst that are let in: its filters alone would not keep it
/// from howling.
fn hot_amplifier() -> impl Strategy<Value = Arc<Model>> {
    (0.0..std::f64::consts::TAU, 0.0..std::f64::consts::TAU).prop_map(|(a, b)| {
        let core = AmplifierCore {
            forward_gain: Decibels(60.0),
            return_gain: Decibels(60.0),
            split: Megahertz(85.0),
            forward_top: Megahertz(1002.0),
            opaque_loss: Decibels(20.0),
            bypass_loss: None,
            return_loss: Decibels(5.0),
            delay_ns: 2.0,
            phases: [a, b],
        };
        Arc::new(Model::Amplifier(Box::new(Amplifier::new(core, None, None).unwrap())))
    })
}

#[test]
fn a_part_or_an_end_without_a_number_is_refused() {
    let cable = || Model::Cable(Cable::new(Metres(9.0), 75.0, 0.85, 0.0008, 0.83).unwrap());
    let mut network = Network::new();
    let (one, other) = (network.add(cable()), network.add(cable()));
    network.outlet(one, 0);
    network.join(one, 1, other, 0);
    network.end(other, 1, End::Open);
    let tree = network.tree(one).unwrap();
    let mut numbers = BranchNumbers::default();
    assert!(numbers.of(&tree, &[0, 1], &[0]).is_ok());
    assert!(matches!(numbers.of(&tree, &[0], &[0]), Err(CoaxError::NoSuchPart { part: 1, parts: 1 })));
    assert!(matches!(numbers.of(&tree, &[0, 1], &[]), Err(CoaxError::BadCount { given: 0, .. })));
}

/// Whether waves that go round and round between a part and its ends die away: the powers of `S G` tend to zero.
fn dies_away(part: &Dense, ends: &[(f64, f64)]) -> bool {
    let mut round = part.clone();
    for (from, &(size, phase)) in ends.iter().enumerate() {
        for to in 0..round.n {
            let value = round.get(to, from) * Complex64::from_polar(size, phase);
            round.put(to, from, value);
        }
    }
    for _ in 0..14 {
        round = round.times(&round.clone());
        if round.largest() > 1e12 {
            return false;
        }
    }
    round.largest() < 0.5
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn a_tree_is_solved_as_a_dense_elimination_solves_it(
        house in house(prop_oneof![6 => passive_part(), 1 => amplifier()], 9),
        root in any::<prop::sample::Index>(),
    ) {
        let (network, outlets) = house.network();
        let tree = network.tree(PartIndex(root.index(house.models.len()))).unwrap();
        let sampled = tree.sample(&grid()).unwrap();
        let all = sampled.solve(Wanted::All).unwrap();
        let pairs: Vec<_> = outlets.iter().flat_map(|&to| outlets.iter().map(move |&from| (to, from))).collect();
        let some = sampled.solve(Wanted::Pairs(&pairs)).unwrap();
        for (index, frequency) in MEGAHERTZ.into_iter().enumerate() {
            let expected = house.dense(Megahertz(frequency));
            for (i, &to) in outlets.iter().enumerate() {
                for (j, &from) in outlets.iter().enumerate() {
                    let found = all.transfer(to, from).unwrap()[index];
                    let wanted = expected.get(i, j);
                    prop_assert!(close(found, wanted), "S[{i},{j}] at {frequency} MHz: {found} not {wanted}");
                    prop_assert!(close(some.transfer(to, from).unwrap()[index], wanted));
                }
            }
        }
    }

    /// The sweep of a few pairs against the walk of all: over a grid whose blocks are turned on from one to the next, and with a
    /// part exchanged for which only the way up to the root is worked out anew.
    #[test]
    fn a_sweep_finds_the_powers_of_the_full_solution(
        house in house(prop_oneof![6 => passive_part(), 1 => amplifier()], 9),
        root in any::<prop::sample::Index>(),
        which in any::<prop::sample::Index>(),
        asked in proptest::collection::vec((any::<prop::sample::Index>(), any::<prop::sample::Index>()), 1..5),
        metres in 0.1..40.0_f64,
        is_even in any::<bool>(),
    ) {
        let root = PartIndex(root.index(house.models.len()));
        let frequencies = if is_even { FrequencyGrid::even(Megahertz(1125.0), Megahertz(1675.0), 151).unwrap() } else { grid() };
        let (network, outlets) = house.network();
        let asked: Vec<_> =
            asked.iter().map(|(to, from)| (outlets[to.index(outlets.len())], outlets[from.index(outlets.len())])).collect();
        let mut other = house.clone();
        let place = which.index(house.models.len());
        // A part of two ports gives way to a run; of others the same one stands there, but is not known to be.
        let instead = match house.models[place].ports() {
            2 => Model::Cable(Cable::new(Metres(metres), 74.0, 0.66, 0.0008, 0.83).unwrap()),
            _ => Model::clone(&house.models[place]),
        };
        other.models[place] = Arc::new(instead);
        // A bare tee with two reflecting arms may ring: then the answers agree to fewer digits.
        let may_ring = house.models.iter().any(|model| matches!(**model, Model::Junction(_)));
        let digits = if may_ring { 1e-9 } else { 1e-12 };
        let trees = [network.tree(root).unwrap(), other.network().0.tree(root).unwrap()];
        let swept = Sweep::on(frequencies.clone()).powers(&[&trees[0], &trees[1], &trees[0]], &asked).unwrap();
        for (powers, tree) in swept.iter().zip([&trees[0], &trees[1], &trees[0]]) {
            let all = tree.sample(&frequencies).unwrap().solve(Wanted::All).unwrap();
            let anew = tree.solve_over(&frequencies, Wanted::All).unwrap();
            for (pair, &(to, from)) in asked.iter().enumerate() {
                let expected = all.transfer(to, from).unwrap();
                // Made anew or kept, on one core or several: the same bits.
                prop_assert_eq!(&anew.transfer(to, from).unwrap(), &expected);
                prop_assert_eq!(powers.of(pair).len(), expected.len());
                for (found, wave) in powers.of(pair).iter().zip(expected) {
                    let wanted = wave.norm_sqr();
                    prop_assert!((found - wanted).abs() <= digits * (1.0 + wanted), "{found} not {wanted}");
                }
            }
        }
    }

    /// Branches that are kept from house to house against the walk of all: after each change the same as with nothing kept, and
    /// back at the first house the same bits.
    #[test]
    fn branches_that_are_kept_give_what_the_full_solution_gives(
        house in house(prop_oneof![6 => passive_part(), 1 => amplifier()], 9),
        changes in proptest::collection::vec((any::<prop::sample::Index>(), 0.1..40.0_f64), 1..6),
        is_even in any::<bool>(),
    ) {
        let frequencies = if is_even { FrequencyGrid::even(Megahertz(1125.0), Megahertz(1675.0), 151).unwrap() } else { grid() };
        let may_ring = house.models.iter().any(|model| matches!(**model, Model::Junction(_)));
        let digits = if may_ring { 1e-9 } else { 1e-12 };
        let (mut branches, mut numbers) = (Branches::on(frequencies.clone()), BranchNumbers::default());
        // Parts and ends that are the same have one number.
        let (mut parts, mut sent_back): (Vec<Arc<Model>>, Vec<Complex64>) = (Vec::new(), Vec::new());
        let mut houses = vec![house.clone()];
        for (which, metres) in changes {
            let mut changed = houses.last().unwrap().clone();
            let place = which.index(house.models.len());
            let instead = match house.models[place].ports() {
                2 => Model::Cable(Cable::new(Metres(metres), 74.0, 0.66, 0.0008, 0.83).unwrap()),
                _ => Model::clone(&house.models[place]),
            };
            changed.models[place] = Arc::new(instead);
            if let Some((_, reflection)) = changed.ends.first_mut() {
                *reflection *= 0.9;
            }
            houses.push(changed);
        }
        houses.push(house.clone());
        let root = PartIndex(house.outlets[0].0);
        let mut first = None;
        for (number, house) in houses.iter().enumerate() {
            let (network, outlets) = house.network();
            let tree = network.tree(root).unwrap();
            let at_root = tree.root_outlet().unwrap();
            // The tree's own parts and ends count for nothing: those of another house of the same wiring do.
            let laid = houses[0].network().0.tree(root).unwrap();
            let of = |(part, port): (PartIndex, usize)| {
                house.ends.iter().find(|(at, _)| *at == (part.0, port)).unwrap().1
            };
            let ends: Vec<Complex64> = laid.ends().into_iter().map(of).collect();
            let part_numbers: Vec<usize> =
                house.models.iter().map(|model| numbered(&mut parts, model, Arc::ptr_eq)).collect();
            let end_numbers: Vec<usize> =
                ends.iter().map(|end| numbered(&mut sent_back, end, |one, other| one == other)).collect();
            let numbers = numbers.of(&laid, &part_numbers, &end_numbers).unwrap();
            let part = |part: usize| Ok::<_, CoaxError>(Arc::clone(&house.models[part]));
            let kept = branches.powers((&laid, &numbers), part, |end| ends[end], &outlets).unwrap();
            let all = tree.sample(&frequencies).unwrap().solve(Wanted::All).unwrap();
            for (place, &outlet) in outlets.iter().enumerate() {
                let ways = [
                    (kept.from_root(place), all.transfer(outlet, at_root).unwrap()),
                    (kept.to_root(place), all.transfer(at_root, outlet).unwrap()),
                ];
                for (found, expected) in ways {
                    prop_assert_eq!(found.len(), expected.len());
                    for (found, wave) in found.iter().zip(expected) {
                        let wanted = wave.norm_sqr();
                        prop_assert!((found - wanted).abs() <= digits * (1.0 + wanted), "{found} not {wanted}");
                    }
                }
            }
            let first = first.get_or_insert_with(|| kept.clone());
            prop_assert!(number + 1 < houses.len() || *first == kept);
        }
    }

    #[test]
    fn a_passive_house_gives_no_more_than_it_takes_and_is_alike_both_ways(house in house(passive_part(), 12)) {
        let (network, outlets) = house.network();
        let tree = network.tree(PartIndex(0)).unwrap();
        prop_assert!(tree.is_reciprocal());
        let solution = tree.sample(&grid()).unwrap().solve(Wanted::All).unwrap();
        for (index, frequency) in MEGAHERTZ.into_iter().enumerate() {
            let mut whole = Dense::zero(outlets.len());
            for (i, &to) in outlets.iter().enumerate() {
                for (j, &from) in outlets.iter().enumerate() {
                    whole.put(i, j, solution.transfer(to, from).unwrap()[index]);
                }
            }
            prop_assert!(whole.is_bounded_by(1.0 + 1e-9));
            // Our own two directions share their values; the dense solution's do not.
            let dense = house.dense(Megahertz(frequency));
            for i in 0..dense.n {
                for j in 0..i {
                    prop_assert!(close(dense.get(i, j), dense.get(j, i)));
                }
            }
        }
    }

    #[test]
    fn every_drawn_part_is_passive_and_alike_both_ways(part in passive_part()) {
        prop_assert!(part.is_reciprocal());
        for frequency in MEGAHERTZ {
            let matrix = dense_of(&part, Megahertz(frequency));
            prop_assert!(matrix.is_bounded_by(1.0 + 1e-9), "{part:?} at {frequency} MHz");
            for i in 0..matrix.n {
                for j in 0..i {
                    prop_assert_eq!(matrix.get(i, j), matrix.get(j, i));
                }
            }
        }
    }

    #[test]
    fn an_amplifier_settles_whatever_hangs_on_it(
        part in prop_oneof![amplifier(), hot_amplifier()],
        ends in proptest::collection::vec((0.0..=1.0_f64, 0.0..std::f64::consts::TAU), 10),
    ) {
        for frequency in (0..60).map(|k| 5.0 * 1.11_f64.powi(k)) {
            let matrix = dense_of(&part, Megahertz(frequency));
            let drawn: Vec<_> = (0..matrix.n).map(|port| ends[port % ends.len()]).collect();
            // The hardest ends, all back, every other time.
            let hard = drawn.iter().map(|&(size, phase)| (if phase < 3.0 { 1.0 } else { size }, phase));
            prop_assert!(dies_away(&matrix, &hard.collect::<Vec<_>>()), "{part:?} at {frequency} MHz howls");
        }
    }

    #[test]
    fn a_chain_of_cables_and_stubs_is_the_product_of_their_chain_matrices(
        pieces in proptest::collection::vec((0.1..30.0_f64, 50.0..100.0_f64, 0.0..1.0_f64, 0.0..0.01_f64, 0.6..1.0_f64, any::<bool>()), 1..8),
    ) {
        let mut network = Network::new();
        let start = network.add(Model::Link(Link::ideal()));
        let street = network.outlet(start, 0);
        let mut last = (start, 1);
        for &(length, impedance, k1, k2, velocity, stub) in &pieces {
            let cable = network.add(Model::Cable(Cable::new(Metres(length), impedance, k1, k2, velocity).unwrap()));
            if stub {
                let tee = network.add(Model::Junction(Junction::new(3).unwrap()));
                network.join(last.0, last.1, tee, 0);
                network.join(tee, 1, cable, 0);
                network.end(cable, 1, End::Open);
                last = (tee, 2);
            } else {
                network.join(last.0, last.1, cable, 0);
                last = (cable, 1);
            }
        }
        let room = network.outlet(last.0, last.1);
        let solution = network.tree(start).unwrap().sample(&grid()).unwrap().solve(Wanted::All).unwrap();
        for (index, f) in MEGAHERTZ.into_iter().enumerate() {
            // ABCD matrices of a line and of a shunt admittance tanh(gamma l)/Z (Pozar, "Microwave Engineering", table of
            // ABCD parameters).
            let mut chain = [Complex64::ONE, Complex64::ZERO, Complex64::ZERO, Complex64::ONE];
            for &(length, z, k1, k2, velocity, stub) in &pieces {
                let loss = (k1 * f.sqrt() + k2 * f) * length / 100.0 / 8.685_889_638_065_035;
                let turn = std::f64::consts::TAU * f * 1e6 * length / (velocity * 299_792_458.0);
                let gl = Complex64::new(loss, turn);
                let piece = if stub {
                    [Complex64::ONE, Complex64::ZERO, gl.tanh() / z, Complex64::ONE]
                } else {
                    [gl.cosh(), gl.sinh() * z, gl.sinh() / z, gl.cosh()]
                };
                chain = [
                    chain[0] * piece[0] + chain[1] * piece[2],
                    chain[0] * piece[1] + chain[1] * piece[3],
                    chain[2] * piece[0] + chain[3] * piece[2],
                    chain[2] * piece[1] + chain[3] * piece[3],
                ];
            }
            let [a, b, c, d] = chain;
            let (b, c) = (b / 75.0, c * 75.0);
            let sum = a + b + c + d;
            prop_assert!(close(solution.transfer(room, street).unwrap()[index], 2.0 / sum));
            prop_assert!(close(solution.reflection(street).unwrap()[index], (a + b - c - d) / sum));
            prop_assert!(close(solution.reflection(room).unwrap()[index], (b + d - a - c) / sum));
        }
    }

    #[test]
    fn adding_nothing_changes_nothing(house in house(passive_part(), 8), which in any::<prop::sample::Index>()) {
        let nothing = if which.index(2) == 0 {
            Model::Cable(Cable::new(Metres(0.0), 75.0, 0.66, 0.0008, 0.83).unwrap())
        } else {
            Model::Link(Link::ideal())
        };
        let mut longer = house.clone();
        longer.models.push(Arc::new(nothing));
        let new = longer.models.len() - 1;
        if longer.joins.is_empty() {
            longer.joins.push((longer.outlets[0], (new, 0)));
            longer.outlets[0] = (new, 1);
        } else {
            let index = which.index(longer.joins.len());
            let (a, b) = longer.joins[index];
            longer.joins[index] = (a, (new, 0));
            longer.joins.push(((new, 1), b));
        }
        let mut samples = Samples::on(grid());
        let mut solved = |house: &House| {
            let (network, outlets) = house.network();
            let tree = network.tree(PartIndex(0)).unwrap();
            (samples.of(&tree).unwrap().solve(Wanted::All).unwrap(), outlets)
        };
        let (before, outlets) = solved(&house);
        let (after, _) = solved(&longer);
        for &to in &outlets {
            for &from in &outlets {
                let pairs = before.transfer(to, from).unwrap().into_iter().zip(after.transfer(to, from).unwrap());
                for (old, new) in pairs {
                    prop_assert!(close(new, old));
                }
            }
        }
    }

    #[test]
    fn a_longer_or_warmer_run_never_gains(seed in any::<u64>(), length in 0.0..80.0_f64, more in 0.0..20.0_f64, warmer in 0.0..40.0_f64) {
        for series in [CableSeries::Six, CableSeries::FiftyNine, CableSeries::Seven, CableSeries::Eleven, CableSeries::Unknown] {
            let run = |length: f64, temperature: f64| {
                let rating = CableRating {
                    series,
                    length: Span::exact(length),
                    temperature: Span::exact(temperature),
                    connectors: [Condition::Unsure; 2],
                };
                let Model::Cable(cable) = rating.draw(&mut Dice::thrown(seed, 0, [3; 16])).unwrap() else { panic!() };
                MEGAHERTZ.map(|f| cable.loss(Megahertz(f)).value())
            };
            let (near, far, warm) = (run(length, 20.0), run(length + more, 20.0), run(length, 20.0 + warmer));
            for k in 0..MEGAHERTZ.len() {
                prop_assert!(far[k] >= near[k] && warm[k] >= near[k]);
                prop_assert!(k == 0 || near[k] >= near[k - 1]);
            }
        }
    }
}

/// Large enough that every core there is takes a share: against the same frequencies a few at a time, which one core does alone.
#[test]
fn the_cores_together_find_what_one_finds_alone() {
    let mut network = Network::new();
    let start = network.add(Model::Link(Link::ideal()));
    let street = network.outlet(start, 0);
    let mut last = (start, 1);
    for number in 0..90 {
        let metres = Metres(0.3 + f64::from(number % 7) * 0.1);
        let impedance = 73.0 + f64::from(number % 5);
        let run = network.add(Model::Cable(Cable::new(metres, impedance, 0.66, 0.0008, 0.83).unwrap()));
        network.join(last.0, last.1, run, 0);
        last = (run, 1);
    }
    let room = network.outlet(last.0, last.1);
    let tree = network.tree(start).unwrap();
    let whole = FrequencyGrid::even(Megahertz(5.0), Megahertz(1675.0), 2560).unwrap();
    let kept = tree.sample(&whole).unwrap().solve(Wanted::All).unwrap();
    let anew = tree.solve_over(&whole, Wanted::All).unwrap();
    for (to, from) in [(room, street), (street, street), (room, room)] {
        assert_eq!(anew.transfer(to, from).unwrap(), kept.transfer(to, from).unwrap());
        let found = kept.transfer(to, from).unwrap();
        for (frequencies, found) in whole.frequencies().chunks(40).zip(found.chunks(40)) {
            let few = FrequencyGrid::new(frequencies.to_vec()).unwrap();
            let alone = tree.sample(&few).unwrap().solve(Wanted::Pairs(&[(to, from)])).unwrap();
            for (found, alone) in found.iter().zip(alone.transfer(to, from).unwrap()) {
                assert!((found - alone).norm() <= 1e-12, "{found} not {alone}");
            }
        }
    }
}

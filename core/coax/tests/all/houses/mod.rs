//! Random houses, and a dense solution of them that shares nothing with the solver.

use std::sync::Arc;

use coax::model::{Junction, Measured};
use coax::rated::{
    AmplifierRating, BandFilterRating, ByPass, CableRating, CableSeries, Condition, DiplexerRating,
    FilterRating, JointRating, PadRating, PassOnRating, Rating, SplitterRating, TapRating,
};
use coax::{Decibels, Dice, End, Megahertz, Model, Network, OutletIndex, PartIndex, ScatterMatrix, Span};
use num_complex::Complex64;
use proptest::prelude::*;

use crate::linear::Dense;

/// A house as the test knows it: enough to set up its equations without asking the network.
#[derive(Debug, Clone)]
pub struct House {
    pub models: Vec<Arc<Model>>,
    pub joins: Vec<((usize, usize), (usize, usize))>,
    pub ends: Vec<((usize, usize), Complex64)>,
    pub outlets: Vec<(usize, usize)>,
}

impl House {
    pub fn network(&self) -> (Network, Vec<OutletIndex>) {
        let mut network = Network::new();
        for model in &self.models {
            network.add_shared(Arc::clone(model));
        }
        for &((a, port_a), (b, port_b)) in &self.joins {
            network.join(PartIndex(a), port_a, PartIndex(b), port_b);
        }
        for &((part, port), reflection) in &self.ends {
            network.end(PartIndex(part), port, End::Reflection(reflection));
        }
        let outlets =
            self.outlets.iter().map(|&(part, port)| network.outlet(PartIndex(part), port)).collect();
        (network, outlets)
    }

    /// The matrix between outlets from the whole house's wave equations `(I - S P) b = S a`, column by column.
    pub fn dense(&self, frequency: Megahertz) -> Dense {
        let mut first = Vec::new();
        let mut n = 0;
        for model in &self.models {
            first.push(n);
            n += model.ports();
        }
        let at = |(part, port): (usize, usize)| first[part] + port;
        let mut s = Dense::zero(n);
        let mut matrix = ScatterMatrix::new(0);
        for (part, model) in self.models.iter().enumerate() {
            model.scatter(frequency, &mut matrix);
            for to in 0..model.ports() {
                for from in 0..model.ports() {
                    s.put(first[part] + to, first[part] + from, matrix.at(to, from));
                }
            }
        }
        let mut p = Dense::zero(n);
        for &(a, b) in &self.joins {
            p.put(at(a), at(b), Complex64::ONE);
            p.put(at(b), at(a), Complex64::ONE);
        }
        for &(place, reflection) in &self.ends {
            p.put(at(place), at(place), reflection);
        }
        let mut whole = s.times(&p);
        for (index, value) in whole.at.iter_mut().enumerate() {
            let unit = if index / n == index % n { Complex64::ONE } else { Complex64::ZERO };
            *value = unit - *value;
        }
        let k = self.outlets.len();
        let mut between = Dense::zero(k);
        for (j, &from) in self.outlets.iter().enumerate() {
            let column: Vec<Complex64> = (0..n).map(|row| s.get(row, at(from))).collect();
            let waves = whole.solve(&column);
            for (i, &to) in self.outlets.iter().enumerate() {
                between.put(i, j, waves[at(to)]);
            }
        }
        between
    }
}

/// The matrix of one model.
pub fn dense_of(model: &Model, frequency: Megahertz) -> Dense {
    let mut matrix = ScatterMatrix::new(0);
    model.scatter(frequency, &mut matrix);
    let n = matrix.ports();
    Dense { n, at: (0..n * n).map(|index| matrix.at(index / n, index % n)).collect() }
}

fn condition() -> impl Strategy<Value = Condition> {
    prop_oneof![
        Just(Condition::Sound),
        Just(Condition::Unsure),
        Just(Condition::HandTight),
        Just(Condition::TwistOn),
        Just(Condition::Corroded),
        Just(Condition::BadJoint)
    ]
}

fn series() -> impl Strategy<Value = CableSeries> {
    prop_oneof![
        Just(CableSeries::Six),
        Just(CableSeries::FiftyNine),
        Just(CableSeries::Seven),
        Just(CableSeries::Eleven),
        Just(CableSeries::Unknown)
    ]
}

fn span(low: f64, high: f64) -> impl Strategy<Value = Span> {
    (low..high, 0.0..1.0_f64).prop_map(move |(at, width)| Span::between(at, at + width * (high - at)))
}

fn dice(seed: u64) -> Dice {
    Dice::thrown(seed, 0, [0; 16])
}

fn cable() -> impl Strategy<Value = Model> {
    (series(), span(0.0, 40.0), span(-30.0, 60.0), [condition(), condition()], any::<u64>()).prop_map(
        |(series, length, temperature, connectors, seed)| {
            CableRating { series, length, temperature, connectors }.draw(&mut dice(seed)).unwrap()
        },
    )
}

/// Labels that promise more than there is, or nothing at all, are among them.
fn splitter() -> impl Strategy<Value = Model> {
    (
        proptest::collection::vec(span(0.5, 14.0), 1..9),
        proptest::option::of((5.0..50.0_f64, 800.0..2500.0_f64)),
        proptest::option::of(5.0..40.0_f64),
        proptest::option::of(3.0..30.0_f64),
        any::<u64>(),
    )
        .prop_map(|(legs, band, isolation, return_loss, seed)| {
            let rating = SplitterRating {
                legs,
                band: band.map(|(low, top)| (Megahertz(low), Megahertz(top))),
                isolation: isolation.map(Decibels),
                return_loss: return_loss.map(Decibels),
                for_moca: None,
            };
            rating.draw(&mut dice(seed)).unwrap()
        })
}

fn filter() -> impl Strategy<Value = Model> {
    (span(0.1, 3.0), 20.0..80.0_f64, any::<bool>(), any::<u64>()).prop_map(|(loss, rejection, low, seed)| {
        let mut rating = FilterRating {
            pass_low: Megahertz(5.0),
            pass_high: Megahertz(1002.0),
            stop_low: Megahertz(1125.0),
            stop_high: Megahertz(1675.0),
            pass_loss: loss,
            rejection: Decibels(rejection),
        };
        if low {
            (rating.pass_low, rating.pass_high) = (Megahertz(1125.0), Megahertz(1675.0));
            (rating.stop_low, rating.stop_high) = (Megahertz(5.0), Megahertz(1002.0));
        }
        rating.draw(&mut dice(seed)).unwrap()
    })
}

fn joint() -> impl Strategy<Value = Model> {
    (span(0.0, 1.0), condition(), any::<u64>())
        .prop_map(|(loss, condition, seed)| JointRating { loss, condition }.draw(&mut dice(seed)).unwrap())
}

/// A label's band, readable or not.
fn band() -> impl Strategy<Value = Option<(Megahertz, Megahertz)>> {
    proptest::option::of((5.0..50.0_f64, 800.0..2500.0_f64))
        .prop_map(|band| band.map(|(low, top)| (Megahertz(low), Megahertz(top))))
}

fn decibels(low: f64, high: f64) -> impl Strategy<Value = Option<Decibels>> {
    proptest::option::of((low..high).prop_map(Decibels))
}

/// Taps of any value, some stating a directivity or isolation that their losses do not allow.
fn tap() -> impl Strategy<Value = Rating> {
    (
        proptest::option::of(span(0.0, 6.0)),
        proptest::collection::vec(span(1.0, 30.0), 1..9),
        band(),
        decibels(5.0, 45.0),
        decibels(0.0, 30.0),
        decibels(3.0, 30.0),
        any::<Option<bool>>(),
    )
        .prop_map(|(through, taps, band, isolation, directivity, return_loss, for_moca)| {
            Rating::Tap(TapRating { through, taps, band, isolation, directivity, return_loss, for_moca })
        })
}

fn band_filter() -> impl Strategy<Value = Rating> {
    let edges = proptest::collection::vec(1.0..900.0_f64, 2..8);
    (edges, any::<bool>(), proptest::option::of(span(0.0, 4.0)), decibels(0.0, 90.0)).prop_map(
        |(steps, open, pass_loss, rejection)| {
            let mut edges = vec![0.0];
            for step in steps {
                edges.push(edges[edges.len() - 1] + step);
            }
            let bands = edges.chunks_exact(2).map(|pair| (Megahertz(pair[0]), Megahertz(pair[1])));
            let mut passes: Vec<_> = bands.collect();
            if open {
                passes.push((Megahertz(9000.0), Megahertz(f64::INFINITY)));
            }
            Rating::BandFilter(BandFilterRating { passes, pass_loss, rejection })
        },
    )
}

fn diplexer() -> impl Strategy<Value = Rating> {
    let losses = (proptest::option::of(span(0.0, 4.0)), proptest::option::of(span(0.0, 4.0)));
    (600.0..1100.0_f64, 850.0..1200.0_f64, losses, decibels(0.0, 50.0)).prop_map(
        |(low_top, satellite_bottom, (low_loss, satellite_loss), isolation)| {
            Rating::Diplexer(DiplexerRating {
                low_top: Megahertz(low_top),
                satellite_bottom: Megahertz(satellite_bottom),
                low_loss,
                satellite_loss,
                isolation,
            })
        },
    )
}

/// Parts with ranges of kinds other than the usual ones, drawn.
fn other_part() -> impl Strategy<Value = Model> {
    let pad = (span(0.0, 20.0), decibels(3.0, 30.0))
        .prop_map(|(loss, return_loss)| Rating::Pad(PadRating { loss, return_loss }));
    let pass_on = (proptest::option::of(span(0.0, 8.0)), proptest::option::of(span(0.0, 8.0)), band())
        .prop_map(|(through, device, band)| {
            Rating::PassOn(PassOnRating { through, device, band, for_moca: None })
        });
    (prop_oneof![3 => tap(), 1 => band_filter(), 2 => diplexer(), 1 => pad, 1 => pass_on], any::<u64>())
        .prop_map(|(rating, seed)| rating.draw(&mut dice(seed)).unwrap())
}

/// A part as if it had been measured: at few frequencies, so that most of it is between them.
fn measured(part: impl Strategy<Value = Model>) -> impl Strategy<Value = Model> {
    (part, 2_usize..40).prop_map(|(part, points)| {
        let at = |k: usize| Megahertz(30.0 + 2000.0 * k as f64 / points as f64);
        let frequencies: Vec<_> = (0..points).map(at).collect();
        let matrices: Vec<_> = frequencies
            .iter()
            .map(|&frequency| {
                let mut matrix = ScatterMatrix::new(0);
                part.scatter(frequency, &mut matrix);
                matrix
            })
            .collect();
        Model::Measured(Arc::new(Measured::new(&frequencies, &matrices).unwrap()))
    })
}

/// A part of any passive kind, drawn from a random rating.
pub fn passive_part() -> impl Strategy<Value = Arc<Model>> {
    let junction = (2_usize..5).prop_map(|ports| Model::Junction(Junction::new(ports).unwrap()));
    let to_measure = prop_oneof![cable(), splitter(), other_part()];
    prop_oneof![
        4 => cable(),
        3 => splitter(),
        1 => filter(),
        1 => joint(),
        1 => junction,
        4 => other_part(),
        1 => measured(to_measure),
    ]
    .prop_map(Arc::new)
}

/// An amplifier drawn from a random rating.
pub fn amplifier() -> impl Strategy<Value = Arc<Model>> {
    (
        proptest::collection::vec(span(0.0, 15.0), 1..9),
        proptest::option::of(span(3.0, 8.0)),
        prop_oneof![Just(42.0), Just(65.0), Just(85.0), Just(204.0)],
        prop_oneof![Just(860.0), Just(1002.0), Just(1218.0)],
        span(-5.0, 12.0),
        proptest::option::of(span(1.0, 15.0)),
        any::<u64>(),
    )
        .prop_map(|(outputs, modem_port, split, top, return_gain, bypass, seed)| {
            let rating = AmplifierRating {
                outputs,
                modem_port,
                split: Megahertz(split),
                forward_top: Megahertz(top),
                return_gain,
                bypass: bypass.map_or(ByPass::None, ByPass::There),
            };
            Arc::new(rating.draw(&mut Dice::thrown(seed, 1, [1; 16])).unwrap())
        })
}

/// A tree of such parts, joined by any of their ports, with 1 outlet or more.
pub fn house(part: impl Strategy<Value = Arc<Model>>, most: usize) -> impl Strategy<Value = House> {
    let part = (part, any::<prop::sample::Index>(), any::<prop::sample::Index>());
    let ends = proptest::collection::vec((0..4_u8, 0.0..0.95_f64, 0.0..std::f64::consts::TAU), 64);
    (proptest::collection::vec(part, 1..most), ends).prop_map(|(parts, ends)| {
        let mut house =
            House { models: Vec::new(), joins: Vec::new(), ends: Vec::new(), outlets: Vec::new() };
        let mut free: Vec<(usize, usize)> = Vec::new();
        for (model, above, own) in parts {
            let part = house.models.len();
            let mut ports: Vec<(usize, usize)> = (0..model.ports()).map(|port| (part, port)).collect();
            if part > 0 {
                if free.is_empty() {
                    break;
                }
                let above = free.swap_remove(above.index(free.len()));
                let own = ports.swap_remove(own.index(ports.len()));
                house.joins.push((above, own));
            }
            house.models.push(model);
            free.extend(ports);
        }
        for (index, place) in free.into_iter().enumerate() {
            match ends[index % ends.len()] {
                _ if index == 0 => house.outlets.push(place),
                (0, _, _) if house.outlets.len() < 8 => house.outlets.push(place),
                (1, _, _) => house.ends.push((place, Complex64::ZERO)),
                (2, _, _) => house.ends.push((place, Complex64::new(0.98, 0.0))),
                (_, size, phase) => house.ends.push((place, Complex64::from_polar(size, phase))),
            }
        }
        house
    })
}

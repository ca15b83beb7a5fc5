//! Worked examples whose answers come from textbooks or published sheets; the source stands beside each.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a test fails by panicking, and its helpers stand outside the test functions"
)]

use coax::model::{Cable, Entry, ExplicitMultiport, Junction, Link, Splitter};
use coax::rated::{CableRating, CableSeries, Condition};
use coax::{
    Decibels, Dice, End, FrequencyGrid, Megahertz, Metres, Model, Network, OutletIndex, Solution, Span,
    Wanted,
};
use num_complex::Complex64;

fn solved(network: &Network, frequencies: &FrequencyGrid) -> Solution {
    network.tree(coax::PartIndex(0)).unwrap().sample(frequencies).unwrap().solve(Wanted::All).unwrap()
}

fn at(megahertz: f64) -> FrequencyGrid {
    FrequencyGrid::new(vec![Megahertz(megahertz)]).unwrap()
}

fn near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "{found} is not {expected} within {within}");
}

fn lossless(length: f64, impedance: f64, velocity: f64) -> Model {
    Model::Cable(Cable::new(Metres(length), impedance, 0.0, 0.0, velocity).unwrap())
}

/// A joint without loss that reflects this return loss.
fn reflecting(return_loss: f64) -> Model {
    let passed = 1.0 - (-Decibels(return_loss)).power();
    Model::Link(Link::new(-Decibels::of_power(passed), Decibels(return_loss), 0.0).unwrap())
}

fn chain(models: Vec<Model>) -> (Network, OutletIndex, OutletIndex) {
    let mut network = Network::new();
    let parts: Vec<_> = models.into_iter().map(|model| network.add(model)).collect();
    for pair in parts.windows(2) {
        network.join(pair[0], 1, pair[1], 0);
    }
    let near = network.outlet(parts[0], 0);
    let far = network.outlet(*parts.last().unwrap(), 1);
    (network, near, far)
}

fn loss(solution: &Solution, to: OutletIndex, from: OutletIndex) -> f64 {
    solution.loss(to, from)[0].value()
}

/// Textbook (parallel junction of equal lines), reproduced with scikit-rf: return loss 9.542 dB, through 3.522 dB.
#[test]
fn a_bare_tee_loses_three_and_a_half_decibels_and_reflects_a_third() {
    let mut network = Network::new();
    let tee = network.add(Model::Junction(Junction::new(3).unwrap()));
    let outlets = [network.outlet(tee, 0), network.outlet(tee, 1)];
    network.end(tee, 2, End::Matched);
    let solution = solved(&network, &at(1400.0));
    near(loss(&solution, outlets[0], outlets[0]), 9.542, 5e-4);
    near(loss(&solution, outlets[1], outlets[0]), 3.522, 5e-4);
    assert!(solution.reflection(outlets[0]).unwrap()[0].re < 0.0);
}

/// Pozar, "Microwave Engineering", resistive power divider: three arms of 75/3 ohm, 6.021 dB all ways, nothing back. A series
/// resistance R in a line of Z: S11 = R/(R + 2Z), S21 = 2Z/(R + 2Z) (the same, two-port examples).
#[test]
fn a_resistive_splitter_halves_the_amplitude_all_ways() {
    let decibels = |amplitude: f64| -20.0 * amplitude.log10();
    let entry =
        |amplitude: f64| Entry { loss: Some(decibels(amplitude)), slope: 0.0, delay_ns: 0.0, sign: 1.0 };
    let (back, through) = (entry(25.0 / 175.0), entry(150.0 / 175.0));
    let resistor = || Model::Law(ExplicitMultiport::new(2, vec![back, through, through, back]).unwrap());
    let mut network = Network::new();
    let tee = network.add(Model::Junction(Junction::new(3).unwrap()));
    let outlets: Vec<_> = (0..3)
        .map(|port| {
            let arm = network.add(resistor());
            network.join(tee, port, arm, 0);
            network.outlet(arm, 1)
        })
        .collect();
    let solution = solved(&network, &at(600.0));
    for &to in &outlets {
        for &from in &outlets {
            if to == from {
                assert!(solution.reflection(to).unwrap()[0].norm() < 1e-15);
            } else {
                near(loss(&solution, to, from), 6.021, 5e-4);
            }
        }
    }
}

/// `S23' = S21 G S13` of an ideal two-way hybrid (signal-flow graph): 6.021 - 20 log10 |G| dB.
#[test]
fn what_comes_back_at_the_entry_joins_two_rooms() {
    for (reflection, expected) in [(1.0, 6.021), (0.5, 12.04), (0.1, 26.02)] {
        let half = Decibels::of_power(2.0);
        let mut network = Network::new();
        let ideal = Splitter::new(&[half, half], Decibels(f64::INFINITY), Decibels(f64::INFINITY)).unwrap();
        let part = network.add(Model::Splitter(ideal));
        network.end(part, 0, End::Reflection(Complex64::from_polar(reflection, 1.0)));
        let rooms = [network.outlet(part, 1), network.outlet(part, 2)];
        near(loss(&solved(&network, &at(1400.0)), rooms[0], rooms[1]), expected, 5e-3);
    }
}

/// The same with lossy parts: twice the leg, twice the jumper; and with 25 dB of isolation, the bounds of the sum of two
/// waves, -6.50 and -8.86 dB (vector sum, 0.417 and 0.0562).
#[test]
fn a_filter_that_reflects_all_leaves_a_ripple_between_rooms() {
    let house = |isolation: f64| {
        let mut network = Network::new();
        let legs = [Decibels(3.5), Decibels(3.5)];
        let splitter = Splitter::new(&legs, Decibels(isolation), Decibels(f64::INFINITY)).unwrap();
        let part = network.add(Model::Splitter(splitter));
        let jumper =
            Cable::new(Metres(2.0), 75.0, 0.0, 0.0, 0.83).unwrap().with_fixed_loss(Decibels(0.3)).unwrap();
        let jumper = network.add(Model::Cable(jumper));
        network.join(part, 0, jumper, 1);
        network.end(jumper, 0, End::Open);
        let rooms = [network.outlet(part, 1), network.outlet(part, 2)];
        let band = FrequencyGrid::even(Megahertz(1125.0), Megahertz(1675.0), 2_000).unwrap();
        let loss = solved(&network, &band).loss(rooms[0], rooms[1]);
        let least = loss.iter().map(|loss| loss.value()).fold(f64::INFINITY, f64::min);
        (least, loss.iter().map(|loss| loss.value()).fold(0.0, f64::max))
    };
    let (least, most) = house(f64::INFINITY);
    near(least, 7.6, 1e-9);
    near(most, 7.6, 1e-9);
    let (least, most) = house(25.0);
    near(least, 6.50, 6e-3);
    near(most, 8.86, 6e-3);
}

/// Quarter-wave stub: notches at (2n+1) v c/(4L). 10 ft at 0.85: 20.90 MHz and every 41.80; 25 ft at 0.83: 8.16, every 16.33.
#[test]
fn an_open_stub_on_a_tee_combs_the_band() {
    for (feet, velocity, first, spacing) in [(10.0, 0.85, 20.90, 41.80), (25.0, 0.83, 8.16, 16.33)] {
        let mut network = Network::new();
        let tee = network.add(Model::Junction(Junction::new(3).unwrap()));
        let stub = network.add(lossless(Metres::from_feet(feet).value(), 75.0, velocity));
        let outlets = [network.outlet(tee, 0), network.outlet(tee, 1)];
        network.join(tee, 2, stub, 0);
        network.end(stub, 1, End::Open);
        let band = FrequencyGrid::even(Megahertz(1.0), Megahertz(150.0), 14_901).unwrap();
        let solution = solved(&network, &band);
        let through = solution.transfer(outlets[1], outlets[0]).unwrap();
        let notches: Vec<f64> = (1..through.len() - 1)
            .filter(|&k| {
                through[k].norm() < through[k - 1].norm() && through[k].norm() <= through[k + 1].norm()
            })
            .map(|k| band.frequencies()[k].value())
            .collect();
        near(notches[0], first, 0.011);
        assert!(notches.len() > 2);
        for (n, notch) in notches.iter().enumerate() {
            near(*notch, first + n as f64 * spacing, 0.011 + 0.006 * n as f64);
        }
        // Half way between two notches the stub is not there.
        let between = ((first + spacing / 2.0 - 1.0) * 100.0).round() as usize;
        near(through[between].norm(), 1.0, 1e-3);
    }
}

fn six_series(feet: f64, celsius: f64) -> Cable {
    let rating = CableRating {
        series: CableSeries::Six,
        length: Span::exact(Metres::from_feet(feet).value()),
        temperature: Span::exact(celsius),
        condition: Condition::Sound,
    };
    match rating.draw(&mut Dice::likely([0; 16])).unwrap() {
        Model::Cable(cable) => cable,
        other => panic!("{other:?}"),
    }
}

/// Loss of the cable alone, without its connectors.
fn six_series_loss(feet: f64, celsius: f64, megahertz: f64) -> f64 {
    let f = Megahertz(megahertz);
    six_series(feet, celsius).loss(f).value() - six_series(0.0, celsius).loss(f).value()
}

/// Two-term fit to a published 6-series typical sheet (57 to 2150 MHz): dB/100 ft; and the sheet's own points, which the fit
/// misses by at most 2.5 %.
#[test]
fn six_series_loses_what_its_sheet_says() {
    for (megahertz, expected) in [(1150.0, 7.09), (1400.0, 7.85), (1675.0, 8.62)] {
        near(six_series_loss(100.0, 20.0, megahertz), expected, 5e-3);
    }
    near(six_series_loss(75.0, 20.0, 1675.0), 6.47, 5e-3);
    for (megahertz, sheet) in
        [(57.0, 1.5), (213.0, 3.0), (473.0, 4.5), (695.0, 5.6), (950.0, 6.4), (2150.0, 9.7)]
    {
        near(six_series_loss(100.0, 20.0, megahertz) / sheet, 1.0, 0.026);
    }
    // From memory: 0.58 dB/100 ft at 5 MHz beside 1.60 at 55, where the sheet's fit is 6 % lower.
    near(six_series_loss(100.0, 20.0, 5.0) / six_series_loss(100.0, 20.0, 55.0), 0.58 / 1.60, 5e-4);
}

/// From memory (a table that trade catalogues print, to 1000 MHz): 8.12, 5.32 and 4.35 dB/100 ft of 59, 7 and 11 series at
/// 1000 MHz, 0.86, 0.47 and 0.38 at 5 MHz.
#[test]
fn the_other_series_keep_their_order_and_their_table() {
    let run = |series: CableSeries, megahertz: f64| {
        let loss = |feet: f64| {
            let rating = CableRating {
                series,
                length: Span::exact(Metres::from_feet(feet).value()),
                temperature: Span::exact(20.0),
                condition: Condition::Sound,
            };
            let Model::Cable(cable) = rating.draw(&mut Dice::likely([0; 16])).unwrap() else { panic!() };
            cable.loss(Megahertz(megahertz)).value()
        };
        loss(100.0) - loss(0.0)
    };
    let table = [
        (CableSeries::FiftyNine, 0.86, 8.12),
        (CableSeries::Seven, 0.47, 5.32),
        (CableSeries::Eleven, 0.38, 4.35),
    ];
    for (series, at_5, at_1000) in table {
        near(run(series, 5.0) / at_5, 1.0, 0.08);
        near(run(series, 1000.0) / at_1000, 1.0, 0.025);
    }
    let unknown = run(CableSeries::Unknown, 1400.0);
    assert!(run(CableSeries::Six, 1400.0) < unknown && unknown < run(CableSeries::FiftyNine, 1400.0));
}

/// Tech tip "Coaxial Cable Attenuation Changes versus Temperature": 0.055 dB/ft at 750 MHz and 68 F over 200 ft is 11.0 dB;
/// at 100 F 0.056936 dB/ft, 11.387 dB (the tip rounds to 11.4).
#[test]
fn a_warm_run_loses_more() {
    let celsius = (100.0 - 32.0) / 1.8;
    let ratio = six_series_loss(200.0, celsius, 750.0) / six_series_loss(200.0, 20.0, 750.0);
    near(11.0 * ratio, 11.387, 5e-4);
    near(0.055 * ratio, 0.056_936, 5e-7);
    near(six_series_loss(200.0, 20.0, 750.0), 11.0, 0.4);
}

/// Round trip: an open cable's return loss is twice its loss; 50 ft at 8.62 dB/100 ft: 8.62 dB.
#[test]
fn an_open_run_returns_its_loss_twice() {
    let mut network = Network::new();
    let run = network.add(Model::Cable(six_series(50.0, 20.0)));
    let outlet = network.outlet(run, 0);
    network.end(run, 1, End::Open);
    let connectors = 2.0 * six_series(0.0, 20.0).loss(Megahertz(1675.0)).value();
    near(loss(&solved(&network, &at(1675.0)), outlet, outlet) - connectors, 8.62, 5e-3);
}

/// Ripple of two mismatches with a lossless line between: the loss goes 20 log10 (1 +- r^2) about that without echoes
/// (textbook): as a loss +0.339 and -0.353 dB for 14 dB, and so on.
#[test]
fn two_mismatches_make_a_ripple() {
    for (return_loss, up, down) in [(14.0, 0.339, -0.353), (10.0, 0.828, -0.915), (5.0, 2.39, -3.30)] {
        let (network, near_end, far_end) =
            chain(vec![reflecting(return_loss), lossless(10.0, 75.0, 0.83), reflecting(return_loss)]);
        let band = FrequencyGrid::even(Megahertz(1125.0), Megahertz(1675.0), 20_000).unwrap();
        let loss = solved(&network, &band).loss(far_end, near_end);
        let flat = -2.0 * Decibels::of_power(1.0 - (-Decibels(return_loss)).power()).value();
        let least = loss.iter().map(|loss| loss.value()).fold(f64::INFINITY, f64::min);
        let most = loss.iter().map(|loss| loss.value()).fold(0.0, f64::max);
        near(least - flat, down, 6e-3);
        near(most - flat, up, 6e-3);
    }
}

/// Mismatch loss by return loss, with the standing wave ratio 3.570 of 5 dB (textbook). A quarter-wave line of impedance Z
/// turns 75 ohm into Z^2/75, so a chosen Z gives any standing wave ratio.
#[test]
fn a_mismatch_loses_what_it_reflects() {
    for (return_loss, expected) in [(5.0, 1.651), (8.0, 0.749), (10.0, 0.458), (14.0, 0.176), (20.0, 0.0436)]
    {
        let r = 10_f64.powf(-return_loss / 20.0);
        let ratio = (1.0 + r) / (1.0 - r);
        if return_loss < 6.0 {
            near(ratio, 3.570, 5e-4);
        }
        let velocity = 0.8;
        let quarter = velocity * 299_792_458.0 / (4.0 * 1400e6);
        let (network, near_end, far_end) = chain(vec![lossless(quarter, 75.0 * ratio.sqrt(), velocity)]);
        let solution = solved(&network, &at(1400.0));
        near(loss(&solution, near_end, near_end), return_loss, 1e-6);
        near(loss(&solution, far_end, near_end), expected, 6e-4);
    }
}

/// Sum of label losses, matched: 4.31 + 3.7 + 5.17 + 7.3 + 2.59 = 23.07 dB at 1675 MHz.
#[test]
fn a_cascade_of_matched_parts_adds_up() {
    let ideal = |legs: &[f64]| {
        let legs: Vec<_> = legs.iter().map(|&leg| Decibels(leg)).collect();
        Model::Splitter(Splitter::new(&legs, Decibels(f64::INFINITY), Decibels(f64::INFINITY)).unwrap())
    };
    let mut network = Network::new();
    let run = |feet: f64| {
        Model::Cable(
            Cable::new(Metres::from_feet(feet), 75.0, 0.200_63 / 0.3048, 0.000_245 / 0.3048, 0.83).unwrap(),
        )
    };
    let (a, two, b, three, c) = (
        network.add(run(50.0)),
        network.add(ideal(&[3.7, 3.7])),
        network.add(run(60.0)),
        network.add(ideal(&[3.7, 7.3, 7.3])),
        network.add(run(30.0)),
    );
    let street = network.outlet(a, 0);
    network.join(a, 1, two, 0);
    network.join(two, 1, b, 0);
    network.end(two, 2, End::Matched);
    network.join(b, 1, three, 0);
    network.end(three, 1, End::Matched);
    network.join(three, 2, c, 0);
    network.end(three, 3, End::Matched);
    let room = network.outlet(c, 1);
    near(loss(&solved(&network, &at(1675.0)), room, street), 23.07, 6e-3);
}

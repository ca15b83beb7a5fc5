//! Splitters, tees and taps.

use coax::model::{Entry, ExplicitMultiport, Junction, Splitter};
use coax::rated::{SplitterRating, TapRating};
use coax::{DecibelMillivolts, Decibels, Dice, End, Megahertz, Model, Network, Span};
use num_complex::Complex64;

use super::bench::{at, loss, matrix, part_loss, solved};
use super::check::{Check, check, check_between};

const IDEAL: &str = "definition: power shared evenly among N, 10 log10 N";
const ARTICLE: &str =
    "\"How much signal do I lose going through a splitter?\", skywarnforum.org (3.5 dB a stage of two)";
const LABEL: &str = "labels photographed in the public repository N7Alpha/coaxial-cable-network";
const TEE: &str = "textbook: parallel junction of equal lines, reproduced with scikit-rf";
const DIVIDER: &str = "Pozar, Microwave Engineering, resistive power divider";

fn ideal(legs: &[f64]) -> Model {
    let legs: Vec<_> = legs.iter().map(|&leg| Decibels(leg)).collect();
    Model::Splitter(Splitter::new(&legs, Decibels(f64::INFINITY), Decibels(f64::INFINITY)).unwrap())
}

#[test]
fn no_split_gives_more_than_its_share() {
    // Legs that promise no loss at all: what is left is the ideal split.
    for (n, expected) in [(2, 3.01), (3, 4.77), (4, 6.02), (6, 7.78), (8, 9.03), (16, 12.04)] {
        let greedy = ideal(&vec![0.0; n]);
        check(
            IDEAL,
            &format!("least loss of a {n}-way, dB"),
            expected,
            5e-3,
            part_loss(&greedy, n, 0, 1400.0),
        );
    }
    for (leg, expected) in [(1, 3.01), (2, 6.02), (3, 6.02)] {
        let what = format!("ideal unbalanced 3-way, leg {leg}, dB");
        Check::PutIn.about(
            IDEAL,
            &what,
            expected,
            5e-3,
            part_loss(&ideal(&[3.0103, 6.0206, 6.0206]), leg, 0, 1400.0),
        );
    }
}

#[test]
fn larger_splits_are_stages_of_two() {
    let two = || matrix(&ideal(&[3.5, 3.5]), 800.0);
    let four = two().joined(1, &two(), 0).joined(1, &two(), 0);
    let decibels = |value: Complex64| -20.0 * value.norm().log10();
    for leg in 1..5 {
        check(
            ARTICLE,
            &format!("4-way of two-way stages, leg {leg}, dB"),
            7.0,
            1e-9,
            decibels(four.at(leg, 0)),
        );
    }
    let eight = (0..4).fold(four, |whole, _| whole.joined(1, &two(), 0));
    check(ARTICLE, "8-way of two-way stages, dB", 10.5, 1e-9, decibels(eight.at(8, 0)));
    let three = two().joined(2, &two(), 0);
    for (leg, expected) in [(1, 3.5), (2, 7.0), (3, 7.0)] {
        let what = format!("unbalanced 3-way of two stages, leg {leg}, dB");
        check(ARTICLE, &what, expected, 1e-9, decibels(three.at(leg, 0)));
    }
}

#[test]
fn an_unbalanced_splitter_keeps_its_label_in_any_order() {
    for order in [[3.7, 7.3, 7.3], [7.3, 3.7, 7.3], [7.3, 7.3, 3.7]] {
        let rating = SplitterRating {
            legs: order.map(Span::exact).to_vec(),
            band: Some((Megahertz(5.0), Megahertz(1675.0))),
            isolation: None,
            return_loss: None,
            for_moca: None,
        };
        let part = rating.draw(&mut Dice::thrown(3, 1, [5; 16])).unwrap();
        for (leg, expected) in order.into_iter().enumerate() {
            let what = format!("3-way {order:?}, leg {} at 800 MHz, dB", leg + 1);
            Check::PutIn.about(LABEL, &what, expected, 1e-9, part_loss(&part, leg + 1, 0, 800.0));
            // The slope with frequency is common practice: at most 0.5 dB/GHz.
            let far = part_loss(&part, leg + 1, 0, 1675.0);
            assert!((expected..expected + 0.45).contains(&far), "{far} dB at 1675 MHz");
        }
    }
}

#[test]
fn a_tap_gives_its_value_and_hears_its_output_less() {
    // The number on a tap is its tap loss; 4 ports of 20 dB leave 10 log10 (1 - 4/100) = 0.18 dB at best.
    let rating = TapRating {
        through: None,
        taps: vec![Span::exact(20.0); 4],
        band: Some((Megahertz(5.0), Megahertz(1218.0))),
        isolation: None,
        directivity: Some(Decibels(12.0)),
        return_loss: None,
        for_moca: None,
    };
    let tap = rating.draw(&mut Dice::thrown(2, 9, [1; 16])).unwrap();
    let source =
        "definition of a coupler: directivity is isolation less coupling (Pozar, Microwave Engineering)";
    let mut isolation = 0.0;
    for port in 2..6 {
        // 4 taps sit behind a splitter, whose echoes move the value a little.
        Check::PutIn.about(
            source,
            &format!("20 dB tap, port {port} at 800 MHz, dB"),
            20.0,
            0.4,
            part_loss(&tap, port, 0, 800.0),
        );
        isolation += part_loss(&tap, port, 1, 800.0) / 4.0;
    }
    Check::PutIn.about(source, "directivity of that tap, dB", 12.0, 1.5, isolation - 20.0);
    check_between(
        "conservation of energy",
        "loss to its through output at 800 MHz, dB",
        0.18,
        1.6,
        part_loss(&tap, 1, 0, 800.0),
    );
}

#[test]
fn a_16_way_takes_a_level_of_10_to_minus_6() {
    let level = DecibelMillivolts(10.0) - Decibels(part_loss(&ideal(&[16.0; 16]), 7, 0, 500.0));
    Check::PutIn.about(
        "from memory: a tester's manual, section on amplifiers",
        "+10 dBmV behind a 16 dB split, dBmV",
        -6.0,
        1e-9,
        level.value(),
    );
}

#[test]
fn a_bare_tee_loses_three_and_a_half_decibels_and_reflects_a_third() {
    let mut network = Network::new();
    let tee = network.add(Model::Junction(Junction::new(3).unwrap()));
    let outlets = [network.outlet(tee, 0), network.outlet(tee, 1)];
    network.end(tee, 2, End::Matched);
    let solution = solved(&network, &at(1400.0));
    check(TEE, "return loss of a bare tee, dB", 9.542, 5e-4, loss(&solution, outlets[0], outlets[0]));
    check(TEE, "loss through a bare tee, dB", 3.522, 5e-4, loss(&solution, outlets[1], outlets[0]));
    check(TEE, "reflection of a bare tee", -1.0 / 3.0, 1e-12, solution.reflection(outlets[0]).unwrap()[0].re);
}

/// A series resistance R in a line of Z: S11 = R/(R + 2Z), S21 = 2Z/(R + 2Z) (the same book, two-port examples).
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
    for (i, &to) in outlets.iter().enumerate() {
        for (j, &from) in outlets.iter().enumerate() {
            if i == j {
                let back = solution.reflection(to).unwrap()[0].norm();
                check(DIVIDER, &format!("reflection of port {i}, three arms of 25 ohm"), 0.0, 1e-15, back);
            } else {
                let what = format!("loss from port {j} to {i}, three arms of 25 ohm, dB");
                check(DIVIDER, &what, 6.021, 5e-4, loss(&solution, to, from));
            }
        }
    }
}

#[test]
fn what_comes_back_at_the_entry_joins_two_rooms() {
    let source = "derived: S23' = S21 G S13 of an ideal hybrid (signal-flow graph)";
    for (reflection, expected) in [(1.0, 6.021), (0.5, 12.04), (0.1, 26.02)] {
        let half = Decibels::of_power(2.0).value();
        let mut network = Network::new();
        let part = network.add(ideal(&[half, half]));
        network.end(part, 0, End::Reflection(Complex64::from_polar(reflection, 1.0)));
        let rooms = [network.outlet(part, 1), network.outlet(part, 2)];
        let what = format!("room to room over an input that sends back {reflection}, dB");
        check(source, &what, expected, 5e-3, loss(&solved(&network, &at(1400.0)), rooms[0], rooms[1]));
    }
}

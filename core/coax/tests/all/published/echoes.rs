//! Echoes: what comes back, and where it meets the direct wave.

use coax::model::{Cable, Junction, Splitter};
use coax::{Decibels, End, FrequencyGrid, Megahertz, Metres, Model, Network};

use super::bench::{at, chain, loss, lossless, reflecting, solved};
use super::check::check;

const WAVES: &str = "derived: vector sum of two waves";
const STUB: &str = "textbook: quarter-wave stub, (2n+1) v c/(4L)";
const RIPPLE: &str = "textbook: two mismatches, 20 log10 (1 +- r^2)";
const MISMATCH: &str = "textbook: mismatch loss, 10 log10 (1 - r^2)";
const BUDGET: &str = "derived: sum of label losses and the 6-series fit, matched";

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
    check(WAVES, "room to room over a filter that reflects all, perfect isolation, dB", 7.6, 1e-9, least);
    check(WAVES, "the same, most over the band, dB", 7.6, 1e-9, most);
    let (least, most) = house(25.0);
    check(WAVES, "the same with 25 dB of isolation, least, dB", 6.50, 6e-3, least);
    check(WAVES, "the same with 25 dB of isolation, most, dB", 8.86, 6e-3, most);
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
        assert!(notches.len() > 2);
        for (n, notch) in notches.iter().enumerate() {
            let what = format!("notch {n} of an open stub of {feet} ft at {velocity}, MHz");
            check(STUB, &what, first + n as f64 * spacing, 0.011 + 0.006 * n as f64, *notch);
        }
        // Half way between two notches the stub is not there.
        let between = ((first + spacing / 2.0 - 1.0) * 100.0).round() as usize;
        check(STUB, "amplitude half way between notches", 1.0, 1e-3, through[between].norm());
    }
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
        let what = |way: &str| format!("ripple of two return losses of {return_loss} dB, {way}, dB");
        check(RIPPLE, &what("down"), down, 6e-3, least - flat);
        check(RIPPLE, &what("up"), up, 6e-3, most - flat);
    }
}

/// Mismatch loss by return loss (textbook). A quarter-wave line of impedance Z
/// turns 75 ohm into Z^2/75, so a chosen Z gives any standing wave ratio.
#[test]
fn a_mismatch_loses_what_it_reflects() {
    for (return_loss, expected) in [(5.0, 1.651), (8.0, 0.749), (10.0, 0.458), (14.0, 0.176), (20.0, 0.0436)]
    {
        let r = 10_f64.powf(-return_loss / 20.0);
        let ratio = (1.0 + r) / (1.0 - r);
        let velocity = 0.8;
        let quarter = velocity * 299_792_458.0 / (4.0 * 1400e6);
        let (network, near_end, far_end) = chain(vec![lossless(quarter, 75.0 * ratio.sqrt(), velocity)]);
        let solution = solved(&network, &at(1400.0));
        let back = loss(&solution, near_end, near_end);
        check(
            MISMATCH,
            &format!("return loss of a quarter-wave line made for {return_loss} dB"),
            return_loss,
            1e-6,
            back,
        );
        let through = loss(&solution, far_end, near_end);
        check(
            MISMATCH,
            &format!("mismatch loss at {return_loss} dB return loss, dB"),
            expected,
            6e-4,
            through,
        );
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
    let found = loss(&solved(&network, &at(1675.0)), room, street);
    check(BUDGET, "50 ft, 2-way, 60 ft, 3-way -7.3 port, 30 ft at 1675 MHz, dB", 23.07, 6e-3, found);
}

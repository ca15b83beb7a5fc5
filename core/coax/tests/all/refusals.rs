//! What cannot be is refused with a sentence that says where and why; what is merely large is not.

use std::sync::Arc;

use coax::model::{Cable, Junction, Link, Splitter};
use coax::rated::{
    BandFilterRating, CableRating, CableSeries, Condition, DiplexerRating, PadRating, SplitterRating,
    TapRating,
};
use coax::{
    CoaxError, Decibels, Dice, End, FrequencyGrid, Megahertz, Metres, Model, Network, OutletIndex, PartIndex,
    Span, Wanted,
};
use num_complex::Complex64;

fn cable(metres: f64) -> Model {
    Model::Cable(Cable::new(Metres(metres), 75.0, 0.66, 0.0008, 0.83).unwrap())
}

fn splitter(legs: usize) -> Model {
    Model::Splitter(Splitter::new(&vec![Decibels(10.0); legs], Decibels(25.0), Decibels(18.0)).unwrap())
}

fn grid() -> FrequencyGrid {
    FrequencyGrid::even(Megahertz(1125.0), Megahertz(1675.0), 9).unwrap()
}

#[test]
fn frequencies_must_be_finite_positive_and_rising() {
    for bad in [vec![], vec![f64::NAN], vec![0.0], vec![-5.0], vec![5.0, 5.0], vec![5.0, f64::INFINITY]] {
        let error = FrequencyGrid::new(bad.into_iter().map(Megahertz).collect()).unwrap_err();
        assert!(matches!(error, CoaxError::BadFrequency { .. }));
    }
    assert!(FrequencyGrid::even(Megahertz(5.0), Megahertz(1000.0), 100_001).is_err());
    assert_eq!(FrequencyGrid::even(Megahertz(5.0), Megahertz(1000.0), 100_000).unwrap().len(), 100_000);
    assert_eq!(
        FrequencyGrid::new(vec![Megahertz(5.0), Megahertz(f64::NAN)]).unwrap_err().to_string(),
        "these frequencies cannot be used: number 1 is NaN MHz, which is not a finite number. Give 1 to 100000 \
         rising frequencies above 0 MHz"
    );
}

#[test]
fn a_run_of_minus_three_metres_is_refused() {
    let error = Cable::new(Metres(-3.0), 75.0, 0.66, 0.0008, 0.83).unwrap_err();
    assert_eq!(error.to_string(), "a cable's length is -3 m, but it must be 0 m or more");
    let rating = CableRating {
        series: CableSeries::Six,
        length: Span::new(-3.0, 2.0, 5.0),
        temperature: Span::exact(20.0),
        connectors: [Condition::Sound; 2],
    };
    assert_eq!(rating.draw(&mut Dice::likely([0; 16])).unwrap_err().to_string(), error.to_string());
}

#[test]
fn figures_that_are_no_numbers_are_refused() {
    for bad in [f64::NAN, f64::INFINITY, -1.0] {
        assert!(Cable::new(Metres(1.0), bad, 0.66, 0.0, 0.83).is_err());
        assert!(Cable::new(Metres(1.0), 75.0, bad, 0.0, 0.83).is_err());
        assert!(Cable::new(Metres(1.0), 75.0, 0.66, 0.0, bad).is_err());
        assert!(Splitter::new(&[Decibels(bad)], Decibels(20.0), Decibels(20.0)).is_err());
        assert!(Link::new(Decibels(bad), Decibels(20.0), 0.0).is_err());
    }
    assert!(Cable::new(Metres(1.0), 75.0, 0.66, 0.0, 1.01).is_err());
    assert!(Splitter::new(&[], Decibels(20.0), Decibels(20.0)).is_err());
    let no_legs =
        SplitterRating { legs: vec![], band: None, isolation: None, return_loss: None, for_moca: None };
    assert!(no_legs.draw(&mut Dice::likely([0; 16])).is_err());
}

#[test]
fn ratings_of_parts_that_cannot_be_are_refused() {
    let dice = || Dice::likely([0; 16]);
    let tap = |taps: Vec<Span>| TapRating {
        through: None,
        taps,
        band: None,
        isolation: None,
        directivity: None,
        return_loss: None,
        for_moca: None,
    };
    assert_eq!(
        tap(vec![Span::exact(20.0); 9]).draw(&mut dice()).unwrap_err().to_string(),
        "the ports of a tap: 9 given, 1 to 8 needed"
    );
    assert!(tap(vec![]).draw(&mut dice()).is_err());
    assert_eq!(
        tap(vec![Span::exact(-20.0)]).draw(&mut dice()).unwrap_err().to_string(),
        "a tap's loss is -20 dB, but it must be 0 dB or more"
    );
    let filter = |passes: &[(f64, f64)]| BandFilterRating {
        passes: passes.iter().map(|&(low, high)| (Megahertz(low), Megahertz(high))).collect(),
        pass_loss: None,
        rejection: None,
    };
    for bad in [
        &[][..],
        &[(5.0, 5.0)],
        &[(5.0, f64::NAN)],
        &[(f64::NAN, 5.0)],
        &[(5.0, 100.0), (90.0, 200.0)],
        &[(5.0, f64::INFINITY), (90.0, 200.0)],
        &[(-5.0, 10.0)],
        &[(1.0, 2.0); 17],
    ] {
        assert!(filter(bad).draw(&mut dice()).is_err(), "{bad:?}");
    }
    let pad = PadRating { loss: Span::exact(f64::NAN), return_loss: None };
    assert!(pad.draw(&mut dice()).is_err());
    let combiner = DiplexerRating { low_loss: Some(Span::exact(-1.0)), ..DiplexerRating::default() };
    assert!(combiner.draw(&mut dice()).is_err());
    let combiner = DiplexerRating { isolation: Some(Decibels(f64::NAN)), ..DiplexerRating::default() };
    assert!(combiner.draw(&mut dice()).is_err());
}

#[test]
fn a_ninth_leg_on_an_eight_way_is_refused() {
    let mut network = Network::new();
    let part = network.add(splitter(8));
    for port in 0..=9 {
        network.outlet(part, port);
    }
    let error = network.tree(part).unwrap_err();
    assert_eq!(error, CoaxError::NoSuchPort { part: 0, port: 9, ports: 9 });
    assert_eq!(
        error.to_string(),
        "part 0 has no port 9: it has 9 ports, counted from 0 (port 0 faces the street)"
    );
}

#[test]
fn a_loop_is_refused() {
    let mut network = Network::new();
    let (top, a, b) = (network.add(splitter(3)), network.add(splitter(2)), network.add(cable(5.0)));
    network.outlet(top, 0);
    network.outlet(top, 3);
    network.join(top, 1, a, 0);
    network.join(a, 1, b, 0);
    network.join(b, 1, top, 2);
    network.outlet(a, 2);
    assert!(matches!(network.tree(top).unwrap_err(), CoaxError::Loop { .. }));

    let mut on_itself = Network::new();
    let part = on_itself.add(splitter(3));
    on_itself.outlet(part, 0);
    on_itself.outlet(part, 1);
    on_itself.join(part, 2, part, 3);
    assert_eq!(on_itself.tree(part).unwrap_err(), CoaxError::Loop { part: 0 });
}

#[test]
fn ports_must_be_spoken_for_exactly_once_and_all_parts_hang_together() {
    let mut network = Network::new();
    let part = network.add(cable(5.0));
    network.outlet(part, 0);
    assert_eq!(network.tree(part).unwrap_err(), CoaxError::PortLeftUndefined { part: 0, port: 1 });
    network.end(part, 1, End::Matched);
    assert!(network.tree(part).is_ok());
    assert_eq!(network.tree(PartIndex(7)).unwrap_err(), CoaxError::NoSuchPart { part: 7, parts: 1 });
    let mut twice = network.clone();
    twice.outlet(part, 1);
    assert_eq!(twice.tree(part).unwrap_err(), CoaxError::PortUsedTwice { part: 0, port: 1 });
    let mut stray = network.clone();
    stray.join(part, 0, PartIndex(4), 0);
    assert!(matches!(stray.tree(part).unwrap_err(), CoaxError::PortUsedTwice { .. }));
    let mut apart = network.clone();
    let other = apart.add(cable(1.0));
    apart.end(other, 0, End::Open);
    apart.end(other, 1, End::Open);
    assert_eq!(apart.tree(part).unwrap_err(), CoaxError::NotConnected { part: 1, root: 0 });
    let mut mute = Network::new();
    let part = mute.add(cable(1.0));
    mute.end(part, 0, End::Open);
    mute.end(part, 1, End::Reflection(Complex64::new(f64::NAN, 0.0)));
    assert_eq!(mute.tree(part).unwrap_err(), CoaxError::BadReflection { part: 0, port: 1 });
    let mut quiet = Network::new();
    let part = quiet.add(cable(1.0));
    quiet.end(part, 0, End::Open);
    quiet.end(part, 1, End::Open);
    assert_eq!(quiet.tree(part).unwrap_err(), CoaxError::NoOutlet);
}

#[test]
fn outlets_that_are_not_there_are_refused_and_pairs_not_asked_for_are_absent() {
    let mut network = Network::new();
    let part = network.add(splitter(2));
    let outlets: Vec<_> = (0..3).map(|port| network.outlet(part, port)).collect();
    let sampled = network.tree(part).unwrap().sample(&grid()).unwrap();
    let error = sampled.solve(Wanted::Pairs(&[(outlets[0], OutletIndex(3))])).unwrap_err();
    assert_eq!(error, CoaxError::NoSuchOutlet { outlet: 3, outlets: 3 });
    let solution = sampled.solve(Wanted::Pairs(&[(outlets[0], outlets[1])])).unwrap();
    assert!(solution.transfer(outlets[0], outlets[1]).is_some());
    assert!(solution.transfer(outlets[1], outlets[0]).is_some());
    assert!(solution.transfer(outlets[0], outlets[2]).is_none());
    assert!(solution.reflection(outlets[0]).is_none());
    assert!(solution.loss(outlets[0], outlets[2]).is_empty());
}

#[test]
fn waves_that_never_die_away_are_reported_and_near_ones_are_solved() {
    // Two shorted arms on a bare tee: what goes between them is lost nowhere.
    let ring = |reflection: f64| {
        let mut network = Network::new();
        let part = network.add(Model::Junction(Junction::new(4).unwrap()));
        let outlet = network.outlet(part, 0);
        network.outlet(part, 1);
        network.end(part, 2, End::Reflection(Complex64::new(reflection, 0.0)));
        network.end(part, 3, End::Reflection(Complex64::new(reflection, 0.0)));
        let solution = network.tree(part).unwrap().sample(&grid()).unwrap().solve(Wanted::All);
        solution.map(|solution| solution.reflection(outlet).unwrap()[0])
    };
    assert_eq!(ring(-1.0).unwrap_err(), CoaxError::Resonance { part: 0, megahertz: 1125.0 });
    // Nearly a short: all comes back, turned over. The other outlet then sees nothing either.
    assert!((ring(-0.999_999_9).unwrap() + 1.0).norm() < 1e-6);
}

#[test]
fn more_than_fits_in_memory_is_refused() {
    let mut network = Network::new();
    let model = Arc::new(splitter(60));
    let mut last = None;
    let mut root = None;
    for _ in 0..40 {
        let part = network.add_shared(Arc::clone(&model));
        if let Some(above) = last {
            network.join(above, 1, part, 0);
        } else {
            network.outlet(part, 0);
            root = Some(part);
        }
        for port in 2..=60 {
            network.outlet(part, port);
        }
        last = Some(part);
    }
    network.outlet(last.unwrap(), 1);
    let tree = network.tree(root.unwrap()).unwrap();
    let wide = FrequencyGrid::even(Megahertz(5.0), Megahertz(2000.0), 2_000).unwrap();
    assert!(matches!(tree.sample(&wide).unwrap().solve(Wanted::All), Err(CoaxError::TooMuchAsked { .. })));
    let wider = FrequencyGrid::even(Megahertz(5.0), Megahertz(2000.0), 100_000).unwrap();
    assert!(matches!(tree.sample(&wider), Err(CoaxError::TooMuchAsked { .. })));
}

#[test]
fn a_chain_of_ten_thousand_parts_neither_overflows_nor_hangs() {
    let mut network = Network::new();
    let (run, joint) = (Arc::new(cable(0.01)), Arc::new(Model::Link(Link::ideal())));
    let first = network.add_shared(Arc::clone(&run));
    let near = network.outlet(first, 0);
    let mut last = first;
    for k in 1..10_000 {
        let part = network.add_shared(Arc::clone(if k % 2 == 0 { &run } else { &joint }));
        network.join(last, 1, part, 0);
        last = part;
    }
    let far = network.outlet(last, 1);
    let Model::Cable(piece) = &*run else { panic!() };
    // From the near end, the middle and the far end.
    for root in [0, 5_000, 9_999] {
        let solution =
            network.tree(PartIndex(root)).unwrap().sample(&grid()).unwrap().solve(Wanted::All).unwrap();
        let loss = solution.loss(far, near);
        for (loss, &frequency) in loss.iter().zip(grid().frequencies()) {
            assert!((loss.value() - 5_000.0 * piece.loss(frequency).value()).abs() < 1e-8);
        }
    }
}

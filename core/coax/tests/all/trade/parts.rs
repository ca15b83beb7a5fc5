//! Each kind of part beyond cables, splitters and entry filters, by itself.

use coax::model::{Link, Model};
use coax::rated::{
    AmplifierRating, BandFilterRating, ByPass, CableRating, Condition, DiplexerRating, FilterRating,
    JointRating, PadRating, PassOnRating, TapRating,
};
use coax::{Decibels, Megahertz, Network, Span, Wanted};

use super::{DRAWS, dice, moca, part_loss, percentile, run};

/// Return bands and where the forward band begins above them: 42/54, 65/85, 85/108, 204/258 MHz (DOCSIS 3.1, from memory).
#[test]
fn each_split_returns_below_and_amplifies_above() {
    for (split, forward, top) in
        [(42.0, 54.0, 1002.0), (65.0, 85.0, 1002.0), (85.0, 108.0, 1218.0), (204.0, 258.0, 1218.0)]
    {
        for outputs in [1, 2, 4, 8] {
            for modem_port in [None, Some(Span::exact(3.5))] {
                let rating = AmplifierRating {
                    outputs: vec![Span::exact(6.0); outputs],
                    modem_port,
                    split: Megahertz(split),
                    forward_top: Megahertz(top),
                    return_gain: Span::exact(0.0),
                    bypass: ByPass::None,
                };
                // Echoes in the housing move single frequencies; of all draws together the gain is what is stated.
                let mut gains = Vec::new();
                for draw in 0..20 {
                    let part = rating.draw(&mut dice(draw, 6)).unwrap();
                    assert_eq!(part.ports(), 1 + outputs + usize::from(modem_port.is_some()));
                    for output in 1..=outputs {
                        for f in [5.0, split * 0.6, split] {
                            let (up, down) = (part_loss(&part, 0, output, f), part_loss(&part, output, 0, f));
                            assert!(up.abs() < 2.5, "split {split}: {up} dB up at {f} MHz");
                            assert!(down > 25.0, "split {split}: {down} dB down at {f} MHz");
                        }
                        for f in [forward, forward * 1.5, top * 0.9, top] {
                            let (up, down) = (part_loss(&part, 0, output, f), part_loss(&part, output, 0, f));
                            gains.push(-down);
                            assert!((down + 6.0).abs() < 3.0, "split {split}: {down} dB down at {f} MHz");
                            assert!(up > 25.0, "split {split}: {up} dB up at {f} MHz");
                        }
                    }
                    if modem_port.is_some() {
                        // Both ways and in every band, as far as the housing's splitter goes.
                        for f in [5.0, split, forward, top, 1400.0] {
                            for (to, from) in [(0, outputs + 1), (outputs + 1, 0)] {
                                let loss = part_loss(&part, to, from, f);
                                assert!((loss - 3.5).abs() < 1.5, "modem port: {loss} dB at {f} MHz");
                            }
                        }
                    }
                }
                let mean = gains.iter().sum::<f64>() / gains.len() as f64;
                let far = gains.iter().filter(|gain| (*gain - 6.0).abs() >= 2.5).count();
                assert!((mean - 6.0).abs() < 0.5, "split {split}: {mean} dB on average");
                assert!(far * 50 <= gains.len(), "split {split}: {far} of {} lie 2.5 dB off", gains.len());
            }
        }
    }
}

fn tap(directivity: Option<f64>, top: f64) -> TapRating {
    TapRating {
        through: None,
        taps: vec![Span::exact(9.0)],
        band: Some((Megahertz(5.0), Megahertz(top))),
        isolation: None,
        directivity: directivity.map(Decibels),
        return_loss: None,
        for_moca: None,
    }
}

#[test]
fn a_tap_passes_most_on_and_above_its_band_loses_more_without_blocking() {
    for draw in 0..DRAWS {
        let part = tap(None, 1002.0).draw(&mut dice(draw, 7)).unwrap();
        assert_eq!(part.ports(), 3);
        assert!((part_loss(&part, 2, 0, 800.0) - 9.0).abs() < 1e-9);
        // 9 dB to the tap leave 0.58 dB at best (conservation of energy); 0.3 to 1.2 dB more in practice.
        assert!((0.85..=1.85).contains(&part_loss(&part, 1, 0, 800.0)));
        // The through output is heard less than the input, by 8 to 20 dB.
        let directivity = part_loss(&part, 2, 1, 800.0) - 9.0;
        assert!((7.0..21.0).contains(&directivity), "{directivity}");
        let wide = tap(None, 2300.0).draw(&mut dice(draw, 7)).unwrap();
        for port in [1, 2] {
            let more = part_loss(&part, port, 0, 1400.0) - part_loss(&wide, port, 0, 1400.0);
            assert!((0.9..27.0).contains(&more), "{more} dB more at port {port}");
        }
    }
}

#[test]
fn a_tap_of_eight_ports_keeps_its_label_and_its_directivity() {
    // Echoes between its coupler and its splitter move single ports; on average the label holds.
    let mut inward = Vec::new();
    for draw in 0..DRAWS {
        let rating = TapRating { taps: vec![Span::exact(20.0); 8], ..tap(Some(14.0), 1218.0) };
        let part = rating.draw(&mut dice(draw, 8)).unwrap();
        assert_eq!(part.ports(), 10);
        let mut outward = 0.0;
        for port in 2..10 {
            inward.push(part_loss(&part, port, 0, 600.0));
            outward += part_loss(&part, port, 1, 600.0) / 8.0;
        }
        assert!((outward - 34.0).abs() < 1.5, "{outward}");
        let stated = TapRating { isolation: Some(Decibels(30.0)), ..rating };
        let part = stated.draw(&mut dice(draw, 8)).unwrap();
        assert!((part_loss(&part, 2, 1, 600.0) - 30.0).abs() < 1.5);
    }
    assert!(inward.iter().all(|loss| (loss - 20.0).abs() < 1.5));
    assert!((inward.iter().sum::<f64>() / inward.len() as f64 - 20.0).abs() < 0.2);
}

#[test]
fn a_high_pass_filter_passes_moca_and_sends_tv_and_modem_back() {
    for draw in 0..DRAWS {
        let part = FilterRating::high_pass(None, None).draw(&mut dice(draw, 9)).unwrap();
        for f in [1125.0, 1400.0, 1675.0] {
            assert!(part_loss(&part, 1, 0, f) < 3.5);
        }
        for f in [5.0, 300.0, 1002.0] {
            assert!(part_loss(&part, 1, 0, f) >= 30.0 - 1e-9);
            assert!(part_loss(&part, 0, 0, f) < 2.5, "it reflects");
        }
    }
}

#[test]
fn a_band_filter_passes_its_bands_and_sends_the_rest_back() {
    let stop = BandFilterRating::band_stop(Megahertz(1002.0), Megahertz(1700.0));
    let pass = BandFilterRating::band_pass(Megahertz(470.0), Megahertz(694.0));
    for draw in 0..DRAWS {
        let stop = stop.draw(&mut dice(draw, 10)).unwrap();
        let pass = pass.draw(&mut dice(draw, 10)).unwrap();
        for f in [5.0, 800.0, 1002.0, 1700.0, 2150.0] {
            assert!(part_loss(&stop, 1, 0, f) < 3.5, "{} dB at {f} MHz", part_loss(&stop, 1, 0, f));
        }
        for f in [470.0, 580.0, 694.0] {
            assert!(part_loss(&pass, 1, 0, f) < 3.5);
        }
        for (part, f) in [(&stop, 1350.0), (&pass, 54.0), (&pass, 340.0), (&pass, 900.0), (&pass, 1400.0)] {
            assert!(part_loss(part, 1, 0, f) >= 30.0, "{} dB at {f} MHz", part_loss(part, 1, 0, f));
            assert!(part_loss(part, 0, 0, f) < 2.5, "it reflects");
        }
    }
}

#[test]
fn a_satellite_combiner_keeps_two_bands_apart_on_one_cable() {
    for draw in 0..DRAWS {
        for low_top in [806.0, 1002.0] {
            let rating = DiplexerRating { low_top: Megahertz(low_top), ..DiplexerRating::default() };
            let part = rating.draw(&mut dice(draw, 11)).unwrap();
            assert_eq!(part.ports(), 3);
            for f in [5.0, 54.0, 600.0, 780.0] {
                assert!(part_loss(&part, 1, 0, f) < 2.5, "{} dB at {f} MHz", part_loss(&part, 1, 0, f));
                assert!(part_loss(&part, 2, 0, f) > 18.0);
            }
            for f in [1100.0, 1400.0, 1675.0, 2150.0] {
                assert!(part_loss(&part, 2, 0, f) < 3.5, "{} dB at {f} MHz", part_loss(&part, 2, 0, f));
                assert!(part_loss(&part, 1, 0, f) > 18.0);
                assert!(part_loss(&part, 1, 1, f) < 4.0, "what is not the port's comes back");
            }
            for f in [5.0, 600.0, 1400.0, 2150.0] {
                assert!(part_loss(&part, 1, 2, f) > 15.0, "from one service to the other");
                assert!(part_loss(&part, 0, 0, f) > 7.0, "matched in both bands");
            }
        }
    }
}

#[test]
fn a_pad_loses_what_it_says_both_ways_and_an_inserter_hardly_anything() {
    for draw in 0..DRAWS {
        let pad = PadRating { loss: Span::exact(6.0), return_loss: Some(Decibels(20.0)) };
        let pad = pad.draw(&mut dice(draw, 12)).unwrap();
        let inserter = JointRating::power_inserter(Condition::Sound).draw(&mut dice(draw, 13)).unwrap();
        for f in [5.0, 600.0, 1675.0] {
            assert!((part_loss(&pad, 1, 0, f) - 6.0).abs() < 1e-9);
            assert!((part_loss(&pad, 0, 1, f) - 6.0).abs() < 1e-9);
            assert!((part_loss(&pad, 0, 0, f) - 20.0).abs() < 1e-9);
            assert!((0.3..=1.65).contains(&part_loss(&inserter, 1, 0, f)));
        }
    }
}

#[test]
fn a_device_that_passes_the_cable_on_costs_a_split() {
    for draw in 0..DRAWS {
        let band = Some((Megahertz(5.0), Megahertz(1675.0)));
        let part = PassOnRating { through: None, device: None, band, for_moca: None }
            .draw(&mut dice(draw, 14))
            .unwrap();
        assert_eq!(part.ports(), 3);
        // Two sockets share at most what comes in: 3.01 dB each if alike.
        let (through, device) = (part_loss(&part, 1, 0, 700.0), part_loss(&part, 2, 0, 700.0));
        assert!(Decibels(-through).power() + Decibels(-device).power() <= 1.0 + 1e-9);
        assert!(through < 8.0 && device < 8.0);
    }
}

#[test]
fn a_bad_joint_degrades_a_run_and_ripples_but_does_not_kill_it() {
    let bad = CableRating { connectors: [Condition::Sound, Condition::BadJoint], ..run(12.0) };
    let mut extra = Vec::new();
    for draw in 0..DRAWS {
        let sound = run(12.0).draw(&mut dice(draw, 15)).unwrap();
        let part = bad.draw(&mut dice(draw, 15)).unwrap();
        for f in [600.0, 1400.0] {
            extra.push(part_loss(&part, 1, 0, f) - part_loss(&sound, 1, 0, f));
        }
        let echo = part_loss(&part, 0, 0, 1400.0).min(part_loss(&part, 1, 1, 1400.0));
        assert!((2.0..13.0).contains(&echo), "{echo} dB return loss");
        // Against another echo on the run it ripples: an open stub's end, here a return loss of 6 dB.
        let mut network = Network::new();
        let cable = network.add(part);
        let end = network.add(Model::Link(Link::reflecting(Decibels(6.0)).unwrap()));
        network.join(cable, 1, end, 0);
        let (near, far) = (network.outlet(cable, 0), network.outlet(end, 1));
        let solution = network.tree(cable).unwrap().sample(&moca()).unwrap().solve(Wanted::All).unwrap();
        let loss = solution.loss(far, near);
        let least = loss.iter().map(|loss| loss.value()).fold(f64::INFINITY, f64::min);
        let most = loss.iter().map(|loss| loss.value()).fold(0.0, f64::max);
        assert!(most - least > 0.1, "ripple of {} dB", most - least);
    }
    // Degraded by 1 to 15 dB and a little by what comes back; never dead.
    assert!(percentile(extra.clone(), 0.0) > 0.8 && percentile(extra.clone(), 1.0) < 19.0);
    assert!((3.0..9.0).contains(&percentile(extra, 0.5)));
}

/// Each bad connector of a run loses what it loses: two lose more than one, and where one is renewed the other's loss stays.
#[test]
fn two_bad_connectors_on_a_run_count_as_two() {
    let of = |connectors| CableRating { connectors, ..run(12.0) };
    let loss = |connectors, draw| part_loss(&of(connectors).draw(&mut dice(draw, 16)).unwrap(), 1, 0, 700.0);
    let bad = Condition::Corroded;
    let mut extra = Vec::new();
    for draw in 0..DRAWS {
        let none = loss([Condition::Sound; 2], draw);
        let (near, far) = (loss([bad, Condition::Sound], draw), loss([Condition::Sound, bad], draw));
        let both = loss([bad, bad], draw);
        assert!(near > none && far > none && both > near && both > far, "{none} {near} {far} {both}");
        extra.push(both - none);
    }
    // Twice 0.5 to 12 dB, likely 3 (common practice, no source): the median of a triangle of that shape is 4.8, of two
    // added 10.1 (200,000 draws of Python's `random.triangular`), less the 0.1 dB of the sound connectors.
    let median = percentile(extra.clone(), 0.5);
    assert!((9.4..10.8).contains(&median), "{median}");
    assert!(percentile(extra.clone(), 0.0) > 0.8 && percentile(extra, 1.0) < 24.0);
}

/// A bad joint sends waves back at the end where it is.
#[test]
fn a_bad_joint_is_heard_at_its_own_end() {
    let [sound, bad] = [Condition::Sound, Condition::BadJoint];
    for draw in 0..DRAWS {
        let of = |connectors| CableRating { connectors, ..run(40.0) }.draw(&mut dice(draw, 17)).unwrap();
        let back = |part: &Model, port| part_loss(part, port, port, 1400.0);
        let (near, far) = (of([bad, sound]), of([sound, bad]));
        assert!(back(&near, 0) < back(&near, 1) && back(&far, 1) < back(&far, 0));
    }
}

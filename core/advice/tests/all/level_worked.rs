//! Levels against the regulation's own figures and worked examples of the trade. Those with a published value are rows of
//! the table of such checks: see `check.rs`.
#![expect(clippy::expect_used, clippy::unwrap_used, reason = "a failed test is what is wanted")]

#[path = "../../../coax/tests/all/published/check.rs"]
#[expect(dead_code, reason = "levels need some of the ways to mark a row")]
mod check;

use advice::level::{
    ANALOG_TV, Fit, Levels, MODEM_SENDS, Options, change, least_visual_millivolts,
    least_visual_millivolts_at_drop, level_of_millivolts, levels, told,
};
use check::{Check, check, check_between};
use house::record::{CableKind, EntryKind, EntryState, Plugged, ReadingKind, ServiceKind, Survey};
use houses::House;

fn found(survey: &Survey) -> Levels {
    levels(survey, &Options::default()).expect("a sound survey")
}

fn near(found: f64, wanted: f64, within: f64) {
    assert!((found - wanted).abs() <= within, "{found} is not {wanted} within {within}");
}

/// 47 CFR 76.605(a)(3): sqrt(0.0133 Z) millivolts at the terminal, 2 sqrt(0.00662 Z) at the end of a 100 ft drop.
/// Check values worked out from that text: at 75 ohm 0.99875 mV (the rule says 1 mV, 0 dBmV) and 1.40926 mV (1.41 mV,
/// +3 dBmV: 2.98); at 300 ohm 1.9975 mV, +6.01 dBmV.
#[test]
fn the_regulation_gives_one_millivolt_at_75_ohm() {
    let rule = "47 CFR 76.605(a)(3)";
    check(rule, "at 75 ohm sqrt(0.0133 Z), mV", 0.998_75, 5e-6, least_visual_millivolts(75.0));
    check(rule, "the same as the rule words it, mV", 1.0, 0.005, least_visual_millivolts(75.0));
    check(
        rule,
        "after the drop 2 sqrt(0.00662 Z), mV",
        1.409_26,
        5e-6,
        least_visual_millivolts_at_drop(75.0),
    );
    check(
        rule,
        "the same as the rule words it, after the drop, mV",
        1.41,
        0.005,
        least_visual_millivolts_at_drop(75.0),
    );
    check(rule, "at 300 ohm, mV", 1.9975, 5e-5, least_visual_millivolts(300.0));
    let at_300 = level_of_millivolts(least_visual_millivolts(300.0));
    check(rule, "at 300 ohm, dBmV", 6.01, 0.005, at_300);
    check(rule, "1.41 mV (+3 dBmV in the rule), dBmV", 2.98, 0.005, level_of_millivolts(1.41));
    check(rule, "1 mV, dBmV", 0.0, 1e-12, level_of_millivolts(1.0));
    Check::Copied.about(
        rule,
        "least level of analog TV at a set, dBmV",
        0.0,
        0.0,
        ANALOG_TV.low_dbmv.expect("a rule"),
    );
}

/// Sound parts and a matched load leave a ripple of some tenths of a decibel: two mismatches of 18 and 20 dB return
/// loss give at most 0.12 dB (20 log10(1 + 10^(-38/20))), and there are several.
const RIPPLE_DB: f64 = 0.8;

/// A 16-way splitter before a TV: a tester manual's example (from memory) has +10 dBmV in and 16 dB split, so -6 dBmV before the
/// loss of cable. No length of cable is in the example; the runs here are 0.01 m, and a wall plate (0.3 dB, common
/// practice) and an entry's joint (0.2 dB, common practice) are in ours.
#[test]
fn sixteen_ways_take_plus_ten_to_minus_six() {
    let house = House::new()
        .entry("E1", EntryKind::Cable)
        .level(603.0, 10.0)
        .splitter("S1", 16)
        .made_for(5.0, 1002.0)
        .with(|splitter| splitter.rating.leg_losses_db = vec![16.0; 16])
        .from("E1", 1)
        .over(CableKind::Six, 0.01)
        .outlet("O1", "Den")
        .from("S1", 1)
        .over(CableKind::Six, 0.01)
        .plugged(&[Plugged::Tv]);
    let house = (2..=16).fold(house.at("S1"), House::cap);
    let survey = house.survey();
    let found = found(&survey);
    let at = found.outlets[0].down.iter().find(|down| (down.mhz - 603.0).abs() < 1e-9).expect("looked at");
    let level = at.level.expect("the entry was measured").likely;
    let manual = "from memory: a tester's manual, section on amplifiers";
    check(manual, "in a house, without its joint and plate of 0.5 dB, dBmV", -6.0, RIPPLE_DB, level + 0.5);
}

/// The outlet method of the trade (an installers' institute, broadband-pbimedia.com, April 1999): level at the outlet =
/// level in, less cable loss, less splitter loss, at the highest channel. Here 100 ft of 6-series cable at 950 MHz, 6.4
/// dB (from memory: a maker's article on 6-series loss), and a 4-way splitter of 7 dB (skywarnforum.org): +15 in
/// leaves +1.6, and the picture passes the 0 dBmV rule.
#[test]
fn the_outlet_method_holds() {
    let house = House::new()
        .entry("E1", EntryKind::Cable)
        .level(950.0, 15.0)
        .splitter("S1", 4)
        .made_for(5.0, 1002.0)
        .with(|splitter| splitter.rating.leg_losses_db = vec![7.0; 4])
        .from("E1", 1)
        .over(CableKind::Six, 0.01)
        .outlet("O1", "Den")
        .from("S1", 1)
        .over(CableKind::Six, 30.48)
        .plugged(&[Plugged::Tv]);
    let survey = (2..=4).fold(house.at("S1"), House::cap).survey();
    let found = found(&survey);
    let at = found.outlets[0].down.iter().find(|down| (down.mhz - 950.0).abs() < 1e-9).expect("looked at");
    // Joint, plate and connectors of ours: 0.6 dB, common practice.
    let level = at.level.expect("measured").likely;
    let method = "the outlet method of an installers' institute (broadband-pbimedia.com, April 1999)";
    let expected = 1.6;
    check(method, "+15 dBmV less 100 ft of 6 series and a 4-way, dBmV", expected, RIPPLE_DB, level + 0.6);
    check_between(method, "at the highest channel, dBmV", 0.0, f64::INFINITY, level);
}

/// A house with a TV and a modem on one splitter.
fn two(entry: EntryKind) -> House {
    House::new()
        .entry("E1", entry)
        .splitter("S1", 2)
        .made_for(5.0, 1002.0)
        .with(|splitter| splitter.rating.leg_losses_db = vec![3.5; 2])
        .from("E1", 1)
        .outlet("O1", "Den")
        .from("S1", 1)
        .over(CableKind::Six, 10.0)
        .plugged(&[Plugged::Tv])
        .outlet("O2", "Study")
        .from("S1", 2)
        .over(CableKind::Six, 10.0)
        .plugged(&[Plugged::Modem])
}

#[test]
fn without_a_reading_at_the_entry_no_level_is_claimed() {
    let found = found(&two(EntryKind::Cable).survey());
    assert_eq!(found.outlets.len(), 2);
    for outlet in &found.outlets {
        assert!(outlet.down.iter().all(|down| down.level.is_none() && down.gain.likely < -3.0));
    }
}

#[test]
fn between_two_readings_the_level_is_on_their_line_and_beyond_them_unknown() {
    let survey = two(EntryKind::Cable).at("E1").level(100.0, 10.0).level(900.0, 2.0).survey();
    let found = found(&survey);
    let tv = found.of(houses::part_id(&survey, "O1"), ServiceKind::CableTv).expect("a TV");
    let middle = tv.down.iter().find(|down| (500.0..600.0).contains(&down.mhz)).expect("the middle");
    let incoming = 10.0 - 8.0 * (middle.mhz - 100.0) / 800.0;
    near(middle.level.expect("between").likely - middle.gain.likely, incoming, 1e-9);
    assert!(
        tv.down.iter().filter(|down| !(100.0..=900.0).contains(&down.mhz)).all(|down| down.level.is_none())
    );
}

#[test]
fn a_modem_has_a_way_back_and_a_tv_has_none() {
    let survey = two(EntryKind::Cable).at("O2").reads(ReadingKind::ModemSends { dbmv: 44.0 }).survey();
    let found = found(&survey);
    let tv = found.of(houses::part_id(&survey, "O1"), ServiceKind::CableTv).expect("a TV");
    let modem = found.of(houses::part_id(&survey, "O2"), ServiceKind::CableInternet).expect("a modem");
    assert!(tv.up.is_empty());
    assert_eq!(modem.up.len(), 2);
    for up in &modem.up {
        assert_eq!((up.sends, up.window), (Some(44.0), MODEM_SENDS));
        // A passive house is the same both ways: no less than the splitter's 3.5 dB is lost.
        assert!(up.gain.likely < -3.3 && up.gain.likely > -6.0, "{:?}", up.gain);
    }
}

/// What a modem receives may be -15 to +15 dBmV, what it sends 50 dBmV or less (the sources stand with the windows):
/// a reading just beyond either edge is outside, one just within is not, and the worst of both ways counts.
#[test]
fn a_measured_level_is_held_against_its_window() {
    let fits = |received: f64, sends: f64| {
        let house = two(EntryKind::Cable).at("O2").level(603.0, received);
        let survey = house.reads(ReadingKind::ModemSends { dbmv: sends }).survey();
        let modem = houses::part_id(&survey, "O2");
        found(&survey).of(modem, ServiceKind::CableInternet).expect("a modem").fits()
    };
    // Installers aim at -7 to +7 dBmV (common practice, no source): beyond it the margin is gone.
    assert_eq!(fits(-14.9, 44.0), Fit::Marginal);
    assert_eq!(fits(14.9, 49.9), Fit::Marginal);
    assert_eq!(fits(-6.9, 44.0), Fit::Inside);
    assert_eq!(fits(6.9, 49.9), Fit::Inside);
    assert_eq!(fits(-15.1, 44.0), Fit::Outside);
    assert_eq!(fits(15.1, 44.0), Fit::Outside);
    assert_eq!(fits(0.0, 50.1), Fit::Outside);
}

/// A level worked out is marginal where its range crosses the edge. A run of 30 m that somebody paced and one
/// splitter lie between, and the reading at the entry is chosen so that the likely level is just above the edge.
#[test]
fn a_level_on_the_edge_is_marginal_and_none_without_a_reading() {
    let house = || two(EntryKind::Cable).at("O1");
    let tv = |survey: &Survey| {
        found(survey).of(houses::part_id(survey, "O1"), ServiceKind::CableTv).expect("a TV").clone()
    };
    let plain = house().survey();
    assert_eq!(tv(&plain).fits(), Fit::NotKnown);
    let at_603 = |incoming: f64| tv(&house().at("E1").level(603.0, incoming).survey());
    let level = |incoming: f64| {
        let found = at_603(incoming);
        let at = found.down.iter().find(|down| (down.mhz - 603.0).abs() < 1e-9).expect("looked at");
        at.level.expect("the entry was measured")
    };
    let span = level(0.0);
    assert!(span.low < span.likely, "nothing is unknown in {span:?}");
    // Digital TV needs -12 dBmV (a guide figure, from memory).
    let edge = -12.0 - span.likely;
    assert_eq!(at_603(edge + 0.01).fits(), Fit::Marginal);
    // Levels are shown in tenths: what reads like the edge is not outside.
    assert_eq!(at_603(edge - 0.04).fits(), Fit::Marginal);
    assert_eq!(at_603(edge - 0.06).fits(), Fit::Outside);
    assert_eq!(at_603(edge + 10.0).fits(), Fit::Inside);
}

/// Where nothing was measured that is said, no window is held against it, and the change is told all the same: one
/// 2-way splitter taken away is 3.5 dB more (skywarnforum.org).
#[test]
fn the_change_is_told_where_the_level_is_not_known() {
    let before = two(EntryKind::Cable).survey();
    let after = two(EntryKind::Cable).without("O1").without("S1").survey();
    let changes = change(&before, &after, &Options::default()).expect("two sound surveys");
    let rows = told(&before, &found(&before), &changes);
    let modem = rows.iter().find(|row| row.service == ServiceKind::CableInternet).expect("a modem");
    assert_eq!(modem.now.iter().map(|phrase| &*phrase.id).collect::<Vec<_>>(), ["levels-not-known"]);
    assert_eq!(modem.fits, Fit::NotKnown);
    assert_eq!(modem.change.as_ref().map(|phrase| &*phrase.id), Some("levels-then-more"));
    let tv = rows.iter().find(|row| row.service == ServiceKind::CableTv).expect("a TV");
    assert_eq!(tv.change.as_ref().map(|phrase| &*phrase.id), Some("levels-then-nothing"));
}

#[test]
fn an_entry_that_is_cut_off_brings_nothing() {
    let survey = two(EntryKind::Cable).at("E1").with(|entry| entry.entry_state = EntryState::CutOff).survey();
    assert!(found(&survey).outlets.is_empty());
}

#[test]
fn a_service_is_what_comes_in_at_the_entry() {
    let services =
        |kind| found(&two(kind).survey()).outlets.iter().map(|outlet| outlet.service).collect::<Vec<_>>();
    assert_eq!(services(EntryKind::Antenna), [ServiceKind::AntennaTv]);
    assert_eq!(services(EntryKind::Cable), [ServiceKind::CableTv, ServiceKind::CableInternet]);
}

/// One 2-way splitter (3.5 dB a leg: skywarnforum.org) more on the way to the modem costs what it says, both
/// ways, and the TV nothing that could be told from the ripple.
#[test]
fn one_more_splitter_costs_its_leg() {
    let before = two(EntryKind::Cable).survey();
    let after = two(EntryKind::Cable)
        .splitter("S2", 2)
        .made_for(5.0, 1002.0)
        .with(|splitter| splitter.rating.leg_losses_db = vec![3.5; 2])
        .cap(2)
        .from("S1", 2)
        .over(CableKind::Six, 0.01)
        .at("O2")
        .from("S2", 1)
        .over(CableKind::Six, 10.0)
        .survey();
    let changes = change(&before, &after, &Options::default()).expect("two sound surveys");
    for found in changes {
        let modem = found.service == ServiceKind::CableInternet;
        let expected = if modem { -3.5 } else { 0.0 };
        for band in found.down.iter().chain(&found.up) {
            near(band.db.likely, expected, RIPPLE_DB);
        }
        assert_eq!(found.up.len(), if modem { 2 } else { 0 });
    }
}

/// An amplifier lifts what goes to the house by its gain and, with a passive return, leaves the way back alone.
#[test]
fn an_amplifier_lifts_the_forward_band_alone() {
    let before = two(EntryKind::Cable).survey();
    let after = two(EntryKind::Cable)
        .amplifier("A1", 1)
        .with(|amplifier| {
            amplifier.rating.gain_db = Some(12.0);
            amplifier.rating.return_gain_db = Some(0.0);
            amplifier.rating.return_high_mhz = Some(42.0);
        })
        .from("E1", 1)
        .over(CableKind::Six, 0.01)
        .at("S1")
        .from("A1", 1)
        .survey();
    let changes = change(&before, &after, &Options::default()).expect("two sound surveys");
    let tv = changes.iter().find(|change| change.service == ServiceKind::CableTv).expect("a TV");
    // In the middle of its band; at its edges the filters inside take their share.
    near(tv.down[1].db.likely, 12.0, 1.5);
    let modem = changes.iter().find(|change| change.service == ServiceKind::CableInternet).expect("a modem");
    near(modem.up[0].db.likely, 0.0, 1.5);
}

#[test]
fn an_outlet_taken_off_the_entry_is_cut_off() {
    let before = two(EntryKind::Cable).survey();
    let after = two(EntryKind::Cable).at("O1").fed_by_nothing().survey();
    let changes = change(&before, &after, &Options::default()).expect("two sound surveys");
    let cut: Vec<_> = changes.iter().map(|change| (change.service, change.cut_off)).collect();
    assert_eq!(cut, [(ServiceKind::CableTv, true), (ServiceKind::CableInternet, false)]);
    assert!(changes[0].worst_db().is_infinite());
}

#[test]
fn the_same_seed_gives_the_same_levels() {
    let survey = two(EntryKind::Cable).survey();
    assert_eq!(found(&survey), found(&survey));
}

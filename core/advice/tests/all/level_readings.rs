//! A level measured anywhere on a tree tells what comes in, and so what gets to every other place on it.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::level::{DownLevel, Options, levels};
use house::record::{CableKind, EntryKind, PartKind, Plugged, Reading, ReadingKind, ServiceKind, Survey};
use houses::{House, part_id};

use super::level_wiring::three;

/// Sound parts and a matched load leave a ripple of some tenths of a decibel (see `level_worked.rs`).
const RIPPLE_DB: f64 = 0.8;

/// A 10 m run of 6-series cable at 603 MHz, dB: 0.20063 sqrt(f) + 0.000245 f a 100 ft, a fit (docs/method.md, section 1).
const TEN_METRES_DB: f64 = 1.66;

/// A wall plate and two sound connectors, dB (common practice, no source).
const PLATE_DB: f64 = 0.4;

/// An entry's joint, a ground block, and the connectors of the jumpers between them, dB (common practice, no source).
const IN_FRONT_DB: f64 = 0.6;

fn near(found: f64, wanted: f64) {
    assert!((found - wanted).abs() <= RIPPLE_DB, "{found} is not {wanted} within {RIPPLE_DB}");
}

/// A TV in the den and an empty outlet in the hall, both 10 m behind one 2-way splitter of 3.5 dB a leg.
fn house() -> House {
    House::new()
        .entry("E1", EntryKind::Cable)
        .part("G1", PartKind::GroundBlock)
        .from("E1", 1)
        .over(CableKind::Six, 0.01)
        .splitter("S1", 2)
        .made_for(5.0, 1002.0)
        .with(|splitter| splitter.rating.leg_losses_db = vec![3.5; 2])
        .from("G1", 1)
        .over(CableKind::Six, 0.01)
        .outlet("O1", "Den")
        .from("S1", 1)
        .over(CableKind::Six, 10.0)
        .plugged(&[Plugged::Tv])
        .outlet("O2", "Hall")
        .from("S1", 2)
        .over(CableKind::Six, 10.0)
        .plugged(&[])
}

/// A level read at an output of a part.
fn at_port(house: House, tag: &str, port: u8, mhz: f64, dbmv: f64) -> Survey {
    let mut survey = house.survey();
    let id = part_id(&survey, "O1");
    let about = Some(part_id(&survey, tag));
    let measured = ReadingKind::Level { mhz, dbmv };
    survey.readings.insert(id, Reading { id, about, port: Some(port), measured, how: None });
    survey
}

fn tv(survey: &Survey, mhz: f64) -> Option<DownLevel> {
    let found = levels(survey, &Options::default()).expect("a sound survey");
    let tv = found.of(part_id(survey, "O1"), ServiceKind::CableTv).expect("a TV");
    tv.down.iter().find(|down| (down.mhz - mhz).abs() < 1e-9).cloned()
}

fn likely(survey: &Survey) -> f64 {
    tv(survey, 603.0).and_then(|down| down.level).expect("measured on this tree").likely
}

#[test]
fn a_reading_at_the_ground_block_is_one_of_what_comes_in() {
    let level = likely(&house().at("G1").level(603.0, 10.0).survey());
    near(level, 10.0 - IN_FRONT_DB - 3.5 - TEN_METRES_DB - PLATE_DB);
    near(level, likely(&house().at("E1").level(603.0, 10.0).survey()));
}

#[test]
fn a_reading_at_a_port_tells_of_this_leg_and_of_the_other() {
    for port in [1, 2] {
        let level = likely(&at_port(house(), "S1", port, 603.0, 6.5));
        near(level, 6.5 - TEN_METRES_DB - PLATE_DB);
    }
    // At the input, what is read is 3.5 dB more than at the legs.
    near(likely(&house().at("S1").level(603.0, 10.0).survey()), 6.5 - TEN_METRES_DB - PLATE_DB);
}

#[test]
fn a_reading_at_an_empty_outlet_tells_of_its_twin() {
    near(likely(&house().at("O2").level(603.0, 2.0).survey()), 2.0);
}

/// What an outlet's own readings do not tell is told by those on the way to it, the nearest first.
#[test]
fn the_nearest_reading_on_the_way_counts_first() {
    let survey = at_port(house().at("E1").level(603.0, 10.0), "S1", 1, 603.0, -4.0);
    near(likely(&survey), -4.0 - TEN_METRES_DB - PLATE_DB);
    // A reading on the other leg says less of this one than what comes in.
    let survey = at_port(house().at("E1").level(603.0, 10.0), "S1", 2, 603.0, -4.0);
    // What is missing there may be missing here, or on that leg alone.
    let explained = 10.0 - IN_FRONT_DB - 3.5 - TEN_METRES_DB - PLATE_DB;
    let den = level_at(&survey, "O1", 603.0);
    near(den.high, explained);
    near(den.low, explained - (10.0 - IN_FRONT_DB - 3.5 + 4.0));
}

#[test]
fn a_reading_at_one_frequency_answers_for_it_and_for_the_next_channel_only() {
    let at = |mhz| tv(&house().at("E1").level(603.0, 10.0).at("O1").level(mhz, 3.0).survey(), mhz);
    assert!(at(603.0).expect("looked at").level.is_some());
    assert!(at(609.0).expect("looked at").level.is_some());
    assert!(at(615.0).expect("looked at").level.is_none());
}

#[test]
fn two_readings_at_an_outlet_tell_what_lies_between() {
    let survey = house().at("O1").level(450.0, 4.0).level(610.0, 4.0).survey();
    let middle = tv(&survey, 528.0).and_then(|down| down.level);
    near(middle.expect("between two readings").likely, 4.0);
    assert!(tv(&survey, 450.0).expect("looked at").level.is_none(), "a reading explains itself");
}

#[test]
fn a_reading_on_another_tree_tells_nothing() {
    let other = house()
        .entry("E2", EntryKind::Cable)
        .part("G2", PartKind::GroundBlock)
        .from("E2", 1)
        .over(CableKind::Six, 0.01);
    assert!(tv(&other.clone().at("G2").level(603.0, 10.0).survey(), 603.0).is_none());
    assert!(tv(&other.at("G1").level(603.0, 10.0).survey(), 603.0).is_some());
}

/// An amplifier to 1002 MHz is nearly opaque above: what is read behind it there is no figure of what comes in.
#[test]
fn a_reading_behind_a_break_tells_nothing_of_what_comes_in() {
    let amplified = |mhz: f64| {
        let house = house()
            .amplifier("A1", 1)
            .made_for(54.0, 1002.0)
            .with(|amplifier| amplifier.rating.gain_db = Some(10.0))
            .from("S1", 2)
            .at("O2")
            .from("A1", 1)
            .level(mhz, -30.0);
        tv(&house.survey(), mhz).expect("looked at").level.is_some()
    };
    assert!(amplified(900.0));
    assert!(!amplified(1180.0));
}

/// What comes in, read at two frequencies, and 10 dB less than the wiring explains at the outlet in the hall.
fn short_in_the_hall() -> House {
    let hall = 10.0 - IN_FRONT_DB - 3.5 - TEN_METRES_DB - PLATE_DB - 10.0;
    house().at("O2").plugged(&[Plugged::Tv]).level(603.0, hall).at("E1").level(603.0, 10.0).level(855.0, 10.0)
}

fn level_at(survey: &Survey, tag: &str, mhz: f64) -> coax::Span {
    let found = levels(survey, &Options::default()).expect("a sound survey");
    let tv = found.of(part_id(survey, tag), ServiceKind::CableTv).expect("a TV");
    let down = tv.down.iter().find(|down| (down.mhz - mhz).abs() < 1e-9).expect("looked at");
    down.level.expect("measured on this tree")
}

/// 10 m of 6-series cable take 2.0 dB at 855 MHz (the same fit as at 603).
const TEN_METRES_AT_855_DB: f64 = 2.0;

#[test]
fn a_loss_measured_at_one_frequency_is_counted_at_others() {
    let survey = short_in_the_hall().survey();
    let there = level_at(&survey, "O2", 855.0);
    let explained = 10.0 - IN_FRONT_DB - 3.5 - TEN_METRES_AT_855_DB - PLATE_DB;
    assert!((there.likely - (explained - 10.0)).abs() < 2.0, "{there:?} beside {explained} less 10");
    // From half of it to half as much again.
    assert!(
        there.high < explained - 5.0 + RIPPLE_DB && there.low > explained - 15.0 - RIPPLE_DB,
        "{there:?}"
    );
}

#[test]
fn where_a_loss_may_arise_before_a_branch_the_branch_may_miss_it_too() {
    let den = |survey: &Survey| level_at(survey, "O1", 603.0);
    let without = den(&house().at("E1").level(603.0, 10.0).survey());
    let beside = den(&short_in_the_hall().survey());
    assert!((beside.high - without.high).abs() < RIPPLE_DB, "{beside:?} {without:?}");
    assert!((beside.low - (without.low - 10.0)).abs() < 2.0 * RIPPLE_DB, "{beside:?} {without:?}");
}

#[test]
fn what_two_outlets_miss_on_what_they_share_is_missed_behind_it() {
    let in_a_row = |arrives: &[(&str, f64)]| {
        let house = three().at("E1").level(603.0, 10.0);
        let read = arrives.iter().fold(house, |house, (tag, dbmv)| house.at(tag).level(603.0, *dbmv));
        level_at(&read.survey(), "O3", 603.0)
    };
    let (sound, short) = (in_a_row(&[]), in_a_row(&[("O1", -8.4), ("O2", -8.4)]));
    for (short, sound) in [(short.low, sound.low), (short.likely, sound.likely), (short.high, sound.high)] {
        near(short, sound - 10.0);
    }
}

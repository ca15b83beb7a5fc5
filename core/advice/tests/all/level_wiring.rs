//! A level measured somewhere is held against what the wiring explains, and what does not fit names a stretch.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::forecast::MeteredAt;
use advice::level::{LostAt, Options, Unexplained, unexplained};
use advice::verdict::{Beside, LevelHeld, levels_beside};
use facts::fact::SubjectId;
use house::record::{CableKind, EntryKind, Plugged, Reading, ReadingKind, Survey};
use houses::{House, part_id};
use uuid::Uuid;

/// A TV in the den, 20 m behind a 2-way splitter of 3.5 dB a leg (skywarnforum.org), and one in the hall.
///
/// 20 m of 6-series cable take 3.3 dB at 603 MHz (0.20063 sqrt(f) + 0.000245 f dB a 100 ft, a fit: docs/method.md, section 1).
fn house() -> House {
    House::new()
        .entry("E1", EntryKind::Cable)
        .splitter("S1", 2)
        .made_for(5.0, 1002.0)
        .with(|splitter| splitter.rating.leg_losses_db = vec![3.5; 2])
        .from("E1", 1)
        .over(CableKind::Six, 3.0)
        .outlet("O1", "Den")
        .from("S1", 1)
        .over(CableKind::Six, 20.0)
        .plugged(&[Plugged::Tv])
        .outlet("O2", "Hall")
        .from("S1", 2)
        .over(CableKind::Six, 20.0)
        .plugged(&[Plugged::Tv])
}

/// Readings: the tag of a part, its output (0: its input), MHz, dBmV.
fn read(readings: &[(&str, u8, f64, f64)]) -> Survey {
    let mut survey = house().survey();
    for (number, (tag, port, mhz, dbmv)) in (1000..).zip(readings) {
        let id = SubjectId::from_uuid(Uuid::from_u128(number));
        let about = Some(part_id(&survey, tag));
        let measured = ReadingKind::Level { mhz: *mhz, dbmv: *dbmv };
        let port = (*port > 0).then_some(*port);
        survey.readings.insert(id, Reading { id, about, port, measured, how: None });
    }
    survey
}

fn held(readings: &[(&str, u8, f64, f64)]) -> Vec<LevelHeld> {
    levels_beside(&read(readings), &Options::default()).expect("a sound survey")
}

fn at(tag: &str, port: u8) -> MeteredAt {
    MeteredAt { part: part_id(&house().survey(), tag), port: (port > 0).then_some(port) }
}

/// The one that does not fit: from where to where, and how.
fn only(readings: &[(&str, u8, f64, f64)]) -> (MeteredAt, MeteredAt, Beside, &'static str) {
    let held = held(readings);
    assert_eq!(held.len(), 1, "{held:?}");
    let held = held.first().expect("one");
    let word = match &*held.stretch.phrase(&read(readings)).id {
        "stretch-run" => "run",
        "stretch-in-part" => "part",
        _ => "between",
    };
    (held.stretch.from, held.stretch.to, held.beside, word)
}

#[test]
fn fourteen_decibels_missing_over_twenty_metres_name_the_run() {
    let over_the_run = |dbmv| [("S1", 1, 603.0, 5.0), ("O1", 0, 603.0, dbmv)];
    // 5 less 3.3 of cable and 0.5 of connectors and plate (common practice) is 1.2.
    let told = only(&over_the_run(1.2 - 14.0));
    assert_eq!(told, (at("S1", 1), at("O1", 0), Beside::Worse, "run"));
    assert_eq!(held(&over_the_run(1.2)), []);
    assert_eq!(held(&over_the_run(0.4)), []);
}

#[test]
fn two_decibels_too_much_in_a_splitter_name_the_splitter() {
    let over_the_splitter = |dbmv| [("S1", 0, 603.0, 10.0), ("S1", 1, 603.0, dbmv)];
    let told = only(&over_the_splitter(10.0 - 3.5 - 2.0));
    assert_eq!(told, (at("S1", 0), at("S1", 1), Beside::Worse, "part"));
    assert_eq!(held(&over_the_splitter(10.0 - 3.5 - 0.5)), []);
}

/// 75 dBuV come in, so that about 68 were to come: dBmV is dBuV less 60.
#[test]
fn forty_dbuv_where_seventy_were_to_come() {
    let told = only(&[("E1", 0, 603.0, 75.0 - 60.0), ("O1", 0, 603.0, 40.0 - 60.0)]);
    assert_eq!(told, (at("E1", 0), at("O1", 0), Beside::Worse, "between"));
}

#[test]
fn an_amplifier_that_nobody_noted_shows_as_too_much() {
    let told = only(&[("S1", 1, 603.0, 5.0), ("O1", 0, 603.0, 16.0)]);
    assert_eq!(told, (at("S1", 1), at("O1", 0), Beside::Better, "run"));
}

#[test]
fn of_a_row_of_readings_the_first_that_does_not_fit_is_told() {
    // All that is missing is missing before the splitter's output; the run behind it is sound.
    let told = only(&[("E1", 0, 603.0, 10.0), ("S1", 1, 603.0, -5.0), ("O1", 0, 603.0, -9.0)]);
    assert_eq!(told, (at("E1", 0), at("S1", 1), Beside::Worse, "between"));
}

#[test]
fn what_arrives_behind_a_reading_says_that_it_alone_is_off() {
    assert_eq!(held(&[("E1", 0, 603.0, 10.0), ("S1", 1, 603.0, -5.0), ("O1", 0, 603.0, 2.0)]), []);
}

#[test]
fn where_nobody_measured_before_the_branches_they_are_held_against_each_other() {
    let told = only(&[("O1", 0, 603.0, 2.0), ("O2", 0, 603.0, -9.0)]);
    assert_eq!(told, (at("S1", 0), at("O2", 0), Beside::Worse, "between"));
    assert_eq!(held(&[("O1", 0, 603.0, 2.0), ("O2", 0, 603.0, 1.0)]), []);
}

/// Neighbours in a cable differ by up to 3 dB (47 CFR 76.605(a)(4), from memory).
#[test]
fn readings_at_the_next_channel_are_held_less_tightly() {
    let next_channel = |mhz, dbmv| held(&[("S1", 1, 603.0, 5.0), ("O1", 0, mhz, dbmv)]).len();
    assert_eq!((next_channel(603.0, -1.6), next_channel(609.0, -1.6)), (1, 0));
    assert_eq!((next_channel(609.0, -5.0), next_channel(650.0, -5.0)), (1, 0));
}

#[test]
fn the_providers_stretch_is_told_as_such() {
    let street = |tag, port| {
        let held = held(&[("E1", 0, 603.0, 10.0), (tag, port, 603.0, -10.0)]);
        held.first().expect("too little").stretch.street_side
    };
    assert!(street("S1", 0));
    assert!(!street("O1", 0));
}

/// Three TVs, each 10 m behind one 3-way splitter.
pub(super) fn three() -> House {
    let outlet = |house: House, tag: &str, port: u8| {
        house.outlet(tag, tag).from("S1", port).over(CableKind::Six, 10.0).plugged(&[Plugged::Tv])
    };
    let splitter = House::new()
        .entry("E1", EntryKind::Cable)
        .splitter("S1", 3)
        .made_for(5.0, 1002.0)
        .with(|splitter| splitter.rating.leg_losses_db = vec![5.5; 3])
        .from("E1", 1)
        .over(CableKind::Six, 3.0);
    ["O1", "O2", "O3"].into_iter().zip(1..).fold(splitter, |house, (tag, port)| outlet(house, tag, port))
}

/// What does not fit where 10 dBmV come in and these arrive, all at 603 MHz; 5.5 dB of the splitter, 2.2 of 13 m of cable and
/// about 0.7 of joints (common practice) leave 1.6 of them.
fn unexplained_in_three(arrives: &[(&str, f64)]) -> (Survey, Vec<Unexplained>) {
    let house = three().at("E1").level(603.0, 10.0);
    let survey = arrives.iter().fold(house, |house, (tag, dbmv)| house.at(tag).level(603.0, *dbmv)).survey();
    let found = unexplained(&survey, &Options::default()).expect("a sound survey");
    (survey, found)
}

#[test]
fn what_two_outlets_miss_behind_one_part_is_one_loss_on_what_they_share() {
    let (survey, found) = unexplained_in_three(&[("O1", -8.4), ("O2", -9.0)]);
    let [loss] = found.as_slice() else { panic!("not one loss: {found:?}") };
    assert_eq!(loss.readings.len(), 2);
    let splitter = part_id(&survey, "S1");
    assert_eq!((loss.stretch.to.part, loss.stretch.through), (splitter, true));
    let mut suspects: Vec<_> = loss.suspects.iter().map(|(at, _)| *at).collect();
    suspects.sort_by_key(|at| matches!(at, LostAt::Part(_)));
    assert_eq!(suspects, [LostAt::RunTo(splitter), LostAt::Part(splitter)]);
    let all: f64 = loss.suspects.iter().map(|(_, chance)| chance).sum();
    assert!((all - 1.0).abs() < 1e-9, "{all}");
}

#[test]
fn a_third_outlet_that_gets_all_of_it_clears_what_all_share() {
    let (survey, found) = unexplained_in_three(&[("O1", -8.4), ("O2", -9.0), ("O3", 1.6)]);
    assert_eq!(found.len(), 2, "{found:?}");
    for loss in &found {
        assert!(loss.suspects.iter().all(|(at, _)| *at != LostAt::Part(part_id(&survey, "S1"))));
    }
}

#[test]
fn losses_that_differ_by_much_are_two() {
    let (_, found) = unexplained_in_three(&[("O1", -8.4), ("O2", -20.0)]);
    assert_eq!(found.len(), 2, "{found:?}");
}

//! A box that passes the cable on stands between an outlet and the next one.
#![expect(clippy::expect_used, clippy::panic, reason = "a failed test is what is wanted")]

use advice::forecast::{self, PathForecast, Reach, forecast};
use advice::level::{self, levels};
use advice::worklist::{self, worklist};
use house::record::{CableKind, EntryKind, ModemGeneration, Plugged, ServiceKind, Survey};
use houses::{House, part_id};

/// Mismatches of some tenths of a decibel at each of a few joints.
const RIPPLE_DB: f64 = 0.9;

/// A TV in the den hangs on what is plugged in at the hall's outlet.
fn chained(devices: &[Plugged], loss_db: Option<f64>) -> House {
    House::new()
        .entry("E1", EntryKind::Cable)
        .outlet("O1", "Hall")
        .made_for(5.0, 1675.0)
        .with(|outlet| {
            outlet.rating.passes_on = true;
            outlet.rating.leg_losses_db.extend(loss_db);
        })
        .from("E1", 1)
        .over(CableKind::Six, 10.0)
        .plugged(devices)
        .outlet("O2", "Den")
        .from("O1", 1)
        .over(CableKind::Six, 2.0)
        .plugged(&[Plugged::Tv])
}

/// The likely gain from the entry to the TV or box at an outlet in the middle of the TV band, dB.
fn gain(survey: &Survey, tag: &str) -> f64 {
    let levels = levels(survey, &level::Options::default()).expect("a sound survey");
    levels.of(part_id(survey, tag), ServiceKind::CableTv).expect("a TV or box").down[1].gain.likely
}

/// What the box's label says, here 1.5 dB to its second socket, is what the den loses against an outlet where nothing is
/// plugged in and the cable simply goes on.
#[test]
fn the_next_outlet_loses_what_the_box_takes() {
    let nothing = gain(&chained(&[], None).survey(), "O2");
    let through = |loss_db| gain(&chained(&[Plugged::TvBox], Some(loss_db)).survey(), "O2");
    for loss_db in [1.5, 6.0, 12.0] {
        let lost = nothing - through(loss_db);
        assert!((lost - loss_db).abs() <= RIPPLE_DB, "{lost} dB is not {loss_db}");
    }
}

/// Conservation of energy: box and den together get no more than comes in, whatever the label says.
#[test]
fn box_and_next_outlet_share_what_comes_in() {
    for loss_db in [None, Some(0.5), Some(3.5)] {
        let survey = chained(&[Plugged::TvBox], loss_db).survey();
        let power = |tag| 10_f64.powf(gain(&survey, tag) / 10.0);
        let both = power("O1") + power("O2");
        assert!(both > 0.1 && both <= 1.0, "{both} of the power arrives");
    }
}

/// A TV set has one socket: where the cable goes on all the same it does so by a splitter, and the label of a box that is
/// not there counts for nothing. A rated two-way takes 3.5 to 4 dB (common practice, no source).
#[test]
fn a_tv_set_passes_nothing_on() {
    let nothing = gain(&chained(&[], None).survey(), "O2");
    let lost = nothing - gain(&chained(&[Plugged::Tv], Some(12.0)).survey(), "O2");
    assert!((3.5 - RIPPLE_DB..=4.0 + RIPPLE_DB).contains(&lost), "{lost}");
}

fn path(survey: &Survey, tag: &str) -> PathForecast {
    let quick = forecast::Options { draws: 24, seed: 1, points: 67, settles: false };
    let told = forecast(survey, &quick).expect("a sound survey");
    match told.room(part_id(survey, tag)).map(|room| room.reach.clone()) {
        Some(Reach::Estimated(path)) => *path,
        other => panic!("no path: {other:?}"),
    }
}

/// The network's signal goes through the box too: 12 dB more in the box are 12 dB more on the way, whether the adapter is
/// one beside it or the box is itself the gateway.
#[test]
fn the_network_passes_the_box_as_well() {
    let beside = |loss_db| {
        let house = chained(&[Plugged::TvBox], Some(loss_db)).at("O1").adapter("2.5").bridge();
        path(&house.at("O2").plugged(&[]).adapter("2.5").survey(), "O2").loss.likely
    };
    let more = beside(18.0) - beside(6.0);
    assert!((more - 12.0).abs() <= 2.0 * RIPPLE_DB, "{more}");
    let gateway = chained(&[Plugged::MocaGateway], None).at("O2").plugged(&[]).adapter("2.5").survey();
    assert!(path(&gateway, "O2").loss.likely > 0.0);
}

/// A filter at a modem that passes the cable on would cut off the room behind: it is proposed at a modem alone.
#[test]
fn no_filter_is_proposed_before_a_box_that_passes_the_cable_on() {
    let house = |onward: bool| {
        let house = House::new()
            .entry("E1", EntryKind::Cable)
            .splitter("S1", 2)
            .made_for(5.0, 1675.0)
            .from("E1", 1)
            .outlet("O1", "Study")
            .from("S1", 1)
            .over(CableKind::Six, 5.0)
            .plugged(&[Plugged::Modem])
            .adapter("2.5")
            .bridge()
            .with(|outlet| outlet.rating.passes_on = onward)
            .outlet("O2", "Den")
            .from(if onward { "O1" } else { "S1" }, if onward { 1 } else { 2 })
            .over(CableKind::Six, 2.0)
            .plugged(&[])
            .adapter("2.5");
        house
            .about_service(ServiceKind::CableInternet, |service| {
                service.modem.get_or_insert_default().generation = Some(ModemGeneration::V4_0);
            })
            .survey()
    };
    let filters = |onward| {
        let quick = forecast::Options { draws: 6, seed: 1, points: 34, settles: false };
        let options = worklist::Options {
            screening: quick,
            stating: quick,
            most_steps: 4,
            ..worklist::Options::default()
        };
        let list = worklist(&house(onward), &options).expect("a sound survey");
        let steps = list.steps.iter().map(|step| step.change);
        let all = steps.chain(list.refused.iter().map(|(change, _)| *change));
        all.filter(|change| matches!(change, house::record::ChangeKind::FilterAtDevice { .. })).count()
    };
    assert_eq!((filters(false), filters(true)), (1, 0));
}

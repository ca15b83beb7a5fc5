//! The output with the least loss goes to the modem.

use advice::worklist::applied;
use house::record::{CableKind, ChangeKind, EntryKind, PartKind, Plugged, Survey};
use houses::{House, part_id};

/// A four-way of which three outputs lead somewhere gives way to a three-way of 3.7, 7.3 and 7.3 dB.
fn three(longest: &[Plugged], shortest: &[Plugged]) -> House {
    House::new()
        .entry("E1", EntryKind::Cable)
        .splitter("S1", 4)
        .from("E1", 1)
        .over(CableKind::Six, 2.0)
        .cap(4)
        .outlet("O1", "Study")
        .from("S1", 1)
        .over(CableKind::Six, 25.0)
        .plugged(longest)
        .outlet("O2", "Den")
        .from("S1", 2)
        .over(CableKind::Six, 12.0)
        .plugged(&[Plugged::Tv])
        .outlet("O3", "Hall")
        .from("S1", 3)
        .over(CableKind::Six, 5.0)
        .plugged(shortest)
}

#[test]
fn a_swap_leaves_the_modem_the_strong_leg() {
    let port = |survey: &Survey, tag: &str| survey.wiring.feed(part_id(survey, tag)).map(|feed| feed.port);
    let swapped = |house: House| {
        let survey = house.survey();
        applied(ChangeKind::SwapSplitter { splitter: part_id(&survey, "S1"), legs: 3 }, &survey)
    };
    let modem = swapped(three(&[Plugged::Tv], &[Plugged::Modem]));
    assert_eq!((port(&modem, "O3"), port(&modem, "O1"), port(&modem, "O2")), (Some(1), Some(2), Some(3)));
    // Without a modem the longest run gets it.
    let tvs = swapped(three(&[Plugged::Tv], &[Plugged::Tv]));
    assert_eq!((port(&tvs, "O1"), port(&tvs, "O2"), port(&tvs, "O3")), (Some(1), Some(2), Some(3)));
    // An amplifier taken out leaves a splitter; a cable to a room without coax makes a two-way a three-way.
    let amplified = three(&[Plugged::Tv], &[Plugged::Modem]).at("S1").with(|part| {
        part.kind = PartKind::Amplifier;
        part.rating.legs = 3;
    });
    let survey = amplified.survey();
    let removed = applied(ChangeKind::RemoveAmplifier { amplifier: part_id(&survey, "S1") }, &survey);
    assert_eq!((port(&removed, "O3"), port(&removed, "O1")), (Some(1), Some(3)));
    let grown = three(&[Plugged::Tv], &[Plugged::Modem]).without("O2").wish("Attic", 500.0);
    let survey = grown.at("S1").with(|part| part.rating.legs = 2).at("O3").from("S1", 2).survey();
    let room = survey.rooms.values().find(|room| room.wish.is_some()).expect("the attic").id;
    let laid = applied(ChangeKind::NewRun { room, from: part_id(&survey, "S1") }, &survey);
    assert_eq!((port(&laid, "O3"), port(&laid, "O1")), (Some(1), Some(2)));
}

//! A test that failed always leads on: check by check, until nothing that this list knows is left, and that is said.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::forecast::Options as Draws;
use advice::worklist::{Options, WorkList, worklist};
use house::record::{CableKind, ChangeKind, LinkState, OutletCheck, ReadingKind, Survey};
use houses::{House, change_cases, part_id};

fn list(survey: &Survey) -> WorkList {
    let draws = Draws { draws: 8, seed: 1, points: 89, settles: false };
    worklist(survey, &Options { screening: draws, stating: draws, most_steps: 12, ..Options::default() })
        .expect("a sound survey")
}

/// Checks made one after the other, as the list says what comes next for the office.
#[test]
fn a_room_without_a_link_leads_on_until_nothing_is_left() {
    let mut house = change_cases::house(10.0).at("O2").reads(ReadingKind::Link { state: LinkState::Absent });
    let mut made = Vec::new();
    let last = loop {
        let found = list(&house.clone().survey());
        let room = found.failed.first().expect("the office failed").clone();
        let Some(next) = room.next else { break (found, room) };
        assert!(found.steps.iter().any(|step| step.change == next), "{next:?} is no step");
        assert!(!made.contains(&next), "{next:?} again");
        made.push(next);
        assert!(made.len() < 20, "{made:?}");
        house = house.tried(next);
    };
    let first = made.first().copied();
    let office = part_id(&house.clone().survey(), "O2");
    assert_eq!(first, Some(ChangeKind::CheckAtOutlet { outlet: office, check: OutletCheck::Adapter }));
    let measured = ChangeKind::CheckAtOutlet { outlet: office, check: OutletCheck::Measure };
    assert_eq!(made.last(), Some(&measured));
    // Two quick ones in the room, the splitter, the bridge's outlet and two runs, and the meter.
    assert_eq!(made.len(), 7, "{made:?}");
    let (found, room) = last;
    assert_eq!(room.phrase(&house.clone().survey(), &found).id, "failed-nothing-left");
}

/// Four rooms behind two splitters: the bridge's on the first, two more behind the second, one on the first.
fn rooms() -> House {
    let outlet = |house: House, tag: &str, room: &str, from: &str, port: u8| {
        let house = house.outlet(tag, room).from(from, port).over(CableKind::Six, 10.0);
        house.plugged(&[]).adapter("2.5")
    };
    let house = House::new().splitter("S1", 3).made_for(5.0, 1675.0).fed_by_nothing();
    let house = outlet(house, "O1", "Study", "S1", 1).bridge();
    let house = house.splitter("S2", 2).made_for(5.0, 1675.0).from("S1", 2).over(CableKind::Six, 10.0);
    let house = outlet(outlet(house, "O2", "Office", "S2", 1), "O3", "Den", "S2", 2);
    outlet(house, "O4", "Attic", "S1", 3)
}

fn loses(house: House, tag: &str, db: f64) -> House {
    house.at(tag).reads(ReadingKind::Power { sent_dbm: 0.0, received_dbm: -db })
}

/// What lies on the way of both rooms that lose too much is suspected before what lies on the way of one, and what a good test
/// passes is not.
#[test]
fn the_tests_of_several_rooms_point_to_what_they_share() {
    use advice::forecast::{CostAt, forecast};
    use advice::suspect::Suspects;
    let draws = Draws { draws: 8, seed: 1, points: 89, settles: false };
    let first = |house: House| {
        let survey = house.survey();
        let told = forecast(&survey, &draws).expect("a sound survey");
        let on_way = Suspects::of(&survey, &told).on_way(part_id(&survey, "O2"));
        let suspect = on_way.first().expect("a way").at;
        let (CostAt::Part(at) | CostAt::RunTo(at)) = suspect;
        survey.parts[&at].tag.clone().expect("a tag")
    };
    let both = loses(loses(loses(rooms(), "O2", 70.0), "O3", 70.0), "O4", 20.0);
    assert_eq!(first(both), "S2");
    // The den's test clears all but the office's own stretch.
    let one = loses(loses(rooms(), "O2", 70.0), "O3", 20.0);
    assert_eq!(first(one), "O2");
}

/// Fewer adapters are seen than are there. While several may be the missing ones, no room has failed of it; the last that may
/// be has, and nobody says that it was tested.
#[test]
fn a_count_of_adapters_fails_a_room_only_where_no_other_may_be_missing() {
    let seen = |count| rooms().at("O1").reads(ReadingKind::NodesSeen { count });
    assert_eq!(list(&seen(3).survey()).failed, [], "three rooms, of which one is missing");
    let steady = |house: House, tag| house.at(tag).reads(ReadingKind::Link { state: LinkState::Steady });
    let house = steady(steady(seen(3), "O2"), "O3");
    let survey = house.survey();
    let found = list(&survey);
    let [room] = found.failed.as_slice() else { panic!("{:?}", found.failed) };
    assert_eq!(room.outlet, part_id(&survey, "O4"));
    let told = room.phrase(&survey, &found);
    let not_seen = phrase::Arg::Text("not_seen".into());
    assert!(told.args.iter().any(|(name, arg)| *name == "how" && *arg == not_seen), "{told:?}");
}

/// A test that is slower than expected, and faster than wished: nothing failed, and nothing needs to be done.
#[test]
fn a_room_as_wished_has_not_failed_though_it_is_slower_than_expected() {
    let slow = |wish| {
        let slow = ReadingKind::Throughput { down_mbps: 640.0, up_mbps: 655.0 };
        list(&rooms().wish("Office", wish).at("O2").reads(slow).survey())
    };
    assert_eq!(slow(300.0).failed, []);
    assert_eq!(slow(800.0).failed.len(), 1);
}

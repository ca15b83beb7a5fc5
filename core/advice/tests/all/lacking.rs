//! What keeps rooms from a figure: the same rooms of which the forecast tells nothing, and the one thing that is missing.
#![expect(clippy::unwrap_used, reason = "a failed test is what is wanted")]

use advice::forecast::{Options, forecast};
use advice::verdict::{Lack, Lacking, Met, answers};
use advice::worklist::nothing_to_do;
use house::record::{Asked, CableKind, EntryKind, Named, PortEnd, Reply, Survey};
use houses::House;
use houses::random;

const DRAWS: Options = Options { draws: 2, seed: 1, points: 12, settles: false };

/// A house whose splitter leads to an outlet, with one output that nobody traced.
fn house() -> House {
    House::new()
        .entry("E1", EntryKind::Cable)
        .splitter("S1", 3)
        .made_for(5.0, 1675.0)
        .from("E1", 1)
        .outlet("O1", "Hall")
        .from("S1", 1)
        .over(CableKind::Six, 8.0)
        .outlet("O2", "Den")
        .from("S1", 2)
        .over(CableKind::Six, 8.0)
        .at("S1")
        .end(3, PortEnd::LooseEnd)
        .wish("Den", 300.0)
        .wish("Office", 300.0)
}

fn room(survey: &Survey, name: &str) -> facts::fact::SubjectId {
    survey.rooms.values().find(|room| room.name == name).map(|room| room.id).unwrap()
}

fn said(survey: &Survey) -> Vec<String> {
    nothing_to_do(survey).into_iter().map(|phrase| phrase.id).collect()
}

#[test]
fn the_router_is_the_one_thing_that_all_rooms_wait_for() {
    let survey = house().survey();
    let lacking = Lacking::of(&survey);
    assert!(lacking.is_of_all());
    assert_eq!(lacking.lacks(), [Lack::Router]);
    assert_eq!(said(&survey), ["lacking-all"], "nobody can tell what is worth doing");
    let mut none = survey;
    none.asked.insert((none.id, Asked::RouterAt), Reply::None.name().into());
    assert_eq!(Lacking::of(&none).lacks(), [Lack::OutletNearRouter]);
}

#[test]
fn a_room_without_a_cable_waits_for_that_alone() {
    let survey = house().at("O1").adapter("2.5").bridge().survey();
    let lacking = Lacking::of(&survey);
    assert!(!lacking.is_of_all());
    assert_eq!(lacking.rooms, [(room(&survey, "Office"), Lack::Outlet(room(&survey, "Office")))]);
    assert_eq!(said(&survey), ["answer-nothing-to-do", "lacking-some"]);
    // An outlet that was found and not traced waits for its feed.
    let found = house().outlet("O3", "Office").at("O1").adapter("2.5").bridge();
    let outlet = found.id_of("O3");
    let survey = found.survey();
    assert_eq!(Lacking::of(&survey).lacks(), [Lack::Feed(outlet)]);
}

#[test]
fn nothing_is_missing_where_a_figure_is() {
    let survey = house().at("O1").adapter("2.5").bridge().outlet("O3", "Office").from("S1", 3).survey();
    let lacking = Lacking::of(&survey);
    assert_eq!((lacking.asked, lacking.rooms.len(), lacking.is_of_all()), (2, 0, false));
    assert_eq!(said(&survey), ["answer-nothing-to-do"]);
}

#[test]
fn they_are_the_rooms_of_which_the_forecast_tells_nothing() {
    let mut some = 0;
    for seed in 0..60 {
        let mut survey = random::survey(seed);
        if seed % 2 == 1 {
            survey = random::with_tests(&survey, &forecast(&survey, &DRAWS).unwrap(), seed);
        }
        let told = forecast(&survey, &DRAWS).unwrap();
        let unknown: Vec<_> = answers(&survey, &told)
            .into_iter()
            .filter(|answer| answer.wished.met == Met::NotKnown)
            .map(|answer| answer.room.id)
            .collect();
        let lacking = Lacking::of(&survey);
        let rooms: Vec<_> = lacking.rooms.iter().map(|(room, _)| *room).collect();
        assert_eq!(rooms, unknown, "the house of {seed}");
        some += rooms.len();
    }
    assert!(some > 10, "{some}");
}

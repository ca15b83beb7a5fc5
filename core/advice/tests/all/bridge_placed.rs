//! Where the network could start, while nobody has said where it does.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::AdviceError;
use advice::forecast::{Options, forecast};
use advice::verdict::{answers_to_come, met};
use advice::worklist::{BridgePlace, bridge_places};
use house::record::{CableKind, EntryKind, Plugged, ServiceKind, Survey};
use houses::{House, part_id};

const FEW: Options = Options { draws: 8, seed: 1, points: 56, settles: false };
const MORE: Options = Options { draws: 16, ..FEW };

fn places(survey: &Survey) -> Vec<BridgePlace> {
    bridge_places(survey, (&FEW, &MORE), &mut |_| true).expect("a sound survey")
}

/// Two rooms side by side on one splitter; a third at the end of long old cable; a fourth on its own entry.
fn house() -> House {
    let house =
        House::new().entry("E1", EntryKind::Cable).splitter("S1", 3).made_for(5.0, 1675.0).from("E1", 1);
    let near = |house: House, port, tag: &str, room: &str, metres| {
        house
            .outlet(tag, room)
            .from("S1", port)
            .over(CableKind::FiftyNine, metres)
            .plugged(&[])
            .wish(room, 900.0)
    };
    let house = near(house, 1, "O1", "Attic", 160.0);
    let house = near(near(house, 2, "O2", "Den", 8.0), 3, "O3", "Office", 8.0);
    house.entry("E2", EntryKind::Antenna).outlet("O4", "Loft").from("E2", 1).plugged(&[])
}

fn tags(survey: &Survey, places: &[BridgePlace]) -> Vec<String> {
    places.iter().filter_map(|place| survey.parts.get(&place.outlet)?.tag.clone()).collect()
}

#[test]
fn the_best_outlet_comes_first_and_each_says_what_it_gives_once_chosen() {
    let survey = house().survey();
    let found = places(&survey);
    let told = tags(&survey, &found);
    // From the end of the long cable both others are far; from beside the other, one is near.
    assert_eq!(told.last().map(String::as_str), Some("O1"), "{told:?}");
    assert!(!told.contains(&"O4".to_owned()), "from there no room is reached");
    for place in &found {
        let tag = survey.parts.get(&place.outlet).and_then(|part| part.tag.clone()).expect("a tag");
        let chosen = house().at(&tag).with(|part| {
            part.adapter = Some(house::record::Adapter::AT_ROUTER);
        });
        let chosen = forecast(&chosen.survey(), &MORE).expect("a sound survey");
        let rates = |forecast: &advice::forecast::Forecast| -> Vec<_> {
            forecast
                .rooms
                .iter()
                .map(|room| (forecast.path(room.outlet).map(|path| path.down), room.reach.clone()))
                .collect()
        };
        assert_eq!(rates(&chosen).len(), rates(&place.forecast).len());
        for ((one, _), (other, _)) in rates(&chosen).into_iter().zip(rates(&place.forecast)) {
            assert_eq!(one, other, "what is told before is what stands there after: {tag}");
        }
    }
    let met_at = |place: &BridgePlace| met(&answers_to_come(&place.house, &place.forecast));
    assert!(met_at(&found[0]) >= met_at(found.last().expect("several")));
}

#[test]
fn where_the_modem_is_goes_before_an_outlet_that_is_as_good() {
    let survey = house()
        .at("O3")
        .plugged(&[Plugged::Modem])
        .service(ServiceKind::CableInternet, Some(1002.0))
        .survey();
    let found = places(&survey);
    assert_eq!(tags(&survey, &found).first().map(String::as_str), Some("O3"));
    assert!(found[0].has_modem);
}

#[test]
fn nothing_is_told_where_it_has_its_start_or_reaches_nothing() {
    assert_eq!(places(&house().at("O2").adapter("2.5").bridge().survey()), Vec::new());
    assert_eq!(places(&house().at("O2").plugged(&[Plugged::MocaGateway]).survey()), Vec::new());
    let alone =
        House::new().entry("E1", EntryKind::Cable).outlet("O1", "Den").from("E1", 1).wish("Den", 100.0);
    assert_eq!(places(&alone.survey()), Vec::new());
}

#[test]
fn satellite_signals_keep_it_away() {
    let survey = house().at("O2").plugged(&[Plugged::SatelliteReceiver]).survey();
    assert_eq!(tags(&survey, &places(&survey)), Vec::<String>::new());
    assert!(survey.parts.contains_key(&part_id(&survey, "O2")));
}

#[test]
fn it_can_be_stopped() {
    let stopped = bridge_places(&house().survey(), (&FEW, &MORE), &mut |_| false);
    assert!(matches!(stopped, Err(AdviceError::Stopped)), "{stopped:?}");
}

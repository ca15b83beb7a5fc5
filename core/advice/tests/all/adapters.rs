//! How many adapters there are beside how many the network needs: what is still to be got, and what a count of members says.

use advice::adapters::{
    adapters_missing, adapters_needed, adapters_to_come, are_adapters_placed, are_adapters_to_place,
};
use advice::verdict::{NodesBeside, NodesTold};
use advice::worklist::adapters_to_get;
use house::record::{Asked, CableKind, EntryKind, Named, Reply, Survey};
use houses::House;

/// Four rooms that want network, the router in one of them.
fn four(reply: Option<Reply>, owned: Option<u32>) -> Survey {
    let mut house = House::new().entry("E1", EntryKind::Cable).splitter("S1", 4).from("E1", 1);
    for (port, room) in (1..).zip(["Hall", "Living", "Office", "Den"]) {
        house = house.outlet(&format!("O{port}"), room).from("S1", port).over(CableKind::Six, 8.0);
        house = house.wish(room, 300.0);
    }
    let mut survey = house.at("O1").adapter("2.5").bridge().survey();
    survey.asked.extend(reply.map(|reply| ((survey.id, Asked::Adapters), reply.name().into())));
    survey.network.owned = owned;
    survey
}

fn to_get(survey: &Survey) -> u64 {
    adapters_to_get(survey).iter().map(|needed| needed.count).sum()
}

#[test]
fn those_that_are_missing_are_to_be_got_and_all_are_placed() {
    let has = Some(Reply::Moca25);
    for (reply, owned, missing, placed) in [
        (Some(Reply::None), None, 4, 4),
        (has, Some(2), 2, 4),
        (has, Some(4), 0, 4),
        (has, Some(9), 0, 4),
        // How many there are nobody said: none is bought on a guess, and each has to be placed all the same.
        (has, None, 0, 4),
        (None, Some(3), 1, 4),
        (None, None, 0, 0),
        (Some(Reply::Unsure), None, 0, 0),
    ] {
        let survey = four(reply, owned);
        let said = (adapters_missing(&survey), adapters_to_come(&survey).len());
        assert_eq!(said, (missing, placed), "{reply:?} {owned:?}");
        assert_eq!(to_get(&survey), missing as u64, "{reply:?} {owned:?}");
        assert_eq!(adapters_needed(&survey).len(), 4);
    }
}

#[test]
fn two_of_four_in_use_are_not_all() {
    let mut survey = four(Some(Reply::Moca25), Some(2));
    survey.asked.insert((survey.id, Asked::AdaptersPlaced), Reply::Yes.name().into());
    assert!(!are_adapters_placed(&survey) && are_adapters_to_place(&survey));
    survey.network.owned = Some(4);
    assert!(are_adapters_placed(&survey) && !are_adapters_to_place(&survey));
}

#[test]
fn nobody_is_accused_for_an_adapter_that_was_never_bought() {
    let beside = |owned, seen| {
        NodesTold::of(&four(Some(Reply::Moca25), owned), None, seen)
            .map(|told| (told.beside, told.there))
            .unwrap()
    };
    assert_eq!(beside(Some(2), 2), (NodesBeside::FewerToCome, 2));
    assert_eq!(beside(Some(3), 2), (NodesBeside::Fewer, 3));
    assert_eq!(beside(Some(2), 1), (NodesBeside::Alone, 2));
    assert_eq!(beside(Some(4), 4), (NodesBeside::AsMany, 4));
    assert_eq!(beside(None, 2), (NodesBeside::Fewer, 4), "as many as are needed where nobody counted them");
}

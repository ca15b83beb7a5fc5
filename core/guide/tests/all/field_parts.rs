//! Working freely on what is found: parts, rooms, services; changed, joined, removed and taken back.

use crate::hand::Hand;
use house::record::{Feed, PartKind, PhotoRole, PowerFeed, ServiceKind, TvSignal};
use tempfile::TempDir;

fn home() -> TempDir {
    TempDir::new().unwrap()
}

#[test]
fn a_part_is_changed_joined_removed_and_taken_back() {
    let home = home();
    let mut hand = Hand::in_new(home.path(), "Part");
    hand.add("entry");
    hand.press("add");
    hand.pick("kind", &["splitter"]);
    hand.press("make");
    hand.press("add");
    hand.pick("kind", &["outlet"]);
    hand.pick("port", &["2"]);
    hand.press("make");
    let (entry, splitter, outlet) = (hand.tagged("E1"), hand.tagged("S1"), hand.tagged("O1"));
    // Every part that sits in a line can be put in between.
    for kind in ["barrel", "ground_block", "pad", "high_pass_filter", "satellite_combiner", "power_inserter"]
    {
        hand.overview();
        hand.press("free-parts");
        hand.press(&format!("part:{entry}"));
        hand.press("add");
        hand.pick("kind", &[kind]);
        hand.press("make");
    }
    let survey = hand.survey();
    assert_eq!(survey.wiring.way_up(outlet).len(), 9);
    assert_eq!(survey.wiring.head_of(outlet), entry);
    // A cap cannot stand in between; on a free leg it can.
    hand.overview();
    hand.press("free-parts");
    hand.press(&format!("part:{splitter}"));
    hand.press("add");
    hand.pick("kind", &["terminator"]);
    hand.pick("port", &["2"]);
    hand.press("make");
    assert!(hand.says("Something is connected there already"));
    hand.pick("port", &["1"]);
    hand.press("make");
    assert_eq!(hand.survey().wiring.on_port(splitter, 1).count(), 1);
    hand.back();
    assert_eq!(hand.screen().name, "free-part");
    // Tag, place, kind; a note; the question on a leg leads back here.
    hand.press("edit");
    hand.write("tag", "S9");
    hand.write("where", "basement");
    hand.pick("kind", &["tap"]);
    hand.press("save");
    assert!(hand.says("S9") && hand.says("basement"));
    hand.press("note-new");
    hand.write("note", "behind the boiler");
    hand.press("add-note");
    assert!(hand.says("Note: behind the boiler"));
    // One that is half written when something else is pressed is kept too.
    hand.press("note-new");
    hand.write("note", "the wall is damp");
    hand.press("edit");
    hand.back();
    assert!(hand.says("Note: the wall is damp"));
    hand.photo("photo", 5);
    let photo = hand.keys("photo:").remove(0);
    hand.press(&photo);
    hand.pick("role", &["place"]);
    hand.press("save");
    assert_eq!(hand.survey().photos_of(Some(splitter)).next().unwrap().role, Some(PhotoRole::Place));
    // Removed: what hung on it becomes loose. The undo names it and brings all back.
    let before = hand.survey();
    hand.press("remove");
    let survey = hand.survey();
    assert!(!survey.parts.contains_key(&splitter) && survey.wiring.loose().contains_key(&outlet));
    assert!(hand.says("Take back: removed S9"));
    hand.press("undo");
    let after = hand.survey();
    assert!(after.wiring.feeds().eq(before.wiring.feeds()) && after.runs == before.runs);
    // The same from the list of what was removed.
    hand.overview();
    hand.press("free-parts");
    hand.press(&format!("part:{splitter}"));
    hand.press("remove");
    hand.overview();
    hand.press("more");
    hand.press("removed");
    hand.press(&format!("thing:{splitter}"));
    hand.press("back");
    assert!(hand.survey().parts.contains_key(&splitter));
    // A part in a line goes without cutting the line.
    let barrel = hand.survey().parts.values().find(|part| part.kind == PartKind::Barrel).unwrap().id;
    let up = hand.survey().wiring.way_up(splitter).len();
    hand.overview();
    hand.press("free-parts");
    hand.press(&format!("part:{barrel}"));
    hand.press("remove");
    let survey = hand.survey();
    assert_eq!(survey.wiring.way_up(splitter).len(), up - 1);
    assert!(matches!(survey.parts[&splitter].feed, Some(Feed::From(_))));
}

#[test]
fn rooms_and_services_with_their_details() {
    let home = home();
    let mut hand = Hand::in_new(home.path(), "Rooms");
    hand.press("more");
    hand.press("free-rooms");
    for room in ["Office", "Shed"] {
        hand.write("name", room);
        hand.press("add");
    }
    hand.add("outlet");
    hand.press("edit");
    let office = hand.options("room").remove(0);
    hand.pick("room", &[&office]);
    hand.press("save");
    hand.overview();
    hand.press("more");
    hand.press("free-rooms");
    let shed = hand.row("Shed");
    hand.press(&shed);
    hand.write("name", "Garden shed");
    let outlet = format!("part:{}", hand.tagged("O1"));
    hand.pick("served", &[&outlet]);
    hand.press("save");
    let shed = hand.row("Garden shed");
    hand.press(&shed);
    hand.press("wish");
    hand.pick("wish", &["work"]);
    assert_eq!(hand.screen().name, "free-room");
    let survey = hand.survey();
    let shed = survey.rooms.values().find(|room| room.name == "Garden shed").unwrap();
    assert!(shed.served_from.is_some() && shed.wish.is_some());
    hand.press("remove");
    assert_eq!(hand.survey().rooms.len(), 1);
    hand.press("undo");
    assert_eq!(hand.survey().rooms.len(), 2);

    hand.add("amplifier");
    let amplifier = format!("part:{}", hand.tagged("A1"));
    let service = |hand: &mut Hand, kind: &str| {
        hand.overview();
        hand.press("more");
        hand.press("free-services");
        hand.pick("kind", &[kind]);
        hand.press("add");
    };
    service(&mut hand, "cable_tv");
    hand.measure("top", "862");
    hand.pick("signal", &["both"]);
    hand.press("save");
    service(&mut hand, "cable_internet");
    hand.measure("top", "1218");
    hand.pick("generation", &["3.1"]);
    hand.measure("upstream", "85");
    hand.press("save");
    service(&mut hand, "satellite_tv");
    hand.pick("single", &["en50607"]);
    hand.press("save");
    service(&mut hand, "provider_network");
    hand.pick("version", &["2.0"]);
    hand.measure("low", "1500");
    hand.measure("high", "1400");
    hand.press("save");
    assert!(hand.says("the lower one first"));
    hand.measure("high", "1600");
    hand.measure("nodes", "3");
    hand.press("add-band");
    hand.measure("low", "1150");
    hand.measure("high", "1200");
    hand.press("add-band");
    service(&mut hand, "power_over_coax");
    hand.pick("from", &[&outlet]);
    hand.press("save");
    assert!(hand.says("Please choose both"));
    hand.pick("to", &[&amplifier]);
    hand.press("save");
    let survey = hand.survey();
    let of = |kind| survey.services_of(kind).next().unwrap().clone();
    assert_eq!(of(ServiceKind::CableTv).signal, Some(TvSignal::Both));
    assert_eq!(of(ServiceKind::CableInternet).upstream_top_mhz(), Some(85.0));
    assert_eq!(of(ServiceKind::CableInternet).top_mhz, Some(1218.0));
    let network = of(ServiceKind::ProviderNetwork).network.unwrap();
    assert_eq!((network.bands.len(), network.nodes), (2, 3));
    let power = of(ServiceKind::PowerOverCoax).power;
    assert_eq!(power, Some(PowerFeed { from: hand.tagged("O1"), to: hand.tagged("A1") }));
}

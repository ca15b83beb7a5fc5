//! Everything that a sheet states lands in the survey, and nothing else does.

use std::path::Path;

use crate::support::Desk;
use facts::fact::{AuthorId, Writer};
use facts::store::Store;
use house::rating::{Band, PartRating};
use house::record::{
    Adapter, Building, CableKind, Connector, EntryKind, EntryState, Feed, HowMeasured, Internet, LengthKnown,
    LinkState, ModemBands, ModemGeneration, NetworkPlan, OtherNetwork, Ownership, Part, PartKind, Plugged,
    PortEnd, PowerFeed, ReadingKind, Run, Service, ServiceKind, Sharing, SingleCable, Survey, TestReach,
    TvSignal, Wish, fold,
};

fn made_of(sheet: &str) -> Survey {
    let desk = Desk::new();
    desk.write("house.toml", sheet);
    let ran = desk.run(&["sheet", "house.toml", "house.legwork"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    read(&desk.work().join("house.legwork"))
}

fn read(folder: &Path) -> Survey {
    let store = Store::open(folder, AuthorId::random()).unwrap();
    fold(store.ledger(), store.survey_id()).unwrap()
}

fn part<'a>(survey: &'a Survey, tag: &str) -> &'a Part {
    survey.parts.values().find(|part| part.tag.as_deref() == Some(tag)).unwrap()
}

/// The tag of the feeding part, its port, and the run.
fn feed<'a>(survey: &'a Survey, tag: &str) -> (&'a str, u8, Option<&'a Run>) {
    let feed = survey.wiring.feed(part(survey, tag).id).unwrap();
    let run = feed.run.map(|run| &survey.runs[&run]);
    (survey.parts[&feed.part].tag.as_deref().unwrap(), feed.port, run)
}

fn note_about(survey: &Survey, about: facts::fact::SubjectId) -> Vec<&str> {
    survey.notes.values().filter(|note| note.about == Some(about)).map(|note| note.text.as_str()).collect()
}

/// The first TOML block of docs/sheet.md.
fn example_of_the_docs() -> &'static str {
    let docs = include_str!("../../../../docs/sheet.md");
    docs.split_once("```toml\n").unwrap().1.split_once("```").unwrap().0
}

#[test]
fn the_example_of_the_docs_is_taken_as_it_says() {
    let house = made_of(example_of_the_docs());
    assert_eq!(house.unread, []);
    assert_eq!(house.name.as_deref(), Some("An invented house"));
    assert_eq!(house.place.as_deref(), Some("nowhere"));
    assert_eq!(house.internet, Some(Internet { down_mbps: 1000.0, up_mbps: 50.0 }));
    assert_eq!(house.building, Some(Building { ownership: Ownership::Own, shared: false }));
    assert_eq!(house.network, NetworkPlan { version: "2.5".into(), ethernet_mbps: Some(2500), owned: None });
    let mut notes = note_about(&house, house.id);
    notes.sort_unstable();
    assert_eq!(notes, ["Invented for docs/sheet.md.", "The attic was not looked at."]);

    let office = house.rooms.values().find(|room| room.name == "Office").unwrap();
    assert_eq!(office.wish, Some(Wish { down_mbps: 800.0, up_mbps: 300.0 }));
    assert_eq!(note_about(&house, office.id), ["Behind a thick wall: no radio gets there."]);
    assert_eq!(house.rooms.len(), 2);
    let services: Vec<_> = house.services.values().map(|service| (service.kind, service.top_mhz)).collect();
    assert_eq!(services, [(ServiceKind::CableInternet, Some(1002.0))]);

    let entry = part(&house, "E1");
    assert_eq!(
        (entry.kind, entry.entry_kind, entry.entry_state),
        (PartKind::Entry, EntryKind::Cable, EntryState::Connected)
    );
    assert_eq!(entry.place.as_deref(), Some("cellar, street side"));

    let (feeder, port, run) = feed(&house, "G1");
    let run = run.unwrap();
    assert_eq!((feeder, port, run.cable), ("E1", 1, CableKind::Six));
    assert_eq!((run.connector_near, run.connector_far), (Connector::Compression, Connector::Compression));
    let length = run.length.unwrap();
    assert_eq!((length.metres, length.known), (2.0, LengthKnown::Measured));

    let filter = &part(&house, "F1").rating;
    assert_eq!(filter.band, Some(Band { low_mhz: 5.0, high_mhz: 1002.0 }));
    assert_eq!(filter.stop_band, Some(Band { low_mhz: 1125.0, high_mhz: 1675.0 }));
    assert_eq!(filter.rejection_db, Some(40.0));
    assert!(feed(&house, "F1").2.is_none(), "a run was made of nothing");

    let splitter = part(&house, "S1");
    assert_eq!(splitter.label.as_deref(), Some("3-WAY 5-1000 MHz"));
    assert_eq!((splitter.rating.legs, splitter.rating.leg_losses_db.as_slice()), (3, &[3.5, 7.0, 7.0][..]));
    assert_eq!(splitter.rating.isolation_db, Some(20.0));
    assert_eq!(splitter.ends.iter().collect::<Vec<_>>(), [(&3, &PortEnd::Open)]);
    // 3 ft by the definition of the foot, 0.3048 m.
    let length = feed(&house, "S1").2.unwrap().length.unwrap();
    assert!((length.metres - 0.9144).abs() < 1e-12);
    assert_eq!(length.known, LengthKnown::Guessed);

    let amplifier = part(&house, "A1");
    let expected = PartRating {
        legs: 2,
        gain_db: Some(15.0),
        band: Some(Band { low_mhz: 54.0, high_mhz: 1002.0 }),
        return_gain_db: Some(-1.0),
        return_high_mhz: Some(42.0),
        moca_bypass: Some(false),
        modem_port: true,
        ..PartRating::default()
    };
    assert_eq!(amplifier.rating, expected);
    assert_eq!(amplifier.ends.iter().collect::<Vec<_>>(), [(&2, &PortEnd::Capped)]);

    let living = part(&house, "O1");
    let (feeder, port, run) = feed(&house, "O1");
    let run = run.unwrap();
    // Two outputs, then the port that is not amplified.
    assert_eq!((feeder, port, run.tag.as_deref()), ("A1", 3, Some("R1")));
    assert_eq!((run.connector_near, run.connector_far), (Connector::Compression, Connector::HandTight));
    assert_eq!(run.length.unwrap().known, LengthKnown::Paced);
    assert_eq!(house.room_of(living).unwrap().name, "Living room");
    assert_eq!(living.plugged, Some(vec![Plugged::Modem]));
    assert_eq!(
        living.adapter,
        Some(Adapter { version: Some("2.5".into()), ethernet_mbps: Some(2500), bridge: true })
    );

    let (_, port, run) = feed(&house, "O2");
    let run = run.unwrap();
    assert_eq!((port, run.cable), (2, CableKind::FiftyNine));
    let length = run.length.unwrap();
    assert_eq!((length.low_metres, length.metres, length.high_metres), (15.0, 20.0, 25.0));
    assert_eq!(part(&house, "O2").plugged, Some(vec![]));
    assert_eq!(part(&house, "O2").adapter, None);

    let loose = part(&house, "S9");
    assert_eq!(loose.feed, None);
    assert_eq!(house.wiring.loose().keys().collect::<Vec<_>>(), [&loose.id]);
    assert_eq!(note_about(&house, loose.id), ["Found there; not traced yet."]);

    let readings: Vec<_> = house.readings.values().map(|reading| (reading.about, reading.measured)).collect();
    assert_eq!(readings, [(Some(living.id), ReadingKind::Level { mhz: 603.0, dbmv: -6.0 })]);
    assert_eq!((house.parts.len(), house.runs.len()), (8, 4));
}

#[test]
#[expect(clippy::too_many_lines, reason = "one sheet with every field, and what each became")]
fn the_fields_that_the_example_leaves_out() {
    let house = made_of(
        r#"
[survey]
internet = "300 Mb/s"
building = { ownership = "rented", shared = true }
network = { version = "2.0 bonded", ethernet = "1 Gb/s" }

[[service]]
kind = "satellite_tv"
note = "A dish on the roof."

[[part]]
tag = "E2"
kind = "entry"
service = "satellite"
state = "cut_off"

[[part]]
tag = "T1"
kind = "tap"
legs = 2
tap_loss = "12 dB"
loss = ["1 dB", "12 dB"]
return_loss = "18 dB"
power_pass = true
says_moca = true
feed = "nothing"
ends = { 2 = "loose_end" }

[[part]]
tag = "A2"
kind = "amplifier"
from = "T1"
port = "through"
cable = "11"
length = "about 40 ft"

[[part]]
tag = "O3"
kind = "outlet"
passes_on = true
from = "A2"
port = "out"
cable = "7"
length = "10-12 m measured"
connectors = "bad_joint"
plugged = "tv_box"
adapter = {}

[[part]]
tag = "X1"
kind = "unknown"
from = "O3"
cable = "unknown"

[[reading]]
at = "O3"
throughput = { down = "900 Mb/s", up = "850 Mb/s" }
note = "At night."

[[reading]]
phy_rate = "3200 Mb/s"

[[reading]]
at = "O3"
round_trip = "3.5 ms"
"#,
    );
    assert_eq!(house.unread, []);
    assert_eq!(house.internet, Some(Internet { down_mbps: 300.0, up_mbps: 300.0 }));
    assert_eq!(house.building, Some(Building { ownership: Ownership::Rented, shared: true }));
    assert_eq!(
        house.network,
        NetworkPlan { version: "2.0 bonded".into(), ethernet_mbps: Some(1000), owned: None }
    );
    let service = house.services.values().next().unwrap();
    assert_eq!((service.kind, service.top_mhz), (ServiceKind::SatelliteTv, None));
    assert_eq!(note_about(&house, service.id), ["A dish on the roof."]);
    assert_eq!(part(&house, "E2").entry_kind, EntryKind::Satellite);
    assert_eq!(part(&house, "E2").entry_state, EntryState::CutOff);

    let tap = part(&house, "T1");
    assert_eq!(tap.feed, Some(Feed::Nothing));
    assert_eq!((tap.rating.tap_db, tap.rating.return_loss_db), (Some(12.0), Some(18.0)));
    assert_eq!(tap.rating.leg_losses_db, [1.0, 12.0]);
    assert_eq!((tap.rating.power_pass, tap.rating.says_moca), (Some(true), true));
    assert_eq!(tap.end(2), Some(PortEnd::LooseEnd));
    assert!(house.wiring.heads().contains(&tap.id));

    let (feeder, port, run) = feed(&house, "A2");
    assert_eq!((feeder, port, run.unwrap().cable), ("T1", 1, CableKind::Eleven));
    let (feeder, port, run) = feed(&house, "O3");
    let run = run.unwrap();
    assert_eq!(
        (feeder, port, run.cable, run.connector_near),
        ("A2", 1, CableKind::Seven, Connector::BadJoint)
    );
    let length = run.length.unwrap();
    assert_eq!((length.low_metres, length.high_metres, length.known), (10.0, 12.0, LengthKnown::Measured));
    let outlet = part(&house, "O3");
    assert_eq!(outlet.plugged, Some(vec![Plugged::TvBox]));
    // What an adapter leaves out is as the plan of the network has it.
    assert_eq!(outlet.adapter, Some(Adapter { version: None, ethernet_mbps: None, bridge: false }));
    let port = house.port_of(outlet.adapter.as_ref());
    let told = (house.version_of(outlet.adapter.as_ref()), port.mbps, port.is_stated);
    assert_eq!(told, ("2.0 bonded", 1000, true));
    assert_eq!(feed(&house, "X1").2.unwrap().cable, CableKind::Unknown);

    let mut readings: Vec<_> =
        house.readings.values().map(|reading| format!("{:?}", reading.measured)).collect();
    readings.sort();
    assert_eq!(
        readings,
        [
            "PhyRate { mbps: 3200.0 }",
            "RoundTrip { ms: 3.5 }",
            "Throughput { down_mbps: 900.0, up_mbps: 850.0 }"
        ]
    );
}

/// A house with every service, and every reading but the four above.
const SERVICES: &str = r#"
[[room]]
name = "Den"

[[room]]
name = "Shed"
served_from = "O1"

[[service]]
kind = "cable_tv"
entry = "E1"
signal = "both"

[[service]]
kind = "cable_internet"
top = "1218 MHz"
entry = "E1"
modem = { generation = "3.1", sends_to = "85 MHz" }
drops_out = true

[[service]]
kind = "antenna_tv"
signal = "digital"

[[service]]
kind = "satellite_tv"
single_cable = "EN 50607"

[[service]]
kind = "provider_network"
network = { version = "2.0", bands = ["1400-1500 MHz", "1.55-1.65 GHz"], nodes = 3 }

[[service]]
kind = "fibre_link"
network = {}

[[service]]
kind = "power_over_coax"
power = { from = "O1", to = "A1" }
note = "The supply stands behind the sofa."

[[part]]
tag = "E1"
kind = "entry"

[[part]]
tag = "A1"
kind = "amplifier"
from = "E1"

[[part]]
tag = "O1"
kind = "outlet"
room = "Den"
from = "A1"
plugged = ["modem", "power_supply"]
adapter = {}
sharing = "through_port"
device_filter = true

[[part]]
tag = "O2"
kind = "outlet"
sharing = "splitter"
device_filter = false

[[reading]]
at = "O1"
modem_sends = "44 dBmV"
how = { reach = "adapter_page", radio = false }

[[reading]]
at = "O1"
power = { sent = "-10 dBm", received = "-40 dBm" }

[[reading]]
nodes_seen = 4

[[reading]]
at = "O1"
packet_loss = { percent = 0.5, busy = true }
how = { reach = "house", radio = true, socket = "2.5 Gb/s" }

[[reading]]
at = "O1"
link = "comes and goes"

[[reading]]
at = "O1"
throughput = "0 Mb/s"

[[reading]]
at = "O1"
swings = { low = "6 Mb/s", high = "100 Mb/s", with_heat_or_hour = true }
how = { reach = "internet", radio = false }

[[reading]]
at = "O1"
mer = "36 dB"
frequency = "603 MHz"
"#;

#[test]
fn every_service_says_what_it_is() {
    let house = made_of(SERVICES);
    assert_eq!(house.unread, []);
    let of = |kind: ServiceKind| -> &Service { house.services_of(kind).next().unwrap() };
    let plain = |kind: ServiceKind| Service::new(of(kind).id, kind);
    let (entry, amplifier, outlet) = (part(&house, "E1").id, part(&house, "A1").id, part(&house, "O1").id);
    let expected = [
        Service { entry: Some(entry), signal: Some(TvSignal::Both), ..plain(ServiceKind::CableTv) },
        Service {
            entry: Some(entry),
            top_mhz: Some(1218.0),
            modem: Some(ModemBands { generation: Some(ModemGeneration::V3_1), upstream_top_mhz: Some(85.0) }),
            drops_out: true,
            ..plain(ServiceKind::CableInternet)
        },
        Service { signal: Some(TvSignal::Digital), ..plain(ServiceKind::AntennaTv) },
        Service { single_cable: Some(SingleCable::En50607), ..plain(ServiceKind::SatelliteTv) },
        Service {
            network: Some(OtherNetwork {
                version: Some("2.0".into()),
                bands: vec![
                    Band { low_mhz: 1400.0, high_mhz: 1500.0 },
                    Band { low_mhz: 1550.0, high_mhz: 1650.0 },
                ],
                nodes: 3,
            }),
            ..plain(ServiceKind::ProviderNetwork)
        },
        Service { network: Some(OtherNetwork::default()), ..plain(ServiceKind::FibreLink) },
        Service {
            power: Some(PowerFeed { from: outlet, to: amplifier }),
            ..plain(ServiceKind::PowerOverCoax)
        },
    ];
    for service in &expected {
        assert_eq!(of(service.kind), service);
    }
    assert_eq!(house.services.len(), expected.len());
    assert_eq!(note_about(&house, of(ServiceKind::PowerOverCoax).id), ["The supply stands behind the sofa."]);
}

#[test]
fn rooms_without_coax_and_shared_outlets() {
    let house = made_of(SERVICES);
    let room = |name: &str| house.rooms.values().find(|room| room.name == name).unwrap();
    let (one, two) = (part(&house, "O1"), part(&house, "O2"));
    assert_eq!(room("Shed").served_from, Some(one.id));
    assert_eq!(room("Den").served_from, None);
    assert_eq!((one.sharing, one.device_filter), (Some(Sharing::ThroughPort), true));
    assert_eq!((two.sharing, two.device_filter), (Some(Sharing::Splitter), false));
}

#[test]
fn every_reading_says_what_was_measured_and_how() {
    let house = made_of(SERVICES);
    let outlet = Some(part(&house, "O1").id);
    let how = |reach, over_radio| Some(HowMeasured::new(reach, over_radio));
    let expected = [
        (outlet, ReadingKind::ModemSends { dbmv: 44.0 }, how(TestReach::AdapterPage, false)),
        (outlet, ReadingKind::Power { sent_dbm: -10.0, received_dbm: -40.0 }, None),
        (None, ReadingKind::NodesSeen { count: 4 }, None),
        (
            outlet,
            ReadingKind::PacketLoss { percent: 0.5, under_load: true },
            how(TestReach::House, true).map(|how| HowMeasured { socket_mbps: Some(2500), ..how }),
        ),
        (outlet, ReadingKind::Link { state: LinkState::ComesAndGoes }, None),
        (outlet, ReadingKind::Throughput { down_mbps: 0.0, up_mbps: 0.0 }, None),
        (
            outlet,
            ReadingKind::Swings { low_mbps: 6.0, high_mbps: 100.0, with_heat_or_hour: true },
            how(TestReach::Internet, false),
        ),
        (outlet, ReadingKind::ErrorRatio { mhz: 603.0, db: 36.0 }, None),
    ];
    let told: Vec<_> =
        house.readings.values().map(|reading| (reading.about, reading.measured, reading.how)).collect();
    assert_eq!(told.len(), expected.len());
    for reading in expected {
        assert!(told.contains(&reading), "{reading:?} is not in {told:?}");
    }
}

#[test]
fn one_sheet_gives_one_forecast() {
    let desk = Desk::new();
    desk.write("small.toml", crate::support::SMALL);
    for name in ["one.legwork", "two.legwork"] {
        assert_eq!(desk.run(&["sheet", "small.toml", name]).code, 0);
    }
    let (one, two) =
        (desk.run(&["--json", "forecast", "one.legwork"]), desk.run(&["--json", "forecast", "two.legwork"]));
    assert!(one.json()["rooms"][0]["down_mbps"]["likely"].as_f64().unwrap() > 0.0);
    assert_eq!(one.out, two.out);
    // They are two surveys all the same, by one computer under an id of its own in each.
    let open = |name| Store::open(&desk.work().join(name), AuthorId::random()).unwrap();
    assert_ne!(open("one.legwork").survey_id(), open("two.legwork").survey_id());
    let key = std::fs::read_to_string(desk.home().join("author-key")).unwrap().trim().parse().unwrap();
    for name in ["one.legwork", "two.legwork"] {
        let store = open(name);
        let id = store.survey_id().subject();
        let is = store.ledger().shown(id, "is").unwrap();
        let writer = Writer::Device { key, before: None };
        assert_eq!(is.by(), writer.in_survey(store.survey_id(), |_| false));
    }
}

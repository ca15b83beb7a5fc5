//! For every kind of change a house where the work list must hold it, and one, as near to it as can be, where it must
//! not.

use house::rating::Band;
use house::record::{
    CableKind, ChangeKind, Connector, EntryKind, HowMeasured, LinkState, ModemBands, ModemGeneration,
    OutletCheck, Part, Plugged, PortEnd, ReadingKind, ServiceKind, Sharing, TestReach,
};

use crate::House;

/// A change, by the name of its message, and two houses.
pub struct Case {
    /// The message without `change-`.
    pub name: &'static str,
    /// Here it must be in the list.
    pub there: House,
    /// Here it must not.
    pub absent: House,
}

fn case(name: &'static str, there: House, absent: House) -> Case {
    Case { name, there, absent }
}

/// Entry, filter, a two-way splitter made for the band, bridge and office over `metres` of 6-series cable each. Far
/// enough that a decibel shows in the rate.
pub fn house(metres: f64) -> House {
    House::new()
        .entry("E1", EntryKind::Cable)
        .filter("F1")
        .from("E1", 1)
        .over(CableKind::Six, 1.0)
        .splitter("S1", 2)
        .made_for(5.0, 1675.0)
        .from("F1", 1)
        .over(CableKind::Six, 1.0)
        .outlet("O1", "Study")
        .from("S1", 1)
        .over(CableKind::Six, metres)
        .plugged(&[])
        .adapter("2.5")
        .bridge()
        .outlet("O2", "Office")
        .from("S1", 2)
        .over(CableKind::Six, metres)
        .plugged(&[])
        .adapter("2.5")
        .wish("Office", 2000.0)
}

/// The length at which the pair of [`house()`] runs well below its port.
pub const FAR: f64 = 70.0;

/// One case for each change.
pub fn cases() -> Vec<Case> {
    [
        filter_cases(),
        splitter_cases(),
        amplifier_cases(),
        run_cases(),
        modem_cases(),
        room_cases(),
        test_cases(),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn filter_cases() -> Vec<Case> {
    let behind = house(10.0).without("F1").filter("F2").from("S1", 2).over(CableKind::Six, 1.0);
    let old = house(10.0)
        .at("F1")
        .with(|filter| filter.rating.stop_band = Some(Band { low_mhz: 1125.0, high_mhz: 1525.0 }));
    vec![
        case("add-entry-filter", house(10.0).without("F1"), house(10.0)),
        case("move-entry-filter", behind.at("O2").from("F2", 1).over(CableKind::Six, 10.0), house(10.0)),
        case("swap-entry-filter", old, house(10.0)),
    ]
}

fn splitter_cases() -> Vec<Case> {
    let legs = |legs: u8, top: f64| {
        let house = house(FAR).at("S1").made_for(5.0, top).with(|splitter| splitter.rating.legs = legs);
        (3..=legs).fold(house, House::cap)
    };
    let second = |legs: u8, metres: f64| {
        let house = house(FAR)
            .splitter("S2", legs)
            .made_for(5.0, 1675.0)
            .from("S1", 2)
            .over(CableKind::Six, metres)
            .at("O2")
            .from("S2", 1)
            .over(CableKind::Six, FAR);
        (2..=legs).fold(house.at("S2"), House::cap)
    };
    let den = |metres| {
        second(2, metres)
            .at("S2")
            .with(|splitter| splitter.ends.clear())
            .outlet("O3", "Den")
            .from("S2", 2)
            .over(CableKind::Six, FAR)
            .plugged(&[])
            .adapter("2.5")
    };
    let three = || house(10.0).at("S1").with(|splitter| splitter.rating.legs = 3);
    let plugged = |devices: &[Plugged]| {
        three().outlet("O3", "Den").from("S1", 3).over(CableKind::Six, 5.0).plugged(devices)
    };
    vec![
        case("swap-splitter", legs(8, 1000.0), legs(2, 1675.0)),
        case("remove-splitter", second(2, 1.0), house(FAR)),
        case("merge-splitters", den(1.0), den(20.0)),
        case("cap", three().open(3), three().cap(3)),
        case("cap-outlet", plugged(&[]), plugged(&[Plugged::Tv])),
    ]
}

fn amplifier(house: House, by_pass: Option<bool>) -> House {
    house
        .amplifier("A1", 1)
        .with(move |amplifier: &mut Part| amplifier.rating.moca_bypass = by_pass)
        .from("S1", 2)
        .over(CableKind::Six, 5.0)
        .at("O2")
        .from("A1", 1)
        .over(CableKind::Six, 10.0)
}

fn amplifier_cases() -> Vec<Case> {
    let tv = |by_pass| amplifier(house(10.0), by_pass).at("O2").plugged(&[Plugged::Tv]);
    vec![
        // A TV hangs below it and nobody measured there: it may not just go.
        case("swap-amplifier", tv(Some(false)), tv(Some(true))),
        case("remove-amplifier", amplifier(house(10.0), Some(false)), tv(Some(false))),
    ]
}

fn run_cases() -> Vec<Case> {
    let cable = |cable| house(FAR).at("O2").over(cable, FAR);
    let connector = |connector| house(FAR).at("O2").run(move |run| run.connector_far = connector);
    vec![
        case("replace-run", cable(CableKind::FiftyNine), cable(CableKind::Six)),
        case("renew-connectors", connector(Connector::Corroded), connector(Connector::Compression)),
    ]
}

fn modem_cases() -> Vec<Case> {
    let modem = |legs: u8| {
        house(10.0)
            .at("S1")
            .with(move |splitter| splitter.rating.legs = legs)
            .outlet("O3", "Hall")
            .from("S1", 3)
            .over(CableKind::Six, 8.0)
            .plugged(&[Plugged::Modem])
    };
    let generation = |generation| {
        modem(3).about_service(ServiceKind::CableInternet, move |service| {
            service.top_mhz = Some(1002.0);
            service.modem = Some(ModemBands { generation: Some(generation), upstream_top_mhz: None });
        })
    };
    // The service reaches far into the band; the rest of the house has the whole band once it is cut off.
    let in_the_band = |legs| {
        modem(legs)
            .without("F1")
            .about_service(ServiceKind::CableInternet, |service| service.top_mhz = Some(1218.0))
    };
    let with_tv =
        in_the_band(4).outlet("O4", "Den").from("S1", 4).over(CableKind::Six, 8.0).plugged(&[Plugged::Tv]);
    let shared = || house(10.0).at("O2").plugged(&[Plugged::Tv]);
    let sharing = |sharing| shared().with(move |outlet| outlet.sharing = Some(sharing));
    vec![
        case("filter-at-modem", generation(ModemGeneration::V3_1), generation(ModemGeneration::V3_0)),
        // By the adapter's own through port the TV hears nothing of it.
        case("filter-at-tv", sharing(Sharing::Splitter), sharing(Sharing::ThroughPort)),
        case("modem-own-line", in_the_band(3), with_tv),
        case("share-outlet", shared(), sharing(Sharing::Splitter)),
    ]
}

fn room_cases() -> Vec<Case> {
    let loose = |house: House, tag: &str| house.outlet(tag, tag).plugged(&[]).adapter("2.5");
    let end = || house(10.0).at("S1").with(|splitter| splitter.rating.legs = 3).end(3, PortEnd::LooseEnd);
    let beside = |room: &str| {
        house(10.0)
            .at("O1")
            .over(CableKind::FiftyNine, 120.0)
            .at("S1")
            .with(|splitter| splitter.rating.legs = 3)
            .outlet("O3", room)
            .from("S1", 3)
            .over(CableKind::Six, 10.0)
            .plugged(&[])
    };
    let attic = |house: House| house.wish("Attic", 500.0);
    let den = || {
        house(10.0)
            .at("S1")
            .with(|splitter| splitter.rating.legs = 3)
            .outlet("O3", "Den")
            .from("S1", 3)
            .over(CableKind::Six, 10.0)
            .plugged(&[Plugged::Tv])
    };
    vec![
        case("join-loose", loose(end(), "O3"), loose(loose(end(), "O3"), "O4")),
        case("move-bridge", beside("Study"), beside("Den")),
        case("use-outlet-nearby", attic(den()), den()),
        case("new-run", attic(house(10.0)), attic(house(10.0)).rented()),
    ]
}

/// What to check where a test failed, and what to renew where the adapters' version is the limit.
fn test_cases() -> Vec<Case> {
    let both = |version| house(10.0).at("O1").with(of(version)).at("O2").with(of(version));
    let link = |state| house(10.0).at("O2").reads(ReadingKind::Link { state });
    let loses =
        |house: House, db: f64| house.at("O2").reads(ReadingKind::Power { sent_dbm: 0.0, received_dbm: -db });
    let unseen = |connector: Connector| {
        house(10.0).at("O2").run(move |run| (run.connector_near, run.connector_far) = (connector, connector))
    };
    let gives = |mbps: f64| {
        let how = Some(HowMeasured::new(TestReach::House, false));
        house(10.0).at("O2").reads_how(ReadingKind::Throughput { down_mbps: mbps, up_mbps: mbps }, how)
    };
    let looked = |house: House| {
        let (office, study, split) = (house.id_of("O2"), house.id_of("O1"), house.id_of("S1"));
        let checks = [OutletCheck::Adapter, OutletCheck::ShortCable];
        let house = checks
            .into_iter()
            .fold(house, |house, check| house.tried(ChangeKind::CheckAtOutlet { outlet: office, check }));
        let house = [split, study]
            .into_iter()
            .fold(house, |house, part| house.tried(ChangeKind::LookAtPart { part, outlet: office }));
        [office, study]
            .into_iter()
            .fold(house, |house, to| house.tried(ChangeKind::LookAtRun { to, outlet: office }))
    };
    let old = || house(10.0).at("O2").with(of("1.1"));
    let dead = || looked(link(LinkState::Absent));
    let den = |house: House| {
        let house = house.at("S1").with(|splitter| splitter.rating.legs = 3);
        house.outlet("O3", "Den").from("S1", 3).over(CableKind::Six, 10.0).plugged(&[]).adapter("2.5")
    };
    let little = |house: House| den(house).wish("Den", 50.0);
    vec![
        case("newer-adapter", both("1.1"), both("2.5")),
        // Where little is wished for, the older of the two will do.
        case("exchange-adapters", little(old()), little(old()).at("O3").with(of("1.1"))),
        case("check-adapter", link(LinkState::Absent), link(LinkState::ComesAndGoes)),
        case("check-short-cable", link(LinkState::ComesAndGoes), link(LinkState::Steady)),
        // All on the way is known and good, and yet 60 dB are lost over 20 m of cable and one splitter.
        case("look-at-part", loses(house(10.0), 60.0), loses(house(10.0), 10.0)),
        case(
            "look-at-run",
            loses(unseen(Connector::Unknown), 60.0),
            loses(unseen(Connector::Compression), 60.0),
        ),
        case("check-network-cable", gives(80.0), gives(2340.0)),
        // With one room alone, no adapter can change places.
        case("check-other-adapter", den(dead()), dead()),
        case("check-measure", dead(), looked(link(LinkState::Steady))),
    ]
}

fn of(version: &'static str) -> impl FnOnce(&mut Part) {
    move |part| {
        if let Some(adapter) = &mut part.adapter {
            adapter.version = Some(version.into());
        }
    }
}

//! What else uses the coax: stated as facts, placed in the band, powered over the wire.

#![expect(clippy::unwrap_used, reason = "a failed test is what is wanted")]

use advice::finding::{FindingKind, findings};
use advice::forecast::{Forecast, Options, Reach, forecast};
use advice::level::{MODEM_RECEIVES, modem_sends_most};
use facts::fact::{AuthorId, Edit, SubjectId};
use facts::store::Store;
use house::rating::Band;
use house::record::{
    ChangeKind, EntryKind, HowMeasured, ModemGeneration, OtherNetwork, PartKind, Plugged, PowerFeed,
    ReadingKind, ServiceKind, SingleCable, Survey, TestReach, TvSignal, fold, power_paths,
};
use houses::{House, good_house, part_id};
use serde_json::{Value, json};

fn folded(edits: &[Edit]) -> Survey {
    let home = tempfile::TempDir::new().unwrap();
    let mut store = Store::create(&home.path().join("house.legwork"), AuthorId::random()).unwrap();
    store.write(edits).unwrap();
    fold(store.ledger(), store.survey_id()).unwrap()
}

fn stated(id: SubjectId, is: &str, fields: &[(&str, Value)]) -> Vec<Edit> {
    let first = Edit::new(id, "is", is);
    std::iter::once(first)
        .chain(fields.iter().map(|(name, value)| Edit::new(id, *name, value.clone())))
        .collect()
}

#[test]
fn a_service_is_stated_in_full() {
    let (id, entry, amplifier) = (SubjectId::random(), SubjectId::random(), SubjectId::random());
    let survey = folded(&stated(
        id,
        "service",
        &[
            ("kind", json!("cable_internet")),
            ("top_mhz", json!(1218.0)),
            ("entry", json!(entry)),
            ("signal", json!("analog")),
            ("modem", json!({"generation": "3.1", "upstream_top_mhz": 85.0})),
            ("single_cable", json!("en50607")),
            (
                "other_network",
                json!({"version": "2.0", "bands": [{"low_mhz": 1400.0, "high_mhz": 1500.0}], "nodes": 3}),
            ),
            ("power", json!({"from": entry, "to": amplifier})),
        ],
    ));
    assert!(survey.unread.is_empty(), "{:?}", survey.unread);
    let service = &survey.services[&id];
    assert_eq!(
        (service.top_mhz, service.entry, service.signal),
        (Some(1218.0), Some(entry), Some(TvSignal::Analog))
    );
    assert_eq!(service.upstream_top_mhz(), Some(85.0));
    assert_eq!(service.modem.and_then(|modem| modem.generation), Some(ModemGeneration::V3_1));
    assert_eq!(service.single_cable, Some(SingleCable::En50607));
    let bands = vec![Band { low_mhz: 1400.0, high_mhz: 1500.0 }];
    assert_eq!(service.network, Some(OtherNetwork { version: Some("2.0".into()), bands, nodes: 3 }));
    assert_eq!(service.power, Some(PowerFeed { from: entry, to: amplifier }));
}

#[test]
fn a_service_of_an_older_survey_is_read_as_before() {
    let id = SubjectId::random();
    let survey = folded(&stated(id, "service", &[("kind", json!("cable_tv")), ("top_mhz", json!(860.0))]));
    let service = &survey.services[&id];
    assert_eq!((service.kind, service.top_mhz), (ServiceKind::CableTv, Some(860.0)));
    assert_eq!((service.modem, service.signal, service.power), (None, None, None));
}

#[test]
fn every_kind_of_reading_comes_back() {
    let kinds = [
        ReadingKind::Level { mhz: 603.0, dbmv: -6.0 },
        ReadingKind::ModemSends { dbmv: 44.0 },
        ReadingKind::Throughput { down_mbps: 900.0, up_mbps: 850.0 },
        ReadingKind::PhyRate { mbps: 3200.0 },
        ReadingKind::RoundTrip { ms: 3.5 },
        ReadingKind::Power { sent_dbm: -10.0, received_dbm: -40.0 },
        ReadingKind::NodesSeen { count: 4 },
        ReadingKind::PacketLoss { percent: 0.5, under_load: true },
        ReadingKind::Swings { low_mbps: 6.0, high_mbps: 100.0, with_heat_or_hour: true },
    ];
    for kind in kinds {
        let id = SubjectId::random();
        let measured = serde_json::to_value(kind).unwrap();
        let how = json!({"reach": "adapter_page", "over_radio": false});
        let survey = folded(&stated(id, "reading", &[("measured", measured), ("how", how)]));
        let reading = &survey.readings[&id];
        assert_eq!(reading.measured, kind);
        assert_eq!(reading.how, Some(HowMeasured::new(TestReach::AdapterPage, false)));
    }
}

fn forecast_of(survey: &Survey) -> Forecast {
    forecast(survey, &Options { draws: 8, seed: 1, points: 111, settles: false }).unwrap()
}

/// Edges of the channels that a forecast uses, MHz.
fn edges(forecast: &Forecast) -> Vec<(f64, f64)> {
    forecast.channels.iter().map(|(centre, width)| (centre - width / 2.0, centre + width / 2.0)).collect()
}

/// C12 of the field cases, "Home network notes: MoCA" (jfcarter.net): a fibre box's link and the rooms' network on one
/// wire need channels of their own.
#[test]
fn c12_the_rooms_stay_out_of_the_fibre_boxs_channels() {
    let link = |low_mhz: f64, high_mhz: f64| {
        good_house().about_service(ServiceKind::FibreLink, |link| {
            link.network =
                Some(OtherNetwork { bands: vec![Band { low_mhz, high_mhz }], ..Default::default() });
        })
    };
    let alone = edges(&forecast_of(&good_house().survey()));
    assert_eq!(alone.len(), 5);
    assert!(alone.iter().any(|(low, high)| *low < 1325.0 && *high > 1275.0));
    let beside = edges(&forecast_of(&link(1275.0, 1325.0).survey()));
    assert_eq!(beside.len(), 3, "1325 to 1675 MHz holds three channels of 100 MHz");
    assert!(beside.iter().all(|(low, high)| *low >= 1325.0 || *high <= 1275.0), "{beside:?}");
    // At the edge of the band (1.1's lowest channel, D1) there is room for both.
    let edge = edges(&forecast_of(&link(1125.0, 1175.0).survey()));
    assert_eq!(edge.len(), 5);
}

/// 950 to 2150 MHz, shared or not: EN 50494:2007 and EN 50607:2015 keep to the same range.
#[test]
fn satellite_leaves_no_channel_on_its_tree_and_all_on_another() {
    let dish = |tag: &str| {
        good_house()
            .entry("E2", EntryKind::Satellite)
            .about_service(ServiceKind::SatelliteTv, |service| {
                service.single_cable = Some(SingleCable::En50607);
            })
            .at("S1")
            .with(|splitter| splitter.rating.legs = 3)
            .outlet("O3", "Den")
            .from(tag, if tag == "S1" { 3 } else { 1 })
            .plugged(&[Plugged::SatelliteReceiver])
            .survey()
    };
    let reach =
        |survey: &Survey| forecast_of(survey).room(part_id(survey, "O2")).map(|room| room.reach.clone());
    assert_eq!(reach(&dish("S1")), Some(Reach::NoChannel));
    assert!(matches!(reach(&dish("E2")), Some(Reach::Estimated(_))));
}

#[test]
fn a_service_that_comes_in_elsewhere_takes_nothing_here() {
    let house =
        || good_house().entry("E2", EntryKind::Cable).service(ServiceKind::CableInternet, Some(1218.0));
    let at = |tag: &'static str| {
        let house = house();
        let entry = house.id_of(tag);
        house.about_service(ServiceKind::CableInternet, |service| service.entry = Some(entry)).survey()
    };
    assert_eq!(edges(&forecast_of(&at("E2"))).len(), 5);
    // Above 1218 MHz four channels of 100 MHz are left.
    assert_eq!(edges(&forecast_of(&at("E1"))).len(), 4);
}

fn powered() -> House {
    good_house()
        .amplifier("A1", 1)
        .with(|amplifier| amplifier.rating.moca_bypass = Some(true))
        .from("F1", 1)
        .at("S1")
        .from("A1", 1)
        .outlet("O3", "Cellar")
        .from("S1", 3)
        .plugged(&[Plugged::PowerSupply])
        .at("S1")
        .with(|splitter| splitter.rating.legs = 3)
}

#[test]
fn power_goes_from_the_supply_to_the_amplifier_over_what_lies_between() {
    let survey = powered().survey();
    let paths = power_paths(&survey);
    let way: Vec<_> = ["O3", "S1", "A1"].map(|tag| part_id(&survey, tag)).into();
    assert_eq!(paths.len(), 1);
    assert_eq!(paths[0].way, way);
    // What was stated goes before what follows from where things stand.
    let house = powered()
        .part("P1", PartKind::PowerInserter)
        .from("E1", 1)
        .at("A1")
        .from("P1", 1)
        .at("O3")
        .plugged(&[]);
    let survey = house.survey();
    assert_eq!(power_paths(&survey)[0].feed.from, part_id(&survey, "P1"));
}

#[test]
fn a_receiver_powers_the_dish_and_a_tv_powers_nothing() {
    let with = |device| {
        House::new()
            .entry("E1", EntryKind::Satellite)
            .outlet("O1", "Den")
            .from("E1", 1)
            .plugged(&[device])
            .survey()
    };
    let survey = with(Plugged::SatelliteReceiver);
    let feed = PowerFeed { from: part_id(&survey, "O1"), to: part_id(&survey, "E1") };
    assert_eq!(power_paths(&survey).iter().map(|path| path.feed).collect::<Vec<_>>(), [feed]);
    assert!(power_paths(&with(Plugged::Tv)).is_empty());
}

#[test]
fn a_splitter_that_power_goes_over_is_swapped_for_one_that_passes_it() {
    let survey = powered().survey();
    let swap = ChangeKind::SwapSplitter { splitter: part_id(&survey, "S1"), legs: 3 };
    assert_eq!(advice::worklist::refusal(swap, &survey), None);
    let after = advice::worklist::applied(swap, &survey);
    assert_eq!(after.parts[&part_id(&survey, "S1")].rating.power_pass, Some(true));
    assert_eq!(power_paths(&after).len(), 1);
    assert!(
        advice::worklist::effort(swap, &survey)
            .parts
            .iter()
            .any(|needed| needed.what.id == "need-splitter-power")
    );
    let plain = good_house().survey();
    let swap = ChangeKind::SwapSplitter { splitter: part_id(&plain, "S1"), legs: 2 };
    assert!(
        advice::worklist::effort(swap, &plain)
            .parts
            .iter()
            .all(|needed| needed.what.id != "need-splitter-power")
    );
}

/// Transmit power control: what is sent is turned down where the path is good.
#[test]
fn a_low_received_level_is_no_weak_link() {
    let power = |sent_dbm: f64, received_dbm: f64| ReadingKind::Power { sent_dbm, received_dbm };
    assert_eq!(power(-20.0, -50.0).path_loss_db(), power(5.0, -25.0).path_loss_db());
    let survey = good_house().at("O2").reads(power(-35.0, -55.0)).survey();
    let forecast = forecast_of(&survey);
    let kinds: Vec<_> = findings(&survey, Some(&forecast)).iter().map(|finding| finding.kind).collect();
    assert!(!kinds.contains(&FindingKind::LossAboveForecast), "{kinds:?}");
    let weak = good_house().at("O2").reads(power(3.0, -55.0)).survey();
    let kinds: Vec<_> = findings(&weak, Some(&forecast)).iter().map(|finding| finding.kind).collect();
    assert!(kinds.contains(&FindingKind::LossAboveForecast), "{kinds:?}");
}

#[test]
fn a_modem_on_its_own_line_leaves_no_filter_out_of_place() {
    let case = houses::change_cases::cases().into_iter().find(|case| case.name == "modem-own-line").unwrap();
    let survey = case.there.survey();
    let after =
        advice::worklist::applied(ChangeKind::ModemOwnLine { outlet: part_id(&survey, "O3") }, &survey);
    let kinds: Vec<_> = findings(&after, None).iter().map(|finding| finding.kind).collect();
    assert!(!kinds.contains(&FindingKind::FilterAfterSplit), "{kinds:?}");
    assert!(!kinds.contains(&FindingKind::EntryFilterMissing), "{kinds:?}");
    assert_eq!(edges(&forecast_of(&after)).len(), 5, "the service is no longer on the rooms' tree");
}

#[test]
fn the_windows_of_the_modem_are_as_published() {
    // -15 to +15 dBmV: DOCSIS Radio Frequency Interface Specification, table "Electrical Input to CM", as quoted in "Broadband: Total Power", cablefax.com.
    assert!(MODEM_RECEIVES.holds(-15.0) && MODEM_RECEIVES.holds(15.0) && !MODEM_RECEIVES.holds(15.1));
    // 58 dBmV, 16-QAM on one channel: "DOCSIS 3.0 cable modems", volpefirm.com.
    assert!((modem_sends_most(ModemGeneration::V3_0).0 - 58.0).abs() < 1e-12);
}

/// A cap as a part of its own, at the end of a run, ends the run: nothing hangs behind it.
#[test]
fn a_cap_at_the_end_of_a_run_ends_it() {
    let capped = good_house()
        .at("S1")
        .with(|splitter| splitter.rating.legs = 3)
        .part("T1", PartKind::Terminator)
        .from("S1", 3)
        .survey();
    assert!(matches!(forecast_of(&capped).rooms[0].reach, Reach::Estimated(_)));
}

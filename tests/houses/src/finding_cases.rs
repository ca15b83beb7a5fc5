//! For every kind of finding a house where it must appear, and one, as near to it as can be, where it must not.

// Linted as a library only: in a build for tests the lint keeps quiet.
#[cfg_attr(not(test), expect(clippy::enum_glob_use, reason = "a table that names nearly every kind"))]
use advice::finding::FindingKind::{self, *};
use advice::forecast::{
    Curve, Forecast, Limit, Options, PathForecast, Reach, RoomForecast, SharedCapacity, forecast,
};
use coax::Span;
use house::rating::Band;
use house::record::{
    Asked, CableKind, ChangeKind, Connector, EntryKind, EntryState, HowMeasured, LinkState, ModemBands,
    ModemGeneration, OtherNetwork, PartKind, Plugged, PortEnd, ReadingKind, Run, ServiceKind, Survey,
    TestReach, TvSignal,
};

use crate::{House, good_house, part_id};

/// A house and, where the finding needs one, a forecast for it.
pub struct Seen {
    /// The house.
    pub survey: Survey,
    /// The forecast.
    pub forecast: Option<Forecast>,
}

impl From<House> for Seen {
    fn from(house: House) -> Self {
        Self { survey: house.survey(), forecast: None }
    }
}

/// A kind, the house that has it, and the house that has not.
pub struct Case {
    /// The kind.
    pub kind: FindingKind,
    /// Here it must appear.
    pub there: Seen,
    /// Here it must not.
    pub absent: Seen,
}

fn case(kind: FindingKind, there: impl Into<Seen>, absent: impl Into<Seen>) -> Case {
    Case { kind, there: there.into(), absent: absent.into() }
}

/// One case for each kind.
pub fn cases() -> Vec<Case> {
    [entry_cases(), filter_cases(), split_cases(), leg_cases(), amplifier_cases(), run_cases(), tree_cases()]
        .into_iter()
        .chain([service_cases(), adapter_cases(), forecast_cases(), level_cases(), network_cases()])
        .chain([power_cases(), test_cases(), measured_cases()])
        .flatten()
        .collect()
}

fn entry_cases() -> Vec<Case> {
    let good = good_house;
    let state = |house: House, state| house.at("E1").with(move |entry| entry.entry_state = state);
    let unfiltered = || good().without("F1");
    // A third outlet for the modem, with a filter of its own.
    let behind_split = |house: House| {
        house
            .at("S1")
            .with(|s| s.rating.legs = 3)
            .filter("F2")
            .from("S1", 3)
            .outlet("O3", "Den")
            .from("F2", 1)
    };
    let antenna = || unfiltered().at("E1").with(|entry| entry.entry_kind = EntryKind::Antenna);
    // At the mast, behind an antenna's entry.
    let mast = |by_pass| {
        let house = antenna().amplifier("A1", 1).with(move |part| part.rating.moca_bypass = by_pass);
        house.from("E1", 1).at("G1").from("A1", 1)
    };
    // What stands outside behind the entry is powered by a supply in the house.
    let powered = |house: House| house.at("O2").plugged(&[Plugged::PowerSupply]);
    let dish_by = |kind, tag: &str| {
        let house = unfiltered().at("E1").with(move |entry| entry.entry_kind = kind);
        house.entry("E2", EntryKind::Unknown).service_by(ServiceKind::SatelliteTv, tag)
    };
    // A common splitter before one's own filter; its other leg feeds somebody else.
    let flat = |house: House, end: PortEnd| {
        house.splitter("S0", 2).made_for(5.0, 1675.0).from("G1", 1).end(2, end).at("F1").from("S0", 1)
    };
    let open_flat = |end| {
        let house = unfiltered().splitter("S0", 2).made_for(5.0, 1675.0).from("G1", 1).end(2, end);
        house.at("S1").from("S0", 1)
    };
    vec![
        // A preamplifier has no by-pass (common practice, no source).
        case(EntryFilterMissing, antenna(), mast(None)),
        case(EntryFilterMissing, mast(Some(true)), mast(Some(false))),
        case(EntryFilterMissing, powered(unfiltered()), powered(antenna())),
        case(EntryFilterMissing, dish_by(EntryKind::Antenna, "E2"), dish_by(EntryKind::Antenna, "E1")),
        case(EntryFilterIfConnected, dish_by(EntryKind::Unknown, "E2"), dish_by(EntryKind::Unknown, "E1")),
        case(FilterAfterSplit, flat(good(), PortEnd::Capped), flat(good(), PortEnd::AnotherHome)),
        case(FilterAfterSplit, flat(good(), PortEnd::Capped), flat(good().shared(), PortEnd::Capped)),
        case(SharedBuilding, flat(good(), PortEnd::AnotherHome), flat(good(), PortEnd::Capped)),
        case(SharedBuildingOpen, open_flat(PortEnd::AnotherHome), flat(good(), PortEnd::AnotherHome)),
        case(EntryFilterMissing, unfiltered(), state(unfiltered(), EntryState::CutOff)),
        case(EntryFilterIfConnected, state(unfiltered(), EntryState::Unknown), unfiltered()),
        case(EntryFilterNotSeen, unfiltered().unsure("E1", Asked::EntryFilter), unfiltered()),
        case(
            FilterAfterSplit,
            behind_split(unfiltered()).adapter("2.5"),
            behind_split(good()).plugged(&[Plugged::Modem]),
        ),
        case(
            FilterStreetSide,
            good().at("F1").from("E1", 1).at("G1").from("F1", 1).at("S1").from("G1", 1),
            good(),
        ),
        case(GroundBlockNotSeen, good().without("G1"), good()),
        case(SharedBuildingOpen, unfiltered().shared(), good().shared()),
        case(SharedBuilding, good().shared(), unfiltered().shared()),
    ]
}

fn filter_cases() -> Vec<Case> {
    let stop = |low_mhz, high_mhz| {
        good_house().at("F1").with(move |filter| {
            filter.rating.stop_band = Some(house::rating::Band { low_mhz, high_mhz });
        })
    };
    let rejection = |db| good_house().at("F1").with(move |filter| filter.rating.rejection_db = Some(db));
    let internet_to = |mhz| good_house().service(ServiceKind::CableInternet, Some(mhz));
    let filter_from = |low_mhz| {
        internet_to(1002.0)
            .at("F1")
            .with(move |filter| filter.rating.band = Some(Band { low_mhz, high_mhz: 1002.0 }))
    };
    let from = |kind| good_house().at("E1").with(move |entry| entry.entry_kind = kind);
    vec![
        // MoCA 1.1's own band D ends at 1525 MHz: a filter of that age leaves the rest of Extended D open.
        case(FilterNotForBand, stop(1125.0, 1525.0), stop(1125.0, 1675.0)),
        case(FilterWeak, rejection(25.0), rejection(40.0)),
        case(
            FilterLabelUnknown,
            good_house().at("F1").with(|filter| filter.rating = house::rating::PartRating::default()),
            good_house(),
        ),
        case(FilterCutsService, internet_to(1218.0), internet_to(1002.0)),
        case(FilterMayHoldReturn, filter_from(54.0), filter_from(5.0)),
        case(FilterInSatelliteLine, from(EntryKind::Satellite), from(EntryKind::Antenna)),
        case(
            FilterInSatelliteLine,
            good_house().service_by(ServiceKind::SatelliteTv, "E1"),
            good_house().entry("E2", EntryKind::Unknown).service_by(ServiceKind::SatelliteTv, "E2"),
        ),
        // What comes in by another entry does not pass this filter.
        case(
            FilterCutsService,
            internet_to(1218.0).service_by(ServiceKind::CableInternet, "E1"),
            internet_to(1218.0).entry("E2", EntryKind::Cable).service_by(ServiceKind::CableInternet, "E2"),
        ),
    ]
}

/// The house with its forecast: few draws will do.
fn forecast_of(house: House) -> Seen {
    let survey = house.survey();
    let options = advice::forecast::Options { draws: 8, seed: 1, points: 89, settles: false };
    let forecast = advice::forecast::forecast(&survey, &options).ok();
    Seen { survey, forecast }
}

fn split_cases() -> Vec<Case> {
    let made_for = |top| good_house().at("S1").made_for(5.0, top);
    let none_free = std::ops::RangeInclusive::new(1, 0);
    let legs = |legs: u8, free: std::ops::RangeInclusive<u8>| {
        let house = good_house().at("S1").with(|splitter| splitter.rating.legs = legs);
        free.fold(house, House::cap)
    };
    let between = |metres| {
        good_house()
            .splitter("S2", 3)
            .made_for(5.0, 1675.0)
            .from("S1", 2)
            .over(CableKind::Six, metres)
            .at("O2")
            .from("S2", 1)
            .outlet("O3", "Den")
            .from("S2", 2)
            .adapter("2.5")
            .outlet("O4", "Attic")
            .from("S2", 3)
            .adapter("2.5")
    };
    let three_in_a_row = |house: House| {
        house.splitter("S3", 2).made_for(5.0, 1675.0).from("S2", 3).at("O4").from("S3", 1).at("S3").cap(2)
    };
    vec![
        case(SplitterNotForBand, made_for(1000.0), made_for(1675.0)),
        case(SplitterLabelUnknown, good_house().at("S1").with(|s| s.rating.band = None), good_house()),
        case(
            SplitsManyMet,
            forecast_of(three_in_a_row(between(1.0)).wish("Attic", 100.0)),
            forecast_of(three_in_a_row(between(1.0)).wish("Attic", 100.0).at("S3").made_for(5.0, 1000.0)),
        ),
        case(
            SplitterForSatellite,
            good_house().at("S1").label("5-2400 MHz SATELLITE SPLITTER DC PASS").made_for(5.0, 2400.0),
            good_house().at("S1").label("5-1675 MHz MoCA SPLITTER"),
        ),
        case(
            LabelDoubtful,
            good_house().at("S1").with(|s| {
                s.label = Some("5-1ooo MHz".into());
                s.rating.doubtful = true;
            }),
            good_house(),
        ),
        case(SplitterTooLarge, legs(8, 3..=8), legs(2, none_free)),
        case(
            SplitterNeedless,
            good_house().splitter("S2", 2).from("S1", 2).cap(2).at("O2").from("S2", 1),
            good_house(),
        ),
        case(SplittersInCascade, between(0.5), between(15.0)),
        case(SplitsMany, three_in_a_row(between(15.0)), between(15.0)),
    ]
}

fn leg_cases() -> Vec<Case> {
    let three_way = || good_house().at("S1").with(|splitter| splitter.rating.legs = 3);
    let den = || three_way().outlet("O3", "Den").from("S1", 3);
    vec![
        case(LegOpen, three_way().open(3), three_way().cap(3)),
        case(LegNotSeen, three_way(), three_way().open(3)),
        case(OutletOpen, den().plugged(&[]), den().plugged(&[Plugged::Tv])),
        case(LooseEnd, three_way().end(3, PortEnd::LooseEnd), three_way().open(3)),
        case(TwoOnPort, den().at("O3").from("S1", 2), den()),
    ]
}

fn amplifier_cases() -> Vec<Case> {
    let by_pass = |by_pass| move |part: &mut house::record::Part| part.rating.moca_bypass = by_pass;
    // Between the splitter and the office.
    let between = |known: Option<bool>| {
        good_house().amplifier("A1", 1).with(by_pass(known)).from("S1", 2).at("O2").from("A1", 1)
    };
    // Between the filter and the splitter, above both rooms.
    let above = |known: Option<bool>| {
        good_house().amplifier("A1", 1).with(by_pass(known)).from("F1", 1).at("S1").from("A1", 1)
    };
    // In place of the splitter.
    let instead = |known: Option<bool>| {
        good_house()
            .amplifier("A1", 2)
            .with(by_pass(known))
            .from("F1", 1)
            .at("O1")
            .from("A1", 1)
            .at("O2")
            .from("A1", 2)
    };
    // So far that what the outputs are kept apart by costs the wish.
    let far = |house: House| house.at("O2").over(CableKind::FiftyNine, 90.0).wish("Office", 2000.0);
    let tested = |house: House| {
        let how = Some(HowMeasured::new(TestReach::House, false));
        house.at("O2").reads_how(ReadingKind::Throughput { down_mbps: 900.0, up_mbps: 900.0 }, how)
    };
    vec![
        case(AmplifierNoBypass, between(Some(false)), above(Some(false))),
        case(AmplifierBypassDecides, worked_out(between(None)), worked_out(between(Some(true)))),
        // A test in the room tells more than what hangs on it.
        case(AmplifierBypassUnknown, tested(between(None)), worked_out(between(None))),
        case(AmplifierOutputsApart, far(instead(Some(false))), far(instead(Some(true)))),
        case(AmplifierOutputsApart, far(instead(None)), worked_out(instead(None))),
        case(AmplifierAbove, above(Some(false)), above(Some(true))),
    ]
}

/// A house with the forecast of few draws.
fn worked_out(house: House) -> Seen {
    let survey = house.survey();
    let quick = Options { draws: 40, seed: 1, points: 89, settles: false };
    let told = forecast(&survey, &quick).expect("a sound house");
    Seen { survey, forecast: Some(told) }
}

fn run_cases() -> Vec<Case> {
    let over = |cable, metres| good_house().at("O2").over(cable, metres);
    let connector = |connector| good_house().at("O2").run(move |run| run.connector_far = connector);
    let street_side =
        |tag| good_house().at(tag).run(|run: &mut Run| run.connector_near = Connector::Corroded);
    let dropped = |kind| {
        let house = good_house().without("G1").at("E1").with(move |entry| entry.entry_kind = kind);
        house.at("F1").run(|run: &mut Run| run.connector_near = Connector::BadJoint)
    };
    vec![
        case(RunThinAndLong, over(CableKind::FiftyNine, 20.0), over(CableKind::FiftyNine, 5.0)),
        case(RunUnknownAndLong, over(CableKind::Unknown, 20.0), over(CableKind::Six, 20.0)),
        case(RunVeryLong, over(CableKind::Six, 60.0), over(CableKind::Eleven, 60.0)),
        case(ConnectorPoor, connector(Connector::HandTight), connector(Connector::Unknown)),
        case(ConnectorStreetSide, street_side("G1"), street_side("F1")),
        case(ConnectorPoor, street_side("F1"), street_side("G1")),
        // No ground block: the cable from the entry is the drop itself.
        case(ConnectorStreetSide, dropped(EntryKind::Cable), dropped(EntryKind::Antenna)),
        case(JointBad, connector(Connector::BadJoint), connector(Connector::TwistOn)),
    ]
}

fn tree_cases() -> Vec<Case> {
    let untraced = || good_house().at("O2").with(|outlet| outlet.feed = None);
    let gateway = |house: House| house.at("O1").plugged(&[Plugged::MocaGateway]);
    let den = |house: House| house.outlet("O3", "Den").from("S2", 1).adapter("2.5");
    let apart = || den(good_house().splitter("S2", 2).fed_by_nothing()).at("S2").cap(2);
    vec![
        case(PartLoose, untraced(), good_house()),
        case(OtherTree, apart(), untraced()),
        case(OutletFedByNothing, good_house().at("O2").fed_by_nothing(), apart()),
        case(
            BridgeNotChosen,
            good_house().at("O1").adapter("2.5"),
            gateway(good_house().at("O1").with(|outlet| outlet.adapter = None)),
        ),
        case(
            TwoBridges,
            gateway(good_house().at("O1").with(|outlet| outlet.adapter = None)).at("O2").bridge(),
            // Two bridges on two trees close no loop.
            apart().at("O3").bridge(),
        ),
        case(TagTwice, good_house().at("O2").with(|outlet| outlet.tag = Some("o1".into())), good_house()),
    ]
}

fn service_cases() -> Vec<Case> {
    // Left over between the splitter and the office.
    let combiner = || {
        let house = good_house().part("D1", PartKind::SatelliteCombiner).from("S1", 2);
        house.at("O2").from("D1", 1)
    };
    let drops = |drops| {
        good_house().about_service(ServiceKind::CableInternet, move |service| service.drops_out = drops)
    };
    let receiver = |house: House| house.outlet("O3", "Den").plugged(&[Plugged::SatelliteReceiver]);
    let three_way = || good_house().at("S1").with(|splitter| splitter.rating.legs = 3);
    let of_unknown = |house: House| {
        let house = house.service(ServiceKind::SatelliteTv, None);
        house.at("E1").with(|entry| entry.entry_kind = EntryKind::Unknown)
    };
    let dish = || receiver(good_house().entry("E2", EntryKind::Satellite)).from("E2", 1);
    vec![
        case(
            CombinerInPath,
            combiner(),
            combiner().outlet("O3", "Den").from("D1", 2).plugged(&[Plugged::SatelliteReceiver]),
        ),
        case(ModemDropsOut, drops(true), drops(false)),
        case(SatelliteOnTree, receiver(three_way()).from("S1", 3), dish()),
        case(
            SatelliteOnTree,
            good_house().service_by(ServiceKind::SatelliteTv, "E1"),
            good_house().entry("E2", EntryKind::Unknown).service_by(ServiceKind::SatelliteTv, "E2"),
        ),
        // No other entry can bring it; beside a second one it may come in by either.
        case(
            SatelliteOnTree,
            of_unknown(good_house()),
            of_unknown(good_house()).entry("E2", EntryKind::Unknown),
        ),
        case(
            SatelliteNotPlaced,
            of_unknown(good_house()).entry("E2", EntryKind::Unknown),
            of_unknown(good_house()),
        ),
        case(
            SatelliteNotPlaced,
            good_house().service(ServiceKind::SatelliteTv, None),
            dish().service(ServiceKind::SatelliteTv, None),
        ),
        case(
            ServiceInBand,
            good_house().service(ServiceKind::CableInternet, Some(1218.0)),
            good_house().service(ServiceKind::CableInternet, Some(1002.0)),
        ),
        case(
            ProviderNetwork,
            good_house().service(ServiceKind::ProviderNetwork, None),
            good_house().service(ServiceKind::CableTv, None),
        ),
        case(FibreLink, good_house().at("O1").plugged(&[Plugged::FibreBox]), good_house()),
    ]
}

fn adapter_cases() -> Vec<Case> {
    let many = |count: u8, version: &str| {
        let house = good_house().at("S1").with(|splitter| splitter.rating.legs = count);
        (3..=count).fold(house, |house, leg| {
            house.outlet(&format!("O{leg}"), &format!("Room {leg}")).from("S1", leg).adapter(version)
        })
    };
    let wanting = |version: &str, port: u32, mbps: f64| {
        good_house().at("O2").adapter(version).port(port).wish("Office", mbps)
    };
    let through = |port: u32, mbps: f64| good_house().at("O1").port(port).wish("Office", mbps);
    vec![
        // 16 nodes: TR-181 Issue 2, type MocaNodeID (IDs 0 to 15).
        case(TooManyAdapters, many(17, "2.5"), many(16, "2.5")),
        case(VersionsMixed, good_house().at("O2").adapter("1.1"), good_house()),
        // 175 Mb/s for 1.1: MoCA 2.0 press release, June 2010.
        case(VersionTooSlow, wanting("1.1", 1000, 500.0), wanting("1.1", 1000, 130.0)),
        // Over the best of cables 1.1 gives 140 to 175 Mb/s (Table 1-2 and the headline): likely less than 170.
        case(VersionTooSlow, wanting("1.1", 1000, 172.0), wanting("1.1", 1000, 130.0)),
        // What the office wants must pass the bridge in the study.
        case(EthernetSlower, through(100, 500.0), through(100, 90.0)),
        case(EthernetSlower, wanting("2.5", 100, 500.0), wanting("2.5", 1000, 500.0)),
        // A socket of 1 Gb/s passes 949 Mb/s (RFC 6349, section 4.1.1).
        case(EthernetSlower, wanting("2.5", 1000, 1000.0), wanting("2.5", 1000, 940.0)),
    ]
}

fn forecast_cases() -> Vec<Case> {
    let seen = |reach: Reach, airtime: f64| {
        let survey = good_house().survey();
        let outlet = part_id(&survey, "O2");
        let forecast = Forecast {
            seed: 1,
            draws: 1,
            frequencies: 45,
            bridge: Some(part_id(&survey, "O1")),
            channels: Vec::new(),
            nodes: 2,
            rooms: vec![RoomForecast { outlet, room: None, reach }],
            street: Vec::new(),
            shared: Some(SharedCapacity { airtime: Span::exact(airtime) }),
            round_trip_ms: Span::new(2.0, 3.0, 7.0),
        };
        Seen { survey, forecast: Some(forecast) }
    };
    vec![
        case(NoChannel, seen(Reach::NoChannel, 0.5), seen(Reach::OtherTree, 0.5)),
        case(WishesDoNotFit, seen(Reach::NoBridge, 1.4), seen(Reach::NoBridge, 0.9)),
    ]
}

/// The good house with a TV in the den.
fn with_tv() -> House {
    good_house()
        .at("S1")
        .with(|splitter| splitter.rating.legs = 3)
        .outlet("O3", "Den")
        .from("S1", 3)
        .over(CableKind::Six, 10.0)
        .plugged(&[Plugged::Tv])
}

fn level_cases() -> Vec<Case> {
    let tv = |signal, dbmv| {
        with_tv().level(603.0, dbmv).about_service(ServiceKind::CableTv, |tv| tv.signal = Some(signal))
    };
    let modem = |dbmv| good_house().at("O1").level(603.0, dbmv);
    let coming_in = || {
        let over_a_jumper = |house: House, tag| house.at(tag).over(CableKind::Six, 0.5);
        let house = ["G1", "F1", "S1"].into_iter().fold(good_house(), over_a_jumper);
        let labelled = house.with(|splitter| splitter.rating.leg_losses_db = vec![3.7; 2]);
        labelled.at("E1").level(603.0, 10.0).at("O1")
    };
    // The way to O1 leads over S1, not over O3.
    let worked_on = |tag| {
        let house = with_tv().at("O1").level(603.0, 3.0);
        let change = match tag {
            "S1" => ChangeKind::SwapSplitter { splitter: house.id_of("S1"), legs: 2 },
            other => ChangeKind::ShareOutlet { outlet: house.id_of(other) },
        };
        house.tried_since(change)
    };
    let ratio = |db| good_house().at("O1").reads(ReadingKind::ErrorRatio { mhz: 603.0, db });
    let antenna = |dbmv| {
        let entry = with_tv().at("E1").with(|entry| entry.entry_kind = EntryKind::Antenna);
        entry.at("O1").plugged(&[]).at("O3").level(603.0, dbmv)
    };
    let sends = |dbmv| good_house().at("O1").reads(ReadingKind::ModemSends { dbmv });
    let returning = |returns: f64, sends: f64| {
        good_house()
            .amplifier("A1", 1)
            .with(|amplifier| {
                amplifier.rating.moca_bypass = Some(true);
                amplifier.rating.return_high_mhz = Some(returns);
            })
            .from("F1", 1)
            .at("S1")
            .from("A1", 1)
            .about_service(ServiceKind::CableInternet, |modem| {
                modem.modem = Some(ModemBands { generation: None, upstream_top_mhz: Some(sends) });
            })
    };
    let behind = |kind| with_tv().part("H1", kind).from("S1", 3).at("O3").from("H1", 1);
    let amplified_to = |ends: f64, top: f64| {
        good_house()
            .amplifier("A1", 1)
            .made_for(54.0, ends)
            .with(|amplifier| amplifier.rating.moca_bypass = Some(true))
            .from("F1", 1)
            .at("S1")
            .from("A1", 1)
            .service(ServiceKind::CableInternet, Some(top))
    };
    let dish = |dbmv| {
        let house = with_tv().at("E1").with(|entry| entry.entry_kind = EntryKind::Satellite);
        house.at("O1").plugged(&[]).at("O3").plugged(&[Plugged::SatelliteReceiver]).level(1500.0, dbmv)
    };
    let generation = |generation| {
        good_house().about_service(ServiceKind::CableInternet, |modem| {
            modem.modem = Some(ModemBands { generation: Some(generation), upstream_top_mhz: None });
        })
    };
    vec![
        // 0 dBmV: 47 CFR 76.605(a)(3).
        case(LevelBelowRule, tv(TvSignal::Analog, -0.5), tv(TvSignal::Analog, 0.0)),
        // The same rule where analog channels are there beside digital ones, whose own edge is -12 dBmV.
        case(LevelBelowRule, tv(TvSignal::Both, -0.5), tv(TvSignal::Digital, -0.5)),
        // +15 dBmV for the digital ones among them: SCTE 40, from memory.
        case(LevelOutsideGuide, tv(TvSignal::Both, 16.0), tv(TvSignal::Analog, 16.0)),
        // -83 to -5 dBm, -34.25 to +43.75 dBmV: ATSC A/74:2010, 5.1, as quoted on a public forum.
        case(LevelOutsideGuide, antenna(44.5), antenna(43.5)),
        case(LevelNotRecommended, antenna(-20.0), antenna(-19.0)),
        // -12 dBmV: SCTE 40, from memory.
        case(LevelOutsideGuide, tv(TvSignal::Digital, -13.0), tv(TvSignal::Digital, -11.0)),
        // -15 to +15 dBmV: DOCSIS, as quoted in "Broadband: Total Power", cablefax.com.
        case(ModemLevelOutside, modem(-16.0), modem(-14.0)),
        // -7 to +7 dBmV: common practice, no source.
        // +10 dBmV come in; ground block, filter, two-way splitter and 10 m of cable leave about +3.
        case(LevelBelowWiring, coming_in().level(603.0, -9.0), coming_in().level(603.0, 3.0)),
        case(LevelAboveWiring, coming_in().level(603.0, 14.0), coming_in().level(603.0, 3.0)),
        case(LevelBeforeWork, worked_on("S1"), worked_on("O3")),
        // 28 dB and 31 dB for 256-QAM: "Broadband: Making MER Better, Part 1", cablefax.com: 31, and 3 dB less.
        case(SignalNotClean, ratio(27.5), ratio(28.5)),
        case(SignalHardlyClean, ratio(30.0), ratio(31.0)),
        // A splitter on the way to the modem: a file from 10 MHz leaves out what the modem sends there.
        case(
            MeasuredPartNotUsed,
            good_house().at("S1").measured_from(10.0, 1700.0),
            good_house().at("S1").measured_from(5.0, 1700.0),
        ),
        case(LevelNotRecommended, modem(-8.0), modem(-6.5)),
        // 50 dBmV: "DOCSIS 3.1 cable modem transmit power", volpefirm.com.
        case(ModemSendsHigh, sends(51.0), sends(49.0)),
        // 40 dBmV: the same article.
        case(ModemSendsLow, sends(35.0), sends(41.0)),
        // -13 to +17 dBmV, 47 to 77 dBuV: EN 60728-1, read second-hand.
        case(LevelOutsideGuide, dish(-14.0), dish(-12.0)),
        // An amplifier to 1002 MHz before a service to 1218 MHz, and to 1002 MHz.
        case(AmplifierEndsBelow, amplified_to(1002.0, 1218.0), amplified_to(1002.0, 1002.0)),
        case(AmplifierEndsBelow, amplified_to(1218.0, 1794.0), amplified_to(1218.0, 1218.0)),
        case(
            ModemReachUnknown,
            good_house().service(ServiceKind::CableInternet, None),
            generation(ModemGeneration::V3_0),
        ),
        // Before the TV lie a 3-way (5 to 7 dB a leg), 10 m of cable (about 2 dB) and four runs that nobody measured, up to
        // 30 m each: 8 to 25 dB in all. -12 is the least (SCTE 40, from memory).
        case(
            LevelWorkedOutOutside,
            seen_with(with_tv().at("E1").level(603.0, -8.0), Span::exact(900.0)),
            seen_with(with_tv().at("E1").level(603.0, 13.5), Span::exact(900.0)),
        ),
        // Such a filter passes what a dish sends, and stops TV.
        case(
            ServiceDoesNotArrive,
            seen_with(behind(PartKind::HighPassFilter), Span::exact(900.0)),
            seen_with(behind(PartKind::Barrel), Span::exact(900.0)),
        ),
        // Splits of 42 and 85 MHz.
        case(AmplifierReturnNarrow, returning(42.0, 85.0), returning(85.0, 85.0)),
        case(ModemMayReachBand, generation(ModemGeneration::V3_1), generation(ModemGeneration::V3_0)),
    ]
}

fn network_cases() -> Vec<Case> {
    let link = |low_mhz: f64, high_mhz: f64| {
        good_house().about_service(ServiceKind::FibreLink, |link| {
            let bands = vec![Band { low_mhz, high_mhz }];
            link.network = Some(OtherNetwork { version: Some("1.1".into()), bands, nodes: 2 });
        })
    };
    let sees_of_three = |count| {
        let house = good_house().at("S1").with(|splitter| splitter.rating.legs = 3);
        let house = house.outlet("O3", "Den").from("S1", 3).over(CableKind::Six, 10.0).adapter("2.5");
        house.at("O1").reads(ReadingKind::NodesSeen { count })
    };
    let sees = |tag: &str, count| good_house().at(tag).reads(ReadingKind::NodesSeen { count });
    vec![
        // D4 of MoCA 1.1, 1300 MHz (Table 1-1), lies in the middle; D1, 1150 MHz, at the edge leaves 500 MHz.
        case(NetworksOverlap, link(1275.0, 1325.0), link(1125.0, 1175.0)),
        case(
            NetworkChannelsUnknown,
            good_house().service(ServiceKind::FibreLink, None),
            link(1125.0, 1175.0),
        ),
        case(NodesMoreThanKnown, sees("O1", 3), sees("O1", 2)),
        case(NodeAlone, sees("O2", 1), sees("O2", 2)),
        case(NodesFewer, sees_of_three(2), sees_of_three(3)),
    ]
}

fn power_cases() -> Vec<Case> {
    let amplifier =
        || good_house().amplifier("A1", 1).with(|a| a.rating.moca_bypass = Some(true)).from("S1", 2);
    let direct = || amplifier().at("O2").from("A1", 1).plugged(&[Plugged::PowerSupply]);
    let over_a_splitter = |passes| {
        amplifier()
            .splitter("S2", 2)
            .made_for(5.0, 1675.0)
            .with(move |splitter| splitter.rating.power_pass = passes)
            .from("A1", 1)
            .cap(2)
            .at("O2")
            .from("S2", 1)
            .plugged(&[Plugged::PowerSupply])
    };
    vec![
        case(DcFeed, over_a_splitter(None), direct()),
        case(DcFeed, over_a_splitter(Some(true)), over_a_splitter(Some(false))),
        case(DcBroken, over_a_splitter(Some(false)), over_a_splitter(None)),
        case(DcFeedDirect, direct(), amplifier()),
    ]
}

fn test_cases() -> Vec<Case> {
    let one_way = |reach, over_radio| {
        let how = Some(HowMeasured::new(reach, over_radio));
        good_house().at("O2").reads_how(ReadingKind::Throughput { down_mbps: 900.0, up_mbps: 200.0 }, how)
    };
    let lost = |under_load| good_house().at("O2").reads(ReadingKind::PacketLoss { percent: 2.0, under_load });
    let lost_over = |reach| {
        let lost = ReadingKind::PacketLoss { percent: 2.0, under_load: true };
        good_house().at("O2").reads_how(lost, Some(HowMeasured::new(reach, false)))
    };
    let to_internet = |down_mbps| {
        let how = Some(HowMeasured::new(TestReach::Internet, false));
        good_house().plan(500.0).at("O2").reads_how(ReadingKind::Throughput { down_mbps, up_mbps: 40.0 }, how)
    };
    let link = |state| good_house().at("O2").reads(ReadingKind::Link { state });
    let nothing_through =
        |mbps| good_house().at("O2").reads(ReadingKind::Throughput { down_mbps: mbps, up_mbps: mbps });
    let swings = |with_heat_or_hour| {
        let swings = ReadingKind::Swings { low_mbps: 6.0, high_mbps: 100.0, with_heat_or_hour };
        good_house().at("O1").reads(swings)
    };
    vec![
        // The plan's own two rates differ: a test of the internet tells nothing of the coax.
        case(OneWaySlower, one_way(TestReach::House, false), one_way(TestReach::Internet, false)),
        case(LossUnderLoad, lost(true), lost(false)),
        case(LossWhileQuiet, lost(false), lost(true)),
        case(InternetLosesPackets, lost_over(TestReach::Internet), lost_over(TestReach::House)),
        case(LossUnderLoad, lost_over(TestReach::House), lost_over(TestReach::Internet)),
        // Nine tenths of the plan count as the plan.
        case(InternetBelowPlan, to_internet(300.0), to_internet(470.0)),
        case(NoLink, link(LinkState::Absent), link(LinkState::ComesAndGoes)),
        case(NoLink, nothing_through(0.0), nothing_through(1.0)),
        case(LinkComesAndGoes, link(LinkState::ComesAndGoes), link(LinkState::Steady)),
        case(SpeedSwings, swings(true), swings(false)),
    ]
}

fn measured_cases() -> Vec<Case> {
    let seen = |house: House| seen_with(house, Span::new(600.0, 900.0, 940.0));
    let fast = |house: House| seen_with(house, Span::new(2300.0, 2350.0, 2370.0));
    let over = |socket_mbps, mbps: f64| {
        let how = HowMeasured { socket_mbps, ..HowMeasured::new(TestReach::House, false) };
        let measured = ReadingKind::Throughput { down_mbps: mbps, up_mbps: mbps };
        fast(good_house().at("O2").reads_how(measured, Some(how)))
    };
    let well = |mbps: f64, phy_mbps: f64| {
        let measured = ReadingKind::Throughput { down_mbps: mbps, up_mbps: mbps };
        fast(good_house().at("O2").reads(ReadingKind::PhyRate { mbps: phy_mbps }).reads(measured))
    };
    let gives = |house: House, mbps: f64| {
        house.at("O2").reads(ReadingKind::Throughput { down_mbps: mbps, up_mbps: mbps })
    };
    let power = |received_dbm| {
        seen(good_house().at("O2").reads(ReadingKind::Power { sent_dbm: -10.0, received_dbm }))
    };
    let raw = |mbps: f64| seen(good_house().at("O2").reads(ReadingKind::PhyRate { mbps }));
    vec![
        // Of the PHY rate, 600 to 940 Mb/s is expected there.
        case(MeasuredBelowForecast, raw(400.0), raw(650.0)),
        case(MeasuredAboveForecast, raw(1100.0), raw(900.0)),
        // 400 Mb/s is the plan's rate there: the service sets the pace, not the coax.
        case(
            MeasuredBelowForecast,
            seen(gives(good_house(), 400.0)),
            seen(gives(good_house().plan(400.0), 400.0)),
        ),
        // An ordinary network socket, 1 Gb/s, passes 949 Mb/s of TCP (RFC 6349, 2011, section 4.1.1): the test ends there,
        // whether or not somebody said which socket it was.
        case(SocketHoldsTest, over(Some(1000), 940.0), over(Some(2500), 940.0)),
        case(SocketHoldsTest, over(None, 940.0), over(None, 500.0)),
        // Just under 100 Mb/s, whatever was said of the sockets; and any rate below over coax that is seen to be well.
        case(HundredSomewhere, over(None, 80.0), over(None, 300.0)),
        case(HundredSomewhere, over(Some(1000), 80.0), over(Some(100), 94.0)),
        case(HundredSomewhere, well(40.0, 2350.0), well(40.0, 1200.0)),
        case(MeasuredBelowForecast, well(40.0, 1200.0), well(40.0, 2350.0)),
        case(MeasuredBelowForecast, over(Some(2500), 940.0), over(Some(1000), 940.0)),
        case(MeasuredBelowForecast, over(None, 500.0), over(None, 940.0)),
        case(MeasuredAboveForecast, seen(gives(good_house(), 1100.0)), seen(gives(good_house(), 900.0))),
        // Sent with little power over a good path, little is received: only the difference of 28 dB counts.
        case(LossAboveForecast, power(-48.0), power(-38.0)),
    ]
}

/// A house as seen with a forecast of this rate both ways at O2.
fn seen_with(house: House, rate: Span) -> Seen {
    let survey = house.survey();
    let outlet = part_id(&survey, "O2");
    let path = PathForecast {
        down: rate,
        up: rate,
        phy_down: rate,
        phy_up: rate,
        loss: Span::new(20.0, 25.0, 32.0),
        links: 1.0,
        clean: 0.0,
        limit: Limit::EthernetPort,
        costs: Vec::new(),
        curve: Curve::default(),
        by_pass: None,
    };
    let forecast = Forecast {
        seed: 1,
        draws: 1,
        frequencies: 45,
        bridge: Some(part_id(&survey, "O1")),
        channels: Vec::new(),
        nodes: 2,
        rooms: vec![RoomForecast { outlet, room: None, reach: Reach::Estimated(Box::new(path)) }],
        street: Vec::new(),
        shared: None,
        round_trip_ms: Span::new(2.0, 3.0, 7.0),
    };
    Seen { survey, forecast: Some(forecast) }
}

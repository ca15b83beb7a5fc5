//! Where an entry filter belongs, and that what is told of it is one decision.

use advice::finding::{FindingKind, findings};
use advice::worklist::{Options, applied, effort, refusal, worklist};
use advice::{Against, EntryFilter, NotWanted, entry_filter};
use house::record::{
    ChangeKind, EntryKind, Incoming, PartKind, Plugged, PortEnd, ServiceKind, Sureness, Survey,
};
use houses::{House, good_house, part_id};

fn decided(survey: &Survey) -> EntryFilter {
    entry_filter(survey, part_id(survey, "E1"))
}

fn kinds(survey: &Survey) -> Vec<FindingKind> {
    findings(survey, None).iter().map(|finding| finding.kind).collect()
}

fn of_kind(kind: EntryKind) -> House {
    good_house().without("F1").at("E1").with(move |entry| entry.entry_kind = kind)
}

/// Behind the antenna's amplifier, which is known to pass the band, and over the cable by which it gets its power.
#[test]
fn behind_an_antennas_amplifier_and_passing_dc() {
    let house = of_kind(EntryKind::Antenna)
        .amplifier("A1", 1)
        .with(|part| part.rating.moca_bypass = Some(true))
        .from("E1", 1)
        .at("G1")
        .from("A1", 1)
        .at("O2")
        .plugged(&[Plugged::PowerSupply]);
    let survey = house.clone().survey();
    let change = ChangeKind::AddEntryFilter { behind: part_id(&survey, "A1") };
    assert_eq!(decided(&survey), EntryFilter::Wanted { change, against: None });
    assert_eq!(refusal(change, &survey), None);
    let after = applied(change, &survey);
    let filter = after.parts.values().find(|part| part.kind == PartKind::EntryFilter).unwrap();
    assert_eq!(filter.rating.power_pass, Some(true));
    assert_eq!(after.wiring.feed(filter.id).unwrap().part, part_id(&survey, "A1"));
    // Without the by-pass the amplifier is filter enough, and the list holds none.
    let survey = house.at("A1").with(|part| part.rating.moca_bypass = None).survey();
    let amplifier = part_id(&survey, "A1");
    assert_eq!(decided(&survey), EntryFilter::NotWanted(NotWanted::AmplifierIsolates { amplifier }));
    let list = worklist(&survey, &Options::default()).unwrap();
    assert!(!list.steps.iter().any(|step| matches!(step.change, ChangeKind::AddEntryFilter { .. })));
}

/// An amplifier's unamplified port is a way out that no amplifier closes.
#[test]
fn an_unamplified_port_leaves_a_way_out() {
    let house = |modem_port| {
        of_kind(EntryKind::Cable)
            .amplifier("A1", 1)
            .with(move |part| {
                part.rating.moca_bypass = Some(false);
                part.rating.modem_port = modem_port;
            })
            .from("G1", 1)
            .at("S1")
            .from("A1", 1)
            .survey()
    };
    assert!(matches!(decided(&house(false)), EntryFilter::NotWanted(NotWanted::AmplifierIsolates { .. })));
    assert!(matches!(decided(&house(true)), EntryFilter::Wanted { against: None, .. }));
}

/// Of flats: the filter goes on one's own branch, and nothing that feeds another home is touched.
#[test]
fn in_a_flat_the_filter_goes_on_ones_own_branch() {
    let house = good_house()
        .without("F1")
        .splitter("S0", 4)
        .made_for(5.0, 1000.0)
        .from("G1", 1)
        .end(1, PortEnd::AnotherHome)
        .cap(2)
        .open(4)
        .at("S1")
        .from("S0", 3)
        .shared();
    let survey = house.survey();
    let common = part_id(&survey, "S0");
    let list = worklist(&survey, &Options::default()).unwrap();
    let changes: Vec<_> = list.steps.iter().map(|step| step.change).collect();
    assert!(changes.contains(&ChangeKind::AddEntryFilter { behind: common }), "{changes:?}");
    for change in &changes {
        let free = matches!(change, ChangeKind::AddEntryFilter { .. } | ChangeKind::Cap { .. });
        assert!(free || change.at() != common, "{change:?}");
    }
    let filter = list.house_when_done.parts.values().find(|part| part.kind == PartKind::EntryFilter).unwrap();
    let feed = list.house_when_done.wiring.feed(filter.id).unwrap();
    assert_eq!((feed.part, feed.port), (common, 3));
    assert_eq!(decided(&list.house_when_done), EntryFilter::InPlace { filter: filter.id });
    assert!(!kinds(&list.house_when_done).contains(&FindingKind::FilterAfterSplit));
}

/// In a shared building a leg that nobody looked at may be a neighbour's: the filter goes where it unscrews none.
#[test]
fn a_leg_that_may_be_a_neighbours_is_not_unscrewed() {
    let house = |own_legs: u8| {
        let house = of_kind(EntryKind::Cable).splitter("S0", 3).made_for(5.0, 1000.0).from("G1", 1).at("S1");
        let house = house.from("S0", 2).shared();
        if own_legs == 1 { house } else { house.outlet("O3", "Den").from("S0", 3) }
    };
    let one = house(1).survey();
    let change = ChangeKind::AddEntryFilter { behind: part_id(&one, "S0") };
    assert_eq!(decided(&one), EntryFilter::Wanted { change, against: None });
    assert_eq!(refusal(change, &one), None);
    let swap = ChangeKind::SwapSplitter { splitter: part_id(&one, "S0"), legs: 3 };
    assert_eq!(refusal(swap, &one).unwrap().why(&one).id, "refusal-another-home-may-be");
    let several = house(2).survey();
    assert!(matches!(decided(&several), EntryFilter::Wanted { against: Some(Against::OtherHome(_)), .. }));
    // Behind the split that is said to part the homes all is one's own.
    let behind = house(1)
        .at("S0")
        .end(1, PortEnd::AnotherHome)
        .cap(3)
        .at("S1")
        .with(|splitter| splitter.rating.legs = 3);
    let swap = |tag, survey: &Survey| ChangeKind::SwapSplitter { splitter: part_id(survey, tag), legs: 3 };
    let behind = behind.end(3, PortEnd::LooseEnd).survey();
    assert_eq!(refusal(swap("S1", &behind), &behind), None);
    assert!(refusal(swap("S0", &behind), &behind).is_some());
    // Looked at and free, it is nobody's.
    let looked = house(2).at("S0").cap(1).survey();
    assert!(matches!(decided(&looked), EntryFilter::Wanted { against: None, .. }));
}

/// Of a splitter that feeds another home, too, a finding bids to ask, with no hands on it.
#[test]
fn a_finding_asks_where_hands_would_meet_another_home() {
    let of = |end| {
        let house = good_house().at("S1").with(|splitter| splitter.rating.legs = 3).made_for(5.0, 1000.0);
        let found = findings(&house.end(3, end).survey(), None);
        found.into_iter().find(|finding| finding.kind == FindingKind::SplitterNotForBand).unwrap()
    };
    let common = of(PortEnd::AnotherHome);
    assert_eq!(common.todo().id, "another-home-ask");
    assert!(common.cautions().is_empty());
    let own = of(PortEnd::Capped);
    assert_eq!(own.todo().id, "finding-splitter-not-for-band.do");
    assert!(!own.cautions().is_empty());
}

/// A filter on a feed that several homes share parts none of them.
#[test]
fn a_filter_before_the_common_split_parts_no_homes() {
    let house = good_house().at("S1").with(|splitter| splitter.rating.legs = 3);
    let others = house.clone().end(3, PortEnd::AnotherHome).survey();
    assert!(kinds(&others).contains(&FindingKind::SharedBuildingOpen));
    assert!(matches!(
        decided(&others),
        EntryFilter::Wanted {
            change: ChangeKind::AddEntryFilter { .. },
            against: Some(Against::OtherHome(_))
        }
    ));
    let own = house.cap(3).survey();
    assert!(matches!(decided(&own), EntryFilter::InPlace { .. }));
}

/// Where the step is refused, the finding does not bid to do it.
#[test]
fn finding_and_refusal_speak_from_one_decision() {
    let to = |top| of_kind(EntryKind::Cable).service(ServiceKind::CableInternet, Some(top)).survey();
    let flat = of_kind(EntryKind::Cable).at("S1").with(|s| s.rating.legs = 3).end(3, PortEnd::AnotherHome);
    let houses = [
        (to(1218.0), "refusal-filter-cuts-service"),
        (to(1002.0), ""),
        (flat.survey(), "refusal-another-home"),
    ];
    for (survey, reason) in houses {
        let EntryFilter::Wanted { change, .. } = decided(&survey) else { panic!("no filter wanted") };
        let refused = refusal(change, &survey).map(|refusal| refusal.why(&survey));
        assert_eq!(refused.as_ref().map_or("", |why| &why.id), reason);
        let finding = findings(&survey, None)
            .into_iter()
            .find(|finding| finding.kind == FindingKind::EntryFilterMissing)
            .unwrap();
        let told = finding.todo().args.into_iter().find(|(name, _)| *name == "reason").map(|(_, arg)| arg);
        assert_eq!(told, refused.map(|why| phrase::Arg::Phrase(Box::new(why))));
    }
}

/// One place says what comes in: by the entry's kind, by what was said of a service, or as what is left over.
#[test]
fn what_comes_in_where() {
    use ServiceKind::{AntennaTv, CableInternet, CableTv, SatelliteTv};
    let at = |survey: &Survey, tag: &str| Incoming::at(survey, part_id(survey, tag));
    let two = || of_kind(EntryKind::Cable).entry("E2", EntryKind::Unknown);
    // A cable entry is there for the internet, so what is left over for the other is the dish.
    let left = two().service(CableInternet, None).service(SatelliteTv, None).survey();
    assert_eq!(at(&left, "E2").brings(SatelliteTv), Some(Sureness::Known));
    assert_eq!(at(&left, "E2").brings(CableInternet), None);
    assert_eq!(at(&left, "E1").brings(SatelliteTv), None);
    // Two sources and one entry: either may be.
    let either = of_kind(EntryKind::Unknown).service(CableTv, None).service(SatelliteTv, None).survey();
    assert_eq!(at(&either, "E1").brings(SatelliteTv), Some(Sureness::MayBe));
    assert_eq!(at(&either, "E1").brings(CableTv), Some(Sureness::MayBe));
    // What was said adds to the kind.
    let both = of_kind(EntryKind::Antenna).service_by(SatelliteTv, "E1").survey();
    assert!(at(&both, "E1").knows(SatelliteTv) && at(&both, "E1").knows(AntennaTv));
    // Nobody named a dish: none is made up.
    let bare = of_kind(EntryKind::Unknown).survey();
    assert_eq!(at(&bare, "E1").brings(SatelliteTv), None);
    assert!(at(&bare, "E1").may_bring_cable());
    let cut =
        of_kind(EntryKind::Satellite).with(|entry| entry.entry_state = house::record::EntryState::CutOff);
    assert_eq!(at(&cut.survey(), "E1"), Incoming::default());
}

/// A cap for an output over which DC may stand holds it back; one below an inserter that sends it the other way need not.
#[test]
fn a_cap_where_dc_stands_holds_it_back() {
    let bought = |survey: &Survey, part: &str, port| {
        let change = ChangeKind::Cap { part: part_id(survey, part), port };
        effort(change, survey).parts.iter().map(|needed| needed.what.id.clone()).collect::<Vec<_>>()
    };
    let supplied = |device: &[Plugged]| {
        of_kind(EntryKind::Antenna)
            .at("S1")
            .with(|splitter| splitter.rating.legs = 4)
            .open(3)
            .outlet("O4", "Den")
            .from("S1", 4)
            .plugged(&[])
            .at("O2")
            .plugged(device)
    };
    let survey = supplied(&[Plugged::PowerSupply]).survey();
    assert_eq!(bought(&survey, "S1", 3), ["need-cap-power"]);
    assert_eq!(bought(&survey, "O4", 1), ["need-cap-power"]);
    let survey = supplied(&[Plugged::Tv]).survey();
    assert_eq!(bought(&survey, "S1", 3), ["need-cap"]);
    let inserter =
        |house: House| house.part("P1", PartKind::PowerInserter).from("G1", 1).at("S1").from("P1", 1);
    assert_eq!(bought(&inserter(supplied(&[])).survey(), "S1", 3), ["need-cap"]);
    // On a dish's line any receiver sends DC.
    let dish = of_kind(EntryKind::Satellite).at("S1").with(|splitter| splitter.rating.legs = 3).open(3);
    assert_eq!(bought(&dish.survey(), "S1", 3), ["need-cap-power"]);
    // A swapped splitter leaves free outputs, too.
    let survey = supplied(&[Plugged::PowerSupply]).survey();
    let swap = ChangeKind::SwapSplitter { splitter: part_id(&survey, "S1"), legs: 4 };
    let ids: Vec<_> = effort(swap, &survey).parts.into_iter().map(|needed| needed.what.id).collect();
    assert_eq!(ids, ["need-splitter-power", "need-cap-power"]);
}

/// An outlet over which DC goes is shared by a splitter that passes it.
#[test]
fn sharing_keeps_the_way_of_dc() {
    let share = |device| {
        let survey = of_kind(EntryKind::Antenna).at("O2").plugged(device).survey();
        let change = ChangeKind::ShareOutlet { outlet: part_id(&survey, "O2") };
        assert_eq!(refusal(change, &survey), None);
        effort(change, &survey).parts.into_iter().map(|needed| needed.what.id).collect::<Vec<_>>()
    };
    assert_eq!(share(&[Plugged::PowerSupply]), ["need-share-power"]);
    assert_eq!(share(&[Plugged::Tv]), ["need-share"]);
}

/// A splitter stated to hold DC back on its way is on the list, and what takes its place passes it.
#[test]
fn a_break_on_the_way_of_dc_is_mended() {
    let house = |passes| {
        good_house()
            .amplifier("A1", 1)
            .with(|amplifier| amplifier.rating.moca_bypass = Some(true))
            .from("F1", 1)
            .at("S1")
            .with(move |splitter| {
                splitter.rating.legs = 3;
                splitter.rating.power_pass = passes;
            })
            .from("A1", 1)
            .outlet("O3", "Cellar")
            .from("S1", 3)
            .plugged(&[Plugged::PowerSupply])
            .survey()
    };
    let survey = house(Some(false));
    let list = worklist(&survey, &Options::default()).unwrap();
    let swap = ChangeKind::SwapSplitter { splitter: part_id(&survey, "S1"), legs: 3 };
    assert!(list.steps.iter().any(|step| step.change == swap));
    assert!(kinds(&survey).contains(&FindingKind::DcBroken));
    assert!(!kinds(&list.house_when_done).contains(&FindingKind::DcBroken));
    let sound = worklist(&house(None), &Options::default()).unwrap();
    assert!(!sound.steps.iter().any(|step| step.change == swap));
}

/// A filter that nobody knows to pass DC is not moved onto its way.
#[test]
fn no_unknown_filter_is_moved_onto_the_way_of_dc() {
    let house = |device| {
        of_kind(EntryKind::Cable)
            .amplifier("A1", 1)
            .with(|amplifier| amplifier.rating.moca_bypass = Some(true))
            .from("E1", 1)
            .at("G1")
            .from("A1", 1)
            .filter("F2")
            .from("S1", 1)
            .at("O1")
            .from("F2", 1)
            .at("O2")
            .plugged(device)
            .survey()
    };
    let moved = |survey: &Survey| {
        refusal(
            ChangeKind::MoveEntryFilter { filter: part_id(survey, "F2"), behind: part_id(survey, "G1") },
            survey,
        )
    };
    assert!(matches!(
        moved(&house(&[Plugged::PowerSupply])),
        Some(advice::worklist::Refusal::CutsPower { .. })
    ));
    assert_eq!(moved(&house(&[Plugged::Tv])), None);
}

//! What was measured before work was done on a way is not held against the wiring as it is now.

use advice::finding::{FindingKind, findings};
use advice::forecast::{Options, forecast};
use advice::level;
use advice::verdict::{RoomVerdict, Tells, is_tested};
use house::record::{ChangeKind, HowMeasured, ReadingKind, ServiceKind, Survey, TestReach, Work};
use houses::{House, good_house, part_id};

/// A test of 40 Mb/s within the house where the cables give far more, and a level at the modem.
fn measured() -> House {
    let slow = ReadingKind::Throughput { down_mbps: 40.0, up_mbps: 40.0 };
    good_house()
        .wish("Office", 300.0)
        .at("O2")
        .reads_how(slow, Some(HowMeasured::new(TestReach::House, false)))
        .at("O1")
        .level(603.0, -9.0)
        .reads(ReadingKind::ModemSends { dbmv: 53.0 })
}

fn swap(house: &House) -> ChangeKind {
    ChangeKind::SwapSplitter { splitter: house.id_of("S1"), legs: 2 }
}

fn tells(survey: &Survey) -> Vec<Tells> {
    let room = RoomVerdict::at(survey, part_id(survey, "O2"), None);
    room.readings.iter().map(|(_, verdict)| verdict.tells).collect()
}

fn kinds(survey: &Survey) -> Vec<FindingKind> {
    let few = Options { draws: 16, points: 89, ..Options::default() };
    let forecast = forecast(survey, &few).ok();
    findings(survey, forecast.as_ref()).into_iter().map(|finding| finding.kind).collect()
}

#[test]
fn a_test_from_before_a_new_splitter_on_its_way_counts_no_longer() {
    let house = measured();
    let change = swap(&house);
    let (as_it_is, earlier) = (measured().tried(change).survey(), house.tried_since(change).survey());
    let outlet = part_id(&earlier, "O2");
    assert_eq!((tells(&as_it_is), tells(&earlier)), (vec![Tells::Coax], vec![Tells::Earlier]));
    assert!(is_tested(&as_it_is, outlet) && !is_tested(&earlier, outlet));
    assert!(RoomVerdict::at(&as_it_is, outlet, None).has_failed());
    assert!(!RoomVerdict::at(&earlier, outlet, None).has_failed());
}

#[test]
fn a_level_from_before_it_counts_no_longer_and_that_is_told() {
    let house = measured();
    let change = swap(&house);
    let (as_it_is, earlier) = (measured().tried(change).survey(), house.tried_since(change).survey());
    let known = |survey: &Survey| {
        let levels = level::levels(survey, &level::Options::default()).ok();
        let modem = levels.as_ref().and_then(|all| all.of(part_id(survey, "O1"), ServiceKind::CableInternet));
        modem.map(|modem| (modem.sends(), modem.down.iter().any(|down| down.measured.is_some())))
    };
    assert_eq!((known(&as_it_is), known(&earlier)), (Some((Some(53.0), true)), Some((None, false))));
    for (kind, before) in [
        (FindingKind::ModemSendsHigh, false),
        (FindingKind::LevelNotRecommended, false),
        (FindingKind::LevelBeforeWork, true),
    ] {
        assert_eq!(
            (kinds(&as_it_is).contains(&kind), kinds(&earlier).contains(&kind)),
            (!before, before),
            "{kind:?}"
        );
    }
}

/// A filter behind the ground block changes what comes over the cable to the first splitter: it lies on the way from the entry to
/// a modem, but not on the way from one room to another. Work put back leaves all as it was.
#[test]
fn only_what_lies_on_the_way_counts() {
    let add = ChangeKind::AddEntryFilter { behind: measured().id_of("G1") };
    let share = |house: &House| ChangeKind::ShareOutlet { outlet: house.id_of("O2") };
    let earlier = |change, undone: bool, before: &[&str]| {
        let mut survey = measured().tried_since(change).survey();
        let was: Vec<_> =
            before.iter().filter_map(|tag| survey.parts.get(&part_id(&survey, tag)).cloned()).collect();
        for work in survey.works.values_mut() {
            told_of(work, undone);
            work.before.parts = was
                .iter()
                .cloned()
                .map(|mut part| {
                    part.feed = None;
                    part
                })
                .collect();
        }
        (tells(&survey)[0] == Tells::Earlier, kinds(&survey).contains(&FindingKind::LevelBeforeWork))
    };
    assert_eq!(earlier(add, false, &["S1"]), (false, true));
    assert_eq!(earlier(share(&measured()), false, &[]), (true, false));
    assert_eq!(earlier(share(&measured()), true, &[]), (false, false));
}

fn told_of(work: &mut Work, undone: bool) {
    if undone {
        work.outcome.end = house::record::OutcomeKind::PutBack;
    }
}

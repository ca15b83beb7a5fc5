//! What nobody looked at is not known, never free or unused; and an outlet without a cable is no second tree.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use std::collections::BTreeSet;

use advice::finding::{FindingKind, findings};
use advice::forecast::{Options as Draws, Reach, forecast};
use advice::worklist::{Options, Step, WorkList, applied, worklist};
use house::record::{CableKind, ChangeKind, EntryState, Plugged, PortEnd, ServiceKind, Survey};
use houses::change_cases::{FAR, house as far_house};
use houses::{House, good_house, part_id};

fn list(survey: &Survey) -> WorkList {
    let draws = Draws { draws: 8, seed: 1, points: 89, settles: false };
    worklist(survey, &Options { screening: draws, stating: draws, most_steps: 12, ..Options::default() })
        .expect("a sound survey")
}

fn steps(house: House) -> Vec<ChangeKind> {
    list(&house.survey()).steps.iter().map(|step| step.change).collect()
}

fn kinds(house: House) -> BTreeSet<FindingKind> {
    findings(&house.survey(), None).into_iter().map(|finding| finding.kind).collect()
}

/// An eight-way not made for the band; of its outputs 3 to 8 nobody said anything yet.
fn eight() -> House {
    far_house(FAR).at("S1").with(|splitter| splitter.rating.legs = 8).made_for(5.0, 1000.0)
}

fn swapped_to(house: House) -> Vec<u8> {
    let legs = |change| match change {
        ChangeKind::SwapSplitter { legs, .. } => Some(legs),
        _ => None,
    };
    steps(house).into_iter().filter_map(legs).collect()
}

#[test]
fn a_splitter_is_made_smaller_only_where_every_output_was_seen() {
    assert_eq!(swapped_to((3..=8).fold(eight(), House::cap)), [2]);
    assert_eq!(swapped_to(eight()), [8]);
    assert_eq!(swapped_to((3..=7).fold(eight(), House::cap)), [8]);
    // How many outputs to buy is not known while nobody counted them.
    assert_eq!(swapped_to(eight().with(|splitter| splitter.rating.legs = 0)), Vec::<u8>::new());
}

#[test]
fn what_is_not_known_of_an_output_stays_unknown_behind_a_new_splitter() {
    let survey = eight().end(3, PortEnd::LooseEnd).open(4).survey();
    let splitter = part_id(&survey, "S1");
    let after = applied(ChangeKind::SwapSplitter { splitter, legs: 8 }, &survey);
    let part = after.parts.get(&splitter).expect("it stays");
    assert_eq!(part.end(3), Some(PortEnd::LooseEnd));
    assert_eq!(part.end(4), Some(PortEnd::Capped));
    assert_eq!(part.end(5), None);
    for tag in ["O1", "O2"] {
        let outlet = part_id(&survey, tag);
        assert_eq!(survey.wiring.feed(outlet), after.wiring.feed(outlet));
    }
}

#[test]
fn nothing_is_taken_out_or_merged_while_an_output_was_not_seen() {
    let second = || {
        let house = far_house(FAR).splitter("S2", 2).made_for(5.0, 1675.0).from("S1", 2);
        house.over(CableKind::Six, 1.0).at("O2").from("S2", 1).over(CableKind::Six, FAR)
    };
    let removes =
        |house| steps(house).iter().any(|change| matches!(change, ChangeKind::RemoveSplitter { .. }));
    assert!(removes(second().at("S2").cap(2)));
    assert!(!removes(second()));
    let den = |upper: u8| {
        let house =
            second().outlet("O3", "Den").from("S2", 2).over(CableKind::Six, FAR).plugged(&[]).adapter("2.5");
        house.at("S1").with(move |splitter| splitter.rating.legs = upper)
    };
    let merges =
        |house| steps(house).iter().any(|change| matches!(change, ChangeKind::MergeSplitters { .. }));
    assert!(merges(den(2)));
    assert!(merges(den(3).cap(3)));
    assert!(!merges(den(3)));
    let amplifier = |outputs: u8| {
        let house =
            far_house(10.0).amplifier("A1", outputs).with(|part| part.rating.moca_bypass = Some(false));
        house.from("S1", 2).over(CableKind::Six, 5.0).at("O2").from("A1", 1).over(CableKind::Six, 10.0)
    };
    let removes =
        |house| steps(house).iter().any(|change| matches!(change, ChangeKind::RemoveAmplifier { .. }));
    assert!(removes(amplifier(1)));
    assert!(!removes(amplifier(4)));
}

/// A new run leaves from an output that somebody saw free, or from a larger splitter.
#[test]
fn a_new_run_takes_no_output_that_nobody_saw() {
    let house = |seen: bool| {
        let house = far_house(10.0).at("S1").with(|splitter| splitter.rating.legs = 3).wish("Attic", 500.0);
        if seen { house.cap(3) } else { house }
    };
    let run = |house: House| -> Step {
        let found = list(&house.survey()).steps;
        found.into_iter().find(|step| matches!(step.change, ChangeKind::NewRun { .. })).expect("a new run")
    };
    let buys_splitter =
        |step: &Step| step.effort.parts.iter().any(|part| part.what.id.starts_with("need-splitter"));
    assert!(!buys_splitter(&run(house(true))));
    let unseen = run(house(false));
    assert!(buys_splitter(&unseen));
    let after = applied(unseen.change, &unseen.before);
    let splitter = after.parts.get(&part_id(&after, "S1")).expect("it stays");
    assert_eq!((splitter.rating.legs, splitter.end(3)), (4, None));
}

/// The office's outlet has no cable: nothing feeds it.
fn dead() -> House {
    far_house(10.0).at("S1").cap(2).at("O2").fed_by_nothing()
}

#[test]
fn an_outlet_without_a_cable_asks_for_a_run_or_for_an_outlet_nearby() {
    let found = kinds(dead());
    assert!(found.contains(&FindingKind::OutletFedByNothing) && !found.contains(&FindingKind::OtherTree));
    let survey = dead().survey();
    let reach =
        &forecast(&survey, &Draws { draws: 2, seed: 1, points: 89, settles: false }).expect("sound").rooms[0]
            .reach;
    assert_eq!(*reach, Reach::FedByNothing(part_id(&survey, "O2")));
    let done = list(&survey);
    assert!(
        done.steps.iter().any(|step| matches!(step.change, ChangeKind::NewRun { .. })),
        "{:?}",
        done.steps
    );
    let after: BTreeSet<_> =
        findings(&done.house_when_done, None).into_iter().map(|found| found.kind).collect();
    assert!(!after.contains(&FindingKind::OutletFedByNothing), "{after:?}");
    // The den has a free outlet: a network cable from there is less work.
    let den = || dead().at("S1").with(|s| s.rating.legs = 3).outlet("O3", "Den").from("S1", 3);
    let nearby = steps(den().over(CableKind::Six, 10.0).plugged(&[Plugged::Tv]));
    assert!(nearby.iter().any(|change| matches!(change, ChangeKind::UseOutletNearby { .. })), "{nearby:?}");
    // What is not traced may hang anywhere, and a splitter that nothing feeds heads a tree of its own.
    let untraced = kinds(dead().at("O2").with(|outlet| outlet.feed = None));
    assert!(!untraced.contains(&FindingKind::OutletFedByNothing));
    let tree = kinds(dead().splitter("S2", 2).fed_by_nothing().at("O2").from("S2", 1));
    assert!(tree.contains(&FindingKind::OtherTree) && !tree.contains(&FindingKind::OutletFedByNothing));
}

/// A filter on one leg of the split, before a TV box.
fn behind_split(house: House) -> House {
    let house = house.at("S1").with(|s| s.rating.legs = 3).filter("F2").from("S1", 3);
    house.outlet("O3", "Den").from("F2", 1).plugged(&[Plugged::TvBox])
}

#[test]
fn a_filter_before_a_tv_box_is_misplaced_where_the_entry_waits_for_it_or_the_boxes_talk() {
    let misplaced = |house: House| kinds(house).contains(&FindingKind::FilterAfterSplit);
    assert!(misplaced(behind_split(good_house().without("F1"))));
    // The entry has its own: this one may keep the network from the box.
    assert!(!misplaced(behind_split(good_house())));
    assert!(misplaced(behind_split(good_house()).service(ServiceKind::ProviderNetwork, None)));
    // No adapter on the tree at all.
    let alone = |house: House| {
        let house = house.at("O1").with(|outlet| outlet.adapter = None);
        behind_split(house.at("O2").with(|outlet| outlet.adapter = None))
    };
    assert!(misplaced(alone(good_house().without("F1"))));
    // Where nothing comes in the entry waits for no filter.
    let cut = good_house().without("F1").at("E1").with(|entry| entry.entry_state = EntryState::CutOff);
    assert!(!misplaced(behind_split(cut)));
}

#[test]
fn what_cannot_be_is_said_to_differ_from_what_can_be() {
    let mut survey = good_house().survey();
    let said = |survey: &Survey| {
        let forecast = forecast(survey, &Draws { draws: 4, seed: 1, points: 33, settles: false })
            .expect("a sound survey");
        let phrases = advice::unknown::unknowns(survey, &forecast).into_iter().map(|unknown| unknown.what);
        phrases.filter(|what| what.id == "unknown-impossible").count()
    };
    assert_eq!(said(&survey), 0);
    survey.impossible.push((part_id(&survey, "S1"), "rating".into()));
    assert_eq!(said(&survey), 1);
}

//! The work list: every change where it must be and nowhere else, what it takes, what it costs, the way back.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use std::collections::BTreeSet;

use advice::finding::Caution;
use advice::forecast::{Options as Draws, nodes_of};
use advice::level;
use advice::worklist::{Options, Step, WorkList, worklist};
use house::record::{Asked, Building, CableKind, ChangeKind, Ownership, Plugged, Reply, Sharing, Survey};
use houses::change_cases::{FAR, cases, house as far_house};
use houses::{House, part_id};
use phrase::Arg;

/// Few draws: what is asked is whether a step is there, not its last megabit.
fn quick() -> Options {
    let draws = Draws { draws: 8, seed: 1, points: 89, settles: false };
    Options { screening: draws, stating: draws, most_steps: 12, ..Options::default() }
}

fn list(survey: &Survey) -> WorkList {
    worklist(survey, &quick()).expect("a sound survey")
}

fn name(step: &Step) -> String {
    step.change.phrase(&step.before).id.trim_start_matches("change-").to_owned()
}

fn names(survey: &Survey) -> BTreeSet<String> {
    list(survey).steps.iter().map(name).collect()
}

/// Every change there is, by its message: the Fluent file and the enum tell the same list.
fn messages() -> BTreeSet<&'static str> {
    include_str!("../../../telling/words/en/changes.ftl")
        .lines()
        .filter_map(|line| line.strip_prefix("change-")?.split_once(" =").map(|(id, _)| id))
        .collect()
}

#[test]
fn every_change_has_a_case() {
    let covered: BTreeSet<_> = cases().iter().map(|case| case.name).collect();
    assert_eq!(covered, messages());
}

#[test]
fn every_change_is_there_where_it_must_be_and_not_where_it_must_not() {
    for case in cases() {
        let there = names(&case.there.survey());
        assert!(there.contains(case.name), "{} is missing; found {there:?}", case.name);
        let absent = names(&case.absent.survey());
        assert!(!absent.contains(case.name), "{} is there; found {absent:?}", case.name);
    }
}

/// The trade's cautions, at the step where each matters.
#[test]
fn cautions_stand_at_their_step() {
    for case in cases() {
        for step in list(&case.there.survey()).steps {
            let cautions = advice::worklist::cautions_of(step.change);
            // A look at lamps, and at cables and sockets that are not coax, unscrews nothing.
            let off_the_coax = ["check-adapter", "check-network-cable", "check-measure"];
            if off_the_coax.contains(&name(&step).as_str()) {
                continue;
            }
            // What is traced by what goes dead is traced with an amplifier on; all other work with the supplies out.
            let traced = matches!(step.change, ChangeKind::JoinLoose { .. });
            assert_eq!(cautions.contains(&Caution::SuppliesFirst), !traced, "{:?}", step.change);
            let tracing: &[Caution] = if traced { &Caution::TRACING } else { &[Caution::Thunderstorm] };
            for always in tracing.iter().chain(&[Caution::WhoDependsOnIt]) {
                assert!(cautions.contains(always), "{:?} lacks {always:?}", step.change);
            }
            let entry = name(&step).contains("entry-filter") || name(&step) == "modem-own-line";
            assert_eq!(entry, cautions.contains(&Caution::KeepGrounds), "{:?}", step.change);
            if name(&step).starts_with("cap") {
                assert!(cautions.contains(&Caution::PoweredLeg));
            }
            if name(&step) == "renew-connectors" {
                assert!(cautions.contains(&Caution::MainsNear) && cautions.contains(&Caution::Blade));
            }
            if ["replace-run", "new-run"].contains(&name(&step).as_str()) {
                assert!(cautions.contains(&Caution::MainsNear) && cautions.contains(&Caution::Heights));
            }
        }
    }
}

/// Whoever unscrews something at the first split stands next to the entry.
#[test]
fn next_to_the_entry_the_street_side_stays_closed() {
    let unrated = |tag: &str| {
        let house =
            far_house(FAR).splitter("S2", 3).from("S1", 2).over(CableKind::Six, FAR).made_for(5.0, 1675.0);
        let house =
            house.at("O2").from("S2", 1).outlet("O3", "Den").from("S2", 2).plugged(&[]).adapter("2.5");
        house.at("S2").cap(3).at(tag).made_for(5.0, 1000.0).survey()
    };
    for (tag, wanted) in [("S1", true), ("S2", false)] {
        let survey = unrated(tag);
        let splitter = part_id(&survey, tag);
        let found = list(&survey);
        let swap = |step: &&Step| matches!(step.change, ChangeKind::SwapSplitter { splitter: at, .. } if at == splitter);
        let cautions = found.steps.iter().find(swap).expect("a splitter not made for the band").cautions();
        for caution in [Caution::HouseSideOnly, Caution::KeepGrounds] {
            assert_eq!(cautions.contains(&caution), wanted, "{tag}: {caution:?}");
        }
    }
}

#[test]
fn beside_a_fibre_box_the_fibre_stays_in() {
    let shared_with = |device| {
        let survey = far_house(10.0).at("O2").plugged(&[device]).survey();
        let outlet = part_id(&survey, "O2");
        let found = list(&survey);
        let step = found.steps.iter().find(|step| step.change == ChangeKind::ShareOutlet { outlet });
        step.expect("shared").cautions().contains(&Caution::Fibre)
    };
    assert!(shared_with(Plugged::FibreBox));
    assert!(!shared_with(Plugged::Tv));
}

#[test]
fn putting_a_step_back_gives_the_house_before_it() {
    for case in cases() {
        let survey = case.there.survey();
        let done = list(&survey);
        assert_eq!(done.steps.first().map(|step| &step.before), Some(&survey));
        for (step, next) in done.steps.iter().zip(done.steps.iter().skip(1)) {
            assert_eq!(advice::worklist::applied(step.change, &step.before), next.before);
        }
    }
}

fn with_tv() -> House {
    far_house(10.0)
        .at("S1")
        .with(|splitter| splitter.rating.legs = 3)
        .outlet("O3", "Den")
        .from("S1", 3)
        .over(CableKind::Six, 10.0)
        .plugged(&[Plugged::Tv])
}

/// A 2-way splitter made for the band has 3.7 dB a leg (label photographed in N7Alpha/coaxial-cable-network).
#[test]
fn sharing_an_outlet_costs_the_tv_a_splitters_leg() {
    let survey = with_tv().adapter("2.5").survey();
    let outlet = part_id(&survey, "O3");
    let found = list(&survey);
    let step =
        found.steps.iter().find(|step| step.change == ChangeKind::ShareOutlet { outlet }).expect("shared");
    let tv = step.service_changes.iter().find(|change| change.outlet == outlet).expect("the TV is told of");
    for band in &tv.down {
        assert!((band.db.likely + 3.7).abs() < 0.8, "{band:?}");
    }
    assert!(step.asks_for_a_check());
    assert_eq!(step.service_words().len(), 1);
    // The forecast had counted with the loss before.
    for gain in &step.gains {
        assert!((gain.after.likely_mbps - gain.before.likely_mbps).abs() < 1.0, "{gain:?}");
    }
    let shared = with_tv().adapter("2.5").with(|outlet| outlet.sharing = Some(Sharing::Splitter)).survey();
    assert_eq!(nodes_of(&shared).len(), nodes_of(&survey).len());
}

/// An entry filter passes 5 to 1002 MHz with 0.5 to 1.5 dB (data sheet, 2019, N7Alpha/coaxial-cable-network): that is what it costs.
#[test]
fn an_entry_filter_costs_what_its_sheet_says() {
    let survey = with_tv().without("F1").survey();
    let found = list(&survey);
    let step = found.steps.iter().find(|step| name(step) == "add-entry-filter").expect("wanted");
    let tv = step.service_changes.first().expect("the TV is told of");
    for band in &tv.down {
        assert!((-2.2..=-0.2).contains(&band.db.likely), "{band:?}");
    }
}

#[test]
fn the_shopping_list_adds_up() {
    // Two thin runs of 70 m each, and two open legs.
    let survey = far_house(FAR)
        .at("S1")
        .with(|splitter| splitter.rating.legs = 4)
        .open(3)
        .open(4)
        .at("O1")
        .over(CableKind::FiftyNine, FAR)
        .at("O2")
        .over(CableKind::FiftyNine, FAR)
        .survey();
    let found = list(&survey);
    let bought = found.shopping(&survey);
    let ids: Vec<_> = bought.iter().map(|needed| needed.what.id.as_str()).collect();
    let unique: BTreeSet<_> = ids.iter().collect();
    assert_eq!(unique.len(), ids.len(), "{ids:?}");
    let singly: u64 = found
        .steps
        .iter()
        .flat_map(|step| &step.effort.parts)
        .filter(|n| n.what.id == "need-connector")
        .map(|n| n.count)
        .sum();
    let connectors = bought.iter().find(|needed| needed.what.id == "need-connector").expect("new runs");
    assert_eq!((connectors.count, singly), (4, 4));
    let cable = bought.iter().find(|needed| needed.what.id == "need-cable").expect("new runs");
    let Some((_, Arg::Length(metres))) = cable.what.args.first() else { panic!("a length") };
    // A measured length is known within 2 % (common practice): two of at most 71.4 m.
    assert!((metres - 142.8).abs() < 1e-6, "{metres}");
}

#[test]
fn a_measured_level_lets_an_amplifier_go() {
    let house = |dbmv: f64| {
        with_tv()
            .amplifier("A1", 1)
            .with(|amplifier| {
                amplifier.rating.moca_bypass = Some(false);
                amplifier.rating.gain_db = Some(10.0);
            })
            .from("S1", 2)
            .over(CableKind::Six, 1.0)
            .at("O2")
            .from("A1", 1)
            .over(CableKind::Six, 10.0)
            .plugged(&[Plugged::Tv])
            .level(603.0, dbmv)
            .survey()
    };
    let remove = |survey: &Survey| {
        advice::worklist::refusal(ChangeKind::RemoveAmplifier { amplifier: part_id(survey, "A1") }, survey)
    };
    // -12 dBmV is the least for digital TV (SCTE 40, from memory): +5 leaves -5, -5 leaves -15.
    let (strong, weak) = (house(5.0), house(-5.0));
    assert_eq!(remove(&strong), None);
    assert!(matches!(remove(&weak), Some(advice::worklist::Refusal::LevelOut { .. })), "{:?}", remove(&weak));
}

#[test]
fn a_room_served_from_nearby_counts_its_own_wish() {
    let survey = houses::change_cases::cases()
        .into_iter()
        .find(|case| case.name == "use-outlet-nearby")
        .expect("a case");
    let survey = survey.there.survey();
    let found = list(&survey);
    let step = found.steps.iter().find(|step| name(step) == "use-outlet-nearby").expect("there");
    let ChangeKind::UseOutletNearby { room, outlet } = step.change else { panic!("by its name") };
    let after = &found.house_when_done;
    assert_eq!(after.rooms.get(&room).and_then(|room| room.served_from), Some(outlet));
    assert_eq!(after.wish_at(outlet).map(|wish| wish.down_mbps), Some(500.0));
    let before = level::levels(&survey, &level::Options::default()).expect("sound");
    assert!(!before.outlets.is_empty());
}

/// Who depends on the wiring is asked of the house: where nobody does, no step asks it again; another home's people were not
/// asked.
#[test]
fn who_depends_on_it_stands_at_a_step_only_where_that_is_open() {
    let told = |replies: Option<&[Reply]>, shared: bool| {
        let case = cases().into_iter().find(|case| case.name == "swap-splitter").expect("a splitter");
        let mut survey = case.there.survey();
        let building = Building { ownership: Ownership::Own, shared };
        survey.building = Some(building);
        let edit = replies.map(|replies| Asked::Depends.set_all(survey.id, replies));
        survey.asked.extend(edit.map(|edit| ((survey.id, Asked::Depends), edit.value)));
        let steps = list(&survey).steps;
        let step = steps.iter().find(|step| name(step) == "swap-splitter").expect("it is swapped");
        step.cautions().contains(&Caution::WhoDependsOnIt)
    };
    assert!(told(None, false), "nobody was asked");
    assert!(told(Some(&[Reply::Unsure]), false));
    assert!(told(Some(&[Reply::Phone]), false));
    assert!(!told(Some(&[Reply::Nothing]), false));
    assert!(told(Some(&[Reply::Nothing]), true));
}

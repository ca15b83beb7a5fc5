//! The laws can be broken: a fault planted in a sound list is found, each by the law that is for it.

use advice::level;
use advice::worklist::{PartNeeded, Step, applied};
use house::record::{CableKind, ChangeKind, Connector, EntryKind, PartKind, Plugged, PortEnd, Survey};
use houses::change_cases::{FAR, house as far_house};
use houses::{House, part_id};
use phrase::Phrase;

use super::{Seen, answers, forbidden, level_words, promised, worth};

/// A house that needs an entry filter, and gets it.
fn open_house() -> House {
    let house = far_house(FAR).without("F1").at("S1").with(|splitter| splitter.rating.legs = 3);
    house.outlet("O3", "Den").from("S1", 3).over(CableKind::Six, 10.0).plugged(&[Plugged::Tv])
}

/// That house with a TV at O2 where an adapter is to come, at the end of so much 59-series cable.
pub(super) fn tv_at_the_end_of(metres: f64) -> House {
    let thin = open_house().at("O2").over(CableKind::FiftyNine, metres);
    thin.with(|outlet| outlet.adapter = None).plugged(&[Plugged::Tv])
}

fn sound(house: House) -> Seen {
    let seen = Seen::of(house.survey());
    assert_eq!(seen.broken(), [""; 0]);
    seen
}

#[test]
fn a_grave_finding_that_nothing_answers_is_found() {
    let mut seen = sound(open_house());
    seen.list.steps.clear();
    seen.list.house_when_done = seen.survey.clone();
    seen.found_when_done = seen.found.clone();
    assert_eq!(answers::broken(&seen), ["answer: entry-filter-missing is left, and nothing says why"]);
}

#[test]
fn work_that_brings_a_grave_finding_is_found() {
    let mut seen = sound(open_house());
    seen.found_when_done = std::mem::take(&mut seen.found);
    let broken = answers::broken(&seen);
    assert!(
        broken.iter().any(|what| what == "answer: the work itself brings entry-filter-missing"),
        "{broken:?}"
    );
}

/// A step of a list with another change in another house.
fn step(change: ChangeKind, before: Survey) -> Step {
    let list = sound(open_house()).list;
    let mut step = list.steps.into_iter().next().expect("a filter at least");
    let after = applied(change, &before);
    step.service_changes = level::change(&before, &after, &level::Options::default()).expect("a sound house");
    (step.change, step.before) = (change, before);
    step
}

fn antenna_with_mast_amplifier() -> House {
    let house = House::new().entry("E1", EntryKind::Antenna).amplifier("A1", 1).from("E1", 1);
    let house = house.splitter("S1", 2).made_for(5.0, 1675.0).from("A1", 1);
    let outlet = |house: House, tag: &str, port| house.outlet(tag, tag).from("S1", port).adapter("2.5");
    let house = outlet(outlet(house, "O1", 1).bridge().plugged(&[Plugged::Tv]), "O2", 2);
    house.plugged(&[Plugged::PowerSupply])
}

#[test]
fn what_is_forbidden_is_found() {
    let dish = || open_house().at("E1").with(|entry| entry.entry_kind = EntryKind::Satellite);
    let receiver = || dish().at("O2").plugged(&[Plugged::SatelliteReceiver]);
    let mast = antenna_with_mast_amplifier;
    let amplified = || open_house().amplifier("A1", 1).from("E1", 1).at("S1").from("A1", 1);
    let block = || open_house().part("G1", PartKind::GroundBlock).from("E1", 1).at("S1").from("G1", 1);
    let add = |house: House| {
        let survey = house.survey();
        (ChangeKind::AddEntryFilter { behind: part_id(&survey, "E1") }, survey)
    };
    let at = |house: House, tag: &str, change: fn(facts::fact::SubjectId) -> ChangeKind| {
        let survey = house.survey();
        (change(part_id(&survey, tag)), survey)
    };
    let holds_back = mast().filter("F1").with(|filter| filter.rating.power_pass = Some(false));
    let holds_back = holds_back.from("S1", 1).at("O1").from("F1", 1).survey();
    let [filter, behind] = ["F1", "A1"].map(|tag| part_id(&holds_back, tag));
    let planted = [
        ("a filter in a line that carries satellite", add(dish())),
        (
            "a part not made for satellite in front of a receiver",
            at(receiver(), "O2", |outlet| ChangeKind::ShareOutlet { outlet }),
        ),
        (
            "a part not made for satellite in front of a receiver",
            at(receiver().at("S1").made_for(5.0, 2400.0), "S1", |splitter| ChangeKind::SwapSplitter {
                splitter,
                legs: 3,
            }),
        ),
        ("DC no longer arrives", (ChangeKind::MoveEntryFilter { filter, behind }, holds_back)),
        ("a filter in front of the mast amplifier", add(mast())),
        (
            "work on the street's side",
            at(block().at("G1").run(|run| run.connector_near = Connector::Corroded), "G1", |to| {
                ChangeKind::RenewConnectors { to }
            }),
        ),
        ("work that needs the owner", at(open_house().rented(), "O2", |to| ChangeKind::ReplaceRun { to })),
        (
            "an amplifier goes, and nobody measured below it",
            at(amplified(), "A1", |amplifier| ChangeKind::RemoveAmplifier { amplifier }),
        ),
        ("a cap where something hangs", at(open_house(), "S1", |part| ChangeKind::Cap { part, port: 3 })),
        ("a cap where something hangs", at(open_house(), "O3", |part| ChangeKind::Cap { part, port: 1 })),
        (
            "an output that nobody looked at goes",
            at(open_house().at("S1").with(|splitter| splitter.rating.legs = 6), "S1", |splitter| {
                ChangeKind::SwapSplitter { splitter, legs: 3 }
            }),
        ),
        (
            "a filter at a fibre box",
            at(open_house().at("O3").plugged(&[Plugged::FibreBox]), "O3", |outlet| {
                ChangeKind::FilterAtDevice { outlet }
            }),
        ),
        (
            "work on what another home gets its signal through",
            at(open_house().at("S1").end(3, PortEnd::AnotherHome), "S1", |splitter| {
                ChangeKind::SwapSplitter { splitter, legs: 2 }
            }),
        ),
        // What the list itself refuses.
        (
            "it is refused: LevelOut",
            at(open_house().at("O3").level(860.0, -11.9), "O3", |outlet| ChangeKind::ShareOutlet { outlet }),
        ),
    ];
    for (rule, (change, survey)) in planted {
        let broken = forbidden::of_step(&step(change, survey), true);
        assert!(broken.iter().any(|what| what.contains(rule)), "{rule}: {broken:?}");
    }
    let survey = mast().at("S1").with(|splitter| splitter.rating.legs = 3).open(3).survey();
    let cap = ChangeKind::Cap { part: part_id(&survey, "S1"), port: 3 };
    let mut plain = step(cap, survey);
    plain.effort.parts = vec![PartNeeded { what: Phrase::new("need-cap"), count: 1 }];
    let broken = forbidden::of_step(&plain, true);
    assert!(broken.iter().any(|what| what.contains("a plain cap where DC stands")), "{broken:?}");
    // As near to it as can be: the filter behind the mast amplifier.
    let survey = mast().survey();
    let behind = ChangeKind::AddEntryFilter { behind: part_id(&survey, "A1") };
    let broken = forbidden::of_step(&step(behind, survey), true);
    assert!(!broken.iter().any(|what| what.contains("mast")), "{broken:?}");
}

#[test]
fn a_step_that_only_costs_is_found() {
    let mut seen = sound(open_house());
    let survey = seen.survey.clone();
    let thin = |house: House, metres| house.at("O2").over(CableKind::FiftyNine, metres);
    // A splitter with nothing wrong, on the way to a room so far out that more legs than are used take from its rate.
    let made_for_it = |house: House, tag: &str| {
        house.at(tag).made_for(5.0, 1675.0).with(|part| part.rating.says_moca = true)
    };
    let four = made_for_it(open_house(), "S1").at("S1").with(|splitter| splitter.rating.legs = 4);
    let two = made_for_it(four.splitter("S2", 2).from("S1", 4), "S2");
    let far = thin(two.at("O2").from("S2", 1), 45.0).at("O3").from("S2", 2).survey();
    let larger = ChangeKind::SwapSplitter { splitter: part_id(&far, "S2"), legs: 8 };
    seen.list.steps = vec![step(larger, far)];
    let who_pays = |seen: &Seen| -> Vec<bool> {
        let broken = worth::broken(seen);
        ["another service", "a room its rate"]
            .map(|who| broken.iter().any(|told| told.contains(who)))
            .to_vec()
    };
    assert_eq!(who_pays(&seen), [true, true]);
    // A rate that is only likely is no gain for which a TV pays; nor is an adapter's place where no rate gets to.
    let rated = |house: House| {
        house.at("S1").made_for(5.0, 1000.0).with(|splitter| splitter.rating.leg_losses_db = vec![3.5; 3])
    };
    for (metres, found) in [(180.0, true), (60.0, false)] {
        let survey = thin(rated(open_house()), metres).survey();
        let swap = ChangeKind::SwapSplitter { splitter: part_id(&survey, "S1"), legs: 3 };
        seen.list.steps = vec![step(swap, survey)];
        assert_eq!(who_pays(&seen)[0], found, "a swap, {metres} m");
        let survey = tv_at_the_end_of(metres).survey();
        let share = ChangeKind::ShareOutlet { outlet: part_id(&survey, "O2") };
        seen.list.steps = vec![step(share, survey)];
        assert_eq!(who_pays(&seen)[0], found, "a shared outlet, {metres} m");
    }
    // The filter costs the TV a little, and keeps the network private.
    let filter = ChangeKind::AddEntryFilter { behind: part_id(&survey, "E1") };
    seen.list.steps = vec![step(filter, survey)];
    assert_eq!(worth::broken(&seen), [""; 0]);
}

#[test]
fn a_level_that_leaves_its_window_without_a_word_is_found() {
    // -12 dBmV is the least for digital TV (SCTE 40, from memory).
    let mut seen = sound(open_house().at("O3").level(603.0, -10.0));
    // The filter takes less than a decibel: it was read at -10, and is told as if at the very edge.
    let down = seen.list.levels.outlets.iter_mut().flat_map(|outlet| &mut outlet.down);
    down.filter(|down| down.measured.is_some()).for_each(|down| down.measured = Some(-11.8));
    assert_eq!(level_words::broken(&seen).len(), 1);
}

#[test]
fn a_promise_not_kept_is_found() {
    let broken_by = |plant: fn(&mut Seen)| {
        let mut seen = sound(open_house());
        plant(&mut seen);
        promised::broken(&seen)
    };
    let contains = |broken: &[String], what: &str| broken.iter().any(|told| told.contains(what));
    let gains = broken_by(|seen| seen.list.steps[0].gains[0].after.low_mbps += 1.0);
    assert!(contains(&gains, "the gains of"), "{gains:?}");
    let levels = broken_by(|seen| seen.list.steps[0].service_changes[0].down[0].db.likely -= 1.0);
    assert!(contains(&levels, "the levels of"), "{levels:?}");
    let effort = broken_by(|seen| seen.list.steps[0].effort.minutes += 1);
    assert!(contains(&effort, "the effort of"), "{effort:?}");
    let lost = broken_by(|seen| drop(seen.list.steps.remove(0)));
    assert!(contains(&lost, "when done") || contains(&lost, "another house"), "{lost:?}");
    let done = broken_by(|seen| seen.list.when_done = seen.list.as_found.clone());
    assert!(contains(&done, "the forecast when done"), "{done:?}");
}

//! The other lists that may be chosen: none does what it leaves out, each gives what it promises to whoever makes its changes by
//! hand, and whoever chooses it gets that very list.

use std::collections::BTreeSet;
use std::path::Path;

use advice::finding::Caution;
use advice::forecast::forecast;
use advice::verdict::{answers_to_come, met};
use advice::worklist::{OtherList, WorkList, applied, cautions_of, effort, worklist};
use house::record::{ChangeKind, Named, Survey, Without};
use houses::House;
use houses::random::seeds;

use super::near::is_near;
use super::{HOUSES, few_draws, survey};

/// Whether a change is work of a kind, told from what it is and from what is cautioned at it.
fn is_of(change: ChangeKind, kind: Without) -> bool {
    match kind {
        Without::NewCable => ["new_run", "replace_run", "join_loose"].contains(&change.name()),
        Without::Heights => cautions_of(change).contains(&Caution::Heights),
    }
}

fn list_of(survey: &Survey) -> WorkList {
    worklist(survey, &few_draws()).expect("a sound house")
}

/// What is wrong with a list that was chosen, and with the others beside it.
fn broken(survey: &Survey) -> Vec<String> {
    let (list, chosen) = (list_of(survey), survey.without());
    let mut broken = Vec::new();
    let done: Vec<_> = list.steps.iter().map(|step| step.change).collect();
    broken.extend(forbidden(&chosen, &done));
    let everything = list.others.iter().filter(|other| other.without.is_empty()).count();
    if list.searched.is_some() && everything != usize::from(!chosen.is_empty()) {
        broken.push(format!("{everything} ways back to everything from {chosen:?}"));
    }
    if list.others.len() > 2 {
        broken.push("more than two others".into());
    }
    for other in &list.others {
        let changes: Vec<_> = other.steps.iter().map(|step| step.change).collect();
        broken.extend(forbidden(&other.without, &changes));
        let is_worth_telling = changes != done && changes.iter().any(|change| !change.is_check());
        if !other.without.is_empty() && !is_worth_telling {
            broken.push(format!("{:?} is no other list", other.without));
        }
        broken.extend(by_hand(survey, other));
        broken.extend(when_chosen(survey, other));
        broken.extend(wishes(&list, other));
    }
    broken
}

fn forbidden(without: &BTreeSet<Without>, changes: &[ChangeKind]) -> Vec<String> {
    let of =
        |kind: &Without| changes.iter().filter(|change| is_of(**change, *kind)).copied().collect::<Vec<_>>();
    let found = without.iter().flat_map(of);
    found.map(|change| format!("{change:?} is on a list without {without:?}")).collect()
}

/// Its changes made one after the other in the house as it was found, with no word of what is not wanted.
fn by_hand(survey: &Survey, other: &OtherList) -> Vec<String> {
    let mut house = survey.clone();
    let mut minutes = 0;
    for step in &other.steps {
        minutes += effort(step.change, &house).minutes;
        if !step.change.is_check() {
            house = applied(step.change, &house);
        }
    }
    let fresh = forecast(&house, &few_draws().stating).expect("a sound house");
    let mut broken = Vec::new();
    if !is_near(&fresh, &other.when_done) {
        broken.push(format!("{:?} does not give what it promises", other.without));
    }
    if minutes != other.minutes() || other.house_when_done.parts != house.parts {
        broken.push(format!("{:?} leaves another house, or takes other minutes", other.without));
    }
    broken
}

/// The list of the house in which it was chosen.
fn when_chosen(survey: &Survey, other: &OtherList) -> Vec<String> {
    let list = list_of(&survey.where_not_wanted(&other.without));
    let there: Vec<_> = list.steps.iter().map(|step| step.change).collect();
    let promised: Vec<_> = other.steps.iter().map(|step| step.change).collect();
    if there != promised || list.when_done != other.when_done {
        return vec![format!("{:?} when chosen is {there:?} and not {promised:?}", other.without)];
    }
    Vec::new()
}

/// As many wishes are met with the one as with the other, but for those that are told.
fn wishes(list: &WorkList, other: &OtherList) -> Vec<String> {
    let count = |house, forecast| met(&answers_to_come(house, forecast));
    let with_list = count(&list.house_when_done, &list.when_done);
    let then = count(&other.house_when_done, &other.when_done);
    let (lost, won) = (other.not_met(list).len(), other.met(list).len());
    let is_so = with_list + won == then + lost;
    if is_so {
        Vec::new()
    } else {
        vec![format!("{with_list} wishes, less {lost}, and {won} more are {then}")]
    }
}

#[test]
fn every_other_list_keeps_what_it_promises() {
    // Each takes as many lists again as it has.
    let broken = seeds::over_seeds(HOUSES / 2, |seed| {
        let house = survey(seed);
        let chosen = Without::ALL.get((seed % 3) as usize).copied();
        broken(&house.where_not_wanted(&chosen.into_iter().collect()))
    });
    seeds::none(&broken, Path::new(env!("CARGO_TARGET_TMPDIR")), survey);
}

/// A room that only a new cable reaches, one at the end of an old cable, and no entry filter.
fn every_kind() -> House {
    let house = houses::change_cases::house(10.0).without("F1").at("S1").with(|part| part.rating.legs = 3);
    house.open(3).wish("Attic", 400.0)
}

#[test]
fn a_room_that_only_a_new_cable_reaches_gets_nothing_without_one() {
    let survey = every_kind().survey();
    assert_eq!(broken(&survey), [""; 0]);
    let list = list_of(&survey);
    let [no_cable, nothing_high] = list.others.as_slice() else { panic!("{:?}", list.others.len()) };
    assert_eq!(no_cable.without, BTreeSet::from([Without::NewCable]));
    assert_eq!(nothing_high.without, BTreeSet::from([Without::Heights]));
    for other in [no_cable, nothing_high] {
        let rooms: Vec<_> = other.not_met(&list).iter().map(|room| room.name.clone()).collect();
        assert_eq!(rooms, ["Attic"], "{:?}", other.without);
        let attic =
            other.beside(&list).into_iter().find(|gain| gain.after.likely_mbps <= 0.0).expect("a room");
        assert!(attic.before.likely_mbps > 0.0 && list.when_done.path(attic.outlet).is_some());
    }
    let told =
        |other: &OtherList| other.differs(&list).into_iter().map(|phrase| phrase.id).collect::<Vec<_>>();
    assert!(!told(no_cable).contains(&"other-not-private".to_owned()));
    assert!(told(nothing_high).contains(&"other-not-private".to_owned()));
}

/// Where somebody could not do a thing, no other list does it either.
#[test]
fn what_was_given_up_is_on_no_list() {
    let survey = every_kind().survey();
    let filter = ChangeKind::AddEntryFilter { behind: houses::part_id(&survey, "E1") };
    assert!(list_of(&survey).others.iter().any(|other| other.steps.iter().any(|step| step.change == filter)));
    let tried = every_kind().could_not(filter).survey();
    for without in [vec![], vec![Without::NewCable], vec![Without::Heights]] {
        let list = list_of(&tried.where_not_wanted(&without.into_iter().collect()));
        let lists = list.others.iter().flat_map(|other| other.steps.iter().map(|step| step.change));
        assert!(!lists.chain(list.steps.iter().map(|step| step.change)).any(|change| change == filter));
    }
}

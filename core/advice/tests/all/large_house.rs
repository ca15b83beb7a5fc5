//! What is larger than any house: it is worked out in the time that a large house takes, and says where it was not looked at
//! whole.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::forecast::{Options as Draws, forecast};
use advice::worklist::{CutShort, Options, WorkList, worklist};
use house::record::{CableKind, EntryKind};
use houses::House;

const FEW: Draws = Draws { draws: 8, seed: 1, points: 33, settles: false };

/// So many splitters in a row, of which nothing is known, and an adapter behind the first and the last.
fn row_of_splitters(count: usize) -> House {
    let mut house = House::new().entry("E1", EntryKind::Cable).splitter("S1", 2).from("E1", 1);
    house = house.outlet("O1", "Office").from("S1", 2).over(CableKind::Six, 5.0).adapter("2.5").bridge();
    for number in 2..=count {
        house = house.splitter(&format!("S{number}"), 2).from(&format!("S{}", number - 1), 1);
    }
    house.outlet("O2", "Den").from(&format!("S{count}"), 1).over(CableKind::Six, 5.0).adapter("2.5")
}

fn list(splitters: usize, options: Options) -> WorkList {
    worklist(&row_of_splitters(splitters).survey(), &options).expect("a sound survey")
}

#[test]
fn a_house_of_any_size_is_drawn_less_often_the_larger_it_is() {
    let draws = |splitters: usize| {
        let survey = row_of_splitters(splitters).survey();
        let options = Draws { points: 16, ..Draws::default() };
        (survey.parts.len(), forecast(&survey, &options).expect("a sound survey").draws)
    };
    // Never fewer draws than the lowest and the highest tenth can be told from, and in all no more parts than 12,000.
    for splitters in [3, 40, 250, 600] {
        let (parts, draws) = draws(splitters);
        let affordable = (12_000 / parts).max(32);
        assert!(draws as usize <= affordable, "{parts} parts, {draws} draws");
        assert!(draws as usize >= affordable.min(128), "{parts} parts, {draws} draws");
    }
}

#[test]
fn a_list_that_was_not_weighed_to_its_end_says_so() {
    let options = Options { screening: FEW, stating: FEW, ..Options::default() };
    let whole = list(4, options);
    assert!(whole.steps.len() > 1, "{} steps", whole.steps.len());
    assert_eq!(whole.cut_short, None);
    let first = list(4, Options { most_weighed: 1, ..options });
    assert_eq!(first.cut_short, Some(CutShort::Size));
    assert_eq!(first.steps.first().map(|step| step.change), whole.steps.first().map(|step| step.change));
    assert_eq!(first.steps.len(), 1);
    assert_eq!(list(4, Options { most_steps: 1, ..options }).cut_short, Some(CutShort::Steps));
}

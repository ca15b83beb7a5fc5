//! The other lists that may be chosen: one touch takes one, it is the list from then on, and one touch goes back.

use guide::Screen;
use guide::screen::{Block, RowEntry};
use house::record::{ChangeKind, Survey, Without};
use houses::change_cases::house;
use telling::report::Provenance;
use telling::words::Figures;

use crate::result_house::{quick, sound, text, walk};

/// A room that only a new cable reaches, and no entry filter.
fn attic() -> houses::House {
    let two = house(10.0).without("F1").at("S1").with(|splitter| splitter.rating.legs = 3);
    two.open(3).wish("Attic", 400.0)
}

fn lists(screen: &Screen) -> Vec<&RowEntry> {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(&rows.rows),
        _ => None,
    });
    rows.flatten()
        .filter(|row| row.key.as_deref().is_some_and(|key| key.starts_with("list-without")))
        .collect()
}

fn keys(screen: &Screen) -> Vec<String> {
    lists(screen).into_iter().filter_map(|row| row.key.clone()).collect()
}

/// What each step is, as the screen numbers it.
fn steps(screen: &Screen) -> Vec<String> {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(&rows.rows),
        _ => None,
    });
    let of_step = |row: &&RowEntry| row.key.as_deref().is_some_and(|key| key.starts_with("step:"));
    rows.flatten().filter(of_step).map(|row| row.head.clone()).collect()
}

fn lays_cable(survey: &Survey) -> bool {
    let list = advice::worklist::worklist(survey, &quick()).expect("a sound house");
    list.steps.iter().any(|step| matches!(step.change, ChangeKind::NewRun { .. }))
}

#[test]
fn one_touch_takes_a_list_and_one_goes_back() {
    let mut walk = walk(attic());
    let everything = walk.go("work");
    sound(&everything);
    assert_eq!(keys(&everything), ["list-without:new-cable", "list-without:heights"]);
    let row = lists(&everything)[0].clone();
    assert!(row.remark.contains("not reached in Attic"), "{}", row.remark);
    assert!(lays_cable(&walk.survey()));

    let chosen = walk.press("list-without:new-cable");
    sound(&chosen);
    assert!(text(&chosen).contains("You chose a list with no new cable."), "{}", text(&chosen));
    assert_eq!(walk.survey().without().into_iter().collect::<Vec<_>>(), [Without::NewCable]);
    assert!(!lays_cable(&walk.survey()));
    assert_eq!(keys(&chosen), ["list-without:nothing", "list-without:heights"]);
    // What the row promised: so many steps, in so many minutes.
    assert!(row.says.starts_with(&format!("{} step", steps(&chosen).len())), "{}", row.says);
    // The report goes by it too.
    let survey = walk.survey();
    let list = advice::worklist::worklist(&survey, &quick()).expect("a sound house");
    let page =
        telling::report::html(&survey, &list, Provenance::default(), &guide::english(Figures::default()));
    assert!(page.contains("You chose a list with no new cable."));

    let back = walk.press("list-without:nothing");
    assert!(walk.survey().without().is_empty());
    assert_eq!((steps(&back), keys(&back)), (steps(&everything), keys(&everything)));
    assert!(!text(&back).contains("You chose a list"));
}

/// The way back is there where the search is not, and nothing else is.
#[test]
fn where_nothing_is_left_out_by_a_choice_the_way_back_is_there_all_the_same() {
    // All that is to be done lays no cable: the list with everything is the same.
    let mut walk = walk(house(10.0).without("F1").not_wanted(Without::NewCable));
    let screen = walk.go("work");
    sound(&screen);
    assert_eq!(keys(&screen).first().map(String::as_str), Some("list-without:nothing"));
    walk.press("list-without:nothing");
    assert!(walk.survey().without().is_empty());
}

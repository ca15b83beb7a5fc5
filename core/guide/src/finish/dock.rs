//! What of a screen stands in its dock. As `docs/look.md` says.

use crate::screen::{Block, ChoiceBlock, DockShown, PressBlock, PressWeight};

/// Of other ways, so many stand beside the main one.
const MOST_OTHER: usize = 1;
/// Another way stands beside the main one if it says it in so many letters; a longer one stands in the row below.
const MOST_LETTERS: usize = 20;
/// So many answers may stand in the dock; more would hide the question.
const MOST_ANSWERS: usize = 4;
/// So many letters may be said about each.
const MOST_ABOUT: usize = 60;

/// The dock of a screen with these blocks, which have their ids.
pub(super) fn dock(blocks: &[Block]) -> DockShown {
    let main =
        blocks.iter().position(|block| press(block).is_some_and(|press| press.weight == PressWeight::Main));
    let mut dock = DockShown { answers_lead_on: main.is_none(), ..DockShown::default() };
    match main {
        Some(main) => {
            let from_main = blocks.iter().skip(main).map_while(press);
            let (is_main, beside): (Vec<_>, Vec<_>) =
                from_main.enumerate().partition(|(place, _)| *place == 0);
            dock.on.extend(is_main.into_iter().map(|(_, press)| press.id.clone()));
            let other: Vec<_> =
                beside.into_iter().map(|(_, press)| press).filter(|press| waits_for_nothing(press)).collect();
            // Several others are a list to read, not a way beside the way on.
            if other.len() <= MOST_OTHER {
                for press in other {
                    let is_short = press.words.chars().count() <= MOST_LETTERS;
                    if is_short { &mut dock.on } else { &mut dock.out }.push(press.id.clone());
                }
            }
        }
        None => dock.answers = answers(blocks).map(|choice| choice.id.clone()),
    }
    let quiet = blocks.iter().filter_map(press).filter(|press| press.weight == PressWeight::Quiet);
    dock.out.extend(quiet.map(|press| press.id.clone()));
    dock
}

fn press(block: &Block) -> Option<&PressBlock> {
    match block {
        Block::Press(press) => Some(press),
        _ => None,
    }
}

fn waits_for_nothing(press: &PressBlock) -> bool {
    press.weight == PressWeight::Other && press.need.is_none()
}

/// The one choice of a screen that asks nothing else, if its answers are few.
fn answers(blocks: &[Block]) -> Option<&ChoiceBlock> {
    let mut only = None;
    for block in blocks {
        match block {
            Block::Choice(choice) if only.is_none() => only = Some(choice),
            // A screen of several choices, of lists and photos asks several things.
            Block::Choice(_)
            | Block::Rows(_)
            | Block::PhotoSlot(_)
            | Block::Writing(_)
            | Block::Number(_)
            | Block::PhotoPart(_)
            | Block::Label(_) => return None,
            _ => {}
        }
    }
    only.filter(|choice| {
        !choice.several
            && choice.options.len() <= MOST_ANSWERS
            && choice.options.iter().all(|option| option.about.chars().count() <= MOST_ABOUT)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screen::{Aloud, ChoiceOption, Need, RowsBlock};

    fn press(id: &str, weight: PressWeight, words: &str) -> PressBlock {
        PressBlock {
            id: id.to_owned(),
            aloud: Aloud::default(),
            key: id.to_owned(),
            words: words.to_owned(),
            weight,
            need: None,
            enabled: true,
        }
    }

    fn main() -> Block {
        Block::Press(press("main", PressWeight::Main, "On"))
    }

    fn other(id: &str) -> Block {
        Block::Press(press(id, PressWeight::Other, "Another way"))
    }

    fn choice(options: usize, about: usize) -> ChoiceBlock {
        let option = |place: usize| ChoiceOption {
            id: format!("c/{place}"),
            aloud: Aloud::default(),
            key: place.to_string(),
            words: "Yes".to_owned(),
            about: "x".repeat(about),
            picked: false,
            unsure: false,
            enabled: true,
        };
        ChoiceBlock {
            id: "c".to_owned(),
            aloud: Aloud::default(),
            key: "c".to_owned(),
            name: "Which?".to_owned(),
            several: false,
            options: (0..options).map(option).collect(),
        }
    }

    fn docked(blocks: &[Block]) -> (Vec<String>, Vec<String>, Option<String>) {
        let dock = dock(blocks);
        (dock.on, dock.out, dock.answers)
    }

    #[test]
    fn the_way_on_and_at_most_one_beside_it() {
        let quiet = Block::Press(press("quiet", PressWeight::Quiet, "Later"));
        let (on, out, answers) = docked(&[main(), other("other"), quiet]);
        assert_eq!(
            (on.as_slice(), out.as_slice(), answers),
            (["main", "other"].map(String::from).as_slice(), ["quiet"].map(String::from).as_slice(), None)
        );
        // A long one stands below; several are a list; one that needs something first, or stands elsewhere, stays there.
        let long = Block::Press(press("long", PressWeight::Other, "Longer than twenty letters"));
        assert_eq!(docked(&[main(), long]), (vec!["main".to_owned()], vec!["long".to_owned()], None));
        assert_eq!(docked(&[main(), other("a"), other("b")]), (vec!["main".to_owned()], Vec::new(), None));
        let mut needy = press("needy", PressWeight::Other, "A photo");
        needy.need = Some(Need::Photo { burst: false });
        assert_eq!(docked(&[main(), Block::Press(needy)]).0, ["main"]);
        assert_eq!(docked(&[other("before"), main()]).0, ["main"]);
    }

    #[test]
    fn the_answers_where_one_thing_is_asked_and_they_are_few() {
        let has = |choice: ChoiceBlock, more: Option<Block>| {
            let blocks: Vec<_> = [Block::Choice(choice)].into_iter().chain(more).collect();
            dock(&blocks).answers.is_some()
        };
        assert!(has(choice(4, 60), None));
        assert!(!has(choice(5, 0), None) && !has(choice(4, 61), None));
        assert!(!has(ChoiceBlock { several: true, ..choice(2, 0) }, None));
        assert!(!has(choice(2, 0), Some(Block::Choice(choice(2, 0)))));
        assert!(!has(choice(2, 0), Some(main())));
        let rows = RowsBlock {
            id: "r".to_owned(),
            aloud: Aloud::default(),
            name: "Rooms".to_owned(),
            rows: Vec::new(),
        };
        assert!(!has(choice(2, 0), Some(Block::Rows(rows))));
        assert!(dock(&[Block::Choice(choice(2, 0))]).answers_lead_on);
        assert!(!dock(&[Block::Choice(choice(2, 0)), main()]).answers_lead_on);
    }
}

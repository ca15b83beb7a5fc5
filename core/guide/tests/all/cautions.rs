//! Cautions are read once: open in full until then, by the touch that takes the answer, and found so after the app's death.

use std::collections::BTreeMap;

use guide::Deed;
use guide::screen::{Block, CautionBlock, PressBlock, Screen};
use houses::good_house;

use crate::result_house::{Walk, main_key, needy, text};

fn cautions(screen: &Screen) -> Vec<&CautionBlock> {
    let mut found = Vec::new();
    for block in &screen.blocks {
        if let Block::Caution(caution) = block {
            found.push(caution);
        }
    }
    found
}

fn press<'a>(screen: &'a Screen, key: &str) -> &'a PressBlock {
    let press = screen.blocks.iter().find_map(|block| match block {
        Block::Press(press) if press.key == key => Some(press),
        _ => None,
    });
    press.unwrap_or_else(|| panic!("{} has no {key}", screen.name))
}

/// All cautions of a screen stand in one row of blocks, each once.
fn stand_together(screen: &Screen) {
    let places: Vec<usize> =
        (0..screen.blocks.len()).filter(|place| matches!(screen.blocks[*place], Block::Caution(_))).collect();
    assert!(places.windows(2).all(|pair| pair[0] + 1 == pair[1]), "{}: {places:?}", screen.name);
    let said: Vec<_> = cautions(screen).iter().map(|caution| &caution.words).collect();
    let mut once = said.clone();
    once.sort();
    once.dedup();
    assert_eq!(once.len(), said.len(), "{}", screen.name);
}

/// The heads of what stands open on a screen.
fn open(screen: &Screen) -> Vec<String> {
    stand_together(screen);
    cautions(screen).iter().filter(|caution| caution.unread).map(|caution| caution.head.clone()).collect()
}

#[test]
fn a_caution_is_read_once_by_the_touch_that_goes_on() {
    let mut walk = Walk::of(&needy().survey());
    walk.go("work");
    let screen = walk.press("step:0");
    let unread = open(&screen);
    assert_eq!(unread.len(), cautions(&screen).len(), "all of it is open the first time");
    assert!(!unread.is_empty());
    assert_eq!(press(&screen, "done").words, "I have read this. It is done");
    assert!(!press(&screen, "work").words.contains("read"), "looking elsewhere reads nothing");
    // Who looks and leaves has not read it.
    let left = walk.press("work");
    assert_eq!(left.name, "work");
    let screen = walk.press("step:0");
    assert_eq!(open(&screen), unread);
    // One touch reads and goes on; the guide that is killed right after knows it.
    assert_eq!(walk.press("done").name, "after");
    let language = guide::english(telling::words::Figures::default());
    let mut killed = guide::Guide::at(walk.home.path(), facts::fact::AuthorId::random(), language).unwrap();
    killed.work_out_with(crate::result_house::quick());
    killed.wait_for_long_work(std::time::Duration::MAX);
    killed.open(&walk.folder).unwrap();
    walk.guide = killed;
    walk.go("work");
    let steps: Vec<String> =
        walk.screen().keys().into_iter().filter(|key| key.starts_with("step:")).map(str::to_owned).collect();
    let mut folded = 0;
    for step in steps {
        walk.go("work");
        let screen = walk.press(&step);
        for caution in cautions(&screen) {
            // What was read is never hidden altogether: its head says what to do or leave.
            assert!(!caution.head.is_empty() && !caution.words.is_empty());
            assert_eq!(caution.unread, !unread.contains(&caution.head), "{step}: {}", caution.head);
            folded += usize::from(!caution.unread);
        }
        if open(&screen).is_empty() && main_key(&screen) == Some("done") {
            assert_eq!(press(&screen, "done").words, "It is done");
        }
    }
    assert!(folded > 0, "no later step has a caution of the first");
}

#[test]
fn a_question_answered_by_one_touch_is_read_by_that_touch() {
    let house = good_house().survey();
    let mut walk = Walk::of(&house);
    let mut read: BTreeMap<String, String> = BTreeMap::new();
    walk.go("next");
    for _ in 0..60 {
        let screen = walk.screen();
        if !screen.name.starts_with("ask-") {
            break;
        }
        for head in open(&screen) {
            let before = read.get(&head);
            assert_eq!(before, None, "{} asks to read again what was read on {before:?}", screen.name);
        }
        let one = screen.blocks.iter().find_map(|block| match block {
            Block::Choice(choice) if screen.dock.answers_lead_on => Some(choice),
            _ => None,
        });
        let unread = open(&screen);
        match one {
            Some(choice) => {
                let unsure = choice.options.iter().find(|option| option.unsure).or(choice.options.first());
                let picked = vec![unsure.expect("an option").key.clone()];
                if !unread.is_empty() {
                    assert!(text(&screen).contains("read this before you go on"), "{}", text(&screen));
                }
                walk.guide.act(&Deed::Pick { key: choice.key.clone(), picked }).unwrap();
                read.extend(unread.into_iter().map(|head| (head, screen.name.clone())));
            }
            None => {
                walk.press("later");
            }
        }
    }
}

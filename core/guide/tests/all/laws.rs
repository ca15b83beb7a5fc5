//! What holds on every screen and after every deed, whatever somebody does: by chance, in every language.

use std::collections::BTreeSet;

use crate::homeowner::{House, LABEL, TONGUES, Walk, asks};
use crate::throws::{Throw, throw};
use crate::{shell, shell_drawn};
use facts::fact::FactId;
use facts::store::Store;
use guide::screen::{Block, MOST_ROWS, NoticeRole, WayTaken};
use guide::{Deed, Guide, Screen};
use proptest::prelude::*;

/// What the file of the picture that is thrown is called.
const PICTURE: &str = "grey.jpg";

/// Whether a text reads like a message's id: a message that is missing is said so.
fn is_id(text: &str) -> bool {
    let is_small = |word: &str| !word.is_empty() && word.chars().all(|sign| sign.is_ascii_lowercase());
    let words: Vec<_> = text.split(['-', '.']).collect();
    words.len() > 1 && words.iter().all(|word| is_small(word))
}

/// What every screen keeps.
fn assert_whole(screen: &Screen) {
    let place = &screen.name;
    assert!(!screen.keys().is_empty() || screen.back, "{place}: no way on");
    assert!(screen.rows() <= MOST_ROWS, "{place}: {} rows", screen.rows());
    assert!(!screen.title.trim().is_empty(), "{place}: no title");
    for block in &screen.blocks {
        let named = block.spoken().first().is_some_and(|name| !name.trim().is_empty());
        assert!(named, "{place}: a block without a name: {block:?}");
        match block {
            Block::Choice(choice) => {
                let silent = choice.options.iter().find(|option| option.words.trim().is_empty());
                assert!(silent.is_none() && !choice.options.is_empty(), "{place}: {choice:?}");
            }
            Block::Rows(rows) => {
                let silent = rows.rows.iter().find(|row| row.head.trim().is_empty());
                assert!(silent.is_none(), "{place}: {silent:?}");
            }
            _ => {}
        }
    }
    shell::assert_for_shells(screen);
    let aloud = screen.items().into_iter().flat_map(|item| [&item.aloud.label, &item.aloud.hint]);
    for said in screen.spoken().into_iter().chain(aloud.map(String::as_str)) {
        assert!(!is_id(said) || said == PICTURE, "{place} says {said}");
        assert!(!said.contains("{$") && !said.contains("{ $"), "{place} lacks an argument: {said}");
    }
}

/// What a screen says in messages; what somebody wrote is left aside.
fn told(screen: &Screen) -> Vec<&str> {
    let mut own = Vec::new();
    for block in &screen.blocks {
        match block {
            Block::Writing(writing) => own.push(writing.text.as_str()),
            Block::Number(number) => own.push(number.text.as_str()),
            Block::Label(label) => own.push(label.text.as_str()),
            _ => {}
        }
    }
    let aloud = screen.items().into_iter().flat_map(|item| [&item.aloud.label, &item.aloud.hint]);
    let said = screen.spoken().into_iter().chain(aloud.map(String::as_str));
    said.filter(|said| !own.contains(said)).collect()
}

/// Every sentence went through the language: where all its letters carry an accent, a plain one was never a message.
/// Tags such as `S1` are names; what is left aside besides stands so on labels and adapters in every country.
pub fn assert_translated(screen: &Screen) {
    const AS_PRINTED: [&str; 2] = ["dB", "bonded"];
    for said in told(screen) {
        let said = said.replace(LABEL, "").replace(PICTURE, "");
        let words = said.split(|sign: char| !sign.is_ascii_alphanumeric());
        let is_tag = |word: &str| {
            let number = word.trim_start_matches(|sign: char| sign.is_ascii_uppercase());
            word.len() - number.len() == 1 && number.parse::<u32>().is_ok()
        };
        let plain = |word: &&str| word.contains(|sign: char| sign.is_ascii_alphabetic());
        let left: Vec<_> =
            words.filter(plain).filter(|word| !is_tag(word) && !AS_PRINTED.contains(word)).collect();
        assert!(left.is_empty(), "{}: {left:?} in {said:?}", screen.name);
    }
}

/// The same screen, but for what was said about the last deed and how one came here: neither is kept. What follows from
/// the survey is worked out again where it is told; until then the overview says so.
fn assert_same(resumed: Screen, shown: Screen, when: &str) {
    let [resumed, shown] = [resumed, shown].map(without_results);
    if resumed != shown {
        let (resumed, shown) = (format!("{resumed:#?}"), format!("{shown:#?}"));
        let differ = resumed.lines().zip(shown.lines()).filter(|(resumed, shown)| resumed != shown);
        panic!("{when}: {:#?}", differ.take(12).collect::<Vec<_>>());
    }
}

/// A screen without its notices; the overview also without what stands beside its rows.
fn without_results(mut screen: Screen) -> Screen {
    screen.notices.clear();
    screen.way = WayTaken::Same;
    if screen.name == "overview" {
        for block in &mut screen.blocks {
            if let Block::Rows(rows) = block {
                for row in &mut rows.rows {
                    row.says.clear();
                    row.aloud.value.clear();
                }
            }
        }
    }
    screen
}

/// The survey's facts, read from the disk.
fn facts(walk: &Walk) -> BTreeSet<FactId> {
    match walk.guide.open_folder() {
        Some(folder) => {
            let store = Store::open(&folder, walk.author).unwrap();
            store.ledger().facts().map(facts::fact::Fact::id).collect()
        }
        None => BTreeSet::new(),
    }
}

fn assert_laws(mut walk: Walk, throws: &[Throw]) {
    let english = *walk.language.locale() == "en";
    let mut folder = walk.guide.open_folder();
    let mut before = facts(&walk);
    for throw in throws {
        let screen = walk.guide.screen();
        assert_whole(&screen);
        if english {
            shell_drawn::assert_heads_short(&screen);
        } else {
            assert_translated(&screen);
        }
        assert_eq!(screen.right_to_left, walk.language.is_right_to_left());
        let deed = throw.on(&screen);
        // A refusal is an answer to a deed, and changes nothing.
        let done = walk.guide.act(&deed);
        walk.guide.settle_long_work();
        let after = walk.guide.screen();
        if done.is_err() {
            assert_same(after.clone(), screen, &format!("refused, and changed all the same: {deed:?}"));
        }
        if walk.guide.open_folder().is_some() {
            // Killed at every step: the same screen comes again.
            walk = walk.killed();
            assert_same(walk.guide.screen(), after, &format!("after a kill behind {deed:?}"));
            let now = facts(&walk);
            if walk.guide.open_folder() == folder {
                assert!(now.is_superset(&before), "{deed:?} lost {:?}", before.difference(&now));
            }
            (folder, before) = (walk.guide.open_folder(), now);
        }
    }
    if let Some(folder) = walk.guide.open_folder() {
        let last = walk.guide.screen();
        walk.guide.close().unwrap();
        walk.guide.open(&folder).unwrap();
        walk.guide.settle_long_work();
        assert_same(walk.guide.screen(), last, "after closing");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, max_shrink_iters: 300, failure_persistence: None, ..ProptestConfig::default() })]

    /// From a new survey.
    #[test]
    fn whatever_is_done(throws in proptest::collection::vec(throw(), 1..40), tongue in 0..TONGUES.len()) {
        assert_laws(Walk::begun(TONGUES[tongue]), &throws);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, max_shrink_iters: 300, failure_persistence: None, ..ProptestConfig::default() })]

    /// From some way along the journey, where there is a house to do things with.
    #[test]
    fn whatever_is_done_in_a_house(
        answered in 0..40_usize,
        throws in proptest::collection::vec(throw(), 1..30),
        tongue in 0..TONGUES.len(),
    ) {
        let mut walk = Walk::begun(TONGUES[tongue]);
        let mut house = House::new();
        for _ in 0..answered {
            let screen = walk.guide.screen();
            if !asks(&screen) {
                break;
            }
            for deed in house.answer(&walk, &screen) {
                walk.act(&deed);
            }
        }
        assert_laws(walk, &throws);
    }
}

#[test]
fn every_screen_of_the_journey_is_whole_and_outlives_a_kill() {
    for tongue in TONGUES {
        let mut walk = Walk::begun(tongue);
        let mut house = House::new();
        while asks(&walk.guide.screen()) {
            let screen = walk.guide.screen();
            assert_whole(&screen);
            for deed in house.answer(&walk, &screen) {
                walk.act(&deed);
                let shown = walk.guide.screen();
                walk = walk.killed();
                assert_same(walk.guide.screen(), shown, "after a kill");
            }
        }
    }
}

#[test]
fn the_laws_can_be_broken() {
    // A missing message and an untranslated one are seen for what they are.
    assert!(is_id("ask-nothing.title") && !is_id("Whose wiring"));
    let mut guide = Guide::at(
        tempfile::tempdir().unwrap().path(),
        facts::fact::AuthorId::random(),
        guide::english(telling::words::Figures::default()),
    )
    .unwrap();
    guide.act(&Deed::Press { key: "new".into() }).unwrap();
    let screen = guide.screen();
    assert!(std::panic::catch_unwind(|| assert_translated(&screen)).is_err());
}

#[test]
fn a_name_that_is_not_taken_leaves_no_survey() {
    let mut walk = Walk::new(guide::english);
    walk.act(&crate::homeowner::press("new"));
    walk.act(&Deed::Write { key: "name".into(), words: "Ö".repeat(5000) });
    let before = walk.guide.screen();
    walk.act(&crate::homeowner::press("make"));
    let mut after = walk.guide.screen();
    let told = std::mem::take(&mut after.notices);
    assert!(matches!(told.as_slice(), [one] if one.role == NoticeRole::Problem), "{told:?}");
    assert!(told[0].words.contains("Too long: the name takes up 10002"), "{told:?}");
    assert_eq!(after, before, "what was typed is still there");
    let left: Vec<_> =
        std::fs::read_dir(walk.home.path()).unwrap().map(|entry| entry.unwrap().path()).collect();
    assert!(!left.iter().any(|path| path.extension().is_some_and(|end| end == "legwork")), "{left:?}");
}

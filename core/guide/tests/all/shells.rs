//! What a native shell needs of the guide besides its screens: where one goes, what is said, drawings, photos, print.

use std::panic::{AssertUnwindSafe, catch_unwind};

use crate::shell;
use crate::whole_house::{ann, fill, guide_at};
use crate::words::ftl_files;
use advice::finding::Caution;
use facts::photo::THUMBNAIL_SIDE;
use facts::store::Store;
use guide::screen::{Aloud, AloudRole, Block, MOST_HEAD, NoticeRole, Screen, WayTaken};
use guide::{Deed, Guide};
use phrase::Phrase;
use telling::words::Figures;
use tempfile::TempDir;

/// The guide over a survey that has everything, on the overview.
fn begun() -> (TempDir, Guide) {
    let home = tempfile::tempdir().unwrap();
    let folder = fill(home.path());
    let mut guide = guide_at(home.path());
    guide.open(&folder).unwrap();
    while guide.screen().name != "overview" {
        guide.act(&Deed::Back).unwrap();
    }
    (home, guide)
}

fn press(guide: &mut Guide, begins: &str) -> Screen {
    let screen = guide.screen();
    let key = screen.keys().into_iter().find(|key| key.starts_with(begins));
    let key = key.unwrap_or_else(|| panic!("{begins} on {}: {:?}", screen.name, screen.keys())).to_owned();
    guide.act(&Deed::Press { key }).unwrap();
    guide.settle_long_work();
    guide.screen()
}

#[test]
fn a_screen_says_which_way_one_came_and_whether_it_is_the_same_place() {
    let (_home, mut guide) = begun();
    let overview = guide.screen();
    let rooms = press(&mut guide, "more");
    assert_eq!((rooms.name.as_str(), rooms.way), ("more", WayTaken::On));
    assert_ne!(rooms.place, overview.place);
    let more = guide.screen();
    assert_eq!(more, rooms, "drawing changes nothing");
    guide.act(&Deed::Press { key: "no such key".into() }).unwrap();
    assert_eq!(guide.screen(), more, "what is not offered changes nothing");
    guide.act(&Deed::Back).unwrap();
    let back = guide.screen();
    assert_eq!((back.way, &back.place), (WayTaken::Back, &overview.place));
    // One kind of screen, two places.
    press(&mut guide, "forecast");
    press(&mut guide, "map");
    let map = guide.screen();
    let parts: Vec<_> =
        map.keys().into_iter().filter(|key| key.starts_with("part:")).map(str::to_owned).collect();
    let place = |guide: &mut Guide, key: &String| {
        guide.act(&Deed::Press { key: key.clone() }).unwrap();
        let place = guide.screen().place;
        guide.act(&Deed::Back).unwrap();
        place
    };
    let last = parts.last().unwrap();
    assert_ne!(place(&mut guide, &parts[0]), place(&mut guide, last));
    guide.close().unwrap();
    assert_eq!(guide.screen().way, WayTaken::Back);
}

#[test]
fn the_same_words_said_again_are_a_new_notice() {
    let (_home, mut guide) = begun();
    press(&mut guide, "more");
    press(&mut guide, "free-rooms");
    let without_name = |guide: &mut Guide| {
        let screen = press(guide, "add");
        let [notice] = screen.notices.try_into().unwrap();
        assert_eq!((notice.role, notice.aloud.role), (NoticeRole::Problem, AloudRole::Alert));
        (notice.id, notice.words)
    };
    let (first, words) = without_name(&mut guide);
    assert_eq!(guide.screen().notices[0].id, first, "drawn anew, it is the same notice");
    let (second, again) = without_name(&mut guide);
    assert_eq!(words, again);
    assert_ne!(first, second);
}

#[test]
fn small_pictures_are_files_until_the_survey_is_closed_or_the_photo_is_gone() {
    let (_home, mut guide) = begun();
    let screen = press(&mut guide, "free-assign");
    let photos: Vec<_> = screen
        .blocks
        .iter()
        .filter_map(|block| match block {
            Block::PhotoSlot(slot) => Some(slot.photos.iter().map(|photo| photo.photo.clone())),
            _ => None,
        })
        .flatten()
        .collect();
    let photo = photos.first().expect("a photo");
    let small = guide.small_photo(photo).unwrap();
    let whole = guide.whole_photo(photo).unwrap();
    let picture = image_size(&std::fs::read(&small).unwrap());
    assert!(picture.0.max(picture.1) <= THUMBNAIL_SIDE, "{picture:?}");
    assert!(whole.is_file() && whole != small);
    for no_photo in ["", "../../etc", "0192f3a0-0000-7000-8000-000000000000"] {
        guide.small_photo(no_photo).unwrap_err();
    }
    // Forgotten, it must not live on as a small picture, whoever forgets it.
    let mut store = Store::open(&guide.open_folder().unwrap(), ann()).unwrap();
    store.forget_photo(photo.parse().unwrap()).unwrap();
    drop(store);
    assert!(!small.exists(), "forgotten, and still shown");
    // The others come again.
    let other = guide.small_photo(photos.last().unwrap()).unwrap();
    assert!(other.is_file() && photos.len() > 1);
    guide.close().unwrap();
    assert!(!other.exists());
}

fn image_size(bytes: &[u8]) -> (u32, u32) {
    let picture = image::load_from_memory(bytes).unwrap();
    (picture.width(), picture.height())
}

#[test]
fn print_that_the_device_recognised_is_offered_and_counts_once_it_is_taken() {
    let (_home, mut guide) = begun();
    press(&mut guide, "free-parts");
    let part = guide.screen().blocks.iter().find_map(|block| match block {
        Block::Rows(rows) => rows.rows.iter().find(|row| row.head.contains("amplifier"))?.key.clone(),
        _ => None,
    });
    guide.act(&Deed::Press { key: part.expect("the amplifier") }).unwrap();
    let asks = guide.screen().blocks.iter().find_map(|block| match block {
        Block::Rows(rows) => rows.rows.iter().find(|row| row.head.contains("its label"))?.key.clone(),
        _ => None,
    });
    guide.act(&Deed::Press { key: asks.expect("the question about its print") }).unwrap();
    let screen = guide.screen();
    assert_eq!(screen.name, "ask-label");
    let key = screen.blocks.iter().find_map(|block| match block {
        Block::PhotoSlot(slot) => slot.print_key.clone(),
        _ => None,
    });
    let (key, words) = (key.expect("a key for print"), "5-1002 MHz  GAIN 15 dB".to_owned());
    guide.act(&Deed::Print { key, words: words.clone() }).unwrap();
    let figures = guide.screen().blocks.into_iter().find_map(|block| match block {
        Block::Label(label) if label.text == words => Some(label.figures),
        _ => None,
    });
    let figures = figures.expect("what was recognised, beside its photo");
    assert!(figures.iter().any(|figure| figure.says.contains("15")), "{figures:?}");
    assert!(figures.iter().all(|figure| !figure.taken && figure.key.is_some()), "it waits for a touch");
}

#[test]
fn the_laws_for_shells_can_be_broken() {
    let (_home, mut guide) = begun();
    let whole = press(&mut guide, "work");
    let whole = if whole.name == "work" { press(&mut guide, "step:0") } else { whole };
    assert_eq!(whole.name, "step");
    shell::assert_for_shells(&whole);
    let broken = |what: &str, breaks: &dyn Fn(&mut Screen)| {
        let mut screen = whole.clone();
        breaks(&mut screen);
        assert_ne!(screen, whole, "{what}: nothing to break");
        let law = catch_unwind(AssertUnwindSafe(|| shell::assert_for_shells(&screen)));
        assert!(law.is_err(), "{what}: nobody noticed");
    };
    broken("an id twice", &|screen| {
        let block = screen.blocks[0].clone();
        screen.blocks.push(block);
    });
    broken("a caution without a head", &|screen| {
        for block in &mut screen.blocks {
            if let Block::Caution(caution) = block {
                caution.head.clear();
            }
        }
    });
    broken("a press without a label", &|screen| {
        for block in &mut screen.blocks {
            if let Block::Press(press) = block {
                press.aloud = Aloud::default();
            }
        }
    });
    broken("a file that is asked for by its key alone", &|screen| {
        for block in &mut screen.blocks {
            if let Block::Press(press) = block {
                press.key = "file-in".into();
            }
        }
    });
    broken("a place without an id", &|screen| screen.place.clear());
}

#[test]
fn every_caution_has_a_short_head_and_every_head_is_short() {
    let language = guide::english(Figures::default());
    let ours = ["ask-shared", "ask-dependents"].map(Phrase::new);
    for phrase in Caution::ALL.map(Caution::phrase).into_iter().chain(ours) {
        assert!(language.knows(&phrase.attribute("head").id), "{}", phrase.id);
    }
    let mut seen = 0;
    for path in ftl_files() {
        let text = std::fs::read_to_string(&path).unwrap();
        for line in text.lines() {
            let Some((name, head)) = line.trim_start().split_once(" = ") else { continue };
            if name.starts_with('.') && name.ends_with("head") {
                assert!(head.chars().count() <= MOST_HEAD, "{}: {head}", path.display());
                seen += 1;
            }
        }
    }
    assert!(seen > 55, "{seen}");
}

/// The variants of an enum, as its source has them.
fn variants<'a>(source: &'a str, name: &str) -> Vec<&'a str> {
    let body = source.split(&format!("pub enum {name} {{")).nth(1).and_then(|rest| rest.split("\n}").next());
    let lines = body.unwrap_or_else(|| panic!("no {name}")).lines();
    // Four spaces in: a variant, and not what it holds.
    let names = lines
        .filter_map(|line| line.strip_prefix("    "))
        .filter(|line| line.starts_with(char::is_uppercase));
    names.map(|line| line.split(|sign: char| !sign.is_alphanumeric()).next().unwrap()).collect()
}

#[test]
fn whoever_writes_a_shell_reads_of_everything_that_a_screen_may_hold() {
    let page = include_str!("../../../../docs/screens.md").to_lowercase();
    let said = [
        (include_str!("../../src/screen/block.rs"), "Block"),
        (include_str!("../../src/screen/aloud.rs"), "AloudRole"),
        (include_str!("../../src/screen/need.rs"), "Need"),
        (include_str!("../../src/screen/input.rs"), "WritingKind"),
        (include_str!("../../src/screen/input.rs"), "NumberKind"),
        (include_str!("../../src/screen/way.rs"), "WayTaken"),
        (include_str!("../../src/screen/severity.rs"), "Severity"),
        (include_str!("../../src/screen/words.rs"), "WordsRole"),
        (include_str!("../../src/screen/press.rs"), "PressWeight"),
        (include_str!("../../src/screen/figure.rs"), "MarkInk"),
        (include_str!("../../src/screen/figure.rs"), "MarkDash"),
        (include_str!("../../src/screen/figure.rs"), "MarkFill"),
        (include_str!("../../src/screen/figure.rs"), "MarkWeight"),
    ];
    let mut seen = 0;
    for (source, name) in said {
        for variant in variants(source, name) {
            let is_said = page.contains(&variant.to_lowercase());
            assert!(is_said, "docs/screens.md says nothing of {name}::{variant}");
            seen += 1;
        }
    }
    assert!(seen > 70, "{seen}");
}

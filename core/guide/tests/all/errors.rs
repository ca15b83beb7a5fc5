//! What goes wrong is a notice of the screen that stands, in every language: nothing is changed, what was typed is still
//! there, and no path, no word of the system's and no name of a type is shown.

use std::fs;
use std::path::{Path, PathBuf};

use facts::fact::AuthorId;
use guide::screen::{Block, FileAsked, NoticeRole};
use guide::{Deed, Guide, GuideError, Screen};
use phrase::{Arg, Phrase};
use telling::words::error::InWords;
use telling::words::{Figures, Language};

use crate::homeowner::{TONGUES, Tongue, Walk, press};

/// What a person reads and hears.
fn all_said(screen: &Screen) -> Vec<String> {
    let aloud = screen.items().into_iter().flat_map(|item| [&item.aloud.label, &item.aloud.hint]);
    screen.spoken().into_iter().chain(aloud.map(String::as_str)).map(str::to_owned).collect()
}

/// No path, no command, nothing of the system's, no name of a type, on the screen or on any notice of it.
#[track_caller]
fn assert_calm(screen: &Screen, home: &Path) {
    let home = home.display().to_string();
    for said in all_said(screen) {
        let never =
            [home.as_str(), "os error", "legwork ", "::", "Error", "Fault", "SQL", "sqlite", "error-"];
        let found = never.iter().find(|never| said.contains(**never));
        assert!(found.is_none(), "{}: {found:?} in {said}", screen.name);
        let path = said
            .split_whitespace()
            .find(|word| word.trim_start_matches(['“', '(', '\u{2068}']).starts_with('/') && word.len() > 2);
        assert!(path.is_none(), "{}: {path:?} in {said}", screen.name);
    }
}

/// The one notice that the screen has, as it must be said in the language of the walk.
#[track_caller]
fn assert_told(walk: &Walk, phrase: &Phrase) {
    let screen = walk.guide.screen();
    let told: Vec<_> = screen.notices.iter().filter(|notice| notice.role == NoticeRole::Problem).collect();
    assert_eq!(told.len(), 1, "{}: {:?}", screen.name, screen.notices);
    assert_eq!(told[0].words, walk.language.say(phrase));
    assert!(walk.language.knows(&phrase.id), "{}", phrase.id);
    assert_calm(&screen, walk.home.path());
    // Names of files and formats aside, no letter of a notice is one of English where each carries an accent.
    if walk.language.locale().language.as_str() != "en" || walk.language.locale().region.is_some() {
        let names =
            ["Mill", "HEIC", "JPEG", "PNG", "none.jpg", "film.gif", "junk.lwk", "report.html", "gone"];
        let left = names.iter().fold(told[0].words.clone(), |left, name| left.replace(name, ""));
        assert!(!left.contains(|sign: char| sign.is_ascii_alphabetic()), "{left}");
    }
}

/// A walk with a survey called `Mill`, and its folder.
fn begun(tongue: Tongue) -> (Walk, PathBuf) {
    let mut walk = Walk::new(tongue);
    walk.act(&press("new"));
    walk.act(&Deed::Write { key: "name".into(), words: "Mill".into() });
    walk.act(&press("make"));
    let folder = walk.guide.open_folder().unwrap();
    (walk, folder)
}

/// The same, with the list of surveys shown.
fn listed(tongue: Tongue) -> (Walk, PathBuf) {
    let (mut walk, folder) = begun(tongue);
    walk.guide.close().unwrap();
    walk.guide.settle_long_work();
    (walk, folder)
}

fn name(phrase: &str) -> Phrase {
    Phrase::new(phrase).text("name", "Mill")
}

/// A connection of another program.
fn other_program(folder: &Path) -> rusqlite::Connection {
    rusqlite::Connection::open(folder.join("survey.db")).unwrap()
}

/// Where a picture goes on the screen that asks for the entry's label or any other photo.
fn photo_slot(screen: &Screen) -> Option<String> {
    screen.blocks.iter().find_map(|block| match block {
        Block::PhotoSlot(slot) => Some(slot.key.clone()),
        _ => None,
    })
}

#[test]
fn a_survey_that_another_program_holds_keeps_what_was_chosen() {
    for tongue in TONGUES {
        let (mut walk, folder) = begun(tongue);
        let before = walk.guide.screen();
        let options = crate::homeowner::choices(&before).next().unwrap().clone();
        let pick = Deed::Pick { key: options.key.clone(), picked: vec![options.options[0].key.clone()] };
        let other = other_program(&folder);
        other.execute_batch("BEGIN IMMEDIATE").unwrap();
        walk.act(&pick);
        assert_told(&walk, &name("error-busy"));
        let after = walk.guide.screen();
        assert_eq!(after.name, before.name);
        let chosen = crate::homeowner::choices(&after).next().unwrap().clone();
        assert!(chosen.options[0].picked, "what was chosen is lost");
        other.execute_batch("ROLLBACK").unwrap();
        // Then it goes on as if nothing had been.
        walk.act(&pick);
        let on = walk.guide.screen();
        assert!(on.name != before.name && on.notices.is_empty(), "{}: {:?}", on.name, on.notices);
    }
}

#[test]
fn a_survey_of_a_newer_release_is_not_opened() {
    for tongue in TONGUES {
        let (walk, folder) = listed(tongue);
        other_program(&folder).pragma_update(None, "user_version", 999).unwrap();
        let mut walk = walk.killed();
        walk.guide.settle_long_work();
        walk.act(&press("open:Mill"));
        let screen = walk.guide.screen();
        let says = walk.language.say(&name("error-survey-newer"));
        assert!(screen.spoken().contains(&says.as_str()), "{:?}", screen.spoken());
        assert_calm(&screen, walk.home.path());
    }
}

#[test]
fn a_survey_that_went_away_is_missed_and_a_damaged_one_can_be_mended() {
    for tongue in TONGUES {
        let (mut walk, folder) = listed(tongue);
        let away = walk.home.path().join("away");
        fs::rename(&folder, &away).unwrap();
        walk.act(&press("open:Mill"));
        let screen = walk.guide.screen();
        let says = walk.language.say(&Phrase::new("gone"));
        assert!(screen.spoken().contains(&says.as_str()), "{:?}", screen.spoken());
        assert_calm(&screen, walk.home.path());
        fs::rename(&away, &folder).unwrap();
        walk.act(&press("out"));

        fs::write(folder.join("survey.db"), b"no database at all, and long enough to be looked into")
            .unwrap();
        walk.act(&press("open:Mill"));
        let screen = walk.guide.screen();
        let says = walk.language.say(&name("error-survey-beginning"));
        assert!(screen.spoken().contains(&says.as_str()), "{:?}", screen.spoken());
        assert!(screen.keys().contains(&"mend"));
        assert_calm(&screen, walk.home.path());
    }
}

#[test]
fn a_file_that_is_none_is_refused_by_its_name() {
    for tongue in TONGUES {
        let mut walk = Walk::new(tongue);
        let file = walk.home.path().join("junk.lwk");
        walk.act(&press("sent"));
        let choose = for_a_file(&walk);
        let give = |file: &Path| Deed::File { key: choose.clone(), file: file.display().to_string() };
        walk.act(&give(&file));
        assert_told(&walk, &name_of("error-missing", "name", "junk.lwk"));
        fs::write(&file, "no file of a survey").unwrap();
        walk.act(&give(&file));
        assert_told(&walk, &name_of("error-file-not-a-zip", "file", "junk.lwk"));
        assert_eq!(walk.guide.screen().name, "sent");
    }
}

/// The key of the press that asks for a file.
fn for_a_file(walk: &Walk) -> String {
    let screen = walk.guide.screen();
    (*screen.keys().iter().find(|key| FileAsked::of(key).is_some()).expect("a press for a file")).to_owned()
}

fn name_of(id: &str, argument: &'static str, name: &str) -> Phrase {
    Phrase::new(id).text(argument, name)
}

#[test]
fn long_work_that_failed_says_why_before_it_is_collected() {
    for tongue in TONGUES {
        let mut walk = Walk::new(tongue);
        let file = walk.home.path().join("junk.lwk");
        fs::write(&file, "no file of a survey").unwrap();
        walk.act(&press("sent"));
        let deed = Deed::File { key: for_a_file(&walk), file: file.display().to_string() };
        walk.guide.act(&deed).unwrap();
        while walk.guide.long_work().is_some() {
            std::thread::yield_now();
        }
        let screen = walk.guide.screen();
        let says = walk.language.say(&name_of("error-file-not-a-zip", "file", "junk.lwk"));
        assert!(screen.spoken().contains(&says.as_str()), "{}: {:?}", screen.name, screen.spoken());
        assert_calm(&screen, walk.home.path());
    }
}

#[test]
fn a_picture_that_is_none_is_refused_and_the_screen_stays() {
    for tongue in TONGUES {
        let (mut walk, _) = begun(tongue);
        let mut slot = None;
        let mut house = crate::homeowner::House::new();
        while crate::homeowner::asks(&walk.guide.screen()) && slot.is_none() {
            let screen = walk.guide.screen();
            slot = photo_slot(&screen);
            if slot.is_none() {
                house.answer(&walk, &screen).iter().for_each(|deed| walk.act(deed));
            }
        }
        let key = slot.expect("no question takes a photo");
        let before = walk.guide.screen();
        let none = walk.home.path().join("none.jpg");
        let give = |file: &Path| Deed::Photo { key: key.clone(), file: file.display().to_string() };
        walk.act(&give(&none));
        assert_told(&walk, &name_of("error-missing", "name", "none.jpg"));
        fs::write(&none, "no picture").unwrap();
        walk.act(&give(&none));
        // What was refused before it for the same place stays told beside it.
        let screen = walk.guide.screen();
        assert_eq!(screen.notices.len(), 2, "{:?}", screen.notices);
        assert_eq!(screen.notices[1].words, walk.language.say(&Phrase::new("error-picture-none")));
        let film = walk.home.path().join("film.gif");
        fs::write(&film, "GIF89a").unwrap();
        walk.act(&give(&film));
        let gif = Phrase::new("error-kind-gif");
        let screen = walk.guide.screen();
        assert_eq!(
            screen.notices[2].words,
            walk.language.say(&Phrase::new("error-picture-other-kind").phrase("found", gif))
        );
        assert_eq!((&screen.name, &screen.blocks), (&before.name, &before.blocks));
    }
}

#[test]
fn a_text_too_long_is_said_and_still_there() {
    for tongue in TONGUES {
        let mut walk = Walk::new(tongue);
        walk.act(&press("new"));
        walk.act(&Deed::Write { key: "name".into(), words: "7".repeat(40_000) });
        let before = walk.guide.screen();
        walk.act(&press("make"));
        let screen = walk.guide.screen();
        let limit = Arg::Count(facts::fact::MAX_VALUE_BYTES as u64);
        let told = Phrase::new("error-text-too-long").phrase("what", house::story::field_name("name"));
        assert_told(&walk, &told.with("found", Arg::Count(40_002)).with("limit", limit));
        assert_eq!((&screen.name, &screen.blocks), (&before.name, &before.blocks));
        assert!(walk.guide.open_folder().is_none());
    }
}

#[test]
fn put_aside_and_gone_is_said_on_the_screen_that_stays() {
    for tongue in TONGUES {
        let (mut walk, folder) = begun(tongue);
        let before = walk.guide.screen();
        walk.guide.suspend().unwrap();
        let away = walk.home.path().join("away");
        fs::rename(&folder, &away).unwrap();
        walk.act(&press("later"));
        assert_told(&walk, &name("error-survey-missing"));
        assert_eq!(walk.guide.screen().blocks, before.blocks);
        fs::rename(&away, &folder).unwrap();
        walk.guide.resume().unwrap();
        assert_eq!(walk.guide.screen(), before);
    }
}

#[test]
fn a_folder_that_cannot_be_is_an_error_with_words() {
    let home = tempfile::tempdir().unwrap();
    let file = home.path().join("Mill");
    fs::write(&file, "a file, where the home folder was to be").unwrap();
    let english = guide::english(Figures::default());
    let Err(error) = Guide::at(&file.join("surveys"), AuthorId::random(), english) else {
        panic!("a home within a file");
    };
    assert!(matches!(error, GuideError::Trouble(_)), "{error}");
    let said = guide::english(Figures::default()).say(&error.phrase());
    assert!(said.contains("“surveys”") && !said.contains('/'), "{said}");
}

/// Every message of the file of errors, in the pseudo-languages, whatever it speaks of.
#[test]
fn every_error_is_translated() {
    let words = include_str!("../../../telling/words/en/errors.ftl");
    let messages: Vec<_> = words.lines().filter_map(|line| line.split_once(" = ")).collect();
    assert!(messages.len() > 80, "{}", messages.len());
    let languages: [Language; 2] = [guide::lengthened, guide::right_to_left].map(|of| of(Figures::default()));
    for (id, text) in messages {
        let arguments = text.split("{ $").skip(1).filter_map(|rest| rest.split_once(" }"));
        let phrase = arguments.fold(Phrase::new(id), |phrase, (argument, _)| {
            // The names of arguments stand in code; here each only has to be there.
            phrase.with(String::leak(argument.to_owned()), Arg::Count(7))
        });
        for language in &languages {
            let said = language.say(&phrase);
            assert!(!said.contains(|sign: char| sign.is_ascii_alphabetic()), "{id}: {said}");
        }
    }
}

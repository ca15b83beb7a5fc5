//! Two people, two devices, one house: files to and fro through deeds alone.

use std::fs;
use std::path::Path;

use crate::person::{Person, picture, row_of, rows, says, shown, two};
use facts::fact::AuthorId;
use facts::store::Store;
use guide::Deed;
use guide::screen::{Block, FileAsked, NoticeRole, NoticeShown};
use house::document::Document;

#[test]
fn edits_apart_meet_disagree_and_are_settled_so_that_both_show_the_same() {
    let (mut ann, mut bo, between) = two();
    ann.plan("300");
    bo.plan("1000");
    // What only one of them wrote.
    bo.go("house");
    let row = row_of(&bo.guide.screen(), "Whose wiring");
    bo.press(&row.key.unwrap());
    bo.pick("whose", &["rented"]);
    let from_bo = between.path().join("bo.lwk");
    bo.pack(&from_bo);

    let before = shown(&ann.folder());
    ann.look(&from_bo);
    let look = ann.guide.screen();
    // Three: Bo's name, the plan, whose wiring it is.
    says(&look, "3 new details, 1 disagreement, no new photos, nothing to forget");
    says(&look, "The survey, the internet plan");
    let from = row_of(&look, "Bo");
    assert_eq!(from.says, "3 details");
    assert_eq!(shown(&ann.folder()), before, "a look changes nothing");

    ann.press("take");
    says(&ann.guide.screen(), "Taken in: 3 new details");
    assert_ne!(shown(&ann.folder()), before);
    ann.press("put-back");
    assert_eq!(shown(&ann.folder()), before, "put back is as it was");
    ann.look(&from_bo);
    ann.press("take");

    ann.press("settle");
    let list = ann.on("share-disagreements");
    let row = row_of(&list, "The survey, the internet plan");
    assert!(row.says.contains("you said") && row.says.contains("Bo said"), "{}", row.says);
    ann.press(&row.key.unwrap());
    let screen = ann.on("share-disagreement");
    says(&screen, "Before, it was 100 Mb/s");
    let Some(Block::Choice(choice)) = screen.blocks.iter().find(|block| matches!(block, Block::Choice(_)))
    else {
        panic!("no choice")
    };
    assert_eq!(choice.options.len(), 2);
    // Nothing chosen yet: nothing is settled.
    ann.press("settle");
    ann.on("share-disagreement");
    let mine = choice.options.iter().find(|option| option.words.contains("300 Mb/s")).unwrap();
    assert!(mine.about.contains("you"), "{}", mine.about);
    let key = mine.key.clone();
    ann.pick("right", &[&key]);
    ann.press("settle");
    says(&ann.on("share-disagreements"), "There is nothing to settle");

    // Something was written since: it would be put back by saying again what stood before.
    ann.go("take-in");
    assert!(ann.guide.screen().keys().contains(&"put-back"));
    assert!(ann.guide.screen().keys().contains(&"keep-taken"));

    let from_ann = between.path().join("ann.lwk");
    ann.pack(&from_ann);
    bo.look(&from_ann);
    says(&bo.guide.screen(), "no disagreements");
    bo.press("take");
    assert_eq!(shown(&ann.folder()), shown(&bo.folder()));
    bo.go("disagreements");
    says(&bo.guide.screen(), "There is nothing to settle");
    // Taken in once, the same file brings nothing.
    bo.look(&from_ann);
    says(&bo.guide.screen(), "is here already");
    assert!(!bo.guide.screen().keys().contains(&"take"));
}

#[test]
fn a_file_leaves_out_what_was_asked_and_replaces_only_when_told() {
    let (mut ann, mut bo, between) = two();
    let file = between.path().join("quiet.lwk");
    ann.go("pack");
    ann.pick("without", &["owner"]);
    let screen = ann.guide.screen();
    let keys = screen.keys();
    assert!(
        !keys.iter().any(|key| key.contains("Mill")),
        "the proposed name says whose house it is: {keys:?}"
    );
    ann.file(&file);
    let mut cy = Person::new();
    cy.press("sent");
    cy.file(&file);
    let look = cy.guide.screen();
    says(&look, "left out who and where");
    assert!(!look.spoken().iter().any(|words| words.contains("Mill") || words.contains("Ann")));

    // A file of that name is there: it stays until told otherwise.
    let first = fs::read(&file).unwrap();
    ann.plan("250");
    ann.go("pack");
    assert!(
        !ann.guide.screen().keys().iter().any(|key| key.contains("Mill")),
        "the choice stays until it is changed"
    );
    ann.pick("without", &[]);
    ann.pack(&file);
    assert_eq!(fs::read(&file).unwrap(), first);
    ann.press("replace");
    assert_ne!(fs::read(&file).unwrap(), first);
    // In a folder it gets the name that was proposed.
    ann.go("pack");
    ann.file(between.path());
    assert!(between.path().join("Mill House.lwk").exists());

    // A file of a survey that is here is not taken in beside it.
    bo.leave();
    bo.press("sent");
    bo.file(&file);
    says(&bo.guide.screen(), "on this device already");
    bo.press("there");
    bo.on("share-take-in");
    bo.press("take");
    assert_eq!(shown(&ann.folder()), shown(&bo.folder()));

    // And one of another survey leads out of the one that is open.
    let mut dan = Person::new();
    dan.make("Another");
    dan.look(&file);
    dan.press("apart");
    dan.on("sent");
    dan.press("take");
    assert!(dan.folder().ends_with("Mill House.legwork"));
}

#[test]
fn what_is_no_file_of_ours_is_refused_and_changes_nothing() {
    let (mut ann, _, between) = two();
    let junk = between.path().join("junk.lwk");
    fs::write(&junk, b"PK\x03\x04 not one of ours").unwrap();
    let before = shown(&ann.folder());
    ann.go("take-in");
    let key = FileAsked::ToRead;
    let screen = ann.guide.screen();
    let key = *screen.keys().iter().find(|one| FileAsked::of(one).as_ref() == Some(&key)).unwrap();
    for file in [junk.display().to_string(), "/nowhere/at all.lwk".into(), String::new()] {
        ann.act(&Deed::File { key: key.into(), file });
        let told = ann.on("share-take-in").notices;
        let is_problem =
            |notice: &NoticeShown| notice.role == NoticeRole::Problem && !notice.words.is_empty();
        assert!(told.first().is_some_and(is_problem), "{told:?}");
    }
    // A press without a file says what is missing.
    ann.act(&Deed::Press { key: key.into() });
    says(&ann.guide.screen(), "Please choose the file");
    assert_eq!(shown(&ann.folder()), before);
}

#[test]
fn who_said_what_is_told_and_taken_back() {
    let (mut ann, mut bo, between) = two();
    ann.plan("300");
    ann.go("acts");
    let newest = rows(&ann.on("share-acts")).remove(0);
    assert!(newest.head.starts_with("You, "), "{}", newest.head);
    assert!(newest.says.contains("the survey, the internet plan: 300 Mb/s"), "{}", newest.says);
    ann.press(&newest.key.unwrap());
    ann.press("undo");
    says(&ann.on("share-act"), "The survey, the internet plan: 100 Mb/s");
    // And that in turn.
    ann.press("undo");
    says(&ann.on("share-act"), "300 Mb/s");

    // The story of the field, oldest first; the first step was changed later and says why it stays.
    ann.go("things");
    let thing = row_of(&ann.guide.screen(), "The survey");
    ann.press(&thing.key.unwrap());
    let plan = row_of(&ann.on("share-thing"), "The internet plan");
    assert!(plan.remark.contains("said 3 times before"), "{}", plan.remark);
    ann.press(&plan.key.unwrap());
    let story = rows(&ann.on("share-field"));
    assert_eq!(story.len(), 4);
    ann.press(story[0].key.as_ref().unwrap());
    let screen = ann.on("share-act");
    assert!(!screen.keys().contains(&"undo"));
    says(&screen, "was changed again later");

    // Somebody else's step says what follows for them.
    let file = between.path().join("ann.lwk");
    ann.pack(&file);
    bo.look(&file);
    bo.press("take");
    bo.go("acts");
    let newest = rows(&bo.guide.screen()).remove(0);
    assert!(newest.head.starts_with("Ann, "), "{}", newest.head);
    bo.press(&newest.key.unwrap());
    says(&bo.guide.screen(), "taken back for them too");
    bo.press("undo");
    says(&bo.guide.screen(), "100 Mb/s");
}

#[test]
fn what_one_removed_and_another_changed_stays_and_is_decided() {
    let (mut ann, mut bo, between) = two();
    ann.go("house");
    let row = row_of(&ann.guide.screen(), "The rooms");
    ann.press(&row.key.unwrap());
    ann.pick("rooms", &["office"]);
    ann.press("next");
    let file = between.path().join("rooms.lwk");
    ann.pack(&file);
    bo.look(&file);
    bo.press("take");
    // Ann takes the room back, which removes it; Bo says what it should be good for.
    ann.go("acts");
    let newest = rows(&ann.guide.screen()).remove(0);
    assert!(newest.says.contains("was added"), "{}", newest.says);
    ann.press(&newest.key.unwrap());
    ann.press("undo");
    ann.go("removed");
    let gone = rows(&ann.on("share-removed"));
    assert_eq!(gone.len(), 1, "{gone:#?}");
    assert!(gone[0].head.contains("Office"), "a removed thing keeps its name: {gone:#?}");
    // Brought back, and removed again by taking that back.
    ann.press(gone[0].key.as_ref().unwrap());
    ann.press("back");
    says(&ann.guide.screen(), "Nothing was removed");
    ann.go("acts");
    let newest = rows(&ann.guide.screen()).remove(0);
    ann.press(&newest.key.unwrap());
    ann.press("undo");

    bo.go("house");
    let row = row_of(&bo.guide.screen(), "Office: what is wished for");
    bo.press(&row.key.unwrap());
    bo.pick("wish", &["fast"]);
    let file = between.path().join("bo.lwk");
    bo.pack(&file);
    ann.look(&file);
    ann.press("take");
    ann.go("removed");
    let screen = ann.on("share-removed");
    let flagged = rows(&screen).remove(0);
    assert!(flagged.says.contains("removed by you, changed by Bo"), "{}", flagged.says);
    ann.press(&flagged.key.unwrap());
    ann.press("back");
    says(&ann.guide.screen(), "Nothing was removed");
    let file = between.path().join("kept.lwk");
    ann.pack(&file);
    bo.look(&file);
    bo.press("take");
    assert_eq!(shown(&ann.folder()), shown(&bo.folder()));
}

#[test]
fn forgetting_asks_twice_and_reaches_others() {
    let (mut ann, mut bo, between) = two();
    let holds = |folder: &Path, word: &str| {
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).filter(|path| path.is_file()).any(
            |path| {
                let bytes = fs::read(path).unwrap();
                bytes.windows(word.len()).any(|window| window == word.as_bytes())
            },
        )
    };
    ann.go("things");
    let me = row_of(&ann.guide.screen(), "You");
    ann.press(&me.key.unwrap());
    let name = row_of(&ann.on("share-thing"), "The name");
    assert_eq!(name.says, "Ann");
    ann.press(&name.key.unwrap());
    ann.press("forget");
    says(&ann.on("share-forget"), "Forgetting is for ever");
    ann.press("keep");
    ann.on("share-field");
    ann.press("forget");
    ann.press("forget");
    says(&ann.on("share-forget-for-others"), "who takes in a file from here is asked");
    assert!(holds(&ann.folder(), "\"Ann\""), "not before the second yes");
    ann.press("forget");
    says(&ann.guide.screen(), "Forgotten");
    let folder = ann.folder();
    assert!(!holds(&folder, "\"Ann\""));
    let file = between.path().join("forgot.lwk");
    // Whoever writes on gives the name of this device again; without one, nothing is said.
    ann.press("overview");
    ann.press("out");
    ann.press("device");
    ann.write("name", "");
    ann.press("out");
    ann.press("open:Mill House");
    ann.pack(&file);
    assert!(!String::from_utf8_lossy(&fs::read(&file).unwrap()).contains("\"Ann\""));

    bo.look(&file);
    says(&bo.guide.screen(), "the wish that 1 thing be forgotten");
    bo.press("take");
    // All else is taken; this waits for a yes of its own.
    says(&bo.on("share-wishes"), "asked by");
    assert!(holds(&bo.folder(), "\"Ann\""));
    bo.press("forget");
    says(&bo.on("share-take-in"), "Forgotten");
    assert!(!bo.guide.screen().keys().contains(&"wishes"));
    assert!(!holds(&bo.folder(), "\"Ann\""));
    assert_eq!(shown(&ann.folder()), shown(&bo.folder()));
}

#[test]
fn photos_travel_and_can_be_left_out() {
    let (mut ann, mut bo, between) = two();
    let picture = picture(between.path());
    // A photo is taken in through the store: which screen takes one is not this test's business.
    let folder = ann.folder();
    ann.leave();
    let mut store = Store::open(&folder, AuthorId::random()).unwrap();
    store.add_photo(&fs::read(picture).unwrap(), None, None).unwrap();
    drop(store);
    ann.press("open:Mill House");
    ann.go("pack");
    ann.pick("without", &["photos"]);
    let without = between.path().join("without.lwk");
    ann.file(&without);
    says(&ann.guide.screen(), "no photos");
    let with = between.path().join("with.lwk");
    ann.pick("without", &[]);
    ann.pack(&with);
    says(&ann.guide.screen(), "1 photo");
    bo.look(&without);
    says(&bo.guide.screen(), "no new photos");
    bo.press("take");
    bo.look(&with);
    says(&bo.guide.screen(), "no new details, no disagreements, 1 new photo");
    bo.press("take");
    says(&bo.guide.screen(), "no new details, 1 new photo");
}

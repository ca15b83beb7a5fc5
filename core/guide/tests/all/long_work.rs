//! Files are read and written beside the screen: it says how far that is, it can be stopped, and nothing is left half done.

use std::fs;
use std::io::Cursor;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;
use std::time::Duration;

use crate::person::{Person, check, guide_at, says, shown};
use facts::fact::{AuthorId, Edit};
use facts::file::{self, LeftOut, PackOptions, Progress};
use facts::store::Store;
use guide::screen::{Block, FileAsked, PressWeight};
use guide::{Deed, Guide, LongWork};
use house::document::Document;
use house::record::field;
use image::{ImageFormat, Rgb, RgbImage};

/// So many photos are some megabytes: a stop comes long before they are hashed.
static PHOTOS: LazyLock<Vec<Vec<u8>>> = LazyLock::new(|| (0..6).map(noise).collect());

/// A picture that no format makes smaller.
fn noise(seed: u32) -> Vec<u8> {
    let picture = RgbImage::from_fn(1200, 900, |x, y| {
        let mut mixed = (x + y * 1200 + seed * 7_919).wrapping_mul(2_654_435_761);
        mixed = (mixed ^ (mixed >> 15)).wrapping_mul(2_246_822_519);
        let [red, green, blue, _] = (mixed ^ (mixed >> 13)).to_be_bytes();
        Rgb([red, green, blue])
    });
    let mut bytes = Cursor::new(Vec::new());
    picture.write_to(&mut bytes, ImageFormat::Png).unwrap();
    bytes.into_inner()
}

/// Somebody with a house of photos, and a place for files.
struct Sender {
    person: Person,
    between: tempfile::TempDir,
}

impl Sender {
    fn new() -> Self {
        let mut person = Person::new();
        let folder = person.home.path().join("Mill House.legwork");
        let mut store = Store::create(&folder, AuthorId::random()).unwrap();
        let survey = store.survey_id().subject();
        let edits = [Edit::new(survey, field::IS, "survey"), Edit::new(survey, field::NAME, "Mill House")];
        store.write(&edits).unwrap();
        for photo in PHOTOS.iter() {
            store.add_photo(photo, None, None).unwrap();
        }
        drop(store);
        person.guide.open(&folder).unwrap();
        Self { person, between: tempfile::tempdir().unwrap() }
    }

    /// A file of it, written past the guide.
    fn file(&self, name: &str, left_out: &[LeftOut]) -> PathBuf {
        let path = self.between.path().join(name);
        let mut store = Store::open(&self.person.folder(), AuthorId::random()).unwrap();
        let options = PackOptions { left_out: left_out.iter().copied().collect(), replace: false };
        let page = |_: &_, _: &_| Ok::<_, facts::FactsError>("<!DOCTYPE html>".to_owned());
        house::document::pack(&mut store, &options, &page, &path, &mut |_: Progress| true).unwrap();
        path
    }

    /// Somebody else, who has the survey without its photos and looked into a file with them.
    fn other(&self) -> Person {
        let mut other = Person::new();
        other.press("sent");
        other.file(&self.file("bare.lwk", &[LeftOut::Photos]));
        other.press("take");
        let mut store = Store::open(&self.person.folder(), AuthorId::random()).unwrap();
        store.write(&[Edit::new(store.survey_id().subject(), field::PLACE, "Nowhere Lane 1")]).unwrap();
        other.look(&self.file("full.lwk", &[]));
        other
    }
}

/// Gives a file to the press that asks for one, and lets it run.
fn give(guide: &mut Guide, file: &Path) -> LongWork {
    guide.wait_for_long_work(Duration::ZERO);
    let screen = guide.screen();
    let key = *screen.keys().iter().find(|key| FileAsked::of(key).is_some()).unwrap();
    guide.act(&Deed::File { key: key.into(), file: file.display().to_string() }).unwrap();
    guide.long_work().expect("it takes a while")
}

/// Presses, and lets it run.
fn press(guide: &mut Guide, key: &str) -> LongWork {
    assert!(guide.screen().keys().contains(&key), "{:?}", guide.screen().keys());
    guide.wait_for_long_work(Duration::ZERO);
    guide.act(&Deed::Press { key: key.into() }).unwrap();
    guide.long_work().expect("it takes a while")
}

/// Draws the screen until the work is over; returns what it told of how far it is.
fn watched(guide: &Guide, work: &LongWork) -> Vec<u32> {
    let mut told = Vec::new();
    while !work.is_done() {
        let screen = guide.screen();
        assert_eq!(screen.name, "long-work");
        check(&screen);
        let far = screen.blocks.iter().find_map(|block| match block {
            Block::HowFar(far) => Some(far),
            _ => None,
        });
        // It may be over by the time it is drawn.
        told.extend(far.and_then(|far| far.thousandths));
    }
    assert!(told.is_sorted() && told.iter().all(|far| *far <= 1000), "{told:?}");
    told
}

/// The names in a folder.
fn names(folder: &Path) -> Vec<String> {
    let found = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name());
    let mut names: Vec<_> = found.map(|name| name.into_string().unwrap()).collect();
    names.sort();
    names
}

#[test]
fn while_a_file_is_written_the_screen_tells_how_far_and_a_press_goes_on() {
    let Sender { mut person, between } = Sender::new();
    person.go("pack");
    let file = between.path().join("house.lwk");
    let work = give(&mut person.guide, &file);
    says(&person.guide.screen(), "Writing the file");
    let told = watched(&person.guide, &work);
    assert!(work.progress().is_some(), "{told:?}");
    // Over, and not collected: the screen says so.
    assert!(person.guide.long_work().is_none());
    let screen = person.on("long-work");
    check(&screen);
    assert!(screen.blocks.iter().any(|block| matches!(
        block,
        Block::Press(press) if press.key == "long-work-on" && press.weight == PressWeight::Main
    )));
    person.guide.act(&Deed::Press { key: "long-work-on".into() }).unwrap();
    says(&person.on("share-pack"), "6 photos");
    assert!(file::recognise(&file));
    assert_eq!(names(between.path()), ["house.lwk"]);
}

#[test]
fn taken_in_beside_it_is_all_there_when_it_is_settled() {
    let sender = Sender::new();
    let mut other = sender.other();
    let before = shown(&other.folder());
    let work = press(&mut other.guide, "take");
    other.guide.collect_long_work();
    other.on("long-work");
    watched(&other.guide, &work);
    other.guide.collect_long_work();
    says(&other.on("share-take-in"), "1 new detail, 6 new photos");
    assert_eq!(shown(&other.folder()), shown(&sender.person.folder()));
    assert_eq!(names(&other.folder().join("photos")), names(&sender.person.folder().join("photos")));
    // The guide saw what came over another connection: it can put that back.
    other.press("put-back");
    assert_eq!(shown(&other.folder()), before);
}

#[test]
fn meanwhile_nothing_but_the_stop_does_anything() {
    let Sender { mut person, between } = Sender::new();
    person.go("pack");
    let file = between.path().join("house.lwk");
    let before = shown(&person.folder());
    let work = give(&mut person.guide, &file);
    for key in ["overview", "without", "long-work-on", "stop"] {
        person.guide.act(&Deed::Press { key: key.into() }).unwrap();
    }
    person.guide.act(&Deed::Pick { key: "without".into(), picked: vec!["photos".into()] }).unwrap();
    person.on("long-work");
    assert!(!work.is_done(), "the deeds were done too late to show anything");
    person.guide.act(&Deed::Press { key: "long-work-stop".into() }).unwrap();
    watched(&person.guide, &work);
    person.guide.settle_long_work();
    let screen = person.on("share-pack");
    says(&screen, "Nothing was changed");
    let is_untouched = |block: &Block| match block {
        Block::Choice(choice) => choice.options.iter().all(|option| !option.picked),
        _ => true,
    };
    assert!(screen.blocks.iter().all(is_untouched));
    assert!(names(between.path()).is_empty());
    assert_eq!(shown(&person.folder()), before);
}

#[test]
fn a_take_that_is_stopped_leaves_the_survey_as_it_was() {
    let sender = Sender::new();
    let mut other = sender.other();
    let (before, files) = (shown(&other.folder()), names(&other.folder()));
    let work = press(&mut other.guide, "take");
    // Back stops it too.
    other.guide.act(&Deed::Back).unwrap();
    watched(&other.guide, &work);
    other.guide.settle_long_work();
    says(&other.on("share-take-in"), "Nothing was changed");
    assert_eq!((shown(&other.folder()), names(&other.folder())), (before, files));
    assert!(names(&other.folder().join("photos")).is_empty());
    // What was looked into is still at hand.
    other.press("take");
    says(&other.on("share-take-in"), "1 new detail, 6 new photos");
}

#[test]
fn letting_go_of_the_guide_leaves_nothing_half_there() {
    let sender = Sender::new();
    let file = sender.file("full.lwk", &[]);
    let Sender { mut person, between } = sender;
    person.go("pack");
    let other = between.path().join("again.lwk");
    let work = give(&mut person.guide, &other);
    person.guide = guide_at(person.home.path());
    assert!(work.is_done());
    // What was quicker than the letting go is there whole.
    if other.exists() {
        facts::file::look(&other, None, facts::file::Limits::default(), &mut |_| true).unwrap();
        std::fs::remove_file(&other).unwrap();
    }
    assert_eq!(names(between.path()), ["full.lwk"]);

    // A file taken in as a new survey.
    let mut new = Person::new();
    new.press("sent");
    new.file(&file);
    let before = names(new.home.path());
    let work = press(&mut new.guide, "take");
    new.guide = guide_at(new.home.path());
    assert!(work.is_done());
    assert_eq!(names(new.home.path()), before);
    new.press("sent");
    new.file(&file);
    new.press("take");
    assert_eq!(shown(&new.folder()), shown(&person.home.path().join("Mill House.legwork")));
}

#[test]
fn putting_the_app_aside_stops_it_and_closes_everything() {
    let Sender { mut person, between } = Sender::new();
    person.go("pack");
    let folder = person.folder();
    let work = give(&mut person.guide, &between.path().join("house.lwk"));
    person.guide.suspend().unwrap();
    assert!(work.is_done() && person.guide.long_work().is_none());
    assert!(names(between.path()).is_empty());
    says(&person.on("share-pack"), "Nothing was changed");
    // No log and no index of it: the database is closed, by the long work too.
    assert_eq!(names(&folder), ["photos", "survey.db"]);
    person.guide.resume().unwrap();
    person.guide.settle_long_work();
    person.on("share-pack");
}

#[test]
fn mending_with_a_file_that_is_stopped_leaves_the_damage_as_it_was() {
    let sender = Sender::new();
    let file = sender.file("full.lwk", &[]);
    let Sender { mut person, .. } = sender;
    let folder = person.folder();
    let before = shown(&folder);
    person.leave();
    fs::remove_file(folder.join("survey.db")).unwrap();
    let left = (names(&folder), names(person.home.path()));
    person.press("open:Mill House");
    person.press("mend");
    person.file(&file);
    let work = press(&mut person.guide, "mend-with-file");
    says(&person.guide.screen(), "Mending the survey");
    person.guide.act(&Deed::Press { key: "long-work-stop".into() }).unwrap();
    watched(&person.guide, &work);
    person.guide.settle_long_work();
    says(&person.on("survey-mend"), "Nothing was changed");
    assert_eq!((names(&folder), names(person.home.path())), left);
    person.press("mend-with-file");
    says(&person.on("one-survey"), "Nothing was left of this survey here");
    assert_eq!(shown(&folder), before);
}

#[test]
fn the_report_waits_until_it_is_worked_out_and_blocks_nothing() {
    let mut walk = crate::result_house::walk(crate::result_house::needy());
    walk.guide.work_out_with(advice::worklist::Options::default());
    // As `Walk::go`, which would wait until all is worked out.
    for key in ["overview", "more", "handover"] {
        let screen = walk.guide.screen();
        let is_there = |key: &str| screen.keys().contains(&key);
        if is_there(key) && !(key == "more" && is_there("handover")) {
            walk.guide.act(&Deed::Press { key: key.into() }).unwrap();
        }
    }
    assert_eq!(walk.guide.screen().name, "handover");
    let work = walk.guide.long_work().expect("it takes a while");
    let asked = |guide: &Guide, end: &str| {
        let screen = guide.screen();
        let key = screen.keys().into_iter().find(|key| FileAsked::of(key).is_some() && key.ends_with(end));
        key.map(str::to_owned)
    };
    // Until then no file is asked for, and one that is given all the same changes nothing.
    let report = walk.home.path().join("report.html");
    assert_eq!(asked(&walk.guide, ".html"), None);
    let deed = Deed::File { key: "file-out:report.html".into(), file: report.display().to_string() };
    walk.guide.act(&deed).unwrap();
    assert!(!work.is_done(), "nobody waited for it");
    assert!(walk.guide.screen().name == "handover" && !report.exists());
    walk.guide.act(&Deed::Press { key: "stop".into() }).unwrap();
    walk.guide.settle_long_work();
    walk.guide.work_out_with(crate::result_house::quick());
    walk.press("work-out");
    // Both are written beside.
    walk.guide.wait_for_long_work(Duration::ZERO);
    let file = walk.home.path().join("house.lwk");
    for (end, place, kind) in [(".html", &report, "Writing the report"), (".lwk", &file, "Writing the file")]
    {
        let key = asked(&walk.guide, end).expect("a press for it");
        walk.guide.act(&Deed::File { key, file: place.display().to_string() }).unwrap();
        says(&walk.guide.screen(), kind);
        walk.guide.settle_long_work();
    }
    says(&walk.guide.screen(), "The file for the next person is written");
    assert!(file::recognise(&file) && report.exists());
}

//! A process that writes to a survey and acknowledges each step on its standard output, once the step is on the disk.
//!
//! `record-writer MODE FOLDER [SEED]`. Each line is a promise: what it names must be there whatever happens to this
//! process afterwards.

#![expect(
    clippy::unwrap_used,
    reason = "a writer in a check stops where anything fails, and the check sees it"
)]

use std::ffi::OsStr;
use std::io::{Cursor, Write};
use std::path::Path;
use std::process::ExitCode;

use facts::error::FactsError;
use facts::fact::{AuthorId, Edit, Ledger, SubjectId};
use facts::file::{self, Consent, Limits, PackOptions, Progress};
use facts::home::{Home, Repaired};
use facts::store::{Draft, Store};
use guide::screen::Block;
use guide::{Deed, Guide};
use house::document::Document;
use house::record::Survey;

fn main() {
    let args: Vec<String> = std::env::args().collect();
    let (mode, folder) = (args.get(1).unwrap().as_str(), Path::new(args.get(2).unwrap()));
    let seed: u32 = args.get(3).map_or(1, |seed| seed.parse().unwrap());
    match mode {
        "edit" => endless(folder, seed, edit),
        "photo" => endless(folder, seed, photo),
        "mixed" => endless(folder, seed, mixed),
        "forget" => endless(folder, seed, forget),
        "open" => {
            let store = Store::open(folder, AuthorId::random()).unwrap();
            say(&format!("facts {}", store.ledger().len()));
            std::thread::park();
        }
        "make" => make_surveys(folder),
        "pack" => pack(folder, seed),
        "take" => take(folder, seed),
        "take-new" => take_new(folder),
        "repair" => {
            let sent = folder.with_file_name("sent.lwk");
            let mut go_on = |_: Progress| true;
            Repaired::open_with_file(folder, AuthorId::random(), &sent, Limits::default(), &mut go_on)
                .unwrap();
            say("repaired");
            std::thread::park();
        }
        "sheet" => {
            let sheet = folder.with_extension("toml");
            let done = desk::run(
                [OsStr::new("legwork"), OsStr::new("sheet"), sheet.as_ref(), folder.as_ref()].map(Into::into),
            );
            assert_eq!(done, ExitCode::SUCCESS);
            say("made");
            std::thread::park();
        }
        "fill" => fill(folder, seed),
        "guide" => guide_fill(folder, seed),
        "try" => attempt(folder),
        "one-photo" => {
            let mut store = Store::open(folder, AuthorId::random()).unwrap();
            photo(&mut store, seed);
        }
        "one-pack" => {
            let mut store = Store::open(folder, AuthorId::random()).unwrap();
            pack_to(&mut store, &folder.with_file_name("sent.lwk"));
            say("packed");
        }
        "one-take" => {
            let mut store = Store::open(folder, AuthorId::random()).unwrap();
            let sent = folder.with_file_name("sent.lwk");
            file::take(&sent, &mut store, Consent::ALL, Limits::default(), &mut |_: Progress| true).unwrap();
            say("taken");
        }
        "one-forget" => {
            let mut store = Store::open(folder, AuthorId::random()).unwrap();
            forget(&mut store, seed);
        }
        "one-drafts" => drafts_and_acts(folder, seed),
        "one-noise" => {
            let mut store = Store::open(folder, AuthorId::random()).unwrap();
            store.add_photo(&noise(seed), None, None).unwrap();
        }
        _ => {
            eprintln!("unknown mode {mode}");
            std::process::exit(2);
        }
    }
}

/// One line, out of this process at once.
fn say(line: &str) {
    let mut out = std::io::stdout().lock();
    out.write_all(format!("{line}\n").as_bytes()).unwrap();
    out.flush().unwrap();
}

fn endless(folder: &Path, seed: u32, step: fn(&mut Store, u32)) {
    let mut store = Store::open(folder, AuthorId::random()).unwrap();
    say("open");
    for number in seed.. {
        step(&mut store, number);
    }
}

/// Two facts in one act.
fn edit(store: &mut Store, number: u32) {
    let part = SubjectId::random();
    store.write(&[Edit::new(part, "tag", number), Edit::new(part, "where", number)]).unwrap();
    say(&format!("edit {part} {number}"));
}

/// A picture that no other number has.
fn picture(number: u32) -> Vec<u8> {
    let [_, red, green, blue] = number.to_be_bytes();
    let mut bytes = Cursor::new(Vec::new());
    image::RgbImage::from_fn(40, 40, |x, y| {
        image::Rgb([red, green, blue ^ u8::try_from(x * y % 251).unwrap()])
    })
    .write_to(&mut bytes, image::ImageFormat::Png)
    .unwrap();
    bytes.into_inner()
}

fn photo(store: &mut Store, number: u32) {
    let photo = store.add_photo(&picture(number), None, None).unwrap();
    let image = store.photo_image(photo).unwrap();
    say(&format!("photo {photo} {}", image.file_name()));
}

fn draft(store: &mut Store, number: u32) {
    let subject = SubjectId::random();
    let text = format!("half {number}");
    store.save_draft(&Draft { subject, field: "text".into(), text: text.clone(), saved_ms: 0 }).unwrap();
    say(&format!("draft {subject} {number}"));
    if number.is_multiple_of(2) {
        store.finish_draft(Edit::new(subject, "text", text)).unwrap();
        say(&format!("finished {subject} {number}"));
    }
}

/// Somebody types and looks around between `acts` acts.
fn drafts_and_acts(folder: &Path, acts: u32) {
    let mut store = Store::open(folder, AuthorId::random()).unwrap();
    let subject = SubjectId::random();
    let mut draft = Draft { subject, field: "text".into(), text: String::new(), saved_ms: 0 };
    store.save_draft(&draft).unwrap();
    for number in 0..acts {
        say("types");
        for sign in 'a'..='z' {
            draft.text.push(sign);
            assert!(store.save_draft_unsynced(&draft).unwrap());
        }
        say("acts");
        edit(&mut store, number);
    }
}

fn forget(store: &mut Store, number: u32) {
    let subject = SubjectId::random();
    // Long enough that nothing else looks like it.
    let secret = format!("SECRET-{number}-{subject}");
    store.write(&[Edit::new(subject, "place", secret.clone()), Edit::new(subject, "tag", number)]).unwrap();
    say(&format!("secret {subject} {number}"));
    let done = store.forget_field(subject, "place").unwrap();
    assert!(done.is_cleared);
    say(&format!("forgot {secret}"));
}

fn undo(store: &mut Store, number: u32) {
    let part = SubjectId::random();
    let act = store.write(&[Edit::new(part, "tag", number), Edit::new(part, "where", number)]).unwrap();
    store.undo(act).unwrap();
    say(&format!("undone {part}"));
}

fn mixed(store: &mut Store, number: u32) {
    match number % 5 {
        0 => edit(store, number),
        1 => photo(store, number),
        2 => draft(store, number),
        3 => undo(store, number),
        _ => forget(store, number),
    }
}

/// Makes surveys, copies, renames, sets aside and deletes them in a home folder.
fn make_surveys(folder: &Path) {
    let home = Home::at(folder).unwrap();
    let author = AuthorId::random();
    for number in 0.. {
        let mut store = Store::create(&home.place(&format!("made {number}")).unwrap(), author).unwrap();
        say(&format!("made made {number}"));
        edit(&mut store, number);
        photo(&mut store, number);
        let copy = home.copy(&store, &format!("copy {number}"), author).unwrap();
        say(&format!("made copy {number}"));
        let folder = copy.folder().to_owned();
        drop(copy);
        home.delete(&folder).unwrap();
        say(&format!("deleted copy {number}"));
    }
}

/// Stands for the report.
#[expect(clippy::unnecessary_wraps, reason = "the shape of a report")]
fn report(survey: &Survey, _: &Ledger) -> Result<String, FactsError> {
    Ok(format!("<!doctype html><title>{}</title>", survey.parts.len()))
}

fn pack_to(store: &mut Store, path: &Path) -> usize {
    let options = PackOptions { replace: true, ..PackOptions::default() };
    house::document::pack(store, &options, &report, path, &mut |_: Progress| true).unwrap().facts
}

/// Edits and packs, by turns into a file that is replaced and into new ones.
fn pack(folder: &Path, seed: u32) {
    let mut store = Store::open(folder, AuthorId::random()).unwrap();
    let sent = folder.with_file_name("sent");
    say("open");
    for number in seed.. {
        edit(&mut store, number);
        let name = if number.is_multiple_of(2) { "always.lwk".into() } else { format!("{number}.lwk") };
        let facts = pack_to(&mut store, &sent.join(&name));
        say(&format!("packed {name} {facts}"));
    }
}

/// Edits a sender's survey, packs it and takes the file in; puts every third back and takes it in again.
fn take(folder: &Path, seed: u32) {
    let mut store = Store::open(folder, AuthorId::random()).unwrap();
    let mut sender = Store::open(&folder.with_file_name("sender.legwork"), AuthorId::random()).unwrap();
    let path = folder.with_file_name("sent.lwk");
    say("open");
    for number in seed.. {
        let parts: Vec<SubjectId> = (0..4).map(|_| SubjectId::random()).collect();
        let edits: Vec<Edit> = parts
            .iter()
            .flat_map(|&part| [Edit::new(part, "tag", number), Edit::new(part, "group", number)])
            .collect();
        sender.write(&edits).unwrap();
        let photo = sender.add_photo(&noise(number), None, None).unwrap();
        pack_to(&mut sender, &path);
        let take = |store: &mut Store| {
            file::take(&path, store, Consent::ALL, Limits::default(), &mut |_: Progress| true).unwrap();
        };
        take(&mut store);
        if number.is_multiple_of(3) {
            file::put_back(&mut store).unwrap();
            take(&mut store);
        }
        say(&format!("taken {number}"));
        for part in parts {
            say(&format!("edit {part} {number}"));
        }
        say(&format!("photo {photo} {}", store.photo_image(photo).unwrap().file_name()));
    }
}

/// Takes one file in, again and again, as a new survey each time.
fn take_new(folder: &Path) {
    let home = Home::at(folder).unwrap();
    for number in 0.. {
        let name = format!("new {number}");
        let place = home.place(&name).unwrap();
        let sent = folder.join("sent.lwk");
        file::take_as_new(
            &sent,
            &place,
            AuthorId::random(),
            Consent::NONE,
            Limits::default(),
            &mut |_: Progress| true,
        )
        .unwrap();
        say(&format!("taken {name}"));
    }
}

/// Writes until the disk is full, then says what it was told; then makes room and goes on.
/// A homeowner goes on answering until the disk is full: tells the name of the screen, then what it says. `language` is
/// English, or one of the pseudo-languages.
fn guide_fill(home: &Path, language: u32) {
    let languages = [guide::english, guide::lengthened, guide::right_to_left];
    let words = languages[language as usize % languages.len()](telling::words::Figures::default());
    let mut guide = Guide::at(home, AuthorId::random(), words).unwrap();
    let press = |key: &str| Deed::Press { key: key.into() };
    for deed in [press("new"), Deed::Write { key: "name".into(), words: "7".into() }, press("make")] {
        guide.act(&deed).unwrap();
    }
    // All that is left goes, to the last byte.
    let mut ballast = std::fs::File::create(home.join("ballast")).unwrap();
    for size in [65_536, 1] {
        while ballast.write_all(&vec![1; size]).is_ok() {}
    }
    for picked in (0..).map(|turn| turn % 2) {
        let screen = guide.screen();
        if let Some(notice) = screen.notices.first() {
            say(&format!("{}\n{}", screen.name, notice.words));
            return;
        }
        let choice = screen.blocks.iter().find_map(|block| match block {
            Block::Choice(choice) => Some((choice.key.clone(), choice.options[picked].key.clone())),
            _ => None,
        });
        let (key, option) = choice.unwrap();
        guide.act(&Deed::Pick { key, picked: vec![option] }).unwrap();
        if guide.screen().name != screen.name {
            guide.act(&Deed::Back).unwrap();
        }
    }
}

fn fill(folder: &Path, seed: u32) {
    let ballast = folder.parent().unwrap().join("ballast");
    std::fs::write(&ballast, vec![1; 1_000_000]).unwrap();
    let mut store = Store::create(folder, AuthorId::random()).unwrap();
    let mut subjects = Vec::new();
    let told = loop {
        let part = SubjectId::random();
        let written = if subjects.len() % 4 == 3 {
            // Many colours do not compress: about 5 kB each.
            store.add_photo(&noise(seed + u32::try_from(subjects.len()).unwrap()), Some(part), None).map(drop)
        } else {
            store.write(&[Edit::new(part, "tag", "x".repeat(2000)), Edit::new(part, "where", "y")]).map(drop)
        };
        match written {
            Ok(()) => subjects.push(store.ledger().len()),
            Err(error) => break error,
        }
    };
    assert!(matches!(told, FactsError::DiskFull { .. }), "{told:?}");
    say(&format!("told {told}"));
    let (facts, author) = (store.ledger().len(), store.author());
    assert_eq!(subjects.last(), Some(&facts));
    let lines = store.ledger().to_lines().unwrap();
    std::fs::remove_file(&ballast).unwrap();
    let again = Store::open(folder, author).unwrap();
    assert_eq!(again.ledger().to_lines().unwrap(), lines);
    assert!(again.missing_photos().unwrap().is_empty());
    drop(again);
    store.write(&[Edit::new(SubjectId::random(), "tag", "z")]).unwrap();
    let names = std::fs::read_dir(store.photos()).unwrap().map(|entry| entry.unwrap().file_name());
    let halves: Vec<_> = names.filter(|name| name.to_string_lossy().ends_with(".part")).collect();
    assert!(halves.is_empty(), "{halves:?}");
    drop(store);
    assert_eq!(Store::open(folder, author).unwrap().ledger().len(), facts + 1);
    say(&format!("kept {facts}"));
}

fn noise(seed: u32) -> Vec<u8> {
    let mut state = u64::from(seed) * 2 + 1;
    let mut bytes = Cursor::new(Vec::new());
    let mut next = || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        state.to_be_bytes()[0]
    };
    image::RgbImage::from_fn(40, 40, |_, _| image::Rgb([next(), next(), next()]))
        .write_to(&mut bytes, image::ImageFormat::Png)
        .unwrap();
    bytes.into_inner()
}

/// Opens the survey, takes a photo in, makes a survey beside it; says what it was told each time.
fn attempt(folder: &Path) {
    match Store::open(folder, AuthorId::random()) {
        Err(error) => say(&format!("open: {error:?}")),
        Ok(mut store) => match store.add_photo(&picture(1), None, None) {
            Err(error) => say(&format!("photo: {error:?} facts {}", store.ledger().len())),
            Ok(_) => say("photo: taken"),
        },
    }
    match Store::create(&folder.with_file_name("new.legwork"), AuthorId::random()) {
        Err(error) => say(&format!("create: {error:?}")),
        Ok(_) => say("create: made"),
    }
}

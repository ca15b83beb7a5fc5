//! The door keeps its word: what a screen does not offer changes nothing, what is answered is on the disk, what is typed
//! costs no sync, drawing reads nothing, and nobody else can read what is kept.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::{Duration, Instant};

use facts::fact::SubjectId;
use facts::photo::MAX_PICTURE_BYTES;
use facts::store::{Draft, Store};
use guide::screen::{Block, FileAsked};
use guide::{Deed, Device, Guide};

use crate::person::{Person, guide_at, says};
use crate::screens_walk::Walk;
use crate::whole_house;

/// Every file below a folder with its bytes, every folder with none.
fn all_bytes(home: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut found = BTreeMap::new();
    let mut folders = vec![home.to_owned()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).unwrap().map(Result::unwrap) {
            if entry.file_type().unwrap().is_dir() {
                folders.push(entry.path());
                found.insert(entry.path(), Vec::new());
            } else {
                found.insert(entry.path(), fs::read(entry.path()).unwrap());
            }
        }
    }
    found
}

/// Of so many keys of a screen, and so many of others, every kind of deed is tried.
const MOST_KEYS: usize = 10;

/// Deeds that the screen does not offer: keys that no screen has, keys of other screens, keys of this one with another
/// kind of deed, options and units that are not there.
fn strange(walk: &Walk) -> Vec<Deed> {
    let screen = walk.guide.screen();
    let here: Vec<String> = screen.keys().into_iter().map(str::to_owned).collect();
    // Some of those of other screens, others on each screen: all of them on all screens would take minutes.
    let every = walk.known.len() / MOST_KEYS + 1;
    let elsewhere: Vec<String> = walk
        .known
        .iter()
        .skip(walk.shown.len() % every)
        .step_by(every)
        .filter(|key| !here.contains(key))
        .cloned()
        .collect();
    let never =
        ["", "no such key", "part:", "open:../..", "take", "forget", "delete", "undo"].map(String::from);
    let mut deeds = Vec::new();
    for key in here.iter().take(MOST_KEYS).cloned().chain(elsewhere).chain(never) {
        let file = "/nowhere/at-all.jpg".to_owned();
        deeds.extend([
            Deed::Press { key: key.clone() },
            Deed::Pick { key: key.clone(), picked: vec!["no such option".into()] },
            Deed::Pick { key: key.clone(), picked: Vec::new() },
            Deed::Write { key: key.clone(), words: "typed".into() },
            Deed::Print { key: key.clone(), words: "2-WAY".into() },
            Deed::Measure { key: key.clone(), typed: "7".into(), unit: "m".into() },
            Deed::Measure { key: key.clone(), typed: "7".into(), unit: "no such unit".into() },
            Deed::Touch { key: key.clone(), across: 5_000, down: u32::MAX },
            Deed::Photo { key: key.clone(), file: file.clone() },
            Deed::File { key, file },
        ]);
    }
    if !screen.back {
        deeds.push(Deed::Back);
    }
    deeds.retain(|deed| !offers(&screen.blocks, deed));
    deeds
}

/// Whether some block takes the deed, said here once more and in another way.
fn offers(blocks: &[Block], deed: &Deed) -> bool {
    blocks.iter().any(|block| match deed {
        Deed::Press { key } => {
            !matches!(block, Block::Choice(_) | Block::Writing(_) | Block::Number(_) | Block::PhotoPart(_))
                && block.keys().contains(&key.as_str())
                && !matches!(block, Block::PhotoSlot(slot)
                    if slot.key == *key || slot.print_key.as_ref() == Some(key))
        }
        Deed::Pick { key, picked } => match block {
            Block::Choice(choice) => {
                let has = |one: &String| choice.options.iter().any(|option| option.key == *one);
                choice.key == *key && picked.iter().all(has)
            }
            _ => false,
        },
        Deed::Write { key, .. } => matches!(block, Block::Writing(writing) if writing.key == *key),
        Deed::Measure { key, unit, .. } => match block {
            Block::Number(number) => {
                number.key == *key && number.units.iter().any(|option| option.key == *unit)
            }
            _ => false,
        },
        Deed::Touch { key, .. } => matches!(block, Block::PhotoPart(part) if part.key == *key),
        Deed::Photo { key, .. } => matches!(block, Block::PhotoSlot(slot) if slot.key == *key),
        Deed::Print { key, .. } => {
            matches!(block, Block::PhotoSlot(slot) if slot.print_key.as_deref() == Some(key))
        }
        Deed::File { key, .. } => {
            matches!(block, Block::Press(press) if press.key == *key) && FileAsked::of(key).is_some()
        }
        Deed::Back => false,
    })
}

#[test]
fn what_no_screen_offers_changes_nothing_and_writes_nothing() {
    let mut walk = Walk::over_everything();
    walk.tried = Some(|walk| {
        let (screen, bytes) = (walk.guide.screen(), all_bytes(walk.home()));
        let deeds = strange(walk);
        assert!(deeds.len() > 60, "{}: {} deeds", screen.name, deeds.len());
        for deed in deeds {
            walk.guide.act(&deed).unwrap();
        }
        assert_eq!(walk.guide.screen(), screen, "{}", screen.name);
        let after = all_bytes(walk.home());
        let changed: Vec<_> = after.iter().filter(|(path, held)| bytes.get(*path) != Some(held)).collect();
        assert!(after.len() == bytes.len() && changed.is_empty(), "{}: {:?}", screen.name, changed);
    });
    walk.through_everything();
    assert_eq!(walk.shown.len(), guide::screen_names().len());
    // The damaged survey was never opened.
    private_and_nowhere(walk.home(), &["mill.lwk", "Weir House.legwork/survey.db-wal"]);
}

/// What lies in a home is its owner's alone, and says nowhere where the home is: a phone moves it.
fn private_and_nowhere(home: &Path, given_away: &[&str]) {
    let path = home.canonicalize().unwrap().display().to_string().into_bytes();
    let mut looked_at = 0;
    for (file, bytes) in all_bytes(home) {
        if given_away.iter().any(|name| file.ends_with(name)) {
            continue;
        }
        looked_at += 1;
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            let found = fs::metadata(&file).unwrap();
            let mode = found.permissions().mode() & 0o777;
            assert_eq!(mode, if found.is_dir() { 0o700 } else { 0o600 }, "{}: {mode:o}", file.display());
        }
        let says_where = bytes.windows(path.len()).any(|window| window == path);
        assert!(!says_where, "{} says where it is", file.display());
    }
    assert!(looked_at > 5);
}

#[test]
fn a_long_session_leaves_nothing_that_others_can_read() {
    let mut ann = Person::named("Ann");
    ann.make("Mill House");
    ann.plan("100");
    let picture = ann.home.path().join("taken.png");
    fs::write(&picture, png(1)).unwrap();
    ann.go("free-burst");
    ann.act(&Deed::Photo { key: "photo".into(), file: picture.display().to_string() });
    ann.go("pack");
    let file = ann.home.path().join("house.lwk");
    ann.file(&file);
    // A place where a file stands already is remembered for this session only.
    ann.press("overview");
    ann.go("pack");
    ann.file(&file);
    says(&ann.guide.screen(), "house.lwk");
    ann.leave();
    for press in ["order", "survey:Mill House", "copy", "copy"] {
        ann.press(press);
    }
    ann.press("aside");
    ann.guide.suspend().unwrap();
    private_and_nowhere(ann.home.path(), &["taken.png", "house.lwk"]);
}

fn png(seed: u8) -> Vec<u8> {
    let mut bytes = std::io::Cursor::new(Vec::new());
    image::RgbImage::from_fn(64, 48, |x, y| image::Rgb([seed, u8::try_from(x * y % 251).unwrap(), 7]))
        .write_to(&mut bytes, image::ImageFormat::Png)
        .unwrap();
    bytes.into_inner()
}

#[test]
fn photos_taken_faster_than_they_are_taken_in_wait_in_line() {
    let mut ann = Person::new();
    ann.make("Mill House");
    ann.go("free-burst");
    ann.guide.wait_for_long_work(Duration::ZERO);
    let files: Vec<_> = (0..4_u8)
        .map(|seed| {
            let file = ann.home.path().join(format!("{seed}.png"));
            fs::write(&file, png(seed)).unwrap();
            file
        })
        .collect();
    for file in &files {
        ann.guide.act(&Deed::Photo { key: "photo".into(), file: file.display().to_string() }).unwrap();
    }
    ann.guide.settle_long_work();
    let screen = ann.on("free-burst");
    let shown = screen.blocks.iter().find_map(|block| match block {
        Block::PhotoSlot(slot) => Some(slot.photos.len()),
        _ => None,
    });
    assert_eq!(shown, Some(4));
    // One that grows while it is read is told of, and nothing is taken in.
    fs::File::options()
        .write(true)
        .open(&files[0])
        .unwrap()
        .set_len(MAX_PICTURE_BYTES as u64 * 1000)
        .unwrap();
    ann.act(&Deed::Photo { key: "photo".into(), file: files[0].display().to_string() });
    says(&ann.on("free-burst"), "32 MB");
}

/// A notice of the screen for each of these words, and no other.
fn told_of(ann: &Person, words: &[&str]) {
    let notices = ann.guide.screen().notices;
    let told: Vec<_> = notices.iter().map(|notice| notice.words.as_str()).collect();
    assert_eq!(told.len(), words.len(), "{told:?}");
    for word in words {
        assert!(told.iter().any(|told| told.contains(word)), "{word}: {told:?}");
    }
}

#[test]
fn what_was_refused_of_a_series_of_photos_stays_told_until_something_else_is_done() {
    // With a shell's usual patience each photo is over before the next one comes; with none they wait in line.
    for patience in [Duration::from_secs(60), Duration::ZERO] {
        let mut ann = Person::new();
        ann.make("Mill House");
        ann.go("free-burst");
        ann.guide.wait_for_long_work(patience);
        let file = |name: &str, content: &[u8]| {
            let file = ann.home.path().join(name);
            fs::write(&file, content).unwrap();
            file
        };
        let files = [
            ann.home.path().join("gone.png"),
            file("words.png", b"no picture"),
            file("first.png", &png(1)),
            file("other words.png", b"no picture either"),
            file("second.png", &png(2)),
        ];
        let photo = |file: &PathBuf| Deed::Photo { key: "photo".into(), file: file.display().to_string() };
        for file in &files {
            ann.guide.act(&photo(file)).unwrap();
        }
        ann.guide.settle_long_work();
        let screen = ann.on("free-burst");
        // Both that are no picture were refused for the one reason, which is said once.
        told_of(&ann, &["gone.png", "picture"]);
        let taken = screen.blocks.iter().find_map(|block| match block {
            Block::PhotoSlot(slot) => Some(slot.photos.len()),
            _ => None,
        });
        assert_eq!(taken, Some(2));
        // Something else is done: nothing is told of them any more, nor with the photo after that.
        ann.press("assign");
        told_of(&ann, &[]);
        ann.act(&Deed::Back);
        ann.guide.act(&photo(&files[2])).unwrap();
        ann.guide.settle_long_work();
        assert!(ann.guide.screen().notices.iter().all(|notice| !notice.words.contains("gone.png")));
    }
}

#[test]
fn a_damaged_device_file_is_told_of_and_kept() {
    let home = tempfile::tempdir().unwrap();
    fs::write(home.path().join("device.json"), "{\"name\":\"An").unwrap();
    let author = Device::at(home.path()).unwrap().author().unwrap();
    let mut guide = guide_at(home.path());
    says(&guide.screen(), "could not be read");
    guide.act(&Deed::Press { key: "device".into() }).unwrap();
    says(&guide.screen(), "device.json.damaged-1");
    guide.act(&Deed::Press { key: "out".into() }).unwrap();
    assert!(!format!("{:?}", guide.screen().spoken()).contains("could not be read"));
    assert_eq!(Device::at(home.path()).unwrap().author().unwrap(), author);
    assert_eq!(fs::read(home.path().join("device.json.damaged-1")).unwrap(), b"{\"name\":\"An");
}

#[test]
fn a_lost_memory_loses_the_place_and_nothing_that_was_put_off() {
    let mut ann = Person::new();
    ann.make("Mill House");
    let asked = ann.guide.screen().title;
    ann.press("later");
    let folder = ann.folder();
    ann.leave();
    let mut store = Store::open(&folder, facts::fact::AuthorId::random()).unwrap();
    let subject: SubjectId = store.survey_id().subject();
    let lost = Draft { subject, field: "guide".into(), text: "{\"way\":[{\"ask\"".into(), saved_ms: 0 };
    store.save_draft(&lost).unwrap();
    drop(store);
    ann.restart();
    ann.guide.open(&folder).unwrap();
    ann.on("overview");
    ann.press("put-off");
    says(&ann.guide.screen(), &asked);
}

/// Says on the standard output of the traced run where it is.
fn mark(what: &str) {
    use std::io::Write;
    let mut out = std::io::stdout().lock();
    out.write_all(format!("MARK {what}\n").as_bytes()).unwrap();
    out.flush().unwrap();
}

/// Run by the test below under `strace`.
#[test]
#[ignore = "only to be traced"]
fn traced() {
    let home = tempfile::tempdir().unwrap();
    let folder = whole_house::fill(home.path());
    let mut guide = guide_at(home.path());
    let press = |guide: &mut Guide, key: &str| {
        assert!(guide.screen().keys().contains(&key), "{key} on {}", guide.screen().name);
        guide.act(&Deed::Press { key: key.into() }).unwrap();
        guide.settle_long_work();
    };
    drop(guide.screen());
    mark("draws the list");
    drop(guide.screen());
    mark("else");
    guide.open(&folder).unwrap();
    // Whatever a language reads when it first writes a number or a day is read.
    for round in ["else", "draws and looks around"] {
        mark(round);
        for door in
            ["more", "things", "overview", "more", "free-rooms", "overview", "work", "overview", "forecast"]
        {
            press(&mut guide, door);
            drop(guide.screen());
        }
        press(&mut guide, "overview");
    }
    mark("else");
    for key in ["more", "free-rooms", "add"] {
        if guide.screen().keys().contains(&key) {
            press(&mut guide, key);
        }
    }
    let screen = guide.screen();
    let writing = screen.blocks.iter().find_map(|block| match block {
        Block::Writing(writing) => Some(writing.key.clone()),
        _ => None,
    });
    let key = writing.unwrap();
    mark("types");
    let began = Instant::now();
    let mut words = String::new();
    // Longer than a second: a draft is kept meanwhile.
    while began.elapsed() < Duration::from_millis(2_500) {
        words.push('x');
        guide.act(&Deed::Write { key: key.clone(), words: words.clone() }).unwrap();
        std::thread::sleep(Duration::from_millis(50));
    }
    mark("answers");
    let answer = ["make", "save", "add"].into_iter().find(|key| guide.screen().keys().contains(key)).unwrap();
    let count = || Store::open(&folder, facts::fact::AuthorId::random()).unwrap().ledger().len();
    guide.act(&Deed::Press { key: answer.into() }).unwrap();
    mark("answered");
    let with = count();
    mark(&format!("done {with}"));
}

/// Navigation and typing cost no sync, a draft is kept at most each second, an answer is on the disk when `act` returns,
/// drawing and looking around read nothing.
#[test]
fn the_disk_is_asked_for_what_is_answered_and_for_nothing_else() {
    let place = tempfile::tempdir().unwrap();
    let trace = place.path().join("trace");
    let calls = "trace=write,pwrite64,fsync,fdatasync,openat,open,stat,lstat,newfstatat,statx,access,getdents64,pread64";
    let run = Command::new("strace")
        .args(["-f", "-y", "-qq", "-s", "80", "-e", calls, "-o"])
        .arg(&trace)
        .arg(std::env::current_exe().unwrap())
        .args(["--exact", "door::traced", "--ignored", "--nocapture", "--test-threads=1"])
        .output()
        .expect("strace is not installed (Debian: apt-get install strace)");
    assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stdout));
    let trace = fs::read_to_string(&trace).unwrap();
    let (mut phase, mut drafts, mut synced) = ("", 0, false);
    let mut phases = Vec::new();
    for line in trace.lines() {
        if let Some((_, mark)) = line.split_once("\"MARK ") {
            phase = mark.split("\\n").next().unwrap();
            phases.push(phase);
            continue;
        }
        let syncs = line.contains("sync(");
        // The allocator of the system asks the kernel for its settings when it gives memory back: no disk is read. A call that
        // another thread broke in on stands on two lines, the first of which names the file.
        let kernel = line.contains("\"/proc/") || line.contains("\"/sys/") || line.contains(" resumed>");
        let reads = !kernel
            && ["open", "stat", "access", "getdents", "pread64"].iter().any(|call| line.contains(call));
        match phase {
            "draws the list" => assert!(!syncs && !reads, "{phase}: {line}"),
            "draws and looks around" => {
                assert!(!syncs, "{phase}: {line}");
                // A draft may be written meanwhile, which looks at the log; nothing else of the disk is asked for.
                assert!(!reads || line.contains("survey.db"), "{phase}: {line}");
            }
            "types" => {
                assert!(!syncs, "{phase}: {line}");
                drafts += usize::from(line.contains("pwrite64") && line.contains("survey.db-wal>"));
            }
            "answers" => synced |= syncs && line.contains("survey.db-wal>"),
            _ => {}
        }
    }
    assert!(synced, "the answer was not synced");
    // Two seconds and a half: two or three drafts, of a few pages each with a head of its own; every letter would be fifty.
    assert!((2..60).contains(&drafts), "{drafts} pieces of drafts were written");
    assert!(phases.iter().any(|phase| phase.starts_with("done ")), "{phases:?}");
}

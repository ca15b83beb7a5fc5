//! A full disk, a folder that may not be written, and the order in which a photo reaches the disk.
//!
//! These checks need root, `unshare` and `setpriv` (util-linux), and `strace`; where one is missing they fail.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

mod holding;

use std::fs;
use std::os::unix::fs::PermissionsExt;
use std::path::{Path, PathBuf};
use std::process::Command;

use facts::fact::{AuthorId, Edit, SubjectId};
use facts::file::{self, Consent, Limits, Progress};
use facts::store::Store;
use holding::holding;
use house::document::Document;
use phrase::Phrase;
use tempfile::TempDir;

const WRITER: &str = env!("CARGO_BIN_EXE_record-writer");

fn run(command: &mut Command) -> String {
    let done = command.output().unwrap();
    let (out, error) = (String::from_utf8_lossy(&done.stdout), String::from_utf8_lossy(&done.stderr));
    assert!(done.status.success(), "{command:?}: {out}{error}");
    out.into_owned()
}

#[test]
fn a_full_disk_is_said_and_nothing_is_lost() {
    let place = TempDir::new().unwrap();
    // A small disk that only this process and its children see.
    let script = "mount -t tmpfs -o size=3m tmpfs \"$1\" && exec \"$2\" fill \"$1/house.legwork\" 1";
    let out =
        run(Command::new("unshare").args(["-m", "sh", "-c", script, "sh"]).arg(place.path()).arg(WRITER));
    let lines: Vec<&str> = out.lines().collect();
    assert!(lines[0].contains("is full; nothing was written. Free some space and try again"), "{out}");
    let kept: usize = lines[1].strip_prefix("kept ").unwrap().parse().unwrap();
    assert!(kept > 20, "{out}");
}

#[test]
fn a_full_disk_is_a_notice_of_the_guide_in_every_language() {
    let messages: [fn(telling::words::Figures) -> telling::words::Language; 3] =
        [guide::english, guide::lengthened, guide::right_to_left];
    for (number, language) in messages.iter().enumerate() {
        let place = TempDir::new().unwrap();
        let script = "mount -t tmpfs -o size=3m tmpfs \"$1\" && exec \"$2\" guide \"$1\" \"$3\"";
        let mut command = Command::new("unshare");
        command.args(["-m", "sh", "-c", script, "sh"]).arg(place.path()).arg(WRITER).arg(number.to_string());
        let out = run(&mut command);
        let told = Phrase::new("error-full").text("name", "7");
        let says = language(telling::words::Figures::default()).say(&told);
        assert_eq!(out.lines().collect::<Vec<_>>(), ["ask-whose", says.as_str()]);
    }
}

fn open_to_all(path: &Path, mode: u32) {
    fs::set_permissions(path, fs::Permissions::from_mode(mode)).unwrap();
}

/// What somebody is told who may read the folder and not write in it.
fn told_as_nobody(writer: &Path, folder: &Path) -> String {
    run(Command::new("setpriv")
        .args(["--reuid=65534", "--regid=65534", "--clear-groups"])
        .arg(writer)
        .arg("try")
        .arg(folder))
}

#[test]
fn a_folder_that_may_not_be_written_is_said_and_nothing_is_lost() {
    let place = TempDir::new().unwrap();
    open_to_all(place.path(), 0o755);
    let writer: PathBuf = place.path().join("writer");
    fs::copy(WRITER, &writer).unwrap();
    open_to_all(&writer, 0o755);
    let folder = place.path().join("house.legwork");
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    store.write(&[Edit::new(SubjectId::random(), "tag", "S1")]).unwrap();
    let lines = store.ledger().to_lines().unwrap();
    drop(store);
    for path in [folder.clone(), folder.join("photos")] {
        open_to_all(&path, 0o755);
    }
    let out = told_as_nobody(&writer, &folder);
    assert!(out.contains("open: Inaccessible"), "{out}");
    assert!(out.contains("create: Inaccessible"), "{out}");

    // The database may be written, the folder of photos not.
    for (path, mode) in [(folder.clone(), 0o777), (folder.join("survey.db"), 0o666)] {
        open_to_all(&path, mode);
    }
    let out = told_as_nobody(&writer, &folder);
    assert!(out.contains("photo: Inaccessible") && out.contains("facts 1"), "{out}");
    let store = Store::open(&folder, AuthorId::random()).unwrap();
    assert_eq!(store.ledger().to_lines().unwrap(), lines);
    assert_eq!(fs::read_dir(store.photos()).unwrap().count(), 0);
}

fn check_order(folder: &Path, what: &str) {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("record/strace.sh");
    let out = run(Command::new("bash").arg(script).arg(WRITER).arg(folder).arg(what));
    assert!(out.contains("the order is right"), "{out}");
}

#[test]
fn a_photo_is_written_synced_renamed_and_its_folder_synced_before_a_fact_names_it() {
    let place = TempDir::new().unwrap();
    let folder = place.path().join("house.legwork");
    Store::create(&folder, AuthorId::random()).unwrap();
    check_order(&folder, "photo");
}

#[test]
fn a_file_is_written_synced_renamed_and_its_folder_synced_and_photos_taken_in_before_their_facts() {
    let place = TempDir::new().unwrap();
    let folder = place.path().join("house.legwork");
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    // The copy is made before the photo, so that the second file brings one.
    let copy = place.path().join("copy.legwork");
    let sent = place.path().join("sent.lwk");
    check_order(&folder, "pack");
    file::take_as_new(
        &sent,
        &copy,
        AuthorId::random(),
        Consent::NONE,
        Limits::default(),
        &mut |_: Progress| true,
    )
    .unwrap();
    let picture = include_bytes!("../../core/facts/tests/pictures/palette.png");
    store.add_photo(picture, None, None).unwrap();
    drop(store);
    check_order(&folder, "pack");
    check_order(&copy, "take");
}

/// What is typed and where one looks costs no sync, however many acts lie between and whatever becomes of the log; an act
/// is synced before it is acknowledged.
#[test]
fn drafts_cost_no_sync_and_acts_are_synced() {
    let place = TempDir::new().unwrap();
    let folder = place.path().join("house.legwork");
    drop(Store::create(&folder, AuthorId::random()).unwrap());
    let trace = place.path().join("trace");
    run(Command::new("strace")
        .args(["-f", "-y", "-qq", "-e", "trace=write,pwrite64,fsync,fdatasync", "-o"])
        .arg(&trace)
        .arg(WRITER)
        .arg("one-drafts")
        .arg(&folder)
        .arg("150"));
    let trace = fs::read_to_string(&trace).unwrap();
    let (mut typing, mut synced, mut drafts, mut acts, mut moved) = (false, false, 0, 0, 0);
    for line in trace.lines().skip_while(|line| !line.contains("\"types")) {
        if line.contains("\"types") {
            typing = true;
        } else if line.contains("\"acts") {
            (typing, synced) = (false, false);
        } else if line.contains("\"edit ") {
            assert!(synced, "act {acts} was acknowledged before it was on the disk");
            acts += 1;
        } else if line.contains("sync(") {
            assert!(!typing, "a draft behind act {acts} was synced: {line}");
            synced |= line.contains("survey.db-wal>");
        } else if typing && line.contains("survey.db-wal>") {
            drafts += 1;
        } else if acts < 150 && line.contains("pwrite64") && line.contains("survey.db>") {
            moved += 1;
        }
    }
    // Each draft is written, in one page or more.
    assert!(acts == 150 && drafts >= 150 * 26, "{acts} acts, {drafts} pages");
    assert!(moved > 0, "the log was never moved");
}

/// What is written and then forgotten goes nowhere but into the home folder, and is nowhere there afterwards: not into a file of
/// SQLite's for what is temporary, not into the system's folder for it.
#[test]
fn what_is_forgotten_was_never_written_elsewhere() {
    let place = TempDir::new().unwrap();
    let (home, trace) = (place.path().join("home"), place.path().join("trace"));
    fs::create_dir(&home).unwrap();
    let folder = home.join("house.legwork");
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    // Enough for what is cleared to be more than a page.
    let notes: Vec<Edit> =
        (0..400).map(|_| Edit::new(SubjectId::random(), "text", "x".repeat(900))).collect();
    store.write(&notes).unwrap();
    drop(store);
    let calls = "trace=open,openat,openat2,creat,rename,renameat,renameat2,link,linkat,memfd_create";
    let out = run(Command::new("strace")
        .args(["-f", "-y", "-qq", "-e", calls, "-o"])
        .arg(&trace)
        .arg(WRITER)
        .args(["one-forget".as_ref(), folder.as_os_str(), "1".as_ref()]));
    let secret = out.lines().find_map(|line| line.strip_prefix("forgot ")).unwrap();
    let traced = fs::read_to_string(&trace).unwrap();
    let written: Vec<&str> = traced
        .lines()
        .filter(|line| !line.contains(" = -1 "))
        .filter(|line| {
            ["O_WRONLY", "O_RDWR", "O_CREAT", "creat(", "rename", "link", "memfd"]
                .iter()
                .any(|sign| line.contains(sign))
        })
        .collect();
    assert!(
        written.iter().any(|line| line.contains("survey.db")),
        "the trace shows what is written: {traced}"
    );
    let inside = home.to_str().unwrap();
    let elsewhere: Vec<_> =
        written.into_iter().filter(|line| !line.contains(inside) && !line.contains("\"/dev/")).collect();
    assert_eq!(elsewhere, [""; 0]);
    assert_eq!(holding(&home, secret.as_bytes()), [""; 0]);
}

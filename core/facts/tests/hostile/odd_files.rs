//! What lies where a file should and is none: pipes, devices, sockets, folders, links to them. Nothing waits for them, reads them
//! to an end that they do not have, or follows them out of a survey.

use std::fs;
use std::os::unix::fs::symlink;
use std::os::unix::net::UnixListener;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::mpsc;
use std::thread;
use std::time::Duration;

use facts::fact::AuthorId;
use facts::file::{Consent, Limits, look, recognise, take, take_as_new};
use facts::store::Store;
use tempfile::TempDir;

use super::file_support::*;

/// Long beyond all that these take: whoever waits so long waits for ever.
const PATIENCE: Duration = Duration::from_secs(60);

/// Does something that must end, though what it meets never does.
fn ends<T: Send + 'static>(what: &str, work: impl FnOnce() -> T + Send + 'static) -> T {
    let (done, waits) = mpsc::channel();
    thread::spawn(move || done.send(work()));
    waits.recv_timeout(PATIENCE).unwrap_or_else(|_| panic!("{what}: it waits for ever, or fails"))
}

fn pipe(path: &Path) {
    assert!(Command::new("mkfifo").arg(path).status().unwrap().success());
}

/// Odd things by name, in a folder.
fn odd(folder: &Path) -> Vec<(&'static str, PathBuf)> {
    let at = |name: &str| folder.join(name);
    pipe(&at("pipe"));
    UnixListener::bind(at("socket")).unwrap();
    fs::create_dir(at("folder")).unwrap();
    for (name, to) in [
        ("to-pipe", at("pipe")),
        ("to-itself", at("to-itself")),
        ("to-nothing", at("nothing")),
        ("to-folder", at("folder")),
        ("to-zeros", "/dev/zero".into()),
    ] {
        symlink(to, at(name)).unwrap();
    }
    vec![
        ("a pipe", at("pipe")),
        ("a socket", at("socket")),
        ("a folder", at("folder")),
        ("a link to a pipe", at("to-pipe")),
        ("a link to itself", at("to-itself")),
        ("a link to nothing", at("to-nothing")),
        ("a link to a folder", at("to-folder")),
        ("a link to a device", at("to-zeros")),
        ("a device without end", "/dev/zero".into()),
        ("a device of nothing", "/dev/null".into()),
        ("a device of chance", "/dev/urandom".into()),
        ("a terminal", "/dev/tty".into()),
        ("a process's own memory", "/proc/self/mem".into()),
    ]
}

/// Each instead of a file that is to be taken in. Returns how many there were.
pub fn refused(home: &TempDir, store: &mut Store) -> usize {
    let elsewhere = TempDir::new().unwrap();
    let all = odd(elsewhere.path());
    let before = snapshot(store.folder());
    for (what, path) in &all {
        let (survey, author) = (store.folder().to_owned(), store.author());
        let (fresh, path) = (home.path().join("fresh.legwork"), path.clone());
        ends(what, move || {
            let mut store = Store::open(&survey, author).unwrap();
            assert!(look(&path, Some(&mut store), Limits::default(), &mut go_on).is_err());
            assert!(look(&path, None, Limits::default(), &mut go_on).is_err());
            assert!(take(&path, &mut store, Consent::ALL, Limits::default(), &mut go_on).is_err());
            let (author, limits) = (AuthorId::random(), Limits::default());
            assert!(take_as_new(&path, &fresh, author, Consent::ALL, limits, &mut go_on).is_err());
            assert!(!fresh.exists());
            assert!(!recognise(&path));
        });
        assert!(snapshot(store.folder()) == before, "{what}: something changed");
    }
    all.len()
}

/// A survey whose files are pipes is refused or read, and never waited for.
pub fn instead_of_a_database() {
    for name in ["survey.db", "survey.db-wal", "survey.db-shm", "survey.db-journal"] {
        let (home, store) = empty();
        let (folder, author) = (store.folder().to_owned(), store.author());
        drop(store);
        let _ = fs::remove_file(folder.join(name));
        pipe(&folder.join(name));
        ends(name, move || assert!(Store::open(&folder, author).is_err(), "{name}"));
        drop(home);
    }
}

//! Kills while a file is packed or taken in.

use std::fs;
use std::path::Path;

use facts::fact::AuthorId;
use facts::file::{self, Consent, Limits};
use facts::home::{Home, Repaired};
use facts::store::Store;
use tempfile::TempDir;

use super::{Harness, check};
use crate::merge::go_on;

/// A sheet of two parts.
const SHEET: &str = "[[part]]\ntag = \"E1\"\nkind = \"entry\"\n\n[[part]]\ntag = \"S1\"\nkind = \"splitter\"\nlegs = 2\nfrom = \"E1\"\n";

/// How many photos the packed survey has, so that packing and taking last a while.
const PHOTOS: u64 = 24;

impl Harness {
    /// A killed pack leaves no file under its name, or a whole one: the one before it or the new one.
    pub fn pack(&mut self, times: u64) {
        let place = TempDir::new().unwrap();
        let folder = place.path().join("house.legwork");
        self.prepare(&folder);
        let sent = place.path().join("sent");
        fs::create_dir(&sent).unwrap();
        for round in 0..times {
            let promised = self.killed("pack", &folder, round * 10_000 + 1, 150);
            let store = Store::open(&folder, AuthorId::random()).unwrap();
            for entry in fs::read_dir(&sent).unwrap() {
                let path = entry.unwrap().path();
                if path.extension().is_some_and(|ending| ending == "lwk") {
                    file::look(&path, None, Limits::default(), &mut go_on).unwrap();
                } else {
                    assert!(path.extension().is_some_and(|ending| ending == "part"), "{}", path.display());
                    self.leftovers += 1;
                }
            }
            let mut facts = 0;
            for line in &promised {
                if let ["packed", name, count] = line.split(' ').collect::<Vec<_>>()[..] {
                    let found = file::look(&sent.join(name), None, Limits::default(), &mut go_on).unwrap();
                    facts = count.parse().unwrap();
                    assert!(found.facts >= facts && found.photos as u64 >= PHOTOS, "{line}: {found:?}");
                }
            }
            assert!(store.ledger().len() >= facts);
            // The next one clears what this one left; those of names that come no more are cleared here.
            for entry in fs::read_dir(&sent).unwrap() {
                let path = entry.unwrap().path();
                if !path.to_str().unwrap().contains("always.lwk") {
                    fs::remove_file(path).unwrap();
                }
            }
        }
        let mut store = Store::open(&folder, AuthorId::random()).unwrap();
        let options = file::PackOptions { replace: true, ..file::PackOptions::default() };
        let always = sent.join("always.lwk");
        house::document::pack(&mut store, &options, &crate::merge::report, &always, &mut go_on).unwrap();
        assert_eq!(fs::read_dir(&sent).unwrap().count(), 1, "a part file was left");
    }

    /// A killed take leaves the survey as it was, or brings all of the file.
    pub fn take(&mut self, times: u64) {
        let place = TempDir::new().unwrap();
        let folder = place.path().join("house.legwork");
        let sender = place.path().join("sender.legwork");
        Store::create(&sender, AuthorId::random()).unwrap();
        let first = pack_to(&sender, &place.path().join("first.lwk"));
        file::take_as_new(&first, &folder, AuthorId::random(), Consent::NONE, Limits::default(), &mut go_on)
            .unwrap();
        let mut promised = Vec::new();
        for round in 0..times {
            promised.extend(self.killed("take", &folder, round * 10_000 + 1, 250));
            self.leftovers += takings(&folder);
            let store = Store::open(&folder, AuthorId::random()).unwrap();
            assert_eq!(takings(&folder), 0, "opening left what a killed take had");
            assert!(store.missing_photos().unwrap().is_empty());
            check::groups(store.ledger(), &promised);
        }
        check::survey(&folder, &promised);
    }

    /// A killed take of a new survey leaves none, or the whole of it.
    pub fn take_new(&mut self, times: u64) {
        let place = TempDir::new().unwrap();
        let sender = place.path().join("sender.legwork");
        self.prepare(&sender);
        let sent = pack_to(&sender, &place.path().join("sent.lwk"));
        let whole = Store::open(&sender, AuthorId::random()).unwrap().ledger().to_lines().unwrap();
        for round in 0..times {
            let home = Home::at(&place.path().join(format!("home {round}"))).unwrap();
            fs::hard_link(&sent, home.folder().join("sent.lwk")).unwrap();
            let promised = self.killed("take-new", home.folder(), 0, 150);
            self.leftovers += unfinished(home.folder());
            // One opening of the home is enough.
            let home = Home::at(home.folder()).unwrap();
            let names: Vec<String> = home
                .list()
                .unwrap()
                .iter()
                .map(|entry| {
                    let store = Store::open(&entry.folder, AuthorId::random()).unwrap();
                    assert_eq!(store.ledger().to_lines().unwrap(), whole);
                    assert!(store.missing_photos().unwrap().is_empty());
                    assert_eq!(fs::read_dir(store.photos()).unwrap().count() as u64, PHOTOS);
                    entry.folder_name()
                })
                .collect();
            for name in promised.iter().filter_map(|line| line.strip_prefix("taken ")) {
                assert!(names.iter().any(|there| there == name), "{name} is lost");
            }
            // The surveys and the file, and nothing that was left.
            assert_eq!(fs::read_dir(home.folder()).unwrap().count(), names.len() + 1);
            fs::remove_dir_all(home.folder()).unwrap();
        }
    }

    /// A killed repair leaves the damaged survey, which can be repaired then, or the repaired one.
    pub fn repair(&mut self, times: u64) {
        let place = TempDir::new().unwrap();
        let sender = place.path().join("sender.legwork");
        self.prepare(&sender);
        let sent = pack_to(&sender, &place.path().join("sent.lwk"));
        let whole = Store::open(&sender, AuthorId::random()).unwrap().ledger().to_lines().unwrap();
        for round in 0..times {
            let home = Home::at(&place.path().join(format!("home {round}"))).unwrap();
            fs::hard_link(&sent, home.folder().join("sent.lwk")).unwrap();
            let folder = home.folder().join("house.legwork");
            fs::create_dir_all(folder.join("photos")).unwrap();
            let damaged = vec![0; 4096];
            fs::write(folder.join("survey.db"), &damaged).unwrap();
            let promised = self.killed("repair", &folder, 0, 200);
            self.leftovers += unfinished(home.folder());
            // One opening of the home is enough.
            let home = Home::at(home.folder()).unwrap();
            let is_repaired = Store::open(&folder, AuthorId::random()).is_ok();
            if !is_repaired {
                assert_eq!(fs::read(folder.join("survey.db")).unwrap(), damaged, "it is no more what it was");
            }
            assert!(is_repaired || promised.is_empty(), "an acknowledged repair is lost");
            let file = home.folder().join("sent.lwk");
            let author = AuthorId::random();
            let repaired =
                Repaired::open_with_file(&folder, author, &file, Limits::default(), &mut go_on).unwrap();
            assert_eq!(repaired.rebuilt.is_none(), is_repaired);
            assert_eq!(repaired.store.ledger().to_lines().unwrap(), whole);
            assert!(repaired.store.missing_photos().unwrap().is_empty());
            // The survey and the file, and nothing that was left; beside the database the damaged one.
            assert_eq!(fs::read_dir(home.folder()).unwrap().count(), 2);
            drop(repaired);
            let kept = folder.join("survey.db.damaged-1");
            assert_eq!(fs::read(kept).unwrap(), damaged);
            let mut names: Vec<_> =
                fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().file_name()).collect();
            names.sort();
            assert_eq!(names, ["photos", "survey.db", "survey.db.damaged-1"]);
            fs::remove_dir_all(home.folder()).unwrap();
        }
    }

    /// A killed `legwork sheet` leaves no survey, or the whole of it.
    pub fn sheet(&mut self, times: u64) -> crate::Outcome {
        for _ in 0..times {
            let place = TempDir::new()?;
            let home = Home::at(place.path())?;
            fs::write(place.path().join("house.toml"), SHEET)?;
            let folder = place.path().join("house.legwork");
            let is_done = self.killed("sheet", &folder, 0, 60).iter().any(|line| line == "made");
            self.leftovers += unfinished(home.folder());
            let home = Home::at(place.path())?;
            let list = home.list()?;
            assert!(!is_done || list.len() == 1, "an acknowledged survey is lost");
            for entry in &list {
                let store = Store::open(&entry.folder, AuthorId::random())?;
                assert_eq!(store.summary().progress.parts, 2, "half a sheet came");
            }
            let names =
                fs::read_dir(place.path())?.filter_map(|entry| entry.ok()?.file_name().into_string().ok());
            let strange: Vec<String> = names
                .filter(|name| !["house.toml", "house.legwork", "author"].contains(&name.as_str()))
                .collect();
            assert!(strange.is_empty(), "{strange:?} was left");
        }
        Ok(())
    }

    /// A survey with photos.
    fn prepare(&self, folder: &Path) {
        Store::create(folder, AuthorId::random()).unwrap();
        for photo in 0..PHOTOS {
            let done = std::process::Command::new(&self.writer)
                .args(["one-noise", folder.to_str().unwrap(), &photo.to_string()])
                .status()
                .unwrap();
            assert!(done.success());
        }
    }
}

fn pack_to(survey: &Path, path: &Path) -> std::path::PathBuf {
    let mut store = Store::open(survey, AuthorId::random()).unwrap();
    let options = file::PackOptions::default();
    house::document::pack(&mut store, &options, &crate::merge::report, path, &mut go_on).unwrap();
    path.to_owned()
}

/// What lies in a home under a name that says that it is not finished.
fn unfinished(home: &Path) -> u64 {
    let is_unfinished = |name: &str| [".unfinished", ".part"].iter().any(|ending| name.ends_with(ending));
    let names = fs::read_dir(home).unwrap().map(|entry| entry.unwrap().file_name());
    names.filter(|name| name.to_str().is_some_and(is_unfinished)).count() as u64
}

/// Folders of takes that lie in a survey's folder.
fn takings(folder: &Path) -> u64 {
    let named = |entry: std::io::Result<fs::DirEntry>| {
        entry.unwrap().file_name().to_string_lossy().starts_with(".taking-")
    };
    fs::read_dir(folder).unwrap().filter_map(|entry| named(entry).then_some(())).count() as u64
}

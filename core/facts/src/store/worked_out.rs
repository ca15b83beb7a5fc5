//! What was worked out of a survey and takes long to work out again, kept as bytes beside its database. What they mean is for
//! others; here they are whole, and of the facts as they are, or there are none.
//!
//! The name begins as the database's own, so that the file is deleted when something is forgotten and when the survey is;
//! it is no part of what is packed, copied or merged. Layout: [`BEGINNING`], the mark of what it is of, the SHA-256 of all
//! that follows, the bytes.

use std::fs::{self, File};
use std::io::Read;
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

use super::{DATABASE, Store};
use crate::fact::AuthorId;
use crate::whole_file::{self, Existing, Readers};

/// How the file begins.
const BEGINNING: &[u8; 16] = b"legwork worked 1";

/// The longest file that is read or written.
const MOST_BYTES: u64 = 64 * 1024 * 1024;

/// What something was worked out of: 32 bytes that no other facts and no other program have.
pub type Mark = [u8; 32];

fn place(folder: &Path) -> PathBuf {
    folder.join(format!("{DATABASE}.worked-out"))
}

/// What is kept in a survey's folder of what bears this mark. One that is of something else, is not whole or cannot be read
/// counts as none.
pub fn worked_out(folder: &Path, mark: &Mark) -> Option<Vec<u8>> {
    let place = place(folder);
    // A pipe would be waited for for ever.
    let found = fs::symlink_metadata(&place).ok().filter(fs::Metadata::is_file)?;
    if found.len() > MOST_BYTES {
        return None;
    }
    let mut whole = Vec::new();
    File::open(&place).ok()?.take(MOST_BYTES).read_to_end(&mut whole).ok()?;
    let rest = whole.strip_prefix(BEGINNING)?.strip_prefix(mark.as_slice())?;
    let (sum, bytes) = rest.split_first_chunk::<32>()?;
    (sum_of(mark, bytes) == *sum).then(|| bytes.to_vec())
}

/// Keeps what was worked out in place of what was kept before. Where nothing may be written nothing is kept, and that is
/// no harm. `is_still_so` looks whether the facts on the disk are still those that bear the mark: if not, somebody may have
/// made something of them forgotten meanwhile, and nothing of it stays.
pub fn keep_worked_out(folder: &Path, mark: &Mark, bytes: &[u8], is_still_so: impl FnOnce(&Store) -> bool) {
    let place = place(folder);
    let whole = [BEGINNING.as_slice(), mark, &sum_of(mark, bytes), bytes].concat();
    if whole.len() as u64 > MOST_BYTES {
        return;
    }
    if whole_file::write(&place, &whole, Existing::IsReplaced, Readers::Owner).is_err() {
        return;
    }
    let is_so = Store::open_to_read(folder, AuthorId::random()).is_ok_and(|store| is_still_so(&store));
    if !is_so {
        let _ = fs::remove_file(&place);
    }
}

fn sum_of(mark: &Mark, bytes: &[u8]) -> [u8; 32] {
    Sha256::new().chain_update(mark).chain_update(bytes).finalize().into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fact::{Edit, SubjectId};

    const MARK: Mark = [7; 32];

    fn survey() -> (tempfile::TempDir, PathBuf) {
        let home = tempfile::TempDir::new().unwrap();
        let folder = home.path().join("one.legwork");
        Store::create(&folder, AuthorId::random()).unwrap();
        (home, folder)
    }

    #[test]
    fn what_was_kept_is_there_until_one_byte_of_it_changes() {
        let (_home, folder) = survey();
        assert_eq!(worked_out(&folder, &MARK), None);
        keep_worked_out(&folder, &MARK, b"worked out", |_| true);
        assert_eq!(worked_out(&folder, &MARK).as_deref(), Some(b"worked out".as_slice()));
        assert_eq!(worked_out(&folder, &[8; 32]), None, "of other facts");
        let whole = fs::read(place(&folder)).unwrap();
        for at in 0..whole.len() {
            let mut changed = whole.clone();
            changed[at] ^= 1;
            fs::write(place(&folder), &changed).unwrap();
            assert_eq!(worked_out(&folder, &MARK), None, "byte {at}");
            fs::write(place(&folder), &whole[..at]).unwrap();
            assert_eq!(worked_out(&folder, &MARK), None, "cut at {at}");
        }
        fs::remove_file(place(&folder)).unwrap();
        fs::create_dir(place(&folder)).unwrap();
        assert_eq!(worked_out(&folder, &MARK), None);
        keep_worked_out(&folder, &MARK, b"worked out", |_| true);
        assert_eq!(worked_out(&folder, &MARK), None);
    }

    #[test]
    fn nothing_stays_where_the_facts_became_others_meanwhile() {
        let (_home, folder) = survey();
        keep_worked_out(&folder, &MARK, b"of what was forgotten meanwhile", |_| false);
        assert!(!place(&folder).exists());
    }

    #[test]
    fn it_goes_when_something_is_forgotten() {
        let (_home, folder) = survey();
        let mut store = Store::open(&folder, AuthorId::random()).unwrap();
        let part = SubjectId::random();
        store.write(&[Edit::new(part, "is", "part"), Edit::new(part, "tag", "S1")]).unwrap();
        keep_worked_out(&folder, &MARK, b"worked out", |_| true);
        store.write(&[Edit::new(part, "tag", "S2")]).unwrap();
        assert!(place(&folder).exists(), "what is merely another fact makes it no more than stale");
        store.forget_field(part, "tag").unwrap();
        assert!(!place(&folder).exists());
    }
}

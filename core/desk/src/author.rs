//! Who writes on this computer: a key from which comes the author's id in each survey. It is made at the first writing and kept
//! in the user's configuration folder.

use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::str::FromStr;

use facts::fact::{DeviceKey, Writer};
use facts::whole_file::{self, Existing, Readers};

use crate::error::DeskError;

/// The name of the file that holds the key.
const FILE: &str = "author-key";
/// The name of the file in which releases before kept the id under which they wrote into every survey.
const BEFORE: &str = "author";

/// Whoever writes on this computer; the key is made if there is none yet.
///
/// # Errors
/// [`DeskError::NoHome`] without a folder to keep it in, [`DeskError::Write`] if it cannot be kept.
pub fn this_computer() -> Result<Writer, DeskError> {
    let folder = folder(set_variable).ok_or(DeskError::NoHome)?;
    Ok(Writer::Device { key: load_or_make(&folder.join(FILE))?, before: load(&folder.join(BEFORE)) })
}

/// Whoever writes on this computer, if anybody has. Nothing is made.
pub fn known() -> Option<Writer> {
    let folder = folder(set_variable)?;
    let before = load(&folder.join(BEFORE));
    match load(&folder.join(FILE)) {
        Some(key) => Some(Writer::Device { key, before }),
        None => before.map(Writer::As),
    }
}

fn set_variable(name: &str) -> Option<OsString> {
    std::env::var_os(name).filter(|value| !value.is_empty())
}

/// `LEGWORK_HOME`, else `legwork` in the configuration folder of the XDG base directory specification 0.8.
fn folder(variable: impl Fn(&str) -> Option<OsString>) -> Option<PathBuf> {
    if let Some(home) = variable("LEGWORK_HOME") {
        return Some(home.into());
    }
    let absolute = |path: OsString| Some(PathBuf::from(path)).filter(|path| path.is_absolute());
    let config = variable("XDG_CONFIG_HOME").and_then(absolute);
    config
        .or_else(|| Some(PathBuf::from(variable("HOME")?).join(".config")))
        .map(|config| config.join("legwork"))
}

fn load_or_make(file: &Path) -> Result<DeviceKey, DeskError> {
    if let Some(key) = load(file) {
        return Ok(key);
    }
    let cannot = |source| DeskError::Write { path: file.to_owned(), source };
    let folder = file.parent().unwrap_or(Path::new("."));
    std::fs::create_dir_all(folder).map_err(cannot)?;
    // Several first runs at once agree on one: the folder is held while there is none. Where a system holds no folders, the
    // last one wins, and the others have written under an id of their own once.
    let held = std::fs::File::open(folder).ok();
    let _ = held.as_ref().map(std::fs::File::lock);
    if let Some(key) = load(file) {
        return Ok(key);
    }
    // A file that cannot be read as a key (cut short by a crash) is replaced: an author is a claim and nothing more.
    let key = DeviceKey::random();
    keep(file, key).map_err(cannot)?;
    Ok(key)
}

fn load<T: FromStr>(file: &Path) -> Option<T> {
    std::fs::read_to_string(file).ok()?.trim().parse().ok()
}

fn keep(file: &Path, key: DeviceKey) -> std::io::Result<()> {
    whole_file::write(file, format!("{key}\n").as_bytes(), Existing::IsReplaced, Readers::Owner)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_folder_follows_the_environment() {
        let at = |pairs: &'static [(&str, &str)]| {
            folder(move |name| pairs.iter().find(|(known, _)| *known == name).map(|(_, value)| value.into()))
        };
        assert_eq!(at(&[("LEGWORK_HOME", "/l"), ("HOME", "/h")]), Some("/l".into()));
        assert_eq!(at(&[("XDG_CONFIG_HOME", "/c"), ("HOME", "/h")]), Some("/c/legwork".into()));
        // XDG base directory specification 0.8: relative paths are invalid and ignored.
        assert_eq!(at(&[("XDG_CONFIG_HOME", "c"), ("HOME", "/h")]), Some("/h/.config/legwork".into()));
        assert_eq!(at(&[]), None);
    }

    #[test]
    fn eight_first_runs_at_once_agree() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("deep/author-key");
        let runs: Vec<_> = (0..8)
            .map(|_| {
                let file = file.clone();
                std::thread::spawn(move || load_or_make(&file).unwrap())
            })
            .collect();
        let made: std::collections::BTreeSet<DeviceKey> =
            runs.into_iter().map(|run| run.join().unwrap()).collect();
        assert_eq!(made.len(), 1);
        assert_eq!(load(&file), made.first().copied());
    }

    #[test]
    fn the_key_stays_and_a_broken_file_is_replaced() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("deep/author-key");
        let first = load_or_make(&file).unwrap();
        assert_eq!(load_or_make(&file).unwrap(), first);
        std::fs::write(&file, "half").unwrap();
        let second = load_or_make(&file).unwrap();
        assert_ne!(second, first);
        assert_eq!(load_or_make(&file).unwrap(), second);
    }
}

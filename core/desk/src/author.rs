//! The author id of this computer: made at the first writing, kept in the user's configuration folder.

use std::ffi::OsString;
use std::path::{Path, PathBuf};

use facts::fact::AuthorId;
use facts::whole_file::{self, Existing, Readers};

use crate::error::DeskError;

/// The name of the file that holds it.
const FILE: &str = "author";

/// The author id of this computer, made if there is none yet.
///
/// # Errors
/// [`DeskError::NoHome`] without a folder to keep it in, [`DeskError::Write`] if it cannot be kept.
pub fn this_computer() -> Result<AuthorId, DeskError> {
    load_or_make(&folder(set_variable).ok_or(DeskError::NoHome)?.join(FILE))
}

/// The author id of this computer, if it has one. Nothing is made.
pub fn known() -> Option<AuthorId> {
    load(&folder(set_variable)?.join(FILE))
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

fn load_or_make(file: &Path) -> Result<AuthorId, DeskError> {
    if let Some(author) = load(file) {
        return Ok(author);
    }
    let cannot = |source| DeskError::Write { path: file.to_owned(), source };
    let folder = file.parent().unwrap_or(Path::new("."));
    std::fs::create_dir_all(folder).map_err(cannot)?;
    // Several first runs at once agree on one: the folder is held while there is none. Where a system holds no folders, the
    // last one wins, and the others have written under an id of their own once.
    let held = std::fs::File::open(folder).ok();
    let _ = held.as_ref().map(std::fs::File::lock);
    if let Some(author) = load(file) {
        return Ok(author);
    }
    // A file that cannot be read as an id (cut short by a crash) is replaced: the id is a claim and nothing more.
    let author = AuthorId::random();
    keep(file, author).map_err(cannot)?;
    Ok(author)
}

fn load(file: &Path) -> Option<AuthorId> {
    std::fs::read_to_string(file).ok()?.trim().parse().ok()
}

fn keep(file: &Path, author: AuthorId) -> std::io::Result<()> {
    whole_file::write(file, format!("{author}\n").as_bytes(), Existing::IsReplaced, Readers::Owner)
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
        let file = folder.path().join("deep/author");
        let runs: Vec<_> = (0..8)
            .map(|_| {
                let file = file.clone();
                std::thread::spawn(move || load_or_make(&file).unwrap())
            })
            .collect();
        let made: std::collections::BTreeSet<AuthorId> =
            runs.into_iter().map(|run| run.join().unwrap()).collect();
        assert_eq!(made.len(), 1);
        assert_eq!(load(&file), made.first().copied());
    }

    #[test]
    fn the_id_stays_and_a_broken_file_is_replaced() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("deep/author");
        let first = load_or_make(&file).unwrap();
        assert_eq!(load_or_make(&file).unwrap(), first);
        std::fs::write(&file, "half").unwrap();
        let second = load_or_make(&file).unwrap();
        assert_ne!(second, first);
        assert_eq!(load_or_make(&file).unwrap(), second);
    }
}

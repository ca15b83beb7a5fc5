//! Folders and files that nobody but their owner reads; whole files are written by [`whole_file`](crate::whole_file).
//!
//! Where a house is and what it looks like is nobody else's: folders of a home and of surveys are made with the mode
//! 0700, the files in them with 0600 (POSIX; elsewhere the system decides). A file that somebody asks for, to send it,
//! is not made here.

use std::fs::{self, DirBuilder, File, OpenOptions};
use std::io;
use std::path::Path;

pub(crate) use crate::whole_file::sync_folder;

/// Who may do what with a private folder (POSIX).
#[cfg(unix)]
const FOLDER_MODE: u32 = 0o700;
/// Who may do what with a private file (POSIX).
#[cfg(unix)]
const FILE_MODE: u32 = 0o600;

/// Makes a private folder, whose parent is there.
pub(crate) fn make_folder(folder: &Path) -> io::Result<()> {
    private_folders().create(folder)
}

/// Makes a private folder and those above it that are missing. One that is there stays as it is.
pub(crate) fn make_folders(folder: &Path) -> io::Result<()> {
    private_folders().recursive(true).create(folder)
}

fn private_folders() -> DirBuilder {
    #[cfg_attr(not(unix), expect(unused_mut, reason = "only POSIX says here who may look into it"))]
    let mut builder = DirBuilder::new();
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, FOLDER_MODE);
    builder
}

/// Makes a new private file, to be read and written.
pub(crate) fn new_file(file: &Path) -> io::Result<File> {
    let mut options = OpenOptions::new();
    options.read(true).write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, FILE_MODE);
    options.open(file)
}

/// Makes a folder private that others may look into, with the files in it and in its folder `within`: an earlier release
/// made it, or a copying program. The folder itself comes last, so that what is cut off is begun anew.
pub(crate) fn make_private(folder: &Path, within: &str) -> io::Result<()> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let is_open_to_others = |found: &fs::Metadata| found.permissions().mode() & 0o077 != 0;
        if !is_open_to_others(&fs::metadata(folder)?) {
            return Ok(());
        }
        let inner = folder.join(within);
        for entry in fs::read_dir(folder)?.chain(fs::read_dir(&inner).into_iter().flatten()) {
            let entry = entry?;
            if entry.file_type()?.is_file() && is_open_to_others(&entry.metadata()?) {
                fs::set_permissions(entry.path(), fs::Permissions::from_mode(FILE_MODE))?;
            }
        }
        for folder in [&inner, folder] {
            if folder.is_dir() {
                fs::set_permissions(folder, fs::Permissions::from_mode(FOLDER_MODE))?;
            }
        }
    }
    #[cfg(not(unix))]
    let _ = (folder, within);
    Ok(())
}

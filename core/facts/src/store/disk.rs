//! Files that are whole or not there.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::Path;

/// Brings the names in a folder to the disk. Only Unix lets a folder be opened for that.
pub(crate) fn sync_folder(folder: &Path) -> io::Result<()> {
    if cfg!(unix) { File::open(folder)?.sync_all() } else { Ok(()) }
}

/// Writes a file so that it is whole under its name or not there: under a temporary name in the same folder,
/// synced, renamed, the folder synced. A file that has the name already is replaced.
pub(crate) fn write_whole(folder: &Path, name: &str, bytes: &[u8]) -> io::Result<()> {
    let part = folder.join(format!(".{}.part", uuid::Uuid::now_v7()));
    let written = File::create_new(&part)
        .and_then(|mut file| {
            file.write_all(bytes)?;
            file.sync_all()
        })
        .and_then(|()| fs::rename(&part, folder.join(name)));
    if let Err(error) = written {
        // Best effort: what stays is swept later.
        let _ = fs::remove_file(&part);
        return Err(error);
    }
    sync_folder(folder)
}

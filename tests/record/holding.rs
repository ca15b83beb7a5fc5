//! Where bytes lie in a folder.

use std::fs;
use std::path::Path;

/// The files below a folder that hold these bytes.
pub fn holding(folder: &Path, part: &[u8]) -> Vec<String> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(holding(&path, part));
        } else if fs::read(&path).unwrap().windows(part.len()).any(|window| window == part) {
            found.push(path.display().to_string());
        }
    }
    found
}

//! Files as people give them: as a terminal pastes them when they are dropped on it, a folder in place of what is in it, a
//! pattern where the shell leaves it as it is.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// What a text that was pasted may mean: the text itself, then without its quotes, as the path of a `file:` address, and
/// without the backslashes before its blanks.
pub fn pasted(text: &str) -> Vec<PathBuf> {
    let bare = text.trim();
    let unquoted =
        ['\'', '"'].iter().find_map(|quote| bare.strip_prefix(*quote)?.strip_suffix(*quote)).unwrap_or(bare);
    let mut meant = vec![text.to_owned(), bare.to_owned(), unquoted.to_owned()];
    meant.extend(of_address(unquoted));
    // Where a backslash parts folders it stands before no blank and no sign.
    meant.push(without_backslashes(unquoted));
    let mut paths: Vec<PathBuf> = Vec::new();
    for path in meant.into_iter().filter(|text| !text.is_empty()).map(PathBuf::from) {
        if !paths.contains(&path) {
            paths.push(path);
        }
    }
    paths
}

/// The path in an address such as `file:///home/of/a%20picture.jpg`: RFC 8089, section 2; the host is this one.
fn of_address(text: &str) -> Option<String> {
    let rest = text.get(..5).filter(|scheme| scheme.eq_ignore_ascii_case("file:")).and(text.get(5..))?;
    let path = match rest.strip_prefix("//") {
        Some(with_host) => {
            let path = with_host.get(with_host.find('/')?..)?;
            let host = with_host.strip_suffix(path)?;
            if !host.is_empty() && !host.eq_ignore_ascii_case("localhost") {
                return None;
            }
            path
        }
        None => rest,
    };
    let decoded = percent_encoding::percent_decode_str(path).decode_utf8().ok()?.into_owned();
    // `/C:/of/a.jpg` is `C:/of/a.jpg`.
    let on_drive = decoded.strip_prefix('/').filter(|rest| rest.as_bytes().get(1) == Some(&b':'));
    Some(on_drive.map_or_else(|| decoded.clone(), ToOwned::to_owned))
}

/// As a shell reads a word: a backslash makes the sign behind it an ordinary one.
fn without_backslashes(text: &str) -> String {
    let mut signs = text.chars();
    let mut word = String::with_capacity(text.len());
    while let Some(sign) = signs.next() {
        match sign {
            '\\' => word.extend(signs.next()),
            sign => word.push(sign),
        }
    }
    word
}

/// How the names of pictures end, in a folder or by a pattern.
pub const PICTURES: &[&str] = &["jpg", "jpeg", "png"];

/// What was given in place of files.
pub enum Given {
    /// Files, in order.
    Files(Vec<PathBuf>),
    /// A folder without any such file, or a pattern that matches none.
    Nothing,
}

/// The files that a word means: the file itself; of a folder those in it that end in one of `endings`, by name; of a pattern
/// what it matches, likewise. A word that means nothing that is there is a file that cannot be read.
///
/// # Errors
/// What the system reports of a folder.
pub fn files(word: &Path, endings: &[&str]) -> io::Result<Given> {
    let meant = word.to_str().map_or_else(|| vec![word.to_owned()], pasted);
    for path in &meant {
        match fs::metadata(path) {
            Ok(found) if found.is_dir() => return in_folder(path, endings),
            Ok(_) => return Ok(Given::Files(vec![path.clone()])),
            Err(_) => {}
        }
    }
    let patterns =
        meant.iter().filter_map(|path| path.to_str()).filter(|text| text.contains(['*', '?', '[']));
    let mut is_pattern = false;
    for pattern in patterns {
        let Ok(matches) = glob::glob(pattern) else { continue };
        is_pattern = true;
        let found: Vec<PathBuf> =
            matches.filter_map(Result::ok).filter(|path| path.is_file() && ends_in(path, endings)).collect();
        if !found.is_empty() {
            return Ok(Given::Files(found));
        }
    }
    Ok(if is_pattern { Given::Nothing } else { Given::Files(vec![word.to_owned()]) })
}

/// The words of a line, parted as a shell parts them: by blanks, but for those in quotes or behind a backslash. None of a line
/// in which a quote is left open.
pub fn parted(line: &str) -> Vec<String> {
    shlex::split(line).unwrap_or_default()
}

fn in_folder(folder: &Path, endings: &[&str]) -> io::Result<Given> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        let is_hidden = path.file_name().is_some_and(|name| name.to_string_lossy().starts_with('.'));
        if !is_hidden && path.is_file() && ends_in(&path, endings) {
            found.push(path);
        }
    }
    found.sort();
    Ok(if found.is_empty() { Given::Nothing } else { Given::Files(found) })
}

fn ends_in(path: &Path, endings: &[&str]) -> bool {
    let ending = path.extension().and_then(|ending| ending.to_str());
    ending.is_some_and(|ending| endings.iter().any(|known| ending.eq_ignore_ascii_case(known)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn is_among(text: &str, path: &str) {
        let meant = pasted(text);
        assert!(meant.contains(&PathBuf::from(path)), "{text}: {meant:?}");
        assert_eq!(meant.first(), Some(&PathBuf::from(text)), "what is called so comes first");
    }

    #[test]
    fn several_names_in_one_line() {
        assert_eq!(parted("a.jpg  b.jpg"), ["a.jpg", "b.jpg"]);
        assert_eq!(parted("'a one.jpg' b\\ two.jpg \"c.jpg\""), ["a one.jpg", "b two.jpg", "c.jpg"]);
        assert!(parted("  ").is_empty() && parted("'a b.jpg").is_empty());
    }

    #[test]
    fn names_as_terminals_paste_them() {
        is_among("/of/a.jpg", "/of/a.jpg");
        is_among(" '/of/a picture.jpg' ", "/of/a picture.jpg");
        is_among("\"C:\\of\\a picture.jpg\"", "C:\\of\\a picture.jpg");
        is_among("/of/a\\ picture\\ \\(2\\).jpg", "/of/a picture (2).jpg");
        is_among("file:///of/a%20picture%20%C3%A4.jpg", "/of/a picture ä.jpg");
        is_among("file://localhost/of/a.jpg", "/of/a.jpg");
        is_among("FILE:/of/a.jpg", "/of/a.jpg");
        is_among("file:///C:/of/a.jpg", "C:/of/a.jpg");
        is_among("100%25.jpg", "100%25.jpg");
        assert!(pasted("file://elsewhere/of/a.jpg").iter().all(|path| path != Path::new("/of/a.jpg")));
        assert_eq!(pasted("  "), [PathBuf::from("  ")]);
        assert_eq!(pasted(""), Vec::<PathBuf>::new());
    }
}

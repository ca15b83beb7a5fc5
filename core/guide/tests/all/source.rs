//! The string literals of a source file, without comments, attributes and tests.

use std::path::{Path, PathBuf};

/// A string literal: its file, its line, and its text as it stands between the quotes.
pub struct Literal {
    pub file: String,
    pub line: usize,
    pub text: String,
    /// What stands before it on its line.
    pub before: String,
}

/// Every file below a folder with this ending.
pub fn files(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let mut found: Vec<_> = entries
        .flat_map(|path| if path.is_dir() { files(&path, ending) } else { vec![path] })
        .filter(|path| path.extension().is_some_and(|found| found == ending))
        .collect();
    found.sort();
    found
}

/// Every literal of the crate's own code.
pub fn literals() -> Vec<Literal> {
    let folder = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/src"));
    let of_file = |path: PathBuf| {
        let text = std::fs::read_to_string(&path).unwrap();
        // Tests stand at the end of a file.
        let code = text.split("#[cfg(test)]").next().unwrap_or_default();
        let file = path.strip_prefix(folder).unwrap().display().to_string();
        of_code(code).into_iter().map(move |(line, text, before)| Literal {
            file: file.clone(),
            line,
            text,
            before,
        })
    };
    files(folder, "rs").into_iter().flat_map(of_file).collect::<Vec<_>>()
}

/// The literals of some code, each with its line and what stands before it on that line.
fn of_code(code: &str) -> Vec<(usize, String, String)> {
    let mut found = Vec::new();
    let (mut rest, mut line, mut start) = (code, 1, code);
    while let Some(sign) = rest.chars().next() {
        let length = if rest.starts_with("//") {
            rest.find('\n').unwrap_or(rest.len())
        } else if rest.starts_with("#[") || rest.starts_with("#![") {
            attribute(rest)
        } else if rest.starts_with("'\"'") || rest.starts_with("'\\\"'") {
            4
        } else if sign == '"' {
            let end = closing(rest);
            let before = &start[..start.len() - rest.len()];
            found.push((line, rest[1..end].to_owned(), before.to_owned()));
            end + 1
        } else {
            sign.len_utf8()
        };
        let (passed, after) = rest.split_at(length.min(rest.len()));
        if let Some(last) = passed.rfind('\n') {
            line += passed.matches('\n').count();
            start = &rest[last + 1..];
        }
        rest = after;
    }
    found
}

/// The length of an attribute with all its brackets, strings left aside.
fn attribute(text: &str) -> usize {
    let (mut depth, mut at) = (0, 0);
    while let Some(sign) = text[at..].chars().next() {
        match sign {
            '[' => depth += 1,
            ']' if depth == 1 => return at + 1,
            ']' => depth -= 1,
            '"' => at += closing(&text[at..]),
            _ => {}
        }
        at += sign.len_utf8();
    }
    text.len()
}

/// Where the literal that begins here ends.
fn closing(text: &str) -> usize {
    let mut escaped = false;
    for (at, sign) in text.char_indices().skip(1) {
        match sign {
            '"' if !escaped => return at,
            '\\' => escaped = !escaped,
            _ => escaped = false,
        }
    }
    text.len()
}

#[test]
fn literals_are_found_and_nothing_else() {
    let code = "//! \"doc\"\n#[error(\"an error [{0}]\")]\nlet a = f(\"one \\\" two\"); // \"no\"\nlet q = '\"'; g(\"three\");\n";
    let found: Vec<_> = of_code(code).into_iter().map(|(line, text, _)| (line, text)).collect();
    assert_eq!(found, [(3, "one \\\" two".to_owned()), (4, "three".to_owned())]);
}

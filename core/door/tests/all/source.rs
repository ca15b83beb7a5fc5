//! What the compiler does not ask of the door: every call returns a result, takes and gives nothing but what all three
//! languages have, and nothing unsafe is written by hand.

use std::fs;
use std::path::Path;

/// Every file of the crate.
pub fn files() -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut folders = vec![Path::new(env!("CARGO_MANIFEST_DIR")).join("src")];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).unwrap().map(Result::unwrap) {
            if entry.file_type().unwrap().is_dir() {
                folders.push(entry.path());
            } else {
                found.push((entry.path().display().to_string(), fs::read_to_string(entry.path()).unwrap()));
            }
        }
    }
    found
}

/// The heads of the functions that are exported, from their first word on.
pub fn exported(text: &str) -> Vec<String> {
    let mut heads = Vec::new();
    for part in text.split("#[uniffi::export").skip(1) {
        // Up to where its item ends: the first line that closes it.
        let item = part.split("\n}").next().unwrap();
        let is_function = item.lines().skip(1).find(|line| !line.starts_with("#[")).is_some_and(is_head);
        for (place, _) in item.match_indices("fn ") {
            let line = item[..place].rsplit('\n').next().unwrap();
            if !is_head(&item[place - line.len()..]) {
                continue;
            }
            let head = item[place - line.len()..].split(['{', ';']).next().unwrap();
            heads.push(head.split_whitespace().collect::<Vec<_>>().join(" "));
            if is_function {
                break;
            }
        }
    }
    heads
}

/// Whether a function begins here.
fn is_head(code: &str) -> bool {
    let before = code.split("fn ").next().unwrap();
    code.contains("fn ")
        && before.split_whitespace().all(|word| ["pub", "async", "const", "extern", "unsafe"].contains(&word))
}

/// What is wrong with the head of an exported function.
fn fault(head: &str) -> Option<&'static str> {
    const NEVER: [&str; 6] = ["Path", "Vec<u8>", "OsStr", "async ", "Duration", "SystemTime"];
    let Some((_, gives)) = head.rsplit_once("->") else { return Some("gives no result") };
    if !gives.contains("Result<") {
        return Some("gives no result");
    }
    NEVER.into_iter().find(|never| head.contains(never))
}

#[test]
fn every_export_gives_a_result_and_only_what_all_languages_have() {
    let heads: Vec<String> = files().iter().flat_map(|(_, text)| exported(text)).collect();
    assert!(heads.len() >= 16, "{heads:?}");
    for head in &heads {
        assert_eq!(fault(head), None, "{head}");
    }
    // It can be broken.
    let planted = |function: &str| {
        let text = format!(
            "#[uniffi::export]\nimpl Door {{\n    /// Asks.\n    {function} {{\n        1\n    }}\n}}\n"
        );
        let alone = format!("#[uniffi::export]\n{function} {{\n    1\n}}\n");
        let [of_object, alone] = [text, alone].map(|text| exported(&text));
        assert_eq!((of_object.len(), &of_object), (1, &alone), "{function}");
        fault(&alone[0])
    };
    assert!(planted("pub fn keep(&self) -> u32").is_some());
    assert!(planted("pub fn keep(&self)").is_some());
    assert!(planted("pub fn file(&self) -> Result<PathBuf>").is_some());
    assert!(planted("pub async fn file(&self) -> Result<String>").is_some());
    assert_eq!(planted("pub fn file(&self) -> Result<String>"), None);
}

#[test]
fn nothing_unsafe_is_written_by_hand() {
    let files = files();
    assert!(files.iter().any(|(file, _)| file.ends_with("door.rs")), "{files:?}");
    for (file, text) in files {
        let code = text.lines().filter(|line| !line.trim_start().starts_with("//"));
        assert!(!code.into_iter().any(|line| line.contains("unsafe")), "{file}");
    }
}

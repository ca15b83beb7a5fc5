//! The names of all screens, out of the code that draws them.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// Where a screen's name is not a literal: the file, and what stands in its place. Their names are found otherwise.
const COMPUTED: [(&str, &str); 3] =
    [("ask.rs", "&name"), ("field/mod.rs", "&name"), ("share/forget.rs", "screen")];

/// Every name that a screen may have.
pub fn all() -> BTreeSet<String> {
    let pages = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/page");
    let mut names = questions();
    for path in files(&pages) {
        let code = fs::read_to_string(&path).unwrap();
        let file = path.strip_prefix(&pages).unwrap().display().to_string();
        for arguments in calls(&code, "Sketch::new(") {
            let name = arguments[2].clone();
            match literal(&name) {
                Some(name) => _ = names.insert(name),
                None => assert!(
                    COMPUTED.contains(&(file.as_str(), name.as_str())),
                    "{file}: {name} is a name that is not looked for"
                ),
            }
        }
        // The screens of the free work are called after their title's message, those of forgetting by the last argument.
        let of = if file.starts_with("field/") { 1 } else { 3 };
        for arguments in calls(&code, " sketch(").into_iter().chain(calls(&code, " gone(")) {
            let Some(name) = arguments.get(of).and_then(|title| literal(title)) else {
                panic!("{file}: {arguments:?} hides a screen's name");
            };
            // A screen about a thing that is gone has the name of the one about the thing.
            if name != "{id}" {
                names.insert(name);
            }
        }
    }
    assert!(names.len() > 80, "{names:?}");
    names
}

/// The screens of the questions.
fn questions() -> BTreeSet<String> {
    let source = include_str!("../../src/ask/mod.rs");
    let names = source.split("fn name(&self)").nth(1).unwrap().split("\n    }\n").next().unwrap();
    let names = names.split("=> \"").skip(1).map(|rest| rest.split('"').next().unwrap());
    names.map(|name| format!("ask-{name}")).collect()
}

fn files(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    entries.flat_map(|path| if path.is_dir() { files(&path) } else { vec![path] }).collect()
}

/// The arguments of every call of a function; its definition is no call.
fn calls(code: &str, function: &str) -> Vec<Vec<String>> {
    let is_call = |at: &usize| !code[..*at].ends_with("fn");
    let places = code.match_indices(function).map(|(at, _)| at).filter(is_call);
    places.map(|at| arguments(&code[at + function.len()..])).collect()
}

/// What stands between commas up to the bracket that closes.
fn arguments(code: &str) -> Vec<String> {
    let (mut depth, mut found) = (0, vec![String::new()]);
    for sign in code.chars() {
        match sign {
            '(' | '[' | '{' => depth += 1,
            ')' | ']' | '}' if depth == 0 => break,
            ')' | ']' | '}' => depth -= 1,
            ',' if depth == 0 => {
                found.push(String::new());
                continue;
            }
            _ => {}
        }
        found.last_mut().unwrap().push(sign);
    }
    found.into_iter().map(|argument| argument.trim().to_owned()).collect()
}

/// The text of the first literal in an argument, up to a dot: a message's attribute is no name of its own.
fn literal(argument: &str) -> Option<String> {
    let text = argument.split('"').nth(1)?;
    text.split('.').next().map(str::to_owned)
}

#[test]
fn arguments_are_found() {
    let code = "let a = b(); x = sketch(scene, &Phrase::new(\"one.gone\").phrase(\"part\", f(1, 2)), c); fn sketch(x)";
    let found = calls(code, " sketch(");
    assert_eq!(found.len(), 1);
    assert_eq!(literal(&found[0][1]), Some("one".to_owned()));
    assert_eq!(literal(&found[0][2]), None);
}

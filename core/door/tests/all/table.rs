//! One table: every kind of block, mark, need and deed of the guide, and every member of its records, has its place in
//! the door and in the bindings of each language. A kind that is added to the guide is missed here by its name.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// What a file of the guide says of its plain data: names of records and enums, with their members.
fn items(text: &str) -> BTreeMap<String, Vec<String>> {
    let mut found = BTreeMap::new();
    let mut open: Option<(String, bool, Vec<String>)> = None;
    for line in text.lines() {
        if let Some((name, is_record, members)) = &mut open {
            if line == "}" {
                let (name, members) = (std::mem::take(name), std::mem::take(members));
                found.insert(name, members);
                open = None;
                continue;
            }
            // Members stand four spaces in, those of a variant eight.
            let Some(line) = line.strip_prefix("    ") else { continue };
            let word: String =
                line.chars().take_while(|sign| sign.is_alphanumeric() || *sign == '_').collect();
            if *is_record {
                if let Some(line) = line.strip_prefix("pub ") {
                    members.push(line.split(':').next().unwrap().to_owned());
                }
            } else if word.starts_with(|sign: char| sign.is_ascii_uppercase()) {
                members.push(word);
            }
        } else {
            for (kind, is_record) in [("pub struct ", true), ("pub enum ", false)] {
                if let Some(rest) = line.strip_prefix(kind)
                    && let Some(name) = rest.strip_suffix(" {")
                    && !name.contains('<')
                {
                    open = Some((name.to_owned(), is_record, Vec::new()));
                }
            }
        }
    }
    found
}

fn of_guide() -> BTreeMap<String, Vec<String>> {
    let guide = Path::new(env!("CARGO_MANIFEST_DIR")).join("../guide/src");
    let mut all = items(&fs::read_to_string(guide.join("deed.rs")).unwrap());
    for entry in fs::read_dir(guide.join("screen")).unwrap() {
        all.extend(items(&fs::read_to_string(entry.unwrap().path()).unwrap()));
    }
    // How a key says what it asks for: the shells get it as a `Need`.
    all.remove("FileAsked");
    all
}

fn binding(file: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(file)).unwrap()
}

/// `right_to_left` as the phones' languages write it.
fn camel(name: &str) -> String {
    let mut words = name.split('_');
    let first = words.next().unwrap_or_default().to_owned();
    words.fold(first, |all, word| {
        let mut signs = word.chars();
        let head = signs.next().map(|sign| sign.to_ascii_uppercase());
        all + &head.into_iter().chain(signs).collect::<String>()
    })
}

/// `FileToRead` as Swift writes a case.
fn small(name: &str) -> String {
    let mut signs = name.chars();
    signs.next().map(|sign| sign.to_ascii_lowercase()).into_iter().chain(signs).collect()
}

/// `FileToRead` as Kotlin writes an entry.
fn loud(name: &str) -> String {
    let mut told = String::new();
    for (place, sign) in name.char_indices() {
        if place > 0 && sign.is_ascii_uppercase() {
            told.push('_');
        }
        told.push(sign.to_ascii_uppercase());
    }
    told
}

/// The text of one type in a file of bindings, from its head on.
fn of_type<'a>(text: &'a str, heads: &[String]) -> Option<&'a str> {
    let begin = heads.iter().find_map(|head| text.find(head.as_str()))?;
    let rest = text.get(begin..)?;
    Some(rest.find("\n}\n").map_or(rest, |end| rest.get(..end).unwrap_or(rest)))
}

/// What is missing of the guide's plain data in all three places.
fn missing(guide: &BTreeMap<String, Vec<String>>, door: &str, kotlin: &str, swift: &str) -> Vec<String> {
    let mut missing = Vec::new();
    for (name, members) in guide {
        let is_enum = members.iter().all(|member| member.starts_with(|sign: char| sign.is_ascii_uppercase()));
        let in_door = of_type(door, &[format!("pub struct {name} {{"), format!("pub enum {name} {{")]);
        let in_kotlin = of_type(
            kotlin,
            &[
                format!("data class {name} ("),
                format!("sealed class {name} "),
                format!("sealed class {name}:"),
                format!("sealed class {name} {{"),
                format!("enum class {name} {{"),
            ],
        );
        let in_swift = of_type(swift, &[format!("public struct {name}:"), format!("public enum {name}:")]);
        for (place, text) in [("door", in_door), ("kotlin", in_kotlin), ("swift", in_swift)] {
            let Some(text) = text else {
                missing.push(format!("{place} lacks {name}"));
                continue;
            };
            for member in members {
                let wanted: Vec<String> = match (place, is_enum) {
                    ("door", true) => {
                        ["(", ",", " {"].iter().map(|end| format!("    {member}{end}")).collect()
                    }
                    ("door", false) => vec![format!("pub {member}: ")],
                    ("kotlin", true) => {
                        let entry = loud(member);
                        let mut wanted: Vec<String> =
                            [",", ";"].iter().map(|end| format!("    {entry}{end}")).collect();
                        wanted.extend([format!("class {member}("), format!("object {member} ")]);
                        wanted
                    }
                    ("kotlin", false) => vec![format!("val `{}`:", camel(member))],
                    (_, true) => {
                        let case = small(member);
                        ["\n", "("]
                            .iter()
                            .flat_map(|end| [format!("case {case}{end}"), format!("case `{case}`{end}")])
                            .collect()
                    }
                    (_, false) => {
                        vec![format!("let {}:", camel(member)), format!("let `{}`:", camel(member))]
                    }
                };
                if !wanted.iter().any(|wanted| text.contains(wanted.as_str())) {
                    missing.push(format!("{place} lacks {name}.{member}"));
                }
            }
        }
    }
    missing
}

#[test]
fn every_kind_of_the_guide_has_its_place_in_the_door_and_in_each_language() {
    let mut guide = of_guide();
    assert_eq!(guide.get("Block").map(Vec::len), Some(14), "{:?}", guide.get("Block"));
    assert!(guide.len() > 35, "{}", guide.len());
    let door: String = crate::source::files().into_iter().map(|(_, text)| text).collect();
    let kotlin = binding("android/core/src/main/kotlin/legwork/door/door.kt");
    let swift = binding("ios/Core/Sources/Door/Door.swift");
    assert_eq!(missing(&guide, &door, &kotlin, &swift), Vec::<String>::new());
    // It can be broken: a kind of block and a member that nobody has.
    guide.get_mut("Block").unwrap().push("Timetable".into());
    guide.get_mut("RowEntry").unwrap().push("rainfall".into());
    assert_eq!(missing(&guide, &door, &kotlin, &swift).len(), 6);
}

//! Everything that people read is a message: none is missing, none is written twice, no sentence stands in code.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use crate::source::{files, literals};
use fluent_bundle::{FluentBundle, FluentResource};
use telling::words::{Figures, Language};
use unic_langid::LanguageIdentifier;

/// Sentences that stand in code all the same, and why they may.
const ALLOWED: [(&str, &str); 5] = [
    ("no survey is open", "an error of this crate: a fault of a shell, not of its user"),
    ("the long work broke off", "an error for logs: a fault of this release"),
    ("no thread for the long work", "an error for logs: the device has no thread left"),
    ("long work", "the name of a thread, for whoever debugs"),
    ("2.0 bonded", "a version as the standard and the adapters write it"),
];

fn english() -> Language {
    guide::english(Figures::default())
}

pub fn ftl_files() -> Vec<std::path::PathBuf> {
    let folder = |folder: &str| files(&Path::new(env!("CARGO_MANIFEST_DIR")).join(folder), "ftl");
    [folder("words/en"), folder("../telling/words/en")].concat()
}

/// Every message of the guide's and the survey's files.
fn messages() -> BTreeSet<String> {
    let is_id = |id: &str| id.starts_with(|sign: char| sign.is_ascii_lowercase());
    let of_file = |path| {
        let text = std::fs::read_to_string(path).unwrap();
        let ids = text.lines().filter_map(|line| line.split_once(" =")).map(|(id, _)| id.to_owned());
        ids.filter(|id| is_id(id)).collect::<Vec<_>>()
    };
    ftl_files().into_iter().flat_map(of_file).collect()
}

#[test]
fn every_file_of_words_can_be_read_and_no_message_stands_twice() {
    let mut bundle = FluentBundle::new(vec!["en".parse::<LanguageIdentifier>().unwrap()]);
    let found = ftl_files();
    assert!(found.len() >= 15, "{found:?}");
    for path in found {
        let text = std::fs::read_to_string(&path).unwrap();
        let resource = FluentResource::try_new(text)
            .unwrap_or_else(|(_, errors)| panic!("{}: {errors:?}", path.display()));
        bundle.add_resource(resource).unwrap_or_else(|errors| panic!("{}: {errors:?}", path.display()));
    }
}

#[test]
fn every_file_of_words_is_spoken() {
    let language = english();
    for id in messages() {
        // A message may hold attributes only.
        let known =
            language.knows(&id) || ["title", "about"].iter().any(|of| language.knows(&format!("{id}.{of}")));
        assert!(known, "{id} is in no file that the guide reads");
    }
}

#[test]
fn every_message_that_the_code_names_is_there() {
    let (language, messages) = (english(), messages());
    let mut seen = 0;
    for literal in literals() {
        let place = format!("{}:{}", literal.file, literal.line);
        if literal.before.ends_with("Phrase::new(") || literal.before.ends_with("picture-") {
            assert!(language.knows(&literal.text), "{place} names {}", literal.text);
            seen += 1;
        } else if literal.before.ends_with("Phrase::new(format!(") {
            let beginning = literal.text.split('{').next().unwrap();
            let begins = |id: &String| id.starts_with(beginning);
            let own = !beginning.is_empty() && messages.iter().any(begins);
            // What begins with a value is the name of something that has messages of its own.
            assert!(own || literal.text.starts_with('{'), "{place} names {}", literal.text);
            seen += 1;
        } else if ["picture-", "plain-", "take-photo-", "overview-"]
            .iter()
            .any(|of| literal.text.starts_with(of))
        {
            let is_id = !literal.text.contains('{');
            assert!(!is_id || language.knows(&literal.text), "{place} names {}", literal.text);
            seen += 1;
        }
    }
    assert!(seen > 150, "{seen}");
}

#[test]
fn every_question_has_a_title_and_says_what_it_asks() {
    let names = guide::screen_names();
    let names: Vec<_> = names.iter().filter_map(|name| name.strip_prefix("ask-")).collect();
    assert!(names.len() >= 29, "{names:?}");
    let language = english();
    for name in names {
        for id in [format!("ask-{name}"), format!("ask-{name}.title")] {
            assert!(language.knows(&id), "{id}");
        }
    }
}

/// A sentence has a space and, placeholders left aside, a word of small letters.
fn is_sentence(text: &str) -> bool {
    let mut plain = String::new();
    let mut depth = 0;
    for sign in text.chars() {
        match sign {
            '{' => depth += 1,
            '}' => depth -= 1,
            _ if depth == 0 => plain.push(sign),
            _ => {}
        }
    }
    let word = |word: &str| word.len() > 1 && word.chars().all(|sign| sign.is_lowercase() || sign == ',');
    plain.trim().contains(' ') && plain.split_whitespace().any(word)
}

#[test]
fn no_sentence_for_a_user_stands_in_code() {
    let mut found: BTreeMap<String, String> = BTreeMap::new();
    for literal in literals() {
        let reason = ALLOWED.iter().any(|(text, _)| *text == literal.text);
        if is_sentence(&literal.text) && !reason {
            found.insert(format!("{}:{}", literal.file, literal.line), literal.text);
        }
    }
    assert!(found.is_empty(), "{found:#?}");
    for (text, _) in ALLOWED {
        assert!(literals().iter().any(|literal| literal.text == text), "no longer there: {text}");
    }
}

/// Forms that no sentence uses, and what stands in their place: `DEVELOPERS.md`, “The words”.
const NEVER: [(&str, &str); 34] = [
    ("bypass", "by-pass"),
    ("toward ", "towards"),
    ("color", "colour"),
    ("gray", "grey"),
    ("center", "centre"),
    ("fiber", "fibre"),
    ("analog ", "analogue"),
    ("license,", "licence, where it is a thing"),
    ("a cable run", "cable"),
    ("cable runs", "cables"),
    ("run of coax", "coax cable"),
    ("screw plug", "screw connector"),
    ("bad plug", "bad connector"),
    ("poor plug", "poor connector"),
    ("the plugs ", "the connectors"),
    ("its print", "its label"),
    ("the print says", "the label says"),
    ("without a tag", "a name: every thing has one"),
    ("well formed", "what is wrong, and what to do"),
    ("well-formed", "what is wrong, and what to do"),
    (" anew", "again"),
    ("tells of", "says, shows, describes"),
    ("of which nobody", "that nobody"),
    ("of which nothing", "about which nothing"),
    ("nobody knows where", "whose far end is not known"),
    ("weighed", "considered, tried"),
    ("hangs on", "depends on; is fed from"),
    ("hang on", "depend on; be fed from"),
    ("look whether", "check whether"),
    ("look which", "check which"),
    ("look what", "see what"),
    ("holds dc back", "blocks DC"),
    ("hold dc back", "blocks DC"),
    ("shall ", "should, will"),
];

/// What a user may read of a file of words, line by line: no comments, no ids, none of Fluent's own literals.
fn sentences(path: &Path) -> Vec<(usize, String, String)> {
    let text = std::fs::read_to_string(path).unwrap();
    let (mut id, mut found) = (String::new(), Vec::new());
    for (number, line) in text.lines().enumerate() {
        if line.starts_with('#') {
            continue;
        }
        let is_id = |id: &str| {
            !id.is_empty() && id.bytes().all(|sign| sign.is_ascii_alphanumeric() || b"-_".contains(&sign))
        };
        let said = match line.split_once(" =") {
            Some((own, said)) if is_id(own) => {
                own.clone_into(&mut id);
                said
            }
            Some((own, said)) if own.trim_start().starts_with('.') => said,
            _ => line,
        };
        found.push((number + 1, id.clone(), without_code(said)));
    }
    found
}

/// A line without what Fluent works out: placeables, selectors, the names of variants.
fn without_code(said: &str) -> String {
    let mut plain = String::new();
    let mut rest = said;
    while let Some((before, after)) = rest.split_once('{') {
        plain.push_str(before);
        // A placeable that ends on a later line holds nothing but its selector here.
        rest = after.split_once('}').map_or("", |(_, after)| after);
    }
    plain.push_str(rest);
    let variant = plain.trim_start();
    match variant.strip_prefix("*[").or(variant.strip_prefix('[')).and_then(|line| line.split_once(']')) {
        Some((_, said)) => said.to_owned(),
        None => plain,
    }
}

#[test]
fn one_word_a_thing_and_one_english() {
    let folder = |folder: &str| files(&Path::new(env!("CARGO_MANIFEST_DIR")).join(folder), "ftl");
    let all = [ftl_files(), folder("../desk/words/en"), folder("../page/words/en")].concat();
    let mut wrong = Vec::new();
    for path in all {
        for (line, id, said) in sentences(&path) {
            let place = format!("{}:{line} {id}", path.file_name().unwrap().to_string_lossy());
            let lower = format!("{} ", said.to_lowercase());
            for (never, instead) in NEVER {
                if lower.contains(never) {
                    wrong.push(format!("{place}: “{never}”, say: {instead}"));
                }
            }
            // What a sheet should have said is quoted as it is typed there.
            let quotes_signs = id.starts_with("sheet-") || id == "error-folder-name";
            if !quotes_signs && (said.contains('"') || said.contains('\'')) {
                wrong.push(format!("{place}: a straight quotation mark in {said}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

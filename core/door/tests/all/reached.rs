//! What no compiler says of the records that come across: that the guide has none which no call of the door leads to.

use std::collections::BTreeMap;

/// The door's copy of the guide's records, a line each (`build.rs`).
const SHOWN: &str = include_str!(concat!(env!("OUT_DIR"), "/shown.rs"));

/// The words of code: what is said in quotes is none.
fn words(code: &str) -> Vec<&str> {
    let code = code.split('"').step_by(2);
    code.flat_map(|code| code.split(|sign: char| !sign.is_alphanumeric()))
        .filter(|word| !word.is_empty())
        .collect()
}

/// The types of the guide that no call leads to.
fn unreached(shown: &str, calls: &[String]) -> Vec<String> {
    let items: Vec<Vec<&str>> = shown.lines().map(words).filter(|words| !words.is_empty()).collect();
    let name = |words: &[&str]| {
        let head = words.windows(2).find(|pair| ["struct", "enum"].contains(&pair[0])).unwrap();
        head[1].to_owned()
    };
    let mut waiting: BTreeMap<String, Vec<&str>> =
        items.into_iter().map(|words| (name(&words), words)).collect();
    let mut ways: Vec<&str> = calls.iter().flat_map(|call| words(call)).collect();
    while let Some(way) = ways.pop() {
        ways.extend(waiting.remove(way).unwrap_or_default());
    }
    waiting.into_keys().collect()
}

#[test]
fn every_record_that_comes_across_is_reached_by_a_call() {
    let shown = SHOWN.replace("\\\"", "'");
    let calls: Vec<String> =
        crate::source::files().iter().flat_map(|(_, text)| crate::source::exported(text)).collect();
    assert_eq!(unreached(&shown, &calls), Vec::<String>::new());
    // It can be broken: by a record that nothing has, and by a door without its deeds.
    let more = format!("{shown}\n#[uniffi::remote(Record)] pub struct Rainfall {{ pub said : Screen }}");
    assert_eq!(unreached(&more, &calls), ["Rainfall"]);
    let without: Vec<String> = calls.into_iter().filter(|call| !call.contains("Deed")).collect();
    assert_eq!(unreached(&shown, &without), ["Deed"]);
}

//! Which other lists may be chosen, what each takes and what differs with it: said alike by all four, in the figures that its own
//! forecast gives.

use advice::worklist::OtherList;
use guide::screen::RowEntry;
use serde_json::Value;

use super::said::{Said, plain, rows, text, within};

pub(super) fn broken(said: &Said) -> Vec<String> {
    let json = said.json.worklist["others"].as_array().unwrap();
    let in_json: Vec<_> = json.iter().map(|other| told(&other["what"], &other["differs"])).collect();
    let mut broken = Vec::new();
    if json.len() != said.list.others.len() {
        broken.push(format!("others: the JSON has {} of {}", json.len(), said.list.others.len()));
    }
    let of_list = |row: &&RowEntry| row.key.as_deref().is_some_and(|key| key.starts_with("list-without"));
    let screen: Vec<_> = rows(&said.screens.work[0])
        .filter(of_list)
        .map(|row| (plain(&row.head), plain(&row.remark)))
        .collect();
    if screen != in_json {
        broken.push(format!("others: the screen {screen:?}, the JSON {in_json:?}"));
    }
    let report = in_report(said);
    if report != in_json {
        broken.push(format!("others: the report {report:?}, the JSON {in_json:?}"));
    }
    let words = plain(&said.words.worklist);
    for (other, json) in said.list.others.iter().zip(json) {
        broken.extend(in_words(said, &words, other, json));
        broken.extend(figures(said, other, json));
    }
    broken
}

/// The name of a list, and all that differs with it.
fn told(name: &Value, differs: &Value) -> (String, String) {
    let differs: Vec<_> = differs.as_array().unwrap().iter().filter_map(Value::as_str).collect();
    (plain(name.as_str().unwrap()), plain(&differs.join(" ")))
}

/// The rows of the report's table.
fn in_report(said: &Said) -> Vec<(String, String)> {
    let page = said.report.root_element();
    let heading = plain(&said.say(&phrase::Phrase::new("other-lists-caption")));
    let tables = within(page, "section[aria-labelledby=work] table").into_iter();
    let table = tables.filter(|table| within(*table, "caption").into_iter().any(|one| text(one) == heading));
    let rows = table.flat_map(|table| within(table, "tbody tr"));
    rows.map(|row| {
        let name = within(row, "th").into_iter().map(text).collect::<String>();
        let cells = within(row, "td");
        let differs = cells.last().map(|cell| within(*cell, "li").into_iter().map(text).collect::<Vec<_>>());
        (name, differs.unwrap_or_default().join(" "))
    })
    .collect()
}

/// The command says each sentence of it, and in which words it is asked for.
fn in_words(said: &Said, words: &str, other: &OtherList, json: &Value) -> Vec<String> {
    let sentences = json["differs"].as_array().unwrap().iter().filter_map(Value::as_str).map(plain);
    let head = plain(&format!("{}: {}.", said.say(&other.name()), said.say(&other.takes(&said.survey))));
    let option = match json["without"].as_array().unwrap().first() {
        Some(kind) => format!("--without {}", kind.as_str().unwrap()),
        None => "--without nothing".into(),
    };
    let wanted = sentences.chain([head, option]);
    let missing = wanted.filter(|sentence| !words.contains(sentence.as_str()));
    missing.map(|sentence| format!("others: the command does not say {sentence:?}")).collect()
}

/// What the JSON gives in figures is what its steps sum up to, and what its forecast holds.
fn figures(said: &Said, other: &OtherList, json: &Value) -> Vec<String> {
    let mut broken = Vec::new();
    let steps = json["steps"].as_array().unwrap();
    let minutes: u64 = steps.iter().filter_map(|step| step["minutes"].as_u64()).sum();
    if json["minutes"].as_u64() != Some(minutes) || minutes != other.minutes() {
        broken.push(format!("others: {minutes} minutes are told as {}", json["minutes"]));
    }
    for room in json["when_done"]["rooms"].as_array().unwrap() {
        let Some(down) = room["down_mbps"]["likely"].as_f64() else { continue };
        let tag = room["outlet"]["tag"].as_str().unwrap_or_default();
        let outlet = other.house_when_done.parts.values().find(|part| part.tag.as_deref() == Some(tag));
        let is_so = outlet.is_none_or(|part| (other.when_done.likely_down(part.id) - down).abs() <= 1.0);
        if !is_so {
            broken.push(format!("others: {tag} is told {down}"));
        }
    }
    if said.list.steps.len() == steps.len() && json["differs"].as_array().unwrap().is_empty() {
        broken.push("others: a list from which nothing differs".into());
    }
    broken
}

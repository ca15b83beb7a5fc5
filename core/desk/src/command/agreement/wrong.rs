//! What is wrong: the same findings with the same weight in the same order, and the same to do about each.

use super::said::{Said, plain, rows, text, within};

pub(super) fn broken(said: &Said) -> Vec<String> {
    let json = said.json.findings.as_array().unwrap();
    let of = |field: &str| -> Vec<String> {
        json.iter().map(|finding| plain(finding[field].as_str().unwrap())).collect()
    };
    let (what, to_do, weights) = (of("what"), of("to_do"), of("weight"));
    let mut broken = Vec::new();
    let mut differ = |who: &str, theirs: &[String], ours: &[String]| {
        if theirs != ours {
            broken.push(format!("wrong: {who} says {theirs:?}, the JSON {ours:?}"));
        }
    };
    let on_screen: Vec<_> = said.screens.findings.iter().flat_map(rows).map(|row| plain(&row.head)).collect();
    differ("the screen", &on_screen, &what);
    let severities: Vec<_> = said
        .screens
        .findings
        .iter()
        .flat_map(rows)
        .map(|row| format!("{:?}", row.severity).to_lowercase())
        .collect();
    differ("the screen's weight", &severities, &weights);
    let numbered: Vec<_> = what.iter().enumerate().map(|(at, what)| format!("{}. {what}", at + 1)).collect();
    let in_report = in_report(said);
    let heads: Vec<_> = in_report.iter().map(|told| told.head.clone()).collect();
    differ("the report", &heads, &numbered);
    let weight = |weight: &String| plain(&said.say(&phrase::Phrase::new(format!("weight-{weight}"))));
    let weights_said: Vec<_> = weights.iter().map(weight).collect();
    let in_weights: Vec<_> = in_report.iter().map(|told| told.weight.clone()).collect();
    differ("the report's weight", &in_weights, &weights_said);
    for (told, to_do) in in_report.iter().zip(&to_do).filter(|(told, to_do)| !told.all.contains(*to_do)) {
        broken.push(format!("wrong: the report does not say {to_do:?} at {:?}", told.head));
    }
    broken.extend(in_words(said, &what, &to_do, &weights_said));
    broken
}

/// A finding in the report.
struct InReport {
    head: String,
    weight: String,
    /// All that stands with it.
    all: String,
}

/// The findings of the report; those that read alike but for what and where stand together.
fn in_report(said: &Said) -> Vec<InReport> {
    let articles = within(said.report.root_element(), "section[aria-labelledby=findings] article");
    let told = articles.into_iter().flat_map(|article| {
        let first =
            |selector: &str| within(article, selector).first().map(|one| text(*one)).unwrap_or_default();
        let (weight, all) = (first("dd"), text(article));
        let heads = within(article, "h3").into_iter().map(text);
        heads.map(move |head| InReport { head, weight: weight.clone(), all: all.clone() }).collect::<Vec<_>>()
    });
    told.collect()
}

/// The command's words: each finding by its number, in order, with what to do; and none beyond.
fn in_words(said: &Said, what: &[String], to_do: &[String], weights: &[String]) -> Vec<String> {
    let text = plain(&said.words.findings);
    let mut from = 0;
    let mut broken = Vec::new();
    for (at, ((what, to_do), weight)) in what.iter().zip(to_do).zip(weights).enumerate() {
        for words in [format!("{}. {weight}: {what}", at + 1), to_do.clone()] {
            match text[from..].find(&words) {
                Some(place) => from += place + words.len(),
                None => broken.push(format!("wrong: the command does not say {words:?} in its place")),
            }
        }
    }
    let beyond = format!(" {}. ", what.len() + 1);
    if text[from..].contains(&beyond) {
        broken.push(format!("wrong: the command says more than {} findings", what.len()));
    }
    broken
}

//! Whether TV and modem get what they need, now and when the work is done: the same in the JSON, in words and in the report.

use phrase::Phrase;

use super::said::{Said, plain, texts};

pub(super) fn broken(said: &Said) -> Vec<String> {
    let json = said.json.levels["outlets"].as_array().unwrap();
    let word = |name: &serde_json::Value| {
        let name = name.as_str().unwrap().replace('_', "-");
        plain(&said.say(&Phrase::new(format!("fits-{name}"))))
    };
    let now: Vec<_> = json.iter().map(|outlet| word(&outlet["fits"])).collect();
    let section = "section[aria-labelledby=levels] tbody tr";
    let mut broken = Vec::new();
    let in_report = texts(&said.report, &format!("{section} > td > div > strong"));
    if in_report != now {
        broken.push(format!("levels: the report says {in_report:?}, the JSON {now:?}"));
    }
    let words = plain(&said.words.levels);
    for (outlet, row) in json.iter().zip(texts(&said.report, section)) {
        let known = outlet["down_window"].is_object() && outlet["fits"] != "not_known";
        let name = outlet["outlet"]["tag"].as_str().unwrap_or_default();
        if known && !words.contains(&word(&outlet["fits"])) {
            broken.push(format!("levels: the command does not say that {name} is {}", outlet["fits"]));
        }
        // What is outside afterwards and is not now is said by both.
        let then = &outlet["when_done"]["fits"];
        if then == "outside" && outlet["fits"] != "outside" {
            let outside = word(then);
            if !row.contains(&outside) || !words.contains(&outside) {
                broken.push(format!("levels: nobody says that {name} is outside when all is done"));
            }
        }
    }
    broken
}

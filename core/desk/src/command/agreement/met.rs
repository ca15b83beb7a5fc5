//! Whether a wish is met: the same in the JSON, in the command's words, on the screen and in the report.

use guide::screen::{Block, WordsRole};
use house::naming;
use scraper::Selector;
use serde_json::Value;

use super::said::{Said, plain, rows, text};

pub(super) fn broken(said: &Said) -> Vec<String> {
    let rooms = said.json.forecast["rooms"].as_array().unwrap();
    let mut broken: Vec<_> = rooms.iter().filter_map(|room| of_room(said, room)).collect();
    // The answer in a sentence stands on the screen and in the report, word by word.
    let lead = said.screens.forecast[0].blocks.iter().find_map(|block| match block {
        Block::Words(words) if words.role == WordsRole::Lead => Some(plain(&words.words)),
        _ => None,
    });
    let lead = lead.unwrap_or_default();
    let answer = super::said::texts(&said.report, "h1.answer").join(" ");
    if said.list.as_found.bridge.is_some() && !answer.starts_with(&lead) {
        broken.push(format!("met: the screen leads with {lead:?}, the report with {answer:?}"));
    }
    broken
}

fn of_room(said: &Said, room: &Value) -> Option<String> {
    let json = room["wish_met"].as_str().unwrap_or("not asked");
    let outlet = room["outlet"]["id"].as_str().unwrap();
    let name = said.say(&naming::part(&said.survey, outlet.parse().unwrap()));
    let told = [
        ("words", in_words(&said.words.forecast, &name)),
        ("screen", on_screen(said, outlet)),
        ("report", in_report(said, &name)),
    ];
    let others: Vec<_> = told.into_iter().filter(|(_, met)| met != json).collect();
    (!others.is_empty()).then(|| format!("met: {name}: JSON {json}, others {others:?}"))
}

/// What is met by the words that say so.
fn by_words(text: &str, words: &[(&str, &'static str)]) -> String {
    words.iter().find(|(words, _)| text.contains(words)).map_or("not asked", |(_, met)| met).to_owned()
}

/// What the command says below the title that is the room's name.
fn in_words(text: &str, name: &str) -> String {
    let mut lines = text.lines().skip_while(|line| plain(line) != plain(name));
    if lines.next().is_none() {
        return format!("no room {name}");
    }
    let body: Vec<_> = lines.take_while(|line| line.starts_with(' ')).collect();
    by_words(
        &plain(&body.join(" ")),
        &[
            ("not met yet, as measured", "unlikely"),
            ("met, as measured", "yes"),
            ("met, in nine cases", "yes"),
            ("unlikely to be met", "unlikely"),
            ("likely met", "likely"),
            ("from it: not known", "not_known"),
        ],
    )
}

fn on_screen(said: &Said, outlet: &str) -> String {
    let key = format!("room:{outlet}");
    let row = said.screens.forecast.iter().flat_map(rows).find(|row| row.key.as_deref() == Some(&*key));
    let Some(row) = row else { return "no row".into() };
    by_words(
        &row.remark,
        &[
            ("Not met yet.", "unlikely"),
            ("Likely not met.", "unlikely"),
            ("Likely met.", "likely"),
            ("Met.", "yes"),
            ("Not known yet.", "not_known"),
        ],
    )
}

fn in_report(said: &Said, name: &str) -> String {
    let select = |selector: &str| Selector::parse(selector).unwrap();
    let (row, cell) = (select("section[aria-labelledby=forecast] tbody tr"), select("th, td"));
    let mut rows = said.report.select(&row).map(|row| row.select(&cell).map(text).collect::<Vec<_>>());
    let Some(cells) = rows.find(|cells| cells.first().is_some_and(|first| *first == plain(name))) else {
        return format!("no row {name}");
    };
    match cells[2].as_str() {
        "Not asked" => "not asked".into(),
        "Not known" => "not_known".into(),
        "Likely not" | "Not yet" => "unlikely".into(),
        other => other.to_lowercase(),
    }
}

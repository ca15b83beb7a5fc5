//! What comes next: the same steps in the same order, the same things to get, the same refusals; and that nothing is left
//! is said by all or by none.

use advice::verdict::Lacking;
use guide::Screen;
use guide::screen::{Block, RowEntry, RowsBlock};
use phrase::Phrase;
use serde_json::Value;
use telling::words::{ToldGain, told_gains};

use super::said::{Said, plain, rows, text, texts, within};

/// The most refusals that the screen lists.
const ON_SCREEN: usize = 40;

pub(super) fn broken(said: &Said) -> Vec<String> {
    let json = &said.json.worklist;
    let steps = json["steps"].as_array().unwrap();
    let what: Vec<_> = steps.iter().map(|step| said_of(step, "what")).collect();
    let mut broken = Vec::new();
    let mut differ = |who: &str, theirs: &[String], ours: &[String]| {
        if theirs != ours {
            broken.push(format!("next: {who}: {theirs:?}, the JSON {ours:?}"));
        }
    };
    let number = |at: usize, what: &String| format!("{}. {what}", at + 1);
    let numbered: Vec<_> = what.iter().enumerate().map(|(at, what)| number(at, what)).collect();
    let on_screen: Vec<_> = step_rows(said).map(|row| plain(&row.head)).collect();
    differ("the screen's steps", &on_screen, &numbered);
    let as_steps: Vec<_> =
        what.iter().enumerate().map(|(at, what)| format!("Step {}: {what}", at + 1)).collect();
    differ(
        "the report's steps",
        &texts(&said.report, "section[aria-labelledby=work] li.whole h3"),
        &as_steps,
    );
    let refused = |between: &str| -> Vec<String> {
        let refused = json["refused"].as_array().unwrap().iter();
        refused.map(|one| format!("{}{between}{}", said_of(one, "what"), said_of(one, "why"))).collect()
    };
    let on_screen: Vec<_> = block(said, &said.screens.work[0], "report-refused")
        .into_iter()
        .flat_map(|block| &block.rows)
        .map(|row| plain(&format!("{} {}", row.head, row.remark)))
        .collect();
    let most = refused(" ").into_iter().take(ON_SCREEN).collect::<Vec<_>>();
    differ("the screen's refusals", &on_screen, &most);
    broken.extend(step_by_step(said, steps));
    broken.extend(gains(said, steps));
    broken.extend(failed(said));
    broken.extend(of_list(said, steps, &refused(" ")));
    broken
}

fn said_of(of: &Value, field: &str) -> String {
    plain(of[field].as_str().unwrap_or_default())
}

/// The rows of the steps on the screen.
fn step_rows(said: &Said) -> impl Iterator<Item = &RowEntry> {
    let of_step = |row: &&RowEntry| row.key.as_deref().is_some_and(|key| key.starts_with("step"));
    said.screens.work.iter().flat_map(rows).filter(of_step)
}

/// The rows below a heading.
fn block<'a>(said: &Said, screen: &'a Screen, heading: &str) -> Option<&'a RowsBlock> {
    let heading = said.say(&Phrase::new(heading));
    screen.blocks.iter().find_map(|block| match block {
        Block::Rows(rows) if rows.name == heading => Some(rows),
        _ => None,
    })
}

/// A step in the report.
struct InReport {
    all: String,
    /// The cautions whose letters stand beside it, in full.
    cautions: Vec<String>,
}

/// The steps of the report. A caution stands there once, under a letter.
fn in_report(said: &Said) -> Vec<InReport> {
    let page = said.report.root_element();
    let first = |of, selector: &str| within(of, selector).first().map(|one| text(*one)).unwrap_or_default();
    let lettered: Vec<_> = within(page, "li.caution-lettered")
        .into_iter()
        .map(|caution| (first(caution, "b.letter"), first(caution, "span")))
        .collect();
    let steps = within(page, "section[aria-labelledby=work] li.whole");
    let told = steps.into_iter().map(|step| {
        let letters: Vec<_> = within(step, "b.letter").into_iter().map(text).collect();
        let cautions = lettered.iter().filter(|(letter, _)| letters.contains(letter));
        InReport { all: text(step), cautions: cautions.map(|(_, caution)| caution.clone()).collect() }
    });
    told.collect()
}

/// Each step, by what it says of how, cautions, minutes and what to get.
fn step_by_step(said: &Said, steps: &[Value]) -> Vec<String> {
    let mut broken = Vec::new();
    let words = plain(&said.words.worklist);
    let report = in_report(said);
    let mut from = 0;
    for (at, step) in steps.iter().enumerate() {
        let head = format!("{}. {}", at + 1, said_of(step, "what"));
        match words[from..].find(&head) {
            Some(place) => from += place + head.len(),
            None => broken.push(format!("next: the command does not say {head:?} in its place")),
        }
        let told = report.get(at);
        let article = told.map(|told| told.all.clone()).unwrap_or_default();
        // What reads the same as in an earlier step is told there.
        let earlier = |text: &String| {
            let as_in = |place: &usize| article.contains(&format!("as in step {}.", place + 1));
            (0..at).find(as_in).is_some_and(|place| report[place].all.contains(text))
        };
        for text in ["why", "how", "check", "back"].map(|field| said_of(step, field)) {
            if !article.contains(&text) && !earlier(&text) {
                broken.push(format!("next: the report's step {} does not say {text:?}", at + 1));
            }
            if !words[from..].contains(&text) {
                broken.push(format!("next: the command's step {} does not say {text:?}", at + 1));
            }
        }
        for caution in step["cautions"].as_array().unwrap().iter().filter_map(Value::as_str).map(plain) {
            if !told.is_some_and(|told| told.cautions.contains(&caution)) || !words.contains(&caution) {
                broken.push(format!("next: a caution of step {} is left out: {caution:?}", at + 1));
            }
        }
        for needed in step["needs"].as_array().unwrap() {
            let needed = said_of(needed, "what");
            if !article.contains(&needed) {
                broken.push(format!("next: the report's step {} does not need {needed:?}", at + 1));
            }
        }
    }
    if let (Some(first), Some(screen)) = (steps.first(), &said.screens.step) {
        let spoken = plain(&screen.spoken().join(" "));
        for text in ["what", "why", "how"].map(|field| said_of(first, field)) {
            if !spoken.contains(&text) {
                broken.push(format!("next: the screen of the first step does not say {text:?}"));
            }
        }
    }
    broken
}

/// Whether a step brings any room more: said by the screen, the report and the command.
fn gains(said: &Said, steps: &[Value]) -> Vec<String> {
    let mut broken = Vec::new();
    let words = plain(&said.words.worklist);
    let report = texts(&said.report, "section[aria-labelledby=work] li.whole");
    let rows: Vec<_> = step_rows(said).collect();
    for (at, (step, told)) in said.list.steps.iter().zip(steps).enumerate() {
        let gains = !told_gains(&step.gains).is_empty();
        let none = "No room gets faster by this step.";
        let on_screen = rows.get(at).is_some_and(|row| !row.remark.contains(none));
        let none_in_report = plain(&said.say(&Phrase::new("report-no-gain")));
        let in_report = report.get(at).is_some_and(|article| !article.contains(&none_in_report));
        let head = format!("{}. {}", at + 1, said_of(told, "what"));
        let from = words.find(&head).unwrap_or_default() + head.len();
        let how = words[from..].find(" how ").map_or(words.len(), |end| from + end);
        let in_words = !words[from..how].contains(&said.say(&Phrase::new("desk-gain-none")));
        // The command tells a room that loses where others say that none gains.
        let loses = step.gains.iter().any(|gain| matches!(ToldGain::of(gain), ToldGain::Less(_)));
        if [on_screen, in_report] != [gains; 2] || in_words != (gains || loses) {
            let all = [("screen", on_screen), ("report", in_report), ("words", in_words)];
            broken.push(format!("next: step {} gains: {gains}, others {all:?}", at + 1));
        }
    }
    broken
}

/// The rooms whose tests failed, with what comes next for each: told by all, and named at the handover.
fn failed(said: &Said) -> Vec<String> {
    let json = said.json.worklist["failed"].as_array().unwrap();
    let what: Vec<_> = json.iter().map(|room| said_of(room, "what")).collect();
    let mut broken = Vec::new();
    let words = plain(&said.words.worklist);
    let report = texts(&said.report, "section[aria-labelledby=work] li");
    let handover: Vec<_> = rows(&said.screens.handover).filter_map(|row| row.key.as_deref()).collect();
    for (room, what) in json.iter().zip(&what) {
        let outlet = room["outlet"]["id"].as_str().unwrap();
        let on_screen = said.screens.work.iter().flat_map(rows).any(|row| {
            row.key.as_deref() == Some(&format!("test:{outlet}"))
                || plain(&row.head).contains(what)
                || plain(&row.says).contains(what)
        });
        let told = [
            ("command", words.contains(what)),
            ("report", report.contains(what)),
            ("screen", on_screen),
            ("handover", handover.contains(&format!("test:{outlet}").as_str())),
        ];
        let silent: Vec<_> = told.into_iter().filter(|(_, says)| !says).map(|(who, _)| who).collect();
        if !silent.is_empty() {
            broken.push(format!("next: {silent:?} do not say {what:?}"));
        }
    }
    broken
}

/// The list as a whole.
fn of_list(said: &Said, steps: &[Value], refused: &[String]) -> Vec<String> {
    let mut broken = Vec::new();
    let mut holds = |what: &str, holds: bool| {
        if !holds {
            broken.push(format!("next: {what}"));
        }
    };
    let words = plain(&said.words.worklist);
    let report = texts(&said.report, "section[aria-labelledby=work]").join(" ");
    let answer = texts(&said.report, "h1.answer").join(" ");
    let page_one = texts(&said.report, "section.one").join(" ");
    let work = plain(&said.screens.work[0].spoken().join(" "));
    for refused in refused {
        holds(&format!("the command does not refuse {refused:?}"), words.contains(refused));
    }
    let nothing = "No change was found that is worth the work.";
    let is_empty = steps.is_empty() && said.list.failed.is_empty();
    // Where nothing can be told of any room, nobody says that there is nothing to do.
    let lacking = Lacking::of(&said.survey);
    let is_nothing = is_empty && !lacking.is_of_all();
    let lack = lacking.phrase(&said.survey).filter(|_| is_empty).map(|lack| plain(&said.say(&lack)));
    for (who, text) in
        [("the command", &words), ("the report", &report), ("page one", &page_one), ("the screen", &work)]
    {
        holds(&format!("{who} on whether nothing is left"), text.contains(nothing) == is_nothing);
        holds(&format!("{who} on what is missing"), lack.as_ref().is_none_or(|lack| text.contains(lack)));
    }
    if let Some(first) = steps.first() {
        let on_page_one = texts(&said.report, "ol.first-steps b").into_iter().next();
        holds("the report's first step on page one", on_page_one == Some(said_of(first, "what")));
        let minutes: u64 = steps.iter().filter_map(|step| step["minutes"].as_u64()).sum();
        let are_checks = |name: &str| name.starts_with("check_") || name.starts_with("look_at_");
        let only = steps.iter().all(|step| are_checks(&said_of(step, "change")));
        let told = said.say(
            &Phrase::new(if only { "desk-worklist-checks" } else { "desk-worklist-count" })
                .with("count", phrase::Arg::Count(steps.len() as u64))
                .with("minutes", phrase::Arg::Minutes(minutes)),
        );
        holds("the command's count and minutes", words.contains(&plain(&told)));
        // How many rooms get what they wish afterwards is said word by word by the screen and the report.
        let sentence = |text: &str| {
            text.find("When the whole work list is done").map(|from| {
                let end = text[from..].find('.').map_or(text.len(), |end| from + end);
                text[from..end].to_owned()
            })
        };
        holds("how many rooms get what they wish when all is done", sentence(&work) == sentence(&answer));
    }
    for needed in said.json.worklist["shopping"].as_array().unwrap() {
        let what = said_of(needed, "what");
        holds(&format!("the command does not list {what:?}"), words.contains(&what));
        holds(&format!("the report does not list {what:?}"), report.contains(&what));
        holds(&format!("the screen does not list {what:?}"), work.contains(&what));
    }
    let door = |key: &str| {
        let mut doors = rows(&said.screens.overview);
        doors.find(|row| row.key.as_deref() == Some(key)).map(|row| plain(&row.says)).unwrap_or_default()
    };
    let found = said.json.findings.as_array().unwrap().len();
    let number = |count: usize, none: &str| if count == 0 { none.to_owned() } else { count.to_string() };
    let doors = [
        ("findings", format!("{} found", number(found, "nothing"))),
        ("work", format!("0 done, {} left", number(steps.len(), "none"))),
    ];
    for (key, wanted) in doors {
        holds(&format!("the overview says {:?}, not {wanted:?}", door(key)), door(key) == wanted);
    }
    let left = rows(&said.screens.handover).any(|row| row.key.as_deref() == Some("work"));
    holds("the handover on steps that are left", left != steps.is_empty());
    broken
}

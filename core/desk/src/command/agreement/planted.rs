//! The laws can be broken: what one of the four says otherwise than the others is found, and told of whom.

use guide::Screen;
use guide::screen::{Block, RowEntry};
use houses::change_cases::{FAR, house};
use scraper::Html;
use serde_json::json;

use super::broken;
use super::said::Said;

/// A house with something wrong, something to do, something refused and a wish that is not met.
fn sound() -> Said {
    let rented = house(FAR).without("F1").rented().at("O2").over(house::record::CableKind::FiftyNine, FAR);
    let tv = rented.at("S1").with(|splitter| splitter.rating.legs = 3).outlet("O3", "Den").from("S1", 3);
    let tv = tv.plugged(&[house::record::Plugged::Tv]).level(603.0, 5.0);
    let said = Said::of(&tv.survey());
    assert_eq!(broken(&said), [""; 0]);
    let has = |field: &str| !said.json.worklist[field].as_array().unwrap().is_empty();
    assert!(has("steps") && has("refused") && has("shopping") && !said.list.steps.is_empty());
    said
}

fn rows_of(screen: &mut Screen) -> impl Iterator<Item = &mut RowEntry> {
    let blocks = screen.blocks.iter_mut().filter_map(|block| match block {
        Block::Rows(rows) => Some(&mut rows.rows),
        _ => None,
    });
    blocks.flatten()
}

fn report_with(said: &mut Said, words: &str, others: &str) {
    let page = said.report.html();
    assert!(page.contains(words), "{words}");
    said.report = Html::parse_document(&page.replace(words, others));
}

#[test]
fn whoever_says_otherwise_is_found() {
    type Plant = fn(&mut Said);
    let planted: [(&str, Plant); 20] = [
        ("met: ", |said| said.json.forecast["rooms"][0]["wish_met"] = json!("yes")),
        ("(\"words\"", |said| {
            said.words.forecast = said.words.forecast.replace("unlikely to be met", "likely met");
        }),
        ("(\"screen\"", |said| {
            rows_of(&mut said.screens.forecast[0]).for_each(|row| row.remark = "Met.".into());
        }),
        ("(\"report\"", |said| report_with(said, "<strong>Likely not</strong>", "<strong>Likely</strong>")),
        ("met: the screen leads with", |said| {
            report_with(said, "The one room that was asked about", "A room");
        }),
        ("wrong: ", |said| said.json.findings[0]["what"] = json!("All is well.")),
        ("wrong: the command does not say", |said| {
            said.words.findings = said.words.findings.replacen("1. ", "1. Oh, ", 1);
        }),
        ("wrong: the screen says", |said| {
            rows_of(&mut said.screens.findings[0]).take(1).for_each(|row| row.head = "Another thing.".into());
        }),
        ("wrong: the report says", |said| report_with(said, "1. No entry filter", "1. An entry filter")),
        ("wrong: the report's weight", |said| {
            let grave = said.say(&phrase::Phrase::new("weight-grave"));
            report_with(said, &format!("<dd>{grave}"), "<dd>Good to know");
        }),
        ("next: the screen's steps", |said| {
            let steps = said.screens.work.iter_mut().flat_map(rows_of);
            steps.filter(|row| row.head.starts_with("1. ")).for_each(|row| row.head = "1. Rest.".into());
        }),
        ("next: the report's steps", |said| report_with(said, "Step 1: ", "Step 2: ")),
        ("next: the report's first step", |said| report_with(said, "first-steps", "later-steps")),
        ("next: the command does not refuse", |said| {
            let refused = said.json.worklist["refused"].as_array_mut().unwrap();
            refused[0]["why"] = json!("Because.");
        }),
        ("levels: the report says", |said| said.json.levels["outlets"][0]["fits"] = json!("outside")),
        ("levels: nobody says", |said| {
            said.json.levels["outlets"][0]["when_done"]["fits"] = json!("outside");
        }),
        ("do not say", |said| {
            let outlet = said.json.forecast["rooms"][0]["outlet"].clone();
            said.json.worklist["failed"] = json!([{ "outlet": outlet, "what": "The test there failed." }]);
        }),
        ("next: a caution of step 1", |said| report_with(said, "caution-lettered", "lettered")),
        ("next: the handover", |said| {
            rows_of(&mut said.screens.handover).for_each(|row| row.key = None);
        }),
        ("next: the screen on whether nothing", |said| {
            rows_of(&mut said.screens.work[0])
                .take(1)
                .for_each(|row| row.says = "No change was found that is worth the work.".into());
        }),
    ];
    for (told, plant) in planted {
        let mut said = sound();
        plant(&mut said);
        let found = broken(&said);
        assert!(found.iter().any(|what| what.contains(told)), "{told}: {found:#?}");
    }
}

/// A room that only a new cable reaches, and no entry filter: there are two other lists.
fn with_other_lists() -> Said {
    let two = house(10.0).without("F1").at("S1").with(|splitter| splitter.rating.legs = 3);
    Said::of(&two.open(3).wish("Attic", 400.0).survey())
}

#[test]
fn whoever_tells_of_other_lists_otherwise_is_found() {
    type Plant = fn(&mut Said);
    let planted: [(&str, Plant); 6] = [
        ("others: the screen", |said| {
            let lists = rows_of(&mut said.screens.work[0]);
            lists.filter(|row| row.head.starts_with("With no ")).for_each(|row| row.remark.push('!'));
        }),
        ("others: the report", |said| report_with(said, "Not done: Put", "Done: Put")),
        ("others: the command", |said| {
            said.words.worklist = said.words.worklist.replace("--without heights", "--without new-cable");
        }),
        ("minutes are told", |said| said.json.worklist["others"][0]["minutes"] = json!(1)),
        ("is told 7", |said| {
            let rooms = &mut said.json.worklist["others"][0]["when_done"]["rooms"];
            for room in rooms.as_array_mut().unwrap() {
                room["down_mbps"]["likely"] = json!(7);
            }
        }),
        ("others: the JSON has 0", |said| said.json.worklist["others"] = json!([])),
    ];
    let said = with_other_lists();
    assert_eq!((broken(&said), said.list.others.len()), (Vec::new(), 2));
    for (finds, plant) in planted {
        let mut said = with_other_lists();
        plant(&mut said);
        let found = broken(&said);
        assert!(found.iter().any(|law| law.contains(finds)), "{finds}: {found:?}");
    }
}

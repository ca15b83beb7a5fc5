//! Tables, patterns, search, tags, reports and files without this or that, completion and manual.

use serde_json::{Value, json};

use crate::support::pictures::png;
use crate::support::{Desk, HOUSE, SMALL};

fn small() -> Desk {
    let desk = Desk::new();
    desk.write("small.toml", SMALL);
    desk.done(&["sheet", "small.toml", "s.legwork"]);
    desk
}

/// The records of a table, each as its columns and what stands there.
fn read_table(text: &str) -> Vec<Vec<(String, String)>> {
    assert!(!text.replace("\r\n", "").contains('\r'), "{text}");
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let columns = reader.headers().unwrap().clone();
    let row = |record: Result<csv::StringRecord, csv::Error>| {
        let record = record.unwrap();
        columns.iter().map(str::to_owned).zip(record.iter().map(str::to_owned)).collect()
    };
    reader.records().map(row).collect()
}

fn cell<'a>(row: &'a [(String, String)], column: &str) -> &'a str {
    &row.iter().find(|(name, _)| name == column).unwrap().1
}

#[test]
fn tables_say_in_csv_what_they_say_in_json() {
    let desk = Desk::new();
    desk.write(
        "house.toml",
        format!("{HOUSE}\n[[reading]]\nat = \"O1\"\nlevel = \"-6 dBmV\"\nfrequency = \"603 MHz\"\n"),
    );
    desk.done(&["sheet", "house.toml", "h.legwork"]);
    desk.done(&["set", "h.legwork", "S1", "where", "=HYPERLINK(\"http://x\")"]);
    desk.done(&["note", "h.legwork", "two\nlines, \"said\"", "--on", "S1"]);
    for what in ["parts", "readings", "steps"] {
        let in_json = desk.done(&["table", "h.legwork", what]);
        let ran = desk.run(&["table", "h.legwork", what]);
        assert_eq!(ran.code, 0, "{}", ran.err);
        let rows = read_table(&ran.out);
        assert_eq!(rows.len(), in_json.as_array().unwrap().len(), "{what}");
        assert!(!rows.is_empty(), "{what}");
        for (row, object) in rows.iter().zip(in_json.as_array().unwrap()) {
            assert_eq!(row.len(), object.as_object().unwrap().len());
            for (column, text) in row {
                match &object[column] {
                    Value::Null => assert_eq!(text, "", "{column}"),
                    Value::Number(number) => {
                        assert_eq!(text.parse::<f64>().ok(), number.as_f64(), "{column}");
                    }
                    Value::Bool(flag) => assert_eq!(text, &flag.to_string()),
                    Value::String(said) => {
                        let bare = text.strip_prefix('\'').unwrap_or(text);
                        assert_eq!(bare, said.replace('\t', " "), "{column}");
                    }
                    Value::Array(several) => assert!(!several.is_empty() && !text.is_empty(), "{column}"),
                    Value::Object(_) => panic!("{column} is no cell"),
                }
                // Figures may be below nothing; no text begins as a formula does.
                let is_figure = text.parse::<f64>().is_ok();
                assert!(is_figure || !text.starts_with(['=', '+', '-', '@']), "{column}: {text}");
            }
        }
    }
    let rows = read_table(&desk.run(&["table", "h.legwork", "parts"]).out);
    let splitter = rows.iter().find(|row| cell(row, "tag") == "S1").unwrap();
    assert_eq!(cell(splitter, "where"), "'=HYPERLINK(\"http://x\")");
    assert_eq!(cell(splitter, "notes"), "two\nlines, \"said\"");
    let reading = &read_table(&desk.run(&["table", "h.legwork", "readings"]).out)[0];
    assert_eq!((cell(reading, "at"), cell(reading, "dbmv"), cell(reading, "mhz")), ("O1", "-6.0", "603.0"));
    // The steps are those of the work list.
    let list = desk.done(&["worklist", "h.legwork"]);
    let steps = desk.done(&["table", "h.legwork", "steps"]);
    let changes = |steps: &Value| {
        steps.as_array().unwrap().iter().map(|step| step["change"].clone()).collect::<Vec<_>>()
    };
    assert_eq!(changes(&steps), changes(&list["steps"]));

    let written = desk.done(&["table", "h.legwork", "parts", "parts.csv"]);
    assert_eq!(written, json!({"file": "parts.csv", "rows": rows.len()}));
    let file = std::fs::read_to_string(desk.work().join("parts.csv")).unwrap();
    assert_eq!(read_table(&file), rows);
    assert!(file.lines().count() > rows.len() && file.contains("\r\n"), "RFC 4180, 2: lines end in CRLF");
    let err = desk.refused(3, "exists", &["table", "h.legwork", "parts", "parts.csv"]);
    assert!(err.contains("--replace"), "{err}");
    desk.done(&["table", "h.legwork", "parts", "parts.csv", "--replace"]);
}

#[test]
fn an_empty_table_has_its_columns() {
    let desk = small();
    let ran = desk.run(&["table", "s.legwork", "readings"]);
    assert!(ran.out.starts_with("at,room,port,what,mhz,"), "{}", ran.out);
    assert_eq!(ran.out.lines().count(), 1);
    assert_eq!(desk.done(&["table", "s.legwork", "readings"]), json!([]));
}

#[test]
fn a_pattern_takes_the_wiring_along_and_nothing_of_who_lives_there() {
    let desk = Desk::new();
    let more = "[survey]\nname = \"Mill House 3\"\nplace = \"Nowhere Lane 1\"\nnote = \"The key is below the pot.\"\n";
    let sheet = SMALL.replace("cable = \"6\"\nlength = \"5 m measured\"", "run_tag = \"R1\"\ncable = \"6\"\nlength = \"5 m measured\"\nplugged = [\"modem\"]\nnote = \"Behind the bed.\"");
    let reading = "[[reading]]\nat = \"O2\"\nthroughput = \"900 Mb/s\"\n";
    desk.write("flat.toml", format!("{more}{sheet}{reading}"));
    desk.done(&["sheet", "flat.toml", "flat.legwork"]);
    desk.write("a.png", png(40, 30, 1));
    desk.done(&["photo", "add", "flat.legwork", "a.png", "--of", "S1"]);
    desk.done(&["authors", "flat.legwork", "--me", "Somebody"]);
    let made = desk.done(&["surveys", "pattern", "flat.legwork", "Mill House 4"]);
    let next = made["survey"].as_str().unwrap();
    assert_eq!(next, "Mill House 4.legwork");

    let bare = |survey: &str| {
        let parts = desk.done(&["table", survey, "parts"]);
        let kept = [
            "tag",
            "kind",
            "label",
            "room",
            "from",
            "port",
            "run_tag",
            "cable",
            "length_metres",
            "legs",
            "loose",
        ];
        let row = |part: &Value| kept.iter().map(|column| part[column].clone()).collect::<Vec<_>>();
        parts.as_array().unwrap().iter().map(row).collect::<Vec<_>>()
    };
    assert_eq!(bare("flat.legwork"), bare(next));
    let parts = desk.done(&["table", next, "parts"]);
    for part in parts.as_array().unwrap() {
        for gone in ["plugged", "adapter", "bridge", "notes"] {
            assert_eq!(part[gone], Value::Null, "{gone}");
        }
    }
    assert_eq!(desk.done(&["table", next, "readings"]), json!([]));
    assert_eq!(desk.done(&["photo", "list", next]), json!([]));
    assert_eq!(desk.done(&["note", next]), json!([]));
    // Nothing of the first is in its facts: no text, no id.
    let facts = std::fs::read(desk.work().join(next).join("survey.db")).unwrap();
    for said in ["Nowhere", "below the pot", "Behind the bed", "Somebody", "Mill House 3"] {
        assert!(!facts.windows(said.len()).any(|bytes| bytes == said.as_bytes()), "{said}");
    }
    let ids = |survey: &str| -> Vec<Value> {
        let parts = desk.done(&["table", survey, "parts"]);
        parts.as_array().unwrap().iter().map(|part| part["id"].clone()).collect()
    };
    assert!(ids("flat.legwork").iter().all(|id| !ids(next).contains(id)), "every thing is a new one");
    desk.refused(3, "exists", &["surveys", "pattern", "flat.legwork", "Mill House 4"]);
    desk.refused(3, "survey", &["surveys", "pattern", "flat.legwork", "a/b"]);
}

#[test]
fn a_word_is_found_in_all_surveys_of_a_folder() {
    let desk = small();
    desk.done(&["set", "s.legwork", "survey", "place", "Nowhere Lane 1", "name", "Mill House"]);
    desk.done(&["set", "s.legwork", "S1", "label", "2-WAY 5-1675MHz", "where", "behind the shelf"]);
    desk.done(&["note", "s.legwork", "The shelf is heavy.", "--on", "O2"]);
    desk.done(&["surveys", "copy", "s.legwork", "other"]);
    desk.done(&["surveys", "aside", "other.legwork"]);
    let found = |word: &str| {
        let answer = desk.done(&["search", word]);
        let hits = answer["found"].as_array().unwrap().clone();
        let told = |hit: &Value| {
            (
                hit["survey"].as_str().unwrap().to_owned(),
                hit["thing"]["tag"].clone(),
                hit["field"].as_str().unwrap().to_owned(),
            )
        };
        hits.iter().map(told).collect::<Vec<_>>()
    };
    let (here, there) = ("s.legwork".to_owned(), "set-aside/other.legwork".to_owned());
    let expected = [
        (here.clone(), json!("S1"), "where".to_owned()),
        (here.clone(), json!("O2"), "text".to_owned()),
        (there.clone(), json!("S1"), "where".to_owned()),
        (there.clone(), json!("O2"), "text".to_owned()),
    ];
    assert_eq!(found("SHELF"), expected);
    assert_eq!(found("nowhere lane").len(), 2);
    assert_eq!(found("5-1675mhz").len(), 2);
    assert_eq!(found("office").len(), 2);
    assert_eq!(found("quux"), []);
    // A removed thing is not found; a folder that is no survey is named.
    desk.done(&["remove", "s.legwork", "S1", "--yes"]);
    assert_eq!(found("behind the").len(), 1);
    std::fs::create_dir(desk.work().join("broken.legwork")).unwrap();
    let answer = desk.done(&["search", "shelf"]);
    assert_eq!(answer["not_read"][0]["survey"], "broken.legwork");
    let told = desk.run(&["search", "shelf"]).out;
    assert!(told.contains("3 places") && told.contains("where it sits: behind the shelf"), "{told}");
    desk.refused(3, "thing", &["search", "  "]);
    desk.refused(1, "file", &["search", "x", "none"]);
}

#[test]
fn a_report_says_nothing_of_what_it_is_to_leave_out() {
    let desk = small();
    desk.done(&["set", "s.legwork", "survey", "place", "Nowhere Lane 1", "name", "Mill House"]);
    desk.done(&["authors", "s.legwork", "--me", "Somebody"]);
    desk.done(&["note", "s.legwork", "The hatch sticks.", "--on", "S1"]);
    desk.done(&["set", "s.legwork", "S1", "where", "behind the shelf"]);
    let read = |name: &str| std::fs::read_to_string(desk.work().join(name)).unwrap();
    assert_eq!(desk.done(&["report", "s.legwork", "whole.html"])["left_out"], json!([]));
    let whole = read("whole.html");
    let all = ["Nowhere Lane", "Mill House", "Somebody", "hatch sticks", "behind the shelf"];
    for said in all {
        assert!(whole.contains(said), "{said}");
    }
    let without = [
        "report",
        "s.legwork",
        "bare.html",
        "--without",
        "owner",
        "--without",
        "notes",
        "--without",
        "places",
    ];
    assert_eq!(desk.done(&without)["left_out"], json!(["notes", "owner", "places"]));
    let bare = read("bare.html");
    for said in all {
        assert!(!bare.contains(said), "{said}");
    }
    assert!(bare.contains("S1") && bare.contains("Office"));
}

/// Alone it leads nowhere, holds one section, and says what to get as the work list does.
#[test]
fn one_page_of_the_report_stands_alone() {
    let desk = small();
    let written = desk.done(&["report", "s.legwork", "one.html", "--one-page"]);
    assert_eq!(written["one_page"], true);
    let page = std::fs::read_to_string(desk.work().join("one.html")).unwrap();
    assert!(!page.contains("href=\"#"), "a link to what is not there");
    assert_eq!(page.matches("<section class=\"sheet").count(), 1);
    let to_get = desk.done(&["worklist", "s.legwork"])["shopping"].as_array().unwrap().len();
    assert_eq!(page.contains("What to get"), to_get > 0);
    let refused = desk.run(&["report", "s.legwork", "one.html", "--one-page"]);
    assert_ne!(refused.code, 0, "it is there already");
}

#[test]
fn a_file_without_a_report_is_packed_at_once_and_read_as_any_other() {
    let desk = small();
    desk.write("a.png", png(40, 30, 1));
    desk.done(&["photo", "add", "s.legwork", "a.png"]);
    desk.done(&["pack", "s.legwork", "whole.lwk"]);
    let packed = desk.done(&["pack", "s.legwork", "bare.lwk", "--no-report"]);
    assert_eq!(packed["photos"], 1);
    let bytes = |name: &str| std::fs::read(desk.work().join(name)).unwrap();
    let has_report = |name: &str| bytes(name).windows(11).any(|window| window == b"report.html");
    assert!(has_report("whole.lwk") && !has_report("bare.lwk"));
    let taken = desk.done(&["take", "bare.lwk", "taken.legwork"]);
    assert_eq!(taken["new_survey"], true);
    assert_eq!(desk.done(&["photo", "list", "taken.legwork"]).as_array().unwrap().len(), 1);
    assert_eq!(desk.done(&["surveys", "repair", "taken.legwork"])["was_damaged"], false);
}

#[test]
fn tags_are_one_page_to_print() {
    let desk = small();
    assert_eq!(desk.done(&["tags", "s.legwork", "tags.html"]), json!({"tags": "tags.html"}));
    let page = std::fs::read_to_string(desk.work().join("tags.html")).unwrap();
    let report = {
        desk.done(&["report", "s.legwork", "report.html"]);
        std::fs::read_to_string(desk.work().join("report.html")).unwrap()
    };
    let strips = |page: &str| {
        scraper::Html::parse_document(page)
            .select(&scraper::Selector::parse("ul.cuts li").unwrap())
            .map(|strip| strip.text().collect::<String>())
            .collect::<Vec<_>>()
    };
    assert_eq!(strips(&page), strips(&report), "the tags of the report");
    assert_eq!(strips(&page).len(), 12, "two for each of six parts");
    assert!(!page.contains("<script") && page.len() < report.len());
    desk.refused(3, "exists", &["tags", "s.legwork", "tags.html"]);
    desk.write("none.toml", "[[room]]\nname = \"Office\"\n");
    desk.done(&["sheet", "none.toml", "none.legwork"]);
    desk.refused(3, "thing", &["tags", "none.legwork", "other.html"]);
}

#[test]
fn shells_and_the_manual_know_every_command() {
    let desk = Desk::new();
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        let ran = desk.run(&["completion", shell]);
        assert_eq!(ran.code, 0, "{}", ran.err);
        for command in ["copy-part", "worklist", "bring-back", "pattern", "crop"] {
            assert!(ran.out.contains(command), "{shell}: {command}");
        }
    }
    assert!(desk.done(&["completion", "bash"])["text"].as_str().unwrap().contains("complete -F"));
    let page = desk.run(&["man"]).out;
    assert!(page.contains(".TH legwork") && page.contains("Exit codes"), "{page}");
    std::fs::create_dir(desk.work().join("man1")).unwrap();
    let pages = desk.done(&["man", "man1"]);
    let pages: Vec<&str> =
        pages["pages"].as_array().unwrap().iter().map(|page| page.as_str().unwrap()).collect();
    for name in [
        "man1/legwork.1",
        "man1/legwork-photo-assign.1",
        "man1/legwork-surveys-pattern.1",
        "man1/legwork-set.1",
        "man1/legwork-label.1",
    ] {
        assert!(pages.contains(&name), "{pages:?}");
        let page = std::fs::read_to_string(desk.work().join(name)).unwrap();
        assert!(page.contains(".SH NAME") || page.contains(".SH SYNOPSIS"), "{name}");
    }
    let of_label = std::fs::read_to_string(desk.work().join("man1/legwork-label.1")).unwrap();
    assert!(of_label.contains("photo") && of_label.contains("X,Y,W,H"), "{of_label}");
    desk.refused(3, "exists", &["man", "man1"]);
    desk.done(&["man", "man1", "--replace"]);
    assert_eq!(desk.run(&["completion", "quux"]).code, 2);
}

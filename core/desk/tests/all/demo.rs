//! The demo: what it writes, what it says, how wide.

use crate::support::Desk;

#[test]
fn it_writes_one_survey_and_one_report_and_says_everything() {
    let desk = Desk::new();
    let ran = desk.run(&["demo"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    let out = desk.work().join("legwork-demo");
    let mut names: Vec<_> = std::fs::read_dir(&out)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    assert_eq!(names, ["demo.html", "demo.legwork"]);
    assert!(out.join("demo.legwork").is_dir());

    // What the house was made to show (the list), found and told.
    let told = ran.out.split_whitespace().collect::<Vec<_>>().join(" ");
    for part in ["invented", "What gets through", "What was found", "Work list", "Office", "Attic bedroom"] {
        assert!(told.contains(part), "no {part}");
    }
    let wide: Vec<_> = ran.out.lines().filter(|line| line.chars().count() > 80).collect();
    assert!(wide.is_empty(), "wider than 80 columns: {wide:#?}");
    assert!(!ran.out.contains('\u{1b}'), "colour where there is no terminal");
    let ids: Vec<_> = told
        .split(' ')
        .filter(|word| ["desk-", "sheet-", "finding-", "change-"].iter().any(|id| word.starts_with(id)))
        .collect();
    assert!(ids.is_empty(), "messages without words: {ids:?}");

    // The same survey, asked again, says the same.
    let findings = desk.run(&["--json", "findings", "legwork-demo/demo.legwork"]).json();
    let found: Vec<_> = findings
        .as_array()
        .unwrap()
        .iter()
        .map(|finding| finding["id"].as_str().unwrap().to_owned())
        .collect();
    for wanted in [
        "entry-filter-missing",
        "amplifier-no-bypass",
        "splitter-not-for-band",
        "splitters-in-cascade",
        "leg-open",
        "run-thin-and-long",
        "connector-poor",
    ] {
        assert!(found.iter().any(|id| id == wanted), "{wanted} is not among {found:?}");
    }

    // A second time: refused, and the first is as it was.
    let before = desk.all();
    let again = desk.run(&["demo"]);
    assert_eq!((again.code, again.out.as_str()), (3, ""));
    assert!(again.err.contains("already exists") && again.err.contains("--out"), "{}", again.err);
    assert!(desk.all() == before);
}

#[test]
fn it_leaves_nothing_where_it_cannot_write() {
    let desk = Desk::new();
    desk.write("taken", "a file where the folder should be");
    let before = desk.all();
    let ran = desk.run(&["demo", "--out", "taken"]);
    assert_eq!((ran.code, ran.out.as_str()), (1, ""), "{}", ran.err);
    assert!(desk.all() == before);

    // The report's name is taken: no survey is left behind.
    std::fs::create_dir(desk.work().join("half")).unwrap();
    desk.write("half/demo.html", "mine");
    let before = desk.all();
    let ran = desk.run(&["demo", "--out", "half"]);
    assert_eq!((ran.code, ran.out.as_str()), (3, ""), "{}", ran.err);
    assert!(desk.all() == before);
}

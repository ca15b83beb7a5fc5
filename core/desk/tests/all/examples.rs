//! Every example in the documents is run: each command line of README.md, docs/command.md and docs/sheet.md, in their order and
//! beside what they speak of, and the sheets in docs/sheet.md. What is not run is listed here with its reason.

use std::collections::BTreeSet;
use std::sync::atomic::{AtomicUsize, Ordering};

use crate::support::pictures::png;
use crate::support::{Desk, HOUSE, SMALL};

const README: &str = include_str!("../../../../README.md");
const COMMANDS: &str = include_str!("../../../../docs/command.md");
const SHEET: &str = include_str!("../../../../docs/sheet.md");
const DEVELOPERS: &str = include_str!("../../../../DEVELOPERS.md");

/// Lines that are not run as they stand, and why.
const NOT_RUN: [(&str, &str); 8] = [
    (
        "legwork label --photo",
        "needs the model: core/desk/tests/all/label_photo_read.rs, run by tests/rooms/print",
    ),
    (
        "bash core/legwork demo",
        "builds the release first; `legwork demo` is run here, the script by tests/rooms/desk",
    ),
    ("bash core/legwork page --demo", "serves a page until Ctrl-C: tests/page/run"),
    ("bash core/legwork page ", "serves a page until Ctrl-C: tests/page/run"),
    ("bash tests/run", "runs all tests, this one among them"),
    ("legwork page ", "serves a page until Ctrl-C: tests/page/run"),
    ("bash core/legwork walk", "asks at a keyboard; `legwork walk --answers` is run here"),
    ("bash core/legwork ", "the command behind the script is run here with the same arguments"),
];

/// Lines of code: those set in by four blanks, and those between fences.
fn code_lines(page: &str) -> Vec<&str> {
    let (mut lines, mut fenced) = (Vec::new(), false);
    for line in page.lines() {
        if line.starts_with("```") {
            fenced = !fenced;
        } else if fenced || line.starts_with("    ") {
            lines.push(line.trim());
        }
    }
    lines
}

/// A command line without its remark, which stands behind several blanks or a `#`.
fn without_remark(line: &str) -> String {
    let line = line.split(" # ").next().unwrap_or(line);
    line.split("  ").next().unwrap_or(line).trim().to_owned()
}

/// The words of a line as a shell reads them: quotes only.
fn words(line: &str) -> Vec<String> {
    let (mut words, mut word, mut quote) = (Vec::new(), String::new(), None);
    let mut is_word = false;
    for sign in line.chars() {
        match (quote, sign) {
            (Some(open), sign) if sign == open => quote = None,
            (None, '"' | '\'') => {
                quote = Some(sign);
                is_word = true;
            }
            (None, ' ') => {
                if is_word {
                    words.push(std::mem::take(&mut word));
                }
                is_word = false;
            }
            (_, sign) => {
                word.push(sign);
                is_word = true;
            }
        }
    }
    if is_word {
        words.push(word);
    }
    words
}

/// A folder with what the lines of docs/command.md speak of, under the names that they use.
fn stage() -> Desk {
    let desk = Desk::new();
    desk.write("SHEET.toml", SMALL);
    desk.write("HOUSE.toml", HOUSE);
    desk.write("PICTURE", png(40, 30, 1));
    desk.write("other.png", png(20, 10, 2));
    desk.done(&["sheet", "SHEET.toml", "NAME.legwork"]);
    desk.done(&["set", "NAME.legwork", "S1", "where", "behind the shelf"]);
    desk.done(&["pack", "NAME.legwork", "FILE.lwk", "--no-report"]);
    desk.write("answers.txt", "quit\n");
    desk
}

/// Counts the names that were made up.
static MADE: AtomicUsize = AtomicUsize::new(0);

/// What stands for the words in capitals of one line, and what has to be there before it is run.
fn played(desk: &Desk, line: &str) -> Vec<String> {
    let line = line.replace("...", "").replace(" [DIR]", " .").replace(" [--out DIR]", " --out demo-out");
    let photo = || {
        let photos = desk.done(&["photo", "list", "NAME.legwork"]);
        if let Some(photo) = photos.as_array().unwrap().first() {
            return photo["photo"].as_str().unwrap().to_owned();
        }
        let added = desk.done(&["photo", "add", "NAME.legwork", "other.png"]);
        added["photos"][0]["photo"].as_str().unwrap().to_owned()
    };
    let line = line.replace(['[', ']'], "");
    let mut said: Vec<String> = words(&line).into_iter().skip(1).collect();
    let is = |said: &[String], name: &str| {
        said.iter().take(2).map(String::as_str).collect::<Vec<_>>().join(" ").starts_with(name)
    };
    match said.first().map(String::as_str) {
        Some("walk") => said.extend(["--answers".into(), "answers.txt".into()]),
        Some("settle") => {
            // Two people who name one part apart.
            desk.done(&["pack", "NAME.legwork", "apart.lwk", "--no-report"]);
            desk.done_by("guest", &["take", "apart.lwk", "guest.legwork"]);
            desk.done_by("guest", &["set", "guest.legwork", "S1", "where", "in the loft"]);
            desk.done(&["set", "NAME.legwork", "S1", "where", "in the cellar"]);
            desk.done_by("guest", &["pack", "guest.legwork", "back.lwk", "--no-report"]);
            desk.done(&["take", "back.lwk", "NAME.legwork"]);
            std::fs::remove_dir_all(desk.work().join("guest.legwork")).unwrap();
        }
        Some("forget" | "remove") => said.push("--yes".into()),
        Some("bring-back") => {
            desk.done(&["remove", "NAME.legwork", "O2"]);
        }
        Some("put-back") => said.push("--keep".into()),
        Some("undo") => said.retain(|word| word != "ACT"),
        Some("man") => said.retain(|word| word != "."),
        _ => {}
    }
    if is(&said, "surveys back") {
        desk.done(&["surveys", "aside", "other one.legwork"]);
    }
    let thing = if said.first().is_some_and(|first| first == "bring-back") { "O2" } else { "S1" };
    let field = "where";

    let new = format!("new-{}", MADE.fetch_add(1, Ordering::Relaxed));
    let is_sheet = is(&said, "sheet");
    let of_photo = said.first().is_some_and(|first| first == "photo");
    let mut told = Vec::new();
    for word in said {
        told.push(match word.as_str() {
            "NAME.legwork" if is_sheet => format!("{new}.legwork"),
            "set-aside/NAME.legwork" => "set-aside/other one.legwork".into(),
            "THING" => thing.into(),
            "FIELD" => field.into(),
            "VALUE" => "in the attic".into(),
            "SIDE" => "1".into(),
            "TEXT" => "4-WAY 5-1000MHz".into(),
            "WORD" => "shelf".into(),
            "TAG" | "NEW" => new.clone(),
            "PHOTO" => photo(),
            "FILE" if of_photo => {
                desk.write("list.txt", format!("{} S1 label\n", photo()));
                "list.txt".into()
            }
            "OUT" => format!("{new}.png"),
            "OUT.html" => format!("{new}.html"),
            other => other.to_owned(),
        });
    }
    if told.starts_with(&["photo".into(), "assign".into()]) && !told.contains(&"--list".into()) {
        told.extend(["--of".into(), "S1".into()]);
    }
    if told.first().is_some_and(|first| first == "pack") {
        told.extend(["--replace".into(), "--no-report".into()]);
    }
    told
}

#[test]
fn every_line_of_the_command_page_does_what_it_says() {
    let desk = stage();
    let listed = COMMANDS.split("\nTHING is a tag").next().unwrap();
    let lines: Vec<String> = code_lines(listed)
        .into_iter()
        .filter(|line| line.starts_with("legwork "))
        .map(without_remark)
        .collect();
    assert!(lines.len() >= 45, "{}", lines.len());
    let mut run = BTreeSet::new();
    for line in &lines {
        if NOT_RUN.iter().any(|(not, _)| format!("{line} ").starts_with(not)) {
            continue;
        }
        // Of a survey that is moved, set aside or deleted another one is taken, so that the next line finds its own.
        let own = words(line).get(1).is_some_and(|word| word == "surveys") && line.contains("NAME.legwork");
        let moves = ["rename", "aside", "back", "delete"]
            .iter()
            .any(|what| line.contains(&format!("surveys {what}")));
        if own && moves && !desk.work().join("other one.legwork").exists() {
            desk.done(&["surveys", "copy", "NAME.legwork", "other one"]);
        }
        let mut arguments = played(&desk, line);
        if own && moves {
            for word in &mut arguments {
                if word == "NAME.legwork" {
                    *word = "other one.legwork".into();
                }
            }
        }
        let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
        let ran = desk.run(&arguments);
        assert_eq!(ran.code, 0, "{line}: {arguments:?}: {}", ran.err);
        run.insert(arguments[0].to_owned());
    }
    // Every command that there is stands on the page, and was run.
    let help = desk.run(&["--help"]).out;
    let commands = help.split("Commands:").nth(1).unwrap().split("Options:").next().unwrap();
    let names = commands.lines().filter(|line| line.starts_with("  ") && !line.starts_with("   "));
    for name in names
        .filter_map(|line| line.split_whitespace().next())
        .filter(|name| *name != "help" && *name != "page")
    {
        assert!(run.contains(name), "docs/command.md has no line for {name}");
    }
}

#[test]
fn the_readme_leads_through_a_house_of_ones_own() {
    let desk = Desk::new();
    desk.write("HOUSE.toml", HOUSE);
    let mut run = 0;
    // What else is set in goes on with an entry of a list.
    let lines = code_lines(README).into_iter().map(without_remark);
    for line in lines.filter(|line| line.starts_with("bash ") || line.starts_with("legwork ")) {
        let Some(arguments) = line.strip_prefix("bash core/legwork ") else {
            let known = NOT_RUN.iter().any(|(not, _)| line.starts_with(not));
            assert!(known, "README.md: {line} is neither run nor listed with a reason");
            continue;
        };
        let arguments = words(arguments);
        let mut arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
        if arguments == ["page"] || arguments == ["page", "--demo"] {
            continue;
        }
        if arguments == ["walk"] {
            desk.write("answers.txt", "quit\n");
            arguments.extend(["--answers", "answers.txt"]);
        }
        let ran = desk.run(&arguments);
        assert_eq!(ran.code, 0, "{line}: {}", ran.err);
        run += 1;
    }
    assert!(run >= 8, "{run}");
}

/// The sheets of docs/sheet.md are sheets, and the commands beside them work.
#[test]
fn the_sheets_of_the_page_are_taken() {
    let desk = Desk::new();
    let sheets: Vec<&str> =
        SHEET.split("```toml\n").skip(1).map(|rest| rest.split("```").next().unwrap()).collect();
    assert!(!sheets.is_empty());
    for (number, sheet) in sheets.iter().enumerate() {
        let name = format!("HOUSE{number}.toml");
        desk.write(&name, sheet);
        let ran = desk.run(&["sheet", &name, &format!("house{number}.legwork")]);
        assert_eq!(ran.code, 0, "{}", ran.err);
    }
    desk.write("house.toml", sheets[0]);
    desk.write("HOUSE.toml", sheets[0]);
    for line in code_lines(SHEET).into_iter().map(without_remark).filter(|line| line.starts_with("legwork "))
    {
        let arguments = words(&line);
        let arguments: Vec<&str> = arguments.iter().skip(1).map(String::as_str).collect();
        let ran = desk.run(&arguments);
        assert_eq!(ran.code, 0, "{line}: {}", ran.err);
    }
}

/// The lines of DEVELOPERS.md are for builds, other languages and long tests: each names files that are there.
#[test]
fn what_developers_are_told_to_run_is_there() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let mut seen = 0;
    for line in code_lines(DEVELOPERS) {
        let line = without_remark(line);
        for word in line.split_whitespace() {
            let is_ours = ["tests/", "core/", "android/tools/", "ios/Project/"]
                .iter()
                .any(|start| word.starts_with(start));
            if is_ours && !word.contains(['*', '$', '=']) {
                assert!(root.join(word).exists(), "DEVELOPERS.md: {word} is not there ({line})");
                seen += 1;
            }
        }
        if let Some(package) = line.split("-p ").nth(1).and_then(|rest| rest.split_whitespace().next())
            && line.contains("cargo ")
        {
            let known = root.join("core").join(package).is_dir()
                || root.join(package).is_dir()
                || package == "proofs";
            assert!(known, "DEVELOPERS.md: no crate {package} ({line})");
            seen += 1;
        }
    }
    assert!(seen > 10, "{seen}");
}

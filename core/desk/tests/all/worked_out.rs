//! What was worked out is kept beside the survey and taken from there: the same answers, until a fact changes.

use std::path::PathBuf;

use house::record::field;
use houses::as_sheet::as_sheet;

use crate::support::{Desk, HOUSE};

const ASKING: [&str; 4] = ["forecast", "findings", "worklist", "levels"];

fn kept(desk: &Desk, survey: &str) -> PathBuf {
    desk.work().join(survey).join("survey.db.worked-out")
}

/// Every answer, as JSON and in words, and the report.
fn answers(desk: &Desk, survey: &str, report: &str) -> Vec<String> {
    let mut answers = Vec::new();
    for command in ASKING {
        for arguments in [vec!["--json", command, survey], vec![command, survey]] {
            let ran = desk.run(&arguments);
            assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{arguments:?}");
            answers.push(ran.out);
        }
    }
    desk.done(&["report", survey, report]);
    answers.push(std::fs::read_to_string(desk.work().join(report)).unwrap());
    answers
}

#[test]
fn what_is_kept_gives_the_same_answers_as_what_is_fresh() {
    let desk = Desk::new();
    let houses = [("demo", HOUSE.to_owned()), ("old", as_sheet(&houses::old(20)))];
    for (name, sheet) in houses {
        let (sheet_name, survey) = (format!("{name}.toml"), format!("{name}.legwork"));
        desk.write(&sheet_name, sheet);
        desk.done(&["sheet", &sheet_name, &survey]);
        let first = answers(&desk, &survey, &format!("{name}-1.html"));
        // The work lists of both take far longer than what is not worth keeping.
        assert!(kept(&desk, &survey).is_file(), "{name}");
        let bytes = std::fs::read(kept(&desk, &survey)).unwrap();
        let second = answers(&desk, &survey, &format!("{name}-2.html"));
        assert_eq!(first, second, "{name}");
        assert!(std::fs::read(kept(&desk, &survey)).unwrap() == bytes, "{name}: it was worked out again");

        // One changed bit, and it is made anew; so it is where nothing is kept.
        let mut changed = bytes.clone();
        let middle = changed.len() / 2;
        changed[middle] ^= 4;
        std::fs::write(kept(&desk, &survey), changed).unwrap();
        assert_eq!(answers(&desk, &survey, &format!("{name}-3.html")), first, "{name}");
        assert!(std::fs::read(kept(&desk, &survey)).unwrap() == bytes, "{name}: it is another");
    }
}

#[test]
fn a_changed_fact_makes_it_anew_and_forgetting_drops_it() {
    let desk = Desk::new();
    desk.write("house.toml", HOUSE);
    desk.done(&["sheet", "house.toml", "house.legwork"]);
    let before = desk.done(&["worklist", "house.legwork"]);
    assert!(kept(&desk, "house.legwork").is_file());
    desk.done(&["remove", "house.legwork", "S2", "--yes"]);
    let after = desk.done(&["worklist", "house.legwork"]);
    assert_ne!(before["as_found"], after["as_found"]);
    desk.done(&["bring-back", "house.legwork", "S2"]);
    assert_eq!(desk.done(&["worklist", "house.legwork"]), before);

    // What is kept of one survey is not believed of another, or of a copy of its own.
    desk.done(&["surveys", "copy", "house.legwork", "other"]);
    assert!(!kept(&desk, "other.legwork").exists());
    std::fs::copy(kept(&desk, "house.legwork"), kept(&desk, "other.legwork")).unwrap();
    let foreign = std::fs::read(kept(&desk, "other.legwork")).unwrap();
    desk.done(&["worklist", "other.legwork"]);
    assert!(std::fs::read(kept(&desk, "other.legwork")).unwrap() != foreign);

    // It goes into no file, and goes with what is forgotten and with the survey.
    desk.done(&["pack", "house.legwork", "house.lwk"]);
    let packed = std::fs::read(desk.work().join("house.lwk")).unwrap();
    assert!(!packed.windows(10).any(|bytes| bytes == b"worked-out"));
    desk.done(&["forget", "house.legwork", "S1", field::LABEL, "--yes"]);
    assert!(!kept(&desk, "house.legwork").exists());
    let deleted = desk.done(&["surveys", "delete", "other.legwork", "--yes"]);
    assert_eq!(deleted["kept"], serde_json::Value::Null, "it is the survey's own");
}

/// What a terminal shows while this runs: `script` (util-linux) lends one.
#[cfg(target_os = "linux")]
fn at_a_terminal(desk: &Desk, line: &str) -> String {
    let binary = env!("CARGO_BIN_EXE_legwork");
    let mut command = std::process::Command::new("script");
    command.args(["-qec", &format!("{binary} {line}"), "/dev/null"]).current_dir(desk.work());
    command.env("LEGWORK_HOME", desk.home()).env("TERM", "dumb").env("LEGWORK_PROGRESS_AT_ONCE", "yes");
    let done = command.output().unwrap();
    String::from_utf8_lossy(&done.stdout).into_owned()
}

#[cfg(target_os = "linux")]
#[test]
fn long_work_says_what_it_does_how_far_it_is_and_how_it_is_stopped() {
    let desk = Desk::new();
    desk.write("house.toml", HOUSE);
    for (command, sheet, what) in [
        ("forecast", "house.toml", "working out what gets through"),
        ("findings", "house.toml", "working out what gets through"),
        ("worklist", "house.toml", "working out what to change"),
        ("levels", "house.toml", "working out what to change"),
        ("table house.legwork steps #", "house.toml", "working out what to change"),
        ("report house.legwork out.html #", "house.toml", "working out what to change"),
        ("pack house.legwork out.lwk #", "house.toml", "working out what to change"),
    ] {
        // Each on a survey of which nothing is kept.
        let _ = std::fs::remove_dir_all(desk.work().join("house.legwork"));
        desk.done(&["sheet", sheet, "house.legwork"]);
        let shown = at_a_terminal(&desk, &format!("{command} house.legwork"));
        assert!(shown.contains(what) && shown.contains(" % (Ctrl-C stops it)"), "{command}: {shown}");
        // It is wiped, and nothing of it is left on the page.
        let last = shown.rfind(what).unwrap();
        assert!(shown[last..].contains("\r\u{1b}[K"), "{command}");
        // Taken from what is kept there is nothing to say; a forecast alone is made again too quickly to be kept.
        // Asked before it is made again: on a busy machine that may take long enough to be kept.
        let is_kept = desk.work().join("house.legwork/survey.db.worked-out").is_file();
        let again = at_a_terminal(&desk, &format!("{} house.legwork", command.replace("out.", "again.")));
        assert!(is_kept || what == "working out what gets through", "{command}");
        assert!(!is_kept || !again.contains(what), "{command}: {again}");
    }
    // Into a pipe nothing is said of it.
    let _ = std::fs::remove_dir_all(desk.work().join("house.legwork"));
    desk.done(&["sheet", "house.toml", "house.legwork"]);
    desk.done(&["worklist", "house.legwork"]);
}

#[cfg(unix)]
#[test]
fn ctrl_c_ends_it_and_leaves_nothing() {
    let desk = Desk::new();
    // Long enough for it, on any machine.
    desk.write("house.toml", as_sheet(&houses::old(120)));
    desk.done(&["sheet", "house.toml", "house.legwork"]);
    let before = desk.all();
    let mut child = desk.command(&["worklist", "house.legwork"]).spawn().unwrap();
    std::thread::sleep(std::time::Duration::from_millis(300));
    let stopped =
        std::process::Command::new("kill").args(["-INT", &child.id().to_string()]).status().unwrap();
    assert!(stopped.success());
    assert_eq!(child.wait().unwrap().code(), Some(130));
    assert_eq!(desk.all(), before);
}

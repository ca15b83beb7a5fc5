//! Everything else that a command may be given wrongly.

use crate::support::{Desk, SMALL};

#[test]
fn a_folder_that_is_no_survey() {
    let desk = Desk::new();
    std::fs::create_dir(desk.work().join("empty.legwork")).unwrap();
    std::fs::create_dir(desk.work().join("other.legwork")).unwrap();
    desk.write(
        "other.legwork/survey.db",
        "not a database, but long enough to be looked at as if it were one",
    );
    desk.write("file.legwork", "a file");
    let before = desk.all();
    for survey in ["empty.legwork", "other.legwork", "file.legwork", "missing.legwork"] {
        for command in ["forecast", "findings", "worklist"] {
            let ran = desk.run(&[command, survey]);
            assert_eq!((ran.code, ran.out.as_str()), (3, ""), "{command} {survey}: {}", ran.err);
            assert!(ran.err.contains(survey), "{}", ran.err);
        }
        let ran = desk.run(&["--json", "report", survey, "out.html"]);
        assert_eq!(ran.code, 3);
        let told: serde_json::Value = serde_json::from_str(&ran.err).unwrap();
        assert_eq!(told["error"]["name"], "not_a_survey");
        assert_eq!(told["error"]["exit_code"], 3);
    }
    assert!(desk.all() == before, "something was written");
}

#[test]
fn wrong_use_has_a_code_of_its_own() {
    let desk = Desk::new();
    for arguments in [&[][..], &["quux"], &["forecast"], &["demo", "--quux"], &["label"]] {
        let ran = desk.run(arguments);
        assert_eq!(ran.code, 2, "{arguments:?}");
        assert_eq!(ran.out, "");
    }
    for arguments in [&["--help"][..], &["help", "sheet"], &["--version"]] {
        assert_eq!(desk.run(arguments).code, 0, "{arguments:?}");
    }
    assert!(desk.all().is_empty());
}

#[test]
fn labels_that_are_no_text_stop_at_their_line() {
    let desk = Desk::new();
    let ran = desk.run_with(&["--json", "label", "-"], b"4-WAY 5-1000 MHz\n\xFF\xFE\n2-WAY 5-1000 MHz\n");
    assert_eq!(ran.code, 3);
    assert_eq!(ran.out.lines().count(), 1, "the line before is answered, the one after is not");
    assert!(ran.err.contains("line 2 of the labels is not text"), "{}", ran.err);
    let long = desk.run_with(&["label", "-"], &vec![b'x'; 100_000]);
    assert_eq!(long.code, 3);
    assert!(long.err.contains("line 1 of the labels is longer"), "{}", long.err);
}

#[test]
fn a_report_does_not_replace_unless_told_to() {
    let desk = Desk::new();
    desk.write("small.toml", SMALL);
    assert_eq!(desk.run(&["sheet", "small.toml", "small.legwork"]).code, 0);
    // What is no page is left alone, whatever is said.
    desk.write("out.html", "mine");
    for line in
        [&["report", "small.legwork", "out.html"][..], &["report", "--replace", "small.legwork", "out.html"]]
    {
        let refused = desk.run(line);
        assert_eq!(refused.code, 3, "{}", refused.err);
        assert_eq!(std::fs::read(desk.work().join("out.html")).unwrap(), b"mine");
    }
    let page = "<!doctype html><title>mine</title>";
    desk.write("out.html", page);
    let refused = desk.run(&["report", "small.legwork", "out.html"]);
    assert_eq!(refused.code, 3);
    assert!(refused.err.contains("--replace"), "{}", refused.err);
    assert_eq!(std::fs::read_to_string(desk.work().join("out.html")).unwrap(), page);

    let replaced = desk.run(&["report", "--replace", "small.legwork", "out.html"]);
    assert_eq!(replaced.code, 0, "{}", replaced.err);
    let html = std::fs::read_to_string(desk.work().join("out.html")).unwrap();
    assert!(html.to_lowercase().starts_with("<!doctype html>"));

    let nowhere = desk.run(&["report", "small.legwork", "no/such/folder/out.html"]);
    assert_eq!(nowhere.code, 1, "{}", nowhere.err);
    let names: Vec<_> =
        std::fs::read_dir(desk.work()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    assert_eq!(names.len(), 3, "a temporary file stayed: {names:?}");
}

#[cfg(unix)]
#[test]
fn a_reader_that_goes_away_is_no_failure() {
    use std::process::Stdio;
    let desk = Desk::new();
    let mut child = desk
        .command(&["--json", "label", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let mut input = child.stdin.take().unwrap();
    // More than a pipe holds, so that the command must meet the closed end.
    let writer = std::thread::spawn(move || {
        let _ = std::io::Write::write_all(&mut input, "4-WAY 5-1000 MHz 7 dB\n".repeat(20_000).as_bytes());
    });
    let output = child.wait_with_output().unwrap();
    writer.join().unwrap();
    assert_eq!(output.status.code(), Some(0));
    assert_eq!(String::from_utf8(output.stderr).unwrap(), "");
}

#[test]
fn without_a_home_the_author_cannot_be_kept_and_nothing_is_written() {
    let desk = Desk::new();
    desk.write("small.toml", SMALL);
    let before = desk.all();
    let output = desk
        .command(&["sheet", "small.toml", "small.legwork"])
        .env_remove("LEGWORK_HOME")
        .env_remove("XDG_CONFIG_HOME")
        .env_remove("HOME")
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(1));
    assert!(String::from_utf8(output.stderr).unwrap().contains("LEGWORK_HOME"));
    assert!(desk.all() == before);
}

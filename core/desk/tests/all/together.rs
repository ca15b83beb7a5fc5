//! Several programs on one survey, and Ctrl-C.

use std::process::{Command, Stdio};
use std::time::Duration;

use crate::support::pictures::png;
use crate::support::{Desk, SMALL};

fn small() -> Desk {
    let desk = Desk::new();
    desk.write("small.toml", SMALL);
    assert_eq!(desk.run(&["sheet", "small.toml", "s.legwork"]).code, 0);
    desk
}

#[test]
fn two_who_write_at_once_both_get_their_word_in() {
    let desk = small();
    for number in 0..4 {
        desk.write(&format!("{number}.png"), png(300, 200, number));
    }
    let adding: Vec<_> = (0..4)
        .map(|number| {
            let name = format!("{number}.png");
            let mut command = desk.command(&["photo", "add", "s.legwork", "--again", &name, &name, &name]);
            command.stdout(Stdio::null()).spawn().unwrap()
        })
        .collect();
    for mut child in adding {
        assert_eq!(child.wait().unwrap().code(), Some(0));
    }
    let photos = desk.done(&["photo", "list", "s.legwork"]);
    assert_eq!(photos.as_array().unwrap().len(), 12);
    assert_eq!(desk.done(&["disagreements", "s.legwork"])["disagreements"], serde_json::json!([]));
}

#[test]
fn who_must_wait_too_long_is_told_and_nothing_is_written() {
    let desk = small();
    let before = desk.done(&["note", "s.legwork"]);
    let mut held = rusqlite::Connection::open(desk.work().join("s.legwork/survey.db")).unwrap();
    let writing = held.transaction_with_behavior(rusqlite::TransactionBehavior::Immediate).unwrap();
    let ran = desk.run(&["--json", "note", "s.legwork", "hello"]);
    drop(writing);
    let error: serde_json::Value = serde_json::from_str(&ran.err).unwrap();
    assert_eq!((ran.code, &error["error"]["name"]), (1, &"busy".into()), "{}", ran.err);
    assert_eq!(desk.done(&["note", "s.legwork"]), before);
    drop(held);
    desk.done(&["note", "s.legwork", "hello"]);
}

/// Runs a command and sends it a signal after a while; its exit code, if it was not ended by the signal.
fn interrupted(desk: &Desk, arguments: &[&str], after: Duration) -> Option<i32> {
    let mut command = desk.command(arguments);
    let mut child = command.stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap();
    std::thread::sleep(after);
    let sent = Command::new("kill").args(["-INT", &child.id().to_string()]).stderr(Stdio::null()).status();
    // It may have ended by itself before.
    sent.unwrap();
    child.wait().unwrap().code()
}

/// Names in a folder, hidden ones too.
fn names(desk: &Desk) -> Vec<String> {
    let entries = std::fs::read_dir(desk.work()).unwrap();
    let mut names: Vec<_> = entries.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    names
}

#[test]
fn ctrl_c_leaves_everything_as_it_was() {
    let desk = small();
    for number in 0..6 {
        desk.write(&format!("{number}.png"), png(700, 700, number));
    }
    let files = ["0.png", "1.png", "2.png", "3.png", "4.png", "5.png"];
    desk.done(&[&["photo", "add", "s.legwork"][..], &files].concat());
    desk.done(&["pack", "s.legwork", "good.lwk"]);
    let good = std::fs::read(desk.work().join("good.lwk")).unwrap();
    let before = names(&desk);
    let mut stopped = 0;
    for step in 0..30 {
        let after = Duration::from_millis(10 + step * 8);
        match interrupted(&desk, &["pack", "s.legwork", "out.lwk"], after) {
            Some(0) => {
                assert!(std::fs::read(desk.work().join("out.lwk")).unwrap() == good);
                std::fs::remove_file(desk.work().join("out.lwk")).unwrap();
            }
            Some(130) => stopped += 1,
            // Before the command listened to it.
            None => {}
            Some(other) => panic!("exit code {other}"),
        }
        assert_eq!(names(&desk), before, "after {after:?}");
        match interrupted(&desk, &["take", "good.lwk", "new.legwork"], after) {
            Some(0) => {
                assert_eq!(desk.done(&["photo", "list", "new.legwork"]).as_array().unwrap().len(), 6);
                std::fs::remove_dir_all(desk.work().join("new.legwork")).unwrap();
            }
            Some(130) => stopped += 1,
            None => {}
            Some(other) => panic!("exit code {other}"),
        }
        assert_eq!(names(&desk), before, "after {after:?}");
    }
    assert!(stopped > 0, "no run was caught at work");
    assert_eq!(desk.done(&["photo", "list", "s.legwork"]).as_array().unwrap().len(), 6);
}

//! A sheet of 8 MiB, whatever is in it: taken or refused, and the process never holds more than 64 MB.
//!
//! What a process held at most is told by the system (`VmHWM`, proc(5)), on Linux alone. The pages of the program itself, of
//! which a build without optimisation has many, are no memory that a sheet takes (`RssFile`).

use std::fmt::Write;
use std::fs;
use std::process::{Child, Stdio};

use desk::sheet::MOST_BYTES;

use crate::support::Desk;

/// Of 64 MB, what is left beside the program's own pages.
const MOST_HELD_KB: u64 = 56_000;

/// A text over and over, as often as it fits.
fn filled(head: &str, unit: &str, tail: &str) -> String {
    let room = usize::try_from(MOST_BYTES).unwrap() - head.len() - tail.len();
    format!("{head}{}{tail}", unit.repeat(room / unit.len()))
}

/// As many as this of a text with its number, then one comment up to the full length.
fn numbered(head: &str, count: usize, unit: impl Fn(usize) -> String, tail: &str) -> String {
    let mut text = head.to_owned();
    (0..count).for_each(|number| text.push_str(&unit(number)));
    text.push_str(tail);
    filled(&format!("{text}#"), "x", "\n")
}

/// Two thousand parts, each with this text in this field.
fn house_of(field: &str, said: &str) -> String {
    let mut text = String::from("[survey]\nname = \"x\"\n");
    for number in 0..2_000 {
        writeln!(text, "[[part]]\ntag = \"P{number}\"\nkind = \"splitter\"\n{field} = \"{said}\"").unwrap();
    }
    text
}

/// Labels as long as one may be, filled up by notes.
fn long_labels() -> String {
    format!("{}\"\nnote = \"{}", "5-1000 1.5dB -7 ".repeat(63), "n".repeat(2_720))
}

/// What the process held at most, kB. It is asked for until it is gone, since the system tells it of the living.
fn held_at_most(child: &mut Child) -> u64 {
    let status = format!("/proc/{}/status", child.id());
    let mut most = 0;
    while child.try_wait().unwrap().is_none() {
        let told = fs::read_to_string(&status).unwrap_or_default();
        let of = |name: &str| -> Option<u64> {
            told.lines()
                .find_map(|line| line.strip_prefix(name)?.trim().strip_suffix(" kB")?.trim().parse().ok())
        };
        most = of("VmHWM:").zip(of("RssFile:")).map_or(most, |(held, file)| held.saturating_sub(file));
        std::thread::sleep(std::time::Duration::from_millis(1));
    }
    most
}

#[test]
fn a_sheet_of_full_length_takes_no_more_than_64_mb() {
    let digits = |number: usize| format!("k{number}=1\n");
    let sheets = [
        ("nothing", 0, filled("", " ", "")),
        ("a long comment", 0, filled("#", "x", "\n")),
        ("a full house", 0, house_of("note", &"n".repeat(4_100))),
        ("long labels", 0, house_of("label", &long_labels())),
        ("line ends", 3, filled("", "\n", "")),
        ("line ends, as many as are taken", 0, numbered("", 240_000, |_| "\n".into(), "")),
        ("comments", 3, filled("", "# a comment\n", "")),
        ("names", 3, filled("", "a=1\n", "")),
        ("a name twice, as often as is taken", 3, numbered("", 62_000, |_| "a=1\n".into(), "")),
        ("names that nobody knows", 3, numbered("", 62_000, digits, "")),
        ("one long name", 3, filled("", "a", "=1")),
        ("one long text", 3, filled("a=\"", "x", "\"")),
        ("one text over many lines", 3, filled("a=\"\"\"", "\n", "\"\"\"")),
        ("signs that stand for others", 3, filled("a=\"", "\\n", "\"")),
        ("quotes", 3, filled("", "\"", "")),
        ("brackets", 3, filled("a=", "[", "")),
        ("lists of nothing", 3, filled("a=[", "[],", "]")),
        ("figures", 3, filled("a=[", "1,", "]")),
        ("figures, as many as are taken", 3, numbered("a=[", 120_000, |_| "1,".into(), "]\n")),
        ("tables", 3, filled("a=[", "{a=1},", "]")),
        ("tables, as many as are taken", 3, numbered("a=[", 19_900, |_| "{a=1},".into(), "]\n")),
        ("names with dots", 3, numbered("", 19_900, |number| format!("a{number}.b=1\n"), "")),
        ("headings", 3, numbered("", 19_900, |number| format!("[t{number}]\na=1\n"), "")),
        ("parts", 3, filled("", "[[part]]\n", "")),
        ("no TOML at all", 3, filled("", "=\n", "")),
        ("mistakes, as many as are taken", 3, numbered("", 120_000, |_| "=\n".into(), "")),
        ("other mistakes", 3, numbered("", 40_000, |_| "a=\"\\q\"\n".into(), "")),
    ];
    for (what, code, sheet) in sheets {
        assert!(sheet.len() as u64 <= MOST_BYTES && sheet.len() as u64 > MOST_BYTES * 9 / 10, "{what}");
        let desk = Desk::new();
        desk.write("large.toml", &sheet);
        drop(sheet);
        let mut command = desk.command(&["sheet", "large.toml", "new.legwork"]);
        let mut child = command.stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap();
        let held = held_at_most(&mut child);
        assert_eq!(child.wait().unwrap().code(), Some(code), "{what}");
        println!("{what}: {held} kB");
        assert!(held > 0 && held <= MOST_HELD_KB, "{what}: {held} kB");
    }
}

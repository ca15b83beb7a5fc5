//! What keeps a survey safe from strangers' files, from rot, from whoever shares its folder: through the command.

use std::fs;
use std::path::Path;

use serde_json::{Value, json};

use crate::support::{Desk, HOUSE};

/// `mine.legwork`, and `wipe.lwk`: a file of it in which somebody else forgot every thing.
fn with_wipe() -> Desk {
    let desk = Desk::new();
    desk.write("house.toml", HOUSE);
    // What somebody forgets is forgotten in the copies beside theirs: so theirs lies elsewhere.
    fs::create_dir(desk.work().join("far")).unwrap();
    desk.done(&["sheet", "house.toml", "mine.legwork"]);
    desk.done(&["pack", "mine.legwork", "own.lwk"]);
    desk.done_by("stranger", &["take", "own.lwk", "far/theirs.legwork"]);
    let said = desk.done_by("stranger", &["said", "far/theirs.legwork"]);
    let things: std::collections::BTreeSet<String> = said
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|act| act["said"].as_array().unwrap())
        .filter(|said| said["thing"]["kind"] != "survey")
        .map(|said| said["thing"]["id"].as_str().unwrap().to_owned())
        .collect();
    for thing in &things {
        desk.done_by("stranger", &["forget", "far/theirs.legwork", thing, "--yes"]);
    }
    desk.done_by("stranger", &["pack", "far/theirs.legwork", "wipe.lwk"]);
    desk
}

fn parts(desk: &Desk) -> Value {
    let listed = desk.done(&["surveys"]);
    let mine =
        listed["surveys"].as_array().unwrap().iter().find(|one| one["survey"] == "mine.legwork").unwrap();
    json!([mine["rooms"], mine["parts"], mine["runs"]])
}

#[test]
fn a_strangers_file_wipes_nothing_and_its_wish_waits_for_an_answer() {
    let desk = with_wipe();
    let before = parts(&desk);
    assert!(before[1].as_u64().unwrap() > 2, "{before}");
    let taken = desk.run(&["take", "wipe.lwk", "mine.legwork"]);
    assert_eq!((taken.code, taken.err.as_str()), (0, ""));
    assert!(
        taken.out.contains("legwork wishes mine.legwork") && taken.out.contains("asked by"),
        "{}",
        taken.out
    );
    assert_eq!(parts(&desk), before);

    let asked = desk.done(&["wishes", "mine.legwork"]);
    assert!(asked["wishes"].as_array().unwrap().len() > 10 && asked["answer"].is_null());
    assert_eq!(asked["wishes"][0]["asked_by"]["you"], false);
    assert_eq!(desk.done(&["wishes", "mine.legwork", "--no"])["answer"], "no");
    assert_eq!(desk.done(&["wishes", "mine.legwork"])["wishes"], json!([]));
    assert_eq!(desk.done(&["take", "wipe.lwk", "mine.legwork"])["waiting"], 0);
    assert_eq!(parts(&desk), before);

    // With a yes it is gone, as its user agreed.
    let other = with_wipe();
    let taken = other.done(&["take", "wipe.lwk", "mine.legwork", "--yes"]);
    assert_eq!(taken["waiting"], 0);
    assert_eq!(parts(&other), json!([0, 0, 0]));
}

#[test]
fn a_file_that_removes_most_is_refused_until_that_is_meant_and_can_be_put_back_later() {
    let desk = Desk::new();
    desk.write("house.toml", HOUSE);
    desk.done(&["sheet", "house.toml", "mine.legwork"]);
    desk.done(&["pack", "mine.legwork", "own.lwk"]);
    desk.done_by("other", &["take", "own.lwk", "theirs.legwork"]);
    let before = parts(&desk);
    let said = desk.done_by("other", &["said", "theirs.legwork"]);
    let mut things: Vec<String> = said
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|act| act["said"].as_array().unwrap())
        .filter(|said| ["part", "run", "room"].map(Value::from).contains(&said["thing"]["kind"]))
        .map(|said| said["thing"]["id"].as_str().unwrap().to_owned())
        .collect();
    things.sort();
    things.dedup();
    let remove: Vec<&str> =
        ["remove", "theirs.legwork", "--yes"].into_iter().chain(things.iter().map(String::as_str)).collect();
    desk.done_by("other", &remove);
    desk.done_by("other", &["pack", "theirs.legwork", "theirs.lwk"]);
    let refused = desk.refused_after_telling("not_confirmed", &["take", "theirs.lwk", "mine.legwork"]);
    assert!(refused.contains("--rearrange"), "{refused}");
    assert_eq!(parts(&desk), before);
    desk.done(&["take", "theirs.lwk", "mine.legwork", "--rearrange"]);
    assert_eq!(parts(&desk), json!([0, 0, 0]));
    desk.done(&["note", "mine.legwork", "written since"]);
    desk.refused(3, "not_confirmed", &["put-back", "mine.legwork"]);
    assert_eq!(desk.done(&["put-back", "mine.legwork", "--yes"])["without_trace"], false);
    assert_eq!(parts(&desk), before);
    desk.refused(3, "survey", &["put-back", "mine.legwork"]);
}

#[test]
fn a_turned_bit_is_named_and_mended_by_repair() {
    let desk = Desk::new();
    desk.write("house.toml", HOUSE);
    desk.done(&["sheet", "house.toml", "mine.legwork"]);
    let database = desk.work().join("mine.legwork/survey.db");
    let whole = fs::read(&database).unwrap();
    let at = whole.windows(9).position(|part| part == b"\"metres\":").unwrap() + 9;
    let mut bytes = whole.clone();
    bytes[at] ^= 4;
    fs::write(&database, &bytes).unwrap();
    desk.refused(3, "damaged", &["forecast", "mine.legwork"]);
    let mended = desk.done(&["surveys", "repair", "mine.legwork"]);
    assert_eq!(
        (&mended["was_damaged"], &mended["put_right"], &mended["lost"]),
        (&json!(true), &json!(1), &json!([]))
    );
    assert_eq!(desk.done(&["surveys", "repair", "mine.legwork"])["was_damaged"], false);
    // More than a bit: named, and nothing changed before that is said.
    let mut bytes = fs::read(&database).unwrap();
    let at = bytes.windows(9).position(|part| part == b"\"metres\":").unwrap() + 9;
    bytes[at - 3] ^= 0x15;
    bytes[at - 5] ^= 0x12;
    fs::write(&database, &bytes).unwrap();
    let ran = desk.run(&["surveys", "repair", "mine.legwork"]);
    assert_eq!(ran.code, 3);
    assert!(ran.out.contains("the length of") && !ran.out.contains("was said before"), "{}", ran.out);
    assert!(ran.err.contains("--without-lost"), "{}", ran.err);
    let mended = desk.done(&["surveys", "repair", "mine.legwork", "--without-lost"]);
    assert_eq!(
        (mended["lost"].as_array().unwrap().len(), &mended["lost"][0]["field"]),
        (1, &json!("length"))
    );
    assert_eq!(desk.run(&["forecast", "mine.legwork"]).code, 0);
}

#[test]
fn a_missing_folder_of_photos_is_made_again_and_a_copy_is_called_as_it_was_named() {
    let desk = Desk::new();
    desk.write("house.toml", HOUSE);
    desk.done(&["sheet", "house.toml", "mine.legwork"]);
    fs::remove_dir(desk.work().join("mine.legwork/photos")).unwrap();
    desk.done(&["surveys", "repair", "mine.legwork"]);
    assert!(desk.work().join("mine.legwork/photos").is_dir());
    assert_eq!(desk.done(&["surveys", "copy", "mine.legwork", "other.legwork"])["survey"], "other.legwork");
    assert_eq!(
        desk.done(&["surveys", "rename", "other.legwork", "third.legwork"])["survey"],
        "third.legwork"
    );
    let listed = desk.done(&["surveys"]);
    assert!(listed["surveys"].as_array().unwrap().iter().any(|one| one["name"] == "third"), "{listed}");
}

#[test]
fn what_is_not_a_surveys_own_is_not_deleted_with_it() {
    let desk = Desk::new();
    desk.write("house.toml", HOUSE);
    desk.done(&["sheet", "house.toml", "mine.legwork"]);
    desk.write("mine.legwork/letter.txt", "mine");
    desk.write("mine.legwork/photos/holiday.jpg", "mine too");
    let done = desk.done(&["surveys", "delete", "mine.legwork", "--yes"]);
    assert_eq!(done["kept"], "mine.kept");
    assert_eq!(fs::read(desk.work().join("mine.kept/letter.txt")).unwrap(), b"mine");
    assert_eq!(fs::read(desk.work().join("mine.kept/photos/holiday.jpg")).unwrap(), b"mine too");
    assert!(!desk.work().join("mine.legwork").exists());
    desk.done(&["sheet", "house.toml", "mine.legwork"]);
    assert!(desk.done(&["surveys", "delete", "mine.legwork", "--yes"])["kept"].is_null());
}

#[cfg(unix)]
#[test]
fn a_survey_that_may_only_be_read_is_read_forecast_packed_and_reported() {
    use std::os::unix::fs::PermissionsExt;
    let desk = Desk::new();
    desk.write("house.toml", HOUSE);
    desk.done(&["sheet", "house.toml", "mine.legwork"]);
    // What was worked out while it could be written is read there too.
    desk.done(&["worklist", "mine.legwork"]);
    // A log that a program left which died, as a backup may hold it.
    let folder = desk.work().join("mine.legwork");
    let left = desk.work().join("left.legwork");
    {
        let mut open = facts::store::Store::open(&folder, facts::fact::AuthorId::random()).unwrap();
        open.write(&[facts::fact::Edit::new(facts::fact::SubjectId::random(), "is", "room")]).unwrap();
        fs::create_dir_all(left.join("photos")).unwrap();
        for name in ["survey.db", "survey.db-wal"] {
            fs::copy(folder.join(name), left.join(name)).unwrap();
        }
    }
    let all_read = |path: &Path| {
        let bits = if path.is_dir() { 0o555 } else { 0o444 };
        fs::set_permissions(path, fs::Permissions::from_mode(bits)).unwrap();
    };
    for survey in [&folder, &left] {
        for entry in fs::read_dir(survey).unwrap() {
            all_read(&entry.unwrap().path());
        }
        all_read(survey);
    }
    let out = desk.work().join("out");
    fs::create_dir(&out).unwrap();
    fs::set_permissions(&out, fs::Permissions::from_mode(0o777)).unwrap();
    for open in [desk.work(), desk.work().join("..")] {
        fs::set_permissions(open, fs::Permissions::from_mode(0o755)).unwrap();
    }
    // Root may write anywhere, so the command runs as somebody else.
    let binary = out.join("legwork");
    fs::copy(env!("CARGO_BIN_EXE_legwork"), &binary).unwrap();
    fs::set_permissions(&binary, fs::Permissions::from_mode(0o755)).unwrap();
    let run = |arguments: &[&str]| {
        let is_root =
            fs::metadata("/proc/self").is_ok_and(|found| std::os::unix::fs::MetadataExt::uid(&found) == 0);
        let mut command = if is_root {
            let mut command = std::process::Command::new("setpriv");
            command.args(["--reuid=65534", "--regid=65534", "--clear-groups"]).arg(&binary);
            command
        } else {
            std::process::Command::new(&binary)
        };
        let done =
            command.args(arguments).current_dir(desk.work()).env("LEGWORK_HOME", out.join("home")).output();
        let done = done.unwrap();
        (done.status.code().unwrap_or(-1), String::from_utf8(done.stderr).unwrap())
    };
    let before = (listed(&folder), listed(&left));
    for survey in ["mine.legwork", "left.legwork"] {
        let note = format!("legwork: nothing can be written in {survey}; it is only read.\n");
        for command in ["forecast", "findings", "worklist", "levels"] {
            assert_eq!(run(&[command, survey]), (0, note.clone()), "{command} {survey}");
            assert_eq!(run(&["--json", command, survey]), (0, String::new()), "{command} {survey}");
        }
        for command in ["said", "disagreements", "wishes"] {
            assert_eq!(run(&[command, survey]), (0, String::new()), "{command} {survey}");
        }
        assert_eq!(run(&["report", survey, &format!("out/{survey}.html")]), (0, note.clone()));
        assert_eq!(run(&["tags", survey, &format!("out/{survey}-tags.html")]), (0, note.clone()));
        assert_eq!(run(&["table", survey, "parts"]), (0, note));
        assert_eq!(run(&["pack", survey, &format!("out/{survey}.lwk")]), (0, String::new()));
        let (code, why) = run(&["note", survey, "no"]);
        assert_eq!(code, 1, "{why}");
    }
    assert_eq!((listed(&folder), listed(&left)), before);
    // What stood in the log that was left is read too.
    let packed =
        facts::file::look(&out.join("left.legwork.lwk"), None, facts::file::Limits::default(), &mut |_| true);
    let whole =
        facts::file::look(&out.join("mine.legwork.lwk"), None, facts::file::Limits::default(), &mut |_| true);
    assert_eq!(packed.unwrap().facts, whole.unwrap().facts);
}

/// The files in a folder, with their bytes.
fn listed(folder: &Path) -> Vec<(std::path::PathBuf, Vec<u8>)> {
    let entries = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let mut files: Vec<_> = entries.map(|path| (path.clone(), fs::read(&path).unwrap_or_default())).collect();
    files.sort();
    files
}

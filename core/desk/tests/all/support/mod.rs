//! Runs the real command in a folder of its own.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use desk::sheet;
use facts::fact::AuthorId;
use facts::store::Store;
use house::record::{Survey, fold};
use tempfile::TempDir;

pub mod pictures;

/// The house that a sheet tells, as a store of its own keeps it.
pub fn told_by_a_sheet(text: &str) -> Survey {
    let read = sheet::read(text.as_bytes(), None).unwrap_or_else(|problems| panic!("{problems:?}\n{text}"));
    let home = TempDir::new().unwrap();
    let mut store = Store::create(&home.path().join("sheet.legwork"), AuthorId::random()).unwrap();
    store.write(&read.edits(store.survey_id().subject())).unwrap();
    fold(store.ledger(), store.survey_id()).unwrap()
}

/// What a run gave.
pub struct Ran {
    /// Its exit code.
    pub code: i32,
    /// Its standard output.
    pub out: String,
    /// Its standard error.
    pub err: String,
}

impl Ran {
    /// Its standard output as JSON.
    pub fn json(&self) -> serde_json::Value {
        serde_json::from_str(&self.out)
            .unwrap_or_else(|error| panic!("{error} in {}\n{}", self.out, self.err))
    }
}

/// A folder to work in; gone afterwards.
pub struct Desk {
    folder: TempDir,
}

impl Desk {
    pub fn new() -> Self {
        let folder = TempDir::new().unwrap();
        std::fs::create_dir(folder.path().join("work")).unwrap();
        Self { folder }
    }

    /// The folder that commands run in.
    pub fn work(&self) -> PathBuf {
        self.folder.path().join("work")
    }

    /// Where the author id is kept.
    pub fn home(&self) -> PathBuf {
        self.folder.path().join("home")
    }

    /// Where the model that reads print is looked for; it is not there.
    pub fn print_model(&self) -> PathBuf {
        self.folder.path().join("print-model")
    }

    pub fn write(&self, name: &str, content: impl AsRef<[u8]>) {
        std::fs::write(self.work().join(name), content).unwrap();
    }

    /// The command, not yet run.
    pub fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_legwork"));
        command.args(arguments).current_dir(self.work()).env("LEGWORK_HOME", self.home());
        command.env("LEGWORK_PRINT_MODEL", self.print_model());
        command
    }

    pub fn run(&self, arguments: &[&str]) -> Ran {
        self.run_with(arguments, b"")
    }

    /// Runs it with this on its standard input.
    pub fn run_with(&self, arguments: &[&str], input: &[u8]) -> Ran {
        let mut command = self.command(arguments);
        command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
        let mut child = command.spawn().unwrap();
        // A command that refuses early reads nothing: that is no fault of the test.
        let _ = child.stdin.take().unwrap().write_all(input);
        let output = child.wait_with_output().unwrap();
        let ran = Ran {
            code: output.status.code().unwrap_or(-1),
            out: String::from_utf8(output.stdout).unwrap(),
            err: String::from_utf8(output.stderr).unwrap(),
        };
        // A message that was given less than it names.
        assert!(!(ran.out.contains("{$") || ran.err.contains("{$")), "{arguments:?}: {}{}", ran.out, ran.err);
        ran
    }

    /// Runs it and wants it done; gives its answer as JSON.
    pub fn done(&self, arguments: &[&str]) -> serde_json::Value {
        let ran = self.run(&[&["--json"], arguments].concat());
        assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{arguments:?}");
        ran.json()
    }

    /// Runs it as another computer would: with an author id of its own.
    pub fn done_by(&self, who: &str, arguments: &[&str]) -> serde_json::Value {
        let mut command = self.command(&[&["--json"], arguments].concat());
        let output = command.env("LEGWORK_HOME", self.folder.path().join(who)).output().unwrap();
        let err = String::from_utf8(output.stderr).unwrap();
        assert_eq!((output.status.code(), err.as_str()), (Some(0), ""), "{arguments:?}");
        serde_json::from_slice(&output.stdout).unwrap()
    }

    /// Runs it and wants it refused with this code and error name, in words and as JSON, and nothing written.
    pub fn refused(&self, code: i32, name: &str, arguments: &[&str]) -> String {
        let before = self.all();
        let told = self.run(arguments);
        assert_eq!((told.code, told.out.as_str()), (code, ""), "{arguments:?}: {}", told.err);
        assert!(told.err.starts_with("legwork: "), "{}", told.err);
        let wide = told.err.lines().find(|line| line.chars().count() > 80 && line.contains(' '));
        assert_eq!(wide, None);
        let as_json = self.run(&[&["--json"], arguments].concat());
        let error: serde_json::Value = serde_json::from_str(&as_json.err).unwrap();
        assert_eq!(as_json.code, code);
        assert_eq!((&error["error"]["name"], &error["error"]["exit_code"]), (&name.into(), &code.into()));
        assert!(self.all() == before, "{arguments:?}: something was written");
        told.err.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// As [`Desk::refused`], of a command that tells something first.
    pub fn refused_after_telling(&self, name: &str, arguments: &[&str]) -> String {
        let before = self.all();
        let told = self.run(arguments);
        assert_eq!(told.code, 3, "{arguments:?}: {}", told.err);
        let as_json = self.run(&[&["--json"], arguments].concat());
        let error: serde_json::Value = serde_json::from_str(&as_json.err).unwrap();
        assert_eq!(error["error"]["name"], name);
        assert!(self.all() == before, "{arguments:?}: something was written");
        told.err.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// Every file and folder in the work folder, hidden ones too, with its bytes.
    pub fn all(&self) -> Vec<(PathBuf, Vec<u8>)> {
        let mut all = Vec::new();
        look(&self.work(), &mut all);
        all.sort();
        all
    }
}

fn look(folder: &Path, all: &mut Vec<(PathBuf, Vec<u8>)>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        // What was worked out is kept whatever becomes of the answer: it is no part of the survey.
        if path.to_string_lossy().ends_with(".worked-out") {
            continue;
        }
        if path.is_dir() {
            all.push((path.clone(), Vec::new()));
            look(&path, all);
        } else {
            all.push((path.clone(), std::fs::read(&path).unwrap()));
        }
    }
}

/// The house of the demo.
pub const HOUSE: &str = include_str!("../../../demo/house.toml");

/// A small house that is as it should be: an entry with a filter, one good splitter, bridge and one room.
pub const SMALL: &str = r#"
[[room]]
name = "Office"
wish = "300 Mb/s"

[[part]]
tag = "E1"
kind = "entry"
service = "cable"
state = "connected"

[[part]]
tag = "G1"
kind = "ground_block"
from = "E1"

[[part]]
tag = "F1"
kind = "entry_filter"
band = "5-1002 MHz"
stop_band = "1125-1675 MHz"
rejection = "40 dB"
from = "G1"

[[part]]
tag = "S1"
kind = "splitter"
legs = 2
loss = "3.5 dB"
band = "5-1675 MHz"
from = "F1"

[[part]]
tag = "O1"
kind = "outlet"
from = "S1"
port = 1
cable = "6"
length = "5 m measured"
adapter = { bridge = true }

[[part]]
tag = "O2"
kind = "outlet"
room = "Office"
from = "S1"
port = 2
cable = "6"
length = "10 m measured"
"#;

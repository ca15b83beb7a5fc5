//! The arguments of the command. The texts here are what `--help` shows.

use std::path::PathBuf;

use clap::{Parser, Subcommand, ValueEnum};
use clap_complete::Shell;

mod record;

pub use record::{PhotoCommand, RecordCommand, Role, SurveysCommand, Without};

/// A wired-grade network in every room, over the coaxial TV cable that is already in the walls.
///
/// Give it a survey of the house's coax wiring; it works out what gets through to each room, what is wrong, and what
/// to do, in which order.
#[derive(Debug, Parser)]
#[command(name = "legwork", version, max_term_width = 80)]
#[command(
    after_help = "Exit codes: 0 done, 1 failed (disk, permission), 2 wrong use, 3 refused what it was given, 130 stopped."
)]
pub struct Arguments {
    /// Answer in JSON, as docs/command.md describes it.
    #[arg(long, global = true)]
    pub json: bool,

    /// Write lengths in feet first.
    #[arg(long, global = true)]
    pub feet: bool,

    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// What to do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// The whole job on an invented house: forecast, findings, work list, and a report to open in a browser.
    Demo {
        /// The folder for the survey and the report; made if it is not there.
        #[arg(long, value_name = "DIR", default_value = "legwork-demo")]
        out: PathBuf,
    },

    /// Make a survey of a house written by hand (docs/sheet.md describes how).
    Sheet {
        /// The house, a TOML file.
        sheet: PathBuf,
        /// The survey to make, NAME.legwork.
        survey: PathBuf,
        /// The survey is there: list what the sheet says otherwise. What the sheet leaves out stays.
        #[arg(long)]
        change: bool,
        /// Make these changes, as one action.
        #[arg(long, requires = "change")]
        yes: bool,
    },

    /// What gets through to each room, both ways, and what limits it.
    Forecast {
        /// The survey, NAME.legwork.
        survey: PathBuf,
    },

    /// What is wrong or at risk, why, and what to do about it.
    Findings {
        /// The survey, NAME.legwork.
        survey: PathBuf,
    },

    /// What to change, in which order, with the gain of each change.
    Worklist {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// What kind of work to leave out, whatever was chosen for the house; may stand several times.
        #[arg(long, value_enum, value_name = "WORK")]
        without: Vec<WorkLeftOut>,
        /// Choose this list for the house: every screen, report and command goes by it from then on.
        #[arg(long, requires = "without")]
        choose: bool,
    },

    /// What each TV and modem gets, whether that is enough, and what the work list changes of it.
    Levels {
        /// The survey, NAME.legwork.
        survey: PathBuf,
    },

    /// One HTML file with everything, to read, print and hand over.
    Report {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// The file to write.
        out: PathBuf,
        /// Replace the file if it is there.
        #[arg(long)]
        replace: bool,
        /// What to leave out; may stand several times.
        #[arg(long, value_enum, value_name = "WHAT")]
        without: Vec<Without>,
        /// Its first page alone, to hang up or to take to the shop.
        #[arg(long)]
        one_page: bool,
    },

    /// Tags to print, cut out and stick round the cables: one HTML file.
    Tags {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// The file to write.
        out: PathBuf,
        /// Replace the file if it is there.
        #[arg(long)]
        replace: bool,
    },

    /// Parts, readings or steps as a table in CSV, for a spreadsheet.
    Table {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// What the rows are.
        #[arg(value_enum)]
        what: TableOf,
        /// The file to write; without it, the table goes to standard output.
        out: Option<PathBuf>,
        /// Replace the file if it is there.
        #[arg(long)]
        replace: bool,
    },

    /// What a shell reads so that it completes this command.
    Completion {
        /// The shell.
        #[arg(value_enum)]
        shell: Shell,
    },

    /// The manual: its first page, or all of its pages as files.
    Man {
        /// The folder for the pages; without it, the first page goes to standard output.
        folder: Option<PathBuf>,
        /// Replace pages that are there.
        #[arg(long)]
        replace: bool,
    },

    /// What the text printed on a splitter, amplifier, filter or cable states, typed or read from a photo.
    ///
    /// What is read from a photo is a suggestion: each thing is sure or to be asked, and why. Nothing is written, and the
    /// photo stays on this computer.
    Label {
        /// The text, or - for one label on each line of standard input.
        #[arg(allow_hyphen_values = true, required_unless_present = "photo", conflicts_with = "photo")]
        text: Option<String>,
        /// Read it from this photo, JPEG or PNG. Twice: the marks at both ends of a cable, and what lies between them.
        #[arg(long, value_name = "FILE")]
        photo: Vec<PathBuf>,
        /// Where the label is in the photo, in its pixels as it is shown; of two photos, one for each.
        #[arg(
            long,
            value_name = "X,Y,W,H",
            requires = "photo",
            conflicts_with = "text",
            allow_hyphen_values = true
        )]
        crop: Vec<String>,
    },

    /// Be led through the whole job in this terminal: questions, results, work, tests, handover.
    ///
    /// A number chooses, a word acts, `NAME = text` fills, `<` goes back. Whatever was answered is kept at once;
    /// end it with Ctrl-D and go on later where you were.
    Walk {
        /// The survey, NAME.legwork. Without it: the surveys of this folder, or a new one.
        survey: Option<PathBuf>,
        /// Read the answers from this file, one a line, instead of the keyboard.
        #[arg(long, value_name = "FILE")]
        answers: Option<PathBuf>,
    },

    /// The whole job as a page in this computer's browser: the same screens, with photos, map and plots.
    ///
    /// It is served on this computer alone, and only to the browser that opens the address printed here; it ends with
    /// Ctrl-C. Whatever was answered is kept at once.
    Page {
        /// The survey, NAME.legwork. Without it: the surveys of this folder, or a new one.
        survey: Option<PathBuf>,
        /// An invented house, kept only as long as this runs.
        #[arg(long, conflicts_with = "survey")]
        demo: bool,
        /// Print the address and open no browser.
        #[arg(long)]
        no_browser: bool,
    },

    /// The commands of the record.
    #[command(flatten)]
    Record(RecordCommand),
}

/// What a work list leaves out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum WorkLeftOut {
    /// No cable is laid, replaced or traced.
    NewCable,
    /// Nothing that may need an attic, a ladder or a roof.
    Heights,
    /// Nothing is left out.
    Nothing,
}

impl WorkLeftOut {
    /// The kind of work; `None` where nothing is left out.
    pub const fn kind(self) -> Option<house::record::Without> {
        match self {
            Self::NewCable => Some(house::record::Without::NewCable),
            Self::Heights => Some(house::record::Without::Heights),
            Self::Nothing => None,
        }
    }
}

/// What the rows of a table are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum TableOf {
    /// Everything on the coax, each with the cable that leads to it.
    Parts,
    /// What was measured.
    Readings,
    /// What to change, in order.
    Steps,
}

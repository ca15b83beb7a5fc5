//! The arguments of the commands of the record: photos, notes, who said what, files, the list of surveys.

use std::path::PathBuf;

use clap::{Subcommand, ValueEnum};
use facts::file::LeftOut;
use house::record::PhotoRole;

/// What to do with the record of a survey.
#[derive(Debug, Subcommand)]
pub enum RecordCommand {
    /// Photos of parts: add, list, assign, write out.
    Photo {
        /// What to do with photos.
        #[command(subcommand)]
        what: PhotoCommand,
    },

    /// Notes: add one, or list them.
    Note {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// The note; without it, the notes are listed.
        text: Option<String>,
        /// What it is about: a tag, a room's name, or an id; without it, the survey as a whole.
        #[arg(long, value_name = "THING")]
        on: Option<String>,
    },

    /// Set fields of a thing, in the words and units of a sheet (docs/sheet.md); checked as a sheet is.
    Set {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// A tag, a room's name, `survey`, or an id.
        thing: String,
        /// The field, such as `length`, and its value, such as "12 m measured", or not-known; several pairs are one action.
        #[arg(required = true, num_args = 2.., value_names = ["FIELD", "VALUE"], allow_hyphen_values = true)]
        told: Vec<String>,
    },

    /// Another part like one that is there: of the same kind, label and rating, and fed by nothing yet.
    CopyPart {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// The part: its tag or id.
        thing: String,
        /// The tag of the new one.
        tag: String,
    },

    /// Look for a word in all surveys of a folder: in names, places, tags, labels and notes.
    Search {
        /// The word, or several as they stand; case does not matter.
        word: String,
        /// The folder that holds the surveys.
        #[arg(default_value = ".")]
        home: PathBuf,
    },

    /// Who said what, and when: every action, or the story of one thing.
    Said {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// A tag, a room's name, `survey`, or an id; without it, all actions are listed.
        thing: Option<String>,
        /// One field of it, such as `length`.
        field: Option<String>,
    },

    /// Who wrote in the survey, and what you are called in it.
    Authors {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// What you are called from now on in this survey and its copies; an empty name takes it back.
        #[arg(long, value_name = "NAME")]
        me: Option<String>,
    },

    /// Take an action back. An undo is an action too, and can be undone.
    Undo {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// The id of the action, or its beginning (`legwork said` lists them); without it, your newest one that stands.
        act: Option<String>,
    },

    /// What people say differently, without having seen each other's word.
    Disagreements {
        /// The survey, NAME.legwork.
        survey: PathBuf,
    },

    /// Settle a disagreement by choosing one side.
    Settle {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// What it is about: a tag, a room's name, `survey`, or an id.
        thing: String,
        /// The field, such as `length`.
        field: String,
        /// The side: its number in `legwork disagreements`, or the id of its record.
        side: String,
    },

    /// Remove things: hidden, never deleted; `legwork bring-back` brings them back.
    Remove {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// Tags, names of rooms, or ids.
        #[arg(required = true, value_name = "THING")]
        things: Vec<String>,
        /// Also where something hangs on it; without this, what that is is told and nothing is removed.
        #[arg(long)]
        yes: bool,
    },

    /// What was removed.
    Removed {
        /// The survey, NAME.legwork.
        survey: PathBuf,
    },

    /// Bring removed things back.
    BringBack {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// Tags, names of rooms, or ids.
        #[arg(required = true, value_name = "THING")]
        things: Vec<String>,
    },

    /// Make something forgotten for ever: an address, a note, a photo.
    Forget {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// A tag, a room's name, `survey`, or an id of a part, photo or note.
        thing: String,
        /// One field of it, such as `place`; without it, all that was ever said about the thing.
        field: Option<String>,
        /// Yes, for ever.
        #[arg(long)]
        yes: bool,
    },

    /// The surveys in a folder: list, rename, copy, set aside, bring back, delete, repair.
    #[command(args_conflicts_with_subcommands = true)]
    Surveys {
        /// The folder that holds them.
        #[arg(default_value = ".")]
        home: PathBuf,
        /// What to do with one of them.
        #[command(subcommand)]
        what: Option<SurveysCommand>,
    },

    /// Pack a survey into one file, to keep or to send.
    Pack {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// The file to write, NAME.lwk.
        file: PathBuf,
        /// What to leave out; may stand several times.
        #[arg(long, value_enum, value_name = "WHAT")]
        without: Vec<Without>,
        /// Put no report into it: then it does not wait for one.
        #[arg(long)]
        no_report: bool,
        /// Replace the file if it is there.
        #[arg(long)]
        replace: bool,
    },

    /// What a file would bring, without taking it in.
    Look {
        /// The file, NAME.lwk.
        file: PathBuf,
        /// The survey it would be taken into, NAME.legwork.
        survey: Option<PathBuf>,
        /// Read a file that unfolds to at most this many GiB.
        #[arg(long, value_name = "GIB", default_value_t = 8, value_parser = clap::value_parser!(u64).range(1..=1024))]
        most: u64,
    },

    /// Take a file into its survey, or as a survey of its own where none is there yet.
    Take {
        /// The file, NAME.lwk.
        file: PathBuf,
        /// The survey, NAME.legwork; made if it is not there.
        survey: PathBuf,
        /// Forget here, for ever, what the file tells to forget. Without it, that waits (`legwork wishes`).
        #[arg(long)]
        yes: bool,
        /// Take it also where more than half of the survey would be removed or moved.
        #[arg(long)]
        rearrange: bool,
        /// Read a file that unfolds to at most this many GiB.
        #[arg(long, value_name = "GIB", default_value_t = 8, value_parser = clap::value_parser!(u64).range(1..=1024))]
        most: u64,
    },

    /// Put back what the last file brought, for 30 days; what was forgotten with your yes stays forgotten.
    PutBack {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// Yes, also where more was written since: then what stood before is written again, and whoever takes in a file
        /// from here reads that too.
        #[arg(long)]
        yes: bool,
        /// Keep it for good instead.
        #[arg(long, conflicts_with = "yes")]
        keep: bool,
    },

    /// What files asked to be forgotten here, which waits for your answer.
    Wishes {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// Forget it, for ever.
        #[arg(long)]
        yes: bool,
        /// Keep it; it is not asked again.
        #[arg(long, conflicts_with = "yes")]
        no: bool,
    },
}

/// What to do with photos.
#[derive(Debug, Subcommand)]
pub enum PhotoCommand {
    /// Take pictures in, JPEG or PNG; all of them, or none if one is refused. A picture that is there already is named and
    /// not taken in again.
    Add {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// The pictures: files, folders, patterns such as `*.jpg`, or names as they are when a file is dropped on a
        /// terminal.
        #[arg(required = true, value_name = "PICTURE")]
        pictures: Vec<PathBuf>,
        /// Take in also what is there already: the same picture is then two photos.
        #[arg(long)]
        again: bool,
        /// The tag or id of the part or cable run they show; can be said later.
        #[arg(long, value_name = "THING")]
        of: Option<String>,
        /// What of it they show.
        #[arg(long, value_enum)]
        role: Option<Role>,
    },

    /// The photos of a survey.
    List {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// Only those of this part or cable run: its tag or id.
        thing: Option<String>,
        /// Only those that show no part yet.
        #[arg(long, conflicts_with = "thing")]
        unassigned: bool,
    },

    /// Say what photos show: all of them the same, or each what a list says, in one act.
    Assign {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// The photos: their ids or the beginnings of these (`legwork photo list`), or the names of their files.
        #[arg(required_unless_present = "list", conflicts_with = "list", value_name = "PHOTO")]
        photos: Vec<String>,
        /// The tag or id of the part or cable run they show.
        #[arg(long, value_name = "THING", required_unless_present_any = ["nothing", "list"])]
        of: Option<String>,
        /// Take them off what they were assigned to, and what they showed of it.
        #[arg(long, conflicts_with = "of")]
        nothing: bool,
        /// What of it they show; without it, what was said of that before stays.
        #[arg(long, value_enum)]
        role: Option<Role>,
        /// A file with one photo on each line, or - for standard input: `PHOTO THING ROLE`, between blanks or commas. A THING
        /// that is - is nothing, and ROLE may be left out.
        #[arg(long, value_name = "FILE", conflicts_with_all = ["of", "nothing", "role"])]
        list: Option<PathBuf>,
    },

    /// Write a photo into a file of its own.
    Write {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// The id of the photo, or its beginning.
        photo: String,
        /// The file to write.
        out: PathBuf,
        /// Replace the file if it is there.
        #[arg(long)]
        replace: bool,
    },
}

/// What to do with one survey of a folder.
#[derive(Debug, Subcommand)]
pub enum SurveysCommand {
    /// Give a survey another name: its own, and its folder's.
    Rename {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// The new name.
        name: String,
    },
    /// Make a copy that is a survey of its own: the two never merge.
    Copy {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// The name of the copy.
        name: String,
    },
    /// Make a survey of the next flat, built like this one: parts, cables, labels and rooms; no readings, photos, notes,
    /// devices, nor anything of who lives there.
    Pattern {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// The name of the new one.
        name: String,
    },
    /// Set a survey aside: out of the list, into the folder set-aside.
    Aside {
        /// The survey, NAME.legwork.
        survey: PathBuf,
    },
    /// Bring back a survey that was set aside.
    Back {
        /// The survey, set-aside/NAME.legwork.
        survey: PathBuf,
    },
    /// Delete a survey, photos and all.
    Delete {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// Yes, for ever.
        #[arg(long)]
        yes: bool,
    },
    /// Look whether a survey is whole, and repair it if not.
    Repair {
        /// The survey, NAME.legwork.
        survey: PathBuf,
        /// A file of this survey, where records are lost.
        #[arg(long, value_name = "FILE")]
        from: Option<PathBuf>,
        /// Give up the records that are lost: what was said before them counts again.
        #[arg(long, conflicts_with = "from")]
        without_lost: bool,
    },
}

/// What of a part a photo shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Role {
    /// The part before anything was changed.
    Before,
    /// The part after the work.
    After,
    /// The print on the part.
    Label,
    /// Where the part sits.
    Place,
}

impl From<Role> for PhotoRole {
    fn from(role: Role) -> Self {
        match role {
            Role::Before => Self::Before,
            Role::After => Self::After,
            Role::Label => Self::Label,
            Role::Place => Self::Place,
        }
    }
}

/// What a file is made without.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Without {
    /// Name and place of the survey, names of authors.
    Owner,
    /// All notes.
    Notes,
    /// Where parts sit, in people's own words.
    Places,
    /// The pictures; that there are photos, and of what, stays.
    Photos,
    /// The pictures and all that is said of them.
    PhotoRecords,
}

impl From<Without> for LeftOut {
    fn from(what: Without) -> Self {
        match what {
            Without::Owner => Self::Owner,
            Without::Notes => Self::Notes,
            Without::Photos => Self::Photos,
            Without::Places => Self::Places,
            Without::PhotoRecords => Self::PhotoRecords,
        }
    }
}

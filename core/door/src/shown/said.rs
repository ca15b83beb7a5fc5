//! Words to read, notices, and what a screen reader says.

use guide::screen::{
    Aloud, AloudRole, CautionBlock, NoticeRole, NoticeShown, Severity, WordsBlock, WordsRole,
};

/// What words are for; a shell sets them accordingly.
#[uniffi::remote(Enum)]
pub enum WordsRole {
    /// What the screen says or asks first.
    Lead,
    /// Why it is asked.
    Why,
    /// What it looks like, or how it is done.
    How,
    /// A heading within the screen.
    Heading,
    /// Anything else.
    Plain,
    /// Smaller print: a source, a remark.
    Aside,
    /// What was wrong with what was given, and what to do.
    Problem,
}

/// Words to read.
#[uniffi::remote(Record)]
pub struct WordsBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// What they are for.
    pub role: WordsRole,
    /// A few words behind which they may stand folded; empty where they are to stand open. Long words that may fold
    /// always have one.
    pub head: String,
    /// The words.
    pub words: String,
    /// How much weighs what they say.
    pub severity: Severity,
}

/// A caution. A shell sets it apart by shape and by its name, never by colour alone.
#[uniffi::remote(Record)]
pub struct CautionBlock {
    /// Its id on the screen; the same caution has the same on every screen.
    pub id: String,
    /// What a screen reader says of it: all of it, folded or not.
    pub aloud: Aloud,
    /// Its name: that it is a caution.
    pub name: String,
    /// What to do or leave, in a few words: what stands open where the rest is folded.
    pub head: String,
    /// What can hurt someone or cut something off, with the reason, and who should do it.
    pub words: String,
}

/// What a notice is for.
#[uniffi::remote(Enum)]
pub enum NoticeRole {
    /// Something was wrong with what was given, or could not be done; with what to do about it.
    Problem,
    /// Something was done.
    Done,
}

/// What is said about the last deed. It stands above everything else, and is gone after the next deed.
#[uniffi::remote(Record)]
pub struct NoticeShown {
    /// Its id: the same as long as it is the same notice. The same words said anew are a new notice, to be read out again.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// What it is for.
    pub role: NoticeRole,
    /// The words.
    pub words: String,
}

/// How much something weighs. A shell shows it by shape and word, and by colour last.
#[uniffi::remote(Enum)]
pub enum Severity {
    /// Nothing is wrong.
    Calm,
    /// Good to know.
    Note,
    /// Costs little.
    Minor,
    /// Costs speed, or may soon.
    Costly,
    /// Can hurt someone, cut something off, or let strangers in.
    Grave,
}

/// What kind of thing it is. A shell maps it to its platform's role or trait.
#[uniffi::remote(Enum)]
pub enum AloudRole {
    /// Words to read.
    Prose,
    /// A heading: the lead of a screen, and headings within it.
    Heading,
    /// Something that went wrong; said at once, whatever was being said.
    Alert,
    /// Something that was done; said when there is quiet.
    Status,
    /// A caution; one stop, all of it read together.
    Caution,
    /// Several answers of which one is chosen.
    ChooseOne,
    /// Several answers of which any are chosen.
    ChooseSeveral,
    /// One answer of those of which one is chosen.
    OneOf,
    /// One answer of those of which any are chosen.
    AnyOf,
    /// A place to write in.
    WriteHere,
    /// A place to write what is looked for.
    SearchHere,
    /// A place for a number.
    NumberHere,
    /// A place for photos.
    PhotosHere,
    /// A picture.
    Picture,
    /// Several things that belong together.
    Group,
    /// Something that is only read: a figure, a reading, a row.
    Fact,
    /// A row or a mark that leads on.
    LeadsOn,
    /// A row that is switched by a touch.
    Switch,
    /// A drawing.
    Drawing,
    /// How far something has come.
    Progress,
    /// Something to press.
    Press,
    /// Something to press that asks once more.
    PressAsks,
}

/// What a screen reader says of one thing. Whether it is picked, cannot be pressed, or destroys something is a state of
/// the thing itself, said by the platform in its own words.
#[uniffi::remote(Record)]
pub struct Aloud {
    /// What kind of thing it is.
    pub role: AloudRole,
    /// What it is; never empty.
    pub label: String,
    /// What it says or holds now; may be empty.
    pub value: String,
    /// What comes of touching it, or how to fill it in; may be empty.
    pub hint: String,
}

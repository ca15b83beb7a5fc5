//! Blocks that only tell.

use super::{Aloud, Severity};

/// What words are for; a shell sets them accordingly.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
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

impl WordsRole {
    /// Whether words for this may stand folded behind their head: nobody needs them to go on.
    pub const fn may_fold(self) -> bool {
        matches!(self, Self::Why | Self::How | Self::Aside)
    }
}

/// Words to read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WordsBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// What they are for.
    pub role: WordsRole,
    /// A few words behind which they stand folded; empty where they stand open. Long words that may fold always have one,
    /// and no others.
    pub head: String,
    /// The words.
    pub words: String,
    /// How much weighs what they say.
    pub severity: Severity,
}

/// From how many letters on words that may fold are long.
pub const LONG_WORDS: usize = 140;

/// The most letters of a head.
pub const MOST_HEAD: usize = 60;

/// A caution. A shell sets it apart by shape and by its name, never by colour alone.
#[derive(Debug, Clone, PartialEq, Eq)]
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
    /// Whether nobody has read it yet in this survey on this device: it stands in full then. Once it was read its head stands,
    /// and its words are a touch away.
    pub unread: bool,
}

//! What a sender may leave out of a file.
//!
//! Whatever is left out goes with its whole story: all facts of a field, or of a subject. Facts only replace facts of
//! the same subject and field, so a file stays without holes and merges like any other.

use std::collections::BTreeSet;

use crate::fact::{AuthorId, Fact, Ledger, SubjectId, SurveyId, reserved};

/// How a file is made.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PackOptions {
    /// What is not to be in it.
    pub left_out: BTreeSet<LeftOut>,
    /// Whether a file that has the name already is replaced.
    pub replace: bool,
}

/// What can be left out of a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LeftOut {
    /// All notes.
    Notes,
    /// Who and where: the survey's name and place, owner, phone, address and e-mail wherever they stand, and the
    /// display names of authors. What rooms are called and where parts sit stays, because the wiring needs it.
    Owner,
    /// The bytes of photos. That there is a photo, and of what, stays.
    Photos,
}

impl LeftOut {
    /// Its word in the header.
    pub(super) const fn word(self) -> &'static str {
        match self {
            Self::Notes => "notes",
            Self::Owner => "owner",
            Self::Photos => "photos",
        }
    }

    /// What a word in the header means.
    pub(super) fn of_word(word: &str) -> Option<Self> {
        [Self::Notes, Self::Owner, Self::Photos].into_iter().find(|what| what.word() == word)
    }
}

/// Decides which facts go into a file.
pub(super) struct Filter<'a> {
    left_out: &'a BTreeSet<LeftOut>,
    survey: SubjectId,
    authors: BTreeSet<SubjectId>,
    notes: BTreeSet<SubjectId>,
}

impl<'a> Filter<'a> {
    pub(super) fn new(left_out: &'a BTreeSet<LeftOut>, ledger: &Ledger, survey: SurveyId) -> Self {
        let is_note = |fact: &&Fact| fact.field() == reserved::IS && fact.value() == reserved::NOTE;
        Self {
            left_out,
            survey: survey.subject(),
            authors: ledger.facts().map(Fact::by).map(AuthorId::subject).collect(),
            notes: ledger.facts().filter(is_note).map(Fact::subject).collect(),
        }
    }

    /// Whether facts are left out at all.
    pub(super) fn leaves_out_facts(&self) -> bool {
        self.left_out.contains(&LeftOut::Notes) || self.left_out.contains(&LeftOut::Owner)
    }

    /// Whether a fact goes into the file. Depends on its subject and field only, and so never makes a hole.
    pub(super) fn admits(&self, fact: &Fact) -> bool {
        let (subject, name) = (fact.subject(), fact.field());
        let is_note = self.notes.contains(&subject);
        let is_owner = reserved::OWNER.contains(&name)
            || self.authors.contains(&subject)
            || (subject == self.survey && matches!(name, reserved::NAME | reserved::PLACE));
        !(is_note && self.left_out.contains(&LeftOut::Notes)
            || is_owner && self.left_out.contains(&LeftOut::Owner))
    }
}

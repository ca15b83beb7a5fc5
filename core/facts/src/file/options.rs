//! What a sender may leave out of a file.
//!
//! Whatever is left out goes with its whole story: all facts of a field, or of a subject. Facts only replace facts of
//! the same subject and field, so a file stays without holes and merges like any other.

use std::collections::BTreeSet;

use crate::error::Result;
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
    /// Where parts sit, in people's own words.
    Places,
    /// All that is said of photos: that there are any, of what, their hashes and sizes. Their bytes go with it.
    PhotoRecords,
}

impl LeftOut {
    /// All that can be left out.
    pub const ALL: [Self; 5] = [Self::Owner, Self::Notes, Self::Places, Self::Photos, Self::PhotoRecords];

    /// Its word in the header.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Notes => "notes",
            Self::Owner => "owner",
            Self::Photos => "photos",
            Self::Places => "places",
            Self::PhotoRecords => "photo-records",
        }
    }

    /// What a word in the header means.
    pub fn of_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|what| what.word() == word)
    }
}

/// What a file tells of people though their names and the place of the house were left out of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum StillTold {
    /// When each thing was written: it stands in every id, and cannot be left out.
    Times,
    /// Which things were written by one hand, under an id that belongs to this survey alone: it cannot be left out.
    Hands,
    /// What rooms are called: it cannot be left out, since outlets are told apart by it.
    Rooms,
    /// Where parts sit, in people's own words.
    Places,
    /// Notes.
    Notes,
    /// What photos show.
    Photos,
    /// Of photos that were left out, their hashes and sizes: whoever has a picture can tell that it was there.
    PhotoHashes,
}

impl StillTold {
    /// Its word: in JSON, and as the end of the name of its sentence.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Times => "times",
            Self::Hands => "hands",
            Self::Rooms => "rooms",
            Self::Places => "places",
            Self::Notes => "notes",
            Self::Photos => "photos",
            Self::PhotoHashes => "photo-hashes",
        }
    }
}

/// What a file of this survey would still tell, made without what is named. Of a file with its owner nothing is listed: it tells
/// all.
pub fn still_told(ledger: &Ledger, survey: SurveyId, left_out: &BTreeSet<LeftOut>) -> BTreeSet<StillTold> {
    let mut told = BTreeSet::new();
    if !left_out.contains(&LeftOut::Owner) {
        return told;
    }
    let filter = Filter::new(left_out, ledger, survey);
    for fact in ledger.facts().filter(|fact| filter.admits(fact)) {
        told.extend([StillTold::Times, StillTold::Hands]);
        if fact.is_forgotten() || fact.value().is_null() {
            continue;
        }
        match fact.field() {
            reserved::NAME => told.insert(StillTold::Rooms),
            reserved::WHERE => told.insert(StillTold::Places),
            reserved::IMAGE if left_out.contains(&LeftOut::Photos) => told.insert(StillTold::PhotoHashes),
            reserved::IMAGE => told.insert(StillTold::Photos),
            _ if filter.notes.contains(&fact.subject()) => told.insert(StillTold::Notes),
            _ => false,
        };
    }
    told
}

/// The facts of a survey without what is left out.
///
/// # Errors
/// What [`Ledger::insert`] refuses, which no ledger holds.
pub fn without(ledger: &Ledger, survey: SurveyId, left_out: &BTreeSet<LeftOut>) -> Result<Ledger> {
    let filter = Filter::new(left_out, ledger, survey);
    let mut part = Ledger::new();
    for fact in ledger.facts().filter(|fact| filter.admits(fact)) {
        part.insert(fact.clone())?;
    }
    Ok(part)
}

/// Decides which facts go into a file.
pub(super) struct Filter<'a> {
    left_out: &'a BTreeSet<LeftOut>,
    survey: SubjectId,
    authors: BTreeSet<SubjectId>,
    notes: BTreeSet<SubjectId>,
    photos: BTreeSet<SubjectId>,
}

impl<'a> Filter<'a> {
    pub(super) fn new(left_out: &'a BTreeSet<LeftOut>, ledger: &Ledger, survey: SurveyId) -> Self {
        let ever = |is: &'static str| {
            ledger.facts().filter(move |fact| fact.field() == reserved::IS && fact.value() == is)
        };
        let named = ledger.facts().filter(|fact| fact.field() == reserved::IMAGE);
        Self {
            left_out,
            survey: survey.subject(),
            authors: ledger.facts().map(Fact::by).map(AuthorId::subject).collect(),
            notes: ever(reserved::NOTE).map(Fact::subject).collect(),
            photos: ever(reserved::PHOTO).chain(named).map(Fact::subject).collect(),
        }
    }

    /// Whether facts are left out at all.
    pub(super) fn leaves_out_facts(&self) -> bool {
        self.left_out.iter().any(|what| *what != LeftOut::Photos)
    }

    /// Whether a fact goes into the file. Depends on its subject and field only, and so never makes a hole.
    pub(super) fn admits(&self, fact: &Fact) -> bool {
        let (subject, name) = (fact.subject(), fact.field());
        let is_note = self.notes.contains(&subject);
        let is_owner = reserved::OWNER.contains(&name)
            || self.authors.contains(&subject)
            || (subject == self.survey && matches!(name, reserved::NAME | reserved::PLACE));
        let left_out = |what, is_it| is_it && self.left_out.contains(&what);
        !(left_out(LeftOut::Notes, is_note)
            || left_out(LeftOut::Owner, is_owner)
            || left_out(LeftOut::Places, name == reserved::WHERE)
            || left_out(LeftOut::PhotoRecords, self.photos.contains(&subject)))
    }
}

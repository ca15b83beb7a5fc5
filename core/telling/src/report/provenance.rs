//! Where a report comes from: when, by whom, from which house, with which pictures.

use std::collections::{BTreeMap, BTreeSet};

use facts::act::author_name;
use facts::error::Result;
use facts::fact::{Fact, Ledger, SubjectId};
use house::record::Survey;

/// What a report tells of a survey besides its records.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Provenance {
    /// When the newest fact was written, in milliseconds since 1970: the only date that a report carries.
    pub newest_ms: Option<u64>,
    /// What those are called who wrote the survey, in the order of their names; who gave no name is not told.
    pub authors: Vec<String>,
    /// The house before any piece of work; `None` where no work is recorded.
    pub found: Option<Survey>,
    /// Photos by id, each a JPEG the right way up.
    pub pictures: BTreeMap<SubjectId, Vec<u8>>,
    /// So many photos of parts and runs the report takes no more: they stand in the survey's file alone.
    pub left_out: usize,
    /// Whether the photos lie beside the report, in the same file, and not in it.
    pub has_photos_beside: bool,
}

/// The longer side of a photo in a report, in pixels: some 200 an inch as it is printed.
pub const PICTURE_SIDE: u32 = 480;

/// The most photos in a report: with more it would be too long to send.
const MOST_PICTURES: usize = 48;

impl Provenance {
    /// What the facts tell; no pictures.
    ///
    /// # Errors
    /// `TooManyParts`, which no survey written here has.
    pub fn of(survey: &Survey, ledger: &Ledger) -> Result<Self> {
        let authors: BTreeSet<_> = ledger.facts().map(Fact::by).collect();
        let mut authors: Vec<_> =
            authors.into_iter().filter_map(|author| author_name(ledger, author).map(str::to_owned)).collect();
        authors.sort();
        authors.dedup();
        Ok(Self {
            newest_ms: ledger.facts().next_back().map(|fact| fact.id().ms()),
            authors,
            found: survey.as_found(ledger)?,
            ..Self::default()
        })
    }

    /// The same with the photos of parts and runs, as `picture` gives them, up to the most that a report takes. One that it
    /// does not give is not shown.
    #[must_use]
    pub fn with_pictures(
        mut self,
        survey: &Survey,
        mut picture: impl FnMut(SubjectId) -> Option<Vec<u8>>,
    ) -> Self {
        let of_something = || survey.photos.values().filter(|photo| photo.of.is_some());
        self.left_out = of_something().count().saturating_sub(MOST_PICTURES);
        let shown = of_something().take(MOST_PICTURES);
        self.pictures = shown.filter_map(|photo| Some((photo.id, picture(photo.id)?))).collect();
        self
    }
}

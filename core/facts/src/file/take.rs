//! Taking a file in, and putting back what it brought.

use std::collections::BTreeSet;
use std::path::Path;

use super::bag::Bag;
use super::facts;
use super::limits::Limits;
use super::photo::PhotoName;
use super::staging::{self, Placed, Staging};
use super::upheaval::Upheaval;
use super::watch::{Meter, Watch};
use crate::error::{FactsError, Result};
use crate::fact::{Fact, FactId, Writer, hold_back};
use crate::store::{Returned, Store};

/// What somebody agreed to who saw what a file would do ([`look`](super::look)).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Consent {
    /// What the file tells to forget is forgotten here, for ever. Without it, that waits
    /// ([`Store::wishes`]), and all else is taken.
    pub forget: bool,
    /// More than half of the survey may be removed or moved ([`Upheaval::asks_first`]). Without it, nothing is taken.
    pub upheaval: bool,
}

impl Consent {
    /// To everything.
    pub const ALL: Self = Self { forget: true, upheaval: true };
    /// To nothing but what only adds.
    pub const NONE: Self = Self { forget: false, upheaval: false };
}

/// What a file brought.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Taken {
    /// The facts that are new here, by id.
    pub facts: Vec<FactId>,
    /// The photos that are new here, or were damaged and are whole again.
    pub photos: Vec<PhotoName>,
    /// How much of what is here it tells to forget and nobody has agreed to: as [`Store::wishes`] counts.
    pub waiting: usize,
}

/// Takes a file into the survey that it belongs to, all or nothing. What it brings is on the disk when this returns,
/// and can be put back with [`put_back`] for 30 days.
///
/// # Errors
/// `File` if the file is refused, `Upheaval` if it would turn the survey upside down without consent, `OtherSurvey` if it holds another survey (see [`take_as_new`]), `FactDiffers`,
/// `FromTheFuture`, `TooManyParts` or `TooManyFacts` if its facts do not go together with those held, `Stopped`, or
/// what [`Store::write_facts`] gives. The survey is then as it was.
pub fn take(
    path: &Path,
    store: &mut Store,
    consent: Consent,
    limits: Limits,
    watch: &mut dyn Watch,
) -> Result<Taken> {
    store.refresh()?;
    let bag = Bag::open(path, limits)?;
    if bag.header().survey != store.survey_id() {
        return Err(FactsError::OtherSurvey { file: path.to_owned() });
    }
    take_bag(&bag, store, consent, watch)
}

/// Takes a file in as a survey of its own at `folder` (`.../NAME.legwork`, whose parent exists), to be written in the
/// name of `author`. It is the same survey as the sender's: files go to and fro between them. There is nothing to turn
/// upside down, so only what `consent` says of forgetting counts.
///
/// # Errors
/// As [`take`] and [`Store::create`]. Nothing is left then.
pub fn take_as_new(
    path: &Path,
    folder: &Path,
    author: impl Into<Writer>,
    consent: Consent,
    limits: Limits,
    watch: &mut dyn Watch,
) -> Result<(Store, Taken)> {
    let author = author.into();
    let bag = Bag::open(path, limits)?;
    let mut taken = None;
    let store = Store::create_with(folder, author, bag.header().survey, |unfinished| {
        let mut store = Store::open(unfinished, author)?;
        taken = Some(take_bag(&bag, &mut store, consent, watch)?);
        Ok(())
    })?;
    taken.map(|taken| (store, taken)).ok_or(FactsError::Inner("a new survey was not filled"))
}

fn take_bag(bag: &Bag, store: &mut Store, consent: Consent, watch: &mut dyn Watch) -> Result<Taken> {
    let mut meter = Meter::new(watch, bag.total_bytes());
    let mut staging = Staging::new(store.folder(), store.photos());
    let checked = bag.check(store.ledger(), store.clock(), Some(&mut staging), &mut meter)?;
    let new = facts::new_facts(bag, store.ledger(), checked.sha256)?;
    // In a new survey there is nothing to turn upside down.
    if !consent.upheaval && !store.ledger().is_empty() {
        // What would be forgotten is another question.
        let admitted = hold_back(store.ledger(), new.clone(), &store.refused()?).admitted;
        let upheaval = Upheaval::of(store.ledger(), store.survey_id(), &admitted)?;
        if upheaval.asks_first() {
            let Upheaval { things, gone, parts, parts_changed } = upheaval;
            let file = bag.path().to_owned();
            return Err(FactsError::Upheaval { file, things, gone, parts, parts_changed });
        }
    }
    staging.sync()?;
    let mut placed = Placed::default();
    let written = store.take_in(new, consent.forget, || staging.put_in_place(&mut placed));
    let written = written.inspect_err(|_| staging::remove(&staging.photos, &placed.new))?;
    let mut photos = placed.all;
    // Something may have been forgotten meanwhile, or by this very file.
    let named = named_photos(store.ledger().facts());
    let unnamed: Vec<PhotoName> = photos.extract_if(.., |photo| !named.contains(photo)).collect();
    staging::remove(&store.photos(), &unnamed);
    Ok(Taken { facts: written.facts, photos, waiting: written.waiting })
}

/// Undoes the last take that brought facts and was not put back yet, for 30 days: without a trace while nothing was written
/// since, later by facts that say what stood before. What was forgotten with consent stays forgotten. Photos that only
/// facts name that are gone go with them.
///
/// # Errors
/// [`FactsError::CannotPutBack`] with the reason; `Busy`, `DiskFull` or `Database` if it cannot be written. The survey
/// is then as it was.
pub fn put_back(store: &mut Store) -> Result<Returned> {
    let returned = store.put_back()?;
    let named = named_photos(store.ledger().facts());
    let gone: Vec<PhotoName> = named_photos(returned.facts.iter()).difference(&named).copied().collect();
    staging::remove(&store.photos(), &gone);
    Ok(returned)
}

/// The photos that facts name and nobody has forgotten.
pub(super) fn named_photos<'a>(facts: impl Iterator<Item = &'a Fact>) -> BTreeSet<PhotoName> {
    facts.filter(|fact| !fact.is_forgotten()).filter_map(PhotoName::of_fact).collect()
}

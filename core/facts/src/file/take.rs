//! Taking a file in, and putting back what it brought.

use std::collections::BTreeSet;
use std::path::Path;

use super::bag::Bag;
use super::facts;
use super::limits::Limits;
use super::photo::PhotoName;
use super::staging::{self, Staging};
use super::watch::{Meter, Watch};
use crate::error::{FactsError, Result};
use crate::fact::{AuthorId, Fact, FactId};
use crate::store::{Returned, Store};

/// What a file brought.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Taken {
    /// The facts that are new here, by id.
    pub facts: Vec<FactId>,
    /// The photos that are new here.
    pub photos: Vec<PhotoName>,
}

/// Takes a file into the survey that it belongs to, all or nothing. What it brings is on the disk when this returns,
/// and can be put back with [`put_back`] while nothing else is written.
///
/// # Errors
/// `File` if the file is refused, `OtherSurvey` if it holds another survey (see [`take_as_new`]), `FactDiffers`,
/// `FromTheFuture`, `TooManyParts` or `TooManyFacts` if its facts do not go together with those held, `Stopped`, or
/// what [`Store::write_facts`] gives. The survey is then as it was.
pub fn take(path: &Path, store: &mut Store, limits: Limits, watch: &mut dyn Watch) -> Result<Taken> {
    store.refresh()?;
    let bag = Bag::open(path, limits)?;
    if bag.header().survey != store.survey_id() {
        return Err(FactsError::OtherSurvey { file: path.to_owned() });
    }
    take_bag(&bag, store, watch)
}

/// Takes a file in as a survey of its own at `folder` (`.../NAME.legwork`, whose parent exists), to be written in the
/// name of `author`. It is the same survey as the sender's: files go to and fro between them.
///
/// # Errors
/// As [`take`] and [`Store::create`]. Nothing is left then.
pub fn take_as_new(
    path: &Path,
    folder: &Path,
    author: AuthorId,
    limits: Limits,
    watch: &mut dyn Watch,
) -> Result<(Store, Taken)> {
    let bag = Bag::open(path, limits)?;
    let mut taken = None;
    let store = Store::create_with(folder, author, bag.header().survey, |unfinished| {
        let mut store = Store::open(unfinished, author)?;
        taken = Some(take_bag(&bag, &mut store, watch)?);
        Ok(())
    })?;
    taken.map(|taken| (store, taken)).ok_or(FactsError::Inner("a new survey was not filled"))
}

fn take_bag(bag: &Bag, store: &mut Store, watch: &mut dyn Watch) -> Result<Taken> {
    let mut meter = Meter::new(watch, bag.total_bytes());
    let mut staging = Staging::new(store.folder(), store.photos());
    let checked = bag.check(store.ledger(), store.clock(), Some(&mut staging), &mut meter)?;
    let new = facts::new_facts(bag, store.ledger(), checked.sha256)?;
    staging.sync()?;
    let mut photos = Vec::new();
    let written = store.take_in(new, || staging.put_in_place(&mut photos));
    let facts = written.inspect_err(|_| staging::remove(&staging.photos, &photos))?;
    // Something may have been forgotten meanwhile, or by this very file.
    let named = named_photos(store.ledger().facts());
    let unnamed: Vec<PhotoName> = photos.extract_if(.., |photo| !named.contains(photo)).collect();
    staging::remove(&store.photos(), &unnamed);
    Ok(Taken { facts, photos })
}

/// Undoes the last take that brought facts, in this copy, while nothing was written since. Photos that only those facts
/// named go with them.
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

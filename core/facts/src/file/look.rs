//! Looking into a file without taking it in.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::Arc;

use super::bag::Bag;
use super::facts;
use super::limits::Limits;
use super::options::LeftOut;
use super::staging::Staging;
use super::upheaval::Upheaval;
use super::watch::{Meter, Watch};
use crate::error::{FactsError, Result};
use crate::fact::{
    AuthorId, Fact, FactClock, FactId, HeldBack, Ledger, REMOVED, SubjectId, SurveyId, Wish, Writer,
    hold_back, reserved, wishes,
};
use crate::store::Store;

/// What is in a file, and what it would bring.
#[derive(Debug, Clone, PartialEq)]
pub struct Look {
    /// The survey that it holds.
    pub survey: SurveyId,
    /// The survey's name, if it has one that was not left out.
    pub name: Option<String>,
    /// The file's format.
    pub format: u32,
    /// The release that wrote it.
    pub core: String,
    /// What the sender left out.
    pub left_out: BTreeSet<LeftOut>,
    /// Whether it is the survey that it was held against. If not, everything in it counts as new.
    pub same_survey: bool,
    /// Facts in the file.
    pub facts: usize,
    /// Facts that are new here, and come whatever is answered to `forgotten`.
    pub new_facts: usize,
    /// Facts that tell to forget and come with a yes to `forgotten`; some may be about what is neither here nor in the file.
    pub new_words: usize,
    /// Photos in the file.
    pub photos: usize,
    /// Photos that are new here, or damaged here and whole in the file.
    pub new_photos: usize,
    /// Fields on which people would disagree and do not now.
    pub new_disagreements: Vec<(SubjectId, String)>,
    /// Fields on which people disagree now and would not any more.
    pub settled: Vec<(SubjectId, String)>,
    /// Fields of which something that is known here, or comes with the file, would be forgotten for ever with a yes of its
    /// own. All else is told as it will be without.
    pub forgotten: Vec<Wish>,
    /// How much of what the survey shows it would remove or move.
    pub upheaval: Upheaval,
    /// Who wrote the new facts, by id.
    pub authors: Vec<AuthorShare>,
    /// The facts as they would stand, where the look names any field: what only the file knows has its name there.
    pub names: Option<Arc<Ledger>>,
}

impl Look {
    /// Which of its authors somebody here is, or would be.
    pub fn author_of(&self, writer: impl Into<Writer>) -> AuthorId {
        let wrote = |author| self.authors.iter().any(|share| share.author == author);
        writer.into().in_survey(self.survey, wrote)
    }
}

/// What one author wrote of what is new.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AuthorShare {
    /// The author.
    pub author: AuthorId,
    /// Their name: a claim, no proof.
    pub name: Option<String>,
    /// How many of the new facts are theirs.
    pub new_facts: usize,
}

/// Checks a file to the last byte and says what it would bring to `store`, or as a survey of its own. Writes nothing.
/// What this finds right, [`take`](super::take) finds right too, as long as the survey stays as it is.
///
/// # Errors
/// As [`take`](super::take), but no `OtherSurvey`.
pub fn look(path: &Path, store: Option<&mut Store>, limits: Limits, watch: &mut dyn Watch) -> Result<Look> {
    let bag = Bag::open(path, limits)?;
    match store.filter(|store| store.survey_id() == bag.header().survey) {
        Some(store) => {
            store.refresh()?;
            let staging = Staging::new(store.folder(), store.photos());
            let refused = store.refused()?;
            look_into(&bag, Some(&staging), store.ledger(), &refused, store.clock(), watch)
        }
        None => look_into(&bag, None, &Ledger::new(), &BTreeSet::new(), &FactClock::system(), watch),
    }
}

fn look_into(
    bag: &Bag,
    staging: Option<&Staging>,
    held: &Ledger,
    refused: &BTreeSet<FactId>,
    clock: &FactClock,
    watch: &mut dyn Watch,
) -> Result<Look> {
    let (header, mut meter) = (bag.header(), Meter::new(watch, bag.total_bytes()));
    let checked = bag.check(held, clock, None, &mut meter)?;
    let came = facts::new_facts(bag, held, checked.sha256)?;
    let HeldBack { admitted: new, waiting } = hold_back(held, came, refused);
    let upheaval = Upheaval::of(held, header.survey, &new)?;
    let after = After::new(held, &new);
    let forgotten = wishes(|id| held.fact(id).or_else(|| after.new.get(&id).copied()), &waiting);
    let new_words = waiting.iter().filter(|fact| !held.contains(fact.id())).count();
    check_size(&after, new_words)?;
    let lacking = |(photo, bytes)| {
        checked.wanted.contains(&photo) && staging.is_none_or(|staging| staging.lacks(photo, bytes))
    };
    let before = |&(subject, name): &(SubjectId, &str)| held.disagreement(subject, name).is_some();
    let (was_open, was_closed): (Vec<_>, Vec<_>) = after.touched().partition(before);
    let owned = |(subject, name): (SubjectId, &str)| (subject, name.to_owned());
    let new_disagreements: Vec<_> =
        was_closed.into_iter().filter(|&about| after.disagree(about)).map(owned).collect();
    let settled: Vec<_> = was_open.into_iter().filter(|&about| !after.disagree(about)).map(owned).collect();
    let names_any = !(new_disagreements.is_empty() && settled.is_empty() && forgotten.is_empty());
    Ok(Look {
        names: names_any.then(|| after.names()).transpose()?,
        survey: header.survey,
        name: after.text(header.survey.subject(), reserved::NAME),
        format: header.format,
        core: header.core.clone(),
        left_out: header.left_out.clone(),
        same_survey: staging.is_some(),
        facts: header.facts,
        new_facts: after.new.len(),
        new_words,
        photos: bag.photos().count(),
        new_photos: bag
            .photos()
            .map(|(photo, entry)| (photo, entry.size))
            .filter(|&photo| lacking(photo))
            .count(),
        new_disagreements,
        settled,
        forgotten,
        upheaval,
        authors: after.authors(),
    })
}

/// Refuses what a take would refuse because the survey would become too large. Builds it only if that is in doubt.
fn check_size(after: &After<'_>, new_words: usize) -> Result<()> {
    let found = after.held.len() + after.new.len() + new_words;
    if found > reserved::MOST_FACTS {
        return Err(FactsError::TooManyFacts { found, most: reserved::MOST_FACTS });
    }
    let is_part = |fact: &&Fact| fact.field() == reserved::IS && fact.value() == reserved::PART;
    let parts: BTreeSet<SubjectId> =
        after.held.facts().chain(after.new.values().copied()).filter(is_part).map(Fact::subject).collect();
    if parts.len() > reserved::MOST_PARTS {
        let mut merged = after.held.clone();
        merged.insert_all(after.new.values().copied().cloned(), |_| Ok(()))?;
        merged.check_parts()?;
    }
    Ok(())
}

/// The survey as it would be, without building it: what is held, and what is new beside it.
struct After<'a> {
    held: &'a Ledger,
    /// New facts, by id.
    new: BTreeMap<FactId, &'a Fact>,
    /// New facts by what they speak of.
    about: BTreeMap<(SubjectId, &'a str), Vec<&'a Fact>>,
    /// What new facts replace. Nothing held can replace a new fact: whoever replaces it must know it.
    replaced: BTreeSet<FactId>,
}

impl<'a> After<'a> {
    fn new(held: &'a Ledger, facts: &'a [Fact]) -> Self {
        let new: BTreeMap<FactId, &Fact> = facts.iter().map(|fact| (fact.id(), fact)).collect();
        let mut about: BTreeMap<_, Vec<&Fact>> = BTreeMap::new();
        for fact in new.values() {
            about.entry((fact.subject(), fact.field())).or_default().push(fact);
        }
        let replaced = new.values().flat_map(|fact| fact.over().iter().copied()).collect();
        Self { held, new, about, replaced }
    }

    fn touched(&self) -> impl Iterator<Item = (SubjectId, &'a str)> {
        self.about.keys().copied()
    }

    /// The facts that would be live, by id.
    fn live(&self, subject: SubjectId, name: &str) -> Vec<&'a Fact> {
        let held = self.held.live(subject, name).into_iter();
        let new = self.about.get(&(subject, name)).into_iter().flatten().copied();
        let mut live: Vec<&Fact> =
            held.chain(new).filter(|fact| !self.replaced.contains(&fact.id())).collect();
        live.sort_unstable_by_key(|fact| fact.id());
        live
    }

    fn disagree(&self, (subject, name): (SubjectId, &str)) -> bool {
        let live = self.live(subject, name);
        let mut said = live.iter().filter(|fact| !fact.is_forgotten()).map(|fact| fact.value());
        let first = said.next();
        name != REMOVED && said.any(|value| Some(value) != first)
    }

    /// All facts together, for whoever names things.
    fn names(&self) -> Result<Arc<Ledger>> {
        let mut merged = self.held.clone();
        merged.insert_all(self.new.values().copied().cloned(), |_| Ok(()))?;
        Ok(Arc::new(merged))
    }

    /// The text that a field would show.
    fn text(&self, subject: SubjectId, name: &str) -> Option<String> {
        self.live(subject, name).last()?.value().as_str().map(str::to_owned)
    }

    fn authors(&self) -> Vec<AuthorShare> {
        let mut shares: BTreeMap<AuthorId, usize> = BTreeMap::new();
        for fact in self.new.values() {
            *shares.entry(fact.by()).or_default() += 1;
        }
        let name = |author: AuthorId| self.text(author.subject(), reserved::NAME);
        shares
            .into_iter()
            .map(|(author, new_facts)| AuthorShare { author, name: name(author), new_facts })
            .collect()
    }
}

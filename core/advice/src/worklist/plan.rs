//! What is done for a rate alone: the changes that together give the rooms most for what they cost.

use std::collections::BTreeSet;

use house::record::{ChangeKind, Survey};

use super::effort::effort;
use super::known_rates::KnownRates;
use super::list::Searched;
use super::need::WORTH_MBPS;
use super::options::Options;
use super::prospect::{Prospect, Prospects};
use super::rank::Worth;
use super::refusal::Refusal;
use super::same_work::is_same_work;
use super::search::{Reach, Space, search};
use super::services::AsFound;
use crate::error::AdviceError;

/// So many houses are weighed with none left behind: as many as up to eight changes make.
const WHOLE: usize = 256;

/// Where there are more, so many of each level go on at the least.
const BEAM: usize = 3;

/// So many changes that promise most are weighed then.
const PROMISING: usize = 6;

/// So many levels are looked at after the best.
const PATIENCE: usize = 2;

/// So many are weighed; beyond, only the next best goes on.
const MOST: usize = 500;

/// How far it is searched, where the house and the list set no narrower bounds.
const REACH: Reach =
    Reach { whole: WHOLE, beam: BEAM, promising: PROMISING, patience: PATIENCE, depth: 24, most: MOST };

/// So many changes that were weighed and left out are told, those that gain most.
const LEFT_OUT: usize = 5;

/// What is to be done for a rate alone.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Plan {
    /// These changes, found by a search.
    Found(Vec<ChangeKind>),
    /// Whatever gains something when its turn comes: the house is too large for a search.
    NextBest,
}

impl Plan {
    /// Whether a change that gains so much as the house stands is among them. A part that was cut or filled by other changes
    /// may be swapped for one of another size.
    pub(super) fn holds(&self, change: ChangeKind, worth: Worth) -> bool {
        self.may_hold(change) && (!matches!(self, Self::NextBest) || worth.rate >= WORTH_MBPS)
    }

    /// Whether a change has to be looked at for its sake: one of it, or the swap that stands in for an amplifier taken out.
    pub(super) fn asks_for(&self, change: ChangeKind) -> bool {
        let stands_in = matches!(change, ChangeKind::SwapAmplifier { amplifier }
            if self.may_hold(ChangeKind::RemoveAmplifier { amplifier }));
        stands_in || self.may_hold(change)
    }

    /// The same before it is known what it gains.
    fn may_hold(&self, change: ChangeKind) -> bool {
        match self {
            Self::Found(chosen) => chosen.iter().any(|chosen| is_same_work(*chosen, change)),
            Self::NextBest => true,
        }
    }
}

/// How the plan was come to.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Planned {
    /// The plan.
    pub(super) plan: Plan,
    /// How far it was searched, where it was.
    pub(super) searched: Option<Searched>,
    /// What gains something beside the plan, and not what it costs.
    pub(super) left_out: Vec<(ChangeKind, Refusal)>,
    /// So many parts were weighed for it, and since.
    pub(super) weighed: usize,
}

impl Planned {
    /// A change is refused as the house stands after the steps so far: if it is one of the plan's, the plan cannot be carried out,
    /// and whatever gains something when its turn comes is done.
    pub(super) fn refused(&mut self, change: ChangeKind) {
        let is_planned =
            matches!(&self.plan, Plan::Found(chosen) if chosen.iter().any(|of| is_same_work(*of, change)));
        if is_planned {
            (self.plan, self.searched) = (Plan::NextBest, None);
            self.left_out.clear();
        }
    }
}

/// Searches for it.
pub(super) fn plan(
    survey: &Survey,
    options: &Options,
    (services, given_up, known): (&AsFound, &BTreeSet<ChangeKind>, &KnownRates),
    weighed: &mut dyn FnMut() -> Result<(), AdviceError>,
) -> Result<Planned, AdviceError> {
    let parts = survey.parts.len().max(1);
    let most = MOST.min(options.most_weighed / parts / 4);
    if most < WHOLE || options.most_steps == 0 {
        return Ok(Planned { plan: Plan::NextBest, searched: None, left_out: Vec::new(), weighed: 0 });
    }
    let mut houses = 0;
    let mut counted = || {
        houses += 1;
        weighed()
    };
    let mut space = Prospects { known, services, given_up, weighed: &mut counted };
    let start = space.start(survey, options.most_steps)?;
    let reach = Reach { depth: options.most_steps, most, ..REACH };
    let found = search(&mut space, start, reach)?;
    let left_out = left_out(survey, &mut space, &found.state)?;
    let searched = Searched { houses: houses as u64, better_by_mbps: (found.bound - found.score).max(0.0) };
    Ok(Planned {
        plan: Plan::Found(found.choices),
        searched: Some(searched),
        left_out,
        weighed: houses * parts,
    })
}

/// What would still gain something once the plan is done.
fn left_out(
    survey: &Survey,
    space: &mut Prospects<'_>,
    done: &Prospect,
) -> Result<Vec<(ChangeKind, Refusal)>, AdviceError> {
    let known = space.choices(done).into_iter().filter(|change| survey.parts.contains_key(&change.at()));
    let known: Vec<_> = known.collect();
    let house = done.house();
    let mut gains: Vec<_> = space
        .then(done, &known)?
        .into_iter()
        .map(|(change, then)| (change, then.gain_over(done), effort(change, &house).minutes))
        .filter(|(_, gain_mbps, _)| *gain_mbps >= WORTH_MBPS)
        .collect();
    gains.sort_by(|a, b| b.1.total_cmp(&a.1));
    let told = gains.into_iter().take(LEFT_OUT);
    Ok(told.map(|(change, gain_mbps, minutes)| (change, Refusal::NotWorth { gain_mbps, minutes })).collect())
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use house::record::{Named, Without};
    use houses::random::seeds;

    use super::super::care::cautions_of;
    use super::super::propose::proposals;
    use super::super::refusal::given_up;
    use super::*;
    use crate::forecast;

    /// As few draws as make a house differ from another.
    fn few() -> Options {
        let quick = forecast::Options { draws: 4, seed: 1, points: 12, settles: false };
        Options { screening: quick, stating: quick, ..Options::default() }
    }

    /// Every set of changes that can be made from here, each once, by whatever way it is come to first: nothing is bounded, and
    /// nothing left behind. `None` once there are more than so many.
    fn every_set(
        space: &mut Prospects<'_>,
        start: &Prospect,
        most: usize,
    ) -> Option<BTreeMap<Vec<ChangeKind>, f64>> {
        let mut scores = BTreeMap::from([(Vec::new(), space.score(start))]);
        let mut open = vec![(Vec::new(), start.clone())];
        while let Some((made, here)) = open.pop() {
            for change in space.choices(&here) {
                let mut set: Vec<ChangeKind> = [made.as_slice(), &[change]].concat();
                set.sort_unstable();
                if scores.contains_key(&set) {
                    continue;
                }
                let then = space.then(&here, &[change]).expect("a sound house").pop();
                if let Some((_, then)) = then {
                    scores.insert(set.clone(), space.score(&then));
                    open.push((set, then));
                }
            }
            if scores.len() > most {
                return None;
            }
        }
        Some(scores)
    }

    /// Does this with where changes are looked for in a random house, and the house to begin with.
    fn in_house<T>(seed: u64, then: impl FnOnce(&mut Prospects<'_>, Prospect) -> T) -> Option<T> {
        let survey = houses::random::survey(seed);
        in_survey(&survey, &given_up(&survey), then)
    }

    /// The same in any house where these changes are given up.
    fn in_survey<T>(
        survey: &Survey,
        given_up: &BTreeSet<ChangeKind>,
        then: impl FnOnce(&mut Prospects<'_>, Prospect) -> T,
    ) -> Option<T> {
        let options = few();
        let services = AsFound::new(survey).ok()?;
        let mut weighed = || Ok(());
        let known = KnownRates::new(&options.screening);
        let mut space = Prospects { known: &known, services: &services, given_up, weighed: &mut weighed };
        let start = space.start(survey, 8).ok()?;
        Some(then(&mut space, start))
    }

    /// Where there are no more sets of changes than up to eight make.
    fn against_every_set(seed: u64) -> Option<String> {
        // Each by rates of its own: what is kept for one does not stand on the other side.
        let every = in_house(seed, |space, start| {
            every_set(space, &start, MOST_SETS).filter(|every| every.len() > 2)
        })??;
        let (choices, found) = in_house(seed, |space, start| {
            (space.choices(&start).len(), search(space, start, REACH).expect("a sound house"))
        })?;
        let best = every.values().copied().fold(f64::NEG_INFINITY, f64::max);
        if (found.score - best).abs() > SAME_MBPS {
            return Some(format!("{} by {:?}, and {best} is there", found.score, found.choices));
        }
        // Of more choices not all sets may be possible; what is not weighed is told then, though nothing better is there.
        (choices <= EIGHT && found.bound - found.score > SAME_MBPS)
            .then(|| "nothing was left behind, and something is told".into())
    }

    /// Whether a change is work of a kind, told from what it is and from what is cautioned at it.
    fn is_of(change: ChangeKind, kind: Without) -> bool {
        let high = crate::finding::Caution::Heights;
        match kind {
            Without::NewCable => ["new_run", "replace_run", "join_loose"].contains(&change.name()),
            Without::Heights => cautions_of(change).contains(&high),
        }
    }

    /// Where some kind of work is not wanted: against the best of every set of changes in the same house with all that work given
    /// up, change by change.
    fn against_every_allowed_set(seed: u64) -> Option<String> {
        let survey = houses::random::survey(seed);
        Without::ALL.iter().find_map(|kind| {
            let mut vetoed = given_up(&survey);
            let forbidden = |house: &Survey| -> Vec<ChangeKind> {
                proposals(house).into_iter().filter(|change| is_of(*change, *kind)).collect()
            };
            // What the work that is done anyway brings may be forbidden as well.
            let mut before = None;
            while before != Some(vetoed.len()) {
                before = Some(vetoed.len());
                vetoed.extend(forbidden(&survey));
                vetoed.extend(in_survey(&survey, &vetoed, |_, start| forbidden(&start.house()))?);
            }
            let every = in_survey(&survey, &vetoed, |space, start| {
                every_set(space, &start, MOST_SETS).filter(|every| every.len() > 1)
            })??;
            // What a choice brings in its turn.
            let allowed = |set: &&Vec<ChangeKind>| !set.iter().any(|change| is_of(*change, *kind));
            let sets = every.keys().filter(allowed);
            let best = sets.map(|set| every[set]).fold(f64::NEG_INFINITY, f64::max);
            let asked = survey.where_not_wanted(&BTreeSet::from([*kind]));
            let found = in_survey(&asked, &given_up(&survey), |space, start| {
                search(space, start, REACH).expect("a sound house")
            })?;
            let forbidden = found.choices.iter().find(|change| is_of(**change, *kind));
            if let Some(forbidden) = forbidden {
                return Some(format!("{forbidden:?} is {kind:?}"));
            }
            ((found.score - best).abs() > SAME_MBPS)
                .then(|| format!("{kind:?}: {} by {:?}, and {best} is there", found.score, found.choices))
        })
    }

    /// Against whoever takes what raises the score most next, as long as anything does.
    fn against_the_next_best(survey: &Survey) -> Option<String> {
        let given_up = given_up(survey);
        let greedy = in_survey(survey, &given_up, |space, start| {
            let mut here = start;
            loop {
                let choices = space.choices(&here);
                let all = space.then(&here, &choices).expect("a sound house");
                let next = all.into_iter().map(|(_, then)| then);
                let next = next.max_by(|a, b| space.score(a).total_cmp(&space.score(b)));
                match next.filter(|next| space.score(next) > space.score(&here)) {
                    Some(next) => here = next,
                    None => break,
                }
            }
            space.score(&here)
        })?;
        let found =
            in_survey(survey, &given_up, |space, start| search(space, start, REACH).expect("a sound house"))?;
        (found.score < greedy - SAME_MBPS).then(|| format!("{} after {greedy}", found.score))
    }

    /// Nearer to each other two figures are the same, Mb/s.
    const SAME_MBPS: f64 = 1e-6;

    const EIGHT: usize = 8;

    /// As many as eight changes make.
    const MOST_SETS: usize = 1 << EIGHT;

    /// So many houses are looked at where nobody says how many.
    const HOUSES: u64 = 24;

    fn none(found: impl Fn(u64) -> Option<String> + Sync) {
        let found = seeds::over_seeds(HOUSES, |seed| found(seed).into_iter().collect());
        seeds::none(&found, &std::env::temp_dir(), houses::random::survey);
    }

    #[test]
    fn in_a_small_house_the_plan_is_the_best_of_every_set_of_changes() {
        none(against_every_set);
    }

    #[test]
    fn without_some_work_the_plan_is_the_best_of_every_set_that_has_none_of_it() {
        none(against_every_allowed_set);
    }

    #[test]
    fn no_plan_is_worse_than_taking_the_next_best() {
        none(|seed| against_the_next_best(&houses::random::survey(seed)));
    }

    /// Where a dozen changes are worth their price one after the other.
    #[test]
    fn in_a_large_house_no_plan_is_worse_than_taking_the_next_best_either() {
        for survey in [houses::unread(40), houses::unread(60), houses::old(40)] {
            assert_eq!(against_the_next_best(&survey), None, "{} parts", survey.parts.len());
        }
    }
}

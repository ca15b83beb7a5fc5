//! The order of the work: what is grave or keeps the network private goes first, then the change that gains most a minute;
//! what it leaves is looked at anew.

use std::collections::{BTreeMap, BTreeSet};

use facts::fact::SubjectId;
use house::record::{ChangeKind, PartKind, Survey};

use super::checks;
use super::effect::applied;
use super::effort::effort;
use super::gain::gains;
use super::known_rates::{KnownRates, with};
use super::list::{CutShort, FailedRoom, Searched};
use super::need::{
    WORTH_MBPS, gains_by_far, gains_nothing, gives_a_link, is_wanted_anyway, loses_the_network,
};
use super::options::Options;
use super::plan::{Plan, plan};
use super::propose::{candidates, proposals};
use super::prospect::HOUSES_AT_ONCE;
use super::rank::{Worth, first_of, grave, keeps_private, takes_grave_away};
use super::refusal::{Refusal, given_up, own_refusal};
use super::services::{AsFound, Guard, Others, refusal, weighed_in};
use super::step::Step;
use super::watch::Meter;
use crate::error::AdviceError;
use crate::forecast::{self, Forecast, forecast_each};
use crate::level;
use crate::verdict::RoomVerdict;

/// In a house too large for a search, what gains less than this share of what is worth any work is not weighed again after each
/// step (our own choice).
const OF_LITTLE_USE: f64 = 0.5;

/// A house as it was found, with what is known of it.
pub(super) struct Ground<'a> {
    pub(super) survey: &'a Survey,
    pub(super) as_found: &'a Forecast,
    pub(super) services: &'a AsFound,
    /// What was worked out to weigh changes in it.
    pub(super) known: &'a KnownRates,
}

/// How much of a list is worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Extent {
    /// All that each step costs the other services.
    Whole,
    /// Its steps, and the house when all of them are done.
    End,
}

/// Changes in their order. What they gain is stated when all lists are there (`stated.rs`).
#[derive(Clone)]
pub(super) struct Ordered {
    pub(super) steps: Vec<Step>,
    /// The house when all of them are done.
    pub(super) house: Survey,
    pub(super) searched: Option<Searched>,
    pub(super) cut_short: Option<CutShort>,
    pub(super) refused: Vec<(ChangeKind, Refusal)>,
}

/// Puts in order what is done in a house.
pub(super) fn ordered(
    ground: &Ground<'_>,
    options: &Options,
    extent: Extent,
    meter: &mut Meter<'_>,
) -> Result<Ordered, AdviceError> {
    let Ground { survey, as_found, services, known } = *ground;
    let mut given_up = given_up(survey);
    // What is worth nothing as the house stands after the steps so far.
    let mut set_aside = BTreeSet::new();
    // In a house too large for a search: what gained next to nothing when all was looked at.
    let mut of_little_use = BTreeSet::new();
    // A step's gain is read off the very same draws: what it does not touch stays as it was.
    let stating = forecast::Options::as_made(as_found);
    let suspects = suspects(survey, as_found);
    let mut house = survey.clone();
    let (mut steps, mut refused) = (Vec::<Step>::new(), BTreeMap::new());
    let mut planned = plan(survey, options, (services, &given_up, known), &mut || meter.weighed())?;
    let is_large = planned.plan == Plan::NextBest;
    let cut_short = loop {
        if let Some(cut_short) = options.cut_short(steps.len(), planned.weighed) {
            break Some(cut_short).filter(|_| options.most_steps > 0);
        }
        let done: Vec<_> = steps.iter().map(|step| step.change).collect();
        let screened = known.one(done.clone(), &house)?;
        let moved_so_far = steps.iter().flat_map(|step| step.moves_out.iter().copied()).collect();
        let guard = services.guard(&house, moved_so_far)?;
        let mut worth_it: Vec<((bool, f64), ChangeKind)> = Vec::new();
        // What gives a link; what is done for a rate alone that is not sure, and whether another service pays for it.
        let (mut link_givers, mut for_rate_alone) = (Vec::new(), BTreeMap::new());
        let grave_now = grave(&house);
        let is_suspect = |change| matches!(change, ChangeKind::SwapSplitter { splitter, .. } if suspects.contains(&splitter));
        // Of the first round all is told that is refused; later only what may come next is looked at.
        let may_come = |change| {
            steps.is_empty()
                || is_wanted_anyway(change)
                || is_suspect(change)
                || planned.plan.asks_for(change) && !of_little_use.contains(&change)
                || takes_grave_away(&grave_now, || grave(&applied(change, &house)))
        };
        let candidates: Vec<_> =
            candidates(&house, &given_up).into_iter().filter(|change| may_come(*change)).collect();
        meter.round(candidates.len());
        planned.weighed += candidates.len() * house.parts.len();
        let plan_was = std::mem::discriminant(&planned.plan);
        for candidates in candidates.chunks(HOUSES_AT_ONCE) {
            let looked_at = looked_at(candidates, (&house, &guard, &given_up), &mut refused, meter)?;
            let houses = looked_at.iter().map(|(change, after, _)| (with(&done, *change), after));
            let forecasts = known.each(&houses.collect::<Vec<_>>())?;
            for ((change, after, others), then) in looked_at.into_iter().zip(forecasts) {
                let links = gives_a_link(&screened, &then);
                let only_this = links && !is_given_by_swap(change, &link_givers);
                if let Some(against) = against(change, &others, only_this, (&screened, &then)) {
                    planned.refused(change);
                    refused.entry(change).or_insert(against);
                    continue;
                }
                link_givers.extend(links.then_some(change));
                let worth = Worth::of((&house, &screened), (&after, &then));
                let is_suspect = is_suspect(change);
                if is_large && steps.is_empty() && worth.rate < OF_LITTLE_USE * WORTH_MBPS {
                    of_little_use.insert(change);
                }
                let ends_grave = worth.rate >= 0.0 && takes_grave_away(&grave_now, || grave(&after));
                let is_needed = is_suspect || ends_grave;
                let is_asked_for = || is_wanted_anyway(change) || planned.plan.holds(change, worth);
                if set_aside.contains(&change) || !is_needed && !is_asked_for() {
                    continue;
                }
                // Nobody gives up signal of a TV or modem for a rate that is not there nine times in ten.
                if others.costs && !is_needed && gains_nothing(change, &screened, &then) {
                    continue;
                }
                // Where the few draws tell by far that it gains, the many are not asked.
                let is_sure = is_needed || gains_by_far(change, &screened, &then);
                for_rate_alone.extend((!is_sure).then_some((change, others.costs)));
                // The test says that a suspect costs more than the forecast knows of.
                let least = if is_suspect { WORTH_MBPS } else { 0.0 };
                let minute = worth.for_order().max(least) / effort(change, &house).minutes.max(1) as f64;
                let rank = (ends_grave || keeps_private(change), minute);
                worth_it.push((rank, change));
            }
        }
        if plan_was != std::mem::discriminant(&planned.plan) && !steps.is_empty() {
            // The plan was given up: now whatever gains something may come, and not all of that was looked at.
            continue;
        }
        let Some(change) = first_of(&worth_it) else { break None };
        let after = applied(change, &house);
        let done_alone = guard.look(&after)?;
        // What it costs by itself may be more than what it costs with all that is weighed along with it.
        let is_paid_for = for_rate_alone.get(&change).is_some_and(|costs| *costs || done_alone.costs);
        if let Some(at) = undone_by(&steps, change) {
            // A splitter is not swapped first and thrown out afterwards: the list is made again without that swap.
            if let Some(step) = steps.drain(at..).next() {
                given_up.insert(step.change);
                house = step.before;
            }
            continue;
        }
        let left = (worth_it.len() - 1).min(options.most_steps - steps.len() - 1);
        meter.rounds_left(left, candidates.len());
        if is_paid_for && states_nothing(change, [&house, &after], &stating)? {
            set_aside.insert(change);
            continue;
        }
        set_aside.clear();
        let before = std::mem::replace(&mut house, after);
        steps.push(step(change, before, (&house, extent), done_alone)?);
    };
    let refused = not_offered(survey, (refused, planned.left_out), &steps);
    Ok(Ordered { steps, house, searched: planned.searched, cut_short, refused })
}

/// What speaks against a change once the rates after it are known.
fn against(
    change: ChangeKind,
    others: &Others,
    only_this: bool,
    (now, then): (&Forecast, &Forecast),
) -> Option<Refusal> {
    let cuts_network = || loses_the_network(now, then).map(|outlet| Refusal::CutsNetwork { outlet });
    others.level_refusal(change, only_this).or_else(cuts_network)
}

/// Whether the few draws that choose saw a rate that those that are stated do not: for that no other service pays.
fn states_nothing(
    change: ChangeKind,
    houses: [&Survey; 2],
    stating: &forecast::Options,
) -> Result<bool, AdviceError> {
    let stated = forecast_each(&houses, stating)?;
    Ok(matches!(stated.as_slice(), [before, after] if gains_nothing(change, before, after)))
}

/// Those of some changes against which nothing speaks that is known before a rate is: each with the house after it, and what it
/// does to the other services. Why the others are not offered is told the first time.
fn looked_at(
    candidates: &[ChangeKind],
    (house, guard, given_up): (&Survey, &Guard<'_>, &BTreeSet<ChangeKind>),
    refused: &mut BTreeMap<ChangeKind, Refusal>,
    meter: &mut Meter<'_>,
) -> Result<Vec<(ChangeKind, Survey, Others)>, AdviceError> {
    let mut looked_at = Vec::with_capacity(candidates.len());
    for change in candidates.iter().copied() {
        meter.weighed()?;
        if let Some(against) = own_refusal(change, house) {
            refused.entry(change).or_insert(against);
            continue;
        }
        let after = applied(change, house);
        let others = guard.look(&weighed_in(change, &after, given_up))?;
        if let Some(against) = others.against {
            refused.entry(change).or_insert(against);
            continue;
        }
        looked_at.push((change, after, others));
    }
    Ok(looked_at)
}

/// The changes that were refused, or not worth it, and not done after all.
fn not_offered(
    survey: &Survey,
    (mut refused, not_worth): (BTreeMap<ChangeKind, Refusal>, Vec<(ChangeKind, Refusal)>),
    steps: &[Step],
) -> Vec<(ChangeKind, Refusal)> {
    for (change, reason) in not_worth {
        refused.entry(change).or_insert(reason);
    }
    let done = |change: &ChangeKind| steps.iter().any(|step| step.change == *change);
    let mut refused: Vec<_> = refused.into_iter().filter(|(change, _)| !done(change)).collect();
    refused.sort_by_cached_key(|(change, _)| change.in_order(survey));
    refused
}

/// A change as a step of the list; what it gains is stated when all steps are there.
fn step(
    change: ChangeKind,
    before: Survey,
    (after, extent): (&Survey, Extent),
    others: Others,
) -> Result<Step, AdviceError> {
    let service_changes = match extent {
        Extent::Whole => level::change(&before, after, &level::Options::default())?,
        Extent::End => Vec::new(),
    };
    let (moves_out, narrows) = (others.out, others.narrowed);
    Ok(Step { service_changes, moves_out, narrows, ..Step::bare(change, before) })
}

/// Puts the checks for rooms whose tests failed among the steps, and says what comes next for each such room. `done` is the
/// house after all changes, with its forecast.
pub(super) fn with_checks(
    survey: &Survey,
    as_found: &Forecast,
    done: (&Survey, &Forecast),
    steps: &mut Vec<Step>,
    most_steps: usize,
) -> Vec<FailedRoom> {
    let mut failed = checks::failed(survey, as_found);
    let changes: Vec<_> = steps.iter().map(|step| step.change).collect();
    // Checks come on top of the changes; only where no step at all is looked for there is none.
    let found = if most_steps == 0 {
        checks::Checks::default()
    } else {
        checks::checks(survey, as_found, &failed, &changes)
    };
    let step = |change, (house, forecast): (&Survey, &Forecast)| Step {
        gains: gains(forecast, forecast),
        ..Step::bare(change, house.clone())
    };
    // What is grave or keeps the network private goes before a look into the room.
    let ends_grave =
        |step: &Step| takes_grave_away(&grave(&step.before), || grave(&applied(step.change, &step.before)));
    let leads = |step: &&Step| keeps_private(step.change) || ends_grave(step);
    let leading = if found.first.is_empty() { 0 } else { steps.iter().take_while(leads).count() };
    let house = steps.get(leading).map_or(done.0, |next| &next.before).clone();
    let first: Vec<_> = found.first.into_iter().map(|change| step(change, (&house, as_found))).collect();
    steps.splice(leading..leading, first);
    steps.extend(found.last.into_iter().map(|change| step(change, done)));
    for room in &mut failed {
        let helps = |step: &&Step| {
            let gains = step.gains.iter().find(|gain| gain.outlet == room.outlet);
            checks::helps(&step.before, as_found, step.change, room.outlet)
                || gains.is_some_and(|gain| gain.after.likely_mbps - gain.before.likely_mbps >= 1.0)
        };
        room.next = steps.iter().find(helps).map(|step| step.change);
    }
    failed
}

/// Whether an amplifier with a by-pass in its place gives a room its link too, is not refused, and leaves TV and modem their
/// level.
fn is_given_by_swap(change: ChangeKind, link_givers: &[ChangeKind]) -> bool {
    matches!(change, ChangeKind::RemoveAmplifier { amplifier }
        if link_givers.contains(&ChangeKind::SwapAmplifier { amplifier }))
}

/// Splitters not made for the band, or of which nobody knows, on the way to an outlet that was measured below its
/// forecast: the forecast trusts them more than the test does, so they are swapped first.
fn suspects(survey: &Survey, forecast: &Forecast) -> BTreeSet<SubjectId> {
    let Some(bridge) = forecast.bridge else { return BTreeSet::new() };
    let short = forecast
        .rooms
        .iter()
        .map(|room| room.outlet)
        .filter(|outlet| RoomVerdict::at(survey, *outlet, Some(forecast)).falls_short());
    let not_for_band = |id: &SubjectId| {
        survey
            .parts
            .get(id)
            .is_some_and(|part| part.kind == PartKind::Splitter && part.rating.made_for_moca() != Some(true))
    };
    short
        .filter_map(|outlet| survey.wiring.way_between(bridge, outlet))
        .flatten()
        .filter(not_for_band)
        .collect()
}

/// The step whose new splitter a merge would throw out again, if the merge can be had without it.
fn undone_by(steps: &[Step], change: ChangeKind) -> Option<usize> {
    let ChangeKind::MergeSplitters { upper, lower, .. } = change else { return None };
    let swaps = |step: &Step| matches!(step.change, ChangeKind::SwapSplitter { splitter, .. } if [upper, lower].contains(&splitter));
    let at = steps.iter().position(swaps)?;
    let before = &steps.get(at)?.before;
    let same = |other: &ChangeKind| {
        matches!(other, ChangeKind::MergeSplitters { upper: above, lower: below, .. }
            if (*above, *below) == (upper, lower))
    };
    proposals(before).into_iter().any(|other| same(&other) && refusal(other, before).is_none()).then_some(at)
}

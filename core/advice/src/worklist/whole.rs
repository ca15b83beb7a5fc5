//! The whole of it: the list in its order, the checks for rooms whose tests failed, and what else the list might be.

use house::record::Survey;

use super::bridge_places::bridge_places;
use super::known_rates::KnownRates;
use super::list::WorkList;
use super::options::Options;
use super::order::{Extent, Ground, Ordered, ordered, with_checks};
use super::others::{on_their_way, others};
use super::services::AsFound;
use super::stated::stated;
use super::watch::Meter;
use crate::error::AdviceError;
use crate::level;

/// Works out what to change and in which order.
///
/// What is done for a rate alone is what a search over all the house finds to be worth its price (`plan.rs`). In which order,
/// is greedy: of all these and of what is needed, the one whose gain a minute of work is greatest comes next; then the house
/// with that change is looked at anew. What takes a grave finding away or keeps the network private goes before all that
/// does neither. What keeps the network private or the house quiet (entry filter, caps) is done whether or not it gains
/// speed. A change that could not be done, or was put back, is not proposed again while that stands in the survey, nor is work of
/// a kind that is not wanted in this house; what the list would be if other work were wanted is told beside it (`others.rs`).
///
/// # Errors
/// What [`forecast()`](crate::forecast::forecast()) gives.
pub fn worklist(survey: &Survey, options: &Options) -> Result<WorkList, AdviceError> {
    worklist_watched(survey, options, &mut |_| true)
}

/// Of all the work, the share that is done when it is known what the list itself has; then comes what else it might be.
const UNTIL_OTHERS: f64 = 0.4;

/// The share that is done when what each step gains is left to be stated.
const UNTIL_STATED: f64 = 0.65;

/// The share that is done when only where the network could start is left.
const UNTIL_PLACES: f64 = 0.95;

/// The same, watched: `watch` is told again and again which share is done, 0 to 1, as far as can be told, and says
/// whether to go on.
///
/// # Errors
/// [`AdviceError::Stopped`] once `watch` says no; else what [`forecast()`](crate::forecast::forecast()) gives.
pub fn worklist_watched(
    survey: &Survey,
    options: &Options,
    watch: &mut dyn FnMut(f64) -> bool,
) -> Result<WorkList, AdviceError> {
    let mut of_list = |share| watch(share * UNTIL_OTHERS);
    let mut meter = Meter::new(&mut of_list);
    let as_found = meter.stated(survey, &options.stating)?;
    let services = AsFound::new(survey)?;
    let known = KnownRates::new(&options.screening);
    let ground = Ground { survey, as_found: &as_found, services: &services, known: &known };
    let mut ordered = ordered(&ground, options, Extent::Whole, &mut meter)?;
    let between = |from: f64, to: f64, share: f64| from + (to - from) * share;
    let beside = on_their_way(&ground, options, &ordered, &mut |share| {
        watch(between(UNTIL_OTHERS, UNTIL_STATED, share))
    })?;
    let mut of_stating = |share| watch(between(UNTIL_STATED, UNTIL_PLACES, share));
    let of_others: Vec<_> = beside.iter().map(|other| &other.ordered).collect();
    let (when_done, others_done) = stated(&mut ordered, &of_others, &as_found, &mut of_stating)?;
    let done = (&ordered.house, &when_done);
    let failed = with_checks(survey, &as_found, done, &mut ordered.steps, options.most_steps);
    let others = others(&ground, options, &ordered.steps, beside.into_iter().zip(others_done));
    let places = bridge_places(survey, (&options.screening, &options.stating), &mut |share| {
        watch(between(UNTIL_PLACES, 1.0, share))
    })?;
    let Ordered { steps, house, cut_short, searched, refused } = ordered;
    Ok(WorkList {
        level_changes: level::change(survey, &house, &level::Options::default())?,
        levels: services.into_levels(),
        steps,
        cut_short,
        searched,
        refused,
        others,
        places,
        failed,
        as_found,
        when_done,
        house_when_done: house,
    })
}

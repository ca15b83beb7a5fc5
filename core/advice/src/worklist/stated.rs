//! What steps gain, and what is there when all of them are done: stated once all lists are known, all houses together.

use house::record::Survey;

use super::gain::gains;
use super::order::Ordered;
use crate::error::AdviceError;
use crate::forecast::{Forecast, Options, Told, forecast_each_watched};

/// States what each step of a list gains, by the draws of the house as found, and what is there when all of it is done; the
/// latter of other lists too. `watch` is told which share is done, and says whether to go on.
pub(super) fn stated(
    list: &mut Ordered,
    others: &[&Ordered],
    as_found: &Forecast,
    watch: &mut dyn FnMut(f64) -> bool,
) -> Result<(Forecast, Vec<Forecast>), AdviceError> {
    // All in one way, that of houses forecast together, by the very same draws: what a step does not touch stays as it was to the last
    // digit.
    let stating = Options::as_made(as_found);
    let before = list.steps.iter().map(|step| (&step.before, Told::Rates));
    let ends: Vec<Option<&Survey>> =
        std::iter::once(end(list)).chain(others.iter().map(|other| end(other))).collect();
    let houses: Vec<_> = before.chain(ends.iter().flatten().map(|house| (*house, Told::All))).collect();
    let is_changed: Vec<bool> = ends.iter().map(Option::is_some).collect();
    let all = (houses.len() as f64 * f64::from(stating.draws)).max(1.0);
    let mut drawn = 0;
    let mut more = |draws: usize| {
        drawn += draws;
        watch((drawn as f64 / all).min(1.0))
    };
    let mut stated = forecast_each_watched(&houses, &stating, &mut more)?.into_iter();
    let before: Vec<Forecast> = stated.by_ref().take(list.steps.len()).collect();
    // Where there is nothing to do all stays as it was found.
    let done = |is_changed| if is_changed { stated.next() } else { Some(as_found.clone()) };
    let mut done = is_changed.into_iter().filter_map(done);
    let when_done = done.next().ok_or(AdviceError::Inner("house"))?;
    let after = before.iter().skip(1).chain([&when_done]);
    for (step, (before, after)) in list.steps.iter_mut().zip(before.iter().zip(after)) {
        step.gains = gains(before, after);
    }
    Ok((when_done, done.collect()))
}

/// The house when all of a list is done; nothing where there is nothing to do.
fn end(list: &Ordered) -> Option<&Survey> {
    (!list.steps.is_empty()).then_some(&list.house)
}

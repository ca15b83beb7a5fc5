//! What else the list might be: the best lists there are without some kind of work, and, where such work is not wanted, the one
//! with all of it. Each is made as the list itself is, of a house in which that work is not wanted, so that whoever takes one gets
//! what was promised.

use std::collections::BTreeSet;

use house::record::{ChangeKind, Named, Survey, Without};

use super::care::is_such_work;
use super::checks;
use super::list::OtherList;
use super::options::Options;
use super::order::{Extent, Ground, Ordered, ordered, with_checks};
use super::step::Step;
use super::watch::Meter;
use crate::error::AdviceError;
use crate::forecast::Forecast;

/// What may be chosen in place of a list, the least restricted first.
fn to_choose() -> impl Iterator<Item = BTreeSet<Without>> {
    std::iter::once(BTreeSet::new()).chain(Without::ALL.iter().map(|without| BTreeSet::from([*without])))
}

/// A list that is known, as long as others are looked for.
struct Known {
    without: BTreeSet<Without>,
    steps: Vec<Step>,
}

impl Known {
    fn has_same_steps(&self, steps: &[Step]) -> bool {
        let changes =
            |steps: &[Step]| -> BTreeSet<ChangeKind> { steps.iter().map(|step| step.change).collect() };
        changes(&self.steps) == changes(steps)
    }
}

/// Whether a list that leaves out some work is the same where other work is not wanted either: it has none of it.
fn is_also(leaves_out: &BTreeSet<Without>, steps: &[Step], without: &BTreeSet<Without>) -> bool {
    let is_left_out = |step: &Step| without.iter().any(|kind| is_such_work(step.change, &step.before, *kind));
    leaves_out.is_subset(without) && !steps.iter().any(is_left_out)
}

/// Another list on its way.
pub(super) struct OnItsWay {
    without: BTreeSet<Without>,
    /// The house in which that work is not wanted.
    survey: Survey,
    pub(super) ordered: Ordered,
}

/// The changes of what may be chosen in place of a list. Of a house too large to be searched there is nothing.
pub(super) fn on_their_way(
    ground: &Ground<'_>,
    options: &Options,
    list: &Ordered,
    watch: &mut dyn FnMut(f64) -> bool,
) -> Result<Vec<OnItsWay>, AdviceError> {
    let chosen = ground.survey.without();
    let to_choose: Vec<_> = match list.searched {
        Some(_) => to_choose().filter(|without| *without != chosen).collect(),
        None => Vec::new(),
    };
    // Where a room failed its test there may be checks among the steps, which are such work or not.
    let may_hold_checks = !checks::failed(ground.survey, ground.as_found).is_empty();
    let each = 1.0 / to_choose.len().max(1) as f64;
    let mut made: Vec<OnItsWay> = Vec::new();
    for (place, without) in to_choose.into_iter().enumerate() {
        let so_far =
            std::iter::once((&chosen, list)).chain(made.iter().map(|one| (&one.without, &one.ordered)));
        let same = so_far.into_iter().find(|(of, ordered)| is_also(of, &ordered.steps, &without));
        let survey = ground.survey.where_not_wanted(&without);
        let ordered = match same {
            Some(_) if !may_hold_checks => continue,
            Some((_, same)) => same.clone(),
            None => {
                let mut of_all = |share| watch((place as f64 + share) * each);
                let here = Ground { survey: &survey, ..*ground };
                ordered(&here, options, Extent::End, &mut Meter::new(&mut of_all))?
            }
        };
        made.push(OnItsWay { without, survey, ordered });
    }
    if watch(1.0) { Ok(made) } else { Err(AdviceError::Stopped) }
}

/// The other lists of a house whose list is known, each with the forecast after all of it. One that is the same as another is none,
/// nor is one that changes nothing; but the way back to a list with everything is always there.
pub(super) fn others(
    ground: &Ground<'_>,
    options: &Options,
    list: &[Step],
    on_their_way: impl Iterator<Item = (OnItsWay, Forecast)>,
) -> Vec<OtherList> {
    let mut known = vec![Known { without: ground.survey.without(), steps: list.to_vec() }];
    let mut others = Vec::new();
    for (OnItsWay { without, survey, ordered }, forecast) in on_their_way {
        if known.iter().any(|known| is_also(&known.without, &known.steps, &without)) {
            continue;
        }
        let Ordered { mut steps, house, .. } = ordered;
        with_checks(&survey, ground.as_found, (&house, &forecast), &mut steps, options.most_steps);
        let is_nothing = steps.iter().all(|step| step.change.is_check());
        let is_known = known.iter().any(|known| known.has_same_steps(&steps));
        if without.is_empty() || !(is_nothing || is_known) {
            let changes: Vec<_> = steps.iter().map(|step| step.change).collect();
            others.push(OtherList::of(ground.survey, without.clone(), &changes, forecast));
        }
        known.push(Known { without, steps });
    }
    others
}

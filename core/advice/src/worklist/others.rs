//! What else the list might be: the best lists there are without some kind of work, and, where such work is not wanted, the one
//! with all of it. Each is made as the list itself is, of a house in which that work is not wanted, so that whoever takes one gets
//! what was promised.

use std::collections::BTreeSet;

use house::record::{ChangeKind, Named, Without};

use super::care::is_such_work;
use super::list::OtherList;
use super::options::Options;
use super::order::{Extent, Ground, Ordered, ordered, with_checks};
use super::step::Step;
use super::watch::Meter;
use crate::error::AdviceError;

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
    /// Whether the list is the same where this work is not wanted either: it has none of it.
    fn is_also(&self, without: &BTreeSet<Without>) -> bool {
        let is_left_out =
            |step: &Step| without.iter().any(|kind| is_such_work(step.change, &step.before, *kind));
        self.without.is_subset(without) && !self.steps.iter().any(is_left_out)
    }

    fn has_same_steps(&self, steps: &[Step]) -> bool {
        let changes =
            |steps: &[Step]| -> BTreeSet<ChangeKind> { steps.iter().map(|step| step.change).collect() };
        changes(&self.steps) == changes(steps)
    }
}

/// The other lists of a house whose list is known. One that is the same as another is none, nor is one that changes nothing;
/// but the way back to a list with everything is always there. Of a house too large to be searched there are none.
pub(super) fn others(
    ground: &Ground<'_>,
    options: &Options,
    list: &Ordered,
    watch: &mut dyn FnMut(f64) -> bool,
) -> Result<Vec<OtherList>, AdviceError> {
    let chosen = ground.survey.without();
    let mut known = vec![Known { without: chosen.clone(), steps: list.steps.clone() }];
    let mut others = Vec::new();
    let to_choose: Vec<_> = match list.searched {
        Some(_) => to_choose().filter(|without| *without != chosen).collect(),
        None => Vec::new(),
    };
    let each = 1.0 / to_choose.len().max(1) as f64;
    for (place, without) in to_choose.into_iter().enumerate() {
        if known.iter().any(|known| known.is_also(&without)) {
            continue;
        }
        let mut of_all = |share| watch((place as f64 + share) * each);
        let mut meter = Meter::new(&mut of_all);
        let survey = ground.survey.where_not_wanted(&without);
        let here = Ground { survey: &survey, ..*ground };
        let Ordered { mut steps, house, forecast, .. } = ordered(&here, options, Extent::End, &mut meter)?;
        with_checks(&survey, ground.as_found, (&house, &forecast), &mut steps, options.most_steps);
        let is_nothing = steps.iter().all(|step| step.change.is_check());
        let is_known = known.iter().any(|known| known.has_same_steps(&steps));
        if without.is_empty() || !(is_nothing || is_known) {
            let changes: Vec<_> = steps.iter().map(|step| step.change).collect();
            others.push(OtherList::of(ground.survey, without.clone(), &changes, forecast));
        }
        known.push(Known { without, steps });
    }
    if watch(1.0) { Ok(others) } else { Err(AdviceError::Stopped) }
}

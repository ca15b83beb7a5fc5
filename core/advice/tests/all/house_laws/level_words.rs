//! No list takes a service from inside its window to outside, or to its margin, without a word: the step that does so says it.

use advice::level::{Fit, OutletLevels};

use super::Seen;

pub(super) fn broken(seen: &Seen) -> Vec<String> {
    let mut broken = Vec::new();
    for then in seen.list.levels_when_done() {
        let now = seen.list.levels.of(then.outlet, then.service).map_or(Fit::NotKnown, OutletLevels::fits);
        let said = seen.list.steps.iter().flat_map(|step| &step.moves_out);
        let mut said = said.filter(|moved| (moved.outlet, moved.service) == (then.outlet, then.service));
        if matches!(now, Fit::Inside | Fit::Marginal) && then.fits() == Fit::Outside && said.next().is_none()
        {
            broken.push(format!("levels: {:?} leaves its window, and no step says so", then.service));
        }
        let all = seen.list.steps.iter().flat_map(|step| step.moves_out.iter().chain(&step.narrows));
        let mut all = all.filter(|moved| (moved.outlet, moved.service) == (then.outlet, then.service));
        if now == Fit::Inside && then.fits() == Fit::Marginal && all.next().is_none() {
            broken.push(format!("levels: {:?} loses its margin, and no step says so", then.service));
        }
    }
    broken
}

//! What a work list changes in the wiring: the parts and cables, each with the number of its step.

use std::collections::{BTreeMap, BTreeSet};

use advice::worklist::WorkList;
use facts::fact::SubjectId;
use house::naming;
use house::record::{Part, Run, Survey};
use phrase::Phrase;

/// What is not as it was found.
#[derive(Debug, Clone, Default)]
pub(super) struct Changed {
    /// The last step that changed a part, 1 first.
    steps: BTreeMap<SubjectId, usize>,
    /// The parts to which a new cable leads.
    new_cables: BTreeSet<SubjectId>,
    /// What is not there any more, as it was called.
    gone: Vec<Phrase>,
}

impl Changed {
    /// What the steps of a list change.
    pub(super) fn by(list: &WorkList) -> Self {
        let mut changed = Self::default();
        let afters = list.steps.iter().skip(1).map(|step| &step.before).chain([&list.house_when_done]);
        for (number, (step, after)) in list.steps.iter().zip(afters).enumerate() {
            changed.add(number + 1, &step.before, after);
        }
        changed
    }

    fn add(&mut self, step: usize, before: &Survey, after: &Survey) {
        for (id, part) in &after.parts {
            let is_other = before.parts.get(id).is_none_or(|was| differs(was, part));
            let has_new_cable = has_new_cable(*id, before, after);
            if is_other || has_new_cable || is_cable_mended(*id, before, after) {
                self.steps.insert(*id, step);
            }
            if has_new_cable {
                self.new_cables.insert(*id);
            }
        }
        let gone = before.parts.keys().filter(|id| !after.parts.contains_key(id));
        self.gone.extend(gone.map(|id| naming::part(before, *id)));
    }

    /// What is not there any more, as it was called.
    pub(super) fn gone(&self) -> &[Phrase] {
        &self.gone
    }

    /// Whether nothing changes.
    pub(super) fn is_empty(&self) -> bool {
        self.steps.is_empty() && self.gone.is_empty()
    }

    /// The step that changes a part.
    pub(super) fn step(&self, part: SubjectId) -> Option<usize> {
        self.steps.get(&part).copied()
    }

    /// Whether a new cable leads to a part.
    pub(super) fn has_new_cable(&self, part: SubjectId) -> bool {
        self.new_cables.contains(&part)
    }
}

/// Whether a part itself is another: where it hangs is its cable's to say.
fn differs(was: &Part, is: &Part) -> bool {
    let is_there = Part { feed: was.feed.clone(), ..is.clone() };
    *was != is_there
}

fn run_to(part: SubjectId, survey: &Survey) -> Option<&Run> {
    survey.runs.get(&survey.wiring.feed(part)?.run?)
}

/// Whether the cable that feeds a part is laid or renewed: not only screwed to another port.
fn has_new_cable(part: SubjectId, before: &Survey, after: &Survey) -> bool {
    match (run_to(part, before), run_to(part, after)) {
        (_, None) => false,
        // A jumper between two parts side by side is no cable to be drawn new.
        (None, Some(is)) => before.wiring.feed(part).is_none() && !is.is_jumper(),
        (Some(was), Some(is)) => (was.id != is.id && !is.is_jumper()) || was.cable != is.cable,
    }
}

/// Whether work was done on the cable that feeds a part, or a loose part joined.
fn is_cable_mended(part: SubjectId, before: &Survey, after: &Survey) -> bool {
    let mended = match (run_to(part, before), run_to(part, after)) {
        (Some(was), Some(is)) => was.id == is.id && was != is,
        _ => false,
    };
    mended || (before.wiring.loose().contains_key(&part) && !after.wiring.loose().contains_key(&part))
}

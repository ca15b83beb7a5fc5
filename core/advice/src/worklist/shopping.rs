//! Everything to buy for a whole work list.

use house::record::Survey;
use phrase::{Arg, Phrase};

use super::effort::{Effort, PartNeeded};
use super::list::WorkList;
use crate::adapters::{adapters_missing, adapters_to_come};

impl WorkList {
    /// What all steps need, by specification, and the adapters where there are none yet: equal things counted together,
    /// lengths of cable added up; the adapters first, then in the order of the steps.
    /// `survey` is the house as it stands, whose answers count: adapters that are placed are not bought again.
    pub fn shopping(&self, survey: &Survey) -> Vec<PartNeeded> {
        shopping(survey, &self.house_when_done, self.steps.iter().map(|step| &step.effort))
    }
}

/// The same of any steps, and of the house that they leave.
pub(super) fn shopping<'a>(
    survey: &Survey,
    house_when_done: &Survey,
    efforts: impl Iterator<Item = &'a Effort>,
) -> Vec<PartNeeded> {
    let mut list: Vec<PartNeeded> = Vec::new();
    let mut when_done = house_when_done.clone();
    when_done.asked.clone_from(&survey.asked);
    for needed in adapters_to_get(&when_done).iter().chain(efforts.flat_map(|effort| &effort.parts)) {
        add(&mut list, needed);
    }
    list
}

/// Puts something on a list: equal things are counted together, and lengths of cable added up.
fn add(list: &mut Vec<PartNeeded>, needed: &PartNeeded) {
    match list.iter_mut().find(|listed| listed.what.id == needed.what.id && can_join(listed, needed)) {
        Some(listed) => join(listed, needed),
        None => list.push(needed.clone()),
    }
}

fn length(needed: &PartNeeded) -> Option<f64> {
    needed.what.args.iter().find_map(|(_, arg)| match arg {
        Arg::Length(metres) => Some(*metres),
        _ => None,
    })
}

fn can_join(listed: &PartNeeded, needed: &PartNeeded) -> bool {
    length(listed).is_some() && length(needed).is_some() || listed.what == needed.what
}

fn join(listed: &mut PartNeeded, needed: &PartNeeded) {
    match length(needed) {
        Some(more) => {
            for (_, arg) in &mut listed.what.args {
                if let Arg::Length(metres) = arg {
                    *metres += more;
                }
            }
        }
        None => listed.count += needed.count,
    }
}

/// The adapters to get beyond those that there are, by specification: the router's is taken from those first.
pub fn adapters_to_get(survey: &Survey) -> Vec<PartNeeded> {
    let missing = adapters_missing(survey);
    let needed = adapters_to_come(survey);
    let there = needed.len().saturating_sub(missing);
    let mut list: Vec<PartNeeded> = Vec::new();
    for to_come in needed.into_iter().skip(there) {
        let adapter = to_come.outlet.and_then(|outlet| survey.parts.get(&outlet)?.adapter.as_ref());
        let version = survey.version_of(adapter);
        let port = survey.port_of(adapter).mbps;
        let what = Phrase::new("need-adapter")
            .text("version", version)
            .with("port", Arg::RateAsRead(f64::from(port)));
        add(&mut list, &PartNeeded { what, count: 1 });
    }
    list
}

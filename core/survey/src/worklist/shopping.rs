//! Everything to buy for a whole work list.

use super::effort::PartNeeded;
use super::order::WorkList;
use crate::words::Arg;

impl WorkList {
    /// What all steps need, by specification: equal things counted together, lengths of cable added up; in the order
    /// of the steps.
    pub fn shopping(&self) -> Vec<PartNeeded> {
        let mut list: Vec<PartNeeded> = Vec::new();
        for needed in self.steps.iter().flat_map(|step| &step.effort.parts) {
            match list.iter_mut().find(|listed| listed.what.id == needed.what.id && can_join(listed, needed))
            {
                Some(listed) => join(listed, needed),
                None => list.push(needed.clone()),
            }
        }
        list
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

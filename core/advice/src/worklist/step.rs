//! One step of the work list: what is done, what it gains, what it costs the other services.

use house::naming;
use house::record::{ChangeKind, Survey};
use phrase::{Arg, Phrase};

use super::care::cautions_at;
use super::effort::{Effort, effort};
use super::gain::Gain;
use crate::finding::Caution;
use crate::level::{MovedOut, NOTICEABLE_DB, OutletChange};

/// One step of the work.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// What is done.
    pub change: ChangeKind,
    /// The house as it stands before this step: names and places are those of this house.
    pub before: Survey,
    /// What it gains, outlet by outlet in the forecast's order.
    pub gains: Vec<Gain>,
    /// What it gains or costs the other services at each TV and modem, in dB.
    pub service_changes: Vec<OutletChange>,
    /// Levels that it moves out of what the device needs, with the steps before it: its need weighs more.
    pub moves_out: Vec<MovedOut>,
    /// Levels that it leaves within what the device needs, with less of a margin than is good.
    pub narrows: Vec<MovedOut>,
    /// Parts and minutes.
    pub effort: Effort,
}

impl Step {
    /// A change in the house as it stands before it, with what it takes; nothing is said of what it gains or costs.
    pub(super) fn bare(change: ChangeKind, before: Survey) -> Self {
        Self {
            change,
            gains: Vec::new(),
            service_changes: Vec::new(),
            moves_out: Vec::new(),
            narrows: Vec::new(),
            effort: effort(change, &before),
            before,
        }
    }

    /// Whether TV and modem are to be checked afterwards: wherever one hangs on the coax.
    pub fn asks_for_a_check(&self) -> bool {
        !self.service_changes.is_empty()
    }

    /// What to take care of, most important first.
    pub fn cautions(&self) -> Vec<Caution> {
        cautions_at(self.change, &self.before)
    }

    /// What it gains or costs the other services, in words: one for each TV and modem that would notice.
    pub fn service_words(&self) -> Vec<Phrase> {
        let told = self.noticeable_service_changes();
        if told.is_empty() && self.moves_out.is_empty() && self.narrows.is_empty() && self.asks_for_a_check()
        {
            return vec![Phrase::new("service-change-none")];
        }
        let words = |change: &&OutletChange| {
            // A loss is told before a gain elsewhere in the band.
            let loses = change.worst_db() <= -NOTICEABLE_DB;
            let (id, name, db) = if loses {
                ("service-change-loses", "loss", -change.worst_db())
            } else {
                ("service-change-gains", "gain", change.largest_db())
            };
            Phrase::new(id)
                .phrase("service", naming::service(change.service))
                .phrase("outlet", naming::part(&self.before, change.outlet))
                .with(name, Arg::Loss(db))
        };
        let out = self.moves_out.iter().map(|moved| moved.phrase(&self.before));
        let narrowed = self.narrows.iter().map(|moved| moved.narrowed_phrase(&self.before));
        told.iter().map(words).chain(out).chain(narrowed).collect()
    }

    /// The changes of level that can be told from none at all, the greatest loss first.
    pub fn noticeable_service_changes(&self) -> Vec<&OutletChange> {
        let size = |change: &&OutletChange| change.largest_db();
        let mut told: Vec<_> =
            self.service_changes.iter().filter(|change| size(change).abs() >= NOTICEABLE_DB).collect();
        told.sort_by(|a, b| a.worst_db().total_cmp(&b.worst_db()));
        told
    }
}

//! One step of the work list: what is done, what it gains, what it costs the other services.

use house::naming;
use house::record::{ChangeKind, PartKind, Plugged, Survey};
use phrase::{Arg, Phrase};

use super::care::cautions_in;
use super::effort::Effort;
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
    /// Whether TV and modem are to be checked afterwards: wherever one hangs on the coax.
    pub fn asks_for_a_check(&self) -> bool {
        !self.service_changes.is_empty()
    }

    /// What to take care of, most important first; next to the entry that the street's side stays closed, too, and beside a
    /// fibre box that the fibre stays in.
    pub fn cautions(&self) -> Vec<Caution> {
        let mut cautions = cautions_in(self.change, &self.before);
        let at = self.change.at();
        let plugged = self.before.parts.get(&at).and_then(|part| part.plugged.as_ref());
        if plugged.is_some_and(|plugged| plugged.contains(&Plugged::FibreBox)) {
            cautions.push(Caution::Fibre);
        }
        let head = self.before.wiring.head_of(at);
        let entry = self.before.parts.get(&head).is_some_and(|part| part.kind == PartKind::Entry);
        let unscrews = !matches!(self.change, ChangeKind::Cap { .. } | ChangeKind::FilterAtDevice { .. });
        let is_before_split = || at == head || self.before.to_first_split(head).contains(&at);
        if entry && unscrews && is_before_split() {
            for caution in [Caution::HouseSideOnly, Caution::KeepGrounds] {
                let weather = cautions.iter().position(|caution| *caution == Caution::Thunderstorm);
                if !cautions.contains(&caution) {
                    cautions.insert(weather.unwrap_or(cautions.len()), caution);
                }
            }
        }
        cautions
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

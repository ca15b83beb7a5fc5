//! What to check where a test failed: at the outlet first, then along the way, what is most likely at fault first. Nothing is
//! bought for it, and nothing of the house changes; the room is tested again after each.

use std::collections::BTreeSet;

use facts::fact::SubjectId;
use house::record::{ChangeKind, OutletCheck, PartKind, Survey};

use super::care::not_wanted;
use super::list::FailedRoom;
use crate::entry_filter::other_home_at;
use crate::forecast::{CostAt, Forecast, nodes_of};
use crate::suspect::Suspects;
use crate::verdict::{Fault, RoomVerdict};

/// So many checks stand on the list at once for one room: one to make, one to fall back on.
const AT_ONCE: usize = 2;

/// The rooms whose tests failed, what is graver first, else in the forecast's order; the bridge too where its own adapter
/// hears no other, or not always. Nothing comes next for them yet.
pub(super) fn failed(survey: &Survey, forecast: &Forecast) -> Vec<FailedRoom> {
    let rooms = forecast.rooms.iter().map(|room| room.outlet);
    let of_forecast: BTreeSet<_> = rooms.clone().collect();
    let others = survey.parts.values().filter(|part| part.kind == PartKind::Outlet).map(|part| part.id);
    let all = rooms.chain(others.filter(|outlet| !of_forecast.contains(outlet)));
    let suspects = Suspects::of(survey, forecast);
    // What else is measured at the bridge is no test of a room.
    let counts = |verdict: &RoomVerdict<'_>| {
        let of_link = |fault: &Fault| matches!(fault, Fault::NoLink | Fault::ComesAndGoes);
        Some(verdict.outlet) != forecast.bridge || verdict.faults.iter().any(of_link)
    };
    let mut failed: Vec<_> = all
        .map(|outlet| RoomVerdict::at(survey, outlet, Some(forecast)))
        .filter(|verdict| verdict.has_failed() && counts(verdict))
        .map(|verdict| FailedRoom {
            outlet: verdict.outlet,
            suspect: (!verdict.faults.is_empty())
                .then(|| suspects.on_way(verdict.outlet).into_iter().next())
                .flatten(),
            faults: verdict.faults,
            next: None,
        })
        .collect();
    // What is graver first; a wish that is only missed last.
    failed.sort_by_key(|room| (room.faults.is_empty(), room.faults.first().copied()));
    failed
}

/// Checks that come before any change, and those that come after.
#[derive(Debug, Default)]
pub(super) struct Checks {
    /// What is quickly looked at in the room itself.
    pub(super) first: Vec<ChangeKind>,
    /// The rest.
    pub(super) last: Vec<ChangeKind>,
}

/// What to check for rooms whose tests failed. `changes` stand on the list already: what they renew is not looked at.
pub(super) fn checks(
    survey: &Survey,
    forecast: &Forecast,
    failed: &[FailedRoom],
    changes: &[ChangeKind],
) -> Checks {
    let suspects = Suspects::of(survey, forecast);
    let mut checks = Checks::default();
    for room in failed {
        let mut taken = 0;
        for check in sequence(survey, &suspects, room, changes) {
            if taken == AT_ONCE {
                break;
            }
            // Nobody's hands go to what other people get their signal through, nor where this house's people do not want them.
            let is_left_out = other_home_at(survey, check).is_some() || not_wanted(check, survey).is_some();
            if is_tried(survey, check) || is_left_out {
                continue;
            }
            taken += 1;
            let list = if is_in_room(check) { &mut checks.first } else { &mut checks.last };
            if !list.iter().any(|other| is_same(*other, check)) {
                list.push(check);
            }
        }
    }
    checks
}

/// The checks for one room, in order.
fn sequence(
    survey: &Survey,
    suspects: &Suspects<'_>,
    room: &FailedRoom,
    changes: &[ChangeKind],
) -> Vec<ChangeKind> {
    let Some(fault) = room.faults.first() else { return Vec::new() };
    let outlet = room.outlet;
    let at_outlet = |check| ChangeKind::CheckAtOutlet { outlet, check };
    let (first, later): (&[OutletCheck], &[OutletCheck]) = match fault {
        Fault::NoLink | Fault::NotSeen => (&[OutletCheck::Adapter, OutletCheck::ShortCable], &[]),
        Fault::HundredSomewhere | Fault::SlowOutside => {
            (&[OutletCheck::NetworkCable, OutletCheck::ShortCable], &[])
        }
        Fault::Slow => (&[OutletCheck::ShortCable], &[OutletCheck::NetworkCable]),
        Fault::ComesAndGoes | Fault::Lossy | Fault::LosesPackets => (&[OutletCheck::ShortCable], &[]),
    };
    let looks =
        suspects.on_way(outlet).into_iter().filter(|suspect| !suspect.is_cleared).filter_map(|suspect| {
            let renewed = changes.iter().any(|change| renews(*change, suspect.at));
            (!renewed).then_some(())?;
            match suspect.at {
                CostAt::Part(part) if part == outlet => None,
                CostAt::Part(part) => Some(ChangeKind::LookAtPart { part, outlet }),
                CostAt::RunTo(to) => Some(ChangeKind::LookAtRun { to, outlet }),
            }
        });
    let others = nodes_of(survey).iter().filter(|node| !node.bridge && node.outlet != outlet).count();
    let other_adapter = (others > 0).then_some(at_outlet(OutletCheck::OtherAdapter));
    let mut sequence: Vec<_> = first.iter().copied().map(at_outlet).collect();
    sequence.extend(looks);
    sequence.extend(later.iter().copied().map(at_outlet));
    sequence.extend(other_adapter);
    sequence.push(at_outlet(OutletCheck::Measure));
    sequence
}

fn is_in_room(check: ChangeKind) -> bool {
    let quick = [OutletCheck::Adapter, OutletCheck::ShortCable, OutletCheck::NetworkCable];
    matches!(check, ChangeKind::CheckAtOutlet { check, .. } if quick.contains(&check))
}

/// Whether somebody made this check, or could not.
fn is_tried(survey: &Survey, check: ChangeKind) -> bool {
    survey.works.values().any(|work| is_same(work.change, check))
}

/// A look at a part is the same look, whichever room it was for.
fn is_same(one: ChangeKind, other: ChangeKind) -> bool {
    match (one, other) {
        (ChangeKind::LookAtPart { part, .. }, ChangeKind::LookAtPart { part: same, .. })
        | (ChangeKind::LookAtRun { to: part, .. }, ChangeKind::LookAtRun { to: same, .. }) => part == same,
        _ => one == other,
    }
}

/// Whether a change renews what stands at a place.
fn renews(change: ChangeKind, at: CostAt) -> bool {
    match (change, at) {
        (
            ChangeKind::SwapSplitter { splitter: part, .. }
            | ChangeKind::RemoveSplitter { splitter: part }
            | ChangeKind::SwapAmplifier { amplifier: part }
            | ChangeKind::RemoveAmplifier { amplifier: part },
            CostAt::Part(there),
        )
        | (
            ChangeKind::ReplaceRun { to: part } | ChangeKind::RenewConnectors { to: part },
            CostAt::RunTo(there),
        ) => part == there,
        (ChangeKind::MergeSplitters { upper, lower, .. }, CostAt::Part(there)) => {
            upper == there || lower == there
        }
        _ => false,
    }
}

/// Whether a step helps a room: a check made for it or of something on its way, or a change to something on its way.
pub(super) fn helps(survey: &Survey, forecast: &Forecast, change: ChangeKind, outlet: SubjectId) -> bool {
    let way =
        || forecast.bridge.and_then(|bridge| survey.wiring.way_between(bridge, outlet)).unwrap_or_default();
    match change {
        ChangeKind::CheckAtOutlet { outlet: at, .. } => at == outlet,
        ChangeKind::LookAtPart { outlet: at, part } | ChangeKind::LookAtRun { outlet: at, to: part } => {
            at == outlet || way().contains(&part)
        }
        // A cap on the way is no answer to a test that failed.
        ChangeKind::Cap { .. } => false,
        change => way().contains(&change.at()),
    }
}

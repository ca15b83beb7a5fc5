//! A failed test never ends in nothing: the list has something to check or to change for the room, or says that nothing is
//! left for it.

use house::record::{LinkState, ReadingKind, TestReach};

use super::Seen;

pub(super) fn broken(seen: &Seen) -> Vec<String> {
    let mut broken = Vec::new();
    for reading in seen.survey.readings.values() {
        let over_coax = reading.how.is_some_and(|how| how.reach == TestReach::House && !how.over_radio);
        let no_link = match reading.measured {
            ReadingKind::Throughput { down_mbps, up_mbps } => over_coax && down_mbps <= 0.0 && up_mbps <= 0.0,
            ReadingKind::Link { state } => state == LinkState::Absent,
            _ => false,
        };
        let is_failed = seen.list.failed.iter().any(|room| Some(room.outlet) == reading.about);
        if no_link && !is_failed {
            broken.push(format!("failed: nothing is said of {:?}", reading.measured));
        }
    }
    for room in &seen.list.failed {
        let is_step = |next| seen.list.steps.iter().any(|step| step.change == next);
        if room.next.is_some_and(|next| !is_step(next)) {
            broken.push("failed: what comes next for a room is no step".into());
        }
        if !room.faults.is_empty() && room.next.is_none() && seen.survey.works.is_empty() {
            broken.push("failed: nothing comes next for a room where nothing was tried".into());
        }
    }
    broken
}

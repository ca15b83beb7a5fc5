//! What comes before what: the worth of a change, and which changes go before all others.

use std::collections::{BTreeMap, BTreeSet};

use coax::link::USABLE;
use facts::fact::SubjectId;
use house::record::{ChangeKind, Room, Survey, Wish};

use crate::finding::{FindingKind, Place, grave_findings};
use crate::forecast::{Forecast, Limit, PathForecast, RoomForecast};

/// What a change is worth, Mb/s over all rooms and both directions.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Worth {
    /// The rise of what people asked for, and a tenth of what rises beyond. Half of it counts at the likely value, half at
    /// the low one, so that a doubtful path made sure counts too.
    pub(super) rate: f64,
    /// What the coax carries more where an adapter's network socket holds the rate (PHY rate). Nobody has it until the
    /// socket is a faster one: it brings no step onto the list.
    pub(super) held_back: f64,
}

/// What is beyond the wish, up to twice of it, or beyond the network socket, counts as so much of what is wished; nobody
/// takes up work for more than that (our own choice).
const BEYOND: f64 = 0.1;

/// What a room gets of which nobody said what is wished counts as so much of what is wished (our own choice).
const UNASKED: f64 = 0.3;

/// So much of a gain counts at the likely rate, as much at the low one (our own choice).
const HALF: f64 = 0.5;

impl Worth {
    pub(super) fn of(before: (&Survey, &Forecast), after: (&Survey, &Forecast)) -> Self {
        let [was, is] = [before, after].map(|house| by_room(house, |outlet| rate(house, outlet)));
        let rise = |(room, is): (&SubjectId, &f64)| is - was.get(room).copied().unwrap_or_default();
        let rate = is.iter().map(rise).sum();
        let rooms = after.1.rooms.iter().map(|room| room.outlet);
        let held_back = rooms.map(|room| behind_the_port(before.1, after.1, room)).sum();
        Self { rate, held_back }
    }

    /// What it gains for the order of the steps: nothing where it costs more than it gives.
    pub(super) fn for_order(self) -> f64 {
        (self.rate + BEYOND * self.held_back).max(0.0)
    }
}

/// That a room in which a network is wished for has one at all counts as much as so many Mb/s of it, whatever the speed (our
/// own choice): a room that has none is laid a cable for.
const LINKED_MBPS: f64 = 300.0;

/// What all rooms of a house get, weighed by what is wished there: Mb/s, both directions together.
pub(super) fn value((survey, forecast): (&Survey, &Forecast)) -> f64 {
    let of = |outlet| {
        let is_linked = forecast.likely_down(outlet) >= USABLE.value();
        let linked = if is_linked { linked(survey.wish_at(outlet)) } else { 0.0 };
        rate((survey, forecast), outlet) + linked
    };
    by_room((survey, forecast), of).values().sum()
}

/// By room what its best outlet gets; an outlet of no room is a room by itself. A room that gets twice what it wishes gets no more for it
/// at two outlets.
fn by_room(
    (survey, forecast): (&Survey, &Forecast),
    of: impl Fn(SubjectId) -> f64,
) -> BTreeMap<SubjectId, f64> {
    best_by_room(survey, forecast.rooms.iter().map(|there| (there, of(there.outlet))))
}

/// The same of some outlets, of each what it gets.
pub(super) fn best_by_room<'a>(
    survey: &Survey,
    outlets: impl Iterator<Item = (&'a RoomForecast, f64)>,
) -> BTreeMap<SubjectId, f64> {
    let mut best = BTreeMap::new();
    for (there, gets) in outlets {
        let own = there.room.filter(|room| survey.rooms.get(room).is_some_and(|room| room.wish.is_some()));
        let served =
            || survey.rooms.values().find(|room| room.served_from == Some(there.outlet)).map(|room| room.id);
        let room = own.or_else(served).or(there.room).unwrap_or(there.outlet);
        let here = best.entry(room).or_insert(0.0_f64);
        *here = here.max(gets);
    }
    best
}

/// What [`value`] cannot rise above, whatever is done, where no network socket lets more than so much through. A room with a
/// wish that no outlet serves may get one.
pub(super) fn most((survey, forecast): (&Survey, &Forecast), port_mbps: f64) -> f64 {
    let all = |wish: Option<Wish>| {
        let ways = [wish.map(|wish| wish.down_mbps), wish.map(|wish| wish.up_mbps)];
        ways.map(|wish| rated(port_mbps, wish)).iter().sum::<f64>() + linked(wish)
    };
    let there: f64 = by_room((survey, forecast), |outlet| all(survey.wish_at(outlet))).values().sum();
    let served = |room: &Room| forecast.rooms.iter().any(|there| there.room == Some(room.id));
    let to_come = survey.rooms.values().filter(|room| room.wish.is_some() && !served(room));
    there + to_come.map(|room| all(room.wish)).sum::<f64>()
}

const fn linked(wish: Option<Wish>) -> f64 {
    match wish {
        Some(_) => LINKED_MBPS,
        None => UNASKED * LINKED_MBPS,
    }
}

fn rated(mbps: f64, wish: Option<f64>) -> f64 {
    match wish {
        Some(wish) => mbps.min(wish) + BEYOND * (mbps - wish).clamp(0.0, wish),
        None => UNASKED * mbps,
    }
}

fn rate((survey, forecast): (&Survey, &Forecast), outlet: SubjectId) -> f64 {
    let wish = survey.wish_at(outlet);
    forecast.path(outlet).map_or(0.0, |path| {
        [path.down, path.up]
            .into_iter()
            .zip([wish.map(|wish| wish.down_mbps), wish.map(|wish| wish.up_mbps)])
            .map(|(rate, wish)| HALF * (rated(rate.likely, wish) + rated(rate.low, wish)))
            .sum()
    })
}

fn behind_the_port(before: &Forecast, after: &Forecast, outlet: SubjectId) -> f64 {
    let (Some(was), Some(is)) = (before.path(outlet), after.path(outlet)) else { return 0.0 };
    let phy = |path: &PathForecast| path.phy_down.likely + path.phy_up.likely;
    if is.limit == Limit::EthernetPort { phy(is) - phy(was) } else { 0.0 }
}

/// The grave findings of a house, as they follow from its records alone.
pub(super) fn grave(survey: &Survey) -> BTreeSet<(FindingKind, Option<Place>)> {
    grave_findings(survey).map(|finding| (finding.kind, finding.at.first().copied())).collect()
}

/// Whether a step takes something grave away and brings nothing grave. `before` are the grave findings of the house before it.
pub(super) fn takes_grave_away(
    before: &BTreeSet<(FindingKind, Option<Place>)>,
    after: impl FnOnce() -> BTreeSet<(FindingKind, Option<Place>)>,
) -> bool {
    if before.is_empty() {
        return false;
    }
    let after = after();
    after.len() < before.len() && after.is_subset(before)
}

/// Whether a change keeps the network in the house.
pub(super) fn keeps_private(change: ChangeKind) -> bool {
    matches!(
        change,
        ChangeKind::AddEntryFilter { .. }
            | ChangeKind::MoveEntryFilter { .. }
            | ChangeKind::SwapEntryFilter { .. }
    )
}

/// The change that comes next: the first of those of the highest rank. A splitter that a new run is to leave from waits for
/// that run: swapped before, it would be bought too small, and swapped again.
pub(super) fn first_of(ranked: &[((bool, f64), ChangeKind)]) -> Option<ChangeKind> {
    let starts_new_run = |splitter: SubjectId| {
        ranked.iter().any(|(_, other)| matches!(other, ChangeKind::NewRun { from, .. } if *from == splitter))
    };
    let waits = |change: ChangeKind| match change {
        ChangeKind::SwapSplitter { splitter, .. } | ChangeKind::RemoveSplitter { splitter } => {
            starts_new_run(splitter)
        }
        ChangeKind::MergeSplitters { upper, lower, .. } => starts_new_run(upper) || starts_new_run(lower),
        _ => false,
    };
    let mut best: Option<((bool, f64), ChangeKind)> = None;
    for (rank, change) in ranked.iter().copied().filter(|(_, change)| !waits(*change)) {
        if best.is_none_or(|(most, _)| rank > most) {
            best = Some((rank, change));
        }
    }
    best.map(|(_, change)| change)
}

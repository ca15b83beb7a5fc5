//! Rooms that the outputs of a splitter lead to in some order: nobody knows which cable is which.
//!
//! Where the outputs are alike that hardly matters: one order is taken, each outlet is marked as guessed, and whoever finds
//! out says so of the output.

use facts::fact::SubjectId;
use house::naming;
use house::record::{Part, PartKind, Survey};
use phrase::Phrase;

use super::answer::Told;
use super::leads_to::{LeadsToAnswer, loose};
use super::outputs::OutputsAnswer;
use crate::place::Key;
use crate::session::{Pending, SurveySnapshot};
use crate::view::Offer;

/// Losses that are printed so near to each other are the same, dB.
const SAME_DB: f64 = 0.05;

/// Whether outputs of a part are alike, as far as is known: by what is printed; where nothing is, a three-way splitter may
/// have a strong output.
fn are_alike(part: &Part, ports: &[u8]) -> bool {
    let printed = &part.rating.leg_losses_db;
    let loss = |port: &u8| printed.get(usize::from(*port).checked_sub(1)?).copied();
    let losses: Vec<Option<f64>> = ports.iter().map(loss).collect();
    let same = |pair: &[Option<f64>]| match pair {
        [Some(one), Some(other)] => (one - other).abs() < SAME_DB,
        [one, other] => one.is_none() && other.is_none(),
        _ => true,
    };
    let strong = printed.is_empty() && part.outputs() == 3;
    part.kind == PartKind::Splitter && !strong && losses.windows(2).all(same)
}

/// Whether the outlet on an output was put there in some order.
pub(super) fn is_guessed(survey: &Survey, part: SubjectId, port: u8) -> bool {
    survey.wiring.on_port(part, port).any(|child| survey.is_feed_guessed(child))
}

/// The outlets and rooms of which no cable is known yet, and which the outputs may lead to; none where fewer than two outputs
/// are open, or those are not alike.
pub(super) fn offers(snapshot: &SurveySnapshot<'_>, part: &Part, told: &OutputsAnswer) -> Vec<Offer> {
    let open = told.open_but_in_order(snapshot, part);
    let rooms = rooms(snapshot, part.id, told);
    if open.len() < 2 || rooms.len() < 2 || !are_alike(part, &open) {
        return Vec::new();
    }
    let survey = snapshot.survey;
    let words = |leads: &LeadsToAnswer| match leads {
        LeadsToAnswer::Room(id) => survey.rooms.get(id).map(|room| naming::of_room(survey, room)),
        LeadsToAnswer::Loose(id) => Some(naming::part(survey, *id)),
        _ => None,
    };
    rooms.iter().filter_map(|leads| Some(Offer::new(leads, words(leads)?))).collect()
}

/// Outlets that wait for their feed, then rooms without an outlet, by name; those not that were picked for an output.
fn rooms(snapshot: &SurveySnapshot<'_>, part: SubjectId, told: &OutputsAnswer) -> Vec<LeadsToAnswer> {
    let survey = snapshot.survey;
    let outlet = |id: &SubjectId| survey.parts.get(id).filter(|part| part.kind == PartKind::Outlet);
    let waiting = loose(snapshot, part).filter(|id| outlet(id).is_some()).map(LeadsToAnswer::Loose);
    let known = |room: SubjectId| {
        survey.parts.values().any(|part| part.kind == PartKind::Outlet && part.room == Some(room))
    };
    let mut without: Vec<_> = survey.rooms.values().filter(|room| !known(room.id)).collect();
    without.sort_by(|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    let rooms = waiting.chain(without.into_iter().map(|room| LeadsToAnswer::Room(room.id)));
    rooms.filter(|leads| !told.has(*leads)).collect()
}

/// What was picked: outlets and rooms in the order in which they are offered.
pub(super) fn read(pending: &Pending) -> Vec<LeadsToAnswer> {
    let picked: Vec<LeadsToAnswer> = pending.picked(&Key::InOrder).unwrap_or_default();
    let fits = |leads: &LeadsToAnswer| matches!(leads, LeadsToAnswer::Room(_) | LeadsToAnswer::Loose(_));
    picked.into_iter().filter(fits).collect()
}

/// Which output each is taken to be on.
///
/// # Errors
/// Where there are fewer outputs than rooms, or those left are not alike.
pub(super) fn taken(part: &Part, open: &[u8], rooms: &[LeadsToAnswer]) -> Told<Vec<(u8, LeadsToAnswer)>> {
    if rooms.is_empty() {
        return Ok(Vec::new());
    }
    if rooms.len() > open.len() {
        return Err(Phrase::new("outputs-order-too-many"));
    }
    if !are_alike(part, open) {
        return Err(Phrase::new("outputs-order-not-alike"));
    }
    Ok(open.iter().copied().zip(rooms.iter().copied()).collect())
}

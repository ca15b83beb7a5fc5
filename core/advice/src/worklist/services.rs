//! What speaks against a change because of what it does to the other services: a level out of its window, a band or a
//! way back that is cut, DC that no longer arrives.

use facts::fact::SubjectId;
use house::rating::PartRating;
use house::record::{ChangeKind, Part, PartKind, Survey, power_paths};

use super::effect::applied;
use super::refusal::Refusal;
use crate::level::{self, OutletChange};

/// How many draws a refusal rests on: it looks at likely values only.
const DRAWS: u32 = 9;

/// A service that arrived with at most this loss and loses at least so much more is cut, dB.
const ARRIVES_DB: f64 = -60.0;
const CUT_DB: f64 = -20.0;

/// A level already outside its window may move further by this much before it counts, dB: readings are no better.
const FURTHER_DB: f64 = 0.5;

/// What speaks against this change on the part of the other services.
pub(super) fn service_refusal(change: ChangeKind, survey: &Survey) -> Option<Refusal> {
    let after = applied(change, survey);
    power_refusal(survey, &after).or_else(|| {
        // What the physics refuses is told by the forecast of the same house.
        let options = level::Options { draws: DRAWS, ..level::Options::default() };
        let changes = level::change(survey, &after, &options).ok()?;
        changes.iter().find_map(|change| cut(change).or_else(|| out_of_window(survey, change)))
    })
}

fn cut(change: &OutletChange) -> Option<Refusal> {
    let is_cut = |band: &level::BandChange| band.before_db > ARRIVES_DB && band.db.likely < CUT_DB;
    if change.cut_off || change.down.iter().any(is_cut) {
        return Some(Refusal::CutsService { outlet: change.outlet, service: change.service });
    }
    change.up.iter().any(is_cut).then_some(Refusal::CutsReturn { outlet: change.outlet })
}

/// Levels measured at the outlet, moved by the change at the nearest frequency looked at.
fn out_of_window(survey: &Survey, change: &OutletChange) -> Option<Refusal> {
    let outlet = change.outlet;
    let further = |window: &level::Window, before: f64, after: f64| {
        !window.holds(after) && window.outside_by(after) > window.outside_by(before) + FURTHER_DB
    };
    if let Some(window) = level::window_of(survey, change.service) {
        for (mhz, dbmv) in level::measured_at(survey, outlet) {
            let nearest =
                change.down.iter().min_by(|a, b| (a.mhz - mhz).abs().total_cmp(&(b.mhz - mhz).abs()))?;
            let after = dbmv + nearest.db.likely;
            if further(&window, dbmv, after) {
                return Some(Refusal::LevelOut { outlet, service: change.service, before: dbmv, after });
            }
        }
    }
    let sends = level::sends(survey, outlet)?;
    // What is lost on the way back the modem sends more.
    let least = change.up.iter().map(|band| band.db.likely).fold(f64::INFINITY, f64::min);
    let after = sends - least.min(0.0);
    further(&level::MODEM_SENDS, sends, after).then_some(Refusal::SendsTooMuch {
        outlet,
        before: sends,
        after,
    })
}

/// DC that something needs must still arrive, over parts that are known to pass it where they are new.
fn power_refusal(before: &Survey, after: &Survey) -> Option<Refusal> {
    let needs = |id: SubjectId| {
        after.parts.get(&id).is_some_and(|part| matches!(part.kind, PartKind::Amplifier | PartKind::Entry))
    };
    power_paths(before).into_iter().filter(|path| needs(path.feed.to)).find_map(|path| {
        let way = after.wiring.way_between(path.feed.from, path.feed.to);
        // A part that was on the way before is trusted with what it did; one that is not was never put to the proof.
        let passes = |id: SubjectId| passes(before, after, id, path.passes(id));
        let arrives = way.is_some_and(|way| way.iter().all(|id| passes(*id)));
        (!arrives).then_some(Refusal::CutsPower { powered: path.feed.to })
    })
}

fn passes(before: &Survey, after: &Survey, id: SubjectId, was_on_the_way: bool) -> bool {
    let Some(part) = after.parts.get(&id) else { return false };
    let known = before.parts.get(&id);
    let same = known.is_some_and(|known| known.kind == part.kind && rated_alike(known, part));
    let ends = matches!(part.kind, PartKind::Outlet | PartKind::Entry | PartKind::GroundBlock);
    (same && (was_on_the_way || ends))
        || part.kind == PartKind::Barrel
        || part.rating.power_pass == Some(true)
}

fn rated_alike(known: &Part, part: &Part) -> bool {
    let bare = |rating: &PartRating| PartRating { moca_bypass: None, ..rating.clone() };
    bare(&known.rating) == bare(&part.rating)
}

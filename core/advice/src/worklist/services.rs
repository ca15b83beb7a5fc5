//! What speaks against a change because of what it does to the other services: a level out of its window, a band or a
//! way back that is cut, DC that no longer arrives.

use std::borrow::Cow;
use std::collections::BTreeSet;

use facts::fact::SubjectId;
use house::rating::PartRating;
use house::record::{ChangeKind, Part, PartKind, Survey, power_paths};

use super::effect::applied;
use super::propose::proposals;
use super::rank::keeps_private;
use super::refusal::{Refusal, given_up, own_refusal};
use crate::error::AdviceError;
use crate::level::{self, Beside, Levels, Moved, MovedOut, NOTICEABLE_DB, OutletChange, levels};

/// How many draws a refusal rests on where no level is known: it then looks at likely changes only.
const DRAWS: u32 = 9;

/// A service that arrived with at most this loss and loses at least so much more is cut, dB.
const ARRIVES_DB: f64 = -60.0;
const CUT_DB: f64 = -20.0;

/// What speaks against this change in this house; `None` if nothing does.
pub fn refusal(change: ChangeKind, survey: &Survey) -> Option<Refusal> {
    own_refusal(change, survey).or_else(|| service_refusal(change, survey))
}

/// What speaks against this change by itself on the part of the other services.
fn service_refusal(change: ChangeKind, survey: &Survey) -> Option<Refusal> {
    // What the physics refuses is told by the forecast of the same house.
    let as_found = AsFound::new(survey).ok()?;
    let guard = as_found.guard(survey, Vec::new()).ok()?;
    let after = applied(change, survey);
    let others = guard.look(&weighed_in(change, &after, &given_up(survey))).ok()?;
    others.against.or_else(|| others.level_refusal(change, false))
}

/// The house in which a change is held against what the other services need: the one that it leaves. What an amplifier gives
/// is needed for what is still to come, too: an adapter that shares an outlet, a filter that keeps the network in the house. So
/// its absence is weighed with these done, but for those that are given up.
pub(super) fn weighed_in<'a>(
    change: ChangeKind,
    after: &'a Survey,
    given_up: &BTreeSet<ChangeKind>,
) -> Cow<'a, Survey> {
    if !matches!(change, ChangeKind::RemoveAmplifier { .. }) {
        return Cow::Borrowed(after);
    }
    let is_to_come = |other: &ChangeKind| {
        let wanted = matches!(other, ChangeKind::ShareOutlet { .. }) || keeps_private(*other);
        wanted && !given_up.contains(other) && own_refusal(*other, after).is_none()
    };
    let to_come = proposals(after).into_iter().filter(is_to_come);
    to_come.fold(Cow::Borrowed(after), |house, other| Cow::Owned(applied(other, &house)))
}

/// The house as found, whose levels all steps together must leave in their windows.
pub(super) struct AsFound {
    levels: Levels,
    /// `None` where no level is known.
    beside: Option<Beside>,
}

impl AsFound {
    pub(super) fn new(survey: &Survey) -> Result<Self, AdviceError> {
        // The same draws as those that levels are told by, so that both say the same of an edge.
        let options = level::Options::default();
        let levels = levels(survey, &options)?;
        let beside = levels.is_any_known().then(|| Beside::new(survey, &options)).transpose()?;
        Ok(Self { levels, beside })
    }

    /// The levels as found.
    pub(super) fn into_levels(self) -> Levels {
        self.levels
    }

    /// Watches over the services of the house as the steps so far leave it; `allowed` are the levels that earlier steps
    /// were let move out.
    pub(super) fn guard<'a>(
        &'a self,
        house: &'a Survey,
        allowed: Vec<MovedOut>,
    ) -> Result<Guard<'a>, AdviceError> {
        let so_far = match &self.beside {
            Some(beside) => Some((beside, Moved::new(&self.levels, &beside.then(house)?, allowed))),
            None => None,
        };
        let options = level::Options { draws: DRAWS, ..level::Options::default() };
        Ok(Guard { house, here: Beside::new(house, &options)?, so_far })
    }
}

/// The other services of a house beside which changes are held.
pub(super) struct Guard<'a> {
    house: &'a Survey,
    here: Beside,
    so_far: Option<(&'a Beside, Moved<'a>)>,
}

impl Guard<'_> {
    /// What becomes of the other services where `after` comes in place of the house.
    pub(super) fn look(&self, after: &Survey) -> Result<Others, AdviceError> {
        let changes = self.here.then(after)?;
        let against = power_refusal(self.house, after).or_else(|| changes.iter().find_map(cut));
        let (out, narrowed) = match &self.so_far {
            Some((beside, moved)) => {
                let all = beside.then(after)?;
                (moved.out(&all), moved.narrowed(&all))
            }
            None => (Vec::new(), Vec::new()),
        };
        Ok(Others {
            against,
            out,
            narrowed,
            costs: changes.iter().any(|change| change.worst_db() <= -NOTICEABLE_DB),
        })
    }
}

/// What a change does to the other services.
pub(super) struct Others {
    /// A service, a way back or DC that it cuts.
    pub(super) against: Option<Refusal>,
    /// Levels that it moves out of their windows, with the steps before it.
    pub(super) out: Vec<MovedOut>,
    /// Levels that it leaves in their windows with less of a margin than is good, with the steps before it.
    pub(super) narrowed: Vec<MovedOut>,
    /// Whether any service notices a loss.
    pub(super) costs: bool,
}

impl Others {
    /// The level for whose sake the change is refused. One that keeps the network in the house, that gives a room its link,
    /// or that nobody would notice by itself stays on the list, with a word.
    pub(super) fn level_refusal(&self, change: ChangeKind, gives_a_link: bool) -> Option<Refusal> {
        if keeps_private(change) || gives_a_link {
            return None;
        }
        self.out.iter().find(|moved| !moved.hardly).map(|moved| Refusal::level(*moved))
    }
}

fn cut(change: &OutletChange) -> Option<Refusal> {
    let is_cut = |band: &level::BandChange| band.before_db > ARRIVES_DB && band.db.likely < CUT_DB;
    if change.cut_off || change.down.iter().any(is_cut) {
        return Some(Refusal::CutsService { outlet: change.outlet, service: change.service });
    }
    change.up.iter().any(is_cut).then_some(Refusal::CutsReturn { outlet: change.outlet })
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

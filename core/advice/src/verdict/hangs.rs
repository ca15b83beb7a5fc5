//! Whether what an outlet gets hangs on a by-pass of which nobody knows.

use coax::link::USABLE;
use facts::fact::SubjectId;
use house::record::{ReadingKind, Survey};
use phrase::{Arg, Phrase};

use super::tells::{self, Tells};
use crate::forecast::{ByPassWorlds, Reach, RoomForecast, World, told};

/// A room hangs on a by-pass where it gets less than this share of the rate without one, by the slower way.
const LEFT_WITHOUT: f64 = 0.5;

/// An outlet that gets much with a by-pass and little without, or what is wished there in one of these cases only, and nobody
/// knows which of them it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hangs<'a>(&'a ByPassWorlds);

impl<'a> Hangs<'a> {
    /// In the house as found; `None` where it does not, or a test over the coax was made there: that tells more.
    pub fn at(survey: &Survey, room: &'a RoomForecast) -> Option<Self> {
        let mut tests = survey.readings_at(room.outlet).filter(|told| {
            let of_way = matches!(
                told.measured,
                ReadingKind::Throughput { .. } | ReadingKind::PhyRate { .. } | ReadingKind::Link { .. }
            );
            of_way && tells::of(survey, told).is_some_and(Tells::is_of_coax)
        });
        Self::to_come(survey, room).filter(|_| tests.next().is_none())
    }

    /// In a house that is still to come, of which nothing can have been measured.
    pub fn to_come(survey: &Survey, room: &'a RoomForecast) -> Option<Self> {
        let Reach::Estimated(path) = &room.reach else { return None };
        let worlds = path.by_pass.as_deref()?;
        let by_wish = survey.wish_at(room.outlet).is_some_and(|wish| worlds.decide(wish));
        (by_wish || is_far_apart(worlds)).then_some(Self(worlds))
    }

    /// The amplifiers on whose by-pass it hangs.
    pub fn on(&self) -> &'a [SubjectId] {
        &self.0.amplifiers
    }

    /// What gets through in either case.
    pub const fn worlds(&self) -> &'a ByPassWorlds {
        self.0
    }

    /// That it hangs on it, and what gets through in either case, in a sentence.
    pub fn phrase(&self, survey: &Survey) -> Phrase {
        let rate = |world: &World| Arg::Rate(world.both_ways());
        Phrase::new("hangs-on-by-pass")
            .with("count", Arg::Count(self.on().len() as u64))
            .with("amplifiers", told::parts(survey, self.on()))
            .with("with", rate(&self.0.with))
            .with("without", rate(&self.0.without))
    }
}

/// What is unsure of a path beyond its ranges, in a sentence: that it hangs on a by-pass, or else that the two adapters may not
/// hear each other.
pub fn doubt_of_link(survey: &Survey, room: &RoomForecast) -> Option<Phrase> {
    let Reach::Estimated(path) = &room.reach else { return None };
    let share = || Phrase::new("links-share").with("share", Arg::Share(path.links));
    Hangs::at(survey, room).map(|hangs| hangs.phrase(survey)).or_else(|| path.may_not_link().then(share))
}

fn is_far_apart(worlds: &ByPassWorlds) -> bool {
    let (with, without) = (worlds.with.both_ways(), worlds.without.both_ways());
    with >= USABLE.value() && without < with * LEFT_WITHOUT
}

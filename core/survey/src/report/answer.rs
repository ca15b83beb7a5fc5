//! Whether each room gets the speed wished for.

use crate::forecast::{Forecast, PathForecast, Reach, RoomForecast};
use crate::record::{Room, Survey, Wish};

/// Whether a wish is met, both ways counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Met {
    /// In at least nine draws of ten.
    Yes,
    /// In at least half of the draws.
    Likely,
    /// In less than half of the draws.
    Unlikely,
    /// Nothing could be worked out.
    NotKnown,
}

impl Met {
    /// Whether a path gives what is wished.
    pub fn of(wish: Wish, path: &PathForecast) -> Self {
        let ways = [(wish.down_mbps, path.down), (wish.up_mbps, path.up)];
        if ways.iter().all(|(wished, rate)| rate.low >= *wished) {
            Self::Yes
        } else if ways.iter().all(|(wished, rate)| rate.likely >= *wished) {
            Self::Likely
        } else {
            Self::Unlikely
        }
    }

    /// Whether what reaches an outlet gives what is wished.
    pub fn of_reach(wish: Wish, reach: &Reach) -> Self {
        match reach {
            Reach::Estimated(path) => Self::of(wish, path),
            Reach::NoBridge | Reach::Loose(_) => Self::NotKnown,
            Reach::OtherTree | Reach::NoChannel => Self::Unlikely,
        }
    }
}

/// The answer for one room that was asked about.
#[derive(Debug, Clone, Copy)]
pub struct RoomAnswer<'a> {
    /// The room.
    pub room: &'a Room,
    /// What its people wish.
    pub wish: Wish,
    /// Its outlet that comes off best; `None` where it has none that shall have an adapter.
    pub outlet: Option<&'a RoomForecast>,
    /// Whether the wish is met.
    pub met: Met,
}

/// An answer for each room with a wish, in the order of the rooms' names. The room of the bridge stands at the
/// router: its wish is not a matter of the coax.
pub fn answers<'a>(survey: &'a Survey, forecast: &'a Forecast) -> Vec<RoomAnswer<'a>> {
    let bridge_room = forecast.bridge.and_then(|bridge| survey.parts.get(&bridge)?.room);
    let mut rooms: Vec<_> = survey.rooms.values().filter(|room| Some(room.id) != bridge_room).collect();
    rooms.sort_by(|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    let answer = |room: &'a Room| {
        let wish = room.wish?;
        let outlets = forecast.rooms.iter().filter(|outlet| outlet.room == Some(room.id));
        let best =
            outlets.map(|outlet| (Met::of_reach(wish, &outlet.reach), outlet)).min_by_key(|(met, _)| *met);
        let met = best.map_or(Met::NotKnown, |(met, _)| met);
        Some(RoomAnswer { room, wish, outlet: best.map(|(_, outlet)| outlet), met })
    };
    rooms.into_iter().filter_map(answer).collect()
}

//! Whether each room gets the speed wished for.

use coax::Span;

use crate::finding::{Lies, held_against};
use crate::forecast::{Forecast, PathForecast, Reach, RoomForecast};
use facts::fact::SubjectId;
use house::record::{Reading, ReadingKind, Room, Survey, TestReach, Wish};

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

    /// Whether an outlet gets what is wished: as it was measured there, else as it was worked out.
    pub fn at(survey: &Survey, wish: Wish, room: &RoomForecast) -> Self {
        Self::measured(survey, wish, room.outlet).unwrap_or_else(|| Self::of_reach(wish, &room.reach))
    }

    /// What a test within the house, over a network cable, says of a wish; `None` where there is none, or where the
    /// test's own network socket held it below the wish.
    pub fn measured(survey: &Survey, wish: Wish, outlet: SubjectId) -> Option<Self> {
        let (down, up, socket) = tested(survey, outlet)?;
        if down >= wish.down_mbps && up >= wish.up_mbps {
            return Some(Self::Yes);
        }
        let falls_short = |measured: f64, wished: f64| {
            held_against(measured, Span::new(wished, wished, wished), socket).0 == Lies::Below
        };
        (falls_short(down, wish.down_mbps) || falls_short(up, wish.up_mbps)).then_some(Self::Unlikely)
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

/// The best throughput measured at an outlet within the house and over cables only, both ways, with the slowest
/// network socket of the test where somebody said it.
pub fn tested(survey: &Survey, outlet: SubjectId) -> Option<(f64, f64, Option<u32>)> {
    let of_coax =
        |reading: &&Reading| reading.how.is_some_and(|how| how.reach == TestReach::House && !how.over_radio);
    let rates = |reading: &Reading| match reading.measured {
        ReadingKind::Throughput { down_mbps, up_mbps } => {
            Some((down_mbps, up_mbps, reading.how.and_then(|how| how.socket_mbps)))
        }
        _ => None,
    };
    // Ids of readings carry no time; where there are several, the best one shows what the cable carries.
    survey.readings_at(outlet).filter(of_coax).filter_map(rates).max_by(|a, b| a.0.total_cmp(&b.0))
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
/// What was measured in a room goes before what was worked out.
pub fn answers<'a>(survey: &'a Survey, forecast: &'a Forecast) -> Vec<RoomAnswer<'a>> {
    answers_by(survey, forecast, |wish, room| Met::at(survey, wish, room))
}

/// The same by the forecast alone: for a house that is still to come, of which nothing can have been measured.
pub fn answers_to_come<'a>(survey: &'a Survey, forecast: &'a Forecast) -> Vec<RoomAnswer<'a>> {
    answers_by(survey, forecast, |wish, room| Met::of_reach(wish, &room.reach))
}

fn answers_by<'a>(
    survey: &'a Survey,
    forecast: &'a Forecast,
    met: impl Fn(Wish, &RoomForecast) -> Met,
) -> Vec<RoomAnswer<'a>> {
    let bridge_room = forecast.bridge.and_then(|bridge| survey.parts.get(&bridge)?.room);
    let mut rooms: Vec<_> = survey.rooms.values().filter(|room| Some(room.id) != bridge_room).collect();
    rooms.sort_by(|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    let answer = |room: &'a Room| {
        let wish = room.wish?;
        let outlets = forecast.rooms.iter().filter(|outlet| outlet.room == Some(room.id));
        let best = outlets.map(|outlet| (met(wish, outlet), outlet)).min_by_key(|(met, _)| *met);
        let met = best.map_or(Met::NotKnown, |(met, _)| met);
        Some(RoomAnswer { room, wish, outlet: best.map(|(_, outlet)| outlet), met })
    };
    rooms.into_iter().filter_map(answer).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use house::record::HowMeasured;

    fn met(socket_mbps: Option<u32>, mbps: f64, wished: f64) -> Option<Met> {
        let id = |number| SubjectId::from_uuid(uuid::Uuid::from_u128(number));
        let mut survey = Survey::new(id(1));
        let how = HowMeasured { socket_mbps, ..HowMeasured::new(TestReach::House, false) };
        let measured = ReadingKind::Throughput { down_mbps: mbps, up_mbps: mbps };
        let reading = Reading { id: id(3), about: Some(id(2)), measured, how: Some(how), port: None };
        survey.readings.insert(reading.id, reading);
        Met::measured(&survey, Wish { down_mbps: wished, up_mbps: wished }, id(2))
    }

    #[test]
    fn a_test_tells_of_the_wish_unless_its_own_socket_held_it() {
        assert_eq!(met(None, 310.0, 300.0), Some(Met::Yes));
        assert_eq!(met(None, 210.0, 300.0), Some(Met::Unlikely));
        assert_eq!(met(None, 905.0, 1200.0), None);
        assert_eq!(met(Some(1000), 905.0, 1200.0), None);
        assert_eq!(met(Some(2500), 905.0, 1200.0), Some(Met::Unlikely));
        assert_eq!(met(Some(100), 94.0, 300.0), None);
    }
}

//! Whether each outlet and each room gets the speed wished for: as found, as measured, or once all work is done.

use coax::Span;
use facts::fact::SubjectId;
use house::record::{HowMeasured, LinkState, Reading, ReadingKind, Room, Survey, TestReach, Wish};
use phrase::{Arg, Phrase};

use super::tells::{self, Tells};
use crate::beside::{Beside, rate_beside};
use crate::forecast::{Forecast, PathForecast, Reach, RoomForecast};

/// Whether a wish is met, both ways counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Met {
    /// It was measured, or is so in at least nine draws of ten.
    Yes,
    /// In at least half of the draws.
    Likely,
    /// It likely is with a by-pass and likely is not without one, and nobody knows of it.
    HangsOnByPass,
    /// It was measured otherwise, or is so in less than half of the draws.
    Unlikely,
    /// Nothing could be worked out.
    NotKnown,
}

impl Met {
    /// Whether what reaches an outlet gives what is wished, by the forecast alone.
    fn by_forecast(wish: Wish, reach: &Reach) -> Self {
        match reach {
            Reach::Estimated(path) => match &path.by_pass {
                Some(worlds) if worlds.decide(wish) => Self::HangsOnByPass,
                _ => Self::over(wish, path),
            },
            Reach::NoBridge | Reach::Loose(_) => Self::NotKnown,
            Reach::OtherTree | Reach::FedByNothing(_) | Reach::NoChannel => Self::Unlikely,
        }
    }

    fn over(wish: Wish, path: &PathForecast) -> Self {
        let ways = [(wish.down_mbps, path.down), (wish.up_mbps, path.up)];
        if ways.iter().all(|(wished, rate)| rate.low >= *wished) {
            Self::Yes
        } else if ways.iter().all(|(wished, rate)| rate.likely >= *wished) {
            Self::Likely
        } else {
            Self::Unlikely
        }
    }

    /// Whether it counts as met, surely or likely.
    pub fn is_met(self) -> bool {
        self <= Self::Likely
    }

    /// Its name in data: `not_known`.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Yes => "yes",
            Self::Likely => "likely",
            Self::HangsOnByPass => "hangs_on_bypass",
            Self::Unlikely => "unlikely",
            Self::NotKnown => "not_known",
        }
    }
}

/// What tests say of a wish.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WishMeasured {
    /// [`Met::Yes`] or [`Met::Unlikely`].
    pub met: Met,
    /// The rate towards the room that shows it, Mb/s.
    pub down_mbps: f64,
    /// The rate from the room, Mb/s.
    pub up_mbps: f64,
}

impl WishMeasured {
    /// What the tests at an outlet that tell of the coax say of a wish: that one of them gives it or, where none does, what the
    /// fastest says. `None` where there is none, or where the test's own network socket held it below the wish, or it is
    /// short of it by no more than tells anything.
    pub fn at(survey: &Survey, wish: Wish, outlet: SubjectId) -> Option<Self> {
        let of_coax = survey.readings_at(outlet).filter(|told| tells::of(survey, told) == Some(Tells::Coax));
        let mut rates: Vec<_> = of_coax
            .filter_map(|told| match told.measured {
                ReadingKind::Link { state: LinkState::Absent } => Some((0.0, 0.0, None)),
                ReadingKind::Throughput { down_mbps, up_mbps } => {
                    Some((down_mbps, up_mbps, told.how.and_then(|how| how.socket_mbps)))
                }
                _ => None,
            })
            .collect();
        // Ids of readings carry no time; where there are several, the best one shows what the cable carries.
        rates.sort_by(|a, b| b.0.total_cmp(&a.0).then(b.1.total_cmp(&a.1)));
        let gives = rates.iter().map(|(down, up, _)| (*down, *up)).chain(to_internet(survey, outlet));
        if let Some((down_mbps, up_mbps)) = gives.into_iter().find(|(down, up)| is_given(wish, *down, *up)) {
            return Some(Self { met: Met::Yes, down_mbps, up_mbps });
        }
        let (down_mbps, up_mbps, socket) = rates.first().copied()?;
        let falls_short = |measured: f64, wished: f64| {
            rate_beside(measured, Span::exact(wished), socket, false).0 == Beside::Worse
        };
        (falls_short(down_mbps, wish.down_mbps) || falls_short(up_mbps, wish.up_mbps)).then_some(Self {
            met: Met::Unlikely,
            down_mbps,
            up_mbps,
        })
    }
}

/// The rates of tests to the internet over wire all the way: what such a test reaches, the coax gives at least. That it
/// reaches no more says nothing of the coax.
fn to_internet(survey: &Survey, outlet: SubjectId) -> impl Iterator<Item = (f64, f64)> {
    let by_wire = |how: HowMeasured| how.reach == TestReach::Internet && !how.over_radio;
    let counts = move |told: &&Reading| told.how.is_some_and(by_wire) && !tells::is_from_before(survey, told);
    survey.readings_at(outlet).filter(counts).filter_map(|told| match told.measured {
        ReadingKind::Throughput { down_mbps, up_mbps } => Some((down_mbps, up_mbps)),
        _ => None,
    })
}

/// Whether a test of these rates gives a wish, Mb/s.
pub fn is_given(wish: Wish, down_mbps: f64, up_mbps: f64) -> bool {
    down_mbps >= wish.down_mbps && up_mbps >= wish.up_mbps
}

/// How a wish stands, as people are told: what was measured is said otherwise than what was worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stands {
    /// It is met: measured, or as good as sure.
    Met,
    /// It is likely met.
    LikelyMet,
    /// It likely is with a by-pass of which nobody knows, and not without.
    HangsOnByPass,
    /// It was measured not to be met.
    NotYet,
    /// It is likely not met.
    LikelyNot,
    /// Nothing could be worked out.
    NotKnown,
}

/// A wish at an outlet, and whether it is met.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wished {
    /// What is wished.
    pub wish: Wish,
    /// Whether it is met: as it was measured, else as it was worked out.
    pub met: Met,
    /// What was measured, where that decides.
    pub measured: Option<WishMeasured>,
}

impl Wished {
    /// In the house as found: as it was measured, else as it was worked out. `None` where nothing is wished.
    pub fn at(survey: &Survey, room: &RoomForecast) -> Option<Self> {
        survey.wish_at(room.outlet).map(|wish| Self::as_found(survey, wish, room))
    }

    /// In a house that is still to come, of which nothing can have been measured.
    pub fn to_come(survey: &Survey, room: &RoomForecast) -> Option<Self> {
        survey.wish_at(room.outlet).map(|wish| Self::as_forecast(wish, room))
    }

    fn as_found(survey: &Survey, wish: Wish, room: &RoomForecast) -> Self {
        match WishMeasured::at(survey, wish, room.outlet) {
            Some(measured) => Self { wish, met: measured.met, measured: Some(measured) },
            None => Self::as_forecast(wish, room),
        }
    }

    fn as_forecast(wish: Wish, room: &RoomForecast) -> Self {
        Self { wish, met: Met::by_forecast(wish, &room.reach), measured: None }
    }

    /// How it stands.
    pub const fn stands(&self) -> Stands {
        match (self.met, self.measured) {
            (Met::Yes, _) => Stands::Met,
            (Met::Likely, _) => Stands::LikelyMet,
            (Met::HangsOnByPass, _) => Stands::HangsOnByPass,
            (Met::Unlikely, Some(_)) => Stands::NotYet,
            (Met::Unlikely, None) => Stands::LikelyNot,
            (Met::NotKnown, _) => Stands::NotKnown,
        }
    }

    /// What is wished, both ways, and whether that is met, in a sentence.
    pub fn phrase(&self) -> Phrase {
        let Self { wish, measured, .. } = self;
        let id = match self.stands() {
            Stands::Met if measured.is_some() => "wish-met-measured",
            Stands::Met => "wish-met",
            Stands::LikelyMet => "wish-likely-met",
            Stands::HangsOnByPass => "wish-hangs-on-by-pass",
            Stands::NotYet => "wish-not-met-measured",
            Stands::LikelyNot => "wish-not-met",
            Stands::NotKnown => "wish-not-known",
        };
        let phrase =
            Phrase::new(id).with("down", Arg::Rate(wish.down_mbps)).with("up", Arg::Rate(wish.up_mbps));
        match measured {
            Some(rates) => phrase
                .with("measured_down", Arg::RateAsRead(rates.down_mbps))
                .with("measured_up", Arg::RateAsRead(rates.up_mbps)),
            None => phrase,
        }
    }
}

/// The answer for one room that was asked about.
#[derive(Debug, Clone, Copy)]
pub struct RoomAnswer<'a> {
    /// The room.
    pub room: &'a Room,
    /// What its people wish, and whether it is met.
    pub wished: Wished,
    /// The outlet that serves it best, its own or for a room without coax the one it is served from; `None` where there is
    /// none that shall have an adapter.
    pub outlet: Option<&'a RoomForecast>,
}

/// An answer for each room with a wish, in the order of the rooms' names. The room of the bridge stands at the
/// router: its wish is not a matter of the coax.
/// What was measured in a room goes before what was worked out.
pub fn answers<'a>(survey: &'a Survey, forecast: &'a Forecast) -> Vec<RoomAnswer<'a>> {
    answers_by(survey, forecast, |wish, room| Wished::as_found(survey, wish, room))
}

/// The same by the forecast alone: for a house that is still to come, of which nothing can have been measured.
pub fn answers_to_come<'a>(survey: &'a Survey, forecast: &'a Forecast) -> Vec<RoomAnswer<'a>> {
    answers_by(survey, forecast, Wished::as_forecast)
}

fn answers_by<'a>(
    survey: &'a Survey,
    forecast: &'a Forecast,
    wished: impl Fn(Wish, &RoomForecast) -> Wished,
) -> Vec<RoomAnswer<'a>> {
    let bridge_room = forecast.bridge.and_then(|bridge| survey.parts.get(&bridge)?.room);
    let mut rooms: Vec<_> = survey.rooms.values().filter(|room| Some(room.id) != bridge_room).collect();
    rooms.sort_by(|a, b| a.name.cmp(&b.name));
    let answer = |room: &'a Room| {
        let wish = room.wish?;
        let own = forecast.rooms.iter().filter(|outlet| outlet.room == Some(room.id));
        let served = room.served_from.and_then(|outlet| forecast.room(outlet));
        let outlets = own.chain(served);
        let best = outlets.map(|outlet| (wished(wish, outlet), outlet)).min_by_key(|(told, _)| told.met);
        let nothing = Wished { wish, met: Met::NotKnown, measured: None };
        let (wished, outlet) = best.map_or((nothing, None), |(told, outlet)| (told, Some(outlet)));
        Some(RoomAnswer { room, wished, outlet })
    };
    rooms.into_iter().filter_map(answer).collect()
}

/// In how many of the rooms the wish is met, surely or likely.
pub fn met(answers: &[RoomAnswer<'_>]) -> usize {
    answers.iter().filter(|answer| answer.wished.met.is_met()).count()
}

/// In how many of the rooms that were asked about the wish is met, as one sentence.
pub fn summary(answers: &[RoomAnswer<'_>]) -> Phrase {
    let met = met(answers);
    let unknown = answers.iter().filter(|answer| answer.wished.met == Met::NotKnown).count();
    let asked = Arg::Count(answers.len() as u64);
    let hangs = answers.iter().filter(|answer| answer.wished.met == Met::HangsOnByPass).count();
    if met == 0 && hangs > 0 {
        return Phrase::new("answer-hangs-on-by-pass")
            .with("hangs", Arg::Count(hangs as u64))
            .with("asked", asked);
    }
    if met == 0 && unknown > 0 {
        return Phrase::new("forecast-not-known")
            .with("unknown", Arg::Count(unknown as u64))
            .with("asked", asked);
    }
    let id = match met {
        _ if answers.is_empty() => "answer-nothing-asked",
        0 => "answer-none",
        _ if met == answers.len() => "answer-all",
        _ => "answer-some",
    };
    Phrase::new(id).with("asked", asked).with("met", Arg::Count(met as u64))
}

#[cfg(test)]
mod tests {
    use super::*;
    use house::record::Reading;

    fn id(number: u128) -> SubjectId {
        SubjectId::from_uuid(uuid::Uuid::from_u128(number))
    }

    fn measured(tests: &[(Option<HowMeasured>, f64, f64)], wish: Wish) -> Option<Met> {
        let mut survey = Survey::new(id(1));
        for (number, (how, down_mbps, up_mbps)) in (3..).zip(tests.iter().copied()) {
            let measured = ReadingKind::Throughput { down_mbps, up_mbps };
            let reading = Reading { id: id(number), about: Some(id(2)), measured, how, port: None };
            survey.readings.insert(reading.id, reading);
        }
        WishMeasured::at(&survey, wish, id(2)).map(|told| told.met)
    }

    fn met(socket_mbps: Option<u32>, mbps: f64, wished: f64) -> Option<Met> {
        let how = HowMeasured { socket_mbps, ..HowMeasured::new(TestReach::House, false) };
        measured(&[(Some(how), mbps, mbps)], Wish { down_mbps: wished, up_mbps: wished })
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

    #[test]
    fn one_test_that_gives_the_wish_is_enough() {
        let house = |over_radio| Some(HowMeasured::new(TestReach::House, over_radio));
        let wish = Wish { down_mbps: 300.0, up_mbps: 100.0 };
        // The one that is faster down is too slow up.
        assert_eq!(
            measured(&[(house(false), 800.0, 20.0), (house(false), 320.0, 110.0)], wish),
            Some(Met::Yes)
        );
        assert_eq!(measured(&[(house(true), 800.0, 200.0)], wish), None);
        // To the internet by wire it went over the coax, too; that such a test gives less says nothing of it.
        let internet = |over_radio| Some(HowMeasured::new(TestReach::Internet, over_radio));
        assert_eq!(measured(&[(internet(false), 400.0, 120.0)], wish), Some(Met::Yes));
        assert_eq!(measured(&[(internet(false), 200.0, 120.0)], wish), None);
        assert_eq!(measured(&[(internet(true), 400.0, 120.0)], wish), None);
        // Where nobody said how, it counts as every other place counts it.
        assert_eq!(measured(&[(None, 800.0, 200.0)], wish), Some(Met::Yes));
    }
}

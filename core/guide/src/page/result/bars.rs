//! The rate of each room as a bar: the forecast's range, what is wished, what was measured, and what the work list is
//! expected to make of it. All of it is worked out elsewhere.

use advice::forecast::RoomForecast;
use advice::verdict::{Met, Wished};
use coax::Span;
use house::record::Survey;
use phrase::{Arg, Phrase};
use telling::figure::RoomBar;
use telling::words::Language;

use crate::screen::{RowBar, RowMark};
use crate::session::{SurveySnapshot, Worked};

/// The bars of one list of rooms, all on one scale.
pub(super) struct Bars<'a> {
    survey: &'a Survey,
    worked: &'a Worked,
    language: &'a Language,
    /// Where the scale ends, Mb/s.
    scale_end: f64,
}

impl<'a> Bars<'a> {
    /// The bars of all rooms; `None` while nothing is worked out.
    pub(super) fn of(snapshot: &SurveySnapshot<'a>) -> Option<Self> {
        let (survey, worked, language) = (snapshot.survey, snapshot.worked()?, snapshot.language);
        let mut bars = Self { survey, worked, language, scale_end: 0.0 };
        let all: Vec<_> = worked.forecast().rooms.iter().map(|room| bars.figures(room)).collect();
        bars.scale_end = RoomBar::scale_end(&all);
        Some(bars)
    }

    fn figures(&self, room: &RoomForecast) -> RoomBar {
        let list = &self.worked.list;
        let when_done = (!list.steps.is_empty()).then_some(&list.when_done);
        RoomBar::of(self.survey, self.worked.forecast(), when_done, room)
    }

    /// The bar of one room, of the rate towards it; `None` where none was worked out.
    pub(super) fn of_room(&self, room: &RoomForecast) -> Option<RowBar> {
        let RoomBar { range, wish, measured, capped, after } = self.figures(room);
        let Span { low, likely, high } = range?;
        let (scale_end, words) = (self.scale_end, String::new());
        let bar = RowBar { scale_end, low, likely, high, wish, measured, capped, after, words };
        Some(RowBar { words: self.words(&bar), ..bar })
    }

    fn words(&self, bar: &RowBar) -> String {
        let range =
            Phrase::new("bar-range").with("low", Arg::Rate(bar.low)).with("likely", Arg::Rate(bar.likely));
        let range = range.with("high", Arg::Rate(bar.high));
        let one = |id: &str, rate: f64| Phrase::new(id).with("rate", Arg::Rate(rate));
        let read = |rate: f64| {
            let id = if bar.capped { "bar-measured-capped" } else { "bar-measured" };
            Phrase::new(id).with("rate", Arg::RateAsRead(rate))
        };
        let told = [
            Some(range),
            bar.wish.map(|rate| one("bar-wish", rate)),
            bar.measured.map(read),
            bar.after.map(|rate| one("bar-after", rate)),
        ];
        let told = told.into_iter().flatten().map(|phrase| Arg::Phrase(Box::new(phrase)));
        self.language.say(&Phrase::new("bar-words").with("told", Arg::Several(told.collect())))
    }
}

/// The sign beside a room: whether its wish is met, or that it is not known; none where nobody wished for anything.
pub(super) fn mark(survey: &Survey, room: &RoomForecast) -> Option<RowMark> {
    Some(match Wished::at(survey, room)?.met {
        Met::Yes | Met::Likely => RowMark::Done,
        Met::Unlikely => RowMark::Weak,
        Met::HangsOnByPass | Met::NotKnown => RowMark::NotKnown,
    })
}

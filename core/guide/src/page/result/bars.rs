//! The rate of each room as a bar: the forecast's range, what is wished, what was measured, and what the work list is
//! expected to make of it. All of it is worked out elsewhere.

use advice::forecast::{Forecast, RoomForecast};
use advice::verdict::{Met, RoomVerdict, Wished};
use facts::fact::SubjectId;
use house::record::Survey;
use phrase::{Arg, Phrase};
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

/// The scale ends at the next of these above all that is shown, Mb/s.
const SCALE_STEP: f64 = 500.0;

impl<'a> Bars<'a> {
    /// The bars of all rooms; `None` while nothing is worked out.
    pub(super) fn of(snapshot: &SurveySnapshot<'a>) -> Option<Self> {
        let (survey, worked, language) = (snapshot.survey, snapshot.worked()?, snapshot.language);
        let mut bars = Self { survey, worked, language, scale_end: 0.0 };
        let ends = worked.forecast().rooms.iter().filter_map(|room| bars.of_room(room)).map(|bar| {
            [Some(bar.high), bar.wish, bar.measured, bar.after].into_iter().flatten().fold(0.0, f64::max)
        });
        let most = ends.fold(0.0, f64::max);
        bars.scale_end = (most / SCALE_STEP).ceil().max(1.0) * SCALE_STEP;
        Some(bars)
    }

    /// The bar of one room, of the rate towards it; `None` where none was worked out.
    pub(super) fn of_room(&self, room: &RoomForecast) -> Option<RowBar> {
        let path = self.worked.forecast().path(room.outlet)?;
        let measured = RoomVerdict::at(self.survey, room.outlet, Some(self.worked.forecast())).throughput();
        let bar = RowBar {
            scale_end: self.scale_end,
            low: path.down.low,
            likely: path.down.likely,
            high: path.down.high,
            wish: self.survey.wish_at(room.outlet).map(|wish| wish.down_mbps),
            measured: measured.map(|rates| rates.down_mbps),
            capped: measured.is_some_and(|rates| rates.is_capped),
            after: self.after(room.outlet),
            words: String::new(),
        };
        Some(RowBar { words: self.words(&bar), ..bar })
    }

    /// What a room likely gets after the whole work list; `None` where there is nothing to do.
    fn after(&self, outlet: SubjectId) -> Option<f64> {
        let list = &self.worked.list;
        let when_done: &Forecast = (!list.steps.is_empty()).then_some(&list.when_done)?;
        Some(when_done.path(outlet)?.down.likely)
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
        Met::NotKnown => RowMark::NotKnown,
    })
}

//! How far the guide has come.

use ::house::record::{Named, Reply};
use phrase::Phrase;

use super::journey::journey;
use crate::screen::HowFar;
use crate::session::SurveySnapshot;

/// How many questions of this house are answered.
pub(crate) fn how_far(snapshot: &SurveySnapshot<'_>) -> HowFar {
    let questions = journey(snapshot);
    let done = u32::try_from(questions.iter().filter(|on_way| on_way.answered).count()).unwrap_or(u32::MAX);
    let of = u32::try_from(questions.len()).unwrap_or(u32::MAX);
    let count = |number: u32| phrase::Arg::Count(u64::from(number));
    let told =
        snapshot.survey.asked.values().filter(|answer| answer.as_str() == Some(Reply::Unsure.name())).count();
    let unsure = u32::try_from(told).unwrap_or(u32::MAX).min(done);
    let phrase =
        Phrase::new("how-far").with("done", count(done)).with("of", count(of)).with("unsure", count(unsure));
    HowFar { done, of, words: snapshot.language.say(&phrase) }
}

//! How far the guide has come.

use ::house::record::{Named, Reply};
use phrase::Phrase;

use super::journey::{OnTheWay, journey};
use crate::place::{Question, Round};
use crate::screen::HowFar;
use crate::session::SurveySnapshot;

/// How many questions of the round in which one is are answered. The last round takes up where the one before it ended.
pub(crate) fn how_far(snapshot: &SurveySnapshot<'_>) -> HowFar {
    let questions = journey(snapshot);
    let now = round_now(&questions);
    // What was worked out to change little needs no answer any more: it is settled, and the count does not shrink.
    let is_little = |on_way: &&OnTheWay| {
        let little = snapshot.memory.stakes.is_worth(&on_way.question) == Some(false);
        now == Round::Worth && on_way.round == Round::Rest && !on_way.answered && little
    };
    let counts = |on_way: &&OnTheWay| match now {
        Round::Forecast | Round::Worth => on_way.round == now || is_little(on_way),
        Round::Rest => on_way.round != Round::Forecast,
    };
    // An outlet that was named by its room is not asked for it; and what feeds a part that waits is mostly told with where
    // the outputs lead that are still open.
    let is_tracing = |on_way: &OnTheWay| {
        let question = &on_way.question;
        let traces = matches!(question, Question::WaysIn | Question::LeadsTo(..) | Question::Outputs(_));
        traces && !on_way.answered
    };
    let is_traced_on = questions.iter().any(is_tracing);
    let settled = |on_way: &&OnTheWay| match on_way.question {
        Question::RoomOf(_) => on_way.answered,
        Question::FedBy(_) => !on_way.answered && is_traced_on,
        _ => false,
    };
    let counted: Vec<_> = questions.iter().filter(counts).filter(|on_way| !settled(on_way)).collect();
    // The wishes of all rooms count as one: most people give them at once.
    let (wishes, others): (Vec<_>, Vec<_>) =
        counted.into_iter().partition(|on_way| matches!(on_way.question, Question::Wish(_)));
    let wished = usize::from(wishes.iter().all(|on_way| on_way.answered) && !wishes.is_empty());
    let of_wishes = usize::from(now == Round::Forecast);
    let little = others.iter().filter(|on_way| is_little(on_way)).count();
    let done = others.iter().filter(|on_way| on_way.answered).count() + wished.min(of_wishes);
    let of = others.len() + of_wishes;
    let unsure =
        snapshot.survey.asked.values().filter(|answer| answer.as_str() == Some(Reply::Unsure.name())).count();
    let count = |number: usize| phrase::Arg::Count(number as u64);
    let phrase = Phrase::new("how-far")
        .text("round", now.key())
        .with("number", phrase::Arg::Count(now.number()))
        .with("rounds", count(Round::ALL.len()))
        .with("done", count(done))
        .with("of", count(of))
        .with("little", count(little))
        .with("unsure", count(unsure));
    let whole = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
    HowFar { done: whole(done + little), of: whole(of), words: snapshot.language.say(&phrase) }
}

/// The first round in which something is open; the last one if nothing is.
fn round_now(questions: &[OnTheWay]) -> Round {
    let open = questions.iter().filter(|on_way| !on_way.answered);
    open.map(|on_way| on_way.round).min().unwrap_or(Round::Rest)
}

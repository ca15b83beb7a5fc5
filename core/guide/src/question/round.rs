//! In which round a question is asked, and what comes before what within it.

use std::cmp::Reverse;

use house::record::PartKind;
use phrase::{Arg, Phrase};

use super::journey::{OnTheWay, journey};
use crate::place::{Question, Round, Stage};
use crate::session::SurveySnapshot;
use crate::view::shown;

/// What comes next.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Onward {
    /// A question.
    Ask(Question),
    /// Enough is asked for what a round stands for: nobody said yet that they want to go on.
    Enough(Round),
    /// Nothing is open.
    Done,
}

/// The first question that is neither answered nor put off, by round; or the end of a round before it.
pub(crate) fn onward(snapshot: &SurveySnapshot<'_>) -> Onward {
    let Some(first) = first(snapshot) else { return Onward::Done };
    match before(first.round).filter(|ended| snapshot.memory.asked_on.is_none_or(|on| on < *ended)) {
        Some(ended) => Onward::Enough(ended),
        None => Onward::Ask(first.question),
    }
}

/// The round in which the next question is; `None` where nothing is open.
pub(crate) fn round_of_next(snapshot: &SurveySnapshot<'_>) -> Option<Round> {
    first(snapshot).map(|on_way| on_way.round)
}

/// The first question that is neither answered nor put off.
fn first(snapshot: &SurveySnapshot<'_>) -> Option<OnTheWay> {
    let open = |on_way: &OnTheWay| !on_way.answered && !snapshot.memory.later.contains(&on_way.question);
    journey(snapshot).into_iter().filter(open).min_by_key(|on_way| order(snapshot, on_way))
}

/// The round before one.
fn before(round: Round) -> Option<Round> {
    Round::ALL.into_iter().take_while(|earlier| *earlier < round).last()
}

/// What comes before what: by round; in it what may be at risk first, then what may change most, then the order of the
/// wiring.
fn order(snapshot: &SurveySnapshot<'_>, on_way: &OnTheWay) -> (Round, u8, Reverse<u64>) {
    let place = match (on_way.round, &on_way.question) {
        (Round::Worth, question) if is_of_entry(question) => 0,
        (Round::Worth, question) if is_risk(question) => 1,
        _ => 2,
    };
    let changes = snapshot.memory.stakes.changes(&on_way.question).filter(|_| on_way.round == Round::Worth);
    // As many whole Mb/s as are told apart.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a rate, Mb/s")]
    let mbps = changes.map_or(0, |(_, mbps)| mbps.max(0.0) as u64);
    (on_way.round, place, Reverse(mbps))
}

/// The round of a question.
pub(super) fn round(snapshot: &SurveySnapshot<'_>, question: &Question, answered: bool) -> Round {
    // What was worked out to change little comes last; what was answered stays where it was.
    let by_stake = || match snapshot.memory.stakes.is_worth(question) {
        Some(false) if !answered => Round::Rest,
        _ => Round::Worth,
    };
    let kind = |part| snapshot.survey.parts.get(part).map(|part| part.kind);
    match question {
        Question::Whose
        | Question::Depends
        | Question::Rooms
        | Question::Wish(_)
        | Question::WishOther(_)
        | Question::WaysIn
        | Question::LeadsTo(..)
        | Question::Outputs(_)
        | Question::Legs(_)
        | Question::ByPass(_)
        | Question::Powered(_)
        | Question::FedBy(_)
        | Question::RoomOf(_)
        | Question::Adapters
        | Question::RouterAt => Round::Forecast,
        // A print tells how many outputs there are, and what a part is of which nobody knows.
        Question::Label(part) => match kind(part) {
            Some(PartKind::Splitter | PartKind::Tap | PartKind::Amplifier | PartKind::Unknown) => {
                Round::Forecast
            }
            _ => by_stake(),
        },
        Question::LabelRead(_) | Question::Cable(_) => by_stake(),
        Question::Uses
        | Question::ModemAge
        | Question::Joined(_)
        | Question::GroundBlock(_)
        | Question::EntryFilter(_)
        | Question::Plugged(_)
        | Question::DropsOut
        | Question::RouterSpeaks
        | Question::Ports
        | Question::Connectors
        | Question::ConnectorsOf(_)
        | Question::Marks(_) => Round::Worth,
        Question::Plan | Question::MoreOutlets => Round::Rest,
    }
}

/// Why a question is asked here and now, as far as that is more than what it says itself. What it may change is told as on
/// the screen of what is not known.
pub(crate) fn reason(snapshot: &SurveySnapshot<'_>, question: &Question) -> Option<Phrase> {
    let stakes = &snapshot.memory.stakes;
    match (stakes.is_worth(question), stakes.changes(question)) {
        (Some(true), Some((outlet, mbps))) => {
            let room = shown::outlet(snapshot.survey, outlet);
            return Some(Phrase::new("worth-stake").phrase("room", room).with("rate", Arg::Rate(mbps)));
        }
        (Some(false), _) if !is_of_entry(question) && !is_risk(question) => {
            return Some(Phrase::new("worth-little"));
        }
        _ => {}
    }
    let is_asked_for_risk = is_of_entry(question) || is_risk(question);
    match round(snapshot, question, false) {
        Round::Worth if is_asked_for_risk => Some(Phrase::new("reason-risk")),
        // It says so itself.
        Round::Worth if *question == Question::Ports => None,
        Round::Worth => Some(Phrase::new("reason-not-weighed")),
        Round::Forecast | Round::Rest => None,
    }
}

/// Whether something is at risk while nobody knows: what leaves the house, what comes in.
fn is_of_entry(question: &Question) -> bool {
    question.stage() == Stage::WayIn
}

/// Whether something may be harmed or disturbed while nobody knows.
fn is_risk(question: &Question) -> bool {
    matches!(
        question,
        Question::Uses
            | Question::ModemAge
            | Question::Plugged(_)
            | Question::DropsOut
            | Question::RouterSpeaks
            | Question::Connectors
            | Question::ConnectorsOf(_)
    )
}

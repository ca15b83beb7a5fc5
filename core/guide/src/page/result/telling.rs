//! What gets through to one room, in a sentence.

use advice::forecast::{CostAt, Limit, PathForecast, Reach, told};
use facts::fact::SubjectId;
use house::naming;
use house::record::{CableKind, PartKind, Survey};
use phrase::Phrase;

use crate::place::Question;

/// The rate towards a room and what limits it, or why there is none.
pub(super) fn reach(survey: &Survey, outlet: SubjectId, reach: &Reach) -> Phrase {
    match reach {
        // Shown as 0 Mb/s.
        Reach::Estimated(path) if path.down.likely < 0.5 => {
            Phrase::new("gets-nothing").phrase("limit", limit(survey, outlet, path))
        }
        Reach::Estimated(path) => Phrase::new("gets-through")
            .phrase("rate", told::rate(path.down))
            .phrase("limit", limit(survey, outlet, path)),
        Reach::NoBridge | Reach::Loose(_) | Reach::OtherTree | Reach::FedByNothing(_) | Reach::NoChannel => {
            told::no_path(survey, reach)
        }
    }
}

/// What limits a path; where that is the wiring, the place that costs most.
pub(super) fn limit(survey: &Survey, outlet: SubjectId, path: &PathForecast) -> Phrase {
    match path.limit {
        Limit::EthernetPort => Phrase::new("limited-by-port"),
        Limit::Version => Phrase::new("limited-by-version"),
        Limit::Band => Phrase::new("limited-by-band"),
        Limit::Path => path
            .dearest()
            .map_or_else(|| Phrase::new("limited-by-way"), |cost| limited_by(survey, outlet, cost.at)),
    }
}

/// Whether a place on a way is a splitter, which costs more between two outputs than its print says.
pub(super) fn is_splitter(survey: &Survey, at: CostAt) -> bool {
    let CostAt::Part(id) = at else { return false };
    survey.parts.get(&id).is_some_and(|part| part.kind == PartKind::Splitter)
}

fn limited_by(survey: &Survey, outlet: SubjectId, at: CostAt) -> Phrase {
    let CostAt::RunTo(to) = at else {
        return Phrase::new("limited-by-place").phrase("place", told::place(survey, at));
    };
    let run = survey.wiring.feed(to).and_then(|feed| survey.runs.get(&feed.run?));
    let thin = run.is_some_and(|run| run.cable == CableKind::FiftyNine);
    let id = match (thin, to == outlet) {
        (true, true) => "limited-by-own-thin-run",
        (false, true) => "limited-by-own-run",
        (true, false) => "limited-by-thin-run",
        (false, false) => "limited-by-place",
    };
    Phrase::new(id).phrase("place", naming::run_to(survey, to))
}

/// The question that mends a room without an answer.
pub(super) fn mending(survey: &Survey, outlet: SubjectId, reach: &Reach) -> Option<Question> {
    match reach {
        Reach::Estimated(_) => None,
        Reach::NoBridge => Some(Question::RouterAt),
        Reach::Loose(part) | Reach::FedByNothing(part) => Some(Question::FedBy(*part)),
        Reach::OtherTree => {
            let head = survey.wiring.head_of(outlet);
            let entry = survey.parts.get(&head).is_some_and(|part| part.kind == PartKind::Entry);
            Some(if entry { Question::RouterAt } else { Question::FedBy(head) })
        }
        Reach::NoChannel => Some(Question::Uses),
    }
}

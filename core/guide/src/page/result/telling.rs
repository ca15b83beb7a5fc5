//! What gets through to one room, in a sentence.

use advice::forecast::{Cost, CostAt, Limit, PathForecast, Reach, RoomForecast};
use advice::wish::{Met, tested};
use coax::Span;
use facts::fact::SubjectId;
use house::naming;
use house::record::{CableKind, PartKind, Survey, Wish};
use phrase::{Arg, Phrase};

use crate::place::Question;

/// Likely, and nine times in ten at least.
pub(super) fn rate(span: Span) -> Phrase {
    Phrase::new("rate-likely").with("likely", Arg::Rate(span.likely)).with("low", Arg::Rate(span.low))
}

/// The rate towards a room and what limits it, or why there is none.
pub(super) fn reach(survey: &Survey, outlet: SubjectId, reach: &Reach) -> Phrase {
    match reach {
        // Shown as 0 Mb/s.
        Reach::Estimated(path) if path.down.likely < 0.5 => {
            Phrase::new("gets-nothing").phrase("limit", limit(survey, outlet, path))
        }
        Reach::Estimated(path) => Phrase::new("gets-through")
            .phrase("rate", rate(path.down))
            .phrase("limit", limit(survey, outlet, path)),
        Reach::NoBridge => Phrase::new("reach-no-bridge"),
        Reach::Loose(part) => Phrase::new("reach-loose").phrase("part", naming::part(survey, *part)),
        Reach::OtherTree => Phrase::new("reach-other-tree"),
        Reach::NoChannel => Phrase::new("reach-no-channel"),
    }
}

/// What limits a path; where that is the wiring, the place that costs most.
pub(super) fn limit(survey: &Survey, outlet: SubjectId, path: &PathForecast) -> Phrase {
    match path.limit {
        Limit::EthernetPort => Phrase::new("limited-by-port"),
        Limit::Version => Phrase::new("limited-by-version"),
        Limit::Band => Phrase::new("limited-by-band"),
        Limit::Path => dearest(path)
            .map_or_else(|| Phrase::new("limited-by-way"), |cost| limited_by(survey, outlet, cost.at)),
    }
}

/// The place on the way that costs most.
pub(super) fn dearest(path: &PathForecast) -> Option<&Cost> {
    path.costs.iter().max_by(|a, b| a.db.total_cmp(&b.db))
}

/// A place on a way, by its name.
pub(super) fn cost_place(survey: &Survey, at: CostAt) -> Phrase {
    match at {
        CostAt::Part(id) => naming::part(survey, id),
        CostAt::RunTo(id) => naming::run_to(survey, id),
    }
}

/// Whether a place on a way is a splitter, which costs more between two outputs than its print says.
pub(super) fn is_splitter(survey: &Survey, at: CostAt) -> bool {
    let CostAt::Part(id) = at else { return false };
    survey.parts.get(&id).is_some_and(|part| part.kind == PartKind::Splitter)
}

fn limited_by(survey: &Survey, outlet: SubjectId, at: CostAt) -> Phrase {
    let CostAt::RunTo(to) = at else {
        return Phrase::new("limited-by-place").phrase("place", cost_place(survey, at));
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

/// Whether a wish is met, in a sentence.
pub(super) fn wish(survey: &Survey, wish: Wish, room: &RoomForecast) -> Phrase {
    if let (Some(met), Some((down, up, _))) =
        (Met::measured(survey, wish, room.outlet), tested(survey, room.outlet))
    {
        let id = if met == Met::Yes { "wish-met-measured" } else { "wish-not-met-measured" };
        return Phrase::new(id)
            .with("down", Arg::Rate(wish.down_mbps))
            .with("up", Arg::Rate(wish.up_mbps))
            .with("measured_down", Arg::RateAsRead(down))
            .with("measured_up", Arg::RateAsRead(up));
    }
    let id = match Met::of_reach(wish, &room.reach) {
        Met::Yes => "wish-met",
        Met::Likely => "wish-likely-met",
        Met::Unlikely => "wish-not-met",
        Met::NotKnown => "wish-not-known",
    };
    let down = Phrase::new(id).with("down", Arg::Rate(wish.down_mbps));
    down.with("up", Arg::Rate(wish.up_mbps))
}

/// The question that mends a room without an answer.
pub(super) fn mending(survey: &Survey, outlet: SubjectId, reach: &Reach) -> Option<Question> {
    match reach {
        Reach::Estimated(_) => None,
        Reach::NoBridge => Some(Question::RouterAt),
        Reach::Loose(part) => Some(Question::FedBy(*part)),
        Reach::OtherTree => {
            let head = survey.wiring.head_of(outlet);
            let entry = survey.parts.get(&head).is_some_and(|part| part.kind == PartKind::Entry);
            Some(if entry { Question::RouterAt } else { Question::FedBy(head) })
        }
        Reach::NoChannel => Some(Question::Uses),
    }
}

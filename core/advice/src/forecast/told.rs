//! A forecast in phrases, for every place that tells one.

use coax::Span;
use facts::fact::SubjectId;
use house::naming;
use house::record::Survey;
use phrase::{Arg, Phrase};

use super::outcome::{CostAt, Limit, Reach};

/// A rate that was worked out: likely, and nine times in ten at least.
pub fn rate(mbps: Span) -> Phrase {
    Phrase::new("rate-likely").with("likely", Arg::Rate(mbps.likely)).with("low", Arg::Rate(mbps.low))
}

/// What limits a rate.
pub fn limit(limit: Limit) -> Phrase {
    Phrase::new(match limit {
        Limit::Path => "limit-path",
        Limit::Version => "limit-version",
        Limit::EthernetPort => "limit-ethernet",
        Limit::Band => "limit-band",
    })
}

/// Why nothing was worked out for an outlet.
pub fn no_path(survey: &Survey, reach: &Reach) -> Phrase {
    match reach {
        Reach::Estimated(_) | Reach::NoBridge => Phrase::new("reach-no-bridge"),
        Reach::Loose(loose) => Phrase::new("reach-loose").phrase("part", naming::part(survey, *loose)),
        Reach::OtherTree => Phrase::new("reach-other-tree"),
        Reach::FedByNothing(outlet) => {
            Phrase::new("reach-fed-by-nothing").phrase("outlet", naming::part(survey, *outlet))
        }
        Reach::NoChannel => Phrase::new("reach-no-channel"),
    }
}

/// A place on a way where loss arises, by its name.
pub fn place(survey: &Survey, at: CostAt) -> Phrase {
    match at {
        CostAt::Part(id) => naming::part(survey, id),
        CostAt::RunTo(id) => naming::run_to(survey, id),
    }
}

/// Some parts by their names, as a list.
pub fn parts(survey: &Survey, ids: &[SubjectId]) -> Arg {
    Arg::Several(ids.iter().map(|id| Arg::Phrase(Box::new(naming::part(survey, *id)))).collect())
}

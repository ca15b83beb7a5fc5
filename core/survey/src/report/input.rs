//! What the report tells, handed in by whoever worked it out.

use crate::fact::SubjectId;
use crate::forecast::Forecast;
use crate::record::Survey;
use crate::words::Phrase;

/// Everything that a report tells.
#[derive(Debug, Clone)]
pub struct ReportInput<'a> {
    /// The house.
    pub survey: &'a Survey,
    /// What gets through.
    pub forecast: &'a Forecast,
    /// What is wrong or at risk, what weighs most first.
    pub findings: Vec<FindingTold>,
    /// What to do, in order.
    pub steps: Vec<StepTold>,
    /// Changes that were left out, each with the reason.
    pub refused: Vec<Phrase>,
}

/// A finding in words.
#[derive(Debug, Clone, PartialEq)]
pub struct FindingTold {
    /// How much it weighs.
    pub weight: Phrase,
    /// What is wrong.
    pub what: Phrase,
    /// Where.
    pub places: Vec<Phrase>,
    /// Why it matters.
    pub why: Phrase,
    /// What to do.
    pub todo: Phrase,
    /// Where this is known from.
    pub source: Phrase,
    /// What to mind, where the work can hurt someone or cut something off.
    pub cautions: Vec<Phrase>,
}

/// A step of the work list in words.
#[derive(Debug, Clone, PartialEq)]
pub struct StepTold {
    /// What to do.
    pub what: Phrase,
    /// Why.
    pub why: Phrase,
    /// Parts to get.
    pub parts: Vec<Phrase>,
    /// What to mind.
    pub cautions: Vec<Phrase>,
    /// About how long it takes.
    pub minutes: u64,
    /// What each room gains.
    pub gains: Vec<Gain>,
}

/// What a step does for one outlet: the likely rate towards it, Mb/s.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gain {
    /// The outlet.
    pub outlet: SubjectId,
    /// Before the step, the steps above it done.
    pub before_mbps: f64,
    /// After it.
    pub after_mbps: f64,
}

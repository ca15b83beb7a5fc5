//! The report of a house whose work list is known: findings and steps put into words and handed to the page.

use super::{FindingTold, Gain, ReportInput, StepTold, report};
use crate::finding::{Finding, findings};
use crate::record::Survey;
use crate::words::{Arg, Language, Phrase};
use crate::worklist::{PartNeeded, Step, WorkList};

/// The report as one HTML file: the same survey and work list give the same bytes.
pub fn html(survey: &Survey, list: &WorkList, language: &Language) -> String {
    let found = findings(survey, Some(&list.as_found));
    let input = ReportInput {
        survey,
        forecast: &list.as_found,
        findings: found.iter().map(|finding| finding_told(survey, finding)).collect(),
        steps: list.steps.iter().map(step_told).collect(),
        refused: list
            .refused
            .iter()
            .map(|(change, refusal)| {
                Phrase::new("report-refused-change")
                    .phrase("change", change.phrase(survey))
                    .phrase("why", refusal.why(survey))
            })
            .collect(),
    };
    report(&input, language)
}

fn finding_told(survey: &Survey, finding: &Finding) -> FindingTold {
    FindingTold {
        weight: finding.weight().phrase(),
        what: finding.what(),
        places: finding.at.iter().filter_map(|place| place.phrase(survey)).collect(),
        why: finding.why(),
        todo: finding.todo(),
        source: finding.source(),
        cautions: finding.cautions().iter().map(|caution| caution.phrase()).collect(),
    }
}

fn step_told(step: &Step) -> StepTold {
    let what = step.change.phrase(&step.before);
    StepTold {
        why: what.attribute("why"),
        parts: step.effort.parts.iter().map(part_told).collect(),
        cautions: Vec::new(),
        minutes: step.effort.minutes,
        gains: step
            .gains
            .iter()
            .map(|gain| Gain {
                outlet: gain.outlet,
                before_mbps: gain.before_mbps,
                after_mbps: gain.after_mbps,
            })
            .collect(),
        what,
    }
}

/// A part with how many of it: `2 x 75-ohm cap`.
pub fn part_told(part: &PartNeeded) -> Phrase {
    Phrase::new("need-counted").with("count", Arg::Count(part.count)).phrase("what", part.what.clone())
}

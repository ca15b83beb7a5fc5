//! Cable runs: thin and long, very long, and their connectors.

use facts::fact::SubjectId;
use house::naming;
use house::record::{CableKind, Connector, LengthKnown, Run, RunLength};
use phrase::{Arg, Phrase};

use super::inspection::{Inspection, Standing};
use super::{Finding, FindingKind, Place};

/// From here on the series matters: 50 ft (common practice, no source).
const LONG_METRES: f64 = 15.0;

/// From here on even 6-series cable costs about 13 dB at the top of the band: 150 ft at 8.62 dB a 100 ft (the fit of
/// 6 series at 1675 MHz).
const VERY_LONG_METRES: f64 = 45.0;

/// The run that feeds each part, with the part.
fn fed<'a>(inspection: &'a Inspection<'_>) -> impl Iterator<Item = (SubjectId, &'a Run)> {
    let survey = inspection.survey;
    survey.parts.keys().filter_map(move |id| {
        let run = survey.wiring.feed(*id)?.run?;
        Some((*id, survey.runs.get(&run)?))
    })
}

/// Runs between adapters that are long and of 59 or unknown series, or very long whatever they are.
pub(super) fn long_or_thin(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (to, run) in fed(inspection) {
        let Some(length) = run.length else { continue };
        if !matches!(inspection.standing(to), Standing::Between | Standing::OnlyOne) {
            continue;
        }
        let kind = match run.cable {
            CableKind::FiftyNine if length.metres >= LONG_METRES => FindingKind::RunThinAndLong,
            CableKind::Six | CableKind::Unknown if length.metres >= VERY_LONG_METRES => {
                FindingKind::RunVeryLong
            }
            CableKind::Unknown if length.metres >= LONG_METRES => FindingKind::RunUnknownAndLong,
            _ => continue,
        };
        found.push(
            Finding::new(kind, vec![Place::RunTo(to)])
                .phrase("run", naming::run_to(inspection.survey, to))
                .with("length", said(length)),
        );
    }
    found
}

/// A length as well as it is known.
fn said(length: RunLength) -> Arg {
    match length.known {
        LengthKnown::Measured => Arg::Length(length.metres),
        LengthKnown::Paced | LengthKnown::Guessed => Arg::LengthRange(length.span()),
    }
}

/// Poor connectors and bad joints, on any run: they let noise in for every service.
pub(super) fn connectors(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (to, run) in fed(inspection) {
        let run_name = naming::run_to(inspection.survey, to);
        let at_ends = [(run.connector_near, "run-end-near"), (run.connector_far, "run-end-far")];
        let street_side = inspection.survey.is_street_side(to);
        for (connector, end) in at_ends {
            let finding = |kind| {
                let kind = if street_side { FindingKind::ConnectorStreetSide } else { kind };
                Finding::new(kind, vec![Place::RunTo(to)])
                    .phrase("run", run_name.clone())
                    .phrase("end", Phrase::new(end))
            };
            match connector {
                Connector::BadJoint if street_side => found.push(poor(finding, "connector-bad-joint")),
                Connector::BadJoint => found.push(finding(FindingKind::JointBad)),
                Connector::TwistOn => found.push(poor(finding, "connector-twist-on")),
                Connector::PushOn => found.push(poor(finding, "connector-push-on")),
                Connector::Corroded => found.push(poor(finding, "connector-corroded")),
                Connector::HandTight => found.push(poor(finding, "connector-hand-tight")),
                Connector::Compression | Connector::Crimp | Connector::Unknown => {}
            }
        }
    }
    found
}

fn poor(finding: impl Fn(FindingKind) -> Finding, state: &str) -> Finding {
    finding(FindingKind::ConnectorPoor).phrase("state", Phrase::new(state))
}

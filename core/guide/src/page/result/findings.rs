//! What is wrong or at risk, what weighs most first.

use advice::finding::{Finding, Place, Weight};
use facts::fact::SubjectId;
use phrase::{Arg, Phrase};

use super::waiting;
use crate::place::Key;
use crate::screen::{PressWeight, RowEntry, Screen, Severity, WordsRole};
use crate::session::{SurveySnapshot, Worked};
use crate::view::{ScreenBuilder, shown};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("findings"));
    let Some(worked) = waiting::worked(snapshot, &mut builder) else { return builder.screen };
    let found = &worked.findings;
    if found.is_empty() {
        builder.words(WordsRole::Lead, &Phrase::new("report-findings-none"));
    } else {
        let count = Arg::Count(found.len() as u64);
        builder.words(WordsRole::Lead, &Phrase::new("findings-lead").with("count", count));
    }
    let first = shown::page(snapshot, found.len()) * shown::ROWS;
    let page: Vec<_> = found.iter().skip(first).take(shown::ROWS).collect();
    for weight in [Weight::Grave, Weight::Costly, Weight::Minor, Weight::Note] {
        let of_weight = page.iter().filter(|finding| finding.weight() == weight);
        let rows = of_weight.map(|finding| row(&builder, worked, finding)).collect();
        builder.rows(&weight.phrase(), rows);
    }
    shown::turn(snapshot, &mut builder, found.len());
    builder.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Main);
    builder.press(&Key::Forecast, &Phrase::new("to-forecast"), PressWeight::Other);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// One finding as a row that leads to it.
pub(super) fn row(builder: &ScreenBuilder<'_>, worked: &Worked, finding: &Finding) -> RowEntry {
    let key = Key::Finding(name(worked, finding));
    builder.row(Some(key), &finding.what(), None, None).weighs(severity(finding.weight()))
}

/// How much a finding weighs, as a state.
pub(super) const fn severity(weight: Weight) -> Severity {
    match weight {
        Weight::Grave => Severity::Grave,
        Weight::Costly => Severity::Costly,
        Weight::Minor => Severity::Minor,
        Weight::Note => Severity::Note,
    }
}

/// Whether a finding is at a part, or concerns it.
pub(super) fn concerns(finding: &Finding, part: SubjectId) -> bool {
    finding.at.iter().any(|place| place.part() == Some(part))
}

/// A name for a finding that is the same after the results are worked out anew: its kind, its places, and a number
/// where that is not enough.
pub(super) fn name(worked: &Worked, finding: &Finding) -> String {
    let plain = plain_name(finding);
    let before = worked.findings.iter().take_while(|other| *other != finding);
    match before.filter(|other| plain_name(other) == plain).count() {
        0 => plain,
        more => format!("{plain} {more}"),
    }
}

fn plain_name(finding: &Finding) -> String {
    let place = |place: &Place| match place {
        Place::Part(id) => format!("part/{id}"),
        Place::Port { part, port } => format!("port/{part}/{port}"),
        Place::RunTo(id) => format!("run/{id}"),
        Place::Room(id) => format!("room/{id}"),
        Place::Service(id) => format!("service/{id}"),
        Place::House => "house".to_owned(),
    };
    let places: Vec<_> = finding.at.iter().map(place).collect();
    format!("{} {}", finding.kind.id(), places.join(" "))
}

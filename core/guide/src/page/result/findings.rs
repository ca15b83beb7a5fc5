//! What is wrong or at risk, what weighs most first.

use advice::finding::{Finding, Place, Weight};
use facts::fact::SubjectId;
use phrase::{Arg, Phrase};

use super::waiting;
use crate::place::Key;
use crate::screen::{PressWeight, RowEntry, Screen, Severity, WordsRole};
use crate::session::{Scene, Worked};
use crate::view::{Sketch, shown};

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("findings"));
    let Some(worked) = waiting::worked(scene, &mut sketch) else { return sketch.screen };
    let found = &worked.findings;
    if found.is_empty() {
        sketch.words(WordsRole::Lead, &Phrase::new("report-findings-none"));
    } else {
        let count = Arg::Count(found.len() as u64);
        sketch.words(WordsRole::Lead, &Phrase::new("findings-lead").with("count", count));
    }
    let first = shown::page(scene, found.len()) * shown::ROWS;
    let page: Vec<_> = found.iter().skip(first).take(shown::ROWS).collect();
    for weight in [Weight::Grave, Weight::Costly, Weight::Minor, Weight::Note] {
        let of_weight = page.iter().filter(|finding| finding.weight() == weight);
        let rows = of_weight.map(|finding| row(&sketch, worked, finding)).collect();
        sketch.rows(&weight.phrase(), rows);
    }
    shown::turn(scene, &mut sketch, found.len());
    sketch.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Main);
    sketch.press(&Key::Forecast, &Phrase::new("to-forecast"), PressWeight::Other);
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// One finding as a row that leads to it.
pub(super) fn row(sketch: &Sketch<'_>, worked: &Worked, finding: &Finding) -> RowEntry {
    let key = Key::Finding(name(worked, finding));
    sketch.row(Some(key), &finding.what(), None, None).weighs(severity(finding.weight()))
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

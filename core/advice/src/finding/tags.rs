//! Tags: one mark, one thing.

use std::collections::BTreeMap;

use phrase::Arg;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};

/// Tags that stand on two things, as after joining two copies of a survey. Capitals do not count.
pub(super) fn used_twice(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let mut by_tag: BTreeMap<String, Vec<Place>> = BTreeMap::new();
    let mut note = |tag: Option<&String>, place| {
        if let Some(tag) = tag.map(|tag| tag.trim().to_uppercase()).filter(|tag| !tag.is_empty()) {
            by_tag.entry(tag).or_default().push(place);
        }
    };
    for part in survey.parts.values() {
        note(part.tag.as_ref(), Place::Part(part.id));
    }
    for id in survey.parts.keys() {
        let run = survey.wiring.feed(*id).and_then(|feed| survey.runs.get(&feed.run?));
        note(run.and_then(|run| run.tag.as_ref()), Place::RunTo(*id));
    }
    by_tag
        .into_iter()
        .filter(|(_, places)| places.len() > 1)
        .map(|(tag, places)| {
            let names = places.iter().filter_map(|place| place.phrase(survey));
            let names = names.map(|name| Arg::Phrase(Box::new(name))).collect();
            Finding::new(FindingKind::TagTwice, places)
                .with("tag", Arg::Text(tag))
                .with("things", Arg::Several(names))
        })
        .collect()
}

//! Keys of screens that name a thing.

use facts::fact::SubjectId;

use super::result::ResultPlace;

/// The key that stops the reading or writing of a file.
pub(crate) const ERRAND_STOP: &str = "errand-stop";

/// The key of a place for one thing: `part:<id>`.
pub(crate) fn key_of(prefix: &str, subject: SubjectId) -> String {
    format!("{prefix}:{subject}")
}

/// The thing that such a key names.
pub(crate) fn subject_of(key: &str, prefix: &str) -> Option<SubjectId> {
    key.strip_prefix(prefix)?.strip_prefix(':')?.parse().ok()
}

/// The screen of a key that leads to one of the stages.
pub(crate) fn result_of(key: &str) -> Option<ResultPlace> {
    Some(match key {
        "forecast" => ResultPlace::Forecast,
        "map" => ResultPlace::Map,
        "unknowns" => ResultPlace::Unknowns,
        "findings" => ResultPlace::Findings,
        "work" => ResultPlace::Work,
        "placing" => ResultPlace::Placing,
        "private" => ResultPlace::Private,
        "tests" => ResultPlace::Tests,
        "still-fine" => ResultPlace::StillFine,
        "compare" => ResultPlace::Compare,
        "handover" => ResultPlace::Handover,
        _ => return None,
    })
}

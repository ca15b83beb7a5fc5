//! Keys that several screens of this folder share.

use crate::ask::Question;
use crate::deed::Deed;
use crate::error::Result;
use crate::guide::Guide;
use crate::place::{Move, Place, subject_of};

use super::ResultPlace;
use super::shown::turned;

/// The key that leads to a question.
pub(super) fn ask(question: &Question) -> String {
    format!("ask:{}", serde_json::to_string(question).unwrap_or_default())
}

/// The screen of a key that leads to one of the stages.
pub(super) fn stage(key: &str) -> Option<ResultPlace> {
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

fn place(key: &str) -> Option<Place> {
    if let Some(question) = key.strip_prefix("ask:") {
        return serde_json::from_str(question).ok().map(Place::Ask);
    }
    if let Some(name) = key.strip_prefix("finding:") {
        return Some(Place::Result(ResultPlace::Finding(name.to_owned())));
    }
    if key == "overview" {
        return Some(Place::Overview);
    }
    let of = |prefix, place: fn(_) -> ResultPlace| subject_of(key, prefix).map(place);
    stage(key)
        .or_else(|| of("room", ResultPlace::Room))
        .or_else(|| of("part", ResultPlace::Part))
        .or_else(|| of("test", ResultPlace::Test))
        .or_else(|| of("reading", ResultPlace::Reading))
        .or_else(|| of("ended", ResultPlace::Ended))
        .map(Place::Result)
}

/// Does what such a key asks for; `None` if the screen itself has to.
pub(super) fn take(guide: &mut Guide, deed: &Deed) -> Result<Option<Move>> {
    let Deed::Press { key } = deed else { return Ok(None) };
    if let Some(place) = place(key) {
        return Ok(Some(Move::Go(place)));
    }
    match key.as_str() {
        "stop" => guide.open_survey()?.results.stop(),
        "work-out" => guide.begin_long_work(),
        "more" | "first" => turned(guide, key)?,
        _ => return Ok(None),
    }
    Ok(Some(Move::Stay))
}

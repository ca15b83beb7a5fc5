//! Keys that several screens of this folder share.

use crate::deed::Deed;
use crate::error::Result;
use crate::place::{Move, Place, Question, ResultPlace, result_of, subject_of};
use crate::session::Session;
use crate::view::shown::turned;

/// The key that leads to a question.
pub(super) fn ask(question: &Question) -> String {
    format!("ask:{}", serde_json::to_string(question).unwrap_or_default())
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
    result_of(key)
        .or_else(|| of("room", ResultPlace::Room))
        .or_else(|| of("part", ResultPlace::Part))
        .or_else(|| of("test", ResultPlace::Test))
        .or_else(|| of("reading", ResultPlace::Reading))
        .or_else(|| of("ended", ResultPlace::Ended))
        .map(Place::Result)
}

/// Does what such a key asks for; `own` does what only the screen itself has.
pub(crate) fn take(
    session: &mut Session,
    deed: &Deed,
    own: impl FnOnce(&mut Session) -> Result<Move>,
) -> Result<Move> {
    let Deed::Press { key } = deed else { return own(session) };
    if let Some(place) = place(key) {
        return Ok(Move::Go(place));
    }
    match key.as_str() {
        "stop" => session.open_survey()?.results.stop(),
        "work-out" => session.begin_long_work(),
        "more" | "first" => turned(session, key)?,
        _ => return own(session),
    }
    Ok(Move::Stay)
}

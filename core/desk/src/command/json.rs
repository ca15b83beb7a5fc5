//! Pieces that the JSON of several commands share. Figures are rounded to what they deserve, so that the same survey
//! gives the same text on every machine.

use coax::Span;
use facts::fact::SubjectId;
use house::record::{Survey, Wish};
use serde::Serialize;

/// A range. A figure beyond all bounds (the airtime of a wish that cannot be met) is null: JSON has no infinity.
#[derive(Serialize)]
pub struct SpanJson {
    low: Option<f64>,
    likely: Option<f64>,
    high: Option<f64>,
}

/// A range rounded to so many decimals.
pub fn span(span: Span, decimals: i32) -> SpanJson {
    let figure = |value: f64| value.is_finite().then(|| rounded(value, decimals));
    SpanJson { low: figure(span.low), likely: figure(span.likely), high: figure(span.high) }
}

/// A figure rounded to so many decimals.
pub fn rounded(value: f64, decimals: i32) -> f64 {
    let scale = 10_f64.powi(decimals);
    // Adding zero turns a negative zero into a plain one.
    (value * scale).round() / scale + 0.0
}

/// A part.
#[derive(Serialize)]
pub struct PartJson {
    id: SubjectId,
    tag: Option<String>,
    room: Option<String>,
}

/// A part by its id.
pub fn part(survey: &Survey, id: SubjectId) -> PartJson {
    let part = survey.parts.get(&id);
    PartJson {
        id,
        tag: part.and_then(|part| part.tag.clone()),
        room: part.and_then(|part| survey.room_of(part)).map(|room| room.name.clone()),
    }
}

/// A wish.
#[derive(Serialize)]
pub struct WishJson {
    down_mbps: f64,
    up_mbps: f64,
}

/// A wish as it stands in the record.
pub fn wish(wish: Wish) -> WishJson {
    WishJson { down_mbps: wish.down_mbps, up_mbps: wish.up_mbps }
}

//! Pieces that the JSON of several commands share. Figures are rounded to what they deserve, so that the same survey
//! gives the same text on every machine.

use coax::Span;
use serde::Serialize;
use survey::fact::SubjectId;
use survey::record::{Survey, Wish};

/// A range.
#[derive(Serialize)]
pub struct SpanJson {
    low: f64,
    likely: f64,
    high: f64,
}

/// A range rounded to so many decimals.
pub fn span(span: Span, decimals: i32) -> SpanJson {
    SpanJson {
        low: rounded(span.low, decimals),
        likely: rounded(span.likely, decimals),
        high: rounded(span.high, decimals),
    }
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

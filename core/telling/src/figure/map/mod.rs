//! The wiring map: every part of a house's coax as a box with plain words, cables as lines between them.
//!
//! Trees run from the street (left) to the rooms (right), each outlet and each free leg on a row of its own. What is
//! not traced yet stands below in an area of its own. The way to the weakest room is a thick dashed line, and every
//! loss on it is written beside it.

mod draw;
mod layout;
mod words;

use advice::forecast::{Forecast, WeakWay};
use house::record::{Survey, rows};
use phrase::{Arg, Phrase};

use super::mark::Figure;
use crate::words::Language;

/// The map of a survey's wiring. With a forecast, the way to the weakest room is marked.
pub fn wiring_map(survey: &Survey, forecast: Option<&Forecast>, language: &Language) -> Figure {
    let weak = forecast.and_then(|forecast| WeakWay::of(survey, forecast));
    let rows = rows(survey);
    let words = words::Speaker { survey, weak: weak.as_ref(), language };
    let description = Phrase::new("map-description")
        .with("parts", Arg::Count(survey.parts.len() as u64))
        .with("loose", Arg::Count(survey.wiring.loose().len() as u64))
        .with("ends", Arg::Count(rows.loose_ends.len() as u64));
    draw::drawn(&rows, &words, Phrase::new("map-name"), description)
}

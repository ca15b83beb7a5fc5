//! What several screens show alike: a screen in the making, names, pages of long lists, drawings. Nothing here knows a
//! question's answer or a page.

mod brings;
mod fact_words;
pub(crate) mod paging;
mod photo_slot;
pub(crate) mod picture;
pub(crate) mod shown;
mod sketch;
pub(crate) mod stages;
pub(crate) mod survey_list;
mod trail;

pub(crate) use brings::tell as tell_look;
pub(crate) use fact_words::FactWords;
pub(crate) use fact_words::day;
pub(crate) use photo_slot::photo_slot;
pub(crate) use sketch::{Offer, Sketch};
pub(crate) use trail::trail;

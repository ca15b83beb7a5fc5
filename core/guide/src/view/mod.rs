//! What several screens show alike: a screen in the making, names, pages of long lists, drawings. Nothing here knows a
//! question's answer or a page.

mod brings;
mod builder;
pub(crate) mod paging;
mod photo_slot;
pub(crate) mod picture;
pub(crate) mod shown;
pub(crate) mod stages;
pub(crate) mod survey_list;
mod teller;
mod trail;

pub(crate) use brings::tell as tell_look;
pub(crate) use builder::{Offer, ScreenBuilder};
pub(crate) use photo_slot::{photo_name, photo_slot};
pub(crate) use teller::{StoryTeller, day, wished_by};
pub(crate) use trail::trail;

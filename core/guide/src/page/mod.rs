//! Screens and what their deeds do, one file each. A page knows the session and what stands below it; of another page
//! it knows the place only.
//!
//! To add a screen: a variant of [`Place`](crate::place::Place), a file here with `show` and `take`, its line in the
//! table `guide/screens.rs`, and its words in `words/en`.

pub(crate) mod ask;
mod doors;
pub(crate) mod enough;
pub(crate) mod field;
pub(crate) mod mend;
pub(crate) mod more;
pub(crate) mod new_survey;
pub(crate) mod one_survey;
pub(crate) mod order;
pub(crate) mod other_name;
pub(crate) mod overview;
pub(crate) mod photo_part;
pub(crate) mod put_off;
pub(crate) mod result;
pub(crate) mod sent;
pub(crate) mod sent_work;
pub(crate) mod set_aside;
pub(crate) mod share;
pub(crate) mod stage;
pub(crate) mod surveys;
pub(crate) mod this_device;

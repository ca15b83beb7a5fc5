//! Who said what, in words: the story of every field, act, removed thing and disagreement.
//!
//! This folder gives phrases; it does not know screens. What there is to tell is found in [`facts::act`].

mod speak;
mod teller;
mod value;

pub use facts::act::{
    Act, ChangedAfterRemoval, RemovedThing, Said, Steps, UndoFault, acts, author_name, can_undo,
    changed_after_removal, name_author, of_field, of_subject, removed, steps,
};
pub use speak::{author, field_name};

pub use crate::naming::thing;
pub use teller::{Stands, StoryTeller, with_removed};
pub use value::{told, value};

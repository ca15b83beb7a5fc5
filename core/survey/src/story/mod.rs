//! Who said what, and taking it back: the story of every field, undo by act, removed things, disagreements settled
//! by a choice.
//!
//! Nothing here changes or deletes a fact: taking back writes facts too. This folder gives data and phrases; it does
//! not know screens.

mod author;
mod removed;
mod said;
mod settle;
mod speak;
mod steps;
mod teller;
mod undo;
mod value;

pub use crate::words::date_and_time;
pub use author::{author_name, name_author};
pub use removed::{ChangedAfterRemoval, RemovedThing, changed_after_removal, removed};
pub use said::{Act, Said, acts, of_field, of_subject};
pub use speak::{author, disagreement, field_name, removal, said, thing};
pub use steps::{Steps, steps};
pub use teller::{Stands, Teller, with_removed};
pub use undo::{UndoFault, can_undo};
pub use value::value;

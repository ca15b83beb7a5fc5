//! Actions: what each said, which stand, taking them back; removed things, disagreements settled by a choice.
//!
//! Nothing here changes or deletes a fact: taking back writes facts too. This folder tells actions apart by their ids
//! and what they replaced; it has no word for any of them and does not know what a field means.

mod author;
mod removed;
mod said;
mod settle;
mod steps;
mod undo;

pub use crate::error::UndoFault;
pub use author::{author_name, name_author};
pub use removed::{ChangedAfterRemoval, RemovedThing, changed_after_removal, removed};
pub use said::{Act, Said, acts, of_field, of_subject};
pub use steps::{Steps, steps};
pub use undo::can_undo;

//! With others: files, what two people said, who said what, taking back, forgetting.

pub(crate) mod act;
pub(crate) mod acts;
pub(crate) mod disagreement;
pub(crate) mod disagreements;
pub(crate) mod field_story;
pub(crate) mod forget;
pub(crate) mod frame;
pub(crate) mod pack;
pub(crate) mod removed;
pub(crate) mod removed_thing;
pub(crate) mod take_in;
pub(crate) mod thing_story;
pub(crate) mod things;
pub(crate) mod wishes;

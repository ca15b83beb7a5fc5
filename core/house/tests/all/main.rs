//! The checks of `house`, in one binary.

mod forget_disk;
mod home_surveys;
mod photo_store;
mod story_undo;

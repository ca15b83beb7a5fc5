//! The checks of `house`, in one binary.

mod file_read;
mod forget_disk;
mod home_surveys;
mod kept_files;
mod photo_store;
mod story_undo;

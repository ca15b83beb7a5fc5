//! The checks of `telling`, in one binary.

mod change_words;
mod finding_words;
mod label_told;
mod map;
mod names_told;
mod refusals_of_changes;
mod report_done;
mod report_house;

mod report_page;
mod report_photos;
mod report_rooms;
mod story_words;
mod verdict_laws;

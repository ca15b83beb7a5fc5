//! The few names of fields, and the few kinds of things, that are read without knowing what a survey is about: to count
//! and to list, to bound, to find the file of a photo, to leave out who and where. Every other name is taken as it is.
//!
//! They are part of the file format and never change meaning.

/// What kind of thing a subject is: a word such as [`PART`].
pub const IS: &str = "is";
/// What a survey, or an author, is called.
pub const NAME: &str = "name";
/// Where a survey was made, in its owner's words.
pub const PLACE: &str = "place";
/// Where a part sits, in people's own words.
pub const WHERE: &str = "where";
/// Which file holds a photo.
pub const IMAGE: &str = "image";

/// Where a part gets its signal: a file that says so anew of most of a survey is asked about.
pub const FEED: &str = "feed";

/// The word of [`IS`] for that of which a survey holds a bounded number: see [`MOST_PARTS`].
pub const PART: &str = "part";
/// The word of [`IS`] for a photo.
pub const PHOTO: &str = "photo";
/// The word of [`IS`] for a note: what somebody wrote freely, and may want to keep to themselves.
pub const NOTE: &str = "note";

/// Fields that say who or where, on any subject. These names are kept for that, whether a release writes them or not.
pub const OWNER: [&str; 4] = ["owner", "phone", "address", "email"];

/// The most facts of a survey: what a file of it may hold.
pub const MOST_FACTS: usize = 60_000;

/// The most subjects of a survey that are a [`PART`] and not removed: one larger than this is not a house.
pub const MOST_PARTS: usize = 2_000;

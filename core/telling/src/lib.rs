//! How all of it is told: languages and their words, figures as marks, the report.
//!
//! ```
//! use phrase::{Arg, Phrase};
//! use telling::words::{Figures, Language};
//!
//! let english = Language::english(Figures::default());
//! assert_eq!(english.write(&Arg::Length(15.24)), "15 m (50 ft)"); // 0.3048 m a foot, by definition.
//! assert_eq!(english.say(&Phrase::new("service-cable_tv")), "cable TV");
//! ```
//!
//! From below upwards: `words` (languages; no word on what a phrase is about), `doubts` (of a label) and `figure` (the
//! map, the plot, SVG), `report` (one HTML file).

pub mod doubts;
pub mod figure;
pub mod report;
pub mod words;

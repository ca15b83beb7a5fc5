//! What is printed on a part, read from a photo of it: lines of text with a certainty a letter and a place in the picture.
//!
//! The model that reads is a folder of its own beside the program, made by `core/print/model/make`; without it nothing is read
//! and what is missing is named. Nothing here knows what a label states, or a house: `label` reads the text, and says of which
//! numbers it is sure.
//!
//! ```
//! use std::path::Path;
//! use print::{Model, PrintError};
//!
//! # fn show(picture: &facts::photo::Picture) -> Result<(), PrintError> {
//! let model = Model::load(Path::new("target/print-model"))?;
//! let print = model.read(picture, None, &mut |_done| true)?;
//! for line in print.rows.iter().filter_map(|row| row.looks.iter().flatten().next()) {
//!     println!("{} at {:?}", line.text(), line.corners);
//! }
//! # Ok(())
//! # }
//! let nowhere = Model::load(Path::new("nowhere")).unwrap_err();
//! assert_eq!(nowhere, PrintError::ModelMissing { file: "letters.txt" });
//! ```
//!
//! What `label` makes of it, and the piece of the photo beside each number:
//!
//! ```
//! use label::seen::{SeenLine, SeenRow, Suggestion, suggest};
//! use print::{Line, Print, Quad};
//!
//! fn suggestion(print: &Print) -> Suggestion {
//!     let seen = |line: &Line| SeenLine {
//!         letters: line.letters.iter().map(|letter| (letter.sign, letter.certainty)).collect(),
//!         is_cut: line.is_cut,
//!     };
//!     let rows: Vec<SeenRow> = print
//!         .rows
//!         .iter()
//!         .map(|row| SeenRow { looks: row.looks.each_ref().map(|look| look.as_ref().map(seen)) })
//!         .collect();
//!     suggest(&rows)
//! }
//!
//! fn pieces(print: &Print, suggestion: &Suggestion) -> Vec<Option<Quad>> {
//!     let piece = |place: &label::seen::SeenPlace| {
//!         let line = print.rows.get(place.row)?.looks.get(place.look)?.as_ref()?;
//!         Some(line.piece(place.letters.clone()))
//!     };
//!     suggestion.numbers.iter().map(|number| piece(&number.place)).collect()
//! }
//! ```
//!
//! From below upwards, each knows only those before it: `quad`, `whole`, `resample`, `region` (geometry), `error`, `depthwise` and
//! `network` (a network's arithmetic), `model` (two networks, by their sums), `detect` (where lines are), `recognise` (what one
//! says), `hidden` (what may be missing in it), `reading` with `row` (a picture at two scales).

mod depthwise;
mod detect;
mod error;
mod hidden;
mod model;
mod network;
mod quad;
mod reading;
mod recognise;
mod region;
mod resample;
mod row;
mod whole;

pub use error::PrintError;
pub use facts::photo::Area;
pub use model::Model;
pub use quad::{Point, Quad};
pub use reading::{Line, Print, Turn};
pub use recognise::Letter;
pub use row::Row;

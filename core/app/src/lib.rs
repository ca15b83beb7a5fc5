//! The guide: what a phone, a browser or a terminal draws, and what it sends back.
//!
//! A survey's state becomes a [`Screen`]; a [`Deed`] on it becomes the next state. No shell needs to know what a block
//! is about, and no pixels are decided here.
//!
//! ```
//! use app::{Deed, Guide};
//!
//! let folder = tempfile::tempdir()?;
//! let author = facts::fact::AuthorId::random();
//! let mut guide = Guide::at(folder.path(), author, app::english(Default::default()))?;
//! guide.act(&Deed::Press { key: "new".into() })?;
//! guide.act(&Deed::Write { key: "name".into(), words: "A house".into() })?;
//! guide.act(&Deed::Press { key: "make".into() })?;
//! assert_eq!(guide.screen().name, "ask-whose");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod ask;
mod clock;
mod deed;
mod device;
mod errand;
mod error;
mod given;
mod guide;
mod journey;
mod long_work;
mod memory;
mod number;
mod page;
mod picture;
mod place;
pub mod plain;
mod results;
mod scene;
pub mod screen;
mod sketch;
mod stage;
mod words;

pub use deed::Deed;
pub use device::{Device, Working};
pub use error::{GuideError, Result};
pub use guide::Guide;
pub use long_work::LongWork;
pub use screen::Screen;
pub use words::{english, lengthened, right_to_left};

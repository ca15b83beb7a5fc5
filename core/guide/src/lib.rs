//! The guide: what a phone, a browser or a terminal draws, and what it sends back.
//!
//! A survey's state becomes a [`Screen`]; a [`Deed`] on it becomes the next state. No shell needs to know what a block
//! is about, and no pixels are decided here.
//!
//! ```
//! use guide::{Deed, Guide};
//!
//! let folder = tempfile::tempdir()?;
//! let author = facts::fact::AuthorId::random();
//! let mut guide = Guide::at(folder.path(), author, guide::english(Default::default()))?;
//! // A shell draws how far long work is; here it is waited for.
//! guide.wait_for_long_work(std::time::Duration::MAX);
//! guide.act(&Deed::Press { key: "new".into() })?;
//! guide.act(&Deed::Write { key: "name".into(), words: "A house".into() })?;
//! guide.act(&Deed::Press { key: "make".into() })?;
//! assert_eq!(guide.screen().name, "ask-whose");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod clock;
mod deed;
mod done;
mod error;
mod finish;
mod guide;
pub mod kept;
mod number;
mod page;
pub mod photo_read;
mod place;
mod question;
pub mod screen;
mod session;
mod short_hash;
mod view;
mod words;

pub use deed::Deed;
pub use error::{GuideError, Result, Trouble};
pub use guide::{Guide, screen_names};
pub use screen::Screen;
pub use session::{Device, LongWork, Working};
pub use words::{english, language_of, lengthened, right_to_left};

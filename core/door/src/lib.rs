//! The door: the one object by which a phone's app reaches the guide.
//!
//! Strings, numbers and records go through, nothing else. Each call is one call into the guide, returns a result, and lets
//! no panic out. What the records are for stands in `docs/screens.md`; they are those of the guide, and the compiler asks
//! for each of them.
//!
//! ```
//! use door::{Door, FirstLength, Settings};
//! use guide::Deed;
//!
//! let home = tempfile::tempdir()?;
//! let settings = Settings {
//!     home: home.path().display().to_string(),
//!     language: "en-GB".into(),
//!     first_length: FirstLength::Metres,
//! };
//! let door = Door::new(settings, None, None)?;
//! assert_eq!(door.screen()?.name, "surveys");
//! let screen = door.act(Deed::Press { key: "new".into() })?;
//! assert_eq!(screen.name, "new-survey");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod door;
mod draw_again;
mod error;
mod guarded;
mod settings;
mod shown;
mod watch;
#[cfg(test)]
#[path = "../../guide/tests/all/whole_house.rs"]
#[expect(dead_code, reason = "the guide's own tests ask for more of it")]
mod whole_house;
mod work;

pub use door::{Door, bar_drawn};
pub use draw_again::{DrawAgain, DrawAgainError};
pub use error::{DoorError, Result};
pub use settings::{FirstLength, Settings};
pub use work::{HowFarItIs, Work};

uniffi::setup_scaffolding!();

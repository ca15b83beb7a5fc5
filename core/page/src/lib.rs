//! The guide as a page in a browser: every screen as HTML made here, every deed as a form sent back.
//!
//! It works without script; a little script spares the reload, takes dropped photos, zooms. It is served on this
//! computer alone, to whoever came by the secret address that [`Served::address`] gives, and to no other page.
//!
//! ```
//! let home = tempfile::tempdir()?;
//! let author = facts::fact::AuthorId::random();
//! let guide = guide::Guide::at(home.path(), author, guide::english(Default::default()))?;
//! let served = page::serve(guide, page::english(Default::default()))?;
//! assert!(served.address().starts_with("http://127.0.0.1:"));
//! served.stop()?;
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod at_door;
mod connections;
mod deeds;
mod draw;
mod error;
mod form;
mod host;
mod own_name;
mod routes;
mod secret;
mod served;
mod tickets;
mod words;

pub use error::PageError;
pub use host::still;
pub use served::{Served, serve, serve_with};
pub use words::{english, worded};

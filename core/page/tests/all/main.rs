//! The page as a browser meets it, and as strangers do: over its own port.

mod browser;
mod deeds;
mod label_photo;
mod strangers;

//! What the guide shows and takes, as the languages of the phones get it.
//!
//! Each record is the guide's own, written out once more: `uniffi::remote` makes its way across and emits nothing else. A
//! field or a kind that the guide has and that is missing here does not compile. What each is for stands in
//! `docs/screens.md`.

mod block;
mod card;
mod deed;
mod figure;
mod input;
mod need;
mod press;
mod row;
mod said;
mod screen;

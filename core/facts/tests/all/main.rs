//! Checks of facts, store, files and pictures as a whole. What counts the memory of the whole process stands apart.

mod file_announced;
mod file_consent;
mod file_damage;
mod file_round_trip;
#[path = "../file_support/mod.rs"]
mod file_support;
mod flipped_bits;
mod migrate_layout;
mod photo_clean;
mod photo_store;
mod store_refusals;
mod store_round_trip;

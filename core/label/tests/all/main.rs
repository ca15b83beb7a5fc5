//! The checks of `label`, in one binary.

mod label_laws;
mod label_reading;
mod members;

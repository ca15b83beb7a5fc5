//! The checks of `label`, in one binary.

mod any_order;
mod label_laws;
mod label_reading;
mod members;
mod seen;
mod torn;

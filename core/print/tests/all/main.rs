//! The checks of `print`, in one binary.

mod refused;
mod with_model;

//! The checks of `print`, in one binary.

/// Counts what is held at once: `memory.rs` asks it.
#[global_allocator]
static MEMORY: peak_alloc::PeakAlloc = peak_alloc::PeakAlloc;

mod memory;
mod refused;
mod with_model;

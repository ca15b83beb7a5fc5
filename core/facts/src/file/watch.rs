//! Watching long work, and stopping it.

use crate::error::{FactsError, Result};

/// How far a piece of work is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// Bytes that are done.
    pub done_bytes: u64,
    /// Bytes that there are to do; an estimate of the same kind as `done_bytes`.
    pub of_bytes: u64,
}

/// Whoever watches long work. Any closure from [`Progress`] to whether to go on is one.
pub trait Watch {
    /// Called at least every mebibyte. Returns whether to go on: after `false` the work ends with
    /// [`FactsError::Stopped`] and leaves everything as it was.
    fn goes_on(&mut self, progress: Progress) -> bool;
}

impl<F: FnMut(Progress) -> bool> Watch for F {
    fn goes_on(&mut self, progress: Progress) -> bool {
        self(progress)
    }
}

/// Counts what is done and asks the watcher.
pub(super) struct Meter<'a> {
    watch: &'a mut dyn Watch,
    progress: Progress,
}

impl<'a> Meter<'a> {
    pub(super) fn new(watch: &'a mut dyn Watch, of_bytes: u64) -> Self {
        Self { watch, progress: Progress { done_bytes: 0, of_bytes } }
    }

    /// Counts `bytes` more as done.
    pub(super) fn done(&mut self, bytes: usize) -> Result<()> {
        self.progress.done_bytes = self.progress.done_bytes.saturating_add(bytes as u64);
        self.progress.of_bytes = self.progress.of_bytes.max(self.progress.done_bytes);
        if self.watch.goes_on(self.progress) { Ok(()) } else { Err(FactsError::Stopped) }
    }
}

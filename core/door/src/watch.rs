//! Watching long work, so that the shell need not ask.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::Duration;

use guide::LongWork;

use crate::draw_again::DrawAgain;

/// So often a shell is told that long work has come on.
const EVERY: Duration = Duration::from_millis(250);

/// Tells a shell of long work: at most one thread at a time.
pub(crate) struct Watch {
    told: Option<Arc<dyn DrawAgain>>,
    is_watching: Arc<AtomicBool>,
}

impl Watch {
    pub(crate) fn new(told: Option<Arc<dyn DrawAgain>>) -> Self {
        Self { told, is_watching: Arc::default() }
    }

    /// Watches work until it is over, if nobody does already. The shell fetches the screen then, and whatever that begins
    /// is watched in its turn. No lock is held while the shell is told.
    pub(crate) fn watch(&self, work: Option<LongWork>) {
        let (Some(told), Some(work)) = (self.told.clone(), work) else { return };
        if self.is_watching.swap(true, Ordering::SeqCst) {
            return;
        }
        let is_watching = Arc::clone(&self.is_watching);
        let begun = thread::Builder::new().name("watch".into()).spawn(move || {
            let mut shown = work.progress();
            while !work.wait_at_most(EVERY) {
                let now = work.progress();
                if now != shown {
                    shown = now;
                    // A shell that cannot draw now is told again.
                    let _ = told.draw_again();
                }
            }
            // Before it is told, so that what the shell begins then finds a watch.
            is_watching.store(false, Ordering::SeqCst);
            let _ = told.draw_again();
        });
        if begun.is_err() {
            self.is_watching.store(false, Ordering::SeqCst);
        }
    }
}

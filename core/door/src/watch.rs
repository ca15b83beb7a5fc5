//! Watching long work, so that the shell need not ask.

use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::Duration;

use guide::LongWork;

use crate::draw_again::DrawAgain;

/// So often a shell is told that long work has come on.
const EVERY: Duration = Duration::from_millis(250);

/// Tells a shell of long work, each on a thread of its own.
pub(crate) struct Watch {
    told: Option<Arc<Told>>,
    /// What is watched now.
    watched: Arc<Mutex<Vec<LongWork>>>,
}

/// A shell that is told by one thread at a time. What it calls meanwhile never waits for this.
struct Told {
    shell: Arc<dyn DrawAgain>,
    one: Mutex<()>,
}

impl Watch {
    pub(crate) fn new(shell: Option<Arc<dyn DrawAgain>>) -> Self {
        let told = shell.map(|shell| Arc::new(Told { shell, one: Mutex::default() }));
        Self { told, watched: Arc::default() }
    }

    /// Watches work until it is over. The shell fetches the screen then, and whatever that begins is watched in its turn.
    pub(crate) fn watch(&self, work: Option<LongWork>) {
        let (Some(told), Some(work)) = (self.told.clone(), work) else { return };
        let mut watched = lock(&self.watched);
        if watched.iter().any(|known| known.is(&work)) {
            return;
        }
        watched.push(work.clone());
        drop(watched);
        let watched = Arc::clone(&self.watched);
        let begun = thread::Builder::new().name("watch".into()).spawn({
            let work = work.clone();
            move || {
                told.follow(&work);
                lock(&watched).retain(|known| !known.is(&work));
            }
        });
        if begun.is_err() {
            lock(&self.watched).retain(|known| !known.is(&work));
        }
    }
}

impl Told {
    /// Tells the shell whenever the work has come on, and when it is over.
    fn follow(&self, work: &LongWork) {
        let mut shown = work.progress();
        while !work.wait_at_most(EVERY) {
            let now = work.progress();
            if now != shown {
                shown = now;
                self.tell();
            }
        }
        self.tell();
    }

    fn tell(&self) {
        let one = lock(&self.one);
        // A shell that cannot draw now is told again.
        let _ = self.shell.draw_again();
        drop(one);
    }
}

fn lock<T>(of: &Mutex<T>) -> MutexGuard<'_, T> {
    of.lock().unwrap_or_else(PoisonError::into_inner)
}

//! Work that takes a while, on a thread of its own: how far it is, stopping it, and what came of it.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::{Arc, Condvar, Mutex, OnceLock, PoisonError};
use std::thread;
use std::time::Duration;

use crate::error::GuideError;

/// Work that takes a while. A shell asks it how far it is, and may tell it to stop; the screen says the rest.
#[derive(Debug, Clone)]
pub struct LongWork {
    shared: Arc<Shared>,
}

#[derive(Debug)]
struct Shared {
    stop: AtomicBool,
    thousandths: AtomicU32,
    over: Mutex<bool>,
    is_over: Condvar,
}

/// That nothing can be told yet of how far it is.
const NOT_KNOWN: u32 = u32::MAX;

impl LongWork {
    /// Work that was not begun.
    pub(super) fn new() -> Self {
        let shared = Shared {
            stop: AtomicBool::new(false),
            thousandths: AtomicU32::new(NOT_KNOWN),
            over: Mutex::new(false),
            is_over: Condvar::new(),
        };
        Self { shared: Arc::new(shared) }
    }

    /// How far it is, in thousandths; `None` while that cannot be told.
    pub fn progress(&self) -> Option<u32> {
        let thousandths = self.shared.thousandths.load(Ordering::Relaxed);
        (thousandths != NOT_KNOWN).then_some(thousandths)
    }

    /// Whether both are the same work.
    pub fn is(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.shared, &other.shared)
    }

    /// Tells it to stop. It soon does, and leaves nothing.
    pub fn stop(&self) {
        self.shared.stop.store(true, Ordering::Relaxed);
    }

    /// Whether it is over: done, stopped or failed.
    pub fn is_done(&self) -> bool {
        *self.shared.over.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Waits until it is over.
    pub(crate) fn wait(&self) {
        self.wait_at_most(Duration::MAX);
    }

    /// Waits until it is over, but no longer than that; returns whether it is.
    pub fn wait_at_most(&self, longest: Duration) -> bool {
        let over = self.shared.over.lock().unwrap_or_else(PoisonError::into_inner);
        let waited = self.shared.is_over.wait_timeout_while(over, longest, |over| !*over);
        *waited.unwrap_or_else(PoisonError::into_inner).0
    }

    /// Says that it is over.
    pub(super) fn end(&self) {
        *self.shared.over.lock().unwrap_or_else(PoisonError::into_inner) = true;
        self.shared.is_over.notify_all();
    }

    /// Whether it was told to stop.
    pub(crate) fn is_stopped(&self) -> bool {
        self.shared.stop.load(Ordering::Relaxed)
    }

    /// Says which share is done, 0 to 1, and is told whether to go on. Where several threads say it, what is told only rises.
    pub(crate) fn goes_on(&self, share: f64) -> bool {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 1000")]
        let thousandths = (share.clamp(0.0, 1.0) * 1000.0) as u32;
        let rises = |told| (told == NOT_KNOWN || told < thousandths).then_some(thousandths);
        let _ = self.shared.thousandths.fetch_update(Ordering::Relaxed, Ordering::Relaxed, rises);
        !self.is_stopped()
    }
}

/// A piece of long work and, once it is over, what came of it.
#[derive(Debug)]
pub(crate) struct LongWorkOf<T> {
    work: LongWork,
    outcome: Arc<OnceLock<Result<T, GuideError>>>,
}

impl<T: Send + Sync + 'static> LongWorkOf<T> {
    /// Begins it.
    pub(crate) fn begin(run: impl FnOnce(&LongWork) -> Result<T, GuideError> + Send + 'static) -> Self {
        let task = Self { work: LongWork::new(), outcome: Arc::default() };
        let (work, outcome) = (task.work.clone(), Arc::clone(&task.outcome));
        let begun = thread::Builder::new().name("long work".into()).spawn(move || {
            let ran = catch_unwind(AssertUnwindSafe(|| run(&work)));
            // Nobody else writes it.
            let _ =
                outcome.set(ran.unwrap_or(Err(facts::FactsError::Inner("the long work broke off").into())));
            work.end();
        });
        if begun.is_err() {
            let _ = task.outcome.set(Err(facts::FactsError::Inner("no thread for the long work").into()));
            task.work.end();
        }
        task
    }
}

impl<T> LongWorkOf<T> {
    /// To ask how far it is, and to stop it.
    pub(crate) fn work(&self) -> &LongWork {
        &self.work
    }

    /// What came of it; `None` while it is going on.
    pub(crate) fn outcome(&self) -> Option<&Result<T, GuideError>> {
        self.outcome.get().filter(|_| self.work.is_done())
    }
}

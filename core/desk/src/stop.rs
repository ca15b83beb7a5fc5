//! Stopping long work: Ctrl-C once asks it to end cleanly, a second time ends the program at once.
//!
//! Whatever is written has its name only once it is whole, so the second one leaves nothing half there either; a file
//! of a temporary name that stays is removed by a later run.

use std::io;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use signal_hook::consts::{SIGINT, SIGTERM};
use signal_hook::flag;

use crate::error::{DeskError, STOPPED};

/// Whether the user wants the work to end.
#[derive(Debug, Clone)]
pub struct Stop(Arc<AtomicBool>);

impl Stop {
    /// Listens to Ctrl-C and to a request to end from now on.
    ///
    /// # Errors
    /// [`DeskError::Signals`] if the system does not let us.
    pub fn listen() -> Result<Self, DeskError> {
        let asked = Arc::new(AtomicBool::new(false));
        // The order counts: the first signal finds the flag down and raises it, the second one finds it raised.
        let listen = |signal| -> io::Result<()> {
            flag::register_conditional_shutdown(signal, i32::from(STOPPED), Arc::clone(&asked))?;
            flag::register(signal, Arc::clone(&asked)).map(drop)
        };
        listen(SIGINT).and_then(|()| listen(SIGTERM)).map_err(DeskError::Signals)?;
        Ok(Self(asked))
    }

    /// Whether the work is to end.
    pub fn is_asked(&self) -> bool {
        self.0.load(Ordering::Relaxed)
    }
}

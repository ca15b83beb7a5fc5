//! How far long work is: one line on standard error, where that is a terminal.

use std::io::{IsTerminal, Write};
use std::time::{Duration, Instant};

use facts::file::{Progress, Watch};

use crate::stop::Stop;

/// How often the line is written.
const EVERY: Duration = Duration::from_millis(100);

/// Shows progress and hands on the wish to stop. The line is wiped when this is dropped.
pub struct Shown<'a> {
    stop: &'a Stop,
    what: String,
    terminal: bool,
    last: Instant,
    written: bool,
}

impl<'a> Shown<'a> {
    /// Progress of `what`, in words.
    pub fn new(stop: &'a Stop, what: String) -> Self {
        let terminal = std::io::stderr().is_terminal();
        Self { stop, what, terminal, last: Instant::now(), written: false }
    }

    /// Shows how much is done, if it is time to.
    pub fn show(&mut self, done: u64, of: u64) {
        if self.terminal && self.last.elapsed() >= EVERY {
            self.last = Instant::now();
            self.written = true;
            let percent = percent(done, of);
            // Where it cannot be shown, the work goes on all the same.
            let _ = write!(std::io::stderr(), "\r{}: {percent} %\u{1b}[K", self.what);
        }
    }
}

impl Watch for Shown<'_> {
    fn goes_on(&mut self, progress: Progress) -> bool {
        self.show(progress.done_bytes, progress.of_bytes);
        !self.stop.is_asked()
    }
}

impl Drop for Shown<'_> {
    fn drop(&mut self) {
        if self.written {
            let _ = write!(std::io::stderr(), "\r\u{1b}[K");
        }
    }
}

/// Whole percent; never 100 before the end.
fn percent(done: u64, of: u64) -> u64 {
    if done >= of { 100 } else { u64::try_from(u128::from(done) * 100 / u128::from(of)).unwrap_or(100) }
}

#[cfg(test)]
mod tests {
    use super::percent;

    #[test]
    fn percent_of_anything() {
        assert_eq!(percent(0, 0), 100);
        assert_eq!(percent(1, 3), 33);
        assert_eq!(percent(999, 1000), 99);
        assert_eq!(percent(u64::MAX - 1, u64::MAX), 99);
    }
}

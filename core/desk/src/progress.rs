//! How far long work is, and how it is stopped: one line on standard error, where that is a terminal.

use std::io::{IsTerminal, Write};
use std::time::{Duration, Instant};

use facts::file::{Progress, Watch};
use phrase::Phrase;
use telling::words::Language;

use crate::stop::Stop;

/// What is over sooner says nothing.
const AFTER: Duration = Duration::from_millis(400);
/// Where this is set, all says something: how fast the machine is does not matter then.
const AT_ONCE: &str = "LEGWORK_PROGRESS_AT_ONCE";
/// How often the line is written.
const EVERY: Duration = Duration::from_millis(100);

/// What a stop does to the work, told with it.
#[derive(Debug, Clone, Copy)]
pub enum Stopped {
    /// Ctrl-C ends the work.
    EndsIt,
    /// Ctrl-C ends the walk, in which the work is done.
    EndsTheWalk,
}

/// The line. It is wiped when this is dropped.
pub struct Line<'a> {
    language: &'a Language,
    stopped: Stopped,
    terminal: bool,
    begun: Instant,
    after: Duration,
    last: Option<Instant>,
}

impl<'a> Line<'a> {
    /// A line of work that begins now.
    pub fn new(language: &'a Language, stopped: Stopped) -> Self {
        let terminal = std::io::stderr().is_terminal();
        let after = if std::env::var_os(AT_ONCE).is_some() { Duration::ZERO } else { AFTER };
        Self { language, stopped, terminal, begun: Instant::now(), after, last: None }
    }

    /// Shows how much of `what` is done, if it is time to.
    pub fn show(&mut self, what: &str, done: u64, of: u64) {
        let is_time =
            self.begun.elapsed() >= self.after && self.last.is_none_or(|last| last.elapsed() >= EVERY);
        if !self.terminal || !is_time {
            return;
        }
        self.last = Some(Instant::now());
        let id = match self.stopped {
            Stopped::EndsIt => "desk-doing",
            Stopped::EndsTheWalk => "desk-doing-in-walk",
        };
        let line = Phrase::new(id).text("what", what).text("percent", percent(done, of).to_string());
        // Where it cannot be shown, the work goes on all the same.
        let _ = write!(std::io::stderr(), "\r{}\u{1b}[K", self.language.say(&line));
    }
}

impl Drop for Line<'_> {
    fn drop(&mut self) {
        if self.last.is_some() {
            let _ = write!(std::io::stderr(), "\r\u{1b}[K");
        }
    }
}

/// Shows progress and hands on the wish to stop.
pub struct Shown<'a> {
    stop: &'a Stop,
    what: String,
    line: Line<'a>,
}

impl<'a> Shown<'a> {
    /// Progress of what the message `id` says.
    pub fn new(stop: &'a Stop, language: &'a Language, id: &str) -> Self {
        let what = language.say(&Phrase::new(id));
        Self { stop, what, line: Line::new(language, Stopped::EndsIt) }
    }

    /// Shows how much is done, if it is time to.
    pub fn show(&mut self, done: u64, of: u64) {
        self.line.show(&self.what, done, of);
    }

    /// Shows which share is done, 0 to 1, and says whether to go on.
    pub fn goes_on_at(&mut self, share: f64) -> bool {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 1000")]
        let done = (share.clamp(0.0, 1.0) * 1000.0) as u64;
        self.show(done, 1000);
        !self.stop.is_asked()
    }
}

impl Watch for Shown<'_> {
    fn goes_on(&mut self, progress: Progress) -> bool {
        self.show(progress.done_bytes, progress.of_bytes);
        !self.stop.is_asked()
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

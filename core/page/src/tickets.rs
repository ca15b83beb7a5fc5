//! One-time tickets: each drawn screen carries one, and a deed counts only with the ticket of the screen that is shown.

use std::collections::VecDeque;

use crate::error::PageError;
use crate::secret::Secret;

/// So many screens may lie open in tabs; the tickets of older ones are forgotten.
const MOST: usize = 64;

/// The tickets that are out.
#[derive(Default)]
pub(crate) struct Tickets {
    /// How many deeds were done: a ticket counts only as long as none was done since.
    stand: u64,
    out: VecDeque<(Secret, u64)>,
}

/// What a ticket is worth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Worth {
    /// The deed may be done.
    Good,
    /// It was given out, and something was done since: another tab, or a press pressed twice.
    Old,
    /// It was never given out, or so long ago that it is forgotten.
    Unknown,
}

impl Tickets {
    /// A ticket for the screen as it stands.
    ///
    /// # Errors
    /// If the system gives no random numbers.
    pub(crate) fn give(&mut self) -> Result<Secret, PageError> {
        let ticket = Secret::new()?;
        self.out.push_back((ticket.clone(), self.stand));
        if self.out.len() > MOST {
            self.out.pop_front();
        }
        Ok(ticket)
    }

    /// Takes a ticket: it counts once.
    pub(crate) fn take(&mut self, letters: &str) -> Worth {
        let Some(place) = self.out.iter().position(|(ticket, _)| ticket.is(letters)) else {
            return Worth::Unknown;
        };
        match self.out.remove(place) {
            Some((_, stand)) if stand == self.stand => Worth::Good,
            _ => Worth::Old,
        }
    }

    /// Something was done: whatever was drawn before is out of date.
    pub(crate) const fn something_was_done(&mut self) {
        self.stand += 1;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ticket_counts_once_and_only_until_something_is_done() {
        let mut tickets = Tickets::default();
        let [one, other] = [tickets.give().unwrap(), tickets.give().unwrap()];
        assert_eq!(tickets.take(one.letters()), Worth::Good);
        assert_eq!(tickets.take(one.letters()), Worth::Unknown, "once");
        tickets.something_was_done();
        assert_eq!(tickets.take(other.letters()), Worth::Old);
        assert_eq!(tickets.take("made up"), Worth::Unknown);
    }

    #[test]
    fn many_tabs_do_not_fill_the_memory() {
        let mut tickets = Tickets::default();
        let first = tickets.give().unwrap();
        for _ in 0..10 * MOST {
            tickets.give().unwrap();
        }
        assert_eq!(tickets.out.len(), MOST);
        assert_eq!(tickets.take(first.letters()), Worth::Unknown);
    }
}

//! Numbers without a unit: whose they are.

use super::item::Grammar;
use super::token::Token;
use super::unit::Unit;
use super::vocabulary::Term;
use super::word::{Sign, What};

/// The versions of the home network that a number behind its name may be.
const NETWORK_VERSIONS: [&str; 9] = ["1", "1.0", "1.1", "2", "2.0", "2.1", "2.5", "3", "3.0"];
/// The taps that directional couplers are named by, in decibels. Common practice, no source.
const COUPLER_TAPS_DB: std::ops::RangeInclusive<f64> = 6.0..=30.0;

impl Grammar<'_> {
    /// Whether the number at `at` is a version of the home network.
    pub(super) fn is_network_version(&self, at: usize) -> bool {
        self.number(at).is_some_and(|number| NETWORK_VERSIONS.contains(&number.plain()))
    }

    /// One past a number or a ratio: `3.1`, `1.2:1`.
    pub(super) fn after_ratio(&self, at: usize) -> usize {
        let is_ratio = self.is_sign(at + 1, Sign::Colon) && self.number(at + 2).is_some();
        at + if is_ratio { 3 } else { 1 }
    }

    /// "DC-12dB", "DC-9": here DC is the directional coupler, and the number its tap's loss.
    pub(super) fn is_coupler_name(&self, at: usize) -> bool {
        let Some(number) = self.number(at + 2).filter(|_| self.is_sign(at + 1, Sign::Dash)) else {
            return false;
        };
        if let Some(spelling) = self.unit(at + 3) {
            return spelling.unit == Unit::Decibel;
        }
        let is_name = !self.spaced(at + 1) && !self.spaced(at + 2) && number.is_whole();
        is_name && self.is_bare_number(at + 2) && COUPLER_TAPS_DB.contains(&number.value())
    }

    /// Whether the number at `at` stands for itself: it has no unit, begins no range, and no word after it counts by it.
    pub(super) fn is_bare_number(&self, at: usize) -> bool {
        let next = at + 1;
        let way = next + usize::from(self.is_sign(next, Sign::Dash));
        let begins_range = self.range_sign(next).is_some() && !self.is_minus(next);
        let counts = matches!(
            self.term(way),
            Some(
                Term::Way
                    | Term::Output
                    | Term::Outputs
                    | Term::Port
                    | Term::Leg
                    | Term::By
                    | Term::SeriesWord
            )
        );
        let is_group = self
            .number(next)
            .is_some_and(|group| self.number(at).is_some_and(|number| number.joined(group).is_some()));
        let is_ratio = self.is_sign(next, Sign::Colon) || self.is_sign(next, Sign::Dot);
        self.number(at).is_some()
            && self.unit(next).is_none()
            && !begins_range
            && !counts
            && !is_group
            && !is_ratio
    }

    /// Whether a word that means nothing here stands right before `at`: what follows may be that word's.
    pub(super) fn follows_word(&self, at: usize) -> bool {
        let mut at = at;
        while at >= 2
            && self.is_sign(at - 1, Sign::Slash)
            && !self.spaced(at)
            && self.number(at - 2).is_some()
        {
            // "MADE 05/19"
            at -= 2;
        }
        let before = at
            .checked_sub(1)
            .map(|before| if self.is_sign(before, Sign::Colon) { before.saturating_sub(1) } else { before });
        before.and_then(|before| self.token(before)).is_some_and(|token| match token.what {
            What::Word | What::Code(_) | What::Term(Term::CodeAhead) => true,
            // A script that is written without blanks.
            What::Sign(Sign::Other) => self.written_token(token).chars().any(char::is_alphabetic),
            _ => false,
        })
    }

    fn written_token(&self, token: &Token) -> &str {
        self.text.get(token.start..token.end).unwrap_or_default()
    }

    /// Whether a slash stands between blanks and parts more than two numbers of a list.
    pub(super) fn parts_members(&self, at: usize) -> bool {
        let is_list = at.checked_sub(1).is_some_and(|before| self.number(before).is_some())
            && self.number(at + 1).is_some();
        self.spaced(at) && self.spaced(at + 1) && !is_list
    }
}

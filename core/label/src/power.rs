//! What a label says about direct current.

use super::item::{Grammar, Item, Lost};
use super::kind::PowerPass;
use super::vocabulary::Term;
use super::word::{Sign, What};

impl Grammar<'_> {
    /// `DC PASS ALL PORTS`, `1 PORT POWER PASS`, `NO POWER PASS`, `DC BLOCKED`.
    pub(super) fn power(&mut self, at: usize) -> Option<usize> {
        let (before, core) = self.before_power(at);
        let mut next = self.power_words(core)?;
        if self.is_sign(next, Sign::Dash) {
            next += 1;
        }
        let pass = match self.term(next) {
            Some(Term::Pass) if before == Some(PowerPass::Blocked) => (PowerPass::Blocked, next + 1),
            Some(Term::Pass) => {
                let (after, end) = self.after_pass(next + 1);
                (after.or(before).unwrap_or(PowerPass::Stated), end)
            }
            Some(Term::Block | Term::Blocked) => (PowerPass::Blocked, next + 1),
            _ if before == Some(PowerPass::Blocked) => (PowerPass::Blocked, next),
            _ if self.is_sign(next, Sign::Colon) && self.term(next + 1) == Some(Term::No) => {
                (PowerPass::Blocked, next + 2)
            }
            _ => return None,
        };
        let is_direct = self.term(core) == Some(Term::DirectCurrent) && core + 1 == next;
        if before.is_none() && is_direct && self.term(next) == Some(Term::Block) {
            // What blocks and does nothing else; on another part it says that this one blocks.
            self.items.push(Item::Word(Term::DcBlock));
        }
        let counted = pass.1.checked_sub(2).filter(|count| *count > next);
        if let Some(count) = counted.filter(|count| self.small_count(*count).is_some_and(|count| count > 1)) {
            self.lose(Lost::PassingCount, count, pass.1);
        }
        self.items.push(Item::Power(pass.0));
        Some(pass.1)
    }

    /// What stands before the words for power: `ALL PORTS`, `1 PORT`, `NO`.
    fn before_power(&self, at: usize) -> (Option<PowerPass>, usize) {
        if self.term(at) == Some(Term::No) {
            return (Some(PowerPass::Blocked), at + 1);
        }
        let (legs, mut next) = match (self.term(at), self.small_count(at)) {
            (Some(Term::All), _) => (PowerPass::AllLegs, at + 1),
            (_, Some(1)) => (PowerPass::OneLeg, at + 1),
            (_, Some(_)) => (PowerPass::Stated, at + 1),
            _ => return (None, at),
        };
        if self.is_sign(next, Sign::Dash) {
            next += 1;
        }
        match self.term(next) {
            Some(Term::Port | Term::Leg | Term::Output | Term::Outputs) => (Some(legs), next + 1),
            _ if legs == PowerPass::AllLegs => (Some(legs), next),
            _ => (None, at),
        }
    }

    /// One past the words for power, `AC/DC` among them.
    fn power_words(&self, at: usize) -> Option<usize> {
        let is_power = |place| matches!(self.term(place), Some(Term::DirectCurrent | Term::Power));
        if !is_power(at) {
            return None;
        }
        let mut next = at + 1;
        loop {
            let place = next + usize::from(self.is_sign(next, Sign::Slash));
            if !is_power(place) {
                return Some(next);
            }
            next = place + 1;
        }
    }

    /// What stands after `PASS`: `ALL PORTS`, `1 PORT`, `OUT1`, `NONE`; small words between are passed over.
    fn after_pass(&self, at: usize) -> (Option<PowerPass>, usize) {
        let mut next = at;
        for _ in 0..3 {
            let is_small = matches!(
                self.token(next).map(|token| &token.what),
                Some(
                    What::Term(Term::To | Term::At | Term::Through | Term::Input)
                        | What::Word
                        | What::Sign(Sign::Colon | Sign::Dash | Sign::Other)
                )
            );
            if !is_small {
                break;
            }
            next += 1;
        }
        let is_port =
            |place| matches!(self.term(place), Some(Term::Port | Term::Leg | Term::Output | Term::Outputs));
        match self.term(next) {
            Some(Term::All | Term::Each) => {
                (Some(PowerPass::AllLegs), next + 1 + usize::from(is_port(next + 1)))
            }
            Some(Term::No) if self.power_words(next + 1).is_none() => (Some(PowerPass::Blocked), next + 1),
            Some(Term::Output | Term::Port | Term::Leg)
                if self.number(next + 1).is_some_and(super::number::Numeral::is_whole)
                    && self.unit(next + 2).is_none()
                    && !self.is_sign(next + 2, Sign::Slash)
                    && !self.is_sign(next + 2, Sign::Comma) =>
            {
                // The output's number may also announce that output's loss, so it is left for the next rule.
                (Some(PowerPass::OneLeg), next)
            }
            _ if self.small_count(next).is_some() && is_port(next + 1) => {
                let one = self.small_count(next) == Some(1);
                (Some(if one { PowerPass::OneLeg } else { PowerPass::Stated }), next + 2)
            }
            _ => (None, at),
        }
    }
}

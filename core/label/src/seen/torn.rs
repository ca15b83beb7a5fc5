//! Numbers of which digits may be missing, by what stands right beside them in their row.

use super::number::{Row, SeenUnit};
use crate::kind::CableSeries;
use crate::vocabulary::Term;
use crate::word::{Sign, What};

impl Row<'_> {
    /// Whether it may be the last digits of a figure, since another number stands right before it: of “6 9 dB” the point was lost,
    /// “05 18 m” is one mark and not so “RG-6 482 ft”, “8 5-1218 MHz” may be 85-1218 and not so 5-42 85-1218.
    pub(super) fn may_be_an_end(&self, at: usize, unit: SeenUnit, value: f64) -> bool {
        let Some(before) = at.checked_sub(1).filter(|before| self.number(*before).is_some()) else {
            return false;
        };
        match unit {
            SeenUnit::Decibels => value.fract() == 0.0,
            SeenUnit::Feet | SeenUnit::Metres => !self.ends_a_series(before),
            SeenUnit::Megahertz => {
                self.is_range(at + 1) && !before.checked_sub(1).is_some_and(|range| self.is_range(range))
            }
            SeenUnit::Outputs | SeenUnit::Volts => false,
        }
    }

    /// Whether the blank between it and a sign, or the sign itself, may be a digit that was not seen. A range has a blank on both
    /// sides of its sign or on none: “5 -1218 MHz” may be 54-1218. Decibels behind a sign and a blank may be the last digits of a
    /// figure. A sign close to a mark of length may be one, but for what parts feet from metres.
    pub(super) fn may_lack_a_digit_at_a_sign(&self, at: usize, unit: SeenUnit) -> bool {
        let is_spaced = |at: usize| self.tokens.get(at).is_some_and(|token| token.spaced);
        let before = at.checked_sub(1);
        match unit {
            SeenUnit::Megahertz => {
                let is_uneven =
                    |sign: &usize| self.is_range(*sign) && is_spaced(*sign) != is_spaced(sign + 1);
                before.filter(is_uneven).is_some_and(|_| is_spaced(at))
                    || Some(at + 1).filter(is_uneven).is_some_and(is_spaced)
            }
            SeenUnit::Decibels => {
                let is_of_a_figure = |at: usize| {
                    matches!(self.what(at), Some(What::Sign(Sign::Dash | Sign::Plus | Sign::Bound)))
                };
                is_spaced(at) && before.is_some_and(is_of_a_figure)
            }
            SeenUnit::Feet | SeenUnit::Metres => {
                let may_join = |sign: &usize| {
                    let joins = [Sign::Dash, Sign::Range, Sign::Colon, Sign::Dot, Sign::Comma, Sign::Slash];
                    matches!(self.what(*sign), Some(What::Sign(sign)) if joins.contains(sign))
                        && !(is_spaced(*sign) && is_spaced(at))
                };
                let is_behind_a_unit = |sign: usize| {
                    sign.checked_sub(1).is_some_and(|unit| matches!(self.what(unit), Some(What::Unit(_))))
                };
                before.filter(may_join).is_some_and(|sign| !is_behind_a_unit(sign))
            }
            SeenUnit::Outputs | SeenUnit::Volts => false,
        }
    }

    /// Whether a number ends the name of a cable's series: “RG-59”, “SERIES 6”.
    fn ends_a_series(&self, at: usize) -> bool {
        let term = |back: usize| at.checked_sub(back).and_then(|at| self.tokens.get(at)?.term());
        let is_behind_a_dash =
            at.checked_sub(1).is_some_and(|at| self.what(at) == Some(&What::Sign(Sign::Dash)));
        let is_name = |term| matches!(term, Some(Term::SeriesWord | Term::Jacket));
        let names = is_name(term(1)) || is_behind_a_dash && is_name(term(2));
        let written = self.tokens.get(at).and_then(|token| self.text.get(token.start..token.end));
        let is_a_series = |written: &str| {
            let series = written.parse().ok().and_then(CableSeries::numbered);
            series.is_some_and(|series| series.name() == written)
        };
        names && written.is_some_and(is_a_series)
    }
}

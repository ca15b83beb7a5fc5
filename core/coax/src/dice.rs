//! Seeded draws: the same seed, draw number and key give the same values for ever and on every machine.
//!
//! The draws of each single throw are spread evenly: of the first two one lies in either half, of the first four one in each
//! quarter, and so on (a van der Corput sequence), each throw's in an order and at places of its own (scrambled: A. B. Owen,
//! "Randomly permuted (t,m,s)-nets and (t,s)-sequences", 1995, by the hash of S. Laine and T. Karras as it stands in B. Burley,
//! "Practical Hash-based Owen Scrambling", Journal of Computer Graphics Techniques 9(4), 2020; its numbers from memory). So fewer
//! draws say as much.
//!
//! Each part of a house throws its own dice, keyed by where the part stands in the house. So a change to one part leaves the
//! draws of all others as they were, and a house before and after a change can be compared draw by draw.

use rand_chacha::ChaCha8Rng;
use rand_core::{Rng, SeedableRng};

use crate::span::Span;

/// A throw that has a name, so that it can be thrown again while all others stay as they are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Throw {
    /// How long a run of cable is.
    Length,
    /// Of which series it is, where nobody could read that.
    Series,
}

/// A source of drawn values for one part (or one link) in one draw.
#[derive(Debug, Clone)]
pub struct Dice {
    /// Two seeds for each throw: how its draws are put in another order, and where each of them lies.
    stream: ChaCha8Rng,
    draw: u32,
    likely_only: bool,
    /// The throw that shows something else than these dice did at first.
    again: Option<Throw>,
}

/// The streams of a key: its throws, those beside them, and those that are thrown again.
const BESIDE: u64 = 1;
const AGAIN: u64 = 2;

impl Dice {
    /// The dice of draw number `draw` under `seed` for whatever `key` names (a part's place in the house, say).
    pub fn thrown(seed: u64, draw: u64, key: [u8; 16]) -> Self {
        let mut bytes = [0; 32];
        for (to, from) in bytes.iter_mut().zip(seed.to_le_bytes().into_iter().chain(key)) {
            *to = from;
        }
        let draw = u32::try_from(draw % (1 << 32)).unwrap_or(u32::MAX);
        Self { stream: ChaCha8Rng::from_seed(bytes), draw, likely_only: false, again: None }
    }

    /// Dice that give every range's likely value. Phases, of which none is likelier than another, are still drawn.
    pub fn likely(key: [u8; 16]) -> Self {
        Self { likely_only: true, ..Self::thrown(0, u64::MAX, key) }
    }

    /// Further dice under the same key, whatever was thrown so far: what they show shifts nothing that these show.
    #[must_use]
    pub fn beside(&self) -> Self {
        let mut stream = self.stream.clone();
        stream.set_stream(BESIDE);
        stream.set_word_pos(0);
        Self { stream, ..*self }
    }

    /// These dice with one throw thrown again: it shows something else, which hangs on nothing that they show otherwise and is
    /// spread over the draws as evenly; all other throws show what they showed.
    #[must_use]
    pub fn with_again(self, throw: Throw) -> Self {
        Self { again: Some(throw), ..self }
    }

    /// Whether these dice give every range's likely value.
    pub fn is_likely(&self) -> bool {
        self.likely_only
    }

    /// A value evenly spread over 0 up to (not including) 1.
    pub fn unit(&mut self) -> f64 {
        let (order, place) = (self.stream.next_u32(), self.stream.next_u32());
        let among = scrambled(self.draw.reverse_bits(), order).reverse_bits();
        f64::from(scrambled(among, place).reverse_bits()) / 4_294_967_296.0
    }

    /// [`unit`](Self::unit), by a throw that has a name.
    pub fn unit_of(&mut self, throw: Throw) -> f64 {
        let at = self.stream.get_word_pos();
        let first = self.unit();
        if self.again != Some(throw) {
            return first;
        }
        // As far on in its stream: each throw has seeds of its own there, too.
        let mut stream = self.stream.clone();
        stream.set_stream(AGAIN);
        stream.set_word_pos(at);
        Self { stream, ..*self }.unit()
    }

    /// Whether something of these odds (0 to 1) is so: one throw. Dice that give likely values say what is likelier.
    pub fn chance(&mut self, odds: f64) -> bool {
        let shown = self.unit();
        if self.likely_only { odds > 0.5 } else { shown < odds }
    }

    /// A phase in radians, evenly spread over a full turn.
    pub fn phase(&mut self) -> f64 {
        self.unit() * std::f64::consts::TAU
    }

    /// A value of `span`, by its triangular distribution (or its likely value). Always consumes one throw, so that
    /// a range made exact does not shift the values drawn after it.
    pub fn span(&mut self, span: Span) -> f64 {
        let p = self.unit();
        if self.likely_only { span.likely } else { span.quantile(p) }
    }

    /// [`span`](Self::span), by a throw that has a name.
    pub fn span_of(&mut self, throw: Throw, span: Span) -> f64 {
        let p = self.unit_of(throw);
        if self.likely_only { span.likely } else { span.quantile(p) }
    }
}

/// The digits of a number in base 2, the lowest first, each turned over or not as those before it and the seed decide.
fn scrambled(mut digits: u32, seed: u32) -> u32 {
    digits = digits.wrapping_add(seed);
    for factor in [0x6c50_b47c, 0xb82f_1e52, 0xc7af_e638, 0x8d22_f6e6] {
        digits ^= digits.wrapping_mul(factor);
    }
    digits
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_key_gives_the_same_values_and_another_key_others() {
        let values = |key: u8| {
            let mut dice = Dice::thrown(7, 3, [key; 16]);
            [dice.unit(), dice.phase(), dice.span(Span::new(1.0, 2.0, 5.0))].map(f64::to_bits)
        };
        assert_eq!(values(1), values(1));
        assert_ne!(values(1), values(2));
    }

    /// Of so many draws as a power of two each part of a range gets its own, for every throw and key; and no two throws go together.
    #[test]
    fn draws_are_spread_evenly_over_a_range_and_apart_from_each_other() {
        for key in 0..50 {
            let shown = |draw| {
                let mut dice = Dice::thrown(3, draw, [key; 16]);
                [dice.unit(), dice.unit(), dice.beside().unit()]
            };
            let draws: Vec<_> = (0..256).map(shown).collect();
            for (throw, count) in [(0, 256_u16), (1, 64), (2, 16)] {
                let part = |of: &[f64; 3]| (of[throw] * f64::from(count)).floor();
                let mut parts: Vec<f64> = draws.iter().take(count.into()).map(part).collect();
                parts.sort_by(f64::total_cmp);
                assert!(
                    parts.iter().zip(0..).all(|(part, at)| (part - f64::from(at)).abs() < 0.5),
                    "{parts:?}"
                );
            }
            let product: f64 = draws.iter().map(|of| (of[0] - 0.5) * (of[1] - 0.5)).sum::<f64>() / 256.0;
            // Twelve times this is the correlation: of independent ones within 4 / 16.
            assert!((12.0 * product).abs() < 0.25, "key {key}: {product}");
        }
    }

    #[test]
    fn a_range_made_exact_does_not_shift_what_follows() {
        let after = |span: Span| {
            let mut dice = Dice::thrown(1, 1, [0; 16]);
            dice.span(span);
            dice.unit()
        };
        assert_eq!(after(Span::exact(3.0)).to_bits(), after(Span::new(1.0, 3.0, 9.0)).to_bits());
    }

    #[test]
    fn dice_beside_others_show_the_same_at_any_time_and_shift_nothing() {
        let thrown = || Dice::thrown(1, 1, [0; 16]);
        let (mut early, mut late) = (thrown(), thrown());
        let first = late.unit();
        assert_eq!(early.beside().unit().to_bits(), late.beside().unit().to_bits());
        assert_ne!(early.beside().unit().to_bits(), first.to_bits());
        assert_eq!(early.unit().to_bits(), first.to_bits());
    }

    /// Only the throw of that name shows something else, in each draw, and that is spread over the draws as evenly.
    #[test]
    fn one_throw_thrown_again_leaves_all_others() {
        let shown = |draw, again: bool| {
            let dice = Dice::thrown(5, draw, [4; 16]);
            let mut dice = if again { dice.with_again(Throw::Series) } else { dice };
            [dice.unit_of(Throw::Length), dice.unit_of(Throw::Series), dice.unit(), dice.beside().unit()]
        };
        let mut parts = Vec::new();
        let mut product = 0.0;
        for draw in 0..64 {
            let (first, second) = (shown(draw, false), shown(draw, true));
            for other in [0, 2, 3] {
                assert_eq!(first[other].to_bits(), second[other].to_bits());
            }
            assert_ne!(first[1].to_bits(), second[1].to_bits());
            parts.push((second[1] * 64.0).floor());
            product += (first[1] - 0.5) * (second[1] - 0.5) / 64.0;
        }
        parts.sort_by(f64::total_cmp);
        assert!(parts.iter().zip(0..).all(|(part, at)| (part - f64::from(at)).abs() < 0.5), "{parts:?}");
        // Twelve times this is the correlation: of independent ones within 4 / 8.
        assert!((12.0 * product).abs() < 0.5, "{product}");
    }

    #[test]
    fn likely_dice_give_the_likely_value() {
        assert_eq!(Dice::likely([9; 16]).span(Span::new(1.0, 3.0, 10.0)).to_bits(), 3.0_f64.to_bits());
    }
}

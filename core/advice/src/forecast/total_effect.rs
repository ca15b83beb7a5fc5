//! How much of the spread of a figure hangs on one of several unknowns: its total effect, by Jansen's estimator.
//!
//! Everything is thrown once, and then that one unknown again, all else as it was: half the mean square of what the figure
//! differs by is the variance that is left while only this unknown is open (T. Homma and A. Saltelli, "Importance measures in
//! global sensitivity analysis of nonlinear models", Reliability Engineering and System Safety 52, 1996; the estimator:
//! M. J. W. Jansen, "Analysis of variance designs for model output", Computer Physics Communications 117, 1999; held against
//! others by A. Saltelli and others, "Variance based sensitivity analysis of model output. Design and estimator for the total
//! sensitivity index", Computer Physics Communications 181, 2010, table 2 (f)). It takes one more look at each draw that was
//! made for each unknown, and nothing of how the figure comes about.

/// What one unknown moves, gathered draw by draw.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct TotalEffect {
    squares: f64,
    draws: u32,
}

impl TotalEffect {
    /// A draw of everything, and the same with the unknown thrown again. Of an unknown that is one of two things the same is
    /// looked at in the other: thrown again it would be that one with this chance, and else as it was. So no draw is spent on
    /// what stays as it was; where it is one of many things, the chance is 1.
    pub(crate) fn add(&mut self, as_thrown: f64, again: f64, chance: f64) {
        self.squares += chance * (as_thrown - again).powi(2);
        self.draws += 1;
    }

    /// The variance.
    pub(crate) fn variance(self) -> f64 {
        self.squares / (2.0 * f64::from(self.draws.max(1)))
    }

    /// Its root, in the unit of the figure: how far it typically lies to either side of what is expected.
    pub(crate) fn deviation(self) -> f64 {
        self.variance().sqrt()
    }
}

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use coax::{Dice, Throw};

    use super::*;

    /// T. Ishigami and T. Homma, "An importance quantification technique in uncertainty analysis for computer models", 1990, with
    /// a = 7 and b = 0.1.
    fn ishigami([x1, x2, x3]: [f64; 3]) -> f64 {
        x1.sin() + 7.0 * x2.sin().powi(2) + 0.1 * x3.powi(4) * x1.sin()
    }

    /// Its total effects in closed form: with x1 all that holds it, with x2 its square, with x3 what it shares with x1.
    const TOTAL: [f64; 3] = [7.719_6, 6.125, 3.373_7];

    /// Three unknowns from -pi to pi; one of them thrown again.
    fn shown(seed: u64, draw: u64, again: Option<usize>) -> [f64; 3] {
        std::array::from_fn(|unknown| {
            let dice = Dice::thrown(seed, draw, [u8::try_from(unknown).unwrap(); 16]);
            let mut dice = if again == Some(unknown) { dice.with_again(Throw::Length) } else { dice };
            PI * (2.0 * dice.unit_of(Throw::Length) - 1.0)
        })
    }

    fn estimated(seed: u64, draws: u64, unknown: usize) -> f64 {
        let mut effect = TotalEffect::default();
        for draw in 0..draws {
            let [first, second] = [None, Some(unknown)].map(|again| ishigami(shown(seed, draw, again)));
            effect.add(first, second, 1.0);
        }
        effect.variance()
    }

    #[test]
    fn the_closed_form_of_a_published_function_is_found() {
        // The closed form, worked out anew from a and b.
        let [a, b] = [7.0, 0.1_f64];
        let of_three = 8.0 * b * b * PI.powi(8) / 225.0;
        let known = [0.5 * (1.0 + b * PI.powi(4) / 5.0).powi(2) + of_three, a * a / 8.0, of_three];
        for (unknown, (known, total)) in known.into_iter().zip(TOTAL).enumerate() {
            assert!((known - total).abs() < 1e-3, "{known} {total}");
            let found = estimated(1, 1 << 15, unknown);
            assert!((found / known - 1.0).abs() < 0.02, "x{}: {found} for {known}", unknown + 1);
        }
    }

    /// With as few draws as a house gets it is right on the average, not only in the long run.
    #[test]
    fn few_draws_are_right_on_the_average() {
        for (unknown, known) in TOTAL.into_iter().enumerate() {
            let mean = (0..600).map(|seed| estimated(seed, 32, unknown)).sum::<f64>() / 600.0;
            assert!((mean / known - 1.0).abs() < 0.04, "x{}: {mean} for {known}", unknown + 1);
        }
    }

    /// What is so three times in ten, and makes 10 more: p (1 - p) 10^2, the variance of a single throw of that.
    #[test]
    fn one_of_two_things_is_looked_at_in_the_other() {
        let mut effect = TotalEffect::default();
        for draw in 0..10 {
            let [as_thrown, otherwise] = if draw < 3 { [10.0, 0.0] } else { [0.0, 10.0] };
            effect.add(as_thrown, otherwise, 2.0 * 0.3 * 0.7);
        }
        assert!((effect.variance() - 21.0).abs() < 1e-12 && (effect.deviation().powi(2) - 21.0).abs() < 1e-9);
    }
}

//! Amplifiers of which nobody knows whether they have a by-pass: a house with one is two, and each draw is of either.

use coax::Dice;
use coax::rated::{ByPass, Rating};
use facts::fact::SubjectId;

use super::circuit::{Circuit, Terminal};
use super::outcome::CostAt;

/// Whether nobody knows of a by-pass here.
fn is_unknown(rated: &Rating) -> bool {
    matches!(rated, Rating::Amplifier(rating) if matches!(rating.bypass, ByPass::Perhaps { .. }))
}

impl Circuit {
    /// The amplifiers on the way between two adapters of which nobody knows whether they have a by-pass.
    pub(super) fn unknown_by_passes(&self, from: SubjectId, to: SubjectId) -> Vec<SubjectId> {
        let way = self.way(Terminal::Adapter(from), Terminal::Adapter(to));
        let unknown = way.into_iter().filter(|step| self.rated(*step).is_some_and(is_unknown));
        unknown
            .filter_map(|step| match self.place_of(step) {
                CostAt::Part(id) => Some(id),
                CostAt::RunTo(_) => None,
            })
            .collect()
    }

    /// This circuit where every amplifier of which nobody knows it has a by-pass, or none has.
    pub(super) fn in_world(&self, there: bool) -> Self {
        let mut world = self.clone();
        for piece in &mut world.pieces {
            if let Rating::Amplifier(rating) = &mut piece.rated {
                rating.bypass = rating.bypass.in_world(there);
            }
        }
        world
    }

    /// Whether a piece is the same in both worlds, with the same dice.
    pub(super) fn is_alike_in_worlds(&self, piece: usize) -> bool {
        self.pieces.get(piece).is_some_and(|piece| !is_unknown(&piece.rated))
    }

    /// Which of the two worlds these dice show; `None` where some have one and some have not.
    pub(super) fn world_shown(&self, throw: impl Fn([u8; 16]) -> Dice) -> Option<bool> {
        let mut shown = self.pieces.iter().filter_map(|piece| match &piece.rated {
            Rating::Amplifier(rating) if is_unknown(&piece.rated) => {
                Some(rating.shows_by_pass(&throw(piece.key)))
            }
            _ => None,
        });
        let first = shown.next()?;
        shown.all(|other| other == first).then_some(first)
    }
}

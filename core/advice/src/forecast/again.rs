//! What an unknown may turn out to be, thrown again: the piece that it is about, drawn with the same dice but for that.

use coax::rated::{AmplifierRating, ByPass, SplitterRating, TapRating};
use coax::trade::{EDGE_TOLERANCE, EXTENDED_D_HIGH, LABELS_BEGIN};
use coax::{Megahertz, Model, Throw};

use super::circuit::{Circuit, Piece};
use super::outcome::CostAt;
use super::pieces::Rated;
use super::throws::Throws;
use crate::error::AdviceError;

/// Something open of which the circuit knows what it may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Open {
    /// Where.
    pub(crate) at: CostAt,
    /// What of it.
    pub(crate) what: What,
}

/// What of a part or run is open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum What {
    /// How long a run is.
    Length,
    /// Of which series it is.
    Series,
    /// Whether an amplifier has a by-pass.
    ByPass,
    /// Whether the label of a splitter or tap says that it is made for the network's whole band.
    Label,
}

/// The chance that a label of which nobody knows says that a part is made for the network's whole band; or, where it was read
/// with doubt, that it says so and does not, or the other way round. Nobody publishes it: even odds are those of which least
/// is known, and weigh it most (our own choice).
const LABEL_ODDS: f64 = 0.5;

/// How a piece is drawn again.
pub(super) struct Again {
    pub(super) piece: usize,
    how: How,
}

enum How {
    /// One of its throws is thrown again.
    Throw(Throw),
    /// The amplifier is as it is not in the draw: with a by-pass, or without.
    OtherWorld(AmplifierRating, f64),
    /// It is what its label may say, or may say instead.
    Other(Box<Rated>, f64),
}

impl Again {
    /// `None` for what is not on the circuit, or is no such thing there.
    pub(super) fn of(circuit: &Circuit, open: Open) -> Option<Self> {
        let here = |(_, piece): &(usize, &Piece)| piece.at == open.at;
        let found = circuit
            .pieces
            .iter()
            .enumerate()
            .filter(here)
            .find_map(|(at, piece)| Some((at, How::of(open.what, &piece.rated)?)));
        found.map(|(piece, how)| Self { piece, how })
    }

    /// The piece drawn again, and with which chance a throw of the unknown gives it.
    pub(super) fn draw(&self, piece: &Piece, throws: &Throws) -> Result<(Model, f64), AdviceError> {
        let dice = throws.dice(piece.key);
        let two = |odds: f64| 2.0 * odds * (1.0 - odds);
        Ok(match &self.how {
            How::Throw(throw) => (piece.rated.draw(&mut dice.with_again(*throw))?, 1.0),
            How::OtherWorld(rating, odds) => {
                let bypass = rating.bypass.in_world(!rating.shows_by_pass(&dice));
                let other = AmplifierRating { bypass, ..rating.clone() };
                (Rated::Amplifier(other).draw(&mut throws.dice(piece.key))?, two(*odds))
            }
            How::Other(other, odds) => (other.draw(&mut throws.dice(piece.key))?, two(*odds)),
        })
    }
}

impl How {
    /// `None` where the piece is of another kind, or that is known of it.
    fn of(what: What, rated: &Rated) -> Option<Self> {
        match (what, rated) {
            (What::Length, Rated::Cable(_)) => Some(Self::Throw(Throw::Length)),
            (What::Series, Rated::Cable(_)) => Some(Self::Throw(Throw::Series)),
            (What::ByPass, Rated::Amplifier(rating)) => match rating.bypass {
                ByPass::Perhaps { odds, .. } => Some(Self::OtherWorld(rating.clone(), odds)),
                ByPass::None | ByPass::There(_) => None,
            },
            (What::Label, Rated::Splitter(rating)) => {
                let band = other_band(rating.band);
                let for_moca = rating.for_moca.filter(|is| !is || band.is_some());
                let other = SplitterRating { band, for_moca, ..rating.clone() };
                Some(Self::Other(Box::new(Rated::Splitter(other)), LABEL_ODDS))
            }
            (What::Label, Rated::Tap(rating)) => {
                let band = other_band(rating.band);
                let for_moca = rating.for_moca.filter(|is| !is || band.is_some());
                let other = TapRating { band, for_moca, ..rating.clone() };
                Some(Self::Other(Box::new(Rated::Tap(other)), LABEL_ODDS))
            }
            _ => None,
        }
    }
}

/// What a label may say instead: that it is made for the whole band, or, where it seems to say that, as if nobody could read it; then
/// it does not say that it is made for this network either.
fn other_band(band: Option<(Megahertz, Megahertz)>) -> Option<(Megahertz, Megahertz)> {
    let is_whole = band.is_some_and(|(_, top)| top >= EXTENDED_D_HIGH - EDGE_TOLERANCE);
    (!is_whole).then_some((LABELS_BEGIN, EXTENDED_D_HIGH))
}

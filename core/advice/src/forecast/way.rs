//! The way between two terminals of a circuit, piece by piece.

use std::collections::HashMap;

use coax::model::Model;
use coax::{CoaxError, Dice};

use super::circuit::{At, Circuit, Terminal};
use super::outcome::CostAt;
use super::pieces::Rated;

/// A piece on a way, and the ports by which the way comes in and goes out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct OnWay {
    /// Which piece.
    piece: usize,
    /// The port of the side that the way comes from.
    pub(super) entered: usize,
    /// The port of the side that it goes to.
    pub(super) left: usize,
}

impl OnWay {
    /// Whether the way comes up by one leg and goes down by another: port 0 of every piece faces the street.
    pub(super) fn turns(self) -> bool {
        self.entered != 0 && self.left != 0
    }
}

impl Circuit {
    /// The way from one terminal to another; empty where there is none.
    pub(super) fn way(&self, from: Terminal, to: Terminal) -> Vec<OnWay> {
        let (Some(from), Some(to)) = (self.terminals.get(&from), self.terminals.get(&to)) else {
            return Vec::new();
        };
        // Every join names the port that feeds first, and port 0 of the piece that is fed second.
        let fed_by: HashMap<usize, At> =
            self.joins.iter().map(|(feeds, (piece, _))| (*piece, *feeds)).collect();
        let up = |from: At| std::iter::successors(Some(from), |(piece, _)| fed_by.get(piece).copied());
        let (rising, falling): (Vec<At>, Vec<At>) = (up(*from).collect(), up(*to).collect());
        let meets = |(piece, _): &At| falling.iter().position(|(other, _)| other == piece);
        let Some((turn, below)) = rising.iter().enumerate().find_map(|(at, here)| Some((at, meets(here)?)))
        else {
            return Vec::new();
        };
        let ups = rising.iter().take(turn).map(|(piece, entered)| OnWay {
            piece: *piece,
            entered: *entered,
            left: 0,
        });
        let bend = rising.get(turn).zip(falling.get(below)).map(|((piece, entered), (_, left))| OnWay {
            piece: *piece,
            entered: *entered,
            left: *left,
        });
        let downs = falling.iter().take(below).rev();
        let downs = downs.map(|(piece, left)| OnWay { piece: *piece, entered: 0, left: *left });
        ups.chain(bend).chain(downs).collect()
    }

    /// The part or run that a piece on a way belongs to.
    pub(super) fn place_of(&self, step: OnWay) -> CostAt {
        // A way holds pieces of this very circuit.
        self.pieces.get(step.piece).map_or(CostAt::Part(self.head), |piece| piece.at)
    }

    /// What a piece on a way is rated for.
    pub(super) fn rated(&self, step: OnWay) -> Option<&Rated> {
        self.pieces.get(step.piece).map(|piece| &piece.rated)
    }

    /// A piece on a way, drawn.
    pub(super) fn model_of(
        &self,
        step: OnWay,
        throw: impl Fn([u8; 16]) -> Dice,
    ) -> Option<Result<Model, CoaxError>> {
        self.pieces.get(step.piece).map(|piece| piece.rated.draw(&mut throw(piece.key)))
    }
}

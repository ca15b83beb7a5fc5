//! A house as a circuit: one tree of it as pieces that a draw makes concrete.
//!
//! Every piece throws its own dice, keyed by where the record that it belongs to stands, so that a change to one part
//! leaves the draws of all others as they were.

use std::sync::Arc;

use coax::{Complex64, Dice, End, Model, Network, OutletIndex, PartIndex, Tree};
use facts::fact::SubjectId;
use indexmap::IndexMap;

use super::outcome::CostAt;
use super::pieces::{Ending, Rated};
use crate::error::AdviceError;

/// A place on the circuit where a result is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) enum Terminal {
    /// The adapter at an outlet.
    Adapter(SubjectId),
    /// The street side of an entry.
    Street(SubjectId),
    /// The TV, box, receiver or modem at an outlet.
    Device(SubjectId),
    /// A meter in place of whatever hangs there.
    Meter,
}

/// A piece of a circuit.
#[derive(Clone)]
pub(super) struct Piece {
    pub(super) key: [u8; 16],
    /// The part or run that it belongs to.
    pub(super) at: CostAt,
    pub(super) rated: Rated,
}

/// A port of a piece.
pub(super) type At = (usize, usize);

/// One tree as pieces, joins and ends.
#[derive(Clone)]
pub(crate) struct Circuit {
    /// The part at the head of the tree.
    pub(super) head: SubjectId,
    pub(super) pieces: Vec<Piece>,
    pub(super) joins: Vec<(At, At)>,
    pub(super) endings: Vec<(At, Ending, [u8; 16])>,
    pub(super) terminals: IndexMap<Terminal, At>,
}

impl Circuit {
    /// The places where results are wanted.
    pub(crate) fn terminals(&self) -> impl Iterator<Item = Terminal> + '_ {
        self.terminals.keys().copied()
    }

    /// This circuit with every range drawn by the dice that `throw` gives for a key.
    pub(crate) fn drawn(&self, throw: impl Fn([u8; 16]) -> Dice) -> Result<DrawnCircuit, AdviceError> {
        self.drawn_of(self.models(&throw, |_| None)?, throw)
    }

    /// Its pieces, each drawn, or one that is known already.
    pub(super) fn models(
        &self,
        throw: impl Fn([u8; 16]) -> Dice,
        known: impl Fn(usize) -> Option<Arc<Model>>,
    ) -> Result<Vec<Arc<Model>>, AdviceError> {
        let drawn = self.pieces.iter().enumerate().map(|(at, piece)| match known(at) {
            Some(model) => Ok(model),
            None => Ok(Arc::new(piece.rated.draw(&mut throw(piece.key))?)),
        });
        drawn.collect()
    }

    /// What one of its endings sends back in a draw; nothing where there is none of that number.
    pub(super) fn sent_back(&self, ending: usize, throw: impl Fn([u8; 16]) -> Dice) -> Complex64 {
        let found = self.endings.get(ending);
        found.map_or(Complex64::ZERO, |(_, ending, key)| ending.draw(&mut throw(*key)).reflection())
    }

    /// This circuit of pieces that are drawn.
    pub(super) fn drawn_of(
        &self,
        models: Vec<Arc<Model>>,
        throw: impl Fn([u8; 16]) -> Dice,
    ) -> Result<DrawnCircuit, AdviceError> {
        let end = |ending: Ending, key| ending.draw(&mut throw(key));
        let (network, terminals) = self.joined(models, end)?;
        if self.pieces.is_empty() {
            return Err(AdviceError::Inner("empty circuit"));
        }
        Ok(DrawnCircuit { tree: network.tree(PartIndex(0))?, terminals })
    }

    /// The pieces joined; a piece's number is its part's.
    pub(super) fn joined(
        &self,
        models: Vec<Arc<Model>>,
        drawn: impl Fn(Ending, [u8; 16]) -> End,
    ) -> Result<(Network, IndexMap<Terminal, OutletIndex>), AdviceError> {
        let mut network = Network::new();
        let indices: Vec<PartIndex> = models.into_iter().map(|model| network.add_shared(model)).collect();
        // Every index below was handed out by the builder for this very list of pieces.
        let index =
            |at: At| indices.get(at.0).copied().map(|part| (part, at.1)).ok_or(AdviceError::Inner("piece"));
        for (a, b) in &self.joins {
            let ((a, port_a), (b, port_b)) = (index(*a)?, index(*b)?);
            network.join(a, port_a, b, port_b);
        }
        for (at, ending, key) in &self.endings {
            let (part, port) = index(*at)?;
            network.end(part, port, drawn(*ending, *key));
        }
        let mut terminals = IndexMap::new();
        for (terminal, at) in &self.terminals {
            let (part, port) = index(*at)?;
            terminals.insert(*terminal, network.outlet(part, port));
        }
        Ok((network, terminals))
    }
}

/// A circuit made concrete by one draw.
pub(crate) struct DrawnCircuit {
    /// The tree to solve.
    pub tree: Tree,
    /// Where the terminals are in it.
    pub terminals: IndexMap<Terminal, OutletIndex>,
}

/// A key for something that belongs to a record but is not the record itself.
pub(super) fn variant(mut key: [u8; 16], which: u8) -> [u8; 16] {
    if let Some(last) = key.last_mut() {
        *last ^= which;
    }
    if let Some(first) = key.first_mut() {
        *first ^= 0xA5;
    }
    key
}

//! How a circuit is laid, seen from one of its terminals, whatever is drawn.

use std::sync::Arc;

use coax::{End, Model, PartIndex, Tree};

use super::circuit::{Circuit, Terminal};
use crate::error::AdviceError;

/// A circuit seen from one of its terminals.
pub(super) struct Laid {
    pub(super) tree: Tree,
    /// Which of the circuit's endings each of the tree's ends is.
    pub(super) ends: Vec<usize>,
}

impl Laid {
    /// `None` where another terminal is nearer. The pieces may be drawn in any way: only how they hang together is looked at.
    pub(super) fn from(
        circuit: &Circuit,
        terminal: Terminal,
        models: Vec<Arc<Model>>,
    ) -> Result<Option<Self>, AdviceError> {
        let (network, terminals) = circuit.joined(models, |_, _| End::Open)?;
        let (Some(at), Some(outlet)) = (circuit.terminals.get(&terminal), terminals.get(&terminal)) else {
            return Ok(None);
        };
        let tree = network.tree(PartIndex(at.0))?;
        if tree.root_outlet() != Some(*outlet) {
            return Ok(None);
        }
        let ending = |(part, port): (PartIndex, usize)| {
            let found = circuit.endings.iter().position(|(at, _, _)| *at == (part.0, port));
            found.ok_or(AdviceError::Inner("end"))
        };
        let ends = tree.ends().into_iter().map(ending).collect::<Result<_, _>>()?;
        Ok(Some(Self { tree, ends }))
    }
}

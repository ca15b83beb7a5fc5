//! A house seen from its bridge's adapter: how it is laid from there, and the powers of the pairs that are asked for.

use std::sync::Arc;

use coax::{Branches, Dice, Model, OutletIndex};

use super::circuit::{Laid, Terminal};
use super::drawn_house::House;
use super::solved::{Pairs, Solved};
use super::throws::Throws;
use crate::error::AdviceError;

/// A house laid from its bridge.
pub(super) struct FromBridge {
    laid: Laid,
    /// The outlets between which and the bridge's something is asked; for each pair that is asked for which of them, and whether it
    /// leads there, nothing for one between two others.
    outlets: Vec<OutletIndex>,
    pairs: Arc<[Option<(usize, bool)>]>,
}

impl FromBridge {
    /// `None` where it cannot be seen from its bridge.
    pub(super) fn of(house: &House<'_>) -> Result<Option<Self>, AdviceError> {
        let bridge = Terminal::Adapter(house.bridge.outlet);
        let Some(laid) = house.circuit.laid_from(bridge, |key| Dice::thrown(0, 0, key))? else {
            return Ok(None);
        };
        let root = laid.tree.root_outlet();
        let mut outlets: Vec<OutletIndex> = Vec::new();
        let mut pairs = Vec::new();
        for &(to, from) in &house.asked.outlets {
            let (other, leads) = if Some(from) == root { (to, true) } else { (from, false) };
            if Some(to) != root && Some(from) != root {
                pairs.push(None);
                continue;
            }
            let known = outlets.iter().position(|known| *known == other);
            let at = known.unwrap_or_else(|| {
                outlets.push(other);
                outlets.len() - 1
            });
            pairs.push(Some((at, leads)));
        }
        Ok(Some(Self { laid, outlets, pairs: pairs.into() }))
    }

    /// What is on its ends in one draw, as [`FromBridge::solved`] takes it.
    pub(super) fn ends(&self, house: &House<'_>, throws: &Throws) -> Vec<coax::Complex64> {
        house.circuit.ends(&self.laid.ends, |key| throws.dice(key))
    }

    /// The powers of its pairs, of parts that are drawn.
    pub(super) fn solved(
        &self,
        branches: &mut Branches,
        models: &[Arc<Model>],
        ends: &[coax::Complex64],
        errors: &[f64],
    ) -> Result<Solved, AdviceError> {
        let powers = branches.powers(&self.laid.tree, models, ends, &self.outlets)?;
        Ok(Solved::new(Pairs::Together(powers, Arc::clone(&self.pairs)), errors.to_vec()))
    }
}

//! A house seen from its bridge's adapter: how it is laid from there, and the powers of the pairs that are asked for.

use std::sync::Arc;

use coax::{Branches, Complex64, Model, OutletIndex};

use super::circuit::Terminal;
use super::drawn_house::House;
use super::laid::Laid;
use super::solved::{Pairs, Solved};
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
    /// `None` where it cannot be seen from its bridge. Its pieces may be drawn in any way.
    pub(super) fn of(house: &House<'_>, models: Vec<Arc<Model>>) -> Result<Option<Self>, AdviceError> {
        let bridge = Terminal::Adapter(house.bridge.outlet);
        let Some(laid) = Laid::from(&house.circuit, bridge, models)? else { return Ok(None) };
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

    /// What is on its ends, as [`FromBridge::solved`] takes it; `sends` says what each of the circuit's endings sends back.
    pub(super) fn ends(&self, sends: impl FnMut(usize) -> Complex64) -> Vec<Complex64> {
        self.laid.ends.iter().copied().map(sends).collect()
    }

    /// The powers of its pairs, of parts that are drawn.
    pub(super) fn solved(
        &self,
        branches: &mut Branches,
        models: &[Arc<Model>],
        ends: &[Complex64],
        errors: &[f64],
    ) -> Result<Solved, AdviceError> {
        let powers = branches.powers(&self.laid.tree, models, ends, &self.outlets)?;
        Ok(Solved::new(Pairs::Together(powers, Arc::clone(&self.pairs)), errors.to_vec()))
    }
}

//! A house seen from its bridge's adapter, and from the street where what leaves it is asked for: how it is laid from there, and the
//! powers of the pairs that are asked for.

use std::sync::Arc;

use coax::{BranchNumbers, Branches, Complex64, Model, NumberedBranches, OutletIndex};

use super::circuit::{Circuit, Terminal};
use super::drawn_house::{House, Told};
use super::laid::Laid;
use super::solved::{Pairs, Solved};
use crate::error::AdviceError;

/// A house laid from where its pairs begin or end: from its bridge first.
pub(super) struct Views {
    views: Vec<View>,
    pairs: Arc<[Option<ByView>]>,
}

/// A house laid from one of its terminals, with the outlets between which and that one something is asked.
struct View {
    laid: Laid,
    outlets: Vec<OutletIndex>,
}

/// Where a pair that is asked for is found: in which view, which of its outlets it leads to or comes from.
#[derive(Debug, Clone, Copy)]
pub(super) struct ByView {
    pub(super) view: usize,
    pub(super) outlet: usize,
    /// Whether it leads there.
    pub(super) leads: bool,
}

impl Views {
    /// `None` where it cannot be seen from its bridge, or from a street that is asked for. Its pieces may be drawn in any way. What
    /// leaves the house is looked for only where all is told.
    pub(super) fn of(
        house: &House<'_>,
        told: Told,
        models: &[Arc<Model>],
    ) -> Result<Option<Self>, AdviceError> {
        let bridge = Terminal::Adapter(house.bridge.outlet);
        let Some(first) = View::of(&house.circuit, bridge, models)? else { return Ok(None) };
        let mut views = vec![first];
        let mut pairs = Vec::new();
        for (&(to, from), (_, to_name)) in house.asked.outlets.iter().zip(&house.asked.names) {
            let mut found = views.iter_mut().enumerate().find_map(|(place, view)| view.sees(place, to, from));
            if found.is_none() && told == Told::All {
                let Some(mut view) = View::of(&house.circuit, Terminal::Street(*to_name), models)? else {
                    return Ok(None);
                };
                found = view.sees(views.len(), to, from);
                views.push(view);
            }
            pairs.push(found);
        }
        Ok(Some(Self { views, pairs: pairs.into() }))
    }

    /// Its branches as they are numbered, view by view, with its pieces and its circuit's endings by their numbers.
    pub(super) fn numbered(
        &self,
        numbers: &mut BranchNumbers,
        pieces: &[usize],
        endings: &[usize],
    ) -> Result<Vec<NumberedBranches>, AdviceError> {
        let number = |ending: &usize| endings.get(*ending).copied().ok_or(AdviceError::Inner("ending"));
        let of_view = |view: &View| {
            let ends = view.laid.ends.iter().map(number).collect::<Result<Vec<_>, _>>()?;
            Ok(numbers.of(&view.laid.tree, pieces, &ends)?)
        };
        self.views.iter().map(of_view).collect()
    }

    /// The powers of its pairs in one draw: `model` gives each of the circuit's pieces as it is drawn, `sends` what each of its
    /// endings sends back. Both are asked only for what is not known yet of these branches.
    pub(super) fn solved(
        &self,
        branches: &mut Branches,
        numbered: &[NumberedBranches],
        mut model: impl FnMut(usize) -> Result<Arc<Model>, AdviceError>,
        mut sends: impl FnMut(usize) -> Complex64,
        errors: &[f64],
    ) -> Result<Solved, AdviceError> {
        let mut powers = Vec::with_capacity(self.views.len());
        for (view, numbered) in self.views.iter().zip(numbered) {
            let Laid { tree, ends } = &view.laid;
            let sends = |end: usize| ends.get(end).map_or(Complex64::ZERO, |ending| sends(*ending));
            powers.push(branches.powers((tree, numbered), &mut model, sends, &view.outlets)?);
        }
        Ok(Solved::new(Pairs::Together(powers, Arc::clone(&self.pairs)), errors.to_vec()))
    }
}

impl View {
    /// `None` where another terminal is nearer.
    fn of(circuit: &Circuit, from: Terminal, models: &[Arc<Model>]) -> Result<Option<Self>, AdviceError> {
        let laid = Laid::from(circuit, from, models.to_vec())?;
        Ok(laid.map(|laid| Self { laid, outlets: Vec::new() }))
    }

    /// A pair as it is seen from here, this being such a view; `None` where it neither begins nor ends here.
    fn sees(&mut self, view: usize, to: OutletIndex, from: OutletIndex) -> Option<ByView> {
        let root = self.laid.tree.root_outlet();
        let (other, leads) = match (Some(from) == root, Some(to) == root) {
            (true, _) => (to, true),
            (false, true) => (from, false),
            (false, false) => return None,
        };
        let known = self.outlets.iter().position(|known| *known == other);
        let outlet = known.unwrap_or_else(|| {
            self.outlets.push(other);
            self.outlets.len() - 1
        });
        Some(ByView { view, outlet, leads })
    }
}

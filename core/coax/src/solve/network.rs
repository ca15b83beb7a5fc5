//! A house's wiring as parts joined port to port, and its check for being a tree.

use std::collections::HashSet;
use std::sync::Arc;

use num_complex::Complex64;

use super::index::{OutletIndex, PartIndex};
use super::plan::{Side, TreePart};
use super::tree::Tree;
use crate::error::CoaxError;
use crate::model::Model;

/// What is on a port that leads nowhere further.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum End {
    /// Nothing: all comes back (reflection +1).
    Open,
    /// A 75-ohm terminator: nothing comes back.
    Matched,
    /// Something of this reflection coefficient.
    Reflection(Complex64),
}

impl End {
    /// What it sends back of a wave of 1.
    pub fn reflection(self) -> Complex64 {
        match self {
            Self::Open => Complex64::ONE,
            Self::Matched => Complex64::ZERO,
            Self::Reflection(reflection) => reflection,
        }
    }
}

#[derive(Debug, Clone, Copy)]
enum Use {
    Joined(usize, usize),
    Ended(End),
    Outlet(usize),
}

/// Parts and what is on each of their ports. Building never fails; [`Network::tree`] checks all of it.
#[derive(Debug, Clone, Default)]
pub struct Network {
    parts: Vec<Arc<Model>>,
    uses: Vec<(usize, usize, Use)>,
    outlets: usize,
}

impl Network {
    /// A network of nothing.
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a part.
    pub fn add(&mut self, model: Model) -> PartIndex {
        self.add_shared(Arc::new(model))
    }

    /// Adds a part of a model that other parts have too: it is evaluated once for all of them.
    pub fn add_shared(&mut self, model: Arc<Model>) -> PartIndex {
        self.parts.push(model);
        PartIndex(self.parts.len() - 1)
    }

    /// Joins two ports.
    pub fn join(&mut self, a: PartIndex, port_a: usize, b: PartIndex, port_b: usize) {
        self.uses.push((a.0, port_a, Use::Joined(b.0, port_b)));
        self.uses.push((b.0, port_b, Use::Joined(a.0, port_a)));
    }

    /// Says what is on a port that leads nowhere.
    pub fn end(&mut self, part: PartIndex, port: usize, end: End) {
        self.uses.push((part.0, port, Use::Ended(end)));
    }

    /// Names a port as an outlet: a 75-ohm device is there (the street at the entry is one too). Results are from
    /// outlet to outlet.
    pub fn outlet(&mut self, part: PartIndex, port: usize) -> OutletIndex {
        self.uses.push((part.0, port, Use::Outlet(self.outlets)));
        self.outlets += 1;
        OutletIndex(self.outlets - 1)
    }

    /// How many parts there are.
    pub fn parts(&self) -> usize {
        self.parts.len()
    }

    /// How many outlets there are.
    pub fn outlets(&self) -> usize {
        self.outlets
    }

    /// Checks that the network is one tree of which every port is spoken for, and roots it. The root decides nothing but
    /// the order of work: the part at the entry is the natural one. A root whose every port is joined is replaced by a part
    /// with an outlet.
    ///
    /// # Errors
    /// [`CoaxError`]: a port that is not there, used twice or left undefined; a loop; a part that is not connected; no outlet;
    /// a reflection that is not finite.
    pub fn tree(&self, root: PartIndex) -> Result<Tree, CoaxError> {
        let ports = self.ports_used()?;
        let is_free = |part: usize| -> Option<usize> {
            let uses = ports.get(part)?;
            let outlet = uses.iter().position(|u| matches!(u, Use::Outlet(_)));
            outlet.or_else(|| uses.iter().position(|u| matches!(u, Use::Ended(_))))
        };
        if root.0 >= self.parts.len() {
            return Err(CoaxError::NoSuchPart { part: root.0, parts: self.parts.len() });
        }
        if self.outlets == 0 {
            return Err(CoaxError::NoOutlet);
        }
        let with_outlet = || self.uses.iter().find(|(_, _, u)| matches!(u, Use::Outlet(_)));
        let Some((start, up_port)) = is_free(root.0)
            .map(|port| (root.0, port))
            .or_else(|| with_outlet().map(|&(part, port, _)| (part, port)))
        else {
            return Err(CoaxError::NoOutlet);
        };
        let (root_reflection, root_outlet) = match ports.get(start).and_then(|uses| uses.get(up_port)) {
            Some(Use::Ended(end)) => (end.reflection(), None),
            Some(Use::Outlet(outlet)) => (Complex64::ZERO, Some(*outlet)),
            _ => return Err(CoaxError::PortLeftUndefined { part: start, port: up_port }),
        };
        let parts = self.walk(&ports, start, up_port)?;
        if parts.len() < self.parts.len() {
            let reached: HashSet<usize> = parts.iter().map(|part| part.original).collect();
            let part = (0..self.parts.len()).find(|part| !reached.contains(part)).unwrap_or_default();
            return Err(CoaxError::NotConnected { part, root: root.0 });
        }
        Ok(Tree::new(parts, root_reflection, root_outlet, self.outlets))
    }

    /// What is on every port of every part.
    fn ports_used(&self) -> Result<Vec<Vec<Use>>, CoaxError> {
        let mut ports: Vec<Vec<Option<Use>>> =
            self.parts.iter().map(|model| vec![None; model.ports()]).collect();
        for &(part, port, used) in &self.uses {
            let parts = self.parts.len();
            let of_part = ports.get_mut(part).ok_or(CoaxError::NoSuchPart { part, parts })?;
            let count = of_part.len();
            let slot = of_part.get_mut(port).ok_or(CoaxError::NoSuchPort { part, port, ports: count })?;
            if slot.is_some() {
                return Err(CoaxError::PortUsedTwice { part, port });
            }
            if let Use::Ended(end) = used
                && !end.reflection().is_finite()
            {
                return Err(CoaxError::BadReflection { part, port });
            }
            *slot = Some(used);
        }
        ports
            .into_iter()
            .enumerate()
            .map(|(part, uses)| {
                uses.into_iter()
                    .enumerate()
                    .map(|(port, used)| used.ok_or(CoaxError::PortLeftUndefined { part, port }))
                    .collect()
            })
            .collect()
    }

    /// The parts in an order in which each stands after the one it hangs on.
    fn walk(&self, ports: &[Vec<Use>], start: usize, up_port: usize) -> Result<Vec<TreePart>, CoaxError> {
        let mut reached = HashSet::from([start]);
        let mut order = vec![(start, up_port)];
        let mut parts: Vec<TreePart> = Vec::with_capacity(self.parts.len());
        while let Some(&(part, up)) = order.get(parts.len()) {
            let (Some(uses), Some(model)) = (ports.get(part), self.parts.get(part)) else { break };
            let mut sides = Vec::with_capacity(uses.len().saturating_sub(1));
            for (_, used) in uses.iter().enumerate().filter(|&(port, _)| port != up) {
                sides.push(match *used {
                    Use::Outlet(outlet) => Side::Outlet(outlet),
                    Use::Ended(end) => Side::End(end.reflection()),
                    Use::Joined(below, below_port) => {
                        if !reached.insert(below) {
                            return Err(CoaxError::Loop { part: below });
                        }
                        order.push((below, below_port));
                        Side::Part(order.len() - 1)
                    }
                });
            }
            parts.push(TreePart { original: part, model: Arc::clone(model), up_port: up, sides });
        }
        Ok(parts)
    }
}

//! The pairs of a house's circuit for which a forecast asks.

use coax::OutletIndex;
use facts::fact::SubjectId;

use super::circuit::{Circuit, Terminal};
use super::nodes::Node;

/// The pairs of terminals that are asked for, each from one to another.
pub(super) struct Asked {
    pub(super) names: Vec<(SubjectId, SubjectId)>,
    /// Where it leaves, and where it enters.
    pub(super) outlets: Vec<(OutletIndex, OutletIndex)>,
}

impl Asked {
    pub(super) fn of(circuit: &Circuit, bridge: SubjectId, rooms: &[Node], entries: &[SubjectId]) -> Self {
        let mut asked = Self { names: Vec::new(), outlets: Vec::new() };
        let outlet = |terminal| circuit.terminals.get_index_of(&terminal).map(OutletIndex);
        let adapter = |outlet_of| outlet(Terminal::Adapter(outlet_of));
        let mut ask = |from, from_at: Option<_>, to, to_at: Option<_>| {
            if let (Some(from_at), Some(to_at)) = (from_at, to_at) {
                asked.outlets.push((to_at, from_at));
                asked.names.push((from, to));
            }
        };
        for room in rooms {
            ask(bridge, adapter(bridge), room.outlet, adapter(room.outlet));
            ask(room.outlet, adapter(room.outlet), bridge, adapter(bridge));
        }
        for entry in entries {
            for node in std::iter::once(bridge).chain(rooms.iter().map(|room| room.outlet)) {
                ask(node, adapter(node), *entry, outlet(Terminal::Street(*entry)));
            }
        }
        asked
    }

    /// Which of the pairs leads from one to another.
    pub(super) fn pair(&self, from: SubjectId, to: SubjectId) -> Option<usize> {
        self.names.iter().position(|names| *names == (from, to))
    }

    /// Those that lead to an entry's street side.
    pub(super) fn to_street(&self, entry: SubjectId) -> impl Iterator<Item = usize> + '_ {
        let leads = move |(_, (_, to)): &(usize, &(SubjectId, SubjectId))| *to == entry;
        self.names.iter().enumerate().filter(leads).map(|(pair, _)| pair)
    }
}

//! The cables of a map and the band under the weakest way: the same in either layout, once a layout says where they run.

use std::collections::BTreeMap;

use super::shown::ShownMap;
use super::{band, line, sign};
use crate::figure::mark::Ink;
use crate::figure::sheet::Sheet;

/// A place, in pixels.
pub(super) type Spot = (f64, f64);

/// The way of the cable that leads to a row: from its feeder, where it leaves the trunk of a fork, to its part. Without a
/// trunk the first two are one.
pub(super) type Way = [Spot; 3];

/// Draws the band, then the cables over it; `way` is that of a row's cable.
pub(super) fn put(sheet: &mut Sheet, map: &ShownMap<'_>, way: impl Fn(usize) -> Option<Way>) {
    let rows = map.rows();
    let on_way = (0..rows.len()).filter(|row| map.node(*row).is_some_and(|node| node.cable_on_way));
    let pieces: Vec<_> = on_way
        .filter_map(&way)
        .flat_map(|[from, bend, to]| [(from, bend), (bend, to)])
        .filter(|(from, to)| from != to)
        .collect();
    band::put(sheet, &pieces);
    // Each piece of a trunk starts where the piece before it ended, so that none lies over another.
    let mut trunks: BTreeMap<usize, Spot> = BTreeMap::new();
    for (place, row) in rows.iter().enumerate() {
        let (Some(node), Some([from, bend, to])) = (map.node(place), way(place)) else { continue };
        let top = row.feeder.and_then(|feeder| trunks.insert(feeder, bend)).unwrap_or(from);
        if from != bend {
            sheet.dip(Ink::Cable);
            sheet.line(top, bend, line::TRUNK);
        }
        line::put(sheet, bend, to, node.cable);
        if from != bend {
            sign::put_port(sheet, bend);
        }
    }
}

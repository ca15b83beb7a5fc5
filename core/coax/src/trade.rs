//! Figures of the trade that several rooms go by: what is on sale, where bands of services end, how near is side by side.
//! What only the physics needs stands in [`estimates`](crate::estimates).

use crate::quantity::{Decibels, Megahertz, Metres};

/// Lower edge of Extended D (SCTE 235 announcement, 14 March 2017).
pub const EXTENDED_D_LOW: Megahertz = Megahertz(1125.0);
/// Upper edge of Extended D (SCTE 235 announcement, 14 March 2017).
pub const EXTENDED_D_HIGH: Megahertz = Megahertz(1675.0);

/// Lower edge of what a dish sends down a cable, the satellite intermediate frequency. EN 50607:2015 and EN 50494:2007 put the
/// user bands of one shared cable between the same edges.
pub const SATELLITE_LOW: Megahertz = Megahertz(950.0);
/// Its upper edge (the same standards).
pub const SATELLITE_HIGH: Megahertz = Megahertz(2150.0);

/// Where the bands on labels begin, and what a modem sends (common practice, no source).
pub const LABELS_BEGIN: Megahertz = Megahertz(5.0);

/// Splitters on sale: legs, and the loss to the weaker legs. 3.5 dB for two legs, 7 for three (unbalanced) and four, 10.5 for
/// eight ("How much signal do I lose going through a splitter?", skywarnforum.org); 9 for six (common practice, no source).
pub const SPLITTERS: [(u8, Decibels); 5] =
    [(2, Decibels(3.5)), (3, Decibels(7.0)), (4, Decibels(7.0)), (6, Decibels(9.0)), (8, Decibels(10.5))];

/// The smallest splitter on sale with so many legs or more, and its loss; `None` where none has so many.
pub fn smallest_splitter(legs: usize) -> Option<(u8, Decibels)> {
    SPLITTERS.into_iter().find(|(size, _)| usize::from(*size) >= legs)
}

/// Two parts with no more cable between them hang side by side (common practice, no source).
pub const SIDE_BY_SIDE: Metres = Metres(3.0);

/// Labels round the edges of bands: a part off by less than this still does its work (common practice, no source).
pub const EDGE_TOLERANCE: Megahertz = Megahertz(25.0);

/// The highest frequency that entry filters on sale pass (data sheet of a ground-block filter, 2019, in the public repository
/// N7Alpha/coaxial-cable-network).
pub const FILTERS_PASS: Megahertz = Megahertz(1002.0);

/// The least that a standard entry filter takes off in the adapters' band (the same sheet).
pub const FILTERS_STOP_BY: Decibels = Decibels(40.0);

/// Where cable services end that were made for DOCSIS 3.0 or older (from memory).
pub const CABLE_TOP: Megahertz = Megahertz(1002.0);

/// Where they end for 3.1, as it is mostly built (1218 and later 1794 as upper edges: broadbandtechreport.com, 2015-06-03).
pub const CABLE_TOP_3_1: Megahertz = Megahertz(1218.0);

/// Where they end for 4.0 (the same report).
pub const CABLE_TOP_4_0: Megahertz = Megahertz(1794.0);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_smallest_splitter_has_the_legs_that_are_asked_for() {
        let legs = |asked| smallest_splitter(asked).map(|(legs, _)| legs);
        assert_eq!([1, 2, 3, 5, 7, 8].map(legs), [2, 2, 3, 6, 8, 8].map(Some));
        assert_eq!(legs(9), None);
    }
}

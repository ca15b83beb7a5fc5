//! Which kind of part or cable a print tells of.

use crate::record::{CableKind, PartKind};

/// The kind of cable that a jacket's series is.
pub const fn cable_printed(series: label::CableSeries) -> CableKind {
    match series {
        label::CableSeries::Series59 => CableKind::FiftyNine,
        label::CableSeries::Series6 => CableKind::Six,
        label::CableSeries::Series7 => CableKind::Seven,
        label::CableSeries::Series11 => CableKind::Eleven,
    }
}

/// The kind of part that a print tells of; none for print that is on no part of its own. A DC block is a barrel: what it
/// holds back stands in its rating.
pub fn kind_printed(printed: label::PartKind) -> Option<PartKind> {
    use label::PartKind as Printed;
    Some(match printed {
        Printed::Splitter | Printed::SatelliteSplitter => PartKind::Splitter,
        Printed::Tap => PartKind::Tap,
        Printed::Amplifier => PartKind::Amplifier,
        Printed::EntryFilter => PartKind::EntryFilter,
        Printed::GroundBlock => PartKind::GroundBlock,
        Printed::Barrel | Printed::DcBlock => PartKind::Barrel,
        Printed::Attenuator => PartKind::Pad,
        Printed::HighPassFilter => PartKind::HighPassFilter,
        Printed::SatelliteCombiner => PartKind::SatelliteCombiner,
        Printed::Terminator => PartKind::Terminator,
        Printed::PowerInserter => PartKind::PowerInserter,
        Printed::WallPlate | Printed::Cable => return None,
    })
}

//! Which cautions belong to which kind of work, most important first.

use super::Caution::{
    self, Blade, Heights, HouseSideOnly, KeepGrounds, LookWhatGoesDead, MainsNear, PoweredLeg, SuppliesFirst,
    SuppliesForTracer, Thunderstorm, WhoDependsOnIt,
};

/// Nothing is unscrewed.
pub(crate) const LOOK: &[Caution] = &[];
/// Something on the coax is unscrewed.
pub(crate) const UNSCREW: &[Caution] = &[WhoDependsOnIt, SuppliesFirst, Thunderstorm];
/// Something next to the entry is unscrewed.
pub(crate) const ENTRY: &[Caution] =
    &[WhoDependsOnIt, SuppliesFirst, HouseSideOnly, KeepGrounds, Thunderstorm, Heights];
/// A look at the entry, from where one stands.
pub(crate) const ENTRY_LOOK: &[Caution] = &[HouseSideOnly, KeepGrounds, Thunderstorm, Heights];
/// A cable end is cut and gets a new connector.
pub(crate) const CONNECTORS: &[Caution] =
    &[WhoDependsOnIt, SuppliesFirst, MainsNear, Blade, Thunderstorm, Heights];
/// Cable is drawn.
pub(crate) const CABLE: &[Caution] = &[WhoDependsOnIt, SuppliesFirst, Thunderstorm, Heights];
/// A cap is screwed on.
pub(crate) const CAP: &[Caution] = &[PoweredLeg, WhoDependsOnIt, SuppliesFirst, Thunderstorm];
/// Cable is followed through the house: by what goes dead, with an amplifier on, or by a tone, with all supplies out.
pub(crate) const TRACE: &[Caution] =
    &[WhoDependsOnIt, LookWhatGoesDead, SuppliesForTracer, HouseSideOnly, Thunderstorm, Heights];
/// Cable is followed, and a cap screwed on where it leads nowhere.
pub(crate) const TRACE_AND_CAP: &[Caution] =
    &[WhoDependsOnIt, LookWhatGoesDead, SuppliesForTracer, PoweredLeg, HouseSideOnly, Thunderstorm, Heights];
/// Two trees are joined.
pub(crate) const JOIN: &[Caution] = &[WhoDependsOnIt, SuppliesFirst, HouseSideOnly, Thunderstorm, Heights];
/// New cable is laid.
pub(crate) const NEW_CABLE: &[Caution] = &[WhoDependsOnIt, SuppliesFirst, Thunderstorm, Heights, MainsNear];

//! The names by which a sheet calls kinds and states. They are those of the record where it has one.

use house::record::{
    CableKind, Connector, EntryKind, EntryState, ModemGeneration, Ownership, PartKind, Plugged, PortEnd,
    ServiceKind, Sharing, SingleCable, TestReach, TvSignal,
};
use phrase::Phrase;

use super::table::one_of;

/// Something that a sheet calls by one of a few names.
pub trait Named: Copy + Sized + 'static {
    /// Every name with what it means.
    const NAMES: &'static [(&'static str, Self)];
}

/// Reads a name. Case, blanks and dashes do not matter: `Ground block` is `ground_block`.
///
/// # Errors
/// The names that are taken, with the nearest.
pub fn named<T: Named>(text: &str) -> Result<T, Phrase> {
    let plain = text.trim().to_lowercase().replace([' ', '-'], "_");
    let found = T::NAMES.iter().find(|(name, _)| *name == plain);
    found
        .map(|(_, value)| *value)
        .ok_or_else(|| one_of("sheet-one-of", text, T::NAMES.iter().map(|(name, _)| *name)))
}

/// The name of something.
pub fn name_of<T: Named + PartialEq>(value: T) -> &'static str {
    T::NAMES.iter().find(|(_, known)| *known == value).map_or("", |(name, _)| *name)
}

impl Named for PartKind {
    const NAMES: &'static [(&'static str, Self)] = &[
        ("entry", Self::Entry),
        ("ground_block", Self::GroundBlock),
        ("entry_filter", Self::EntryFilter),
        ("splitter", Self::Splitter),
        ("tap", Self::Tap),
        ("amplifier", Self::Amplifier),
        ("barrel", Self::Barrel),
        ("outlet", Self::Outlet),
        ("terminator", Self::Terminator),
        ("high_pass_filter", Self::HighPassFilter),
        ("satellite_combiner", Self::SatelliteCombiner),
        ("pad", Self::Pad),
        ("power_inserter", Self::PowerInserter),
        ("unknown", Self::Unknown),
    ];
}

impl Named for CableKind {
    const NAMES: &'static [(&'static str, Self)] = &[
        ("6", Self::Six),
        ("59", Self::FiftyNine),
        ("7", Self::Seven),
        ("11", Self::Eleven),
        ("unknown", Self::Unknown),
    ];
}

impl Named for Connector {
    const NAMES: &'static [(&'static str, Self)] = &[
        ("compression", Self::Compression),
        ("crimp", Self::Crimp),
        ("push_on", Self::PushOn),
        ("twist_on", Self::TwistOn),
        ("corroded", Self::Corroded),
        ("hand_tight", Self::HandTight),
        ("bad_joint", Self::BadJoint),
        ("unknown", Self::Unknown),
    ];
}

impl Named for PortEnd {
    const NAMES: &'static [(&'static str, Self)] =
        &[("capped", Self::Capped), ("open", Self::Open), ("loose_end", Self::LooseEnd)];
}

impl Named for EntryKind {
    const NAMES: &'static [(&'static str, Self)] = &[
        ("cable", Self::Cable),
        ("antenna", Self::Antenna),
        ("satellite", Self::Satellite),
        ("fibre_box", Self::FibreBox),
        ("unknown", Self::Unknown),
    ];
}

impl Named for EntryState {
    const NAMES: &'static [(&'static str, Self)] =
        &[("connected", Self::Connected), ("cut_off", Self::CutOff), ("unknown", Self::Unknown)];
}

impl Named for Plugged {
    const NAMES: &'static [(&'static str, Self)] = &[
        ("tv", Self::Tv),
        ("tv_box", Self::TvBox),
        ("modem", Self::Modem),
        ("moca_gateway", Self::MocaGateway),
        ("satellite_receiver", Self::SatelliteReceiver),
        ("fibre_box", Self::FibreBox),
        ("power_supply", Self::PowerSupply),
        ("other", Self::Other),
    ];
}

impl Named for ServiceKind {
    const NAMES: &'static [(&'static str, Self)] = &[
        ("cable_tv", Self::CableTv),
        ("cable_internet", Self::CableInternet),
        ("antenna_tv", Self::AntennaTv),
        ("satellite_tv", Self::SatelliteTv),
        ("provider_network", Self::ProviderNetwork),
        ("fibre_link", Self::FibreLink),
        ("power_over_coax", Self::PowerOverCoax),
    ];
}

impl Named for TvSignal {
    const NAMES: &'static [(&'static str, Self)] =
        &[("analog", Self::Analog), ("digital", Self::Digital), ("both", Self::Both)];
}

impl Named for ModemGeneration {
    const NAMES: &'static [(&'static str, Self)] =
        &[("3.0", Self::V3_0), ("3.1", Self::V3_1), ("4.0", Self::V4_0)];
}

impl Named for SingleCable {
    const NAMES: &'static [(&'static str, Self)] = &[("en50494", Self::En50494), ("en50607", Self::En50607)];
}

impl Named for Sharing {
    const NAMES: &'static [(&'static str, Self)] =
        &[("through_port", Self::ThroughPort), ("splitter", Self::Splitter)];
}

impl Named for TestReach {
    const NAMES: &'static [(&'static str, Self)] =
        &[("internet", Self::Internet), ("house", Self::House), ("adapter_page", Self::AdapterPage)];
}

impl Named for Ownership {
    const NAMES: &'static [(&'static str, Self)] = &[("own", Self::Own), ("rented", Self::Rented)];
}

/// The MoCA versions as the record writes them.
const VERSIONS: [&str; 5] = ["1.0", "1.1", "2.0", "2.0 bonded", "2.5"];

/// A MoCA version.
///
/// # Errors
/// The versions there are.
pub fn moca_version(text: &str) -> Result<String, Phrase> {
    let found = VERSIONS.iter().find(|version| version.eq_ignore_ascii_case(text));
    found
        .map(|version| (*version).to_owned())
        .ok_or_else(|| one_of("sheet-one-of", text, VERSIONS.iter().copied()))
}

#[cfg(test)]
mod tests {
    use phrase::Arg;
    use serde::Serialize;

    use super::*;

    fn as_in_the_record<T: Named + Serialize>() {
        for (name, value) in T::NAMES {
            assert_eq!(serde_json::to_value(value).unwrap(), *name);
        }
    }

    #[test]
    fn the_sheet_says_it_as_the_record_does() {
        as_in_the_record::<PartKind>();
        as_in_the_record::<Connector>();
        as_in_the_record::<PortEnd>();
        as_in_the_record::<EntryKind>();
        as_in_the_record::<EntryState>();
        as_in_the_record::<Plugged>();
        as_in_the_record::<ServiceKind>();
        as_in_the_record::<Ownership>();
        as_in_the_record::<TvSignal>();
        as_in_the_record::<ModemGeneration>();
        as_in_the_record::<SingleCable>();
        as_in_the_record::<Sharing>();
        as_in_the_record::<TestReach>();
    }

    #[test]
    fn a_name_nearly_right_brings_the_right_one() {
        assert_eq!(named::<PartKind>("Ground block"), Ok(PartKind::GroundBlock));
        assert_eq!(named::<PartKind>("high-pass filter"), Ok(PartKind::HighPassFilter));
        let near = named::<PartKind>("spliter").unwrap_err();
        assert_eq!(near.args.first(), Some(&("near", Arg::Text("splitter".into()))));
        assert_eq!(near.id, "sheet-one-of-near");
        assert_eq!(named::<CableKind>("58").unwrap_err().id, "sheet-one-of-near");
        assert_eq!(named::<PartKind>("quux").unwrap_err().id, "sheet-one-of");
    }
}

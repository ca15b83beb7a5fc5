//! One `[[service]]` of a sheet: what else uses the coax.

use house::record::{ModemBands, OtherNetwork, ServiceKind};
use phrase::Phrase;

use super::draft::{PowerDraft, ServiceDraft, ServiceRow};
use super::names::{moca_version, name_of, named};
use super::quantity::{band, frequency};
use super::several::{MOST_NODES, notes};
use super::table::Section;

/// Reads a service. What cannot be read is noted and left out.
pub fn read<'s>(section: &Section<'s>) -> Option<ServiceDraft<'s>> {
    let kind: Option<ServiceKind> = section.required("kind").and_then(|field| field.parse(named));
    let top_mhz = section.parse("top", frequency);
    let entry = section.field("entry");
    let signal = section.parse("signal", named);
    let modem = read_modem(section);
    // `EN 50494` and `EN50494` are the same.
    let single_cable = section.parse("single_cable", |text| named(&text.replace(' ', "")));
    let network = read_network(section);
    let power = read_power(section);
    let notes = notes(section);
    section.finish();
    let kind = kind?;
    check_kind(section, kind);
    let row =
        ServiceRow { kind, top_mhz, entry: None, signal, modem, single_cable, network, power: None, notes };
    Some(ServiceDraft { row, entry, power })
}

fn read_modem(section: &Section<'_>) -> Option<ModemBands> {
    let modem = section.field("modem")?.table(Phrase::new("sheet-modem"))?;
    let generation = modem.parse("generation", named);
    let upstream_top_mhz = modem.parse("sends_to", frequency);
    modem.finish();
    Some(ModemBands { generation, upstream_top_mhz })
}

fn read_network(section: &Section<'_>) -> Option<OtherNetwork> {
    let network = section.field("network")?.table(Phrase::new("sheet-other-network"))?;
    let version = network.parse("version", moca_version);
    let bands = network.field("bands").map_or_else(Vec::new, |field| field.each());
    let bands = bands.iter().filter_map(|field| field.parse(band)).collect();
    let nodes = network.field("nodes").and_then(|field| field.whole(1, MOST_NODES)).map_or(0, u32::from);
    network.finish();
    Some(OtherNetwork { version, bands, nodes })
}

fn read_power<'s>(section: &Section<'s>) -> Option<PowerDraft<'s>> {
    let power = section.field("power")?.table(Phrase::new("sheet-power"))?;
    let (from, to) = (power.required("from"), power.required("to"));
    power.finish();
    Some(PowerDraft { from: from?, to: to? })
}

/// Fields that belong to some kinds only.
fn check_kind(section: &Section<'_>, kind: ServiceKind) {
    let of_kinds: [(&str, &[ServiceKind]); 5] = [
        ("signal", &[ServiceKind::CableTv, ServiceKind::AntennaTv]),
        ("modem", &[ServiceKind::CableInternet]),
        ("single_cable", &[ServiceKind::SatelliteTv]),
        ("network", &[ServiceKind::ProviderNetwork, ServiceKind::FibreLink]),
        ("power", &[ServiceKind::PowerOverCoax]),
    ];
    for (field, kinds) in of_kinds {
        if section.has(field) && !kinds.contains(&kind) {
            let owners: Vec<_> = kinds.iter().map(|kind| name_of(*kind)).collect();
            let expected = Phrase::new("sheet-of-kinds").text("kinds", owners.join(", "));
            section.refuse(field, name_of(kind), expected);
        }
    }
}

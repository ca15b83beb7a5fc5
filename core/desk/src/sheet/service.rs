//! One `[[service]]` of a sheet: what else uses the coax.

use house::record::{Is, ModemBands, Named, OtherNetwork, Service, ServiceKind};
use phrase::Phrase;

use super::draft::{PowerDraft, ServiceDraft, Told};
use super::edits::id_of;
use super::names::{moca_version, named};
use super::quantity::{band, frequency};
use super::several::{MOST_NODES, notes};
use super::table::Section;

/// Reads a service, which is called by its number. What cannot be read is noted and left out.
pub fn read<'s>(section: &Section<'s>, number: usize) -> Option<ServiceDraft<'s>> {
    let kind: Option<ServiceKind> = section.required("kind").and_then(|field| field.parse(named));
    let top_mhz = section.parse("top", frequency);
    let entry = section.field("entry");
    let signal = section.parse("signal", named);
    let modem = read_modem(section);
    let drops_out = section.flag("drops_out").unwrap_or(false);
    // `EN 50494` and `EN50494` are the same.
    let single_cable = section.parse("single_cable", |text| named(&text.replace(' ', "")));
    let network = read_network(section);
    let power = read_power(section);
    let notes = notes(section);
    section.finish();
    let kind = kind?;
    check_kind(section, kind);
    let blank = Service::new(id_of(Is::Service, &number.to_string()), kind);
    let record = Service { top_mhz, signal, modem, drops_out, single_cable, network, ..blank };
    Some(ServiceDraft { service: Told { record, notes }, entry, power })
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
    let of_kinds: [(&str, &[ServiceKind]); 6] = [
        ("signal", &[ServiceKind::CableTv, ServiceKind::AntennaTv]),
        ("modem", &[ServiceKind::CableInternet]),
        ("drops_out", &[ServiceKind::CableInternet]),
        ("single_cable", &[ServiceKind::SatelliteTv]),
        ("network", &[ServiceKind::ProviderNetwork, ServiceKind::FibreLink]),
        ("power", &[ServiceKind::PowerOverCoax]),
    ];
    for (field, kinds) in of_kinds {
        if section.has(field) && !kinds.contains(&kind) {
            let owners: Vec<_> = kinds.iter().map(|kind| kind.name()).collect();
            let expected = Phrase::new("sheet-of-kinds").text("kinds", owners.join(", "));
            section.refuse(field, kind.name(), expected);
        }
    }
}

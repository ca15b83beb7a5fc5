//! A sheet table by table; the survey and the rooms are read here.

use house::record::{Building, Internet, Is, NetworkPlan, Room, Wish};
use phrase::Phrase;

use super::draft::{About, HouseDraft, RoomDraft, Told};
use super::edits::id_of;
use super::known::Known;
use super::names::{moca_version, named};
use super::problem::Place;
use super::several::{MOST_NODES, both_ways, ethernet, notes};
use super::table::{Field, Section};
use super::{part, reading, service};

/// Reads every table of a sheet.
///
/// `known` is what stands already in the survey that it is for; `nothing` an empty table, for what the sheet does not speak of.
pub fn read<'s>(sheet: &Section<'s>, known: &Known, nothing: impl Fn() -> Section<'s>) -> HouseDraft<'s> {
    let about = sheet
        .field("survey")
        .and_then(|field| field.table(Phrase::new("sheet-survey-table")))
        .map(|mut section| {
            section.enter(Place::Survey);
            read_about(&section)
        })
        .unwrap_or_default();
    let mut rooms: Vec<_> = rows(sheet, "room", "name").iter().filter_map(read_room).collect();
    rooms.extend(known.other_rooms(&rooms));
    let services = rows(sheet, "service", "kind");
    let services =
        services.iter().enumerate().filter_map(|(number, row)| service::read(row, number)).collect();
    let mut parts: Vec<_> =
        rows(sheet, "part", "tag").into_iter().map(|section| part::read(section, known)).collect();
    parts.extend(known.other_parts(&parts, nothing));
    let readings = rows(sheet, "reading", "at");
    let readings =
        readings.iter().enumerate().filter_map(|(number, row)| reading::read(row, number)).collect();
    sheet.finish();
    HouseDraft { about, rooms, services, parts, readings }
}

/// The tables of one heading; `name` is the field by which they are called in messages.
fn rows<'s>(sheet: &Section<'s>, heading: &'static str, name: &'static str) -> Vec<Section<'s>> {
    let Some(field) = sheet.field(heading) else { return Vec::new() };
    let fields = field.every();
    let tables =
        fields.iter().filter_map(|row| row.table(Phrase::new("sheet-rows").text("heading", heading)));
    tables
        .enumerate()
        .map(|(place, mut section)| {
            let name = section.peek(name).map(str::to_owned);
            section.enter(Place::Row { heading, number: place + 1, name });
            section
        })
        .collect()
}

fn read_about(section: &Section<'_>) -> About {
    let internet = both_ways(section, "internet").map(|(down_mbps, up_mbps)| Internet { down_mbps, up_mbps });
    let building = section.field("building").and_then(|field| {
        let building = field.table(Phrase::new("sheet-building"))?;
        let ownership = building.required("ownership").and_then(|field| field.parse(named));
        let shared = building.required("shared").and_then(|field| field.flag());
        building.finish();
        Some(Building { ownership: ownership?, shared: shared? })
    });
    let network = section.field("network").and_then(|field| {
        let network = field.table(Phrase::new("sheet-network"))?;
        let usual = NetworkPlan::default();
        let version = network.parse("version", moca_version).unwrap_or(usual.version);
        let ethernet_mbps = network.parse("ethernet", ethernet);
        let owned = network.field("owned").and_then(|field| field.whole(0, MOST_NODES)).map(u32::from);
        network.finish();
        Some(NetworkPlan { version, ethernet_mbps, owned })
    });
    let about = About {
        name: section.text("name").map(str::to_owned),
        place: section.text("place").map(str::to_owned),
        internet,
        building,
        network,
        notes: notes(section),
    };
    section.finish();
    about
}

fn read_room<'s>(section: &Section<'s>) -> Option<RoomDraft<'s>> {
    let name = section.required("name");
    let wish = both_ways(section, "wish").map(|(down_mbps, up_mbps)| Wish { down_mbps, up_mbps });
    let served_from = section.field("served_from");
    let notes = notes(section);
    section.finish();
    let text = name.as_ref().and_then(Field::long_text)?.to_owned();
    let record = Room { id: id_of(Is::Room, &text), name: text, wish, served_from: None };
    Some(RoomDraft { room: Told { record, notes }, name, served_from })
}

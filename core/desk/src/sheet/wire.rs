//! Joins the references of a sheet: parts by tag, ports by number or name, rooms by name.

use std::collections::BTreeMap;
use std::path::Path;

use facts::fact::SubjectId;
use house::record::{Is, MOST_DEEP, Named, Part, PartKind, PowerFeed, Room, Service};
use phrase::{Arg, Phrase};

use super::draft::{
    FeedRow, HouseDraft, PartDraft, PortDraft, ReadingDraft, RoomDraft, ServiceDraft, Sheet, Told,
};
use super::edits::id_of;
use super::known::Known;
use super::measured;
use super::table::Field;

/// The most tags of a loop that are told.
const MOST_TAGS_OF_A_LOOP: usize = 8;

/// Joins every reference. What cannot be joined is noted and left out.
pub fn join(house: HouseDraft<'_>, folder: Option<&Path>, known: &Known) -> Sheet {
    let HouseDraft { about, rooms, services, mut parts, readings } = house;
    let mut room_names = index(
        rooms.iter().map(|room| (room.room.record.name.as_str(), room.name.as_ref())),
        "sheet-room-twice",
    );
    for (place, room) in rooms.iter().enumerate().filter(|(_, room)| room.name.is_none()) {
        room_names.entry(room.room.record.name.clone()).or_insert(place);
    }
    let mut tags =
        index(parts.iter().map(|part| (part.row.tag.as_str(), part.tag.as_ref())), "sheet-tag-twice");
    // What the sheet does not speak of can be named all the same.
    for (place, part) in parts.iter().enumerate().filter(|(_, part)| part.tag.is_none()) {
        tags.entry(part.row.tag.clone()).or_insert(place);
    }
    let run_tags =
        parts.iter().filter_map(|part| Some((part.run.as_ref()?.tag.as_deref()?, part.run_tag.as_ref())));
    index(run_tags, "sheet-tag-twice");

    let at_rooms: Vec<_> = parts
        .iter()
        .map(|part| part.room.as_ref().and_then(|field| look_up(field, &room_names, "sheet-no-room")))
        .collect();
    // What is told of a cable is told of the one that the survey knows, where the sheet does not say from where it comes.
    let known_feed = |part: &PartDraft<'_>| {
        let tells = part.from.is_none() && (part.run.is_some() || part.port.is_some());
        let (tag, port) = known.part(&part.row.tag).filter(|_| tells)?.fed.as_ref()?;
        Some((tags.get(tag).copied()?, *port))
    };
    let known_feeds: Vec<_> = parts.iter().map(known_feed).collect();
    let feeders: Vec<Option<usize>> = parts
        .iter()
        .zip(&known_feeds)
        .map(|(part, known)| match &part.from {
            Some(field) => look_up(field, &tags, "sheet-no-part"),
            None => known.map(|(feeder, _)| feeder),
        })
        .collect();
    let rooms: Vec<_> = rooms.into_iter().map(|room| join_room(room, &tags, &parts)).collect();
    let services = services.into_iter().map(|service| join_service(service, &tags, &parts)).collect();
    let reading_at: Vec<Option<usize>> = readings
        .iter()
        .map(|reading| reading.at.as_ref().and_then(|field| look_up(field, &tags, "sheet-no-part")))
        .collect();

    refuse_loops(&parts, &feeders);
    let outputs: Vec<Outputs> = parts.iter().map(Outputs::of).collect();
    let reading_at = readings.iter().zip(reading_at).map(|(reading, at)| {
        let port = reading.port.as_ref().zip(at).and_then(|(port, at)| outputs.get(at)?.port(port));
        (at.and_then(|at| parts.get(at)).map(part_id), port)
    });
    let reading_at: Vec<_> = reading_at.collect();
    let ports: Vec<Option<u8>> = parts
        .iter()
        .zip(feeders.iter().zip(&known_feeds))
        .map(|(part, (feeder, known))| {
            let feeder = (*feeder)?;
            match known {
                Some((_, port)) if part.port.is_none() => Some(*port),
                _ => port_from(part, outputs.get(feeder)?),
            }
        })
        .collect();
    refuse_shared_ports(&parts, &feeders, &ports);
    let taken: BTreeMap<(usize, u8), usize> = feeders
        .iter()
        .zip(&ports)
        .enumerate()
        .filter_map(|(child, (feeder, port))| Some((((*feeder)?, (*port)?), child)))
        .collect();
    let ends: Vec<BTreeMap<u8, _>> =
        parts.iter().enumerate().map(|(at, part)| read_ends(at, part, &outputs, &taken, &parts)).collect();

    let measured: Vec<_> = parts
        .iter()
        .zip(&outputs)
        .map(|(part, outputs)| measured::load(part, outputs.count, folder))
        .collect();
    for ((at, part), measured) in parts.iter_mut().enumerate().zip(measured) {
        part.row.measured = measured;
        part.row.room = at_rooms.get(at).copied().flatten();
        part.row.ends = ends.get(at).cloned().unwrap_or_default();
        let from = feeders.get(at).copied().flatten().zip(ports.get(at).copied().flatten());
        if let Some((feeder, port)) = from {
            part.row.feed = Some(FeedRow::From { part: feeder, port, run: part.run.take() });
        }
    }
    Sheet {
        about,
        rooms,
        services,
        parts: parts.into_iter().map(|part| part.row).collect(),
        readings: readings
            .into_iter()
            .zip(reading_at)
            .map(|(ReadingDraft { mut reading, .. }, (at, port))| {
                (reading.record.about, reading.record.port) = (at, port);
                reading
            })
            .collect(),
    }
}

/// Names with their places; one that stands twice is noted where it stands again.
fn index<'n>(
    names: impl Iterator<Item = (&'n str, Option<&'n Field<'n>>)>,
    twice: &'static str,
) -> BTreeMap<String, usize> {
    let mut places: BTreeMap<String, usize> = BTreeMap::new();
    let mut lines: BTreeMap<String, usize> = BTreeMap::new();
    for (place, (name, field)) in names.enumerate() {
        let Some(field) = field.filter(|_| !name.is_empty()) else { continue };
        if let Some(line) = lines.get(name) {
            field.refuse(Phrase::new(twice).with("line", Arg::Text(line.to_string())));
            continue;
        }
        lines.insert(name.to_owned(), field.line());
        places.insert(name.to_owned(), place);
    }
    places
}

fn look_up(field: &Field<'_>, names: &BTreeMap<String, usize>, missing: &'static str) -> Option<usize> {
    let name = field.text()?.trim();
    let found = names.get(name).copied();
    if found.is_none() {
        field.refuse_name(missing, names.keys().map(String::as_str));
    }
    found
}

/// A part of this kind that a field names; one of another kind is noted.
fn look_up_kind<'p, 's>(
    field: &Field<'_>,
    kind: PartKind,
    tags: &BTreeMap<String, usize>,
    parts: &'p [PartDraft<'s>],
) -> Option<&'p PartDraft<'s>> {
    let at = look_up(field, tags, "sheet-no-part")?;
    let right = parts.get(at).filter(|part| part.row.kind == kind);
    if right.is_none() {
        field.refuse(Phrase::new("sheet-part-of-kind").text("kind", kind.name()));
    }
    right
}

fn join_room(draft: RoomDraft<'_>, tags: &BTreeMap<String, usize>, parts: &[PartDraft<'_>]) -> Told<Room> {
    let RoomDraft { mut room, served_from, .. } = draft;
    let served_from = served_from.and_then(|field| look_up_kind(&field, PartKind::Outlet, tags, parts));
    room.record.served_from = served_from.map(part_id);
    room
}

fn join_service(
    draft: ServiceDraft<'_>,
    tags: &BTreeMap<String, usize>,
    parts: &[PartDraft<'_>],
) -> Told<Service> {
    let ServiceDraft { mut service, entry, power } = draft;
    let entry = entry.and_then(|field| look_up_kind(&field, PartKind::Entry, tags, parts));
    service.record.entry = entry.map(part_id);
    service.record.power = power.and_then(|power| {
        let part = |field| look_up(field, tags, "sheet-no-part").and_then(|at| parts.get(at)).map(part_id);
        let (from, to) = (part(&power.from), part(&power.to));
        let (from, to) = (from?, to?);
        if from == to {
            power.to.refuse(Phrase::new("sheet-power-itself"));
        }
        Some(PowerFeed { from, to })
    });
    service
}

fn part_id(part: &PartDraft<'_>) -> SubjectId {
    id_of(Is::Part, &part.row.tag)
}

/// The ports of a part on the house side.
struct Outputs {
    tag: String,
    kind: PartKind,
    count: u8,
    /// Whether the number of legs is not known.
    unknown: bool,
    modem_port: bool,
}

impl Outputs {
    fn of(draft: &PartDraft<'_>) -> Self {
        let mut part = Part::new(SubjectId::random(), draft.row.kind);
        part.rating = draft.row.rating.clone().unwrap_or_default().or(draft.of_label.clone());
        Self {
            tag: draft.row.tag.clone(),
            kind: part.kind,
            count: part.outputs(),
            unknown: part.kind == PartKind::Splitter && part.rating.legs == 0,
            modem_port: part.kind == PartKind::Amplifier && part.rating.modem_port,
        }
    }

    /// The port of this name, noted if there is none.
    fn port(&self, named: &PortDraft<'_>) -> Option<u8> {
        let amplified = self.count - u8::from(self.modem_port);
        let port = match named.name.as_str() {
            "out" if amplified == 1 => Some(1),
            "through" if self.kind == PartKind::Tap => Some(1),
            "modem" if self.modem_port => Some(self.count),
            // Written one way only, so that no port is told twice.
            number => number.parse().ok().filter(|port: &u8| port.to_string() == number),
        };
        let found = port.filter(|port| (1..=self.count).contains(port));
        if found.is_none() {
            named.field.refuse_as(&named.name, self.expected());
        }
        found
    }

    fn expected(&self) -> Phrase {
        let message = match self.count {
            0 => "sheet-port-none",
            _ if self.unknown => "sheet-port-unknown",
            1 => "sheet-port-one",
            _ if self.modem_port => "sheet-port-modem",
            _ => "sheet-port",
        };
        Phrase::new(message).text("tag", &self.tag).with("count", Arg::Count(u64::from(self.count)))
    }
}

/// The port of `feeder` that a part names, or its only one.
fn port_from(part: &PartDraft<'_>, feeder: &Outputs) -> Option<u8> {
    match &part.port {
        Some(port) => feeder.port(port),
        None if feeder.count == 1 => Some(1),
        None => {
            part.section.refuse("port", "", feeder.expected());
            None
        }
    }
}

fn refuse_shared_ports(parts: &[PartDraft<'_>], feeders: &[Option<usize>], ports: &[Option<u8>]) {
    let mut first: BTreeMap<(usize, u8), &PartDraft<'_>> = BTreeMap::new();
    for ((part, feeder), port) in parts.iter().zip(feeders).zip(ports) {
        let (Some(feeder), Some(port)) = (*feeder, *port) else { continue };
        let Some(earlier) = first.get(&(feeder, port)) else {
            first.insert((feeder, port), part);
            continue;
        };
        let tag = parts.get(feeder).map(|part| part.row.tag.clone()).unwrap_or_default();
        let expected = Phrase::new("sheet-port-twice")
            .text("one", &earlier.row.tag)
            .text("other", &part.row.tag)
            .text("tag", tag)
            .with("port", Arg::Count(u64::from(port)));
        let field = if part.section.has("port") { "port" } else { "from" };
        part.section.refuse(field, part.section.peek(field).unwrap_or_default(), expected);
    }
}

fn read_ends(
    at: usize,
    part: &PartDraft<'_>,
    outputs: &[Outputs],
    taken: &BTreeMap<(usize, u8), usize>,
    parts: &[PartDraft<'_>],
) -> BTreeMap<u8, house::record::PortEnd> {
    let Some(own) = outputs.get(at) else { return BTreeMap::new() };
    let mut ends = BTreeMap::new();
    for (named, end) in &part.ends {
        let Some(port) = own.port(named) else { continue };
        if let Some(child) = taken.get(&(at, port)).and_then(|child| parts.get(*child)) {
            named.field.refuse(Phrase::new("sheet-end-taken").text("tag", &child.row.tag));
            continue;
        }
        ends.insert(port, *end);
    }
    ends
}

/// Notes every loop once, and the first part of each way that sits too deep.
fn refuse_loops(parts: &[PartDraft<'_>], feeders: &[Option<usize>]) {
    // The depth of each part whose way up is known; `None` where it ends in a loop.
    let mut depths: BTreeMap<usize, Option<usize>> = BTreeMap::new();
    for start in 0..parts.len() {
        let mut way = vec![start];
        let mut on_way: BTreeMap<usize, usize> = BTreeMap::from([(start, 0)]);
        let mut above = feeders.get(start).copied().flatten();
        let mut depth = Some(0);
        while let Some(at) = above {
            if let Some(known) = depths.get(&at) {
                depth = known.map(|depth| depth + 1);
                break;
            }
            if let Some(place) = on_way.get(&at) {
                refuse_loop(parts, way.get(*place..).unwrap_or_default());
                depth = None;
                break;
            }
            on_way.insert(at, way.len());
            way.push(at);
            above = feeders.get(at).copied().flatten();
        }
        for at in way.into_iter().rev() {
            if depths.contains_key(&at) {
                continue;
            }
            depths.insert(at, depth);
            if depth == Some(MOST_DEEP + 1)
                && let Some(part) = parts.get(at)
            {
                let expected = Phrase::new("sheet-too-deep").with("most", Arg::Count(MOST_DEEP as u64));
                part.section.refuse("from", part.section.peek("from").unwrap_or_default(), expected);
            }
            depth = depth.map(|depth| depth + 1);
        }
    }
}

fn refuse_loop(parts: &[PartDraft<'_>], members: &[usize]) {
    let Some(first) = members.iter().min().and_then(|at| parts.get(*at)) else { return };
    let start =
        members.iter().position(|at| parts.get(*at).is_some_and(|part| part.row.tag == first.row.tag));
    let (before, from) = members.split_at(start.unwrap_or(0));
    let mut tags: Vec<&str> =
        from.iter().chain(before).filter_map(|at| parts.get(*at)).map(|part| part.row.tag.as_str()).collect();
    if tags.len() > MOST_TAGS_OF_A_LOOP {
        tags.truncate(MOST_TAGS_OF_A_LOOP);
        tags.push("...");
    }
    tags.push(&first.row.tag);
    first.section.refuse("from", &tags.join(" < "), Phrase::new("sheet-loop"));
}

//! One `[[part]]` of a sheet.

use house::rating::PartRating;
use house::record::{Adapter, BehindAdapter, LONGEST_TAG, Named, PartKind, PortEnd};
use phrase::{Arg, Phrase};

use super::draft::{PartDraft, PartRow, PortDraft, RunRow};
use super::known::Known;
use super::names::{moca_version, named, series};
use super::quantity::length;
use super::rating;
use super::several::{ethernet, notes};
use super::table::{Field, Section};

/// Reads a part. What cannot be read is noted and left out.
///
/// `known` is what stands already in the survey that the sheet is for.
pub fn read<'s>(section: Section<'s>, known: &Known) -> PartDraft<'s> {
    let tag = section.required("tag");
    let known = section.peek("tag").and_then(|tag| known.part(tag.trim()));
    let kind = match known {
        Some(known) => section.parse("kind", named).or(Some(known.kind)),
        None => section.required("kind").and_then(|field| field.parse(named)),
    };
    let kind = kind.unwrap_or(PartKind::Unknown);
    let label = section.text("label").map(str::to_owned);
    let of_label = label.as_deref().map(PartRating::of_label).unwrap_or_default();
    let printed_legs = of_label.legs;
    let of_label = known.map_or(of_label.clone(), |known| of_label.or(known.rating.clone()));
    let row = PartRow {
        tag: tag.as_ref().and_then(|field| field.parse(tag_text)).unwrap_or_default(),
        kind,
        rating: rating::read(&section, printed_legs),
        label,
        place: section.text("where").map(str::to_owned),
        feed: None,
        ends: std::collections::BTreeMap::new(),
        room: None,
        plugged: section
            .field("plugged")
            .map(|field| field.each().iter().filter_map(|one| one.parse(named)).collect()),
        adapter: read_adapter(&section),
        behind_adapter: read_behind(&section),
        sharing: section.parse("sharing", named),
        device_filter: section.flag("device_filter"),
        entry_kind: section.parse("service", named),
        entry_state: section.parse("state", named),
        measured: None,
        notes: notes(&section),
    };
    let ends = read_ends(&section);
    let (from, port, run_tag, room) =
        (section.field("from"), section.field("port"), section.field("run_tag"), section.field("room"));
    let measured = section.field("measured");
    let feed = section.field("feed");
    let run = read_run(&section);
    section.finish();
    check_kind(&section, kind, known.is_some_and(|known| known.fed.is_some()));
    let mut draft = PartDraft {
        row,
        of_label,
        tag,
        port: port.map(|field| PortDraft { name: field.written().trim().to_owned(), field }),
        from,
        run,
        run_tag,
        measured,
        room,
        ends,
        section,
    };
    if let Some(feed) = feed {
        read_feed(&mut draft, &feed);
    }
    draft
}

/// What is on the free ports.
fn read_ends<'s>(section: &Section<'s>) -> Vec<(PortDraft<'s>, PortEnd)> {
    let ends = section.field("ends").and_then(|field| field.table(Phrase::new("sheet-ends")));
    let Some(ends) = ends else { return Vec::new() };
    ends.every_field()
        .filter_map(|(name, field)| {
            let end = field.parse(named)?;
            Some((PortDraft { field, name: name.to_owned() }, end))
        })
        .collect()
}

/// Whether a text can be written on tape.
pub fn is_tag(text: &str) -> bool {
    tag_text(text).is_ok()
}

/// A tag, as it can be written on tape.
fn tag_text(text: &str) -> Result<String, Phrase> {
    let right =
        !text.is_empty() && text.chars().count() <= LONGEST_TAG && !text.chars().any(char::is_control);
    let count = |count: usize| Arg::Count(count as u64);
    let wrong = || Phrase::new("sheet-tag").with("most", count(LONGEST_TAG));
    if right { Ok(text.to_owned()) } else { Err(wrong().with("found", count(text.chars().count()))) }
}

fn read_feed(draft: &mut PartDraft<'_>, feed: &Field<'_>) {
    if feed.written() != "nothing" {
        feed.refuse(Phrase::new("sheet-feed"));
    } else if draft.from.is_some() {
        feed.refuse(Phrase::new("sheet-feed-and-from"));
    } else {
        draft.row.feed = Some(super::draft::FeedRow::Nothing);
    }
}

fn read_adapter(section: &Section<'_>) -> Option<Adapter> {
    let adapter = section.field("adapter")?.table(Phrase::new("sheet-adapter"))?;
    // What is left out here is as the plan of the network has it.
    let read = Adapter {
        version: adapter.parse("version", moca_version),
        ethernet_mbps: adapter.parse("ethernet", ethernet),
        bridge: adapter.flag("bridge").unwrap_or(false),
    };
    adapter.finish();
    Some(read)
}

/// What lies behind the adapter, away from the coax.
fn read_behind(section: &Section<'_>) -> Option<BehindAdapter> {
    let behind = section.field("behind_adapter")?.table(Phrase::new("sheet-behind-adapter"))?;
    let pieces = behind.field("pieces");
    let read = BehindAdapter {
        pieces: pieces
            .iter()
            .flat_map(super::table::Field::each)
            .filter_map(|one| one.parse(named))
            .collect(),
        mbps: behind.parse("slowest", ethernet),
    };
    behind.finish();
    Some(read)
}

/// The run that feeds the part; `None` where nothing is told of it.
fn read_run(section: &Section<'_>) -> Option<RunRow> {
    let (near, far) = match section.field("connectors") {
        None => (None, None),
        Some(field) if !field.is_table() => {
            let both = field.parse(named);
            (both, both)
        }
        Some(field) => {
            let ends = field.table(Phrase::new("sheet-connectors"))?;
            let both = (ends.parse("near", named), ends.parse("far", named));
            ends.finish();
            both
        }
    };
    let run = RunRow {
        tag: section.field("run_tag").and_then(|field| field.parse(tag_text)),
        cable: section.parse("cable", series),
        length: section.parse("length", length),
        near,
        far,
    };
    (run != RunRow::default()).then_some(run)
}

/// Fields that belong to one kind only; `is_fed` where the survey knows already what feeds the part.
fn check_kind(section: &Section<'_>, kind: PartKind, is_fed: bool) {
    let of_kind: [(PartKind, &[&str]); 3] = [
        (PartKind::Entry, &["service", "state"]),
        (
            PartKind::Outlet,
            &["plugged", "adapter", "behind_adapter", "passes_on", "sharing", "device_filter"],
        ),
        (PartKind::Amplifier, &["gain", "return_gain", "return_top", "moca_bypass", "modem_port"]),
    ];
    for (owner, fields) in of_kind {
        for name in fields.iter().filter(|name| kind != owner && section.has(name)) {
            let kind_of = kind.name();
            let expected = Phrase::new("sheet-of-kind").text("kind", owner.name());
            section.refuse(name, kind_of, expected);
        }
    }
    if matches!(kind, PartKind::Entry | PartKind::Outlet | PartKind::Terminator) && section.has("measured") {
        let found = section.peek("measured").unwrap_or_default();
        section.refuse("measured", found, Phrase::new("sheet-measured-kind"));
    }
    let fed = ["from", "port", "cable", "length", "run_tag", "connectors"];
    if kind == PartKind::Entry {
        for name in fed.into_iter().filter(|name| section.has(name)) {
            section.refuse(name, section.peek(name).unwrap_or_default(), Phrase::new("sheet-entry-fed"));
        }
    } else if !section.has("from") && !is_fed {
        for name in fed.into_iter().filter(|name| section.has(name)) {
            section.refuse(name, section.peek(name).unwrap_or_default(), Phrase::new("sheet-run-of-nothing"));
        }
    }
}

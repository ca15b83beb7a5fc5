//! The surgery on the records that changes are made of: joining, inserting, moving.

use coax::estimates::house::{JUMPER, NEW_RUN};
use facts::fact::SubjectId;
use house::rating::PartRating;
use house::record::{
    CableKind, Connector, Feed, FeedFrom, LengthKnown, Part, PartKind, Plugged, PortEnd, Run, RunLength,
    Survey,
};
use uuid::Uuid;

use super::to_buy::{entry_filter_rating, larger_than, powered, splitter_rating};

/// Joins the modem's line to what feeds the first split, and puts a capped filter in front of the split: it sends the
/// network's signals back as the entry filter did, and nothing comes in from the street any more.
pub(super) fn own_line(survey: &mut Survey, outlet: SubjectId) {
    let Some(split) = survey.wiring.feed(outlet).cloned() else { return };
    let Some(above) = survey.wiring.feed(split.part).cloned() else { return };
    let run = joined_run(survey, above.run, split.run, outlet);
    refeed(survey, outlet, |feed| *feed = FeedFrom { part: above.part, port: above.port, run });
    let id = derived(split.part, 0xF2);
    let mut filter = Part::new(id, PartKind::EntryFilter);
    filter.rating = entry_filter_rating();
    filter.feed = Some(Feed::Nothing);
    filter.ends.insert(0, PortEnd::Capped);
    survey.parts.insert(id, filter);
    let jumper = jumper(survey, id);
    if let Some(part) = survey.parts.get_mut(&split.part) {
        part.feed = Some(Feed::From(FeedFrom { part: id, port: 1, run: Some(jumper) }));
        part.ends.insert(split.port, PortEnd::Capped);
    }
}

/// A new outlet in a room, fed by a free leg of a splitter; one without a free leg gives way to a larger one.
pub(super) fn new_run(survey: &mut Survey, room: SubjectId, from: SubjectId) {
    let free = |survey: &Survey| {
        let part = survey.parts.get(&from)?;
        // What nobody looked at is not known to be free.
        let is_free = |port: &u8| {
            survey.wiring.on_port(from, *port).next().is_none()
                && matches!(part.end(*port), Some(PortEnd::Open | PortEnd::Capped))
        };
        (1..=part.outputs()).find(is_free)
    };
    let has_free = free(survey);
    let port = has_free.unwrap_or_else(|| {
        let outputs = survey.parts.get(&from).map_or(0, Part::outputs);
        let rating = powered(survey, from, splitter_rating(larger_than(outputs)));
        rate(survey, from, rating);
        outputs.saturating_add(1)
    });
    let (id, run) = (derived(room, 0xD1), derived(room, 0xD2));
    survey.runs.insert(
        run,
        Run {
            cable: CableKind::Six,
            length: Some(RunLength::stated(NEW_RUN.span.likely, LengthKnown::Guessed)),
            connector_near: Connector::Compression,
            connector_far: Connector::Compression,
            ..Run::new(run)
        },
    );
    let mut outlet = Part::new(id, PartKind::Outlet);
    outlet.room = Some(room);
    outlet.plugged = Some(Vec::new());
    outlet.feed = Some(Feed::From(FeedFrom { part: from, port, run: Some(run) }));
    if let Some(part) = survey.parts.get_mut(&from) {
        part.ends.remove(&port);
    }
    survey.parts.insert(id, outlet);
    if has_free.is_none() {
        strong_leg_to_modem(survey, from);
    }
    move_from_dead_outlet(survey, room, id);
}

/// An adapter at an outlet of the room that nothing feeds goes to another outlet.
pub(super) fn move_from_dead_outlet(survey: &mut Survey, room: SubjectId, to: SubjectId) {
    let dead = survey
        .parts
        .values()
        .find(|part| part.room == Some(room) && part.adapter.is_some() && survey.is_dead_outlet(part));
    let Some(dead) = dead.map(|part| part.id) else { return };
    let adapter = survey.parts.get_mut(&dead).and_then(|part| part.adapter.take());
    if let Some(outlet) = survey.parts.get_mut(&to) {
        outlet.adapter = outlet.adapter.take().or(adapter);
    }
}

pub(super) fn rate(survey: &mut Survey, id: SubjectId, rating: PartRating) {
    if let Some(part) = survey.parts.get_mut(&id) {
        part.rating = rating;
        part.label = None;
        part.measured = None;
    }
}

pub(super) fn renew(survey: &mut Survey, to: SubjectId, change: impl FnOnce(&mut Run)) {
    let known = survey.wiring.feed(to).and_then(|feed| feed.run);
    let id = known.unwrap_or_else(|| derived(to, 0xC1));
    let run = survey.runs.entry(id).or_insert_with(|| Run::new(id));
    change(run);
    refeed(survey, to, |feed| feed.run = Some(id));
}

pub(super) fn refeed(survey: &mut Survey, id: SubjectId, change: impl FnOnce(&mut FeedFrom)) {
    if let Some(Part { feed: Some(Feed::From(feed)), .. }) = survey.parts.get_mut(&id) {
        change(feed);
    }
}

/// Joins what hangs on `port` of a part straight to what feeds the part, over the part's own run where the two runs
/// become one by a barrel (whose small loss is left out).
pub(super) fn bridge_over(survey: &mut Survey, id: SubjectId, port: u8) {
    let Some(above) = survey.wiring.feed(id).cloned() else { return };
    let children: Vec<_> = survey.wiring.on_port(id, port).collect();
    for child in children {
        let joined =
            joined_run(survey, above.run, survey.wiring.feed(child).and_then(|feed| feed.run), child);
        refeed(survey, child, |feed| {
            feed.part = above.part;
            feed.port = above.port;
            feed.run = joined;
        });
    }
    survey.rewire();
}

/// One run in place of two in a row: the lengths add up, the poorer cable and connectors count.
fn joined_run(
    survey: &mut Survey,
    upper: Option<SubjectId>,
    lower: Option<SubjectId>,
    child: SubjectId,
) -> Option<SubjectId> {
    let (Some(upper), Some(lower)) =
        (upper.and_then(|id| survey.runs.get(&id)), lower.and_then(|id| survey.runs.get(&id)))
    else {
        return lower.or(upper);
    };
    let length = match (upper.length, lower.length) {
        (Some(a), Some(b)) => Some(RunLength {
            metres: a.metres + b.metres,
            low_metres: a.low_metres + b.low_metres,
            high_metres: a.high_metres + b.high_metres,
            known: if a.known == b.known { a.known } else { LengthKnown::Guessed },
        }),
        (a, b) => a.or(b),
    };
    let poorer = |a: Connector, b: Connector| if a.is_poor() { a } else { b };
    let longer_upper = upper.length.map_or(0.0, |l| l.metres) > lower.length.map_or(0.0, |l| l.metres);
    let id = derived(child, 0xC2);
    let run = Run {
        id,
        tag: lower.tag.clone(),
        cable: if longer_upper { upper.cable } else { lower.cable },
        length,
        connector_near: poorer(upper.connector_near, lower.connector_near),
        connector_far: poorer(upper.connector_far, lower.connector_far),
    };
    survey.runs.insert(id, run);
    Some(id)
}

/// A short cable, or the mating of two connectors, beside a new part.
fn jumper(survey: &mut Survey, part: SubjectId) -> SubjectId {
    let jumper = derived(part, 0xC3);
    survey.runs.insert(
        jumper,
        Run {
            cable: CableKind::Six,
            length: Some(RunLength::stated(JUMPER.span.likely, LengthKnown::Measured)),
            connector_near: Connector::Compression,
            connector_far: Connector::Compression,
            ..Run::new(jumper)
        },
    );
    jumper
}

/// Screws `part` to the first output of `behind` that is in use; what hung there hangs on the part from then on.
pub(super) fn insert_behind(survey: &mut Survey, behind: SubjectId, mut part: Part) {
    let id = part.id;
    let jumper = jumper(survey, id);
    let port = survey.port_in_use(behind);
    part.feed = Some(Feed::From(FeedFrom { part: behind, port, run: Some(jumper) }));
    let children: Vec<_> = survey.wiring.on_port(behind, port).collect();
    for child in children {
        refeed(survey, child, |feed| {
            feed.part = id;
            feed.port = 1;
        });
    }
    survey.parts.insert(id, part);
    survey.rewire();
}

/// Moves what hangs on a part to its first ports, and forgets the ends of ports it no longer has. An unbalanced
/// three-way gives its strong leg to the modem, which has to be heard through all of it, or else to the longest run
/// (common practice, no source).
pub(super) fn close_ranks(survey: &mut Survey, id: SubjectId) {
    let mut children: Vec<_> =
        survey.parts.values().filter(|part| feeds_from(part, id)).map(|part| part.id).collect();
    let length = |child: &SubjectId| {
        let run = survey.parts.get(child).and_then(|part| match &part.feed {
            Some(Feed::From(feed)) => survey.runs.get(&feed.run?),
            _ => None,
        });
        run.and_then(|run| run.length).map_or(0.0, |length| length.metres)
    };
    children.sort_by(|a, b| {
        leads_to_modem(survey, *b).cmp(&leads_to_modem(survey, *a)).then(length(b).total_cmp(&length(a)))
    });
    for (place, child) in children.iter().enumerate() {
        let port = u8::try_from(place + 1).unwrap_or(u8::MAX);
        refeed(survey, *child, |feed| feed.port = port);
    }
    let used = u8::try_from(children.len()).unwrap_or(u8::MAX);
    if let Some(part) = survey.parts.get_mut(&id) {
        part.ends.clear();
        // A new part comes with caps on what stays free.
        part.ends.extend((used.saturating_add(1)..=part.rating.legs).map(|port| (port, PortEnd::Capped)));
    }
}

/// Gives the modem's branch the first leg of a part whose other legs lose more, in exchange for what hangs there.
pub(super) fn strong_leg_to_modem(survey: &mut Survey, id: SubjectId) {
    let is_unbalanced =
        survey.parts.get(&id).is_some_and(|part| match part.rating.leg_losses_db.as_slice() {
            [first, others @ ..] => others.iter().any(|other| other > first),
            [] => false,
        });
    let on = |survey: &Survey, wanted: &dyn Fn(&FeedFrom) -> bool| -> Vec<SubjectId> {
        let hangs =
            |part: &&Part| matches!(&part.feed, Some(Feed::From(feed)) if feed.part == id && wanted(feed));
        survey.parts.values().filter(hangs).map(|part| part.id).collect()
    };
    let Some(modem) = on(survey, &|_| true).into_iter().find(|child| leads_to_modem(survey, *child)) else {
        return;
    };
    let Some(Feed::From(FeedFrom { port, .. })) = survey.parts.get(&modem).and_then(|part| part.feed.clone())
    else {
        return;
    };
    if !is_unbalanced || port == 1 {
        return;
    }
    let (strong, weak) = (on(survey, &|feed| feed.port == 1), on(survey, &|feed| feed.port == port));
    for (children, port) in [(strong, port), (weak, 1)] {
        for child in children {
            refeed(survey, child, |feed| feed.port = port);
        }
    }
    if let Some(part) = survey.parts.get_mut(&id) {
        let (first, other) = (part.ends.remove(&1), part.ends.remove(&port));
        part.ends.extend(first.map(|end| (port, end)).into_iter().chain(other.map(|end| (1, end))));
    }
}

/// Whether a modem hangs on a part or below it.
fn leads_to_modem(survey: &Survey, part: SubjectId) -> bool {
    survey.wiring.below(part).into_iter().filter_map(|id| survey.parts.get(&id)).any(|part| {
        let plugged = part.plugged.iter().flatten();
        plugged.into_iter().any(|device| matches!(device, Plugged::Modem | Plugged::MocaGateway))
    })
}

/// Caps what is open. What nobody knows stays on the output where it is, and so does all else.
pub(super) fn cap_open_ports(survey: &mut Survey, id: SubjectId) {
    let ends = survey.parts.get_mut(&id).map(|part| part.ends.values_mut());
    for end in ends.into_iter().flatten().filter(|end| **end == PortEnd::Open) {
        *end = PortEnd::Capped;
    }
}

fn feeds_from(part: &Part, feeder: SubjectId) -> bool {
    matches!(&part.feed, Some(Feed::From(feed)) if feed.part == feeder)
}

/// An id for something that a change brings, made from the id of what it stands beside.
pub(super) fn derived(id: SubjectId, which: u8) -> SubjectId {
    let mut bytes = id.uuid().into_bytes();
    if let Some(last) = bytes.last_mut() {
        *last ^= which;
    }
    if let Some(first) = bytes.first_mut() {
        *first ^= 0x5A;
    }
    SubjectId::from_uuid(Uuid::from_bytes(bytes))
}

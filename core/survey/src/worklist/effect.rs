//! What a change does to the records of a house.

use uuid::Uuid;

use super::change::ChangeKind;
use crate::fact::SubjectId;
use crate::rating::{Band, EXTENDED_D, PartRating};
use crate::record::{
    CableKind, Connector, Feed, FeedFrom, LengthKnown, Part, PartKind, PortEnd, Run, RunLength, Survey,
};

/// The jumper between two parts that sit side by side, metres (common practice, no source).
const JUMPER: f64 = 0.3;

impl ChangeKind {
    /// The house after this change. Parts that are new carry ids derived from those they stand beside, so that the
    /// same change always gives the same house.
    pub fn applied(self, survey: &Survey) -> Survey {
        let mut after = survey.clone();
        match self {
            Self::AddEntryFilter { behind } => {
                let id = derived(behind, 0xF1);
                let mut filter = Part::new(id, PartKind::EntryFilter);
                filter.rating = entry_filter_rating();
                insert_behind(&mut after, behind, filter);
            }
            Self::MoveEntryFilter { filter, behind } => {
                let Some(part) = after.parts.get(&filter).cloned() else { return after };
                bridge_over(&mut after, filter, 1);
                insert_behind(&mut after, behind, part);
            }
            Self::SwapEntryFilter { filter } => rate(&mut after, filter, entry_filter_rating()),
            Self::SwapSplitter { splitter, legs } => {
                rate(&mut after, splitter, splitter_rating(legs));
                close_ranks(&mut after, splitter);
            }
            Self::RemoveSplitter { splitter } => {
                if let Some(port) =
                    after.wiring.fed_from(splitter).first().and_then(|child| after.wiring.feed(*child))
                {
                    let port = port.port;
                    bridge_over(&mut after, splitter, port);
                    after.parts.remove(&splitter);
                }
            }
            Self::MergeSplitters { upper, lower, legs } => {
                rate(&mut after, upper, splitter_rating(legs));
                for child in survey.wiring.fed_from(lower) {
                    refeed(&mut after, *child, |feed| feed.part = upper);
                }
                after.parts.remove(&lower);
                close_ranks(&mut after, upper);
            }
            Self::Cap { part, port } => {
                if let Some(part) = after.parts.get_mut(&part) {
                    part.ends.insert(port, PortEnd::Capped);
                }
            }
            Self::SwapAmplifier { amplifier } => {
                if let Some(part) = after.parts.get_mut(&amplifier) {
                    part.rating.moca_bypass = Some(true);
                }
            }
            Self::RemoveAmplifier { amplifier } => {
                let fed = survey.wiring.fed_from(amplifier);
                if let Some(part) = after.parts.get_mut(&amplifier) {
                    part.label = None;
                    part.ends.clear();
                    (part.kind, part.rating) = match u8::try_from(fed.len()).unwrap_or(u8::MAX) {
                        0 | 1 => (PartKind::Barrel, PartRating::default()),
                        several => (PartKind::Splitter, splitter_rating(several)),
                    };
                }
                for (place, child) in fed.iter().enumerate() {
                    let port = u8::try_from(place + 1).unwrap_or(u8::MAX);
                    refeed(&mut after, *child, |feed| feed.port = port);
                }
            }
            Self::ReplaceRun { to } => renew(&mut after, to, |run| {
                run.cable = CableKind::Six;
                run.connector_near = Connector::Compression;
                run.connector_far = Connector::Compression;
            }),
            Self::RenewConnectors { to } => renew(&mut after, to, |run| {
                run.connector_near = Connector::Compression;
                run.connector_far = Connector::Compression;
            }),
        }
        after.rewire();
        after
    }
}

/// What an entry filter to buy is rated for: passes 5 to 1002 MHz, stops 1125 to 1675 MHz by at least 40 dB (a
/// published data sheet for a ground-block MoCA filter, 2019).
pub(super) fn entry_filter_rating() -> PartRating {
    PartRating {
        band: Some(Band { low_mhz: 5.0, high_mhz: 1002.0 }),
        stop_band: Some(EXTENDED_D),
        rejection_db: Some(40.0),
        ..PartRating::default()
    }
}

/// What a splitter to buy is rated for. Two and three legs: labels of 5-1675 MHz parts photographed in a public
/// repository (3.7; 3.7, 7.3, 7.3 dB). More: label losses by common practice, no source.
pub(super) fn splitter_rating(legs: u8) -> PartRating {
    let leg_losses_db = match legs {
        2 => vec![3.7; 2],
        3 => vec![3.7, 7.3, 7.3],
        4 => vec![7.3; 4],
        5 | 6 => vec![9.5; usize::from(legs)],
        _ => vec![11.0; usize::from(legs)],
    };
    PartRating {
        legs,
        leg_losses_db,
        band: Some(Band { low_mhz: 5.0, high_mhz: EXTENDED_D.high_mhz }),
        says_moca: true,
        ..PartRating::default()
    }
}

fn rate(survey: &mut Survey, id: SubjectId, rating: PartRating) {
    if let Some(part) = survey.parts.get_mut(&id) {
        part.rating = rating;
        part.label = None;
    }
}

fn renew(survey: &mut Survey, to: SubjectId, change: impl FnOnce(&mut Run)) {
    let known = survey.wiring.feed(to).and_then(|feed| feed.run);
    let id = known.unwrap_or_else(|| derived(to, 0xC1));
    let run = survey.runs.entry(id).or_insert_with(|| Run::new(id));
    change(run);
    refeed(survey, to, |feed| feed.run = Some(id));
}

fn refeed(survey: &mut Survey, id: SubjectId, change: impl FnOnce(&mut FeedFrom)) {
    if let Some(Part { feed: Some(Feed::From(feed)), .. }) = survey.parts.get_mut(&id) {
        change(feed);
    }
}

/// Joins what hangs on `port` of a part straight to what feeds the part, over the part's own run where the two runs
/// become one by a barrel (whose small loss is left out).
fn bridge_over(survey: &mut Survey, id: SubjectId, port: u8) {
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

/// Screws `part` to the first output of `behind`; what hung there hangs on the part from then on.
fn insert_behind(survey: &mut Survey, behind: SubjectId, mut part: Part) {
    let id = part.id;
    let jumper = derived(id, 0xC3);
    survey.runs.insert(
        jumper,
        Run {
            cable: CableKind::Six,
            length: Some(RunLength::stated(JUMPER, LengthKnown::Measured)),
            connector_near: Connector::Compression,
            connector_far: Connector::Compression,
            ..Run::new(jumper)
        },
    );
    part.feed = Some(Feed::From(FeedFrom { part: behind, port: 1, run: Some(jumper) }));
    let children: Vec<_> = survey.wiring.on_port(behind, 1).collect();
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
/// three-way gives its strong leg to the longest run.
fn close_ranks(survey: &mut Survey, id: SubjectId) {
    let mut children: Vec<_> =
        survey.parts.values().filter(|part| feeds_from(part, id)).map(|part| part.id).collect();
    let length = |child: &SubjectId| {
        let run = survey.parts.get(child).and_then(|part| match &part.feed {
            Some(Feed::From(feed)) => survey.runs.get(&feed.run?),
            _ => None,
        });
        run.and_then(|run| run.length).map_or(0.0, |length| length.metres)
    };
    children.sort_by(|a, b| length(b).total_cmp(&length(a)).then(a.cmp(b)));
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

fn feeds_from(part: &Part, feeder: SubjectId) -> bool {
    matches!(&part.feed, Some(Feed::From(feed)) if feed.part == feeder)
}

/// An id for something that a change brings, made from the id of what it stands beside.
fn derived(id: SubjectId, which: u8) -> SubjectId {
    let mut bytes = id.uuid().into_bytes();
    if let Some(last) = bytes.last_mut() {
        *last ^= which;
    }
    if let Some(first) = bytes.first_mut() {
        *first ^= 0x5A;
    }
    SubjectId::from_uuid(Uuid::from_bytes(bytes))
}

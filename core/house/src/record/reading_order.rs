//! In which order a house's parts are read: each tree from its head down, legs in order, loose parts last.

use std::collections::{BTreeMap, BTreeSet};

use facts::fact::SubjectId;

use super::{Part, PortEnd, Survey};

/// One row's worth of the map: a part, or what is on free ports of one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stands {
    /// A part.
    Part(SubjectId),
    /// Ports of the feeding part, first to last, that feed nothing.
    Free {
        /// The first of them.
        first: u8,
        /// The last of them.
        last: u8,
        /// How they end; `None` while nobody looked.
        end: Option<PortEnd>,
    },
}

/// A place in the forest.
#[derive(Debug, Clone, Copy)]
pub struct Row {
    /// What stands there.
    pub stands: Stands,
    /// The row of what feeds it.
    pub feeder: Option<usize>,
    /// How many parts lie between it and the head of its tree.
    pub depth: usize,
    /// Whether it is, or hangs on, a loose part.
    pub loose: bool,
}

/// The whole forest in reading order, feeders before what they feed.
#[derive(Debug, Default)]
pub struct Rows {
    /// The rows.
    pub rows: Vec<Row>,
    /// Ports with a cable that leaves and nobody knows where to.
    pub loose_ends: Vec<(SubjectId, u8)>,
}

/// Every part of a survey, each once, in the order in which the map and the lists show them.
pub fn reading_order(survey: &Survey) -> Vec<SubjectId> {
    let parts = rows(survey).rows.into_iter().filter_map(|row| match row.stands {
        Stands::Part(id) => Some(id),
        Stands::Free { .. } => None,
    });
    parts.collect()
}

/// The rows of a survey.
pub fn rows(survey: &Survey) -> Rows {
    let mut rows = Rows::default();
    let mut seen = BTreeSet::new();
    let heads = survey.wiring.heads().iter().map(|head| (*head, false));
    for (root, is_loose) in heads.chain(survey.wiring.loose().keys().map(|head| (*head, true))) {
        grow(survey, root, is_loose, &mut rows, &mut seen);
    }
    // A survey whose wiring was not worked out anew after a change still shows all that it has.
    for id in survey.parts.keys() {
        grow(survey, *id, true, &mut rows, &mut seen);
    }
    rows
}

fn grow(survey: &Survey, root: SubjectId, loose: bool, rows: &mut Rows, seen: &mut BTreeSet<SubjectId>) {
    let mut next = vec![Row { stands: Stands::Part(root), feeder: None, depth: 0, loose }];
    while let Some(row) = next.pop() {
        let index = rows.rows.len();
        if let Stands::Part(id) = row.stands {
            let Some(part) = survey.parts.get(&id) else { continue };
            if !seen.insert(id) {
                continue;
            }
            let below = fed_and_free(survey, part);
            rows.loose_ends.extend(
                below
                    .iter()
                    .filter_map(|stands| match stands {
                        Stands::Free { first, last, end: Some(PortEnd::LooseEnd) } => Some((*first, *last)),
                        _ => None,
                    })
                    .flat_map(|(first, last)| (first..=last).map(move |port| (id, port))),
            );
            let children = below.into_iter().rev();
            next.extend(children.map(|stands| Row {
                stands,
                feeder: Some(index),
                depth: row.depth + 1,
                loose,
            }));
        }
        rows.rows.push(row);
    }
}

/// What is on a part's ports, in their order; neighbours that are free in the same way are one.
fn fed_and_free(survey: &Survey, part: &Part) -> Vec<Stands> {
    let mut on_port: BTreeMap<u8, Vec<Stands>> = BTreeMap::new();
    for child in survey.wiring.fed_from(part.id) {
        let port = survey.wiring.feed(*child).map_or(0, |feed| feed.port);
        on_port.entry(port).or_default().push(Stands::Part(*child));
    }
    let mut free: Option<(u8, u8, Option<PortEnd>)> = None;
    let mut ends = Vec::new();
    for port in 1..=part.outputs() {
        let taken = on_port.contains_key(&port);
        match free {
            Some((first, last, end)) if !taken && end == part.end(port) && last + 1 == port => {
                free = Some((first, port, end));
            }
            _ => {
                ends.extend(free.take());
                free = (!taken).then(|| (port, port, part.end(port)));
            }
        }
    }
    ends.extend(free);
    for (first, last, end) in ends {
        on_port.entry(first).or_default().push(Stands::Free { first, last, end });
    }
    on_port.into_values().flatten().collect()
}

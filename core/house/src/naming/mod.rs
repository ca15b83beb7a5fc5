//! How everything is named in a sentence: parts by tag or by kind and room, cables by what they join.

mod change;
mod hanging;
mod rated;
mod thing;

use facts::fact::SubjectId;
use phrase::{Arg, Phrase};

use crate::record::{Named, Part, PartKind, ReadingKind, ServiceKind, Survey, Worded};

pub use change::{ask_provider, filter_place, poor_ends};
pub use hanging::Hanging;
pub use rated::{rated, rating};
pub use thing::{knows, of_room, room, run, thing};

/// The phrase that names a part: `S2 (a 4-way splitter)`, `an outlet in Office`.
pub fn part(survey: &Survey, id: SubjectId) -> Phrase {
    survey.parts.get(&id).map_or_else(|| Phrase::new("part-unknown"), |part| of_part(survey, part))
}

/// The phrase that names a part at hand.
pub fn of_part(survey: &Survey, part: &Part) -> Phrase {
    let kind = kind(part);
    let kind = match survey.room_of(part) {
        Some(room) if !room.name.trim().is_empty() => {
            Phrase::new("part-in-room").phrase("part", kind).text("room", &room.name)
        }
        _ => kind,
    };
    match &part.tag {
        Some(tag) => Phrase::new("part-tagged").text("tag", tag).phrase("part", kind),
        None => kind,
    }
}

/// The phrase for what a part is, without its tag: `a 4-way splitter`.
pub fn kind(part: &Part) -> Phrase {
    part.kind.phrase().with("legs", Arg::Count(u64::from(part.rating.legs)))
}

/// The short mark of a part: its tag, or what it is where it has none.
pub fn mark(survey: &Survey, id: SubjectId) -> Phrase {
    match survey.parts.get(&id) {
        Some(Part { tag: Some(tag), .. }) => Phrase::new("mark").text("tag", tag),
        _ => part(survey, id),
    }
}

/// The phrase that names the run which feeds a part: `R4 (the cable to O4)`, `the cable from S1 to O4`.
pub fn run_to(survey: &Survey, to: SubjectId) -> Phrase {
    let feed = survey.wiring.feed(to);
    let run = feed.and_then(|feed| survey.runs.get(&feed.run?));
    let tag = run.and_then(|run| run.tag.as_ref());
    match (tag, feed) {
        (Some(tag), _) => Phrase::new("run-tagged").text("tag", tag).phrase("part", mark(survey, to)),
        (None, Some(feed)) => run_between(survey, feed.part, to),
        (None, None) => Phrase::new("run-to").phrase("part", part(survey, to)),
    }
}

/// The phrase that names a cable by its two ends: `the cable from S1 to O4`.
pub fn run_between(survey: &Survey, from: SubjectId, to: SubjectId) -> Phrase {
    Phrase::new("run-between").phrase("from", mark(survey, from)).phrase("part", mark(survey, to))
}

/// The phrase that names one port of a part: `leg 3 of S2 (a 4-way splitter)`.
pub fn port(survey: &Survey, id: SubjectId, port: u8) -> Phrase {
    with_port(Phrase::new("part-port"), survey.parts.get(&id), port).phrase("part", part(survey, id))
}

/// The phrase that names ports of a part whose name stands beside: `output 3`, `tap 1 (TAP)`, `outputs 2–4`.
pub fn ports(part: &Part, ports: &[u8]) -> Phrase {
    let count = |port: u8| Arg::Count(u64::from(port));
    let is_special = ports.iter().any(|port| special_port(part, *port).is_some());
    match ports {
        [port] => with_port(Phrase::new("port-alone"), Some(part), *port),
        [first, .., last]
            if !is_special && ports.len() > 2 && usize::from(last - first) + 1 == ports.len() =>
        {
            Phrase::new("port-range").with("first", count(*first)).with("last", count(*last))
        }
        _ if is_special => {
            let one = |port: &u8| with_port(Phrase::new("port-alone"), Some(part), *port);
            let all = ports.iter().map(|port| Arg::Phrase(Box::new(one(port)))).collect();
            Phrase::new("port-list").with("ports", Arg::Several(all))
        }
        _ => {
            let all = ports.iter().map(|port| count(*port)).collect();
            Phrase::new("port-several").with("ports", Arg::Several(all))
        }
    }
}

/// A phrase that says which port: what kind of one (`kind`), and its number among those of this kind (`port`), as it stands on
/// the part.
pub fn with_port(phrase: Phrase, part: Option<&Part>, port: u8) -> Phrase {
    let (kind, number) = match part.and_then(|part| special_port(part, port)) {
        Some(SpecialPort::Passive) => ("passive", port),
        Some(SpecialPort::Through) => ("through", port),
        Some(SpecialPort::Tap) => ("tap", port.saturating_sub(1)),
        None => ("output", port),
    };
    phrase.text("kind", kind).with("port", Arg::Count(u64::from(number)))
}

/// A port that is not one output among equals.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SpecialPort {
    /// An amplifier's port that it does not amplify.
    Passive,
    /// The way through a tap, often marked OUT.
    Through,
    /// A tap output, often marked TAP.
    Tap,
}

/// What is special about a port of a part; `None` where it is one output among equals.
pub fn special_port(part: &Part, port: u8) -> Option<SpecialPort> {
    match part.kind {
        PartKind::Amplifier if part.rating.modem_port && port == part.outputs() => Some(SpecialPort::Passive),
        PartKind::Tap if port == 1 => Some(SpecialPort::Through),
        PartKind::Tap => Some(SpecialPort::Tap),
        _ => None,
    }
}

/// The phrase that names a service: `cable TV`.
pub fn service(kind: ServiceKind) -> Phrase {
    kind.phrase()
}

/// The phrase for what a reading says, with its unit.
pub fn reading(reading: ReadingKind) -> Phrase {
    match reading {
        ReadingKind::ModemSends { dbmv } => {
            Phrase::new("reading-modem-sends").with("level", Arg::Level(dbmv))
        }
        ReadingKind::Power { sent_dbm, received_dbm } => {
            Phrase::new("reading-power").with("loss", Arg::Loss(sent_dbm - received_dbm))
        }
        ReadingKind::NodesSeen { count } => {
            Phrase::new("reading-nodes-seen").with("count", Arg::Count(u64::from(count)))
        }
        ReadingKind::Link { state } => Phrase::new(format!("reading-link-{}", state.name())),
        ReadingKind::PacketLoss { percent, under_load } => {
            let id = if under_load { "reading-packet-loss-busy" } else { "reading-packet-loss" };
            Phrase::new(id).with("share", Arg::Share(percent / 100.0))
        }
        ReadingKind::Swings { low_mbps, high_mbps, .. } => Phrase::new("reading-swings")
            .with("low", Arg::RateAsRead(low_mbps))
            .with("high", Arg::RateAsRead(high_mbps)),
        ReadingKind::Level { mhz, dbmv } => Phrase::new("reading-level")
            .with("level", Arg::Level(dbmv))
            .with("frequency", Arg::Frequency(mhz)),
        ReadingKind::ErrorRatio { mhz, db } => Phrase::new("reading-error-ratio")
            .with("ratio", Arg::Loss(db))
            .with("frequency", Arg::Frequency(mhz)),
        ReadingKind::Throughput { down_mbps, up_mbps } => Phrase::new("reading-throughput")
            .with("down", Arg::RateAsRead(down_mbps))
            .with("up", Arg::RateAsRead(up_mbps)),
        ReadingKind::PhyRate { mbps } => Phrase::new("reading-phy").with("rate", Arg::RateAsRead(mbps)),
        ReadingKind::RoundTrip { ms } => {
            Phrase::new("reading-round-trip").with("time", Arg::Milliseconds(ms))
        }
    }
}

//! What a fact says, as a phrase for people.

use facts::fact::{PhotoImage, SubjectId};
use phrase::{Arg, Phrase};
use serde::de::DeserializeOwned;
use serde_json::Value;

use super::speak::thing;
use crate::naming;
use crate::record::{
    Adapter, Building, CableKind, ChangeKind, Connector, EntryKind, EntryState, Feed, HowMeasured, Internet,
    ModemBands, ModemGeneration, NetworkPlan, OtherNetwork, Outcome, OutcomeKind, Ownership, PartKind,
    PhotoRole, Plugged, PortEnd, PowerFeed, ReadingKind, RunLength, ServiceKind, Sharing, SingleCable,
    Survey, TestReach, TvSignal, Wish, field,
};

/// The value of a field as a phrase. What this release cannot read is said as it stands.
pub fn value(survey: &Survey, name: &str, value: &Value) -> Phrase {
    if value.is_null() {
        return Phrase::new("value-empty");
    }
    known(survey, name, value).unwrap_or_else(|| plain(value))
}

fn known(survey: &Survey, name: &str, value: &Value) -> Option<Phrase> {
    match name {
        field::KIND => part_kind(value).or_else(|| Some(naming::service(read::<ServiceKind>(value)?))),
        field::CABLE => word::<CableKind>("value-cable", value),
        field::CONNECTOR_NEAR | field::CONNECTOR_FAR => word::<Connector>("value-connector", value),
        field::ENTRY_KIND => word::<EntryKind>("value-entry_kind", value),
        field::ENTRY_STATE => word::<EntryState>("value-entry_state", value),
        field::ROLE => word::<PhotoRole>("value-role", value),
        field::SIGNAL => word::<TvSignal>("value-signal", value),
        field::SINGLE_CABLE => word::<SingleCable>("value-single_cable", value),
        field::SHARING => word::<Sharing>("value-sharing", value),
        field::DEVICE_FILTER => read::<bool>(value)
            .map(|there| Phrase::new(if there { "value-there" } else { "value-not-there" })),
        field::MODEM => read(value).map(modem),
        field::OTHER_NETWORK => read::<OtherNetwork>(value).map(|network| other_network(&network)),
        field::POWER => read::<PowerFeed>(value).map(|power| {
            Phrase::new("value-power")
                .phrase("from", thing(survey, power.from))
                .phrase("to", thing(survey, power.to))
        }),
        field::HOW => read::<HowMeasured>(value).map(|how| {
            let reach = word::<TestReach>("value-reach", value.get("reach").unwrap_or(&Value::Null));
            let id = if how.over_radio { "value-how-radio" } else { "value-how-wire" };
            let told = reach.map_or_else(|| plain(value), |reach| Phrase::new(id).phrase("reach", reach));
            match how.socket_mbps {
                Some(mbps) => Phrase::new("value-how-socket")
                    .phrase("how", told)
                    .with("socket", Arg::RateAsRead(mbps.into())),
                None => told,
            }
        }),
        field::LENGTH => length(&read(value)?),
        field::FEED => Some(feed(survey, &read(value)?)),
        field::ROOM | field::OF | field::ABOUT | field::ENTRY | field::SERVED_FROM | field::MEASUREMENT => {
            Some(thing(survey, read::<SubjectId>(value)?))
        }
        field::PLUGGED => Some(plugged(value, &read::<Vec<Plugged>>(value)?)),
        field::ADAPTER => {
            read::<Adapter>(value).map(|found| adapter("value-adapter", &found.version, found.ethernet_mbps))
        }
        field::NETWORK => {
            read::<NetworkPlan>(value).map(|plan| adapter("value-network", &plan.version, plan.ethernet_mbps))
        }
        field::WISH => read::<Wish>(value).map(|wish| rates(wish.down_mbps, wish.up_mbps)),
        field::INTERNET => read::<Internet>(value).map(|plan| rates(plan.down_mbps, plan.up_mbps)),
        field::BUILDING => read(value).map(building),
        field::MEASURED => read(value).map(|found| measured(&found)),
        field::TOP => {
            value.as_f64().map(|mhz| Phrase::new("value-frequency").with("mhz", Arg::Frequency(mhz)))
        }
        field::CHANGE => read::<ChangeKind>(value).map(|change| change.phrase(survey)),
        field::OUTCOME => read::<Outcome>(value).map(|outcome| {
            Phrase::new(match outcome.end {
                OutcomeKind::Done => "value-work-done",
                OutcomeKind::CouldNot => "value-work-could-not",
                OutcomeKind::PutBack => "value-work-put-back",
            })
        }),
        _ if name.starts_with("asked.") => asked(value),
        field::IMAGE => read::<PhotoImage>(value).map(|image| {
            let pixels = |side: u32| Arg::Text(side.to_string());
            Phrase::new("value-image").with("width", pixels(image.width)).with("height", pixels(image.height))
        }),
        _ if name.starts_with("text.") => Some(Phrase::new("value-text-piece")),
        _ if name.starts_with("end.") => word::<PortEnd>("value-end", value),
        _ => None,
    }
}

/// Answers to questions that no other field answers, by the end of their message `value-asked-`.
const ANSWERS: [&str; 22] = [
    "yes",
    "no",
    "unsure",
    // What must not fail.
    "phone",
    "alarm",
    "medical",
    "nothing",
    // Kinds of cable, and plugs.
    "six",
    "fifty_nine",
    "seven",
    "eleven",
    "differ",
    "good",
    "some",
    // Power.
    "plug",
    "coax",
    "off",
    // Adapters, by version.
    "none",
    "25",
    "20-bonded",
    "20",
    "11",
];

/// The answer to a question that no other field answers: words where this release knows them.
fn asked(value: &Value) -> Option<Phrase> {
    let answer = |value: &Value| {
        let answer = ANSWERS.iter().find(|answer| value.as_str() == Some(answer))?;
        Some(Phrase::new(format!("value-asked-{answer}")))
    };
    let Some(several) = value.as_array() else { return answer(value) };
    let several: Option<Vec<_>> =
        several.iter().map(|one| Some(Arg::Phrase(Box::new(answer(one)?)))).collect();
    Some(Phrase::new("value-several").with("several", Arg::Several(several?)))
}

fn read<T: DeserializeOwned>(value: &Value) -> Option<T> {
    serde_json::from_value(value.clone()).ok()
}

/// A word of a closed list, if it is one that this release knows.
fn word<T: DeserializeOwned>(prefix: &str, value: &Value) -> Option<Phrase> {
    read::<T>(value)?;
    Some(Phrase::new(format!("{prefix}-{}", value.as_str()?)))
}

fn part_kind(value: &Value) -> Option<Phrase> {
    read::<PartKind>(value)?;
    Some(Phrase::new(format!("part-{}", value.as_str()?)).with("legs", Arg::Count(0)))
}

fn length(length: &RunLength) -> Option<Phrase> {
    let known = word::<crate::record::LengthKnown>("value-known", &serde_json::to_value(length.known).ok()?)?;
    Some(Phrase::new("value-length").with("length", Arg::LengthRange(length.span())).phrase("known", known))
}

fn feed(survey: &Survey, feed: &Feed) -> Phrase {
    match feed {
        Feed::Nothing => Phrase::new("value-feed-nothing"),
        Feed::From(from) => {
            let port = if survey.parts.contains_key(&from.part) {
                naming::port(survey, from.part, from.port)
            } else {
                thing(survey, from.part)
            };
            Phrase::new("value-feed-from").phrase("port", port)
        }
    }
}

fn plugged(value: &Value, found: &[Plugged]) -> Phrase {
    if found.is_empty() {
        return Phrase::new("value-plugged-nothing");
    }
    let words =
        value.as_array().into_iter().flatten().filter_map(|one| word::<Plugged>("value-plugged", one));
    let words = words.map(|phrase| Arg::Phrase(Box::new(phrase))).collect();
    Phrase::new("value-several").with("several", Arg::Several(words))
}

fn adapter(id: &str, version: &str, ethernet_mbps: u32) -> Phrase {
    Phrase::new(id).text("version", version).with("ethernet", Arg::Rate(ethernet_mbps.into()))
}

fn rates(down: f64, up: f64) -> Phrase {
    Phrase::new("value-rates").with("down", Arg::RateAsRead(down)).with("up", Arg::RateAsRead(up))
}

fn building(found: Building) -> Phrase {
    Phrase::new(match (found.ownership, found.shared) {
        (Ownership::Own, false) => "value-building-own",
        (Ownership::Own, true) => "value-building-own_shared",
        (Ownership::Rented, false) => "value-building-rented",
        (Ownership::Rented, true) => "value-building-rented_shared",
    })
}

fn measured(found: &ReadingKind) -> Phrase {
    match *found {
        ReadingKind::Level { mhz, dbmv } => {
            Phrase::new("value-level").with("level", Arg::Level(dbmv)).with("mhz", Arg::Frequency(mhz))
        }
        ReadingKind::ErrorRatio { mhz, db } => {
            Phrase::new("value-error_ratio").with("ratio", Arg::Loss(db)).with("mhz", Arg::Frequency(mhz))
        }
        ReadingKind::Throughput { down_mbps, up_mbps } => rates(down_mbps, up_mbps),
        ReadingKind::PhyRate { mbps } => Phrase::new("value-phy_rate").with("rate", Arg::RateAsRead(mbps)),
        ReadingKind::RoundTrip { ms } => Phrase::new("value-round_trip").with("time", Arg::Milliseconds(ms)),
        ReadingKind::ModemSends { .. }
        | ReadingKind::Power { .. }
        | ReadingKind::NodesSeen { .. }
        | ReadingKind::PacketLoss { .. }
        | ReadingKind::Swings { .. } => naming::reading(*found),
    }
}

fn modem(bands: ModemBands) -> Phrase {
    let generation = bands.generation.map(|generation| {
        let version = match generation {
            ModemGeneration::V3_0 => "3.0",
            ModemGeneration::V3_1 => "3.1",
            ModemGeneration::V4_0 => "4.0",
        };
        Phrase::new("value-modem-generation").text("version", version)
    });
    let sends =
        bands.upstream_top_mhz.map(|mhz| Phrase::new("value-modem-sends").with("mhz", Arg::Frequency(mhz)));
    several(generation.into_iter().chain(sends))
}

fn other_network(network: &OtherNetwork) -> Phrase {
    let version =
        network.version.as_ref().map(|version| Phrase::new("value-network-version").text("version", version));
    let bands = network
        .bands
        .iter()
        .map(|band| Phrase::new("value-network-band").with("band", Arg::Band(band.low_mhz, band.high_mhz)));
    let nodes = (network.nodes > 0)
        .then(|| Phrase::new("value-network-nodes").with("count", Arg::Count(u64::from(network.nodes))));
    several(version.into_iter().chain(bands).chain(nodes))
}

fn several(phrases: impl Iterator<Item = Phrase>) -> Phrase {
    let phrases: Vec<_> = phrases.map(|phrase| Arg::Phrase(Box::new(phrase))).collect();
    if phrases.is_empty() {
        return Phrase::new("value-empty");
    }
    Phrase::new("value-several").with("several", Arg::Several(phrases))
}

/// Text as it is; anything else in the words of its members.
fn plain(value: &Value) -> Phrase {
    let mut text = String::new();
    write(value, &mut text);
    Phrase::new("value-text").text("text", text)
}

fn write(value: &Value, text: &mut String) {
    match value {
        Value::String(string) => text.push_str(string),
        Value::Array(items) => join(items.iter().map(|item| (None, item)), text),
        Value::Object(members) => {
            join(members.iter().map(|(name, member)| (Some(name.as_str()), member)), text);
        }
        Value::Null | Value::Bool(_) | Value::Number(_) => text.push_str(&value.to_string()),
    }
}

fn join<'a>(parts: impl Iterator<Item = (Option<&'a str>, &'a Value)>, text: &mut String) {
    for (place, (name, value)) in parts.filter(|(_, value)| !value.is_null()).enumerate() {
        if place > 0 {
            text.push_str(", ");
        }
        if let Some(name) = name {
            text.push_str(&name.replace('_', " "));
            text.push(' ');
        }
        write(value, text);
    }
}

//! What a fact says, as a phrase for people.

use serde::de::DeserializeOwned;
use serde_json::Value;

use super::speak::thing;
use crate::fact::SubjectId;
use crate::naming;
use crate::record::{
    Adapter, Building, CableKind, Connector, EntryKind, EntryState, Feed, Internet, NetworkPlan, Ownership,
    PartKind, PhotoImage, PhotoRole, Plugged, PortEnd, ReadingKind, RunLength, ServiceKind, Survey, Wish,
    field,
};
use crate::words::{Arg, Phrase};

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
        field::LENGTH => length(&read(value)?),
        field::FEED => Some(feed(survey, &read(value)?)),
        field::ROOM | field::OF | field::ABOUT => Some(thing(survey, read::<SubjectId>(value)?)),
        field::PLUGGED => Some(plugged(value, &read::<Vec<Plugged>>(value)?)),
        field::ADAPTER => {
            read::<Adapter>(value).map(|found| adapter("value-adapter", &found.version, found.ethernet_mbps))
        }
        field::NETWORK => {
            read::<NetworkPlan>(value).map(|plan| adapter("value-network", &plan.version, plan.ethernet_mbps))
        }
        field::WISH => read::<Wish>(value).map(|wish| rates(wish.down_mbps, wish.up_mbps)),
        field::INTERNET => read::<Internet>(value).map(|plan| rates(plan.down_mbps, plan.up_mbps)),
        field::BUILDING => read(value).map(|found| building(&found)),
        field::MEASURED => read(value).map(|found| measured(&found)),
        field::TOP => {
            value.as_f64().map(|mhz| Phrase::new("value-frequency").with("mhz", Arg::Frequency(mhz)))
        }
        field::IMAGE => read::<PhotoImage>(value).map(|image| {
            let pixels = |side: u32| Arg::Text(side.to_string());
            Phrase::new("value-image").with("width", pixels(image.width)).with("height", pixels(image.height))
        }),
        _ if name.starts_with("end.") => word::<PortEnd>("value-end", value),
        _ => None,
    }
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
    Phrase::new("value-rates").with("down", Arg::Rate(down)).with("up", Arg::Rate(up))
}

fn building(found: &Building) -> Phrase {
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
        ReadingKind::Throughput { down_mbps, up_mbps } => rates(down_mbps, up_mbps),
        ReadingKind::PhyRate { mbps } => Phrase::new("value-phy_rate").with("rate", Arg::Rate(mbps)),
        ReadingKind::RoundTrip { ms } => Phrase::new("value-round_trip").with("time", Arg::Milliseconds(ms)),
    }
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

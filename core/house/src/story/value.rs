//! What a fact says, as a phrase for people.

use std::str::FromStr;

use facts::fact::{PhotoImage, SubjectId};
use facts::photo::TakenAt;
use phrase::{Arg, Phrase};
use serde_json::Value;

use crate::naming::{self, thing};
use crate::rating::PartRating;
use crate::record::field::{Field, FieldValue};
use crate::record::{
    Adapter, Asked, BehindAdapter, Building, CableKind, ChangeKind, Connector, EntryKind, EntryState, Feed,
    HowMeasured, Internet, LengthKnown, ModemBands, Named, NetworkPlan, OtherNetwork, Outcome, Ownership,
    PartKind, PhotoRole, Plugged, PortEnd, PowerFeed, ReadingKind, Reply, RunLength, ServiceKind, Sharing,
    SingleCable, Survey, TestReach, TvSignal, Wish, Worded, every_field, field,
};

/// The value of a field as a phrase. Of what this release cannot read the text is said as it stands.
pub fn value(survey: &Survey, name: &str, value: &Value) -> Phrase {
    if value.is_null() {
        return Phrase::new("value-empty");
    }
    known(survey, name, value).unwrap_or_else(|| plain(survey, value))
}

/// What a field says, as a phrase.
pub fn told<T: ?Sized + FieldValue>(survey: &Survey, field: Field<T>, told: &T) -> Phrase {
    value(survey, field.name(), &serde_json::to_value(told).unwrap_or_default())
}

fn known(survey: &Survey, name: &str, value: &Value) -> Option<Phrase> {
    if Asked::is_field(name) {
        return asked(value);
    }
    if name == field::IS {
        return Some(Phrase::new("told-is"));
    }
    if name == field::DIGEST {
        return Some(Phrase::new("value-digest"));
    }
    if field::TEXT_PIECE.number::<usize>(name).is_some() {
        return Some(Phrase::new("value-text-piece"));
    }
    if field::END.number::<usize>(name).is_some() {
        return field::END.read(value)?.tell(survey);
    }
    if name == field::part::MEASUREMENT.name() {
        return field::part::MEASUREMENT.read(value)?.tell(survey);
    }
    of_record(survey, name, value)
}

/// Tells the fields of the table. Where records share a name, the first that can read the value tells it.
macro_rules! telling {
    ($($record:ident $Record:ident {
        $($(#[$about:meta])+ $NAME:ident $name:literal: $value:ty
            $(=> $member:ident $(if $only:ident)?)?;)+
    })+) => {
        fn of_record(survey: &Survey, name: &str, value: &Value) -> Option<Phrase> {
            $($(
                if name == $name
                    && let Some(phrase) =
                        field::$record::$NAME.read(value).and_then(|read| read.tell(survey))
                {
                    return Some(phrase);
                }
            )+)+
            None
        }
    };
}

every_field!(telling);

/// A value that people are told.
trait Tell {
    /// What it says; `None` where it is told as it stands.
    fn tell(&self, survey: &Survey) -> Option<Phrase>;
}

/// Closed lists: a word for each member.
macro_rules! by_word {
    ($($List:ty),+) => {
        $(impl Tell for $List {
            fn tell(&self, _: &Survey) -> Option<Phrase> {
                Some(self.phrase())
            }
        })+
    };
}

by_word!(
    CableKind,
    Connector,
    EntryKind,
    EntryState,
    LengthKnown,
    PhotoRole,
    Plugged,
    PortEnd,
    Reply,
    ServiceKind,
    Sharing,
    SingleCable,
    TestReach,
    TvSignal
);

/// Text and figures that are told as they stand.
macro_rules! as_it_stands {
    ($($Value:ty),+) => {
        $(impl Tell for $Value {
            fn tell(&self, _: &Survey) -> Option<Phrase> {
                None
            }
        })+
    };
}

as_it_stands!(String, u8);

impl Tell for PartRating {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        Some(several(naming::rating(self).into_iter()))
    }
}

impl Tell for PartKind {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        Some(self.phrase().with("legs", Arg::Count(0)))
    }
}

impl Tell for SubjectId {
    fn tell(&self, survey: &Survey) -> Option<Phrase> {
        Some(thing(survey, *self))
    }
}

impl Tell for bool {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        Some(Phrase::new(if *self { "value-there" } else { "value-not-there" }))
    }
}

/// A bare number is a frequency in MHz; what has another unit has a type of its own.
impl Tell for f64 {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        Some(Phrase::new("value-frequency").with("mhz", Arg::Frequency(*self)))
    }
}

impl Tell for RunLength {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        if self.is_screwed_on() {
            return Some(Phrase::new("value-length-screwed-on"));
        }
        let length = Phrase::new("value-length").with("length", Arg::LengthRange(self.span()));
        Some(length.phrase("known", self.known.phrase()))
    }
}

impl Tell for Feed {
    fn tell(&self, survey: &Survey) -> Option<Phrase> {
        Some(match self {
            Self::Nothing => Phrase::new("value-feed-nothing"),
            Self::From(from) => {
                let port = if survey.parts.contains_key(&from.part) {
                    naming::port(survey, from.part, from.port)
                } else {
                    thing(survey, from.part)
                };
                Phrase::new("value-feed-from").phrase("port", port)
            }
        })
    }
}

impl Tell for Vec<Plugged> {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        if self.is_empty() {
            return Some(Phrase::new("value-plugged-nothing"));
        }
        Some(several(self.iter().map(|device| device.phrase())))
    }
}

impl Tell for Adapter {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        Some(adapter("value-adapter", self.version.as_deref(), self.ethernet_mbps))
    }
}

impl Tell for BehindAdapter {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        let pieces: Vec<_> = self.pieces.iter().map(|piece| piece.phrase()).collect();
        let none = pieces.is_empty().then(|| Phrase::new("value-behind-nothing"));
        let rate =
            self.mbps.map(|mbps| Phrase::new("value-behind-rate").with("rate", Arg::RateAsRead(mbps.into())));
        Some(several(none.into_iter().chain(pieces).chain(rate)))
    }
}

impl Tell for NetworkPlan {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        let told = adapter("value-network", Some(&self.version), self.ethernet_mbps);
        let (said, count) = self.owned.map_or(("no", 0), |owned| ("yes", owned));
        Some(told.text("counted", said).with("owned", Arg::Count(count.into())))
    }
}

/// What nobody said of an adapter is left out.
fn adapter(id: &str, version: Option<&str>, ethernet_mbps: Option<u32>) -> Phrase {
    let phrase = Phrase::new(id).text("version", version.unwrap_or("none"));
    match ethernet_mbps {
        Some(mbps) => phrase.text("port", "said").with("ethernet", Arg::Rate(mbps.into())),
        None => phrase.text("port", "none").text("ethernet", ""),
    }
}

impl Tell for Wish {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        Some(rates(self.down_mbps, self.up_mbps))
    }
}

impl Tell for Internet {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        Some(rates(self.down_mbps, self.up_mbps))
    }
}

fn rates(down: f64, up: f64) -> Phrase {
    Phrase::new("value-rates").with("down", Arg::RateAsRead(down)).with("up", Arg::RateAsRead(up))
}

impl Tell for Building {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        Some(Phrase::new(match (self.ownership, self.shared) {
            (Ownership::Own, false) => "value-building-own",
            (Ownership::Own, true) => "value-building-own_shared",
            (Ownership::Rented, false) => "value-building-rented",
            (Ownership::Rented, true) => "value-building-rented_shared",
        }))
    }
}

impl Tell for ReadingKind {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        Some(match *self {
            Self::Level { mhz, dbmv } => {
                Phrase::new("value-level").with("level", Arg::Level(dbmv)).with("mhz", Arg::Frequency(mhz))
            }
            Self::ErrorRatio { mhz, db } => {
                Phrase::new("value-error_ratio").with("ratio", Arg::Loss(db)).with("mhz", Arg::Frequency(mhz))
            }
            Self::Throughput { down_mbps, up_mbps } => rates(down_mbps, up_mbps),
            Self::PhyRate { mbps } => Phrase::new("value-phy_rate").with("rate", Arg::RateAsRead(mbps)),
            Self::RoundTrip { ms } => Phrase::new("value-round_trip").with("time", Arg::Milliseconds(ms)),
            Self::ModemSends { .. }
            | Self::Power { .. }
            | Self::NodesSeen { .. }
            | Self::Link { .. }
            | Self::PacketLoss { .. }
            | Self::Swings { .. } => naming::reading(*self),
        })
    }
}

impl Tell for HowMeasured {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        let id = if self.over_radio { "value-how-radio" } else { "value-how-wire" };
        let told = Phrase::new(id).phrase("reach", self.reach.phrase());
        Some(match self.socket_mbps {
            Some(mbps) => Phrase::new("value-how-socket")
                .phrase("how", told)
                .with("socket", Arg::RateAsRead(mbps.into())),
            None => told,
        })
    }
}

impl Tell for ModemBands {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        let generation = self
            .generation
            .map(|generation| Phrase::new("value-modem-generation").text("version", generation.name()));
        let sends = self
            .upstream_top_mhz
            .map(|mhz| Phrase::new("value-modem-sends").with("mhz", Arg::Frequency(mhz)));
        Some(several(generation.into_iter().chain(sends)))
    }
}

impl Tell for OtherNetwork {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        let version = self
            .version
            .as_ref()
            .map(|version| Phrase::new("value-network-version").text("version", version));
        let bands = self.bands.iter().map(|band| {
            Phrase::new("value-network-band").with("band", Arg::Band(band.low_mhz, band.high_mhz))
        });
        let nodes = (self.nodes > 0)
            .then(|| Phrase::new("value-network-nodes").with("count", Arg::Count(u64::from(self.nodes))));
        Some(several(version.into_iter().chain(bands).chain(nodes)))
    }
}

impl Tell for PowerFeed {
    fn tell(&self, survey: &Survey) -> Option<Phrase> {
        let power = Phrase::new("value-power").phrase("from", thing(survey, self.from));
        Some(power.phrase("to", thing(survey, self.to)))
    }
}

impl Tell for TakenAt {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        Some(Phrase::new("value-text").text("text", self.to_minute()))
    }
}

impl Tell for PhotoImage {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        let pixels = |side: u32| Arg::Text(side.to_string());
        Some(Phrase::new("value-image").with("width", pixels(self.width)).with("height", pixels(self.height)))
    }
}

impl Tell for ChangeKind {
    fn tell(&self, survey: &Survey) -> Option<Phrase> {
        Some((*self).phrase(survey))
    }
}

impl Tell for Outcome {
    fn tell(&self, _: &Survey) -> Option<Phrase> {
        Some(self.end.phrase())
    }
}

/// The answer to a question that no other field answers: words where this release knows them.
fn asked(value: &Value) -> Option<Phrase> {
    let reply = |value: &Value| Some(Reply::of_name(value.as_str()?)?.phrase());
    let Some(replies) = value.as_array() else { return reply(value) };
    let replies: Option<Vec<_>> =
        replies.iter().map(|one| Some(Arg::Phrase(Box::new(reply(one)?)))).collect();
    Some(Phrase::new("value-several").with("several", Arg::Several(replies?)))
}

fn several(phrases: impl Iterator<Item = Phrase>) -> Phrase {
    let phrases: Vec<_> = phrases.map(|phrase| Arg::Phrase(Box::new(phrase))).collect();
    if phrases.is_empty() {
        return Phrase::new("value-empty");
    }
    Phrase::new("value-several").with("several", Arg::Several(phrases))
}

/// What no line of the table can read: text and numbers as they stand, things by name, and no name of a field.
fn plain(survey: &Survey, value: &Value) -> Phrase {
    match value {
        Value::String(text) => match SubjectId::from_str(text) {
            Ok(subject) => thing(survey, subject),
            Err(_) if text.trim().is_empty() => Phrase::new("value-empty"),
            Err(_) => Phrase::new("value-text").text("text", text),
        },
        Value::Number(number) => Phrase::new("value-text").text("text", number.to_string()),
        Value::Bool(is) => Phrase::new(if *is { "value-asked-yes" } else { "value-asked-no" }),
        Value::Array(items) => several(items.iter().map(|item| plain(survey, item))),
        Value::Null | Value::Object(_) => Phrase::new("value-unread"),
    }
}

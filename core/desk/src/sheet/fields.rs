//! The fields that can be set by themselves: by their names in a sheet or in the record, how their values are written in a
//! sheet, and what of the record they become.

use std::fmt::Write as _;

use facts::fact::SubjectId;
use house::record::{Reading, ReadingKind, Survey, field};

use super::onto::Called;
use super::value::quoted_line;

/// What kind of thing a field is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// The survey as a whole.
    Survey,
    /// A part.
    Part,
    /// A cable.
    Run,
    /// A room.
    Room,
    /// A service.
    Service,
    /// A reading.
    Reading,
    /// A note.
    Note,
}

/// What of the record a field of a sheet becomes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Becomes {
    /// A field of the thing.
    Field(&'static str),
    /// What feeds a part.
    Feed,
    /// Fields of the cable that leads to a part.
    Run(&'static [&'static str]),
    /// What is on the ports.
    Ends,
    /// A member of what a part is rated for.
    Rating(&'static str),
    /// What a reading measured.
    Measured,
}

/// How a value stands in a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Written {
    /// In quotes, whatever it is.
    Text,
    /// In quotes, unless it is a list, a table, a number or a yes or no.
    Plain,
    /// A list: words between commas are its entries.
    List,
}

impl Written {
    /// A value as it stands in a sheet.
    pub fn of(self, value: &str) -> String {
        let quoted = |text: &str| toml::Value::String(text.to_owned()).to_string();
        let bare = value.trim();
        let is_bare = bare.starts_with(['[', '{'])
            || matches!(bare, "true" | "false")
            || (!bare.is_empty()
                && bare.bytes().all(|byte| byte.is_ascii_digit())
                && !(bare.len() > 1 && bare.starts_with('0')));
        match self {
            Self::Text => quoted(value),
            _ if is_bare => bare.to_owned(),
            Self::Plain => quoted(value),
            Self::List => {
                let entries: Vec<String> = bare.split(',').map(|entry| quoted(entry.trim())).collect();
                format!("[{}]", entries.join(", "))
            }
        }
    }
}

/// A field that can be set.
#[derive(Debug, Clone, Copy)]
pub struct Field {
    /// Its name in a sheet.
    pub name: &'static str,
    /// Its name in the record, where that is another.
    also: &'static str,
    /// What it becomes.
    pub becomes: Becomes,
    written: Written,
    /// Whether it can be left open.
    pub is_needed: bool,
}

const fn field(name: &'static str, also: &'static str, becomes: Becomes, written: Written) -> Field {
    Field { name, also, becomes, written, is_needed: false }
}

const fn needed(name: &'static str, becomes: Becomes, written: Written) -> Field {
    Field { name, also: "", becomes, written, is_needed: true }
}

const fn rated(name: &'static str, member: &'static str) -> Field {
    field(name, member, Becomes::Rating(member), Written::Plain)
}

use Becomes::{Ends, Feed, Measured, Run};
use Written::{List, Plain, Text};

const SURVEY: &[Field] = &[
    field("name", "", Becomes::Field(field::NAME), Text),
    field("place", "", Becomes::Field(field::PLACE), Text),
    field("internet", "", Becomes::Field(field::INTERNET), Plain),
    field("building", "", Becomes::Field(field::BUILDING), Plain),
    field("network", "", Becomes::Field(field::NETWORK), Plain),
];

const PART: &[Field] = &[
    field("tag", "", Becomes::Field(field::TAG), Text),
    field("kind", "", Becomes::Field(field::KIND), Text),
    field("label", "", Becomes::Field(field::LABEL), Text),
    field("where", "", Becomes::Field(field::WHERE), Text),
    field("from", "", Feed, Text),
    field("port", "", Feed, Plain),
    field("feed", "", Feed, Text),
    field("cable", "", Run(&[field::CABLE]), Plain),
    field("length", "", Run(&[field::LENGTH]), Text),
    field("run_tag", "", Run(&[field::TAG]), Text),
    field("connectors", "", Run(&[field::CONNECTOR_NEAR, field::CONNECTOR_FAR]), Plain),
    field("ends", "end", Ends, Plain),
    rated("legs", "legs"),
    Field { written: List, ..rated("loss", "leg_losses_db") },
    rated("band", "band"),
    rated("stop_band", "stop_band"),
    rated("rejection", "rejection_db"),
    rated("tap_loss", "tap_db"),
    rated("gain", "gain_db"),
    rated("return_gain", "return_gain_db"),
    rated("return_top", "return_high_mhz"),
    rated("moca_bypass", "moca_bypass"),
    rated("modem_port", "modem_port"),
    rated("isolation", "isolation_db"),
    rated("return_loss", "return_loss_db"),
    rated("power_pass", "power_pass"),
    rated("says_moca", "says_moca"),
    rated("passes_on", "passes_on"),
    field("measured", "measurement", Becomes::Field(field::MEASUREMENT), Text),
    field("service", "entry_kind", Becomes::Field(field::ENTRY_KIND), Text),
    field("state", "entry_state", Becomes::Field(field::ENTRY_STATE), Text),
    field("room", "", Becomes::Field(field::ROOM), Text),
    field("plugged", "", Becomes::Field(field::PLUGGED), List),
    field("adapter", "", Becomes::Field(field::ADAPTER), Plain),
    field("behind_adapter", "", Becomes::Field(field::part::BEHIND_ADAPTER.name()), Plain),
    field("sharing", "", Becomes::Field(field::SHARING), Text),
    field("device_filter", "", Becomes::Field(field::DEVICE_FILTER), Plain),
];

const RUN: &[Field] = &[
    field("run_tag", "tag", Run(&[field::TAG]), Text),
    field("cable", "", Run(&[field::CABLE]), Plain),
    field("length", "", Run(&[field::LENGTH]), Text),
    field("connectors", "", Run(&[field::CONNECTOR_NEAR, field::CONNECTOR_FAR]), Plain),
    field("connector_near", "", Run(&[field::CONNECTOR_NEAR]), Text),
    field("connector_far", "", Run(&[field::CONNECTOR_FAR]), Text),
];

const ROOM: &[Field] = &[
    needed("name", Becomes::Field(field::NAME), Text),
    field("wish", "", Becomes::Field(field::WISH), Plain),
    field("served_from", "", Becomes::Field(field::SERVED_FROM), Text),
];

const SERVICE: &[Field] = &[
    needed("kind", Becomes::Field(field::KIND), Text),
    field("top", "top_mhz", Becomes::Field(field::TOP), Text),
    field("entry", "", Becomes::Field(field::ENTRY), Text),
    field("signal", "", Becomes::Field(field::SIGNAL), Text),
    field("modem", "", Becomes::Field(field::MODEM), Plain),
    field("drops_out", "", Becomes::Field(field::DROPS_OUT), Plain),
    field("single_cable", "", Becomes::Field(field::SINGLE_CABLE), Text),
    field("network", "other_network", Becomes::Field(field::OTHER_NETWORK), Plain),
    field("power", "", Becomes::Field(field::POWER), Plain),
];

const READING: &[Field] = &[
    field("at", "about", Becomes::Field(field::ABOUT), Text),
    field("port", "", Becomes::Field(field::PORT), Plain),
    field("how", "", Becomes::Field(field::HOW), Plain),
    field("level", "", Measured, Text),
    field("mer", "", Measured, Text),
    field("frequency", "", Measured, Text),
    field("throughput", "", Measured, Plain),
    field("phy_rate", "", Measured, Text),
    field("round_trip", "", Measured, Text),
    field("modem_sends", "", Measured, Text),
    field("power", "", Measured, Plain),
    field("nodes_seen", "", Measured, Plain),
    field("packet_loss", "", Measured, Plain),
    field("link", "", Measured, Text),
    field("swings", "", Measured, Plain),
];

const NOTE: &[Field] = &[needed("text", Becomes::Field(field::TEXT), Text)];

impl Kind {
    /// What a thing is; nothing where nothing of it is set by itself.
    pub fn of(survey: &Survey, subject: SubjectId) -> Option<Self> {
        let kinds = [
            (subject == survey.id, Self::Survey),
            (survey.parts.contains_key(&subject), Self::Part),
            (survey.runs.contains_key(&subject), Self::Run),
            (survey.rooms.contains_key(&subject), Self::Room),
            (survey.services.contains_key(&subject), Self::Service),
            (survey.readings.contains_key(&subject), Self::Reading),
            (survey.notes.contains_key(&subject), Self::Note),
        ];
        kinds.into_iter().find(|(is, _)| *is).map(|(_, kind)| kind)
    }

    const fn fields(self) -> &'static [Field] {
        match self {
            Self::Survey => SURVEY,
            Self::Part => PART,
            Self::Run => RUN,
            Self::Room => ROOM,
            Self::Service => SERVICE,
            Self::Reading => READING,
            Self::Note => NOTE,
        }
    }

    /// The names of its fields.
    pub fn names(self) -> Vec<&'static str> {
        self.fields().iter().map(|field| field.name).collect()
    }
}

impl Field {
    /// The field of this name; and the port, of one that is counted: `end.3`.
    pub fn named(kind: Kind, name: &str) -> Option<(&'static Self, Option<u8>)> {
        let (stem, port) = match name.split_once('.') {
            Some((stem @ ("end" | "ends"), port)) => (stem, Some(port.parse().ok()?)),
            _ => (name, None),
        };
        let is = |field: &&Self| field.name == stem || (field.also == stem && !stem.is_empty());
        kind.fields().iter().find(is).map(|field| (field, port))
    }

    /// Whether it is what a thing is called by.
    pub fn is_name(&self) -> bool {
        matches!(self.becomes, Becomes::Field(field::TAG))
            || self.name == "run_tag"
            || (self.is_needed && self.name == "name")
    }

    /// The line of a sheet in which it says this.
    pub fn line(&self, value: &str, port: Option<u8>) -> String {
        match (self.name, port) {
            (name, Some(port)) => format!("{name} = {{ {port} = {} }}\n", Written::Text.of(value)),
            // A sheet has notes in the tables of what they are about.
            ("text", None) => format!("note = {}\n", self.written.of(value)),
            ("connector_near", None) => format!("connectors = {{ near = {} }}\n", Written::Text.of(value)),
            ("connector_far", None) => format!("connectors = {{ far = {} }}\n", Written::Text.of(value)),
            (name, None) => format!("{name} = {}\n", self.written.of(value)),
        }
    }

    /// The lines of a reading that stand beside those that are set: where it was taken, and what it measured where no line
    /// says that.
    pub fn reading_lines(reading: &Reading, called: &Called, lines: &str) -> String {
        let says = |name: &str| lines.lines().any(|line| line.starts_with(&format!("{name} =")));
        let mut told = String::new();
        let at = reading.about.and_then(|about| called.name_of(about));
        if let Some(at) = at.filter(|_| !says("at")) {
            told.push_str(&quoted_line("at", at));
        }
        if let Some(port) = reading.port.filter(|_| !says("port")) {
            // Writing to a text does not fail.
            let _ = writeln!(told, "port = {port}");
        }
        let measured = READING.iter().filter(|field| field.becomes == Becomes::Measured);
        let is_said = |name: &str| measured.clone().any(|field| field.name == name && says(field.name));
        let (level, ratio) = (is_said("level"), is_said("mer"));
        let another = measured
            .clone()
            .any(|field| says(field.name) && !["level", "mer", "frequency"].contains(&field.name));
        match reading.measured {
            _ if another => {}
            ReadingKind::Level { mhz, dbmv } => {
                if !level && !ratio {
                    told.push_str(&quoted_line("level", &format!("{dbmv} dBmV")));
                }
                if !says("frequency") {
                    told.push_str(&quoted_line("frequency", &format!("{mhz} MHz")));
                }
            }
            ReadingKind::ErrorRatio { mhz, db } => {
                if !level && !ratio {
                    told.push_str(&quoted_line("mer", &format!("{db} dB")));
                }
                if !says("frequency") {
                    told.push_str(&quoted_line("frequency", &format!("{mhz} MHz")));
                }
            }
            _ if level || ratio || says("frequency") => {}
            // Any will do: only where it was taken is set.
            _ => told.push_str("round_trip = \"1 ms\"\n"),
        }
        told
    }
}

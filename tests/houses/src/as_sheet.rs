//! A house written out as a sheet (`docs/sheet.md`), so that one made at random can be looked at with the command.
//!
//! What a sheet cannot say (answers to questions that no field holds) stands in it as comments.

use std::collections::BTreeMap;
use std::fmt::Write;

use facts::fact::SubjectId;
use house::rating::{Band, PartRating};
use house::record::{
    CableKind, Feed, HowMeasured, LengthKnown, Named, Part, PartKind, ReadingKind, Run, RunLength, Service,
    Survey,
};

/// The sheet of a house in which every part has a tag.
pub fn as_sheet(survey: &Survey) -> String {
    let mut sheet = Sheet { survey, text: String::new() };
    sheet.about();
    for room in survey.rooms.values() {
        let wish = room.wish.map(|wish| both_ways(wish.down_mbps, wish.up_mbps));
        let served_from = room.served_from.map(|outlet| quoted(&sheet.tag(outlet)));
        sheet.table(
            "room",
            &[("name", Some(quoted(&room.name))), ("wish", wish), ("served_from", served_from)],
        );
    }
    for part in survey.parts.values() {
        sheet.part(part);
    }
    for service in survey.services.values() {
        sheet.service(service);
    }
    for reading in survey.readings.values() {
        let at = reading.about.map(|part| quoted(&sheet.tag(part)));
        let mut fields = vec![("at", at)];
        fields.extend(reading.port.map(|port| ("port", Some(port.to_string()))));
        fields.extend(measured(reading.measured));
        fields.push(("how", reading.how.map(how)));
        sheet.table("reading", &fields);
    }
    sheet.text
}

/// Every record of a house as a line of text in which tags and names stand for ids: equal for houses that differ in
/// nothing but ids.
pub fn without_ids(survey: &Survey) -> Vec<String> {
    let mut names = BTreeMap::new();
    for part in survey.parts.values() {
        names.insert(part.id, part.tag.clone().unwrap_or_default());
        if let Some(Feed::From(feed)) = &part.feed
            && let Some(run) = feed.run
        {
            names.insert(run, format!("run to {}", part.tag.as_deref().unwrap_or_default()));
        }
    }
    names.extend(survey.rooms.values().map(|room| (room.id, room.name.clone())));
    let all = (survey.parts.values().map(|part| format!("{part:?}")))
        .chain(survey.runs.values().map(|run| format!("{run:?}")))
        .chain(survey.rooms.values().map(|room| format!("{room:?}")))
        .chain(
            survey
                .services
                .values()
                .map(|service| format!("{:?}", Service { id: survey.id, ..service.clone() })),
        )
        .chain(
            survey
                .readings
                .values()
                .map(|reading| format!("{:?}", house::record::Reading { id: survey.id, ..reading.clone() })),
        )
        .chain([format!("{:?} {:?} {:?}", survey.internet, survey.building, survey.network)]);
    let named = |line: String| {
        let line = line.replace(&survey.id.to_string(), "survey");
        names.iter().fold(line, |line, (id, name)| line.replace(&id.to_string(), name))
    };
    let mut lines: Vec<_> = all.map(named).collect();
    lines.sort();
    lines
}

struct Sheet<'a> {
    survey: &'a Survey,
    text: String,
}

impl Sheet<'_> {
    fn tag(&self, part: SubjectId) -> String {
        self.survey.parts.get(&part).and_then(|part| part.tag.clone()).unwrap_or_default()
    }

    fn table(&mut self, name: &str, fields: &[(&str, Option<String>)]) {
        let _ = writeln!(self.text, "[[{name}]]");
        self.fields(fields);
    }

    fn fields(&mut self, fields: &[(&str, Option<String>)]) {
        for (name, value) in fields {
            if let Some(value) = value {
                let _ = writeln!(self.text, "{name} = {value}");
            }
        }
        self.text.push('\n');
    }

    fn about(&mut self) {
        for ((subject, question), answer) in &self.survey.asked {
            let of = self.survey.parts.get(subject).and_then(|part| part.tag.as_deref()).unwrap_or("survey");
            let _ = writeln!(self.text, "# asked of {of}: {question} = {answer}");
        }
        let survey = self.survey;
        let internet = survey.internet.map(|plan| both_ways(plan.down_mbps, plan.up_mbps));
        let building = survey.building.map(|building| {
            format!("{{ ownership = {}, shared = {} }}", quoted(building.ownership.name()), building.shared)
        });
        let network = &survey.network;
        let port =
            |mbps: Option<u32>| mbps.map(|mbps| format!("ethernet = {}", unit(f64::from(mbps), "Mb/s")));
        let version = format!("version = {}", quoted(&network.version));
        let owned = network.owned.map(|owned| format!("owned = {owned}"));
        let network = inline(std::iter::once(version).chain(port(network.ethernet_mbps)).chain(owned));
        self.text.push_str("[survey]\n");
        self.fields(&[("internet", internet), ("building", building), ("network", Some(network))]);
    }

    fn part(&mut self, part: &Part) {
        let mut fields = vec![
            ("tag", part.tag.as_deref().map(quoted)),
            ("kind", Some(quoted(part.kind.name()))),
            ("label", part.label.as_deref().map(quoted)),
            ("where", part.place.as_deref().map(quoted)),
        ];
        match &part.feed {
            Some(Feed::Nothing) => fields.push(("feed", Some(quoted("nothing")))),
            Some(Feed::From(feed)) => {
                fields.push(("from", Some(quoted(&self.tag(feed.part)))));
                fields.push(("port", Some(feed.port.to_string())));
                fields.extend(feed.run.and_then(|run| self.survey.runs.get(&run)).into_iter().flat_map(run));
            }
            None => {}
        }
        let ends: Vec<_> =
            part.ends.iter().map(|(port, end)| format!("{port} = {}", quoted(end.name()))).collect();
        fields.push(("ends", (!ends.is_empty()).then(|| format!("{{ {} }}", ends.join(", ")))));
        fields.extend(rating(&part.rating, part.kind));
        if part.kind == PartKind::Entry {
            fields.push(("service", Some(quoted(part.entry_kind.name()))));
            fields.push(("state", Some(quoted(part.entry_state.name()))));
        }
        let room = part.room.and_then(|room| self.survey.rooms.get(&room));
        fields.push(("room", room.map(|room| quoted(&room.name))));
        let plugged = part.plugged.as_ref().map(|plugged| {
            let names: Vec<_> = plugged.iter().map(|device| quoted(device.name())).collect();
            format!("[{}]", names.join(", "))
        });
        fields.push(("plugged", plugged));
        let adapter = part.adapter.as_ref().map(|adapter| {
            let version = adapter.version.as_ref().map(|version| format!("version = {}", quoted(version)));
            let port =
                adapter.ethernet_mbps.map(|mbps| format!("ethernet = {}", unit(f64::from(mbps), "Mb/s")));
            let bridge = format!("bridge = {}", adapter.bridge);
            inline(version.into_iter().chain(port).chain([bridge]))
        });
        let behind = part.behind_adapter.as_ref().map(|behind| {
            let pieces: Vec<_> = behind.pieces.iter().map(|piece| quoted(piece.name())).collect();
            let slowest = behind.mbps.map(|mbps| format!("slowest = {}", unit(f64::from(mbps), "Mb/s")));
            inline(std::iter::once(format!("pieces = [{}]", pieces.join(", "))).chain(slowest))
        });
        fields.push(("behind_adapter", behind));
        fields.push(("adapter", adapter));
        fields.push(("sharing", part.sharing.map(|sharing| quoted(sharing.name()))));
        fields.push(("device_filter", part.device_filter.then(|| "true".to_owned())));
        self.table("part", &fields);
    }

    fn service(&mut self, service: &Service) {
        let modem = service.modem.map(|modem| {
            let generation = modem.generation.map(|one| format!("generation = {}", quoted(one.name())));
            let sends = modem.upstream_top_mhz.map(|mhz| format!("sends_to = {}", unit(mhz, "MHz")));
            inline(generation.into_iter().chain(sends))
        });
        let network = service.network.as_ref().map(|network| {
            let version = network.version.as_deref().map(|version| format!("version = {}", quoted(version)));
            let bands: Vec<_> = network.bands.iter().map(|of| band(*of)).collect();
            let bands = (!bands.is_empty()).then(|| format!("bands = [{}]", bands.join(", ")));
            let nodes = (network.nodes > 0).then(|| format!("nodes = {}", network.nodes));
            inline(version.into_iter().chain(bands).chain(nodes))
        });
        let power = service.power.map(|power| {
            let (from, to) = (self.tag(power.from), self.tag(power.to));
            format!("{{ from = {}, to = {} }}", quoted(&from), quoted(&to))
        });
        let entry = service.entry.map(|entry| quoted(&self.tag(entry)));
        self.table(
            "service",
            &[
                ("kind", Some(quoted(service.kind.name()))),
                ("top", service.top_mhz.map(|mhz| unit(mhz, "MHz"))),
                ("entry", entry),
                ("signal", service.signal.map(|signal| quoted(signal.name()))),
                ("modem", modem),
                ("single_cable", service.single_cable.map(|single| quoted(single.name()))),
                ("network", network),
                ("power", power),
            ],
        );
    }
}

type Fields = Vec<(&'static str, Option<String>)>;

fn quoted(text: &str) -> String {
    format!("\"{}\"", text.replace('\\', "\\\\").replace('"', "\\\""))
}

fn unit(value: f64, unit: &str) -> String {
    quoted(&format!("{value} {unit}"))
}

fn band(band: Band) -> String {
    quoted(&format!("{}-{} MHz", band.low_mhz, band.high_mhz))
}

fn both_ways(down_mbps: f64, up_mbps: f64) -> String {
    format!("{{ down = {}, up = {} }}", unit(down_mbps, "Mb/s"), unit(up_mbps, "Mb/s"))
}

fn inline(fields: impl Iterator<Item = String>) -> String {
    format!("{{ {} }}", fields.collect::<Vec<_>>().join(", "))
}

fn run(run: &Run) -> Fields {
    let cable = match run.cable {
        CableKind::Six => "6",
        CableKind::FiftyNine => "59",
        CableKind::Seven => "7",
        CableKind::Eleven => "11",
        CableKind::Unknown => "unknown",
    };
    let (near, far) = (quoted(run.connector_near.name()), quoted(run.connector_far.name()));
    vec![
        ("run_tag", run.tag.as_deref().map(quoted)),
        ("cable", Some(quoted(cable))),
        ("length", run.length.map(length)),
        ("connectors", Some(format!("{{ near = {near}, far = {far} }}"))),
    ]
}

fn length(length: RunLength) -> String {
    let known = match length.known {
        LengthKnown::Measured => "measured",
        LengthKnown::Paced => "paced",
        LengthKnown::Guessed => "guessed",
    };
    if length == RunLength::stated(length.metres, length.known) {
        return quoted(&format!("{} m {known}", length.metres));
    }
    let range = format!("{}-{} m {known}", length.low_metres, length.high_metres);
    let middle = f64::midpoint(length.low_metres, length.high_metres);
    let is_middle = (length.metres - middle).abs() < 1e-9;
    quoted(&if is_middle { range } else { format!("{range}, likely {} m", length.metres) })
}

/// What no label says already.
fn rating(rating: &PartRating, kind: PartKind) -> Fields {
    let db = |value: Option<f64>| value.map(|value| unit(value, "dB"));
    let mark = |mark: bool| mark.then(|| "true".to_owned());
    let losses: Vec<_> = rating.leg_losses_db.iter().map(|loss| unit(*loss, "dB")).collect();
    let mut fields = vec![
        ("legs", (rating.legs > 0).then(|| rating.legs.to_string())),
        ("loss", (!losses.is_empty()).then(|| format!("[{}]", losses.join(", ")))),
        ("band", rating.band.map(band)),
        ("stop_band", rating.stop_band.map(band)),
        ("rejection", db(rating.rejection_db)),
        ("tap_loss", db(rating.tap_db)),
        ("isolation", db(rating.isolation_db)),
        ("return_loss", db(rating.return_loss_db)),
        ("power_pass", rating.power_pass.map(|passes| passes.to_string())),
        ("says_moca", mark(rating.says_moca)),
    ];
    match kind {
        PartKind::Amplifier => fields.extend([
            ("gain", db(rating.gain_db)),
            ("return_gain", db(rating.return_gain_db)),
            ("return_top", rating.return_high_mhz.map(|mhz| unit(mhz, "MHz"))),
            ("moca_bypass", rating.moca_bypass.map(|has| has.to_string())),
            ("modem_port", mark(rating.modem_port)),
        ]),
        PartKind::Outlet => fields.push(("passes_on", mark(rating.passes_on))),
        _ => {}
    }
    fields
}

fn measured(measured: ReadingKind) -> Fields {
    match measured {
        ReadingKind::Level { mhz, dbmv } => {
            vec![("level", Some(unit(dbmv, "dBmV"))), ("frequency", Some(unit(mhz, "MHz")))]
        }
        ReadingKind::ErrorRatio { mhz, db } => {
            vec![("mer", Some(unit(db, "dB"))), ("frequency", Some(unit(mhz, "MHz")))]
        }
        ReadingKind::ModemSends { dbmv } => vec![("modem_sends", Some(unit(dbmv, "dBmV")))],
        ReadingKind::Throughput { down_mbps, up_mbps } => {
            vec![("throughput", Some(both_ways(down_mbps, up_mbps)))]
        }
        ReadingKind::PhyRate { mbps } => vec![("phy_rate", Some(unit(mbps, "Mb/s")))],
        ReadingKind::RoundTrip { ms } => vec![("round_trip", Some(unit(ms, "ms")))],
        ReadingKind::Power { sent_dbm, received_dbm } => {
            let (sent, received) = (unit(sent_dbm, "dBm"), unit(received_dbm, "dBm"));
            vec![("power", Some(format!("{{ sent = {sent}, received = {received} }}")))]
        }
        ReadingKind::Link { state } => vec![("link", Some(quoted(state.name())))],
        ReadingKind::NodesSeen { count } => vec![("nodes_seen", Some(count.to_string()))],
        ReadingKind::PacketLoss { percent, under_load } => {
            vec![("packet_loss", Some(format!("{{ percent = {percent}, busy = {under_load} }}")))]
        }
        ReadingKind::Swings { low_mbps, high_mbps, with_heat_or_hour } => {
            let (low, high) = (unit(low_mbps, "Mb/s"), unit(high_mbps, "Mb/s"));
            let told = format!("{{ low = {low}, high = {high}, with_heat_or_hour = {with_heat_or_hour} }}");
            vec![("swings", Some(told))]
        }
    }
}

fn how(how: HowMeasured) -> String {
    let socket = how.socket_mbps.map(|mbps| format!("socket = {}", unit(f64::from(mbps), "Mb/s")));
    let told = [format!("reach = {}", quoted(how.reach.name())), format!("radio = {}", how.over_radio)];
    inline(told.into_iter().chain(socket))
}

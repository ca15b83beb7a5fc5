//! One `[[reading]]` of a sheet: what was measured.

use house::record::{HowMeasured, Is, Reading, ReadingKind};
use phrase::Phrase;

use super::draft::{PortDraft, ReadingDraft, Told};
use super::edits::id_of;
use super::names::named;
use super::quantity::{decibels, frequency, level, measured_rate, milliseconds, percent, power, rate};
use super::several::{MOST_NODES, both_ways_measured, ethernet, notes};
use super::table::{Field, Section};

/// What one reading may tell: one of these.
const THINGS: [&str; 11] = [
    "level",
    "mer",
    "throughput",
    "phy_rate",
    "round_trip",
    "modem_sends",
    "power",
    "nodes_seen",
    "packet_loss",
    "link",
    "swings",
];

/// Reads a reading, which is called by its number. What cannot be read is noted and left out.
pub fn read<'s>(section: &Section<'s>, number: usize) -> Option<ReadingDraft<'s>> {
    let at = section.field("at");
    let port =
        section.field("port").map(|field| PortDraft { name: field.written().trim().to_owned(), field });
    // Every field is read, so that each mistake is told even where one reading tells too much.
    let (dbmv, db) = (section.parse("level", level), section.parse("mer", decibels));
    let mhz = section.parse("frequency", frequency);
    let (level_at, ratio_at) = (dbmv.zip(mhz), db.zip(mhz));
    let measured = [
        level_at.map(|(dbmv, mhz)| ReadingKind::Level { mhz, dbmv }),
        ratio_at.map(|(db, mhz)| ReadingKind::ErrorRatio { mhz, db }),
        both_ways_measured(section, "throughput")
            .map(|(down_mbps, up_mbps)| ReadingKind::Throughput { down_mbps, up_mbps }),
        section.parse("phy_rate", measured_rate).map(|mbps| ReadingKind::PhyRate { mbps }),
        section.parse("round_trip", milliseconds).map(|ms| ReadingKind::RoundTrip { ms }),
        section.parse("modem_sends", level).map(|dbmv| ReadingKind::ModemSends { dbmv }),
        section.field("power").as_ref().and_then(read_power),
        section
            .field("nodes_seen")
            .and_then(|field| field.whole(1, MOST_NODES))
            .map(|count| ReadingKind::NodesSeen { count: count.into() }),
        section.field("packet_loss").as_ref().and_then(read_packet_loss),
        section.parse("link", named).map(|state| ReadingKind::Link { state }),
        section.field("swings").as_ref().and_then(read_swings),
    ];
    let how = section.field("how").as_ref().and_then(read_how);
    let notes = notes(section);
    section.finish();
    let told = THINGS.into_iter().filter(|name| section.has(name)).count();
    let at_a_frequency = section.has("level") || section.has("mer");
    if told != 1 || at_a_frequency != section.has("frequency") {
        let found: Vec<_> =
            THINGS.into_iter().chain(["frequency"]).filter(|name| section.has(name)).collect();
        section.refuse_whole(&found.join(", "), Phrase::new("sheet-reading"));
        return None;
    }
    let measured = measured.into_iter().flatten().next()?;
    let id = id_of(Is::Reading, &number.to_string());
    let record = Reading { id, about: None, port: None, measured, how };
    Some(ReadingDraft { reading: Told { record, notes }, at, port })
}

fn read_power(field: &Field<'_>) -> Option<ReadingKind> {
    let told = field.table(Phrase::new("sheet-powers"))?;
    let sent_dbm = told.required("sent").and_then(|field| field.parse(power));
    let received_dbm = told.required("received").and_then(|field| field.parse(power));
    told.finish();
    Some(ReadingKind::Power { sent_dbm: sent_dbm?, received_dbm: received_dbm? })
}

fn read_packet_loss(field: &Field<'_>) -> Option<ReadingKind> {
    let told = field.table(Phrase::new("sheet-packet-loss"))?;
    let share = told.required("percent").and_then(|field| field.parse(percent));
    let under_load = told.required("busy").and_then(|field| field.flag());
    told.finish();
    Some(ReadingKind::PacketLoss { percent: share?, under_load: under_load? })
}

fn read_swings(field: &Field<'_>) -> Option<ReadingKind> {
    let told = field.table(Phrase::new("sheet-swings"))?;
    let low = told.required("low").and_then(|field| field.parse(rate));
    let high = told.required("high").and_then(|field| field.parse(rate));
    let with_heat_or_hour = told.required("with_heat_or_hour").and_then(|field| field.flag());
    told.finish();
    let (low_mbps, high_mbps, with_heat_or_hour) = (low?, high?, with_heat_or_hour?);
    if low_mbps >= high_mbps {
        field.refuse(Phrase::new("sheet-swings-order"));
        return None;
    }
    Some(ReadingKind::Swings { low_mbps, high_mbps, with_heat_or_hour })
}

fn read_how(field: &Field<'_>) -> Option<HowMeasured> {
    let told = field.table(Phrase::new("sheet-how"))?;
    let reach = told.required("reach").and_then(|field| field.parse(named));
    let over_radio = told.required("radio").and_then(|field| field.flag());
    let socket_mbps = told.parse("socket", ethernet);
    told.finish();
    Some(HowMeasured { reach: reach?, over_radio: over_radio?, socket_mbps })
}

//! `legwork table`: parts, readings or steps as rows, in CSV (RFC 4180) for a spreadsheet, or in JSON.
//!
//! Columns are called as in the record, with their units. A text that a spreadsheet would take for a formula gets an
//! apostrophe before it, as spreadsheets write texts that begin so; figures are figures.

use std::path::Path;

use advice::worklist::Gain;
use facts::fact::SubjectId;
use house::naming;
use house::record::{Feed, FeedFrom, Named, Part, Reading, Run, Survey, reading_order};
use phrase::{Arg, Phrase};
use serde_json::{Map, Value, json};
use telling::words::{ToldGain, told_gains};

use super::context::Context;
use super::json::rounded;
use super::worked::Opened;
use crate::arguments::TableOf;
use crate::error::DeskError;
use crate::keep::{keep, refuse_if_there};
use crate::output;

/// A row: the names of its columns with what stands there.
type Row = Vec<(&'static str, Value)>;

/// Writes the table, to standard output or into a file.
pub fn run(
    context: &Context,
    opened: &Opened,
    what: TableOf,
    out: Option<&Path>,
    replace: bool,
) -> Result<(), DeskError> {
    if let Some(out) = out {
        refuse_if_there(out, replace)?;
    }
    let survey = &opened.survey;
    let rows: Vec<Row> = match what {
        TableOf::Parts => reading_order(survey)
            .into_iter()
            .filter_map(|id| survey.parts.get(&id))
            .map(|part| of_part(context, survey, part))
            .collect(),
        TableOf::Readings => survey.readings.values().map(|reading| of_reading(survey, reading)).collect(),
        TableOf::Steps => of_steps(context, opened)?,
    };
    let columns: Vec<&str> = match what {
        TableOf::Parts => {
            names(&of_part(context, survey, &Part::new(survey.id, house::record::PartKind::Unknown)))
        }
        TableOf::Readings => READINGS.to_vec(),
        TableOf::Steps => STEPS.to_vec(),
    };
    let Some(out) = out else {
        let as_json: Vec<Map<String, Value>> = rows.iter().map(object).collect();
        if context.is_json() {
            return context.answer(&as_json, |_| ());
        }
        return output::say_table(&csv(&columns, &rows)?);
    };
    keep(out, csv(&columns, &rows)?.as_bytes(), replace)?;
    let as_json = json!({ "file": out.display().to_string(), "rows": rows.len() });
    context.answer(&as_json, |page| {
        let done = Phrase::new("desk-table-written").text("file", out.display().to_string());
        page.paragraph(0, &context.say(&done.with("rows", Arg::Count(rows.len() as u64))));
    })
}

fn names(row: &Row) -> Vec<&'static str> {
    row.iter().map(|(name, _)| *name).collect()
}

fn object(row: &Row) -> Map<String, Value> {
    row.iter().map(|(name, value)| ((*name).to_owned(), value.clone())).collect()
}

/// The text of a table; every line ends as RFC 4180 has it.
fn csv(columns: &[&str], rows: &[Row]) -> Result<String, DeskError> {
    let mut writer = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    let fault = |_| DeskError::Fault;
    writer.write_record(columns).map_err(fault)?;
    for row in rows {
        writer.write_record(row.iter().map(|(_, value)| cell(value))).map_err(fault)?;
    }
    let bytes = writer.into_inner().map_err(|_| DeskError::Fault)?;
    String::from_utf8(bytes).map_err(|_| DeskError::Fault)
}

fn cell(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::String(text) => harmless(text),
        Value::Array(values) => harmless(&values.iter().map(plain).collect::<Vec<_>>().join("; ")),
        other => plain(other),
    }
}

fn plain(value: &Value) -> String {
    value.as_str().map_or_else(|| value.to_string(), ToOwned::to_owned)
}

/// A text that no spreadsheet takes for a formula.
fn harmless(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r', '\n']) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

fn tag(survey: &Survey, part: SubjectId) -> Option<&str> {
    survey.parts.get(&part)?.tag.as_deref()
}

fn of_part(context: &Context, survey: &Survey, part: &Part) -> Row {
    let feed = match &part.feed {
        Some(Feed::From(feed)) => Some(feed),
        _ => None,
    };
    let run: Option<&Run> = feed.and_then(|feed| survey.runs.get(&feed.run?));
    let length = run.and_then(|run| run.length);
    let rating = &part.rating;
    let metres = |metres: f64| json!(rounded(metres, 2));
    let ends: Vec<String> = part.ends.iter().map(|(port, end)| format!("{port} {}", end.name())).collect();
    let fed_by = match &part.feed {
        Some(Feed::From(feed)) => {
            json!(tag(survey, feed.part).map_or_else(|| feed.part.to_string(), str::to_owned))
        }
        Some(Feed::Nothing) => json!("nothing"),
        None => Value::Null,
    };
    let called = |feed: &FeedFrom| {
        let feeder = survey.parts.get(&feed.part).filter(|feeder| feeder.outputs() > 1)?;
        Some(context.say(&naming::ports(feeder, &[feed.port])))
    };
    let port_called = json!(feed.and_then(called));
    let list = |values: Vec<String>| if values.is_empty() { Value::Null } else { json!(values) };
    let notes = survey.notes_on(Some(part.id)).map(|note| note.text.clone()).collect();
    vec![
        ("tag", json!(part.tag)),
        ("kind", json!(part.kind.name())),
        ("what", json!(context.say(&naming::kind(part)))),
        ("where", json!(part.place)),
        ("room", json!(survey.room_of(part).map(|room| room.name.clone()))),
        ("label", json!(part.label)),
        ("from", fed_by),
        ("port", json!(feed.map(|feed| feed.port))),
        ("port_called", port_called),
        ("loose", json!(survey.wiring.loose().contains_key(&part.id))),
        ("run_tag", json!(run.and_then(|run| run.tag.clone()))),
        ("cable", json!(run.map(|run| run.cable.name()))),
        ("length_metres", length.map_or(Value::Null, |length| metres(length.metres))),
        ("length_low_metres", length.map_or(Value::Null, |length| metres(length.low_metres))),
        ("length_high_metres", length.map_or(Value::Null, |length| metres(length.high_metres))),
        ("length_known", json!(length.map(|length| length.known.name()))),
        ("connector_near", json!(run.map(|run| run.connector_near.name()))),
        ("connector_far", json!(run.map(|run| run.connector_far.name()))),
        ("legs", if rating.legs == 0 { Value::Null } else { json!(rating.legs) }),
        ("leg_losses_db", list(rating.leg_losses_db.iter().map(ToString::to_string).collect())),
        ("band_low_mhz", json!(rating.band.map(|band| band.low_mhz))),
        ("band_high_mhz", json!(rating.band.map(|band| band.high_mhz))),
        ("gain_db", json!(rating.gain_db)),
        ("tap_db", json!(rating.tap_db)),
        ("moca_bypass", json!(rating.moca_bypass)),
        ("modem_port", json!(rating.modem_port)),
        ("ends", list(ends)),
        (
            "plugged",
            part.plugged.as_ref().map_or(Value::Null, |plugged| {
                if plugged.is_empty() {
                    json!("nothing")
                } else {
                    list(plugged.iter().map(|one| one.name().to_owned()).collect())
                }
            }),
        ),
        (
            "adapter",
            json!(
                part.adapter
                    .as_ref()
                    .map(|adapter| adapter.version.as_ref().unwrap_or(&survey.network.version))
            ),
        ),
        ("bridge", json!(part.adapter.as_ref().map(|adapter| adapter.bridge))),
        ("notes", list(notes)),
        ("id", json!(part.id)),
    ]
}

/// The columns of readings: those of all kinds, each filled where the kind has it.
const READINGS: [&str; 26] = [
    "at",
    "room",
    "port",
    "what",
    "mhz",
    "dbmv",
    "db",
    "down_mbps",
    "up_mbps",
    "mbps",
    "ms",
    "sent_dbm",
    "received_dbm",
    "count",
    "percent",
    "under_load",
    "state",
    "low_mbps",
    "high_mbps",
    "with_heat_or_hour",
    "reach",
    "over_radio",
    "socket_mbps",
    "notes",
    "about",
    "id",
];

fn of_reading(survey: &Survey, reading: &Reading) -> Row {
    let measured = serde_json::to_value(reading.measured).unwrap_or_default();
    let how = serde_json::to_value(reading.how).unwrap_or_default();
    let part = reading.about.and_then(|about| survey.parts.get(&about));
    let notes: Vec<String> = survey.notes_on(Some(reading.id)).map(|note| note.text.clone()).collect();
    let value = |column: &'static str| match column {
        "at" => json!(part.and_then(|part| part.tag.clone())),
        "room" => json!(part.and_then(|part| survey.room_of(part)).map(|room| room.name.clone())),
        "port" => json!(reading.port),
        "notes" if notes.is_empty() => Value::Null,
        "notes" => json!(notes),
        "about" => json!(reading.about),
        "id" => json!(reading.id),
        column => measured.get(column).or_else(|| how.get(column)).cloned().unwrap_or_default(),
    };
    READINGS.into_iter().map(|column| (column, value(column))).collect()
}

/// The columns of steps.
const STEPS: [&str; 15] = [
    "number",
    "change",
    "at",
    "what",
    "why",
    "minutes",
    "parts",
    "outlet",
    "before_mbps",
    "after_mbps",
    "before_low_mbps",
    "after_low_mbps",
    "before_phy_mbps",
    "after_phy_mbps",
    "gains",
];

fn of_steps(context: &Context, opened: &Opened) -> Result<Vec<Row>, DeskError> {
    let list = opened.work_list(context)?;
    let row = |(place, step): (usize, &advice::worklist::Step)| {
        let change = step.change.phrase(&step.before);
        let parts: Vec<String> =
            step.effort.parts.iter().map(|part| context.say(&telling::report::part_told(part))).collect();
        let most = told_gains(&step.gains).first().map(|(gain, _)| *gain);
        let mbps = |of: fn(&Gain) -> f64| most.map(|gain| rounded(of(gain), 0));
        let named = |outlet| tag(&step.before, outlet).map(str::to_owned);
        let gains: Vec<String> = step
            .gains
            .iter()
            .filter_map(|gain| {
                let outlet = named(gain.outlet).unwrap_or_else(|| gain.outlet.to_string());
                gained(gain).map(|gained| format!("{outlet} {gained}"))
            })
            .collect();
        vec![
            ("number", json!(place + 1)),
            ("change", json!(step.change.name())),
            ("at", json!(named(step.change.at()))),
            ("what", json!(context.say(&change))),
            ("why", json!(context.say(&change.attribute("why")))),
            ("minutes", json!(step.effort.minutes)),
            ("parts", if parts.is_empty() { Value::Null } else { json!(parts) }),
            ("outlet", json!(most.and_then(|gain| named(gain.outlet)))),
            ("before_mbps", json!(mbps(|gain| gain.before.likely_mbps))),
            ("after_mbps", json!(mbps(|gain| gain.after.likely_mbps))),
            ("before_low_mbps", json!(mbps(|gain| gain.before.low_mbps))),
            ("after_low_mbps", json!(mbps(|gain| gain.after.low_mbps))),
            ("before_phy_mbps", json!(mbps(|gain| gain.before.phy_mbps))),
            ("after_phy_mbps", json!(mbps(|gain| gain.after.phy_mbps))),
            ("gains", if gains.is_empty() { Value::Null } else { json!(gains) }),
        ]
    };
    Ok(list.steps.iter().enumerate().map(row).collect())
}

/// What is told of a gain, in figures: of the likely rate, of what is reached nine times in ten (`low`), or of what the coax alone
/// carries (`phy`).
fn gained(gain: &Gain) -> Option<String> {
    let (before, after) = (&gain.before, &gain.after);
    let (of, before, after) = match ToldGain::of(gain) {
        ToldGain::Nothing => return None,
        ToldGain::More(_) | ToldGain::Less(_) => ("", before.likely_mbps, after.likely_mbps),
        ToldGain::LowMore(_) => ("low ", before.low_mbps, after.low_mbps),
        ToldGain::PhyMore(_) => ("phy ", before.phy_mbps, after.phy_mbps),
    };
    Some(format!("{of}{} > {}", rounded(before, 0), rounded(after, 0)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_text_is_a_formula_and_figures_stay_figures() {
        let row = vec![
            ("a", json!("=1+1")),
            ("b", json!("@x")),
            ("c", json!("-6 dB, \"said\"\r\nhere")),
            ("d", json!(-6.5)),
            ("e", json!(["+1", "2"])),
            ("f", Value::Null),
            ("g", json!("S1")),
        ];
        let text = csv(&["a", "b", "c", "d", "e", "f", "g"], &[row]).unwrap();
        let expected = "a,b,c,d,e,f,g\r\n'=1+1,'@x,\"'-6 dB, \"\"said\"\"\r\nhere\",-6.5,'+1; 2,,S1\r\n";
        assert_eq!(text, expected);
    }
}

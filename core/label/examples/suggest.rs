//! Makes suggestions of what was seen on photos, a line of JSON a photo from the standard input to the standard output:
//! `{"file": ..., "rows": [[look, look], ...]}` becomes `{"file": ..., "text": ..., "numbers": [...], "members": [...]}`.
//!
//! A look is `null` or `{"letters": [[sign, certainty, ...], ...], "is_cut": [..., ...]}`, as `read_photos` of `print` writes it.

use std::error::Error;
use std::io::{BufRead, Write};

use label::LabelReading;
use label::seen::{Member, SeenLine, SeenRow, suggest};
use serde_json::{Value, json};

fn line(look: &Value) -> Option<SeenLine> {
    let letter = |letter: &Value| {
        #[expect(clippy::cast_possible_truncation, reason = "a share")]
        let certainty = letter[1].as_f64()? as f32;
        Some((letter[0].as_str()?.chars().next()?, certainty))
    };
    let letters = look["letters"].as_array()?.iter().filter_map(letter).collect();
    let is_cut = |at: usize| look["is_cut"][at].as_bool().unwrap_or(true);
    Some(SeenLine { letters, is_cut: (is_cut(0), is_cut(1)) })
}

/// What a reading states for a member: a number, a list of them, or a word.
fn value(member: Member, reading: &LabelReading) -> Value {
    match member {
        Member::Kind => json!(reading.kind.map(label::PartKind::name)),
        Member::Cable => json!(reading.cable.map(label::CableSeries::name)),
        Member::Legs => json!(reading.legs),
        Member::LegLosses => json!(reading.leg_losses.iter().map(|loss| loss.value()).collect::<Vec<_>>()),
        Member::Low => json!(reading.low.map(coax::Megahertz::value)),
        Member::High => json!(reading.high.map(coax::Megahertz::value)),
        Member::StopLow => json!(reading.stop_low.map(coax::Megahertz::value)),
        Member::StopHigh => json!(reading.stop_high.map(coax::Megahertz::value)),
        Member::ReturnLow => json!(reading.return_low.map(coax::Megahertz::value)),
        Member::ReturnHigh => json!(reading.return_high.map(coax::Megahertz::value)),
        Member::Tap => json!(reading.tap.map(coax::Decibels::value)),
        Member::Gain => json!(reading.gain.map(coax::Decibels::value)),
        Member::Rejection => json!(reading.rejection.map(coax::Decibels::value)),
        Member::Isolation => json!(reading.isolation.map(coax::Decibels::value)),
        Member::ReturnLoss => json!(reading.return_loss.map(coax::Decibels::value)),
        _ => Value::Null,
    }
}

fn main() -> Result<(), Box<dyn Error>> {
    let mut out = std::io::stdout().lock();
    for photo in std::io::stdin().lock().lines() {
        let photo: Value = serde_json::from_str(&photo?)?;
        let rows: Vec<SeenRow> = photo["rows"]
            .as_array()
            .ok_or("no rows")?
            .iter()
            .map(|row| SeenRow { looks: [line(&row[0]), line(&row[1])] })
            .collect();
        let suggestion = suggest(&rows);
        let numbers: Vec<Value> = suggestion
            .numbers
            .iter()
            .map(|number| {
                let unsure: Vec<String> = number.unsure.iter().map(|why| format!("{why:?}")).collect();
                json!({ "unit": number.unit.symbol(), "value": number.value, "unsure": unsure })
            })
            .collect();
        let members: Vec<Value> = suggestion
            .members
            .iter()
            .map(|seen| {
                let unsure: Vec<String> = seen.unsure.iter().map(|why| format!("{why:?}")).collect();
                json!({ "member": seen.member.name(), "value": value(seen.member, &suggestion.reading), "unsure": unsure })
            })
            .collect();
        let made =
            json!({ "file": photo["file"], "text": suggestion.text, "numbers": numbers, "members": members });
        writeln!(out, "{made}")?;
    }
    Ok(())
}

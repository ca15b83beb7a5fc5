//! What was read from photos of labels, in JSON: an object a photo, each on one line. `docs/command.md` describes it.

use coax::quantity::METRES_PER_FOOT;
use label::seen::{JacketLength, Member, NoLength, SeenPlace, Unsure};
use phrase::Phrase;
use serde::Serialize;
use telling::doubts::{in_json, say_in_english};

use super::photo::Told;
use crate::command::json::rounded;
use crate::error::DeskError;
use crate::output;

/// A photo that was read.
#[derive(Serialize)]
struct PhotoJson<R: Serialize> {
    photo: String,
    text: String,
    turned_degrees: u16,
    reading: R,
    members: Vec<MemberJson>,
    marks: Vec<MarkJson>,
    length: Option<LengthJson>,
}

/// One member of the reading.
#[derive(Serialize)]
struct MemberJson {
    member: &'static str,
    sure: bool,
    unsure: Vec<UnsureJson>,
    places: Vec<PlaceJson>,
}

/// Why something is asked.
#[derive(Serialize)]
struct UnsureJson {
    why: &'static str,
    told: String,
}

/// A piece of the photo, in pixels as it is shown.
#[derive(Serialize)]
struct PlaceJson {
    x: u32,
    y: u32,
    width: u32,
    height: u32,
}

/// A mark of length on a cable's jacket.
#[derive(Serialize)]
struct MarkJson {
    value: f64,
    unit: &'static str,
    sure: bool,
    unsure: Vec<UnsureJson>,
    places: Vec<PlaceJson>,
}

/// What lies between the marks of two photos.
#[derive(Serialize)]
struct LengthJson {
    metres: Option<f64>,
    feet: Option<f64>,
    sure: bool,
    unsure: Vec<UnsureJson>,
}

/// Writes them. The length stands with the second of two.
pub fn tell(told: &[Told], length: Option<&Result<JacketLength, NoLength>>) -> Result<(), DeskError> {
    let last = told.len().saturating_sub(1);
    let mut lines = String::new();
    for (at, photo) in told.iter().enumerate() {
        let object = one(photo, length.filter(|_| at == last).map(of_length));
        lines.push_str(&serde_json::to_string(&object).map_err(|_| DeskError::Fault)?);
        lines.push('\n');
    }
    output::say_json(&lines)
}

fn one(photo: &Told, length: Option<LengthJson>) -> PhotoJson<impl Serialize> {
    let seen = &photo.read.suggestion;
    let members = seen.members.iter().map(|seen| MemberJson {
        member: name(seen.member),
        sure: seen.is_sure(),
        unsure: unsure(&seen.unsure),
        places: places(photo, &seen.places),
    });
    let marks = seen.marks().map(|mark| MarkJson {
        value: mark.value,
        unit: mark.unit.symbol(),
        sure: mark.is_sure(),
        unsure: unsure(&mark.unsure),
        places: places(photo, std::slice::from_ref(&mark.place)),
    });
    PhotoJson {
        photo: photo.file.display().to_string(),
        text: seen.text.clone(),
        turned_degrees: photo.read.turn().degrees(),
        members: members.collect(),
        marks: marks.collect(),
        reading: in_json(&seen.reading),
        length,
    }
}

fn of_length(length: &Result<JacketLength, NoLength>) -> LengthJson {
    match length {
        Ok(length) => LengthJson {
            metres: Some(rounded(length.metres, 2)),
            feet: Some(rounded(length.metres / METRES_PER_FOOT, 1)),
            sure: length.unsure.is_empty(),
            unsure: length.unsure.iter().map(|why| because(why.name(), &why.phrase())).collect(),
        },
        Err(why) => LengthJson {
            metres: None,
            feet: None,
            sure: false,
            unsure: vec![because(why.name(), &why.phrase())],
        },
    }
}

fn unsure(whys: &[Unsure]) -> Vec<UnsureJson> {
    whys.iter().map(|why| because(why.name(), &why.phrase())).collect()
}

fn because(why: &'static str, phrase: &Phrase) -> UnsureJson {
    UnsureJson { why, told: say_in_english(phrase) }
}

fn places(photo: &Told, places: &[SeenPlace]) -> Vec<PlaceJson> {
    let areas = places.iter().filter_map(|place| photo.area(place));
    areas
        .map(|area| PlaceJson { x: area.left, y: area.top, width: area.width, height: area.height })
        .collect()
}

/// The name that the member has in the JSON of a reading.
const fn name(member: Member) -> &'static str {
    match member {
        Member::Low => "low_mhz",
        Member::High => "high_mhz",
        Member::LegLosses => "leg_losses_db",
        Member::Tap => "tap_db",
        Member::Gain => "gain_db",
        Member::Rejection => "rejection_db",
        Member::Isolation => "isolation_db",
        Member::ReturnLoss => "return_loss_db",
        Member::StopLow => "stop_low_mhz",
        Member::StopHigh => "stop_high_mhz",
        Member::ReturnLow => "return_low_mhz",
        Member::ReturnHigh => "return_high_mhz",
        Member::ReturnGain => "return_gain_db",
        Member::SatelliteLow => "satellite_low_mhz",
        Member::SatelliteHigh => "satellite_high_mhz",
        other => other.name(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_member_has_its_name_in_a_reading() {
        let reading = telling::doubts::json(&label::read("4-WAY SPLITTER"));
        for member in Member::ALL {
            assert!(reading.get(name(*member)).is_some(), "{}", name(*member));
        }
    }
}

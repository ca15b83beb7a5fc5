//! What was read off a label, with its doubts in words.

use std::sync::LazyLock;

use coax::{Decibels, Megahertz};
use house::contradiction::Contradiction;
use house::record::Part;
use label::{CableSeries, Doubt, LabelReading, PartKind, PowerPass};
use phrase::Phrase;
use serde::ser::{Serialize, SerializeMap, Serializer};

use crate::words::{Figures, Language};

/// English is written into JSON whatever the language of the screens.
static ENGLISH: LazyLock<Language> = LazyLock::new(|| Language::english(Figures::default()));

/// Doubts as sentences of a language, in the order they arose.
pub fn said(doubts: &[Doubt], language: &Language) -> Vec<String> {
    doubts.iter().map(|doubt| language.say(&doubt.phrase())).collect()
}

/// Doubts as English sentences, in the order they arose.
pub fn in_english(doubts: &[Doubt]) -> Vec<String> {
    if doubts.is_empty() { Vec::new() } else { said(doubts, &ENGLISH) }
}

/// What is doubtful about a part's print, as sentences: how it was read, and where it and what was typed differ.
pub fn of_part(part: &Part, language: &Language) -> Vec<String> {
    let is_printed = part.label.as_deref().is_some_and(|text| !text.is_empty());
    let Some(reading) = part.read_print().filter(|_| is_printed) else { return Vec::new() };
    let against = Contradiction::of(part);
    let against = against.iter().map(|found| language.say(&found.phrase()));
    said(&reading.doubts, language).into_iter().chain(against).collect()
}

/// As [`of_part`], in English.
pub fn of_part_in_english(part: &Part) -> Vec<String> {
    of_part(part, &ENGLISH)
}

/// A reading as a JSON object. Whether the object keeps the documented order of members depends on how `serde_json` is
/// built; [`json_line`] always does.
pub fn json(reading: &LabelReading) -> serde_json::Value {
    serde_json::to_value(Told(reading)).unwrap_or_default()
}

/// A reading as one line of JSON, members in the documented order.
pub fn json_line(reading: &LabelReading) -> String {
    serde_json::to_string(&Told(reading)).unwrap_or_default()
}

/// A reading as an object within other JSON, members in the documented order.
pub fn in_json(reading: &LabelReading) -> impl Serialize {
    Told(reading)
}

/// What a phrase says, in English.
pub fn say_in_english(phrase: &Phrase) -> String {
    ENGLISH.say(phrase)
}

/// A reading as one object; the members are, in this order: `kind`, `low_mhz`, `high_mhz`, `leg_losses_db`,
/// `tap_db`, `gain_db`, `rejection_db`, `isolation_db`, `return_loss_db`, `power_pass`, `doubts` (sentences),
/// then `legs`, `stop_low_mhz`, `stop_high_mhz`, `power_pass_legs`, `return_low_mhz`, `return_high_mhz`,
/// `return_gain_db`, `satellite_low_mhz`, `satellite_high_mhz`, `moca_bypass`, `modem_port`,
/// `says_moca`, `indoor_only`, `cable`. A member is null where the label does not state it.
struct Told<'a>(&'a LabelReading);

impl Serialize for Told<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Self(reading) = self;
        let megahertz = |edge: Option<Megahertz>| edge.map(Megahertz::value);
        let decibels = |figure: Option<Decibels>| figure.map(Decibels::value);
        let losses: Vec<f64> = reading.leg_losses.iter().map(|loss| loss.value()).collect();

        let mut members = serializer.serialize_map(Some(25))?;
        members.serialize_entry("kind", &reading.kind.map(PartKind::name))?;
        members.serialize_entry("low_mhz", &megahertz(reading.low))?;
        members.serialize_entry("high_mhz", &megahertz(reading.high))?;
        members.serialize_entry("leg_losses_db", &(!losses.is_empty()).then_some(losses))?;
        members.serialize_entry("tap_db", &decibels(reading.tap))?;
        members.serialize_entry("gain_db", &decibels(reading.gain))?;
        members.serialize_entry("rejection_db", &decibels(reading.rejection))?;
        members.serialize_entry("isolation_db", &decibels(reading.isolation))?;
        members.serialize_entry("return_loss_db", &decibels(reading.return_loss))?;
        members.serialize_entry("power_pass", &reading.power_pass.map(PowerPass::passes))?;
        members.serialize_entry("doubts", &in_english(&reading.doubts))?;
        members.serialize_entry("legs", &reading.legs)?;
        members.serialize_entry("stop_low_mhz", &megahertz(reading.stop_low))?;
        members.serialize_entry("stop_high_mhz", &megahertz(reading.stop_high))?;
        members.serialize_entry("power_pass_legs", &reading.power_pass.and_then(PowerPass::legs_name))?;
        members.serialize_entry("return_low_mhz", &megahertz(reading.return_low))?;
        members.serialize_entry("return_high_mhz", &megahertz(reading.return_high))?;
        members.serialize_entry("return_gain_db", &decibels(reading.return_gain))?;
        members.serialize_entry("satellite_low_mhz", &megahertz(reading.satellite_low))?;
        members.serialize_entry("satellite_high_mhz", &megahertz(reading.satellite_high))?;
        members.serialize_entry("moca_bypass", &reading.moca_bypass)?;
        members.serialize_entry("modem_port", &reading.modem_port)?;
        members.serialize_entry("says_moca", &reading.says_moca)?;
        members.serialize_entry("indoor_only", &reading.indoor_only)?;
        members.serialize_entry("cable", &reading.cable.map(CableSeries::name))?;
        members.end()
    }
}

#[cfg(test)]
mod tests {
    use phrase::Arg;

    use label::seen::{LengthUnsure, NoLength};
    use label::{Doubt, PartKind, Quantity};

    use super::*;

    #[test]
    fn what_is_said_of_a_length_between_marks_has_its_sentence() {
        let lengths = [
            LengthUnsure::MarkAsked,
            LengthUnsure::TwoSeries,
            LengthUnsure::OneEnd,
            LengthUnsure::OtherMark,
            LengthUnsure::UnitsDisagree,
        ];
        let none = [
            NoLength::NoMark { end: 0 },
            NoLength::NoMark { end: 1 },
            NoLength::TwoUnits,
            NoLength::SameMark,
            NoLength::TooFarApart,
        ];
        for phrase in lengths.map(LengthUnsure::phrase).into_iter().chain(none.map(NoLength::phrase)) {
            let sentence = say_in_english(&phrase);
            assert!(sentence.ends_with('.') && !sentence.contains(['{', '}']), "{phrase:?}: {sentence}");
        }
    }

    #[test]
    fn every_doubt_has_its_sentence() {
        let text = || "5-1000".to_owned();
        let (what, taken, other) = (Quantity::Isolation, PartKind::Tap, PartKind::WallPlate);
        let doubts = [
            Doubt::Truncated { bytes: 1024 },
            Doubt::NothingRead,
            Doubt::LettersForDigits { written: text(), read: text() },
            Doubt::UnitMisread { written: text(), read: "dB" },
            Doubt::Unreadable { written: text() },
            Doubt::Thousands { written: text(), read: 1000.0 },
            Doubt::BandWithoutUnit { written: text() },
            Doubt::BandUnitsMixed { written: text(), low: 5.0 },
            Doubt::BandBackwards { written: text(), from: 1000.0, to: 5.0 },
            Doubt::EdgeUnusual { edge: 1080.0 },
            Doubt::BandsUnclear { first: text(), second: text() },
            Doubt::BandsJoined { first: text(), second: text() },
            Doubt::PathsAssumed { lower: text(), upper: text() },
            Doubt::UpperEdgeAlone { written: text() },
            Doubt::LowerEdgeAlone { written: text() },
            Doubt::FrequencyUnplaced { written: text() },
            Doubt::LossUnusual { legs: 1, loss: 9.0 },
            Doubt::DecibelsWithoutUnit { written: text() },
            Doubt::LegsDisagree { legs: 4, losses: text() },
            Doubt::LegsNotStated { loss: 7.0 },
            Doubt::UnbalancedAssumed { losses: text() },
            Doubt::OutputsIncomplete,
            Doubt::PortsAsOutputs { written: text() },
            Doubt::LegCountsDiffer { first: 2, second: 4 },
            Doubt::LossByBand { taken: text() },
            Doubt::DecibelRange { written: text() },
            Doubt::TwoFigures { what, first: 20.0, second: 25.0 },
            Doubt::GuaranteedTaken { what },
            Doubt::FigureUnusual { what, figure: 3.0 },
            Doubt::FigureUnplaced { written: text() },
            Doubt::FigureAssumed { what, written: text() },
            Doubt::KindUnclear { taken, other },
            Doubt::KindFromBands { taken: PartKind::Amplifier },
            Doubt::PowerPassUnclear,
            Doubt::PassiveUnclear,
        ];
        for (sentence, doubt) in said(&doubts, &ENGLISH).iter().zip(&doubts) {
            assert!(!sentence.contains("label-") && !sentence.contains(['{', '}']), "{doubt:?}: {sentence}");
            assert!(sentence.ends_with('.'), "{sentence}");
            for (_, value) in doubt.phrase().args {
                let Arg::Text(value) = value else { panic!("{value:?}") };
                let is_name = ["isolation", "tap", "wall_plate", "amplifier"].contains(&value.as_str());
                assert!(is_name || sentence.contains(&value) || value == "1", "{sentence} lacks {value}");
            }
        }
        assert!(said(&doubts, &ENGLISH).iter().any(|sentence| sentence.contains("a wall plate and a tap")));
    }
}

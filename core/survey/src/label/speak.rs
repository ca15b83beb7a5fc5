//! The doubts in words.

use fluent_bundle::{FluentArgs, FluentBundle, FluentResource};
use unic_langid::LanguageIdentifier;

use super::doubt::Doubt;
use crate::words::{Language, Phrase};

/// The English sentences of the label reader.
const ENGLISH: &str = include_str!("../../words/en/label.ftl");

/// Each doubt as an English sentence. A sentence that is missing from the words shows as its identifier.
pub(super) fn in_english(doubts: &[Doubt]) -> Vec<String> {
    if doubts.is_empty() {
        return Vec::new();
    }
    let resource = match FluentResource::try_new(ENGLISH.to_owned()) {
        Ok(resource) | Err((resource, _)) => resource,
    };
    let mut bundle = FluentBundle::new(vec!["en".parse::<LanguageIdentifier>().unwrap_or_default()]);
    // Marks that isolate text directions would show as rubbish on terminals and in JSON.
    bundle.set_use_isolating(false);
    bundle.add_resource_overriding(resource);
    doubts.iter().map(|doubt| sentence(&bundle, doubt)).collect()
}

/// Each doubt as a sentence of a language.
pub(super) fn in_language(doubts: &[Doubt], language: &Language) -> Vec<String> {
    let phrase = |doubt: &Doubt| {
        let (id, arguments) = doubt.message();
        arguments.into_iter().fold(Phrase::new(id), |phrase, (name, value)| phrase.text(name, value))
    };
    doubts.iter().map(|doubt| language.say(&phrase(doubt))).collect()
}

/// One doubt as a sentence.
fn sentence(bundle: &FluentBundle<FluentResource>, doubt: &Doubt) -> String {
    let (id, arguments) = doubt.message();
    let Some(pattern) = bundle.get_message(id).and_then(|message| message.value()) else {
        return id.to_owned();
    };
    let mut named = FluentArgs::new();
    for (name, value) in arguments {
        named.set(name, value);
    }
    bundle.format_pattern(pattern, Some(&named), &mut Vec::new()).into_owned()
}

#[cfg(test)]
mod tests {
    use super::super::doubt::Quantity;
    use super::super::kind::PartKind;
    use super::*;

    #[test]
    fn every_doubt_has_its_sentence() {
        let text = || "5-1000".to_owned();
        let (what, taken, other) = (Quantity::Isolation, PartKind::Tap, PartKind::WallPlate);
        let doubts = [
            Doubt::Truncated { bytes: 4096 },
            Doubt::NothingRead,
            Doubt::LettersForDigits { written: text(), read: text() },
            Doubt::UnitMisread { written: text(), read: "dB" },
            Doubt::Unreadable { written: text() },
            Doubt::Thousands { written: text(), read: 1000.0 },
            Doubt::BandWithoutUnit { written: text() },
            Doubt::BandUnitsMixed { written: text(), low: 5.0 },
            Doubt::BandBackwards { written: text() },
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
        ];
        for (sentence, doubt) in in_english(&doubts).iter().zip(&doubts) {
            assert!(!sentence.contains("label-") && !sentence.contains(['{', '}']), "{doubt:?}: {sentence}");
            assert!(sentence.ends_with('.'), "{sentence}");
            for (_, value) in doubt.message().1 {
                let is_name = ["isolation", "tap", "wall_plate", "amplifier"].contains(&value.as_str());
                assert!(is_name || sentence.contains(&value) || value == "1", "{sentence} lacks {value}");
            }
        }
        assert!(in_english(&doubts).iter().any(|sentence| sentence.contains("a wall plate and a tap")));
    }
}

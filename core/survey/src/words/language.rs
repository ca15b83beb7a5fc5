//! One language: its messages, and how it says a phrase.

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use unic_langid::LanguageIdentifier;

use super::{Arg, Figures, Phrase};

/// The English messages, one file a subject.
const ENGLISH: &[(&str, &str)] = &[
    ("label.ftl", include_str!("../../words/en/label.ftl")),
    ("parts.ftl", include_str!("../../words/en/parts.ftl")),
    ("findings.ftl", include_str!("../../words/en/findings.ftl")),
    ("changes.ftl", include_str!("../../words/en/changes.ftl")),
    ("forecast.ftl", include_str!("../../words/en/forecast.ftl")),
    ("record.ftl", include_str!("../../words/en/record.ftl")),
    ("levels.ftl", include_str!("../../words/en/levels.ftl")),
    ("report.ftl", include_str!("../../words/en/report.ftl")),
];

/// A language, ready to speak.
pub struct Language {
    bundle: FluentBundle<FluentResource>,
    figures: Figures,
}

impl Language {
    /// English, the language everything is written in first.
    pub fn english(figures: Figures) -> Self {
        let mut bundle =
            FluentBundle::new_concurrent(vec!["en".parse::<LanguageIdentifier>().unwrap_or_default()]);
        // Isolation marks are for text of mixed direction; terminals show them as boxes.
        bundle.set_use_isolating(false);
        for (_, text) in ENGLISH {
            // Both the parse and the union are checked by a test over every file; what could be read is used.
            let resource = match FluentResource::try_new((*text).to_owned()) {
                Ok(resource) | Err((resource, _)) => resource,
            };
            bundle.add_resource_overriding(resource);
        }
        Self { bundle, figures }
    }

    /// This language with further messages, each text a Fluent file. A message of the same name replaces the earlier one.
    #[must_use]
    pub fn with(mut self, texts: &[&str]) -> Self {
        for text in texts {
            let resource = match FluentResource::try_new((*text).to_owned()) {
                Ok(resource) | Err((resource, _)) => resource,
            };
            self.bundle.add_resource_overriding(resource);
        }
        self
    }

    /// Has numbers written for another reader.
    pub const fn set_figures(&mut self, figures: Figures) {
        self.figures = figures;
    }

    /// How this language writes numbers.
    pub fn figures(&self) -> Figures {
        self.figures
    }

    /// Whether there is a message (or attribute) of this id.
    pub fn knows(&self, id: &str) -> bool {
        match id.split_once('.') {
            None => self.bundle.get_message(id).is_some_and(|message| message.value().is_some()),
            Some((message, attribute)) => self
                .bundle
                .get_message(message)
                .is_some_and(|message| message.get_attribute(attribute).is_some()),
        }
    }

    /// The phrase in this language. A message that is missing is said by its id, so that nothing is hidden.
    pub fn say(&self, phrase: &Phrase) -> String {
        self.say_if_known(phrase).unwrap_or_else(|| phrase.id.clone())
    }

    /// The phrase if this language has it; for attributes that a message may lack.
    pub fn say_if_known(&self, phrase: &Phrase) -> Option<String> {
        let mut args = FluentArgs::new();
        for (name, arg) in &phrase.args {
            match arg {
                Arg::Count(count) | Arg::Minutes(count) => args.set(*name, FluentValue::from(*count)),
                other => args.set(*name, FluentValue::from(self.write(other))),
            }
        }
        let (message, attribute) =
            phrase.id.split_once('.').map_or((phrase.id.as_str(), None), |(m, a)| (m, Some(a)));
        let message = self.bundle.get_message(message)?;
        let pattern = match attribute {
            None => message.value()?,
            Some(attribute) => message.get_attribute(attribute)?.value(),
        };
        let mut errors = Vec::new();
        Some(self.bundle.format_pattern(pattern, Some(&args), &mut errors).into_owned())
    }

    fn write(&self, arg: &Arg) -> String {
        let figures = self.figures;
        match arg {
            Arg::Text(text) => text.clone(),
            Arg::Count(count) | Arg::Minutes(count) => count.to_string(),
            Arg::Length(metres) => figures.length(*metres),
            Arg::LengthRange(span) => figures.length_range(*span),
            Arg::Loss(db) => figures.loss(*db),
            Arg::LossRange(span) => figures.loss_range(*span),
            Arg::Level(dbmv) => figures.level(*dbmv),
            Arg::Rate(mbps) => figures.rate(*mbps),
            Arg::RateAsRead(mbps) => figures.rate_as_read(*mbps),
            Arg::RateRange(span) => figures.rate_range(*span),
            Arg::Frequency(mhz) => figures.frequency(*mhz),
            Arg::Band(low, high) => figures.band(*low, *high),
            Arg::Milliseconds(ms) => figures.milliseconds(*ms),
            Arg::MillisecondsRange(span) => figures.milliseconds_range(*span),
            Arg::Share(fraction) => figures.share(*fraction),
            Arg::Phrase(phrase) => self.say(phrase),
            Arg::Several(args) => self.list(args),
        }
    }

    fn list(&self, args: &[Arg]) -> String {
        let said: Vec<_> = args.iter().map(|arg| self.write(arg)).collect();
        match said.split_last() {
            None => String::new(),
            Some((only, [])) => only.clone(),
            Some((last, rest)) => {
                self.say(&Phrase::new("list-last").text("rest", rest.join(", ")).text("last", last.clone()))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use fluent_bundle::FluentResource;

    use super::ENGLISH;

    #[test]
    fn every_file_is_read_whole_and_no_message_is_written_twice() {
        let mut seen = BTreeSet::new();
        for (file, text) in ENGLISH {
            FluentResource::try_new((*text).to_owned()).expect(file);
            for line in text.lines().filter(|line| line.starts_with(|c: char| c == '-' || c.is_alphabetic()))
            {
                if let Some((id, _)) = line.split_once(" =") {
                    assert!(seen.insert(id), "{id} is written again in {file}");
                }
            }
        }
    }
}

//! One language: its messages, and how it says a phrase.

use std::borrow::Cow;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use phrase::{Arg, Phrase};
use unic_langid::{CharacterDirection, LanguageIdentifier};

use super::{Figures, LengthUnit, Marks, count};

/// The English messages, one file a subject.
const ENGLISH: &[(&str, &str)] = &[
    ("figures.ftl", include_str!("../../words/en/figures.ftl")),
    ("label.ftl", include_str!("../../words/en/label.ftl")),
    ("parts.ftl", include_str!("../../words/en/parts.ftl")),
    ("findings.ftl", include_str!("../../words/en/findings.ftl")),
    ("changes.ftl", include_str!("../../words/en/changes.ftl")),
    ("forecast.ftl", include_str!("../../words/en/forecast.ftl")),
    ("record.ftl", include_str!("../../words/en/record.ftl")),
    ("levels.ftl", include_str!("../../words/en/levels.ftl")),
    ("map.ftl", include_str!("../../words/en/map.ftl")),
    ("report.ftl", include_str!("../../words/en/report.ftl")),
    ("errors.ftl", include_str!("../../words/en/errors.ftl")),
];

/// A language, ready to speak.
pub struct Language {
    bundle: FluentBundle<FluentResource>,
    locale: LanguageIdentifier,
    figures: Figures,
    right_to_left: bool,
}

impl Language {
    /// English, the language everything is written in first.
    pub fn english(figures: Figures) -> Self {
        Self::of(&"en".parse().unwrap_or_default(), figures.length_unit)
    }

    /// The language of a locale: plurals, numbers and dates as it writes them. Its messages are the English ones until
    /// [`Language::with`] puts others in their place.
    pub fn of(locale: &LanguageIdentifier, length_unit: LengthUnit) -> Self {
        let mut bundle = FluentBundle::new_concurrent(vec![locale.clone()]);
        bundle.set_formatter(Some(count::written));
        // Isolation marks are for text of mixed direction; terminals show them as boxes.
        bundle.set_use_isolating(false);
        let figures = Figures { length_unit, marks: Marks::of(locale) };
        let language = Self { bundle, locale: locale.clone(), figures, right_to_left: false };
        let language = match locale.character_direction() {
            CharacterDirection::RTL => language.reading_right_to_left(),
            _ => language,
        };
        // Both the parse and the union are checked by a test over every file; what could be read is used.
        ENGLISH.iter().fold(language, |language, (_, text)| language.with(&[*text]))
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

    /// This language with every text of a message changed: a pseudo-language, to see what is not a message at all and
    /// what has no room to grow. What a message speaks of, such as a name or a number, is not changed.
    #[must_use]
    pub fn changed_by(mut self, change: fn(&str) -> Cow<'_, str>) -> Self {
        self.bundle.set_transform(Some(change));
        self
    }

    /// This language read from right to left. What a message speaks of is then set apart by marks (U+2068, U+2069), so
    /// that a name or number of the other direction does not carry its neighbours along.
    #[must_use]
    pub fn reading_right_to_left(mut self) -> Self {
        self.bundle.set_use_isolating(true);
        self.right_to_left = true;
        self
    }

    /// Whether it is read from right to left.
    pub fn is_right_to_left(&self) -> bool {
        self.right_to_left
    }

    /// The locale by which plurals, numbers and dates go.
    pub fn locale(&self) -> &LanguageIdentifier {
        &self.locale
    }

    /// Has lengths written for another reader. All else stays as the locale has it.
    pub const fn set_length_unit(&mut self, length_unit: LengthUnit) {
        self.figures.length_unit = length_unit;
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

    /// What the messages call the band and the filters is what the core works with: 1125 to 1675 MHz, 1002 MHz, 40 dB. So is
    /// how long a file can be put back.
    #[test]
    fn figures_in_messages_are_those_of_the_trade() {
        use coax::link::{EXTENDED_D_HIGH, EXTENDED_D_LOW};
        use coax::trade::{FILTERS_PASS, FILTERS_STOP_BY};
        use facts::store::RETURNABLE_MS;

        let english = super::Language::english(super::Figures::default()).with(&[
            "a = { -band-adapters }",
            "b = { -band-filters-pass }",
            "c = { -filters-stop-by }",
            "d = { -days-to-put-back }",
        ]);
        let say = |id: &str| english.say(&super::Phrase::new(id));
        let (low, high) = (EXTENDED_D_LOW.value(), EXTENDED_D_HIGH.value());
        assert_eq!(say("a"), format!("{low:.0} to {high:.0} MHz"));
        assert_eq!(say("b"), format!("5 to {:.0} MHz", FILTERS_PASS.value()));
        assert_eq!(say("c"), format!("{:.0} dB", FILTERS_STOP_BY.value()));
        let day_ms = 24 * 3600 * 1000;
        assert_eq!(say("d"), format!("{} days", RETURNABLE_MS / day_ms));
    }
}

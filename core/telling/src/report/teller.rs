//! What every section needs: the input, and a voice.

use advice::forecast::Forecast;
use facts::fact::SubjectId;
use house::naming;
use house::record::{Part, Survey};
use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::input::ReportInput;
use crate::figure::legible;
use crate::words::Language;

/// The input with a language to tell it in.
pub(super) struct ReportTeller<'a> {
    /// What is told.
    pub input: &'a ReportInput<'a>,
    /// In which language.
    pub language: &'a Language,
}

impl<'a> ReportTeller<'a> {
    /// A teller of this input.
    pub(super) fn new(input: &'a ReportInput<'a>, language: &'a Language) -> Self {
        Self { input, language }
    }

    /// The house.
    pub(super) fn survey(&self) -> &'a Survey {
        self.input.survey
    }

    /// What gets through.
    pub(super) fn forecast(&self) -> &'a Forecast {
        self.input.forecast
    }

    /// What the house is called, or that it has no name.
    pub(super) fn house_name(&self) -> String {
        let name = self.survey().name.clone().filter(|name| !name.trim().is_empty());
        legible(&name.unwrap_or_else(|| self.word("report-untitled"))).into_owned()
    }

    /// An outlet's room by name, else the outlet's own name.
    pub(super) fn room_name(&self, outlet: SubjectId) -> String {
        let room = self.part(outlet).and_then(|part| self.survey().room_of(part));
        match room {
            Some(room) if !room.name.trim().is_empty() => room.name.clone(),
            _ => self.say(&naming::mark(self.survey(), outlet)),
        }
    }

    /// The day of the newest fact, the only date of a report.
    pub(super) fn day(&self) -> Option<String> {
        self.input.provenance.newest_ms.map(|ms| self.language.day(ms))
    }

    /// The part of this id.
    pub(super) fn part(&self, id: SubjectId) -> Option<&'a Part> {
        self.input.survey.parts.get(&id)
    }

    /// A phrase in words, without letters that HTML forbids.
    pub(super) fn say(&self, phrase: &Phrase) -> String {
        legible(&self.language.say(phrase)).into_owned()
    }

    /// The same for a message (or attribute) that there may not be.
    pub(super) fn say_if_known(&self, phrase: &Phrase) -> Option<String> {
        self.language.say_if_known(phrase).map(|text| legible(&text).into_owned())
    }

    /// A message without arguments.
    pub(super) fn word(&self, id: &str) -> String {
        self.say(&Phrase::new(id))
    }

    /// Several messages without arguments.
    pub(super) fn words(&self, ids: &[&str]) -> Vec<String> {
        ids.iter().map(|id| self.word(id)).collect()
    }

    /// A phrase as a table cell.
    pub(super) fn cell(&self, phrase: &Phrase) -> Markup {
        html! { (self.say(phrase)) }
    }

    /// A text of the user's own: set apart, so that its direction of writing does not spread.
    pub(super) fn own(text: &str) -> Markup {
        html! { bdi { (legible(text)) } }
    }

    /// A part by name, set apart.
    pub(super) fn name(&self, id: SubjectId) -> Markup {
        Self::own(&self.say(&naming::part(self.survey(), id)))
    }

    /// A list in words of parts or rooms.
    pub(super) fn list(phrases: impl IntoIterator<Item = Phrase>) -> Arg {
        Arg::Several(phrases.into_iter().map(|phrase| Arg::Phrase(Box::new(phrase))).collect())
    }
}

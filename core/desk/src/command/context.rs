//! What every command needs: how to answer, and in which words.

use phrase::Phrase;
use serde::Serialize;
use telling::words::{Language, LengthUnit};

use crate::arguments::Arguments;
use crate::error::DeskError;
use crate::output;
use crate::printed::Page;
use crate::speak;

/// What every command needs: how to answer, and in which words.
pub struct Context {
    pub(super) json: bool,
    pub(crate) language: Language,
}

impl Context {
    /// The context that the arguments ask for.
    pub fn new(arguments: &Arguments) -> Self {
        let length_unit = if arguments.feet { LengthUnit::Feet } else { LengthUnit::Metres };
        Self { json: arguments.json, language: speak::english(length_unit) }
    }

    /// Whether the answer is JSON.
    pub const fn is_json(&self) -> bool {
        self.json
    }

    /// A phrase in words.
    pub fn say(&self, phrase: &Phrase) -> String {
        self.language.say(phrase)
    }

    /// A message without arguments, in words.
    pub fn word(&self, id: &str) -> String {
        self.say(&Phrase::new(id))
    }

    /// Writes an answer: as JSON if that was asked for, else as a page.
    pub(super) fn answer(
        &self,
        as_json: &impl Serialize,
        as_page: impl FnOnce(&mut Page),
    ) -> Result<(), DeskError> {
        if self.json {
            let mut text = serde_json::to_string_pretty(as_json).map_err(|_| DeskError::Fault)?;
            text.push('\n');
            return output::say_json(&text);
        }
        let mut page = Page::for_output();
        as_page(&mut page);
        output::say_page(page)
    }
}

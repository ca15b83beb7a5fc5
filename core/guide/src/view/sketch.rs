//! A screen in the making: words by their message, blocks in order.

use survey::words::{Language, Phrase};

use crate::number;
use crate::number::Quantity;
use crate::screen::{
    Ability, Block, CautionBlock, ChoiceBlock, ChoiceOption, ConfirmBlock, NumberBlock, PressBlock,
    PressWeight, RowEntry, RowsBlock, Screen, UnitOption, WordsBlock, WordsRole, WritingBlock,
};
use crate::session::Pending;

/// A screen in the making.
pub(crate) struct Sketch<'a> {
    language: &'a Language,
    pending: &'a Pending,
    /// The screen as far as it is.
    pub(crate) screen: Screen,
}

/// An option in the making.
pub(crate) struct Offer {
    key: String,
    words: Phrase,
    about: Option<Phrase>,
    unsure: bool,
}

impl Offer {
    /// An option whose words are the message `words`.
    pub(crate) fn new(key: impl Into<String>, words: Phrase) -> Self {
        Self { key: key.into(), words, about: None, unsure: false }
    }

    /// With what it means or looks like.
    pub(crate) fn about(self, about: Phrase) -> Self {
        Self { about: Some(about), ..self }
    }

    /// "I am not sure", which excludes all others.
    pub(crate) fn unsure() -> Self {
        Self { key: UNSURE.into(), words: Phrase::new("not-sure"), about: None, unsure: true }
    }
}

/// The key of "I am not sure", everywhere.
pub(crate) const UNSURE: &str = "unsure";

impl<'a> Sketch<'a> {
    /// An empty screen. Its name is that of its place.
    pub(crate) fn new(language: &'a Language, pending: &'a Pending, title: &Phrase) -> Self {
        let screen = Screen {
            name: String::new(),
            title: capitalised(language.say(title)),
            trail: Vec::new(),
            how_far: None,
            blocks: Vec::new(),
            abilities: vec![Ability::StayAwake],
            back: false,
            right_to_left: language.is_right_to_left(),
        };
        Self { language, pending, screen }
    }

    /// A phrase in words.
    pub(crate) fn say(&self, phrase: &Phrase) -> String {
        self.language.say(phrase)
    }

    /// What was given so far.
    pub(crate) fn pending(&self) -> &'a Pending {
        self.pending
    }

    /// What the device should be able to do here.
    pub(crate) fn able(&mut self, ability: Ability) {
        if !self.screen.abilities.contains(&ability) {
            self.screen.abilities.push(ability);
        }
    }

    /// Any block.
    pub(crate) fn block(&mut self, block: Block) {
        self.screen.blocks.push(block);
    }

    /// Words.
    pub(crate) fn words(&mut self, role: WordsRole, phrase: &Phrase) {
        let words = capitalised(self.say(phrase));
        self.block(Block::Words(WordsBlock { role, words }));
    }

    /// Words, if there is such a message.
    pub(crate) fn words_if_known(&mut self, role: WordsRole, phrase: &Phrase) {
        if let Some(words) = self.language.say_if_known(phrase) {
            self.block(Block::Words(WordsBlock { role, words }));
        }
    }

    /// A caution.
    pub(crate) fn caution(&mut self, phrase: &Phrase) {
        let block = CautionBlock { name: self.say(&Phrase::new("caution")), words: self.say(phrase) };
        self.block(Block::Caution(block));
    }

    /// One or several of a few answers, if there are any. `now` are the keys that stand in the survey.
    pub(crate) fn choice(
        &mut self,
        key: &str,
        name: &Phrase,
        several: bool,
        offers: Vec<Offer>,
        now: &[String],
    ) {
        if offers.is_empty() {
            return;
        }
        let picked = self.pending.picked(key).unwrap_or(now);
        let options = offers
            .into_iter()
            .map(|offer| ChoiceOption {
                words: self.say(&offer.words),
                about: offer.about.map(|about| self.say(&about)).unwrap_or_default(),
                picked: picked.contains(&offer.key),
                unsure: offer.unsure,
                key: offer.key,
            })
            .collect();
        let block = ChoiceBlock { key: key.into(), name: capitalised(self.say(name)), several, options };
        self.block(Block::Choice(block));
    }

    /// Words to write. `now` is what stands in the survey.
    pub(crate) fn writing(
        &mut self,
        key: &str,
        name: &Phrase,
        hint: Option<&Phrase>,
        lines: bool,
        now: &str,
    ) {
        let text = self.pending.written(key).unwrap_or(now).to_owned();
        let hint = hint.map(|hint| self.say(hint)).unwrap_or_default();
        self.block(Block::Writing(WritingBlock { key: key.into(), name: self.say(name), text, hint, lines }));
    }

    /// A number. `now` is what stands in the survey, in the quantity's own unit.
    pub(crate) fn number(
        &mut self,
        key: &str,
        name: &Phrase,
        hint: Option<&Phrase>,
        quantity: Quantity,
        now: Option<f64>,
    ) {
        let keys = quantity.units(self.language.figures().length_unit);
        let first = keys.first().copied().unwrap_or_default();
        let (text, unit) = match self.pending.typed(key) {
            Some((typed, unit)) => (typed.to_owned(), unit),
            None => (now.map(|value| number::write(value, first)).unwrap_or_default(), first),
        };
        let (text, unit) = (self.language.figures().marks.as_typed(&text), unit.to_owned());
        let units = keys
            .iter()
            .map(|unit| UnitOption {
                key: (*unit).into(),
                words: self.say(&Phrase::new(format!("unit-{unit}"))),
            })
            .collect();
        let hint = hint.map(|hint| self.say(hint)).unwrap_or_default();
        let name = capitalised(self.say(name));
        self.block(Block::Number(NumberBlock { key: key.into(), name, text, units, unit, hint }));
    }

    /// Something to press.
    pub(crate) fn press(&mut self, key: &str, words: &Phrase, weight: PressWeight) {
        let block = PressBlock { key: key.into(), words: self.say(words), weight };
        self.block(Block::Press(block));
    }

    /// Something to press that is asked about once more: the message `id` with `.question`, `.yes` and `.no`.
    pub(crate) fn confirm(&mut self, key: &str, phrase: &Phrase) {
        let block = ConfirmBlock {
            key: key.into(),
            words: self.say(phrase),
            question: self.say(&phrase.attribute("question")),
            yes: self.say(&phrase.attribute("yes")),
            no: self.say(&phrase.attribute("no")),
        };
        self.block(Block::Confirm(block));
    }

    /// Rows, if there are any.
    pub(crate) fn rows(&mut self, name: &Phrase, rows: Vec<RowEntry>) {
        if !rows.is_empty() {
            let name = self.say(name);
            self.block(Block::Rows(RowsBlock { name, rows }));
        }
    }

    /// One row in words.
    pub(crate) fn row(
        &self,
        key: Option<String>,
        head: &Phrase,
        says: Option<&Phrase>,
        remark: Option<&Phrase>,
    ) -> RowEntry {
        let said = |phrase: Option<&Phrase>| phrase.map(|phrase| self.say(phrase)).unwrap_or_default();
        RowEntry { key, head: capitalised(self.say(head)), says: said(says), remark: said(remark) }
    }
}

/// A sentence that begins with a name of ours begins with a capital letter all the same.
fn capitalised(words: String) -> String {
    let mut signs = words.chars();
    match signs.next() {
        Some(first) if first.is_lowercase() => first.to_uppercase().chain(signs).collect(),
        _ => words,
    }
}

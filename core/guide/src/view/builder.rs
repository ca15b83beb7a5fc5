//! A screen in the making: words by their message, blocks in order.

mod cards;

use phrase::Phrase;
use telling::words::Language;

use crate::number;
use crate::number::Quantity;
use crate::place::{Choice, Key};
use crate::screen::{
    Ability, Aloud, Block, CautionBlock, ChoiceBlock, ChoiceOption, ConfirmBlock, DockShown, LONG_WORDS,
    Need, NumberBlock, PressBlock, PressWeight, RowEntry, RowsBlock, Screen, Severity, UnitOption, WayTaken,
    WordsBlock, WordsRole, WritingBlock, WritingKind,
};
use crate::session::Pending;
use crate::short_hash::short_hash;

/// A screen in the making.
pub(crate) struct ScreenBuilder<'a> {
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
    /// An option for an answer, whose words are the message `words`.
    pub(crate) fn new(answer: &impl Choice, words: Phrase) -> Self {
        Self { key: answer.key(), words, about: None, unsure: false }
    }

    /// Whether it is the option for an answer.
    pub(crate) fn is_of(&self, answer: &impl Choice) -> bool {
        self.key == answer.key()
    }

    /// Its words.
    pub(crate) fn into_words(self) -> Phrase {
        self.words
    }

    /// With what it means or looks like.
    pub(crate) fn about(self, about: Phrase) -> Self {
        Self { about: Some(about), ..self }
    }

    /// "I am not sure", which excludes all others.
    pub(crate) fn unsure(answer: &impl Choice) -> Self {
        Self { key: answer.key(), words: Phrase::new("not-sure"), about: None, unsure: true }
    }
}

impl<'a> ScreenBuilder<'a> {
    /// An empty screen. Its name is that of its place.
    pub(crate) fn new(language: &'a Language, pending: &'a Pending, title: &Phrase) -> Self {
        let screen = Screen {
            name: String::new(),
            place: String::new(),
            way: WayTaken::Same,
            title: capitalised(language.say(title)),
            trail: Vec::new(),
            how_far: None,
            notices: Vec::new(),
            blocks: Vec::new(),
            dock: DockShown::default(),
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
        self.words_of(role, phrase, words);
    }

    /// Words that weigh something.
    pub(crate) fn weighty_words(&mut self, role: WordsRole, phrase: &Phrase, weight: Severity) {
        self.words(role, phrase);
        if let Some(Block::Words(words)) = self.screen.blocks.last_mut() {
            words.severity = weight;
        }
    }

    fn words_of(&mut self, role: WordsRole, phrase: &Phrase, words: String) {
        let is_long = role.may_fold() && words.chars().count() >= LONG_WORDS;
        let head = if is_long {
            self.head(phrase).unwrap_or_else(|| self.head_of_role(role))
        } else {
            String::new()
        };
        let id = phrase.id.clone();
        let severity = Severity::Calm;
        self.block(Block::Words(WordsBlock { id, aloud: Aloud::default(), role, head, words, severity }));
    }

    /// The few words behind which a phrase may stand folded: `message.head`, or `message.attribute-head`.
    fn head(&self, phrase: &Phrase) -> Option<String> {
        let head = match phrase.id.split_once('.') {
            None => phrase.attribute("head"),
            Some(_) => Phrase { id: format!("{}-head", phrase.id), args: phrase.args.clone() },
        };
        self.language.say_if_known(&head)
    }

    /// The same of words that have none of their own.
    fn head_of_role(&self, role: WordsRole) -> String {
        self.say(&Phrase::new(match role {
            WordsRole::Why => "head-why",
            WordsRole::How => "head-how",
            _ => "head-more",
        }))
    }

    /// Words, if there is such a message.
    pub(crate) fn words_if_known(&mut self, role: WordsRole, phrase: &Phrase) {
        if let Some(words) = self.language.say_if_known(phrase) {
            self.words_of(role, phrase, words);
        }
    }

    /// A caution.
    pub(crate) fn caution(&mut self, phrase: &Phrase) {
        let name = self.say(&Phrase::new("caution"));
        let (head, words) = (self.say(&phrase.attribute("head")), self.say(phrase));
        // What is named in it makes it another one: it is read anew where that changes.
        let id = if phrase.args.is_empty() {
            phrase.id.clone()
        } else {
            format!("{}-{}", phrase.id, short_hash(&words))
        };
        let block = CautionBlock { id, aloud: Aloud::default(), name, head, words, unread: false };
        self.block(Block::Caution(block));
    }

    /// One or several of a few answers, if there are any. `now` is what stands in the survey.
    pub(crate) fn choice<'n, C: Choice + 'n>(
        &mut self,
        key: &Key,
        name: &Phrase,
        several: bool,
        offers: Vec<Offer>,
        now: impl IntoIterator<Item = &'n C>,
    ) {
        if offers.is_empty() {
            return;
        }
        let now: Vec<String> = now.into_iter().map(Choice::key).collect();
        let picked = self.pending.picked_keys(key).unwrap_or(&now);
        let options = offers
            .into_iter()
            .map(|offer| ChoiceOption {
                id: offer.key.clone(),
                aloud: Aloud::default(),
                enabled: true,
                words: self.say(&offer.words),
                about: offer.about.map(|about| self.say(&about)).unwrap_or_default(),
                picked: picked.contains(&offer.key),
                unsure: offer.unsure,
                key: offer.key,
            })
            .collect();
        let (id, name) = (key.to_string(), capitalised(self.say(name)));
        let block = ChoiceBlock { id, aloud: Aloud::default(), key: key.to_string(), name, several, options };
        self.block(Block::Choice(block));
    }

    /// Words to write. `now` is what stands in the survey.
    pub(crate) fn writing(
        &mut self,
        key: &Key,
        name: &Phrase,
        hint: Option<&Phrase>,
        kind: WritingKind,
        now: &str,
    ) {
        let text = self.pending.written(key).unwrap_or(now).to_owned();
        let hint = hint.map(|hint| self.say(hint)).unwrap_or_default();
        self.block(Block::Writing(WritingBlock {
            id: key.to_string(),
            aloud: Aloud::default(),
            key: key.to_string(),
            name: self.say(name),
            text,
            hint,
            kind,
            lines: kind.has_lines(),
            submit: None,
        }));
    }

    /// Says which press takes what is written or typed in the block before; otherwise the way on does.
    pub(crate) fn submitted_by(&mut self, press: &Key) {
        match self.screen.blocks.last_mut() {
            Some(Block::Writing(writing)) => writing.submit = Some(press.to_string()),
            Some(Block::Number(number)) => number.submit = Some(press.to_string()),
            _ => {}
        }
    }

    /// A number. `now` is what stands in the survey, in the quantity's own unit.
    pub(crate) fn number(
        &mut self,
        key: &Key,
        name: &Phrase,
        hint: Option<&Phrase>,
        quantity: Quantity,
        now: Option<f64>,
    ) {
        let length = self.language.figures().length_unit;
        let keys = quantity.units(length);
        let first = keys.first().copied().unwrap_or_default();
        let (text, unit) = match self.pending.typed(key) {
            Some((typed, unit)) => (typed.to_owned(), unit),
            None => (now.map(|value| number::write(value, quantity, first)).unwrap_or_default(), first),
        };
        let (text, unit) = (self.language.figures().marks.as_typed(&text), unit.to_owned());
        let units = keys
            .iter()
            .map(|unit| UnitOption {
                id: (*unit).into(),
                aloud: Aloud::default(),
                key: (*unit).into(),
                words: self.say(&Phrase::new(format!("unit-{unit}"))),
            })
            .collect();
        let hint = hint.map(|hint| self.say(hint)).unwrap_or_default();
        let name = capitalised(self.say(name));
        self.block(Block::Number(NumberBlock {
            id: key.to_string(),
            aloud: Aloud::default(),
            key: key.to_string(),
            name,
            text,
            units,
            unit,
            hint,
            kind: quantity.kind(),
            letters: quantity.takes_letters(),
            submit: None,
        }));
    }

    /// Something to press. A key that asks for a file says what file it needs.
    pub(crate) fn press(&mut self, key: &Key, words: &Phrase, weight: PressWeight) {
        let press = self.press_block(key, words, weight);
        self.block(Block::Press(press));
    }

    /// The same, where the file is for the user's own place and not to be handed on.
    pub(crate) fn press_for_a_place(&mut self, key: &Key, words: &Phrase, weight: PressWeight) {
        let press = self.press_block(key, words, weight);
        let need = press.need.clone().map(Need::for_a_place);
        self.block(Block::Press(PressBlock { need, ..press }));
    }

    fn press_block(&self, key: &Key, words: &Phrase, weight: PressWeight) -> PressBlock {
        PressBlock {
            id: key.to_string(),
            aloud: Aloud::default(),
            key: key.to_string(),
            words: self.say(words),
            weight,
            need: match key {
                Key::File(asked) => Some(asked.clone().need()),
                _ => None,
            },
            enabled: true,
        }
    }

    /// Something to press that is asked about once more: the message `id` with `.question`, `.yes` and `.no`.
    pub(crate) fn confirm(&mut self, key: &Key, phrase: &Phrase) {
        self.confirm_block(key, phrase, false);
    }

    /// The same, where after a yes something is gone, or counts no more.
    pub(crate) fn confirm_loss(&mut self, key: &Key, phrase: &Phrase) {
        self.confirm_block(key, phrase, true);
    }

    fn confirm_block(&mut self, key: &Key, phrase: &Phrase, destructive: bool) {
        let block = ConfirmBlock {
            id: key.to_string(),
            aloud: Aloud::default(),
            key: key.to_string(),
            words: self.say(phrase),
            question: self.say(&phrase.attribute("question")),
            yes: self.say(&phrase.attribute("yes")),
            no: self.say(&phrase.attribute("no")),
            destructive,
            enabled: true,
        };
        self.block(Block::Confirm(block));
    }

    /// Rows, if there are any.
    pub(crate) fn rows(&mut self, name: &Phrase, rows: Vec<RowEntry>) {
        if !rows.is_empty() {
            let (id, name) = (name.id.clone(), self.say(name));
            self.block(Block::Rows(RowsBlock { id, aloud: Aloud::default(), name, rows }));
        }
    }

    /// One row in words.
    pub(crate) fn row(
        &self,
        key: Option<Key>,
        head: &Phrase,
        says: Option<&Phrase>,
        remark: Option<&Phrase>,
    ) -> RowEntry {
        let key = key.map(|key| key.to_string());
        let said = |phrase: Option<&Phrase>| phrase.map(|phrase| self.say(phrase)).unwrap_or_default();
        RowEntry {
            id: key.clone().unwrap_or_else(|| head.id.clone()),
            aloud: Aloud::default(),
            key,
            head: capitalised(self.say(head)),
            says: said(says),
            remark: said(remark),
            mark: None,
            done_of: None,
            bar: None,
            share: None,
            switched: None,
            severity: Severity::Calm,
        }
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

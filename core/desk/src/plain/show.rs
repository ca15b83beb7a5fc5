//! A screen as lines of text, with a number for everything that can be chosen and a letter for what is pressed.

use std::fmt::Write as _;

use phrase::{Arg, Phrase};
use telling::words::Language;

use guide::screen::{
    Block, CautionBlock, HowFarBlock, Need, NoticeRole, NoticeShown, PressBlock, PressWeight, Screen,
    WordsRole,
};

/// What the numbers and letters of a screen stand for.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Numbered {
    /// What the numbers stand for, 1 first: options, rows, and places that take something.
    pub numbers: Vec<Target>,
    /// What the letters stand for, `a` first: what is pressed. `a` is the way on, on every screen; where a choice leads on
    /// instead it stands for nothing, so that a hand used to it does no harm.
    pub letters: Vec<Target>,
}

/// What one number or letter stands for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Target {
    /// The way on, on a screen that has no press for it.
    Absent,
    /// Something pressed.
    Press {
        /// Its key.
        key: String,
        /// Whether it needs a file first.
        asks_file: bool,
    },
    /// Something pressed that is asked about once more.
    Confirm {
        /// Its key.
        key: String,
        /// The second question.
        question: String,
    },
    /// An option of a choice.
    Option {
        /// The choice's key.
        choice: String,
        /// The option's key.
        option: String,
        /// Whether several may be chosen.
        several: bool,
        /// Whether it excludes all others.
        alone: bool,
    },
    /// A place to write in.
    Write {
        /// Its key.
        key: String,
    },
    /// A number.
    Measure {
        /// Its key.
        key: String,
        /// The unit that counts if none is typed.
        unit: String,
    },
    /// A place for photos.
    Photo {
        /// Its key.
        key: String,
    },
}

/// The screen as text, lines at most as long as its words make them, and what its numbers stand for.
pub fn show(screen: &Screen, language: &Language) -> (String, Numbered) {
    let mut page = Page { text: String::new(), numbered: Numbered::default(), language };
    page.numbered.letters.push(way_on(screen).map_or(Target::Absent, target));
    let trail = screen.trail.join(" > ");
    if !trail.is_empty() {
        page.line(&trail);
    }
    if let Some(far) = &screen.how_far {
        page.line(&far.words);
    }
    page.line("");
    page.line(&format!("== {} ==", screen.title));
    for notice in &screen.notices {
        page.line("");
        page.notice(notice);
    }
    let mut after_press = false;
    for block in &screen.blocks {
        let is_press = matches!(block, Block::Press(_) | Block::Confirm(_));
        if !(is_press && after_press) {
            page.line("");
        }
        page.block(block);
        after_press = is_press;
    }
    if screen.back {
        page.line("");
        page.say("plain-back", &[]);
    }
    (page.text, page.numbered)
}

/// The press that leads on.
fn way_on(screen: &Screen) -> Option<&PressBlock> {
    screen.blocks.iter().find_map(|block| match block {
        Block::Press(press) if press.weight == PressWeight::Main => Some(press),
        _ => None,
    })
}

/// What a press stands for.
fn target(press: &PressBlock) -> Target {
    Target::Press { key: press.key.clone(), asks_file: press.need.as_ref().is_some_and(Need::is_file) }
}

struct Page<'a> {
    text: String,
    numbered: Numbered,
    language: &'a Language,
}

impl Page<'_> {
    /// A line. What of it stands on lines of its own is marked as belonging to it: a stranger's text cannot look as if the
    /// screen offered something.
    fn line(&mut self, line: &str) {
        let line = crate::clean::lines(line.trim_end()).replace('\n', "\n     | ");
        // Writing to a string does not fail.
        let _ = writeln!(self.text, "{line}");
    }

    fn say(&mut self, id: &str, args: &[(&'static str, &str)]) {
        let phrase = args.iter().fold(Phrase::new(id), |phrase, (name, text)| phrase.text(name, *text));
        let words = self.language.say(&phrase);
        // A question that is not repeated leaves its place empty.
        self.line(words.trim_start());
    }

    fn word(&self, id: &str) -> String {
        self.language.say(&Phrase::new(id))
    }

    fn number(&mut self, target: Target) -> usize {
        self.numbered.numbers.push(target);
        self.numbered.numbers.len()
    }

    /// The next letter, or two from the 27th on. The first is the way on's.
    fn letter(&mut self, target: Target) -> String {
        self.numbered.letters.push(target);
        letters(self.numbered.letters.len())
    }

    /// In full until it was read; then what to do or leave, with the rest a sign away.
    fn caution(&mut self, caution: &CautionBlock) {
        if caution.unread || caution.head.is_empty() {
            self.line(&format!("! {}: {}", caution.name, caution.words));
        } else {
            let head = [("name", caution.name.as_str()), ("head", &caution.head)];
            self.say("plain-caution", &head);
        }
    }

    fn notice(&mut self, notice: &NoticeShown) {
        let line = match notice.role {
            NoticeRole::Problem => format!("{} {}", self.word("plain-problem"), notice.words),
            NoticeRole::Done => notice.words.clone(),
        };
        self.line(&line);
    }

    fn press(&mut self, key: &str, words: &str) {
        let number = self.number(Target::Press { key: key.into(), asks_file: false });
        self.line(&format!("{number:>3}  {words}"));
    }

    #[expect(clippy::too_many_lines, reason = "one arm a kind of block; each is read alone")]
    fn block(&mut self, block: &Block) {
        match block {
            Block::Words(words) => {
                let line = match words.role {
                    WordsRole::Problem => format!("{} {}", self.word("plain-problem"), words.words),
                    WordsRole::Heading => format!("-- {}", words.words),
                    _ => words.words.clone(),
                };
                self.line(&line);
            }
            Block::Caution(caution) => self.caution(caution),
            Block::Choice(choice) => {
                let how = if choice.several { "plain-several" } else { "plain-one" };
                // What was just asked is not asked again.
                let name = if self.text.contains(&choice.name) { "" } else { &choice.name };
                self.say(how, &[("name", name)]);
                for option in &choice.options {
                    let number = self.number(Target::Option {
                        choice: choice.key.clone(),
                        option: option.key.clone(),
                        several: choice.several,
                        alone: option.unsure,
                    });
                    let mark = if option.picked { "*" } else { " " };
                    let about =
                        if option.about.is_empty() { String::new() } else { format!(" ({})", option.about) };
                    self.line(&format!("{number:>3}{mark} {}{about}", option.words));
                }
            }
            Block::Writing(writing) => {
                let number = self.number(Target::Write { key: writing.key.clone() });
                self.input(number, &writing.name, &writing.text, &writing.hint);
            }
            Block::Number(measure) => {
                let number =
                    self.number(Target::Measure { key: measure.key.clone(), unit: measure.unit.clone() });
                let unit = measure.units.iter().find(|unit| unit.key == measure.unit);
                let unit = unit.map_or("", |unit| unit.words.as_str());
                let text = if measure.text.is_empty() || measure.text.contains(char::is_alphabetic) {
                    measure.text.clone()
                } else {
                    format!("{} {unit}", measure.text)
                };
                let hint = if measure.hint.is_empty() {
                    unit.to_owned()
                } else {
                    format!("{unit}; {}", measure.hint)
                };
                self.input(number, &measure.name, &text, &hint);
            }
            Block::PhotoSlot(slot) => {
                let number = self.number(Target::Photo { key: slot.key.clone() });
                self.input(number, &slot.name, "", &self.word("plain-photo"));
                for photo in &slot.photos {
                    let mark = if photo.picked == Some(true) { "* " } else { "" };
                    match &photo.key {
                        Some(key) => self.press(key, &format!("{mark}{}", photo.name)),
                        None => self.line(&format!("     {}", photo.name)),
                    }
                }
            }
            Block::Label(label) => {
                self.line(&label.name);
                if !label.text.is_empty() {
                    for line in label.text.lines() {
                        self.line(&format!("  | {line}"));
                    }
                }
                for figure in &label.figures {
                    let doubt =
                        if figure.doubt.is_empty() { String::new() } else { format!(" ({})", figure.doubt) };
                    let taken = if figure.taken { "" } else { "?" };
                    let words = format!("{}: {}{taken}{doubt}", figure.name, figure.says);
                    match &figure.key {
                        Some(key) => self.press(key, &words),
                        None => self.line(&format!("     {words}")),
                    }
                }
                for doubt in &label.doubts {
                    self.line(&format!("  {doubt}"));
                }
            }
            Block::Reading(reading) => {
                let remark =
                    if reading.remark.is_empty() { String::new() } else { format!(" ({})", reading.remark) };
                self.line(&format!("{}: {}{remark}", reading.name, reading.says));
            }
            Block::Part(part) => {
                let name = [part.tag.as_str(), &part.name].into_iter().filter(|words| !words.is_empty());
                let name = name.collect::<Vec<_>>().join("  ");
                match &part.key {
                    Some(key) => self.press(key, &name),
                    None => self.line(&name),
                }
                for line in &part.lines {
                    self.line(&format!("     {line}"));
                }
            }
            Block::Rows(rows) => {
                self.line(&rows.name);
                for row in &rows.rows {
                    let said = [row.head.as_str(), &row.says].into_iter().filter(|words| !words.is_empty());
                    let words = said.collect::<Vec<_>>().join(": ");
                    match &row.key {
                        Some(key) => self.press(key, &words),
                        None => self.line(&format!("   - {words}")),
                    }
                    if !row.remark.is_empty() {
                        self.line(&format!("     {}", row.remark));
                    }
                }
            }
            Block::Figure(figure) => {
                self.line(&format!("[{}: {}]", figure.name, figure.description));
                for line in &figure.lines {
                    self.line(&format!("  {line}"));
                }
            }
            Block::HowFar(far) => self.how_far(far),
            Block::Press(press) => {
                let target = target(press);
                let is_way_on = self.numbered.letters.first() == Some(&target);
                let letter = if is_way_on { letters(1) } else { self.letter(target) };
                self.line(&format!("{letter:>3}  {}", press.words));
                if press.need.as_ref().is_some_and(Need::is_file) {
                    self.say("plain-file", &[("letter", &letter)]);
                }
            }
            Block::Confirm(confirm) => {
                let target = Target::Confirm { key: confirm.key.clone(), question: confirm.question.clone() };
                let letter = self.letter(target);
                self.line(&format!("{letter:>3}  {}", confirm.words));
            }
        }
    }

    fn how_far(&mut self, far: &HowFarBlock) {
        match far.thousandths {
            Some(done) => {
                let share = self
                    .language
                    .say(&Phrase::new("plain-done").with("share", Arg::Share(f64::from(done) / 1000.0)));
                self.line(&format!("{}: {share}", far.name));
            }
            None => self.line(&far.name),
        }
        if let Some(stop) = far.stop.as_ref().filter(|stop| stop.enabled) {
            let letter = self.letter(target(stop));
            self.line(&format!("{letter:>3}  {}", stop.words));
        }
    }

    fn input(&mut self, number: usize, name: &str, text: &str, hint: &str) {
        let hint = if hint.is_empty() { String::new() } else { format!(" ({hint})") };
        self.line(&format!("{number:>3}  {name}{hint}"));
        if !text.is_empty() {
            self.line(&format!("     = {text}"));
        }
    }
}

/// The name of the `number`th letter: a to z, then aa to zz.
pub(super) fn letters(number: usize) -> String {
    let letter = |place: usize| char::from(b'a' + u8::try_from(place % 26).unwrap_or(0));
    let place = number.saturating_sub(1);
    match place / 26 {
        0 => letter(place).to_string(),
        more => format!("{}{}", letter(more - 1), letter(place)),
    }
}

//! A screen as lines of text, with a mark for everything that can be typed there: numbers choose, words act, names fill.
//!
//! What is done is called the same on every screen: by the name of its key, the most common by one letter. What can be
//! chosen is numbered; where a screen asks for a figure, or has several lists, a letter stands before the number (`a1`,
//! `b3`), so that a figure is never taken for a choice and no list's numbers move with another list.

use std::fmt::Write as _;

use phrase::{Arg, Phrase};
use telling::words::Language;

use guide::screen::{
    Block, CautionBlock, HowFarBlock, Need, NoticeRole, NoticeShown, PressBlock, PressWeight, Screen,
    WordsRole,
};

/// The mark of the way on, on every screen; where a choice leads on instead it stands for nothing, so that a hand used to
/// it does no harm.
pub const WAY_ON: &str = "g";

/// What is so common that one letter does for it, by the key of its press.
pub const LETTERS: [(&str, &str); 5] =
    [("next", WAY_ON), ("later", "l"), ("unsure", "u"), ("same", "s"), ("overview", "w")];

/// What is called otherwise than its key, since people would type it so.
const CALLED: [(&str, &str); 3] = [("mhz", "frequency"), ("dbmv", "level"), ("mer", "error-ratio")];

/// Presses that ask for a file, by how their keys begin and end.
const FILES: [(&str, &str, &str); 3] =
    [("file-in", "", "open-file"), ("file-out:", ".html", "report"), ("file-out:", ".lwk", "file")];

/// What the marks of a screen stand for.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Marked {
    /// Each mark with what it stands for, in the order of the screen.
    pub marks: Vec<(String, Target)>,
    /// Whether a letter stands before the numbers.
    pub lettered: bool,
}

impl Marked {
    /// What a mark stands for.
    pub fn target(&self, mark: &str) -> Option<&Target> {
        self.marks.iter().find(|(of, _)| of == mark).map(|(_, target)| target)
    }
}

/// The word that stands for a press or an input, on every screen: the name of its key.
pub fn word(key: &str) -> String {
    let file = FILES.iter().find(|(begins, ends, _)| key.starts_with(begins) && key.ends_with(ends));
    if let Some((_, _, word)) = file {
        return (*word).to_owned();
    }
    let other = LETTERS.iter().chain(&CALLED).find(|(of, _)| *of == key);
    let letter = other.map(|(_, word)| (*word).to_owned());
    letter.unwrap_or_else(|| key.split(':').next().unwrap_or(key).to_owned())
}

/// Whether a screen needs a letter before its numbers: it asks for a figure, or has more than one list.
fn is_lettered(screen: &Screen) -> bool {
    let asks_figure = screen.blocks.iter().any(|block| matches!(block, Block::Number(_)));
    let is_list = |block: &&Block| match block {
        Block::Choice(_) => true,
        Block::Rows(rows) => rows.rows.iter().any(|row| row.key.is_some()),
        Block::PhotoSlot(slot) => slot.photos.iter().any(|photo| photo.key.is_some()),
        Block::Label(label) => label.figures.iter().any(|figure| figure.key.is_some()),
        Block::Part(part) => part.key.is_some(),
        _ => false,
    };
    asks_figure || screen.blocks.iter().filter(is_list).count() > 1
}

/// What one mark stands for.
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
    /// A photo on which corners are touched.
    Touch {
        /// Its key.
        key: String,
    },
    /// A place for photos.
    Photo {
        /// Its key.
        key: String,
    },
}

/// The screen as text, lines at most as long as its words make them, and what its marks stand for.
pub fn show(screen: &Screen, language: &Language) -> (String, Marked) {
    let marked = Marked { marks: Vec::new(), lettered: is_lettered(screen) };
    let mut page = Page { text: String::new(), marked, list: 0, chosen: 0, language };
    let on = way_on(screen);
    page.marked.marks.push((WAY_ON.into(), on.map_or(Target::Absent, target)));
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
    (page.text, page.marked)
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
    marked: Marked,
    /// How many lists there were so far, and how many numbers on the screen or in this list.
    list: usize,
    chosen: usize,
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

    /// A list begins.
    fn begin_list(&mut self) {
        self.list += 1;
        if self.marked.lettered {
            self.chosen = 0;
        }
    }

    /// The next number of the list, behind its letter where the screen has letters.
    fn number(&mut self, target: Target) -> String {
        self.chosen += 1;
        let mark = if self.marked.lettered {
            format!("{}{}", letters(self.list), self.chosen)
        } else {
            self.chosen.to_string()
        };
        self.marked.marks.push((mark.clone(), target));
        mark
    }

    /// The word of what is pressed or filled; a second one of that name on the screen is told apart by a number.
    fn word_of(&mut self, key: &str, target: Target) -> String {
        let word = word(key);
        let is_free = |mark: &String| self.marked.target(mark).is_none();
        let mut all = std::iter::once(word.clone()).chain((2..).map(|more| format!("{word}-{more}")));
        let mark = all.find(is_free).unwrap_or(word);
        self.marked.marks.push((mark.clone(), target));
        mark
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
        let mark = self.number(Target::Press { key: key.into(), asks_file: false });
        self.line(&format!("{mark:>3}  {words}"));
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
                self.begin_list();
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
                let mark = self.word_of(&writing.key, Target::Write { key: writing.key.clone() });
                self.input(&mark, &writing.name, &writing.text, &writing.hint);
            }
            Block::Number(measure) => {
                let target = Target::Measure { key: measure.key.clone(), unit: measure.unit.clone() };
                let mark = self.word_of(&measure.key, target);
                let unit = measure.units.iter().find(|unit| unit.key == measure.unit);
                let unit = unit.map_or("", |unit| unit.words.as_str());
                let text = if measure.text.is_empty() || measure.text.contains(char::is_alphabetic) {
                    measure.text.clone()
                } else {
                    format!("{} {unit}", measure.text)
                };
                // The unit that counts if none is typed, then those that may be typed as well.
                let others = measure.units.iter().filter(|other| other.key != measure.unit);
                let all = std::iter::once(unit).chain(others.map(|other| other.words.as_str()));
                let all = all.collect::<Vec<_>>().join(", ");
                let hint = if measure.hint.is_empty() { all } else { format!("{all}; {}", measure.hint) };
                self.input(&mark, &measure.name, &text, &hint);
            }
            Block::PhotoSlot(slot) => {
                let mark = self.word_of(&slot.key, Target::Photo { key: slot.key.clone() });
                self.input(&mark, &slot.name, "", &self.word("plain-photo"));
                if slot.photos.iter().any(|photo| photo.key.is_some()) {
                    self.begin_list();
                }
                for photo in &slot.photos {
                    let mark = if photo.picked == Some(true) { "* " } else { "" };
                    match &photo.key {
                        Some(key) => self.press(key, &format!("{mark}{}", photo.name)),
                        None => self.line(&format!("     {}", photo.name)),
                    }
                }
            }
            Block::PhotoPart(part) => {
                let mark = self.word_of(&part.key, Target::Touch { key: part.key.clone() });
                let now = part.part.as_ref().map_or("", |piece| piece.name.as_str());
                self.input(&mark, &part.name, now, &self.word("plain-touch"));
            }
            Block::Label(label) => {
                self.line(&label.name);
                if !label.text.is_empty() {
                    for line in label.text.lines() {
                        self.line(&format!("  | {line}"));
                    }
                }
                if label.figures.iter().any(|figure| figure.key.is_some()) {
                    self.begin_list();
                }
                for figure in &label.figures {
                    let doubt =
                        if figure.doubt.is_empty() { String::new() } else { format!(" ({})", figure.doubt) };
                    let is_open = !figure.taken && figure.key.is_some();
                    let taken = if is_open { "?" } else { "" };
                    let piece =
                        figure.piece.as_ref().map_or(String::new(), |piece| format!(" [{}]", piece.name));
                    let words = format!("{}: {}{taken}{doubt}{piece}", figure.name, figure.says);
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
                if part.key.is_some() {
                    self.begin_list();
                }
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
                if rows.rows.iter().any(|row| row.key.is_some()) {
                    self.begin_list();
                }
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
                let is_way_on = self.marked.target(WAY_ON) == Some(&target);
                // The way on answers to its own word too.
                let own = if is_way_on && word(&press.key) == WAY_ON {
                    WAY_ON.to_owned()
                } else {
                    self.word_of(&press.key, target)
                };
                let mark = if is_way_on { WAY_ON } else { &own };
                self.line(&format!("{mark:>3}  {}", press.words));
                if press.need.as_ref().is_some_and(Need::is_file) {
                    self.say("plain-file", &[("mark", &own)]);
                }
            }
            Block::Confirm(confirm) => {
                let target = Target::Confirm { key: confirm.key.clone(), question: confirm.question.clone() };
                let mark = self.word_of(&confirm.key, target);
                self.line(&format!("{mark:>3}  {}", confirm.words));
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
            let mark = self.word_of(&stop.key, target(stop));
            self.line(&format!("{mark:>3}  {}", stop.words));
        }
    }

    fn input(&mut self, mark: &str, name: &str, text: &str, hint: &str) {
        let hint = if hint.is_empty() { String::new() } else { format!(" ({hint})") };
        self.line(&format!("{mark:>3}  {name}{hint}"));
        if !text.is_empty() {
            self.line(&format!("     = {text}"));
        }
    }
}

/// The name of the `number`th letter: a to z, then aa to zz.
fn letters(number: usize) -> String {
    let letter = |place: usize| char::from(b'a' + u8::try_from(place % 26).unwrap_or(0));
    let place = number.saturating_sub(1);
    match place / 26 {
        0 => letter(place).to_string(),
        more => format!("{}{}", letter(more - 1), letter(place)),
    }
}

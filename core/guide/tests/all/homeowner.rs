//! A guide in a folder of its own, and what a homeowner answers in an invented house.

use std::time::Duration;

use facts::fact::AuthorId;
use guide::screen::{Block, ChoiceBlock};
use guide::{Deed, Guide, Screen};
use phrase::Phrase;
use telling::words::{Figures, Language};
use tempfile::TempDir;

/// A language of the guide.
pub type Tongue = fn(Figures) -> Language;

/// English and the two pseudo-languages.
pub const TONGUES: [Tongue; 3] = [guide::english, guide::lengthened, guide::right_to_left];

/// A guide over a folder of its own.
pub struct Walk {
    pub home: TempDir,
    pub author: AuthorId,
    pub tongue: Tongue,
    pub language: Language,
    pub guide: Guide,
}

impl Walk {
    /// A guide without any survey.
    pub fn new(tongue: Tongue) -> Self {
        let home = tempfile::tempdir().unwrap();
        let author = AuthorId::random();
        let language = || tongue(Figures::default());
        let mut guide = Guide::at(home.path(), author, language()).unwrap();
        guide.work_out_with(few_draws());
        guide.wait_for_long_work(Duration::MAX);
        Self { home, author, tongue, language: language(), guide }
    }

    /// With a new survey.
    pub fn begun(tongue: Tongue) -> Self {
        let mut walk = Self::new(tongue);
        walk.act(&press("new"));
        walk.act(&Deed::Write { key: "name".into(), words: "Öß 1".into() });
        walk.act(&press("make"));
        walk
    }

    pub fn act(&mut self, deed: &Deed) {
        self.guide.act(deed).unwrap_or_else(|error| panic!("{deed:?}: {error}"));
        self.guide.settle_long_work();
    }

    /// What happens when the app is killed: nothing is closed, and the survey is opened anew.
    pub fn killed(self) -> Self {
        let Self { home, author, tongue, language, guide } = self;
        let folder = guide.open_folder();
        drop(guide);
        let mut guide = Guide::at(home.path(), author, tongue(Figures::default())).unwrap();
        guide.work_out_with(few_draws());
        guide.wait_for_long_work(Duration::MAX);
        if let Some(folder) = folder {
            guide.open(&folder).unwrap();
            guide.settle_long_work();
        }
        Self { home, author, tongue, language, guide }
    }

    /// A message in the language of the walk.
    pub fn word(&self, id: &str) -> String {
        self.language.say(&Phrase::new(id))
    }
}

/// Few draws: how exact the results are is proved elsewhere.
fn few_draws() -> advice::worklist::Options {
    let draws = advice::forecast::Options { draws: 4, seed: 1, points: 45, settles: false };
    advice::worklist::Options {
        screening: draws,
        stating: draws,
        most_steps: 6,
        ..advice::worklist::Options::default()
    }
}

/// A press.
pub fn press(key: &str) -> Deed {
    Deed::Press { key: key.into() }
}

/// A choice of options.
pub fn pick(key: &str, options: &[&str]) -> Deed {
    Deed::Pick { key: key.into(), picked: options.iter().map(|option| (*option).to_owned()).collect() }
}

pub fn measure(key: &str, typed: &str, unit: &str) -> Deed {
    Deed::Measure { key: key.into(), typed: typed.into(), unit: unit.into() }
}

/// The choices of a screen.
pub fn choices(screen: &Screen) -> impl Iterator<Item = &ChoiceBlock> {
    screen.blocks.iter().filter_map(|block| match block {
        Block::Choice(choice) => Some(choice),
        _ => None,
    })
}

/// How many outputs a screen asks about: one that stands open, and a row for each of the others.
pub fn outputs(screen: &Screen) -> usize {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(&rows.rows),
        _ => None,
    });
    let folded = rows.flatten().filter(|row| row.key.as_ref().is_some_and(|key| key.starts_with("port:")));
    folded.count() + choices(screen).filter(|choice| choice.key.starts_with("port:")).count()
}

/// What is printed on the splitter of the house.
pub const LABEL: &str = "3-WAY SPLITTER 5-1000MHz 5.5dB";

/// An invented house of three outlets: cable TV and internet come in from the street, no entry filter, one splitter
/// behind the ground block, and an outlet in the living room, the office and the bedroom. Modem and router stand in the office.
pub struct House {
    /// The rooms that no output leads to yet.
    rooms: Vec<&'static str>,
}

impl House {
    pub fn new() -> Self {
        Self { rooms: vec!["room-bedroom", "room-office", "room-living"] }
    }

    /// What the homeowner does on a question's screen. A panic names a screen that this house knows no answer to.
    pub fn answer(&mut self, walk: &Walk, screen: &Screen) -> Vec<Deed> {
        let next = || press("next");
        match screen.name.as_str() {
            "ask-whose" => vec![pick("whose", &["own"])],
            "ask-uses" => vec![pick("uses", &["cable_tv", "cable_internet"]), next()],
            "ask-modem-age" => vec![pick("modem", &["31"])],
            "ask-depends" => vec![pick("depends", &["nothing"]), next()],
            "ask-plan" => vec![measure("down", "1 Gb/s", "mbps"), measure("up", "50", "mbps"), next()],
            "ask-rooms" => {
                vec![pick("rooms", &["living", "office", "bedroom"]), pick("wish", &["fast"]), next()]
            }
            "ask-ways-in" => vec![pick("ways", &["cable"]), next()],
            "ask-joined" => vec![pick("joined", &["connected"])],
            "ask-ground-block" => vec![pick("seen", &["yes"])],
            "ask-entry-filter" => vec![pick("seen", &["no"])],
            "ask-label" => {
                vec![Deed::Write { key: "text".into(), words: LABEL.into() }, next()]
            }
            "ask-label-read" | "enough" => vec![next()],
            "ask-legs" => vec![measure("legs", "3", "count"), next()],
            "ask-leads-to" => vec![pick("leads", &["splitter"])],
            "ask-outputs" => self.outputs(walk, screen),
            "ask-plugged" if screen.title.contains(&walk.word("room-office")) => {
                vec![pick("plugged", &["modem"]), next()]
            }
            "ask-plugged" => vec![pick("plugged", &["tv"]), next()],
            "ask-more-outlets" => vec![pick("more", &["no"]), next()],
            "ask-connectors" => vec![pick("connectors", &["good"])],
            "ask-cable" => vec![
                pick("series", &["six"]),
                measure("length", "12.5", "m"),
                pick("known", &["paced"]),
                press(if screen.keys().contains(&"others-too") { "others-too" } else { "next" }),
            ],
            "ask-ports" => vec![pick("behind-rate", &["unsure"])],
            "ask-adapters" => vec![pick("adapters", &["none"])],
            "ask-router-at" => vec![pick("outlet", &[&outlet_in(walk, screen, "room-office")])],
            "ask-router-speaks" => vec![pick("speaks", &["no"])],
            other => panic!("no answer to {other}"),
        }
    }

    /// An outlet in a room on each output.
    fn outputs(&mut self, walk: &Walk, screen: &Screen) -> Vec<Deed> {
        let mut deeds = Vec::new();
        // One output stands open; the next one does once this one is told, and offers the same.
        let open = choices(screen).next().unwrap();
        for port in 1..=outputs(screen) {
            let room = self.rooms.pop().unwrap();
            deeds.push(pick(&format!("port:{port}"), &[&room_in(walk, open, room)]));
        }
        deeds.push(press("next"));
        deeds
    }
}

/// Whether a screen belongs to what a homeowner is asked: a question, or what is said between two rounds of them.
pub fn asks(screen: &Screen) -> bool {
    screen.name.starts_with("ask-") || screen.name == "enough"
}

/// The option of the screen's choice that names a room.
fn outlet_in(walk: &Walk, screen: &Screen, room: &str) -> String {
    room_in(walk, choices(screen).next().unwrap(), room)
}

/// The option of a choice that names a room.
pub fn room_in(walk: &Walk, choice: &ChoiceBlock, room: &str) -> String {
    let word = walk.word(room).to_lowercase();
    let found = choice.options.iter().find(|option| option.words.to_lowercase().contains(&word));
    found.unwrap_or_else(|| panic!("no {word} in {choice:?}")).key.clone()
}

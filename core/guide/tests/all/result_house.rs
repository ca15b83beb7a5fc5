//! A guide over a survey that was written with edits; and what a person does with it.

use std::path::PathBuf;
use std::time::Duration;

use advice::forecast::Options as Draws;
use advice::worklist::Options;
use facts::fact::{AuthorId, Edit, value_of};
use facts::store::Store;
use guide::screen::{Block, PressWeight};
use guide::{Deed, Guide, Screen};
use house::record::edits_between;
use house::record::{CableKind, Connector, EntryKind, Plugged, ServiceKind, Survey, field, fold};
use telling::words::Figures;
use tempfile::TempDir;

use houses::House;

/// A guide with one survey open, in a folder that goes when this does.
pub struct Walk {
    pub guide: Guide,
    pub folder: PathBuf,
    pub home: TempDir,
}

/// Few draws: what is asked is what stands on a screen, not its last megabit.
pub fn quick() -> Options {
    let draws = Draws { draws: 8, seed: 1, points: 89, settles: false };
    Options { screening: draws, stating: draws, most_steps: 12, ..Options::default() }
}

impl Walk {
    /// The guide over this house.
    pub fn of(house: &Survey) -> Self {
        let home = tempfile::tempdir().expect("a folder");
        let author = AuthorId::random();
        let folder = home.path().join("house.legwork");
        let mut store = Store::create(&folder, author).expect("a survey");
        let survey = store.survey_id().subject();
        let mut edits = edits_between(&Survey::new(house.id), house, store.ledger()).expect("facts");
        edits.push(Edit::new(survey, field::IS, "survey"));
        edits.push(Edit::new(survey, field::NAME, "An invented house"));
        edits.push(Edit::new(survey, field::PLACE, "Nowhere Lane 1"));
        if let Some(internet) = &house.internet {
            edits.push(Edit::new(survey, field::INTERNET, value_of(internet).expect("a value")));
        }
        if house.network != Survey::new(house.id).network {
            edits.push(Edit::new(survey, field::NETWORK, value_of(&house.network).expect("a value")));
        }
        for service in house.services.values() {
            edits.push(Edit::new(service.id, field::IS, "service"));
            edits.push(Edit::new(service.id, field::KIND, value_of(&service.kind).expect("a value")));
        }
        for ((subject, question), answer) in &house.asked {
            let subject = if *subject == house.id { survey } else { *subject };
            edits.push(Edit::new(subject, question.field(), answer.clone()));
        }
        store.write(&edits).expect("written");
        drop(store);
        let mut guide = Guide::at(home.path(), author, guide::english(Figures::default())).expect("a guide");
        guide.work_out_with(quick());
        guide.wait_for_long_work(Duration::MAX);
        guide.open(&folder).expect("opened");
        Self { guide, folder, home }
    }

    /// The survey as it stands on the disk.
    pub fn survey(&self) -> Survey {
        let peek = Store::open(&self.folder, AuthorId::random()).expect("opened beside");
        fold(peek.ledger(), peek.survey_id()).expect("a house")
    }

    /// The screen once nothing is going on any more.
    pub fn screen(&mut self) -> Screen {
        self.guide.settle_long_work();
        self.guide.screen()
    }

    pub fn press(&mut self, key: &str) -> Screen {
        self.guide.settle_long_work();
        let screen = self.guide.screen();
        assert!(screen.keys().contains(&key), "{} has no {key}: {:?}", screen.name, screen.keys());
        self.guide.act(&Deed::Press { key: key.into() }).expect("pressed");
        self.screen()
    }

    pub fn pick(&mut self, key: &str, option: &str) -> Screen {
        let screen = self.screen();
        assert!(screen.keys().contains(&key), "{} has no {key}", screen.name);
        self.guide.act(&Deed::Pick { key: key.into(), picked: vec![option.into()] }).expect("picked");
        self.screen()
    }

    pub fn measure(&mut self, key: &str, typed: &str) {
        let screen = self.screen();
        let unit = screen.blocks.iter().find_map(|block| match block {
            Block::Number(number) if number.key == key => Some(number.unit.clone()),
            _ => None,
        });
        let unit = unit.unwrap_or_else(|| panic!("{} has no {key}", screen.name));
        self.guide.act(&Deed::Measure { key: key.into(), typed: typed.into(), unit }).expect("typed");
    }

    pub fn file(&mut self, key: &str, path: &std::path::Path) -> guide::Result<()> {
        self.guide.settle_long_work();
        let file = path.to_str().expect("a path").to_owned();
        let done = self.guide.act(&Deed::File { key: key.into(), file });
        self.guide.settle_long_work();
        done
    }

    /// From the whole job to one of its rows.
    pub fn go(&mut self, door: &str) -> Screen {
        for _ in 0..70 {
            if self.guide.screen().name == "overview" {
                if !self.guide.screen().keys().contains(&door) {
                    self.press("more");
                }
                return self.press(door);
            }
            if self.guide.screen().keys().contains(&"overview") {
                self.guide.act(&Deed::Press { key: "overview".into() }).expect("pressed");
            } else {
                self.guide.act(&Deed::Back).expect("back");
            }
        }
        panic!("no way to the whole job from {}", self.guide.screen().name)
    }
}

/// The key of the press that stands out.
pub fn main_key(screen: &Screen) -> Option<&str> {
    screen.blocks.iter().find_map(|block| match block {
        Block::Press(press) if press.weight == PressWeight::Main => Some(press.key.as_str()),
        _ => None,
    })
}

/// Everything that a screen says, as one text.
pub fn text(screen: &Screen) -> String {
    screen.spoken().join("\n")
}

/// The first key of a screen that begins so.
pub fn key(screen: &Screen, begins: &str) -> String {
    let found = screen.keys().into_iter().find(|key| key.starts_with(begins)).map(str::to_owned);
    found.unwrap_or_else(|| panic!("{} has no {begins}: {:?}", screen.name, screen.keys()))
}

/// What holds for every screen: a way on, a name for everything, no message without words, not too long.
pub fn sound(screen: &Screen) {
    assert!(!screen.keys().is_empty(), "{} has no way on", screen.name);
    assert!(screen.rows() <= guide::screen::MOST_ROWS, "{}", screen.name);
    let named = |block: &Block| match block {
        Block::Press(press) => !press.words.is_empty(),
        Block::Rows(rows) => !rows.name.is_empty() && rows.rows.iter().all(|row| !row.head.is_empty()),
        block => block.spoken().first().is_some_and(|words| !words.is_empty()),
    };
    for block in &screen.blocks {
        assert!(named(block), "{}: {block:?}", screen.name);
    }
    for words in screen.spoken() {
        assert!(!words.contains(['{', '}']), "{}: {words}", screen.name);
        let is_id =
            words.contains('-') && words.bytes().all(|sign| sign.is_ascii_lowercase() || sign == b'-');
        assert!(!is_id, "{} says {words}", screen.name);
    }
}

/// Entry without a filter, a four-way splitter not made for the band with two open legs, two rooms.
pub fn needy() -> House {
    House::new()
        .entry("E1", EntryKind::Cable)
        .splitter("S1", 4)
        .made_for(5.0, 1000.0)
        .from("E1", 1)
        .over(CableKind::Six, 3.0)
        .open(3)
        .open(4)
        .outlet("O1", "Study")
        .from("S1", 1)
        .over(CableKind::Six, 20.0)
        .plugged(&[])
        .adapter("2.5")
        .bridge()
        .outlet("O2", "Office")
        .from("S1", 2)
        .over(CableKind::FiftyNine, 60.0)
        .run(|run| run.connector_far = Connector::TwistOn)
        .plugged(&[Plugged::Tv])
        .adapter("2.5")
        .wish("Office", 900.0)
        .service(ServiceKind::CableTv, None)
        .plan(250.0)
}

/// The guide over it.
pub fn walk(house: House) -> Walk {
    Walk::of(&house.survey())
}

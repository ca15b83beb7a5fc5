//! A hand on the guide: it touches only what the screen offers, and counts its touches.

use std::io::Cursor;
use std::path::{Path, PathBuf};
use std::time::Duration;

use facts::fact::{AuthorId, SubjectId};
use facts::store::Store;
use guide::screen::{Block, MOST_ROWS, Screen};
use guide::{Deed, Guide};
use house::record::{Survey, fold};
use image::{ImageFormat, Rgb, RgbImage};

/// A hand on the guide over a home folder.
pub struct Hand {
    pub guide: Guide,
    /// Touches so far. A photo costs two: the shutter, and keeping the picture.
    pub touches: usize,
    author: AuthorId,
    home: PathBuf,
}

impl Hand {
    /// Over a home folder, with nothing open.
    pub fn over(home: &Path) -> Self {
        let author = AuthorId::random();
        let mut guide = Guide::at(home, author, guide::english(telling::words::Figures::default())).unwrap();
        guide.wait_for_long_work(Duration::MAX);
        Self { guide, touches: 0, author, home: home.to_owned() }
    }

    /// In a new survey, on the overview.
    pub fn in_new(home: &Path, name: &str) -> Self {
        let mut hand = Self::over(home);
        hand.make(name);
        hand
    }

    /// Makes another survey, and goes to its overview.
    pub fn make(&mut self, name: &str) {
        self.press("new");
        self.write("name", name);
        self.press("make");
        self.press("overview");
    }

    /// Adds a loose part of a kind from the list of parts; its screen is shown.
    pub fn add(&mut self, kind: &str) {
        self.overview();
        self.press("free-parts");
        self.press("add");
        self.pick("kind", &[kind]);
        self.press("make");
    }

    /// As after the app's death: a new guide, the survey opened again.
    pub fn killed(&mut self) {
        let folder = self.guide.open_folder().unwrap();
        let language = guide::english(telling::words::Figures::default());
        self.guide = Guide::at(&self.home, self.author, language).unwrap();
        self.guide.wait_for_long_work(Duration::MAX);
        self.guide.open(&folder).unwrap();
    }

    /// The screen, checked as every screen must be.
    pub fn screen(&self) -> Screen {
        let screen = self.guide.screen();
        assert!(screen.rows() < MOST_ROWS, "{}: {} rows", screen.name, screen.rows());
        assert!(!screen.keys().is_empty(), "{} offers no way on", screen.name);
        for block in &screen.blocks {
            let name = block.spoken().first().copied().unwrap_or_default();
            assert!(!name.trim().is_empty(), "{}: {block:?} has no name", screen.name);
        }
        for words in screen.spoken() {
            let raw = words.starts_with("free-") || words.contains('{') || words.starts_with("value-");
            assert!(!raw, "{}: {words}", screen.name);
        }
        screen
    }

    fn act(&mut self, deed: &Deed) {
        let screen = self.screen();
        let key = deed.key().unwrap_or_default();
        assert!(
            screen.keys().contains(&key) || *deed == Deed::Back,
            "{} has no {key}: {:?}",
            screen.name,
            screen.keys()
        );
        self.guide.act(deed).unwrap();
        self.screen();
    }

    /// To the overview, from wherever.
    pub fn overview(&mut self) {
        if self.screen().name != "overview" {
            self.press("overview");
        }
    }

    pub fn press(&mut self, key: &str) {
        self.touches += 1;
        self.act(&Deed::Press { key: key.into() });
    }

    /// From the overview to one of its screens, or to one that stands behind the rest.
    pub fn door(&mut self, key: &str) {
        self.overview();
        if self.keys(key).is_empty() {
            self.press("more");
        }
        self.press(key);
    }

    pub fn pick(&mut self, key: &str, options: &[&str]) {
        let choice = self.options(key);
        assert!(
            options.iter().all(|option| choice.iter().any(|of| of == option)),
            "{options:?} of {choice:?}"
        );
        self.touches += options.len();
        let picked = options.iter().map(|option| (*option).to_owned()).collect();
        self.act(&Deed::Pick { key: key.into(), picked });
    }

    pub fn write(&mut self, key: &str, words: &str) {
        self.touches += 1;
        self.act(&Deed::Write { key: key.into(), words: words.into() });
    }

    pub fn measure(&mut self, key: &str, typed: &str) {
        self.touches += 1;
        let unit = self.screen().blocks.iter().find_map(|block| match block {
            Block::Number(number) if number.key == key => Some(number.unit.clone()),
            _ => None,
        });
        self.act(&Deed::Measure { key: key.into(), typed: typed.into(), unit: unit.unwrap() });
    }

    /// Takes a photo: another number is another picture.
    pub fn photo(&mut self, key: &str, number: u32) {
        self.touches += 2;
        let file = self.home.join(format!("camera-{number}.png"));
        std::fs::write(&file, png(number)).unwrap();
        self.take(key, &file);
        std::fs::remove_file(&file).unwrap();
    }

    /// Gives the file of a picture.
    pub fn take(&mut self, key: &str, file: &Path) {
        self.act(&Deed::Photo { key: key.into(), file: file.to_string_lossy().into_owned() });
    }

    pub fn back(&mut self) {
        self.touches += 1;
        self.act(&Deed::Back);
    }

    /// The keys of the options of a choice.
    pub fn options(&self, key: &str) -> Vec<String> {
        let of = |block: Block| match block {
            Block::Choice(choice) if choice.key == key => {
                Some(choice.options.into_iter().map(|option| option.key).collect())
            }
            _ => None,
        };
        self.screen().blocks.into_iter().find_map(of).unwrap_or_else(|| panic!("no choice {key}"))
    }

    /// The keys that begin so.
    pub fn keys(&self, prefix: &str) -> Vec<String> {
        let screen = self.screen();
        screen.keys().into_iter().filter(|key| key.starts_with(prefix)).map(str::to_owned).collect()
    }

    /// Whether the screen says this.
    pub fn says(&self, words: &str) -> bool {
        self.screen().spoken().iter().any(|said| said.contains(words))
    }

    /// The key of the row whose words hold these.
    pub fn row(&self, words: &str) -> String {
        let screen = self.screen();
        let rows = screen.blocks.iter().filter_map(|block| match block {
            Block::Rows(rows) => Some(&rows.rows),
            _ => None,
        });
        let found = rows.flatten().find(|row| row.key.is_some() && row.head.contains(words));
        found
            .and_then(|row| row.key.clone())
            .unwrap_or_else(|| panic!("no row {words}: {:?}", screen.spoken()))
    }

    /// What the survey holds on the disk, read by somebody else.
    pub fn survey(&self) -> Survey {
        let store = Store::open(&self.guide.open_folder().unwrap(), AuthorId::random()).unwrap();
        fold(store.ledger(), store.survey_id()).unwrap()
    }

    /// The part with a tag.
    pub fn tagged(&self, tag: &str) -> SubjectId {
        let survey = self.survey();
        let part = survey.parts.values().find(|part| part.tag.as_deref() == Some(tag));
        part.unwrap_or_else(|| panic!("no {tag}")).id
    }
}

/// A small picture, like noise.
pub fn png(number: u32) -> Vec<u8> {
    let picture = RgbImage::from_fn(40, 30, |x, y| {
        let mixed = (x * 2_654_435 + y * 40_503 + number * 97_531).wrapping_mul(2_246_822_519);
        let [red, green, blue, _] = mixed.to_be_bytes();
        Rgb([red, green, blue])
    });
    let mut bytes = Cursor::new(Vec::new());
    picture.write_to(&mut bytes, ImageFormat::Png).unwrap();
    bytes.into_inner()
}

//! What each of the four says of a house.

use std::path::Path;

use advice::finding::findings;
use advice::worklist::{WorkList, worklist};
use facts::fact::{AuthorId, Edit};
use facts::store::Store;
use guide::screen::{Block, RowEntry};
use guide::{Deed, Guide, Screen};
use house::record::{Differs, Is, Survey, fold};
use phrase::Phrase;
use scraper::{ElementRef, Html, Selector};
use serde_json::Value;
use telling::report::{Provenance, ReportInput, report};
use telling::words::{Language, LengthUnit};

use super::few_draws;
use crate::command::{
    Context, findings as found_command, forecast as forecast_command, levels as levels_command,
    worklist as list_command,
};
use crate::printed::{Page, WIDEST};
use crate::speak;

/// What each of the four says of a house.
pub struct Said {
    pub survey: Survey,
    pub list: WorkList,
    pub json: Json,
    pub words: Words,
    pub report: Html,
    pub screens: Screens,
    language: Language,
}

/// The command's answers as JSON.
pub struct Json {
    pub forecast: Value,
    pub findings: Value,
    pub worklist: Value,
    pub levels: Value,
}

/// The command's answers in words, as they stand in the terminal.
pub struct Words {
    pub forecast: String,
    pub findings: String,
    pub worklist: String,
    pub levels: String,
}

/// The guide's screens; of a long list every page.
pub struct Screens {
    pub overview: Screen,
    pub forecast: Vec<Screen>,
    pub findings: Vec<Screen>,
    pub work: Vec<Screen>,
    /// The screen of the first step.
    pub step: Option<Screen>,
    pub handover: Screen,
}

impl Said {
    /// Writes the house into a survey of its own, and asks all four.
    pub fn of(house: &Survey) -> Self {
        let home = tempfile::TempDir::new().unwrap();
        let folder = home.path().join("s.legwork");
        let author = AuthorId::random();
        let survey = written(house, &folder, author);
        let list = worklist(&survey, &few_draws()).unwrap();
        let found = findings(&survey, Some(&list.as_found));
        let context = Context { json: false, language: speak::english(LengthUnit::Metres) };
        let json = Json {
            forecast: as_value(&forecast_command::as_json(
                &survey,
                &list.as_found,
                forecast_command::Of::AsFound,
            )),
            findings: as_value(&found_command::as_json(&context, &survey, &found)),
            worklist: as_value(&list_command::as_json(&context, &survey, &list)),
            levels: as_value(&levels_command::as_json(&survey, &list)),
        };
        let page = |tell: &dyn Fn(&mut Page)| {
            let mut page = Page::new(WIDEST, false);
            tell(&mut page);
            page.into_text()
        };
        let words = Words {
            forecast: page(&|page| forecast_command::tell(&context, &survey, &list.as_found, page)),
            findings: page(&|page| found_command::tell(&context, &found, page)),
            worklist: page(&|page| list_command::tell(&context, &survey, &list, page)),
            levels: page(&|page| levels_command::tell(&context, &survey, &list, page)),
        };
        let input = ReportInput::without_unknowns(&survey, &found, &list, Provenance::default());
        let report = Html::parse_document(&report(&input, &context.language));
        let mut guide = Guide::at(home.path(), author, guide::english(context.language.figures())).unwrap();
        guide.work_out_with(few_draws());
        guide.open(&folder).unwrap();
        let screens = Screens::of(&mut guide);
        Self { survey, list, json, words, report, screens, language: context.language }
    }

    /// A message in the command's English.
    pub fn say(&self, phrase: &Phrase) -> String {
        self.language.say(phrase)
    }
}

fn as_value(answer: &impl serde::Serialize) -> Value {
    serde_json::to_value(answer).unwrap()
}

/// The survey with the records of a house, read back.
fn written(house: &Survey, folder: &Path, author: AuthorId) -> Survey {
    let mut store = Store::create(folder, author).unwrap();
    let id = store.survey_id().subject();
    let about = Survey { id, ..house.clone() };
    let mut edits: Vec<Edit> = vec![Is::Survey.begin(id)];
    edits.extend(about.stated());
    macro_rules! records {
        ($($of:ident $is:ident),+) => {
            $(for record in house.$of.values() {
                edits.push(Is::$is.begin(record.id));
                edits.extend(record.stated());
            })+
        };
    }
    records!(rooms Room, runs Run, parts Part, services Service, readings Reading);
    for ((subject, question), reply) in &house.asked {
        let subject = if *subject == house.id { id } else { *subject };
        edits.push(Edit::new(subject, question.field(), reply.clone()));
    }
    store.write(&edits).unwrap();
    let survey = fold(store.ledger(), store.survey_id()).unwrap();
    assert_eq!((&survey.parts, &survey.runs, &survey.rooms), (&house.parts, &house.runs, &house.rooms));
    assert_eq!((&survey.services, &survey.readings), (&house.services, &house.readings));
    survey
}

impl Screens {
    fn of(guide: &mut Guide) -> Self {
        let forecast = pages(guide, "forecast");
        let findings = pages(guide, "findings");
        let work = pages(guide, "work");
        let first = work
            .iter()
            .flat_map(rows)
            .find_map(|row| row.key.clone().filter(|_| row.head.starts_with("1. ")));
        let step = first.map(|key| {
            pages(guide, "work");
            press(guide, &key);
            guide.screen()
        });
        let handover = pages(guide, "handover").remove(0);
        let overview = overview(guide);
        Self { overview, forecast, findings, work, step, handover }
    }
}

fn press(guide: &mut Guide, key: &str) {
    guide.settle_long_work();
    guide.act(&Deed::Press { key: key.into() }).unwrap();
    guide.settle_long_work();
}

fn overview(guide: &mut Guide) -> Screen {
    for _ in 0..20 {
        let screen = guide.screen();
        if screen.name == "overview" {
            return screen;
        }
        if screen.keys().contains(&"overview") {
            press(guide, "overview");
        } else {
            guide.act(&Deed::Back).unwrap();
        }
    }
    panic!("no way back from {}", guide.screen().name)
}

/// Every page of a stage's screen, once what it tells is worked out.
fn pages(guide: &mut Guide, key: &str) -> Vec<Screen> {
    if !overview(guide).keys().contains(&key) {
        press(guide, "more");
    }
    press(guide, key);
    let mut pages = vec![guide.screen()];
    while pages.last().is_some_and(|page| page.keys().contains(&"more")) && pages.len() < 20 {
        press(guide, "more");
        pages.push(guide.screen());
    }
    pages
}

/// The rows of a screen.
pub fn rows(screen: &Screen) -> impl Iterator<Item = &RowEntry> {
    let blocks = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(&rows.rows),
        _ => None,
    });
    blocks.flatten()
}

/// A text with every run of blanks and line ends as one blank.
pub fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The parts of the report that a selector finds, as texts.
pub fn texts(page: &Html, selector: &str) -> Vec<String> {
    page.select(&Selector::parse(selector).unwrap()).map(text).collect()
}

/// The elements that a selector finds in another.
pub fn within<'a>(element: ElementRef<'a>, selector: &str) -> Vec<ElementRef<'a>> {
    element.select(&Selector::parse(selector).unwrap()).collect()
}

/// The text of an element, without the marks that keep names apart from what is around them.
pub fn text(element: ElementRef<'_>) -> String {
    plain(&element.text().collect::<String>())
}

//! The report: one HTML file to leave with the owner of the house. Page one is a summary of one sheet: the answer, what
//! each room gets, the map, the first steps, what to take care of. The rest says what is wrong, what to do, and how much of
//! it is known. It prints on A4 and letter alike, and reads on a phone.
//!
//! No script, nothing from outside, no clock: the same survey gives the same bytes. This folder only tells; what
//! follows from a survey is worked out elsewhere and handed in as [`ReportInput`].

mod costs;
mod done;
mod findings;
mod in_file;
mod input;
mod job;
mod letters;
mod levels;
mod notes;
mod page;
mod page_one;
mod parts;
mod photos;
mod pictures;
mod provenance;
mod room_bars;
mod rooms;
mod signs;
mod sources;
mod table;
mod tags;
mod teller;
mod unknown_section;
mod whole;
mod work;

pub use in_file::{Work, report_page, report_page_with};
pub use input::{FindingTold, OtherTold, ReportInput, StepTold};
pub use provenance::{PICTURE_SIDE, Provenance};
pub use whole::{html, html_weighed, part_told};

use advice::finding::findings_beside;
use advice::forecast::Forecast;
use advice::worklist::WorkList;
use coax::Span;
use house::record::Survey;

use crate::words::Language;
use letters::Letters;
use page_one::Stands;
use teller::ReportTeller;

/// The report as one HTML file.
pub fn report(input: &ReportInput<'_>, language: &Language) -> String {
    let teller = ReportTeller::new(input, language);
    let letters = Letters::of(&teller);
    let sections = [
        photos::section(&teller),
        pictures::found(&teller),
        Some(letters.section(&teller)),
        Some(work::list(&teller, &letters)),
        Some(done::section(&teller)),
        Some(rooms::section(&teller)),
        Some(pictures::plot(&teller)),
        Some(costs::section(&teller)),
        Some(levels::section(&teller)),
        Some(findings::section(&teller, &letters)),
        Some(unknown_section::section(&teller)),
        Some(parts::section(&teller)),
        pictures::whole(&teller),
        Some(notes::section(&teller)),
        Some(job::section(&teller)),
        Some(sources::section(&teller)),
    ];
    let sections: Vec<_> = sections.into_iter().flatten().collect();
    page::page(&teller, &page_one::sheet(&teller, &letters, Stands::First), &sections, tags::section(&teller))
}

/// How much of a report is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Extent {
    /// All of it.
    Whole,
    /// Its first page, to hang up or to take to the shop.
    OnePage,
}

/// Page one alone, to be hung up or taken to the shop: with all there is to get, and nothing that leads on.
pub fn one_page(survey: &Survey, list: &WorkList, provenance: Provenance, language: &Language) -> String {
    let found = findings_beside(survey, &list.as_found, &list.levels);
    let input = ReportInput::without_unknowns(survey, &found, list, provenance);
    let teller = ReportTeller::new(&input, language);
    let letters = Letters::of(&teller);
    page::one_page(&teller, &page_one::sheet(&teller, &letters, Stands::Alone))
}

/// The tags of a house alone, to be printed and cut out; `None` where nothing has one. Nothing is worked out for them.
pub fn tags_page(survey: &Survey, provenance: Provenance, language: &Language) -> Option<String> {
    let forecast = Forecast {
        seed: 0,
        draws: 0,
        frequencies: 0,
        bridge: None,
        channels: Vec::new(),
        nodes: 0,
        rooms: Vec::new(),
        street: Vec::new(),
        shared: None,
        round_trip_ms: Span { low: 0.0, likely: 0.0, high: 0.0 },
    };
    let input = ReportInput {
        survey,
        forecast: &forecast,
        places: Vec::new(),
        findings: Vec::new(),
        flags: &[],
        steps: Vec::new(),
        cut_short: None,
        searched: None,
        chosen: None,
        others: Vec::new(),
        shopping: Vec::new(),
        failed: Vec::new(),
        refused: Vec::new(),
        when_done: None,
        unknowns: Vec::new(),
        levels: Vec::new(),
        provenance,
    };
    let teller = ReportTeller::new(&input, language);
    tags::section(&teller).map(|tags| page::tags_alone(&teller, &tags))
}

//! The report: one HTML file for the owner of the house, that says in words what gets through, what is wrong, what
//! to do, and how much of it is known.
//!
//! No script, nothing from outside, no clock: the same survey gives the same bytes. This folder only tells; what
//! follows from a survey is worked out elsewhere and handed in as [`ReportInput`].

mod costs;
mod done;
mod findings;
mod in_file;
mod input;
mod job;
mod levels;
mod notes;
mod page;
mod parts;
mod pictures;
mod rated;
mod rooms;
mod sources;
mod table;
mod teller;
mod unknown_section;
mod whole;
mod work;

pub use in_file::report_page;
pub use input::{FindingTold, ReportInput, StepTold};
pub use rated::rated;
pub use whole::{html, part_told};

use crate::words::Language;
use teller::ReportTeller;

/// The report as one HTML file.
pub fn report(input: &ReportInput<'_>, language: &Language) -> String {
    let teller = ReportTeller::new(input, language);
    let sections = [
        job::section(&teller),
        pictures::map(&teller),
        rooms::section(&teller),
        pictures::plot(&teller),
        costs::section(&teller),
        levels::section(&teller),
        findings::section(&teller),
        done::section(&teller),
        work::list(&teller),
        work::cautions(&teller),
        unknown_section::section(&teller),
        parts::section(&teller),
        notes::section(&teller),
        sources::section(&teller),
    ];
    page::page(&teller, &sections)
}

//! The report of a house whose work list is known: findings and steps put into words and handed to the page.

use advice::finding::findings_beside;
use advice::worklist::{PartNeeded, Stake, WorkList};
use house::record::Survey;
use phrase::{Arg, Phrase};

use super::{Provenance, ReportInput, report};
use crate::words::Language;

/// The report as one HTML file: the same survey, work list and provenance give the same bytes.
pub fn html(survey: &Survey, list: &WorkList, provenance: Provenance, language: &Language) -> String {
    let found = findings_beside(survey, &list.as_found, &list.levels);
    report(&ReportInput::gathered(survey, &found, list, provenance), language)
}

/// The same where it is known what is at stake with each of what is not known, in the order of
/// [`unknowns`](advice::unknown::unknowns).
pub fn html_weighed(
    survey: &Survey,
    (list, stakes): (&WorkList, &[Option<Stake>]),
    provenance: Provenance,
    language: &Language,
) -> String {
    let found = findings_beside(survey, &list.as_found, &list.levels);
    report(&ReportInput::weighed(survey, &found, (list, stakes), provenance), language)
}

/// A part with how many of it: `2 x 75-ohm cap`.
pub fn part_told(part: &PartNeeded) -> Phrase {
    Phrase::new("need-counted").with("count", Arg::Count(part.count)).phrase("what", part.what.clone())
}

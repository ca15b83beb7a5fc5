//! What is wrong or at risk.

use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::input::FindingTold;
use super::page::Section;
use super::teller::ReportTeller;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let findings = &teller.input.findings;
    let body = html! {
        @if findings.is_empty() { p { (teller.word("report-findings-none")) } }
        @for (place, finding) in findings.iter().enumerate() { (told(teller, place + 1, finding)) }
    };
    Section { id: "findings", heading: "report-findings", across: false, body }
}

fn told(teller: &ReportTeller<'_>, number: usize, finding: &FindingTold) -> Markup {
    let heading = Phrase::new("report-finding-heading")
        .with("number", Arg::Count(number as u64))
        .phrase("what", finding.what.clone());
    html! {
        article {
            h3 { (teller.say(&heading)) }
            dl {
                dt { (teller.word("term-weight")) }
                dd { (teller.say(&finding.weight)) }
                @if !finding.places.is_empty() {
                    dt { (teller.word("term-where")) }
                    @for place in &finding.places { dd { (ReportTeller::own(&teller.say(place))) } }
                }
                dt { (teller.word("term-why")) }
                dd { (teller.say(&finding.why)) }
                dt { (teller.word("term-todo")) }
                dd { (teller.say(&finding.todo)) }
                dt { (teller.word("term-source")) }
                dd { (teller.say(&finding.source)) }
                @if !finding.cautions.is_empty() {
                    dt { (teller.word("term-caution")) }
                    @for caution in &finding.cautions { dd.caution { (teller.say(caution)) } }
                }
            }
        }
    }
}

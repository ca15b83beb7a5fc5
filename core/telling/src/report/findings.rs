//! What is wrong or at risk.

use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::input::FindingTold;
use super::letters::Letters;
use super::page::Section;
use super::teller::ReportTeller;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>, letters: &Letters) -> Section {
    let findings = &teller.input.findings;
    let body = html! {
        @if findings.is_empty() { p { (teller.word("report-findings-none")) } }
        div.findings {
            @for alike in findings.iter().enumerate().collect::<Vec<_>>().chunk_by(|a, b| are_told_alike(teller, a.1, b.1)) {
                (told(teller, letters, alike))
            }
        }
    };
    Section { id: "findings", heading: "report-findings", body }
}

/// Whether all but what and where reads the same of both: then it is told once.
fn are_told_alike(teller: &ReportTeller<'_>, a: &FindingTold, b: &FindingTold) -> bool {
    let rest = |finding: &FindingTold| {
        [&finding.weight, &finding.why, &finding.todo, &finding.source].map(|phrase| teller.say(phrase))
    };
    a.cautions == b.cautions && rest(a) == rest(b)
}

fn told(teller: &ReportTeller<'_>, letters: &Letters, alike: &[(usize, &FindingTold)]) -> Markup {
    let heading = |place: usize, finding: &FindingTold| {
        let number = Arg::Count(place as u64 + 1);
        let heading = Phrase::new("report-finding-heading").with("number", number);
        teller.say(&heading.phrase("what", finding.what.clone()))
    };
    let places = alike.iter().flat_map(|(_, finding)| &finding.places).map(|place| teller.say(place));
    let mut places: Vec<_> = places.collect();
    places.dedup();
    html! {
        @if let Some((_, first)) = alike.first() {
            @let lines = [("term-why", &first.why), ("term-todo", &first.todo), ("term-source", &first.source)];
            article {
                @for (place, finding) in alike { h3 { (heading(*place, finding)) } }
                dl.run-in {
                    div { dt { (teller.word("term-weight")) } dd { (teller.say(&first.weight)) } }
                    @if !places.is_empty() {
                        div {
                            dt { (teller.word("term-where")) }
                            @for place in &places { dd { (ReportTeller::own(place)) } }
                        }
                    }
                    @for (term, says) in lines { div { dt { (teller.word(term)) } dd { (teller.say(says)) } } }
                }
                (letters.beside(teller, &first.cautions))
            }
        }
    }
}

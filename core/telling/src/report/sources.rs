//! How each figure of the forecast is backed.

use coax::{Backing, Estimate};
use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::page::Section;
use super::teller::ReportTeller;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let seed = Phrase::new("report-seed").text("seed", teller.forecast().seed.to_string());
    let body = html! {
        p { (teller.word("report-sources-how")) " " (teller.say(&seed)) }
        ul.estimates aria-label=(teller.word("report-sources-caption")) {
            @for estimate in coax::estimates::ALL.iter().copied().flatten() { li { (told(teller, estimate)) } }
        }
    };
    Section { id: "sources", heading: "report-sources", body }
}

fn told(teller: &ReportTeller<'_>, estimate: &Estimate) -> Markup {
    let Estimate { name, span, unit, backing } = estimate;
    let figure = |value: f64| if unit.is_empty() { written(value) } else { format!("{} {unit}", written(value)) };
    let range = Phrase::new("report-estimate")
        .text("likely", figure(span.likely))
        .text("low", written(span.low))
        .text("high", written(span.high));
    html! {
        b { (teller.word(&format!("estimate-{name}"))) } " "
        span { (teller.say(&range)) } " "
        i { (teller.say(&backed(*backing))) }
    }
}

/// A figure with no more decimals than it was written down with: at most six.
fn written(value: f64) -> String {
    let text = format!("{value:.6}");
    let short = text.trim_end_matches('0').trim_end_matches('.');
    short.replace('-', "\u{2212}")
}

fn backed(backing: Backing) -> Phrase {
    let source = |message: &str, text: &str| Phrase::new(message).with("source", Arg::Text(text.into()));
    match backing {
        Backing::Published(text) => source("backing-published", text),
        Backing::Derived(text) => source("backing-derived", text),
        Backing::CommonPractice => Phrase::new("backing-practice"),
        Backing::FromMemory => Phrase::new("backing-memory"),
        Backing::Estimate(text) => source("backing-estimate", text),
    }
}

//! How each figure of the forecast is backed.

use coax::{Backing, Estimate};
use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::page::Section;
use super::table::table;
use super::teller::ReportTeller;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let heads = teller.words(&["head-figure", "head-usual", "head-lowest", "head-highest", "head-backing"]);
    let rows: Vec<_> =
        coax::estimates::ALL.iter().copied().flatten().map(|estimate| row(teller, estimate)).collect();
    let seed = Phrase::new("report-seed").text("seed", teller.forecast().seed.to_string());
    let body = html! {
        p { (teller.word("report-sources-how")) }
        (table(&teller.word("report-sources-caption"), &heads, &rows))
        p { (teller.say(&seed)) }
    };
    Section { id: "sources", heading: "report-sources", across: false, body }
}

fn row(teller: &ReportTeller<'_>, estimate: &Estimate) -> Vec<Markup> {
    let Estimate { name, span, unit, backing } = estimate;
    let figure = |value: f64| html! { (written(value)) @if !unit.is_empty() { " " (unit) } };
    let name = Phrase::new(format!("estimate-{name}"));
    vec![
        teller.cell(&name),
        figure(span.likely),
        figure(span.low),
        figure(span.high),
        teller.cell(&backed(*backing)),
    ]
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

//! The figures: the wiring map as it was found and as it is, and loss over frequency.

use maud::{Markup, PreEscaped, html};

use super::page::Section;
use super::teller::ReportTeller;
use crate::figure::{Figure, loss_plot, svg, wiring_map};

/// The map of page one with its heading: the house as it is recorded now, which is as it was found until work is done.
pub(super) fn small_map(teller: &ReportTeller<'_>) -> Markup {
    let figure = wiring_map(teller.survey(), Some(teller.forecast()), teller.language);
    let heading = if teller.input.provenance.found.is_some() { "report-map-now" } else { "report-map" };
    html! {
        h2 id="map" { (teller.word(heading)) }
        (framed(teller, &figure, "map-figure", "report-map-scroll"))
        p.aside { (teller.say(&figure.description)) }
    }
}

/// The section with the house as it was found; `None` where it is so still, and stands on page one.
pub(super) fn maps(teller: &ReportTeller<'_>) -> Option<Section> {
    let found = teller.input.provenance.found.as_ref()?;
    let figure = wiring_map(found, None, teller.language);
    let body = html! {
        p { (teller.say(&figure.description)) }
        (framed(teller, &figure, "map-found-figure", "report-map-scroll"))
    };
    Some(Section { id: "map-found", heading: "report-map", body })
}

/// The section with the plot.
pub(super) fn plot(teller: &ReportTeller<'_>) -> Section {
    let body = match loss_plot(teller.survey(), teller.forecast(), teller.language) {
        None => html! { p { (teller.word("report-plot-none")) } },
        Some(figure) => html! {
            p { (teller.word("report-plot-how")) }
            (framed(teller, &figure, "plot-figure", "report-plot-scroll"))
        },
    };
    Section { id: "plot", heading: "report-plot", body }
}

/// A figure in a frame that scrolls sideways with keys and fingers alike.
fn framed(teller: &ReportTeller<'_>, figure: &Figure, id: &str, label: &str) -> Markup {
    html! {
        div.figure tabindex="0" role="region" aria-label=(teller.word(label)) {
            (PreEscaped(svg(figure, id, teller.language)))
        }
    }
}

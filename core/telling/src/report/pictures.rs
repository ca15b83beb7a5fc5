//! The two figures: the wiring map, and loss over frequency.

use maud::{Markup, PreEscaped, html};

use super::page::Section;
use super::teller::ReportTeller;
use crate::figure::map::PAGE;
use crate::figure::{Figure, Layout, WiringMap, loss_plot, svg};

/// Wider than this, a figure gets a page of its own across when printed: it would not be readable upright.
const UPRIGHT_WIDTH: f64 = 800.0;

/// Flatter than this, a figure is kept on one page when printed; a higher one may run over several.
const WHOLE_ASPECT: f64 = 1.3;

/// The section with the map.
pub(super) fn map(teller: &ReportTeller<'_>) -> Section {
    let map = WiringMap::of(teller.survey()).with_forecast(Some(teller.forecast()));
    let figure = map.laid_out(Layout::Wide(PAGE)).figure(teller.language);
    let across = figure.natural_width > UPRIGHT_WIDTH;
    let body = html! {
        p { (teller.say(&figure.description)) }
        (framed(teller, &figure, "map-figure", "report-map-scroll"))
    };
    Section { id: "map", heading: "report-map", across, body }
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
    Section { id: "plot", heading: "report-plot", across: false, body }
}

/// A figure in a frame that scrolls sideways with keys and fingers alike.
fn framed(teller: &ReportTeller<'_>, figure: &Figure, id: &str, label: &str) -> Markup {
    html! {
        div.figure.whole[figure.aspect > WHOLE_ASPECT] tabindex="0" role="region" aria-label=(teller.word(label)) {
            (PreEscaped(svg(figure, id, teller.language)))
        }
    }
}

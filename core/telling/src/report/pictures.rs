//! The figures: the wiring map as it was found and as it is, and loss over frequency.

use advice::forecast::Forecast;
use maud::{Markup, PreEscaped, html};

use super::page::Section;
use super::teller::ReportTeller;
use crate::figure::plot::{MOST_ROOMS, loss_plot_in};
use crate::figure::{Figure, Folding, WiringMap, map, svg};

/// The map of the house as it is recorded now, with what weighs in it.
fn map_now<'a>(teller: &ReportTeller<'a>) -> WiringMap<'a> {
    let map = WiringMap::of(teller.survey()).with_forecast(Some(teller.forecast()));
    map.with_findings(teller.input.flags)
}

/// The map of page one with its heading: the house as it is recorded now, which is as it was found until work is done.
pub(super) fn small_map(teller: &ReportTeller<'_>) -> Markup {
    let figure = map_now(teller).figure(teller.language);
    html! {
        h2 id="map" { (teller.word(heading_now(teller))) }
        (framed(teller, &figure, "map-figure"))
        p.aside { (teller.say(&figure.description)) }
    }
}

fn heading_now(teller: &ReportTeller<'_>) -> &'static str {
    if teller.input.provenance.found.is_some() { "report-map-now" } else { "report-map" }
}

/// The section with the house as it was found, where work has changed it since.
pub(super) fn found(teller: &ReportTeller<'_>) -> Option<Section> {
    let found = teller.input.provenance.found.as_ref()?;
    let figure = WiringMap::of(found).figure(teller.language);
    let body = html! {
        p { (teller.say(&figure.description)) }
        (framed(teller, &figure, "map-found-figure"))
    };
    Some(Section { id: "map-found", heading: "report-map", body })
}

/// The section with the whole map, where that of page one is folded. It is for the screen: the parts stand in a table too.
pub(super) fn whole(teller: &ReportTeller<'_>) -> Option<Section> {
    let map = map_now(teller);
    if !map.shown(teller.language).is_folded() {
        return None;
    }
    let figure = map.folded(Folding::Nothing).figure(teller.language);
    let body = framed(teller, &figure, "map-whole-figure");
    Some(Section { id: "map-whole", heading: "report-map-whole", body })
}

/// The section with the plots: a figure of its own for each of the weakest rooms, narrow enough for a phone, side by side
/// on paper.
pub(super) fn plot(teller: &ReportTeller<'_>) -> Section {
    let weakest = teller.forecast().weakest_first().into_iter().map(|(room, _)| room.clone());
    let alone = weakest.map(|room| Forecast { rooms: vec![room], ..teller.forecast().clone() });
    let figures: Vec<_> = alone
        .filter_map(|forecast| loss_plot_in(teller.survey(), &forecast, map::NARROW, teller.language))
        .take(MOST_ROOMS)
        .collect();
    let body = html! {
        @if figures.is_empty() {
            p { (teller.word("report-plot-none")) }
        } @else {
            p { (teller.word("report-plot-how")) }
            div.plots {
                @for (place, figure) in figures.iter().enumerate() {
                    (framed(teller, figure, &format!("plot-figure-{place}")))
                }
            }
        }
    };
    Section { id: "plot", heading: "report-plot", body }
}

/// A figure as wide as there is room for.
fn framed(teller: &ReportTeller<'_>, figure: &Figure, id: &str) -> Markup {
    html! { div.figure { (PreEscaped(svg(figure, id, teller.language))) } }
}

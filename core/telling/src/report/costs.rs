//! Where the loss on the way to the weakest rooms arises.

use advice::forecast::{PathForecast, RoomForecast, told};
use house::naming;
use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::page::Section;
use super::table::table;
use super::teller::ReportTeller;
use crate::figure::plot::MOST_ROOMS;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let mut weakest = teller.forecast().weakest_first();
    weakest.retain(|(_, path)| !path.costs.is_empty());
    weakest.truncate(MOST_ROOMS);
    let body = html! {
        p { (teller.word(if weakest.is_empty() { "report-costs-none" } else { "report-costs-how" })) }
        div.side-by-side.costs { @for (room, path) in weakest { (of_room(teller, room, path)) } }
    };
    Section { id: "costs", heading: "report-costs", body }
}

fn of_room(teller: &ReportTeller<'_>, room: &RoomForecast, path: &PathForecast) -> Markup {
    let survey = teller.survey();
    let total: f64 = path.costs.iter().map(|cost| cost.db).sum();
    let line = |name: String, db: f64| {
        let share = if db < 0.0 {
            teller.word("cost-more-than-all")
        } else {
            teller.language.write(&Arg::Share(db / total))
        };
        vec![ReportTeller::own(&name), html! { (teller.language.write(&Arg::Loss(db))) }, html! { (share) }]
    };
    let mut rows: Vec<_> =
        path.costs.iter().map(|cost| line(teller.say(&told::place(survey, cost.at)), cost.db)).collect();
    rows.push(line(teller.word("report-costs-total"), total));
    let caption = Phrase::new("report-costs-caption").phrase("place", naming::part(survey, room.outlet));
    let heads = teller.words(&["head-place", "head-loss", "head-share"]);
    table(&teller.say(&caption.with("loss", Arg::Loss(total))), &heads, &rows)
}

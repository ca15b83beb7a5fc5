//! What is not known, and which of it matters.

use advice::unknown::{Matters, Unknown};
use advice::worklist::Stake;
use house::naming;
use maud::html;
use phrase::{Arg, Phrase};

use super::page::Section;
use super::table::table;
use super::teller::ReportTeller;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let rows: Vec<_> = teller
        .input
        .unknowns
        .iter()
        .map(|(unknown, stake)| {
            let place = ReportTeller::own(&teller.say(&unknown.place));
            vec![place, teller.cell(&unknown.what), teller.cell(&matters(teller, unknown, *stake))]
        })
        .collect();
    let heads = teller.words(&["head-place", "head-unknown", "head-matters"]);
    let body = html! {
        @if rows.is_empty() {
            p { (teller.word("report-unknown-none")) }
        } @else {
            p { (teller.word("report-unknown-how")) }
            (table(&teller.word("report-unknown-caption"), &heads, &rows))
        }
    };
    Section { id: "unknown", heading: "report-unknown", body }
}

fn matters(teller: &ReportTeller<'_>, unknown: &Unknown, stake: Option<Stake>) -> Phrase {
    if let Matters::OnFailedWay(outlets) = &unknown.matters {
        let names = outlets.iter().map(|outlet| naming::part(teller.survey(), *outlet));
        return Phrase::new("matters-failed").with("rooms", ReportTeller::list(names));
    }
    match stake {
        Some(stake) if stake.is_worth_going_back() => {
            return Phrase::new("matters-stake")
                .phrase("room", naming::part(teller.survey(), stake.outlet))
                .with("rate", Arg::Rate(stake.mbps));
        }
        Some(_) => return Phrase::new("matters-hardly"),
        None => {}
    }
    match &unknown.matters {
        Matters::Weakest => Phrase::new("matters-weakest"),
        Matters::OnFailedWay(outlets) | Matters::OnWayTo(outlets) => {
            let names = outlets.iter().map(|outlet| naming::part(teller.survey(), *outlet));
            Phrase::new("matters-way").with("rooms", ReportTeller::list(names))
        }
        Matters::MayBeMissingLink => Phrase::new("matters-loose"),
        Matters::MayLeak => Phrase::new("matters-leak"),
        Matters::MayPass => Phrase::new("matters-pass"),
        Matters::Echo => Phrase::new("matters-echo"),
        Matters::Little => Phrase::new("matters-little"),
    }
}

//! How each figure of the forecast is backed.

use advice::forecast::{Node, nodes_of};
use coax::{Backing, Estimate};
use house::record::{CableKind, Connector, PartKind, Run, Survey};
use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::page::Section;
use super::teller::ReportTeller;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let seed = Phrase::new("report-seed").text("seed", teller.forecast().seed.to_string());
    // What the work brings counts too: the rates after it stand in the report.
    let done = teller.input.when_done.map(|(house, _)| house);
    let houses: Vec<_> = done.into_iter().chain([teller.survey()]).collect();
    let body = html! {
        p { (teller.word("report-sources-how")) " " (teller.say(&seed)) }
        p.on-paper { (teller.word("report-sources-paper")) }
        @for (heading, estimates) in by_backing() {
            div.sources {
                h3 { (teller.word(heading)) }
                ul.estimates {
                    @for estimate in estimates {
                        li.off-paper[is_left_out(estimate) || !is_of(&houses, estimate)] {
                            (told(teller, estimate))
                        }
                    }
                }
            }
        }
    };
    Section { id: "sources", heading: "report-sources", body }
}

/// The figures under the heading that says what stands behind them, what others published first.
fn by_backing() -> Vec<(&'static str, Vec<&'static Estimate>)> {
    ["backing-sources", "backing-practice", "backing-memory"]
        .into_iter()
        .map(|heading| {
            let all = coax::estimates::ALL.iter().copied().flatten();
            (heading, all.filter(|estimate| heading_of(estimate.backing) == heading).collect())
        })
        .filter(|(_, estimates): &(_, Vec<_>)| !estimates.is_empty())
        .collect()
}

/// Figures of one kind of part only, by the beginning of their names.
const OF_A_PART: [(&str, PartKind); 6] = [
    ("tap-", PartKind::Tap),
    ("unread-tap-", PartKind::Tap),
    ("combiner-", PartKind::SatelliteCombiner),
    ("pad-", PartKind::Pad),
    ("power-inserter-", PartKind::PowerInserter),
    ("amplifier-", PartKind::Amplifier),
];

/// The same of one kind of cable.
const OF_A_CABLE: [(&str, CableKind); 3] = [
    ("cable-seven-", CableKind::Seven),
    ("cable-eleven-", CableKind::Eleven),
    ("cable-fifty-nine-", CableKind::FiftyNine),
];

/// The same of one kind of connector.
const OF_A_CONNECTOR: [(&str, &[Connector]); 4] = [
    ("condition-hand-tight", &[Connector::HandTight, Connector::PushOn]),
    ("condition-twist-on", &[Connector::TwistOn]),
    ("condition-corroded", &[Connector::Corroded]),
    ("condition-bad-joint", &[Connector::BadJoint]),
];

/// The same of adapters of 1.0 and 1.1.
const OF_1X: [&str; 4] = ["phy-full-1x", "snr-cap-1x", "mac-position-1-0", "mac-position-1-1"];

/// Whether a figure says too little to stand on paper: it has no range, or only says when an echo comes back.
fn is_left_out(estimate: &Estimate) -> bool {
    estimate.span.is_exact() || estimate.name.ends_with("-delay") || estimate.name == "cable-velocity"
}

/// Whether a figure can matter in one of these houses: false for one of a kind of part, cable, connector or adapter that none
/// has. On paper those are left out.
fn is_of(houses: &[&Survey], estimate: &Estimate) -> bool {
    let begins = |start: &str| estimate.name.starts_with(start);
    let part = OF_A_PART.into_iter().find(|(start, _)| begins(start));
    let cable = OF_A_CABLE.into_iter().find(|(start, _)| begins(start));
    let any = |has: &dyn Fn(&Survey) -> bool| houses.iter().any(|house| has(house));
    let connector = OF_A_CONNECTOR.into_iter().find(|(start, _)| begins(start));
    let is_1x = |node: &Node| node.link.version.is_1x();
    part.is_none_or(|(_, kind)| any(&|house| house.parts.values().any(|part| part.kind == kind)))
        && cable.is_none_or(|(_, kind)| any(&|house| house.runs.values().any(|run| run.cable == kind)))
        && connector.is_none_or(|(_, kinds)| {
            let has = |run: &Run| kinds.contains(&run.connector_near) || kinds.contains(&run.connector_far);
            any(&|house| house.runs.values().any(has))
        })
        && (!OF_1X.contains(&estimate.name) || any(&|house| nodes_of(house).iter().any(is_1x)))
}

const fn heading_of(backing: Backing) -> &'static str {
    match backing {
        Backing::Published(_) | Backing::Derived(_) | Backing::Estimate(_) => "backing-sources",
        Backing::CommonPractice => "backing-practice",
        Backing::FromMemory => "backing-memory",
    }
}

fn told(teller: &ReportTeller<'_>, estimate: &Estimate) -> Markup {
    let Estimate { name, span, unit, backing } = estimate;
    let figure =
        |value: f64| if unit.is_empty() { written(value) } else { format!("{} {unit}", written(value)) };
    let range = Phrase::new(if span.is_exact() { "report-estimate-fixed" } else { "report-estimate" })
        .text("name", teller.word(&format!("estimate-{name}")))
        .text("likely", figure(span.likely))
        .text("low", written(span.low))
        .text("high", written(span.high));
    html! {
        (teller.say(&range))
        @if let Some(source) = source(*backing) { ". " i { (teller.say(&source)) } }
    }
}

/// A figure with no more decimals than it was written down with: at most six.
fn written(value: f64) -> String {
    let text = format!("{value:.6}");
    let short = text.trim_end_matches('0').trim_end_matches('.');
    short.replace('-', "\u{2212}")
}

/// What a figure is held against, where that can be named.
fn source(backing: Backing) -> Option<Phrase> {
    let (message, text) = match backing {
        Backing::Published(text) => ("backing-published", text),
        Backing::Derived(text) => ("backing-derived", text),
        Backing::Estimate(text) => ("backing-estimate", text),
        Backing::CommonPractice | Backing::FromMemory => return None,
    };
    Some(Phrase::new(message).with("source", Arg::Text(text.into())))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A figure counts where the house has such a part, or gets one by the work.
    #[test]
    fn what_the_work_brings_counts_too() {
        let id = facts::fact::SubjectId::random;
        let (without, mut with) = (Survey::new(id()), Survey::new(id()));
        let pad = house::record::Part::new(id(), PartKind::Pad);
        with.parts.insert(pad.id, pad);
        let of = |start: &str| {
            let mut all = coax::estimates::ALL.iter().copied().flatten();
            all.find(|estimate| estimate.name.starts_with(start))
        };
        let told = |houses: &[&Survey], start| of(start).is_some_and(|estimate| is_of(houses, estimate));
        assert!(!told(&[&without], "pad-") && !told(&[&with], "tap-"));
        assert!(told(&[&with], "pad-") && told(&[&with, &without], "pad-"));
        assert!(told(&[&without], "splitter-"));
    }

    #[test]
    fn every_beginning_is_that_of_a_figure() {
        let starts = OF_A_PART.map(|(start, _)| start).into_iter().chain(OF_A_CABLE.map(|(start, _)| start));
        for start in starts {
            let mut all = coax::estimates::ALL.iter().copied().flatten();
            assert!(all.any(|estimate| estimate.name.starts_with(start)), "{start}");
        }
    }
}

//! The adapters of the network to be built, where there are none yet: how many to get, and where each goes.

use facts::fact::SubjectId;
use house::record::{Asked, Plugged, Reply, Sharing, Survey};
use phrase::{Arg, Phrase};

use super::effort::PartNeeded;
use crate::forecast::nodes_of;

/// An adapter that is still to come, and its outlet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AdapterToCome {
    /// The outlet it goes to; `None` for the one at the router while nobody has said where that is.
    pub outlet: Option<SubjectId>,
    /// Whether it stands at the router (the bridge).
    pub at_router: bool,
    /// How it shares the outlet with what is plugged in there; `None` where nothing is.
    pub shares: Option<Sharing>,
}

/// Whether somebody said that there are no adapters yet.
pub fn has_no_adapters(survey: &Survey) -> bool {
    survey.reply(survey.id, Asked::Adapters) == Some(Reply::None)
}

/// Whether version and port of the adapters are only planned: there are none yet, or nobody could say which they are.
pub fn are_adapters_planned(survey: &Survey) -> bool {
    matches!(survey.reply(survey.id, Asked::Adapters), Some(Reply::None | Reply::Unsure))
}

/// Whether the adapters that were to come are placed.
pub fn are_adapters_placed(survey: &Survey) -> bool {
    survey.reply(survey.id, Asked::AdaptersPlaced) == Some(Reply::Yes)
}

/// One adapter at the router and one in each room that wants network, the router's first; empty where somebody has
/// adapters already, or nobody was asked. A router that speaks MoCA itself needs none.
pub fn adapters_to_come(survey: &Survey) -> Vec<AdapterToCome> {
    if !has_no_adapters(survey) {
        return Vec::new();
    }
    let nodes = nodes_of(survey);
    let nobody_said = AdapterToCome { outlet: None, at_router: true, shares: None };
    let no_bridge = !nodes.is_empty() && !nodes.iter().any(|node| node.bridge);
    let mut to_come: Vec<_> = no_bridge.then_some(nobody_said).into_iter().collect();
    for node in nodes {
        let Some(part) = survey.parts.get(&node.outlet) else { continue };
        let plugged = part.plugged.as_deref().unwrap_or_default();
        if plugged.contains(&Plugged::MocaGateway) && part.adapter.is_none() {
            continue;
        }
        to_come.push(AdapterToCome {
            outlet: Some(node.outlet),
            at_router: node.bridge,
            shares: (!plugged.is_empty()).then(|| part.sharing.unwrap_or(Sharing::Splitter)),
        });
    }
    to_come
}

/// The adapters to get, by specification; none once they are placed.
pub fn adapters_to_get(survey: &Survey) -> Vec<PartNeeded> {
    if are_adapters_placed(survey) {
        return Vec::new();
    }
    let mut list: Vec<PartNeeded> = Vec::new();
    for to_come in adapters_to_come(survey) {
        let adapter = to_come.outlet.and_then(|outlet| survey.parts.get(&outlet)?.adapter.as_ref());
        let version = survey.version_of(adapter);
        let port = survey.port_of(adapter).mbps;
        let what = Phrase::new("need-adapter")
            .text("version", version)
            .with("port", Arg::RateAsRead(f64::from(port)));
        match list.iter_mut().find(|listed| listed.what == what) {
            Some(listed) => listed.count += 1,
            None => list.push(PartNeeded { what, count: 1 }),
        }
    }
    list
}

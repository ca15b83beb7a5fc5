//! The adapters of the network to be built: how many there are, how many are still to be got, and where each goes.

use facts::fact::SubjectId;
use house::naming;
use house::record::{Asked, Plugged, Reply, Sharing, Survey};
use phrase::Phrase;

use crate::forecast::nodes_of;

/// An adapter that is still to be placed, and its outlet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AdapterToCome {
    /// The outlet it goes to; `None` for the one at the router while nobody has said where that is.
    pub outlet: Option<SubjectId>,
    /// Whether it stands at the router (the bridge).
    pub at_router: bool,
    /// How it shares the outlet with what is plugged in there; `None` where nothing is.
    pub shares: Option<Sharing>,
}

impl AdapterToCome {
    /// Where it goes.
    pub fn place(&self, survey: &Survey) -> Phrase {
        self.outlet.map_or_else(|| Phrase::new("adapter-near-router"), |outlet| naming::part(survey, outlet))
    }

    /// What is joined to what there.
    pub fn how(&self) -> Phrase {
        Phrase::new(if self.at_router { "adapter-at-router" } else { "adapter-in-room" })
    }

    /// How it shares the outlet.
    pub fn sharing(&self) -> Option<Phrase> {
        self.shares.map(|sharing| {
            Phrase::new(match sharing {
                Sharing::ThroughPort => "adapter-through-port",
                Sharing::Splitter => "adapter-splitter",
            })
        })
    }
}

/// Whether somebody said that there are no adapters yet.
pub fn has_no_adapters(survey: &Survey) -> bool {
    survey.reply(survey.id, Asked::Adapters) == Some(Reply::None)
}

/// Whether version and port of the adapters are only planned: there are none yet, or nobody could say which they are.
pub fn are_adapters_planned(survey: &Survey) -> bool {
    matches!(survey.reply(survey.id, Asked::Adapters), Some(Reply::None | Reply::Unsure))
}

/// Whether somebody said that the adapters are placed.
fn are_said_placed(survey: &Survey) -> bool {
    survey.reply(survey.id, Asked::AdaptersPlaced) == Some(Reply::Yes)
}

/// Whether all adapters that the network needs are placed, as far as anybody said.
pub fn are_adapters_placed(survey: &Survey) -> bool {
    are_said_placed(survey) && adapters_missing(survey) == 0
}

/// How many adapters there are; `None` while nobody said.
pub fn adapters_owned(survey: &Survey) -> Option<usize> {
    let counted = survey.network.owned.and_then(|owned| usize::try_from(owned).ok());
    let none_yet = || match (has_no_adapters(survey), are_said_placed(survey)) {
        (true, true) => Some(adapters_needed(survey).len()),
        (true, false) => Some(0),
        (false, _) => None,
    };
    counted.or_else(none_yet)
}

/// How many adapters the network needs beyond those that there are; 0 while nobody said how many there are.
pub fn adapters_missing(survey: &Survey) -> usize {
    adapters_owned(survey).map_or(0, |owned| adapters_needed(survey).len().saturating_sub(owned))
}

/// One adapter at the router and one in each room that wants network, the router's first. A router that speaks MoCA itself
/// needs none.
pub fn adapters_needed(survey: &Survey) -> Vec<AdapterToCome> {
    let nodes = nodes_of(survey);
    let nobody_said = AdapterToCome { outlet: None, at_router: true, shares: None };
    let no_bridge = !nodes.is_empty() && !nodes.iter().any(|node| node.bridge);
    let mut needed: Vec<_> = no_bridge.then_some(nobody_said).into_iter().collect();
    for node in nodes {
        let Some(part) = survey.parts.get(&node.outlet) else { continue };
        let plugged = part.plugged.as_deref().unwrap_or_default();
        if plugged.contains(&Plugged::MocaGateway) && part.adapter.is_none() {
            continue;
        }
        needed.push(AdapterToCome {
            outlet: Some(node.outlet),
            at_router: node.bridge,
            shares: (!plugged.is_empty()).then(|| part.sharing.unwrap_or(Sharing::Splitter)),
        });
    }
    needed
}

/// Those that are placed after the work on the cables, if they are not yet; empty where nobody was asked for adapters, or
/// could tell.
pub fn adapters_to_come(survey: &Survey) -> Vec<AdapterToCome> {
    let told = match survey.reply(survey.id, Asked::Adapters) {
        Some(Reply::Unsure) => false,
        Some(_) => true,
        None => survey.network.owned.is_some(),
    };
    if told { adapters_needed(survey) } else { Vec::new() }
}

/// Whether adapters are still to be placed.
pub fn are_adapters_to_place(survey: &Survey) -> bool {
    !are_adapters_placed(survey) && !adapters_to_come(survey).is_empty()
}

//! Where the coax meets the router: which outlet gets the bridge adapter, whether the router speaks MoCA itself.

use facts::fact::Edit;
use house::naming;
use house::record::reading_order;
use house::record::{Adapter, NetworkPlan, Part, PartKind, Plugged, field};
use phrase::Phrase;
use serde_json::Value;

use super::{Answer, Told, not_answered};
use crate::place::{key_of, subject_of};
use crate::session::Scene;
use crate::view::{Offer, Sketch, UNSURE};

fn outlets<'a>(scene: &Scene<'a>) -> Vec<&'a Part> {
    let parts = reading_order(scene.survey).into_iter().filter_map(|id| scene.survey.parts.get(&id));
    parts.filter(|part| part.kind == PartKind::Outlet).take(150).collect()
}

/// The outlet that carries the bridge: an adapter that is one, or a router that speaks MoCA itself.
pub(crate) fn bridge<'a>(scene: &Scene<'a>) -> Option<&'a Part> {
    outlets(scene).into_iter().find(|part| {
        part.adapter.as_ref().is_some_and(|adapter| adapter.bridge)
            || part.plugged.iter().flatten().any(|device| *device == Plugged::MocaGateway)
    })
}

pub(super) fn draw_at(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let mut offers: Vec<_> = outlets(scene)
        .into_iter()
        .map(|part| Offer::new(key_of("part", part.id), naming::of_part(scene.survey, part)))
        .collect();
    offers.push(Offer::new("none", Phrase::new("router-at-none")));
    offers.push(Offer::unsure());
    let asked = scene.survey.answer(scene.survey.id, "router-at").and_then(|answer| answer.as_str());
    let now = bridge(scene).map(|part| key_of("part", part.id)).or(asked.map(str::to_owned));
    let now: Vec<_> = now.into_iter().collect();
    sketch.choice("outlet", &Phrase::new("ask-router-at"), false, offers, &now);
}

pub(super) fn take_at(scene: &Scene<'_>) -> Told<Answer> {
    let picked = scene.pending().one("outlet").ok_or_else(not_answered)?;
    let outlet = subject_of(picked, "part");
    let mut answer = Answer::new();
    for part in outlets(scene) {
        let is_bridge = part.adapter.as_ref().is_some_and(|adapter| adapter.bridge);
        if is_bridge && Some(part.id) != outlet {
            answer.edits.push(Edit::new(part.id, field::ADAPTER, Value::Null));
        }
    }
    match (outlet, picked) {
        (Some(outlet), _) => {
            let plan = &scene.survey.network;
            let known = scene.survey.parts.get(&outlet).and_then(|part| part.adapter.clone());
            let adapter = known.unwrap_or_else(|| Adapter {
                version: plan.version.clone(),
                ethernet_mbps: plan.ethernet_mbps,
                bridge: true,
            });
            let answer = answer.asked(scene.survey.id, "router-at", "yes");
            answer.says(outlet, field::ADAPTER, &Adapter { bridge: true, ..adapter })
        }
        (None, "none" | UNSURE) => Ok(answer.asked(scene.survey.id, "router-at", picked)),
        _ => Err(not_answered()),
    }
}

pub(super) fn draw_speaks(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let offer = |key: &str| Offer::new(key, Phrase::new(format!("router-speaks-{key}")));
    let offers = vec![offer("no"), offer("yes"), Offer::unsure()];
    let now = scene.survey.answer(scene.survey.id, "router-speaks").and_then(|answer| answer.as_str());
    let now: Vec<_> = now.map(str::to_owned).into_iter().collect();
    sketch.choice("speaks", &Phrase::new("ask-router-speaks"), false, offers, &now);
}

/// A router that speaks MoCA takes the place of the bridge adapter: one or the other, never both.
pub(super) fn take_speaks(scene: &Scene<'_>) -> Told<Answer> {
    let picked = scene.pending().one("speaks").ok_or_else(not_answered)?;
    let answer = Answer::new().asked(scene.survey.id, "router-speaks", picked);
    let Some(outlet) = bridge(scene) else { return Ok(answer) };
    let plugged: Vec<Plugged> = outlet.plugged.clone().unwrap_or_default();
    match picked {
        "yes" => {
            let mut devices: Vec<_> =
                plugged.into_iter().filter(|device| *device != Plugged::Modem).collect();
            if !devices.contains(&Plugged::MocaGateway) {
                devices.push(Plugged::MocaGateway);
            }
            answer.plain(outlet.id, field::ADAPTER, Value::Null).says(outlet.id, field::PLUGGED, &devices)
        }
        "no" | UNSURE => {
            if !plugged.contains(&Plugged::MocaGateway) {
                return Ok(answer);
            }
            let devices: Vec<_> =
                plugged.into_iter().filter(|device| *device != Plugged::MocaGateway).collect();
            let plan = &scene.survey.network;
            let adapter =
                Adapter { version: plan.version.clone(), ethernet_mbps: plan.ethernet_mbps, bridge: true };
            answer.says(outlet.id, field::PLUGGED, &devices)?.says(outlet.id, field::ADAPTER, &adapter)
        }
        _ => Err(not_answered()),
    }
}

/// Versions as they stand on adapters, with the Ethernet port that they usually have, Mb/s (common practice, no source).
const ADAPTERS: [(&str, &str, u32); 4] =
    [("25", "2.5", 2500), ("20-bonded", "2.0 bonded", 1000), ("20", "2.0", 1000), ("11", "1.1", 1000)];

pub(super) fn draw_adapters(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let words = |key: &str| Phrase::new(format!("adapters-{key}"));
    let mut offers = vec![Offer::new("none", words("none"))];
    offers.extend(ADAPTERS.iter().map(|(key, ..)| Offer::new(*key, words(key))));
    offers.push(Offer::unsure());
    let now = scene.survey.answer(scene.survey.id, "adapters").and_then(|answer| answer.as_str());
    let now: Vec<_> = now.map(str::to_owned).into_iter().collect();
    sketch.choice("adapters", &Phrase::new("ask-adapters"), false, offers, &now);
}

pub(super) fn take_adapters(scene: &Scene<'_>) -> Told<Answer> {
    let picked = scene.pending().one("adapters").ok_or_else(not_answered)?;
    let answer = Answer::new().asked(scene.survey.id, "adapters", picked);
    let plan = match ADAPTERS.iter().find(|(key, ..)| *key == picked) {
        Some((_, version, mbps)) => NetworkPlan { version: (*version).into(), ethernet_mbps: *mbps },
        None if picked == "none" || picked == UNSURE => NetworkPlan::default(),
        None => return Err(not_answered()),
    };
    let mut answer = answer.says(scene.survey.id, field::NETWORK, &plan)?;
    // A bridge that was placed before takes the version too, unless somebody said its own.
    if let Some((id, adapter)) = bridge(scene).and_then(|part| Some((part.id, part.adapter.clone()?)))
        && adapter.version == scene.survey.network.version
    {
        let adapter = Adapter { version: plan.version.clone(), ethernet_mbps: plan.ethernet_mbps, ..adapter };
        answer = answer.says(id, field::ADAPTER, &adapter)?;
    }
    Ok(answer)
}

//! What a change does to the records of a house.

use facts::fact::SubjectId;
use house::rating::PartRating;
use house::record::{
    Adapter, CableKind, ChangeKind, Connector, Feed, FeedFrom, NEWEST_PORT_MBPS, NEWEST_VERSION, Part,
    PartKind, PortEnd, Sharing, Survey,
};

use super::effort::is_known_throughout;
use super::rewire::{
    bridge_over, cap_open_ports, close_ranks, derived, insert_behind, move_from_dead_outlet, new_run,
    own_line, rate, refeed, renew, strong_leg_to_modem,
};
use super::to_buy::{entry_filter_rating, passing_power, powered, splitter_rating};

/// The house after this change. Parts that are new carry ids derived from those they stand beside, so that the
/// same change always gives the same house.
pub fn applied(change: ChangeKind, survey: &Survey) -> Survey {
    let mut after = survey.clone();
    match change {
        ChangeKind::AddEntryFilter { behind } => {
            let id = derived(behind, 0xF1);
            let mut filter = Part::new(id, PartKind::EntryFilter);
            filter.rating = passing_power(survey, change, entry_filter_rating());
            insert_behind(&mut after, behind, filter);
        }
        ChangeKind::MoveEntryFilter { filter, behind } => {
            let Some(part) = after.parts.get(&filter).cloned() else { return after };
            bridge_over(&mut after, filter, 1);
            insert_behind(&mut after, behind, part);
        }
        ChangeKind::SwapEntryFilter { filter } => {
            let rating = passing_power(survey, change, entry_filter_rating());
            rate(&mut after, filter, rating);
        }
        ChangeKind::SwapSplitter { splitter, legs } => {
            let known = survey.parts.get(&splitter).is_none_or(|part| is_known_throughout(survey, part));
            rate(&mut after, splitter, powered(survey, splitter, splitter_rating(legs)));
            if known {
                close_ranks(&mut after, splitter);
            } else {
                cap_open_ports(&mut after, splitter);
                strong_leg_to_modem(&mut after, splitter);
            }
        }
        ChangeKind::RemoveSplitter { splitter } => {
            if let Some(port) =
                after.wiring.fed_from(splitter).first().and_then(|child| after.wiring.feed(*child))
            {
                let port = port.port;
                bridge_over(&mut after, splitter, port);
                after.parts.shift_remove(&splitter);
            }
        }
        ChangeKind::MergeSplitters { upper, lower, legs } => {
            let rating = powered(survey, upper, powered(survey, lower, splitter_rating(legs)));
            rate(&mut after, upper, rating);
            for child in survey.wiring.fed_from(lower) {
                refeed(&mut after, *child, |feed| feed.part = upper);
            }
            after.parts.shift_remove(&lower);
            close_ranks(&mut after, upper);
        }
        ChangeKind::Cap { part, port } => {
            if let Some(part) = after.parts.get_mut(&part) {
                part.ends.insert(port, PortEnd::Capped);
            }
        }
        ChangeKind::SwapAmplifier { amplifier } => {
            if let Some(part) = after.parts.get_mut(&amplifier) {
                part.rating.moca_bypass = Some(true);
                part.measured = None;
            }
        }
        ChangeKind::RemoveAmplifier { amplifier } => {
            let fed = survey.wiring.fed_from(amplifier);
            if let Some(part) = after.parts.get_mut(&amplifier) {
                part.label = None;
                part.measured = None;
                part.ends.clear();
                (part.kind, part.rating) = match u8::try_from(fed.len()).unwrap_or(u8::MAX) {
                    0 | 1 => (PartKind::Barrel, PartRating::default()),
                    several => (PartKind::Splitter, splitter_rating(several)),
                };
            }
            for (place, child) in fed.iter().enumerate() {
                let port = u8::try_from(place + 1).unwrap_or(u8::MAX);
                refeed(&mut after, *child, |feed| feed.port = port);
            }
            strong_leg_to_modem(&mut after, amplifier);
        }
        ChangeKind::ReplaceRun { to } => renew(&mut after, to, |run| {
            run.cable = CableKind::Six;
            run.connector_near = Connector::Compression;
            run.connector_far = Connector::Compression;
        }),
        ChangeKind::RenewConnectors { to } => renew(&mut after, to, |run| {
            for connector in [&mut run.connector_near, &mut run.connector_far] {
                if connector.is_poor() {
                    *connector = Connector::Compression;
                }
            }
        }),
        _ => apply_to_outlets(change, &mut after),
    }
    after.rewire();
    after
}

/// The changes that concern outlets, rooms and the tree as a whole.
fn apply_to_outlets(change: ChangeKind, after: &mut Survey) {
    match change {
        ChangeKind::FilterAtDevice { outlet } => {
            if let Some(part) = after.parts.get_mut(&outlet) {
                part.device_filter = true;
            }
        }
        ChangeKind::ModemOwnLine { outlet } => own_line(after, outlet),
        ChangeKind::ShareOutlet { outlet } => {
            if let Some(part) = after.parts.get_mut(&outlet) {
                part.sharing = Some(Sharing::Splitter);
            }
        }
        ChangeKind::JoinLoose { part, to, port } => {
            if let Some(part) = after.parts.get_mut(&part) {
                part.feed = Some(Feed::From(FeedFrom { part: to, port, run: None }));
            }
            if let Some(feeder) = after.parts.get_mut(&to) {
                feeder.ends.remove(&port);
            }
        }
        ChangeKind::MoveBridge { from, to } => {
            let adapter = after.parts.get_mut(&from).and_then(|part| part.adapter.take());
            if let Some(part) = after.parts.get_mut(&to) {
                part.adapter = adapter;
            }
        }
        ChangeKind::UseOutletNearby { room, outlet } => {
            move_from_dead_outlet(after, room, outlet);
            if let Some(room) = after.rooms.get_mut(&room) {
                room.served_from = Some(outlet);
            }
        }
        ChangeKind::NewRun { room, from } => new_run(after, room, from),
        ChangeKind::NewerAdapter { outlet } => newer_adapter(after, outlet),
        ChangeKind::ExchangeAdapters { outlet, with } => exchange_adapters(after, outlet, with),
        _ => {}
    }
}

/// A newer adapter at an outlet, and at the start of the network where the one there would hold it back.
fn newer_adapter(after: &mut Survey, outlet: SubjectId) {
    let renewed = [Some(outlet), after.bridge_to_renew(outlet)];
    for id in renewed.into_iter().flatten() {
        let Some(part) = after.parts.get_mut(&id) else { continue };
        let bridge = part.adapter.as_ref().is_some_and(|adapter| adapter.bridge);
        part.adapter = Some(Adapter {
            version: Some(NEWEST_VERSION.into()),
            ethernet_mbps: Some(NEWEST_PORT_MBPS),
            bridge,
        });
    }
}

/// Each of two outlets gets the other's adapter. Where the network starts stays where the router is.
fn exchange_adapters(after: &mut Survey, outlet: SubjectId, with: SubjectId) {
    let adapter = |id| after.parts.get(&id).and_then(|part| part.adapter.clone());
    let (Some(one), Some(other)) = (adapter(outlet), adapter(with)) else { return };
    for (id, here, comes) in [(outlet, &one, &other), (with, &other, &one)] {
        if let Some(part) = after.parts.get_mut(&id) {
            part.adapter = Some(Adapter { bridge: here.bridge, ..comes.clone() });
        }
    }
}

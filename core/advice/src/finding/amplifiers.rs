//! Amplifiers and the way between adapters.

use coax::trade::EDGE_TOLERANCE;
use facts::fact::SubjectId;
use house::naming;
use house::record::{Part, PartKind, Plugged, Service, ServiceKind};
use phrase::Arg;

use super::inspection::{Inspection, Standing, has_plugged};
use super::{Finding, FindingKind, Place};
use crate::forecast::RoomForecast;
use crate::level::served_outlets;
use crate::verdict::{Hangs, Met, Wished};

/// Amplifiers without a by-pass, or of which that is not known, by where they stand towards the adapters and by what the
/// forecast says of the rooms behind them.
pub(super) fn by_pass(inspection: &Inspection<'_>) -> Vec<Finding> {
    inspection
        .parts(&[PartKind::Amplifier])
        .filter_map(|amplifier| {
            let hanging = hanging_on(inspection, amplifier.id);
            let kind = match (inspection.standing(amplifier.id), amplifier.rating.by_pass()) {
                _ if !hanging.is_empty() => FindingKind::AmplifierBypassDecides,
                (Standing::Between, Some(false)) => FindingKind::AmplifierNoBypass,
                (Standing::Between, None) => FindingKind::AmplifierBypassUnknown,
                (Standing::Meeting, Some(false) | None) if !is_well_over(inspection, amplifier.id) => {
                    FindingKind::AmplifierOutputsApart
                }
                (Standing::Above, Some(false)) => FindingKind::AmplifierAbove,
                _ => return None,
            };
            let outlets = hanging.iter().copied().map(Place::Part);
            let at = std::iter::once(Place::Part(amplifier.id)).chain(outlets).collect();
            Some(
                Finding::new(kind, at)
                    .phrase("amplifier", inspection.name(amplifier.id))
                    .with("outlets", inspection.names(hanging)),
            )
        })
        .collect()
}

/// The outlets that hang on whether this amplifier has a by-pass, as far as the forecast says.
fn hanging_on(inspection: &Inspection<'_>, amplifier: SubjectId) -> Vec<SubjectId> {
    let rooms = inspection.forecast.map_or(&[][..], |forecast| &forecast.rooms);
    let hangs = |room: &&RoomForecast| {
        Hangs::at(inspection.survey, room).is_some_and(|hangs| hangs.on().contains(&amplifier))
    };
    rooms.iter().filter(hangs).map(|room| room.outlet).collect()
}

/// Whether the forecast has all rooms hear each other over the outputs of an amplifier, and get what they wish.
fn is_well_over(inspection: &Inspection<'_>, amplifier: SubjectId) -> bool {
    let Some(forecast) = inspection.forecast else { return false };
    let Some(bridge) = forecast.bridge else { return false };
    let way = |outlet| inspection.survey.wiring.way_between(bridge, outlet).unwrap_or_default();
    let mut over = forecast.rooms.iter().filter(|room| way(room.outlet).contains(&amplifier)).peekable();
    over.peek().is_some()
        && over.all(|room| {
            let links = forecast.path(room.outlet).is_some_and(|path| !path.may_not_link());
            let wished = Wished::to_come(inspection.survey, room);
            links && wished.is_none_or(|wished| wished.met == Met::Yes)
        })
}

/// Amplifiers that return less than a modem behind them sends. A modem on the port that is not amplified is not
/// concerned.
pub(super) fn return_band(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let sends = survey.services_of(ServiceKind::CableInternet).find_map(Service::upstream_top_mhz);
    let Some(sends) = sends else { return Vec::new() };
    inspection
        .parts(&[PartKind::Amplifier])
        .filter_map(|amplifier| {
            let returns = amplifier.rating.return_high_mhz.filter(|returns| *returns < sends - 1.0)?;
            let modem = inspection.tree(amplifier.id).find(|part| is_modem(part))?;
            let port = port_towards(inspection, amplifier.id, modem.id)?;
            let passive = amplifier.rating.modem_port && port == amplifier.outputs();
            (!passive).then(|| {
                Finding::new(
                    FindingKind::AmplifierReturnNarrow,
                    vec![Place::Part(amplifier.id), Place::Part(modem.id)],
                )
                .phrase("amplifier", inspection.name(amplifier.id))
                .phrase("outlet", inspection.name(modem.id))
                .with("returns", Arg::Frequency(returns))
                .with("sends", Arg::Frequency(sends))
            })
        })
        .collect()
}

/// Amplifiers that end below what a service behind them uses: the first such device of each service. A device on the port
/// that is not amplified is not concerned.
pub(super) fn forward_band(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let tops = |kind| survey.services_of(kind).find_map(|service| service.top_mhz);
    let mut found: Vec<Finding> = Vec::new();
    for served in served_outlets(survey) {
        let Some(top) = tops(served.service) else { continue };
        for amplifier in survey.wiring.way_up(served.outlet).iter().filter_map(|id| survey.parts.get(id)) {
            let ends = amplifier.rating.band.map(|band| band.high_mhz);
            let short = ends.filter(|ends| ends + EDGE_TOLERANCE.value() < top);
            let (PartKind::Amplifier, Some(ends)) = (amplifier.kind, short) else { continue };
            let port = port_towards(inspection, amplifier.id, served.outlet);
            if amplifier.rating.modem_port && port == Some(amplifier.outputs()) {
                continue;
            }
            found.push(
                Finding::new(
                    FindingKind::AmplifierEndsBelow,
                    vec![Place::Part(amplifier.id), Place::Part(served.outlet)],
                )
                .phrase("amplifier", inspection.name(amplifier.id))
                .phrase("outlet", inspection.name(served.outlet))
                .phrase("service", naming::service(served.service))
                .with("ends", Arg::Frequency(ends))
                .with("top", Arg::Frequency(top)),
            );
        }
    }
    found
}

fn is_modem(part: &Part) -> bool {
    has_plugged(part, Plugged::Modem) || has_plugged(part, Plugged::MocaGateway)
}

fn port_towards(inspection: &Inspection<'_>, above: SubjectId, below: SubjectId) -> Option<u8> {
    let wiring = &inspection.survey.wiring;
    let way = wiring.way_up(below);
    let child = way.iter().zip(way.iter().skip(1)).find(|(_, feeder)| **feeder == above)?.0;
    wiring.feed(*child).map(|feed| feed.port)
}

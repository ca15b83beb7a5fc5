//! Where the network could start, while nobody has said where it does: what each outlet would give the rooms if the adapter at the
//! router (the bridge) stood there. Where the router can be is for whoever lives there to say.

use coax::link::USABLE;
use facts::fact::SubjectId;
use house::record::{Adapter, Part, PartKind, Sureness, Survey, reading_order, satellite_on};
use phrase::{Arg, Phrase};

use super::rank::{best_by_room, value};
use crate::error::AdviceError;
use crate::forecast::{Forecast, Options, Reach, RoomForecast, forecast_watched, nodes_of};
use crate::verdict::{answers_to_come, met};

/// The most outlets that are tried, in the order in which the house is read.
const MOST_TRIED: usize = 24;

/// The most places that are told, the best first.
const MOST_TOLD: usize = 3;

/// An outlet where the network could start.
#[derive(Debug, Clone, PartialEq)]
pub struct BridgePlace {
    /// The outlet.
    pub outlet: SubjectId,
    /// Whether the modem, or the fibre box, is plugged in there: the router mostly stands beside it.
    pub has_modem: bool,
    /// What the rooms get from there, by the same draws as if it were chosen.
    pub forecast: Forecast,
    /// The house with the bridge there.
    pub house: Survey,
}

impl BridgePlace {
    /// In this house, with the forecast of the house in which the network starts there.
    pub(crate) fn of(survey: &Survey, outlet: SubjectId, forecast: Forecast) -> Self {
        let has_modem = survey.parts.get(&outlet).is_some_and(Part::has_internet_box);
        Self { outlet, has_modem, forecast, house: with_bridge_at(survey, outlet) }
    }

    /// What the rooms get from there, as one sentence. A room of which it is not known how it hangs is not counted.
    pub fn phrase(&self) -> Phrase {
        let is_told = |room: &&RoomForecast| !matches!(room.reach, Reach::NoBridge | Reach::Loose(_));
        let told = self.forecast.rooms.iter().filter(is_told);
        let told = told.map(|room| (room, self.forecast.likely_down(room.outlet)));
        let rooms = best_by_room(&self.house, told);
        let reached: Vec<f64> = rooms.values().copied().filter(|mbps| *mbps >= USABLE.value()).collect();
        let least = reached.iter().copied().reduce(f64::min).unwrap_or_default();
        let answers = answers_to_come(&self.house, &self.forecast);
        Phrase::new("bridge-place")
            .text("modem", if self.has_modem { "yes" } else { "no" })
            .with("met", Arg::Count(met(&answers) as u64))
            .with("asked", Arg::Count(answers.len() as u64))
            .with("out", Arg::Count((rooms.len() - reached.len()) as u64))
            .with("reached", Arg::Count(reached.len() as u64))
            .with("least", Arg::Rate(least))
    }
}

/// The house with the network's start at an outlet.
fn with_bridge_at(survey: &Survey, outlet: SubjectId) -> Survey {
    let mut house = survey.clone();
    if let Some(part) = house.parts.get_mut(&outlet) {
        let known = part.adapter.take().unwrap_or(Adapter::AT_ROUTER);
        part.adapter = Some(Adapter { bridge: true, ..known });
    }
    house
}

/// The outlets from which most gets through, the best first; empty where the network has its start, or no outlet reaches another.
/// `watch` is told again and again which share is done, and says whether to go on.
///
/// In as many rooms as can be what is wished comes first (the room of the place itself stands at the router), then the place of the
/// modem, then what all rooms get.
///
/// # Errors
/// [`AdviceError::Stopped`] once `watch` says no; else what [`forecast()`](crate::forecast::forecast()) gives.
pub fn bridge_places(
    survey: &Survey,
    (weighing, stating): (&Options, &Options),
    watch: &mut dyn FnMut(f64) -> bool,
) -> Result<Vec<BridgePlace>, AdviceError> {
    let nodes = nodes_of(survey);
    if nodes.is_empty() || nodes.iter().any(|node| node.bridge) {
        return Ok(Vec::new());
    }
    let may_start = |id: &SubjectId| {
        let outlet = survey.parts.get(id).filter(|part| part.kind == PartKind::Outlet);
        outlet.is_some_and(|outlet| !survey.is_dead_outlet(outlet))
            && nodes.iter().any(|node| {
                node.outlet != *id && survey.wiring.head_of(node.outlet) == survey.wiring.head_of(*id)
            })
            && satellite_on(survey, survey.wiring.head_of(*id)) != Some(Sureness::Known)
    };
    let outlets: Vec<_> = reading_order(survey).into_iter().filter(may_start).take(MOST_TRIED).collect();
    let of = (outlets.len() + MOST_TOLD) as f64;
    let mut tried = Vec::new();
    for (done, outlet) in outlets.into_iter().enumerate() {
        let place = tried_at(survey, outlet, weighing, &mut || watch(done as f64 / of))?;
        if place.forecast.rooms.iter().any(|room| matches!(room.reach, Reach::Estimated(_))) {
            tried.push(place);
        }
    }
    best_first(&mut tried);
    tried.truncate(MOST_TOLD);
    let mut told = Vec::with_capacity(tried.len());
    for place in tried {
        told.push(tried_at(survey, place.outlet, stating, &mut || watch(1.0 - 1.0 / of))?);
    }
    best_first(&mut told);
    Ok(told)
}

/// Puts places in order, each by what its own forecast says.
fn best_first(places: &mut [BridgePlace]) {
    places.sort_by(|a, b| {
        let ((met, value), (other_met, other_value)) = (worth(a), worth(b));
        other_met.cmp(&met).then(b.has_modem.cmp(&a.has_modem)).then(other_value.total_cmp(&value))
    });
}

fn tried_at(
    survey: &Survey,
    outlet: SubjectId,
    options: &Options,
    goes_on: &mut dyn FnMut() -> bool,
) -> Result<BridgePlace, AdviceError> {
    let forecast = forecast_watched(&with_bridge_at(survey, outlet), options, goes_on)?;
    Ok(BridgePlace::of(survey, outlet, forecast))
}

/// In how many rooms there is what is wished, that of the place itself among them, and what all get.
fn worth(place: &BridgePlace) -> (usize, f64) {
    let answers = answers_to_come(&place.house, &place.forecast);
    let own = place.house.parts.get(&place.outlet).and_then(|part| part.room);
    let own = own.and_then(|room| place.house.rooms.get(&room)).is_some_and(|room| room.wish.is_some());
    (met(&answers) + usize::from(own), value((&place.house, &place.forecast)))
}

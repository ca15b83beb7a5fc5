//! Which bands are taken where a network would run, and by whom.

use house::record::{ServiceKind, Survey};

use super::Forecast;
use super::taken::taken_bands;

/// A band on the network's tree that another service needs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TakenBand {
    /// Its lower edge, MHz.
    pub low_mhz: f64,
    /// Its upper edge, MHz.
    pub high_mhz: f64,
    /// Who needs it.
    pub by: ServiceKind,
}

/// The bands that the network of a forecast stays out of, by their lower edge, each once for each kind of service; none
/// while nobody chose a bridge.
pub fn bands_taken(survey: &Survey, forecast: &Forecast) -> Vec<TakenBand> {
    let Some(bridge) = forecast.bridge else { return Vec::new() };
    let mut found: Vec<TakenBand> = Vec::new();
    for (low, high) in taken_bands(survey, survey.wiring.head_of(bridge)) {
        let (low_mhz, high_mhz) = (low.value(), high.value());
        let taken = TakenBand { low_mhz, high_mhz, by: needs(survey, low_mhz, high_mhz) };
        if !found.contains(&taken) {
            found.push(taken);
        }
    }
    found.sort_by(|a, b| a.low_mhz.total_cmp(&b.low_mhz).then(a.high_mhz.total_cmp(&b.high_mhz)));
    found
}

/// The service that needs a band: one whose channels lie there, or that reaches up to its edge from below; else a dish,
/// which alone takes a band without being told of.
fn needs(survey: &Survey, low_mhz: f64, high_mhz: f64) -> ServiceKind {
    let same = |a: f64, b: f64| (a - b).abs() < 1e-6;
    let takes = |service: &&house::record::Service| {
        let mut bands = service.network.iter().flat_map(|network| &network.bands);
        let reaches = low_mhz <= 0.0 && service.top_mhz.is_some_and(|top| same(top, high_mhz));
        reaches || bands.any(|band| same(band.low_mhz, low_mhz) && same(band.high_mhz, high_mhz))
    };
    survey.services.values().find(takes).map_or(ServiceKind::SatelliteTv, |service| service.kind)
}

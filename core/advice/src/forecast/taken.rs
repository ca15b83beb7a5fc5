//! Bands that other services need on the same tree, who needs them, and where a network may therefore not go.

use coax::Megahertz;
use coax::link::{Version, placements_avoiding};
use coax::trade::{SATELLITE_HIGH, SATELLITE_LOW};
use facts::fact::SubjectId;
use house::naming;
use house::rating::EXTENDED_D;
use house::record::{Service, ServiceKind, Sureness, Survey, may_come_in, satellite_on};
use phrase::{Arg, Phrase};

use super::{Forecast, nodes_of};

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
    for taken in taken_on(survey, survey.wiring.head_of(bridge)) {
        if !found.contains(&taken) {
            found.push(taken);
        }
    }
    found.sort_by(|a, b| a.low_mhz.total_cmp(&b.low_mhz).then(a.high_mhz.total_cmp(&b.high_mhz)));
    found
}

/// How many of the channels that the network of a forecast could use are left beside what other services need.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChannelsLeft {
    /// So many can be used at once.
    pub left: usize,
    /// So many can be where nothing else is.
    pub full: usize,
    /// Who needs some of the band.
    pub by: Vec<ServiceKind>,
}

impl ChannelsLeft {
    /// The same in words; `None` where none is lost.
    pub fn phrase(&self) -> Option<Phrase> {
        let by = self.by.iter().map(|kind| Arg::Phrase(Box::new(naming::service(*kind))));
        (self.left < self.full).then(|| {
            Phrase::new("channels-left")
                .with("left", Arg::Count(self.left as u64))
                .with("full", Arg::Count(self.full as u64))
                .with("services", Arg::Several(by.collect()))
        })
    }
}

/// What is left beside other services; `None` where none needs any of the band, or nobody chose a bridge.
pub fn channels_left_beside(survey: &Survey, forecast: &Forecast) -> Option<ChannelsLeft> {
    let bands = bands_taken(survey, forecast);
    let head = survey.wiring.head_of(forecast.bridge?);
    let nodes = nodes_of(survey).into_iter().filter(|node| survey.wiring.head_of(node.outlet) == head);
    let newest = nodes.map(|node| node.link.version).max()?;
    let taken: Vec<_> =
        bands.iter().map(|band| (Megahertz(band.low_mhz), Megahertz(band.high_mhz))).collect();
    let mut by: Vec<_> = bands.iter().map(|band| band.by).collect();
    by.sort_unstable();
    by.dedup();
    let (left, full) = (channels_left(newest, &taken), newest.most_channels().value);
    (!by.is_empty()).then_some(ChannelsLeft { left, full, by })
}

/// The bands on the tree headed by `head` that a network must stay out of.
fn taken_on(survey: &Survey, head: SubjectId) -> Vec<TakenBand> {
    let mut taken = Vec::new();
    if satellite_on(survey, head) == Some(Sureness::Known) {
        let (low_mhz, high_mhz) = (SATELLITE_LOW.value(), SATELLITE_HIGH.value());
        taken.push(TakenBand { low_mhz, high_mhz, by: ServiceKind::SatelliteTv });
    }
    for service in survey.services.values() {
        let by = service.kind;
        if service.is_cable()
            && may_come_in(survey, service, head)
            && let Some(high_mhz) = service.top_mhz.filter(|top| *top > EXTENDED_D.low_mhz)
        {
            taken.push(TakenBand { low_mhz: 0.0, high_mhz, by });
        }
        if !is_on_tree(survey, service, head) {
            continue;
        }
        let bands = service.network.iter().flat_map(|network| &network.bands);
        taken.extend(bands.map(|band| TakenBand { low_mhz: band.low_mhz, high_mhz: band.high_mhz, by }));
    }
    taken
}

/// The edges of the bands on the tree headed by `head` that a network must stay out of.
pub(super) fn taken_edges(survey: &Survey, head: SubjectId) -> Vec<(Megahertz, Megahertz)> {
    taken_on(survey, head).iter().map(|band| (Megahertz(band.low_mhz), Megahertz(band.high_mhz))).collect()
}

/// Whether a network may be on a tree: it is, unless it was said to come in elsewhere.
fn is_on_tree(survey: &Survey, service: &Service, head: SubjectId) -> bool {
    service.entry.is_none_or(|entry| survey.wiring.head_of(entry) == head)
}

/// The most channels at once that a network of `version` finds free beside the bands taken.
pub(crate) fn channels_left(version: Version, taken: &[(Megahertz, Megahertz)]) -> usize {
    placements_avoiding(version, taken).iter().map(|placement| placement.channels().len()).max().unwrap_or(0)
}

//! Bands that other services need on the same tree, and where a network may therefore not go.

use coax::Megahertz;
use coax::link::{Version, placements_avoiding};
use facts::fact::SubjectId;
use house::rating::EXTENDED_D;
use house::record::{Service, Sureness, Survey, may_come_in, satellite_on};

/// Satellite intermediate frequency: 950 to 2150 MHz. EN 50607:2015 and EN 50494:2007 put the user bands of one shared
/// cable in the same range.
const SATELLITE_IF: (Megahertz, Megahertz) = (Megahertz(950.0), Megahertz(2150.0));

/// The bands on the tree headed by `head` that a network must stay out of.
pub(crate) fn taken_bands(survey: &Survey, head: SubjectId) -> Vec<(Megahertz, Megahertz)> {
    let mut taken = Vec::new();
    if satellite_on(survey, head) == Some(Sureness::Known) {
        taken.push(SATELLITE_IF);
    }
    for service in survey.services.values() {
        if service.is_cable()
            && may_come_in(survey, service, head)
            && let Some(top) = service.top_mhz.filter(|top| *top > EXTENDED_D.low_mhz)
        {
            taken.push((Megahertz(0.0), Megahertz(top)));
        }
        if !is_on_tree(survey, service, head) {
            continue;
        }
        let bands = service.network.iter().flat_map(|network| &network.bands);
        taken.extend(bands.map(|band| (Megahertz(band.low_mhz), Megahertz(band.high_mhz))));
    }
    taken
}

/// Whether a network may be on a tree: it is, unless it was said to come in elsewhere.
fn is_on_tree(survey: &Survey, service: &Service, head: SubjectId) -> bool {
    service.entry.is_none_or(|entry| survey.wiring.head_of(entry) == head)
}

/// The most channels at once that a network of `version` finds free beside the bands taken.
pub(crate) fn channels_left(version: Version, taken: &[(Megahertz, Megahertz)]) -> usize {
    placements_avoiding(version, taken).iter().map(|placement| placement.channels().len()).max().unwrap_or(0)
}

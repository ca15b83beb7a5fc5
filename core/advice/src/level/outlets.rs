//! Which outlet gets which service, and at which frequencies that is looked at.

use coax::trade::{CABLE_TOP, CABLE_TOP_4_0, SATELLITE_HIGH, SATELLITE_LOW};
use facts::fact::SubjectId;
use house::record::{Incoming, PartKind, Plugged, ReadingKind, ServiceKind, Survey};

/// The lowest channel of cable and antenna TV (channel 2 begins at 54 MHz, CTA-542-D as quoted in trade tables).
const LOWEST_TV_MHZ: f64 = 57.0;
/// Where cable services end unless somebody said otherwise, and how far levels are looked at, MHz.
const CABLE_TOP_MHZ: (f64, f64) = (CABLE_TOP.value(), CABLE_TOP_4_0.value());
/// The top of antenna TV (channel 36 ends at 608 MHz; from memory).
const ANTENNA_TOP_MHZ: f64 = 605.0;
/// What a dish sends down the cable, MHz.
const SATELLITE_MHZ: (f64, f64) = (SATELLITE_LOW.value(), SATELLITE_HIGH.value());
/// Lower edge of what a modem sends, and its upper edge unless somebody said otherwise, MHz (DOCSIS Radio Frequency Interface
/// Specification: upstream 5 to 42 MHz in North America).
pub(crate) const UPSTREAM_MHZ: (f64, f64) = (5.0, 42.0);
/// Half a channel of 6 MHz (North America; from memory), MHz.
const HALF_A_CHANNEL_MHZ: f64 = 3.0;
/// The least width of a band that is looked at, MHz.
const LEAST_BAND_MHZ: f64 = 1.0;
/// Where nobody names the split, the way to the house begins at so much times what a modem sends at most: 834 over 684.
const USUAL_SPLIT: f64 = 1.22;
/// Where the way to the house begins over each way back, MHz: 54 over 42 ("Understanding Band Splits in Two-Way Networks",
/// broadbandlibrary.com, has 52 over 30), 108 over 85 and 258 over 204 (blueflymedia.com); 85 over 65 and, where the split is
/// ultra-high, 372, 492, 602 and 834 from memory.
const SPLITS_MHZ: [(f64, f64); 8] = [
    (42.0, 54.0),
    (65.0, 85.0),
    (85.0, 108.0),
    (204.0, 258.0),
    (300.0, 372.0),
    (396.0, 492.0),
    (492.0, 602.0),
    (684.0, 834.0),
];

/// A service that arrives at an outlet.
#[derive(Debug, Clone, PartialEq)]
pub struct Served {
    /// The outlet.
    pub outlet: SubjectId,
    /// The entry by which the service comes in.
    pub entry: SubjectId,
    /// What it is.
    pub service: ServiceKind,
    /// Low, middle and high in the band towards the house, MHz.
    pub down_mhz: [f64; 3],
    /// For a modem: low and high in the band towards the street, MHz.
    pub up_mhz: Option<[f64; 2]>,
}

/// Every TV, box, receiver and modem on a tree with an entry that is not cut off.
pub fn served_outlets(survey: &Survey) -> Vec<Served> {
    let mut found = Vec::new();
    for outlet in survey.parts.values().filter(|part| part.kind == PartKind::Outlet) {
        let Some(entry) =
            survey.parts.get(&survey.wiring.head_of(outlet.id)).filter(|head| head.is_joined_entry())
        else {
            continue;
        };
        let incoming = Incoming::at(survey, entry.id);
        let mut services: Vec<_> =
            outlet.plugged.iter().flatten().filter_map(|device| service_at(*device, &incoming)).collect();
        services.sort_unstable();
        services.dedup();
        found.extend(services.into_iter().map(|service| Served {
            outlet: outlet.id,
            entry: entry.id,
            service,
            down_mhz: down_of(survey, service),
            up_mhz: (service == ServiceKind::CableInternet).then(|| up_of(survey)),
        }));
    }
    found
}

/// What a device gets of what comes in. A TV that may get either gets what is surer, and else the cable company's.
fn service_at(device: Plugged, incoming: &Incoming) -> Option<ServiceKind> {
    use ServiceKind::{AntennaTv, CableInternet, CableTv, SatelliteTv};
    let brings = |kind| incoming.brings(kind).map(|_| kind);
    match device {
        Plugged::Tv | Plugged::TvBox if incoming.brings(AntennaTv) > incoming.brings(CableTv) => {
            Some(AntennaTv)
        }
        Plugged::Tv | Plugged::TvBox => brings(CableTv),
        Plugged::Modem | Plugged::MocaGateway => brings(CableInternet),
        Plugged::SatelliteReceiver => brings(SatelliteTv),
        _ => None,
    }
}

fn down_of(survey: &Survey, service: ServiceKind) -> [f64; 3] {
    let stated = survey.services_of(service).find_map(|service| service.top_mhz);
    let (low, high) = match service {
        ServiceKind::SatelliteTv => SATELLITE_MHZ,
        ServiceKind::AntennaTv => (LOWEST_TV_MHZ, stated.unwrap_or(ANTENNA_TOP_MHZ)),
        ServiceKind::CableInternet => {
            (lowest_down(upstream_top(survey)).max(LOWEST_TV_MHZ), stated.unwrap_or(CABLE_TOP_MHZ.0))
        }
        _ => (LOWEST_TV_MHZ, stated.unwrap_or(CABLE_TOP_MHZ.0)),
    };
    let most = if service == ServiceKind::SatelliteTv { SATELLITE_MHZ.1 } else { CABLE_TOP_MHZ.1 };
    // A channel's middle lies half a channel inside the band.
    let high = (high.min(most) - HALF_A_CHANNEL_MHZ).max(low + LEAST_BAND_MHZ);
    [low, f64::midpoint(low, high), high]
}

/// The middle of the lowest channel towards the house above what a modem sends: just above the split that is usual there, or
/// as much above it as splits are.
fn lowest_down(upstream_top: f64) -> f64 {
    let split = SPLITS_MHZ.into_iter().find(|(up, _)| *up >= upstream_top);
    split.map_or(upstream_top * USUAL_SPLIT, |(_, down)| down) + HALF_A_CHANNEL_MHZ
}

fn upstream_top(survey: &Survey) -> f64 {
    let stated =
        survey.services_of(ServiceKind::CableInternet).find_map(house::record::Service::upstream_top_mhz);
    stated.unwrap_or(UPSTREAM_MHZ.1)
}

fn up_of(survey: &Survey) -> [f64; 2] {
    // Just inside the band: its lowest frequency and a channel's middle below its top.
    [UPSTREAM_MHZ.0, (upstream_top(survey) - HALF_A_CHANNEL_MHZ).max(UPSTREAM_MHZ.0 + LEAST_BAND_MHZ)]
}

/// The levels measured at a part, by rising frequency.
pub(crate) fn measured_at(survey: &Survey, part: SubjectId) -> Vec<(f64, f64)> {
    let mut measured: Vec<_> = survey
        .levels_read_at(part)
        .filter_map(|reading| match reading.measured {
            ReadingKind::Level { mhz, dbmv } if mhz > 0.0 && mhz.is_finite() && dbmv.is_finite() => {
                Some((mhz, dbmv))
            }
            _ => None,
        })
        .collect();
    measured.sort_by(|a, b| a.0.total_cmp(&b.0));
    measured
}

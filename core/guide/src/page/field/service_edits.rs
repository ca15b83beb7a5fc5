//! What was said of a service, as edits.

use facts::fact::SubjectId;
use house::rating::Band;
use house::record::{
    ModemGeneration, OtherNetwork, PowerFeed, Service, ServiceKind, SingleCable, TvSignal, field,
};
use phrase::Phrase;

use crate::number::Quantity;
use crate::place::{Choice, Key, choices};
use crate::question::{Answer, Told, not_answered};
use crate::session::SurveySnapshot;

/// The most entries that are offered.
pub(super) const ENTRY_MOST: usize = 40;

pub(super) const TV: [TvSignal; 3] = [TvSignal::Analog, TvSignal::Digital, TvSignal::Both];

pub(super) const SINGLE: [SingleCable; 2] = [SingleCable::En50494, SingleCable::En50607];

pub(super) const GENERATIONS: [ModemGeneration; 3] =
    [ModemGeneration::V3_0, ModemGeneration::V3_1, ModemGeneration::V4_0];

/// MoCA versions of a network that is not ours, as its boxes name them.
pub(super) const VERSIONS: [&str; 5] = ["1.0", "1.1", "2.0", "2.0 bonded", "2.5"];

/// One of these versions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct NodeVersion(pub(super) &'static str);

impl Choice for NodeVersion {
    fn key(&self) -> String {
        self.0.into()
    }

    fn of(key: &str) -> Option<Self> {
        VERSIONS.into_iter().find(|version| *version == key).map(Self)
    }
}

choices! {
    /// Whether cable internet drops out now and then.
    DropsOut {
        /// It does.
        Yes "yes",
        /// It does not, as far as is known.
        No "no",
    }
}

fn picked<C: Choice + PartialEq>(snapshot: &SurveySnapshot<'_>, key: &Key, list: &[C]) -> Option<C> {
    snapshot.pending().one(key).filter(|picked| list.contains(picked))
}

/// The edits. With `another`, what stands in the band's two places becomes one more band beside those that are known.
pub(super) fn edits(snapshot: &SurveySnapshot<'_>, id: SubjectId, another: bool) -> Told<Answer> {
    let service = snapshot.survey.services.get(&id).ok_or_else(not_answered)?;
    let pending = snapshot.pending();
    let mut answer = Answer::new();
    if let Some(mhz) = pending.number(&Key::Top, Quantity::Frequency)? {
        answer = answer.says(id, field::service::TOP, &mhz);
    }
    if let Some(Key::Part(entry)) = pending.one(&Key::Entry) {
        answer = answer.says(id, field::service::ENTRY, &entry);
    }
    match service.kind {
        ServiceKind::CableTv | ServiceKind::AntennaTv => {
            if let Some(signal) = picked(snapshot, &Key::Signal, &TV) {
                answer = answer.says(id, field::service::SIGNAL, &signal);
            }
        }
        ServiceKind::SatelliteTv => {
            if let Some(single) = picked(snapshot, &Key::Single, &SINGLE) {
                answer = answer.says(id, field::service::SINGLE_CABLE, &single);
            }
        }
        ServiceKind::CableInternet => {
            let mut bands = service.modem.unwrap_or_default();
            bands.generation = picked(snapshot, &Key::Generation, &GENERATIONS).or(bands.generation);
            bands.upstream_top_mhz =
                pending.number(&Key::Upstream, Quantity::Frequency)?.or(bands.upstream_top_mhz);
            if bands != service.modem.unwrap_or_default() {
                answer = answer.says(id, field::service::MODEM, &bands);
            }
            let drops = pending.one(&Key::Drops).map(|drops: DropsOut| drops == DropsOut::Yes);
            if let Some(drops) = drops.filter(|drops| *drops != service.drops_out) {
                answer = answer.says(id, field::service::DROPS_OUT, &drops);
            }
        }
        ServiceKind::ProviderNetwork | ServiceKind::FibreLink => {
            let network = network(snapshot, service, another)?;
            if network != service.network.clone().unwrap_or_default() {
                answer = answer.says(id, field::service::OTHER_NETWORK, &network);
            }
        }
        ServiceKind::PowerOverCoax => {
            let part = |key: &Key| match pending.one(key) {
                Some(Key::Part(part)) => Some(part),
                _ => None,
            };
            let from = part(&Key::From).or(service.power.map(|feed| feed.from));
            let to = part(&Key::To).or(service.power.map(|feed| feed.to));
            let (Some(from), Some(to)) = (from, to) else {
                return Err(Phrase::new("free-power-both"));
            };
            answer = answer.says(id, field::service::POWER, &PowerFeed { from, to });
        }
    }
    Ok(answer)
}

fn network(snapshot: &SurveySnapshot<'_>, service: &Service, another: bool) -> Told<OtherNetwork> {
    let pending = snapshot.pending();
    let mut network = service.network.clone().unwrap_or_default();
    if let Some(NodeVersion(version)) = pending.one(&Key::Version) {
        network.version = Some(version.to_owned());
    }
    if let Some(nodes) = pending.number(&Key::Nodes, Quantity::Count)? {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a count of 0 to 64")]
        let nodes = nodes as u32;
        network.nodes = nodes;
    }
    let first = network.bands.first().copied();
    let low = pending.number(&Key::Low, Quantity::Frequency)?.or(first.map(|band| band.low_mhz));
    let high = pending.number(&Key::High, Quantity::Frequency)?.or(first.map(|band| band.high_mhz));
    match (low, high) {
        (Some(low_mhz), Some(high_mhz)) if low_mhz < high_mhz => {
            let band = Band { low_mhz, high_mhz };
            if another {
                if !network.bands.contains(&band) {
                    network.bands.push(band);
                }
            } else if let Some(first) = network.bands.first_mut() {
                *first = band;
            } else {
                network.bands.push(band);
            }
        }
        (None, None) => {}
        _ => return Err(Phrase::new("free-band-order")),
    }
    Ok(network)
}

//! What else uses the coax, at random: mostly what the entries bring, now and then something that contradicts them.

use house::rating::Band;
use house::record::{
    EntryKind, ModemBands, ModemGeneration, OtherNetwork, PartKind, Plugged, PowerFeed, Service, ServiceKind,
    SingleCable, TvSignal,
};

use super::Site;

impl Site {
    pub(super) fn services(&mut self) {
        for (tag, kind) in self.entries.clone() {
            let brings: &[(f64, ServiceKind)] = match kind {
                EntryKind::Cable => &[(0.6, ServiceKind::CableTv), (0.65, ServiceKind::CableInternet)],
                EntryKind::Antenna => &[(0.8, ServiceKind::AntennaTv), (0.1, ServiceKind::SatelliteTv)],
                EntryKind::Satellite => &[(0.75, ServiceKind::SatelliteTv)],
                EntryKind::FibreBox => &[(0.6, ServiceKind::FibreLink)],
                EntryKind::Unknown => &[
                    (0.2, ServiceKind::CableTv),
                    (0.2, ServiceKind::AntennaTv),
                    (0.3, ServiceKind::SatelliteTv),
                    (0.2, ServiceKind::CableInternet),
                ],
            };
            for (share, service) in brings {
                if self.dice.chance(*share) {
                    // Where its entry is not typed, only the service itself says by which it comes in.
                    let stated = matches!(kind, EntryKind::Unknown) || self.dice.chance(0.35);
                    self.service(*service, stated.then_some(tag.as_str()));
                }
            }
        }
        if self.dice.chance(0.1) {
            self.service(ServiceKind::ProviderNetwork, None);
        }
        if self.dice.chance(0.06) {
            self.service(ServiceKind::SatelliteTv, None);
        }
        self.power();
    }

    fn service(&mut self, kind: ServiceKind, entry: Option<&str>) {
        let top = match kind {
            ServiceKind::CableTv | ServiceKind::CableInternet => self.dice.weighed(&[
                (4, None),
                (2, Some(750.0)),
                (2, Some(860.0)),
                (3, Some(1002.0)),
                (2, Some(1218.0)),
                (1, Some(1794.0)),
            ]),
            ServiceKind::AntennaTv => self.dice.pick(&[None, Some(608.0), Some(698.0)]),
            ServiceKind::SatelliteTv => self.dice.pick(&[None, Some(2150.0)]),
            _ => None,
        };
        let signal = self.dice.weighed(&[
            (3, None),
            (4, Some(TvSignal::Digital)),
            (1, Some(TvSignal::Analog)),
            (1, Some(TvSignal::Both)),
        ]);
        let generation = self.dice.weighed(&[
            (3, None),
            (3, Some(ModemGeneration::V3_0)),
            (3, Some(ModemGeneration::V3_1)),
            (1, Some(ModemGeneration::V4_0)),
        ]);
        let sends = self.dice.pick(&[None, Some(42.0), Some(65.0), Some(85.0), Some(204.0)]);
        let single = self.dice.weighed(&[(4, None), (1, Some(SingleCable::En50494))]);
        let bands = self.dice.weighed(&[(2, None), (1, Some((1125.0, 1175.0))), (1, Some((1275.0, 1325.0)))]);
        let nodes = self.dice.pick(&[0, 2, 4]);
        let told = self.dice.chance(0.5);
        self.build(|mut house| {
            let entry = entry.map(|tag| house.id_of(tag));
            let id = house.fresh();
            let mut service = Service { top_mhz: top, entry, ..Service::new(id, kind) };
            match kind {
                ServiceKind::CableTv | ServiceKind::AntennaTv => service.signal = signal,
                ServiceKind::CableInternet => {
                    service.modem = told.then_some(ModemBands { generation, upstream_top_mhz: sends });
                }
                ServiceKind::SatelliteTv => service.single_cable = single,
                ServiceKind::ProviderNetwork | ServiceKind::FibreLink => {
                    let bands = bands.map(|(low_mhz, high_mhz)| Band { low_mhz, high_mhz });
                    service.network = told.then(|| OtherNetwork {
                        version: Some("2.0".into()),
                        bands: bands.into_iter().collect(),
                        nodes,
                    });
                }
                ServiceKind::PowerOverCoax => {}
            }
            house.survey.services.insert(id, service);
            house
        });
    }

    /// Who powers whom, where somebody said so.
    fn power(&mut self) {
        let survey = &self.house.survey;
        let gives = |part: &&house::record::Part| {
            part.kind == PartKind::PowerInserter
                || part.plugged.as_ref().is_some_and(|plugged| {
                    plugged.contains(&Plugged::PowerSupply) || plugged.contains(&Plugged::SatelliteReceiver)
                })
        };
        let takes = |part: &&house::record::Part| matches!(part.kind, PartKind::Amplifier | PartKind::Entry);
        let from: Vec<_> = survey.parts.values().filter(gives).map(|part| part.id).collect();
        let to: Vec<_> = survey.parts.values().filter(takes).map(|part| part.id).collect();
        if from.is_empty() || to.is_empty() || !self.dice.chance(0.4) {
            return;
        }
        let feed = PowerFeed { from: self.dice.pick(&from), to: self.dice.pick(&to) };
        self.build(|mut house| {
            let id = house.fresh();
            let service = Service { power: Some(feed), ..Service::new(id, ServiceKind::PowerOverCoax) };
            house.survey.services.insert(id, service);
            house
        });
    }
}

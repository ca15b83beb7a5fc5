//! Outlets at random: rooms, what is plugged in, how it is shared.

use house::record::{EntryKind, PartKind, Plugged, Sharing};

use super::Site;
use super::tree::Hook;

const ROOMS: [&str; 7] = ["Study", "Office", "Den", "Kitchen", "Hall", "Cellar", "Nursery"];

impl Site {
    /// An outlet on a port, or one of which nobody knows the feed.
    pub(super) fn outlet(&mut self, at: Option<&Hook>) {
        let kind = at.and_then(|(tag, _)| self.comes_in_at(tag));
        let tag = if let Some(at) = at {
            self.hang(PartKind::Outlet, 'O', at).0
        } else {
            let tag = self.tag('O');
            self.build(|house| house.part(&tag, PartKind::Outlet));
            tag
        };
        if self.dice.chance(0.92) {
            let room = self.dice.pick(&ROOMS);
            let wish = self.dice.weighed(&[
                (4, None),
                (2, Some(100.0)),
                (2, Some(400.0)),
                (2, Some(900.0)),
                (1, Some(2000.0)),
            ]);
            self.build(|mut house| {
                let id = house.room(room);
                let house = house.with(|outlet| outlet.room = Some(id));
                match wish {
                    Some(mbps) => house.wish(room, mbps).at(&tag),
                    None => house,
                }
            });
        }
        let plugged = self.plugged(kind);
        let shares = plugged.as_ref().is_some_and(|plugged| !plugged.is_empty());
        let sharing =
            self.dice.weighed(&[(2, None), (1, Some(Sharing::Splitter)), (1, Some(Sharing::ThroughPort))]);
        let filtered = shares && self.dice.chance(0.06);
        let passes_on = self.dice.chance(0.05);
        self.build(|house| {
            house.at(&tag).with(|outlet| {
                outlet.plugged = plugged;
                outlet.sharing = sharing.filter(|_| shares);
                outlet.device_filter = filtered;
                outlet.rating.passes_on = passes_on;
            })
        });
        self.outlets.push(tag.clone());
        if passes_on && self.dice.chance(0.7) {
            self.grow(&(tag, 1), 3);
        }
    }

    /// What comes in at the head of the tree that a part hangs on, as its entry is typed.
    fn comes_in_at(&mut self, tag: &str) -> Option<EntryKind> {
        self.house.survey.rewire();
        let head = self.house.survey.wiring.head_of(self.house.id_of(tag));
        let part = &self.house.survey.parts[&head];
        (part.kind == PartKind::Entry).then_some(part.entry_kind)
    }

    /// What people plug in where this comes in; something else now and then.
    fn plugged(&mut self, comes_in: Option<EntryKind>) -> Option<Vec<Plugged>> {
        if self.dice.chance(0.12) {
            return None;
        }
        if self.dice.chance(0.3) {
            return Some(Vec::new());
        }
        let device = if self.dice.chance(0.1) {
            self.dice.pick(&[
                Plugged::Tv,
                Plugged::TvBox,
                Plugged::Modem,
                Plugged::MocaGateway,
                Plugged::SatelliteReceiver,
                Plugged::FibreBox,
                Plugged::PowerSupply,
                Plugged::Other,
            ])
        } else {
            match comes_in {
                Some(EntryKind::Antenna) => self.dice.weighed(&[(6, Plugged::Tv), (1, Plugged::PowerSupply)]),
                Some(EntryKind::Satellite) => {
                    self.dice.weighed(&[(6, Plugged::SatelliteReceiver), (1, Plugged::Tv)])
                }
                Some(EntryKind::FibreBox) => {
                    self.dice.weighed(&[(2, Plugged::TvBox), (1, Plugged::FibreBox), (1, Plugged::Other)])
                }
                _ => self.dice.weighed(&[
                    (4, Plugged::Tv),
                    (3, Plugged::TvBox),
                    (4, Plugged::Modem),
                    (1, Plugged::MocaGateway),
                    (1, Plugged::PowerSupply),
                ]),
            }
        };
        let mut plugged = vec![device];
        if self.dice.chance(0.08) && device != Plugged::Tv {
            plugged.push(Plugged::Tv);
        }
        Some(plugged)
    }
}

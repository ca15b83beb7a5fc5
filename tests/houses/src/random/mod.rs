//! Houses at random, for the laws that every house keeps: the same seed gives the same house for ever.
//!
//! What stands here is what people find: one or several entries of every kind, filters where they belong and where they do
//! not, amplifiers with and without by-pass, DC over the coax, dishes, combiners, labels read, unread and misread, ends
//! nobody looked at, outlets with anything plugged in, other homes on the same coax, levels measured or not. How often
//! each comes is chosen so that all of them meet, not as often as in life.

mod dice;
mod outlets;
mod readings;
pub mod seeds;
mod services;
mod tests_made;
mod tree;

use house::record::{
    Asked, BehindAdapter, Building, EntryKind, EntryState, Internet, Named, NetworkPiece, NetworkPlan,
    Ownership, PartKind, Reply, Survey,
};

use crate::House;

pub use dice::Dice;
pub use tests_made::with_tests;

/// A house of this seed. Every reading in it is a level: what an adapter tells comes by [`with_tests`].
pub fn survey(seed: u64) -> Survey {
    let mut site = Site::new(seed);
    site.about();
    site.ways_in();
    site.loose_parts();
    site.adapters();
    site.rooms_without_coax();
    site.services();
    site.levels();
    site.house.survey()
}

/// What grows at random: the house, and what the dice need to know of it.
struct Site {
    house: House,
    dice: Dice,
    /// How many parts bear a tag of each letter.
    tags: [u32; 26],
    entries: Vec<(String, EntryKind)>,
    outlets: Vec<String>,
}

impl Site {
    fn new(seed: u64) -> Self {
        Self {
            house: House::new(),
            dice: Dice::new(seed),
            tags: [0; 26],
            entries: Vec::new(),
            outlets: Vec::new(),
        }
    }

    fn build(&mut self, step: impl FnOnce(House) -> House) {
        self.house = step(std::mem::take(&mut self.house));
    }

    /// The next tag with this letter: S1, S2 ...
    fn tag(&mut self, letter: char) -> String {
        let place = usize::from(u8::try_from(letter).expect("a letter") - b'A');
        self.tags[place] += 1;
        format!("{letter}{}", self.tags[place])
    }

    /// Whose wiring it is, the plan, the network to be.
    fn about(&mut self) {
        let (shared, rented) = (self.dice.chance(0.15), self.dice.chance(0.15));
        let ownership = if rented { Ownership::Rented } else { Ownership::Own };
        let told = shared || rented || self.dice.chance(0.3);
        let plan = self.dice.weighed(&[(5, None), (2, Some(100.0)), (2, Some(500.0)), (2, Some(1000.0))]);
        let version = self.dice.weighed(&[(7, "2.5"), (1, "2.0 bonded"), (1, "2.0"), (1, "1.1")]).to_owned();
        let ethernet_mbps = self.dice.weighed(&[(5, None), (3, Some(2500)), (3, Some(1000)), (1, Some(100))]);
        self.build(|mut house| {
            let survey = &mut house.survey;
            survey.building = told.then_some(Building { ownership, shared });
            survey.internet =
                plan.map(|down_mbps| Internet { down_mbps, up_mbps: (down_mbps / 10.0_f64).round() });
            // Some have two already, whatever they need.
            let owned = ethernet_mbps.filter(|mbps| *mbps == 100).map(|_| 2);
            survey.network = NetworkPlan { version, ethernet_mbps, owned };
            house
        });
    }

    /// The entries, each with its tree; now and then a tree that no entry feeds.
    fn ways_in(&mut self) {
        let count = self.dice.weighed(&[(1, 0), (12, 1), (5, 2), (2, 3)]);
        for _ in 0..count {
            self.way_in();
        }
        if count == 0 || self.dice.chance(0.05) {
            let tag = self.tag('S');
            let legs = self.dice.pick(&[2, 3, 4]);
            self.build(|house| house.splitter(&tag, legs).fed_by_nothing());
            self.rate_splitter(&tag);
            self.branch(&tag, 1);
        }
    }

    fn way_in(&mut self) {
        let kind = self.dice.weighed(&[
            (9, EntryKind::Cable),
            (5, EntryKind::Antenna),
            (3, EntryKind::Satellite),
            (2, EntryKind::FibreBox),
            (3, EntryKind::Unknown),
        ]);
        let state = self.dice.weighed(&[
            (8, EntryState::Connected),
            (2, EntryState::Unknown),
            (1, EntryState::CutOff),
        ]);
        let tag = self.tag('E');
        self.build(|house| house.entry(&tag, kind).with(|entry| entry.entry_state = state));
        if self.dice.chance(0.15) {
            self.build(|house| house.unsure(&tag, Asked::EntryFilter));
        }
        self.entries.push((tag.clone(), kind));
        let hook = self.trunk(&tag, kind);
        self.grow(&hook, 0);
    }

    /// Parts found of which nobody knows the feed.
    fn loose_parts(&mut self) {
        if self.dice.chance(0.12) {
            self.outlet(None);
        }
        if self.dice.chance(0.08) {
            let tag = self.tag('S');
            let legs = self.dice.pick(&[2, 3]);
            self.build(|house| house.splitter(&tag, legs));
            self.rate_splitter(&tag);
            if self.dice.chance(0.5) {
                self.grow(&(tag, 1), 2);
            }
        }
        if self.dice.chance(0.03) {
            let tag = self.tag('X');
            self.build(|house| house.part(&tag, PartKind::Unknown));
        }
    }

    /// The bridge and the rooms' adapters; sometimes nobody has chosen yet, or there are none yet.
    fn adapters(&mut self) {
        if self.outlets.is_empty() {
            return;
        }
        if self.dice.chance(0.12) {
            let reply = self.dice.pick(&[Reply::None, Reply::Unsure]);
            self.build(|mut house| {
                let survey = house.survey.id;
                house.survey.asked.insert((survey, Asked::Adapters), reply.name().into());
                house
            });
        }
        let outlets = self.outlets.clone();
        let bridge = self.dice.below(outlets.len());
        for (place, tag) in outlets.iter().enumerate() {
            let at_router = place == bridge && self.dice.chance(0.92);
            if at_router || self.dice.chance(0.55) {
                let version = self.dice.weighed(&[(8, "2.5"), (1, "2.0 bonded"), (1, "2.0"), (1, "1.1")]);
                let port = self.dice.weighed(&[(5, 2500), (3, 1000), (1, 100)]);
                let second_bridge = self.dice.chance(0.02);
                let (versioned, ported) = (self.dice.chance(0.85), self.dice.chance(0.8));
                let behind = self.behind_adapter();
                self.build(|house| {
                    let house = house.at(tag).adapter(version).port(port);
                    let house = house.with(|outlet| {
                        let adapter = outlet.adapter.as_mut().expect("just put there");
                        adapter.version = adapter.version.take().filter(|_| versioned);
                        adapter.ethernet_mbps = adapter.ethernet_mbps.filter(|_| ported);
                        outlet.behind_adapter = behind;
                    });
                    if at_router || second_bridge { house.bridge() } else { house }
                });
            }
        }
    }

    /// What lies between an adapter and the devices of the room, where somebody said so.
    fn behind_adapter(&mut self) -> Option<BehindAdapter> {
        let pieces: &[NetworkPiece] = self.dice.pick(&[
            &[][..],
            &[NetworkPiece::Run],
            &[NetworkPiece::Switch],
            &[NetworkPiece::Run, NetworkPiece::Switch],
        ]);
        let mbps = self.dice.pick(&[None, Some(100), Some(1000), Some(2500)]);
        self.dice.chance(0.15).then(|| BehindAdapter { pieces: pieces.to_vec(), mbps })
    }

    /// Rooms that no cable reaches.
    fn rooms_without_coax(&mut self) {
        if self.dice.chance(0.15) {
            let wish = self.dice.pick(&[100.0, 400.0, 900.0]);
            self.build(|house| house.wish("Attic", wish));
            if self.dice.chance(0.3) && !self.outlets.is_empty() {
                let outlets = self.outlets.clone();
                let near = self.dice.below(outlets.len());
                self.build(|mut house| {
                    let outlet = house.id_of(&outlets[near]);
                    let room = house.survey.rooms.values_mut().find(|room| room.name == "Attic");
                    room.expect("just made").served_from = Some(outlet);
                    house
                });
            }
        }
    }
}

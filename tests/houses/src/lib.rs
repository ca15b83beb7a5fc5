//! Houses written down tersely, part by part, for tests. Every house here is invented.
//!
//! ```
//! use house::record::{CableKind, EntryKind};
//! use houses::House;
//!
//! let house = House::new()
//!     .entry("E1", EntryKind::Cable)
//!     .splitter("S1", 2).made_for(5.0, 1675.0).from("E1", 1)
//!     .outlet("O1", "Office").from("S1", 1).over(CableKind::Six, 12.0).adapter("2.5")
//!     .survey();
//! ```
//! A verb that speaks of one part (`from`, `cap`, `plugged` ...) speaks of the part named last; [`House::at`] names
//! one again.
#![expect(
    clippy::expect_used,
    clippy::panic,
    clippy::missing_panics_doc,
    clippy::return_self_not_must_use,
    reason = "a house of the tests that does not come about fails the test"
)]

pub mod as_sheet;
pub mod change_cases;
pub mod drawn;
pub mod finding_cases;
mod large;
mod old;
pub mod random;
pub mod refusal_cases;
pub mod told_again;
mod unread;

pub use large::large;
pub use old::old;
pub use unread::unread;

use std::sync::Arc;

use coax::model::Measured;
use coax::{Megahertz, ScatterMatrix};
use facts::fact::SubjectId;
use house::rating::{Band, PartRating};
use house::record::{
    Adapter, Asked, Before, Building, CableKind, ChangeKind, Connector, EntryKind, EntryState, Feed,
    FeedFrom, HowMeasured, Internet, LengthKnown, Named, Outcome, OutcomeKind, Ownership, Part, PartKind,
    Plugged, PortEnd, Reading, ReadingKind, Reply, Room, Run, RunLength, Service, ServiceKind, Survey, Wish,
    Without, Work,
};
use uuid::Uuid;

/// A house being written down.
#[derive(Clone)]
pub struct House {
    survey: Survey,
    next: u128,
    current: SubjectId,
}

fn id(number: u128) -> SubjectId {
    SubjectId::from_uuid(Uuid::from_u128(number))
}

impl Default for House {
    fn default() -> Self {
        Self::new()
    }
}

impl House {
    /// An empty house.
    pub fn new() -> Self {
        Self { survey: Survey::new(id(1)), next: 2, current: id(1) }
    }

    /// The survey of this house, wired.
    pub fn survey(mut self) -> Survey {
        self.survey.rewire();
        self.survey
    }

    /// Somebody looked, and could not answer a question about the part with this tag.
    pub fn unsure(mut self, tag: &str, question: Asked) -> Self {
        let id = self.id_of(tag);
        self.survey.asked.insert((id, question), Reply::Unsure.name().into());
        self
    }

    /// The id of the part with this tag.
    pub fn id_of(&self, tag: &str) -> SubjectId {
        part_id(&self.survey, tag)
    }

    fn fresh(&mut self) -> SubjectId {
        self.next += 1;
        id(self.next)
    }

    /// A part of any kind.
    pub fn part(mut self, tag: &str, kind: PartKind) -> Self {
        let id = self.fresh();
        let mut part = Part::new(id, kind);
        part.tag = Some(tag.into());
        self.survey.parts.insert(id, part);
        self.current = id;
        self
    }

    /// Names a part again, to say more of it.
    pub fn at(mut self, tag: &str) -> Self {
        self.current = self.id_of(tag);
        self
    }

    /// Says anything of the part named last.
    pub fn with(mut self, say: impl FnOnce(&mut Part)) -> Self {
        say(self.survey.parts.get_mut(&self.current).expect("a part was named"));
        self
    }

    /// Takes a part away; what hung on it hangs on what fed it.
    pub fn without(mut self, tag: &str) -> Self {
        let gone = self.id_of(tag);
        let part = self.survey.parts.shift_remove(&gone).expect("the part is there");
        for other in self.survey.parts.values_mut() {
            if matches!(&other.feed, Some(Feed::From(feed)) if feed.part == gone) {
                other.feed.clone_from(&part.feed);
            }
        }
        self
    }

    /// An entry, connected.
    pub fn entry(self, tag: &str, kind: EntryKind) -> Self {
        self.part(tag, PartKind::Entry).with(|part| {
            part.entry_kind = kind;
            part.entry_state = EntryState::Connected;
        })
    }

    /// An entry filter as sold: passes 5 to 1002 MHz, stops 1125 to 1675 MHz by 40 dB (data sheet, 2019, in the
    /// public repository N7Alpha/coaxial-cable-network).
    pub fn filter(self, tag: &str) -> Self {
        self.part(tag, PartKind::EntryFilter).made_for(5.0, 1002.0).with(|part| {
            part.rating.stop_band = Some(Band { low_mhz: 1125.0, high_mhz: 1675.0 });
            part.rating.rejection_db = Some(40.0);
        })
    }

    /// A splitter of which the band is not known.
    pub fn splitter(self, tag: &str, legs: u8) -> Self {
        self.part(tag, PartKind::Splitter).with(|part| part.rating.legs = legs)
    }

    /// An amplifier of which the by-pass is not known.
    pub fn amplifier(self, tag: &str, outputs: u8) -> Self {
        self.part(tag, PartKind::Amplifier).with(|part| part.rating.legs = outputs)
    }

    /// An outlet in a room, which is made if it is new.
    pub fn outlet(mut self, tag: &str, room: &str) -> Self {
        let room = self.room(room);
        self.part(tag, PartKind::Outlet).with(|part| part.room = Some(room))
    }

    fn room(&mut self, name: &str) -> SubjectId {
        if let Some(room) = self.survey.rooms.values().find(|room| room.name == name) {
            return room.id;
        }
        let id = self.fresh();
        self.survey.rooms.insert(id, Room { id, name: name.into(), wish: None, served_from: None });
        id
    }

    /// What is printed on the part, and what the label reader makes of it.
    pub fn label(self, text: &str) -> Self {
        self.with(|part| {
            part.label = Some(text.into());
            if let Some(reading) = part.read_print() {
                part.rating = part.rating.clone().or(PartRating::of_reading(&reading));
            }
        })
    }

    /// The band on the label.
    pub fn made_for(self, low_mhz: f64, high_mhz: f64) -> Self {
        self.with(|part| part.rating.band = Some(Band { low_mhz, high_mhz }))
    }

    /// What feeds the part: a port of another part, over a run of which nothing is said yet.
    pub fn from(self, tag: &str, port: u8) -> Self {
        let feeder = self.id_of(tag);
        self.with(|part| part.feed = Some(Feed::From(FeedFrom { part: feeder, port, run: None })))
    }

    /// Somebody saw that nothing feeds the part.
    pub fn fed_by_nothing(self) -> Self {
        self.with(|part| part.feed = Some(Feed::Nothing))
    }

    /// The run that feeds the part: measured, with good connectors.
    pub fn over(self, cable: CableKind, metres: f64) -> Self {
        self.over_guessed(cable, metres, LengthKnown::Measured)
    }

    /// The run that feeds the part, with good connectors, its length known in some way.
    pub fn over_guessed(self, cable: CableKind, metres: f64, known: LengthKnown) -> Self {
        self.run(|run| {
            run.cable = cable;
            run.length = Some(RunLength::stated(metres, known));
            run.connector_near = Connector::Compression;
            run.connector_far = Connector::Compression;
        })
    }

    /// Says anything of the run that feeds the part.
    pub fn run(mut self, say: impl FnOnce(&mut Run)) -> Self {
        let fresh = self.fresh();
        let part = self.survey.parts.get_mut(&self.current).expect("a part was named");
        let Some(Feed::From(feed)) = &mut part.feed else { panic!("the part has no feed yet") };
        let id = *feed.run.get_or_insert(fresh);
        say(self.survey.runs.entry(id).or_insert_with(|| Run::new(id)));
        self
    }

    /// A free port is capped.
    pub fn cap(self, port: u8) -> Self {
        self.end(port, PortEnd::Capped)
    }

    /// A free port is open.
    pub fn open(self, port: u8) -> Self {
        self.end(port, PortEnd::Open)
    }

    /// What is on a free port.
    pub fn end(self, port: u8, end: PortEnd) -> Self {
        self.with(|part| {
            part.ends.insert(port, end);
        })
    }

    /// What is plugged in at the outlet.
    pub fn plugged(self, devices: &[Plugged]) -> Self {
        self.with(|part| part.plugged = Some(devices.to_vec()))
    }

    /// An adapter with a 2.5 Gb/s port.
    pub fn adapter(self, version: &str) -> Self {
        self.with(|part| {
            part.adapter =
                Some(Adapter { version: Some(version.into()), ethernet_mbps: Some(2500), bridge: false });
        })
    }

    /// The adapter's Ethernet port, Mb/s.
    pub fn port(self, mbps: u32) -> Self {
        self.with(|part| part.adapter.as_mut().expect("an adapter").ethernet_mbps = Some(mbps))
    }

    /// The adapter is the bridge to the router.
    pub fn bridge(self) -> Self {
        self.with(|part| part.adapter.as_mut().expect("an adapter").bridge = true)
    }

    /// What a room wishes, both ways, Mb/s.
    pub fn wish(mut self, room: &str, mbps: f64) -> Self {
        let room = self.room(room);
        self.survey.rooms.get_mut(&room).expect("a room").wish =
            Some(Wish { down_mbps: mbps, up_mbps: mbps });
        self
    }

    /// A service and the highest frequency it uses.
    pub fn service(mut self, kind: ServiceKind, top_mhz: Option<f64>) -> Self {
        let id = self.fresh();
        self.survey.services.insert(id, Service { top_mhz, ..Service::new(id, kind) });
        self
    }

    /// A service, and the entry by which it comes in.
    pub fn service_by(self, kind: ServiceKind, entry: &str) -> Self {
        let entry = self.id_of(entry);
        self.about_service(kind, |service| service.entry = Some(entry))
    }

    /// Says anything of a service, which is made if it is new.
    pub fn about_service(mut self, kind: ServiceKind, say: impl FnOnce(&mut Service)) -> Self {
        if !self.survey.has_service(kind) {
            self = self.service(kind, None);
        }
        say(self.survey.services.values_mut().find(|service| service.kind == kind).expect("just made"));
        self
    }

    /// A reading at the part named last.
    pub fn reads(self, measured: ReadingKind) -> Self {
        self.reads_how(measured, None)
    }

    /// A reading at the part named last, and how it was taken.
    pub fn reads_how(mut self, measured: ReadingKind, how: Option<HowMeasured>) -> Self {
        let id = self.fresh();
        let about = Some(self.current);
        self.survey.readings.insert(id, Reading { id, about, port: None, measured, how });
        self
    }

    /// Somebody did what a step of the work list says, and the house is as it was.
    pub fn tried(self, change: ChangeKind) -> Self {
        self.worked(change, OutcomeKind::Done)
    }

    /// Somebody could not do it.
    pub fn could_not(self, change: ChangeKind) -> Self {
        self.worked(change, OutcomeKind::CouldNot)
    }

    fn worked(mut self, change: ChangeKind, end: OutcomeKind) -> Self {
        let id = self.fresh();
        let outcome = Outcome { end, others_fine: None };
        self.survey.works.insert(id, Work { id, change, outcome, before: Before::default() });
        self
    }

    /// The same, after everything that was measured so far.
    pub fn tried_since(self, change: ChangeKind) -> Self {
        let mut house = self.tried(change);
        let Survey { readings, works, done_since, .. } = &mut house.survey;
        let last = works.keys().last().copied();
        for reading in readings.keys() {
            done_since.entry(*reading).or_default().extend(last);
        }
        house
    }

    /// A level measured at the part named last.
    pub fn level(self, mhz: f64, dbmv: f64) -> Self {
        self.reads(ReadingKind::Level { mhz, dbmv })
    }

    /// What an instrument found of the part named last, from one frequency to another: half the amplitude, 6 dB, from the
    /// street side to each output, and nothing else.
    pub fn measured_from(self, low_mhz: f64, high_mhz: f64) -> Self {
        self.with(|part| {
            let ports = usize::from(part.outputs()) + 1;
            let mut matrix = ScatterMatrix::new(ports);
            (1..ports).for_each(|port| matrix.set_both(0, port, 0.5.into()));
            let ends = [Megahertz(low_mhz), Megahertz(high_mhz)];
            let measured = Measured::new(&ends, &[matrix.clone(), matrix]).expect("a sound file");
            part.measured = Some(Arc::new(measured));
        })
    }

    /// Work of a kind is not wanted here.
    pub fn not_wanted(mut self, kind: Without) -> Self {
        let mut without = self.survey.without();
        without.insert(kind);
        self.survey = self.survey.where_not_wanted(&without);
        self
    }

    /// The wiring belongs to somebody else.
    pub fn rented(mut self) -> Self {
        self.survey.building = Some(Building { ownership: Ownership::Rented, shared: false });
        self
    }

    /// The internet plan, Mb/s towards the house.
    pub fn plan(mut self, down_mbps: f64) -> Self {
        self.survey.internet = Some(Internet { down_mbps, up_mbps: down_mbps / 10.0 });
        self
    }

    /// Other homes share the coax.
    pub fn shared(mut self) -> Self {
        self.survey.building = Some(Building { ownership: Ownership::Own, shared: true });
        self
    }
}

/// The id of the part with this tag.
pub fn part_id(survey: &Survey, tag: &str) -> SubjectId {
    let part = survey.parts.values().find(|part| part.tag.as_deref() == Some(tag));
    part.unwrap_or_else(|| panic!("no part is tagged {tag}")).id
}

/// A house in good order: entry, ground block, filter, a two-way splitter made for the band, a bridge in the study and
/// an adapter in the office, 10 m of 6-series cable to each.
pub fn good_house() -> House {
    House::new()
        .entry("E1", EntryKind::Cable)
        .part("G1", PartKind::GroundBlock)
        .from("E1", 1)
        .filter("F1")
        .from("G1", 1)
        .splitter("S1", 2)
        .made_for(5.0, 1675.0)
        .from("F1", 1)
        .outlet("O1", "Study")
        .from("S1", 1)
        .over(CableKind::Six, 10.0)
        .plugged(&[Plugged::Modem])
        .adapter("2.5")
        .bridge()
        .outlet("O2", "Office")
        .from("S1", 2)
        .over(CableKind::Six, 10.0)
        .plugged(&[])
        .adapter("2.5")
}

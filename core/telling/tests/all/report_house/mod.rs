//! An invented house of twelve parts, and houses drawn by chance, for the tests of the report and its figures.
#![allow(dead_code, reason = "each test file uses what it needs of this house")]
#![expect(clippy::unwrap_used, reason = "a house of the tests that does not come about fails the test")]

use advice::forecast::{Forecast, Options, forecast};
use facts::fact::SubjectId;
use house::rating::Band;
use house::record::{
    Adapter, CableKind, Connector, EntryKind, EntryState, Feed, FeedFrom, Internet, LengthKnown, Note, Part,
    PartKind, Plugged, PortEnd, Reading, ReadingKind, Room, Run, RunLength, Service, ServiceKind, Survey,
    Wish,
};
use telling::words::{Figures, Language};
use uuid::Uuid;

/// The identity of the thing with this number.
pub fn id(number: u128) -> SubjectId {
    SubjectId::from_uuid(Uuid::from_u128(number))
}

/// English with metres first.
pub fn english() -> Language {
    Language::english(Figures::default())
}

/// The forecast of a house, quick enough for tests.
pub fn forecast_of(survey: &Survey) -> Forecast {
    forecast(survey, &Options { draws: 24, seed: 7, points: 111, settles: false }).unwrap()
}

/// A builder of houses in memory.
pub struct House {
    pub survey: Survey,
}

impl House {
    pub fn new() -> Self {
        Self { survey: Survey::new(id(1)) }
    }

    pub fn part(&mut self, number: u128, kind: PartKind, tag: &str) -> &mut Part {
        let mut part = Part::new(id(number), kind);
        part.tag = (!tag.is_empty()).then(|| tag.to_owned());
        self.survey.parts.entry(id(number)).or_insert(part)
    }

    pub fn room(&mut self, number: u128, name: &str, wish: Option<(f64, f64)>) {
        let wish = wish.map(|(down_mbps, up_mbps)| Wish { down_mbps, up_mbps });
        self.survey
            .rooms
            .insert(id(number), Room { id: id(number), name: name.to_owned(), wish, served_from: None });
    }

    /// Feeds `to` from a port of `from` over a run numbered 1000 more than the part that it feeds.
    pub fn feed(
        &mut self,
        from: u128,
        port: u8,
        to: u128,
        cable: CableKind,
        metres: f64,
        known: LengthKnown,
    ) -> &mut Run {
        let run_id = id(to + 1000);
        let part = self.survey.parts.get_mut(&id(to)).unwrap();
        part.feed = Some(Feed::From(FeedFrom { part: id(from), port, run: Some(run_id) }));
        let mut run = Run::new(run_id);
        run.cable = cable;
        run.length = Some(RunLength::stated(metres, known));
        run.connector_near = Connector::Compression;
        run.connector_far = Connector::Compression;
        self.survey.runs.entry(run_id).or_insert(run)
    }

    pub fn done(mut self) -> Survey {
        self.survey.rewire();
        self.survey
    }
}

fn adapter(bridge: bool) -> Adapter {
    Adapter { version: Some("2.5".into()), ethernet_mbps: Some(2500), bridge }
}

/// The house: no entry filter, a splitter for 5 to 1000 MHz, a free leg left open, an old run, a loose splitter.
pub fn house() -> Survey {
    let mut house = House::new();
    house.survey.name = Some("Birch Lane (invented)".into());
    house.survey.place = Some("an invented house for the tests".into());
    house.survey.internet = Some(Internet { down_mbps: 1000.0, up_mbps: 50.0 });
    house.room(10, "Office", None);
    house.room(11, "Study", Some((800.0, 100.0)));
    house.room(12, "Bedroom", Some((500.0, 50.0)));
    house.room(13, "Den", Some((1500.0, 200.0)));
    house.room(14, "Attic", Some((300.0, 30.0)));

    let entry = house.part(20, PartKind::Entry, "E1");
    (entry.entry_kind, entry.entry_state) = (EntryKind::Cable, EntryState::Connected);
    entry.place = Some("north wall, beside the meter".into());
    house.part(21, PartKind::GroundBlock, "G1");
    let first = house.part(22, PartKind::Splitter, "S1");
    first.label = Some("3-WAY SPLITTER 5-1000MHz -5.5dB".into());
    first.place = Some("cellar ceiling".into());
    (first.rating.legs, first.rating.leg_losses_db) = (3, vec![5.5; 3]);
    first.rating.band = Some(Band { low_mhz: 5.0, high_mhz: 1000.0 });
    let second = house.part(23, PartKind::Splitter, "S2");
    second.label = Some("4-WAY 5-2300 MHz, 7.5 dB".into());
    (second.rating.legs, second.rating.leg_losses_db) = (4, vec![7.5; 4]);
    second.rating.band = Some(Band { low_mhz: 5.0, high_mhz: 2300.0 });
    second.ends.insert(3, PortEnd::Open);
    second.ends.insert(4, PortEnd::LooseEnd);
    for (number, tag, room) in [(30, "O1", 10), (31, "O2", 11), (32, "O3", 12), (33, "O4", 13)] {
        let outlet = house.part(number, PartKind::Outlet, tag);
        outlet.room = Some(id(room));
        outlet.adapter = Some(adapter(number == 30));
    }
    house.part(30, PartKind::Outlet, "").plugged = Some(vec![Plugged::Modem]);
    house.part(33, PartKind::Outlet, "").plugged = Some(vec![Plugged::Tv, Plugged::TvBox]);
    house.part(34, PartKind::Outlet, "O5").room = Some(id(14));
    house.part(24, PartKind::Barrel, "B1");
    house.part(25, PartKind::Splitter, "S3").rating.legs = 2;
    house.part(35, PartKind::Outlet, "O6");

    house.feed(20, 1, 21, CableKind::Six, 2.0, LengthKnown::Measured);
    house.feed(21, 1, 22, CableKind::Six, 6.0, LengthKnown::Paced);
    house.feed(22, 1, 30, CableKind::Six, 9.0, LengthKnown::Measured);
    house.feed(22, 2, 23, CableKind::Six, 12.0, LengthKnown::Guessed);
    house.feed(22, 3, 33, CableKind::Eleven, 20.0, LengthKnown::Measured);
    house.feed(23, 1, 24, CableKind::FiftyNine, 14.0, LengthKnown::Guessed).connector_far =
        Connector::TwistOn;
    house.feed(24, 1, 31, CableKind::FiftyNine, 5.0, LengthKnown::Guessed);
    house.feed(23, 2, 32, CableKind::Unknown, 11.0, LengthKnown::Paced);
    // The old splitter in the attic is loose: nobody found its feed. What hangs on it is known.
    house.feed(25, 1, 34, CableKind::Six, 4.0, LengthKnown::Measured);
    let mut note = Note {
        id: id(90),
        about: Some(id(23)),
        text: "Behind the shelf; <not> easy to reach & dusty".into(),
    };
    house.survey.notes.insert(note.id, note.clone());
    note = Note { id: id(91), about: None, text: "Invented for the tests.".into() };
    house.survey.notes.insert(note.id, note);
    let level = ReadingKind::Level { mhz: 603.0, dbmv: -2.0 };
    house
        .survey
        .readings
        .insert(id(92), Reading { id: id(92), about: Some(id(33)), port: None, measured: level, how: None });
    for (number, kind) in [(80, ServiceKind::CableInternet), (81, ServiceKind::CableTv)] {
        house.survey.services.insert(id(number), Service::new(id(number), kind));
    }
    house.done()
}

/// One number a part decides its kind, its feeder and how it is known: any list of numbers is a house.
pub fn house_by_chance(numbers: &[u64], text: &str) -> Survey {
    let kinds = [
        PartKind::Entry,
        PartKind::GroundBlock,
        PartKind::EntryFilter,
        PartKind::Splitter,
        PartKind::Splitter,
        PartKind::Tap,
        PartKind::Amplifier,
        PartKind::Barrel,
        PartKind::Outlet,
        PartKind::Outlet,
        PartKind::Outlet,
        PartKind::Terminator,
        PartKind::SatelliteCombiner,
        PartKind::Unknown,
    ];
    let cables =
        [CableKind::Six, CableKind::FiftyNine, CableKind::Seven, CableKind::Eleven, CableKind::Unknown];
    let known = [LengthKnown::Measured, LengthKnown::Paced, LengthKnown::Guessed];
    let ends = [PortEnd::Capped, PortEnd::Open, PortEnd::LooseEnd];
    let pick = |number: u64, shift: u32, count: usize| usize::try_from(number >> shift).unwrap() % count;
    let mut house = House::new();
    house.room(9, text, Some((500.0, 50.0)));
    for (place, number) in numbers.iter().enumerate() {
        let this = 100 + place as u128;
        let tag = if number & 1 == 0 { String::new() } else { format!("T{place}{text}") };
        let part = house.part(this, kinds[pick(*number, 1, kinds.len())], &tag);
        part.rating.legs = u8::try_from(pick(*number, 5, 9)).unwrap();
        part.rating.passes_on = number & 64 != 0;
        part.room = (number & 128 != 0).then(|| id(9));
        if number & 256 != 0 {
            part.adapter = Some(adapter(number & 512 != 0));
        }
        for port in 1..=8 {
            match pick(*number, 10 + port, 5) {
                end @ 0..=2 => part.ends.insert(u8::try_from(port).unwrap(), ends[end]),
                _ => None,
            };
        }
        match pick(*number, 20, 8) {
            0 => {}
            1 => part.feed = Some(Feed::Nothing),
            // Sometimes a part that comes later, or itself: then it may be loose.
            _ => {
                let from = 100 + pick(*number, 23, (place + 2).max(1)) as u128;
                let port = 1 + u8::try_from(pick(*number, 30, 4)).unwrap();
                let metres = 1.0 + pick(*number, 32, 40) as f64;
                let (cable, known) = (cables[pick(*number, 36, 5)], known[pick(*number, 40, 3)]);
                let run = house.feed(from, port, this, cable, metres, known);
                run.tag = (number & (1 << 44) != 0).then(|| format!("R{place}{text}"));
                if number & (1 << 45) != 0 {
                    run.length = None;
                }
            }
        }
    }
    house.done()
}

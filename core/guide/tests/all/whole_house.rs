//! A home folder with one of everything: a house that has every kind of thing, a second survey, one that was set aside
//! and one that is damaged. Every house here is invented.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;

use advice::forecast::Options as Draws;
use advice::worklist::Options;
use facts::act::name_author;
use facts::fact::{ActId, AuthorId, Edit, FactClock, SubjectId, value_of};
use facts::home::Home;
use facts::store::Store;
use guide::Guide;
use house::document::Document;
use house::record::edits_between;
use house::record::{
    Asked, CableKind, Connector, EntryKind, EntryState, HowMeasured, Internet, OtherNetwork, PartKind,
    PhotoRole, Plugged, ReadingKind, Reply, ServiceKind, Survey, TestReach, field,
};
use serde_json::{Value, json};
use telling::words::{Figures, Language};
use uuid::Uuid;

use houses::House;

/// The survey that has everything.
pub const FULL: &str = "Mill House";

/// The same author each run: names and draws do not hang on it, the order of what was said may.
fn author(number: u128) -> AuthorId {
    AuthorId::from_uuid(Uuid::from_u128(2_000_000 + number))
}

fn id(number: u128) -> SubjectId {
    SubjectId::from_uuid(Uuid::from_u128(1_000_000 + number))
}

/// Whose device it is.
pub fn ann() -> AuthorId {
    author(0xa)
}

/// Few draws: what is asked is how a screen reads, not its last megabit.
pub fn quick() -> Options {
    let draws = Draws { draws: 8, seed: 1, points: 89, settles: false };
    Options { screening: draws, stating: draws, most_steps: 12, ..Options::default() }
}

/// The guide over a home folder.
pub fn guide_at(home: &Path) -> Guide {
    guide_in(home, guide::english(Figures::default()))
}

/// The same in another language.
pub fn guide_in(home: &Path, language: Language) -> Guide {
    let mut guide = Guide::at(home, ann(), language).unwrap();
    guide.work_out_with(quick());
    guide.wait_for_long_work(Duration::MAX);
    guide
}

/// What a house says, as edits; the survey's own answers stand under `survey`.
pub fn edits_of(house: &Survey, survey: SubjectId, store: &Store) -> Vec<Edit> {
    let mut edits = edits_between(&Survey::new(house.id), house, store.ledger()).unwrap();
    let mut says = |subject, name: &str, value: Value| {
        if !value.is_null() {
            edits.push(Edit::new(subject, name, value));
        }
    };
    says(survey, field::IS, "survey".into());
    says(survey, field::INTERNET, value_of(&house.internet).unwrap());
    says(survey, field::BUILDING, value_of(&house.building).unwrap());
    for service in house.services.values() {
        says(service.id, field::IS, "service".into());
        says(service.id, field::KIND, value_of(&service.kind).unwrap());
        says(service.id, field::TOP, value_of(&service.top_mhz).unwrap());
        says(service.id, field::ENTRY, value_of(&service.entry).unwrap());
        says(service.id, field::SIGNAL, value_of(&service.signal).unwrap());
        says(service.id, field::MODEM, value_of(&service.modem).unwrap());
        says(service.id, field::DROPS_OUT, value_of(&service.drops_out).unwrap());
        says(service.id, field::SINGLE_CABLE, value_of(&service.single_cable).unwrap());
        says(service.id, field::OTHER_NETWORK, value_of(&service.network).unwrap());
        says(service.id, field::POWER, value_of(&service.power).unwrap());
    }
    for reading in house.readings.values() {
        says(reading.id, field::IS, "reading".into());
        says(reading.id, field::ABOUT, value_of(&reading.about).unwrap());
        says(reading.id, field::PORT, value_of(&reading.port).unwrap());
        says(reading.id, field::MEASURED, value_of(&reading.measured).unwrap());
        says(reading.id, field::HOW, value_of(&reading.how).unwrap());
    }
    // Work that was done after a reading is written after it.
    for work in house.done_since.values().flatten().filter_map(|work| house.works.get(work)) {
        says(work.id, field::IS, "work".into());
        says(work.id, field::CHANGE, value_of(&work.change).unwrap());
        says(work.id, field::OUTCOME, value_of(&work.outcome).unwrap());
    }
    edits
}

/// No entry filter, a splitter not made for the band, an amplifier, an old cable with a bad plug, a splitter that hangs
/// nowhere yet and whose print is doubtful, an outlet in no room, and a provider's own network.
fn house() -> House {
    House::new()
        .entry("E1", EntryKind::Cable)
        .part("G1", PartKind::GroundBlock)
        .from("E1", 1)
        .splitter("S1", 4)
        .made_for(5.0, 1000.0)
        .from("G1", 1)
        .over(CableKind::Six, 3.0)
        .open(4)
        .outlet("O1", "Study")
        .from("S1", 1)
        .over(CableKind::Six, 20.0)
        .plugged(&[Plugged::Modem])
        .adapter("2.5")
        .bridge()
        .outlet("O2", "Office")
        .from("S1", 2)
        .over(CableKind::FiftyNine, 30.0)
        .run(|run| run.connector_far = Connector::TwistOn)
        .plugged(&[Plugged::Tv])
        .adapter("2.5")
        .level(600.0, -12.0)
        .reads(ReadingKind::ErrorRatio { mhz: 600.0, db: 31.0 })
        .reads_how(
            ReadingKind::Throughput { down_mbps: 905.0, up_mbps: 870.0 },
            Some(HowMeasured::new(TestReach::House, false)),
        )
        .amplifier("A1", 2)
        .from("S1", 3)
        .over(CableKind::Six, 8.0)
        .outlet("O3", "Bedroom")
        .from("A1", 1)
        .plugged(&[Plugged::TvBox])
        .splitter("S2", 2)
        .label("2-WAY 5-2300 3.5 dB 7 dB")
        .entry("E2", EntryKind::Antenna)
        .with(|entry| entry.entry_state = EntryState::CutOff)
        .part("O4", PartKind::Outlet)
        .from("S2", 1)
        .wish("Office", 900.0)
        .wish("Attic", 300.0)
        .service(ServiceKind::CableTv, Some(862.0))
        .service(ServiceKind::CableInternet, None)
        .about_service(ServiceKind::ProviderNetwork, |service| {
            service.network = Some(OtherNetwork { version: Some("2.0".into()), bands: Vec::new(), nodes: 3 });
        })
        .plan(250.0)
}

/// A grey picture; another number is another picture.
fn picture(number: u8) -> Vec<u8> {
    let mut bytes = std::io::Cursor::new(Vec::new());
    let drawn = image::RgbImage::from_fn(40, 30, |x, y| {
        let share = u8::try_from((x * 3 + y * 2) % 200).unwrap_or_default();
        image::Rgb([share.wrapping_add(number), share, number])
    });
    drawn.write_to(&mut bytes, image::ImageFormat::Png).unwrap();
    bytes.into_inner()
}

/// Writes the house that has everything.
fn full(home: &Path) -> PathBuf {
    let folder = home.join(format!("{FULL}.legwork"));
    let mut store = Store::create(&folder, ann()).unwrap();
    let survey = store.survey_id().subject();
    let bo = author(0xb);
    store.write(&[name_author(ann(), "Ann"), name_author(bo, "Bo")]).unwrap();
    let house = house();
    let [splitter, amplifier, outlet, loose] = ["S1", "A1", "O2", "S2"].map(|tag| house.id_of(tag));
    let edits = edits_of(&house.survey(), survey, &store);
    store.write(&edits).unwrap();
    store
        .write(&[
            Edit::new(survey, field::NAME, FULL),
            Edit::new(survey, field::PLACE, "Nowhere Lane 1"),
            Asked::Cables.set(survey, Reply::Differ),
            Asked::Connectors.set(survey, Reply::Some),
            Asked::Uses.set(survey, Reply::Yes),
            Asked::Powered.set(amplifier, Reply::Unsure),
        ])
        .unwrap();
    let rating = store.ledger().shown(loose, field::RATING).map(|fact| fact.value().clone());
    if let Some(Value::Object(mut rating)) = rating {
        rating.insert("doubtful".into(), true.into());
        store.write(&[Edit::new(loose, field::RATING, Value::Object(rating))]).unwrap();
    }
    let note = id(1);
    store
        .write(&[
            Edit::new(note, field::IS, "note"),
            Edit::new(note, field::ABOUT, json!(splitter)),
            Edit::new(note, field::TEXT, "The hatch sticks; pull from below."),
        ])
        .unwrap();
    // Ann and Bo wrote different plans, neither knowing the other's.
    let plan = |down_mbps| {
        let plan = Internet { down_mbps, up_mbps: 50.0 };
        [Edit::new(survey, field::INTERNET, value_of(&plan).unwrap())]
    };
    // After all that was written so far and before what Ann writes next, however quickly that went: a clock runs ahead
    // of the wall by a millisecond a fact.
    let mut bos_clock = FactClock::system();
    for fact in store.ledger().facts() {
        bos_clock.raise(fact.id());
    }
    let theirs = store.ledger().plan(ActId::random(), bo, &mut bos_clock, &plan(1000.0)).unwrap();
    std::thread::sleep(Duration::from_millis(store.ledger().len() as u64 + 50));
    store.write(&plan(300.0)).unwrap();
    store.write_facts(theirs).unwrap();
    let gone = id(2);
    store
        .write(&[
            Edit::new(gone, field::IS, "part"),
            Edit::new(gone, field::KIND, "splitter"),
            Edit::new(gone, field::TAG, "S9"),
        ])
        .unwrap();
    let removal = store.ledger().remove(gone);
    store.write(&[removal]).unwrap();
    for (number, of, role) in [
        (1, Some(splitter), Some(PhotoRole::Label)),
        (2, Some(outlet), Some(PhotoRole::Place)),
        (3, None, None),
        (4, None, None),
    ] {
        store.add_photo(&picture(number), of, role).unwrap();
    }
    folder
}

/// A survey of a name and nothing else.
fn bare(home: &Path, name: &str) -> PathBuf {
    let folder = home.join(format!("{name}.legwork"));
    let mut store = Store::create(&folder, ann()).unwrap();
    let survey = store.survey_id().subject();
    store.write(&[Edit::new(survey, field::IS, "survey"), Edit::new(survey, field::NAME, name)]).unwrap();
    folder
}

/// Fills a home folder; returns the folder of the survey that has everything.
pub fn fill(home: &Path) -> PathBuf {
    // The list has the newest first.
    bare(home, "Lock House");
    let full = full(home);
    let aside = bare(home, "Barn");
    Home::at(home).unwrap().set_aside(&aside).unwrap();
    let damaged = bare(home, "Weir House");
    let file = damaged.join("survey.db");
    let mut bytes = fs::read(&file).unwrap();
    // The first page is left: it still says that this is a database (SQLite's file format, 1.3).
    let page = usize::from(u16::from_be_bytes([bytes[16], bytes[17]]));
    bytes[page..].fill(0xff);
    fs::write(&file, bytes).unwrap();
    fs::write(damaged.join("survey.db-wal"), "x").unwrap();
    full
}

//! The law of every field: any value of its type becomes an edit, a fact, and that value again; the difference between
//! two records makes one into the other.

use std::borrow::Borrow;

use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use uuid::Uuid;

use super::member::Member;
use super::possible::{MOST_OUTPUTS, can_be};
use super::table::{every_field, fields_apart};
use super::{
    Adapter, Asked, Building, CableKind, Connector, Differs, EntryKind, EntryState, Feed, FeedFrom,
    HowMeasured, Internet, Is, LengthKnown, ModemBands, ModemGeneration, Named, NetworkPlan, Note,
    OtherNetwork, Outcome, OutcomeKind, Ownership, Part, PartKind, Photo, PhotoRole, Plugged, PortEnd,
    PowerFeed, Reading, ReadingKind, Reply, Room, Run, RunLength, Service, ServiceKind, Sharing, SingleCable,
    Survey, TestReach, TvSignal, Wish, Work, field, fold,
};
use super::{BehindAdapter, ChangeKind, LinkState, NetworkPiece, OutletCheck};
use crate::rating::{Band, PartRating};
use facts::fact::{ActId, AuthorId, Edit, FactClock, Ledger, PhotoImage, SubjectId, SurveyId};
use facts::photo::TakenAt;

/// The subject of every record here; the survey itself is another.
const HERE: SubjectId = SubjectId::from_uuid(Uuid::from_u128(7));
const SURVEY: SurveyId = SurveyId::from_uuid(Uuid::from_u128(1));

/// A ledger in which these edits were written one act after the other.
fn written(acts: &[Vec<Edit>]) -> Ledger {
    let mut ledger = Ledger::new();
    let mut clock = FactClock::with_wall(|| 5);
    for edits in acts {
        let facts = ledger.plan(ActId::random(), AuthorId::from_uuid(Uuid::from_u128(3)), &mut clock, edits);
        for fact in facts.expect("edits that fit") {
            ledger.insert(fact).expect("a planned fact");
        }
    }
    ledger
}

fn shown(acts: &[Vec<Edit>]) -> Survey {
    fold(&written(acts), SURVEY).expect("a small survey")
}

/// A record that a law can be tried on.
trait Tried: Differs + Clone + PartialEq {
    /// The edits that make the least record of its kind.
    fn least() -> Vec<Edit>;
    /// The record.
    fn of(survey: &Survey) -> Option<&Self>;
}

macro_rules! tried {
    ($($Record:ident $records:ident [$($edit:expr),*];)+) => {
        $(impl Tried for $Record {
            fn least() -> Vec<Edit> {
                vec![Is::$Record.begin(HERE) $(, $edit)*]
            }

            fn of(survey: &Survey) -> Option<&Self> {
                survey.$records.get(&HERE)
            }
        })+
    };
}

tried! {
    Part parts [field::part::KIND.set(HERE, &PartKind::Entry)];
    Run runs [];
    Room rooms [];
    Service services [field::service::KIND.set(HERE, &ServiceKind::CableTv)];
    Reading readings [field::reading::MEASURED.set(HERE, &ReadingKind::RoundTrip { ms: 4.0 })];
    Note notes [field::note::TEXT.set(HERE, "as found")];
    Photo photos [field::photo::IMAGE.set(HERE, &PhotoImage {
        sha256: "0".repeat(64), ext: "jpg".into(), bytes: 3, width: 4, height: 3,
    })];
    Work works [
        field::work::CHANGE.set(HERE, &ChangeKind::ReplaceRun { to: HERE }),
        field::work::OUTCOME.set(HERE, &Outcome { end: OutcomeKind::Done, others_fine: None })
    ];
}

impl Tried for Survey {
    fn least() -> Vec<Edit> {
        vec![Is::Survey.begin(SURVEY.subject())]
    }

    fn of(survey: &Survey) -> Option<&Self> {
        Some(survey)
    }
}

/// Values of a type, every kind of them.
pub(super) trait Sample: Sized {
    fn any() -> BoxedStrategy<Self>;
}

macro_rules! sample_lists {
    ($($List:ty),+) => {
        $(impl Sample for $List {
            fn any() -> BoxedStrategy<Self> {
                select(Self::ALL).boxed()
            }
        })+
    };
}

sample_lists!(
    PartKind,
    CableKind,
    Connector,
    EntryKind,
    EntryState,
    LengthKnown,
    ModemGeneration,
    OutcomeKind,
    Ownership,
    PhotoRole,
    LinkState,
    NetworkPiece,
    OutletCheck,
    Plugged,
    PortEnd,
    Reply,
    ServiceKind,
    Sharing,
    SingleCable,
    TestReach,
    TvSignal
);

/// What `$value` is made of by `$make` from samples.
macro_rules! sample {
    ($($Value:ty = ($($part:ident: $strategy:expr),+) $make:expr;)+) => {
        $(impl Sample for $Value {
            fn any() -> BoxedStrategy<Self> {
                ($($strategy,)+).prop_map(|($($part,)+)| $make).boxed()
            }
        })+
    };
}

/// Mostly a figure that can be, whatever it is of; seldom any at all.
fn number() -> impl Strategy<Value = f64> + Clone {
    prop_oneof![
        1 => prop::num::f64::NORMAL | prop::num::f64::SUBNORMAL | prop::num::f64::ZERO,
        10 => 0.0..100.0_f64,
        10 => (0_u16..=100).prop_map(f64::from),
    ]
}

/// Figures, mostly in their order.
fn rising<const N: usize>() -> impl Strategy<Value = [f64; N]> + Clone {
    (vec(number(), N), prop::bool::weighted(0.9)).prop_map(|(mut figures, sorted)| {
        if sorted {
            figures.sort_by(f64::total_cmp);
        }
        figures.try_into().expect("as many")
    })
}

fn band() -> impl Strategy<Value = Band> {
    rising().prop_map(|[low_mhz, high_mhz]| Band { low_mhz, high_mhz })
}

fn text() -> impl Strategy<Value = String> {
    prop_oneof![".{0,40}", "[a-z0-9 .-]{0,20}"]
}

fn maybe<T: std::fmt::Debug + Clone>(values: impl Strategy<Value = T> + 'static) -> BoxedStrategy<Option<T>> {
    option::of(values).boxed()
}

sample! {
    String = (text: text()) text;
    f64 = (number: number()) number;
    u8 = (number: any::<u8>()) number;
    bool = (flag: any::<bool>()) flag;
    SubjectId = (id: any::<u128>()) SubjectId::from_uuid(Uuid::from_u128(id));
    Vec<Plugged> = (devices: vec(Plugged::any(), 0..4)) devices;
    Internet = (down_mbps: number(), up_mbps: number()) Internet { down_mbps, up_mbps };
    Wish = (down_mbps: number(), up_mbps: number()) Wish { down_mbps, up_mbps };
    Building = (ownership: Ownership::any(), shared: any::<bool>()) Building { ownership, shared };
    NetworkPlan = (version: text(), ethernet_mbps: maybe(any::<u32>()), owned: maybe(any::<u32>()))
        NetworkPlan { version, ethernet_mbps, owned };
    Adapter = (version: maybe(text()), ethernet_mbps: maybe(any::<u32>()), bridge: any::<bool>())
        Adapter { version, ethernet_mbps, bridge };
    BehindAdapter = (pieces: vec(NetworkPiece::any(), 0..3), mbps: maybe(any::<u32>()))
        BehindAdapter { pieces, mbps };
    Feed = (from: maybe((SubjectId::any(), any::<u8>(), maybe(SubjectId::any()))))
        from.map_or(Feed::Nothing, |(part, port, run)| Feed::From(FeedFrom { part, port, run }));
    RunLength = (figures: rising(), known: LengthKnown::any()) {
        let [low_metres, metres, high_metres] = figures;
        RunLength { metres, low_metres, high_metres, known }
    };
    ModemBands = (generation: maybe(ModemGeneration::any()), upstream_top_mhz: maybe(number()))
        ModemBands { generation, upstream_top_mhz };
    OtherNetwork = (version: maybe(text()), bands: vec(band(), 0..3), nodes: any::<u32>())
        OtherNetwork { version, bands, nodes };
    PowerFeed = (from: SubjectId::any(), to: SubjectId::any()) PowerFeed { from, to };
    HowMeasured = (reach: TestReach::any(), over_radio: any::<bool>(), socket_mbps: maybe(any::<u32>()))
        HowMeasured { reach, over_radio, socket_mbps };
    Outcome = (end: OutcomeKind::any(), others_fine: maybe(any::<bool>())) Outcome { end, others_fine };
    PhotoImage = (sha256: "[0-9a-f]{64}", ext: select(&["jpg", "png"][..]), bytes: 0..(1_u64 << 53),
        width: any::<u32>(), height: any::<u32>())
        PhotoImage { sha256, ext: ext.into(), bytes, width, height };
    TakenAt = (year: 1..=9999_u16, rest: (1..=12_u8, 1..=28_u8, 0..24_u8, 0..60_u8, 0..60_u8)) {
        let (month, day, hour, minute, second) = rest;
        let text = format!("{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}");
        text.parse().expect("a time")
    };
    PartRating = (
        legs: prop_oneof![9 => 0..=MOST_OUTPUTS, 1 => any::<u8>()], leg_losses_db: vec(number(), 0..4), bands: (maybe(band()), maybe(band())),
        figures: [maybe(number()), maybe(number()), maybe(number()), maybe(number()), maybe(number()),
            maybe(number()), maybe(number())],
        marks: [maybe(any::<bool>()), maybe(any::<bool>())], flags: any::<[bool; 4]>()
    ) {
        let [rejection_db, tap_db, gain_db, return_gain_db, return_high_mhz, isolation_db, return_loss_db] =
            figures;
        let ((band, stop_band), [moca_bypass, power_pass]) = (bands, marks);
        let [modem_port, passes_on, says_moca, doubtful] = flags;
        PartRating {
            legs, leg_losses_db, band, stop_band, rejection_db, tap_db, gain_db, return_gain_db,
            return_high_mhz, moca_bypass, modem_port, isolation_db, return_loss_db, power_pass, passes_on,
            says_moca, doubtful,
        }
    };
    ReadingKind = (what: 0..11_u8, state: LinkState::any(), one: number(), other: number(), count: any::<u32>(), flag: any::<bool>())
        match what {
            0 => ReadingKind::Level { mhz: one, dbmv: other },
            1 => ReadingKind::ErrorRatio { mhz: one, db: other },
            2 => ReadingKind::ModemSends { dbmv: one },
            3 => ReadingKind::Throughput { down_mbps: one, up_mbps: other },
            4 => ReadingKind::PhyRate { mbps: one },
            5 => ReadingKind::RoundTrip { ms: one },
            6 => ReadingKind::Power { sent_dbm: one, received_dbm: other },
            7 => ReadingKind::NodesSeen { count },
            8 => ReadingKind::PacketLoss { percent: one, under_load: flag },
            9 => ReadingKind::Link { state },
            _ => ReadingKind::Swings { low_mbps: one, high_mbps: other, with_heat_or_hour: flag },
        };
    ChangeKind = (what: 0..23_u8, check: OutletCheck::any(), one: SubjectId::any(), other: SubjectId::any(), number: any::<u8>())
        match what {
            0 => ChangeKind::AddEntryFilter { behind: one },
            1 => ChangeKind::MoveEntryFilter { filter: one, behind: other },
            2 => ChangeKind::SwapEntryFilter { filter: one },
            3 => ChangeKind::SwapSplitter { splitter: one, legs: number },
            4 => ChangeKind::RemoveSplitter { splitter: one },
            5 => ChangeKind::MergeSplitters { upper: one, lower: other, legs: number },
            6 => ChangeKind::Cap { part: one, port: number },
            7 => ChangeKind::SwapAmplifier { amplifier: one },
            8 => ChangeKind::RemoveAmplifier { amplifier: one },
            9 => ChangeKind::ReplaceRun { to: one },
            10 => ChangeKind::RenewConnectors { to: one },
            11 => ChangeKind::FilterAtDevice { outlet: one },
            12 => ChangeKind::ModemOwnLine { outlet: one },
            13 => ChangeKind::ShareOutlet { outlet: one },
            14 => ChangeKind::JoinLoose { part: one, to: other, port: number },
            15 => ChangeKind::MoveBridge { from: one, to: other },
            16 => ChangeKind::UseOutletNearby { room: one, outlet: other },
            17 => ChangeKind::NewerAdapter { outlet: one },
            18 => ChangeKind::LookAtPart { part: one, outlet: other },
            19 => ChangeKind::LookAtRun { to: one, outlet: other },
            20 => ChangeKind::CheckAtOutlet { outlet: one, check },
            21 => ChangeKind::ExchangeAdapters { outlet: one, with: other },
            _ => ChangeKind::NewRun { room: one, from: other },
        };
}

proptest! {
    #[test]
    fn a_change_has_one_name(change in ChangeKind::any()) {
        let written = serde_json::to_value(change).expect("a change can be written");
        let tag = written.as_object().and_then(|members| members.keys().next().cloned());
        prop_assert_eq!(tag.as_deref(), Some(change.name()));
    }
}

/// Samples of the type that a field's values are when owned.
pub(super) fn values<T: ?Sized + ToOwned<Owned: Sample>>() -> BoxedStrategy<T::Owned> {
    T::Owned::any()
}

macro_rules! laws {
    ($($record:ident $Record:ident {
        $($(#[$about:meta])+ $NAME:ident $name:literal: $value:ty
            $(=> $member:ident $(if $only:ident)?)?;)+
    })+) => {
        $(mod $record {
            use super::*;

            $($(
                proptest! {
                    #![proptest_config(ProptestConfig::with_cases(40))]
                    #[test]
                    fn $member(value in values::<$value>()) {
                        let value: &$value = value.borrow();
                        let least = shown(&[$Record::least()]);
                        let least = $Record::of(&least).expect("the least record");
                        let edit = field::$record::$NAME.set(least.id, value);
                        prop_assert_eq!(&edit.fault, &None);

                        // Value, edit, fact, record: the same value.
                        let told = shown(&[$Record::least(), vec![edit.clone()]]);
                        prop_assert_eq!(&told.unread, &[]);
                        if !can_be($name, &edit.value) {
                            // Kept as it was told, and no part of the record.
                            prop_assert_eq!(&told.impossible, &[(least.id, $name.to_owned())]);
                            let member = |record: &$Record| Member::<$value>::told(&record.$member).map(ToOwned::to_owned);
                            prop_assert!($Record::of(&told).is_none_or(|told| member(told) == member(least)));
                            return Ok(());
                        }
                        prop_assert_eq!(&told.impossible, &[]);
                        let record = $Record::of(&told).expect("the record");
                        prop_assert_eq!(Member::<$value>::told(&record.$member), Some(value));

                        // The difference makes one record into the other, and back.
                        let on = record.edits_from(Some(least));
                        let same = shown(&[$Record::least(), on.clone()]);
                        prop_assert_eq!($Record::of(&same), Some(record));
                        let back = shown(&[$Record::least(), on, least.edits_from(Some(record))]);
                        prop_assert_eq!($Record::of(&back), Some(least));
                    }
                }
            )?)+
        })+
    };
}

every_field!(laws);

/// The names of the table's lines that have no member of a record.
macro_rules! without_member {
    ($($record:ident $($Record:ident)? {
        $($(#[$about:meta])+ $NAME:ident $name:literal: $value:ty
            $(=> $member:ident $(if $only:ident)?)?;)+
    })+) => {
        [$($((concat!(stringify!($record), " ", $name), [$(stringify!($member),)? ""].len() - 1),)+)+]
    };
}

/// The lines whose laws stand below: whoever adds one adds its law.
#[test]
fn lines_without_a_member_have_laws_by_hand() {
    let lines: Vec<(&str, usize)> =
        every_field!(without_member).into_iter().chain(fields_apart!(without_member)).collect();
    let apart: Vec<_> =
        lines.into_iter().filter(|(_, members)| *members == 0).map(|(name, _)| name).collect();
    assert_eq!(apart, ["part measurement", "author name", "measurement ports", "measurement digest"]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn what_is_on_a_port(port in any::<u8>(), end in PortEnd::any()) {
        let told = shown(&[Part::least(), vec![field::END.set(HERE, port, &end)]]);
        prop_assert_eq!(told.parts[&HERE].end(port), Some(end));
        let least = shown(&[Part::least()]);
        let back = told.parts[&HERE].edits_from(Some(&least.parts[&HERE]));
        prop_assert_eq!(&back, &[field::END.set(HERE, port, &end)]);
        let back = least.parts[&HERE].edits_from(Some(&told.parts[&HERE]));
        prop_assert_eq!(&back, &[field::END.clear(HERE, port)]);
    }

    #[test]
    fn the_name_of_an_author(name in text()) {
        let author = AuthorId::from_uuid(Uuid::from_u128(9));
        let ledger = written(&[vec![field::author::NAME.set(author.subject(), &name)]]);
        let told = ledger.shown(author.subject(), field::NAME).expect("a fact");
        prop_assert_eq!(field::author::NAME.read(told.value()), Some(name));
    }

    #[test]
    fn an_answer(question in select(Asked::ALL), place in any::<prop::sample::Index>()) {
        let reply = *place.get(question.replies());
        let told = shown(&[vec![question.set(HERE, reply)]]);
        prop_assert_eq!(told.reply(HERE, question), Some(reply));
        prop_assert_eq!(Asked::of_field(&question.field()), Some(question));
        let told = shown(&[vec![question.set_all(HERE, &[reply, Reply::Unsure])]]);
        prop_assert_eq!(told.replies(HERE, question), [reply, Reply::Unsure]);
    }
}

/// A measurement of a through part with one frequency, as an instrument writes it (Touchstone 1.1).
/// Whatever their identities: random ones stand in no order.
#[test]
fn work_stands_in_the_order_in_which_it_was_done() {
    let done = |port| {
        let change = ChangeKind::Cap { part: SubjectId::random(), port };
        change.ended(Outcome { end: OutcomeKind::Done, others_fine: None })
    };
    let survey = shown(&(1..=12).map(done).collect::<Vec<_>>());
    let ports: Vec<_> = survey.works.values().map(|work| work.change).collect();
    let ports = ports.iter().filter_map(|change| match change {
        ChangeKind::Cap { port, .. } => Some(*port),
        _ => None,
    });
    assert_eq!(ports.collect::<Vec<_>>(), (1..=12).collect::<Vec<_>>());
}

#[test]
fn a_measurement_and_the_part_that_it_is_of() {
    let text = b"# MHz S MA R 75\n1000 0.1 0 0.9 0 0.9 0 0.1 0\n";
    let taken = super::take_in("part.s2p", text).expect("a measurement");
    let part = vec![field::part::MEASUREMENT.set(HERE, &taken.id)];
    let told = shown(&[taken.edits.clone(), Part::least(), part]);
    assert_eq!(told.unread, []);
    assert_eq!(told.parts[&HERE].measured, Some(taken.part.clone()));
    assert_eq!(told.measurements[&taken.id], taken.part);
}

/// Names with underscores stand for the same questions; the newest answer counts, whichever way it is spelled.
#[test]
fn a_question_spelled_with_underscores_is_read() {
    let old = Edit::new(HERE, "asked.entry_filter", "no");
    let told = shown(&[vec![old.clone()]]);
    assert_eq!(told.reply(HERE, Asked::EntryFilter), Some(Reply::No));
    let told = shown(&[vec![old.clone()], vec![Asked::EntryFilter.set(HERE, Reply::Yes)]]);
    assert_eq!(told.reply(HERE, Asked::EntryFilter), Some(Reply::Yes));
    let told = shown(&[vec![Asked::EntryFilter.set(HERE, Reply::Yes)], vec![old]]);
    assert_eq!(told.reply(HERE, Asked::EntryFilter), Some(Reply::No));
}

/// A removed line would be a broken file: what a name means never changes, and none goes.
#[test]
fn every_name_of_a_list_reads_back() {
    fn law<T: Named + serde::Serialize + serde::de::DeserializeOwned>() {
        for member in T::ALL {
            assert_eq!(serde_json::to_value(member).expect("a name"), member.name());
            let read: T = serde_json::from_value(member.name().into()).expect("a member");
            assert_eq!((read, T::of_name(member.name())), (*member, Some(*member)));
        }
    }
    law::<Is>();
    law::<Asked>();
    law::<Reply>();
    law::<PartKind>();
    law::<ServiceKind>();
    law::<Connector>();
}

/// What the crate of facts reads by itself, it reads by these names.
#[test]
fn names_that_facts_know_are_those_of_the_table() {
    use facts::fact::reserved;
    assert_eq!(reserved::IS, field::IS);
    assert_eq!(reserved::NAME, field::survey::NAME.name());
    assert_eq!(reserved::NAME, field::author::NAME.name());
    assert_eq!(reserved::PLACE, field::survey::PLACE.name());
    assert_eq!(reserved::IMAGE, field::photo::IMAGE.name());
}

//! For every reason to refuse a change a house where it must be given, and one, as near to it as can be, where the same
//! change must not be refused for it.

use house::record::{
    CableKind, ChangeKind, Connector, EntryKind, Plugged, PortEnd, ReadingKind, ServiceKind, Survey, Without,
};

use crate::{House, part_id};

/// A change as it is proposed for a house.
pub type Change = fn(&Survey) -> ChangeKind;

/// A reason, a change, and two houses.
pub struct Case {
    /// The message without `refusal-`.
    pub name: &'static str,
    /// The change.
    pub change: Change,
    /// Here it must be refused for this reason.
    pub there: House,
    /// Here it must not.
    pub absent: House,
}

fn house(entry: EntryKind) -> House {
    House::new()
        .entry("E1", entry)
        .splitter("S1", 3)
        .made_for(5.0, 1675.0)
        .from("E1", 1)
        .over(CableKind::Six, 2.0)
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
        .outlet("O3", "Den")
        .from("S1", 3)
        .over(CableKind::Six, 10.0)
        .plugged(&[Plugged::Tv])
}

fn received(entry: EntryKind) -> House {
    house(entry).at("O3").plugged(&[Plugged::SatelliteReceiver])
}

fn amplified(gain: f64, return_gain: f64) -> House {
    house(EntryKind::Cable)
        .amplifier("A1", 1)
        .with(|amplifier| {
            amplifier.rating.moca_bypass = Some(false);
            amplifier.rating.gain_db = Some(gain);
            amplifier.rating.return_gain_db = Some(return_gain);
        })
        .from("E1", 1)
        .over(CableKind::Six, 1.0)
        .at("S1")
        .from("A1", 1)
        .over(CableKind::Six, 1.0)
}

/// Levels that leave room for much.
fn measured(house: House) -> House {
    house.at("O1").level(603.0, 8.0).at("O3").level(603.0, 8.0)
}

const ADD_FILTER: Change = |survey| ChangeKind::AddEntryFilter { behind: part_id(survey, "E1") };
const REMOVE_AMPLIFIER: Change = |survey| ChangeKind::RemoveAmplifier { amplifier: part_id(survey, "A1") };
const OWN_LINE: Change = |survey| ChangeKind::ModemOwnLine { outlet: part_id(survey, "O1") };
const SHARE: Change = |survey| ChangeKind::ShareOutlet { outlet: part_id(survey, "O1") };
const FILTER_AT_TV: Change = |survey| ChangeKind::FilterAtDevice { outlet: part_id(survey, "O3") };
const SWAP: Change = |survey| ChangeKind::SwapSplitter { splitter: part_id(survey, "S1"), legs: 3 };
const CAP: Change = |survey| ChangeKind::Cap { part: part_id(survey, "S1"), port: 3 };
const RENEW: Change = |survey| ChangeKind::RenewConnectors { to: part_id(survey, "S1") };
const REPLACE: Change = |survey| ChangeKind::ReplaceRun { to: part_id(survey, "O2") };
const SWAP_SPLITTER: Change = |survey| ChangeKind::SwapSplitter { splitter: part_id(survey, "S1"), legs: 3 };
const MOVE_BRIDGE: Change =
    |survey| ChangeKind::MoveBridge { from: part_id(survey, "O1"), to: part_id(survey, "O3") };

/// One case for each reason.
pub fn cases() -> Vec<Case> {
    let case = |name, change, there, absent| Case { name, change, there, absent };
    let cable = || house(EntryKind::Cable);
    let antenna = || house(EntryKind::Antenna);
    let internet_to = |top| cable().service(ServiceKind::CableInternet, Some(top));
    let boxed = || cable().at("O3").plugged(&[Plugged::TvBox]);
    let renewed = |kind| house(kind).at("S1").run(|run| run.connector_far = Connector::TwistOn);
    let by = |tag: &str| antenna().entry("E2", EntryKind::Unknown).service_by(ServiceKind::SatelliteTv, tag);
    let mast = |by_pass| {
        let house = antenna().amplifier("A1", 1).with(move |part| part.rating.moca_bypass = by_pass);
        house.from("E1", 1).at("S1").from("A1", 1)
    };
    let unknown = || house(EntryKind::Unknown).service(ServiceKind::CableTv, None);
    let four = |end| cable().at("S1").with(|splitter| splitter.rating.legs = 4).end(4, end);
    let supplied = || amplified(10.0, 0.0).at("O3").plugged(&[Plugged::PowerSupply]);
    vec![
        // 950 to 2150 MHz comes down a dish's line (EN 50494:2007, EN 50607:2015).
        case("filter-in-satellite-line", ADD_FILTER, house(EntryKind::Satellite), cable()),
        // A 5-1002 MHz filter (data sheet, 2019, N7Alpha/coaxial-cable-network) before a service to 1218 MHz.
        case("filter-cuts-service", ADD_FILTER, internet_to(1218.0), internet_to(1002.0)),
        // The same at a TV alone.
        case(
            "filter-cuts-service",
            FILTER_AT_TV,
            cable().service(ServiceKind::CableTv, Some(1218.0)),
            cable().service(ServiceKind::CableTv, Some(1002.0)),
        ),
        case(
            "filter-in-satellite-line",
            FILTER_AT_TV,
            cable().at("O3").plugged(&[Plugged::SatelliteReceiver]),
            cable(),
        ),
        // -12 dBmV is the least for digital TV (SCTE 40, from memory); the filter takes 0.5 to 1.5.
        case(
            "level-out",
            FILTER_AT_TV,
            cable().at("O3").level(860.0, -11.9),
            cable().at("O3").level(860.0, -8.0),
        ),
        case(
            "cuts-provider-network",
            FILTER_AT_TV,
            boxed().service(ServiceKind::ProviderNetwork, None),
            boxed(),
        ),
        case(
            "cuts-provider-network",
            FILTER_AT_TV,
            cable().at("O3").plugged(&[Plugged::Tv, Plugged::FibreBox]),
            cable(),
        ),
        case("levels-unknown", REMOVE_AMPLIFIER, amplified(10.0, 0.0), measured(amplified(10.0, 0.0))),
        case("cuts-power", CAP, supplied(), amplified(10.0, 0.0)),
        // A supply feeds the preamplifier on the mast: the modem's own line would leave it on the other side.
        case("cuts-power-outside", OWN_LINE, antenna().at("O2").plugged(&[Plugged::PowerSupply]), antenna()),
        // A preamplifier has no by-pass (common practice, no source): nothing of the band passes it.
        case(
            "preamplifier-outside",
            ADD_FILTER,
            antenna().at("O2").plugged(&[Plugged::PowerSupply]),
            antenna(),
        ),
        case("amplifier-isolates", ADD_FILTER, mast(None), mast(Some(true))),
        case("amplifier-isolates", ADD_FILTER, amplified(10.0, 0.0), cable()),
        case("filter-in-satellite-line", ADD_FILTER, by("E1"), by("E2")),
        case(
            "filter-satellite-may-be",
            ADD_FILTER,
            unknown().service(ServiceKind::SatelliteTv, None),
            unknown(),
        ),
        case("shares-with-satellite", SHARE, by("E1"), by("E2")),
        case("another-home", SWAP, four(PortEnd::AnotherHome), four(PortEnd::Capped)),
        case("another-home", ADD_FILTER, four(PortEnd::AnotherHome), four(PortEnd::LooseEnd)),
        case("another-home-may-be", SWAP, four(PortEnd::LooseEnd).shared(), four(PortEnd::LooseEnd)),
        case("cuts-device", CAP, cable(), cable().at("O3").with(|outlet| outlet.feed = None)),
        case("cuts-service", OWN_LINE, cable(), cable().at("O3").plugged(&[])),
        // Without the amplifier's return gain the provider hears the modem 25 dB less.
        case(
            "cuts-return",
            REMOVE_AMPLIFIER,
            measured(amplified(10.0, 25.0)),
            measured(amplified(10.0, 0.0)),
        ),
        // -15 dBmV is the least that a modem is made for (DOCSIS, as quoted by cablefax.com); a splitter's
        // leg takes 3.7.
        case("level-out", SHARE, cable().at("O1").level(603.0, -13.0), cable().at("O1").level(603.0, -5.0)),
        // The same where only what comes in was measured: some 8 dB lie before the modem (a 3-way and 12 m of cable).
        case(
            "level-out-worked-out",
            SHARE,
            cable().at("E1").level(603.0, -5.0),
            cable().at("E1").level(603.0, 3.0),
        ),
        // 50 dBmV is the most recommended ("DOCSIS 3.1 cable modem transmit power", volpefirm.com).
        case(
            "sends-too-much",
            SHARE,
            cable().at("O1").reads(ReadingKind::ModemSends { dbmv: 48.0 }),
            cable().at("O1").reads(ReadingKind::ModemSends { dbmv: 42.0 }),
        ),
        case("street-side", RENEW, renewed(EntryKind::Cable), renewed(EntryKind::Antenna)),
        case("not-yours", REPLACE, cable().rented(), cable()),
        case("without-new-cable", REPLACE, cable().not_wanted(Without::NewCable), cable()),
        // An entry filter may hang high; a splitter in the house is reached from the floor.
        case("without-heights", ADD_FILTER, cable().not_wanted(Without::Heights), cable()),
        case("without-heights", REPLACE, cable().not_wanted(Without::Heights), cable()),
        case("narrows-satellite", SWAP_SPLITTER, received(EntryKind::Satellite), house(EntryKind::Satellite)),
        // The den hangs on a tree of its own: from there no cable leads to the office.
        case("cuts-network", MOVE_BRIDGE, cable().at("O3").fed_by_nothing(), cable()),
    ]
}

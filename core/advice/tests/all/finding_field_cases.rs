//! Findings on real houses, as published accounts tell them.

use advice::finding::{FindingKind, Weight, findings};
use house::rating::Band;
use house::record::{CableKind, Connector, EntryKind, LengthKnown, PartKind, Plugged, ServiceKind};
use houses::House;

/// About 50 ft, the owner unsure.
const FIFTY_FEET: f64 = 15.24;

/// C04, "Coaxial Cable Network" (repository read-me, github.com, undated): drop, ground block with a built-in filter
/// (passes 5-1002 MHz, 70 dB stop), 2-way of 3.7 dB a leg, upstairs on leg 1, on leg 2 a 3-way of 7.3, 7.3 and 3.7 dB
/// with living room A and B and the back bedroom. All runs about 50 ft. TV and internet share it; version 2.5.
///
/// The account does not tell the cable's series, nor where TV, modem and bridge stand.
fn fully_drawn_tree(cable: CableKind) -> House {
    let outlet = |house: House, tag: &str, room: &str, feeder: &str, port: u8| {
        house
            .outlet(tag, room)
            .from(feeder, port)
            .over_guessed(cable, FIFTY_FEET, LengthKnown::Guessed)
            .plugged(&[Plugged::Tv])
            .adapter("2.5")
    };
    let house = House::new()
        .entry("E1", EntryKind::Cable)
        .part("G1", PartKind::GroundBlock)
        .made_for(5.0, 1002.0)
        .with(|block| {
            block.rating.stop_band = Some(Band { low_mhz: 1125.0, high_mhz: 1675.0 });
            block.rating.rejection_db = Some(70.0);
        })
        .from("E1", 1)
        .splitter("S1", 2)
        .made_for(5.0, 1675.0)
        .with(|splitter| splitter.rating.leg_losses_db = vec![3.7, 3.7])
        .from("G1", 1)
        .splitter("S2", 3)
        .made_for(5.0, 1675.0)
        .with(|splitter| splitter.rating.leg_losses_db = vec![7.3, 7.3, 3.7])
        .from("S1", 2)
        .over_guessed(cable, FIFTY_FEET, LengthKnown::Guessed);
    let house = outlet(house, "O1", "Upstairs", "S1", 1).bridge();
    let house = outlet(house, "O2", "Living room A", "S2", 1);
    let house = outlet(house, "O3", "Living room B", "S2", 2);
    outlet(house, "O4", "Back bedroom", "S2", 3)
}

fn kinds(house: House) -> Vec<FindingKind> {
    findings(&house.survey(), None).iter().map(|finding| finding.kind).collect()
}

#[test]
fn c04_a_tree_of_rated_parts_has_no_finding() {
    assert_eq!(kinds(fully_drawn_tree(CableKind::Six)), []);
}

#[test]
fn c04_whatever_the_series_nothing_is_asserted() {
    for cable in [CableKind::Six, CableKind::Seven, CableKind::Eleven, CableKind::Unknown] {
        for finding in findings(&fully_drawn_tree(cable).survey(), None) {
            assert_eq!(finding.weight(), Weight::Note, "{cable:?}: {:?}", finding.kind);
        }
    }
}

#[test]
fn c04_an_unrated_splitter_put_back_is_found() {
    for splitter in ["S1", "S2"] {
        let house = fully_drawn_tree(CableKind::Six).at(splitter).made_for(5.0, 1000.0);
        assert_eq!(kinds(house), [FindingKind::SplitterNotForBand], "{splitter}");
    }
}

/// C17, "MoCA explained, chapter 2" (homenetworkingdepot.com, undated), lists five suspects: too many splitters or too
/// long a run; open splitter ports or outlets; bad crimps; a house amplifier that does not pass the band. Each is put
/// into the tree of C04 and must be found there.
#[test]
fn c17_every_suspect_of_the_practice_note_is_found() {
    let tree = || fully_drawn_tree(CableKind::Six);
    let behind = |part: House| part.from("S2", 3).at("O4");
    let suspects = [
        (behind(tree().splitter("S3", 2).cap(2)).from("S3", 1), FindingKind::SplitsMany),
        (tree().at("O4").over(CableKind::Six, 70.0), FindingKind::RunVeryLong),
        (tree().at("S1").with(|splitter| splitter.rating.legs = 3).open(3), FindingKind::LegOpen),
        (tree().at("O4").plugged(&[]).with(|outlet| outlet.adapter = None), FindingKind::OutletOpen),
        (tree().at("O4").run(|run| run.connector_far = Connector::Corroded), FindingKind::ConnectorPoor),
        (
            behind(tree().amplifier("A1", 1).with(|amplifier| amplifier.rating.moca_bypass = Some(false)))
                .from("A1", 1),
            FindingKind::AmplifierNoBypass,
        ),
    ];
    for (house, suspect) in suspects {
        let found = kinds(house);
        assert!(found.contains(&suspect), "{suspect:?} in {found:?}");
    }
}

/// C19, "Cable tangle" (a blog, 2019): drop, splitter, splitter, long run to an amplifier, third splitter, rooms.
/// What feeds the bridge and what the labels say is not told; here the bridge hangs on the first splitter.
#[test]
fn c19_splitters_in_a_row_and_an_amplifier_are_found() {
    let house = House::new()
        .entry("E1", EntryKind::Cable)
        .splitter("S1", 2)
        .from("E1", 1)
        .splitter("S2", 2)
        .from("S1", 2)
        .amplifier("A1", 1)
        .with(|amplifier| amplifier.rating.moca_bypass = Some(false))
        .from("S2", 1)
        .splitter("S3", 2)
        .from("A1", 1)
        .outlet("O1", "Study")
        .from("S1", 1)
        .adapter("2.5")
        .bridge()
        .outlet("O2", "Room A")
        .from("S3", 1)
        .adapter("2.5")
        .outlet("O3", "Room B")
        .from("S3", 2)
        .adapter("2.5");
    let found = kinds(house);
    for kind in [FindingKind::AmplifierNoBypass, FindingKind::SplitsMany, FindingKind::EntryFilterMissing] {
        assert!(found.contains(&kind), "{kind:?} in {found:?}");
    }
}

/// C15, "SCTE 235 2017 summary" (scte.org) and "Standards bodies team on DOCSIS 3.1 - MoCA 2.0" (2017): a modem plan to
/// 1218 MHz beside adapters from 1125 MHz up.
#[test]
fn c15_a_modem_that_reaches_above_1125_mhz_is_found() {
    let house = fully_drawn_tree(CableKind::Six).service(ServiceKind::CableInternet, Some(1218.0));
    let found = kinds(house);
    assert!(found.contains(&FindingKind::ServiceInBand), "{found:?}");
    assert!(found.contains(&FindingKind::FilterCutsService), "{found:?}");
}

/// C07, "More MoCA: two adapters reviewed" (smallnetbuilder.com, 2009): the adapters do not live with satellite TV on
/// the same coax. C11 (lightreading.com, 2010): satellite takes 950 to 2150 MHz.
#[test]
fn c07_and_c11_satellite_on_the_same_coax_is_a_conflict() {
    let house =
        fully_drawn_tree(CableKind::Six).at("E1").with(|entry| entry.entry_kind = EntryKind::Satellite);
    let found = kinds(house);
    assert!(found.contains(&FindingKind::SatelliteOnTree), "{found:?}");
    assert!(found.contains(&FindingKind::FilterInSatelliteLine), "{found:?}");
}

/// C23, "archive, May 2023" (a blog): a twisted splice carried 50 of 200 Mb/s. A bad joint is a loss, not a break: the
/// part behind it stays wired.
#[test]
fn c23_a_twisted_splice_is_a_bad_joint_and_no_break() {
    let house = fully_drawn_tree(CableKind::Six).at("O4").run(|run| run.connector_near = Connector::BadJoint);
    assert_eq!(kinds(house), [FindingKind::JointBad]);
}

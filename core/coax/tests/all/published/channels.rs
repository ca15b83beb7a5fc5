//! Channels: masks, bonding, the band plan.

use coax::link::{
    MaskGrid, Placement, PrimaryOffset, Side, frequencies_of_mask, mask_of_frequencies, placements,
    placements_avoiding,
};
use coax::{Megahertz, Version};

use super::check::{Check, check};

const MASK: &str = "TR-181 Issue 2, type MocaChannelMask";
const BIT: &str = "derived: TR-181 Issue 2, type MocaChannelMask, bit (f - 400)/25";
const MIB: &str = "MOCA11-MIB, default channel mask";
const OFFSETS: &str = "TR-181 Issue 2, PrimaryOffset and SecondaryOffset";
const FIRST: &str = "TR-181 Issue 2, FirstOffset (MoCA 2.5 Table 17-1)";
const BAND: &str = "SCTE 235 announcement (broadbandtechreport.com, 14 March 2017): 1125 to 1675 MHz";

fn every(from: u32, to: u32, step: usize) -> Vec<Megahertz> {
    (from..=to).step_by(step).map(|f| Megahertz(f64::from(f))).collect()
}

#[test]
fn channel_masks() {
    // TR-181 Issue 2, MocaChannelMask: 1.x mask 0x1FFFC000 spells 1150 to 1500 MHz in steps of 25 MHz.
    assert_eq!(frequencies_of_mask(MaskGrid::V1, 0x1FFF_C000), every(1150, 1500, 25));
    let mask = |grid, frequencies: &[Megahertz]| mask_of_frequencies(grid, frequencies).unwrap() as f64;
    check(
        MASK,
        "1.x, 1150 to 1500 MHz by 25",
        f64::from(0x1FFF_C000),
        0.0,
        mask(MaskGrid::V1, &every(1150, 1500, 25)),
    );
    // MOCA11-MIB's default 0x15554000 is exactly D1 to D8.
    let d: Vec<Megahertz> = placements(Version::V1_1).iter().map(|place| place.beacon().centre).collect();
    assert_eq!(frequencies_of_mask(MaskGrid::V1, 0x1555_4000), d);
    assert_eq!(d, every(1150, 1500, 50));
    check(MIB, "D1 to D8", f64::from(0x1555_4000), 0.0, mask(MaskGrid::V1, &d));
    // 2.x, derived from bit = (f - 400) / 25: beacons 1150 to 1600 in steps of 50.
    let beacons = mask(MaskGrid::V2, &every(1150, 1600, 50));
    check(BIT, "2.x, 1150 to 1600 MHz by 50", 0x0001_5555_4000_0000_u64 as f64, 0.0, beacons);
    assert_eq!(frequencies_of_mask(MaskGrid::V2, 0x0001_5555_4000_0000), every(1150, 1600, 50));
    // The ends of the grids: 1575 and 1975 MHz.
    assert_eq!(mask_of_frequencies(MaskGrid::V1, &[Megahertz(1575.0)]), Ok(1 << 31));
    assert_eq!(mask_of_frequencies(MaskGrid::V2, &[Megahertz(400.0), Megahertz(1975.0)]), Ok((1 << 63) | 1));
    for off in [1160.0, 1600.0, 775.0, f64::NAN] {
        assert!(mask_of_frequencies(MaskGrid::V1, &[Megahertz(off)]).is_err(), "{off}");
    }
}

fn centres(placement: &Placement) -> Vec<f64> {
    let mut all: Vec<f64> = placement.channels().iter().map(|channel| channel.centre.value()).collect();
    all.sort_by(f64::total_cmp);
    all
}

#[test]
fn channels_of_bonded_networks() {
    // TR-181 Issue 2, PrimaryOffset, SecondaryOffset: beacon 1150, +25, +125.
    let bonded = Placement::bonded(Megahertz(1150.0), Side::Above);
    assert_eq!(centres(&bonded), [1175.0, 1275.0]);
    check(OFFSETS, "beacon 1150, +25, +125: lower edge, MHz", 1125.0, 0.0, bonded.low().value());
    check(OFFSETS, "beacon 1150, +25, +125: upper edge, MHz", 1325.0, 0.0, bonded.high().value());
    assert!(placements(Version::V2_0Bonded).contains(&bonded));
    // TR-181 Issue 2, FirstOffset (MoCA 2.5 Table 17-1): -4 with the primary at 1575.
    let five = Placement::contiguous(Megahertz(1550.0), PrimaryOffset::Above, 4, 5).unwrap();
    assert_eq!(centres(&five), [1175.0, 1275.0, 1375.0, 1475.0, 1575.0]);
    check(
        FIRST,
        "first offset -4, primary 1575: primary, MHz",
        1575.0,
        0.0,
        five.channels()[0].centre.value(),
    );
    check(FIRST, "first offset -4, primary 1575: lower edge, MHz", 1125.0, 0.0, five.low().value());
    check(FIRST, "first offset -4, primary 1575: upper edge, MHz", 1625.0, 0.0, five.high().value());
    assert!(placements(Version::V2_5).contains(&five));
    assert_eq!(Placement::contiguous(Megahertz(1550.0), PrimaryOffset::At, 5, 5), None);
    assert_eq!(Placement::contiguous(Megahertz(1550.0), PrimaryOffset::At, 0, 6), None);
}

#[test]
fn placements_stay_in_extended_d_and_touch() {
    // Extended D: 1125 to 1675 MHz (SCTE 235 announcement, 14 March 2017).
    for version in Version::ALL {
        let all = placements(version);
        assert!(!all.is_empty());
        for place in &all {
            assert!(place.low().value() >= 1125.0 && place.high().value() <= 1675.0, "{place:?}");
            let taken = place.channels().iter().map(|channel| channel.width.value()).sum::<f64>();
            if !version.is_1x() {
                assert!((place.high().value() - place.low().value() - taken).abs() < 1e-9);
            }
        }
        let lowest = all.iter().map(|place| place.low().value()).fold(f64::INFINITY, f64::min);
        // D1's centre and width are Table 1-1's; the beacons of 2.x are ours, cut off at this very edge.
        let how = if version.is_1x() { Check::WorkedOut } else { Check::Copied };
        how.about(BAND, &format!("{version:?}: lowest edge of a channel, MHz"), 1125.0, 0.0, lowest);
        let widest = all.iter().map(|place| place.channels().len()).max();
        assert_eq!(widest, Some(version.most_channels().value));
        assert_eq!(all.first().map(|place| place.channels().len()), widest, "most channels come first");
    }
}

#[test]
fn taken_bands_are_left_alone() {
    // DOCSIS 3.1 up to 1218 MHz (standards for cable modems): no 1.x channel below D3 (1250, from 1225 on).
    let docsis = [(Megahertz(5.0), Megahertz(1218.0))];
    let free = placements_avoiding(Version::V1_1, &docsis);
    let centres: Vec<Megahertz> = free.iter().map(|place| place.beacon().centre).collect();
    assert_eq!(centres, every(1250, 1500, 50));
    // Bands that only touch do not disturb: D3's lower edge is 1225.
    let up_to = |high| placements_avoiding(Version::V1_1, &[(Megahertz(5.0), Megahertz(high))]).len();
    assert_eq!((up_to(1225.0), up_to(1225.1)), (6, 5));
    // Above 1218 four channels of 100 MHz fit below 1675, five do not.
    let most = placements_avoiding(Version::V2_5, &docsis);
    assert_eq!(most.iter().map(|place| place.channels().len()).max(), Some(4));
    assert!(most.iter().all(|place| place.low().value() >= 1218.0));
    // Up to 1794 MHz (later modems) or satellite's 950 to 2150 MHz: nothing is left.
    for version in Version::ALL {
        assert!(placements_avoiding(version, &[(Megahertz(950.0), Megahertz(2150.0))]).is_empty());
        assert!(placements_avoiding(version, &[(Megahertz(5.0), Megahertz(1794.0))]).is_empty());
    }
}

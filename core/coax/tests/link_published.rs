//! Figures of standards, handbooks and definitions, each with its source, against the link's formulas.

use coax::link::{
    EthernetPort, MaskGrid, Placement, PrimaryOffset, Side, bits, frames_per_second, frequencies_of_mask,
    least_mac_rate_1_1, mask_of_frequencies, noise_density, placements, placements_avoiding, snr_for_bits,
    tcp_payload_rate, thermal_noise,
};
use coax::{DecibelMillivolts, DecibelMilliwatts, Decibels, MegabitsPerSecond, Megahertz, Version};

fn assert_near(found: f64, published: f64, within: f64) {
    assert!((found - published).abs() <= within, "found {found}, published {published}");
}

/// Shannon's row: 10 log10(2^b - 1), b = 1 to 12, printed to 0.01 dB (derived from on-line telecom book "The Gap Approximation",
/// clause 5.8, eq. 5.18).
const SHANNON: [f64; 12] = [0.00, 4.77, 8.45, 11.76, 14.91, 17.99, 21.04, 24.07, 27.08, 30.10, 33.11, 36.12];
/// The same with the conventional uncoded gap of 9.8 dB for a symbol error rate of 1e-7 (DSL textbooks, from memory).
const UNCODED: [f64; 12] =
    [9.80, 14.57, 18.25, 21.56, 24.71, 27.79, 30.84, 33.87, 36.88, 39.90, 42.91, 45.92];

#[test]
fn signal_to_noise_ratio_for_each_number_of_bits() {
    for (b, (shannon, uncoded)) in (1..).zip(SHANNON.into_iter().zip(UNCODED)) {
        assert_near(snr_for_bits(b, Decibels(0.0)).value(), shannon, 0.0051);
        assert_near(snr_for_bits(b, Decibels(9.8)).value(), uncoded, 0.0051);
    }
}

#[test]
fn bits_step_where_the_table_says() {
    for (row, gap) in [(SHANNON, 0.0), (UNCODED, 9.8)] {
        for (b, threshold) in (1..).zip(row) {
            let at = |snr: f64| bits(Decibels(snr).power(), Decibels(gap).power(), 12);
            assert_eq!(at(threshold + 0.006), b);
            assert_eq!(at(threshold - 0.006), b - 1);
        }
    }
    // 256-QAM is the most of 1.x, 1024-QAM of 2.x (a field test set's user manual, MoCA functional overview).
    assert_eq!(bits(1e12, 1.0, Version::V1_1.most_bits().value), 8);
    assert_eq!(bits(1e12, 1.0, Version::V2_5.most_bits().value), 10);
    assert_eq!(bits(0.0, 1.0, 10), 0);
}

#[test]
fn thermal_noise_by_its_definition() {
    // kT at 290 K: -173.975 dBm/Hz. k is exact in the SI of 2019.
    assert_near(thermal_noise(Megahertz(1e-6)).value(), -173.975, 5e-4);
    assert_near(thermal_noise(Megahertz(50.0)).value(), -96.99, 0.0051);
    assert_near(thermal_noise(Megahertz(100.0)).value(), -93.975, 5e-4);
    assert_near(thermal_noise(Megahertz(500.0)).value(), -86.99, 0.0051);
    assert_near(thermal_noise(Megahertz(0.195_312_5)).value(), -121.068, 5e-4);
    // In dBmV across 75 ohm, 100 MHz: -45.22; the cable trade's rule of thumb for 4 MHz is -59 dBmV.
    assert_near(thermal_noise(Megahertz(100.0)).dbmv().value(), -45.22, 0.0051);
    assert_near(thermal_noise(Megahertz(4.0)).dbmv().value(), -59.20, 0.0051);
}

#[test]
fn noise_figure_and_ingress_add_as_powers() {
    // Friis: a 3 dB receiver doubles kT (to the rounding of 3 dB); ingress as strong as that adds as much again.
    let kt = thermal_noise(Megahertz(1e-6)).value();
    let density = |figure, ingress| 10.0 * noise_density(Decibels(figure), Decibels(ingress)).log10();
    assert_near(density(3.0, -300.0), kt + 3.0, 1e-9);
    assert_near(density(3.0, 3.0), kt + 6.0103, 1e-4);
}

#[test]
fn level_and_power_across_75_ohm() {
    // Application Note 808, 17 July 2002: 0 dBm = 48.7506 dBmV.
    assert_near(DecibelMillivolts(0.0).dbm().value(), -48.7506, 5e-5);
    assert_near(DecibelMilliwatts(-20.0).dbmv().value(), 28.7506, 5e-5);
}

#[test]
fn frames_and_payload_of_ethernet() {
    // RFC 6349 (August 2011), clause 4.1.1: 8127, 81,274 and 812,743 frames a second, 94.9 Mb/s of 100.
    for (port, frames) in [
        (EthernetPort::Fast, 8127.0),
        (EthernetPort::Gigabit, 81_274.0),
        (EthernetPort::TenGigabit, 812_743.0),
    ] {
        assert_near(frames_per_second(port.line_rate()), frames, 0.0);
    }
    assert_near(EthernetPort::Fast.payload_rate().value(), 94.9, 0.05);
    // Derived from the same: 1460 / 1538.
    assert_near(frames_per_second(EthernetPort::TwoPointFive.line_rate()), 203_185.0, 0.0);
    assert_near(EthernetPort::Gigabit.payload_rate().value(), 949.28, 0.005);
    assert_near(EthernetPort::TwoPointFive.payload_rate().value(), 2373.2, 0.05);
    assert_near(EthernetPort::TenGigabit.payload_rate().value(), 9492.8, 0.05);
    assert_near(tcp_payload_rate(MegabitsPerSecond(1.0)).value(), 0.94928, 5e-6);
}

#[test]
fn least_mac_rate_of_1_1() {
    // MoCA 1.1 Reference Specification, Table 1-2 (developer.rdkcentral.com, 21 Jun 2022).
    let rows = [
        (300.0, 139.87),
        (275.0, 139.87),
        (250.0, 130.78),
        (225.0, 119.45),
        (175.0, 95.64),
        (150.0, 81.98),
        (125.0, 68.32),
        (100.0, 54.65),
        (75.0, 39.82),
    ];
    for (phy, mac) in rows {
        assert_near(least_mac_rate_1_1(MegabitsPerSecond(phy)).value(), mac, 1e-9);
    }
    let mut last = -1.0;
    for phy in 0..=300 {
        let mac = least_mac_rate_1_1(MegabitsPerSecond(f64::from(phy))).value();
        assert!(mac >= last, "falls at {phy}");
        last = mac;
    }
}

#[test]
fn published_rates_of_each_version() {
    // 2.0 press release, 16 June 2010: 700 and 1400 PHY; 400 and 800, 500 and 1000 between two nodes; 175 for 1.1.
    // Encyclopedia article "Multimedia over Coax Alliance": 275 PHY for 1.1, 2500 for 2.5, 135 for 1.0.
    let rows = [
        (Version::V1_0, 275.0, 135.0, 135.0),
        (Version::V1_1, 275.0, 175.0, 175.0),
        (Version::V2_0, 700.0, 500.0, 400.0),
        (Version::V2_0Bonded, 1400.0, 1000.0, 800.0),
        (Version::V2_5, 3500.0, 2500.0, 2500.0),
    ];
    for (version, phy, two, more) in rows {
        assert_near(version.phy_ceiling().value.value(), phy, 1e-9);
        assert_near(version.mac_ceiling(2).value.value(), two, 1e-9);
        assert_near(version.mac_ceiling(3).value.value(), more, 1e-9);
    }
    // TR-181 Issue 2, MocaNodeID: IDs 0 to 7 for 1.0, 0 to 15 from 1.1 on.
    assert_eq!(Version::V1_0.most_nodes().value, 8);
    assert_eq!(Version::V1_1.most_nodes().value, 16);
}

#[test]
fn shares_of_the_published_rates() {
    // Derived from published 3500, 2500, 700, 500, 400 Mb/s and 480 subcarriers (from memory): 480 x 10 bits x
    // 195.3125 kHz = 937.5 Mb/s on the wire, 0.747 of it PHY rate; MAC over PHY 0.714 and, among more than two, 0.571.
    let v = Version::V2_5;
    let raw = v.used_width().value() * f64::from(v.most_bits().value);
    assert_near(raw, 937.5, 1e-9);
    assert_near(v.phy_per_channel().value.value() / raw, 0.747, 5e-4);
    assert_near(v.mac_ceiling(2).value.value() / v.phy_ceiling().value.value(), 0.714, 5e-4);
    let ratio =
        |nodes| Version::V2_0.mac_ceiling(nodes).value.value() / Version::V2_0.phy_ceiling().value.value();
    assert_near(ratio(2), 0.714, 5e-4);
    assert_near(ratio(3), 0.571, 5e-4);
}

#[test]
fn bits_of_a_symbol_of_1_x() {
    // 224 (from memory) x 8 = 1792 bits a symbol; at 50 MS/s and a prefix of 16, 32, 64 samples 329.41, 311.11,
    // 280.00 Mb/s, times the long Reed-Solomon code's 192/208 (US 2009/0254794 A1) 304.07, 287.18, 258.46.
    let v = Version::V1_1;
    let symbol = f64::from(v.used_subcarriers().value * v.most_bits().value);
    assert_near(symbol, 1792.0, 0.0);
    for (prefix, raw, coded) in [(16.0, 329.41, 304.07), (32.0, 311.11, 287.18), (64.0, 280.00, 258.46)] {
        let samples = f64::from(v.tones().value) + prefix;
        let rate = symbol * v.channel_width().value.value() / samples;
        assert_near(rate, raw, 0.0051);
        assert_near(rate * 192.0 / 208.0, coded, 0.0051);
    }
    // The published 275 Mb/s lies between the two longer prefixes' coded rates.
    assert!((258.46..287.18).contains(&v.phy_ceiling().value.value()));
}

fn every(from: u32, to: u32, step: usize) -> Vec<Megahertz> {
    (from..=to).step_by(step).map(|f| Megahertz(f64::from(f))).collect()
}

#[test]
fn channel_masks() {
    // TR-181 Issue 2, MocaChannelMask: 1.x mask 0x1FFFC000 spells 1150 to 1500 MHz in steps of 25 MHz.
    assert_eq!(frequencies_of_mask(MaskGrid::V1, 0x1FFF_C000), every(1150, 1500, 25));
    assert_eq!(mask_of_frequencies(MaskGrid::V1, &every(1150, 1500, 25)), Ok(0x1FFF_C000));
    // MOCA11-MIB's default 0x15554000 is exactly D1 to D8.
    let d: Vec<Megahertz> = placements(Version::V1_1).iter().map(|place| place.beacon().centre).collect();
    assert_eq!(frequencies_of_mask(MaskGrid::V1, 0x1555_4000), d);
    assert_eq!(d, every(1150, 1500, 50));
    // 2.x, derived from bit = (f - 400) / 25: beacons 1150 to 1600 in steps of 50.
    assert_eq!(mask_of_frequencies(MaskGrid::V2, &every(1150, 1600, 50)), Ok(0x0001_5555_4000_0000));
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
    assert_near(bonded.low().value(), 1125.0, 0.0);
    assert_near(bonded.high().value(), 1325.0, 0.0);
    assert!(placements(Version::V2_0Bonded).contains(&bonded));
    // TR-181 Issue 2, FirstOffset (MoCA 2.5 Table 17-1): -4 with the primary at 1575.
    let five = Placement::contiguous(Megahertz(1550.0), PrimaryOffset::Above, 4, 5).unwrap();
    assert_eq!(centres(&five), [1175.0, 1275.0, 1375.0, 1475.0, 1575.0]);
    assert_near(five.channels()[0].centre.value(), 1575.0, 0.0);
    assert_near(five.low().value(), 1125.0, 0.0);
    assert_near(five.high().value(), 1625.0, 0.0);
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
                assert_near(place.high().value() - place.low().value(), taken, 1e-9);
            }
        }
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

//! Rates of Ethernet, TCP and the versions of MoCA.

use coax::link::{EthernetPort, frames_per_second, least_mac_rate_1_1, tcp_payload_rate};
use coax::{MegabitsPerSecond, Version};

use super::check::{Check, check, check_between};

const RFC: &str = "RFC 6349 (August 2011), clause 4.1.1";
const FRAMES: &str = "derived from RFC 6349: 1460 payload bytes of 1538 on the wire";
const TABLE: &str = "MoCA 1.1 Reference Specification, Table 1-2 (developer.rdkcentral.com, 21 Jun 2022)";
const RELEASE: &str = "MoCA 2.0 press release, 16 June 2010";
const ARTICLE: &str = "encyclopedia article Multimedia over Coax Alliance";
const MODEL: &str = "TR-181 Issue 2, type MocaNodeID";
const SHARES: &str = "derived: published 3500, 2500, 700, 500, 400 Mb/s; 480 subcarriers from memory";
const SYMBOL: &str = "derived: 224 subcarriers (from memory), 50 MS/s, RS 192/208 (US 2009/0254794 A1)";

#[test]
fn frames_and_payload_of_ethernet() {
    for (what, port, frames) in [
        ("100 Mb/s", EthernetPort::Fast, 8127.0),
        ("1 Gb/s", EthernetPort::Gigabit, 81_274.0),
        ("10 Gb/s", EthernetPort::TenGigabit, 812_743.0),
    ] {
        check(RFC, &format!("frames a second at {what}"), frames, 0.0, frames_per_second(port.line_rate()));
    }
    check(RFC, "TCP payload at 100 Mb/s, Mb/s", 94.9, 0.05, EthernetPort::Fast.payload_rate().value());
    let two_and_a_half = EthernetPort::TwoPointFive;
    check(
        FRAMES,
        "frames a second at 2.5 Gb/s",
        203_185.0,
        0.0,
        frames_per_second(two_and_a_half.line_rate()),
    );
    for (what, port, payload, within) in [
        ("1 Gb/s", EthernetPort::Gigabit, 949.28, 0.005),
        ("2.5 Gb/s", two_and_a_half, 2373.2, 0.05),
        ("10 Gb/s", EthernetPort::TenGigabit, 9492.8, 0.05),
    ] {
        check(FRAMES, &format!("TCP payload at {what}, Mb/s"), payload, within, port.payload_rate().value());
    }
    let share = tcp_payload_rate(MegabitsPerSecond(1.0)).value();
    check(FRAMES, "TCP payload over line rate", 0.94928, 5e-6, share);
}

#[test]
fn least_mac_rate_of_1_1() {
    for (phy, mac) in [
        (300.0, 139.87),
        (275.0, 139.87),
        (250.0, 130.78),
        (225.0, 119.45),
        (175.0, 95.64),
        (150.0, 81.98),
        (125.0, 68.32),
        (100.0, 54.65),
        (75.0, 39.82),
    ] {
        let found = least_mac_rate_1_1(MegabitsPerSecond(phy)).value();
        Check::Copied.about(TABLE, &format!("least MAC rate at {phy} Mb/s PHY, Mb/s"), mac, 1e-9, found);
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
    for (source, version, phy, two, more) in [
        (ARTICLE, Version::V1_0, 275.0, 135.0, 135.0),
        (RELEASE, Version::V1_1, 275.0, 175.0, 175.0),
        (RELEASE, Version::V2_0, 700.0, 500.0, 400.0),
        (RELEASE, Version::V2_0Bonded, 1400.0, 1000.0, 800.0),
        (ARTICLE, Version::V2_5, 3500.0, 2500.0, 2500.0),
    ] {
        let what = |text: &str| format!("{version:?}: {text}, Mb/s");
        // Of several channels it is a multiple of one channel's.
        let how = if version.most_channels().value > 1 { Check::WorkedOut } else { Check::Copied };
        how.about(source, &what("PHY rate"), phy, 1e-9, version.phy_ceiling().value.value());
        Check::Copied.about(
            source,
            &what("MAC rate between two nodes"),
            two,
            1e-9,
            version.mac_ceiling(2).value.value(),
        );
        Check::Copied.about(
            source,
            &what("MAC rate among more"),
            more,
            1e-9,
            version.mac_ceiling(3).value.value(),
        );
    }
    Check::Copied.about(MODEL, "most nodes of 1.0", 8.0, 0.0, Version::V1_0.most_nodes().value as f64);
    Check::Copied.about(MODEL, "most nodes of 1.1", 16.0, 0.0, Version::V1_1.most_nodes().value as f64);
}

#[test]
fn shares_of_the_published_rates() {
    let v = Version::V2_5;
    let raw = v.used_width().value() * f64::from(v.most_bits().value);
    Check::Copied.about(SHARES, "480 x 10 bits x 195.3125 kHz, Mb/s", 937.5, 1e-9, raw);
    Check::Copied.about(
        SHARES,
        "PHY rate of a channel over that",
        0.747,
        5e-4,
        v.phy_per_channel().value.value() / raw,
    );
    let ratio = v.mac_ceiling(2).value.value() / v.phy_ceiling().value.value();
    Check::Copied.about(SHARES, "2.5: MAC over PHY", 0.714, 5e-4, ratio);
    let ratio =
        |nodes| Version::V2_0.mac_ceiling(nodes).value.value() / Version::V2_0.phy_ceiling().value.value();
    Check::Copied.about(SHARES, "2.0: MAC over PHY between two nodes", 0.714, 5e-4, ratio(2));
    Check::Copied.about(SHARES, "2.0: MAC over PHY among more", 0.571, 5e-4, ratio(3));
}

#[test]
fn bits_of_a_symbol_of_1_x() {
    let v = Version::V1_1;
    let symbol = f64::from(v.used_subcarriers().value * v.most_bits().value);
    Check::Copied.about(SYMBOL, "bits of a symbol", 1792.0, 0.0, symbol);
    for (prefix, raw, coded) in [(16.0, 329.41, 304.07), (32.0, 311.11, 287.18), (64.0, 280.00, 258.46)] {
        let samples = f64::from(v.tones().value) + prefix;
        let rate = symbol * v.channel_width().value.value() / samples;
        Check::Copied.about(
            SYMBOL,
            &format!("raw rate with a prefix of {prefix} samples, Mb/s"),
            raw,
            0.0051,
            rate,
        );
        Check::Copied.about(SYMBOL, "the same, coded, Mb/s", coded, 0.0051, rate * 192.0 / 208.0);
    }
    // The published rate lies between the two longer prefixes' coded rates.
    check_between(ARTICLE, "PHY rate of 1.1, Mb/s", 258.46, 287.18, v.phy_ceiling().value.value());
}

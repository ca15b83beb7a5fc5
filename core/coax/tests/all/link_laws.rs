//! Laws that hold for any path, and what is refused.

use coax::estimates::link::PHY_FULL_1X;
use coax::link::shared::{Demand, broadcast_rate, share};
use coax::link::{BitLoading, Candidates, Limit, MacEfficiency, MeanBits, bits, mac_rate, placements};
use coax::{
    DecibelMilliwatts, Decibels, Dice, EthernetPort, LinkDraw, LinkError, LinkRate, MegabitsPerSecond,
    Megahertz, Node, Version,
};
use proptest::prelude::*;

fn grid(points: u32) -> Vec<Megahertz> {
    (0..points).map(|n| Megahertz(1125.0 + 550.0 * f64::from(n) / f64::from(points - 1))).collect()
}

fn node(version: Version) -> Node {
    Node { version, port: EthernetPort::TenGigabit }
}

fn any_version() -> impl Strategy<Value = Version> {
    prop::sample::select(Version::ALL.to_vec())
}

fn any_port() -> impl Strategy<Value = EthernetPort> {
    prop::sample::select(EthernetPort::ALL.to_vec())
}

/// Power transfers from none over -120 dB to +30 dB (an amplifier), and the largest number there is.
fn any_transfer(points: usize) -> impl Strategy<Value = Vec<f64>> {
    let one = prop_oneof![
        1 => Just(0.0),
        8 => (-120.0..30.0_f64).prop_map(|db| 10_f64.powf(db / 10.0)),
        1 => prop::sample::select(vec![f64::MIN_POSITIVE, f64::MAX]),
    ];
    prop::collection::vec(one, points)
}

fn draw(seed: u64) -> LinkDraw {
    LinkDraw::draw(&mut Dice::thrown(seed, 0, [3; 16]))
}

proptest! {
    #[test]
    fn no_rate_exceeds_version_or_port_and_none_is_negative(
        transfer in any_transfer(64), versions in (any_version(), any_version()), ports in (any_port(), any_port()),
        nodes in 2_usize..16, place in any::<prop::sample::Index>(), seed: u64,
    ) {
        let grid = grid(64);
        let (from, to) = (
            Node { version: versions.0, port: ports.0 },
            Node { version: versions.1, port: ports.1 },
        );
        let all = placements(versions.0.max(versions.1));
        let found = coax::link::rate(&grid, &transfer, from, to, place.get(&all), nodes, &draw(seed)).unwrap();
        let older = versions.0.min(versions.1);
        for value in [found.phy, found.mac, found.net] {
            prop_assert!(value.value().is_finite() && value.value() >= 0.0);
        }
        let within = 1.0 + 1e-12;
        let most = if older.is_1x() { PHY_FULL_1X.span.high } else { older.phy_ceiling().value.value() };
        prop_assert!(found.phy.value() <= most * within);
        prop_assert!(found.mac.value() <= older.mac_ceiling(nodes).value.value() * within);
        prop_assert!(found.mac <= found.phy);
        prop_assert!(found.net <= found.mac);
        prop_assert!(found.net <= from.port.payload_rate() && found.net <= to.port.payload_rate());
    }

    #[test]
    fn more_loss_is_never_more_rate(
        transfer in any_transfer(64), at in 0_usize..64, loss in 0.0..40.0_f64, version in any_version(), seed: u64,
    ) {
        let grid = grid(64);
        let mut worse = transfer.clone();
        worse[at] *= 10_f64.powf(-loss / 10.0);
        let load = |transfer: &[f64]| {
            BitLoading::new(&grid, transfer, node(version), node(version), &draw(seed)).unwrap()
        };
        let (before, after) = (load(&transfer), load(&worse));
        for place in placements(version).iter().step_by(3) {
            let (before, after) = (before.rate(place, 3).unwrap(), after.rate(place, 3).unwrap());
            prop_assert!(after.phy.value() <= before.phy.value() + 1e-6);
            prop_assert!(after.net.value() <= before.net.value() + 1e-6);
        }
    }

    #[test]
    fn a_mixed_pair_is_a_pair_of_the_older(
        transfer in any_transfer(64), versions in (any_version(), any_version()), seed: u64,
    ) {
        let grid = grid(64);
        let older = versions.0.min(versions.1);
        let load = |a, b| BitLoading::new(&grid, transfer.as_slice(), node(a), node(b), &draw(seed)).unwrap();
        for place in placements(versions.0.max(versions.1)).iter().step_by(5) {
            let mixed = load(versions.0, versions.1).rate(place, 4).unwrap();
            prop_assert_eq!(mixed, load(older, older).rate(place, 4).unwrap());
        }
    }

    #[test]
    fn mean_bits_are_the_mean_of_bits_over_the_spread(
        snr in -10.0..60.0_f64, spread in 0.5..6.0_f64, most in prop::sample::select(vec![8_u32, 10]),
    ) {
        let (low, high) = (Decibels(-spread).power(), Decibels(spread).power());
        let ratio = Decibels(snr).power();
        let counted: u32 = (0..20_000)
            .map(|n| {
                let noise = low + (high - low) * (f64::from(n) + 0.5) / 20_000.0;
                bits(ratio / noise, 1.0, most)
            })
            .sum();
        let mean = MeanBits::new(most, Decibels(spread)).at(ratio);
        prop_assert!((mean - f64::from(counted) / 20_000.0).abs() < 1e-3);
    }

    #[test]
    fn what_is_no_power_transfer_is_refused(
        at in 0_usize..16, wrong in prop::sample::select(vec![f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1e-9]),
    ) {
        let grid = grid(16);
        let mut transfer = vec![0.01; 16];
        transfer[at] = wrong;
        let found = BitLoading::new(&grid, transfer.as_slice(), node(Version::V2_5), node(Version::V2_5), &LinkDraw::likely());
        let named = match found {
            Err(LinkError::Transfer { frequency, .. }) => Some(frequency),
            _ => None,
        };
        prop_assert_eq!(named, Some(grid[at]));
    }
}

#[test]
fn grids_that_are_none_are_refused() {
    let load = |grid: &[f64], transfers: usize| {
        let grid: Vec<Megahertz> = grid.iter().copied().map(Megahertz).collect();
        let node = node(Version::V2_5);
        BitLoading::new(&grid, vec![0.1; transfers], node, node, &LinkDraw::likely()).map(|_| ()).unwrap_err()
    };
    assert!(matches!(load(&[1125.0, 1675.0], 3), LinkError::Lengths { frequencies: 2, transfers: 3 }));
    assert!(matches!(load(&[], 0), LinkError::Grid { place: 0, .. }));
    assert!(matches!(load(&[1200.0], 1), LinkError::Grid { place: 0, .. }));
    assert!(matches!(load(&[1125.0, 1675.0, 1675.0], 3), LinkError::Grid { place: 2, .. }));
    assert!(matches!(load(&[-1.0, 1675.0], 2), LinkError::Grid { place: 0, .. }));
    assert!(matches!(load(&[1125.0, f64::NAN], 2), LinkError::Grid { place: 1, .. }));
    let endless = LinkDraw { tx_power: coax::DecibelMilliwatts(f64::INFINITY), ..LinkDraw::likely() };
    let node = node(Version::V1_1);
    assert!(BitLoading::new(&grid(4), [0.1; 4], node, node, &endless).is_err());
}

#[test]
fn a_path_known_over_too_little_is_refused() {
    let grid: Vec<Megahertz> = (0..100).map(|n| Megahertz(1125.0 + f64::from(n))).collect();
    let node = node(Version::V2_5);
    let load = BitLoading::new(&grid, [0.1; 100], node, node, &LinkDraw::likely()).unwrap();
    assert!(matches!(load.rate(&placements(Version::V2_5)[0], 2), Err(LinkError::Uncovered { .. })));
}

#[test]
fn nodes_that_hear_nothing_do_not_link() {
    let grid = grid(64);
    for version in Version::ALL {
        for transfer in [0.0, 1e-14] {
            let load =
                BitLoading::new(&grid, [transfer; 64], node(version), node(version), &LinkDraw::likely());
            let found = load.unwrap().rate(&placements(version)[0], 2).unwrap();
            assert!(!found.links());
            assert_eq!((found.net, found.limit), (MegabitsPerSecond(0.0), Limit::Path));
        }
    }
}

#[test]
fn a_1_x_pair_works_at_the_beacon_of_a_newer_network_if_it_is_one_of_its_channels() {
    let grid = grid(512);
    let old = node(Version::V1_1);
    let load = BitLoading::new(&grid, [0.001; 512], old, old, &LinkDraw::likely()).unwrap();
    for place in placements(Version::V2_5) {
        let found = load.rate(&place, 3).unwrap();
        // D8, the highest channel of 1.x: 1500 MHz (MoCA 1.1 Reference Specification, Table 1-1).
        assert_eq!(found.links(), place.beacon().centre.value() <= 1500.0);
        assert_eq!(found.limit == Limit::Band, !found.links());
    }
}

#[test]
fn the_grid_need_not_meet_the_subcarriers() {
    // A notch of 20 dB, 30 MHz wide: fine and coarse grids that see it agree within two percent.
    let transfer = |f: f64| 10_f64.powf(-(40.0 + 20.0 * (-((f - 1240.0) / 30.0).powi(2)).exp()) / 10.0);
    let phy = |points| {
        let grid = grid(points);
        let path: Vec<f64> = grid.iter().map(|f| transfer(f.value())).collect();
        let node = node(Version::V2_5);
        let found =
            coax::link::rate(&grid, &path, node, node, &placements(Version::V2_5)[0], 2, &LinkDraw::likely());
        found.unwrap().phy.value()
    };
    assert!((phy(128) / phy(5000) - 1.0).abs() < 0.02);
    assert!((phy(511) / phy(5000) - 1.0).abs() < 0.002);
}

#[test]
fn all_placements_at_once_are_each_by_itself() {
    let grid = grid(512);
    let path: Vec<f64> =
        grid.iter().map(|f| 10_f64.powf(-(40.0 + 25.0 * (f.value() / 31.0).sin()) / 10.0)).collect();
    for version in Version::ALL {
        let node = node(version);
        let load = BitLoading::new(&grid, path.as_slice(), node, node, &LinkDraw::likely()).unwrap();
        let candidates = Candidates::new(placements(Version::V2_5));
        let alone: Vec<LinkRate> =
            candidates.placements().iter().map(|place| load.rate(place, 3).unwrap()).collect();
        assert_eq!(load.rates(&candidates, 3).unwrap(), alone);
    }
}

#[test]
fn below_a_usable_rate_there_is_no_link() {
    // A path ever worse: rates fall until one is below what anybody would call a network, and are none from there on.
    let (grid, node) = (grid(64), node(Version::V2_0));
    let place = placements(Version::V2_0)[0].clone();
    // A receiver that works with anything it can tell from noise.
    let keen = LinkDraw { least_received: DecibelMilliwatts(-200.0), ..LinkDraw::likely() };
    let rate = |loss: f64| {
        let path = vec![Decibels(-loss).power(); 64];
        coax::link::rate(&grid, &path, node, node, &place, 2, &keen).unwrap()
    };
    let rates: Vec<LinkRate> = (40..120).map(|loss| rate(f64::from(loss))).collect();
    let none = rates.iter().position(|rate| !rate.links()).unwrap();
    assert!(rates[..none].iter().all(|rate| rate.net.value() >= 15.0 && rate.phy.value() > 0.0));
    assert!(rates[none..].iter().all(|rate| *rate == LinkRate::NONE));
    assert!(rates[none - 1].net.value() < 60.0);
}

#[test]
fn a_channel_in_which_too_little_arrives_carries_nothing() {
    // Sent 3 dBm, needed -70 dBm: 73 dB may be lost. Half of the channels lose 72, half 74.
    let grid = grid(512);
    let draw = LinkDraw {
        tx_power: DecibelMilliwatts(3.0),
        least_received: DecibelMilliwatts(-70.0),
        ..LinkDraw::likely()
    };
    let loss = |f: f64| if f < 1400.0 { 72.0 } else { 74.0 };
    let path: Vec<f64> = grid.iter().map(|f| Decibels(-loss(f.value())).power()).collect();
    let node = node(Version::V2_0);
    let load = BitLoading::new(&grid, path.as_slice(), node, node, &draw).unwrap();
    for place in placements(Version::V2_0) {
        let channel = place.channels()[0];
        let (low, high) = (channel.low().value(), channel.high().value());
        let bits = load.mean_bits(channel).unwrap();
        assert!(high > 1400.0 || bits > 0.0);
        assert!(low < 1400.0 || bits == 0.0);
    }
}

#[test]
fn a_channel_is_averaged_over_the_straight_lines_between_grid_points() {
    // Uneven grid, bits that rise and fall; compared with 100,000 single values on the straight lines.
    let grid: Vec<Megahertz> = [1100.0, 1131.0, 1160.0, 1175.0, 1214.0, 1260.0].map(Megahertz).to_vec();
    let path = [-60.0, -75.0, -50.0, -68.0, -58.0, -80.0].map(|db| Decibels(db).power());
    let node = node(Version::V2_0);
    let load = BitLoading::new(&grid, path.as_slice(), node, node, &LinkDraw::likely()).unwrap();
    let line = |f: f64| {
        let cell = (1..grid.len()).find(|&n| f <= grid[n].value()).unwrap();
        let (f0, f1) = (grid[cell - 1].value(), grid[cell].value());
        load.bits()[cell - 1] + (load.bits()[cell] - load.bits()[cell - 1]) * (f - f0) / (f1 - f0)
    };
    let channel = placements(Version::V2_0)[0].channels()[0];
    // 480 of 512 subcarriers (from memory) of 100 MHz: 93.75 MHz.
    let low = channel.centre.value() - 93.75 / 2.0;
    let mean = (0..100_000).map(|n| line(low + 93.75 * (f64::from(n) + 0.5) / 1e5)).sum::<f64>() / 1e5;
    assert!((load.mean_bits(channel).unwrap() - mean).abs() < 1e-6);
}

#[test]
fn one_channel_of_a_bonded_network_is_held_to_one_channel() {
    // 2.0 press release, 16 June 2010: 400 Mb/s on one channel in a network of more than two nodes.
    let grid = grid(64);
    let likely = LinkDraw::likely();
    let draw = LinkDraw { mac_efficiency: MacEfficiency { v2_0: 1.0, ..likely.mac_efficiency }, ..likely };
    let node = node(Version::V2_0Bonded);
    let load = BitLoading::new(&grid, [0.1; 64], node, node, &draw).unwrap();
    let single = placements(Version::V2_0)[0].clone();
    let found = load.rate(&single, 4).unwrap();
    assert!((found.net.value() - 400.0).abs() < 1e-9);
    assert_eq!(found.limit, Limit::Band);
}

#[test]
fn mac_rates_grow_with_phy_and_position() {
    for version in Version::ALL {
        for nodes in [2, 5] {
            let channels = version.most_channels().value;
            let mac = |phy: f64, position| {
                mac_rate(version, MegabitsPerSecond(phy), channels, nodes, position).value()
            };
            for phy in (0..3500).step_by(7).map(f64::from) {
                assert!(mac(phy + 7.0, 0.5) >= mac(phy, 0.5));
                assert!(mac(phy, 1.0) >= mac(phy, 0.0));
            }
        }
    }
}

fn reaching(mac: f64, net: f64) -> LinkRate {
    let [phy, mac, net] = [mac / 0.7, mac, net].map(MegabitsPerSecond);
    LinkRate { phy, mac, net, limit: Limit::EthernetPort, is_clean: true }
}

fn wanting(wanted: f64, alone: LinkRate) -> Demand {
    Demand { wanted: MegabitsPerSecond(wanted), alone }
}

#[test]
fn demands_share_one_capacity() {
    // By hand: 500 of 2500 is a fifth of the time, 400 of 800 a half.
    let fits = share(&[wanting(500.0, reaching(2500.0, 949.0)), wanting(400.0, reaching(800.0, 800.0))]);
    assert!((fits.airtime - 0.7).abs() < 1e-12 && fits.fits());
    // Twice as much takes 1.4 of the time: everything comes down to 1/1.4, and 800 of 949 is no obstacle.
    let over = share(&[wanting(900.0, reaching(2250.0, 949.0)), wanting(800.0, reaching(800.0, 800.0))]);
    assert!((over.airtime - 1.4).abs() < 1e-12 && (over.factor - 1.0 / 1.4).abs() < 1e-12 && !over.fits());
    // Time is left, but the port lets only 949 of 1898 through.
    let port = share(&[wanting(1898.0, reaching(2500.0, 949.0))]);
    assert!(port.airtime < 1.0 && (port.factor - 0.5).abs() < 1e-12);
    // Nothing passes where there is no link; nothing wanted takes no time.
    let dead = share(&[wanting(1.0, reaching(0.0, 0.0))]);
    assert!(dead.airtime.is_infinite() && dead.factor == 0.0);
    let idle = share(&[wanting(0.0, reaching(0.0, 0.0))]);
    assert!(idle.airtime == 0.0 && idle.fits());
}

#[test]
fn broadcast_runs_at_what_the_weakest_hears() {
    let rate = broadcast_rate(&[reaching(2500.0, 949.0), reaching(300.0, 300.0), reaching(800.0, 800.0)]);
    assert_eq!(rate, MegabitsPerSecond(300.0));
    assert_eq!(broadcast_rate(&[]), MegabitsPerSecond(0.0));
}

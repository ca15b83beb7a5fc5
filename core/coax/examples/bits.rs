//! Prints which instruction set the solver takes here, and a sum over every bit of what it finds in some houses: the same sum on
//! every instruction set. Compared by `tests/lanes-emulated`.
#![expect(clippy::unwrap_used, reason = "a measuring tool stops at the first thing that is wrong")]

use coax::model::{Cable, Splitter};
use coax::{
    Decibels, FrequencyGrid, Megahertz, Metres, Model, Network, OutletIndex, PartIndex, Sweep, Wanted,
};

/// What `multiversion` takes, by what the processor says of itself.
fn path() -> &'static str {
    #[cfg(target_arch = "x86_64")]
    {
        let detected = [
            std::is_x86_feature_detected!("avx512f"),
            std::is_x86_feature_detected!("avx512dq"),
            std::is_x86_feature_detected!("avx512vl"),
        ];
        if detected == [true; 3] {
            return "AVX-512";
        }
        if std::is_x86_feature_detected!("avx2") {
            return "AVX2";
        }
        return "SSE2";
    }
    #[cfg(target_arch = "aarch64")]
    return "NEON";
    #[allow(unreachable_code, reason = "on other processors")]
    "none of its own"
}

/// A splitter of so many legs at the end of a run, each leg with a run to an outlet, but for the first, on which the next hangs.
fn house(legs: &[usize]) -> Network {
    let mut network = Network::new();
    let run = |metres: f64| Model::Cable(Cable::new(Metres(metres), 73.0, 0.65, 0.0012, 0.83).unwrap());
    let mut metres = 2.0;
    let mut feed = None;
    for &count in legs {
        let cable = network.add(run(metres));
        match feed {
            None => drop(network.outlet(cable, 0)),
            Some(leg) => network.join(leg, 1, cable, 0),
        }
        let model = Splitter::new(&vec![Decibels(7.5); count], Decibels(22.0), Decibels(17.0)).unwrap();
        let splitter = network.add(Model::Splitter(model));
        network.join(cable, 1, splitter, 0);
        for leg in 2..=count {
            metres += 0.7;
            let cable = network.add(run(metres));
            network.join(splitter, leg, cable, 0);
            network.outlet(cable, 1);
        }
        feed = Some(splitter);
    }
    network.outlet(feed.unwrap(), 1);
    network
}

fn main() {
    let mut sum = 0xcbf2_9ce4_8422_2325_u64;
    let mut add = |value: f64| sum = (sum ^ value.to_bits()).wrapping_mul(0x0100_0000_01b3);
    let grid = FrequencyGrid::even(Megahertz(60.0), Megahertz(1675.0), 331).unwrap();
    for legs in [&[2][..], &[3, 2], &[4, 2, 3], &[8, 4, 3, 2]] {
        let tree = house(legs).tree(PartIndex(0)).unwrap();
        let outlets = tree.outlets();
        let all = tree.sample(&grid).unwrap().solve(Wanted::All).unwrap();
        for to in 0..outlets {
            for from in 0..outlets {
                for value in all.transfer(OutletIndex(to), OutletIndex(from)).unwrap() {
                    add(value.re);
                    add(value.im);
                }
            }
        }
        let asked = [(OutletIndex(0), OutletIndex(outlets - 1)), (OutletIndex(1), OutletIndex(outlets - 1))];
        let powers = Sweep::on(grid.clone()).powers(&[&tree], &asked).unwrap();
        for pair in 0..asked.len() {
            powers[0].of(pair).iter().copied().for_each(&mut add);
        }
    }
    println!("{} {sum:016x}", path());
}

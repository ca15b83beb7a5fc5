//! Solving a sampled tree for all pairs and for a few, sampling and solving a house anew, and filling as much memory as all pairs
//! take, by size of house.
#![expect(clippy::unwrap_used, reason = "a bench stops at the first thing that is wrong")]

use std::hint::black_box;

use coax::model::{Cable, Splitter};
use coax::{
    Decibels, FrequencyGrid, Megahertz, Metres, Model, Network, OutletIndex, PartIndex, Solution, Sweep,
    Tree, Wanted,
};
use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};

/// Splitters of these legs, each fed by a run from the first free leg; a run to every outlet.
fn house(splitters: usize, legs: usize) -> Tree {
    let run = |k: usize| {
        let metres = 3.0 + (k % 7) as f64;
        Model::Cable(Cable::new(Metres(metres), 73.0 + (k % 5) as f64, 0.65, 0.0012, 0.83).unwrap())
    };
    let mut network = Network::new();
    let drop = network.add(run(0));
    network.outlet(drop, 0);
    let mut free = std::collections::VecDeque::from([(drop, 1)]);
    let mut left = legs;
    for k in 0..splitters {
        let count = (left / (splitters - k)).clamp(2, 4);
        left -= count;
        let model = Splitter::new(&vec![Decibels(7.0); count], Decibels(22.0), Decibels(17.0)).unwrap();
        let part = network.add(Model::Splitter(model));
        let mut feed = free.pop_front().unwrap();
        if k > 0 {
            let cable = network.add(run(k));
            network.join(feed.0, feed.1, cable, 0);
            feed = (cable, 1);
        }
        network.join(feed.0, feed.1, part, 0);
        free.extend((1..=count).map(|port| (part, port)));
    }
    for (k, (part, port)) in free.into_iter().enumerate() {
        let cable = network.add(run(k));
        network.join(part, port, cable, 0);
        network.outlet(cable, 1);
    }
    network.tree(PartIndex(0)).unwrap()
}

fn tree(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("tree");
    for (splitters, legs, points) in [(3, 8, 512), (8, 21, 512), (16, 43, 2560), (32, 88, 512)] {
        let tree = house(splitters, legs);
        let grid = FrequencyGrid::even(Megahertz(5.0), Megahertz(1675.0), points).unwrap();
        let sampled = tree.sample(&grid).unwrap();
        let mut solution = Solution::empty();
        let name = format!("{} parts, {} outlets, {points} points", tree.parts(), tree.outlets());
        group.throughput(Throughput::Elements((tree.parts() * points) as u64));
        group.bench_function(BenchmarkId::new("all pairs", &name), |bench| {
            bench.iter(|| sampled.solve_into(Wanted::All, black_box(&mut solution)).unwrap());
        });
        // What no solution of all pairs can undercut: as much memory, filled.
        let values = tree.outlets() * (tree.outlets() + 1) / 2 * points;
        let mut memory = vec![coax::Complex64::ZERO; values];
        group.bench_function(BenchmarkId::new("as much memory filled", &name), |bench| {
            bench.iter(|| black_box(&mut memory).fill(black_box(coax::Complex64::ONE)));
        });
        let few = [(OutletIndex(1), OutletIndex(2)), (OutletIndex(3), OutletIndex(4))];
        group.bench_function(BenchmarkId::new("two pairs", &name), |bench| {
            bench.iter(|| sampled.solve_into(Wanted::Pairs(&few), black_box(&mut solution)).unwrap());
        });
        group.bench_function(BenchmarkId::new("sample anew", &name), |bench| {
            bench.iter(|| black_box(&tree).sample(&grid).unwrap());
        });
        group.bench_function(BenchmarkId::new("anew, all pairs", &name), |bench| {
            bench.iter(|| {
                black_box(&tree).solve_over_into(&grid, Wanted::All, black_box(&mut solution)).unwrap();
            });
        });
        let mut sweep = Sweep::on(grid.clone());
        group.bench_function(BenchmarkId::new("anew, two pairs", &name), |bench| {
            bench.iter(|| sweep.powers(&[black_box(&tree)], &few).unwrap());
        });
    }
    group.finish();
}

criterion_group!(benches, tree);
criterion_main!(benches);

//! Solves every reference network of a folder, writes its matrix and how long it took.
//!
//! `time_tree FOLDER`: beside each `x.json`, `x.result` holds the matrix between all outlets as little-endian pairs of doubles
//! (frequency, row, column) and `x.seconds` the median time of a solution of all pairs. Used by `tests/bench-peer`.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a measuring tool stops at the first thing that is wrong"
)]

#[path = "../tests/all/reference/mod.rs"]
#[expect(dead_code, reason = "the tests use all of it")]
mod reference;

use std::path::Path;
use std::time::{Duration, Instant};

use coax::{Solution, Wanted};

fn main() {
    let folder = std::env::args().nth(1).unwrap_or_else(|| panic!("usage: time_tree FOLDER"));
    for path in reference::paths(Path::new(&folder)) {
        let house = reference::read(&path);
        let sampled = house.network.tree(house.root).unwrap().sample(&house.grid).unwrap();
        let mut solution = Solution::empty();
        let mut times = Vec::new();
        let begun = Instant::now();
        while times.len() < 51 || begun.elapsed() < Duration::from_millis(500) {
            let begun = Instant::now();
            sampled.solve_into(Wanted::All, &mut solution).unwrap();
            times.push(begun.elapsed());
        }
        times.sort();
        let median = times[times.len() / 2];
        let pairs = house.outlets.iter().flat_map(|to| house.outlets.iter().map(move |from| (*to, *from)));
        let pairs: Vec<_> = pairs.map(|(to, from)| solution.transfer(to, from).unwrap()).collect();
        let mut bytes = Vec::new();
        for index in 0..house.grid.len() {
            for value in pairs.iter().map(|pair| pair[index]) {
                bytes.extend(value.re.to_le_bytes());
                bytes.extend(value.im.to_le_bytes());
            }
        }
        std::fs::write(path.with_extension("result"), bytes).unwrap();
        std::fs::write(path.with_extension("seconds"), median.as_secs_f64().to_string()).unwrap();
    }
}

//! Reads paths from standard input and prints the rates over them, all estimates at their likely values.
//!
//! In: `{"mhz": [...], "paths": {"name": [|S|^2 at each frequency]}}`. Out: a list of `{"path", "version", "nodes", "phy", "mac"}` in
//! Mb/s, on the first placement of each version. `tests/peer/forecast` works out the same by itself.
#![expect(clippy::unwrap_used, reason = "a measuring tool stops at the first thing that is wrong")]

use std::collections::BTreeMap;

use coax::link::placements;
use coax::{EthernetPort, LinkDraw, Megahertz, Node, Version};
use serde::Deserialize;
use serde_json::json;

#[derive(Deserialize)]
struct Asked {
    mhz: Vec<f64>,
    paths: BTreeMap<String, Vec<f64>>,
}

fn main() {
    let asked: Asked = serde_json::from_reader(std::io::stdin()).unwrap();
    let grid: Vec<Megahertz> = asked.mhz.iter().copied().map(Megahertz).collect();
    let mut told = Vec::new();
    for (path, power) in &asked.paths {
        for (name, version) in [
            ("1.1", Version::V1_1),
            ("2.0", Version::V2_0),
            ("2.0 bonded", Version::V2_0Bonded),
            ("2.5", Version::V2_5),
        ] {
            let node = Node { version, port: EthernetPort::TenGigabit };
            let placement = placements(version).into_iter().next().unwrap();
            let centres: Vec<f64> =
                placement.channels().iter().map(|channel| channel.centre.value()).collect();
            for nodes in [2, 3] {
                let rate = coax::link::rate(&grid, power, node, node, &placement, nodes, &LinkDraw::likely())
                    .unwrap();
                told.push(json!({
                    "path": path, "version": name, "nodes": nodes, "centres": centres,
                    "phy": rate.phy.value(), "mac": rate.mac.value(),
                }));
            }
        }
    }
    println!("{}", serde_json::Value::Array(told));
}

//! Reads reference networks: JSON files that hold a network and its scattering matrix as another program found it.
//!
//! `tests/vectors/check_vectors.py` states the conventions. Beside the kinds and keys there, a file may have parts of kind
//! `multiport` (as `splitter`, but the arrays need not be symmetric) and, instead of `s`, `s_full`: per frequency
//! the whole matrix between the external ports, row by row (row: where the wave leaves).

use std::path::{Path, PathBuf};
use std::sync::Arc;

use coax::model::{Cable, Entry, EntryFilter, ExplicitMultiport, Junction, Model};
use coax::{Decibels, End, FrequencyGrid, Megahertz, Metres, Network, OutletIndex, PartIndex};
use num_complex::Complex64;
use serde::Deserialize;
use serde_json::Value;

#[derive(Deserialize)]
pub struct Values {
    re: Vec<f64>,
    im: Vec<f64>,
}

impl Values {
    pub fn complex(&self) -> Vec<Complex64> {
        assert_eq!(self.re.len(), self.im.len());
        self.re.iter().zip(&self.im).map(|(&re, &im)| Complex64::new(re, im)).collect()
    }
}

#[derive(Deserialize)]
struct File {
    name: String,
    frequencies_hz: Vec<f64>,
    parts: Vec<Value>,
    connections: Vec<(String, usize, String, usize)>,
    terminations: Vec<(String, usize, String)>,
    external: Vec<(String, usize)>,
    #[serde(default)]
    s: Vec<Values>,
    #[serde(default)]
    s_full: Vec<Values>,
    #[serde(default)]
    part_s_at: Vec<usize>,
    #[serde(default)]
    part_s: std::collections::HashMap<String, Vec<Values>>,
}

/// A network and what another program found for it.
pub struct Reference {
    pub name: String,
    pub network: Network,
    pub root: PartIndex,
    pub outlets: Vec<OutletIndex>,
    pub grid: FrequencyGrid,
    /// Per frequency the whole matrix, row by row; empty if the file holds none.
    pub expected: Vec<Vec<Complex64>>,
    pub models: Vec<Arc<Model>>,
    /// (part, index of frequency, upper triangle row by row).
    pub expected_parts: Vec<(usize, usize, Vec<Complex64>)>,
}

fn number(part: &Value, key: &str) -> f64 {
    part[key].as_f64().unwrap_or_else(|| panic!("{key} of {part}"))
}

fn table(part: &Value, key: &str, row: usize, column: usize) -> Option<f64> {
    let value = &part[key][row][column];
    assert!(value.is_number() || value.is_null(), "{key}[{row}][{column}] of {part}");
    value.as_f64()
}

fn model(part: &Value) -> Model {
    let ports = usize::try_from(part["ports"].as_u64().unwrap()).unwrap();
    match part["kind"].as_str().unwrap() {
        "cable" => Model::Cable(
            Cable::new(
                Metres(number(part, "length_m")),
                number(part, "zc_ohm"),
                number(part, "k1"),
                number(part, "k2"),
                number(part, "vf"),
            )
            .unwrap(),
        ),
        "filter" => Model::EntryFilter(
            EntryFilter::new(
                Decibels(number(part, "pass_db")),
                Decibels(number(part, "stop_db")),
                Megahertz(number(part, "fc_hz") / 1e6),
                Megahertz(number(part, "w_hz") / 1e6),
                Decibels(number(part, "diss_db")),
                number(part, "tau_s") * 1e9,
            )
            .unwrap(),
        ),
        "tee" => Model::Junction(Junction::new(ports).unwrap()),
        "splitter" | "multiport" => {
            let entry = |row, column| Entry {
                loss: table(part, "x0", row, column),
                slope: table(part, "x1", row, column).unwrap(),
                delay_ns: table(part, "tau", row, column).unwrap() * 1e9,
                sign: table(part, "sign", row, column).unwrap(),
            };
            let entries = (0..ports).flat_map(|row| (0..ports).map(move |column| entry(row, column)));
            Model::Law(ExplicitMultiport::new(ports, entries.collect()).unwrap())
        }
        kind => panic!("a part of kind {kind}"),
    }
}

/// The files of all networks of a folder, by name.
pub fn paths(folder: &Path) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
    let mut paths: Vec<_> = entries.map(|entry| entry.unwrap().path()).collect();
    paths.retain(|path| path.extension().is_some_and(|extension| extension == "json"));
    paths.sort();
    assert!(!paths.is_empty(), "no network in {}", folder.display());
    paths
}

/// All networks of a folder, by name of file.
pub fn read_folder(folder: &Path) -> Vec<Reference> {
    paths(folder).iter().map(|path| read(path)).collect()
}

/// One network.
pub fn read(path: &Path) -> Reference {
    let text = std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let file: File =
        serde_json::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let mut network = Network::new();
    let models: Vec<_> = file.parts.iter().map(|part| Arc::new(model(part))).collect();
    let ids: Vec<&str> = file.parts.iter().map(|part| part["id"].as_str().unwrap()).collect();
    for model in &models {
        network.add_shared(Arc::clone(model));
    }
    let at = |id: &str| PartIndex(ids.iter().position(|known| *known == id).unwrap());
    for (a, port_a, b, port_b) in &file.connections {
        network.join(at(a), *port_a, at(b), *port_b);
    }
    for (part, port, how) in &file.terminations {
        let end = match how.as_str() {
            "open" => End::Open,
            "matched" => End::Matched,
            other => panic!("a termination {other}"),
        };
        network.end(at(part), *port, end);
    }
    let outlets: Vec<_> = file.external.iter().map(|(part, port)| network.outlet(at(part), *port)).collect();
    let k = outlets.len();
    let whole = |triangle: &Values| {
        let values = triangle.complex();
        assert_eq!(values.len(), k * (k + 1) / 2);
        let mut matrix = vec![Complex64::ZERO; k * k];
        let mut next = values.into_iter();
        for row in 0..k {
            for column in row..k {
                let value = next.next().unwrap();
                matrix[row * k + column] = value;
                matrix[column * k + row] = value;
            }
        }
        matrix
    };
    let expected: Vec<Vec<Complex64>> = if file.s_full.is_empty() {
        file.s.iter().map(whole).collect()
    } else {
        file.s_full.iter().map(Values::complex).collect()
    };
    let expected_parts = file
        .part_s
        .iter()
        .flat_map(|(id, all)| {
            assert_eq!(all.len(), file.part_s_at.len());
            file.part_s_at.iter().zip(all).map(|(&index, values)| (at(id).0, index, values.complex()))
        })
        .collect();
    Reference {
        name: file.name,
        root: at(&file.external[0].0),
        network,
        outlets,
        grid: FrequencyGrid::new(file.frequencies_hz.iter().map(|hz| Megahertz(hz / 1e6)).collect()).unwrap(),
        expected,
        models,
        expected_parts,
    }
}

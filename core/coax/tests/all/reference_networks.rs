//! Our solver against reference networks: scattering matrices that a general RF library (scikit-rf 2.2.0) and a dense
//! solve in 80-bit arithmetic found and agree on.

use std::path::Path;

use crate::reference::{Reference, read_folder};
use coax::{ScatterMatrix, Wanted};

/// The cable's phase, up to 1300 rad, is itself only good to 3e-13 in double precision.
const MOST_DIFFERENCE: f64 = 1e-11;

fn check(reference: &Reference) {
    let name = &reference.name;
    let points = reference.grid.len();
    let k = reference.outlets.len();
    assert_eq!(reference.expected.len(), points, "{name}: a matrix for each frequency");
    for root in 0..reference.network.parts() {
        // The answer must not hang on the part the tree is hung from.
        let tree = reference.network.tree(coax::PartIndex(root)).unwrap();
        let solution = tree.sample(&reference.grid).unwrap().solve(Wanted::All).unwrap();
        for (i, &to) in reference.outlets.iter().enumerate() {
            for (j, &from) in reference.outlets.iter().enumerate() {
                let found = solution.transfer(to, from).unwrap();
                let loss = solution.loss(to, from);
                for index in 0..points {
                    let expected = reference.expected[index][i * k + j];
                    let difference = (found[index] - expected).norm();
                    assert!(difference <= MOST_DIFFERENCE, "{name} S[{i},{j}] at {index}: {difference:e}");
                    if expected.norm() == 0.0 {
                        assert!(found[index].norm() == 0.0, "{name}: an exact zero is {}", found[index]);
                        assert!(loss[index].value() == f64::INFINITY);
                    } else if expected.norm() > 1e-6 {
                        let decibels = loss[index].value() + 20.0 * expected.norm().log10();
                        assert!(decibels.abs() <= 1e-9, "{name} S[{i},{j}] at {index}: {decibels:e} dB");
                    }
                }
            }
        }
    }
}

fn check_parts(reference: &Reference) {
    let mut matrix = ScatterMatrix::new(0);
    for (part, index, expected) in &reference.expected_parts {
        reference.models[*part].scatter(reference.grid.frequencies()[*index], &mut matrix);
        let n = matrix.ports();
        assert_eq!(expected.len(), n * (n + 1) / 2);
        let mut next = expected.iter();
        for row in 0..n {
            for column in row..n {
                let difference = (matrix.at(row, column) - next.next().unwrap()).norm();
                assert!(difference <= MOST_DIFFERENCE, "{} part {part}: {difference:e}", reference.name);
            }
        }
    }
}

#[test]
fn the_reference_networks_come_out_to_eleven_digits() {
    let networks = read_folder(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/vectors"));
    assert_eq!(networks.len(), 7);
    for network in &networks {
        check(network);
        assert!(!network.expected_parts.is_empty());
        check_parts(network);
    }
}

/// `LEGWORK_NETWORKS` names a folder of further networks, freshly made by a script of the tests with a general RF library.
#[test]
#[ignore = "run by tests/rooms/core, which makes the networks"]
fn networks_made_by_the_tests_own_script_come_out_too() {
    let Some(folder) = std::env::var_os("LEGWORK_NETWORKS") else {
        panic!("LEGWORK_NETWORKS names no folder of networks: bash tests/run core");
    };
    for network in &read_folder(Path::new(&folder)) {
        check(network);
        check_parts(network);
    }
}

//! A small file with every byte changed, and cut to every length: refused, or exactly what it was.

use std::fs;

use crate::file_support::*;
use facts::FactsError;
use facts::file::{FileFault, Limits, look};

#[test]
fn every_byte_changed_is_refused_or_true() {
    let mut chance = Chance::new();
    let (home, mut store) = house(&mut chance);
    let path = home.path().join("one.lwk");
    pack(&mut store, &path);
    let whole = fs::read(&path).unwrap();
    let seen = look(&path, None, NO_LIMIT, &mut go_on).unwrap();
    let truth = content(&store);
    let damaged = home.path().join("damaged.lwk");
    let (mut refused, mut harmless) = (0, 0);
    for at in 0..whole.len() {
        // One bit, and another value altogether.
        let bit = 1 << chance.below(8);
        for byte in [whole[at] ^ bit, whole[at].wrapping_add(1 + u8::try_from(chance.below(255)).unwrap())] {
            let mut bytes = whole.clone();
            bytes[at] = byte;
            fs::write(&damaged, &bytes).unwrap();
            match look(&damaged, None, NO_LIMIT, &mut go_on) {
                Err(_) => refused += 1,
                Ok(found) => {
                    assert_eq!(found, seen, "byte {at} as {byte:#04x}");
                    assert_eq!(taken_as_new(&damaged).unwrap(), truth, "byte {at} as {byte:#04x}");
                    harmless += 1;
                }
            }
        }
    }
    println!("{} bytes: {refused} changes refused, {harmless} harmless", whole.len());
    // Harmless are only bytes of the directory that say nothing about content: which program made it, attributes.
    assert!(harmless < whole.len() / 20 && refused + harmless == 2 * whole.len());
}

#[test]
fn every_length_but_its_own_is_refused() {
    let (home, mut store) = house(&mut Chance::new());
    let path = home.path().join("one.lwk");
    pack(&mut store, &path);
    let whole = fs::read(&path).unwrap();
    let cut = home.path().join("cut.lwk");
    for length in 0..whole.len() {
        fs::write(&cut, &whole[..length]).unwrap();
        let refused = look(&cut, None, NO_LIMIT, &mut go_on).unwrap_err();
        assert!(matches!(refused, FactsError::File { .. }), "{length}: {refused}");
    }
}

#[test]
fn a_file_larger_than_the_user_allows_is_refused() {
    let (home, mut store) = house(&mut Chance::new());
    let path = home.path().join("one.lwk");
    let packed = pack(&mut store, &path);
    let allow = |total_bytes| look(&path, None, Limits { total_bytes }, &mut go_on);
    let refused = allow(1000).unwrap_err();
    assert!(
        matches!(refused, FactsError::File { fault: FileFault::TotalTooLarge { most: 1000 }, .. }),
        "{refused}"
    );
    allow(packed.bytes).unwrap();
}

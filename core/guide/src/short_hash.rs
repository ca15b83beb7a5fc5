//! A short hash: to tell that something has changed, never to keep anything safe.

use std::fmt::{self, Write};
use std::hash::{DefaultHasher, Hash, Hasher};

/// FNV-1a of 64 bits. Its figures: draft-eastlake-fnv, the offset basis and the prime of 64 bits.
struct Fnv(u64);

impl Write for Fnv {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        for byte in text.bytes() {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3);
        }
        Ok(())
    }
}

/// The hash of a text, in hexadecimal: the same in every release.
pub(crate) fn short_hash(text: &str) -> String {
    let mut hash = Fnv(0xcbf2_9ce4_8422_2325);
    // Writing to it does not fail.
    let _ = hash.write_str(text);
    format!("{:016x}", hash.0)
}

/// The hash of all that a thing holds, in hexadecimal: another one whenever something in it differs. It is the same within
/// one release only.
pub(crate) fn hash_of_all(thing: &impl Hash) -> String {
    let mut hash = DefaultHasher::new();
    thing.hash(&mut hash);
    format!("{:016x}", hash.finish())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Test vectors of draft-eastlake-fnv, appendix C (FNV-1a, 64 bits): the empty string, "a" and "foobar".
    #[test]
    fn the_hash_is_fnv_1a() {
        assert_eq!(short_hash(""), "cbf29ce484222325");
        assert_eq!(short_hash("a"), "af63dc4c8601ec8c");
        assert_eq!(short_hash("foobar"), "85944171f73967e8");
    }
}

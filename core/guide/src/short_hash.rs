//! A short hash: to tell that something has changed, never to keep anything safe.

use std::fmt::{self, Debug, Write};

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

/// The hash of what these arguments write, in hexadecimal.
fn hash_of(written: fmt::Arguments<'_>) -> String {
    let mut hash = Fnv(0xcbf2_9ce4_8422_2325);
    // Writing to it does not fail.
    let _ = hash.write_fmt(written);
    format!("{:016x}", hash.0)
}

/// The hash of a text, in hexadecimal.
pub(crate) fn short_hash(text: &str) -> String {
    hash_of(format_args!("{text}"))
}

/// The hash of all that a thing holds, in hexadecimal: another one whenever something in it differs.
pub(crate) fn hash_of_all(thing: &impl Debug) -> String {
    hash_of(format_args!("{thing:?}"))
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

//! A short hash: to tell that something has changed, never to keep anything safe.

/// FNV-1a of 64 bits, in hexadecimal. Its figures: draft-eastlake-fnv, the offset basis and the prime of 64 bits.
pub(crate) fn short_hash(bytes: &[u8]) -> String {
    let hash = bytes.iter().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
    });
    format!("{hash:016x}")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Test vectors of draft-eastlake-fnv, appendix C (FNV-1a, 64 bits): the empty string, "a" and "foobar".
    #[test]
    fn the_hash_is_fnv_1a() {
        assert_eq!(short_hash(b""), "cbf29ce484222325");
        assert_eq!(short_hash(b"a"), "af63dc4c8601ec8c");
        assert_eq!(short_hash(b"foobar"), "85944171f73967e8");
    }
}

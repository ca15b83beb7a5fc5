//! SHA-256 in text: 64 lower-case hexadecimal digits, no other spelling.

use std::fmt::Write;

/// Bytes as digits.
pub(crate) fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::with_capacity(2 * bytes.len()), |mut text, byte| {
        // Writing to a String cannot fail.
        let _ = write!(text, "{byte:02x}");
        text
    })
}

/// Reads exactly what [`hex`] writes.
pub(crate) fn unhex(text: &str) -> Option<[u8; 32]> {
    let digit = |byte: &u8| match byte {
        b'0'..=b'9' => Some(byte - b'0'),
        b'a'..=b'f' => Some(byte - b'a' + 10),
        _ => None,
    };
    let mut bytes = [0; 32];
    let (pairs, rest) = text.as_bytes().as_chunks::<2>();
    if pairs.len() != bytes.len() || !rest.is_empty() {
        return None;
    }
    for (byte, [high, low]) in bytes.iter_mut().zip(pairs) {
        *byte = digit(high)? << 4 | digit(low)?;
    }
    Some(bytes)
}

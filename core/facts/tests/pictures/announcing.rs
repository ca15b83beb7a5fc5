//! Pictures whose header says another size than they have: for every room's tests of what is refused before it is decoded.

/// A PNG with a header that says that it has so many pixels; its sum fits (PNG, third edition, 5.3 and annex D).
pub fn announcing(mut png: Vec<u8>, width: u32, height: u32) -> Vec<u8> {
    png[16..20].copy_from_slice(&width.to_be_bytes());
    png[20..24].copy_from_slice(&height.to_be_bytes());
    let crc = png[12..29].iter().fold(u32::MAX, |crc, byte| {
        (0..8).fold(
            crc ^ u32::from(*byte),
            |crc, _| if crc & 1 == 1 { 0xEDB8_8320 ^ (crc >> 1) } else { crc >> 1 },
        )
    });
    png[29..33].copy_from_slice(&(!crc).to_be_bytes());
    png
}

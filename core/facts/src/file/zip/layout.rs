//! The records of a zip, as bytes.

/// Signatures (4.3.7, 4.3.12, 4.3.14, 4.3.15, 4.3.16).
pub(super) const LOCAL: u32 = 0x0403_4b50;
pub(super) const CENTRAL: u32 = 0x0201_4b50;
pub(super) const END_64: u32 = 0x0606_4b50;
pub(super) const LOCATOR_64: u32 = 0x0706_4b50;
pub(super) const END: u32 = 0x0605_4b50;

/// Lengths without name, extra field and comment.
pub(super) const LOCAL_BYTES: usize = 30;
pub(super) const CENTRAL_BYTES: usize = 46;
pub(super) const END_64_BYTES: usize = 56;
pub(super) const LOCATOR_64_BYTES: usize = 20;
pub(super) const END_BYTES: usize = 22;

/// Compression methods (4.4.5).
pub(super) const STORED: u16 = 0;
pub(super) const DEFLATED: u16 = 8;

/// Version needed to extract (4.4.3): stored, deflated, and an offset of 64 bits.
pub(super) const VERSION_STORED: u16 = 10;
pub(super) const VERSION_64: u16 = 45;

/// A 32-bit field that says: see the field of 64 bits.
pub(super) const SEE_64: u32 = u32::MAX;

/// The extra field that holds an offset of 64 bits: header id 1, eight bytes (4.5.3).
pub(super) const EXTRA_64_BYTES: u16 = 12;

/// 1980-01-01, 00:00, the earliest that a zip can state (4.4.6).
pub(super) const DATE: u16 = 0x0021;
pub(super) const TIME: u16 = 0;

/// What local header and directory both say of an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Common {
    pub(super) version: u16,
    pub(super) flags: u16,
    pub(super) method: u16,
    pub(super) time: u16,
    pub(super) date: u16,
    pub(super) crc32: u32,
    pub(super) packed: u32,
    pub(super) size: u32,
    pub(super) name_bytes: u16,
}

impl Common {
    pub(super) fn write(self, out: &mut Vec<u8>) {
        for number in [self.version, self.flags, self.method, self.time, self.date] {
            out.extend(number.to_le_bytes());
        }
        for number in [self.crc32, self.packed, self.size] {
            out.extend(number.to_le_bytes());
        }
        out.extend(self.name_bytes.to_le_bytes());
    }

    pub(super) fn read(from: &mut Fields<'_>) -> Option<Self> {
        Some(Self {
            version: from.u16()?,
            flags: from.u16()?,
            method: from.u16()?,
            time: from.u16()?,
            date: from.u16()?,
            crc32: from.u32()?,
            packed: from.u32()?,
            size: from.u32()?,
            name_bytes: from.u16()?,
        })
    }
}

/// Little-endian numbers, one after the other.
pub(super) struct Fields<'a>(pub(super) &'a [u8]);

impl<'a> Fields<'a> {
    pub(super) fn bytes(&mut self, count: usize) -> Option<&'a [u8]> {
        let (taken, left) = self.0.split_at_checked(count)?;
        self.0 = left;
        Some(taken)
    }

    fn array<const N: usize>(&mut self) -> Option<[u8; N]> {
        self.bytes(N)?.try_into().ok()
    }

    pub(super) fn u16(&mut self) -> Option<u16> {
        self.array().map(u16::from_le_bytes)
    }

    pub(super) fn u32(&mut self) -> Option<u32> {
        self.array().map(u32::from_le_bytes)
    }

    pub(super) fn u64(&mut self) -> Option<u64> {
        self.array().map(u64::from_le_bytes)
    }
}

//! Identifiers. All are UUIDs (RFC 9562), written in lower case with hyphens.

use std::cmp::Ordering;
use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};
use uuid::{NoContext, Timestamp, Uuid, Version};

use super::fault::FactFault;

/// Ids in the order of their bytes. It is that of the numbers which they are, and two numbers are compared in a step or two.
macro_rules! ordered {
    ($name:ident) => {
        impl Ord for $name {
            fn cmp(&self, other: &Self) -> Ordering {
                self.0.as_u128().cmp(&other.0.as_u128())
            }
        }

        impl PartialOrd for $name {
            fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
                Some(self.cmp(other))
            }
        }
    };
}

macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(Uuid);

        ordered!($name);

        impl $name {
            /// A new id that nobody else has: 122 random bits.
            pub fn random() -> Self {
                Self(random_uuid())
            }

            /// Takes an id that was made elsewhere.
            pub const fn from_uuid(id: Uuid) -> Self {
                Self(id)
            }

            /// The bare UUID.
            pub const fn uuid(self) -> Uuid {
                self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(out)
            }
        }

        impl FromStr for $name {
            type Err = uuid::Error;
            fn from_str(text: &str) -> Result<Self, uuid::Error> {
                text.parse().map(Self)
            }
        }
    };
}

id! {
    /// One action of the user, to which one or more facts belong.
    ActId
}
id! {
    /// What a fact speaks of: a part, a run, a room, a note, a photo, the survey itself.
    SubjectId
}
id! {
    /// One survey. Facts merge only within one.
    SurveyId
}
id! {
    /// Who wrote a fact: made by chance at the first start on a device. A claim and no proof.
    AuthorId
}

id! {
    /// What a device makes its authors' ids from. It never leaves the device.
    DeviceKey
}

impl ActId {
    /// The action by which somebody undoes another one: a UUID of version 5 (RFC 9562, 5.5) within that of the action,
    /// so that an undo is known as one in every copy, and nothing has to be kept beside the facts.
    #[must_use]
    pub fn undoing(act: Self, by: AuthorId) -> Self {
        Self(Uuid::new_v5(&act.0, by.0.as_bytes()))
    }
}

impl SurveyId {
    /// The survey as the subject of facts about the whole of it, such as its name.
    pub const fn subject(self) -> SubjectId {
        SubjectId(self.0)
    }
}

/// One fact: a UUID of version 7, so that ids sort by the time of writing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(try_from = "Uuid", into = "Uuid")]
pub struct FactId(Uuid);

ordered!(FactId);

impl FactId {
    /// The greatest time that an id can hold: 48 bits of milliseconds.
    pub const MAX_MS: u64 = (1 << 48) - 1;

    /// An id of the given time, in milliseconds since 1970, with 74 random bits.
    /// A time beyond [`FactId::MAX_MS`] counts as that.
    pub(crate) fn at(ms: u64) -> Self {
        Self(version_7(ms.min(Self::MAX_MS)))
    }

    /// Milliseconds since 1970-01-01 UTC by the writer's clock (RFC 9562, 5.7: the first 48 bits).
    pub fn ms(self) -> u64 {
        // 128 - 48 bits: what remains fits.
        u64::try_from(self.0.as_u128() >> 80).unwrap_or(Self::MAX_MS)
    }

    /// The bare UUID.
    pub const fn uuid(self) -> Uuid {
        self.0
    }
}

impl TryFrom<Uuid> for FactId {
    type Error = FactFault;

    fn try_from(id: Uuid) -> Result<Self, FactFault> {
        if id.get_version() == Some(Version::SortRand) && id.get_variant() == uuid::Variant::RFC4122 {
            Ok(Self(id))
        } else {
            Err(FactFault::IdVersion { id })
        }
    }
}

impl From<FactId> for Uuid {
    fn from(id: FactId) -> Self {
        id.0
    }
}

impl fmt::Display for FactId {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(out)
    }
}

fn version_7(ms: u64) -> Uuid {
    let nanos = u32::try_from(ms % 1000).unwrap_or(0) * 1_000_000;
    Uuid::new_v7(Timestamp::from_unix(NoContext, ms / 1000, nanos))
}

/// A UUID of version 4. Its bits come from the random tails of version 7 ids, the one random source that this
/// crate already has: bytes 9 to 15 of each are random in full.
fn random_uuid() -> Uuid {
    let mut bytes = [0; 16];
    for chunk in bytes.chunks_mut(7) {
        let tail = version_7(0).into_bytes();
        for (to, from) in chunk.iter_mut().zip(tail.iter().skip(9)) {
            *to = *from;
        }
    }
    uuid::Builder::from_random_bytes(bytes).into_uuid()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 9562, appendix A.6: the example of a version 7 UUID, of 2022-02-22 14:22:22 -05:00.
    #[test]
    fn rfc_9562_example_of_version_7() {
        let id = FactId::try_from("017F22E2-79B0-7CC3-98C4-DC0C0C07398F".parse::<Uuid>().unwrap()).unwrap();
        assert_eq!(id.ms(), 1_645_557_742_000);
        assert_eq!(id.to_string(), "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
    }

    /// RFC 9562, 5.7: 48 bits of time, version 7 in bits 48-51, variant 0b10 in bits 64-65.
    #[test]
    fn rfc_9562_layout_of_our_ids() {
        let bytes = FactId::at(0x017F_22E2_79B0).uuid().into_bytes();
        assert_eq!(bytes[..6], [0x01, 0x7F, 0x22, 0xE2, 0x79, 0xB0]);
        assert_eq!(bytes[6] >> 4, 7);
        assert_eq!(bytes[8] >> 6, 0b10);
    }

    /// RFC 9562, appendix A.3: the example of a version 4 UUID.
    #[test]
    fn a_fact_id_of_another_version_is_refused() {
        let version_4: Uuid = "919108f7-52d1-4320-9bac-f847db4148a8".parse().unwrap();
        assert_eq!(FactId::try_from(version_4), Err(FactFault::IdVersion { id: version_4 }));
        assert!(serde_json::from_str::<FactId>("\"919108f7-52d1-4320-9bac-f847db4148a8\"").is_err());
    }

    #[test]
    fn random_ids_use_every_random_bit() {
        let (mut ones, mut zeros) = ([0u8; 16], [0xFFu8; 16]);
        for _ in 0..200 {
            let bytes = AuthorId::random().uuid().into_bytes();
            for i in 0..16 {
                ones[i] |= bytes[i];
                zeros[i] &= bytes[i];
            }
        }
        // RFC 9562, 5.4: all but the version's four and the variant's two bits are random. That a random bit
        // stays the same 200 times has a chance of 2^-199.
        let mut fixed = [0u8; 16];
        fixed[6] = 0xF0;
        fixed[8] = 0xC0;
        for i in 0..16 {
            assert_eq!(!(ones[i] ^ zeros[i]), fixed[i], "byte {i}");
        }
    }
}

//! The sum that each row carries: the CRC-32 of what stands in it. It shows that a bit of the disk has changed since, and
//! puts right the one that has: of all ways to turn one bit, only one gives the sum.
//!
//! A sum is no secret and proves nothing against somebody who means harm; it is there against rot. It is made anew when
//! something is forgotten, so that nothing of what was said stays in it.

use crc32fast::Hasher;
use uuid::Uuid;

use crate::fact::{Fact, FactFault, canonical};

/// The columns of a fact as they stand in its row, with what it replaces.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Columns {
    /// Its id, its act, its author, its subject.
    pub(super) ids: [Uuid; 4],
    pub(super) field: Vec<u8>,
    pub(super) value: Option<Vec<u8>>,
    pub(super) extra: Option<Vec<u8>>,
    /// In their order.
    pub(super) over: Vec<Uuid>,
}

/// The sum of some columns: each with its length, so that nothing slips from one into the next.
pub(super) fn of_columns<'a>(columns: impl IntoIterator<Item = Option<&'a [u8]>>) -> i64 {
    let mut pieces = Pieces { hasher: Hasher::new(), waiting: [0; WAITING], length: 0 };
    for column in columns {
        // None has a length that nothing has.
        pieces.add(&column.map_or(u64::MAX, |bytes| bytes.len() as u64).to_le_bytes());
        pieces.add(column.unwrap_or_default());
    }
    pieces.sum()
}

/// Some rows' worth of bytes.
const WAITING: usize = 512;

/// Bytes that come in small pieces and are summed up in large ones, which takes a fraction of the time.
struct Pieces {
    hasher: Hasher,
    waiting: [u8; WAITING],
    length: usize,
}

impl Pieces {
    fn add(&mut self, piece: &[u8]) {
        let fits = |length: usize| length..length + piece.len();
        if let Some(room) = self.waiting.get_mut(fits(self.length)) {
            room.copy_from_slice(piece);
            self.length += piece.len();
            return;
        }
        self.take_in();
        if let Some(room) = self.waiting.get_mut(fits(0)) {
            room.copy_from_slice(piece);
            self.length = piece.len();
        } else {
            self.hasher.update(piece);
        }
    }

    fn take_in(&mut self) {
        self.hasher.update(self.waiting.get(..self.length).unwrap_or_default());
        self.length = 0;
    }

    fn sum(mut self) -> i64 {
        self.take_in();
        i64::from(self.hasher.finalize())
    }
}

/// The columns of a fact where they lie.
#[derive(Debug, Clone, Copy)]
pub(super) struct ColumnsSeen<'a> {
    /// Its id, its act, its author, its subject.
    pub(super) ids: [Uuid; 4],
    pub(super) field: &'a [u8],
    pub(super) value: Option<&'a [u8]>,
    pub(super) extra: Option<&'a [u8]>,
    /// In their order.
    pub(super) over: &'a [Uuid],
}

impl ColumnsSeen<'_> {
    /// The sum of the row.
    pub(super) fn sum(&self) -> i64 {
        let ids = self.ids.each_ref().map(|id| Some(id.as_bytes().as_slice()));
        let over = self.over.iter().map(|id| Some(id.as_bytes().as_slice()));
        of_columns(ids.into_iter().chain([Some(self.field), self.value, self.extra]).chain(over))
    }

    /// The same, to be kept.
    pub(super) fn to_columns(self) -> Columns {
        Columns {
            ids: self.ids,
            field: self.field.to_vec(),
            value: self.value.map(<[u8]>::to_vec),
            extra: self.extra.map(<[u8]>::to_vec),
            over: self.over.to_vec(),
        }
    }
}

/// The columns that a fact is written as.
pub(super) fn columns_of(fact: &Fact) -> Result<Columns, FactFault> {
    let extra = match fact.extra() {
        none if none.is_empty() => None,
        some => Some(canonical(&serde_json::Value::Object(some.clone()))?.into_bytes()),
    };
    let value = if fact.is_forgotten() { None } else { Some(canonical(fact.value())?.into_bytes()) };
    Ok(Columns {
        ids: [fact.id().uuid(), fact.act().uuid(), fact.by().uuid(), fact.subject().uuid()],
        field: fact.field().as_bytes().to_vec(),
        value,
        extra,
        over: fact.over().iter().map(|id| id.uuid()).collect(),
    })
}

/// The sums of facts, added up.
pub(super) fn total<'a>(facts: impl IntoIterator<Item = &'a Fact>) -> Result<i64, FactFault> {
    facts.into_iter().try_fold(0_i64, |total, fact| Ok(total.wrapping_add(columns_of(fact)?.sum())))
}

impl Columns {
    pub(super) const fn id(&self) -> Uuid {
        let [id, ..] = self.ids;
        id
    }

    pub(super) const fn subject(&self) -> Uuid {
        let [_, _, _, subject] = self.ids;
        subject
    }

    pub(super) fn sum(&self) -> i64 {
        self.seen().sum()
    }

    pub(super) fn seen(&self) -> ColumnsSeen<'_> {
        ColumnsSeen {
            ids: self.ids,
            field: &self.field,
            value: self.value.as_deref(),
            extra: self.extra.as_deref(),
            over: &self.over,
        }
    }

    /// The same row with one bit turned so that it has its sum again. A sum that lost a bit itself leaves the row as it
    /// is. Of rows with more damage, one in some million is taken for one that can be put right.
    pub(super) fn put_right(mut self, sum: i64) -> Option<Self> {
        if (self.sum() ^ sum).count_ones() == 1 {
            return Some(self);
        }
        for place in 0..self.bits() {
            self.turn(place);
            if self.sum() == sum {
                return Some(self);
            }
            self.turn(place);
        }
        None
    }

    fn bits(&self) -> usize {
        let texts = self.field.len()
            + self.value.as_ref().map_or(0, Vec::len)
            + self.extra.as_ref().map_or(0, Vec::len);
        8 * (16 * (self.ids.len() + self.over.len()) + texts)
    }

    fn turn(&mut self, bit: usize) {
        let (mut byte, mask) = (bit / 8, 1_u8 << (bit % 8));
        for id in self.ids.iter_mut().chain(&mut self.over) {
            let mut bytes = *id.as_bytes();
            if let Some(found) = bytes.get_mut(byte) {
                *found ^= mask;
                *id = Uuid::from_bytes(bytes);
                return;
            }
            byte -= bytes.len();
        }
        let texts = [Some(&mut self.field), self.value.as_mut(), self.extra.as_mut()];
        for text in texts.into_iter().flatten() {
            if let Some(found) = text.get_mut(byte) {
                *found ^= mask;
                return;
            }
            byte -= text.len();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn row() -> Columns {
        let id = |number| Uuid::from_u128(0x0190_0000_0000_7000_8000_0000_0000_0000_u128 + number);
        Columns {
            ids: [id(1), id(2), id(3), id(4)],
            field: b"length".to_vec(),
            value: Some(br#"{"known":"measured","metres":15}"#.to_vec()),
            extra: None,
            over: vec![id(0)],
        }
    }

    #[test]
    fn any_one_bit_is_seen_and_put_right() {
        let (whole, sum) = (row(), row().sum());
        for bit in 0..whole.bits() {
            let mut bad = whole.clone();
            bad.turn(bit);
            assert_ne!(bad.sum(), sum);
            assert_eq!(bad.put_right(sum), Some(whole.clone()));
        }
        assert_eq!(row().put_right(sum ^ 4), Some(whole));
    }

    #[test]
    fn a_sum_is_that_of_all_bytes_in_a_row_however_long_the_pieces() {
        for length in [0, 1, 7, WAITING - 9, WAITING - 8, WAITING - 7, WAITING, WAITING + 1, 3 * WAITING] {
            let text: Vec<u8> = (0..=u8::MAX).cycle().take(length).collect();
            let mut bytes = Vec::new();
            for piece in [b"is".as_slice(), &text, b"", &text] {
                bytes.extend((piece.len() as u64).to_le_bytes());
                bytes.extend(piece);
            }
            let found = of_columns([Some(b"is".as_slice()), Some(&text), Some(b""), Some(&text)]);
            assert_eq!(found, i64::from(crc32fast::hash(&bytes)), "{length}");
        }
    }

    #[test]
    fn two_bits_are_seen_and_not_put_right() {
        let mut bad = row();
        let sum = bad.sum();
        bad.turn(9);
        bad.turn(700);
        assert_ne!(bad.sum(), sum);
        assert_eq!(bad.put_right(sum), None);
    }

    #[test]
    fn what_is_not_there_is_not_what_is_empty_and_nothing_slips_into_the_next() {
        assert_ne!(of_columns([None, Some(b"a".as_slice())]), of_columns([Some(b"".as_slice()), Some(b"a")]));
        assert_ne!(
            of_columns([Some(b"ab".as_slice()), Some(b"c")]),
            of_columns([Some(b"a".as_slice()), Some(b"bc")])
        );
    }
}

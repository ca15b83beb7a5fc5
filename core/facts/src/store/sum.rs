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
    let mut hasher = Hasher::new();
    for column in columns {
        // None has a length that nothing has.
        hasher.update(&column.map_or(u64::MAX, |bytes| bytes.len() as u64).to_le_bytes());
        hasher.update(column.unwrap_or_default());
    }
    i64::from(hasher.finalize())
}

/// The sum of a fact's row.
pub(super) fn of_fact(
    ids: [Uuid; 4],
    field: &[u8],
    value: Option<&[u8]>,
    extra: Option<&[u8]>,
    over: &[Uuid],
) -> i64 {
    let ids = ids.each_ref().map(|id| Some(id.as_bytes().as_slice()));
    let over = over.iter().map(|id| Some(id.as_bytes().as_slice()));
    of_columns(ids.into_iter().chain([Some(field), value, extra]).chain(over))
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
        of_fact(self.ids, &self.field, self.value.as_deref(), self.extra.as_deref(), &self.over)
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

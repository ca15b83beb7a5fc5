//! Changes of bytes, whatever they mean.

use proofs::chance::Chance;

use crate::target::Target;

/// Bytes and numbers at which readers go wrong: ends of ranges, signs, what begins or ends something.
const EDGES: [&[u8]; 22] = [
    b"\0",
    b"\xFF",
    b"\x7F",
    b"\x80",
    b"\xFF\xFF",
    b"\0\0\0\0",
    b"\xFF\xFF\xFF\xFF",
    b"\x7F\xFF\xFF\xFF",
    b"\x80\0\0\0",
    b"0",
    b"-1",
    b"-0.0",
    b"1e999",
    b"1e-400",
    b"9007199254740993",
    b"18446744073709551616",
    b"65536",
    b"\n",
    b"\"",
    "\u{202E}".as_bytes(),
    "e\u{301}".as_bytes(),
    b"\xC0\x80",
];

pub struct Mutator<'a> {
    pub chance: &'a mut Chance,
    pub target: &'a Target,
}

impl Mutator<'_> {
    /// A changed input: by structure or by bytes, some both.
    pub fn changed(&mut self, pool: &[Vec<u8>]) -> Vec<u8> {
        let mut input = self.chance.pick(pool).cloned().unwrap_or_default();
        let kind = self.chance.below(8);
        if kind < 4 {
            for _ in 0..=self.chance.below(3) {
                if let Some(shaped) = (self.target.shape)(self.chance, &input) {
                    input = shaped;
                }
            }
        }
        if kind >= 3 {
            let most = 1 << self.chance.below(4);
            for _ in 0..=self.chance.below(most) {
                self.change(&mut input, pool);
            }
        }
        input.truncate(self.target.most_bytes);
        input
    }

    fn change(&mut self, input: &mut Vec<u8>, pool: &[Vec<u8>]) {
        let at = self.chance.below(input.len() + 1);
        let most = 1 << self.chance.below(10);
        let end = (at + 1 + self.chance.below(most)).min(input.len());
        match self.chance.below(9) {
            0 => {
                if let Some(byte) = input.get_mut(at) {
                    *byte ^= 1 << self.chance.below(8);
                }
            }
            1 => {
                if let Some(byte) = input.get_mut(at) {
                    *byte = self.chance.bits().to_le_bytes()[0];
                }
            }
            2 => drop(input.drain(at.min(end)..end)),
            3 => {
                // A piece again, somewhere.
                let piece = input.get(at.min(end)..end).unwrap_or_default().to_vec();
                let to = self.chance.below(input.len() + 1);
                input.splice(to..to, piece);
            }
            4 => {
                let edge = self.chance.pick(&EDGES).copied().unwrap_or_default();
                let over = if self.chance.below(2) == 0 { at } else { (at + edge.len()).min(input.len()) };
                input.splice(at..over.max(at), edge.iter().copied());
            }
            5 | 6 => {
                let word = self.chance.pick(self.target.words).copied().unwrap_or_default();
                input.splice(at..at, word.iter().copied());
            }
            7 => {
                // The beginning of this one and the end of another.
                let other = self.chance.pick(pool).cloned().unwrap_or_default();
                let from = self.chance.below(other.len() + 1);
                input.truncate(at);
                input.extend(other.get(from..).unwrap_or_default());
            }
            _ => {
                // A small step of a number that is written in binary.
                if let Some(byte) = input.get_mut(at) {
                    let step = 1 + self.chance.bits().to_le_bytes()[0] % 16;
                    *byte = if step.is_multiple_of(2) {
                        byte.wrapping_add(step)
                    } else {
                        byte.wrapping_sub(step)
                    };
                }
            }
        }
    }
}

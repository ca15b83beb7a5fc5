//! What two looks saw of one row, held against each other.

use super::number::{SeenNumber, SeenUnit, Sight, numbers};
use super::unsure::Unsure;
use super::{SeenLine, SeenPlace, SeenRow};

/// From here on each letter of a number is certain. Found on photos made for it, not on those that prove it:
/// `docs/method.md`.
const CERTAIN: f32 = 0.9;

/// The same of the letters of a long word: it must be one of those that labels carry, and one letter hardly makes another of it.
const CERTAIN_OF_WORDS: f32 = 0.5;

/// Words of fewer letters may become others by one: HPF and LPF, NO and TO.
const LONG_WORD: usize = 5;

/// A row, its numbers, and the look whose text is taken.
pub(super) struct AgreedRow {
    texts: [Option<String>; 2],
    /// Which look's text is taken.
    pub chosen: usize,
    /// Its numbers, with what the looks say against them.
    pub numbers: Vec<SeenNumber>,
}

impl AgreedRow {
    /// What a look saw, or else the other one.
    pub(super) fn text_of(&self, look: usize) -> String {
        let [coarse, fine] = &self.texts;
        let (own, other) = if look == 0 { (coarse, fine) } else { (fine, coarse) };
        own.as_ref().or(other.as_ref()).cloned().unwrap_or_default()
    }
}

/// How far a row can be believed.
pub(super) struct Believed {
    /// Whether two looks saw it, each letter of it for certain.
    pub by_both: bool,
    /// Whether each look that saw it is certain of its words. A row without a digit is looked at once.
    pub as_words: bool,
    /// Whether nothing may stand beside it.
    pub is_whole: bool,
}

impl Believed {
    pub(super) fn of(row: &SeenRow) -> Self {
        let is_certain = |line: &SeenLine| {
            line.letters.iter().all(|(sign, certainty)| *sign == ' ' || *certainty >= CERTAIN)
        };
        let seen = || row.looks.iter().flatten();
        Self {
            by_both: row.looks.iter().all(|look| look.as_ref().is_some_and(is_certain)),
            as_words: seen().all(|line| line.letters.split(|(sign, _)| *sign == ' ').all(is_certain_word)),
            is_whole: seen().all(|line| line.is_cut == (false, false)),
        }
    }
}

fn is_certain_word(word: &[(char, f32)]) -> bool {
    let least = if word.len() < LONG_WORD { CERTAIN } else { CERTAIN_OF_WORDS };
    word.iter().all(|(_, certainty)| *certainty >= least)
}

/// Holds the two looks at a row against each other.
pub(super) fn agreed(at: usize, row: &SeenRow) -> AgreedRow {
    let sights = row.looks.each_ref().map(|line| line.as_ref().map(numbers).unwrap_or_default());
    let chosen = chosen(row, &sights);
    let text = |line: &Option<SeenLine>| {
        line.as_ref().map(|line| line.letters.iter().map(|(sign, _)| sign).collect::<String>())
    };
    let pairs = paired(&sights);
    let numbers = pairs
        .into_iter()
        .filter_map(|(coarse, fine)| {
            let found = [coarse.and_then(|at| sights[0].get(at)), fine.and_then(|at| sights[1].get(at))];
            let look = match found {
                [Some(a), Some(b)] if is_same(a, b) => usize::from(b.certainty >= a.certainty),
                [Some(_), Some(_)] => chosen,
                [Some(_), None] => 0,
                [None, _] => 1,
            };
            let (own, other) = if look == 0 { (found[0]?, found[1]) } else { (found[1]?, found[0]) };
            Some(one(at, look, row, own, other))
        })
        .collect();
    AgreedRow { texts: row.looks.each_ref().map(text), chosen, numbers }
}

/// A number that a look saw, held against what the other saw in its place.
fn one(row: usize, look: usize, seen: &SeenRow, own: &Sight, other: Option<&Sight>) -> SeenNumber {
    let mut number = SeenNumber {
        value: own.value,
        unit: own.unit,
        written: own.written.clone(),
        place: SeenPlace { row, look, letters: own.letters.clone() },
        unsure: Vec::new(),
    };
    match other {
        None => number.doubt(Unsure::SeenOnce),
        Some(other) if !is_same(own, other) => {
            number.doubt(Unsure::SeenOtherwise { other: other.written.clone() });
        }
        Some(_) => {}
    }
    if [Some(own), other].into_iter().flatten().any(|sight| sight.certainty < CERTAIN) {
        number.doubt(Unsure::Faint);
    }
    if [Some(own), other].into_iter().flatten().any(|sight| sight.has_letters) {
        number.doubt(Unsure::LettersForDigits);
    }
    if [Some(own), other].into_iter().flatten().any(|sight| sight.is_unclear) {
        number.doubt(Unsure::MeaningUnclear);
    }
    // Nothing else tells a mark of length that lost its first digits.
    let is_bare_mark = matches!(own.unit, SeenUnit::Feet | SeenUnit::Metres) && own.is_outermost.0;
    let is_cut = seen
        .looks
        .iter()
        .flatten()
        .any(|line| (own.is_outermost.0 && line.is_cut.0) || (own.is_outermost.1 && line.is_cut.1));
    let is_torn = [Some(own), other].into_iter().flatten().any(|sight| sight.is_torn);
    if is_cut || is_bare_mark || is_torn {
        number.doubt(Unsure::Cut);
    }
    // Where a row begins with whole decibels, their beginning, or the name of what they are of, may be what was not seen.
    if own.unit == SeenUnit::Decibels && own.is_outermost.0 && own.value.fract() == 0.0 {
        number.doubt(Unsure::Cut);
    }
    number
}

fn is_same(a: &Sight, b: &Sight) -> bool {
    a.unit == b.unit && (a.value - b.value).abs() < 1e-9
}

/// The look that saw more numbers, or else was more certain of the letters of the row.
fn chosen(row: &SeenRow, sights: &[Vec<Sight>; 2]) -> usize {
    let [Some(coarse), Some(fine)] = &row.looks else { return usize::from(row.looks[0].is_none()) };
    let mean = |line: &SeenLine| {
        line.letters.iter().map(|(_, certainty)| certainty).sum::<f32>() / line.letters.len().max(1) as f32
    };
    match sights[0].len().cmp(&sights[1].len()) {
        std::cmp::Ordering::Less => 1,
        std::cmp::Ordering::Greater => 0,
        std::cmp::Ordering::Equal => usize::from(mean(fine) >= mean(coarse)),
    }
}

/// Which number of one look is which of the other's, from left to right: as many as can be are the same, and what stands between
/// two of these is paired in its order.
fn paired(sights: &[Vec<Sight>; 2]) -> Vec<(Option<usize>, Option<usize>)> {
    let [a, b] = sights;
    // How many are the same at most from each place on.
    let mut most = vec![vec![0_usize; b.len() + 1]; a.len() + 1];
    let at = |most: &Vec<Vec<usize>>, i: usize, j: usize| {
        most.get(i).and_then(|row| row.get(j)).copied().unwrap_or(0)
    };
    for i in (0..a.len()).rev() {
        for j in (0..b.len()).rev() {
            let same = a.get(i).zip(b.get(j)).is_some_and(|(a, b)| is_same(a, b));
            let value =
                if same { 1 + at(&most, i + 1, j + 1) } else { at(&most, i + 1, j).max(at(&most, i, j + 1)) };
            if let Some(place) = most.get_mut(i).and_then(|row| row.get_mut(j)) {
                *place = value;
            }
        }
    }
    let (mut pairs, mut i, mut j) = (Vec::new(), 0, 0);
    let (mut left, mut right) = (Vec::new(), Vec::new());
    let between = |pairs: &mut Vec<_>, left: &mut Vec<usize>, right: &mut Vec<usize>| {
        for place in 0..left.len().max(right.len()) {
            pairs.push((left.get(place).copied(), right.get(place).copied()));
        }
        left.clear();
        right.clear();
    };
    while i < a.len() || j < b.len() {
        if a.get(i).zip(b.get(j)).is_some_and(|(a, b)| is_same(a, b)) {
            between(&mut pairs, &mut left, &mut right);
            pairs.push((Some(i), Some(j)));
            (i, j) = (i + 1, j + 1);
        } else if j >= b.len() || (i < a.len() && at(&most, i + 1, j) >= at(&most, i, j + 1)) {
            left.push(i);
            i += 1;
        } else {
            right.push(j);
            j += 1;
        }
    }
    between(&mut pairs, &mut left, &mut right);
    pairs
}

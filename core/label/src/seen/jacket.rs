//! How long a cable is, by the marks on its jacket at both its ends: seen on photos, or typed.

use coax::quantity::METRES_PER_FOOT;
use phrase::Phrase;

use super::{SeenNumber, SeenUnit, Suggestion};

/// A house has no longer cable, metres: marks farther apart are of two cables, or one of them was misread.
pub const LONGEST_CABLE_METRES: f64 = 500.0;

/// Marks no farther apart than this, metres, may be of one end, photographed twice: a photo shows this much of a cable.
pub const ONE_END_METRES: f64 = 2.0;

/// What marks count.
const UNITS: [SeenUnit; 2] = [SeenUnit::Feet, SeenUnit::Metres];

/// What lies between two marks of one jacket that count the same, metres.
///
/// # Errors
/// [`NoLength::TwoUnits`], [`NoLength::SameMark`] or [`NoLength::TooFarApart`].
pub fn metres_between([(from, unit), (to, other)]: [(f64, SeenUnit); 2]) -> Result<f64, NoLength> {
    if unit != other {
        return Err(NoLength::TwoUnits);
    }
    let each = if unit == SeenUnit::Feet { METRES_PER_FOOT } else { 1.0 };
    let metres = (from - to).abs() * each;
    if metres == 0.0 {
        return Err(NoLength::SameMark);
    }
    if metres > LONGEST_CABLE_METRES { Err(NoLength::TooFarApart) } else { Ok(metres) }
}

/// A length between two marks.
#[derive(Debug, Clone, PartialEq)]
pub struct JacketLength {
    /// The marks, one at each end.
    pub marks: [SeenNumber; 2],
    /// What lies between them, metres.
    pub metres: f64,
    /// Why it is asked; nothing if it is sure.
    pub unsure: Vec<LengthUnsure>,
}

/// Why a length is asked and not taken as it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LengthUnsure {
    /// One of the marks, or each, is asked itself.
    MarkAsked,
    /// The jackets name two series.
    TwoSeries,
    /// The marks are so near each other that both may be of one end.
    OneEnd,
    /// Another photo of the cable shows a mark that is at neither of these ends.
    OtherMark,
    /// The jacket counts feet and metres, and they give two lengths.
    UnitsDisagree,
}

/// Why two marks of a jacket give no length.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoLength {
    /// One of two photos shows no mark.
    NoMark {
        /// Which, 0 or 1.
        end: usize,
    },
    /// One counts feet, the other metres.
    TwoUnits,
    /// Both show the same mark.
    SameMark,
    /// They are farther apart than any cable of a house is long.
    TooFarApart,
}

/// A length among several photos of one cable's jacket.
#[derive(Debug, Clone, PartialEq)]
pub struct LengthAmong {
    /// Which two of the photos it lies between, in the order of its marks.
    pub photos: [usize; 2],
    /// The length.
    pub length: JacketLength,
}

impl Suggestion {
    /// The mark by which a length is worked out: the first that is sure, or else the first.
    pub fn mark(&self) -> Option<&SeenNumber> {
        surest(self.marks())
    }

    /// The same of one unit.
    fn mark_in(&self, unit: SeenUnit) -> Option<&SeenNumber> {
        surest(self.marks().filter(|mark| mark.unit == unit))
    }
}

/// What two marks say.
fn values(marks: [&SeenNumber; 2]) -> [(f64, SeenUnit); 2] {
    marks.map(|mark| (mark.value, mark.unit))
}

/// The first that is sure, or else the first.
fn surest<'a>(mut marks: impl Iterator<Item = &'a SeenNumber> + Clone) -> Option<&'a SeenNumber> {
    marks.clone().find(|mark| mark.is_sure()).or_else(|| marks.next())
}

/// The marks of two jackets that count the same, by which a length can be worked out; a jacket may have feet and metres. What is sure
/// goes first.
fn pairs([near, far]: [&Suggestion; 2]) -> Vec<[&SeenNumber; 2]> {
    let of_unit = |unit| Some([near.mark_in(unit)?, far.mark_in(unit)?]);
    let mut pairs: Vec<_> = UNITS.into_iter().filter_map(of_unit).collect();
    let is_asked = |pair: &[&SeenNumber; 2]| pair.iter().any(|mark| !mark.is_sure());
    if let [first, second] = &pairs[..]
        && is_asked(first)
        && !is_asked(second)
    {
        pairs.reverse();
    }
    pairs
}

impl JacketLength {
    /// The length of the cable of which two photos show the jacket, one at each end.
    ///
    /// # Errors
    /// Why there is none.
    ///
    /// ```
    /// use label::seen::{JacketLength, SeenLine, SeenRow, suggest};
    ///
    /// let end = |mark: &str| {
    ///     let line = SeenLine { letters: mark.chars().map(|sign| (sign, 0.999)).collect(), is_cut: (false, false) };
    ///     suggest(&[SeenRow { looks: [Some(line.clone()), Some(line)] }])
    /// };
    /// let found = JacketLength::between([&end("RG-6 0482 FT"), &end("RG-6 0532 FT")]).unwrap();
    /// assert!((found.metres - 50.0 * 0.3048).abs() < 1e-9);
    /// ```
    pub fn between(ends: [&Suggestion; 2]) -> Result<Self, NoLength> {
        let mark = |end: usize, seen: &Suggestion| seen.mark().cloned().ok_or(NoLength::NoMark { end });
        let [near, far] = ends;
        let apart = [mark(0, near)?, mark(1, far)?];
        let pairs = pairs(ends);
        let gives_one = |pair: &&[&SeenNumber; 2]| metres_between(values(**pair)).is_ok();
        let pair = pairs.iter().find(gives_one).or_else(|| pairs.first());
        let marks = pair.map_or(apart, |pair| pair.map(SeenNumber::clone));
        let metres = metres_between(values(marks.each_ref()))?;
        let is_otherwise = |pair: &[&SeenNumber; 2]| match metres_between(values(*pair)) {
            Ok(other) => (other - metres).abs() > ONE_END_METRES,
            Err(why) => why != NoLength::SameMark || metres > ONE_END_METRES,
        };
        let series = near.reading.cable.zip(far.reading.cable);
        let doubts = [
            (marks.iter().any(|mark| !mark.is_sure()), LengthUnsure::MarkAsked),
            (series.is_some_and(|(near, far)| near != far), LengthUnsure::TwoSeries),
            (metres <= ONE_END_METRES, LengthUnsure::OneEnd),
            (pairs.iter().any(is_otherwise), LengthUnsure::UnitsDisagree),
        ];
        let unsure = doubts.into_iter().filter_map(|(applies, why)| applies.then_some(why)).collect();
        Ok(Self { marks, metres, unsure })
    }

    /// The length of a cable of whose jacket there are several photos, the last one first: between the last with a mark and the last
    /// before it that shows another end. Nothing where fewer than two show a mark.
    ///
    /// # Errors
    /// Why there is none.
    pub fn among(photos: &[&Suggestion]) -> Option<Result<LengthAmong, NoLength>> {
        let marked: Vec<(usize, &SeenNumber)> =
            photos.iter().enumerate().filter_map(|(place, photo)| Some((place, photo.mark()?))).collect();
        let ((far, _), before) = marked.split_first()?;
        let between = |near: usize| {
            let [near, far] = [photos.get(near)?, photos.get(*far)?];
            Some(Self::between([near, far]))
        };
        let all: Vec<(usize, Result<Self, NoLength>)> =
            before.iter().filter_map(|(near, _)| Some((*near, between(*near)?))).collect();
        let is_other_end = |(_, length): &&(usize, Result<Self, NoLength>)| {
            length.as_ref().is_ok_and(|length| length.metres > ONE_END_METRES)
        };
        let found = all.iter().find(is_other_end).or_else(|| all.iter().find(|(_, length)| length.is_ok()));
        let Some((near, Ok(length))) = found else {
            return all.into_iter().find_map(|(_, length)| length.err()).map(Err);
        };
        let mut length = length.clone();
        let is_at = |end: &SeenNumber, mark: &SeenNumber| {
            let apart = metres_between([(mark.value, mark.unit), (end.value, end.unit)]);
            apart == Err(NoLength::SameMark) || apart.is_ok_and(|metres| metres <= ONE_END_METRES)
        };
        // Feet are held against feet, and metres against metres.
        let is_at_an_end = |(place, _): &(usize, &SeenNumber)| {
            let in_unit = |unit| {
                let mark = |place: usize| photos.get(place)?.mark_in(unit);
                let ends = [mark(*near), mark(*far)];
                let of_photo = mark(*place).filter(|_| ends.iter().any(Option::is_some))?;
                Some(ends.into_iter().flatten().any(|end| is_at(end, of_photo)))
            };
            let held: Vec<bool> = UNITS.into_iter().filter_map(in_unit).collect();
            !held.is_empty() && held.into_iter().all(|is_it| is_it)
        };
        if !marked.iter().all(is_at_an_end) {
            length.unsure.push(LengthUnsure::OtherMark);
        }
        Some(Ok(LengthAmong { photos: [*near, *far], length }))
    }
}

impl LengthUnsure {
    /// Its name, for programs; it never changes.
    pub const fn name(self) -> &'static str {
        match self {
            Self::MarkAsked => "mark_asked",
            Self::TwoSeries => "two_series",
            Self::OneEnd => "one_end",
            Self::OtherMark => "other_mark",
            Self::UnitsDisagree => "units_disagree",
        }
    }

    /// The phrase that says it.
    pub fn phrase(self) -> Phrase {
        Phrase::new(match self {
            Self::MarkAsked => "label-length-mark-asked",
            Self::TwoSeries => "label-length-two-series",
            Self::OneEnd => "label-length-one-end",
            Self::OtherMark => "label-length-other-mark",
            Self::UnitsDisagree => "label-length-units-disagree",
        })
    }
}

impl NoLength {
    /// Its name, for programs; it never changes.
    pub const fn name(self) -> &'static str {
        match self {
            Self::NoMark { .. } => "no_mark",
            Self::TwoUnits => "two_units",
            Self::SameMark => "same_mark",
            Self::TooFarApart => "too_far_apart",
        }
    }

    /// The phrase that says it.
    pub fn phrase(self) -> Phrase {
        match self {
            Self::NoMark { end } => {
                Phrase::new("label-no-length-mark").text("end", if end == 0 { "first" } else { "second" })
            }
            Self::TwoUnits => Phrase::new("label-no-length-two-units"),
            Self::SameMark => Phrase::new("label-no-length-same-mark"),
            Self::TooFarApart => Phrase::new("label-no-length-too-far-apart"),
        }
    }
}

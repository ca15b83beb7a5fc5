//! How long a cable is, by the marks on its jacket at both its ends: seen on photos, or typed.

use coax::quantity::METRES_PER_FOOT;
use phrase::Phrase;

use super::{SeenNumber, SeenUnit, Suggestion};

/// A house has no longer cable, metres: marks farther apart are of two cables, or one of them was misread.
pub const LONGEST_CABLE_METRES: f64 = 500.0;

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

impl Suggestion {
    /// The mark by which a length is worked out: the first that is sure, or else the first.
    fn mark(&self) -> Option<&SeenNumber> {
        self.marks().find(|mark| mark.is_sure()).or_else(|| self.marks().next())
    }
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
        let marks = [mark(0, near)?, mark(1, far)?];
        let metres = metres_between(marks.each_ref().map(|mark| (mark.value, mark.unit)))?;
        let series = near.reading.cable.zip(far.reading.cable);
        let doubts = [
            (marks.iter().any(|mark| !mark.is_sure()), LengthUnsure::MarkAsked),
            (series.is_some_and(|(near, far)| near != far), LengthUnsure::TwoSeries),
        ];
        let unsure = doubts.into_iter().filter_map(|(applies, why)| applies.then_some(why)).collect();
        Ok(Self { marks, metres, unsure })
    }
}

impl LengthUnsure {
    /// Its name, for programs; it never changes.
    pub const fn name(self) -> &'static str {
        match self {
            Self::MarkAsked => "mark_asked",
            Self::TwoSeries => "two_series",
        }
    }

    /// The phrase that says it.
    pub fn phrase(self) -> Phrase {
        Phrase::new(match self {
            Self::MarkAsked => "label-length-mark-asked",
            Self::TwoSeries => "label-length-two-series",
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

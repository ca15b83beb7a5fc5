//! Figures as people type them: a number with either decimal mark, and a unit of the trade after it. What can be read two
//! ways is not read but told.
//!
//! ```
//! use coax::typed::{Fault, Measure, figure};
//!
//! assert_eq!(figure("12,5", Measure::Length, "m"), Ok(12.5));
//! assert_eq!(figure("63.5 dBµV", Measure::Level, "dbmv"), Ok(3.5));
//! assert!(matches!(figure("1,000", Measure::Rate, "mbps"), Err(Fault::InDoubt { .. })));
//! ```

mod number;
mod unit;

pub use number::{Doubt, Numeral};
pub use unit::{Measure, Unit};

/// Why a text is not read as a figure.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Fault {
    /// No number stands there, or something else stands beside it.
    NoFigure,
    /// It can be read two ways.
    InDoubt(Doubt),
    /// It counts bytes, of which one is eight bits.
    Bytes,
}

/// A figure at the beginning of a text.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leading<'t> {
    /// The number as typed, in its unit if one is typed after it.
    pub number: f64,
    /// The unit that is typed after it.
    pub unit: Option<&'static Unit>,
    /// What it comes to in the measure's own unit, where a unit is typed.
    pub own: Option<f64>,
    /// What follows.
    pub rest: &'t str,
}

/// Reads the figure that a text begins with: one number and, where one is typed, its unit; of a length also feet and
/// inches, or metres and centimetres, one after the other.
///
/// # Errors
/// [`Fault`].
pub fn leading(text: &str, measure: Measure) -> Result<Leading<'_>, Fault> {
    let (numeral, rest) = Numeral::leading(text).ok_or(Fault::NoFigure)?;
    let number = numeral.value().map_err(Fault::InDoubt)?.ok_or(Fault::NoFigure)?;
    let (unit, rest) = measure.leading_unit(rest)?;
    let Some(unit) = unit else { return Ok(Leading { number, unit: None, own: None, rest }) };
    let own = unit.own(number);
    match measure.smaller(unit).and_then(|smaller| piece(rest, measure, smaller).transpose()) {
        Some(piece) => {
            let (more, rest) = piece?;
            Ok(Leading { number, unit: Some(unit), own: Some(clean(own + more)), rest })
        }
        None => Ok(Leading { number, unit: Some(unit), own: Some(clean(own)), rest }),
    }
}

/// The inches after feet, the centimetres after metres; `None` where something else follows. Inches may stand bare.
fn piece<'t>(rest: &'t str, measure: Measure, smaller: &Unit) -> Result<Option<(f64, &'t str)>, Fault> {
    let Some((numeral, after)) = Numeral::leading(rest).filter(|(numeral, _)| !numeral.has_sign()) else {
        return Ok(None);
    };
    let Some(number) = numeral.value().map_err(Fault::InDoubt)? else { return Ok(None) };
    let (unit, after) = measure.leading_unit(after)?;
    let is_bare = unit.is_none() && smaller.may_be_bare() && after.trim().is_empty();
    if is_bare || unit == Some(smaller) { Ok(Some((smaller.own(number), after))) } else { Ok(None) }
}

/// Reads a text that is one figure and nothing else, in the measure's own unit. A unit typed after the number wins over
/// the one that was chosen beside it, by its key.
///
/// # Errors
/// [`Fault`].
pub fn figure(text: &str, measure: Measure, chosen: &str) -> Result<f64, Fault> {
    let read = leading(text, measure)?;
    if !read.rest.trim().is_empty() {
        return Err(Fault::NoFigure);
    }
    let chosen = measure.unit(chosen);
    read.own.or_else(|| Some(clean(chosen?.own(read.number)))).ok_or(Fault::NoFigure)
}

/// A figure in one of its measure's units, as it would be typed again: with as few digits as tell it, four behind the mark
/// at most.
pub fn written(own: f64, measure: Measure, unit: &str) -> String {
    let value = measure.unit(unit).map_or(own, |unit| unit.of_own(own));
    let rounded = |digits: i32| (value * 10_f64.powi(digits)).round() / 10_f64.powi(digits);
    let tells = |rounded: &f64| (rounded - value).abs() < 1e-7;
    let short = (2..4).map(rounded).find(tells).unwrap_or_else(|| rounded(4));
    format!("{}", short + 0.0)
}

/// What units leave of a figure that is exact in decimal notation, taken away.
fn clean(own: f64) -> f64 {
    (own * 1e9).round() / 1e9
}

#[cfg(test)]
mod tests;

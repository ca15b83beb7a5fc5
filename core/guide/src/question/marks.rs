//! The marks on a cable's jacket at its two ends, typed: what lies between them is its length.

use coax::quantity::METRES_PER_FOOT;
use coax::typed::{Measure, figure};
use facts::fact::SubjectId;
use house::record::{LengthKnown, RunLength, field};
use label::seen::{NoLength, SeenUnit, metres_between};
use phrase::Phrase;

use super::answer::{Answer, Told};
use crate::number::Quantity;
use crate::place::{Key, Question, choices};
use crate::screen::WordsRole;
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// The unit in which a jacket counts.
    MarksUnit {
        /// Feet.
        Feet "ft",
        /// Metres.
        Metres "m",
    }
}

/// How long a cable is, by the marks at its two ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct MarksAnswer {
    near: f64,
    far: f64,
    unit: MarksUnit,
}

/// A mark on a jacket: a whole number as it stands there, its thousands parted or not, and the unit where one is typed behind it.
/// A jacket has no tenths, so that a comma before three digits is no decimal one.
fn mark(typed: &str) -> Option<(f64, Option<MarksUnit>)> {
    let text = typed.trim();
    let digits = text.find(|sign: char| !(sign.is_ascii_digit() || ",.\u{2019}".contains(sign)));
    let (number, behind) = text.split_at_checked(digits.unwrap_or(text.len()))?;
    let mut groups = number.split([',', '.', '\u{2019}']);
    let first = groups.next().filter(|first| !first.is_empty())?;
    let rest: Vec<&str> = groups.collect();
    let is_parted = rest.iter().all(|group| group.len() == 3) && (rest.is_empty() || first.len() <= 3);
    let plain: String = std::iter::once(first).chain(rest).collect();
    let value = plain.parse::<f64>().ok().filter(|mark| is_parted && (0.0..1e6).contains(mark))?;
    if behind.trim().is_empty() {
        return Some((value, None));
    }
    let unit = figure(&format!("1{behind}"), Measure::Length, "m").ok()?;
    let unit = match () {
        () if (unit - 1.0).abs() < 1e-9 => MarksUnit::Metres,
        () if (unit - METRES_PER_FOOT).abs() < 1e-9 => MarksUnit::Feet,
        () => return None,
    };
    Some((value, Some(unit)))
}

impl MarksAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, run: SubjectId) {
        builder.words(WordsRole::How, &Question::Marks(run).phrase(snapshot).attribute("how-far"));
        builder.number(&Key::Near, &Phrase::new("marks-one-end"), None, Quantity::Count, None);
        builder.number(&Key::Far, &Phrase::new("marks-other-end"), None, Quantity::Count, None);
        let words = |unit: &MarksUnit| Phrase::new(format!("marks-{}", unit.word()));
        let offers = MarksUnit::ALL.iter().map(|unit| Offer::new(unit, words(unit))).collect();
        builder.choice(&Key::Unit, &Phrase::new("marks-unit"), false, offers, &[MarksUnit::Feet]);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        let at = |key: &Key, which: &'static str| {
            let typed = pending.typed(key).map_or("", |(typed, _)| typed);
            mark(typed).ok_or_else(|| {
                let given = if typed.trim().is_empty() { "no" } else { "yes" };
                Phrase::new("marks-not-read")
                    .text("end", which)
                    .text("given", given)
                    .text("typed", typed.trim())
            })
        };
        let ((near, here), (far, there)) = (at(&Key::Near, "one")?, at(&Key::Far, "other")?);
        let picked = pending.one(&Key::Unit).unwrap_or(MarksUnit::Feet);
        match (here, there) {
            (Some(here), Some(there)) if here != there => Err(NoLength::TwoUnits.phrase()),
            (here, there) => Ok(Self { near, far, unit: here.or(there).unwrap_or(picked) }),
        }
    }

    pub(super) fn answer(self, run: SubjectId) -> Told<Answer> {
        let unit = match self.unit {
            MarksUnit::Feet => SeenUnit::Feet,
            MarksUnit::Metres => SeenUnit::Metres,
        };
        let metres = metres_between([(self.near, unit), (self.far, unit)]).map_err(NoLength::phrase)?;
        Ok(Answer::new().says(run, field::run::LENGTH, &RunLength::stated(metres, LengthKnown::Measured)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::done::Done;

    #[test]
    fn a_mark_is_read_as_it_stands_on_the_jacket() {
        use MarksUnit::{Feet, Metres};
        for (typed, read) in [
            ("1208", Some((1208.0, None))),
            ("1,208", Some((1208.0, None))),
            ("01,208 ft", Some((1208.0, Some(Feet)))),
            ("1.254 feet", Some((1254.0, Some(Feet)))),
            ("77 m", Some((77.0, Some(Metres)))),
            ("077m", Some((77.0, Some(Metres)))),
            ("12,5", None),
            ("77 cm", None),
            ("77 x", None),
            ("ft", None),
            ("", None),
        ] {
            assert_eq!(mark(typed), read, "{typed}");
        }
    }

    #[test]
    fn what_is_no_mark_is_named_by_its_end() {
        let given = |near: &str, far: &str| {
            let mut pending = Pending::default();
            for (key, typed) in [(Key::Near, near), (Key::Far, far)] {
                pending.keep(&Done::Measure(key, typed.into(), "count".into()));
            }
            MarksAnswer::read(&pending)
        };
        assert_eq!(given("77 m", "91"), Ok(MarksAnswer { near: 77.0, far: 91.0, unit: MarksUnit::Metres }));
        let end = |told: Told<MarksAnswer>| {
            let args = told.err().map(|phrase| phrase.args).unwrap_or_default();
            args.iter().find(|(name, _)| *name == "end").map(|(_, arg)| format!("{arg:?}"))
        };
        assert!(end(given("77", "nine")).is_some_and(|end| end.contains("other")));
        assert!(end(given("", "91")).is_some_and(|end| end.contains("one")));
        assert_eq!(
            given("77 m", "91 ft").err().map(|phrase| phrase.id),
            Some("label-no-length-two-units".into())
        );
    }
}

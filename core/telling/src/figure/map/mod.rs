//! The wiring map: the plan of a house's coax, from the street to the rooms.
//!
//! Every part is a sign with its tag in a frame, its name and the weightiest remarks; every cable a line of its series.
//! Two layouts: *narrow*, a row a part, the street on top; *wide*, a column a part, the street at the left. What is
//! plain folds until the map fits; what is weak, wrong, not known or changed never does. What is not traced
//! stands under a rule of its own. The way to the weakest room is a band under its cables. The rule of it stands in
//! `docs/map.md`.

mod band;
mod changed;
mod columns;
mod fold;
mod key;
mod line;
mod narrow;
mod node;
mod shown;
mod sign;
mod told;
mod tree;
mod ways;
mod wide;
mod words;

use std::borrow::Cow;
use std::collections::BTreeSet;

use advice::finding::{Finding, findings};
use advice::forecast::{Forecast, WeakWay};
use advice::worklist::WorkList;
use facts::fact::SubjectId;
use house::record::{Survey, rows};
use phrase::{Arg, Phrase};

use super::mark::Figure;
use crate::words::Language;
use changed::Changed;
use node::Plan;
pub use shown::ShownMap;
use shown::several;

/// The width of the narrow layout, in CSS pixels: what a phone held upright shows beside its margins.
pub const NARROW: f64 = 358.0;
/// The width of a column of a page, in CSS pixels.
pub const COLUMN: f64 = 700.0;
/// The width of a whole page, in CSS pixels.
pub const PAGE: f64 = 1136.0;

/// How the map is laid out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Layout {
    /// A row a part, the street on top, [`NARROW`] wide.
    Narrow,
    /// A column a part, the street at the left, fitted to a width in CSS pixels. Where even short names need more, the
    /// figure is wider: then the narrow one reads better.
    Wide(f64),
}

/// What of the map is folded.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Folding {
    /// Whatever has to be until it fits, but for what was unfolded at these parts.
    But(BTreeSet<SubjectId>),
    /// Nothing.
    Nothing,
}

/// A wiring map to be drawn: of a survey, with what is known about it.
#[derive(Debug, Clone)]
pub struct WiringMap<'a> {
    survey: &'a Survey,
    weak: Option<WeakWay>,
    findings: Cow<'a, [Finding]>,
    changed: Changed,
    layout: Layout,
    folding: Folding,
}

impl<'a> WiringMap<'a> {
    /// The map of what was found, narrow, folded until it fits.
    pub fn of(survey: &'a Survey) -> Self {
        Self {
            survey,
            weak: None,
            findings: Cow::Borrowed(&[]),
            changed: Changed::default(),
            layout: Layout::Narrow,
            folding: Folding::But(BTreeSet::new()),
        }
    }

    /// The map of the house after the whole work list, with what is weak then, and the number of the step at all that it
    /// changes.
    pub fn after(list: &'a WorkList) -> Self {
        let findings = Cow::Owned(findings(&list.house_when_done, Some(&list.when_done)));
        let changed = Changed::by(list);
        Self { findings, changed, ..Self::of(&list.house_when_done) }.with_forecast(Some(&list.when_done))
    }

    /// With the way to the weakest room, of the forecast of this survey.
    #[must_use]
    pub fn with_forecast(self, forecast: Option<&Forecast>) -> Self {
        Self { weak: forecast.and_then(|forecast| WeakWay::of(self.survey, forecast)), ..self }
    }

    /// With a flag wherever one of these findings weighs.
    #[must_use]
    pub fn with_findings(self, findings: &'a [Finding]) -> Self {
        Self { findings: Cow::Borrowed(findings), ..self }
    }

    /// In this layout.
    #[must_use]
    pub fn laid_out(self, layout: Layout) -> Self {
        Self { layout, ..self }
    }

    /// Folded so.
    #[must_use]
    pub fn folded(self, folding: Folding) -> Self {
        Self { folding, ..self }
    }

    fn plan(&self, language: &Language) -> Plan {
        let speaker = words::Speaker {
            survey: self.survey,
            weak: self.weak.as_ref(),
            findings: &self.findings,
            changed: &self.changed,
            language,
        };
        Plan::of(&speaker)
    }

    /// The map as it is shown in a language, for several drawings of it.
    pub fn shown<'l>(&self, language: &'l Language) -> ShownMap<'l> {
        ShownMap::of(self, &self.folding, language)
    }

    /// The map as a figure; mirrored for who reads from right to left.
    pub fn figure(&self, language: &Language) -> Figure {
        self.shown(language).figure(self.layout)
    }

    /// The map as a tree in lines of text, for where nothing can be drawn.
    pub fn lines(&self, language: &Language) -> Vec<String> {
        self.shown(language).lines()
    }

    fn name(&self) -> Phrase {
        Phrase::new(if self.changed.is_empty() { "map-name" } else { "map-name.after" })
    }

    fn description(&self) -> Phrase {
        let ends = rows(self.survey).loose_ends.len();
        let found = Phrase::new("map-description")
            .with("parts", Arg::Count(self.survey.parts.len() as u64))
            .with("loose", Arg::Count(self.survey.wiring.loose().len() as u64))
            .with("ends", Arg::Count(ends as u64));
        let gone = self.changed.gone();
        if gone.is_empty() {
            return found;
        }
        let gone = Phrase::new("map-taken-out").with("parts", several(gone.to_vec()));
        Phrase::new("map-description-and").phrase("found", found).phrase("gone", gone)
    }
}

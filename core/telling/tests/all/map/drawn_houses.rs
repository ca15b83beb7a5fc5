//! The houses of the drawings, with all that follows from each.

use std::collections::BTreeSet;
use std::sync::LazyLock;

use advice::finding::{Finding, findings};
use advice::forecast::Forecast;
use house::record::Survey;
use houses::drawn;
use telling::figure::{Figure, Folding, Layout, WiringMap};

use crate::report_house::{english, forecast_of};

/// A house with all that follows from it.
pub(super) struct Known {
    pub(super) survey: Survey,
    pub(super) forecast: Forecast,
    pub(super) found: Vec<Finding>,
}

impl Known {
    pub(super) fn of(survey: Survey) -> Self {
        let forecast = forecast_of(&survey);
        let found = findings(&survey, Some(&forecast));
        Self { survey, forecast, found }
    }

    pub(super) fn map(&self, layout: Layout, folding: Folding) -> Figure {
        let map = WiringMap::of(&self.survey).with_forecast(Some(&self.forecast)).with_findings(&self.found);
        map.laid_out(layout).folded(folding).figure(&english())
    }
}

/// The houses of the drawings, smallest first.
pub(super) static HOUSES: LazyLock<Vec<Known>> = LazyLock::new(|| {
    let houses = [drawn::three(), drawn::nine(), drawn::thirty_nine(), drawn::floors(9), drawn::floors(23)];
    houses.into_iter().map(Known::of).collect()
});

#[expect(clippy::unwrap_used, reason = "a house that is not there fails the test")]
pub(super) fn drawn_house(parts: usize) -> &'static Known {
    HOUSES.iter().find(|known| known.survey.parts.len() == parts).unwrap()
}

pub(super) fn folded() -> Folding {
    Folding::But(BTreeSet::new())
}

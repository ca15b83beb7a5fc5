//! The forecast that states what a house gets, made once somebody asks for it: it is dear, and of a list of which only the end
//! is told it is mostly not asked for.

use house::record::Survey;

use super::watch::Meter;
use crate::error::AdviceError;
use crate::forecast::{Forecast, Options};

/// A house's forecast, as soon as it was asked for.
#[derive(Debug, Clone, Default)]
pub(super) struct Stated(Option<Forecast>);

impl Stated {
    /// One that is known already.
    pub(super) const fn known(forecast: Forecast) -> Self {
        Self(Some(forecast))
    }

    /// The forecast of the house that this is of.
    pub(super) fn of(
        &mut self,
        house: &Survey,
        options: &Options,
        meter: &mut Meter<'_>,
    ) -> Result<&Forecast, AdviceError> {
        let known = match self.0.take() {
            Some(known) => known,
            None => meter.stated(house, options)?,
        };
        Ok(self.0.insert(known))
    }
}

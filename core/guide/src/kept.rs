//! What was worked out of a survey, kept beside it: looked for first, worked out only where it is not there, and then kept if
//! that took long. Every command and every screen asks here, so that nothing is worked out twice.

use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use advice::AdviceError;
use advice::forecast::{Forecast, forecast_watched};
use advice::kept::{Kept, mark};
use advice::unknown::unknowns;
use advice::worklist::{BridgePlace, Options, Stake, WorkList, bridge_places, stakes, worklist_watched};
use facts::store::{Mark, Store, keep_worked_out, worked_out};
use house::record::{Survey, fold};

/// What takes less is worked out as fast as it is read, and not kept.
const QUICK: Duration = Duration::from_millis(200);

/// Of all the work, the share that is done when the work list is; the rest is weighing what is not known.
const UNTIL_WEIGHING: f64 = 0.9;

/// Is told which share is done, and says whether to go on.
pub type Watching<'a> = &'a mut dyn FnMut(f64) -> bool;

/// One house, and where what follows from it is kept.
pub struct Beside<'a> {
    folder: Option<PathBuf>,
    survey: &'a Survey,
    options: Options,
    mark: Mark,
}

impl<'a> Beside<'a> {
    /// What follows from the survey in `folder`; of one without a folder nothing is kept.
    pub fn of(folder: Option<&Path>, survey: &'a Survey, options: Options) -> Self {
        Self { folder: folder.map(Path::to_owned), survey, mark: mark(survey, &options), options }
    }

    /// The forecast of the house as it is.
    ///
    /// # Errors
    /// What working it out gives; [`AdviceError::Stopped`] once `watch` says no.
    pub fn forecast(&self, watch: Watching<'_>) -> Result<Forecast, AdviceError> {
        if let Some(kept) = self.kept() {
            return Ok(kept.forecast);
        }
        let begun = Instant::now();
        let forecast = self.worked_out_forecast(watch)?;
        self.keep(is_slow(begun), || Kept { forecast: forecast.clone(), list: None, stakes: None });
        Ok(forecast)
    }

    /// The work list.
    ///
    /// # Errors
    /// As [`Beside::forecast`].
    pub fn work_list(&self, watch: Watching<'_>) -> Result<WorkList, AdviceError> {
        if let Some(list) = self.kept().and_then(|kept| kept.list) {
            return Ok(list);
        }
        let begun = Instant::now();
        let list = worklist_watched(self.survey, &self.options, watch)?;
        self.keep(is_slow(begun), || Kept {
            forecast: list.as_found.clone(),
            list: Some(list.clone()),
            stakes: None,
        });
        Ok(list)
    }

    /// The work list, and of each of what is not known what is at stake, in the order of [`unknowns`].
    ///
    /// # Errors
    /// As [`Beside::forecast`].
    pub fn all(&self, watch: Watching<'_>) -> Result<(WorkList, Vec<Option<Stake>>), AdviceError> {
        let kept = self.kept().and_then(|kept| Some((kept.list?, kept.stakes)));
        if let Some((list, Some(stakes))) = kept {
            return Ok((list, stakes));
        }
        let (begun, was_kept) = (Instant::now(), kept.is_some());
        let list = match kept {
            Some((list, _)) => list,
            None => worklist_watched(self.survey, &self.options, &mut |share| watch(share * UNTIL_WEIGHING))?,
        };
        let open = unknowns(self.survey, &list.as_found);
        let weighing = &mut |share| watch(UNTIL_WEIGHING + (1.0 - UNTIL_WEIGHING) * share);
        let stakes = stakes(self.survey, &list.as_found, &open, &self.options.screening, weighing)?;
        // Beside what is kept, what little was left is kept too.
        self.keep(was_kept || is_slow(begun), || Kept {
            forecast: list.as_found.clone(),
            list: Some(list.clone()),
            stakes: Some(stakes.clone()),
        });
        Ok((list, stakes))
    }

    /// Where the network could start, while nobody has said where it does: as the work list has it, where that is kept.
    ///
    /// # Errors
    /// As [`Beside::forecast`].
    pub fn bridge_places(&self, watch: Watching<'_>) -> Result<Vec<BridgePlace>, AdviceError> {
        if let Some(list) = self.kept().and_then(|kept| kept.list) {
            return Ok(list.places);
        }
        let Options { screening, stating, .. } = &self.options;
        bridge_places(self.survey, (screening, stating), watch)
    }

    fn worked_out_forecast(&self, watch: Watching<'_>) -> Result<Forecast, AdviceError> {
        let options = self.options.stating;
        let (mut done, of) = (0_u32, f64::from(options.draws.max(1)));
        forecast_watched(self.survey, &options, &mut || {
            done += 1;
            watch((f64::from(done) / of).min(1.0))
        })
    }

    fn kept(&self) -> Option<Kept> {
        let bytes = worked_out(self.folder.as_deref()?, &self.mark)?;
        Kept::of_bytes(self.survey, &bytes)
    }

    fn keep(&self, is_slow: bool, worked: impl FnOnce() -> Kept) {
        let Some(folder) = self.folder.as_deref().filter(|_| is_slow) else { return };
        let Some(bytes) = worked().to_bytes() else { return };
        // Of a survey that others changed meanwhile the next asker asks anew.
        let is_still_so = |store: &Store| {
            fold(store.ledger(), store.survey_id()).is_ok_and(|now| mark(&now, &self.options) == self.mark)
        };
        keep_worked_out(folder, &self.mark, &bytes, is_still_so);
    }
}

fn is_slow(begun: Instant) -> bool {
    begun.elapsed() >= QUICK
}

#[cfg(test)]
mod tests {
    use advice::forecast::Options as Draws;
    use facts::fact::{AuthorId, Edit};
    use house::document::Document;
    use house::record::{Is, PartKind, field};

    use super::*;

    fn few() -> Options {
        let draws = |draws| Draws { draws, seed: 1, points: 16, settles: false };
        Options { screening: draws(2), stating: draws(4), ..Options::default() }
    }

    fn survey() -> (tempfile::TempDir, Store) {
        let home = tempfile::TempDir::new().unwrap();
        let mut store = Store::create(&home.path().join("one.legwork"), AuthorId::random()).unwrap();
        let part = facts::fact::SubjectId::random();
        store.write(&[Is::Part.begin(part), field::part::KIND.set(part, &PartKind::Splitter)]).unwrap();
        (home, store)
    }

    fn quiet() -> impl FnMut(f64) -> bool {
        |_| true
    }

    /// Keeps a forecast that nothing works out, so that it can be told whether it is what is asked for.
    fn keep_a_strange_one(beside: &Beside<'_>) -> Forecast {
        let mut forecast = beside.worked_out_forecast(&mut quiet()).unwrap();
        forecast.seed = 77;
        beside.keep(true, || Kept { forecast: forecast.clone(), list: None, stakes: None });
        forecast
    }

    #[test]
    fn what_is_kept_is_taken_until_a_fact_changes() {
        let (_home, mut store) = survey();
        let found = store.survey().unwrap();
        let folder = store.folder().to_owned();
        let beside = Beside::of(Some(&folder), &found, few());
        let strange = keep_a_strange_one(&beside);
        assert_eq!(beside.forecast(&mut quiet()).unwrap(), strange);
        let other_options = Beside::of(Some(&folder), &found, Options::default());
        assert_ne!(other_options.forecast(&mut quiet()).unwrap().seed, 77);
        let nowhere = Beside::of(None, &found, few());
        assert_ne!(nowhere.forecast(&mut quiet()).unwrap().seed, 77);

        let part = *found.parts.keys().next().unwrap();
        store.write(&[Edit::new(part, field::TAG, "S1")]).unwrap();
        let now = store.survey().unwrap();
        let beside = Beside::of(Some(&folder), &now, few());
        assert_ne!(beside.forecast(&mut quiet()).unwrap().seed, 77);
    }

    #[test]
    fn what_is_of_facts_that_are_others_by_now_is_not_kept() {
        let (_home, mut store) = survey();
        let found = store.survey().unwrap();
        let folder = store.folder().to_owned();
        let part = *found.parts.keys().next().unwrap();
        store.write(&[Edit::new(part, field::TAG, "S1")]).unwrap();
        keep_a_strange_one(&Beside::of(Some(&folder), &found, few()));
        let there = std::fs::read_dir(&folder).unwrap().flatten();
        assert!(there.into_iter().all(|file| !file.file_name().to_string_lossy().contains("worked-out")));
    }

    #[test]
    fn what_is_quick_is_not_kept_and_what_is_stopped_neither() {
        let (_home, store) = survey();
        let found = store.survey().unwrap();
        let beside = Beside::of(Some(store.folder()), &found, few());
        beside.forecast(&mut quiet()).unwrap();
        assert!(beside.kept().is_none());
        let full = Options { stating: Draws { draws: 50, ..few().stating }, ..few() };
        let house = houses::good_house().survey();
        let slow = Beside::of(Some(store.folder()), &house, full);
        assert!(matches!(slow.all(&mut |_| false), Err(AdviceError::Stopped)));
        assert!(slow.kept().is_none());
    }
}

//! What follows from a survey: forecast, work list and findings, worked out beside over a copy of it, or found where it was kept.

use std::cmp::Ordering;
use std::path::Path;
use std::sync::Arc;

use advice::finding::{Finding, findings_beside};
use advice::forecast::Forecast;
use advice::unknown::{Matters, Unknown, unknowns};
use advice::worklist::{Options, Stake, WorkList};
use house::record::Survey;

use super::long_work::{LongWork, LongWorkOf};
use crate::error::{GuideError, Trouble};
use crate::kept::Beside;

/// Everything that follows from a survey as it stood once.
#[derive(Debug)]
pub(crate) struct Worked {
    /// The work list, with the forecast of the house as found.
    pub(crate) list: WorkList,
    /// What is wrong or at risk.
    pub(crate) findings: Vec<Finding>,
    /// What is at stake with each of what is not known, in the order in which that was found.
    pub(crate) stakes: Vec<Option<Stake>>,
    /// What is not known, what is most worth going back for first.
    pub(crate) unknowns: Vec<Weighed>,
}

/// Something not known, with what knowing it may change.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Weighed {
    /// What is not known.
    pub(crate) unknown: Unknown,
    /// What knowing it may change, where that can be told.
    pub(crate) stake: Option<Stake>,
}

impl Weighed {
    /// What is at stake, if that is worth going back for.
    pub(crate) fn worth(&self) -> Option<Stake> {
        self.stake.filter(|stake| stake.is_worth_going_back())
    }

    /// Whether it is worth going back for: by what is at stake or, where that cannot be told, by where it is.
    pub(crate) fn is_worth_going_back(&self) -> bool {
        self.unknown.is_on_failed_way()
            || self.worth().is_some()
            || (self.stake.is_none() && self.unknown.matters < Matters::Echo)
    }
}

impl Worked {
    /// What gets through in the house as it is.
    pub(crate) fn forecast(&self) -> &Forecast {
        &self.list.as_found
    }
}

/// Whether nothing differs that the results depend on: photos, notes and the survey's name may.
pub(super) fn same_wiring(a: &Survey, b: &Survey) -> bool {
    let given_up = |survey: &Survey| {
        let mut given_up: Vec<_> =
            survey.works.values().map(|work| (work.change, work.outcome.end)).collect();
        given_up.sort_unstable();
        given_up
    };
    a.parts == b.parts
        && a.runs == b.runs
        && a.rooms == b.rooms
        && a.services == b.services
        && a.readings == b.readings
        && a.done_since == b.done_since
        && a.wiring == b.wiring
        && a.building == b.building
        && a.internet == b.internet
        && a.network == b.network
        && a.unread == b.unread
        && a.impossible == b.impossible
        && a.without() == b.without()
        && given_up(a) == given_up(b)
}

/// Works everything out, or finds it beside the survey in `folder`.
fn work_out(folder: &Path, house: &Survey, options: Options, work: &LongWork) -> Result<Worked, GuideError> {
    let beside = Beside::of(Some(folder), house, options);
    let (list, stakes) = beside.all(&mut |share| work.goes_on(share)).map_err(GuideError::from)?;
    let findings = findings_beside(house, &list.as_found, &list.levels);
    let unknowns = weighed(unknowns(house, &list.as_found), &stakes);
    Ok(Worked { list, findings, stakes, unknowns })
}

/// What is on a way to a room is weighed: what is most worth going back for comes first.
pub(super) fn weighed(unknowns: Vec<Unknown>, stakes: &[Option<Stake>]) -> Vec<Weighed> {
    let stakes = stakes.iter().copied().chain(std::iter::repeat(None));
    let pairs = unknowns.into_iter().zip(stakes);
    let mut weighed: Vec<_> = pairs.map(|(unknown, stake)| Weighed { unknown, stake }).collect();
    let stake = |weighed: &Weighed| weighed.worth().map_or(0.0, |stake| stake.mbps);
    let failed = |weighed: &Weighed| weighed.unknown.is_on_failed_way();
    weighed.sort_by(|a, b| {
        if failed(a) && failed(b) {
            // They stand in order already: what is most likely at fault first.
            return Ordering::Equal;
        }
        failed(b)
            .cmp(&failed(a))
            .then(stake(b).total_cmp(&stake(a)))
            .then(b.is_worth_going_back().cmp(&a.is_worth_going_back()))
    });
    weighed
}

/// How what follows from a survey stands.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Standing<'a> {
    /// It is there, and of the survey as it is.
    Ready(&'a Arc<Worked>),
    /// It is being worked out.
    Running(&'a LongWork),
    /// It was told to stop.
    Stopped,
    /// It could not be worked out.
    Failed(&'a GuideError),
    /// Nobody has begun.
    NotBegun,
}

/// The results of one state of a house.
#[derive(Debug)]
struct ResultsOf {
    /// Which count of writes it is of.
    revision: u64,
    /// The house that it is of.
    house: Arc<Survey>,
    task: LongWorkOf<Arc<Worked>>,
}

impl ResultsOf {
    fn begin(folder: &Path, house: &Survey, revision: u64, options: Options) -> Self {
        let house = Arc::new(house.clone());
        let (copy, folder) = (Arc::clone(&house), folder.to_owned());
        let task = LongWorkOf::begin(move |work| work_out(&folder, &copy, options, work).map(Arc::new));
        Self { revision, house, task }
    }

    fn is_of(&self, survey: &Survey, revision: u64) -> bool {
        self.revision == revision || same_wiring(&self.house, survey)
    }

    /// What came of it; nothing if it was stopped or failed.
    fn worked(&self) -> Option<&Arc<Worked>> {
        // Whoever told it to stop gets nothing, even if it was done that moment.
        self.task.outcome().filter(|_| !self.task.work().is_stopped())?.as_ref().ok()
    }
}

/// What was worked out last, and what is being worked out.
#[derive(Debug, Default)]
pub(crate) struct Results {
    newest: Option<ResultsOf>,
    /// The last one that came to its end: still right if the house is as it was.
    before: Option<ResultsOf>,
}

impl Results {
    /// How it stands for the survey as it is.
    pub(crate) fn standing(&self, survey: &Survey, revision: u64) -> Standing<'_> {
        let known = [&self.newest, &self.before].into_iter().flatten();
        let mut of_survey = known.filter(|results| results.is_of(survey, revision));
        if let Some(worked) = of_survey.find_map(ResultsOf::worked) {
            return Standing::Ready(worked);
        }
        let Some(newest) = self.newest.as_ref().filter(|newest| newest.is_of(survey, revision)) else {
            return Standing::NotBegun;
        };
        match newest.task.outcome() {
            _ if newest.task.work().is_stopped() => Standing::Stopped,
            None => Standing::Running(newest.task.work()),
            Some(Ok(_)) => Standing::NotBegun,
            Some(Err(GuideError::Trouble(Trouble::Stopped))) => Standing::Stopped,
            Some(Err(error)) => Standing::Failed(error),
        }
    }

    /// The work that is going on.
    pub(crate) fn running(&self) -> Option<&LongWork> {
        self.newest.as_ref().map(|newest| newest.task.work()).filter(|work| !work.is_done())
    }

    /// Begins anew; what is going on stops.
    pub(crate) fn begin(&mut self, folder: &Path, survey: &Survey, revision: u64, options: Options) {
        self.stop();
        let next = ResultsOf::begin(folder, survey, revision, options);
        if let Some(last) = self.newest.replace(next)
            && last.worked().is_some()
        {
            self.before = Some(last);
        }
    }

    /// A count of writes that nothing here is of.
    pub(crate) fn next_revision(&self) -> u64 {
        let known = [&self.newest, &self.before].into_iter().flatten();
        known.map(|results| results.revision + 1).max().unwrap_or_default()
    }

    /// Stops what is going on.
    pub(crate) fn stop(&self) {
        if let Some(work) = self.running() {
            work.stop();
        }
    }
}

impl Drop for Results {
    fn drop(&mut self) {
        self.stop();
    }
}

//! Readings from before a piece of work: they tell of the wiring as it was.

use facts::fact::SubjectId;

use super::{ChangeKind, OutcomeKind, Part, Reading, ReadingKind, Survey, Work};

impl Survey {
    /// The work since a reading of a level (or of how clean it is, or of what a modem sends) was taken that lies between the
    /// entry and where it was taken, and so may have moved it; `None` where it still tells of the wiring as it is.
    pub fn work_since_level(&self, reading: &Reading) -> Option<&Work> {
        let level = matches!(
            reading.measured,
            ReadingKind::Level { .. } | ReadingKind::ErrorRatio { .. } | ReadingKind::ModemSends { .. }
        );
        let way = self.wiring.way_up(reading.about.filter(|_| level)?);
        self.work_since(reading, &way, moves_levels)
    }

    /// The work since a test was taken at an outlet that lies on the way there from `bridge`.
    pub fn work_since_test(&self, reading: &Reading, bridge: SubjectId) -> Option<&Work> {
        let way = self.wiring.way_between(bridge, reading.about?)?;
        self.work_since(reading, &way, |change| !change.is_check())
    }

    /// What was read at a part and still tells of the levels of the wiring as it is.
    pub fn levels_read_at(&self, part: SubjectId) -> impl Iterator<Item = &Reading> {
        self.readings_at(part).filter(|reading| self.work_since_level(reading).is_none())
    }

    fn work_since(
        &self,
        reading: &Reading,
        way: &[SubjectId],
        counts: impl Fn(ChangeKind) -> bool,
    ) -> Option<&Work> {
        let later = self.done_since.get(&reading.id)?.iter().filter_map(|work| self.works.get(work));
        let done = later.filter(|work| work.outcome.end == OutcomeKind::Done && counts(work.change));
        done.filter(|work| self.lies_on(work, way)).last()
    }

    /// Whether something that a piece of work changed lies on a way.
    fn lies_on(&self, work: &Work, way: &[SubjectId]) -> bool {
        if work.before.parts.is_empty() && work.before.runs.is_empty() {
            return way.contains(&work.change.at());
        }
        let with_feed = |id: SubjectId| {
            way.contains(&id) && self.wiring.feed(id).is_some_and(|feed| way.contains(&feed.part))
        };
        let part = |before: &Part| {
            // What is only fed from elsewhere now is the same part on another cable.
            let moved =
                self.parts.get(&before.id).is_some_and(|now| fed_by_nothing(now) == fed_by_nothing(before));
            if moved { with_feed(before.id) } else { way.contains(&before.id) }
        };
        work.before.parts.iter().any(part)
            || work.before.runs.iter().filter_map(|run| self.wiring.fed_over(run.id)).any(with_feed)
    }
}

fn fed_by_nothing(part: &Part) -> Part {
    Part { feed: None, measured: None, ..part.clone() }
}

/// Whether a change may move the level of what comes in: whatever puts something on the way, takes it off or renews it.
fn moves_levels(change: ChangeKind) -> bool {
    let elsewhere = matches!(
        change,
        ChangeKind::Cap { .. }
            | ChangeKind::MoveBridge { .. }
            | ChangeKind::NewerAdapter { .. }
            | ChangeKind::ExchangeAdapters { .. }
            | ChangeKind::UseOutletNearby { .. }
    );
    !elsewhere && !change.is_check()
}

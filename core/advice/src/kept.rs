//! What was worked out of a house, as bytes: so that it can be kept beside the survey and need not be worked out again.
//!
//! Kept is what takes long: forecasts, the choice and the order of the steps, what each step does to the other services, what
//! is at stake. What follows from that at once (the house before each step, its effort, the levels as found) is
//! made anew. No name and no text of a person's is in it. The mark says of what it is: of all that the forecast and the work
//! list are worked out of, by which program, with which options. Only the very same program reads the bytes again.

use std::collections::BTreeSet;
use std::fmt::{self, Write as _};

use facts::fact::SubjectId;
use facts::store::Mark;
use house::record::{ChangeKind, ServiceKind, Survey, Without};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use crate::forecast::Forecast;
use crate::level::{self, DoneLevel, Levels, MovedOut, OutletChange, levels};
use crate::worklist::{
    BridgePlace, CutShort, FailedRoom, Gain, Options, OtherList, Refusal, Searched, Stake, Step, WorkList,
    applied, effort,
};

/// This program, by the sources of all that has a say in what is worked out (`build.rs`).
const PROGRAM: &str = env!("LEGWORK_ADVICE_SOURCES");

/// What was worked out of a house, as far as it was.
#[derive(Debug, Clone, PartialEq)]
pub struct Kept {
    /// The forecast of the house as it is.
    pub forecast: Forecast,
    /// The work list.
    pub list: Option<WorkList>,
    /// What is at stake with each of what is not known, in the order of [`unknowns`](crate::unknown::unknowns).
    pub stakes: Option<Vec<Option<Stake>>>,
}

/// The mark of what is worked out of a house with these options. Whatever no result depends on has no part in it: names,
/// where parts sit, notes, photos.
pub fn mark(survey: &Survey, options: &Options) -> Mark {
    let mut bare = survey.clone();
    (bare.name, bare.place) = (None, None);
    bare.notes.clear();
    bare.photos.clear();
    bare.parts.values_mut().for_each(|part| part.place = None);
    let Survey {
        id,
        internet,
        building,
        network,
        parts,
        runs,
        rooms,
        services,
        measurements,
        readings,
        works,
        done_since,
        asked,
        wiring,
        unread,
        impossible,
        ..
    } = &bare;
    let mut sum = Sum(Sha256::new());
    // Of records whose every member is written so, other text is another house.
    let house = (id, internet, building, network, parts, runs, rooms, services);
    let found = (measurements, readings, works, done_since, asked, wiring, unread, impossible);
    // A sum takes whatever is written.
    let _ = write!(sum, "{PROGRAM} {options:?} {house:?} {found:?}");
    sum.0.finalize().into()
}

/// A sum that is written to.
struct Sum(Sha256);

impl fmt::Write for Sum {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        self.0.update(text);
        Ok(())
    }
}

impl Kept {
    /// The bytes; nothing where it cannot be written so.
    pub fn to_bytes(&self) -> Option<Vec<u8>> {
        let list = self.list.as_ref().map(ListBytes::of);
        let bytes = Bytes { forecast: self.forecast.clone(), list, stakes: self.stakes.clone() };
        postcard::to_allocvec(&bytes).ok()
    }

    /// What bytes say of the house of which they are; nothing where they do not fit it.
    pub fn of_bytes(survey: &Survey, bytes: &[u8]) -> Option<Self> {
        let Bytes { forecast, list, stakes } = postcard::from_bytes(bytes).ok()?;
        let list = match list {
            Some(list) => Some(list.into_list(survey, &forecast)?),
            None => None,
        };
        Some(Self { forecast, list, stakes })
    }
}

#[derive(Serialize, Deserialize)]
struct Bytes {
    forecast: Forecast,
    list: Option<ListBytes>,
    stakes: Option<Vec<Option<Stake>>>,
}

#[derive(Serialize, Deserialize)]
struct ListBytes {
    steps: Vec<StepBytes>,
    cut_short: Option<CutShort>,
    searched: Option<Searched>,
    others: Vec<OtherBytes>,
    places: Vec<(SubjectId, Forecast)>,
    refused: Vec<(ChangeKind, Refusal)>,
    when_done: Forecast,
    failed: Vec<FailedRoom>,
    level_changes: Vec<OutletChange>,
}

#[derive(Serialize, Deserialize)]
struct OtherBytes {
    without: BTreeSet<Without>,
    changes: Vec<ChangeKind>,
    when_done: Forecast,
}

#[derive(Serialize, Deserialize)]
struct StepBytes {
    change: ChangeKind,
    gains: Vec<Gain>,
    service_changes: Vec<OutletChange>,
    moves_out: Vec<MovedBytes>,
    narrows: Vec<MovedBytes>,
}

/// A level that is moved out, without its window: that is the device's.
#[derive(Serialize, Deserialize)]
struct MovedBytes {
    outlet: SubjectId,
    service: ServiceKind,
    sends: bool,
    mhz: f64,
    now_dbmv: f64,
    measured: bool,
    level: coax::Span,
    hardly: bool,
}

impl ListBytes {
    fn of(list: &WorkList) -> Self {
        Self {
            steps: list.steps.iter().map(StepBytes::of).collect(),
            cut_short: list.cut_short,
            searched: list.searched,
            others: list.others.iter().map(OtherBytes::of).collect(),
            places: list.places.iter().map(|place| (place.outlet, place.forecast.clone())).collect(),
            refused: list.refused.clone(),
            when_done: list.when_done.clone(),
            failed: list.failed.clone(),
            level_changes: list.level_changes.clone(),
        }
    }

    fn into_list(self, survey: &Survey, as_found: &Forecast) -> Option<WorkList> {
        let levels = levels(survey, &level::Options::default()).ok()?;
        let mut house = survey.clone();
        let mut steps = Vec::with_capacity(self.steps.len());
        for step in self.steps {
            let after = if step.change.is_check() { house.clone() } else { applied(step.change, &house) };
            let with_windows = |moved: Vec<MovedBytes>| -> Option<Vec<MovedOut>> {
                moved.into_iter().map(|moved| moved.with_window(&levels)).collect()
            };
            steps.push(Step {
                change: step.change,
                gains: step.gains,
                service_changes: step.service_changes,
                moves_out: with_windows(step.moves_out)?,
                narrows: with_windows(step.narrows)?,
                effort: effort(step.change, &house),
                before: std::mem::replace(&mut house, after),
            });
        }
        Some(WorkList {
            steps,
            cut_short: self.cut_short,
            searched: self.searched,
            others: self.others.into_iter().map(|other| other.into_list(survey)).collect(),
            places: self
                .places
                .into_iter()
                .map(|(outlet, forecast)| BridgePlace::of(survey, outlet, forecast))
                .collect(),
            refused: self.refused,
            as_found: as_found.clone(),
            when_done: self.when_done,
            house_when_done: house,
            failed: self.failed,
            levels,
            level_changes: self.level_changes,
        })
    }
}

impl OtherBytes {
    fn of(list: &OtherList) -> Self {
        Self {
            without: list.without.clone(),
            changes: list.steps.iter().map(|step| step.change).collect(),
            when_done: list.when_done.clone(),
        }
    }

    fn into_list(self, survey: &Survey) -> OtherList {
        OtherList::of(survey, self.without, &self.changes, self.when_done)
    }
}

impl StepBytes {
    fn of(step: &Step) -> Self {
        Self {
            change: step.change,
            gains: step.gains.clone(),
            service_changes: step.service_changes.clone(),
            moves_out: step.moves_out.iter().map(MovedBytes::of).collect(),
            narrows: step.narrows.iter().map(MovedBytes::of).collect(),
        }
    }
}

impl MovedBytes {
    fn of(moved: &MovedOut) -> Self {
        let MovedOut { outlet, service, sends, level, hardly } = *moved;
        let DoneLevel { mhz, now_dbmv, measured, level, window: _ } = level;
        Self { outlet, service, sends, mhz, now_dbmv, measured, level, hardly }
    }

    fn with_window(self, levels: &Levels) -> Option<MovedOut> {
        let Self { outlet, service, sends, mhz, now_dbmv, measured, level, hardly } = self;
        let found = levels.of(outlet, service)?;
        let window = if sends {
            Some(found.up.iter().find(|up| up.sends.is_some())?.window)
        } else {
            found.down.iter().find(|down| (down.mhz - mhz).abs() < 1e-9)?.window
        };
        let level = DoneLevel { mhz, now_dbmv, measured, level, window };
        Some(MovedOut { outlet, service, sends, level, hardly })
    }
}

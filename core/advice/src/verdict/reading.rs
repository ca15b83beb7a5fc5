//! The verdict on one reading: what it tells of, and where what was measured stands.

use house::record::{Reading, ReadingKind, Survey};

use super::beside::{Beside, Held, HeldOf};
use super::tells::{self, Tells};
use crate::forecast::{Forecast, PathForecast};

/// What one reading of an outlet test says.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// What it tells of.
    pub tells: Tells,
    /// What was measured, each figure beside what was to be expected of it; empty where it tells nothing of the coax, or
    /// where nothing was to be expected.
    pub held: Vec<Held>,
}

impl Verdict {
    /// The verdict on a reading; `None` if it belongs to no outlet test. `forecast` says what was to be expected.
    pub fn on(survey: &Survey, reading: &Reading, forecast: Option<&Forecast>) -> Option<Self> {
        let tells = tells::of(survey, reading)?;
        let path = reading.about.and_then(|outlet| forecast?.path(outlet)).filter(|_| tells.is_of_coax());
        let held = path.map_or_else(Vec::new, |path| held(reading, path));
        let mut verdict = Self { tells, held };
        if verdict.told_first().is_some_and(|held| held.beside.socket_mbps().is_some()) {
            verdict.tells = Tells::Socket;
        }
        Some(verdict)
    }

    /// Whether something measured is worse than was to be expected.
    pub fn is_worse(&self) -> bool {
        self.held.iter().any(|held| held.beside == Beside::Worse)
    }

    /// What is told first where only one thing is: what may be wrong, then what is better than expected, then what only a
    /// socket held, then what is as expected.
    pub fn told_first(&self) -> Option<&Held> {
        self.held.iter().min_by_key(|held| held.beside.order())
    }
}

fn held(reading: &Reading, path: &PathForecast) -> Vec<Held> {
    let socket = reading.how.and_then(|how| how.socket_mbps);
    match reading.measured {
        ReadingKind::Throughput { down_mbps, up_mbps } => vec![
            Held::throughput(HeldOf::Down, down_mbps, path.down, socket),
            Held::throughput(HeldOf::Up, up_mbps, path.up, socket),
        ],
        ReadingKind::PhyRate { mbps } => vec![Held::phy_rate(mbps, path)],
        measured => measured.path_loss_db().map(|loss| Held::loss(loss, path.loss)).into_iter().collect(),
    }
}

//! The verdict on one reading: what it tells of, and where what was measured stands.

use facts::fact::SubjectId;
use house::record::{LinkState, Reading, ReadingKind, Survey};

use super::fault;
use super::tells::{self, Tells};
use crate::beside::{Beside, Held, HeldOf};
use crate::forecast::{Forecast, Limit, PathForecast};

/// What one reading of an outlet test says.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// What it tells of.
    pub tells: Tells,
    /// What was measured, each figure beside what was to be expected of it; empty where it tells nothing of the coax, or
    /// where nothing was to be expected.
    pub held: Vec<Held>,
    /// What it says of the link itself, where it tells of the coax and says so.
    pub link: Option<LinkState>,
}

impl Verdict {
    /// The verdict on a reading; `None` if it belongs to no outlet test. `forecast` says what was to be expected.
    pub fn on(survey: &Survey, reading: &Reading, forecast: Option<&Forecast>) -> Option<Self> {
        let tells = tells::of(survey, reading)?;
        let path = reading.about.and_then(|outlet| forecast?.path(outlet)).filter(|_| tells.is_of_coax());
        let held = path.map_or_else(Vec::new, |path| held(survey, reading, path));
        let link = fault::link_told(reading.measured).filter(|_| tells.is_of_coax());
        let mut verdict = Self { tells, held, link };
        if verdict.told_first().is_some_and(|held| held.beside.socket_mbps().is_some()) {
            verdict.tells = Tells::Socket;
        }
        Some(verdict)
    }

    /// Whether something measured is worse than was to be expected.
    pub fn is_worse(&self) -> bool {
        self.held.iter().any(|held| held.beside == Beside::Worse) || self.is_link_broken()
    }

    /// Whether it says that there is no link, or that it comes and goes.
    pub fn is_link_broken(&self) -> bool {
        matches!(self.link, Some(LinkState::Absent | LinkState::ComesAndGoes))
    }

    /// What is told first where only one thing is: what may be wrong, then what is better than expected, then what only a
    /// socket held, then what is as expected.
    pub fn told_first(&self) -> Option<&Held> {
        self.held.iter().min_by_key(|held| held.beside.order())
    }
}

fn held(survey: &Survey, reading: &Reading, path: &PathForecast) -> Vec<Held> {
    match reading.measured {
        ReadingKind::Throughput { down_mbps, up_mbps } => {
            let socket = reading.how.and_then(|how| how.socket_mbps);
            // A port that held the rate by the survey, and did not in the test, is another port: that is worth telling.
            let at_ceiling = path.is_at_ceiling() && path.limit != Limit::EthernetPort;
            let ways = [
                Held::throughput(HeldOf::Down, down_mbps, path.down, socket, at_ceiling),
                Held::throughput(HeldOf::Up, up_mbps, path.up, socket, at_ceiling),
            ];
            let is_well = reading.about.is_some_and(|outlet| is_coax_well(survey, outlet, path));
            ways.map(|way| if is_well { way.over_well_coax() } else { way }).into()
        }
        ReadingKind::PhyRate { mbps } => vec![Held::phy_rate(mbps, path)],
        measured => measured.path_loss_db().map(|loss| Held::loss(loss, path.loss)).into_iter().collect(),
    }
}

/// Whether PHY rates or losses that were read at an outlet show the coax on the way there to be well: all are as good as was
/// to be expected, and no reading says that the link is broken.
pub(super) fn is_coax_well(survey: &Survey, outlet: SubjectId, path: &PathForecast) -> bool {
    let readings: Vec<_> = survey
        .readings_at(outlet)
        .filter(|reading| tells::of(survey, reading).is_some_and(Tells::is_of_coax))
        .collect();
    let mut of_path = readings.iter().filter_map(|reading| match reading.measured {
        ReadingKind::PhyRate { mbps } => Some(Held::phy_rate(mbps, path)),
        measured => Some(Held::loss(measured.path_loss_db()?, path.loss)),
    });
    let is_steady = |reading: &&Reading| match reading.measured {
        ReadingKind::Link { state } => state == LinkState::Steady,
        _ => true,
    };
    let first = of_path.next().is_some_and(|held| held.beside != Beside::Worse);
    first && of_path.all(|held| held.beside != Beside::Worse) && readings.iter().all(is_steady)
}

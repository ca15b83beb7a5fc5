//! What was measured in the rooms, beside what was expected there.

use coax::Span;

use super::inspection::Inspection;
use super::test_socket::{LEEWAY, Lies, held_against};
use super::{Finding, FindingKind, Place};
use crate::forecast::{PathForecast, Reach};
use facts::fact::SubjectId;
use house::record::{Reading, ReadingKind, TestReach};
use phrase::{Arg, Phrase};

/// A loss counts as above the shown range only by more than so many decibels.
const LEEWAY_DB: f64 = 1.0;

/// A test that reaches this share of the plan's rate is limited by the service and says nothing of the coax.
const AT_THE_PLAN: f64 = 0.9;

/// One direction counts as much slower at less than this share of the other (common practice, no source).
const MUCH_SLOWER: f64 = 0.5;

/// Loss of packets from which a busy network is not well, percent. The packet error target of MoCA 2.0 is 1 in 100
/// million (2.0 press release, June 2010): anything a person can measure is far above.
const LOSS_PERCENT: f64 = 0.1;

/// Whether a rate reading tells of the coax: not over radio, not to the internet, not held by the plan.
fn tells_of_coax(inspection: &Inspection<'_>, reading: &Reading, down_mbps: f64) -> bool {
    if let Some(how) = reading.how {
        return !how.over_radio && how.reach != TestReach::Internet;
    }
    let plan = inspection.survey.internet.map(|internet| internet.down_mbps);
    plan.is_none_or(|plan| (down_mbps / plan - 1.0).abs() > 1.0 - AT_THE_PLAN)
}

fn path<'a>(inspection: &Inspection<'a>, outlet: SubjectId) -> Option<&'a PathForecast> {
    match &inspection.forecast?.room(outlet)?.reach {
        Reach::Estimated(path) => Some(path),
        _ => None,
    }
}

/// What a rate that lies there is told as, if it is told at all.
fn kind_of(lies: Lies) -> Option<FindingKind> {
    match lies {
        Lies::Below => Some(FindingKind::MeasuredBelowForecast),
        Lies::Above => Some(FindingKind::MeasuredAboveForecast),
        Lies::AtSocket(_) | Lies::NearSocket(_) => Some(FindingKind::SocketHoldsTest),
        Lies::Within => None,
    }
}

/// For the words: whether a test gives what is wished at an outlet, if anything is.
fn is_as_wished(
    inspection: &Inspection<'_>,
    outlet: SubjectId,
    down_mbps: f64,
    up_mbps: f64,
) -> &'static str {
    match inspection.survey.wish_at(outlet) {
        None => "none",
        Some(wish) if down_mbps >= wish.down_mbps && up_mbps >= wish.up_mbps => "met",
        Some(_) => "not-met",
    }
}

/// Readings that lie outside the range that was expected.
pub(super) fn against_forecast(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for reading in inspection.survey.readings.values() {
        let Some(outlet) = reading.about else { continue };
        let Some(path) = path(inspection, outlet) else { continue };
        let finding =
            |kind| Finding::new(kind, vec![Place::Part(outlet)]).phrase("outlet", inspection.name(outlet));
        match reading.measured {
            ReadingKind::Throughput { down_mbps, up_mbps }
                if tells_of_coax(inspection, reading, down_mbps) =>
            {
                let socket = reading.how.and_then(|how| how.socket_mbps);
                let ways = [(down_mbps, path.down), (up_mbps, path.up)].map(|(mbps, range)| {
                    let (lies, expected) = held_against(mbps, range, socket);
                    (mbps, lies, expected)
                });
                let told = ways.into_iter().filter_map(|way| Some((kind_of(way.1)?, way)));
                // What may be wrong is told before what only sets a limit.
                if let Some((kind, (mbps, lies, expected))) = told.min_by_key(|(kind, _)| *kind) {
                    let told = finding(kind)
                        .with("measured", Arg::RateAsRead(mbps))
                        .with("expected", Arg::RateRange(expected))
                        .text("wish", is_as_wished(inspection, outlet, down_mbps, up_mbps));
                    found.push(match lies {
                        Lies::AtSocket(socket) => {
                            told.with("socket", Arg::RateAsRead(socket)).text("said", "yes")
                        }
                        Lies::NearSocket(socket) => {
                            told.with("socket", Arg::RateAsRead(socket)).text("said", "no")
                        }
                        _ => told,
                    });
                }
            }
            ReadingKind::PhyRate { mbps } if reading.how.is_none_or(|how| !how.over_radio) => {
                // Adapters' pages show one rate, and seldom of which way.
                let (low, high) =
                    (path.phy_down.low.min(path.phy_up.low), path.phy_down.high.max(path.phy_up.high));
                let kind = if mbps < low * (1.0 - LEEWAY) {
                    FindingKind::MeasuredBelowForecast
                } else if mbps > high * (1.0 + LEEWAY) {
                    FindingKind::MeasuredAboveForecast
                } else {
                    continue;
                };
                let slower =
                    if path.phy_up.likely < path.phy_down.likely { path.phy_up } else { path.phy_down };
                let expected = Span::new(low, slower.likely, high);
                found.push(
                    finding(kind)
                        .phrase(
                            "measured",
                            Phrase::new("measured-phy-rate").with("rate", Arg::RateAsRead(mbps)),
                        )
                        .with("expected", Arg::RateRange(expected))
                        .text("wish", "none"),
                );
            }
            measured => {
                if let Some(loss) = measured.path_loss_db().filter(|loss| *loss > path.loss.high + LEEWAY_DB)
                {
                    found.push(
                        finding(FindingKind::LossAboveForecast)
                            .with("measured", Arg::Loss(loss))
                            .with("expected", Arg::LossRange(path.loss)),
                    );
                }
            }
        }
    }
    found
}

/// What readings show by themselves.
pub(super) fn by_itself(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for reading in inspection.survey.readings.values() {
        let at = vec![reading.about.map_or(Place::House, Place::Part)];
        let name = reading.about.map(|outlet| inspection.name(outlet));
        let place = |finding: Finding| match &name {
            Some(name) => finding.phrase("outlet", name.clone()),
            None => finding.phrase("outlet", Phrase::new("place-house")),
        };
        match reading.measured {
            ReadingKind::Throughput { down_mbps, up_mbps }
                if tells_of_coax(inspection, reading, down_mbps) =>
            {
                let (slow, fast) = (down_mbps.min(up_mbps), down_mbps.max(up_mbps));
                if slow < fast * MUCH_SLOWER {
                    let id = if down_mbps < up_mbps { "way-to-room" } else { "way-from-room" };
                    found.push(
                        place(Finding::new(FindingKind::OneWaySlower, at))
                            .phrase("way", Phrase::new(id))
                            .with("slow", Arg::RateAsRead(slow))
                            .with("fast", Arg::RateAsRead(fast)),
                    );
                }
            }
            ReadingKind::PacketLoss { percent, under_load: true } if percent >= LOSS_PERCENT => found.push(
                place(Finding::new(FindingKind::LossUnderLoad, at))
                    .with("share", Arg::Text(format!("{percent:.1} %"))),
            ),
            ReadingKind::Swings { low_mbps, high_mbps, with_heat_or_hour: true } => found.push(
                place(Finding::new(FindingKind::SpeedSwings, at))
                    .with("low", Arg::RateAsRead(low_mbps))
                    .with("high", Arg::RateAsRead(high_mbps)),
            ),
            _ => {}
        }
    }
    found
}

//! What was measured in the rooms: beside what was expected there, and by itself.

use facts::fact::SubjectId;
use house::record::{LinkState, Reading, ReadingKind};
use phrase::{Arg, Phrase};

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::verdict::{Beside, Held, HeldOf, LOSS_PERCENT, Tells, Verdict, is_given};

/// One direction counts as much slower at less than this share of the other (common practice, no source).
const MUCH_SLOWER: f64 = 0.5;

/// What something measured that stands there is told as, if it is told at all. A loss below its range is no news.
fn kind_of(held: &Held) -> Option<FindingKind> {
    match (held.beside, held.of) {
        (Beside::AsExpected, _) | (Beside::Better, HeldOf::Loss) => None,
        (Beside::Worse, HeldOf::Loss) => Some(FindingKind::LossAboveForecast),
        (Beside::Worse, _) => Some(FindingKind::MeasuredBelowForecast),
        (Beside::Better, _) => Some(FindingKind::MeasuredAboveForecast),
        (Beside::AtSocket(_) | Beside::NearSocket(_), _) => Some(FindingKind::SocketHoldsTest),
        (Beside::NearHundred, _) => Some(FindingKind::HundredSomewhere),
    }
}

/// For the words: whether a reading gives what is wished at its outlet, if anything is.
fn is_as_wished(inspection: &Inspection<'_>, outlet: SubjectId, reading: &Reading) -> &'static str {
    let (Some(wish), ReadingKind::Throughput { down_mbps, up_mbps }) =
        (inspection.survey.wish_at(outlet), reading.measured)
    else {
        return "none";
    };
    if is_given(wish, down_mbps, up_mbps) { "met" } else { "not-met" }
}

/// Readings that lie outside the range that was expected.
pub(super) fn against_forecast(inspection: &Inspection<'_>) -> Vec<Finding> {
    let of = |reading: &Reading| {
        let verdict = Verdict::on(inspection.survey, reading, inspection.forecast)?;
        beside_forecast(inspection, reading, &verdict)
    };
    inspection.survey.readings.values().filter_map(of).collect()
}

fn beside_forecast(inspection: &Inspection<'_>, reading: &Reading, verdict: &Verdict) -> Option<Finding> {
    let outlet = reading.about?;
    if verdict.is_link_broken() {
        return None;
    }
    let held = verdict.told_first()?;
    let finding = Finding::new(kind_of(held)?, vec![Place::Part(outlet)])
        .phrase("outlet", inspection.name(outlet))
        .with("expected", held.expected_arg());
    let finding = match held.of {
        HeldOf::Loss => return Some(finding.with("measured", held.measured_arg())),
        HeldOf::Phy => {
            finding.phrase("measured", Phrase::new("measured-phy-rate").with("rate", held.measured_arg()))
        }
        HeldOf::Down | HeldOf::Up => finding.with("measured", held.measured_arg()),
    };
    let finding = finding.text("wish", is_as_wished(inspection, outlet, reading));
    let Some(socket) = held.beside.socket_mbps().filter(|_| held.beside != Beside::NearHundred) else {
        return Some(finding);
    };
    let said = if matches!(held.beside, Beside::AtSocket(_)) { "yes" } else { "no" };
    Some(finding.with("socket", Arg::RateAsRead(socket)).text("said", said))
}

/// What readings show by themselves.
pub(super) fn by_itself(inspection: &Inspection<'_>) -> Vec<Finding> {
    inspection.survey.readings.values().filter_map(|reading| shown_by(inspection, reading)).collect()
}

fn shown_by(inspection: &Inspection<'_>, reading: &Reading) -> Option<Finding> {
    let verdict = Verdict::on(inspection.survey, reading, None)?;
    let at = reading.about.map_or(Place::House, Place::Part);
    let name = reading.about.map_or_else(|| Phrase::new("place-house"), |outlet| inspection.name(outlet));
    let finding = |kind| Finding::new(kind, vec![at]).phrase("outlet", name);
    match verdict.link {
        Some(LinkState::Absent) => return Some(finding(FindingKind::NoLink)),
        Some(LinkState::ComesAndGoes) => return Some(finding(FindingKind::LinkComesAndGoes)),
        Some(LinkState::Steady) | None => {}
    }
    match reading.measured {
        ReadingKind::Throughput { down_mbps, up_mbps } if verdict.tells.is_of_coax() => {
            let (slow, fast) = (down_mbps.min(up_mbps), down_mbps.max(up_mbps));
            let id = if down_mbps < up_mbps { "way-to-room" } else { "way-from-room" };
            (slow < fast * MUCH_SLOWER).then(|| {
                finding(FindingKind::OneWaySlower)
                    .phrase("way", Phrase::new(id))
                    .with("slow", Arg::RateAsRead(slow))
                    .with("fast", Arg::RateAsRead(fast))
            })
        }
        ReadingKind::Throughput { down_mbps, .. } if verdict.tells == Tells::Internet => {
            let plan = inspection.survey.internet?;
            Some(
                finding(FindingKind::InternetBelowPlan)
                    .with("measured", Arg::RateAsRead(down_mbps))
                    .with("plan", Arg::RateAsRead(plan.down_mbps))
                    .text("wish", reading.about.map_or("none", |at| is_as_wished(inspection, at, reading))),
            )
        }
        ReadingKind::PacketLoss { percent, under_load } if percent >= LOSS_PERCENT => {
            let kind = match verdict.tells {
                Tells::Coax | Tells::Socket if under_load => FindingKind::LossUnderLoad,
                Tells::Coax | Tells::Socket => FindingKind::LossWhileQuiet,
                Tells::Internet | Tells::Plan => FindingKind::InternetLosesPackets,
                Tells::Radio | Tells::Earlier => return None,
            };
            Some(finding(kind).with("share", Arg::Text(format!("{percent:.1} %"))))
        }
        ReadingKind::Swings { low_mbps, high_mbps, with_heat_or_hour: true } => Some(
            finding(FindingKind::SpeedSwings)
                .with("low", Arg::RateAsRead(low_mbps))
                .with("high", Arg::RateAsRead(high_mbps)),
        ),
        _ => None,
    }
}

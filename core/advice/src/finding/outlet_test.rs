//! What was measured in the rooms: beside what was expected there, and by itself.

use facts::fact::SubjectId;
use house::record::{Reading, ReadingKind};
use phrase::{Arg, Phrase};

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::verdict::{Beside, Held, HeldOf, Verdict, is_given};

/// One direction counts as much slower at less than this share of the other (common practice, no source).
const MUCH_SLOWER: f64 = 0.5;

/// Loss of packets from which a busy network is not well, percent. The packet error target of MoCA 2.0 is 1 in 100
/// million (2.0 press release, June 2010): anything a person can measure is far above.
const LOSS_PERCENT: f64 = 0.1;

/// What something measured that stands there is told as, if it is told at all. A loss below its range is no news.
fn kind_of(held: &Held) -> Option<FindingKind> {
    match (held.beside, held.of) {
        (Beside::AsExpected, _) | (Beside::Better, HeldOf::Loss) => None,
        (Beside::Worse, HeldOf::Loss) => Some(FindingKind::LossAboveForecast),
        (Beside::Worse, _) => Some(FindingKind::MeasuredBelowForecast),
        (Beside::Better, _) => Some(FindingKind::MeasuredAboveForecast),
        (Beside::AtSocket(_) | Beside::NearSocket(_), _) => Some(FindingKind::SocketHoldsTest),
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
    let Some(socket) = held.beside.socket_mbps() else { return Some(finding) };
    let said = if matches!(held.beside, Beside::AtSocket(_)) { "yes" } else { "no" };
    Some(finding.with("socket", Arg::RateAsRead(socket)).text("said", said))
}

/// What readings show by themselves.
pub(super) fn by_itself(inspection: &Inspection<'_>) -> Vec<Finding> {
    inspection.survey.readings.values().filter_map(|reading| shown_by(inspection, reading)).collect()
}

fn shown_by(inspection: &Inspection<'_>, reading: &Reading) -> Option<Finding> {
    let of_coax = Verdict::on(inspection.survey, reading, None)?.tells.is_of_coax();
    let at = reading.about.map_or(Place::House, Place::Part);
    let name = reading.about.map_or_else(|| Phrase::new("place-house"), |outlet| inspection.name(outlet));
    let finding = |kind| Finding::new(kind, vec![at]).phrase("outlet", name);
    match reading.measured {
        ReadingKind::Throughput { down_mbps, up_mbps } if of_coax => {
            let (slow, fast) = (down_mbps.min(up_mbps), down_mbps.max(up_mbps));
            let id = if down_mbps < up_mbps { "way-to-room" } else { "way-from-room" };
            (slow < fast * MUCH_SLOWER).then(|| {
                finding(FindingKind::OneWaySlower)
                    .phrase("way", Phrase::new(id))
                    .with("slow", Arg::RateAsRead(slow))
                    .with("fast", Arg::RateAsRead(fast))
            })
        }
        ReadingKind::PacketLoss { percent, under_load: true } if of_coax && percent >= LOSS_PERCENT => {
            Some(finding(FindingKind::LossUnderLoad).with("share", Arg::Text(format!("{percent:.1} %"))))
        }
        ReadingKind::Swings { low_mbps, high_mbps, with_heat_or_hour: true } => Some(
            finding(FindingKind::SpeedSwings)
                .with("low", Arg::RateAsRead(low_mbps))
                .with("high", Arg::RateAsRead(high_mbps)),
        ),
        _ => None,
    }
}

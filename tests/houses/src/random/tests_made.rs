//! What adapters, tests and modems tell of a house, at random: near what is expected, far off, or nothing at all.

use advice::forecast::Forecast;
use coax::Span;
use facts::fact::SubjectId;
use house::record::{HowMeasured, LinkState, Reading, ReadingKind, Survey, TestReach};
use uuid::Uuid;

use super::Dice;

/// The house with tests made at some of its outlets: throughput, PHY rates, power, nodes seen, loss, no link, swings.
pub fn with_tests(survey: &Survey, forecast: &Forecast, seed: u64) -> Survey {
    let mut dice = Dice::new(seed ^ 0x5EED);
    let mut tested = survey.clone();
    let rooms: Vec<_> = forecast.rooms.iter().map(|room| room.outlet).chain(forecast.bridge).collect();
    let mut next = 1_000_000;
    for outlet in rooms {
        let count = dice.weighed(&[(4, 0), (5, 1), (2, 2), (1, 3)]);
        for _ in 0..count {
            let id = SubjectId::from_uuid(Uuid::from_u128(next));
            next += 1;
            let (measured, how) = (reading(&mut dice, forecast, outlet), how(&mut dice));
            tested.readings.insert(id, Reading { id, about: Some(outlet), port: None, measured, how });
        }
    }
    tested
}

/// A value near one end of a range, well off it, or one of those that sockets and failures give.
fn near(dice: &mut Dice, span: Option<Span>) -> f64 {
    let span = span.unwrap_or(Span::new(200.0, 500.0, 900.0));
    let end = if dice.chance(0.5) { span.low } else { span.high };
    let times = dice.weighed(&[(3, 1.0), (2, 0.95), (2, 1.05), (2, 0.5), (1, 0.2), (1, 1.5)]);
    let plus = dice.between(-2.0, 2.0);
    let odd = dice.weighed(&[(12, None), (2, Some(0.0)), (1, Some(80.0)), (1, Some(94.0)), (1, Some(940.0))]);
    odd.unwrap_or(((end * times + plus) * 10.0).round() / 10.0).max(0.0)
}

fn reading(dice: &mut Dice, forecast: &Forecast, outlet: SubjectId) -> ReadingKind {
    let path = forecast.path(outlet);
    match dice.weighed(&[(6, 0), (2, 1), (2, 2), (1, 3), (2, 4), (1, 5), (1, 6), (2, 7)]) {
        0 => {
            let down_mbps = near(dice, path.map(|path| path.down));
            // No link is told as nothing both ways.
            let up_mbps = if down_mbps <= 0.0 { 0.0 } else { near(dice, path.map(|path| path.up)) };
            ReadingKind::Throughput { down_mbps, up_mbps }
        }
        1 => ReadingKind::PhyRate { mbps: near(dice, path.map(|path| path.phy_down)) },
        2 => {
            let loss = near(dice, path.map(|path| path.loss)).min(99.0);
            ReadingKind::Power { sent_dbm: 3.0, received_dbm: 3.0 - loss }
        }
        3 => ReadingKind::NodesSeen { count: dice.pick(&[1, 2, 3, 4, 5]) },
        4 => ReadingKind::PacketLoss {
            percent: dice.pick(&[0.0, 0.1, 1.0, 5.0, 30.0]),
            under_load: dice.chance(0.5),
        },
        5 => ReadingKind::RoundTrip { ms: dice.between(1.0, 40.0) },
        7 => ReadingKind::Link {
            state: dice.pick(&[LinkState::Absent, LinkState::ComesAndGoes, LinkState::Steady]),
        },
        _ => ReadingKind::Swings { low_mbps: 6.0, high_mbps: 100.0, with_heat_or_hour: dice.chance(0.5) },
    }
}

fn how(dice: &mut Dice) -> Option<HowMeasured> {
    let socket_mbps = dice.weighed(&[(4, None), (1, Some(100)), (2, Some(1000)), (1, Some(2500))]);
    let how = dice.weighed(&[
        (2, None),
        (6, Some((TestReach::House, false))),
        (1, Some((TestReach::House, true))),
        (2, Some((TestReach::Internet, false))),
        (2, Some((TestReach::AdapterPage, false))),
    ]);
    how.map(|(reach, radio)| HowMeasured { socket_mbps, ..HowMeasured::new(reach, radio) })
}

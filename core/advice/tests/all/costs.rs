//! Where the loss of a way arises adds up to the loss that is told, and blames the right part.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::forecast::{CostAt, Options, PathForecast, forecast};
use house::record::{CableKind, Connector, Plugged, Survey};
use houses::change_cases::{self, house};
use houses::part_id;

fn path(survey: &Survey) -> PathForecast {
    let through = forecast(survey, &Options::default()).expect("a sound survey");
    through.path(part_id(survey, "O2")).expect("a path").clone()
}

fn cost(survey: &Survey, at: CostAt) -> f64 {
    path(survey).costs.iter().find(|cost| cost.at == at).expect("on the way").db
}

/// In every house of the changes, over every way.
#[test]
fn what_each_place_costs_adds_up_to_the_loss_told() {
    let few = Options { draws: 40, ..Options::default() };
    let mut ways = 0;
    for case in change_cases::cases() {
        let through = forecast(&case.there.survey(), &few).expect("a sound survey");
        for room in &through.rooms {
            let Some(path) = through.path(room.outlet) else { continue };
            let sum: f64 = path.costs.iter().map(|cost| cost.db).sum();
            assert!((sum - path.loss.likely).abs() < 0.01, "{}: {sum} {}", case.name, path.loss.likely);
            ways += 1;
        }
    }
    assert!(ways > 20, "{ways}");
}

/// A TV that shares the socket of the office comes with a splitter there: it costs what its label says (3.7 dB of a
/// 5-1675 MHz 2-way, labels photographed in N7Alpha/coaxial-cable-network), at that outlet and not at the splitter where the way turns.
#[test]
fn the_splitter_at_a_socket_is_charged_to_the_socket() {
    let alone = house(20.0).survey();
    let shared = house(20.0).at("O2").plugged(&[Plugged::Tv]).survey();
    let (socket, bend) = (CostAt::Part(part_id(&alone, "O2")), CostAt::Part(part_id(&alone, "S1")));
    let more = cost(&shared, socket) - cost(&alone, socket);
    assert!((3.2..5.5).contains(&more), "{more}");
    let at_bend = cost(&shared, bend) - cost(&alone, bend);
    assert!(at_bend.abs() < 1.5, "{at_bend}");
}

/// A long cable costs what a handbook says (6 series at 1,400 MHz about 26 dB a 100 m: 8 dB a 100 ft, a typical
/// sheet), and a bad connector is the run's.
#[test]
fn cable_and_connector_are_charged_to_the_run() {
    let of = |metres: f64, far| {
        let mut survey = house(20.0).at("O2").over(CableKind::Six, metres).survey();
        let run = survey.wiring.feed(part_id(&survey, "O2")).and_then(|feed| feed.run).expect("a run");
        let run = survey.runs.get_mut(&run).expect("the run");
        (run.connector_near, run.connector_far) = (Connector::Compression, far);
        let at = CostAt::RunTo(part_id(&survey, "O2"));
        cost(&survey, at)
    };
    let (short, long) = (of(10.0, Connector::Compression), of(60.0, Connector::Compression));
    assert!((11.0..15.0).contains(&(long - short)), "{short} {long}");
    assert!(of(10.0, Connector::BadJoint) - short > 3.0);
}

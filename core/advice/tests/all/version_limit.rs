//! What the version gives and what the forecast says are one rate; and what lies behind an adapter caps it.

use advice::finding::{FindingKind, findings};
use advice::forecast::{Limit, Options, PortKnown, forecast, nodes_of};
use advice::verdict::{Wished, version_limits};
use house::record::{Adapter, BehindAdapter, NetworkPiece, NetworkPlan, Survey};
use houses::{House, good_house, part_id};
use phrase::Arg;

fn of_version(version: &str, wish: f64) -> House {
    let house = good_house().at("O1").adapter(version).port(10_000).bridge();
    house.at("O2").adapter(version).port(10_000).wish("Office", wish)
}

/// Where the version is told as the limit, the forecast says that the wish is not met; where the forecast says so and the version
/// is what limits it, the version is told.
#[test]
fn finding_and_forecast_agree_on_what_a_version_gives() {
    let mut told = 0;
    for version in ["1.0", "1.1", "2.0", "2.0 bonded", "2.5"] {
        for wish in [80.0, 110.0, 130.0, 150.0, 160.0, 172.0, 300.0, 480.0, 900.0, 1100.0, 2300.0, 2600.0] {
            let survey = of_version(version, wish).survey();
            let through = forecast(&survey, &Options::default()).expect("a sound survey");
            let room = through.rooms.first().expect("the office");
            let met = Wished::to_come(&survey, room).expect("a wish").met.is_met();
            let limited = !version_limits(&survey).is_empty();
            let by_version = through.path(room.outlet).expect("a path").limit == Limit::Version;
            assert!(!(limited && met), "{version} {wish}: {room:?}");
            assert!(limited || met || !by_version, "{version} {wish}: {room:?}");
            told += u32::from(limited);
        }
    }
    assert!(told > 20, "{told}");
}

/// One room that wishes more than it gets alone does not get its full speed alone.
#[test]
fn alone_is_not_said_where_it_is_not_so() {
    let alone = |survey: &Survey| {
        let through = forecast(survey, &Options::default()).expect("a sound survey");
        let found = findings(survey, Some(&through));
        let finding = found.iter().find(|finding| finding.kind == FindingKind::WishesDoNotFit);
        let args = finding.expect("too much").why().args;
        args.into_iter().find(|(name, _)| *name == "alone").expect("said").1
    };
    assert_eq!(alone(&of_version("1.1", 400.0).survey()), Arg::Text("no".into()));
    // 100 Mb/s each way fits into 1.1 one way at a time only.
    assert_eq!(alone(&of_version("1.1", 100.0).survey()), Arg::Text("yes".into()));
}

#[test]
fn a_port_that_nobody_stated_is_not_stated_and_what_lies_behind_caps_it() {
    let mut survey = good_house().survey();
    let office = part_id(&survey, "O2");
    let node = |survey: &Survey| {
        let nodes = nodes_of(survey);
        let node = nodes.iter().find(|node| node.outlet == office).expect("there");
        (node.link.port.line_rate().value(), node.port_known)
    };
    assert_eq!(node(&survey), (2500.0, PortKnown::Stated));
    let part = survey.parts.get_mut(&office).expect("there");
    part.adapter = Some(Adapter { version: Some("2.5".into()), ethernet_mbps: None, bridge: false });
    assert_eq!(node(&survey), (2500.0, PortKnown::Usual));
    // What the plan says of the ports holds for an adapter that names only its version.
    survey.network = NetworkPlan { version: "2.0".into(), ethernet_mbps: Some(1000), owned: None };
    assert_eq!(node(&survey), (1000.0, PortKnown::Stated));
    let part = survey.parts.get_mut(&office).expect("there");
    part.behind_adapter = Some(BehindAdapter { pieces: vec![NetworkPiece::Switch], mbps: Some(100) });
    assert_eq!(node(&survey), (100.0, PortKnown::Behind));
}

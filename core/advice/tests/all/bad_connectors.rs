//! Each bad connector of a run counts, and renewing each gains.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::forecast::{Options, forecast};
use house::record::{Connector, Survey};
use houses::change_cases::{FAR, house};
use houses::part_id;

fn with(near: Connector, far: Connector) -> Survey {
    let mut survey = house(FAR).survey();
    let office = part_id(&survey, "O2");
    let run = survey.wiring.feed(office).and_then(|feed| feed.run).expect("a run");
    let run = survey.runs.get_mut(&run).expect("the run");
    (run.connector_near, run.connector_far) = (near, far);
    survey
}

#[test]
fn two_bad_connectors_cost_more_than_one_and_each_renewal_gains() {
    let [bad, sound] = [Connector::Corroded, Connector::Compression];
    let loss = |near, far| {
        let survey = with(near, far);
        let through = forecast(&survey, &Options::default()).expect("a sound survey");
        let path = through.path(part_id(&survey, "O2")).expect("a path");
        (path.loss.likely, path.down.low)
    };
    let (both, near, far, none) = (loss(bad, bad), loss(bad, sound), loss(sound, bad), loss(sound, sound));
    for (better, worse) in [(near, both), (far, both), (none, near), (none, far)] {
        assert!(worse.0 - better.0 > 3.0, "{both:?} {near:?} {far:?} {none:?}");
        assert!(better.1 > worse.1, "{both:?} {near:?} {far:?} {none:?}");
    }
}

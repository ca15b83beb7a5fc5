//! What the levels tell as outside of what a device needs is a finding, too: the two speak from one decision.

use advice::finding::{Finding, FindingKind as Kind, Place, findings};
use advice::forecast::forecast;
use advice::level::{self, Fit, OutletLevels, levels};
use house::record::{PartKind, Plugged, Survey};
use houses::good_house;
use houses::random::seeds;

use super::{few_draws, survey};

/// No work list is made for it: many houses cost little.
const HOUSES: u64 = 60;

/// The services that are outside, and of which no finding speaks: at the outlet, or at what ends too early on the way there.
fn broken(survey: &Survey, found: &[Finding], outlets: &[OutletLevels]) -> Vec<String> {
    let is_told = |levels: &OutletLevels| {
        let way = survey.wiring.way_up(levels.outlet);
        found.iter().any(|finding| match finding.kind {
            Kind::LevelBelowRule
            | Kind::LevelOutsideGuide
            | Kind::ModemLevelOutside
            | Kind::ModemSendsHigh
            | Kind::SignalNotClean
            | Kind::LevelWorkedOutOutside
            | Kind::ServiceDoesNotArrive => finding.at.contains(&Place::Part(levels.outlet)),
            Kind::AmplifierEndsBelow
            | Kind::AmplifierReturnNarrow
            | Kind::FilterCutsService
            | Kind::FilterInSatelliteLine => {
                finding.at.first().and_then(|place| place.part()).is_some_and(|part| way.contains(&part))
            }
            _ => false,
        })
    };
    let outside = outlets.iter().filter(|levels| levels.fits() == Fit::Outside && !is_told(levels));
    outside
        .map(|levels| format!("outside: {:?}, and no finding says so: {:?}", levels.service, levels.broken))
        .collect()
}

fn of(survey: &Survey) -> Vec<String> {
    let forecast = forecast(survey, &few_draws().stating).expect("a sound house");
    let levels = levels(survey, &level::Options::default()).expect("a sound house");
    broken(survey, &findings(survey, Some(&forecast)), &levels.outlets)
}

#[test]
fn what_is_outside_is_a_finding() {
    let broken = seeds::over_seeds(HOUSES, |seed| of(&survey(seed)));
    seeds::none(&broken, std::path::Path::new(env!("CARGO_TARGET_TMPDIR")), survey);
}

/// The law can be broken: a finding that is left out is missed.
#[test]
fn what_is_outside_and_no_finding_is_found() {
    let filter = |kind| {
        let house = good_house().at("S1").with(|splitter| splitter.rating.legs = 3).part("H1", kind);
        house.from("S1", 3).outlet("O3", "Den").from("H1", 1).plugged(&[Plugged::Tv]).survey()
    };
    for (kind, missed) in [(PartKind::HighPassFilter, 1), (PartKind::Barrel, 0)] {
        let survey = filter(kind);
        assert_eq!(of(&survey), [""; 0]);
        let levels = levels(&survey, &level::Options::default()).expect("a sound house");
        assert_eq!(broken(&survey, &[], &levels.outlets).len(), missed, "{kind:?}");
    }
}

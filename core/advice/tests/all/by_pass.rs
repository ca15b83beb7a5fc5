//! An amplifier of which nobody knows whether it has a by-pass is two worlds, told as such.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::finding::{FindingKind, Weight, findings};
use advice::forecast::{ByPassWorlds, Forecast, Options, PathForecast, forecast};
use advice::unknown::unknowns;
use advice::verdict::{Hangs, Met, Wished};
use advice::worklist::stakes;
use house::rating::{Band, PartRating};
use house::record::{CableKind, HowMeasured, Part, Plugged, ReadingKind, Survey, TestReach};
use houses::change_cases::house as far_house;
use houses::{House, part_id};

const QUICK: Options = Options { draws: 60, seed: 1, points: 89, settles: false };

fn knows(by_pass: Option<bool>) -> impl FnOnce(&mut Part) {
    move |part| part.rating.moca_bypass = by_pass
}

/// Between the splitter and the office.
fn between(by_pass: Option<bool>, outputs: u8) -> House {
    far_house(10.0)
        .amplifier("A1", outputs)
        .with(knows(by_pass))
        .from("S1", 2)
        .over(CableKind::Six, 5.0)
        .at("O2")
        .from("A1", 1)
        .over(CableKind::Six, 10.0)
}

/// In place of the splitter: both rooms hang on its outputs.
fn instead(by_pass: Option<bool>, metres: f64) -> House {
    let house = far_house(metres).amplifier("A1", 2).with(knows(by_pass)).from("F1", 1);
    house
        .at("O1")
        .from("A1", 1)
        .over(CableKind::Six, metres)
        .at("O2")
        .from("A1", 2)
        .over(CableKind::Six, metres)
}

/// Between the filter and the splitter, above both rooms.
fn above(by_pass: Option<bool>) -> House {
    far_house(10.0).amplifier("A1", 1).with(knows(by_pass)).from("F1", 1).at("S1").from("A1", 1)
}

fn told(house: House) -> (Survey, Forecast) {
    let survey = house.survey();
    let told = forecast(&survey, &QUICK).expect("a sound house");
    (survey, told)
}

fn office(survey: &Survey, told: &Forecast) -> PathForecast {
    told.path(part_id(survey, "O2")).expect("a path").clone()
}

fn worlds(house: House) -> Option<ByPassWorlds> {
    let (survey, told) = told(house);
    office(&survey, &told).by_pass.map(|worlds| *worlds)
}

fn met(survey: &Survey, told: &Forecast) -> Met {
    let room = told.room(part_id(survey, "O2")).expect("the office");
    Wished::at(survey, room).expect("a wish").met
}

fn kinds(survey: &Survey, told: &Forecast) -> Vec<FindingKind> {
    findings(survey, Some(told)).iter().map(|finding| finding.kind).collect()
}

#[test]
fn with_one_the_room_gets_what_it_gets_where_it_is_known() {
    for outputs in [1, 4] {
        let two = worlds(between(None, outputs)).expect("two worlds");
        let (survey, known) = told(between(Some(true), outputs));
        let known = office(&survey, &known);
        assert_eq!(
            (two.with.down, two.with.up, two.with.links.to_bits()),
            (known.down, known.up, known.links.to_bits())
        );
        assert!(two.without.both_ways() < 0.5 * two.with.both_ways(), "{two:?}");
        // Where it is known, there are no two worlds.
        assert_eq!(known.by_pass, None);
        assert_eq!(worlds(between(Some(false), outputs)), None);
    }
}

#[test]
fn a_room_that_hangs_on_it_is_never_told_surely() {
    let (survey, unknown) = told(between(None, 1));
    let path = office(&survey, &unknown);
    // The range is over both worlds, and the odds say how often the better one came up.
    assert!(path.down.low < 500.0 && path.down.high > 2000.0, "{:?}", path.down);
    assert_eq!(met(&survey, &unknown), Met::HangsOnByPass);
    assert!(unknown.shared.is_none(), "whether all fit hangs on it, too");
    let room = unknown.room(part_id(&survey, "O2")).expect("the office");
    let hangs = Hangs::at(&survey, room).expect("it hangs");
    assert_eq!(hangs.on(), [part_id(&survey, "A1")]);
    let found = findings(&survey, Some(&unknown));
    let finding = found.iter().find(|finding| finding.kind == FindingKind::AmplifierBypassDecides);
    assert_eq!(finding.expect("found").weight(), Weight::Grave);
    for known in [true, false] {
        let (survey, told) = told(between(Some(known), 1));
        assert_eq!(met(&survey, &told), if known { Met::Yes } else { Met::Unlikely });
        assert_eq!(kinds(&survey, &told).contains(&FindingKind::AmplifierNoBypass), !known);
        assert!(!kinds(&survey, &told).contains(&FindingKind::AmplifierBypassDecides));
    }
}

/// What was measured in the room tells more than what nobody knows.
#[test]
fn a_test_in_the_room_ends_it() {
    let measured = ReadingKind::Throughput { down_mbps: 2300.0, up_mbps: 2300.0 };
    let how = Some(HowMeasured::new(TestReach::House, false));
    let (survey, told) = told(between(None, 1).at("O2").reads_how(measured, how));
    let room = told.room(part_id(&survey, "O2")).expect("the office");
    assert_eq!(Hangs::at(&survey, room), None);
    assert!(!kinds(&survey, &told).contains(&FindingKind::AmplifierBypassDecides));
}

#[test]
fn an_amplifier_that_is_on_nobodys_way_is_no_two_worlds() {
    assert_eq!(worlds(above(None)), None);
}

/// Between its outputs the splitter in its housing leads, with a by-pass and without: nothing hangs on it while the runs are
/// short, and then the finding does not say what the forecast does not.
#[test]
fn between_its_outputs_forecast_and_finding_say_the_same() {
    let apart = |by_pass, metres| {
        let (survey, told) = told(instead(by_pass, metres));
        let good = met(&survey, &told) == Met::Yes && !office(&survey, &told).may_not_link();
        (good, kinds(&survey, &told).contains(&FindingKind::AmplifierOutputsApart))
    };
    assert_eq!([apart(None, 5.0), apart(Some(false), 5.0)], [(true, false); 2]);
    assert_eq!(apart(Some(false), 60.0), (false, true));
}

#[test]
fn two_in_a_row_are_both_named() {
    let house =
        between(None, 1).amplifier("A2", 1).from("A1", 1).over(CableKind::Six, 5.0).at("O2").from("A2", 1);
    let (survey, told) = told(house);
    let two = office(&survey, &told).by_pass.expect("two worlds");
    // From the bridge on.
    assert_eq!(two.amplifiers, [part_id(&survey, "A1"), part_id(&survey, "A2")]);
    assert!(two.with.both_ways() > 1000.0 && two.without.both_ways() < 15.0, "{two:?}");
}

/// A band over all of MoCA's is read as a by-pass; one that ends before it, or that of a dish's amplifier, is not.
#[test]
fn the_printed_band_is_read() {
    let known = |low_mhz, high_mhz| {
        let band = Some(Band { low_mhz, high_mhz });
        PartRating { band, ..PartRating::default() }.by_pass()
    };
    assert_eq!([known(5.0, 1675.0), known(5.0, 1650.0)], [Some(true); 2]);
    assert_eq!(
        [known(54.0, 1002.0), known(54.0, 1218.0), known(950.0, 2150.0), known(47.0, 2400.0)],
        [None; 4]
    );
    // Its gain ends where that of others ends: nothing of the network is amplified one way.
    let (survey, told) = told(
        between(None, 1)
            .at("A1")
            .with(|part| part.rating.band = Some(Band { low_mhz: 5.0, high_mhz: 1675.0 })),
    );
    let path = office(&survey, &told);
    assert!(
        path.by_pass.is_none() && path.loss.low > 15.0 && met(&survey, &told) == Met::Yes,
        "{:?}",
        path.loss
    );
}

#[test]
fn labels_are_read() {
    let read = |text: &str| PartRating::of_label(text).by_pass();
    assert_eq!(read("DROP AMPLIFIER 54-1002 MHz 15 dB MoCA BYPASS"), Some(true));
    assert_eq!(read("DROP AMPLIFIER 54-1002 MHz GAIN 15 dB RETURN 5-42 MHz"), None);
    assert_eq!(read("AMPLIFIER 5-1675 MHz GAIN 15 dB"), Some(true));
}

/// A label that was read and names none leaves less hope than one that nobody has read.
#[test]
fn what_is_printed_moves_the_odds() {
    let odds = |house: House| worlds(house).expect("two worlds").odds;
    let unread = odds(between(None, 1));
    let read = odds(between(None, 1).at("A1").label("DROP AMPLIFIER 54-1002 MHz GAIN 15 dB RETURN 5-42 MHz"));
    assert!((0.15..0.45).contains(&unread) && read < 0.2 && read < unread, "{unread} {read}");
}

#[test]
fn it_is_worth_going_back_for_where_a_room_hangs_on_it() {
    let stake = |house: House| {
        let (survey, told) = told(house);
        let unknown =
            unknowns(&survey, &told).into_iter().find(|unknown| unknown.what.id == "unknown-bypass")?;
        stakes(&survey, &told, &[unknown], &QUICK, &mut |_| true).expect("a sound house").pop().flatten()
    };
    assert!(stake(between(None, 1)).is_some_and(|stake| stake.is_worth_going_back() && stake.mbps > 1000.0));
    assert!(stake(above(None)).is_none_or(|stake| !stake.is_worth_going_back()));
    assert_eq!(stake(between(Some(true), 1)), None);
}

/// A TV behind it keeps it there: the step that is left says that it may gain nothing.
#[test]
fn the_step_says_both_worlds() {
    use house::record::ChangeKind;
    let phrase = |by_pass| {
        let survey = between(by_pass, 1).at("O2").plugged(&[Plugged::Tv]).survey();
        ChangeKind::SwapAmplifier { amplifier: part_id(&survey, "A1") }.phrase(&survey)
    };
    let said = |by_pass| format!("{:?}", phrase(by_pass).args);
    assert!(said(None).contains("unknown") && !said(Some(false)).contains("unknown"));
}

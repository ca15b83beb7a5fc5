//! What is worth going back for.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::forecast::{Options, forecast};
use advice::unknown::{Unknown, unknowns};
use advice::worklist::{Stake, at_stake};
use house::record::{CableKind, LengthKnown, Plugged};
use houses::change_cases::{FAR, house as far_house};
use houses::{House, part_id};

/// Few draws: what is asked is which unknown weighs more.
const QUICK: Options = Options { draws: 8, seed: 1, points: 89, settles: false };

/// What is at stake at each unknown about a part, by the message that tells it.
fn stake(house: House, tag: &str, what: &str) -> Option<Stake> {
    let survey = house.survey();
    let told = forecast(&survey, &QUICK).expect("a sound house");
    let about = part_id(&survey, tag);
    let is_it = |unknown: &Unknown| unknown.about == about && unknown.what.id == what;
    let unknown = unknowns(&survey, &told).into_iter().find(is_it).expect("not known");
    at_stake(&survey, &unknown, &QUICK).expect("a sound house")
}

fn guessed(metres: f64) -> House {
    far_house(FAR).at("O2").over_guessed(CableKind::FiftyNine, metres, LengthKnown::Guessed)
}

#[test]
fn a_long_guess_weighs_more_than_a_short_one() {
    let long = stake(guessed(FAR), "O2", "unknown-length-guessed").expect("a way");
    let short = stake(guessed(2.0), "O2", "unknown-length-guessed").expect("a way");
    assert!(long.mbps > 50.0 && long.mbps > 4.0 * short.mbps, "{long:?} {short:?}");
}

#[test]
fn an_unread_label_on_the_way_weighs_much() {
    let house = far_house(FAR).at("S1").with(|splitter| splitter.rating.band = None);
    assert!(stake(house, "S1", "unknown-label").expect("a way").mbps > 50.0);
}

/// Behind an amplifier that lets nothing through, knowing the cable changes nothing.
#[test]
fn behind_what_lets_nothing_through_nothing_is_at_stake() {
    let house = far_house(FAR)
        .amplifier("A1", 1)
        .with(|amplifier| amplifier.rating.moca_bypass = Some(false))
        .from("S1", 2)
        .over(CableKind::Six, 5.0)
        .at("O2")
        .plugged(&[Plugged::Tv])
        .from("A1", 1)
        .over_guessed(CableKind::Six, 10.0, LengthKnown::Guessed);
    assert!(stake(house, "O2", "unknown-length-guessed").expect("a way").mbps < 1.0);
}

/// What feeds a part, or what it is, has no two ends to try.
#[test]
fn what_has_no_two_ends_is_not_weighed() {
    let house = far_house(10.0).outlet("O3", "Den").adapter("2.5");
    assert_eq!(stake(house, "O3", "unknown-loose"), None);
}

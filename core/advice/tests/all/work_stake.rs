//! What is worth going back for.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::AdviceError;
use advice::forecast::{Options, forecast};
use advice::unknown::{Matters, Unknown, unknowns};
use advice::worklist::{Stake, stakes};
use house::record::{CableKind, LengthKnown, Plugged};
use houses::change_cases::{FAR, house as far_house};
use houses::{House, part_id};
use phrase::Phrase;

/// Few draws: what is asked is which unknown weighs more.
const QUICK: Options = Options { draws: 8, seed: 1, points: 89, settles: false };

/// What an unknown about a part, or the run that feeds it, moves: by the message that tells it.
fn stake(house: House, tag: &str, what: &'static str) -> Option<Stake> {
    let survey = house.survey();
    let told = forecast(&survey, &QUICK).expect("a sound house");
    let about = part_id(&survey, tag);
    let unknown =
        Unknown { about, place: Phrase::new("here"), what: Phrase::new(what), matters: Matters::Weakest };
    stakes(&survey, &told, &[unknown], &QUICK, &mut |_| true).expect("a sound house").pop().flatten()
}

fn over(cable: CableKind, metres: f64, known: LengthKnown) -> House {
    far_house(FAR).at("O2").over_guessed(cable, metres, known)
}

fn guessed(metres: f64) -> House {
    over(CableKind::FiftyNine, metres, LengthKnown::Guessed)
}

const LENGTH: &str = "unknown-length-guessed";

#[test]
fn a_long_guess_weighs_more_than_a_short_one() {
    let long = stake(guessed(FAR), "O2", LENGTH).expect("a way");
    let short = stake(guessed(2.0), "O2", LENGTH).expect("a way");
    assert!(long.mbps > 50.0 && long.mbps > 4.0 * short.mbps, "{long:?} {short:?}");
    assert!(long.is_worth_going_back() && !short.is_worth_going_back());
}

#[test]
fn an_unread_label_on_the_way_weighs_much() {
    let house = far_house(FAR).at("S1").with(|splitter| splitter.rating.band = None);
    assert!(stake(house, "S1", "unknown-label").expect("a way").mbps > 50.0);
}

/// What is known to the centimetre, or read off the jacket, is nothing to go back for; and of one run that is so each by itself.
#[test]
fn what_is_known_moves_next_to_nothing() {
    let exactly = |cable| {
        over(cable, FAR, LengthKnown::Measured).run(|run| {
            let length = run.length.as_mut().expect("a length");
            (length.low_metres, length.high_metres) = (FAR - 0.005, FAR + 0.005);
        })
    };
    let moves = |house: House, what| stake(house, "O2", what).expect("a way").mbps;
    let known = moves(exactly(CableKind::Unknown), LENGTH);
    assert!(known < 1.0, "{known}");
    assert!(moves(exactly(CableKind::Unknown), "unknown-cable") > 20.0);
    assert!(moves(guessed(FAR), LENGTH) > 50.0);
    assert!(moves(guessed(FAR), "unknown-cable") == 0.0, "the jacket was read");
}

/// A long run to the weakest room of which nobody knows how long, between much that is open and decides nothing.
#[test]
fn what_decides_the_room_comes_first() {
    let survey = guessed(FAR)
        .at("O1")
        .over_guessed(CableKind::Unknown, 3.0, LengthKnown::Guessed)
        .at("S1")
        .over_guessed(CableKind::Unknown, 2.0, LengthKnown::Guessed)
        .outlet("O3", "Den")
        .plugged(&[])
        .adapter("2.5")
        .from("F1", 1)
        .over_guessed(CableKind::Six, 5.0, LengthKnown::Guessed)
        .survey();
    let told = forecast(&survey, &QUICK).expect("a sound house");
    let open = unknowns(&survey, &told);
    let weighed = stakes(&survey, &told, &open, &QUICK, &mut |_| true).expect("a sound house");
    let found: Vec<_> =
        open.iter().zip(&weighed).filter_map(|(open, stake)| Some((open, (*stake)?))).collect();
    let (first, most) = found.iter().max_by(|a, b| a.1.mbps.total_cmp(&b.1.mbps)).expect("something is open");
    assert!(found.len() >= 5, "{found:?}");
    assert_eq!((first.about, first.what.id.as_str()), (part_id(&survey, "O2"), LENGTH));
    assert_eq!(most.outlet, part_id(&survey, "O2"));
    for (other, stake) in found.iter().filter(|(other, _)| other != first) {
        assert!(stake.mbps < 0.5 * most.mbps, "{other:?} {stake:?} {most:?}");
        let alone = [Unknown::clone(other)];
        let alone = stakes(&survey, &told, &alone, &QUICK, &mut |_| true).expect("a sound house");
        assert_eq!(alone, [Some(*stake)], "alone as among others");
    }
}

#[test]
fn it_stops_when_told_to_and_says_how_far_it_is() {
    let survey = guessed(FAR).survey();
    let told = forecast(&survey, &QUICK).expect("a sound house");
    let open = unknowns(&survey, &told);
    let mut shares = Vec::new();
    let mut watch = |share| {
        shares.push(share);
        shares.len() < 3
    };
    let stopped = stakes(&survey, &told, &open, &QUICK, &mut watch);
    assert!(matches!(stopped, Err(AdviceError::Stopped)), "{stopped:?}");
    assert!(shares.len() == 3 && shares.is_sorted() && shares.iter().all(|share| *share < 1.0), "{shares:?}");
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
    assert!(stake(house, "O2", LENGTH).expect("a way").mbps < 0.01);
}

/// What feeds a part, or what it is, is no figure that is thrown.
#[test]
fn what_is_not_thrown_is_not_weighed() {
    let house = far_house(10.0).outlet("O3", "Den").adapter("2.5");
    assert_eq!(stake(house, "O3", "unknown-loose"), None);
}

//! What a step is worth where another service pays for it.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::worklist::{Options, Refusal, WorkList, worklist};
use coax::Span;
use facts::fact::SubjectId;
use house::record::{CableKind, ChangeKind, Plugged, Survey};
use houses::change_cases::house as near_house;
use houses::{House, part_id};

/// An office at the end of so much thin cable, which nobody may replace.
fn far_office(metres: f64) -> House {
    near_house(10.0).rented().at("O2").over(CableKind::FiftyNine, metres)
}

fn list(house: House) -> WorkList {
    worklist(&house.survey(), &Options::default()).expect("a sound house")
}

fn has(list: &WorkList, is: fn(ChangeKind) -> bool) -> bool {
    list.steps.iter().any(|step| is(step.change))
}

/// A splitter not made for the band, whose label states less than a new one takes, and a room on it where this is plugged in.
fn old_splitter(metres: f64, den: &[Plugged]) -> House {
    let house = far_office(metres).at("S1").made_for(5.0, 1000.0);
    let house = house.with(|splitter| {
        splitter.rating.legs = 3;
        splitter.rating.leg_losses_db = vec![3.5; 3];
    });
    house.outlet("O3", "Den").from("S1", 3).over(CableKind::Six, 5.0).plugged(den)
}

/// Of so many Mb/s both ways together a step is worth work (docs/method.md).
const WORTH_MBPS: f64 = 15.0;

/// What the office gets, Mb/s both ways together.
#[derive(Clone, Copy)]
struct Rate {
    likely: f64,
    nine_in_ten: f64,
}

/// What the office gets before and after a change.
fn rates(house: House, change: fn(SubjectId, SubjectId) -> ChangeKind) -> [Rate; 2] {
    let survey = house.survey();
    let office = part_id(&survey, "O2");
    let rate = |survey: &Survey| {
        let few = Options::default().screening;
        let forecast = advice::forecast::forecast(survey, &few).expect("a sound house");
        let ways = forecast.path(office).map(|path| [path.down, path.up]);
        let both = |rate: fn(&Span) -> f64| ways.iter().flatten().map(|way| rate(way).max(0.0)).sum();
        Rate { likely: both(|way| way.likely), nine_in_ten: both(|way| way.low) }
    };
    let change = change(part_id(&survey, "S1"), office);
    [rate(&survey), rate(&advice::worklist::applied(change, &survey))]
}

/// The longest cable, m, over which the rates before and after a change are as asked for.
fn longest(
    house: impl Fn(f64) -> House,
    change: fn(SubjectId, SubjectId) -> ChangeKind,
    is: fn([Rate; 2]) -> bool,
) -> f64 {
    let mut metres = (10..40).rev().map(|tens| f64::from(tens) * 10.0);
    metres.find(|metres| is(rates(house(*metres), change))).expect("some length")
}

/// Over so much cable that the better splitter brings something that is likely, and nothing that is there nine times in ten, it
/// is no reason to take signal from the TV. Over less it brings that too; and without a TV nobody pays.
#[test]
fn a_swap_that_gains_nothing_nine_times_in_ten_takes_no_signal_from_a_tv() {
    let swap = |splitter, _| ChangeKind::SwapSplitter { splitter, legs: 3 };
    let is_swap = |change| matches!(change, ChangeKind::SwapSplitter { .. });
    let with_tv = |metres| old_splitter(metres, &[Plugged::Tv]);
    let tempting = longest(with_tv, swap, |[before, after]| {
        after.likely - before.likely >= WORTH_MBPS && after.nine_in_ten - before.nine_in_ten < WORTH_MBPS
    });
    let worth =
        longest(with_tv, swap, |[before, after]| after.nine_in_ten - before.nine_in_ten >= WORTH_MBPS);
    assert!(!has(&list(with_tv(tempting)), is_swap));
    assert!(has(&list(with_tv(worth)), is_swap));
    assert!(has(&list(old_splitter(tempting, &[Plugged::Other])), is_swap));
}

/// The splitter for the office's adapter takes signal from the TV there: for a room that gets next to nothing by it that is no
/// step, for one that gets something nine times in ten it is.
#[test]
fn an_outlet_is_not_shared_for_a_room_that_gets_nothing_by_it() {
    let share = |_, outlet| ChangeKind::ShareOutlet { outlet };
    let is_share = |change| matches!(change, ChangeKind::ShareOutlet { .. });
    let with_tv = |metres| far_office(metres).with(|outlet| outlet.adapter = None).plugged(&[Plugged::Tv]);
    let little = longest(with_tv, share, |[_, after]| after.likely > 0.0 && after.nine_in_ten < WORTH_MBPS);
    // The list is chosen by fewer draws: not as near as can be.
    let enough = longest(with_tv, share, |[_, after]| after.nine_in_ten >= 6.0 * WORTH_MBPS);
    assert!(!has(&list(with_tv(little)), is_share));
    assert!(has(&list(with_tv(enough)), is_share));
}

/// A splitter that is not made for the band is swapped where a wish needs it, and left where every room gets twice its wish
/// nine times in ten already.
#[test]
fn nobody_unscrews_a_splitter_for_speed_far_beyond_the_wish() {
    let swap = |splitter, _| ChangeKind::SwapSplitter { splitter, legs: 3 };
    let without_tv = |metres| old_splitter(metres, &[Plugged::Other]);
    let metres = longest(without_tv, swap, |[before, after]| {
        before.nine_in_ten >= 800.0 && after.nine_in_ten - before.nine_in_ten >= WORTH_MBPS
    });
    let swapped = |wish: f64| {
        let house = without_tv(metres).wish("Office", wish);
        has(&list(house), |change| matches!(change, ChangeKind::SwapSplitter { .. }))
    };
    assert!(swapped(2_000.0));
    assert!(!swapped(100.0));
    // It is told as left out, with what it would give.
    let told = list(without_tv(metres).wish("Office", 100.0));
    let reason = told.refused.iter().find(|(change, _)| matches!(change, ChangeKind::SwapSplitter { .. }));
    assert!(
        matches!(reason, Some((_, Refusal::NotWorth { gain_mbps, .. })) if *gain_mbps >= WORTH_MBPS),
        "{reason:?}"
    );
}

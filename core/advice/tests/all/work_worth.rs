//! What a step is worth where another service pays for it.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::worklist::{Options, WorkList, worklist};
use house::record::{CableKind, ChangeKind, Plugged};
use houses::House;
use houses::change_cases::house as near_house;

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

/// A splitter not made for the band, whose label states 3.5 dB a leg, and a room on it where this is plugged in.
fn old_splitter(metres: f64, den: &[Plugged]) -> House {
    let house = far_office(metres).at("S1").made_for(5.0, 1000.0);
    let house = house.with(|splitter| {
        splitter.rating.legs = 3;
        splitter.rating.leg_losses_db = vec![3.5; 3];
    });
    house.outlet("O3", "Den").from("S1", 3).over(CableKind::Six, 5.0).plugged(den)
}

/// Over 220 m of such cable the better splitter brings 20 Mb/s that are likely and 2 that are there nine times in ten: no
/// reason to take 2.6 dB from the TV. Over 180 m it brings 130 of the latter; and without a TV nobody pays.
#[test]
fn a_swap_that_gains_nothing_nine_times_in_ten_takes_no_signal_from_a_tv() {
    let swap = |change| matches!(change, ChangeKind::SwapSplitter { .. });
    let tv = &[Plugged::Tv];
    assert!(!has(&list(old_splitter(220.0, tv)), swap));
    assert!(has(&list(old_splitter(180.0, tv)), swap));
    assert!(has(&list(old_splitter(220.0, &[Plugged::Other])), swap));
}

/// The splitter for the office's adapter takes 3.8 dB from the TV there: for a room that gets next to nothing by it that is
/// no step, for one that gets 200 Mb/s it is.
#[test]
fn an_outlet_is_not_shared_for_a_room_that_gets_nothing_by_it() {
    let share = |change| matches!(change, ChangeKind::ShareOutlet { .. });
    let with_tv = |metres| far_office(metres).with(|outlet| outlet.adapter = None).plugged(&[Plugged::Tv]);
    assert!(!has(&list(with_tv(220.0)), share));
    assert!(has(&list(with_tv(180.0)), share));
}

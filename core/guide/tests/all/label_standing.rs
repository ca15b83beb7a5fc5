//! What was said of a part before its photo was read stands. What needs the model is run by `tests/rooms/print`, which makes it.

use guide::{Deed, Screen};

use crate::label_photo::{house, label, photograph, photos, rating, recognise, to_label, with_model};
use crate::result_house::{Walk, text};

/// What was said of a part, with or without a label, goes with no other: only by a touch of its own.
#[test]
#[ignore = "needs the model and photos"]
fn what_is_read_otherwise_than_was_said_takes_a_touch_of_its_own() {
    let sure_of_legs = |walk: &mut Walk| {
        let screen = walk.screen();
        let figure = |figure: &str| {
            let label = label(&screen)?;
            label.figures.iter().find(|found| found.id.contains(figure)).cloned()
        };
        (figure("legs"), figure("high"), screen.keys().contains(&"take-sure"))
    };
    let found = photos("splitter").into_iter().find_map(|(file, truth)| {
        let mut walk = with_model();
        to_label(&mut walk);
        photograph(&mut walk, &file);
        let (legs, high, takes) = sure_of_legs(&mut walk);
        let are_sure =
            [legs, high].into_iter().flatten().filter(|figure| figure.doubt.is_empty()).count() == 2;
        (takes && are_sure).then_some((file, truth["states"]["legs"].as_u64()?))
    });
    let (readable, printed) = found.expect("one of which outputs and band are sure");
    let mut walk = with_model();
    say_outputs(&mut walk, 9);
    to_label(&mut walk);
    photograph(&mut walk, &readable);
    let (legs, ..) = sure_of_legs(&mut walk);
    let doubt = legs.expect("outputs").doubt;
    assert!(doubt.contains('9'), "{doubt}");
    walk.press("take-sure");
    walk.press("next");
    assert_eq!(rating(&walk).legs, 9);
    assert!(rating(&walk).band.is_some());
    to_label(&mut walk);
    walk.press("take:legs");
    walk.press("next");
    assert_eq!(u64::from(rating(&walk).legs), printed);
}

#[test]
#[ignore = "needs the model and photos"]
fn a_photo_whose_reading_was_stopped_is_read_by_a_touch() {
    let (file, _) = photos("splitter").swap_remove(0);
    let mut walk = with_model();
    to_label(&mut walk);
    let file = file.to_str().expect("a path").to_owned();
    walk.guide.act(&Deed::Photo { key: "label-photo".into(), file }).expect("taken");
    walk.guide.act(&Deed::Press { key: "stop".into() }).expect("stopped");
    let stopped = walk.screen();
    assert!(label(&stopped).is_none(), "{}", text(&stopped));
    let read = walk.press("read-again");
    assert!(!read.keys().contains(&"read-again"));
    assert!(text(&walk.screen()).contains("Read from the photo"), "{}", text(&walk.screen()));
}

/// Says how many outputs the splitter has, by setting right what was read off its label.
fn say_outputs(walk: &mut Walk, outputs: u8) {
    to_label(walk);
    walk.guide.act(&Deed::Write { key: "text".into(), words: "SPLITTER".into() }).expect("typed");
    walk.press("next");
    walk.press("fix:legs");
    walk.measure("legs", &outputs.to_string());
    walk.press("next");
    assert_eq!(rating(walk).legs, outputs);
}

#[test]
fn what_was_said_before_stands_beside_what_is_read_otherwise() {
    let mut walk = house();
    say_outputs(&mut walk, 9);
    to_label(&mut walk);
    let doubts = |screen: &Screen| -> Vec<String> {
        let label = label(screen).unwrap_or_else(|| panic!("{}", text(screen)));
        label.figures.iter().map(|figure| figure.doubt.clone()).filter(|doubt| !doubt.is_empty()).collect()
    };
    let screen = recognise(&mut walk, "4-WAY 5-1002 MHz");
    assert_eq!(doubts(&screen), ["The survey says 9. Choose this number only if you know better now."]);
    let screen = recognise(&mut walk, "9-WAY 5-1002 MHz");
    assert!(doubts(&screen).is_empty());
    walk.guide.act(&Deed::Write { key: "text".into(), words: "SPLITTER 8-WAY".into() }).expect("typed");
    let screen = walk.screen();
    assert_eq!(doubts(&screen), ["The text that was typed says 8, and typed text counts."]);
    assert!(!screen.keys().contains(&"take:legs"), "a touch would change nothing");
    assert!(screen.keys().contains(&"take:high"));
}

/// A loss to each output is that of each, whoever counts them and when.
#[test]
fn a_loss_to_each_output_is_of_each_that_is_counted() {
    for typed_first in [true, false] {
        let mut walk = house();
        to_label(&mut walk);
        let typed = |walk: &mut Walk| {
            let words = "4-WAY SPLITTER".to_owned();
            walk.guide.act(&Deed::Write { key: "text".into(), words }).expect("typed");
            walk.press("next");
            to_label(walk);
        };
        if typed_first {
            typed(&mut walk);
        }
        recognise(&mut walk, "5-1002 MHz OUT -7.2 dB");
        walk.press("take:leg-loss");
        walk.press("next");
        if !typed_first {
            assert_eq!(rating(&walk).leg_losses_db, [7.2]);
            to_label(&mut walk);
            typed(&mut walk);
        }
        let found = rating(&walk);
        assert_eq!((found.legs, found.leg_losses_db), (4, vec![7.2; 4]), "{typed_first}");
    }
}

/// The count comes with a figure of another photo; and three outputs at 3.5 dB each would give out more than they get.
#[test]
fn a_loss_is_spread_with_any_other_figure_and_never_beyond_what_goes_in() {
    for (words, losses) in [("4-WAY SPLITTER", vec![7.2; 4]), ("6-WAY SPLITTER", vec![7.2])] {
        let mut walk = house();
        to_label(&mut walk);
        recognise(&mut walk, "OUT -7.2 dB");
        walk.press("take:leg-loss");
        walk.press("next");
        to_label(&mut walk);
        walk.guide.act(&Deed::Write { key: "text".into(), words: words.into() }).expect("typed");
        recognise(&mut walk, "5-1002 MHz");
        walk.press("take:low");
        walk.press("take:high");
        walk.press("next");
        let found = rating(&walk);
        assert_eq!(found.leg_losses_db, losses, "{words}");
        assert_eq!(found.band.map(|band| band.high_mhz), Some(1002.0));
    }
}

/// A text that says only where a band ends says nothing of where it begins.
#[test]
fn where_a_band_begins_is_taken_from_a_photo_if_nobody_typed_it() {
    let mut walk = house();
    to_label(&mut walk);
    walk.guide
        .act(&Deed::Write { key: "text".into(), words: "2-WAY SPLITTER 1000 MHz".into() })
        .expect("typed");
    let screen = recognise(&mut walk, "2-WAY SPLITTER 54-1000 MHz");
    let found = label(&screen).expect("figures");
    assert!(found.figures.iter().all(|figure| figure.doubt.is_empty()), "{}", text(&screen));
    walk.press("take:low");
    walk.press("next");
    assert_eq!(rating(&walk).band.map(|band| (band.low_mhz, band.high_mhz)), Some((54.0, 1000.0)));
}

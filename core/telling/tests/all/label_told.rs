//! What was read off a label as JSON, and its doubts in English.

use facts::fact::SubjectId;
use house::rating::{Band, PartRating};
use house::record::{Part, PartKind};
use label::read;
use label::seen::Unsure;
use print::PrintError;
use telling::doubts::{in_english, json_line, of_part_in_english};
use telling::words::{Figures, Language};

#[test]
fn a_text_that_is_too_long_is_said_to_be() {
    let text = format!("2-WAY SPLITTER 5-1000MHz {} -3.5dB", "ä ".repeat(4000));
    assert_eq!(
        in_english(&read(&text).doubts),
        ["The text is very long; only its first 1024 bytes were read."]
    );
}

#[test]
fn the_line_of_json_keeps_the_order_of_members() {
    let line = json_line(&read("2-WAY 5-1675MHz -3.7dB MoCA 2.5"));
    let order = [
        "kind",
        "low_mhz",
        "high_mhz",
        "leg_losses_db",
        "tap_db",
        "gain_db",
        "rejection_db",
        "isolation_db",
        "return_loss_db",
        "power_pass",
        "doubts",
        "legs",
    ];
    let places: Vec<usize> =
        order.iter().map(|name| line.find(&format!("\"{name}\":")).expect("a member")).collect();
    assert!(places.is_sorted(), "{line}");
    assert!(!line.contains('\n'));
}

#[test]
fn doubts_are_sentences() {
    let doubts = in_english(&read("5-1ooo MHz -7d8").doubts);
    assert_eq!(
        doubts.first().map(String::as_str),
        Some("“1ooo” has letters where digits belong and was read as 1000. Please look at the label again.")
    );
    for text in ["4-WAY -3.5dB -7dB -7dB", "5-2.3GHz 2-WAY", "WALL PLATE TAP 10dB", "ISO 25dB ISO 20dB", ""] {
        for sentence in in_english(&read(text).doubts) {
            assert!(!sentence.contains("label-doubt") && !sentence.contains('{'), "{sentence}");
            assert!(sentence.ends_with('.'), "{sentence}");
        }
    }
}

/// A part with that print and that typed rating, as the record folds the two.
fn part(kind: PartKind, print: &str, typed: PartRating) -> Part {
    let mut part = Part::new(SubjectId::random(), kind);
    part.label = Some(print.into());
    part.rating = typed.or(PartRating::of_label(print));
    part
}

#[test]
fn print_and_a_typed_field_that_differ_are_said() {
    let band = |high_mhz| PartRating { band: Some(Band { low_mhz: 5.0, high_mhz }), ..PartRating::default() };
    let print = "2-WAY SPLITTER 5-1000 MHz 3.5dB";
    assert_eq!(
        of_part_in_english(&part(PartKind::Splitter, print, band(1675.0))),
        [
            "The label gives 5 to 1000 MHz for the band, but 5 to 1675 MHz was entered. What was entered counts; \
          please look again which is right."
        ]
    );
    assert!(of_part_in_english(&part(PartKind::Splitter, print, band(1000.0))).is_empty());
    let typed = PartRating {
        legs: 2,
        leg_losses_db: vec![4.0, 4.0],
        stop_band: Some(Band { low_mhz: 5.0, high_mhz: 42.0 }),
        rejection_db: Some(40.0),
        tap_db: Some(9.0),
        gain_db: Some(10.0),
        return_gain_db: Some(1.0),
        return_high_mhz: Some(85.0),
        moca_bypass: Some(false),
        isolation_db: Some(20.0),
        return_loss_db: Some(14.0),
        power_pass: Some(true),
        ..PartRating::default()
    };
    let prints = [
        "3-WAY SPLITTER 3.5dB 7dB 7dB ISO 25dB RL 18dB DC BLOCKED",
        "TAP 12dB",
        "AMPLIFIER GAIN 15dB 54-1002MHz, RETURN 5-42MHz -2dB, MoCA BYPASS",
        "MoCA FILTER STOP 1125-1675MHz REJECTION 50dB",
    ];
    let said: Vec<String> = prints
        .iter()
        .flat_map(|print| of_part_in_english(&part(PartKind::Splitter, print, typed.clone())))
        .collect();
    for sentence in &said {
        assert!(!sentence.contains("label-") && !sentence.contains(['{', '}']), "{sentence}");
        assert!(sentence.ends_with("please look again which is right."), "{sentence}");
    }
    let each = [
        "outputs",
        "losses",
        "stopped band",
        "rejection",
        "tap loss",
        "the gain,",
        "gain of the return path",
        "upper edge",
        "by-pass",
        "isolation",
        "return loss",
        "power (DC)",
        "a tap",
        "an amplifier",
    ];
    for words in each {
        assert!(said.iter().any(|sentence| sentence.contains(words)), "{words}: {said:#?}");
    }
}

#[test]
fn whatever_is_asked_or_refused_of_a_photo_has_its_sentence() {
    let asked = [
        Unsure::Faint,
        Unsure::SeenOnce,
        Unsure::SeenOtherwise { other: "167".into() },
        Unsure::ReadOtherwise,
        Unsure::Cut,
        Unsure::PerhapsLonger { perhaps: 1675.0 },
        Unsure::LettersForDigits,
        Unsure::Unusual,
        Unsure::DoesNotFit,
        Unsure::MeaningUnclear,
    ];
    let refused = [
        PrintError::ModelMissing { file: "letters.txt" },
        PrintError::ModelUnreadable { file: "letters.txt", fault: facts::error::SystemFault::NotAllowed },
        PrintError::ModelChanged { file: "letters.txt" },
        PrintError::ModelFails,
        PrintError::NoText,
    ];
    let english = Language::english(Figures::default());
    let phrases = asked.iter().map(Unsure::phrase).chain(refused.iter().filter_map(PrintError::phrase));
    let said: Vec<String> = phrases.map(|phrase| english.say(&phrase)).collect();
    assert_eq!(said.len(), asked.len() + refused.len());
    for sentence in &said {
        assert!(sentence.ends_with('.') && !sentence.contains(['{', '}']), "{sentence}");
        assert!(!sentence.contains("label-unsure") && !sentence.contains("print-"), "{sentence}");
    }
    let holds = |what: &str| said.iter().filter(|sentence| sentence.contains(what)).count();
    assert_eq!((holds("“167”"), holds("1675"), holds("“letters.txt”")), (1, 1, 3));
}

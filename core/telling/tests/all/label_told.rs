//! What was read off a label as JSON, and its doubts in English.

use label::read;
use telling::doubts::{in_english, json_line};

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

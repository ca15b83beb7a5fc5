//! Laws of the label reader: it never panics, never reads a number that the text does not hold, does not depend
//! on capitals or blanks, and never silently changes a number when letters stand where digits belong.

use std::collections::BTreeSet;

use label::{Doubt, LabelReading, read};
use proptest::prelude::*;
use serde_json::Value;

use crate::members::members;

/// Labels of our own invention, each read without doubt about its numbers.
const GOOD: &[&str] = &[
    "2-WAY 5-1675MHz -3.7dB MoCA 2.5",
    "3-WAY 5-1002MHz -3.5dB -7dB -7dB",
    "3 WAY SPLITTER 5~1000MHz OUT1: -3.5dB OUT2: -7dB OUT3: -7dB",
    "8-WAY SPLITTER 5-1218 MHz 11.5dB max ISO 25dB RL 18dB",
    "16WAY SPLITTER 5-1000MHz IL 14.5dB",
    "SPLITTER 1x4 0.005-2.3 GHz 7.5 dB isolation 22 dB",
    "TAP -12dB THRU 1.1dB 5-1002MHz",
    "2-WAY TAP 5-1218 MHz 17 dB TAP",
    "AMPLIFIER 54-1002 MHz 15dB, return 5-42 MHz",
    "DROP AMP FWD 54-1002MHz GAIN 15dB RET 5-42MHz 0dB",
    "BOOSTER 5-85/105-1218 MHz GAIN 12dB",
    "PASS 5-1002MHz STOP 1125-1675MHz 40dB MoCA FILTER",
    "POE FILTER 5-1002 MHz INSERTION LOSS 0.8dB REJECTION 55dB",
    "HIGH PASS FILTER 54-1002MHz STOP 5-42MHz 40dB",
    "ATTENUATOR 10dB 5-1000 MHz",
    "SAT/TV DIPLEXER SAT 950-2150MHz VHF/UHF 5-862MHz",
    "GROUND BLOCK 5-3000MHz LOSS 0.2dB RETURN LOSS 20dB",
    "6-WAY SPLITTER 5-1000MHz OUT1/2 -7dB OUT3-6 -10.5dB",
    "4-fach Verteiler 5-1006 MHz 7,5 dB Entkopplung 22 dB",
    "LOSS (dB): 3.5 / 7.0 / 7.0   FREQ (MHz): 5-1002   3-WAY",
    "SPLITTER 3-WAY\n5 – 1002 MHz\nOUT 1,2 −7 dB\nOUT 3 −3.5 dB",
    "3WAY SPLITTER 3.5/7.5/7.5dB 5MHz-1GHz",
    "TWO WAY SPLITTER 5-1002MHz 3.5dB OUT 25dB ISO 18dB RL",
    "SPLITTER 1 IN 2 OUTPUTS; FREQ: 5-1002 MHZ; LOSS: <4.5DB; DC BLOCKED",
    "AMPLIFIER\nFORWARD 105-1218 MHz GAIN 15 dB NOISE FIGURE 5 dB\nRETURN 5-85 MHz GAIN 1 dB\n12VDC 500mA",
    "AMPLIFIER SPLIT 85/105 MHz GAIN 12dB INPUT 100-240V 50/60Hz",
    "MoCA FILTER\nPASSBAND 5-1002MHz\nINSERTION LOSS 0.8dB\nSTOPBAND 1125-1675MHz\nREJECTION 50dB\nRETURN LOSS 18dB",
    "DIRECTIONAL COUPLER 5-1000MHz IN-OUT 1.5dB IN-TAP 9dB TAP-OUT ISO 28dB",
    "SATELLITE SPLITTER 2-WAY 950-2150MHz -4.5dB DC PASS ONE PORT",
    "8-WAY 5 to 1218 MHz, loss 11.8 dB, shielding 120 dB, return loss 15 dB",
];

/// All numbers of a reading with the name of the member they stand in.
fn numbers(reading: &LabelReading) -> Vec<(String, f64)> {
    let mut found = Vec::new();
    for (member, value) in members(reading) {
        match value {
            Value::Array(list) => {
                found.extend(list.iter().filter_map(|item| Some((member.clone(), item.as_f64()?))));
            }
            value => found.extend(value.as_f64().map(|number| (member, number))),
        }
    }
    found
}

/// The numbers that a text can be said to hold after the documented normalisation, in thousandths, worked out
/// without the reader: wide digits made plain, letters that look like digits made digits, then every run of
/// digits that no digit adjoins, with up to two dots, commas, apostrophes or blanks in it as a decimal point or
/// as parting thousands; each also a thousandfold (GHz). Words for counts stand for their numbers.
fn numbers_in(text: &str) -> BTreeSet<i64> {
    let small: Vec<char> = text.chars().flat_map(char::to_lowercase).map(narrow).collect();
    let plain: Vec<char> = small
        .iter()
        .map(|ch| match ch {
            'o' | '\u{43E}' => '0',
            'l' | 'i' => '1',
            'z' => '2',
            's' => '5',
            'b' => '8',
            _ => *ch,
        })
        .collect();
    let adjoins =
        |place: Option<usize>| place.and_then(|place| small.get(place)).is_some_and(char::is_ascii_digit);
    let mut held = BTreeSet::new();
    for start in 0..plain.len() {
        for end in (start + 1)..=plain.len().min(start + 12) {
            if adjoins(start.checked_sub(1)) || adjoins(Some(end)) {
                continue;
            }
            let run = &plain[start..end];
            let signs = run.iter().filter(|ch| !ch.is_ascii_digit()).count();
            if signs > 2 || !run.iter().all(|ch| ch.is_ascii_digit() || is_parting(*ch)) {
                continue;
            }
            let with_point: String = run.iter().map(|ch| if is_parting(*ch) { '.' } else { *ch }).collect();
            let together: String = run.iter().filter(|ch| ch.is_ascii_digit()).collect();
            let written = [with_point, together];
            for value in written.iter().filter_map(|number| number.parse::<f64>().ok()) {
                held.extend([thousandths(value), thousandths(value * 1000.0)]);
            }
        }
    }
    let counts = ["one", "two", "three", "four", "five", "six", "seven", "eight"];
    let words = small.iter().collect::<String>();
    held.extend((1..).zip(counts).filter(|(_, word)| words.contains(word)).map(|(count, _)| count * 1000));
    held.extend(words.contains("single").then_some(1000));
    // What begins at direct current begins at 0.
    held.extend(words.contains("dc").then_some(0));
    held
}

/// A wide form's plain one.
fn narrow(ch: char) -> char {
    match ch {
        '\u{FF01}'..='\u{FF5E}' => char::from_u32(u32::from(ch) - 0xFEE0).unwrap_or(ch),
        _ => ch,
    }
}

/// Whether a character may stand inside a number.
fn is_parting(ch: char) -> bool {
    ".,'\u{2019}\u{2018}\u{2032}".contains(ch)
        || ch.is_whitespace()
        || ch.is_control()
        || matches!(ch, '\u{200B}'..='\u{200F}')
}

#[expect(clippy::cast_possible_truncation, reason = "labels' numbers are small")]
fn thousandths(value: f64) -> i64 {
    (value * 1000.0).round() as i64
}

fn holds_all(text: &str) -> Result<(), TestCaseError> {
    let held = numbers_in(text);
    for (member, value) in numbers(&read(text)) {
        prop_assert!(held.contains(&thousandths(value.abs())), "{member} = {value} is not in {text:?}");
    }
    Ok(())
}

/// Pieces that labels are made of, and rubbish, for texts that come near to labels.
fn label_like() -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        3 => proptest::sample::select(vec![
            "2-WAY", "4 way", "SPLITTER", "TAP", "AMPLIFIER", "MoCA", "FILTER", "PASS", "STOP", "ISO", "RL", "GAIN",
            "LOSS", "OUT", "OUT1", "OUT2/3", "IN", "THRU", "RETURN", "FWD", "DC", "POWER", "ALL PORTS", "dB", "MHz",
            "GHz", "-", "–", "~", "to", "..", "/", ",", ".", ":", "\n", ">", "+", "±", "@", "max", "typ", "(", ")",
            "shielding", "7d8", "1ooo", "SN", "XQ-7", "three way", "kV", "V", "8", "l", "S", "O", "REJECTION", "SAT",
        ]).prop_map(str::to_owned),
        2 => (0.0..3000.0_f64).prop_map(|value| format!("{value:.1}")),
        2 => (0_u32..3000).prop_map(|value| value.to_string()),
        1 => "[0-9oOlISB]{1,4}",
        1 => "[0-9]{1,2}[.,][0-9]{1,3}(dB|MHz|GHz)?",
        1 => "[0-9]{1,3}-[0-9]{1,4} ?(MHz|GHz|dB)",
        1 => "\\PC{1,3}",
    ];
    proptest::collection::vec((piece, proptest::sample::select(vec!["", " ", " ", "  "])), 0..14)
        .prop_map(|pieces| pieces.into_iter().map(|(piece, blank)| piece + blank).collect())
}

/// A good label with some digits replaced by letters that look like them.
fn misread_label() -> impl Strategy<Value = (&'static str, String)> {
    (
        proptest::sample::select(GOOD),
        proptest::collection::vec(any::<(bool, bool)>(), 80),
        0.02..0.9_f64,
        any::<u64>(),
    )
        .prop_map(|(label, picks, share, seed)| {
            let mut state = seed | 1;
            let mut dice = move || {
                // xorshift: only to spread the changes over the label.
                state ^= state << 13;
                state ^= state >> 7;
                state ^= state << 17;
                (state >> 11) as f64 / (1_u64 << 53) as f64
            };
            let changed = label
                .chars()
                .zip(picks.iter().cycle())
                .map(|(ch, (capital, other))| {
                    if dice() > share {
                        return ch;
                    }
                    match (ch, capital, other) {
                        ('0', true, _) => 'O',
                        ('0', false, _) => 'o',
                        ('1', true, _) => 'I',
                        ('1', false, true) => 'l',
                        ('1', false, false) => 'i',
                        ('2', _, _) => 'Z',
                        ('5', true, _) => 'S',
                        ('5', false, _) => 's',
                        ('8', _, _) => 'B',
                        _ => ch,
                    }
                })
                .collect();
            (label, changed)
        })
}

#[test]
fn good_labels_raise_no_doubt_about_numbers() {
    for label in GOOD {
        let reading = read(label);
        assert!(!reading.is_blank(), "{label}");
        let is_only_about_paths =
            reading.doubts.iter().all(|doubt| matches!(doubt, Doubt::PathsAssumed { .. }));
        assert!(is_only_about_paths, "{label}: {:?}", reading.doubts);
    }
}

#[test]
fn the_check_of_numbers_can_fail() {
    assert!(numbers_in("5-1ooo MHz -7d8").contains(&1_000_000));
    assert!(!numbers_in("5-1000 MHz").contains(&7_000));
    assert!(!numbers_in("RL 18dB").contains(&16_000));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_text_is_read_without_panic_and_without_inventing(text in "\\PC{0,60}") {
        holds_all(&text)?;
    }

    #[test]
    fn any_bytes_are_read_without_panic(bytes in proptest::collection::vec(any::<u8>(), 0..200)) {
        let text = String::from_utf8_lossy(&bytes);
        holds_all(&text)?;
    }

    #[test]
    fn no_number_is_invented(text in label_like()) {
        holds_all(&text)?;
    }

    #[test]
    fn capitals_and_blanks_do_not_matter(text in label_like()) {
        let plain = members(&read(&text));
        prop_assert_eq!(&members(&read(&text.replace(' ', "   "))), &plain, "wider: {:?}", text);
        prop_assert_eq!(&members(&read(&format!("  {text} \t"))), &plain, "indented: {:?}", text);
        if text.is_ascii() {
            prop_assert_eq!(&members(&read(&text.to_uppercase())), &plain, "capitals: {:?}", text);
            prop_assert_eq!(&members(&read(&text.to_lowercase())), &plain, "small: {:?}", text);
        }
    }

    #[test]
    fn letters_for_digits_never_change_a_number_silently((label, changed) in misread_label()) {
        let good = read(label);
        let misread = read(&changed);
        let truth = members(&good);
        let legs_not_stated = misread.doubts.iter().any(|doubt| matches!(doubt, Doubt::LegsNotStated { .. }));
        for (member, value) in members(&misread) {
            if !(value.is_number() || value.is_array()) || value == truth[&member] {
                continue;
            }
            // One loss without its count of legs is the same loss, and its doubt says so.
            let losses = |value: &Value| value.as_array().cloned().unwrap_or_default();
            let (found, all) = (losses(&value), losses(&truth[&member]));
            let is_same_loss = legs_not_stated && found.len() == 1 && all.iter().all(|loss| Some(loss) == found.first());
            prop_assert!(is_same_loss && !all.is_empty(), "{changed:?}: {member} = {value}, not {}", truth[&member]);
        }
        let touches_a_number = numbers(&good) != numbers(&misread);
        prop_assert!(!touches_a_number || !misread.doubts.is_empty(), "{changed:?} lost a number without a doubt");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_blank_inside_a_number_never_changes_it_silently(label in proptest::sample::select(GOOD), at in 0_usize..90) {
        let Some((place, ch)) = label.char_indices().nth(at) else { return Ok(()) };
        let is_of_number = |ch: char| ch.is_ascii_digit() || matches!(ch, '.' | ',');
        if !(is_of_number(ch) && label[..place].chars().next_back().is_some_and(is_of_number)) {
            return Ok(());
        }
        let torn = format!("{} {}", &label[..place], &label[place..]);
        let (whole, reading) = (read(label), read(&torn));
        let truth = members(&whole);
        let is_told = reading.doubts.len() > whole.doubts.len();
        for (member, value) in members(&reading) {
            let is_number = value.is_number() || value.is_array();
            prop_assert!(
                !is_number || value == truth[&member] || is_told,
                "{torn:?}: {member} = {value}, not {}", truth[&member]
            );
        }
    }
}

#[test]
fn a_long_text_is_read_in_good_time() {
    for piece in
        ["5-", "1ooo", "-7dB ", "a.b.", "OUT1/2/3,", "1 000 ", "dB/", "ü", "1,1,1,1", "....", "5-1000MHz "]
    {
        let reading = read(&piece.repeat(100_000));
        assert!(reading.doubts.len() <= 25);
    }
}

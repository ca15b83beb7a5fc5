//! Laws of the label reader: it never panics, never reads a number that the text does not hold, does not depend
//! on capitals or blanks, and never silently changes a number when letters stand where digits belong.

use std::collections::BTreeSet;

use proptest::prelude::*;
use survey::label::{LabelReading, read};

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
];

/// All numbers of a reading with the name of the member they stand in.
fn numbers(reading: &LabelReading) -> Vec<(String, f64)> {
    let mut found = Vec::new();
    for (member, value) in reading.to_json().as_object().expect("an object") {
        match value {
            serde_json::Value::Number(number) => found.push((member.clone(), number.as_f64().expect("a number"))),
            serde_json::Value::Array(list) => {
                found.extend(list.iter().filter_map(|item| Some((member.clone(), item.as_f64()?))));
            }
            _ => {}
        }
    }
    found
}

/// The numbers that a text can be said to hold after the documented normalisation, worked out without the
/// reader: wide digits made plain, letters that look like digits made digits, then every run of digits, with
/// one dot, comma, apostrophe or blank in it as a decimal point or parting thousands; each also a thousandfold
/// (GHz). Words for counts stand for their numbers.
fn numbers_in(text: &str) -> BTreeSet<i64> {
    let plain: Vec<char> = text
        .chars()
        .flat_map(char::to_lowercase)
        .map(|ch| match ch {
            '０'..='９' => char::from_digit(u32::from(ch) - u32::from('０'), 10).expect("a digit"),
            'o' | 'ｏ' | 'о' => '0',
            'l' | 'i' | 'ｌ' | 'ｉ' => '1',
            'z' | 'ｚ' => '2',
            's' | 'ｓ' => '5',
            'b' | 'ｂ' => '8',
            _ => ch,
        })
        .collect();
    let is_digit = |ch: &char| ch.is_ascii_digit();
    let mut held = BTreeSet::new();
    let mut hold = |value: f64| {
        for factor in [1.0, 1000.0] {
            #[expect(clippy::cast_possible_truncation, reason = "labels' numbers are small")]
            held.insert((value * factor * 1000.0).round() as i64);
        }
    };
    for start in 0..plain.len() {
        if !is_digit(&plain[start]) && !matches!(plain[start], '.' | '．') {
            continue;
        }
        for end in start + 1..=plain.len().min(start + 12) {
            let run: String = plain[start..end].iter().collect();
            let point = run.replace([',', '．', '，'], ".");
            if let Ok(value) = point.parse::<f64>() {
                hold(value);
            }
            let is_parting = |ch: char| !ch.is_ascii_digit();
            if run.chars().filter(|ch| is_parting(*ch)).count() <= 2 {
                let together: String = run.chars().filter(|ch| ch.is_ascii_digit()).collect();
                if run.starts_with(|ch: char| ch.is_ascii_digit())
                    && run.chars().filter(|ch| is_parting(*ch)).all(|ch| ch.is_whitespace() || ".,'’‘′．，".contains(ch) || !ch.is_alphanumeric() && !"-~/:;".contains(ch))
                {
                    if let Ok(value) = together.parse::<f64>() {
                        hold(value);
                    }
                }
            }
        }
    }
    for (word, count) in
        [("one", 1.0), ("single", 1.0), ("two", 2.0), ("three", 3.0), ("four", 4.0), ("five", 5.0), ("six", 6.0), ("eight", 8.0)]
    {
        if text.to_lowercase().contains(word) {
            hold(count);
        }
    }
    held
}

fn holds_all(text: &str) -> Result<(), TestCaseError> {
    let held = numbers_in(text);
    for (member, value) in numbers(&read(text)) {
        #[expect(clippy::cast_possible_truncation, reason = "labels' numbers are small")]
        let key = (value.abs() * 1000.0).round() as i64;
        prop_assert!(held.contains(&key), "{member} = {value} is not in {text:?}");
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
    (proptest::sample::select(GOOD), proptest::collection::vec(any::<(bool, bool)>(), 80), 0.02..0.9_f64, any::<u64>())
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

/// What must be equal of two readings whatever their doubts' wording: all but the doubts.
fn without_doubts(reading: &LabelReading) -> serde_json::Value {
    let mut json = reading.to_json();
    json.as_object_mut().expect("an object").remove("doubts");
    json
}

#[test]
fn good_labels_raise_no_doubt_about_numbers() {
    for label in GOOD {
        let reading = read(label);
        assert!(!reading.is_blank(), "{label}");
        let english = reading.doubts_in_english();
        let is_only_about_paths = english.iter().all(|sentence| sentence.contains("which way"));
        assert!(is_only_about_paths, "{label}: {english:?}");
    }
}

#[test]
fn the_check_of_numbers_can_fail() {
    assert!(numbers_in("5-1ooo MHz -7d8").contains(&1_000_000));
    assert!(!numbers_in("5-1000 MHz").contains(&7_000));
    assert!(!numbers_in("RL 18dB").contains(&16_000));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, ..ProptestConfig::default() })]

    #[test]
    fn any_text_is_read_without_panic_and_without_inventing(text in "\\PC{0,60}") {
        holds_all(&text)?;
        read(&text).json_line();
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
        let plain = without_doubts(&read(&text));
        prop_assert_eq!(&without_doubts(&read(&text.replace(' ', "   "))), &plain, "wider: {:?}", text);
        prop_assert_eq!(&without_doubts(&read(&format!("  {text} \t"))), &plain, "indented: {:?}", text);
        if text.is_ascii() {
            prop_assert_eq!(&without_doubts(&read(&text.to_uppercase())), &plain, "capitals: {:?}", text);
            prop_assert_eq!(&without_doubts(&read(&text.to_lowercase())), &plain, "small: {:?}", text);
        }
    }

    #[test]
    fn letters_for_digits_never_change_a_number_silently((label, changed) in misread_label()) {
        let good = read(label);
        let misread = read(&changed);
        let true_values = good.to_json();
        for (member, value) in misread.to_json().as_object().expect("an object") {
            let is_number = value.is_number() || value.is_array() && member != "doubts";
            if !is_number || value == &true_values[member.as_str()] {
                continue;
            }
            // One loss without its count of legs is the same loss, and its doubt says so.
            let repeated = member == "leg_losses_db"
                && true_values[member.as_str()].as_array().is_some_and(|all| {
                    let found = value.as_array().expect("a list");
                    found.len() == 1 && all.iter().all(|loss| Some(loss) == found.first())
                })
                && misread.doubts.iter().any(|doubt| doubt.message().0 == "label-doubt-legs-not-stated");
            prop_assert!(repeated, "{changed:?}: {member} = {value}, not {}", true_values[member.as_str()]);
        }
        let touches_a_number = numbers(&good) != numbers(&misread);
        prop_assert!(!touches_a_number || !misread.doubts.is_empty(), "{changed:?} lost a number without a doubt");
    }
}

#[test]
fn a_long_text_is_read_in_good_time() {
    for piece in ["5-", "1ooo", "-7dB ", "a.b.", "OUT1/2/3,", "1 000 ", "dB/", "ü", "1,1,1,1", "....", "5-1000MHz "] {
        let reading = read(&piece.repeat(100_000));
        assert!(reading.doubts.len() <= 25);
    }
}

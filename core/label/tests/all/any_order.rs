//! The law of order: a label's members, in whatever order and however parted, read the same; or something of them is
//! left out and a doubt says so. Never is another value read.
//!
//! The texts are invented, each as its members, a member being what stays together in print ("RETURN 5-42MHz"). What
//! each states was written from the text by hand.

use std::collections::BTreeMap;

use label::read;
use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};
use serde_json::{Value, json};

use crate::members::members;

/// What stands between two members; each text is tried with each throughout, and with a mixture.
const BETWEEN: [&str; 5] = [", ", " / ", "; ", " ", "\n"];
/// The most orders of a label that are tried with each separator.
const MOST_ORDERS: usize = 200;

/// A label: its members, and what it states.
struct Label {
    members: &'static [&'static str],
    states: Value,
}

const fn label(members: &'static [&'static str], states: Value) -> Label {
    Label { members, states }
}

#[expect(clippy::too_many_lines, reason = "a table")]
fn labels() -> Vec<Label> {
    let of = |members: &'static [&'static str], states: Value| label(members, states);
    vec![
        // Splitters.
        of(
            &["2-WAY", "5-1000MHz", "3.5dB"],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 3.5]}),
        ),
        of(
            &["2-WAY SPLITTER", "5-1675MHz", "-3.7dB", "MoCA 2.5"],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1675, "leg_losses_db": [3.7, 3.7], "says_moca": true}),
        ),
        of(
            &["3-WAY", "5-1002MHz", "3.5dB 7dB 7dB"],
            json!({"kind": "splitter", "legs": 3, "low_mhz": 5, "high_mhz": 1002, "leg_losses_db": [3.5, 7, 7]}),
        ),
        of(
            &["3-WAY", "5-1000MHz", "3.5dB, 7, 7"],
            json!({"kind": "splitter", "legs": 3, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 7, 7]}),
        ),
        of(
            &["3-WAY SPLITTER", "5-1000MHz", "3.5dB 7 7", "ISO 25dB"],
            json!({"kind": "splitter", "legs": 3, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 7, 7], "isolation_db": 25}),
        ),
        of(
            &["SPLITTER", "OUT1 3.5dB", "OUT2 7dB", "OUT3 7dB", "5-1002MHz"],
            json!({"kind": "splitter", "low_mhz": 5, "high_mhz": 1002, "leg_losses_db": [3.5, 7, 7]}),
        ),
        of(
            &["4-WAY SPLITTER", "5-1218MHz", "7.5dB", "ISO 25dB", "RL 18dB"],
            json!({"kind": "splitter", "legs": 4, "low_mhz": 5, "high_mhz": 1218, "leg_losses_db": [7.5, 7.5, 7.5, 7.5], "isolation_db": 25, "return_loss_db": 18}),
        ),
        of(
            &["8-WAY SPLITTER", "5-1002MHz", "11dB max", "25dB ISO", "18dB RL"],
            json!({"kind": "splitter", "legs": 8, "low_mhz": 5, "high_mhz": 1002, "leg_losses_db": [11, 11, 11, 11, 11, 11, 11, 11], "isolation_db": 25, "return_loss_db": 18}),
        ),
        of(
            &[
                "2-WAY SPLITTER",
                "5-1000MHz",
                "INSERTION LOSS 3.8dB",
                "ISOLATION 22dB",
                "RETURN LOSS 16dB",
                "EMI -120dB",
            ],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.8, 3.8], "isolation_db": 22, "return_loss_db": 16}),
        ),
        of(
            &["4-WAY", "5-1000MHz", "EMI -120dB", "7.5dB"],
            json!({"kind": "splitter", "legs": 4, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [7.5, 7.5, 7.5, 7.5]}),
        ),
        of(
            &["2-WAY SPLITTER", "5-1000MHz", "3.5dB", "SHIELDED"],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 3.5]}),
        ),
        of(
            &["2-WAY SPLITTER", "5-2400MHz", "DC PASS ALL PORTS", "4.2dB"],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 2400, "leg_losses_db": [4.2, 4.2], "power_pass": true, "power_pass_legs": "all"}),
        ),
        of(
            &["4-WAY SPLITTER", "5-2300MHz", "POWER PASS 1 PORT", "-8dB", "INDOOR USE ONLY"],
            json!({"kind": "splitter", "legs": 4, "low_mhz": 5, "high_mhz": 2300, "leg_losses_db": [8, 8, 8, 8], "power_pass": true, "power_pass_legs": "one", "indoor_only": true}),
        ),
        of(
            &["2-WAY SPLITTER", "5-1675MHz", "MoCA RATED", "NO POWER PASS"],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1675, "says_moca": true, "power_pass": false}),
        ),
        of(
            &["2 WAY SPLITTER", "MoCA", "5 to 1675 MHz", "3.5 dB"],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1675, "leg_losses_db": [3.5, 3.5], "says_moca": true}),
        ),
        of(
            &["4 WAY", "MoCA", "5~1218MHz", "3.5/7/7/10.5 dB"],
            json!({"kind": "splitter", "legs": 4, "low_mhz": 5, "high_mhz": 1218, "leg_losses_db": [3.5, 7, 7, 10.5], "says_moca": true}),
        ),
        of(
            &["2-WAY", "DC-1000MHz", "3.5dB", "DC BLOCKED"],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 0, "high_mhz": 1000, "leg_losses_db": [3.5, 3.5], "power_pass": false}),
        ),
        of(
            &["2-WAY", "DC-1000MHz", "3.5"],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 0, "high_mhz": 1000}),
        ),
        of(&["SPLITTER", "5-1000MHz", "3.5"], json!({"kind": "splitter", "low_mhz": 5, "high_mhz": 1000})),
        of(
            &["1x4 SPLITTER", "0.005-2.3 GHz", "7.5 dB", "isolation 22 dB", "75 OHM"],
            json!({"kind": "splitter", "legs": 4, "low_mhz": 5, "high_mhz": 2300, "leg_losses_db": [7.5, 7.5, 7.5, 7.5], "isolation_db": 22}),
        ),
        of(
            &["16-WAY SPLITTER", "5-1000MHz", "IL 14.5dB", "ISO 20dB", "RL 14dB", "6kV SURGE"],
            json!({"kind": "splitter", "legs": 16, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5], "isolation_db": 20, "return_loss_db": 14}),
        ),
        of(
            &["SATELLITE SPLITTER", "2-WAY", "950-2150MHz", "-4.5dB", "DC PASS ONE PORT"],
            json!({"kind": "satellite_splitter", "legs": 2, "low_mhz": 950, "high_mhz": 2150, "leg_losses_db": [4.5, 4.5], "power_pass": true, "power_pass_legs": "one"}),
        ),
        of(
            &["2-WAY SPLITTER", "LOSS 3.5dB 5-1000MHz", "LOSS 4.5dB 1000-1675MHz", "ISO 25dB"],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1675, "leg_losses_db": [3.5, 3.5], "isolation_db": 25}),
        ),
        of(
            &["6-WAY SPLITTER", "5-1000MHz", "OUT1/2 -7dB", "OUT3-6 -10.5dB"],
            json!({"kind": "splitter", "legs": 6, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [7, 7, 10.5, 10.5, 10.5, 10.5]}),
        ),
        of(
            &["2-WAY SPLITTER", "MODEL XQ-3G", "S/N 20417735", "5-1000MHz", "3.5dB"],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 3.5]}),
        ),
        of(
            &["2-WAY SPLITTER", "DOCSIS 3.1", "5-1218MHz", "3.5dB", "ISO 9001"],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1218, "leg_losses_db": [3.5, 3.5]}),
        ),
        of(
            &[
                "4-fach Verteiler",
                "5-1006 MHz",
                "Verteildämpfung 7,5 dB",
                "Entkopplung 22 dB",
                "Schirmungsmaß 110 dB",
            ],
            json!({"kind": "splitter", "legs": 4, "low_mhz": 5, "high_mhz": 1006, "leg_losses_db": [7.5, 7.5, 7.5, 7.5], "isolation_db": 22}),
        ),
        of(
            &["Répartiteur", "2 sorties", "5-2400 MHz", "perte 4 dB", "perte de retour 14 dB"],
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 2400, "leg_losses_db": [4, 4], "return_loss_db": 14}),
        ),
        // Taps and couplers.
        of(
            &["TAP -12dB", "THRU 1.1dB", "5-1002MHz"],
            json!({"kind": "tap", "low_mhz": 5, "high_mhz": 1002, "tap_db": 12, "leg_losses_db": [1.1]}),
        ),
        of(
            &["TAP", "5-1218 MHz", "TAP LOSS 9dB", "ISO 30dB", "THRU LOSS 1.5dB"],
            json!({"kind": "tap", "low_mhz": 5, "high_mhz": 1218, "tap_db": 9, "leg_losses_db": [1.5], "isolation_db": 30}),
        ),
        of(
            &["2-WAY TAP", "5-1218 MHz", "17 dB TAP"],
            json!({"kind": "tap", "legs": 2, "low_mhz": 5, "high_mhz": 1218, "tap_db": 17}),
        ),
        of(&["DC-9", "5-1000MHz"], json!({"kind": "tap", "low_mhz": 5, "high_mhz": 1000, "tap_db": 9})),
        of(
            &["DC-12dB", "5-1000MHz", "RL 18dB"],
            json!({"kind": "tap", "low_mhz": 5, "high_mhz": 1000, "tap_db": 12, "return_loss_db": 18}),
        ),
        of(
            &["DIRECTIONAL COUPLER", "5-1000MHz", "IN-OUT 1.5dB", "IN-TAP 9dB", "TAP-OUT ISO 28dB"],
            json!({"kind": "tap", "low_mhz": 5, "high_mhz": 1000, "tap_db": 9, "leg_losses_db": [1.5], "isolation_db": 28}),
        ),
        of(
            &["DIRECTIONAL COUPLER", "TAP 6dB", "5-1002MHz", "DIRECTIVITY 20dB"],
            json!({"kind": "tap", "low_mhz": 5, "high_mhz": 1002, "tap_db": 6}),
        ),
        // Amplifiers.
        of(
            &["AMPLIFIER", "15dB", "54-1002MHz", "RETURN 5-42MHz", "PASSIVE", "MoCA BYPASS"],
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "gain_db": 15, "return_low_mhz": 5, "return_high_mhz": 42, "moca_bypass": true}),
        ),
        of(
            &["AMPLIFIER", "15dB", "54-1002MHz", "RETURN 5-42MHz", "PASSIVE PORT"],
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "gain_db": 15, "return_low_mhz": 5, "return_high_mhz": 42, "modem_port": true}),
        ),
        of(
            &["AMPLIFIER", "15dB", "54-1002MHz", "PASSIVE RETURN"],
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "gain_db": 15}),
        ),
        of(
            &["AMPLIFIER", "FWD 54-1002MHz", "GAIN 15dB", "RET 5-42MHz 0dB"],
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "gain_db": 15, "return_low_mhz": 5, "return_high_mhz": 42, "return_gain_db": 0}),
        ),
        of(
            &["DROP AMP", "54-1218MHz", "GAIN 12dB", "RETURN GAIN 1dB", "NF 4dB"],
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1218, "gain_db": 12, "return_gain_db": 1}),
        ),
        of(
            &[
                "4 OUTPUTS AMPLIFIER",
                "+8dB 54-1002MHz",
                "RETURN PATH 5-42MHz -6dB",
                "MoCA BYPASS",
                "PASSIVE PORT",
            ],
            json!({"kind": "amplifier", "legs": 4, "low_mhz": 54, "high_mhz": 1002, "gain_db": 8, "return_low_mhz": 5, "return_high_mhz": 42, "return_gain_db": -6, "moca_bypass": true, "modem_port": true}),
        ),
        of(
            &["BOOSTER", "5-65/85-1006 MHz", "GAIN 20dB", "NOISE 5dB"],
            json!({"kind": "amplifier", "low_mhz": 85, "high_mhz": 1006, "gain_db": 20, "return_low_mhz": 5, "return_high_mhz": 65}),
        ),
        of(
            &["AMPLIFIER", "54-1002MHz", "15dB GAIN", "4dB NF", "12VDC 500mA"],
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "gain_db": 15}),
        ),
        of(
            &["AMPLIFIER", "SPLIT 85/105 MHz", "GAIN 12dB", "INPUT 100-240V 50/60Hz"],
            json!({"kind": "amplifier", "low_mhz": 105, "return_high_mhz": 85, "gain_db": 12}),
        ),
        of(
            &["Verstärker", "85-1006MHz", "Verstärkung 20dB", "Rückweg 5-65MHz"],
            json!({"kind": "amplifier", "low_mhz": 85, "high_mhz": 1006, "gain_db": 20, "return_low_mhz": 5, "return_high_mhz": 65}),
        ),
        of(
            &["VERSTAERKER", "20dB", "85-1006MHz", "RUECKKANAL 5-65MHz"],
            json!({"kind": "amplifier", "low_mhz": 85, "high_mhz": 1006, "gain_db": 20, "return_low_mhz": 5, "return_high_mhz": 65}),
        ),
        // A word that is not known beside the return path's band.
        of(&["AMPLIFIER", "20dB", "PALUUSUUNTA 5-65MHz"], json!({"kind": "amplifier", "gain_db": 20})),
        of(
            &["8 PORT AMPLIFIER", "GAIN 4dB", "54-1002MHz", "NO MoCA BYPASS"],
            json!({"kind": "amplifier", "legs": 8, "gain_db": 4, "low_mhz": 54, "high_mhz": 1002, "moca_bypass": false}),
        ),
        // Filters.
        of(
            &["MoCA FILTER", "PASS 5-1002MHz", "STOP 1125-1675MHz", "REJECTION 40dB"],
            json!({"kind": "entry_filter", "low_mhz": 5, "high_mhz": 1002, "stop_low_mhz": 1125, "stop_high_mhz": 1675, "rejection_db": 40}),
        ),
        of(
            &["MoCA FILTER", "5-1002MHz PASS", "1125-1675MHz STOP", "40dB"],
            json!({"kind": "entry_filter", "low_mhz": 5, "high_mhz": 1002, "stop_low_mhz": 1125, "stop_high_mhz": 1675, "rejection_db": 40}),
        ),
        of(
            &["POE FILTER", "5-1002 MHz", "INSERTION LOSS 0.8dB", "REJECTION 55dB", "RETURN LOSS 18dB"],
            json!({"kind": "entry_filter", "low_mhz": 5, "high_mhz": 1002, "leg_losses_db": [0.8], "rejection_db": 55, "return_loss_db": 18}),
        ),
        of(
            &["POE FILTER", "5-1002MHz", "40dB REJECTION 1125-1675MHz", "GROUND BLOCK"],
            json!({"kind": "entry_filter", "low_mhz": 5, "high_mhz": 1002, "stop_low_mhz": 1125, "stop_high_mhz": 1675, "rejection_db": 40}),
        ),
        of(
            &["HIGH PASS FILTER", "54-1002MHz", "STOP 5-42MHz", "REJECTION 40dB"],
            json!({"kind": "high_pass_filter", "low_mhz": 54, "high_mhz": 1002, "stop_low_mhz": 5, "stop_high_mhz": 42, "rejection_db": 40}),
        ),
        of(&["FILTER", "UNKNOWNWORD 1125-1675MHz", "40dB"], json!({})),
        // The rest.
        of(
            &["SAT/TV DIPLEXER", "SAT 950-2150MHz", "VHF/UHF 5-862MHz", "DC PASS SAT"],
            json!({"kind": "satellite_combiner", "low_mhz": 5, "high_mhz": 862, "satellite_low_mhz": 950, "satellite_high_mhz": 2150, "power_pass": true}),
        ),
        of(
            &["GROUND BLOCK", "5-3000MHz", "LOSS 0.2dB", "RETURN LOSS 20dB"],
            json!({"kind": "ground_block", "low_mhz": 5, "high_mhz": 3000, "leg_losses_db": [0.2], "return_loss_db": 20}),
        ),
        of(
            &["ATTENUATOR", "10dB", "DC-1000 MHz", "VSWR 1.2"],
            json!({"kind": "pad", "low_mhz": 0, "high_mhz": 1000, "leg_losses_db": [10]}),
        ),
        of(
            &["DC BLOCK", "5-2400MHz", "LOSS 0.3dB"],
            json!({"kind": "dc_block", "low_mhz": 5, "high_mhz": 2400, "leg_losses_db": [0.3], "power_pass": false}),
        ),
        of(
            &["POWER INSERTER", "5-2400MHz", "24V 1A"],
            json!({"kind": "power_inserter", "low_mhz": 5, "high_mhz": 2400}),
        ),
        of(&["CAP", "75 OHM", "DC-1000MHz"], json!({"kind": "terminator", "low_mhz": 0, "high_mhz": 1000})),
        of(
            &["WALL PLATE", "5-2400 MHz", "TAP 10dB", "THRU 1.5dB"],
            json!({"kind": "tap", "low_mhz": 5, "high_mhz": 2400, "tap_db": 10, "leg_losses_db": [1.5]}),
        ),
    ]
}

/// The orders of so many members: all, or some drawn with a fixed seed.
fn orders(members: usize) -> Vec<Vec<usize>> {
    let count: usize = (1..=members).product();
    let first: Vec<usize> = (0..members).collect();
    if count <= MOST_ORDERS {
        let mut all = vec![Vec::new()];
        for _ in 0..members {
            all = all
                .iter()
                .flat_map(|begun: &Vec<usize>| {
                    first
                        .iter()
                        .filter(|at| !begun.contains(at))
                        .map(|at| [begun.clone(), vec![*at]].concat())
                })
                .collect();
        }
        return all;
    }
    let mut dice = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let mut drawn = vec![first.clone()];
    while drawn.len() < MOST_ORDERS {
        let mut order = first.clone();
        for at in (1..members).rev() {
            order.swap(at, dice.next_u32() as usize % (at + 1));
        }
        drawn.push(order);
    }
    drawn
}

/// Equal, numbers by value (7 is 7.0).
fn same(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Number(a), Value::Number(b)) => a.as_f64() == b.as_f64(),
        (Value::Array(a), Value::Array(b)) => a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same(a, b)),
        _ => a == b,
    }
}

/// What is wrong with the reading of a text, if anything: a member that the label does not state so, or one left out
/// without a doubt.
fn wrong(text: &str, states: &Value, is_whole: &mut bool) -> Option<String> {
    let reading = read(text);
    *is_whole = true;
    for (name, value) in members(&reading) {
        let stated = states.get(&name).unwrap_or(&Value::Null);
        if same(&value, stated) {
            continue;
        }
        *is_whole = false;
        // Losses alike for all legs, but of how many is not read: the same loss, and its doubt says so.
        let (found, all) = (value.as_array(), stated.as_array());
        let is_once = found
            .zip(all)
            .is_some_and(|(found, all)| found.len() == 1 && all.iter().all(|loss| same(loss, &found[0])));
        if !value.is_null() && !is_once {
            return Some(format!("{name} is {value}, stated is {stated}"));
        }
        if reading.doubts.is_empty() {
            return Some(format!("{name} is left out without a doubt, stated is {stated}"));
        }
    }
    None
}

#[test]
fn the_order_of_members_and_what_parts_them_never_change_a_reading_silently() {
    let labels = labels();
    assert!(labels.len() >= 60, "{}", labels.len());
    let mut faults: BTreeMap<String, Vec<String>> = BTreeMap::new();
    let mut dice = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let (mut texts, mut whole) = (0_u32, 0_u32);
    for label in &labels {
        for order in orders(label.members.len()) {
            let members: Vec<&str> = order.iter().map(|at| label.members[*at]).collect();
            let mixed = members.iter().fold(String::new(), |text, member| {
                let between =
                    if text.is_empty() { "" } else { BETWEEN[dice.next_u32() as usize % BETWEEN.len()] };
                text + between + member
            });
            let alike = BETWEEN.map(|between| members.join(between));
            for text in alike.into_iter().chain([mixed]) {
                let mut is_whole = false;
                texts += 1;
                if let Some(fault) = wrong(&text, &label.states, &mut is_whole) {
                    faults.entry(label.members.join(" | ")).or_default().push(format!("{text:?}: {fault}"));
                }
                whole += u32::from(is_whole);
            }
        }
    }
    let count: usize = faults.values().map(Vec::len).sum();
    println!("{texts} texts of {} labels, {whole} read whole, {count} wrong", labels.len());
    let told: Vec<String> = faults
        .iter()
        .map(|(label, faults)| {
            format!("{label}: {}\n    {}", faults.len(), faults[..faults.len().min(4)].join("\n    "))
        })
        .collect();
    assert!(faults.is_empty(), "{count} of {texts}\n{}", told.join("\n"));
    // A reader that leaves all out would keep the law; this one reads most in any order.
    assert!(f64::from(whole) > 0.9 * f64::from(texts), "only {whole} of {texts} read whole");
}

/// As a person writes them, every label reads whole with commas.
#[test]
fn in_the_order_of_print_all_is_read() {
    for label in labels() {
        let text = label.members.join(", ");
        let mut is_whole = false;
        assert_eq!(wrong(&text, &label.states, &mut is_whole), None, "{text}");
        assert!(is_whole, "{text}: {:?}", read(&text));
    }
}

//! Labels in the ways they are really written, against what a person reads on them.
//!
//! Unless a source is named, the texts are invented; the expected values were written from the text by hand, not
//! copied from the reader's output. Members that a case does not name must be null.

use label::{Doubt, read};
use serde_json::{Value, json};

use crate::members::members;

/// A text, what it states, and the identifiers (without `label-doubt-`) of exactly the doubts it raises.
type Case = (&'static str, Value, &'static [&'static str]);

#[expect(clippy::expect_used, reason = "a failed test is what is wanted")]
fn check(cases: &[Case]) {
    let mut wrong = Vec::new();
    for (text, stated, doubts) in cases {
        let reading = read(text);
        let members = members(&reading);
        for named in stated.as_object().expect("an object").keys() {
            assert!(members.contains_key(named), "no member {named}");
        }
        for (member, value) in &members {
            let expected = stated.get(member).unwrap_or(&Value::Null);
            if !same(value, expected) {
                wrong.push(format!("{text:?}: {member} is {value}, expected {expected}"));
            }
        }
        let phrases: Vec<_> = reading.doubts.iter().map(|doubt| doubt.phrase().id).collect();
        let mut raised: Vec<&str> = phrases.iter().map(|id| id.trim_start_matches("label-doubt-")).collect();
        raised.sort_unstable();
        raised.dedup();
        let mut expected = doubts.to_vec();
        expected.sort_unstable();
        if raised != expected {
            wrong.push(format!("{text:?}: doubts {raised:?}, expected {expected:?}"));
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

/// Equal, numbers by value (7 is 7.0).
fn same(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Number(a), Value::Number(b)) => a.as_f64() == b.as_f64(),
        (Value::Array(a), Value::Array(b)) => a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same(a, b)),
        _ => a == b,
    }
}

#[test]
fn photographed_labels() {
    // Two labels photographed in the public repository N7Alpha/coaxial-cable-network: a 2-way part marked
    // "MoCA 2.5", 5-1675MHz, -3.7dB at each output; an unbalanced 3-way part with 3.7 / 7.3 / 7.3.
    check(&[
        (
            "2-WAY 5-1675MHz -3.7dB MoCA 2.5",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1675, "leg_losses_db": [3.7, 3.7],
                   "says_moca": true}),
            &[],
        ),
        (
            "3-WAY 5-1675MHz -3.7dB -7.3dB -7.3dB MoCA 2.5",
            json!({"kind": "splitter", "legs": 3, "low_mhz": 5, "high_mhz": 1675, "leg_losses_db": [3.7, 7.3, 7.3],
                   "says_moca": true}),
            &[],
        ),
    ]);
}

#[test]
#[expect(clippy::too_many_lines, reason = "a table")]
fn splitters() {
    check(&[
        (
            "2 WAY SPLITTER 5-2300MHz DC PASS ALL PORTS",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 2300, "power_pass": true,
                   "power_pass_legs": "all"}),
            &[],
        ),
        (
            "4-WAY SPLITTER\n5-1000 MHz\nIN\nOUT -7dB  OUT -7dB\nOUT -7dB  OUT -7dB",
            json!({"kind": "splitter", "legs": 4, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [7, 7, 7, 7]}),
            &[],
        ),
        (
            "8-WAY SPLITTER 5-1002MHz 11dB max",
            json!({"kind": "splitter", "legs": 8, "low_mhz": 5, "high_mhz": 1002,
                   "leg_losses_db": [11, 11, 11, 11, 11, 11, 11, 11]}),
            &[],
        ),
        (
            "3 WAY 5~1000MHz  OUT1: -3.5dB  OUT2: -7dB  OUT3: -7dB",
            json!({"kind": "splitter", "legs": 3, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 7, 7]}),
            &[],
        ),
        (
            "3-WAY BALANCED SPLITTER 5-1218MHz 5.5 dB ISO 25dB RL>18dB",
            json!({"kind": "splitter", "legs": 3, "low_mhz": 5, "high_mhz": 1218, "leg_losses_db": [5.5, 5.5, 5.5],
                   "isolation_db": 25, "return_loss_db": 18}),
            &[],
        ),
        (
            "SPLITTER 3-WAY\n5 – 1002 MHz\nOUT 1,2 −7 dB\nOUT 3 −3.5 dB",
            json!({"kind": "splitter", "legs": 3, "low_mhz": 5, "high_mhz": 1002, "leg_losses_db": [7, 7, 3.5]}),
            &[],
        ),
        (
            "3WAY SPLITTER 3.5/7/7dB 5MHz-1GHz",
            json!({"kind": "splitter", "legs": 3, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 7, 7]}),
            &[],
        ),
        (
            "1x4 Splitter 0.005-2.3 GHz Insertion loss: 7.5 dB, Isolation: 20 dB, EMI >120dB",
            json!({"kind": "splitter", "legs": 4, "low_mhz": 5, "high_mhz": 2300,
                   "leg_losses_db": [7.5, 7.5, 7.5, 7.5], "isolation_db": 20}),
            &[],
        ),
        (
            "HORIZONTAL SPLITTER 2-WAY 5...1006 MHz 3,5 dB 130 dB SHIELDING",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1006, "leg_losses_db": [3.5, 3.5]}),
            &[],
        ),
        (
            "2-way splitter, shielding 130 dB, 5 to 1000 MHz",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000}),
            &[],
        ),
        (
            "16-WAY SPLITTER 5-1000MHz IL 14.5dB max. ISO 20dB min. RL 14dB min. 6kV SURGE 75Ω",
            json!({"kind": "splitter", "legs": 16, "low_mhz": 5, "high_mhz": 1000,
                   "leg_losses_db": [14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5, 14.5,
                                     14.5, 14.5],
                   "isolation_db": 20, "return_loss_db": 14}),
            &[],
        ),
        (
            "TWO WAY SPLITTER 5-1002MHz 3.5dB OUT 25dB ISO 18dB RL",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1002, "leg_losses_db": [3.5, 3.5],
                   "isolation_db": 25, "return_loss_db": 18}),
            &[],
        ),
        (
            "MODEL XQ-3G  S/N 20417735  2-WAY SPLITTER  5-1000MHz  -3.5dB  INDOOR USE ONLY",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 3.5],
                   "indoor_only": true}),
            &[],
        ),
        (
            "H-2H-7-11 4-WAY 5-1000MHz -7dB POWER PASS 1 PORT",
            json!({"kind": "splitter", "legs": 4, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [7, 7, 7, 7],
                   "power_pass": true, "power_pass_legs": "one"}),
            &[],
        ),
        (
            "2-WAY SPLITTER 5-1675MHz MoCA RATED NO POWER PASS",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1675, "says_moca": true,
                   "power_pass": false}),
            &[],
        ),
        (
            "6-WAY SPLITTER 5-1000MHz OUT1-OUT2 -7dB OUT3-6 -10.5dB",
            json!({"kind": "splitter", "legs": 6, "low_mhz": 5, "high_mhz": 1000}),
            &["outputs-incomplete"],
        ),
        (
            "6-WAY SPLITTER 5-1000MHz OUT1/2 -7dB OUT3-6 -10.5dB",
            json!({"kind": "splitter", "legs": 6, "low_mhz": 5, "high_mhz": 1000,
                   "leg_losses_db": [7, 7, 10.5, 10.5, 10.5, 10.5]}),
            &[],
        ),
        (
            "4-fach Verteiler 5-1006 MHz Verteildämpfung 7,5 dB Entkopplung 22 dB Schirmungsmaß 110 dB",
            json!({"kind": "splitter", "legs": 4, "low_mhz": 5, "high_mhz": 1006,
                   "leg_losses_db": [7.5, 7.5, 7.5, 7.5], "isolation_db": 22}),
            &[],
        ),
        (
            "Répartiteur 2 sorties 5-2400 MHz perte 4 dB",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 2400, "leg_losses_db": [4, 4]}),
            &[],
        ),
        (
            "SATELLITE SPLITTER 2-WAY 950-2150MHz DC PASS ONE PORT",
            json!({"kind": "satellite_splitter", "legs": 2, "low_mhz": 950, "high_mhz": 2150, "power_pass": true,
                   "power_pass_legs": "one"}),
            &[],
        ),
        (
            "２−WAY　5〜1000㎒　−3.5㏈",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 3.5]}),
            &[],
        ),
        (
            "SPLITTER 1 IN 2 OUTPUTS; FREQ: 5-1002 MHZ; LOSS: <4.0DB; DC BLOCKED",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1002, "leg_losses_db": [4, 4],
                   "power_pass": false}),
            &[],
        ),
        (
            "SHIELDED SPLITTER 5-1002MHz LOSS 3.5dB 2-WAY SURGE 6kV PATENT NO. 5,123,456",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1002, "leg_losses_db": [3.5, 3.5]}),
            &[],
        ),
        (
            "2-WAY SPLITTER 5-1002MHz\nIN OUT OUT\n-3.5dB -3.5dB\nOUT-OUT 25dB",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1002, "leg_losses_db": [3.5, 3.5],
                   "isolation_db": 25}),
            &[],
        ),
        (
            "TERMINATE UNUSED PORTS 4-WAY SPLITTER 5-1218MHz 7dB -20~+60°C ISO 9001",
            json!({"kind": "splitter", "legs": 4, "low_mhz": 5, "high_mhz": 1218, "leg_losses_db": [7, 7, 7, 7]}),
            &[],
        ),
        (
            "ISO9001 2-WAY 5-1000MHz DOCSIS 3.1 -3.5dB",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 3.5]}),
            &[],
        ),
        (
            "LOSS (dB): 3.5 / 7.0 / 7.0   FREQ (MHz): 5-1002   3-WAY",
            json!({"kind": "splitter", "legs": 3, "low_mhz": 5, "high_mhz": 1002, "leg_losses_db": [3.5, 7, 7]}),
            &[],
        ),
    ]);
}

#[test]
#[expect(clippy::too_many_lines, reason = "a table")]
fn taps_amplifiers_and_filters() {
    check(&[
        (
            "TAP -12dB  THRU 1.1dB  5-1002MHz",
            json!({"kind": "tap", "low_mhz": 5, "high_mhz": 1002, "tap_db": 12, "leg_losses_db": [1.1]}),
            &[],
        ),
        (
            "2-WAY TAP 5-1218 MHz 17 dB TAP",
            json!({"kind": "tap", "legs": 2, "low_mhz": 5, "high_mhz": 1218, "tap_db": 17}),
            &[],
        ),
        (
            "DIRECTIONAL COUPLER DC-9dB 5-1000MHz",
            json!({"kind": "tap", "low_mhz": 5, "high_mhz": 1000, "tap_db": 9}),
            &[],
        ),
        (
            "DIRECTIONAL COUPLER 5-1000MHz IN-OUT 1.5dB IN-TAP 9dB TAP-OUT ISO 30dB",
            json!({"kind": "tap", "low_mhz": 5, "high_mhz": 1000, "tap_db": 9, "leg_losses_db": [1.5],
                   "isolation_db": 30}),
            &[],
        ),
        (
            "AMPLIFIER 54-1002 MHz 15dB, return 5-42 MHz",
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "gain_db": 15, "return_low_mhz": 5,
                   "return_high_mhz": 42}),
            &[],
        ),
        (
            "DROP AMP FWD 54-1002 GAIN 15dB RET 5-42 0dB",
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "gain_db": 15, "return_low_mhz": 5,
                   "return_high_mhz": 42, "return_gain_db": 0}),
            &["band-without-unit"],
        ),
        (
            "4 OUTPUTS AMPLIFIER +8dB 54-1002MHz, RETURN PATH 5-42MHz -6dB, MoCA BYPASS, PASSIVE PORT",
            json!({"kind": "amplifier", "legs": 4, "low_mhz": 54, "high_mhz": 1002, "gain_db": 8,
                   "return_low_mhz": 5, "return_high_mhz": 42, "return_gain_db": -6, "moca_bypass": true,
                   "modem_port": true}),
            &[],
        ),
        (
            "AMPLIFIER\nFORWARD 105-1218 MHz GAIN 10 dB NOISE FIGURE 4 dB\nRETURN 5-85 MHz GAIN 1 dB\n12VDC 500mA",
            json!({"kind": "amplifier", "low_mhz": 105, "high_mhz": 1218, "gain_db": 10, "return_low_mhz": 5,
                   "return_high_mhz": 85, "return_gain_db": 1}),
            &[],
        ),
        (
            "54-1002 MHz 15dB, return 5-42 MHz",
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "gain_db": 15, "return_low_mhz": 5,
                   "return_high_mhz": 42}),
            &["kind-from-bands"],
        ),
        (
            "HOUSE AMPLIFIER 1 IN 8 OUT 54-1002MHz +4dB/PORT RETURN 5-42MHz -8dB UNAMPLIFIED PORT -3.5dB",
            json!({"kind": "amplifier", "legs": 8, "low_mhz": 54, "high_mhz": 1002, "gain_db": 4,
                   "return_low_mhz": 5, "return_high_mhz": 42, "return_gain_db": -8, "modem_port": true}),
            &[],
        ),
        (
            "BOOSTER 5-65/85-1006 MHz GAIN 20dB",
            json!({"kind": "amplifier", "low_mhz": 85, "high_mhz": 1006, "gain_db": 20, "return_low_mhz": 5,
                   "return_high_mhz": 65}),
            &["paths-assumed"],
        ),
        (
            "AMPLIFIER 54-1002MHz, RETURN 5-42MHz, GAIN 15dB",
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "gain_db": 15, "return_low_mhz": 5,
                   "return_high_mhz": 42}),
            &["figure-assumed"],
        ),
        (
            "AMPLIFIER SPLIT 85/105 MHz GAIN 12dB INPUT 100-240V 50/60Hz",
            json!({"kind": "amplifier", "low_mhz": 105, "return_high_mhz": 85, "gain_db": 12}),
            &[],
        ),
        (
            "PASS 5-1002MHz STOP 1125-1675MHz 40dB MoCA FILTER",
            json!({"kind": "entry_filter", "low_mhz": 5, "high_mhz": 1002, "stop_low_mhz": 1125,
                   "stop_high_mhz": 1675, "rejection_db": 40}),
            &[],
        ),
        ("P.O.E. FILTER 5-1002 MHz", json!({"kind": "entry_filter", "low_mhz": 5, "high_mhz": 1002}), &[]),
        (
            "MoCA FILTER\nPASSBAND 5-1002MHz\nINSERTION LOSS 0.7dB\nSTOPBAND 1125-1675MHz\nREJECTION 70dB\nRETURN LOSS 18dB",
            json!({"kind": "entry_filter", "low_mhz": 5, "high_mhz": 1002, "stop_low_mhz": 1125,
                   "stop_high_mhz": 1675, "rejection_db": 70, "return_loss_db": 18, "leg_losses_db": [0.7]}),
            &[],
        ),
        (
            "POINT OF ENTRY FILTER 40dB REJECTION 1125-1675MHz GROUND BLOCK",
            json!({"kind": "entry_filter", "stop_low_mhz": 1125, "stop_high_mhz": 1675, "rejection_db": 40}),
            &[],
        ),
        (
            "5-1002MHz PASS / 1125-1675MHz STOP >40dB",
            json!({"kind": "entry_filter", "low_mhz": 5, "high_mhz": 1002, "stop_low_mhz": 1125,
                   "stop_high_mhz": 1675, "rejection_db": 40}),
            &["kind-from-bands"],
        ),
        (
            "HIGH PASS FILTER 54-1002MHz STOP 5-42MHz 40dB",
            json!({"kind": "high_pass_filter", "low_mhz": 54, "high_mhz": 1002, "stop_low_mhz": 5,
                   "stop_high_mhz": 42, "rejection_db": 40}),
            &[],
        ),
        ("HPF 54MHz", json!({"kind": "high_pass_filter", "low_mhz": 54}), &["lower-edge-alone"]),
        ("LOW-PASS FILTER DC-1002MHz", json!({"kind": "entry_filter", "low_mhz": 0, "high_mhz": 1002}), &[]),
    ]);
}

#[test]
fn other_parts() {
    check(&[
        (
            "GROUND BLOCK 5-3000MHz 0.2dB",
            json!({"kind": "ground_block", "low_mhz": 5, "high_mhz": 3000,
            "leg_losses_db": [0.2]}),
            &["figure-assumed"],
        ),
        ("GROUNDING BLOCK DC-3GHz", json!({"kind": "ground_block", "low_mhz": 0, "high_mhz": 3000}), &[]),
        (
            "ATTENUATOR 6dB DC-1GHz",
            json!({"kind": "pad", "low_mhz": 0, "high_mhz": 1000, "leg_losses_db": [6]}),
            &[],
        ),
        ("ISDB-T WALL PLATE 5-1000 MHz", json!({"kind": "wall_plate", "low_mhz": 5, "high_mhz": 1000}), &[]),
        (
            "FAM-10 10 dB PAD 5-1002 MHz",
            json!({"kind": "pad", "low_mhz": 5, "high_mhz": 1002,
            "leg_losses_db": [10]}),
            &[],
        ),
        ("75 OHM TERMINATOR DC BLOCKED", json!({"kind": "terminator", "power_pass": false}), &[]),
        ("F-TYPE TERMINATOR 75Ω 1W", json!({"kind": "terminator"}), &[]),
        (
            "SAT/TV DIPLEXER\nSAT 950-2150MHz\nVHF/UHF 5-862MHz\nDC PASS SAT",
            json!({"kind": "satellite_combiner",
            "low_mhz": 5, "high_mhz": 862, "satellite_low_mhz": 950, "satellite_high_mhz": 2150,
            "power_pass": true}),
            &[],
        ),
        ("WALL PLATE 5-2400 MHz", json!({"kind": "wall_plate", "low_mhz": 5, "high_mhz": 2400}), &[]),
        ("BARREL 3 GHz", json!({"kind": "barrel", "high_mhz": 3000}), &["upper-edge-alone"]),
        ("RG-6/U 18 AWG 75C CATVR COAXIAL CABLE 001234 FT", json!({"kind": "cable", "cable": "6"}), &[]),
        ("SERIES 11 COAX 14AWG 6.5dB/100ft", json!({"kind": "cable", "cable": "11"}), &[]),
        ("MADE FOR INDOOR USE ONLY", json!({"indoor_only": true}), &[]),
    ]);
}

#[test]
#[expect(clippy::too_many_lines, reason = "a table")]
fn read_with_a_doubt() {
    check(&[
        (
            "5-1ooo MHz -7d8",
            json!({"low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [7]}),
            &["letters-for-digits", "unit-misread", "legs-not-stated"],
        ),
        (
            "2-WAY SPLITTER 5-1000",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000}),
            &["band-without-unit"],
        ),
        (
            "3-WAY SPLITTER 5-1000MHz -3.5 -7 -7",
            json!({"kind": "splitter", "legs": 3, "low_mhz": 5,
            "high_mhz": 1000, "leg_losses_db": [3.5, 7, 7]}),
            &["decibels-without-unit"],
        ),
        (
            "SPLITTER OUT1 3.5 OUT2/3 7 5-1000MHz",
            json!({"kind": "splitter", "low_mhz": 5, "high_mhz": 1000,
            "leg_losses_db": [3.5, 7, 7]}),
            &["decibels-without-unit"],
        ),
        (
            "2-WAY 5-2.3GHz",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 2300}),
            &["band-units-mixed"],
        ),
        (
            "2-WAY 5-1.000 MHz -3.5dB",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000,
            "leg_losses_db": [3.5, 3.5]}),
            &["thousands"],
        ),
        (
            "2-WAY 5-1,218MHz",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1218}),
            &["thousands"],
        ),
        (
            "2-WAY 5 - 1 000 MHz",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000}),
            &["thousands"],
        ),
        (
            "2-WAY 5-1080MHz -3.5dB",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1080,
            "leg_losses_db": [3.5, 3.5]}),
            &["edge-unusual"],
        ),
        (
            "2-WAY SPLITTER 5-1000MHz -9dB",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000,
            "leg_losses_db": [9, 9]}),
            &["loss-unusual"],
        ),
        (
            "1GHz 4-WAY SPLITTER",
            json!({"kind": "splitter", "legs": 4, "high_mhz": 1000}),
            &["upper-edge-alone"],
        ),
        (
            "3-WAY 5-1000MHz 3.5/7dB",
            json!({"kind": "splitter", "legs": 3, "low_mhz": 5, "high_mhz": 1000,
            "leg_losses_db": [3.5, 7, 7]}),
            &["unbalanced-assumed"],
        ),
        (
            "2-WAY 5-1000MHz 3.5dB 1000-1675MHz 4.5dB",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5,
            "high_mhz": 1675, "leg_losses_db": [3.5, 3.5]}),
            &["bands-joined", "loss-by-band"],
        ),
        (
            "2-WAY SPLITTER 5-1000MHz 3.5dB typ 4.2dB max",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5,
            "high_mhz": 1000, "leg_losses_db": [4.2, 4.2]}),
            &["guaranteed-taken"],
        ),
        (
            "TAP 5-1000MHz ISO 5dB",
            json!({"kind": "tap", "low_mhz": 5, "high_mhz": 1000, "isolation_db": 5}),
            &["figure-unusual"],
        ),
        (
            "8 PORT AMPLIFIER GAIN 4dB",
            json!({"kind": "amplifier", "legs": 8, "gain_db": 4}),
            &["ports-as-outputs"],
        ),
        (
            "SPLITTER 5-1000MHz -7dB",
            json!({"kind": "splitter", "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [7]}),
            &["legs-not-stated"],
        ),
        (
            "2-WAY SPLITTER S5-1000MHz",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 55, "high_mhz": 1000}),
            &["letters-for-digits"],
        ),
        (
            "2-WAY SPLITTER 5-1000MHz 3.5dB (5-500) 4.0dB (500-1000)",
            json!({"kind": "splitter", "legs": 2,
            "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 3.5]}),
            &["loss-by-band"],
        ),
        ("GROUND BLOCK WALL PLATE", json!({"kind": "wall_plate"}), &[]),
        ("WALL PLATE TAP 10dB", json!({"kind": "tap", "tap_db": 10}), &["kind-unclear"]),
    ]);
}

#[test]
fn left_out_with_a_doubt() {
    check(&[
        ("", json!({}), &["nothing-read"]),
        ("?!", json!({}), &["nothing-read"]),
        ("1000-5 MHz", json!({}), &["band-backwards"]),
        ("2-WAY SPLITTER S-1000MHz", json!({"kind": "splitter", "legs": 2}), &["unreadable"]),
        (
            "2-WAY SPLITTER 5-loooMHz -3.5dB",
            json!({"kind": "splitter", "legs": 2, "leg_losses_db": [3.5, 3.5]}),
            &["unreadable"],
        ),
        ("2-WAY SPLITTER 5-1q00MHz", json!({"kind": "splitter", "legs": 2}), &["unreadable"]),
        (
            "2-WAY SPLITTER 5-1000MHz -lldB",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000}),
            &["unreadable"],
        ),
        (
            "3-WAY -3.5dB -7dB -?dB",
            json!({"kind": "splitter", "legs": 3, "leg_losses_db": [3.5, 7, 7]}),
            &["unbalanced-assumed"],
        ),
        ("4-WAY SPLITTER -3.5dB -7dB -7dB", json!({"kind": "splitter", "legs": 4}), &["legs-disagree"]),
        ("2-WAY SPLITTER 5-1000MHz 950-2300MHz", json!({"kind": "splitter", "legs": 2}), &["bands-unclear"]),
        ("2-WAY SPLITTER 3 5dB", json!({"kind": "splitter", "legs": 2}), &["unreadable"]),
        ("2-WAY SPLITTER -3. 5dB", json!({"kind": "splitter", "legs": 2}), &["unreadable"]),
        ("2-WAY SPLITTER 5-10 00MHz", json!({"kind": "splitter", "legs": 2}), &["frequency-unplaced"]),
        ("2-WAY SPLITTER 3-5-1000MHz", json!({"kind": "splitter", "legs": 2}), &["unreadable"]),
        ("2-WAY SPLITTER LOSS 3.5-4.5dB", json!({"kind": "splitter", "legs": 2}), &["decibel-range"]),
        ("2-WAY SPLITTER 130dB", json!({"kind": "splitter", "legs": 2}), &["figure-unplaced"]),
        ("2-WAY SPLITTER ISO 25dB ISO 20dB", json!({"kind": "splitter", "legs": 2}), &["two-figures"]),
        (
            "B-WAY SPLITTER 11dB",
            json!({"kind": "splitter", "leg_losses_db": [11]}),
            &["unreadable", "legs-not-stated"],
        ),
        (
            "2-WAY 4-WAY SPLITTER -7dB",
            json!({"kind": "splitter", "leg_losses_db": [7]}),
            &["leg-counts-differ", "legs-not-stated"],
        ),
        ("2-WAY SPLITTER 5-2.36Hz", json!({"kind": "splitter", "legs": 2}), &["unreadable"]),
        ("AMPLIFIER GAIN 10-20dB", json!({"kind": "amplifier"}), &["decibel-range"]),
        ("SPLITTER OUT1 -3.5dB OUT3 -7dB", json!({"kind": "splitter"}), &["outputs-incomplete"]),
        ("25dB", json!({}), &["figure-unplaced"]),
        ("1000MHz", json!({}), &["frequency-unplaced"]),
        ("DC PASS  NO DC PASS  2-WAY", json!({"kind": "splitter", "legs": 2}), &["power-pass-unclear"]),
        ("S/N 5-1000 SPLITTER", json!({"kind": "splitter"}), &[]),
        ("XB-5-1000 SPLITTER", json!({"kind": "splitter"}), &[]),
    ]);
}

#[test]
fn a_very_long_text_is_read_from_its_beginning() {
    let text = format!("2-WAY SPLITTER 5-1000MHz {} -3.5dB", "ä ".repeat(4000));
    let reading = read(&text);
    assert_eq!(reading.high.map(coax::Megahertz::value), Some(1000.0));
    assert!(reading.leg_losses.is_empty());
    assert_eq!(reading.doubts, [Doubt::Truncated { bytes: 1024 }]);
}

/// A word for shielding stands before its figure, behind it, or alone: no loss beside it may go unread and untold.
#[test]
fn shielding_takes_no_loss_with_it() {
    let two_way = || json!({"kind": "splitter", "legs": 2, "leg_losses_db": [3.5, 3.5]});
    let filter = || json!({"kind": "entry_filter", "rejection_db": 70});
    check(&[
        ("SHIELDING 130dB 3,5 dB 2 WAY SPLITTER", two_way(), &[]),
        ("SCREENING 110 dB -3.5 dB 2-WAY SPLITTER", two_way(), &[]),
        ("2-WAY SPLITTER SHIELDED 3.5dB", two_way(), &[]),
        ("2-WAY SPLITTER 3.5dB SHIELDED", two_way(), &[]),
        ("2-WAY SPLITTER 3.5 dB, FULLY SCREENED", two_way(), &[]),
        ("SHIELDED 3.5dB LOSS 2-WAY SPLITTER", two_way(), &[]),
        ("EMI 120dB 110dB 2-WAY SPLITTER IL 3.5dB", two_way(), &[]),
        (
            "SHIELDED 3.5dB ISO 25dB 2-WAY SPLITTER",
            json!({"kind": "splitter", "legs": 2, "leg_losses_db": [3.5, 3.5], "isolation_db": 25}),
            &[],
        ),
        (
            "3.5dB SHIELDED ISO 25dB 2-WAY SPLITTER",
            json!({"kind": "splitter", "legs": 2, "leg_losses_db": [3.5, 3.5], "isolation_db": 25}),
            &[],
        ),
        ("MOCA FILTER SHIELDED 70dB REJECTION", filter(), &[]),
        // Neither a splitter's loss nor what a shield gives.
        (
            "SHIELDING 130dB 30 dB 2 WAY SPLITTER",
            json!({"kind": "splitter", "legs": 2}),
            &["figure-unplaced"],
        ),
        // The noise takes one figure; what the other is, no word says.
        ("AMPLIFIER NF 4dB 12dB", json!({"kind": "amplifier"}), &["figure-unplaced"]),
    ]);
}

/// No comma parts these members; the words between do not take what is another's.
#[test]
fn an_amplifier_keeps_its_band_and_its_gain_without_commas() {
    let amplifier = || {
        json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "gain_db": 15, "return_low_mhz": 5,
               "return_high_mhz": 42})
    };
    let with = |member: &str| {
        let mut stated = amplifier();
        stated[member] = json!(true);
        stated
    };
    check(&[
        (
            "AMPLIFIER 15dB 54-1002MHz RETURN 5-42MHz PASSIVE MoCA BYPASS",
            with("moca_bypass"),
            &["passive-unclear"],
        ),
        (
            "AMPLIFIER, 15dB, 54-1002MHz, RETURN 5-42MHz, PASSIVE, MoCA BYPASS",
            with("moca_bypass"),
            &["passive-unclear"],
        ),
        ("AMPLIFIER 15dB 54-1002MHz RETURN 5-42MHz PASSIVE PORT", with("modem_port"), &[]),
        (
            "AMPLIFIER 15dB 54-1002MHz PASSIVE RETURN",
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "gain_db": 15}),
            &[],
        ),
        // Behind the return path's band it may be the gain of either way.
        (
            "AMPLIFIER 54-1002MHz RETURN 5-42MHz 15dB",
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "return_low_mhz": 5, "return_high_mhz": 42}),
            &["figure-unplaced"],
        ),
        // Behind the word for a port without amplifier it may be that port's loss, or the gain.
        (
            "AMPLIFIER 54-1002MHz PASSIVE PORT 4dB",
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002, "modem_port": true}),
            &["figure-unplaced"],
        ),
    ]);
}

#[test]
fn what_has_no_unit_is_read_with_a_reason_or_told() {
    let two_way = || json!({"kind": "splitter", "legs": 2, "low_mhz": 0, "high_mhz": 1000});
    check(&[
        ("DC-9", json!({"kind": "tap", "tap_db": 9}), &["decibels-without-unit"]),
        (
            "DC-9 5-1000MHz",
            json!({"kind": "tap", "low_mhz": 5, "high_mhz": 1000, "tap_db": 9}),
            &["decibels-without-unit"],
        ),
        // Volts, and a band.
        ("DC-12V", json!({}), &["nothing-read"]),
        ("2-WAY DC-1000", two_way(), &["band-without-unit"]),
        (
            "3-WAY 5-1000MHz 3.5dB 7 7",
            json!({"kind": "splitter", "legs": 3, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 7, 7]}),
            &["decibels-without-unit"],
        ),
        ("OUT 3.5dB, 7, 7", json!({"leg_losses_db": [3.5, 7, 7]}), &["decibels-without-unit"]),
        // No list: it counts by what stands behind it, is a band's edge, or makes no splitter's losses.
        ("3.5dB, 2 OUTPUTS", json!({"kind": "splitter", "legs": 2, "leg_losses_db": [3.5, 3.5]}), &[]),
        (
            "2-WAY 3.5dB 5-1000MHz",
            json!({"kind": "splitter", "legs": 2, "low_mhz": 5, "high_mhz": 1000, "leg_losses_db": [3.5, 3.5]}),
            &[],
        ),
        (
            "2-WAY SPLITTER 3.5dB 12",
            json!({"kind": "splitter", "legs": 2, "leg_losses_db": [3.5, 3.5]}),
            &["figure-unplaced"],
        ),
        ("2-WAY DC-1000MHz 3.5", two_way(), &["figure-unplaced"]),
        (
            "SPLITTER 5-1000MHz 3.5",
            json!({"kind": "splitter", "low_mhz": 5, "high_mhz": 1000}),
            &["figure-unplaced"],
        ),
        (
            "AMPLIFIER 15 54-1002MHz",
            json!({"kind": "amplifier", "low_mhz": 54, "high_mhz": 1002}),
            &["figure-unplaced"],
        ),
        // Its own word's, a date's.
        ("2-WAY DOCSIS 3.1 DC-1000MHz", two_way(), &[]),
        ("2-WAY VERSION 2.1 DC-1000MHz MADE 05/19", two_way(), &[]),
    ]);
}

#[test]
fn a_band_beside_a_word_of_another_language_is_not_the_parts_own() {
    check(&[
        (
            "VERSTAERKER 20dB 85-1006MHz RUECKKANAL 5-65MHz",
            json!({"kind": "amplifier", "low_mhz": 85, "high_mhz": 1006, "gain_db": 20, "return_low_mhz": 5,
                   "return_high_mhz": 65}),
            &[],
        ),
        (
            "AMPLIFIER 20dB 85-1006MHz PALUUSUUNTA 5-65MHz",
            json!({"kind": "amplifier", "low_mhz": 85, "high_mhz": 1006, "gain_db": 20, "return_low_mhz": 5,
                   "return_high_mhz": 65}),
            &["paths-assumed"],
        ),
        (
            "AMPLIFIER 20dB PALUUSUUNTA 5-65MHz",
            json!({"kind": "amplifier", "gain_db": 20}),
            &["frequency-unplaced"],
        ),
        (
            "AMPLIFIER 20dB PALUUSUUNTA 5-684MHz",
            json!({"kind": "amplifier", "gain_db": 20}),
            &["frequency-unplaced"],
        ),
        ("SPLITTER 5-65MHz", json!({"kind": "splitter"}), &["frequency-unplaced"]),
        ("FILTER ESTOALUE 1125-1675MHz", json!({}), &["frequency-unplaced"]),
        // As near as can be, and a part's own.
        ("SPLITTER HAARUKKA 5-1000MHz", json!({"kind": "splitter", "low_mhz": 5, "high_mhz": 1000}), &[]),
        ("LPF 5-42MHz", json!({"kind": "entry_filter", "low_mhz": 5, "high_mhz": 42}), &[]),
        // Either may be what passes.
        ("5-1002MHz PASS 1125-1675MHz", json!({}), &["bands-unclear"]),
    ]);
}

#[test]
fn a_dc_block_an_inserter_and_a_cap_are_kinds() {
    check(&[
        (
            "DC BLOCK 5-2400MHz",
            json!({"kind": "dc_block", "low_mhz": 5, "high_mhz": 2400, "power_pass": false}),
            &[],
        ),
        ("2-WAY SPLITTER DC BLOCK", json!({"kind": "splitter", "legs": 2, "power_pass": false}), &[]),
        ("DC BLOCKED", json!({"power_pass": false}), &[]),
        ("POWER INSERTER 5-2400MHz", json!({"kind": "power_inserter", "low_mhz": 5, "high_mhz": 2400}), &[]),
        ("AMPLIFIER WITH POWER INSERTER", json!({"kind": "amplifier"}), &[]),
        ("CAP 75 OHM", json!({"kind": "terminator"}), &[]),
        // Of those that pass power, or of all: the count is told.
        ("POWER PASS 4 OUTPUTS AMPLIFIER", json!({"kind": "amplifier", "power_pass": true}), &["unreadable"]),
    ]);
}

/// A shielding figure before the loss or behind it, with its minus or without.
#[test]
fn a_shielding_figure_beside_a_loss_is_not_a_loss() {
    let four_way = || json!({"kind": "splitter", "legs": 4, "leg_losses_db": [7.5, 7.5, 7.5, 7.5]});
    check(&[
        ("4-WAY EMI -120dB 7.5dB", four_way(), &[]),
        ("4-WAY 7.5dB EMI -120dB", four_way(), &[]),
        ("EMI 120dB 4-WAY -7.5dB", four_way(), &[]),
        ("4-WAY -7.5dB 120dB EMI", four_way(), &[]),
    ]);
}

#[test]
fn more_losses_than_any_splitter_has_legs_are_not_one_a_leg() {
    // 32 is the most that the reader takes for a count of outputs anywhere.
    let reading = read(&"-3.5dB -7dB ".repeat(16));
    assert_eq!(reading.leg_losses.len(), 32);
    let reading = read(&"-3.5dB -7dB ".repeat(17));
    assert!(reading.leg_losses.is_empty());
    assert!(
        reading.doubts.contains(&Doubt::FigureUnplaced { written: "-3.5dB".into() }),
        "{:?}",
        reading.doubts
    );
}

/// What is known of the part tells what a loss on it is; what the text itself says goes before.
#[test]
fn a_loss_on_a_splitter_that_is_known_to_be_one_is_that_to_each_output() {
    let losses = |text: &str, outputs| -> Vec<f64> {
        label::read_on_splitter(text, outputs).leg_losses.iter().map(|loss| loss.value()).collect()
    };
    assert_eq!(losses("5-1675MHz 7.4dB", 4), [7.4; 4]);
    assert_eq!(label::read_on_splitter("5-1675MHz 7.4dB", 4).doubts, []);
    assert!(losses("5-1675MHz 7.4dB", 0).is_empty());
    assert_eq!(losses("2-WAY 5-1675MHz 3.7dB", 4), [3.7; 2]);
    assert_eq!(label::read_on_splitter("5-1675MHz 7.4dB", 0), label::read("5-1675MHz 7.4dB"));
}

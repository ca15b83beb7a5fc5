//! Bits on a subcarrier.

use coax::link::{bits, snr_for_bits};
use coax::{Decibels, Version};

use super::check::{Check, check};

const GAP: &str =
    "derived: on-line telecom book, The Gap Approximation, clause 5.8, eq. 5.18: 10 log10(2^b - 1)";
const CONVENTION: &str =
    "derived: gap approximation with the uncoded gap of 9.8 dB (DSL textbooks, from memory)";
const TESTER: &str = "from memory: a field test set's user manual, MoCA functional overview";

/// Shannon's row: 10 log10(2^b - 1), b = 1 to 12, printed to 0.01 dB (derived from on-line telecom book "The Gap Approximation",
/// clause 5.8, eq. 5.18).
const SHANNON: [f64; 12] = [0.00, 4.77, 8.45, 11.76, 14.91, 17.99, 21.04, 24.07, 27.08, 30.10, 33.11, 36.12];
/// The same with the conventional uncoded gap of 9.8 dB for a symbol error rate of 1e-7 (DSL textbooks, from memory).
const UNCODED: [f64; 12] =
    [9.80, 14.57, 18.25, 21.56, 24.71, 27.79, 30.84, 33.87, 36.88, 39.90, 42.91, 45.92];

#[test]
fn signal_to_noise_ratio_for_each_number_of_bits() {
    for (b, (shannon, uncoded)) in (1..).zip(SHANNON.into_iter().zip(UNCODED)) {
        let at = |gap| snr_for_bits(b, Decibels(gap)).value();
        check(GAP, &format!("signal to noise for {b} bits, dB"), shannon, 0.0051, at(0.0));
        check(CONVENTION, &format!("signal to noise for {b} bits, dB"), uncoded, 0.0051, at(9.8));
    }
}

#[test]
fn bits_step_where_the_table_says() {
    for (row, gap) in [(SHANNON, 0.0), (UNCODED, 9.8)] {
        for (b, threshold) in (1..).zip(row) {
            let at = |snr: f64| bits(Decibels(snr).power(), Decibels(gap).power(), 12);
            assert_eq!(at(threshold + 0.006), b);
            assert_eq!(at(threshold - 0.006), b - 1);
        }
    }
    let most = |version: Version| f64::from(bits(1e12, 1.0, version.most_bits().value));
    Check::Copied.about(TESTER, "most bits of 1.x (256-QAM)", 8.0, 0.0, most(Version::V1_1));
    Check::Copied.about(TESTER, "most bits of 2.x (1024-QAM)", 10.0, 0.0, most(Version::V2_5));
    assert_eq!(bits(0.0, 1.0, 10), 0);
}

//! What two looks at a photo saw, and what is sure of it.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use coax::{Decibels, Megahertz};
use label::seen::{
    JacketLength, LengthUnsure, Member, NoLength, SeenLine, SeenNumber, SeenRow, SeenUnit, Suggestion,
    Unsure, suggest,
};
use proptest::prelude::*;

const CLEAR: f32 = 0.999;

fn line(text: &str) -> SeenLine {
    SeenLine { letters: text.chars().map(|sign| (sign, CLEAR)).collect(), is_cut: (false, false) }
}

fn seen(coarse: &str, fine: &str) -> SeenRow {
    SeenRow { looks: [Some(line(coarse)), Some(line(fine))] }
}

fn both(text: &str) -> SeenRow {
    seen(text, text)
}

pub fn label(rows: &[&str]) -> Suggestion {
    suggest(&rows.iter().map(|row| both(row)).collect::<Vec<_>>())
}

/// The number of that value.
pub fn number(suggestion: &Suggestion, value: f64) -> &SeenNumber {
    suggestion.numbers.iter().find(|number| (number.value - value).abs() < 1e-9).expect("the number was seen")
}

fn is_sure(suggestion: &Suggestion, member: Member) -> bool {
    suggestion.members.iter().find(|seen| seen.member == member).expect("the member was read").is_sure()
}

#[test]
fn a_clear_label_is_sure_in_all_it_states() {
    let seen = label(&["4-WAY SPLITTER", "BAND 5-1002 MHz", "OUT -7.2dB", "ISO 25dB"]);
    let unsure: Vec<_> = seen.members.iter().filter(|seen| !seen.is_sure()).collect();
    assert!(unsure.is_empty(), "{unsure:?}");
    let sure = seen.sure();
    assert_eq!((sure.low, sure.high), (Some(Megahertz(5.0)), Some(Megahertz(1002.0))));
    assert_eq!((sure.legs, sure.leg_losses), (Some(4), vec![Decibels(7.2); 4]));
    assert_eq!(sure.isolation, Some(Decibels(25.0)));
    assert_eq!(seen.text, "4-WAY SPLITTER\nBAND 5-1002 MHz\nOUT -7.2dB\nISO 25dB");
}

#[test]
fn a_number_torn_in_one_look_is_not_sure_and_the_other_is_named() {
    let torn = suggest(&[both("STOP FILTER"), seen("STOP 1125-1675MHz", "STOP 1125-167MHz")]);
    let found = torn.numbers.iter().find(|number| number.value > 1125.0 || number.value < 1000.0).unwrap();
    assert!(found.unsure.iter().any(|why| matches!(why, Unsure::SeenOtherwise { .. })), "{found:?}");
    assert!(!is_sure(&torn, Member::StopHigh));
}

#[test]
fn a_number_torn_in_both_looks_is_no_usual_edge_and_not_sure() {
    // Each usual upper edge without its last, and without its first digit.
    for edge in ["862", "1002", "1006", "1218", "1675", "1794", "2150", "2300"] {
        for torn in [&edge[..edge.len() - 1], &edge[1..]] {
            let seen = label(&["SPLITTER", &format!("5-{torn}MHz")]);
            let sure = seen.numbers.iter().any(|number| number.written == torn && number.is_sure());
            assert!(!sure, "{torn} of {edge} is sure");
        }
    }
}

#[test]
fn one_faint_letter_makes_its_number_unsure_and_no_other() {
    let mut faint = line("PASS 5-1002MHz");
    faint.letters[9].1 = 0.6;
    let seen = suggest(&[SeenRow { looks: [Some(faint), Some(line("PASS 5-1002MHz"))] }]);
    assert_eq!(number(&seen, 1002.0).unsure, [Unsure::Faint]);
    assert!(number(&seen, 5.0).is_sure());
}

#[test]
fn what_one_look_saw_alone_is_not_sure() {
    let seen = suggest(&[both("4-WAY SPLITTER"), SeenRow { looks: [None, Some(line("OUT -7dB"))] }]);
    assert!(number(&seen, 7.0).unsure.contains(&Unsure::SeenOnce));
    assert!(!is_sure(&seen, Member::LegLosses));
    assert!(is_sure(&seen, Member::Legs));
}

#[test]
fn a_row_that_is_cut_makes_the_number_at_its_end_unsure() {
    let mut cut = line("5-1002MHz");
    cut.is_cut = (true, false);
    let seen = suggest(&[SeenRow { looks: [Some(cut), Some(line("5-1002MHz"))] }]);
    assert!(number(&seen, 5.0).unsure.contains(&Unsure::Cut));
    // Its unit closes the other end.
    assert!(number(&seen, 1002.0).is_sure());
}

#[test]
fn a_loss_that_does_not_fit_the_outputs_is_asked_and_so_are_they() {
    let seen = label(&["4-WAY SPLITTER", "BAND 5-1002MHz", "OUT -3.5dB"]);
    assert!(number(&seen, 3.5).unsure.contains(&Unsure::DoesNotFit));
    assert!(number(&seen, 4.0).unsure.contains(&Unsure::DoesNotFit));
    assert!(!is_sure(&seen, Member::LegLosses) && !is_sure(&seen, Member::Legs));
    assert!(is_sure(&seen, Member::High));
}

#[test]
fn edges_of_a_band_that_runs_backwards_are_asked() {
    // What a cable that lay across “85~862 MHz” left of it.
    let seen = label(&["IL -3.7dB", "2 WAY SPLITTER", "85~ 52 MHz"]);
    for edge in [85.0, 52.0] {
        assert!(number(&seen, edge).unsure.contains(&Unsure::DoesNotFit), "{edge}");
    }
    let giga = label(&["2.15 GHz ~ 1.2 GHz"]);
    for edge in [2_150.0, 1_200.0] {
        assert!(number(&giga, edge).unsure.contains(&Unsure::DoesNotFit), "{edge}: {giga:?}");
    }
    assert!(number(&label(&["50~862 MHz", "RETURN 5-42MHz"]), 42.0).is_sure());
}

#[test]
fn a_unit_that_looks_like_digits_is_guessed_and_asked() {
    for (row, value, unit) in [
        ("GAIN 2408", 24.0, SeenUnit::Decibels),
        ("ISO 10.50B", 10.5, SeenUnit::Decibels),
        ("TAP BdB", 8.0, SeenUnit::Decibels),
        ("PASS 5-1006 Miz", 1006.0, SeenUnit::Megahertz),
        ("RL 80", 8.0, SeenUnit::Decibels),
        ("ISO 7.4", 7.4, SeenUnit::Decibels),
        ("INPU12V", 12.0, SeenUnit::Volts),
        ("FW85-862 MHz", 862.0, SeenUnit::Megahertz),
        ("950 2150MHz", 2150.0, SeenUnit::Megahertz),
        ("2 /AY SPLITTER", 2.0, SeenUnit::Outputs),
    ] {
        let seen = label(&[row]);
        assert_eq!(seen.numbers.last().map(|number| number.value), Some(value), "{row}");
        let found = number(&seen, value);
        assert_eq!(found.unit, unit, "{row}");
        assert!(!seen.numbers.iter().all(SeenNumber::is_sure), "{row}");
        assert!(found.is_sure() == (row == "950 2150MHz"), "{row}");
    }
}

#[test]
fn a_jacket_has_its_series_and_its_mark() {
    let seen = label(&["RG-6/U 18 AWG CATV", "0482 FEET"]);
    assert!(is_sure(&seen, Member::Cable));
    assert_eq!(
        seen.marks().map(|mark| (mark.value, mark.unit)).collect::<Vec<_>>(),
        [(482.0, SeenUnit::Feet)]
    );
    assert!(label(&["4-WAY SPLITTER", "5-1000 M"]).marks().next().is_none());
}

#[test]
fn two_marks_give_a_length_with_their_doubt() {
    let end = |row: &str| label(&[row]);
    let between = |near: &str, far: &str| JacketLength::between([&end(near), &end(far)]);
    // 0.3048 m a foot, by definition (international yard and pound agreement, 1959).
    let sure = between("RG-6 0482 FT", "RG-6 0532 FT").expect("a length");
    assert!((sure.metres - 15.24).abs() < 1e-9 && sure.unsure.is_empty(), "{sure:?}");
    let back = between("RG-6 0532 M", "RG-6 0482 M").expect("a length");
    assert!((back.metres - 50.0).abs() < 1e-9);
    // Alone in its row, the first digits of a mark may be missing.
    let asked = between("0482 FT", "RG-6 0532 FT").expect("a length");
    assert_eq!(asked.unsure, [LengthUnsure::MarkAsked]);
    let two = between("RG-6 0482 FT", "RG-59 0532 FT").expect("a length");
    assert_eq!(two.unsure, [LengthUnsure::TwoSeries]);
    for (near, far, none) in [
        ("RG-6 0482 FT", "RG-6", NoLength::NoMark { end: 1 }),
        ("4-WAY SPLITTER", "RG-6 0532 FT", NoLength::NoMark { end: 0 }),
        ("RG-6 0482 FT", "RG-6 0532 M", NoLength::TwoUnits),
        ("RG-6 0482 FT", "RG-6 0482 FT", NoLength::SameMark),
        ("RG-6 0012 FT", "RG-6 9532 FT", NoLength::TooFarApart),
    ] {
        assert_eq!(between(near, far), Err(none), "{near}, {far}");
    }
}

/// Many jackets are printed in feet and in metres.
#[test]
fn a_jacket_in_two_units_has_the_length_of_those_that_are_sure() {
    let faint = |text: &str, after: usize| {
        let letters = text.chars().enumerate();
        let letters = letters.map(|(at, sign)| (sign, if at < after { 0.5 } else { CLEAR })).collect();
        let line = SeenLine { letters, is_cut: (false, false) };
        suggest(&[SeenRow { looks: [Some(line.clone()), Some(line)] }])
    };
    let near = label(&["RG-6 0482 FT 147 M"]);
    let found = JacketLength::between([&near, &faint("RG-6 0532 FT 162 M", 12)]).expect("a length");
    assert!((found.metres - 15.0).abs() < 1e-9 && found.unsure.is_empty(), "{found:?}");
    let sure = JacketLength::between([&near, &label(&["RG-6 0532 FT 162 M"])]).expect("a length");
    assert!((sure.metres - 15.24).abs() < 1e-9 && sure.unsure.is_empty(), "{sure:?}");
    let disagree = JacketLength::between([&near, &label(&["RG-6 0532 FT 192 M"])]).expect("a length");
    assert_eq!(disagree.unsure, [LengthUnsure::UnitsDisagree]);
    let photos = [label(&["RG-6 0532 FT 162 M"]), label(&["RG-6 161 M"]), near];
    let among =
        JacketLength::among(&photos.iter().collect::<Vec<_>>()).expect("two marks").expect("a length");
    assert_eq!((among.photos, among.length.unsure), ([2, 0], vec![]));
}

/// Of several photos, the last one first, the length lies between the last and the last before it of the other end.
#[test]
fn of_several_photos_of_a_jacket_the_last_of_each_end_count() {
    let among = |rows: &[&str]| {
        let photos: Vec<_> = rows.iter().map(|row| label(&[*row])).collect();
        JacketLength::among(&photos.iter().collect::<Vec<_>>())
    };
    let feet = |rows: &[&str]| {
        let found = among(rows).expect("two marks").expect("a length");
        (found.photos, (found.length.metres / 0.3048).round(), found.length.unsure)
    };
    assert_eq!(feet(&["RG-6 0532 FT", "RG-6 0482 FT"]), ([1, 0], 50.0, vec![]));
    // The far end taken again, a few marks on; and the near end twice.
    assert_eq!(feet(&["RG-6 0530 FT", "RG-6 0532 FT", "RG-6 0482 FT"]), ([2, 0], 48.0, vec![]));
    assert_eq!(feet(&["RG-6 0532 FT", "RG-6 0484 FT", "RG-6 0482 FT"]), ([1, 0], 48.0, vec![]));
    // A photo without a mark, and one of the same mark.
    assert_eq!(feet(&["RG-6", "RG-6 0532 FT", "RG-6 0532 FT", "RG-6 0482 FT"]), ([3, 1], 50.0, vec![]));
    // One end alone, photographed twice.
    assert_eq!(feet(&["RG-6 0484 FT", "RG-6 0482 FT"]), ([1, 0], 2.0, vec![LengthUnsure::OneEnd]));
    // A mark that is at neither end: one of them was misread, or is of another cable.
    let misread = feet(&["RG-6 0532 FT", "RG-6 0582 FT", "RG-6 0482 FT"]);
    assert_eq!(misread, ([1, 0], 50.0, vec![LengthUnsure::OtherMark]));
    assert_eq!(among(&["RG-6 0532 FT"]), None);
    assert_eq!(among(&["RG-6 075 M", "RG-6 0532 FT"]), Some(Err(NoLength::TwoUnits)));
    assert_eq!(among(&["RG-6 0532 FT", "RG-6 0532 FT"]), Some(Err(NoLength::SameMark)));
}

#[test]
fn where_a_number_stands_is_told_by_its_letters() {
    let seen = suggest(&[both("SPLITTER"), seen("5-1002 MHz", "PASS 5-1002 MHz")]);
    let found = number(&seen, 1002.0);
    assert_eq!(found.place.row, 1);
    let text = ["5-1002 MHz", "PASS 5-1002 MHz"][found.place.look];
    let letters: String = text.chars().collect::<Vec<_>>()[found.place.letters.clone()].iter().collect();
    assert_eq!(letters, "1002");
}

proptest! {
    /// Whatever two looks saw: nothing is sure that both did not see alike, and each place holds its number.
    #[test]
    fn nothing_is_sure_that_two_looks_did_not_see(
        rows in prop::collection::vec(
            (("[0-9A-Zd .,-]{0,14}(MHz|dB|-WAY| FT|)"), ("[0-9A-Zd .,-]{0,14}(MHz|dB|-WAY| FT|)"), any::<bool>(), 0.5_f32..1.0),
            0..6,
        )
    ) {
        let rows: Vec<SeenRow> = rows
            .into_iter()
            .map(|(coarse, fine, is_same, certainty)| {
                let mut row = if is_same { both(&fine) } else { seen(&coarse, &fine) };
                for line in row.looks.iter_mut().flatten() {
                    if let Some(letter) = line.letters.last_mut() {
                        letter.1 = certainty;
                    }
                }
                row
            })
            .collect();
        let suggestion = suggest(&rows);
        for number in &suggestion.numbers {
            let line = rows[number.place.row].looks[number.place.look].as_ref().unwrap();
            let there: String = line.letters[number.place.letters.clone()].iter().map(|(sign, _)| sign).collect();
            prop_assert_eq!(&there, &number.written);
            if number.is_sure() {
                for look in &rows[number.place.row].looks {
                    let text: String = look.as_ref().unwrap().letters.iter().map(|(sign, _)| sign).collect();
                    prop_assert!(text.contains(&number.written), "{:?} is not in {:?}", number.written, text);
                }
            }
        }
    }
}

/// An upper edge with a digit less is asked, also where another range with larger edges stands in its row.
#[test]
fn an_upper_edge_is_the_lower_one_of_nothing_that_follows() {
    for row in ["54-100 MHz 950-2150 MHz", "54-100 MHz"] {
        let found = label(&["SPLITTER 2-WAY", row]);
        assert!(!number(&found, 100.0).is_sure(), "{row}: {:?}", found.numbers);
    }
    let lower = label(&["SPLITTER 2-WAY", "5-1002 MHz"]);
    assert!(number(&lower, 5.0).is_sure() && number(&lower, 1002.0).is_sure(), "{:?}", lower.numbers);
}

/// A count of outputs that is in no number that was looked at is asked.
#[test]
fn a_count_of_outputs_is_sure_by_its_number_alone() {
    assert!(is_sure(&label(&["4-WAY SPLITTER", "5-1002 MHz"]), Member::Legs));
    let counted = label(&["SPLITTER", "1 IN 4 OUT", "5-1002 MHz"]);
    let legs = counted.members.iter().find(|seen| seen.member == Member::Legs);
    assert!(legs.is_none_or(|legs| !legs.is_sure()), "{counted:?}");
}

/// Seen on a photo: a tap's label on which another word stood.
#[test]
fn what_an_amplifier_with_a_tap_and_no_gain_states_is_asked() {
    let either = label(&["AMPLIFIER", "950-2150MHz", "TAP", "TAP 20dB", "OUT 1.5dB"]);
    assert!(!is_sure(&either, Member::Gain) && !is_sure(&either, Member::Kind), "{either:?}");
    let with_gain = label(&["AMPLIFIER", "54-1002MHz", "GAIN 15dB", "TAP 20dB"]);
    assert!(is_sure(&with_gain, Member::Gain), "{with_gain:?}");
}

/// A series has its number in its name: it is asked like any number whose letters are not certain, or that one look alone saw.
#[test]
fn a_cables_series_is_sure_only_where_its_letters_are() {
    let faint =
        SeenLine { letters: "RG-6".chars().map(|sign| (sign, 0.5)).collect(), is_cut: (false, false) };
    let once = SeenRow { looks: [None, Some(line("RG-6"))] };
    for row in [SeenRow { looks: [Some(faint.clone()), Some(faint)] }, once] {
        assert!(!is_sure(&suggest(&[row]), Member::Cable));
    }
    assert!(is_sure(&label(&["RG-6"]), Member::Cable));
}

/// A row without a digit is read by one look; what is covered at its end may turn what it says round.
#[test]
fn what_is_told_in_words_is_sure_only_where_its_row_was_seen_whole() {
    let in_one_look = |text: &str, certainty: f32, is_cut: (bool, bool)| {
        let letters = text.chars().map(|sign| (sign, certainty)).collect();
        suggest(&[SeenRow { looks: [Some(SeenLine { letters, is_cut }), None] }])
    };
    let whole = (false, false);
    for (row, member) in [
        ("ALL PORTS POWER PASS", Member::PowerPass),
        ("AMPLIFIER", Member::Kind),
        ("AMPLIFIER WITH MoCA BYPASS", Member::MocaBypass),
    ] {
        let unsure = |seen: &Suggestion| {
            let found = seen.members.iter().find(|seen| seen.member == member).expect("it is stated");
            found.unsure.clone()
        };
        assert_eq!(unsure(&in_one_look(row, CLEAR, whole)), [], "{row}");
        assert_eq!(unsure(&in_one_look(row, 0.3, whole)), [Unsure::Faint], "{row}");
        for cut in [(true, false), (false, true)] {
            assert_eq!(unsure(&in_one_look(row, CLEAR, cut)), [Unsure::Cut], "{row}, cut {cut:?}");
        }
    }
    // One letter makes another of a short word, and none of a long one.
    assert!(is_sure(&in_one_look("AMPLIFIER", 0.6, whole), Member::Kind));
    assert!(!is_sure(&in_one_look("HPF", 0.6, whole), Member::Kind));
    assert!(is_sure(&in_one_look("HPF", CLEAR, whole), Member::Kind));
    // What another row says counts only if that one was seen, too.
    let rows = |faint: &str, clear: &str| {
        let row = |text: &str, certainty: f32| SeenRow {
            looks: [
                Some(SeenLine {
                    letters: text.chars().map(|sign| (sign, certainty)).collect(),
                    is_cut: whole,
                }),
                None,
            ],
        };
        suggest(&[row(faint, 0.3), row(clear, CLEAR)])
    };
    assert!(!is_sure(&rows("AMPLIFIER", "INDOOR USE ONLY"), Member::Kind));
    assert!(is_sure(&rows("ZINC DIE CAST", "AMPLIFIER"), Member::Kind));
}

/// One figure told for each output is as sure as their count.
#[test]
fn losses_of_outputs_are_no_surer_than_how_many_there_are() {
    let row = |text: &str, certainty: f32| {
        let line = SeenLine {
            letters: text.chars().map(|sign| (sign, certainty)).collect(),
            is_cut: (false, false),
        };
        SeenRow { looks: [Some(line.clone()), Some(line)] }
    };
    let seen = suggest(&[row("4-WAY SPLITTER", 0.5), row("OUT -7.2 dB", CLEAR)]);
    assert!(!is_sure(&seen, Member::Legs) && !is_sure(&seen, Member::LegLosses), "{:?}", seen.members);
}

//! The same house told twice, by other people and in another order, is reckoned the same: forecast, findings, what is not
//! known, and the work list, figure for figure.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::finding::findings;
use advice::forecast::{Options, forecast};
use advice::unknown::unknowns;
use advice::worklist::{Options as ListOptions, worklist};
use house::record::{CableKind, Survey};
use houses::told_again::{told_again, with_ids_counted};
use houses::{House, change_cases, finding_cases, refusal_cases};

/// Fewer draws than usual: what is compared is whether they are the same.
const FEW: Options = Options { draws: 12, seed: 1, points: 45, settles: false };

fn reckoned(survey: &Survey) -> [(&'static str, String); 4] {
    let through = forecast(survey, &FEW).expect("a sound survey");
    let screening = Options { draws: 4, ..FEW };
    let list =
        worklist(survey, &ListOptions { screening, stating: FEW, most_steps: 24, ..ListOptions::default() })
            .expect("a sound survey");
    let steps: Vec<_> = list
        .steps
        .iter()
        .map(|step| (step.change, &step.gains, &step.service_changes, &step.moves_out, &step.effort))
        .collect();
    let list = format!("{steps:?} {:?} {:?} {:?}", list.refused, list.when_done, list.failed);
    let told = [
        ("findings", format!("{:?}", findings(survey, Some(&through)))),
        ("unknowns", format!("{:?}", unknowns(survey, &through))),
        ("forecast", format!("{through:?}")),
        ("work list", list),
    ];
    told.map(|(name, told)| (name, with_ids_counted(&told)))
}

fn assert_told_alike(what: &str, survey: &Survey, times: u64) {
    let first = reckoned(survey);
    for seed in 1..=times {
        let again = told_again(survey, seed);
        assert_ne!(again.parts.keys().next(), survey.parts.keys().next(), "other ids");
        for ((name, first), (_, told)) in first.iter().zip(reckoned(&again)) {
            assert!(*first == told, "{what}, {name}, telling {seed}: {}", where_they_part(first, &told));
        }
    }
}

fn where_they_part(one: &str, other: &str) -> String {
    let at = one.bytes().zip(other.bytes()).take_while(|(a, b)| a == b).count();
    let around =
        |text: &str| text.get(at.saturating_sub(200)..).unwrap_or(text).chars().take(400).collect::<String>();
    format!("\n{}\n{}", around(one), around(other))
}

/// Every house that the findings, changes and refusals are shown with.
#[test]
fn a_house_told_again_is_reckoned_the_same() {
    let findings =
        finding_cases::cases().into_iter().map(|case| (format!("{:?}", case.kind), case.there.survey));
    let changes = change_cases::cases().into_iter().map(|case| (case.name.to_owned(), case.there.survey()));
    let refusals = refusal_cases::cases().into_iter().map(|case| (case.name.to_owned(), case.there.survey()));
    let mut count = 0;
    for (name, survey) in findings.chain(changes).chain(refusals) {
        assert_told_alike(&name, &survey, 1);
        count += 1;
    }
    assert!(count > 100, "{count}");
}

/// Two legs alike, two rooms alike, cables without a mark: only where a thing stands tells it from another.
#[test]
fn what_is_alike_is_told_by_where_it_stands() {
    let house = House::new()
        .entry("E1", house::record::EntryKind::Cable)
        .splitter("S1", 4)
        .made_for(5.0, 1000.0)
        .from("E1", 1)
        .over(CableKind::Six, 2.0)
        .outlet("O1", "Hall")
        .from("S1", 1)
        .over(CableKind::Six, 12.0)
        .adapter("2.5")
        .bridge();
    let house = (2..=4).fold(house, |house, port| {
        house
            .outlet(&format!("O{port}"), "Bedroom")
            .from("S1", port)
            .over(CableKind::Six, 20.0)
            .adapter("2.5")
            .with(|part| part.tag = None)
    });
    assert_told_alike("three bedrooms", &house.survey(), 10);
}

/// The law can fail: a house in which one length is another is not the same.
#[test]
fn another_house_is_not_the_same() {
    let of = |metres| reckoned(&change_cases::house(metres).survey());
    assert!(of(20.0).iter().zip(of(20.5)).any(|(one, other)| one.1 != other.1));
    assert!(of(20.0).iter().zip(of(20.0)).all(|(one, other)| one.1 == other.1));
}

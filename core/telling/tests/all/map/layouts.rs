//! Every layout, folded and not, whatever the house.

use std::collections::BTreeSet;

use advice::finding::Weight;
use house::record::{CableKind, reading_order};
use houses::part_id;
use proptest::prelude::*;
use telling::figure::map::{NARROW, PAGE};
use telling::figure::{Dash, Folding, Layout, Mark, Weight as Line, WiringMap};

use super::drawn_houses::{HOUSES, Known, drawn_house, folded};
use super::measured::{LAYOUTS, check, outside, parts, rows, sound, texts, unfold};
use crate::report_house::{english, house_by_chance};

#[test]
fn maps_of_3_9_39_120_and_300_parts_are_readable() {
    let sizes: Vec<_> = HOUSES.iter().map(|known| known.survey.parts.len()).collect();
    assert_eq!(sizes, [3, 9, 39, 124, 306]);
    for (known, many) in HOUSES.iter().zip(sizes) {
        for layout in LAYOUTS {
            let figure = known.map(layout, folded());
            sound(&figure);
            let wanted = match layout {
                Layout::Narrow => NARROW,
                Layout::Wide(width) => width,
            };
            // Nine parts in a row do not go into a column of a page: there the narrow map is shown.
            let wanted = if many == 39 && wanted < PAGE { PAGE } else { wanted };
            assert!(figure.natural_width <= wanted + 0.5, "{many} parts: {} wide", figure.natural_width);
            let many_rows = rows(&figure).len();
            assert!(many_rows <= 30, "{many} parts: {many_rows} rows");
            sound(&known.map(layout, Folding::Nothing));
        }
    }
}

#[test]
fn a_small_house_is_not_folded_and_what_was_unfolded_stays() {
    let figure = drawn_house(9).map(Layout::Narrow, folded());
    assert_eq!(rows(&figure).len(), 9);
    let known = drawn_house(39);
    let survey = &known.survey;
    let figure = known.map(Layout::Narrow, folded());
    let at = unfold(&figure);
    assert!(at.contains(&part_id(survey, "S3")), "six alike outlets fold at their splitter");
    let one: BTreeSet<_> = std::iter::once(part_id(survey, "S3")).collect();
    let opened = known.map(Layout::Narrow, Folding::But(one.clone()));
    assert_eq!(unfold(&opened), &at - &one, "only that is unfolded");
    assert!(
        parts(&opened).contains(&part_id(survey, "O9")) && !parts(&figure).contains(&part_id(survey, "O9"))
    );
    let all = known.map(Layout::Narrow, Folding::But(at));
    assert_eq!(parts(&all).len(), 39);
}

#[test]
fn what_matters_never_folds() {
    for known in HOUSES.iter() {
        let Known { survey, forecast, found } = known;
        let weakest = forecast.weakest_first().first().map(|(room, _)| room.outlet);
        let figure = known.map(Layout::Narrow, folded());
        // A part that only holds others has its row still.
        let shown = &parts(&figure) | &unfold(&figure);
        let way = weakest
            .and_then(|to| survey.wiring.way_between(forecast.bridge.unwrap(), to))
            .unwrap_or_default();
        let thin = survey.parts.keys().filter(|part| {
            let feed = survey.wiring.feed(**part);
            let run = feed.and_then(|feed| survey.runs.get(&feed.run?));
            run.is_some_and(|run| run.cable == CableKind::FiftyNine)
        });
        let weighs = found.iter().filter(|finding| finding.weight() <= Weight::Costly);
        let flagged: Vec<_> = weighs.filter_map(|finding| finding.at.first()?.part()).collect();
        for part in way.iter().chain(thin).chain(survey.wiring.loose().keys()).chain(&flagged) {
            let tag = survey.parts[part].tag.clone();
            assert!(shown.contains(part), "{} parts: {tag:?} is folded away", survey.parts.len());
        }
    }
}

#[test]
fn three_hundred_alike_rooms_on_one_part_are_one_row() {
    let mut house = houses::House::new().entry("E1", house::record::EntryKind::Cable).splitter("S1", 250);
    house = house.from("E1", 1);
    for number in 1..=250_u8 {
        house = house.outlet(&format!("O{number}"), &format!("Room {number}")).from("S1", number);
        house = house.over(CableKind::Six, 9.0);
    }
    let figure = WiringMap::of(&house.survey()).figure(&english());
    assert_eq!(rows(&figure).len(), 3);
    assert!(texts(&figure).contains(&"250 outlets"), "{:?}", texts(&figure));
    assert!(texts(&figure).contains(&"O1–O250"));
}

#[test]
fn cables_nobody_looked_at_are_dotted_and_fold_by_themselves() {
    let mut house = houses::House::new().entry("E1", house::record::EntryKind::Cable).splitter("S1", 8);
    house = house.from("E1", 1);
    for floor in 1..=8_u8 {
        house = house.splitter(&format!("S{}", 10 + floor), 8).from("S1", floor);
        for port in 1..=5_u8 {
            let number = 10 * floor + port;
            house = house.outlet(&format!("O{number}"), "").from(&format!("S{}", 10 + floor), port);
        }
    }
    let figure = WiringMap::of(&house.survey()).figure(&english());
    sound(&figure);
    assert!(rows(&figure).len() <= 30, "{}", rows(&figure).len());
    let dotted = |mark: &&Mark| mark.pen.dash == Dash::Dotted && mark.pen.weight == Line::Cable;
    assert!(figure.marks.iter().filter(dotted).count() > 1);
}

#[test]
fn a_house_of_two_thousand_parts_is_drawn() {
    let mut seed = 1_u64;
    // Knuth's 64-bit linear congruential generator: any spread of numbers would do.
    let numbers = std::iter::repeat_with(|| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        seed >> 8
    });
    let numbers: Vec<_> = numbers.take(2000).collect();
    let survey = house_by_chance(&numbers, "");
    for layout in LAYOUTS {
        let figure = WiringMap::of(&survey).laid_out(layout).folded(Folding::Nothing).figure(&english());
        assert_eq!(parts(&figure).len(), 2000);
        assert!(figure.natural_width < 100_000.0, "{}", figure.natural_width);
        assert_eq!(outside(&figure), [""; 0]);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn nothing_overlaps_and_every_part_is_there_once(
        numbers in proptest::collection::vec(any::<u64>(), 0..60),
        text in prop_oneof!["", "[a-zA-Z ]{0,20}", "\\PC{0,40}", "W{200}"],
    ) {
        let survey = house_by_chance(&numbers, &text);
        check(&survey);
        let mut order = reading_order(&survey);
        let mut parts: Vec<_> = survey.parts.keys().copied().collect();
        order.sort_unstable();
        parts.sort_unstable();
        prop_assert_eq!(order, parts);
    }
}

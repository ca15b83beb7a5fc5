//! The wiring map: nothing overlaps, nothing is left out, whatever the house.

use std::collections::BTreeMap;

use house::record::{CableKind, Survey, reading_order};
use proptest::prelude::*;
use telling::figure::{
    Anchor, Dash, Figure, Ink, Mark, Pen, Shape, Weight, loss_plot, svg, text_width, wiring_map,
};

use crate::report_house::{english, forecast_of, house, house_by_chance, id};

/// Left, top, right and bottom of what a text may take up, in natural pixels: by the widest that it may come out.
fn text_box(mark: &Mark, scale: f64) -> Option<(String, [f64; 4])> {
    let Shape::Text { at, text, size, anchor, strong } = &mark.shape else { return None };
    let width = text_width(text, *size, *strong);
    let left = match anchor {
        Anchor::Start => at.x,
        Anchor::Middle => at.x - width / 2.0,
        Anchor::End => at.x - width,
    };
    // Letters without marks over them reach at most 0.8 of the type's height above and 0.24 below the baseline
    // (DejaVu Sans 2.37: capitals 0.729, ascenders 0.76, descenders 0.236).
    let sides = [left, at.y - 0.8 * size, left + width, at.y + 0.24 * size];
    Some((text.clone(), sides.map(|side| side * scale)))
}

fn overlaps(figure: &Figure) -> Vec<(String, String)> {
    let boxes: Vec<_> = figure.marks.iter().filter_map(|mark| text_box(mark, figure.natural_width)).collect();
    let mut found = Vec::new();
    for (place, (text, a)) in boxes.iter().enumerate() {
        for (other, b) in &boxes[place + 1..] {
            let apart = a[2] <= b[0] || b[2] <= a[0] || a[3] <= b[1] || b[3] <= a[1];
            if !apart {
                found.push((format!("{text} {a:?}"), format!("{other} {b:?}")));
            }
        }
    }
    found
}

/// Marks that reach beyond the box.
fn outside(figure: &Figure) -> Vec<String> {
    let (width, height) = (figure.natural_width, figure.natural_width / figure.aspect);
    let boxes = figure.marks.iter().filter_map(|mark| text_box(mark, figure.natural_width));
    boxes
        .filter(|(_, [left, top, right, bottom])| {
            *left < -0.01 || *top < -0.01 || *right > width + 0.01 || *bottom > height + 0.01
        })
        .map(|(text, _)| text)
        .collect()
}

/// How many boxes each part has: rectangles that stand for it.
fn boxes_of_parts(figure: &Figure) -> BTreeMap<facts::fact::SubjectId, usize> {
    let mut count = BTreeMap::new();
    for mark in figure.marks.iter().filter(|mark| matches!(mark.shape, Shape::Rect { .. })) {
        if let Some(part) = mark.part {
            *count.entry(part).or_default() += 1;
        }
    }
    count
}

fn check(survey: &Survey) {
    let figure = wiring_map(survey, None, &english());
    assert_eq!(overlaps(&figure), [], "texts overlap");
    assert_eq!(outside(&figure), [""; 0], "texts reach out of the figure");
    let boxes = boxes_of_parts(&figure);
    assert_eq!(boxes.keys().collect::<Vec<_>>(), survey.parts.keys().collect::<Vec<_>>());
    assert!(boxes.values().all(|count| *count == 1), "{boxes:?}");
}

fn texts(figure: &Figure) -> Vec<&str> {
    let texts = figure.marks.iter().filter_map(|mark| {
        if let Shape::Text { text, .. } = &mark.shape { Some(text.as_str()) } else { None }
    });
    texts.collect()
}

#[test]
fn the_house_is_drawn_with_its_weak_way_in_a_thick_dashed_line_and_in_words() {
    let survey = house();
    check(&survey);
    let forecast = forecast_of(&survey);
    let figure = wiring_map(&survey, Some(&forecast), &english());
    assert_eq!(overlaps(&figure), []);
    let (weakest, path) = forecast.weakest_first()[0];
    let thick = Pen { weight: Weight::Thick, dash: Dash::Dashed };
    let marked: Vec<_> =
        figure.marks.iter().filter(|mark| mark.pen == thick).filter_map(|mark| mark.part).collect();
    assert!(marked.contains(&weakest.outlet));
    let words = texts(&figure);
    assert!(words.contains(&"WEAKEST ROOM"));
    assert_eq!(words.iter().filter(|text| text.starts_with("loses ")).count(), path.costs.len());
    assert!(words.iter().any(|text| text.contains("NO ENTRY")), "{words:?}");
    // Without a forecast, nothing is marked as weak.
    let plain = wiring_map(&survey, None, &english());
    assert!(plain.marks.iter().all(|mark| mark.pen != thick));
}

#[test]
fn thin_cable_is_struck_and_the_key_says_so() {
    let mut survey = house();
    for run in survey.runs.values_mut() {
        run.cable = CableKind::Six;
    }
    let struck = |figure: &Figure| figure.marks.iter().filter(|mark| mark.pen.dash == Dash::Struck).count();
    let figure = wiring_map(&survey, None, &english());
    assert_eq!(struck(&figure), 0);
    assert!(!texts(&figure).iter().any(|text| text.contains("thin, old cable")));
    let mut feeds = survey.parts.keys().filter_map(|part| survey.wiring.feed(*part));
    let run = feeds.find_map(|feed| feed.run).unwrap();
    survey.runs.get_mut(&run).unwrap().cable = CableKind::FiftyNine;
    let figure = wiring_map(&survey, None, &english());
    assert_eq!(struck(&figure), 1);
    assert!(texts(&figure).iter().any(|text| text.contains("thin, old cable")), "{:?}", texts(&figure));
    // In the picture it is a path of its line and its strokes, in the ink of cables.
    let picture = svg(&figure, "map", &english());
    assert_eq!(picture.matches("<path class=\"ink-cable\"").count(), 1);
}

#[test]
fn every_mark_of_a_picture_has_its_ink() {
    let survey = house();
    let forecast = forecast_of(&survey);
    for figure in
        [wiring_map(&survey, Some(&forecast), &english()), loss_plot(&survey, &forecast, &english()).unwrap()]
    {
        let picture = svg(&figure, "figure", &english());
        assert_eq!(picture.matches(" class=\"ink-").count(), figure.marks.len());
        for mark in figure
            .marks
            .iter()
            .filter(|mark| mark.pen.dash == Dash::Dashed && mark.pen.weight == Weight::Thick)
        {
            assert_eq!(mark.ink, Ink::Weak, "{mark:?}");
        }
    }
}

#[test]
fn an_entry_filter_before_the_first_split_takes_the_warning_away() {
    let mut survey = house();
    survey.parts.get_mut(&id(21)).unwrap().kind = house::record::PartKind::EntryFilter;
    let figure = wiring_map(&survey, None, &english());
    assert!(!texts(&figure).iter().any(|text| text.contains("NO ENTRY")));
}

#[test]
fn the_plot_has_a_panel_for_each_weak_room_and_nothing_overlaps() {
    let survey = house();
    let forecast = forecast_of(&survey);
    let figure = loss_plot(&survey, &forecast, &english()).unwrap();
    assert_eq!(overlaps(&figure), []);
    assert_eq!(outside(&figure), [""; 0]);
    let panels = texts(&figure).iter().filter(|text| text.starts_with("To ")).count();
    assert_eq!(panels, forecast.weakest_first().len().min(3));
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
    let figure = wiring_map(&survey, None, &english());
    assert_eq!(boxes_of_parts(&figure).len(), 2000);
    assert!(figure.natural_width < 100_000.0, "{}", figure.natural_width);
    assert_eq!(outside(&figure), [""; 0]);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, ..ProptestConfig::default() })]

    #[test]
    fn nothing_overlaps_and_every_part_is_there_once(
        numbers in proptest::collection::vec(any::<u64>(), 0..60),
        text in prop_oneof!["", "[a-zA-Z ]{0,20}", "\\PC{0,40}", "W{200}"],
    ) {
        let survey = house_by_chance(&numbers, &text);
        check(&survey);
        let mut order = reading_order(&survey);
        order.sort_unstable();
        prop_assert_eq!(order, survey.parts.keys().copied().collect::<Vec<_>>());
    }
}

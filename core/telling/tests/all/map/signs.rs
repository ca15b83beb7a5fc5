//! What the map says by sign, line and word.

use advice::finding::{FindingKind, Weight, findings};
use advice::worklist::{Options, Step, WorkList, worklist};
use house::rating::Band;
use house::record::{CableKind, ChangeKind, EntryKind, PartKind, PortEnd, Survey};
use houses::{drawn, part_id};
use phrase::Phrase;
use telling::figure::{
    Dash, Figure, Fill, Folding, Ink, Layout, Mark, Shape, Weight as Line, WiringMap, loss_plot, svg,
};

use super::drawn_houses::{drawn_house, folded};
use super::measured::{LAYOUTS, rows, sides, sound, texts};
use crate::report_house::{english, forecast_of, house, id};

#[test]
fn each_series_has_its_line_and_the_key_says_so() {
    let lines = |cable: CableKind| {
        let house = houses::House::new()
            .part("G1", PartKind::GroundBlock)
            .fed_by_nothing()
            .outlet("O1", "Study")
            .from("G1", 1)
            .over(cable, 9.0);
        let figure = WiringMap::of(&house.survey()).figure(&english());
        let line = figure.marks.iter().find(|mark| {
            mark.ink == Ink::Cable && matches!(mark.shape, Shape::Line { .. }) && mark.touch.is_none()
        });
        let line = line.unwrap().pen;
        (line.weight, line.dash, texts(&figure).last().map(|text| (*text).to_owned()).unwrap())
    };
    // The table of the study: tokens.toml, [cable].
    assert_eq!(lines(CableKind::Six), (Line::Cable, Dash::Solid, "6 series".into()));
    assert_eq!(lines(CableKind::Seven), (Line::Thick, Dash::Solid, "7 or 11 series".into()));
    assert_eq!(lines(CableKind::Eleven), (Line::Thick, Dash::Solid, "7 or 11 series".into()));
    assert_eq!(lines(CableKind::FiftyNine).0, Line::Thin);
    assert_eq!(lines(CableKind::FiftyNine).1, Dash::Struck);
    assert_eq!(lines(CableKind::Unknown), (Line::Cable, Dash::Dotted, "not known".into()));
}

#[test]
fn the_providers_side_is_double_and_ours_is_not() {
    let figure = drawn_house(9).map(Layout::Narrow, folded());
    let double = figure.marks.iter().filter(|mark| mark.pen.dash == Dash::Double && mark.touch.is_none());
    // From the entry to the ground block; once more in the key.
    assert_eq!(double.count(), 2);
    let mut inside = drawn::nine();
    let entry = inside.parts.values_mut().find(|part| part.kind == PartKind::Entry).unwrap();
    entry.entry_kind = house::record::EntryKind::Antenna;
    let figure = WiringMap::of(&inside).figure(&english());
    assert!(figure.marks.iter().all(|mark| mark.pen.dash != Dash::Double));
}

/// An entry, joiners in a row, a ground block, and a splitter with one outlet behind it.
fn joiners_before_the_block(joiners: u8) -> Survey {
    let mut house = houses::House::new().entry("E1", EntryKind::Cable);
    let mut feeder = "E1".to_owned();
    for number in 1..=joiners {
        let tag = format!("B{number}");
        house = house.part(&tag, PartKind::Barrel).from(&feeder, 1);
        feeder = tag;
    }
    house = house.part("G1", PartKind::GroundBlock).from(&feeder, 1).splitter("S1", 2).from("G1", 1);
    house.outlet("O1", "Study").from("S1", 1).survey()
}

/// However many joiners stand between the street and the ground block, the cables up to it are the provider's: those of whom
/// `is_street_side` says so, and no other.
#[test]
fn the_providers_side_is_double_however_deep_it_goes() {
    for joiners in [0, 1, 3, 4, 9] {
        let survey = joiners_before_the_block(joiners);
        let theirs = survey.parts.keys().filter(|id| survey.is_street_side(**id)).count();
        assert_eq!(
            theirs,
            usize::from(joiners) + 1,
            "{joiners} joiners: up to the ground block and no further"
        );
        for layout in LAYOUTS {
            let map = WiringMap::of(&survey).laid_out(layout).folded(Folding::Nothing).figure(&english());
            let double =
                map.marks.iter().filter(|mark| mark.pen.dash == Dash::Double && mark.touch.is_none());
            // Once more in the key.
            assert_eq!(double.count(), theirs + 1, "{joiners} joiners, {layout:?}");
        }
    }
}

#[test]
fn the_weakest_way_is_a_band_and_every_loss_on_it_is_said() {
    let survey = house();
    let forecast = forecast_of(&survey);
    let (weakest, path) = forecast.weakest_first()[0];
    for layout in LAYOUTS {
        let map = WiringMap::of(&survey).with_forecast(Some(&forecast)).laid_out(layout);
        let figure = map.figure(&english());
        let band = |mark: &&Mark| mark.ink == Ink::Weak && mark.fill == Fill::Faint;
        assert!(figure.marks.iter().any(|mark| band(&mark)));
        let said: Vec<_> = rows(&figure).iter().filter_map(|mark| mark.about.clone()).collect();
        let losses =
            said.iter().flat_map(|about| about.lines()).filter(|line| line.contains("loses ")).count();
        assert_eq!(losses, path.costs.len());
        let of_weakest = rows(&figure).into_iter().find(|mark| mark.part() == Some(weakest.outlet)).unwrap();
        assert!(of_weakest.about.as_ref().unwrap().contains("weakest room"));
        // Without a forecast, nothing is marked as weak.
        let plain = WiringMap::of(&survey).laid_out(layout).figure(&english());
        assert!(plain.marks.iter().all(|mark| !band(&mark)));
    }
}

#[test]
fn what_traces_wrongly_stands_apart_with_a_flag_and_its_reason() {
    let mut survey = house();
    // The second splitter hangs on a port that the first does not have.
    let part = survey.parts.get_mut(&id(23)).unwrap();
    if let Some(house::record::Feed::From(feed)) = &mut part.feed {
        feed.port = 9;
    }
    survey.rewire();
    for layout in LAYOUTS {
        let figure = WiringMap::of(&survey).laid_out(layout).figure(&english());
        sound(&figure);
        let said = texts(&figure);
        let wrong = said.iter().position(|text| text.starts_with("Does not fit")).unwrap();
        let loose = said.iter().position(|text| text.starts_with("Not traced")).unwrap();
        assert!(wrong < loose);
        assert!(said.iter().any(|text| text.starts_with("no such output")), "{said:?}");
    }
    let figure = WiringMap::of(&house()).figure(&english());
    assert!(!texts(&figure).iter().any(|text| text.starts_with("Does not fit")));
}

#[test]
fn after_the_work_what_changes_has_the_number_of_its_step() {
    let survey = drawn::nine();
    let options = Options { most_steps: 6, ..Options::default() };
    let options = Options {
        stating: advice::forecast::Options { draws: 24, seed: 7, points: 111, settles: false },
        ..options
    };
    let list = worklist(&survey, &options).unwrap();
    assert!(!list.steps.is_empty());
    for layout in LAYOUTS {
        let figure = WiringMap::after(&list).laid_out(layout).figure(&english());
        sound(&figure);
        let steps: Vec<_> =
            texts(&figure).into_iter().filter_map(|text| text.parse::<usize>().ok()).collect();
        assert!(!steps.is_empty() && steps.iter().all(|step| *step <= list.steps.len()), "{steps:?}");
        // The entry filter is missing, so a step puts it in: a part that was not there.
        let added = list.house_when_done.parts.keys().find(|part| !survey.parts.contains_key(*part)).unwrap();
        let row = rows(&figure).into_iter().find(|mark| mark.part() == Some(*added)).unwrap();
        assert!(row.about.as_ref().unwrap().contains("changed by step"), "{row:?}");
    }
}

#[test]
fn an_entry_filter_before_the_first_split_takes_the_flag_away_before_anything_is_worked_out() {
    let mut survey = house();
    let says = |survey: &Survey| {
        let figure = WiringMap::of(survey).figure(&english());
        texts(&figure).iter().any(|text| text.starts_with("no entry filter"))
    };
    assert!(says(&survey));
    survey.parts.get_mut(&id(21)).unwrap().kind = PartKind::EntryFilter;
    survey.parts.get_mut(&id(21)).unwrap().rating.stop_band =
        Some(Band { low_mhz: 1125.0, high_mhz: 1675.0 });
    assert!(!says(&survey));
}

#[test]
fn an_output_that_leads_to_another_home_says_so_and_is_not_to_be_found_out() {
    let with = |end| {
        let house = houses::good_house().splitter("S2", 2).from("S1", 3).end(2, end);
        let survey = house.at("S1").with(|part| part.rating.legs = 3).survey();
        let figure = WiringMap::of(&survey).figure(&english());
        let row = rows(&figure).into_iter().find(|mark| mark.part() == Some(part_id(&survey, "S2"))).cloned();
        (row.unwrap().about.unwrap(), texts(&figure).contains(&"?"))
    };
    let (about, is_open) = with(PortEnd::AnotherHome);
    assert!(about.contains("output 2 to another home") && !is_open, "{about}");
    let (about, is_open) = with(PortEnd::LooseEnd);
    assert!(about.contains("output 2 leads where?") && is_open, "{about}");
}

/// A house in good order with a room that has no outlet yet and wishes for one, and its work list.
#[expect(clippy::expect_used, reason = "a house without a work list fails the test")]
pub(super) fn house_with_a_room_to_come() -> WorkList {
    let survey =
        houses::good_house().at("S1").with(|part| part.rating.legs = 3).open(3).wish("Attic", 400.0).survey();
    let draws = advice::forecast::Options { draws: 24, seed: 7, points: 111, settles: false };
    let options = Options { screening: draws, stating: draws, most_steps: 6, ..Options::default() };
    worklist(&survey, &options).expect("a work list")
}

#[test]
fn a_cable_that_the_work_lays_is_of_long_strokes() {
    let list = house_with_a_room_to_come();
    let is_new_run = |step: &Step| matches!(step.change, ChangeKind::NewRun { .. });
    let step = list.steps.iter().position(is_new_run).unwrap() + 1;
    for layout in LAYOUTS {
        let figure = WiringMap::after(&list).laid_out(layout).figure(&english());
        sound(&figure);
        let long = |mark: &&Mark| mark.pen.dash == Dash::Long;
        // The cable itself, and the sample in the key.
        assert_eq!(figure.marks.iter().filter(long).count(), 2);
        let new =
            rows(&figure).into_iter().find(|mark| mark.about.as_ref().unwrap().starts_with("Attic")).unwrap();
        assert!(new.about.as_ref().unwrap().contains(&format!("changed by step {step}")), "{new:?}");
        assert!(texts(&figure).contains(&step.to_string().as_str()));
        // As it is now, no cable is new.
        let now = WiringMap::of(&list.steps[0].before).laid_out(layout).figure(&english());
        assert!(!now.marks.iter().any(|mark| mark.pen.dash == Dash::Long));
    }
}

#[test]
fn every_finding_that_weighs_says_in_a_few_words_why_a_part_has_its_flag() {
    let english = english();
    for kind in FindingKind::ALL.iter().filter(|kind| kind.weight() <= Weight::Costly) {
        assert!(english.knows(&format!("map-because-{}", kind.id())), "{kind:?}");
    }
    let survey = drawn::nine();
    let found = findings(&survey, None);
    for finding in found.iter().filter(|finding| finding.weight() <= Weight::Costly) {
        let because = Phrase { id: format!("map-because-{}", finding.kind.id()), ..finding.what() };
        let said = english.say(&because);
        assert!(!said.contains('{') && said.chars().count() <= 40, "{said}");
    }
}

#[test]
fn every_mark_of_a_picture_has_its_ink() {
    let survey = house();
    let forecast = forecast_of(&survey);
    let map = WiringMap::of(&survey).with_forecast(Some(&forecast)).figure(&english());
    for figure in [map, loss_plot(&survey, &forecast, &english()).unwrap()] {
        let picture = svg(&figure, "figure", &english());
        assert_eq!(picture.matches(" class=\"ink-").count(), figure.marks.len());
    }
}

#[test]
fn who_reads_from_right_to_left_has_the_street_at_the_right() {
    let turned = || english().reading_right_to_left();
    let known = drawn_house(39);
    for layout in LAYOUTS {
        let map = WiringMap::of(&known.survey).with_findings(&known.found).laid_out(layout);
        let figure = map.figure(&turned());
        sound(&figure);
        let entry = |figure: &Figure| {
            let of_entry =
                |mark: &&Mark| mark.fill == Fill::Solid && matches!(mark.shape, Shape::Polyline { .. });
            sides(figure.marks.iter().find(of_entry).unwrap(), 1.0)[0]
        };
        assert!(entry(&map.figure(&english())) < 0.1 && entry(&figure) > 0.9);
    }
}

#[test]
fn in_lines_of_text_every_part_stands_under_what_feeds_it() {
    let survey = drawn::nine();
    let lines = WiringMap::of(&survey).folded(Folding::Nothing).lines(&english());
    let line = |tag: &str| {
        let is_it = |line: &&String| line.split_whitespace().any(|word| word.trim_end_matches(':') == tag);
        lines.iter().find(is_it).unwrap_or_else(|| panic!("{tag}: {lines:#?}"))
    };
    let depth = |tag: &str| line(tag).chars().position(char::is_alphanumeric).unwrap();
    // A step inwards is three signs.
    assert_eq!([depth("E1"), depth("G1"), depth("S1"), depth("O2"), depth("O3")], [0, 3, 6, 9, 12]);
    assert_eq!((depth("S2"), depth("O4")), (0, 3));
    assert!(line("O2").contains("thin"), "{lines:#?}");
    assert_eq!(lines.iter().filter(|line| line.starts_with("-- Not traced yet")).count(), 1);
}

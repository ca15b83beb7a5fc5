//! The wiring map: nothing overlaps, nothing is left out, whatever the house, in each layout, folded and not.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

use advice::finding::{Finding, FindingKind, Weight, findings};
use advice::forecast::Forecast;
use advice::worklist::{Options, Step, WorkList, worklist};
use facts::fact::SubjectId;
use house::rating::Band;
use house::record::{
    CableKind, ChangeKind, OtherNetwork, PartKind, PortEnd, ServiceKind, Survey, reading_order,
};
use houses::{drawn, part_id};
use phrase::Phrase;
use proptest::prelude::*;
use telling::figure::map::{COLUMN, NARROW, PAGE};
use telling::figure::{
    Anchor, Dash, Figure, Fill, Folding, Ink, Layout, Mark, Shape, Touch, Weight as Line, WiringMap,
    even_width, loss_plot, loss_plot_in, svg, text_width,
};

use crate::report_house::{english, forecast_of, house, house_by_chance, id};

const LAYOUTS: [Layout; 3] = [Layout::Narrow, Layout::Wide(COLUMN), Layout::Wide(PAGE)];

/// Left, top, right and bottom of what a text may take up, in natural pixels: by the widest that it may come out.
fn text_box(mark: &Mark, scale: f64) -> Option<(String, [f64; 4])> {
    let Shape::Text { at, text, size, anchor, strong, even } = &mark.shape else { return None };
    let width = if *even { even_width(text, *size) } else { text_width(text, *size, *strong) };
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

fn are_apart(a: &[f64; 4], b: &[f64; 4]) -> bool {
    let close = 0.01;
    a[2] <= b[0] + close || b[2] <= a[0] + close || a[3] <= b[1] + close || b[3] <= a[1] + close
}

/// Texts that may come to lie over one another. Those of one row of the sheet are compared with their neighbours only.
fn overlaps(figure: &Figure) -> Vec<(String, String)> {
    let mut boxes: Vec<_> =
        figure.marks.iter().filter_map(|mark| text_box(mark, figure.natural_width)).collect();
    boxes.sort_by(|(_, a), (_, b)| a[1].total_cmp(&b[1]));
    let mut found = Vec::new();
    for (place, (text, a)) in boxes.iter().enumerate() {
        for (other, b) in boxes[place + 1..].iter().take_while(|(_, b)| b[1] < a[3]) {
            if !are_apart(a, b) {
                found.push((format!("{text} {a:?}"), format!("{other} {b:?}")));
            }
        }
    }
    found
}

/// Left, top, right and bottom of any mark, in natural pixels.
fn sides(mark: &Mark, scale: f64) -> [f64; 4] {
    if let Some((_, sides)) = text_box(mark, scale) {
        return sides;
    }
    let around = |points: &[telling::figure::Point]| {
        let (mut x, mut y) = ((f64::INFINITY, f64::NEG_INFINITY), (f64::INFINITY, f64::NEG_INFINITY));
        for point in points {
            (x, y) = ((x.0.min(point.x), x.1.max(point.x)), (y.0.min(point.y), y.1.max(point.y)));
        }
        [x.0, y.0, x.1, y.1]
    };
    let sides = match &mark.shape {
        Shape::Line { from, to } => around(&[*from, *to]),
        Shape::Polyline { points, .. } => around(points),
        Shape::Rect { corner, width, height, .. } => {
            [corner.x, corner.y, corner.x + width, corner.y + height]
        }
        Shape::Text { .. } => unreachable!("a text has its box"),
    };
    sides.map(|side| side * scale)
}

/// Marks that reach beyond the box.
fn outside(figure: &Figure) -> Vec<String> {
    let (width, height) = (figure.natural_width, figure.natural_width / figure.aspect);
    let reaches = |mark: &&Mark| {
        let [left, top, right, bottom] = sides(mark, width);
        left < -0.01 || top < -0.01 || right > width + 0.01 || bottom > height + 0.01
    };
    figure.marks.iter().filter(reaches).map(|mark| format!("{:?}", mark.shape)).collect()
}

/// The marks that are there to be touched, one a row.
fn rows(figure: &Figure) -> Vec<&Mark> {
    figure.marks.iter().filter(|mark| mark.touch.is_some() && mark.name.is_some()).collect()
}

/// The parts that have a row of their own.
fn parts(figure: &Figure) -> BTreeSet<SubjectId> {
    rows(figure).into_iter().filter_map(Mark::part).collect()
}

/// The parts at which a touch unfolds something.
fn unfold(figure: &Figure) -> BTreeSet<SubjectId> {
    let of = |mark: &&Mark| match mark.touch {
        Some(Touch::Unfold(part)) => Some(part),
        _ => None,
    };
    rows(figure).iter().filter_map(of).collect()
}

fn texts(figure: &Figure) -> Vec<&str> {
    let texts = figure.marks.iter().filter_map(|mark| {
        if let Shape::Text { text, .. } = &mark.shape { Some(text.as_str()) } else { None }
    });
    texts.collect()
}

fn sound(figure: &Figure) {
    assert_eq!(overlaps(figure), [], "texts overlap");
    assert_eq!(outside(figure), [""; 0], "marks reach out of the figure");
    let fields: Vec<_> = rows(figure).into_iter().map(|mark| sides(mark, figure.natural_width)).collect();
    for (place, a) in fields.iter().enumerate() {
        for b in &fields[place + 1..] {
            assert!(are_apart(a, b), "two rows share a touch: {a:?} {b:?}");
        }
    }
}

/// In every layout nothing overlaps; unfolded, every part is there once.
fn check(survey: &Survey) {
    for layout in LAYOUTS {
        let map = WiringMap::of(survey).laid_out(layout);
        sound(&map.figure(&english()));
        let unfolded = map.folded(Folding::Nothing).figure(&english());
        sound(&unfolded);
        assert_eq!(parts(&unfolded), survey.parts.keys().copied().collect());
        assert_eq!(rows(&unfolded).len(), survey.parts.len(), "{layout:?}");
    }
}

/// A house with all that follows from it.
struct Known {
    survey: Survey,
    forecast: Forecast,
    found: Vec<Finding>,
}

impl Known {
    fn of(survey: Survey) -> Self {
        let forecast = forecast_of(&survey);
        let found = findings(&survey, Some(&forecast));
        Self { survey, forecast, found }
    }

    fn map(&self, layout: Layout, folding: Folding) -> Figure {
        let map = WiringMap::of(&self.survey).with_forecast(Some(&self.forecast)).with_findings(&self.found);
        map.laid_out(layout).folded(folding).figure(&english())
    }
}

/// The houses of the drawings, smallest first.
static HOUSES: LazyLock<Vec<Known>> = LazyLock::new(|| {
    let houses = [drawn::three(), drawn::nine(), drawn::thirty_nine(), drawn::floors(9), drawn::floors(23)];
    houses.into_iter().map(Known::of).collect()
});

#[expect(clippy::unwrap_used, reason = "a house that is not there fails the test")]
fn drawn_house(parts: usize) -> &'static Known {
    HOUSES.iter().find(|known| known.survey.parts.len() == parts).unwrap()
}

fn folded() -> Folding {
    Folding::But(BTreeSet::new())
}

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
    let options =
        Options { stating: advice::forecast::Options { draws: 24, seed: 7, points: 111 }, ..options };
    let list = worklist(&survey, &options).unwrap();
    assert!(!list.steps.is_empty());
    for layout in LAYOUTS {
        let figure = WiringMap::after(&list).laid_out(layout).figure(&english());
        sound(&figure);
        let steps: Vec<_> =
            texts(&figure).into_iter().filter_map(|text| text.parse::<usize>().ok()).collect();
        assert!(!steps.is_empty() && steps.iter().all(|step| *step <= list.steps.len()), "{steps:?}");
        // The entry filter is missing, so a step puts it in: a part that was not there.
        let added = list.house_when_done.parts.keys().find(|part| !survey.parts.contains_key(part)).unwrap();
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
fn house_with_a_room_to_come() -> WorkList {
    let survey =
        houses::good_house().at("S1").with(|part| part.rating.legs = 3).open(3).wish("Attic", 400.0).survey();
    let draws = advice::forecast::Options { draws: 24, seed: 7, points: 111 };
    let options = Options { screening: draws, stating: draws, most_steps: 6 };
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

#[test]
fn the_plot_has_a_panel_for_each_weak_room_and_nothing_overlaps() {
    let survey = house();
    let forecast = forecast_of(&survey);
    for width in [NARROW, COLUMN, PAGE] {
        let figure = loss_plot_in(&survey, &forecast, width, &english()).unwrap();
        assert_eq!(overlaps(&figure), []);
        assert_eq!(outside(&figure), [""; 0]);
        let panels = texts(&figure).iter().filter(|text| text.starts_with("To ")).count();
        assert_eq!(panels, forecast.weakest_first().len().min(3));
        let of_ours = texts(&figure).iter().filter(|text| **text == "our channels").count();
        assert_eq!(of_ours, panels);
    }
}

#[test]
fn bands_that_others_need_are_hatched_and_named_in_the_plot() {
    let of = |top_mhz: f64| {
        let house = houses::good_house().service(ServiceKind::CableInternet, Some(top_mhz));
        let survey = house
            .service(ServiceKind::ProviderNetwork, None)
            .about_service(ServiceKind::ProviderNetwork, |service| {
                let band = Band { low_mhz: 1125.0, high_mhz: 1225.0 };
                service.network = Some(OtherNetwork { bands: vec![band], ..OtherNetwork::default() });
            })
            .survey();
        let forecast = forecast_of(&survey);
        let figure = loss_plot_in(&survey, &forecast, NARROW, &english()).unwrap();
        assert_eq!(overlaps(&figure), []);
        assert_eq!(outside(&figure), [""; 0]);
        (figure, forecast)
    };
    // 1218 MHz is the upper edge of DOCSIS 3.1 (CM-SP-PHYv3.1), which lies in the band of adapters, 1125 to 1675 MHz
    // (SCTE 235 2017 announcement); 1002 MHz, that of 3.0, lies below it.
    let (figure, forecast) = of(1218.0);
    let said = texts(&figure);
    assert!(said.contains(&"cable internet, 0 to 1218 MHz"), "{said:?}");
    assert!(said.contains(&"the provider's own network, 1125 to 1225 MHz"), "{said:?}");
    // No channel of ours reaches into either.
    assert!(forecast.channels.iter().all(|(centre, width)| centre - width / 2.0 >= 1225.0));
    let (figure, _) = of(1002.0);
    let said = texts(&figure);
    assert!(!said.iter().any(|text| text.starts_with("cable internet")), "{said:?}");
    assert!(said.iter().any(|text| text.starts_with("the provider's own network")));
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

/// Writes the drawings of the houses into the folder `LEGWORK_DRAWINGS`, to be looked at.
#[test]
#[ignore = "writes pictures for whoever looks at them"]
fn drawings() {
    let folder = std::path::PathBuf::from(std::env::var_os("LEGWORK_DRAWINGS").unwrap());
    let mut drawings: BTreeMap<String, String> = BTreeMap::new();
    let mut put = |name: String, figure: &Figure| {
        drawings.insert(name.clone(), svg(figure, &name, &english()));
    };
    let options = Options {
        stating: advice::forecast::Options { draws: 24, seed: 7, points: 111 },
        most_steps: 6,
        ..Options::default()
    };
    for known in HOUSES.iter() {
        let Known { survey, forecast, .. } = known;
        let many = survey.parts.len();
        for (name, layout) in ["narrow", "column", "page"].into_iter().zip(LAYOUTS) {
            put(format!("map-{many:03}-{name}"), &known.map(layout, folded()));
        }
        if many == 9 {
            let list = worklist(survey, &options).unwrap();
            for (name, layout) in ["narrow", "column", "page"].into_iter().zip(LAYOUTS) {
                let map = WiringMap::after(&list);
                put(format!("after-{many:03}-{name}"), &map.laid_out(layout).figure(&english()));
            }
        }
        if let Some(plot) = loss_plot(survey, forecast, &english()) {
            put(format!("plot-{many:03}"), &plot);
        }
        let lines =
            WiringMap::of(survey).with_forecast(Some(forecast)).with_findings(&known.found).lines(&english());
        std::fs::write(folder.join(format!("tree-{many:03}.txt")), lines.join("\n")).unwrap();
    }
    let survey = houses::good_house().service(ServiceKind::CableInternet, Some(1218.0)).survey();
    for (name, width) in [("narrow", NARROW), ("column", COLUMN)] {
        let plot = loss_plot_in(&survey, &forecast_of(&survey), width, &english()).unwrap();
        put(format!("taken-{name}"), &plot);
    }
    for (name, layout) in ["narrow", "column", "page"].into_iter().zip(LAYOUTS) {
        let list = house_with_a_room_to_come();
        let map = WiringMap::after(&list).laid_out(layout).figure(&english());
        put(format!("new-{name}"), &map);
    }
    // Any numbers would do: every kind of part, loose and wrong ones among them.
    let numbers: Vec<_> =
        (1..=40_u64).map(|number| number.wrapping_mul(0x9E37_79B9_7F4A_7C15) >> 7).collect();
    let survey = house_by_chance(&numbers, "Room");
    for (name, layout) in ["narrow", "column", "page"].into_iter().zip(LAYOUTS) {
        let map = WiringMap::of(&survey).laid_out(layout).folded(Folding::Nothing);
        put(format!("chance-{name}"), &map.figure(&english()));
    }
    put("house".into(), &Known::of(house()).map(Layout::Narrow, folded()));
    for (name, picture) in drawings {
        std::fs::write(folder.join(format!("{name}.svg")), picture).unwrap();
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
        order.sort_unstable();
        prop_assert_eq!(order, survey.parts.keys().copied().collect::<Vec<_>>());
    }
}

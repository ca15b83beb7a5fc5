//! The report as a page: well formed, closed to the outside, the same bytes each time, safe with any text.
#![expect(clippy::unwrap_used, reason = "a page that lacks what is looked for shall stop its test here")]

use std::collections::BTreeSet;

use advice::finding::findings;
use advice::forecast;
use advice::unknown::{Matters, unknowns};
use advice::verdict::{Met, answers};
use advice::worklist::{self, WorkList, worklist};
use facts::fact::PhotoImage;
use house::record::{Note, PartKind, Photo, PhotoRole, Survey, Wish};
use phrase::Phrase;
use proptest::prelude::*;
use scraper::{Html, Selector};
use telling::figure::map::PAGE;
use telling::figure::{Layout, WiringMap, loss_plot, svg};
use telling::report::{FindingTold, Provenance, ReportInput, report};

use crate::report_house::{english, forecast_of, house, house_by_chance, id};

fn work(survey: &Survey) -> WorkList {
    let quick = forecast::Options { draws: 12, seed: 7, points: 67, settles: false };
    worklist(
        survey,
        &worklist::Options {
            screening: quick,
            stating: quick,
            most_steps: 4,
            ..worklist::Options::default()
        },
    )
    .unwrap()
}

fn finding(text: &str) -> FindingTold {
    let mark = |text: &str| Phrase::new("mark").text("tag", text);
    FindingTold {
        weight: mark("heavy"),
        what: mark(text),
        places: vec![mark(text)],
        why: mark("why"),
        todo: mark("do"),
        source: mark("common practice, no source"),
        cautions: vec![mark("mind this")],
    }
}

fn page_of(survey: &Survey) -> String {
    let work = work(survey);
    let found = findings(survey, Some(&work.as_found));
    report(&ReportInput::gathered(survey, &found, &work, Provenance::default()), &english())
}

fn select<'a>(page: &'a Html, what: &str) -> Vec<scraper::ElementRef<'a>> {
    page.select(&Selector::parse(what).unwrap()).collect()
}

/// Everything that must hold of any page, whatever is in the survey.
fn check_page(text: &str) {
    let page = Html::parse_document(text);
    assert!(page.errors.is_empty(), "{:?}", page.errors);
    for never in
        ["script", "iframe", "object", "embed", "link", "base", "form", "image", "use", "foreignObject"]
    {
        assert!(select(&page, never).is_empty(), "<{never}>");
    }
    let mut ids = BTreeSet::new();
    for element in select(&page, "*") {
        for (name, value) in element.value().attrs() {
            assert!(!name.starts_with("on"), "{name}={value}");
            let is_picture_itself = name == "src" && value.starts_with("data:image/jpeg;base64,");
            let leads_out = matches!(name, "src" | "href" | "action" | "style" | "xlink:href")
                && !value.starts_with('#')
                && !is_picture_itself;
            assert!(!leads_out, "{name}={value}");
            assert!(name != "id" || ids.insert(value.to_owned()), "id {value} twice");
        }
    }
    for style in select(&page, "style") {
        let css: String = style.text().collect();
        assert!(!css.contains("url(") && !css.contains("@import"));
    }
    for link in select(&page, "a[href]") {
        let target = link.value().attr("href").unwrap().trim_start_matches('#');
        assert!(ids.contains(target), "{target}");
    }
    for picture in select(&page, "img") {
        assert!(picture.value().attr("alt").is_some_and(|words| !words.trim().is_empty()));
    }
    let mut level = 0;
    for heading in select(&page, "h1,h2,h3,h4,h5,h6") {
        let next: usize = heading.value().name()[1..].parse().unwrap();
        assert!(next <= level + 1, "a heading of level {next} after one of level {level}");
        level = next;
    }
    assert_eq!(select(&page, "h1").len(), 1);
    for table in select(&page, "table") {
        let caption = Selector::parse("caption").unwrap();
        assert_eq!(table.select(&caption).count(), 1);
    }
    assert!(select(&page, "thead th:not([scope=col]), tbody th:not([scope=row])").is_empty());
    let policy = select(&page, "meta[http-equiv=Content-Security-Policy]");
    let content = policy[0].value().attr("content").unwrap();
    assert_eq!(content, "default-src 'none'; style-src 'unsafe-inline'; img-src data:");
    assert_eq!(select(&page, "html[lang=en]").len(), 1);
}

/// Every `http` in the page is the SVG namespace, which names and fetches nothing.
fn check_no_address(text: &str) {
    assert_eq!(text.matches("http:").count(), text.matches("xmlns=\"http://www.w3.org/2000/svg\"").count());
    assert!(!text.contains("https:") && !text.contains("<script"));
}

#[test]
fn the_house_makes_a_sound_page_and_the_same_one_each_time() {
    let survey = house();
    let text = page_of(&survey);
    std::fs::write(format!("{}/report.html", env!("CARGO_TARGET_TMPDIR")), &text).unwrap();
    check_page(&text);
    check_no_address(&text);
    assert_eq!(text, page_of(&house()));
    let page = Html::parse_document(&text);
    let headings: Vec<_> = select(&page, ".rest h2").iter().map(|h| h.text().collect::<String>()).collect();
    assert_eq!(headings.len(), 13, "{headings:?}");
    assert_eq!(select(&page, ".one h1").len(), 1);
    // Every caution once, under a letter of its own; whatever it guards leads there.
    let letters: Vec<_> =
        select(&page, "#cautions ~ ul .letter").iter().map(scraper::ElementRef::inner_html).collect();
    assert!(letters.len() >= 6 && letters.iter().collect::<BTreeSet<_>>().len() == letters.len());
    assert!(!select(&page, ".steps .letters-beside a").is_empty());
    // Two strips for each tag.
    assert_eq!(select(&page, ".cuts li").len(), 2 * survey.parts.len());
    // Every part has a row, every tag is on the map and in the lists.
    let words: String = page.root_element().text().collect();
    for part in survey.parts.values() {
        assert!(words.matches(part.tag.as_deref().unwrap()).count() >= 2);
        assert!(part.label.as_deref().is_none_or(|label| words.contains(label)));
    }
    assert_eq!(
        select(&page, "#parts ~ table")
            .first()
            .map(|t| t.select(&Selector::parse("tbody tr").unwrap()).count()),
        Some(survey.parts.len())
    );
}

/// “The first” steps are those that others follow.
#[test]
fn the_steps_on_page_one_are_called_the_first_where_more_follow() {
    let survey = house();
    let mut work = work(&survey);
    let heads = |work: &WorkList| {
        let found = findings(&survey, Some(&work.as_found));
        let page = report(&ReportInput::gathered(&survey, &found, work, Provenance::default()), &english());
        let heads: Vec<String> = select(&Html::parse_document(&page), ".one h2")
            .iter()
            .map(|head| head.text().collect())
            .collect();
        let is_first = heads.iter().any(|head| head.starts_with("The first"));
        assert_ne!(is_first, heads.iter().any(|head| head == "What to do"), "{heads:?}");
        is_first
    };
    assert!(work.steps.len() > 3 && heads(&work));
    for left in (0..=2).rev() {
        work.steps.truncate(left);
        assert!(!heads(&work), "{left} steps");
    }
}

/// The house of these tests has one level, measured at an outlet: it tells of the others on the same coax at that frequency.
#[test]
fn the_levels_of_tv_and_modem_have_a_row_each() {
    let survey = house();
    let work = work(&survey);
    let text = page_of(&survey);
    let page = Html::parse_document(&text);
    let rows = select(&page, "section[aria-labelledby=levels] tbody tr");
    assert_eq!(rows.len(), work.levels.outlets.len());
    assert!(!rows.is_empty());
    let words: Vec<String> = rows.iter().map(|row| row.text().collect()).collect();
    let measured: Vec<_> = words.iter().filter(|row| row.contains("measured here at 603 MHz")).collect();
    assert_eq!(measured.len(), 1, "{words:?}");
    assert!(measured[0].contains("\u{2212}2 dBmV") && measured[0].contains("Yes"), "{measured:?}");
    assert!(words.iter().any(|row| row.contains("likely") && row.contains("at 603 MHz (")), "{words:?}");
}

/// A word that English lacks would be said by its id.
#[test]
fn every_word_of_the_page_is_known() {
    let page = page_of(&house());
    let page = Html::parse_document(&page);
    let prefixes = [
        "report-",
        "head-",
        "term-",
        "met-",
        "reach-",
        "limit-",
        "unknown-",
        "matters-",
        "rated-",
        "series-",
        "run-connector-",
        "connector-",
        "plugged-",
        "reading-",
        "backing-",
        "estimate-",
        "map-",
        "plot-",
        "answer-",
        "service-",
        "fed-",
        "label-",
        "step-",
        "caution-",
        "weight-",
        "finding-",
        "change-",
        "need-",
        "levels-",
        "fits-",
        "window-",
    ];
    for element in select(&page, "h1,h2,h3,h4,p,li,td,th,dt,dd,text,title,desc,caption") {
        let text: String = element.text().collect();
        assert!(!prefixes.iter().any(|prefix| text.starts_with(prefix) && !text.contains(' ')), "{text}");
        assert!(!text.contains("{$") && !text.contains("{ $"), "{text}");
    }
    for estimate in coax::estimates::ALL.iter().copied().flatten() {
        assert!(english().knows(&format!("estimate-{}", estimate.name)), "{}", estimate.name);
    }
}

#[test]
fn figures_are_well_formed_xml_with_a_name_and_a_description() {
    let mut survey = house();
    survey.parts.get_mut(&id(22)).unwrap().tag = Some("<S1> & \"co\" \u{0}\u{202E}\u{FFFF}".into());
    let forecast = forecast_of(&survey);
    let map = WiringMap::of(&survey).with_forecast(Some(&forecast)).laid_out(Layout::Wide(PAGE));
    let map = map.figure(&english());
    let plot = loss_plot(&survey, &forecast, &english()).unwrap();
    for (figure, name) in [(map, "map"), (plot, "plot")] {
        let text = svg(&figure, name, &english());
        let tree = roxmltree::Document::parse(&text).unwrap();
        let root = tree.root_element();
        assert_eq!(root.tag_name().namespace(), Some("http://www.w3.org/2000/svg"));
        assert_eq!(root.attribute("role"), Some("img"));
        let named = root.attribute("aria-labelledby").unwrap();
        for target in named.split(' ') {
            let found = tree.descendants().find(|node| node.attribute("id") == Some(target)).unwrap();
            assert!(!found.text().unwrap().is_empty());
        }
        assert_eq!(text, svg(&figure, name, &english()));
    }
}

#[test]
fn hostile_names_stay_text() {
    let hostile = [
        "<script>alert(1)</script>".to_owned(),
        "\"' onload='x' </title></style></svg><svg onload=alert(1)>".to_owned(),
        "\u{202E}\u{2066}gnorts\u{200F}\u{0}\u{8}\u{FFFE}]]><!--".to_owned(),
        "&lt;b&gt; {{ x }} { $y }".to_owned(),
        "W".repeat(10_000),
    ];
    for name in hostile {
        let mut survey = house();
        survey.name = Some(name.clone());
        survey.place = Some(name.clone());
        for part in survey.parts.values_mut() {
            (part.tag, part.label, part.place) = (Some(name.clone()), Some(name.clone()), Some(name.clone()));
        }
        for room in survey.rooms.values_mut() {
            room.name.clone_from(&name);
        }
        for run in survey.runs.values_mut() {
            run.tag = Some(name.clone());
        }
        survey.network.version.clone_from(&name);
        let image = PhotoImage { sha256: "0".repeat(64), ext: "jpg".into(), bytes: 1, width: 1, height: 1 };
        let (of, role) = (Some(id(22)), Some(PhotoRole::Before));
        let photo =
            Photo { id: id(94), image, of, role, file_name: Some(name.clone()), taken: None, print: None };
        survey.photos.insert(photo.id, photo);
        survey.notes.insert(id(93), Note { id: id(93), about: Some(id(1022)), text: name.clone() });
        survey.unread.push((id(20), name.clone()));
        let forecast = forecast_of(&house());
        let input = ReportInput {
            places: Vec::new(),
            survey: &survey,
            forecast: &forecast,
            findings: vec![finding(&name)],
            flags: &[],
            provenance: Provenance {
                newest_ms: Some(0),
                authors: vec![name.clone()],
                pictures: [(id(94), name.clone().into_bytes())].into(),
                ..Provenance::default()
            },
            steps: Vec::new(),
            cut_short: None,
            searched: None,
            chosen: None,
            others: Vec::new(),
            shopping: Vec::new(),
            failed: Vec::new(),
            refused: Vec::new(),
            when_done: None,
            levels: Vec::new(),
            unknowns: unknowns(&survey, &forecast).into_iter().map(|unknown| (unknown, None)).collect(),
        };
        let text = report(&input, &english());
        check_page(&text);
        check_no_address(&text);
        let page = Html::parse_document(&text);
        assert_eq!(select(&page, "img").len(), 1);
        let heading: String = select(&page, ".title-block dd")[0].text().collect();
        let kept: String =
            name.chars().filter(|c| !"\u{202E}\u{2066}\u{0}\u{8}\u{FFFE}".contains(*c)).collect();
        assert_eq!(heading, kept);
    }
}

#[test]
fn a_wish_is_met_surely_likely_or_not() {
    let mut survey = house();
    let forecast = forecast_of(&survey);
    let (room, path) = forecast.weakest_first()[0];
    let room = room.room.unwrap();
    let (low, likely) = (path.down.low, path.down.likely);
    assert!(low < likely, "{low} {likely}");
    for (down_mbps, met) in
        [(low, Met::Yes), (f64::midpoint(low, likely), Met::Likely), (likely * 1.01, Met::Unlikely)]
    {
        survey.rooms.get_mut(&room).unwrap().wish = Some(Wish { down_mbps, up_mbps: 0.0 });
        let answers = answers(&survey, &forecast);
        assert_eq!(answers.iter().find(|answer| answer.room.id == room).unwrap().wished.met, met);
    }
    // The attic's outlet hangs on a loose part, and the bridge's room is not asked about.
    survey.rooms.get_mut(&id(10)).unwrap().wish = Some(Wish { down_mbps: 1.0, up_mbps: 1.0 });
    let answers = answers(&survey, &forecast);
    assert_eq!(answers.iter().find(|answer| answer.room.id == id(14)).unwrap().wished.met, Met::NotKnown);
    assert!(answers.iter().all(|answer| answer.room.id != id(10)));
}

#[test]
fn what_is_unknown_on_the_weakest_way_comes_first() {
    let survey = house();
    let forecast = forecast_of(&survey);
    let unknowns = unknowns(&survey, &forecast);
    let says = |number: u128, message: &str| {
        unknowns
            .iter()
            .find(|unknown| unknown.about == id(number) && unknown.what.id == message)
            .map(|u| &u.matters)
    };
    // The guessed run between the splitters lies on the way from the office to the study.
    assert_eq!(forecast.weakest_first()[0].0.outlet, id(31));
    assert_eq!(says(23, "unknown-length-guessed"), Some(&Matters::Weakest));
    assert_eq!(says(32, "unknown-cable"), Some(&Matters::OnWayTo(vec![id(32)])));
    assert_eq!(says(25, "unknown-loose"), Some(&Matters::MayBeMissingLink));
    assert_eq!(says(25, "unknown-label"), Some(&Matters::Little));
    assert_eq!(says(23, "unknown-loose-end"), Some(&Matters::MayBeMissingLink));
    assert_eq!(says(22, "unknown-length-guessed"), None, "it was paced");
    assert!(unknowns.is_sorted_by_key(|unknown| unknown.matters.clone()));
}

#[test]
fn an_empty_survey_makes_a_page() {
    let mut empty = Survey::new(id(1));
    empty.rewire();
    let text = page_of(&empty);
    check_page(&text);
    check_no_address(&text);
    let mut lone = house();
    lone.parts.retain(|_, part| part.kind == PartKind::Entry);
    lone.rewire();
    check_page(&page_of(&lone));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]

    #[test]
    fn any_house_makes_a_sound_page(
        numbers in proptest::collection::vec(any::<u64>(), 0..24),
        text in "\\PC{0,30}",
    ) {
        let survey = house_by_chance(&numbers, &text);
        let forecast = forecast::forecast(&survey, &forecast::Options { draws: 3, seed: 1, points: 12, settles: false }).unwrap();
        let input = ReportInput {
            places: Vec::new(),
            survey: &survey,
            forecast: &forecast,
            findings: vec![finding(&text)],
            flags: &[],
            provenance: Provenance::default(),
            steps: Vec::new(),
            cut_short: None,
            searched: None,
            chosen: None,
            others: Vec::new(),
            shopping: Vec::new(),
            failed: Vec::new(),
        refused: Vec::new(),
            when_done: None,
            levels: Vec::new(),
            unknowns: unknowns(&survey, &forecast).into_iter().map(|unknown| (unknown, None)).collect(),
        };
        let page = report(&input, &english());
        check_page(&page);
        prop_assert_eq!(&page, &report(&input, &english()));
    }
}

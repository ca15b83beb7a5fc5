//! What follows from a survey, screen by screen. Every house here is invented.

use std::collections::BTreeSet;

use guide::Deed;
use guide::screen::{Block, FigureBlock};

use crate::result_house::{Walk, key, main_key, needy, sound, text, walk};
use house::record::{EntryKind, OutcomeKind};
use houses::{House, drawn, part_id};

#[test]
fn the_main_presses_lead_through_every_stage_to_the_handover() {
    let mut walk = walk(needy());
    let mut screen = walk.go("forecast");
    let mut names = vec![screen.name.clone()];
    for _ in 0..40 {
        sound(&screen);
        if screen.name == "handover" {
            break;
        }
        screen = match screen.name.as_str() {
            // Where one answer leads on, that is the way.
            "after" | "still-fine" => walk.pick("fine", "yes"),
            _ => {
                let main =
                    main_key(&screen).unwrap_or_else(|| panic!("{} has no way on", screen.name)).to_owned();
                walk.press(&main)
            }
        };
        names.push(screen.name.clone());
    }
    let order = [
        "forecast",
        "findings",
        "work",
        "step",
        "after",
        "private",
        "tests",
        "still-fine",
        "compare",
        "handover",
    ];
    let first = |name: &str| names.iter().position(|other| other == name);
    for pair in order.windows(2) {
        let (one, next) = (first(pair[0]), first(pair[1]));
        assert!(one.is_some() && one < next, "{pair:?} in {names:?}");
    }
    // Everything on the list was done on the way.
    let survey = walk.survey();
    assert!(survey.works.values().all(|work| work.outcome.end == OutcomeKind::Done));
    assert!(survey.works.values().all(|work| work.outcome.others_fine == Some(true)));
    assert!(survey.works.len() > 2);
}

#[test]
fn every_screen_is_reached_and_sound() {
    let mut walk = walk(needy().at("O2").run(|run| run.length = None));
    let mut seen = BTreeSet::new();
    let mut look = |screen: &guide::Screen| {
        sound(screen);
        seen.insert(screen.name.clone());
    };
    for door in ["forecast", "findings", "work", "private", "tests", "compare", "handover"] {
        look(&walk.go(door));
    }
    let screen = walk.go("forecast");
    look(&walk.press(&key(&screen, "room:")));
    walk.go("forecast");
    let screen = walk.press("map");
    look(&screen);
    look(&walk.press(&key(&screen, "part:")));
    walk.go("forecast");
    look(&walk.press("unknowns"));
    let screen = walk.go("findings");
    look(&walk.press(&key(&screen, "finding:")));
    walk.go("work");
    look(&walk.press("step:0"));
    look(&walk.press("done"));
    let screen = walk.go("work");
    look(&walk.press(&key(&screen, "ended:")));
    let screen = walk.go("tests");
    look(&walk.press(&key(&screen, "test:")));
    look(&walk.pick("kind", "house"));
    walk.measure("down", "500");
    walk.measure("up", "480");
    walk.press("keep");
    let screen = walk.go("tests");
    let screen = walk.press(&key(&screen, "test:"));
    look(&walk.press(&key(&screen, "reading:")));
    walk.go("tests");
    look(&walk.press("still-fine"));
    for name in [
        "forecast",
        "forecast-room",
        "map",
        "part",
        "unknowns",
        "findings",
        "finding",
        "work",
        "step",
        "after",
        "ended",
        "private",
        "tests",
        "test",
        "test-numbers",
        "reading",
        "still-fine",
        "compare",
        "handover",
    ] {
        assert!(seen.contains(name), "{name} was not reached: {seen:?}");
    }
}

#[test]
fn a_room_is_told_with_its_range_its_limit_and_its_wish() {
    let mut walk = walk(needy());
    let said = text(&walk.go("forecast"));
    assert!(said.contains("Office") && said.contains("nine times in ten at least"), "{said}");
    assert!(said.contains("limits it"), "{said}");
    assert!(said.contains("Wished: 900 Mb/s to the room, 900 Mb/s back."), "{said}");
    let screen = walk.screen();
    let room = text(&walk.press(&key(&screen, "room:")));
    assert!(room.contains("To the room: ") && room.contains("From the room: "), "{room}");
}

#[test]
fn a_room_without_an_answer_leads_to_the_question_that_mends_it() {
    // No bridge chosen.
    let bare =
        House::new().entry("E1", EntryKind::Cable).outlet("O1", "Office").from("E1", 1).wish("Office", 300.0);
    let mut walk = walk(bare);
    let screen = walk.go("forecast");
    let main = main_key(&screen).expect("a way on").to_owned();
    assert_eq!(walk.press(&main).name, "ask-router-at");
    let screen = walk.go("forecast");
    let screen = walk.press(&key(&screen, "room:"));
    assert!(
        text(&screen).to_lowercase().contains("not known yet: which outlet gets the adapter at the router")
    );
    assert_eq!(walk.press(&key(&screen, "ask:")).name, "ask-router-at");
    // A part that nobody has traced.
    let loose = needy().outlet("O3", "Attic").plugged(&[]).adapter("2.5").wish("Attic", 100.0);
    let loose = loose.survey();
    let mut walk = Walk::of(&loose);
    walk.go("forecast");
    let screen = walk.press(&format!("room:{}", part_id(&loose, "O3")));
    assert!(text(&screen).contains("not yet traced"), "{}", text(&screen));
    let main = main_key(&screen).expect("a way on").to_owned();
    assert_eq!(walk.press(&main).name, "ask-fed-by");
    // Another tree: it is headed by a part that nothing feeds.
    let other = needy().splitter("S9", 2).fed_by_nothing();
    let other = other.outlet("O3", "Attic").from("S9", 1).adapter("2.5").wish("Attic", 100.0).survey();
    let mut walk = Walk::of(&other);
    walk.go("forecast");
    let screen = walk.press(&format!("room:{}", part_id(&other, "O3")));
    assert!(text(&screen).contains("another tree"), "{}", text(&screen));
    assert_eq!(walk.press(&key(&screen, "ask:")).name, "ask-fed-by");
}

#[test]
fn what_is_worth_going_back_for_leads_to_its_question() {
    let house = needy().at("O2").run(|run| run.length = None);
    let mut walk = walk(house);
    let screen = walk.go("forecast");
    assert!(text(&screen).contains("Worth going back for"));
    assert_eq!(walk.press(&key(&screen, "ask:")).name, "ask-cable");
}

#[test]
fn figures_lead_to_the_part_that_is_touched() {
    let mut walk = walk(needy());
    walk.go("forecast");
    let screen = walk.press("map");
    let figures: Vec<_> = screen
        .blocks
        .iter()
        .filter_map(|block| match block {
            Block::Figure(figure) => Some(figure),
            _ => None,
        })
        .collect();
    assert_eq!(figures.len(), 2);
    let is_part = |key: &&String| key.starts_with("part:");
    let mark = figures[0].keys.iter().find(is_part).expect("a part to touch").clone();
    assert_eq!(walk.press(&mark).name, "part");
}

/// The drawings of a screen.
fn figures(screen: &guide::Screen) -> Vec<&FigureBlock> {
    let mut figures = Vec::new();
    for block in &screen.blocks {
        if let Block::Figure(figure) = block {
            figures.push(figure);
        }
    }
    figures
}

#[test]
fn nothing_is_drawn_of_a_house_in_which_nothing_was_found() {
    let mut empty = walk(House::new());
    empty.go("forecast");
    let screen = empty.press("map");
    assert!(figures(&screen).is_empty());
    sound(&screen);
    // One entry is a house to draw.
    let mut begun = walk(House::new().entry("E1", EntryKind::Cable));
    begun.go("forecast");
    assert_eq!(figures(&begun.press("map")).len(), 1);
}

#[test]
fn the_map_unfolds_where_it_is_touched_and_as_a_whole() {
    let mut walk = Walk::of(&drawn::thirty_nine());
    walk.go("forecast");
    let screen = walk.press("map");
    let map = figures(&screen)[0];
    let widths: Vec<_> = map.narrower.iter().map(|layout| layout.natural_width.round()).collect();
    assert_eq!((widths[0], map.natural_width.round()), (358.0, 1136.0));
    // Thirty rows of 39 parts at most: the others are folded, in the terminal's tree too.
    assert!(
        map.lines.len() <= 33 && map.lines.iter().any(|line| line.contains("6 outlets")),
        "{:#?}",
        map.lines
    );
    let folded = map.keys.iter().filter(|key| key.starts_with("unfold:")).cloned().collect::<Vec<_>>();
    assert!(!folded.is_empty());
    let screen = walk.press(&folded[0]);
    let map = figures(&screen)[0];
    assert!(!map.keys.contains(&folded[0]));
    assert!(folded.iter().skip(1).all(|key| map.keys.contains(key)), "only that is unfolded");
    // A part and back: it stays as it was.
    walk.press(map.keys.iter().find(|key| key.starts_with("part:")).unwrap());
    walk.guide.act(&Deed::Back).expect("back");
    let screen = walk.screen();
    assert!(!figures(&screen)[0].keys.contains(&folded[0]));
    let screen = walk.press("unfold-all");
    assert_eq!(figures(&screen)[0].keys.iter().filter(|key| key.starts_with("part:")).count(), 39);
    let screen = walk.press("fold-again");
    assert!(folded.iter().all(|key| figures(&screen)[0].keys.contains(key)));
}

#[test]
fn the_map_is_shown_after_the_work_and_as_it_is() {
    let mut walk = walk(needy());
    walk.go("forecast");
    let screen = walk.press("map");
    let now = figures(&screen)[0].version.clone();
    let screen = walk.press("map-after");
    sound(&screen);
    let after = figures(&screen)[0];
    assert_ne!(after.version, now);
    assert!(after.lines.iter().any(|line| line.contains("[1]")), "{:#?}", after.lines);
    let screen = walk.press("map-now");
    assert_eq!(figures(&screen)[0].version, now);
}

#[test]
fn a_step_says_all_of_it_before_hands_go_to_the_wall() {
    let mut walk = walk(needy());
    let screen = walk.go("work");
    let text_of_list = text(&screen);
    assert!(text_of_list.contains("minutes") && text_of_list.contains("What to get"), "{text_of_list}");
    let screen = walk.press("step:0");
    let cautions =
        screen.blocks.iter().position(|block| matches!(block, Block::Caution(_))).expect("a caution");
    let done = screen.blocks.iter().position(|block| block.keys() == ["done"]).expect("a press");
    let photo = screen.blocks.iter().position(|block| matches!(block, Block::PhotoSlot(_))).expect("a slot");
    assert!(cautions < photo && photo < done);
}

/// Done, could not, put back: each changes the record as it says.
#[test]
fn done_could_not_and_put_back_change_the_record_as_said() {
    let mut walk = walk(needy());
    let before = walk.survey();
    walk.go("work");
    walk.press("step:0");
    let screen = walk.press("could-not");
    let after = walk.survey();
    assert_eq!((&after.parts, &after.runs), (&before.parts, &before.runs));
    let only = after.works.values().next().expect("noted");
    assert_eq!(only.outcome.end, OutcomeKind::CouldNot);
    assert!(text(&screen).contains("Could not be done"));
    // Taken up again, it is on the list as before.
    let change = only.change;
    // Why not may be said, and is kept with the thing.
    walk.guide.act(&Deed::Write { key: "note".into(), words: "Painted over".into() }).expect("written");
    let screen = walk.press("keep-note");
    let note = walk.survey().notes.into_values().next().expect("a note");
    assert_eq!((note.about, note.text.as_str()), (Some(only.change.at()), "Painted over"));
    assert!(text(&screen).contains("Painted over"));
    let screen = walk.press("again");
    assert_eq!(walk.survey().works.len(), 0);

    let title = text(&walk.press("step:0"));
    let screen_after = walk.press("done");
    assert_eq!(screen_after.name, "after");
    let done = walk.survey();
    let work = done.works.values().next().expect("noted").clone();
    assert_eq!((work.change, work.outcome.end), (change, OutcomeKind::Done), "{title} {}", text(&screen));
    let wanted = advice::worklist::applied(change, &before);
    assert_eq!((&done.parts, &done.runs), (&wanted.parts, &wanted.runs));
    assert_ne!(done.parts, before.parts);

    let screen = walk.pick("fine", "no");
    assert_eq!(screen.name, "after");
    assert_eq!(walk.survey().works[&work.id].outcome.others_fine, Some(false));
    assert!(text(&screen).contains("put this change back"), "{}", text(&screen));
    let screen = walk.press("put-back");
    assert_eq!(screen.name, "work");
    let back = walk.survey();
    assert_eq!((&back.parts, &back.runs), (&before.parts, &before.runs));
    let outcome = back.works[&work.id].outcome;
    assert_eq!((outcome.end, outcome.others_fine), (OutcomeKind::PutBack, Some(false)));
}

#[test]
fn the_forecast_is_worked_out_anew_after_a_step() {
    let mut walk = walk(needy());
    let before = text(&walk.go("forecast"));
    for _ in 0..6 {
        let screen = walk.go("work");
        if !screen.keys().contains(&"step:0") {
            break;
        }
        walk.press("step:0");
        walk.press("done");
        walk.pick("fine", "yes");
    }
    let after = text(&walk.go("forecast"));
    assert_ne!(before, after);
    assert!(after.contains("Met.") || after.contains("Likely met."), "{after}");
}

#[test]
fn stop_leaves_nothing_and_offers_a_way_on() {
    let mut walk = walk(needy());
    walk.guide.work_out_with(advice::worklist::Options::default());
    walk.guide.act(&Deed::Press { key: "forecast".into() }).expect("pressed");
    let work = walk.guide.long_work().expect("it takes a while");
    let screen = walk.guide.screen();
    assert!(screen.blocks.iter().any(|block| matches!(block, Block::HowFar(_))), "{}", text(&screen));
    walk.guide.act(&Deed::Press { key: "stop".into() }).expect("pressed");
    walk.guide.settle_long_work();
    assert!(work.is_done() && walk.guide.long_work().is_none());
    let screen = walk.guide.screen();
    assert!(text(&screen).contains("stopped") && !text(&screen).contains("Mb/s"), "{}", text(&screen));
    assert_eq!(main_key(&screen), Some("work-out"));
    walk.guide.work_out_with(crate::result_house::quick());
    assert!(text(&walk.press("work-out")).contains("Mb/s"));
}

#[test]
fn suspended_the_database_is_closed_and_resumed_it_is_where_it_was() {
    let mut walk = walk(needy());
    walk.go("work");
    let before = walk.press("step:0");
    walk.guide.suspend().expect("suspended");
    assert!(walk.guide.long_work().is_none());
    assert_eq!(walk.guide.screen(), before);
    // Closed, the folder can go elsewhere and back: nobody holds it.
    let away = walk.home.path().join("away.legwork");
    std::fs::rename(&walk.folder, &away).expect("moved");
    assert!(walk.guide.resume().is_err());
    assert_eq!(walk.guide.screen(), before);
    std::fs::rename(&away, &walk.folder).expect("moved back");
    walk.guide.resume().expect("resumed");
    assert_eq!(walk.guide.screen(), before);
    // What was worked out still counts.
    assert!(walk.guide.long_work().is_none());
    walk.guide.suspend().expect("suspended");
    // A deed takes it up by itself.
    assert_eq!(walk.press("done").name, "after");
}

#[test]
fn suspending_stops_what_is_going_on() {
    let mut walk = walk(needy());
    walk.guide.work_out_with(advice::worklist::Options::default());
    walk.guide.act(&Deed::Press { key: "forecast".into() }).expect("pressed");
    let work = walk.guide.long_work().expect("it takes a while");
    walk.guide.suspend().expect("suspended");
    assert!(walk.guide.long_work().is_none());
    walk.guide.work_out_with(crate::result_house::quick());
    walk.guide.resume().expect("resumed");
    walk.guide.settle_long_work();
    assert!(text(&walk.guide.screen()).contains("Mb/s"));
    drop(work);
}

#[test]
fn the_last_answer_leads_to_the_forecast() {
    // A house of which nothing is left to ask but what was put off.
    let mut walk = walk(needy());
    for _ in 0..200 {
        let screen = walk.screen();
        let next = if screen.name.starts_with("ask-") { "later" } else { "next" };
        if screen.name == "forecast" {
            return;
        }
        walk.press(next);
    }
    panic!("still at {}", walk.screen().name);
}

#[test]
fn what_was_worked_out_is_not_worked_out_again_for_a_photo_or_a_note() {
    let mut walk = walk(needy());
    walk.go("forecast");
    walk.go("tests");
    walk.press("still-fine");
    walk.guide.act(&Deed::Pick { key: "fine".into(), picked: vec!["yes".into()] }).expect("picked");
    assert!(walk.guide.long_work().is_none());
    assert_eq!(walk.guide.screen().name, "compare");
}

//! Working freely: what photos, prints and readings cost in touches, and that everything goes by deeds alone.
//! The budgets (2 touches a photo in a burst, 3 to assign one) are those that the job sets for a technician.

use crate::hand::{Hand, png};
use house::record::{CableKind, PhotoRole, PortEnd, ReadingKind};
use tempfile::TempDir;

fn home() -> TempDir {
    TempDir::new().unwrap()
}

#[test]
fn a_burst_costs_two_touches_a_photo_and_survives_a_kill() {
    let home = home();
    let mut hand = Hand::in_new(home.path(), "Burst");
    hand.press("free-burst");
    let before = hand.touches;
    for number in 0..10 {
        hand.photo("photo", number);
        assert_eq!(hand.screen().name, "free-burst");
    }
    assert!(hand.touches - before <= 2 * 10, "{} touches", hand.touches - before);
    hand.killed();
    assert_eq!(hand.screen().name, "free-burst");
    let survey = hand.survey();
    assert_eq!(survey.photos.len(), 10);
    assert!(survey.photos.values().all(|photo| photo.of.is_none()));
    assert!(hand.says("10 photos wait"));
}

#[test]
fn a_photo_keeps_its_files_name_and_the_same_picture_is_not_added_twice() {
    let home = home();
    let mut hand = Hand::in_new(home.path(), "Twice");
    hand.add("splitter");
    hand.add("amplifier");
    hand.overview();
    hand.press("free-burst");
    let named = home.path().join("cellar 7.png");
    std::fs::write(&named, png(7)).unwrap();
    hand.take("photo", &named);
    assert!(hand.says("“cellar 7.png”"));
    // A name that a phone made up is none.
    let made_up = home.path().join("0b9c8f2e-6f0b-4c55-9a3e-2f5ad7c5b6d1.png");
    std::fs::write(&made_up, png(8)).unwrap();
    hand.take("photo", &made_up);
    hand.take("photo", &named);
    assert!(hand.says("This picture is here already. It was not added again."));
    let survey = hand.survey();
    let names: Vec<_> = survey.photos.values().map(|photo| photo.file_name.as_deref()).collect();
    assert_eq!((names.len(), names.iter().filter(|name| name.is_some()).count()), (2, 1));
    // At a part the same picture stands with it from then on, whether it waited or shows another part as well.
    let of = |hand: &Hand, tag: &str| hand.survey().photos_of(Some(hand.tagged(tag))).count();
    for (tag, all) in [("S1", 2), ("A1", 3)] {
        hand.overview();
        hand.press("free-parts");
        let part = format!("part:{}", hand.tagged(tag));
        hand.press(&part);
        for _ in 0..2 {
            hand.take("photo", &named);
            assert!(hand.says("This picture"), "{tag}");
        }
        assert_eq!((of(&hand, tag), hand.survey().photos.len()), (1, all), "{tag}");
    }
}

#[test]
fn assigning_costs_at_most_three_touches_a_photo_whatever_it_shows() {
    let home = home();
    let mut hand = Hand::in_new(home.path(), "Assign");
    hand.add("splitter");
    hand.overview();
    hand.press("free-burst");
    for number in 0..4 {
        hand.photo("photo", number);
    }
    hand.press("assign");
    let splitter = format!("part:{}", hand.tagged("S1"));
    for (role, target) in
        [("label", splitter.as_str()), ("place", splitter.as_str()), ("after", "new:amplifier")]
    {
        let before = hand.touches;
        let photo = hand.keys("photo:").remove(0);
        hand.press(&photo);
        if role != "label" {
            hand.pick("role", &[role]);
        }
        hand.press(target);
        assert!(hand.touches - before <= 3, "{role}: {} touches", hand.touches - before);
    }
    // The last one needs no choosing; what the one before it showed says nothing of it.
    let before = hand.touches;
    hand.press(&splitter);
    assert_eq!(hand.touches - before, 1);
    let survey = hand.survey();
    let roles = |tag| {
        let mut roles: Vec<_> =
            survey.photos_of(Some(hand.tagged(tag))).map(|photo| photo.role.unwrap()).collect();
        roles.sort();
        roles
    };
    assert_eq!(roles("S1"), [PhotoRole::Label, PhotoRole::Label, PhotoRole::Place]);
    assert_eq!(roles("A1"), [PhotoRole::After]);
    assert_eq!(survey.photos_of(None).count(), 0);
    // What print waits to be typed is offered, and answering leads back here.
    let print = hand.row("S1");
    hand.press(&print);
    assert_eq!(hand.screen().name, "ask-label");
    hand.write("text", "4-WAY SPLITTER 5-1000MHz 7dB");
    hand.press("next");
    hand.press("next");
    assert_eq!(hand.screen().name, "free-assign");
    assert!(hand.keys("print:").is_empty());
}

#[test]
fn many_photos_go_to_one_new_part_in_one_act_that_can_be_taken_back() {
    let home = home();
    let mut hand = Hand::in_new(home.path(), "Many");
    hand.press("free-burst");
    for number in 0..6 {
        hand.photo("photo", number);
    }
    hand.press("assign");
    let before = hand.touches;
    hand.press("all");
    hand.press("new:splitter");
    assert_eq!(hand.touches - before, 2);
    let part = hand.tagged("S1");
    assert_eq!(hand.survey().photos_of(Some(part)).count(), 6);
    // A deed that this screen does not offer changes nothing.
    let before_it = (hand.survey(), hand.screen());
    for key in ["new:entry", "remove", "port:9", "make"] {
        hand.guide.act(&guide::Deed::Press { key: key.into() }).unwrap();
    }
    assert_eq!((hand.survey(), hand.screen()), before_it);
    assert!(hand.says("Take back: added S1"));
    hand.press("undo");
    let survey = hand.survey();
    assert!(survey.parts.is_empty());
    assert_eq!(survey.photos_of(None).count(), 6);
    // Nothing chosen, several there: it asks, and changes nothing.
    hand.press("new:splitter");
    assert!(hand.says("choose one or more photos first"));
    assert!(hand.survey().parts.is_empty());
}

#[test]
fn a_print_read_on_this_device_before_costs_one_touch_in_another_survey() {
    let home = home();
    let mut hand = Hand::in_new(home.path(), "First house");
    hand.add("splitter");
    let label = hand.row("its label");
    hand.press(&label);
    assert!(hand.keys("seen:").is_empty());
    hand.write("text", "4-WAY SPLITTER 5-1000MHz 7dB");
    hand.press("next");
    hand.press("next");
    hand.overview();
    hand.press("out");
    hand.make("Second house");
    // Not offered for another kind of part.
    hand.add("amplifier");
    let label = hand.row("its label");
    hand.press(&label);
    assert!(hand.keys("seen:").is_empty());
    hand.add("splitter");
    let label = hand.row("its label");
    hand.press(&label);
    hand.photo("label-photo", 1);
    let before = hand.touches;
    let seen = hand.row("4-WAY SPLITTER");
    hand.press(&seen);
    assert_eq!(hand.touches - before, 1);
    assert_eq!(hand.screen().name, "free-part");
    // A four-way splitter's label says 7 dB on each output (common practice, no source).
    let part = hand.survey().parts[&hand.tagged("S1")].clone();
    assert_eq!((part.rating.legs, part.rating.leg_losses_db), (4, vec![7.0; 4]));
    // And the same once more here: as the last.
    hand.add("splitter");
    let label = hand.row("its label");
    hand.press(&label);
    let before = hand.touches;
    hand.press("same");
    assert_eq!(hand.touches - before, 1);
    assert_eq!(
        hand.survey().parts[&hand.tagged("S2")].label.as_deref(),
        Some("4-WAY SPLITTER 5-1000MHz 7dB")
    );
}

#[test]
fn the_same_as_last_answers_cable_connectors_and_device_with_one_touch() {
    let home = home();
    let mut hand = Hand::in_new(home.path(), "Same");
    for _ in 0..2 {
        hand.overview();
        hand.press("more");
        hand.press("free-runs");
        hand.press("add");
    }
    let runs: Vec<_> = hand.survey().runs.keys().copied().collect();
    let open = |hand: &mut Hand, run: usize, row: &str| {
        hand.overview();
        hand.press("more");
        hand.press("free-runs");
        hand.press(&format!("run:{}", runs[run]));
        let key = hand.row(row);
        hand.press(&key);
    };
    open(&mut hand, 0, "kind and length");
    assert!(!hand.keys("same").contains(&"same".to_owned()));
    hand.pick("series", &["fifty_nine"]);
    hand.press("next");
    assert_eq!(hand.screen().name, "free-run");
    open(&mut hand, 1, "kind and length");
    assert!(hand.says("The same as last: 59 series"));
    hand.press("same");
    assert_eq!(hand.screen().name, "free-run");
    open(&mut hand, 0, "connectors");
    hand.pick("near", &["crimp"]);
    hand.pick("far", &["twist_on"]);
    hand.press("next");
    // A bad plug is not handed on.
    open(&mut hand, 1, "connectors");
    assert!(!hand.keys("same").contains(&"same".to_owned()));
    open(&mut hand, 0, "connectors");
    hand.pick("far", &["compression"]);
    hand.press("next");
    open(&mut hand, 1, "connectors");
    assert!(hand.says("The same as last: a crimped connector, tight and a compression connector"));
    hand.press("same");
    let survey = hand.survey();
    for run in survey.runs.values() {
        assert_eq!(run.cable, CableKind::FiftyNine);
        assert_eq!(run.connector_far, house::record::Connector::Compression);
    }
    for _ in 0..2 {
        hand.add("outlet");
    }
    let outlets = [hand.tagged("O1"), hand.tagged("O2")];
    for outlet in outlets {
        hand.overview();
        hand.press("free-parts");
        hand.press(&format!("part:{outlet}"));
        let key = hand.row("what is plugged in");
        hand.press(&key);
        if outlet == outlets[0] {
            hand.pick("plugged", &["tv_box", "modem"]);
            hand.press("next");
        } else {
            hand.press("same");
        }
    }
    let survey = hand.survey();
    assert!(survey.parts[&outlets[0]].plugged.is_some());
    assert_eq!(survey.parts[&outlets[0]].plugged, survey.parts[&outlets[1]].plugged);
}

#[test]
fn meter_readings_follow_each_other_and_the_next_place_asks_for_the_same_frequencies() {
    let home = home();
    let mut hand = Hand::in_new(home.path(), "Meter");
    hand.add("splitter");
    let splitter = hand.tagged("S1");
    hand.press("meter");
    hand.pick("port", &["2"]);
    for (mhz, dbmv, mer) in [("111", "-1", ""), ("603", "\u{2212}3.5", "36"), ("999", "-8", "33.5")] {
        hand.measure("mhz", mhz);
        hand.measure("dbmv", dbmv);
        if !mer.is_empty() {
            hand.measure("mer", mer);
        }
        hand.press("keep");
    }
    let survey = hand.survey();
    assert_eq!(survey.readings.len(), 5);
    assert!(
        survey.readings.values().all(|reading| reading.about == Some(splitter) && reading.port == Some(2))
    );
    let has = |kind| survey.readings.values().any(|reading| reading.measured == kind);
    assert!(has(ReadingKind::Level { mhz: 603.0, dbmv: -3.5 }));
    assert!(has(ReadingKind::ErrorRatio { mhz: 603.0, db: 36.0 }));
    assert!(
        hand.says("output 2 of S1") && hand.says("\u{2212}3.5 dBmV at 603 MHz") && hand.says("36 dB MER")
    );
    // At the next place the frequencies stand there already: a level and a press each.
    hand.add("outlet");
    let outlet = hand.tagged("O1");
    hand.press("meter");
    let before = hand.touches;
    for dbmv in ["-5", "-9", "-15"] {
        hand.measure("dbmv", dbmv);
        hand.press("keep");
    }
    assert_eq!(hand.touches - before, 6);
    hand.measure("sends", "44");
    hand.press("keep");
    let survey = hand.survey();
    let mut levels: Vec<_> = survey
        .readings_at(outlet)
        .filter_map(|reading| match reading.measured {
            ReadingKind::Level { mhz, dbmv } => Some((format!("{mhz}"), format!("{dbmv}"))),
            _ => None,
        })
        .collect();
    levels.sort();
    let told = [("111", "-5"), ("603", "-9"), ("999", "-15")];
    assert_eq!(levels, told.map(|(mhz, dbmv)| (mhz.to_owned(), dbmv.to_owned())));
    assert!(
        survey.readings_at(outlet).any(|reading| reading.measured == ReadingKind::ModemSends { dbmv: 44.0 })
    );
    // Measured again at the same frequency: one reading, the new figure.
    hand.measure("mhz", "603");
    hand.measure("dbmv", "-7");
    hand.press("keep");
    assert_eq!(hand.survey().readings_at(outlet).count(), 4);
    // A level without a frequency is asked about, and what was typed is still there.
    hand.measure("dbmv", "3");
    hand.press("keep");
    assert!(hand.says("write the frequency too") && hand.says("3"));
}

#[test]
fn a_locked_entry_blocks_nobody() {
    let home = home();
    let mut hand = Hand::in_new(home.path(), "Locked");
    hand.press("way-in");
    let ways = hand.row("ways in");
    hand.press(&ways);
    hand.press("cannot-reach");
    assert_eq!(hand.screen().name, "free-here");
    hand.press("at:outlet");
    assert_eq!(hand.screen().name, "ask-room-of");
    hand.write("new-room", "Office");
    hand.press("next");
    assert_eq!(hand.screen().name, "ask-plugged");
    hand.pick("plugged", &["tv"]);
    hand.press("next");
    assert_eq!(hand.screen().name, "ask-fed-by");
    hand.pick("feeder", &["unsure"]);
    assert_eq!(hand.screen().name, "free-part");
    let part = hand.survey().parts[&hand.tagged("O1")].clone();
    assert!(part.room.is_some() && part.plugged.is_some() && part.feed.is_none());
    // On with the guide: it does not ask for the entry again, and does not come back to the outlet.
    hand.press("next");
    assert_eq!(hand.screen().name, "ask-whose");
    hand.pick("whose", &["own"]);
    assert_eq!(hand.screen().name, "ask-depends");
    // In front of a splitter of which nothing can be told: every answer is "not sure", and it comes to an end.
    hand.overview();
    hand.press("free-here");
    hand.press("at:splitter");
    assert_eq!(hand.screen().name, "ask-label");
    hand.press("unsure");
    assert_eq!(hand.screen().name, "ask-legs");
    hand.press("unsure");
    assert_eq!(hand.screen().name, "ask-outputs");
    hand.press("others-too");
    hand.pick("feeder", &["unsure"]);
    assert_eq!(hand.screen().name, "free-part");
    assert_eq!(hand.survey().parts[&hand.tagged("S1")].end(2), Some(PortEnd::LooseEnd));
    // Later, at the entry after all.
    hand.overview();
    hand.press("free-here");
    hand.press("at:entry");
    assert_eq!(hand.screen().name, "ask-ways-in");
}

//! Privacy, the outlet test, forecast against test, and the handover. Every house here is invented.

use crate::result_house::{Walk, key, main_key, needy, text, walk};
use guide::screen::{Ability, Block, NoticeRole};
use house::record::{Asked, CableKind, ReadingKind, Reply, ServiceKind, TestReach};
use houses::part_id;

#[test]
fn privacy_asks_whether_the_password_is_set_and_counts_nodes() {
    let mut walk = walk(needy());
    let screen = walk.go("private");
    assert!(!screen.blocks.iter().any(|block| matches!(block, Block::Writing(_))), "no place for a password");
    assert!(text(&screen).contains("no filter yet"));
    walk.pick("password", "yes");
    walk.measure("nodes", "5");
    let screen = walk.press("next");
    // Two adapters are known: five are more.
    assert_eq!(screen.name, "private");
    assert!(text(&screen).contains("more than the 2 known here"), "{}", text(&screen));
    walk.measure("nodes", "2");
    assert_eq!(walk.press("next").name, "tests");
    let survey = walk.survey();
    let counted: Vec<_> = survey.readings.values().map(|reading| reading.measured).collect();
    assert_eq!(counted, [ReadingKind::NodesSeen { count: 2 }]);
    assert_eq!(survey.reply(survey.id, Asked::PrivatePassword), Some(Reply::Yes));
}

#[test]
fn the_providers_network_is_left_alone() {
    let mut walk = walk(needy().service(ServiceKind::ProviderNetwork, None));
    assert!(text(&walk.go("private")).contains("they get no password from you"));
}

fn test(walk: &mut Walk, kind: &str, figures: &[(&str, &str)]) {
    let screen = walk.go("tests");
    walk.press(&key(&screen, "test:"));
    walk.pick("kind", kind);
    for (key, typed) in figures {
        walk.measure(key, typed);
    }
    assert_eq!(walk.press("keep").name, "tests");
}

#[test]
fn readings_are_written_with_how_they_were_taken() {
    let mut walk = walk(needy());
    test(&mut walk, "house-radio", &[("down", "300"), ("up", "200"), ("latency", "4"), ("lost", "0")]);
    test(&mut walk, "page", &[("phy", "3200"), ("sent", "3"), ("received", "-42")]);
    let survey = walk.survey();
    let office = part_id(&survey, "O2");
    assert_eq!(survey.readings_at(office).count(), 5);
    for reading in survey.readings.values() {
        let how = reading.how.expect("asked first");
        let of_page = matches!(reading.measured, ReadingKind::PhyRate { .. } | ReadingKind::Power { .. });
        assert_eq!(how.reach, if of_page { TestReach::AdapterPage } else { TestReach::House });
        assert_eq!(how.over_radio, !of_page);
    }
    // 3 dBm sent and -42 dBm received: 45 dB lost on the way.
    let loss: Vec<_> =
        survey.readings.values().filter_map(|reading| reading.measured.path_loss_db()).collect();
    assert_eq!(loss, [45.0]);
}

#[test]
fn half_a_test_is_asked_for_again_and_not_lost() {
    let mut walk = walk(needy());
    let screen = walk.go("tests");
    walk.press(&key(&screen, "test:"));
    walk.pick("kind", "house");
    walk.measure("down", "300");
    let screen = walk.press("keep");
    assert!(text(&screen).contains("Please write both"), "{}", text(&screen));
    assert!(text(&screen).contains("300"));
    // Nor is it passed over for what is chosen beside it.
    walk.pick("behind", "run");
    let screen = walk.press("keep");
    assert!(text(&screen).contains("Please write both"), "{}", text(&screen));
    assert!(walk.survey().readings.is_empty());
}

#[test]
fn a_test_at_the_plans_rate_blames_no_coax() {
    let mut walk = walk(needy());
    // The plan gives 250 Mb/s down.
    test(&mut walk, "internet", &[("down", "245"), ("up", "24")]);
    let said = text(&walk.go("compare"));
    assert!(said.contains("the plan limits it") && !said.contains("below what was expected"), "{said}");
    assert!(!said.contains("Look first at"), "{said}");
}

#[test]
fn below_the_shown_range_names_a_culprit() {
    // A sound, short way: 900 Mb/s and more are expected.
    let house = needy().at("S1").made_for(5.0, 1675.0).at("O2").over(CableKind::Six, 20.0);
    let mut walk = walk(house);
    test(&mut walk, "house", &[("down", "300"), ("up", "2400")]);
    let said = text(&walk.go("compare"));
    assert!(said.contains("To the room 300 Mb/s: below what was expected"), "{said}");
    assert!(!said.contains("From the room 2,400 Mb/s: below"), "{said}");
    assert!(said.contains("Look first at"), "{said}");
    assert!(said.contains("What the tests show"), "{said}");
}

#[test]
fn handover_writes_the_report_and_the_file() {
    let mut walk = walk(needy());
    walk.go("work");
    walk.press("step:0");
    walk.press("done");
    let screen = walk.go("handover");
    assert!(screen.abilities.contains(&Ability::Share));
    assert!(text(&screen).contains("One change was done"), "{}", text(&screen));
    assert!(text(&screen).contains("Left open"));
    // A press alone says what is missing.
    assert!(text(&walk.press("file-out:An invented house.html")).contains("choose a place"));
    let report = walk.home.path().join("report.html");
    walk.file("file-out:An invented house.html", &report).expect("written");
    let page = std::fs::read_to_string(&report).expect("a report");
    assert!(page.starts_with("<!DOCTYPE html>") && page.contains("Nowhere Lane 1"));
    let told = walk.screen().notices;
    assert!(told[0].words.contains("report.html") && told[0].words.contains("work list"), "{told:?}");
    // Nothing is replaced before somebody says so.
    std::fs::write(&report, "<!DOCTYPE html>an older one").expect("an older report");
    walk.file("file-out:An invented house.html", &report).expect("asked on the screen");
    let screen = walk.screen();
    assert!(text(&screen).contains("report.html") && screen.keys().contains(&"replace"), "{}", text(&screen));
    assert!(std::fs::read_to_string(&report).expect("still there").contains("an older one"));
    walk.press("replace");
    assert_eq!(std::fs::read_to_string(&report).expect("a report"), page);
    // A report goes neither into a survey's file nor over a page that is none of ours to replace.
    let [survey, diary] = ["house.lwk", "diary.html"].map(|name| walk.home.path().join(name));
    std::fs::write(&diary, "dear diary").expect("a diary");
    for (file, says) in [(&survey, "ends in .html"), (&diary, "something else")] {
        walk.file("file-out:An invented house.html", file).expect("told on the screen");
        let told = walk.screen().notices;
        assert!(matches!(told.as_slice(), [one] if one.role == NoticeRole::Problem), "{told:?}");
        assert!(told[0].words.contains(says), "{told:?}");
    }
    assert!(!survey.exists());
    assert_eq!(std::fs::read_to_string(&diary).expect("still there"), "dear diary");

    // One page alone is no handover, and stays chosen until that is taken back.
    walk.pick("extent", "one-page");
    let sheet = walk.home.path().join("sheet.html");
    walk.file("file-out:An invented house.html", &sheet).expect("written");
    let sheet = std::fs::read_to_string(&sheet).expect("a page");
    assert!(sheet.contains("What each room gets") && sheet.len() < page.len() && !sheet.contains("href=\"#"));
    walk.pick("extent", "whole");

    walk.press("without:owner");
    let bare = walk.home.path().join("bare.html");
    walk.file("file-out:An invented house.html", &bare).expect("written");
    assert!(!std::fs::read_to_string(&bare).expect("a report").contains("Nowhere Lane 1"));
    let file = walk.home.path().join("house.lwk");
    walk.file("file-out:An invented house.lwk", &file).expect("packed");
    assert!(facts::file::recognise(&file));
    let packed = std::fs::read(&file).expect("a file");
    let holds = |text: &str| packed.windows(text.len()).any(|window| window == text.as_bytes());
    assert!(!holds("Nowhere Lane 1"));
    let screen = walk.screen();
    assert!(text(&screen).contains("All is there"), "{}", text(&screen));
    assert_eq!(main_key(&screen), Some("finish"));
}

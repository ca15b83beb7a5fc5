//! The rooms on page one: bars, their words, scale and key tell of the same tests and the same rooms. Every house here is
//! invented.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::forecast::Options as Draws;
use advice::worklist::{Options, worklist};
use house::record::{CableKind, HowMeasured, ReadingKind, Survey, TestReach};
use houses::{House, good_house};
use scraper::{Html, Selector};
use telling::report::{Provenance, html};
use telling::words::{Figures, Language};

fn page(survey: &Survey) -> String {
    let draws = Draws { draws: 8, seed: 1, points: 89, settles: false };
    let options = Options { screening: draws, stating: draws, most_steps: 4, ..Options::default() };
    let list = worklist(survey, &options).expect("a sound survey");
    html(survey, &list, Provenance::default(), &Language::english(Figures::default()))
}

fn texts(page: &str, what: &str) -> Vec<String> {
    let selector = Selector::parse(what).expect("a selector");
    let found = Html::parse_document(page);
    found.select(&selector).map(|one| one.text().filter(|text| !text.trim().is_empty()).collect()).collect()
}

/// A test of so many Mb/s both ways at the Office.
fn tested(house: House, reach: TestReach, socket_mbps: Option<u32>, mbps: f64) -> House {
    let how = HowMeasured { socket_mbps, ..HowMeasured::new(reach, false) };
    house.at("O2").reads_how(ReadingKind::Throughput { down_mbps: mbps, up_mbps: mbps }, Some(how))
}

#[test]
fn beside_a_wish_that_another_test_decides_a_mark_has_its_own_rate() {
    // A socket of 100 Mb/s passes 94.9 Mb/s of TCP (RFC 6349, 2011, section 4.1.1).
    let of_coax = |wish, mbps| {
        let socket = (mbps < 95.0).then_some(100);
        tested(good_house().wish("Office", wish), TestReach::House, socket, mbps)
    };
    let told = |house: House| {
        let words: Vec<String> = texts(&page(&house.survey()), "ul.rooms li p.says");
        words.join(" | ").replace(['\u{2068}', '\u{2069}', '\u{a0}', '\u{202f}'], " ").replace("  ", " ")
    };
    let (held, held_itself) = ("measured 94 Mb/s or more", "measured: the test’s own network socket held it");
    let internet = |house| tested(house, TestReach::Internet, None, 250.0);
    let by_internet = told(internet(of_coax(200.0, 94.0)));
    assert!(by_internet.contains("Measured: 250 Mb/s"), "{by_internet}");
    assert!(by_internet.contains(held) && !by_internet.contains(held_itself), "{by_internet}");
    // One that no socket held, too.
    let slower = told(internet(of_coax(200.0, 150.0)));
    assert!(slower.contains("Measured: 250 Mb/s") && slower.contains("measured 150 Mb/s"), "{slower}");
    // The same test decides: its rate stands there once.
    let by_itself = told(of_coax(50.0, 94.0));
    assert!(by_itself.contains("Measured: 94 Mb/s"), "{by_itself}");
    assert!(by_itself.contains(held_itself) && !by_itself.contains(held), "{by_itself}");
    // No test decides.
    let open = told(of_coax(200.0, 94.0));
    assert!(open.contains(held) && !open.contains("Measured: "), "{open}");
}

#[test]
fn the_key_is_of_the_rooms_that_are_shown() {
    // Rooms with a wish stand first: without one, the last of these is not shown.
    let house = |rooms: u8| {
        let house = good_house().at("S1").with(|split| split.rating.legs = 8);
        let asked = (1..rooms).fold(house, |house, number| {
            let (tag, room) = (format!("O{}", number + 2), format!("Room {number}"));
            let house = house.outlet(&tag, &room).from("S1", number + 2).over(CableKind::Six, 9.0);
            house.adapter("2.5").wish(&room, 100.0)
        });
        page(&tested(asked, TestReach::House, None, 600.0).survey())
    };
    let key = |page: &str| texts(page, "ul.bar-key li").join(" ");
    let (all, cut) = (house(6), house(7));
    assert_eq!((texts(&all, "ul.rooms li").len(), texts(&cut, "ul.rooms li").len()), (6, 6));
    assert!(key(&all).contains("measured"), "{}", key(&all));
    assert!(!key(&cut).contains("measured") && key(&cut).contains("wished"), "{}", key(&cut));
}

//! Where the network could start, while nobody has said where it does: seen on the forecast, chosen with a touch. The house here
//! is invented.

use guide::screen::Block;

use crate::homeowner::choices;
use crate::result_house::{Walk, needy, sound, text};

/// What the rows are called.
const OUTLETS: &str = "Outlets for it, the best first";

/// Each row that leads to the question, with what it says.
fn places(screen: &guide::Screen) -> Vec<(String, String)> {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) if rows.name == OUTLETS => Some(&rows.rows),
        _ => None,
    });
    rows.flatten().map(|row| (row.head.clone(), row.says.clone())).collect()
}

#[test]
fn the_forecast_says_from_where_most_gets_through_and_so_does_the_question() {
    let mut house = needy().survey();
    for part in house.parts.values_mut() {
        part.adapter = part.adapter.take().filter(|adapter| !adapter.bridge);
    }
    let mut walk = Walk::of(&house);
    let screen = walk.go("forecast");
    sound(&screen);
    let told = places(&screen);
    assert!(!told.is_empty(), "{}", text(&screen));
    let asked = walk.press("ask:\"router_at\"");
    let offers: Vec<_> = choices(&asked).flat_map(|choice| choice.options.clone()).collect();
    for (head, says) in &told {
        let offer = offers.iter().find(|offer| offer.about == *says);
        assert!(
            offer.is_some_and(|offer| head.contains(&offer.words) || offer.words.contains(head)),
            "{head}: {offers:?}"
        );
    }
    let best = offers.iter().find(|offer| offer.about == told[0].1).expect("the best");
    let rate = told[0].1.split("gets ").last().expect("a rate").trim_end_matches('.').to_owned();
    walk.pick("outlet", &best.key);
    let screen = walk.go("forecast");
    assert!(places(&screen).is_empty(), "{}", text(&screen));
    assert!(text(&screen).contains(rate.trim_start_matches("likely ")), "{rate}: {}", text(&screen));
}

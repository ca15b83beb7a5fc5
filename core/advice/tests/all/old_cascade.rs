//! Several old splitters in a row: each may be one of those that lose far more above their band than on it.
#![expect(clippy::unwrap_used, reason = "a failed test is what is wanted")]

use advice::forecast::{Options, PathForecast, forecast};
use advice::verdict::doubt_of_link;
use house::record::{CableKind, EntryKind, Survey};
use houses::{House, part_id};

/// The bridge at the first splitter of so many in a row, the office behind the last. All reach up to `top_mhz`.
fn row(splitters: usize, top_mhz: f64) -> Survey {
    let house = House::new().entry("E1", EntryKind::Cable).filter("F1").from("E1", 1);
    let house = (1..=splitters).fold(house, |house, at| {
        let (above, port) = if at == 1 { ("F1".to_owned(), 1) } else { (format!("S{}", at - 1), 2) };
        let tag = format!("S{at}");
        let house = house.splitter(&tag, 3).from(&above, port).over(CableKind::FiftyNine, 8.0);
        house.made_for(5.0, top_mhz).with(|part| part.rating.says_moca = top_mhz > 1600.0)
    });
    let house = house.outlet("O1", "Hall").from("S1", 1).over(CableKind::Six, 10.0).adapter("2.5").bridge();
    let last = format!("S{splitters}");
    let house = house.outlet("O2", "Office").from(&last, 3).over(CableKind::FiftyNine, 8.0).adapter("2.5");
    house.survey()
}

fn office(survey: &Survey) -> (PathForecast, bool) {
    let told = forecast(survey, &Options::default()).unwrap();
    let outlet = part_id(survey, "O2");
    let is_doubted = doubt_of_link(survey, told.room(outlet).unwrap()).is_some();
    (told.path(outlet).unwrap().clone(), is_doubted)
}

#[test]
fn a_row_of_old_ones_may_not_link_and_says_so() {
    let (old, is_doubted) = office(&row(3, 900.0));
    assert!(old.may_not_link() && is_doubted, "links in {} of the draws", old.links);
    // Where it links it may still be fast: neither end of the range is left out.
    assert!(old.down.low < 0.25 * old.down.high && old.down.high > 2000.0, "{:?}", old.down);
    // As near as can be: the same row of splitters that are made for the band.
    let (made, is_doubted) = office(&row(3, 1675.0));
    assert!(!made.may_not_link() && !is_doubted, "links in {} of the draws", made.links);
    // One old splitter is no row.
    let (one, is_doubted) = office(&row(1, 900.0));
    assert!(!one.may_not_link() && !is_doubted, "links in {} of the draws", one.links);
}

//! The word on a label decides whether a splitter counts as made for MoCA; the band alone leaves it open.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::forecast::{Options, forecast};
use advice::worklist::applied;
use coax::Span;
use house::rating::Band;
use house::record::{ChangeKind, Part, PartKind, Survey};
use houses::change_cases::house;
use houses::part_id;

fn with(say: impl FnOnce(&mut Part)) -> Survey {
    // Without a filter that sends all back the rooms hear each other through the splitter's isolation.
    house(10.0).without("F1").at("S1").with(say).survey()
}

fn to(high_mhz: f64) -> Band {
    Band { low_mhz: 5.0, high_mhz }
}

fn loss(survey: &Survey) -> Span {
    let through = forecast(survey, &Options::default()).expect("a sound survey");
    through.path(part_id(survey, "O2")).expect("a path").loss
}

#[test]
fn the_word_decides_and_the_band_alone_leaves_it_open() {
    let said = loss(&with(|part| (part.rating.band, part.rating.says_moca) = (Some(to(1675.0)), true)));
    let open = loss(&with(|part| (part.rating.band, part.rating.says_moca) = (Some(to(1675.0)), false)));
    let dish = loss(&with(|part| {
        (part.rating.band, part.rating.says_moca) = (Some(to(2400.0)), false);
        part.label = Some("SATELLITE 5-2400".into());
    }));
    assert!(said.likely + 1.0 < open.likely && open.likely + 1.0 < dish.likely, "{said:?} {open:?} {dish:?}");
    // What the band leaves open holds both.
    assert!(open.low < said.likely + 1.0 && open.high > dish.likely - 1.0, "{said:?} {open:?} {dish:?}");
}

/// Near as can be: a label that ends just below the band's top is no other part than one that ends at it.
#[test]
fn a_few_megahertz_on_a_label_are_no_leap() {
    let [below, above] = [1600.0, 1675.0]
        .map(|top| loss(&with(|part| (part.rating.band, part.rating.says_moca) = (Some(to(top)), false))));
    assert!((below.likely - above.likely).abs() < 4.0, "{below:?} {above:?}");
}

/// So it is where the outputs are those of a tap: what a MoCA tap lets through from one room to another is more.
#[test]
fn the_word_decides_on_a_tap_too() {
    let tap = |says_moca| {
        // Both rooms on taps: the through output is port 1.
        let house = house(10.0).without("F1").at("S1").with(|part| {
            part.kind = PartKind::Tap;
            (part.rating.legs, part.rating.tap_db) = (3, Some(10.0));
            (part.rating.band, part.rating.says_moca) = (Some(to(1675.0)), says_moca);
        });
        loss(&house.at("O1").from("S1", 3).survey())
    };
    let (said, open) = (tap(true), tap(false));
    assert!(said.likely < open.likely, "{said:?} {open:?}");
}

/// The part that a swap asks for is the part that the forecast counted with: it says MoCA.
#[test]
fn the_new_splitter_says_moca() {
    let old = with(|part| part.rating.band = Some(to(1000.0)));
    let change = ChangeKind::SwapSplitter { splitter: part_id(&old, "S1"), legs: 2 };
    let after = applied(change, &old);
    assert!(after.parts[&part_id(&old, "S1")].rating.says_moca);
    let needs = format!("{:?}", advice::worklist::effort(change, &old).parts);
    assert!(needs.contains("need-splitter"), "{needs}");
}

//! A room's bar: whatever stands on it, all of it lies on the figure.

use coax::Span;
use phrase::Phrase;
use proptest::prelude::*;
use telling::figure::{Figure, Ink, RoomBar, Shape, room_bar};

use super::measured::outside;

fn figure(bar: &RoomBar, scale_end: f64) -> Figure {
    room_bar(bar, scale_end, Phrase::new("text-said"), Phrase::new("text-said"))
}

fn rate() -> impl Strategy<Value = f64> {
    prop_oneof![0.0..4000.0, Just(500.0), Just(1000.0), Just(2500.0), Just(0.0)]
}

fn bar() -> impl Strategy<Value = RoomBar> {
    let some = || proptest::option::of(rate());
    let range = proptest::option::of((rate(), rate(), rate()).prop_map(|(a, b, c)| {
        let mut ends = [a, b, c];
        ends.sort_by(f64::total_cmp);
        Span { low: ends[0], likely: ends[1], high: ends[2] }
    }));
    (range, some(), some(), any::<bool>(), some())
        .prop_map(|(range, wish, measured, capped, after)| RoomBar { range, wish, measured, capped, after })
}

/// How far the line of the pen goes on from the middle of its diamond, pixels; `None` where there is no arrow.
fn arrow(figure: &Figure) -> Option<f64> {
    figure.marks.iter().filter(|mark| mark.ink == Ink::Measured).find_map(|mark| match &mark.shape {
        Shape::Line { from, to } => Some((to.x - from.x) * figure.natural_width),
        _ => None,
    })
}

proptest! {
    #[test]
    fn all_of_a_bar_lies_on_its_figure(bars in prop::collection::vec(bar(), 1..5)) {
        let scale_end = RoomBar::scale_end(&bars);
        for bar in &bars {
            let drawn = figure(bar, scale_end);
            prop_assert_eq!(outside(&drawn), Vec::<String>::new(), "{:?} up to {}", bar, scale_end);
            // And the scale leaves room for all of the arrow.
            let arrow = arrow(&drawn);
            prop_assert_eq!(arrow.is_some(), bar.capped && bar.measured.is_some());
            prop_assert!(arrow.is_none_or(|length| (length - 24.0).abs() < 1e-6), "{:?}", arrow);
        }
        // On a scale that ends too soon, too.
        for bar in &bars {
            prop_assert_eq!(outside(&figure(bar, 500.0)), Vec::<String>::new(), "{:?}", bar);
        }
    }
}

//! What of a drawing can be measured: whether texts overlap, what reaches out of it, which parts have a row.

use std::collections::BTreeSet;

use facts::fact::SubjectId;
use house::record::Survey;
use telling::figure::map::{COLUMN, PAGE};
use telling::figure::{
    Anchor, Figure, Folding, Layout, Mark, Shape, Touch, WiringMap, even_width, text_width,
};

use crate::report_house::english;

/// Every layout.
pub(super) const LAYOUTS: [Layout; 3] = [Layout::Narrow, Layout::Wide(COLUMN), Layout::Wide(PAGE)];

/// Left, top, right and bottom of what a text may take up, in natural pixels: by the widest that it may come out.
pub(super) fn text_box(mark: &Mark, scale: f64) -> Option<(String, [f64; 4])> {
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

pub(super) fn are_apart(a: &[f64; 4], b: &[f64; 4]) -> bool {
    let close = 0.01;
    a[2] <= b[0] + close || b[2] <= a[0] + close || a[3] <= b[1] + close || b[3] <= a[1] + close
}

/// Texts that may come to lie over one another. Those of one row of the sheet are compared with their neighbours only.
pub(super) fn overlaps(figure: &Figure) -> Vec<(String, String)> {
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
pub(super) fn sides(mark: &Mark, scale: f64) -> [f64; 4] {
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
pub(super) fn outside(figure: &Figure) -> Vec<String> {
    let (width, height) = (figure.natural_width, figure.natural_width / figure.aspect);
    let reaches = |mark: &&Mark| {
        let [left, top, right, bottom] = sides(mark, width);
        left < -0.01 || top < -0.01 || right > width + 0.01 || bottom > height + 0.01
    };
    figure.marks.iter().filter(reaches).map(|mark| format!("{:?}", mark.shape)).collect()
}

/// The marks that are there to be touched, one a row.
pub(super) fn rows(figure: &Figure) -> Vec<&Mark> {
    figure.marks.iter().filter(|mark| mark.touch.is_some() && mark.name.is_some()).collect()
}

/// The parts that have a row of their own.
pub(super) fn parts(figure: &Figure) -> BTreeSet<SubjectId> {
    rows(figure).into_iter().filter_map(Mark::part).collect()
}

/// The parts at which a touch unfolds something.
pub(super) fn unfold(figure: &Figure) -> BTreeSet<SubjectId> {
    let of = |mark: &&Mark| match mark.touch {
        Some(Touch::Unfold(part)) => Some(part),
        _ => None,
    };
    rows(figure).iter().filter_map(of).collect()
}

pub(super) fn texts(figure: &Figure) -> Vec<&str> {
    let texts = figure.marks.iter().filter_map(|mark| {
        if let Shape::Text { text, .. } = &mark.shape { Some(text.as_str()) } else { None }
    });
    texts.collect()
}

pub(super) fn sound(figure: &Figure) {
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
pub(super) fn check(survey: &Survey) {
    for layout in LAYOUTS {
        let map = WiringMap::of(survey).laid_out(layout);
        sound(&map.figure(&english()));
        let unfolded = map.folded(Folding::Nothing).figure(&english());
        sound(&unfolded);
        assert_eq!(parts(&unfolded), survey.parts.keys().copied().collect());
        assert_eq!(rows(&unfolded).len(), survey.parts.len(), "{layout:?}");
    }
}

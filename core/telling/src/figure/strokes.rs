//! Lines that a plain dash cannot draw: with slanting strokes, and double.

use super::mark::{Dash, Point};

/// How far the strokes of a struck line stand apart, in the unit of the points.
const APART: f64 = 12.0;
/// How far a stroke reaches to both sides of its line.
const REACH: f64 = 3.0;
/// Half of what parts the two lines of a double one.
const HALF: f64 = 2.0;

/// A piece of a straight line.
pub type Piece = (Point, Point);

/// What is drawn of the way through these points, in the pixels of a page: nothing where a plain line with its dash
/// will do.
pub fn pieces(points: &[Point], dash: Dash) -> Vec<Piece> {
    let legs = points.windows(2).filter_map(|pair| match pair {
        [from, to] if length(*from, *to) > 0.0 => Some((*from, *to)),
        _ => None,
    });
    match dash {
        Dash::Solid | Dash::Dashed | Dash::Dotted | Dash::Long => Vec::new(),
        Dash::Struck => legs.flat_map(struck).collect(),
        Dash::Double => legs.flat_map(double).collect(),
    }
}

fn length(from: Point, to: Point) -> f64 {
    (to.x - from.x).hypot(to.y - from.y)
}

/// The line itself, and a stroke across it at every step.
fn struck((from, to): Piece) -> Vec<Piece> {
    let whole = length(from, to);
    let (along, down) = ((to.x - from.x) / whole, (to.y - from.y) / whole);
    let mut pieces = vec![(from, to)];
    let mut at = APART / 2.0;
    while at < whole && pieces.len() < 1000 {
        let middle = Point { x: from.x + along * at, y: from.y + down * at };
        // Slanting: as far along the line as across it.
        let (right, under) = ((along - down) * REACH, (down + along) * REACH);
        pieces.push((
            Point { x: middle.x - right, y: middle.y - under },
            Point { x: middle.x + right, y: middle.y + under },
        ));
        at += APART;
    }
    pieces
}

/// Two lines side by side.
fn double((from, to): Piece) -> Vec<Piece> {
    let whole = length(from, to);
    let (right, under) = (-(to.y - from.y) / whole * HALF, (to.x - from.x) / whole * HALF);
    let beside = |point: Point, by: f64| Point { x: point.x + right * by, y: point.y + under * by };
    [1.0, -1.0].map(|by| (beside(from, by), beside(to, by))).to_vec()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(x: f64, y: f64) -> [Point; 2] {
        [Point { x: 0.0, y: 0.0 }, Point { x, y }]
    }

    #[test]
    fn a_struck_line_has_a_stroke_every_twelve() {
        // 36 along: the line, and strokes at 6, 18 and 30.
        let pieces = pieces(&line(36.0, 0.0), Dash::Struck);
        assert_eq!(pieces.len(), 4);
        let middles: Vec<_> = pieces.iter().skip(1).map(|(a, b)| f64::midpoint(a.x, b.x).round()).collect();
        assert_eq!(middles, [6.0, 18.0, 30.0]);
        assert!(
            pieces.iter().skip(1).all(|(a, b)| (a.x - b.x).abs() > 1.0 && (a.y - b.y).abs() > 1.0),
            "slant"
        );
    }

    #[test]
    fn a_double_line_stands_four_apart_all_along() {
        // A slope of 3 to 4 is 5 long, so both lines are, and each end stands 2 off (Euclid I.47).
        let points = line(3.0, 4.0);
        for (from, to) in pieces(&points, Dash::Double) {
            assert!((length(from, to) - 5.0).abs() < 1e-9);
            assert!(
                (length(from, points[0]) - 2.0).abs() < 1e-9 && (length(to, points[1]) - 2.0).abs() < 1e-9
            );
        }
    }

    #[test]
    fn what_a_dash_can_draw_is_left_to_it() {
        for dash in [Dash::Solid, Dash::Dashed, Dash::Dotted, Dash::Long] {
            assert!(pieces(&line(36.0, 0.0), dash).is_empty());
        }
        assert!(
            pieces(&[Point { x: 1.0, y: 1.0 }; 2], Dash::Struck).is_empty(),
            "no length, no way along it"
        );
    }
}

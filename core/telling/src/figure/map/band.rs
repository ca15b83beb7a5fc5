//! The band under the weakest way: the outline of all its cables together, so that it has two edges and no seam where
//! they meet.

use super::ways::Spot;
use crate::figure::mark::{Dash, Fill, Ink, Weight};
use crate::figure::sheet::{Sheet, pen};

/// From the middle of a cable to an edge of the band, in CSS pixels.
const HALF: f64 = 7.0;
/// Ways longer than this are drawn piece by piece: no house has such a way.
const MOST_PIECES: usize = 200;

/// Lays the band under pieces of cable, each upright or level.
pub(super) fn put(sheet: &mut Sheet, pieces: &[(Spot, Spot)]) {
    let boxes: Vec<_> = pieces.iter().map(around).collect();
    sheet.dip(Ink::Weak);
    for group in boxes.chunks(MOST_PIECES) {
        for outline in outlines(group) {
            sheet.area(&outline, pen(Weight::Plain, Dash::Solid), Fill::Faint);
        }
    }
}

/// Left, top, right and bottom of the band about a piece.
fn around(((x1, y1), (x2, y2)): &(Spot, Spot)) -> [f64; 4] {
    [x1.min(*x2) - HALF, y1.min(*y2) - HALF, x1.max(*x2) + HALF, y1.max(*y2) + HALF]
}

fn edges(of: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut edges: Vec<_> = of.collect();
    edges.sort_by(f64::total_cmp);
    edges.dedup_by(|a, b| (*a - *b).abs() < 0.01);
    edges
}

fn place(edges: &[f64], at: f64) -> usize {
    edges.iter().position(|edge| (edge - at).abs() < 0.01).unwrap_or(0)
}

/// The outlines of what upright boxes cover together: a grid of their edges, its covered cells, and the way round them
/// with what is covered at the right hand.
fn outlines(boxes: &[[f64; 4]]) -> Vec<Vec<Spot>> {
    let xs = edges(boxes.iter().flat_map(|[left, _, right, _]| [*left, *right]));
    let ys = edges(boxes.iter().flat_map(|[_, top, _, bottom]| [*top, *bottom]));
    let wide = xs.len();
    let mut covered = vec![false; wide * ys.len()];
    for [left, top, right, bottom] in boxes {
        for row in place(&ys, *top)..place(&ys, *bottom) {
            for column in place(&xs, *left)..place(&xs, *right) {
                if let Some(cell) = covered.get_mut(row * wide + column) {
                    *cell = true;
                }
            }
        }
    }
    let is_covered = |column: Option<usize>, row: Option<usize>| {
        column
            .zip(row)
            .is_some_and(|(column, row)| column < wide && covered.get(row * wide + column) == Some(&true))
    };
    // Each piece of the outline, from corner to corner of the grid.
    let mut pieces: Vec<((usize, usize), (usize, usize))> = Vec::new();
    for row in 0..ys.len() {
        for column in 0..wide {
            if !is_covered(Some(column), Some(row)) {
                continue;
            }
            let (right, under) = (column + 1, row + 1);
            if !is_covered(Some(column), row.checked_sub(1)) {
                pieces.push(((column, row), (right, row)));
            }
            if !is_covered(Some(right), Some(row)) {
                pieces.push(((right, row), (right, under)));
            }
            if !is_covered(Some(column), Some(under)) {
                pieces.push(((right, under), (column, under)));
            }
            if !is_covered(column.checked_sub(1), Some(row)) {
                pieces.push(((column, under), (column, row)));
            }
        }
    }
    let mut found = Vec::new();
    while let Some((start, mut at)) = pieces.pop() {
        let mut corners = vec![start];
        while at != start {
            corners.push(at);
            let Some(next) = pieces.iter().position(|(from, _)| *from == at) else { break };
            at = pieces.swap_remove(next).1;
        }
        let spots: Vec<_> =
            corners.into_iter().filter_map(|(column, row)| Some((*xs.get(column)?, *ys.get(row)?))).collect();
        found.push(without_straight(&spots));
    }
    found
}

/// The corners at which an outline turns.
fn without_straight(spots: &[Spot]) -> Vec<Spot> {
    let many = spots.len();
    let turns = |place: &usize| {
        let spot = |at: usize| spots.get(at % many.max(1)).copied().unwrap_or_default();
        let (before, here, after) = (spot(place + many - 1), spot(*place), spot(place + 1));
        let level = (before.1 - here.1).abs() < 0.01 && (here.1 - after.1).abs() < 0.01;
        let upright = (before.0 - here.0).abs() < 0.01 && (here.0 - after.0).abs() < 0.01;
        !level && !upright
    };
    (0..many).filter(turns).filter_map(|place| spots.get(place).copied()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bend_has_one_outline_of_six_corners() {
        // A way down and then to the right: an L of two boxes 14 thick has six corners (its outline by hand).
        let pieces = [((0.0, 0.0), (0.0, 50.0)), ((0.0, 50.0), (40.0, 50.0))];
        let boxes: Vec<_> = pieces.iter().map(around).collect();
        let found = outlines(&boxes);
        assert_eq!(found.len(), 1);
        let mut corners = found[0].clone();
        corners.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
        assert_eq!(
            corners,
            [(-7.0, -7.0), (-7.0, 57.0), (7.0, -7.0), (7.0, 43.0), (47.0, 43.0), (47.0, 57.0)]
        );
    }

    #[test]
    fn two_ways_apart_have_an_outline_each() {
        let boxes = [around(&((0.0, 0.0), (0.0, 9.0))), around(&((90.0, 0.0), (90.0, 9.0)))];
        assert_eq!(outlines(&boxes).len(), 2);
    }
}

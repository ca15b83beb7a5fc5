//! Regions of a map of chances, and the smallest rectangle around each.

use crate::quad::{Point, Quad, distance};

/// A region that hangs together: its places, and the mean chance in it.
pub(crate) struct Region {
    places: Vec<(usize, usize)>,
    /// The mean of its chances.
    pub mean: f32,
}

impl Region {
    /// How many places it has.
    pub(crate) fn len(&self) -> usize {
        self.places.len()
    }
}

/// The regions of places whose chance is above a bound; places that touch at a corner hang together.
pub(crate) fn regions(chances: &[f32], width: usize, bound: f32) -> Vec<Region> {
    let height = chances.len() / width.max(1);
    let mut is_open: Vec<bool> = chances.iter().map(|chance| *chance > bound).collect();
    let mut found = Vec::new();
    for start in 0..is_open.len() {
        if !take(&mut is_open, start) {
            continue;
        }
        let (mut places, mut sum, mut waiting) = (Vec::new(), 0.0, vec![start]);
        while let Some(at) = waiting.pop() {
            let (x, y) = (at % width, at / width);
            places.push((x, y));
            sum += chances.get(at).copied().unwrap_or(0.0);
            for row in y.saturating_sub(1)..=(y + 1).min(height - 1) {
                for column in x.saturating_sub(1)..=(x + 1).min(width - 1) {
                    if take(&mut is_open, row * width + column) {
                        waiting.push(row * width + column);
                    }
                }
            }
        }
        let mean = sum / places.len() as f32;
        found.push(Region { places, mean });
    }
    found
}

/// Takes a place that is open.
fn take(is_open: &mut [bool], at: usize) -> bool {
    is_open.get_mut(at).is_some_and(|open| std::mem::replace(open, false))
}

/// A rectangle at any angle.
pub(crate) struct Rectangle {
    middle: Point,
    along: Point,
    /// Its side in its own direction.
    pub length: f32,
    /// Its other side.
    pub breadth: f32,
}

impl Rectangle {
    /// The smallest rectangle around a region, one of whose sides lies along one of the region's own.
    pub(crate) fn around(region: &Region) -> Option<Self> {
        let hull = hull(region.places.iter().map(|&(x, y)| [x as f32 + 0.5, y as f32 + 0.5]).collect());
        let next = hull.iter().cycle().skip(1);
        hull.iter()
            .zip(next)
            .filter_map(|(a, b)| {
                let length = distance(*a, *b);
                (length > 1e-3).then(|| Self::along(&hull, [(b[0] - a[0]) / length, (b[1] - a[1]) / length]))
            })
            .min_by(|a, b| (a.length * a.breadth).total_cmp(&(b.length * b.breadth)))
    }

    /// The rectangle around points in a given direction.
    fn along(points: &[Point], along: Point) -> Self {
        let (mut least, mut most) = ([f32::MAX; 2], [f32::MIN; 2]);
        for point in points {
            let own = [point[0] * along[0] + point[1] * along[1], point[1] * along[0] - point[0] * along[1]];
            for ((least, most), own) in least.iter_mut().zip(&mut most).zip(own) {
                *least = least.min(own);
                *most = most.max(own);
            }
        }
        let (x, y) = (f32::midpoint(least[0], most[0]), f32::midpoint(least[1], most[1]));
        Self {
            middle: [x * along[0] - y * along[1], x * along[1] + y * along[0]],
            along,
            // Points are the middles of places, each of which is one wide.
            length: most[0] - least[0] + 1.0,
            breadth: most[1] - least[1] + 1.0,
        }
    }

    /// Its corners when it is larger by so much on each side, on a map of another scale.
    pub(crate) fn grown(&self, by: f32, scale: Point) -> Quad {
        let [u, v] = self.along;
        let (length, breadth) = (self.length / 2.0 + by, self.breadth / 2.0 + by);
        let corner = |a: f32, b: f32| {
            [
                (self.middle[0] + u * a * length - v * b * breadth) * scale[0],
                (self.middle[1] + v * a * length + u * b * breadth) * scale[1],
            ]
        };
        Quad([corner(-1.0, -1.0), corner(1.0, -1.0), corner(1.0, 1.0), corner(-1.0, 1.0)])
    }
}

/// The corners of the smallest convex figure around points (Andrew's chain).
fn hull(mut points: Vec<Point>) -> Vec<Point> {
    points.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    points.dedup();
    let backwards: Vec<Point> = points.iter().rev().copied().collect();
    let mut hull = half_hull(&points);
    hull.extend(half_hull(&backwards));
    hull
}

/// One side of it, without its last point, which is the other side's first.
fn half_hull(points: &[Point]) -> Vec<Point> {
    let mut side: Vec<Point> = Vec::new();
    for &point in points {
        while let [.., o, a] = side[..] {
            if (a[0] - o[0]) * (point[1] - o[1]) - (a[1] - o[1]) * (point[0] - o[0]) > 0.0 {
                break;
            }
            side.pop();
        }
        side.push(point);
    }
    side.pop();
    side
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_regions_that_do_not_touch() {
        #[rustfmt::skip]
        let chances = [
            0.9, 0.9, 0.0, 0.0,
            0.0, 0.9, 0.0, 0.5,
            0.0, 0.0, 0.0, 0.7,
        ];
        let found = regions(&chances, 4, 0.3);
        assert_eq!(found.iter().map(Region::len).collect::<Vec<_>>(), [3, 2]);
        assert!((found[1].mean - 0.6).abs() < 1e-6);
    }

    #[test]
    fn the_rectangle_around_a_slanted_band_is_slanted() {
        let places = (0..30).flat_map(|at| (0..6).map(move |row| (at, at / 2 + row))).collect();
        let found = Rectangle::around(&Region { places, mean: 1.0 }).unwrap();
        let (long, short) = (found.length.max(found.breadth), found.length.min(found.breadth));
        assert!((30.0..38.0).contains(&long) && (5.0..7.5).contains(&short), "{long} by {short}");
        let slope = found.along[1].atan2(found.along[0]).tan().abs();
        assert!((slope - 0.5).abs() < 0.1 || (slope - 2.0).abs() < 0.3, "{slope}");
    }
}

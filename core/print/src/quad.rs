//! Four corners of a line of text, and which way it is read.

use facts::photo::Area;

/// A place in a picture, in pixels from its upper left corner.
pub type Point = [f32; 2];

pub(crate) fn distance(a: Point, b: Point) -> f32 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

/// Corners of a line of text in the order of reading: where it begins above, where it ends above, where it ends below, where it
/// begins below.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Quad(pub [Point; 4]);

impl Quad {
    /// The upright rectangle around it, within a picture of this size; `None` where nothing of it lies there.
    pub fn around(&self, size: (u32, u32)) -> Option<Area> {
        let all = |at: usize| self.0.iter().filter_map(move |corner| corner.get(at).copied());
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "beyond the edges it is cut off, and what is no number becomes nothing"
        )]
        let span = |at: usize| {
            let from = all(at).fold(f32::INFINITY, f32::min).floor().max(0.0) as u32;
            let to = all(at).fold(0.0, f32::max).ceil() as u32;
            (from, to.saturating_sub(from))
        };
        let ((left, width), (top, height)) = (span(0), span(1));
        Area { left, top, width, height }.within(size)
    }

    /// Along the line, and across it.
    pub(crate) fn size(&self) -> (f32, f32) {
        let [a, b, c, d] = self.0;
        (f32::midpoint(distance(a, b), distance(d, c)), f32::midpoint(distance(a, d), distance(b, c)))
    }

    /// The same read the other way up.
    pub(crate) const fn flipped(&self) -> Self {
        let [a, b, c, d] = self.0;
        Self([c, d, a, b])
    }

    pub(crate) fn centre(&self) -> Point {
        let sum = |at: usize| self.0.iter().filter_map(|point| point.get(at)).sum::<f32>() / 4.0;
        [sum(0), sum(1)]
    }

    /// The direction in which it is read, of length one.
    pub(crate) fn direction(&self) -> Point {
        let [a, b, ..] = self.0;
        let length = distance(a, b).max(1e-6);
        [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
    }

    /// Where its middle lies along and across a direction.
    pub(crate) fn along_and_across(&self, direction: Point) -> (f32, f32) {
        let middle = self.centre();
        (
            middle[0] * direction[0] + middle[1] * direction[1],
            middle[1] * direction[0] - middle[0] * direction[1],
        )
    }

    /// The quarter turn of it that is read most nearly in this direction.
    pub(crate) fn aligned_to(&self, direction: Point) -> Self {
        let [a, b, c, d] = self.0;
        let likeness = |quad: &Self| {
            let own = quad.direction();
            own[0] * direction[0] + own[1] * direction[1]
        };
        [Self([b, c, d, a]), Self([c, d, a, b]), Self([d, a, b, c])]
            .into_iter()
            .fold(*self, |best, quad| if likeness(&quad) > likeness(&best) { quad } else { best })
    }

    /// The same, longer at both ends.
    pub(crate) fn lengthened(&self, by: f32) -> Self {
        let [u, v] = self.direction();
        let [a, b, c, d] = self.0;
        let moved = |[x, y]: Point, by: f32| [x + u * by, y + v * by];
        Self([moved(a, -by), moved(b, by), moved(c, by), moved(d, -by)])
    }

    /// Whether it lies where another does, and is as long and as high.
    pub(crate) fn covers(&self, other: &Self) -> bool {
        let ((length, height), (other_length, other_height)) = (self.size(), other.size());
        let ([x, y], [other_x, other_y]) = (self.centre(), other.centre());
        let is_alike = |a: f32, b: f32| a < 1.25 * b && b < 1.25 * a;
        (x - other_x).hypot(y - other_y) < 0.3 * height.min(other_height)
            && is_alike(length, other_length)
            && is_alike(height, other_height)
    }

    /// The same, moved.
    pub(crate) fn moved(&self, across: f32, down: f32) -> Self {
        Self(self.0.map(|[x, y]| [x + across, y + down]))
    }
}

/// The main direction of long quads, up to half a turn, weighed by how long they are.
pub(crate) fn main_direction(quads: &[Quad]) -> Point {
    let (mut across, mut down) = (0.0, 0.0);
    for quad in quads {
        let (width, height) = quad.size();
        let own = quad.direction();
        let own = if width >= height { own } else { [-own[1], own[0]] };
        // Twice the angle: half a turn makes no difference then.
        let (weight, angle) = ((width - height).abs(), 2.0 * own[1].atan2(own[0]));
        across += weight * angle.cos();
        down += weight * angle.sin();
    }
    let angle = if across == 0.0 && down == 0.0 { 0.0 } else { 0.5 * down.atan2(across) };
    [angle.cos(), angle.sin()]
}

#[cfg(test)]
mod tests {
    use super::*;

    const LYING: Quad = Quad([[0.0, 0.0], [10.0, 0.0], [10.0, 2.0], [0.0, 2.0]]);

    #[test]
    fn a_turned_line_is_read_in_the_direction_asked_for() {
        let standing = LYING.aligned_to([0.0, 1.0]);
        assert!(standing.direction()[1] > 0.999);
        assert!(LYING.flipped().direction()[0] < -0.999);
        assert_eq!(LYING.flipped().aligned_to([1.0, 0.0]), LYING);
    }

    #[test]
    fn the_area_around_a_slanted_line_lies_within_the_picture() {
        let slanted = Quad([[9.4, -3.0], [30.2, 4.0], [28.0, 12.5], [8.0, 6.0]]);
        let area = |left, top, width, height| Some(Area { left, top, width, height });
        assert_eq!(slanted.around((100, 100)), area(8, 0, 23, 13));
        assert_eq!(slanted.around((20, 10)), area(8, 0, 12, 10));
        assert_eq!(slanted.around((8, 10)), None);
        assert_eq!(Quad([[f32::NAN; 2]; 4]).around((9, 9)), None);
    }

    #[test]
    fn long_lines_say_which_way_all_lie() {
        let upright = Quad([[20.0, 0.0], [22.0, 0.0], [22.0, 3.0], [20.0, 3.0]]);
        let main = main_direction(&[LYING, upright]);
        assert!(main[0].abs() > 0.99, "{main:?}");
    }
}

//! A piece of a picture, straightened and brought to a size.

use facts::photo::Pixels;

use crate::quad::Quad;
use crate::whole::{floor, whole};

/// The most samples a side that go into one pixel where a piece is made smaller.
const MOST_SAMPLES: usize = 8;

/// The piece of a picture within four corners, `width` by `height`, red, green and blue from 0 to 255. Made larger it is
/// smooth, made smaller it is the mean of what was there.
pub(crate) fn piece(pixels: &Pixels, quad: &Quad, width: usize, height: usize) -> Vec<[f32; 3]> {
    let (along, across) = quad.size();
    let samples = |length: f32, pixels: usize| whole(length / pixels as f32).clamp(1, MOST_SAMPLES);
    let (columns, rows) = (samples(along, width), samples(across, height));
    let [a, b, _, d] = quad.0;
    let (right, down) = ([b[0] - a[0], b[1] - a[1]], [d[0] - a[0], d[1] - a[1]]);
    let share = 1.0 / (columns * rows) as f32;
    let mut made = vec![[0.0; 3]; width * height];
    for (y, line) in made.chunks_exact_mut(width).enumerate() {
        for (x, pixel) in line.iter_mut().enumerate() {
            for row in 0..rows {
                for column in 0..columns {
                    let s = (x as f32 + (column as f32 + 0.5) / columns as f32) / width as f32;
                    let t = (y as f32 + (row as f32 + 0.5) / rows as f32) / height as f32;
                    let seen =
                        sample(pixels, a[0] + right[0] * s + down[0] * t, a[1] + right[1] * s + down[1] * t);
                    for (sum, seen) in pixel.iter_mut().zip(seen) {
                        *sum += share * seen;
                    }
                }
            }
        }
    }
    made
}

/// All of a picture, `width` by `height`.
pub(crate) fn all(pixels: &Pixels, width: usize, height: usize) -> Vec<[f32; 3]> {
    let (right, below) = (pixels.width() as f32, pixels.height() as f32);
    piece(pixels, &Quad([[0.0, 0.0], [right, 0.0], [right, below], [0.0, below]]), width, height)
}

/// What is seen at a place, between the four pixels around it; beyond the edges what is seen at them.
fn sample(pixels: &Pixels, x: f32, y: f32) -> [f32; 3] {
    let (width, height) = (pixels.width() as usize, pixels.height() as usize);
    let x = (x - 0.5).clamp(0.0, (width - 1) as f32);
    let y = (y - 0.5).clamp(0.0, (height - 1) as f32);
    let (left, above) = (floor(x), floor(y));
    let (right, below) = ((left + 1).min(width - 1), (above + 1).min(height - 1));
    let (dx, dy) = (x - left as f32, y - above as f32);
    let at = |x: usize, y: usize| -> [f32; 3] {
        let from = 3 * (y * width + x);
        match pixels.rgb().get(from..from + 3) {
            Some(&[red, green, blue]) => [f32::from(red), f32::from(green), f32::from(blue)],
            _ => [0.0; 3],
        }
    };
    let corners = [
        (at(left, above), (1.0 - dx) * (1.0 - dy)),
        (at(right, above), dx * (1.0 - dy)),
        (at(left, below), (1.0 - dx) * dy),
        (at(right, below), dx * dy),
    ];
    let mut sum = [0.0; 3];
    for (colour, weight) in corners {
        for (sum, part) in sum.iter_mut().zip(colour) {
            *sum += weight * part;
        }
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    fn two_by_one() -> Pixels {
        Pixels::new(2, 1, vec![0, 0, 0, 200, 100, 50]).unwrap()
    }

    #[test]
    fn made_smaller_it_is_the_mean() {
        assert_eq!(all(&two_by_one(), 1, 1), [[100.0, 50.0, 25.0]]);
    }

    #[test]
    fn turned_by_half_it_runs_the_other_way() {
        let turned = Quad([[2.0, 1.0], [0.0, 1.0], [0.0, 0.0], [2.0, 0.0]]);
        assert_eq!(piece(&two_by_one(), &turned, 2, 1), [[200.0, 100.0, 50.0], [0.0; 3]]);
    }
}

//! Whether something may be hidden in a row or beside it: the letters beside such a place are not certain, however clear they are.
//!
//! The network reads what is there. Where a cable, a glare or a spot lies across a row, or its box ends in the middle of a number,
//! what is left reads as clearly as any other: 1675 without its 5 is a clear 167. So the ground is looked at, too: it must be the
//! same from letter to letter and a little beyond both ends, no ink may stand there, and no gap may be wide enough for one more letter
//! than a blank takes.

use facts::photo::Pixels;

use crate::quad::{Point, Quad};
use crate::recognise::Letter;
use crate::resample;
use crate::whole::{floor, whole};

/// The height at which a row is looked at, in pixels.
const HEIGHT: usize = 24;
/// So many rows of these above and below are ground.
const GROUND_ROWS: usize = 2;
/// How far beyond its ends is looked, in heights.
const BEYOND: f32 = 0.5;
/// How much the ground may change between two letters, and how strong a mark beyond the ends may be, in shares of the ink's contrast.
const MOST_CHANGE: f32 = 0.5;
/// How much brighter the ground beyond an end may be than it usually is in the row, in the same shares: beyond that it glares there.
const MOST_GLARE: f32 = 0.4;
const MOST_INK: f32 = 0.5;
/// The widest gap between two letters that is still a blank, in usual steps from letter to letter.
const WIDEST_BLANK: f32 = 2.6;
/// The certainty of letters beside what may be hidden is no more than this.
pub(crate) const BESIDE_HIDDEN: f32 = 0.5;

/// Lowers the certainty of letters beside which something may be hidden, and says whether something may be beyond the beginning and
/// the end.
pub(crate) fn look_beside(pixels: &Pixels, quad: &Quad, letters: &mut [Letter]) -> (bool, bool) {
    let strip = Strip::of(pixels, quad);
    let step = usual_step(letters);
    let doubtful: Vec<bool> = seen_pairs(letters)
        .into_iter()
        .map(|(a, b)| {
            let (from, to) = (
                letters.get(a).map_or(0.0, |letter| letter.at),
                letters.get(b).map_or(1.0, |letter| letter.at),
            );
            to - from > WIDEST_BLANK * step || strip.changes_between(from, to)
        })
        .collect();
    for ((a, b), is_doubtful) in seen_pairs(letters).into_iter().zip(doubtful) {
        for at in [a, b] {
            if let Some(letter) = letters.get_mut(at).filter(|_| is_doubtful) {
                letter.certainty = letter.certainty.min(BESIDE_HIDDEN);
            }
        }
    }
    let (begins_at_edge, ends_at_edge) = ends_at_edge(pixels, quad);
    (begins_at_edge || strip.goes_on(false), ends_at_edge || strip.goes_on(true))
}

/// Neighbours among the letters that are seen, which blanks are not.
fn seen_pairs(letters: &[Letter]) -> Vec<(usize, usize)> {
    let seen: Vec<usize> =
        letters.iter().enumerate().filter(|(_, letter)| letter.sign != ' ').map(|(at, _)| at).collect();
    seen.iter().copied().zip(seen.iter().copied().skip(1)).collect()
}

/// The usual step from the middle of a letter to that of the next, as a share of the row; without any, all of it.
fn usual_step(letters: &[Letter]) -> f32 {
    let mut steps: Vec<f32> = letters
        .windows(2)
        .filter_map(|pair| match pair {
            [a, b] if a.sign != ' ' && b.sign != ' ' => Some(b.at - a.at),
            _ => None,
        })
        .collect();
    steps.sort_by(f32::total_cmp);
    steps.get(steps.len() / 2).copied().unwrap_or(1.0)
}

/// Whether the picture ends at a line's beginning, and at its end.
fn ends_at_edge(pixels: &Pixels, quad: &Quad) -> (bool, bool) {
    let (width, height) = (pixels.width() as f32, pixels.height() as f32);
    let is_out = |[x, y]: Point| x < 0.0 || y < 0.0 || x > width || y > height;
    let [a, b, c, d] = quad.0;
    (is_out(a) || is_out(d), is_out(b) || is_out(c))
}

/// A row and a little beyond both ends, in brightness.
struct Strip {
    /// How bright the ground is, column by column.
    ground: Vec<f32>,
    /// How much the strongest mark of each column differs from it.
    ink: Vec<f32>,
    /// How many columns lie beyond each end.
    beyond: usize,
    /// How much ink differs from the ground in this row.
    contrast: f32,
}

impl Strip {
    fn of(pixels: &Pixels, quad: &Quad) -> Self {
        let (length, height) = quad.size();
        let beyond = whole(BEYOND * HEIGHT as f32);
        let within = whole(length * HEIGHT as f32 / height.max(1.0)).clamp(8, 1200);
        let width = within + 2 * beyond;
        let longer = quad.lengthened(BEYOND * height);
        let piece = resample::piece(pixels, &longer, width, HEIGHT);
        let bright: Vec<f32> = piece.iter().map(|colour| colour.iter().sum::<f32>() / 3.0).collect();
        let column = |x: usize| bright.iter().skip(x).step_by(width).copied();
        let ground: Vec<f32> = (0..width)
            .map(|x| {
                let edge = column(x).take(GROUND_ROWS).chain(column(x).skip(HEIGHT - GROUND_ROWS));
                edge.sum::<f32>() / (2 * GROUND_ROWS) as f32
            })
            .collect();
        let ink: Vec<f32> = ground
            .iter()
            .enumerate()
            .map(|(x, ground)| column(x).map(|bright| (bright - ground).abs()).fold(0.0, f32::max))
            .collect();
        let mut strong: Vec<f32> = ink.iter().skip(beyond).take(within).copied().collect();
        strong.sort_by(f32::total_cmp);
        let contrast = strong.get(strong.len() * 3 / 4).copied().unwrap_or(0.0).max(1.0);
        Self { ground, ink, beyond, contrast }
    }

    /// The column of a share of the row.
    fn column(&self, share: f32) -> usize {
        let within = self.ground.len() - 2 * self.beyond;
        (self.beyond + floor(share * within as f32)).min(self.ground.len() - 1)
    }

    /// Whether the ground is another somewhere between two places than elsewhere between them.
    fn changes_between(&self, from: f32, to: f32) -> bool {
        let between = self.ground.get(self.column(from)..=self.column(to)).unwrap_or_default();
        let (least, most) = between
            .iter()
            .fold((f32::MAX, f32::MIN), |(least, most), &ground| (least.min(ground), most.max(ground)));
        most - least > MOST_CHANGE * self.contrast
    }

    /// Whether ink stands beyond an end, or the ground there is another.
    fn goes_on(&self, at_end: bool) -> bool {
        let count = self.ground.len();
        let (outside, inside) = if at_end {
            (count - self.beyond..count, count - 2 * self.beyond..count - self.beyond)
        } else {
            (0..self.beyond, self.beyond..2 * self.beyond)
        };
        let strongest = self.ink.get(outside.clone()).unwrap_or_default().iter().copied().fold(0.0, f32::max);
        let mean = |columns: std::ops::Range<usize>| {
            let ground = self.ground.get(columns).unwrap_or_default();
            ground.iter().sum::<f32>() / ground.len().max(1) as f32
        };
        let mut usual: Vec<f32> =
            self.ground.get(self.beyond..count - self.beyond).unwrap_or_default().to_vec();
        usual.sort_by(f32::total_cmp);
        let usual = usual.get(usual.len() / 2).copied().unwrap_or(0.0);
        let brightest =
            self.ground.get(outside.clone()).unwrap_or_default().iter().copied().fold(0.0, f32::max);
        strongest > MOST_INK * self.contrast
            || brightest - usual > MOST_GLARE * self.contrast
            || (mean(outside) - mean(inside)).abs() > MOST_CHANGE * self.contrast
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SIDE: usize = 24;

    /// A light row 240 by 24, dark marks 12 wide at these places, in a picture with as much light around it; and what is changed of it.
    fn row(marks: &[usize], change: impl Fn(usize, usize, u8) -> u8) -> (Pixels, Quad, Vec<Letter>) {
        let (width, height) = (240 + 2 * SIDE, 3 * SIDE);
        let is_mark = |x: usize, y: usize| {
            (SIDE + 5..2 * SIDE - 5).contains(&y)
                && marks.iter().any(|mark| (SIDE + mark..SIDE + mark + 12).contains(&x))
        };
        let bright = |x: usize, y: usize| change(x, y, if is_mark(x, y) { 40 } else { 200 });
        let rgb = (0..width * height).flat_map(|at| [bright(at % width, at / width); 3]).collect();
        let pixels = Pixels::new(u32::try_from(width).unwrap(), u32::try_from(height).unwrap(), rgb).unwrap();
        let (left, right, top, below) = (SIDE as f32, 240.0 + SIDE as f32, SIDE as f32, 2.0 * SIDE as f32);
        let letters = marks
            .iter()
            .map(|mark| Letter { sign: '1', certainty: 1.0, at: (*mark as f32 + 6.0) / 240.0 })
            .collect();
        (pixels, Quad([[left, top], [right, top], [right, below], [left, below]]), letters)
    }

    /// Which letters are certain, and which ends are cut.
    fn seen(marks: &[usize], change: impl Fn(usize, usize, u8) -> u8) -> (Vec<bool>, (bool, bool)) {
        let (pixels, quad, mut letters) = row(marks, change);
        let is_cut = look_beside(&pixels, &quad, &mut letters);
        (letters.iter().map(|letter| letter.certainty > 0.9).collect(), is_cut)
    }

    const EVEN: [usize; 11] = [8, 28, 48, 68, 88, 108, 128, 148, 168, 188, 208];

    #[test]
    fn an_even_row_on_even_ground_hides_nothing() {
        assert_eq!(seen(&EVEN, |_, _, bright| bright), (vec![true; 11], (false, false)));
    }

    #[test]
    fn beside_a_gap_that_is_too_wide_no_letter_is_certain() {
        let gap = [8, 28, 48, 68, 148, 168, 188, 208];
        let (certain, _) = seen(&gap, |_, _, bright| bright);
        assert_eq!(certain, [true, true, true, false, false, true, true, true]);
    }

    #[test]
    fn beside_a_dark_band_across_the_row_no_letter_is_certain() {
        let marks = [8, 28, 48, 68, 108, 128, 148, 168];
        let (certain, _) =
            seen(&marks, |x, _, bright| if (SIDE + 84..SIDE + 100).contains(&x) { 30 } else { bright });
        assert_eq!(certain, [true, true, true, false, false, true, true, true]);
    }

    #[test]
    fn ink_beyond_an_end_cuts_it() {
        let behind = 240 + SIDE + 2;
        let (_, is_cut) = seen(&EVEN, |x, y, bright| {
            if (behind..behind + 8).contains(&x) && (SIDE + 5..2 * SIDE - 5).contains(&y) {
                40
            } else {
                bright
            }
        });
        assert_eq!(is_cut, (false, true));
    }

    #[test]
    fn glare_beyond_an_end_cuts_it() {
        let (_, is_cut) = seen(&EVEN, |x, _, bright| if x < SIDE { 255 } else { bright.min(150) });
        assert_eq!(is_cut, (true, false));
    }

    #[test]
    fn where_the_picture_ends_a_row_is_cut() {
        let (pixels, quad, _) = row(&EVEN, |_, _, bright| bright);
        assert_eq!(ends_at_edge(&pixels, &quad), (false, false));
        assert_eq!(ends_at_edge(&pixels, &quad.moved(-30.0, 0.0)), (true, false));
    }
}

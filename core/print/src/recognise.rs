//! What a line of text says, letter by letter.

use facts::photo::Pixels;
use rten_tensor::NdTensor;

use crate::error::PrintError;
use crate::model::Model;
use crate::quad::Quad;
use crate::resample;
use crate::whole::whole;

/// The height of a line as the network is given it.
const HEIGHT: usize = 48;
/// The least and the greatest width, and its step.
const LEAST_WIDTH: usize = 32;
const MOST_WIDTH: usize = 1600;
const STEP: usize = 8;

/// A letter that was read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Letter {
    /// Which one.
    pub sign: char,
    /// How certain it is, 0 to 1: how likely it is this one and that none is missing from the letter before it to the letter behind
    /// it, as the model sees it. Beside a place where something may be hidden it is never more than a half.
    pub certainty: f32,
    /// Where along its line its middle is, 0 at its beginning and 1 at its end.
    pub at: f32,
}

/// Reads one line.
pub(crate) fn letters(model: &Model, pixels: &Pixels, quad: &Quad) -> Result<Vec<Letter>, PrintError> {
    let (along, across) = quad.size();
    let width =
        whole(HEIGHT as f32 * along / across.max(1.0)).clamp(LEAST_WIDTH, MOST_WIDTH).next_multiple_of(STEP);
    let piece = resample::piece(pixels, quad, width, HEIGHT);
    let mut given = NdTensor::<f32, 4>::zeros([1, 3, HEIGHT, width]);
    for (channel, plane) in
        given.data_mut().into_iter().flat_map(|data| data.chunks_exact_mut(HEIGHT * width).enumerate())
    {
        for (value, colour) in plane.iter_mut().zip(&piece) {
            // Blue first, as the network was made.
            *value = colour.iter().rev().nth(channel).unwrap_or(&0.0) / 127.5 - 1.0;
        }
    }
    let chances = model.recognise(given)?;
    Ok(decode(&chances, model.letters()))
}

/// The likeliest letter of each step; the same one in a row is one letter, and the first class stands between two.
fn decode(chances: &[f32], known: &[char]) -> Vec<Letter> {
    let steps: Vec<&[f32]> = chances.chunks_exact(known.len().max(1)).collect();
    let mut runs: Vec<Run> = Vec::new();
    let mut last = 0;
    for (at, step) in steps.iter().enumerate() {
        let (class, chance) = likeliest(step);
        if class != 0 {
            match runs.last_mut() {
                Some(run) if class == last => run.go_on(at, chance),
                _ => runs.push(Run { class, chance, best: at, from: at, to: at }),
            }
        }
        last = class;
    }
    let of = |at: usize, class: usize| steps.get(at).and_then(|step| step.get(class)).copied().unwrap_or(0.0);
    let count = steps.len();
    // From the best step of the run before to that of the run behind: what is likely there but neither these letters nor nothing.
    let mut gaps = vec![0.0_f32; runs.len() + 1];
    for (place, gap) in gaps.iter_mut().enumerate() {
        let before = place.checked_sub(1).and_then(|before| runs.get(before));
        let behind = runs.get(place);
        let (from, to) = (before.map_or(0, |run| run.best), behind.map_or(count, |run| run.best + 1));
        for at in from..to {
            let expected = of(at, 0)
                + before.map_or(0.0, |run| of(at, run.class))
                + behind
                    .filter(|run| before.is_none_or(|b| b.class != run.class))
                    .map_or(0.0, |run| of(at, run.class));
            *gap = gap.max(1.0 - expected);
        }
    }
    runs.iter()
        .enumerate()
        .filter_map(|(place, run)| {
            let around = gaps.get(place)?.max(*gaps.get(place + 1)?);
            Some(Letter {
                sign: *known.get(run.class)?,
                certainty: run.chance.min(1.0 - around).clamp(0.0, 1.0),
                at: (f32::midpoint(run.from as f32, run.to as f32) + 0.5) / count as f32,
            })
        })
        .collect()
}

/// One letter in a row of steps.
struct Run {
    class: usize,
    /// Its best chance, and the step of that.
    chance: f32,
    best: usize,
    /// Its first and last step.
    from: usize,
    to: usize,
}

impl Run {
    fn go_on(&mut self, at: usize, chance: f32) {
        self.to = at;
        if chance > self.chance {
            (self.chance, self.best) = (chance, at);
        }
    }
}

fn likeliest(step: &[f32]) -> (usize, f32) {
    step.iter().copied().enumerate().fold((0, f32::MIN), |best, one| if one.1 > best.1 { one } else { best })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(steps: &[[f32; 4]]) -> Vec<(char, f32)> {
        let chances: Vec<f32> = steps.iter().flatten().copied().collect();
        let rounded = |letter: &Letter| (letter.sign, (letter.certainty * 100.0).round() / 100.0);
        decode(&chances, &['\0', '1', '6', '7']).iter().map(rounded).collect()
    }

    #[test]
    fn what_stands_in_a_row_is_one_letter_and_nothing_parts_two() {
        let one = [0.0, 1.0, 0.0, 0.0];
        let none = [1.0, 0.0, 0.0, 0.0];
        assert_eq!(read(&[none, one, one, none, one, none]), [('1', 1.0), ('1', 1.0)]);
    }

    #[test]
    fn a_letter_that_was_nearly_seen_beside_another_makes_it_doubtful() {
        let (one, six, none) = ([0.0, 1.0, 0.0, 0.0], [0.05, 0.0, 0.95, 0.0], [1.0, 0.0, 0.0, 0.0]);
        assert_eq!(read(&[none, one, none, six, none]), [('1', 1.0), ('6', 0.95)]);
        // A seven at the end that does not win.
        let perhaps = [0.6, 0.0, 0.0, 0.4];
        assert_eq!(read(&[none, one, none, six, none, perhaps, none]), [('1', 1.0), ('6', 0.6)]);
    }

    #[test]
    fn one_letter_that_passes_into_the_next_is_no_doubt() {
        let (one, six) = ([0.0, 1.0, 0.0, 0.0], [0.0, 0.0, 1.0, 0.0]);
        let between = [0.2, 0.4, 0.4, 0.0];
        assert_eq!(read(&[one, between, six]), [('1', 1.0), ('6', 1.0)]);
    }
}

//! Depthwise convolution: each plane of a picture by its own weights.
//!
//! The library that runs the rest of a network computes it a number at a time (docs/decisions/17-own-depthwise.md); here it is compiled
//! for each instruction set. Sums are made in the library's order, so that the same comes of it to the last bit (but that a
//! nought below zero, of a bias that is one, becomes one above it).

use multiversion::multiversion;
use rayon::prelude::*;

/// Places of a row that are computed together.
const LANES: usize = 32;

/// A layer of a network: as many planes as biases, each by square weights around its places, with nothing around the picture.
#[derive(Debug)]
pub(crate) struct Depthwise {
    /// How many weights lie across.
    side: usize,
    /// Of one plane after the other.
    weights: Vec<f32>,
    biases: Vec<f32>,
}

impl Depthwise {
    /// A layer of weights that lie row by row, `side` times `side` a plane; nothing if these are not as many, or have no middle.
    pub(crate) fn new(side: usize, weights: Vec<f32>, biases: Vec<f32>) -> Option<Self> {
        (side % 2 == 1 && !biases.is_empty() && weights.len() == side * side * biases.len()).then_some(Self {
            side,
            weights,
            biases,
        })
    }

    /// What comes of planes that are so many places wide; nothing if they are not as many as there are biases.
    pub(crate) fn of(&self, planes: &[f32], width: usize) -> Option<Vec<f32>> {
        let plane = planes.len() / self.biases.len();
        if width == 0
            || plane == 0
            || !plane.is_multiple_of(width)
            || plane * self.biases.len() != planes.len()
        {
            return None;
        }
        let mut made = vec![0.0; planes.len()];
        made.par_chunks_exact_mut(plane)
            .zip(planes.par_chunks_exact(plane))
            .zip(self.weights.par_chunks_exact(self.side * self.side))
            .zip(&self.biases)
            .for_each(|(((made, plane), weights), bias)| {
                let around = self.side / 2;
                let stride = width.next_multiple_of(LANES) + 2 * around;
                let mut padded = vec![0.0; stride * (plane.len() / width + 2 * around)];
                for (into, row) in padded.chunks_exact_mut(stride).skip(around).zip(plane.chunks_exact(width))
                {
                    if let Some(into) = into.get_mut(around..around + width) {
                        into.copy_from_slice(row);
                    }
                }
                convolve(&padded, stride, weights, self.side, *bias, made, width);
            });
        Some(made)
    }
}

/// One plane; `padded` has nothing around it, and its rows are `stride` places long.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
fn convolve(
    padded: &[f32],
    stride: usize,
    weights: &[f32],
    side: usize,
    bias: f32,
    made: &mut [f32],
    width: usize,
) {
    for (y, row) in made.chunks_exact_mut(width).enumerate() {
        for (at, places) in row.chunks_mut(LANES).enumerate() {
            let mut sums = [bias; LANES];
            for (from, weights) in padded.chunks_exact(stride).skip(y).zip(weights.chunks_exact(side)) {
                for (shift, weight) in weights.iter().enumerate() {
                    let from = from.get(at * LANES + shift..).and_then(|from| from.first_chunk::<LANES>());
                    // Rows are padded to be this long.
                    let Some(values) = from else { continue };
                    for (sum, value) in sums.iter_mut().zip(values) {
                        *sum += value * weight;
                    }
                }
            }
            for (place, sum) in places.iter_mut().zip(sums) {
                *place = sum;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use rten::BufferPool;
    use rten_tensor::prelude::*;
    use rten_tensor::{NdTensor, Tensor};

    use super::*;

    /// Numbers that differ, as many as wanted.
    fn numbers(seed: u32, count: usize) -> Vec<f32> {
        let next = |state: &u32| Some(state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223));
        let states = std::iter::successors(Some(seed), next).skip(1);
        states
            .map(|state| f32::from(u16::try_from(state >> 16).unwrap()) / 9_999.0 - 3.0)
            .take(count)
            .collect()
    }

    proptest! {
        /// The peer is the library that runs the rest of the networks.
        #[test]
        fn the_same_comes_of_it_as_of_the_library(
            seed: u32, channels in 1_usize..5, half in 0_usize..4, width in 1_usize..80, height in 1_usize..12,
        ) {
            let side = 2 * half + 1;
            let planes = numbers(seed, channels * width * height);
            let weights = numbers(seed ^ 1, channels * side * side);
            let biases = numbers(seed ^ 2, channels);
            let peer: Tensor<f32> = rten::ops::conv(
                &BufferPool::new(),
                Tensor::from_data(&[1, channels, height, width], planes.clone()).view(),
                Tensor::from_data(&[channels, 1, side, side], weights.clone()).view(),
                Some(NdTensor::from_data([channels], biases.clone()).view()),
                [half; 4].into(),
                channels,
                &[1, 1],
                &[1, 1],
            )
            .unwrap();
            let made = Depthwise::new(side, weights, biases).unwrap().of(&planes, width).unwrap();
            let bits = |numbers: &[f32]| numbers.iter().map(|number| number.to_bits()).collect::<Vec<_>>();
            prop_assert_eq!(bits(&made), bits(&peer.to_vec()));
        }
    }

    #[test]
    fn what_does_not_fit_together_is_refused() {
        assert!(Depthwise::new(3, vec![0.0; 18], vec![0.0; 2]).is_some());
        for (side, weights, biases) in [(2, 8, 2), (3, 17, 2), (3, 0, 0)] {
            assert!(
                Depthwise::new(side, vec![0.0; weights], vec![0.0; biases]).is_none(),
                "{side} {weights}"
            );
        }
        let layer = Depthwise::new(1, vec![1.0; 2], vec![0.0; 2]).unwrap();
        assert_eq!(layer.of(&[1.0, 2.0, 3.0, 4.0], 2), Some(vec![1.0, 2.0, 3.0, 4.0]));
        for (count, width) in [(0, 1), (5, 1), (4, 0), (6, 2), (2, 3)] {
            assert_eq!(layer.of(&vec![0.0; count], width), None, "{count} {width}");
        }
    }
}

//! Where lines of text are.

use facts::photo::Pixels;
use rten_tensor::NdTensor;

use crate::error::PrintError;
use crate::model::Model;
use crate::quad::Quad;
use crate::region::{Rectangle, regions};
use crate::resample;
use crate::whole::whole;

/// What is a chance of text at all, and what the mean of a region must be. As the model's makers have it, but for the second,
/// which they have at 0.6: worn print is to be seen too.
const BOUND: f32 = 0.3;
const LEAST_MEAN: f32 = 0.55;
/// The model sees the middle of a line; by this its box grows, as its makers have it.
const GROWTH: f32 = 1.6;
/// Smaller regions are no text, in places of the map and in places across.
const LEAST_PLACES: usize = 12;
const LEAST_BREADTH: f32 = 3.0;
/// The sides of what the network is given are a multiple of this.
const STEP: f32 = 32.0;
/// Mean and spread of the colours, blue, green and red, that the network was made with.
const MEAN: [f32; 3] = [0.485, 0.456, 0.406];
const SPREAD: [f32; 3] = [0.229, 0.224, 0.225];

/// The lines of text in a picture whose longer side is brought to so many pixels, in no order. Which end a line begins at is not
/// known yet.
pub(crate) fn lines(model: &Model, pixels: &Pixels, longer_side: f32) -> Result<Vec<Quad>, PrintError> {
    let (width, height) = (pixels.width() as f32, pixels.height() as f32);
    let scale = longer_side / width.max(height);
    let side = |length: f32| whole((length * scale / STEP).round().max(1.0) * STEP);
    let (columns, rows) = (side(width), side(height));
    let small = resample::all(pixels, columns, rows);
    let mut given = NdTensor::<f32, 4>::zeros([1, 3, rows, columns]);
    for (channel, plane) in
        given.data_mut().into_iter().flat_map(|data| data.chunks_exact_mut(rows * columns).enumerate())
    {
        let (mean, spread) = (MEAN.get(channel).unwrap_or(&0.5), SPREAD.get(channel).unwrap_or(&0.5));
        for (value, colour) in plane.iter_mut().zip(&small) {
            *value = (colour.iter().rev().nth(channel).unwrap_or(&0.0) / 255.0 - mean) / spread;
        }
    }
    let chances = model.detect(given)?;
    if chances.len() != rows * columns {
        return Err(PrintError::ModelFails);
    }
    let scale = [width / columns as f32, height / rows as f32];
    Ok(regions(&chances, columns, BOUND)
        .into_iter()
        .filter(|region| region.len() >= LEAST_PLACES && region.mean >= LEAST_MEAN)
        .filter_map(|region| Rectangle::around(&region))
        .filter(|around| around.length.min(around.breadth) >= LEAST_BREADTH)
        .map(|around| {
            let (length, breadth) = (around.length, around.breadth);
            around.grown(length * breadth * GROWTH / (2.0 * (length + breadth)), scale)
        })
        .collect())
}

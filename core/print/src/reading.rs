//! A picture read at two scales: where lines are, which way up they stand, what they say.

use std::ops::Range;

use facts::photo::{Area, Picture, Pixels};

use crate::detect;
use crate::error::PrintError;
use crate::hidden::look_beside;
use crate::model::Model;
use crate::quad::{Point, Quad, main_direction};
use crate::recognise::{Letter, letters};
use crate::row::{self, Row};

/// The longer side at which a picture is looked at, in pixels, coarse and fine: one whose print fills it, and one of smaller print.
const LARGE_PRINT: [f32; 2] = [352.0, 512.0];
const SMALL_PRINT: [f32; 2] = [640.0, 960.0];
/// Print is small where more than a quarter of its lines, as they are found, are lower than so many pixels in the coarse look at large
/// print. Our own choice: down to there both pairs of looks were sure of as many numbers of made photos.
const LEAST_HEIGHT: f32 = 16.0;
/// A picture whose longer side has more pixels is no crop, but what a camera made: in the coarse look at large print several small rows may
/// become one that is high.
const LONGEST_CROP: f32 = 2_000.0;
/// No label has more lines; of a picture with more the longest are read.
const MOST_LINES: usize = 160;
/// So many of the longest lines say which way up all of them stand.
const TRIED_BOTH_WAYS: usize = 3;

/// Where so many letters are on average this certain, they do not stand on their heads.
const UPRIGHT_LETTERS: usize = 12;
const UPRIGHT_FROM: f32 = 0.95;
/// From here on a letter of a word is certain enough to be read once.
const PLAIN_FROM: f32 = 0.95;
/// How much of the row is shown on both sides of a piece of it, from the middle of its outermost letters, in heights of the row.
const AROUND_A_PIECE: f32 = 0.6;

/// How far text is turned from upright, clockwise, to the nearest quarter.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turn {
    /// It stands upright.
    Upright,
    /// It runs from top to bottom.
    Quarter,
    /// It stands on its head.
    Half,
    /// It runs from bottom to top.
    ThreeQuarters,
}

impl Turn {
    fn of([across, down]: Point) -> Self {
        match (across.abs() >= down.abs(), across >= 0.0, down >= 0.0) {
            (true, true, _) => Self::Upright,
            (true, false, _) => Self::Half,
            (false, _, true) => Self::Quarter,
            (false, _, false) => Self::ThreeQuarters,
        }
    }

    /// In degrees.
    pub const fn degrees(self) -> u16 {
        match self {
            Self::Upright => 0,
            Self::Quarter => 90,
            Self::Half => 180,
            Self::ThreeQuarters => 270,
        }
    }
}

/// What one look saw of a printed row.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Its letters in the order of reading, blanks among them.
    pub letters: Vec<Letter>,
    /// Where it is in the whole picture, the right way up, in pixels.
    pub corners: Quad,
    /// Whether more may stand before its beginning and behind its end: the picture, or the part of it, ends there, or ink goes on,
    /// or the ground is another.
    pub is_cut: (bool, bool),
}

impl Line {
    /// What it says.
    pub fn text(&self) -> String {
        self.letters.iter().map(|letter| letter.sign).collect()
    }

    /// Whether it is words alone, each letter certain: there is nothing in it for a second look to confirm.
    fn is_plain(&self) -> bool {
        self.letters.iter().all(|letter| {
            letter.sign == ' ' || (letter.sign.is_alphabetic() && letter.certainty >= PLAIN_FROM)
        })
    }

    /// The piece of the picture in which some of its letters stand, for the eyes of who confirms them: the corners of a part of
    /// the row, with a little on both sides. Letters are counted from 0; all of the row where there are none of these.
    pub fn piece(&self, letters: Range<usize>) -> Quad {
        let Some([first, .., last] | [first @ last]) = self.letters.get(letters) else { return self.corners };
        let (length, height) = self.corners.size();
        let around = AROUND_A_PIECE * height / length.max(1.0);
        let (from, to) = ((first.at - around).max(0.0), (last.at + around).min(1.0));
        let [a, b, c, d] = self.corners.0;
        let between = |from: Point, to: Point, at: f32| {
            [from[0] + (to[0] - from[0]) * at, from[1] + (to[1] - from[1]) * at]
        };
        Quad([between(a, b, from), between(a, b, to), between(d, c, to), between(d, c, from)])
    }
}

/// What was read.
#[derive(Debug, Clone, PartialEq)]
pub struct Print {
    /// Printed rows from top to bottom, as they are read.
    pub rows: Vec<Row>,
    /// How the text is turned.
    pub turn: Turn,
}

impl Model {
    /// Reads what is printed in a picture, or in a part of it. `watch` is told which share is done, 0 to 1, and answers whether
    /// to go on.
    ///
    /// # Errors
    /// [`PrintError::Picture`] if the picture cannot be decoded or nothing of it lies in the part, [`PrintError::NoText`] if
    /// there is no text in it, [`PrintError::Stopped`], or [`PrintError::ModelFails`].
    pub fn read(
        &self,
        picture: &Picture,
        part: Option<Area>,
        watch: &mut dyn FnMut(f64) -> bool,
    ) -> Result<Print, PrintError> {
        if !watch(0.0) {
            return Err(PrintError::Stopped);
        }
        let pixels = picture.pixels(part)?;
        let mut print = self.read_pixels(&pixels, watch)?;
        if let Some(part) = part {
            for line in print.rows.iter_mut().flat_map(|row| row.looks.iter_mut().flatten()) {
                line.corners = line.corners.moved(part.left as f32, part.top as f32);
            }
        }
        Ok(print)
    }

    /// Reads pixels that are there.
    ///
    /// # Errors
    /// As [`Model::read`].
    pub fn read_pixels(
        &self,
        pixels: &Pixels,
        watch: &mut dyn FnMut(f64) -> bool,
    ) -> Result<Print, PrintError> {
        let (lines, fine) = self.coarse_lines(pixels, &mut |done| watch(0.25 * done))?;
        let (first, up) = self.look(pixels, lines, None, &[], &mut |done| watch(0.25 + 0.25 * done))?;
        let up = (!first.is_empty()).then_some(up);
        let plain: Vec<Quad> = first.iter().filter(|line| line.is_plain()).map(|line| line.corners).collect();
        let lines = detect::lines(self, pixels, fine)?;
        let (second, up) = self.look(pixels, lines, up, &plain, &mut |done| watch(0.75 + 0.25 * done))?;
        if first.is_empty() && second.is_empty() {
            return Err(PrintError::NoText);
        }
        Ok(Print { rows: row::rows([first, second], up), turn: Turn::of(up) })
    }

    /// Where the coarse look finds lines, and the longer side for the fine one.
    fn coarse_lines(
        &self,
        pixels: &Pixels,
        watch: &mut dyn FnMut(f64) -> bool,
    ) -> Result<(Vec<Quad>, f32), PrintError> {
        let [coarse, fine] = LARGE_PRINT;
        let lines = detect::lines(self, pixels, coarse)?;
        let longer = pixels.width().max(pixels.height()) as f32;
        if longer <= LONGEST_CROP && !is_small(&lines, coarse / longer) {
            return Ok((lines, fine));
        }
        if !watch(0.5) {
            return Err(PrintError::Stopped);
        }
        let [coarse, fine] = SMALL_PRINT;
        Ok((detect::lines(self, pixels, coarse)?, fine))
    }

    /// What stands in lines of a picture, and the direction in which they are read. Where the direction is known already, it is
    /// not asked for again; lines that are `known_lines` already are not read again.
    fn look(
        &self,
        pixels: &Pixels,
        mut quads: Vec<Quad>,
        known: Option<Point>,
        known_lines: &[Quad],
        watch: &mut dyn FnMut(f64) -> bool,
    ) -> Result<(Vec<Line>, Point), PrintError> {
        let mut direction = known.unwrap_or_else(|| main_direction(&quads));
        for quad in &mut quads {
            *quad = quad.aligned_to(direction);
        }
        quads.retain(|quad| !known_lines.iter().any(|known| quad.covers(known)));
        quads.sort_by(|a, b| b.size().0.total_cmp(&a.size().0));
        quads.truncate(MOST_LINES);
        let mut read = Vec::new();
        if known.is_none() {
            let tried = |quads: &[Quad]| -> Result<Vec<Vec<Letter>>, PrintError> {
                quads.iter().take(TRIED_BOTH_WAYS).map(|quad| letters(self, pixels, quad)).collect()
            };
            let weight =
                |read: &[Vec<Letter>]| read.iter().flatten().map(|letter| letter.certainty).sum::<f32>();
            let upside_down: Vec<Quad> = quads.iter().map(Quad::flipped).collect();
            read = tried(&quads)?;
            let count = read.iter().flatten().count();
            let is_plainly_upright = count >= UPRIGHT_LETTERS && weight(&read) >= UPRIGHT_FROM * count as f32;
            let other = if is_plainly_upright { Vec::new() } else { tried(&upside_down)? };
            if weight(&other) > weight(&read) {
                (read, quads) = (other, upside_down);
                direction = direction.map(|part| -part);
            }
        }
        let count = quads.len();
        for (at, quad) in quads.iter().enumerate().skip(read.len()) {
            if !watch(at as f64 / count as f64) {
                return Err(PrintError::Stopped);
            }
            read.push(letters(self, pixels, quad)?);
        }
        let lines = read
            .into_iter()
            .zip(quads)
            .filter(|(letters, _)| letters.iter().any(|letter| letter.sign != ' '))
            .map(|(mut letters, corners)| {
                let is_cut = look_beside(pixels, &corners, &mut letters);
                Line { letters, corners, is_cut }
            })
            .collect();
        if watch(1.0) { Ok((lines, direction)) } else { Err(PrintError::Stopped) }
    }
}

/// Whether a picture, looked at at this scale, has small print, or none that is seen.
fn is_small(lines: &[Quad], scale: f32) -> bool {
    let mut heights: Vec<f32> = lines.iter().map(|line| line.size().0.min(line.size().1) * scale).collect();
    heights.sort_by(f32::total_cmp);
    heights.get(heights.len() / 4).is_none_or(|height| *height < LEAST_HEIGHT)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn print_is_small_where_more_than_a_quarter_of_its_lines_are_low_or_none_is_seen() {
        let line = |height: f32| Quad([[0.0, 0.0], [300.0, 0.0], [300.0, height], [0.0, height]]);
        let lines = |heights: &[f32]| heights.iter().map(|height| line(*height)).collect::<Vec<_>>();
        assert!(is_small(&[], 1.0));
        assert!(!is_small(&lines(&[40.0, 36.0, 36.0, 10.0, 36.0]), 0.5));
        assert!(!is_small(&lines(&[10.0, 36.0, 36.0, 36.0]), 0.5));
        assert!(is_small(&lines(&[10.0, 36.0, 36.0, 10.0]), 0.5));
        assert!(is_small(&lines(&[80.0, 31.0, 31.0, 60.0, 60.0]), 0.5));
        // A line that runs from top to bottom is as high as it is wide.
        assert!(is_small(&[Quad([[20.0, 0.0], [20.0, 300.0], [0.0, 300.0], [0.0, 0.0]])], 0.5));
    }

    #[test]
    fn which_way_a_line_is_turned() {
        for (direction, degrees) in
            [([1.0, 0.1], 0), ([-0.2, 0.9], 90), ([-1.0, 0.0], 180), ([0.3, -0.8], 270)]
        {
            assert_eq!(Turn::of(direction).degrees(), degrees);
        }
    }

    #[test]
    fn the_piece_of_a_row_is_around_its_letters() {
        let letters =
            (0_u8..5).map(|at| Letter { sign: 'x', certainty: 1.0, at: 0.1 + 0.2 * f32::from(at) }).collect();
        let corners = Quad([[0.0, 0.0], [100.0, 0.0], [100.0, 10.0], [0.0, 10.0]]);
        let line = Line { letters, corners, is_cut: (false, false) };
        let piece = line.piece(1..2).0;
        assert!((piece[0][0] - 24.0).abs() < 0.01 && (piece[1][0] - 36.0).abs() < 0.01, "{piece:?}");
        assert!((piece[2][1] - 10.0).abs() < 0.01, "{piece:?}");
        assert_eq!(line.piece(3..9), corners);
    }
}

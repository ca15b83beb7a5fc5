//! Printed rows in the order of reading, each with what either look saw of it.

use crate::hidden::BESIDE_HIDDEN;
use crate::quad::{Point, Quad};
use crate::reading::Line;
use crate::recognise::Letter;

/// Pieces of one row lie across from each other by less than this share of the lower one's height.
const SAME_ROW: f32 = 0.4;
/// Pieces of one row in one look are parted by less than so many heights, and overlap by less than one.
const WIDEST_GAP: f32 = 3.0;
const MOST_OVERLAP: f32 = 1.0;
/// What two looks saw is one thing if so much of the shorter lies within the longer.
const SEEN_TWICE: f32 = 0.3;

/// One printed row.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// What the coarse and the fine look saw of it; at least one saw something. A row of words alone that the coarse look read
    /// with certainty is not read again. They had nothing in common but the model: where
    /// they agree, it was not the scale that made it so.
    pub looks: [Option<Line>; 2],
}

/// Puts together what is one printed row, and puts rows from top to bottom. `direction` is the one in which all is read.
pub(crate) fn rows(looks: [Vec<Line>; 2], direction: Point) -> Vec<Row> {
    let mut pieces: Vec<(usize, Line)> = looks
        .into_iter()
        .enumerate()
        .flat_map(|(look, lines)| lines.into_iter().map(move |line| (look, line)))
        .collect();
    let along = |line: &Line| line.corners.along_and_across(direction).0;
    pieces.sort_by(|(_, a), (_, b)| along(a).total_cmp(&along(b)));
    let mut groups: Vec<Vec<(usize, Line)>> = Vec::new();
    for piece in pieces {
        let (belongs, apart): (Vec<_>, Vec<_>) = groups
            .into_iter()
            .partition(|group| group.iter().any(|(look, line)| is_one_row(*look, line, piece.0, &piece.1)));
        let mut joined: Vec<(usize, Line)> = belongs.into_iter().flatten().collect();
        joined.push(piece);
        groups = apart;
        groups.push(joined);
    }
    let across = |group: &Vec<(usize, Line)>| {
        let sum: f32 = group.iter().map(|(_, line)| line.corners.along_and_across(direction).1).sum();
        sum / group.len() as f32
    };
    groups.sort_by(|a, b| across(a).total_cmp(&across(b)));
    groups
        .into_iter()
        .map(|mut group| {
            group.sort_by(|(_, a), (_, b)| along(a).total_cmp(&along(b)));
            let seen_by = |look: usize| {
                let mut lines = group.iter().filter(|(by, _)| *by == look).map(|(_, line)| line.clone());
                let first = lines.next()?;
                Some(lines.fold(first, Line::followed_by))
            };
            Row { looks: [seen_by(0), seen_by(1)] }
        })
        .collect()
}

/// Whether two lines are of one row: pieces that one look saw side by side, or what two looks saw in one place.
fn is_one_row(look: usize, a: &Line, other_look: usize, b: &Line) -> bool {
    let (longer, shorter) = if a.corners.size().0 > b.corners.size().0 { (a, b) } else { (b, a) };
    let direction = longer.corners.direction();
    let (at, across) = longer.corners.along_and_across(direction);
    let (other_at, other_across) = shorter.corners.along_and_across(direction);
    let ((width, height), (other_width, other_height)) = (longer.corners.size(), shorter.corners.size());
    let lower = height.min(other_height);
    if (across - other_across).abs() > SAME_ROW * lower {
        return false;
    }
    let gap = (at - other_at).abs() - f32::midpoint(width, other_width);
    if look == other_look {
        (-MOST_OVERLAP * lower..WIDEST_GAP * lower).contains(&gap)
    } else {
        -gap > SEEN_TWICE * other_width
    }
}

impl Line {
    /// This piece and one that follows it in the same row, with a blank between. What stands between two pieces was not seen as
    /// text: something may be hidden there.
    fn followed_by(mut self, mut piece: Self) -> Self {
        let is_seen = |letter: &&mut Letter| letter.sign != ' ';
        let last = self.letters.iter_mut().rfind(is_seen);
        let first = piece.letters.iter_mut().find(is_seen);
        for letter in [last, first].into_iter().flatten() {
            letter.certainty = letter.certainty.min(BESIDE_HIDDEN);
        }
        let ([a, .., d], [_, b, c, _]) = (self.corners.0, piece.corners.0);
        let (own, further) = (self.corners.size().0, piece.corners.size().0);
        let joined = Quad([a, b, c, d]);
        let all = joined.size().0.max(1.0);
        for letter in &mut self.letters {
            letter.at *= own / all;
        }
        self.letters.push(Letter { sign: ' ', certainty: 1.0, at: own / all });
        let from = 1.0 - further / all;
        self.letters.extend(
            piece.letters.into_iter().map(|letter| Letter { at: from + letter.at * further / all, ..letter }),
        );
        Self { corners: joined, is_cut: (self.is_cut.0, piece.is_cut.1), ..self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(text: &str, left: f32, top: f32) -> Line {
        let right = left + 10.0 * text.len() as f32;
        let corners = Quad([[left, top], [right, top], [right, top + 20.0], [left, top + 20.0]]);
        let letters = text.chars().map(|sign| Letter { sign, certainty: 1.0, at: 0.5 }).collect();
        Line { letters, corners, is_cut: (false, false) }
    }

    fn texts(looks: [Vec<Line>; 2]) -> Vec<[Option<String>; 2]> {
        rows(looks, [1.0, 0.0])
            .iter()
            .map(|row| [0, 1].map(|look| row.looks[look].as_ref().map(Line::text)))
            .collect()
    }

    #[test]
    fn rows_from_the_top_and_pieces_from_the_left() {
        let coarse = vec![line("below", 0.0, 60.0), line("5-1002 MHz", 10.0, 1.0)];
        let fine = vec![line("MHz", 100.0, 3.0), line("5-1002", 10.0, 0.0)];
        let both = |text: &str| [Some(text.to_owned()), Some(text.to_owned())];
        assert_eq!(texts([coarse, fine]), [both("5-1002 MHz"), [Some("below".into()), None]]);
    }

    #[test]
    fn what_stands_far_apart_is_not_joined() {
        assert_eq!(texts([vec![line("OUT 1", 0.0, 0.0), line("OUT 2", 200.0, 0.0)], vec![]]).len(), 2);
    }

    #[test]
    fn letters_keep_their_places_when_pieces_are_joined() {
        let joined = line("12", 0.0, 0.0).followed_by(line("34", 30.0, 0.0));
        let certain: Vec<bool> = joined.letters.iter().map(|letter| letter.certainty > 0.9).collect();
        assert_eq!(certain, [true, false, true, false, true], "what stands between two pieces is not known");
        assert_eq!(joined.corners, line("12345", 0.0, 0.0).corners);
        let places: Vec<f32> = joined.letters.iter().map(|letter| letter.at * 50.0).collect();
        assert!(
            places.iter().zip([10.0, 10.0, 20.0, 40.0, 40.0]).all(|(at, wanted)| (at - wanted).abs() < 0.01),
            "{places:?}"
        );
    }
}

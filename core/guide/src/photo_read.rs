//! What a photo of a label suggests: its print, read by the model beside the program, and what `label` makes of that.

use facts::photo::{Area, Picture, Piece};
use house::rating::PartRating;
use label::seen::{Member, SeenLine, SeenNumber, SeenPlace, SeenRow, Suggestion, suggest};
use print::{Line, Model, Point, Print, PrintError, Quad, Row, Turn};

/// A photo that was read.
#[derive(Debug, Clone, PartialEq)]
pub struct PhotoRead {
    /// What it suggests; nothing of it counts before somebody takes it.
    pub suggestion: Suggestion,
    print: Print,
    /// Of the whole picture, the right way up.
    size: (u32, u32),
}

/// How much is shown around what is printed, by its height: beside it, so that who looks sees that no digit is missing, and above and
/// below.
const BESIDE: f32 = 0.8;
const ABOVE: f32 = 0.25;

impl PhotoRead {
    /// Reads a picture, or a part of it. `watch` is told which share is done, 0 to 1, and says whether to go on.
    ///
    /// # Errors
    /// As [`Model::read`].
    pub fn of(
        model: &Model,
        picture: &Picture,
        part: Option<Area>,
        watch: &mut dyn FnMut(f64) -> bool,
    ) -> Result<Self, PrintError> {
        let print = model.read(picture, part, watch)?;
        let rows: Vec<SeenRow> = print.rows.iter().map(seen_row).collect();
        Ok(Self { suggestion: suggest(&rows), print, size: picture.upright_size() })
    }

    /// How its text is turned.
    pub const fn turn(&self) -> Turn {
        self.print.turn
    }

    /// The piece of the whole picture in which something stands, for the eyes of who confirms it.
    pub fn piece(&self, place: &SeenPlace) -> Option<Quad> {
        let line = self.print.rows.get(place.row)?.looks.get(place.look)?.as_ref()?;
        Some(line.piece(place.letters.clone()))
    }

    /// The same as it is shown: upright, with a little around it.
    pub fn piece_shown(&self, place: &SeenPlace) -> Option<Piece> {
        let Quad([a, b, c, d]) = self.piece(place)?;
        let ([along, across], [length, height]) = (directions([a, b, d]), [distance(a, b), distance(a, d)]);
        let (beside, above) = (BESIDE * height.min(length), ABOVE * height);
        let moved = |[x, y]: Point, on: f32, down: f32| {
            [x + on * along[0] + down * across[0], y + on * along[1] + down * across[1]]
        };
        let around = Quad([
            moved(a, -beside, -above),
            moved(b, beside, -above),
            moved(c, beside, above),
            moved(d, -beside, above),
        ]);
        Piece::around(around.around(self.size)?, self.size)
    }

    /// The piece in which a member stands with this value, if it stands there as a number. Outputs are those of the rating: of a tap's the
    /// way through is one more than is printed.
    pub fn piece_of(&self, member: Member, value: f64) -> Option<Piece> {
        let seen = self.suggestion.members.iter().find(|seen| seen.member == member)?;
        let outputs = || f64::from(PartRating::of_reading(&self.suggestion.reading).legs);
        let is_near = |one: f64| (one - value).abs() < 1e-9;
        let is_value = |number: &SeenNumber| {
            if member == Member::Legs { is_near(outputs()) } else { is_near(number.value) }
        };
        let is_it = |number: &&SeenNumber| seen.places.contains(&number.place) && is_value(number);
        self.piece_shown(&self.suggestion.numbers.iter().find(is_it)?.place)
    }

    /// Every piece that may be shown beside what was read.
    pub fn pieces(&self) -> Vec<Piece> {
        self.suggestion.numbers.iter().filter_map(|number| self.piece_shown(&number.place)).collect()
    }
}

fn distance(a: Point, b: Point) -> f32 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

/// From a corner the ways, of length one, along a line to the next corner and across it to the other.
fn directions([a, b, d]: [Point; 3]) -> [Point; 2] {
    [b, d].map(|to| {
        let length = distance(a, to).max(f32::EPSILON);
        [(to[0] - a[0]) / length, (to[1] - a[1]) / length]
    })
}

fn seen_row(row: &Row) -> SeenRow {
    let seen = |line: &Line| SeenLine {
        letters: line.letters.iter().map(|letter| (letter.sign, letter.certainty)).collect(),
        is_cut: line.is_cut,
    };
    SeenRow { looks: row.looks.each_ref().map(|look| look.as_ref().map(seen)) }
}

//! What a photo of a label suggests: its print, read by the model beside the program, and what `label` makes of that.

use facts::photo::{Area, Picture};
use label::seen::{SeenLine, SeenPlace, SeenRow, Suggestion, suggest};
use print::{Line, Model, Print, PrintError, Quad, Row, Turn};

/// A photo that was read.
#[derive(Debug, Clone, PartialEq)]
pub struct PhotoRead {
    /// What it suggests; nothing of it counts before somebody takes it.
    pub suggestion: Suggestion,
    print: Print,
}

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
        Ok(Self { suggestion: suggest(&rows), print })
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
}

fn seen_row(row: &Row) -> SeenRow {
    let seen = |line: &Line| SeenLine {
        letters: line.letters.iter().map(|letter| (letter.sign, letter.certainty)).collect(),
        is_cut: line.is_cut,
    };
    SeenRow { looks: row.looks.each_ref().map(|look| look.as_ref().map(seen)) }
}

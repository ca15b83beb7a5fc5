//! Which part of a photo is read, and shown large beside what is typed: two touches on the photo, or one of a few pieces.

use facts::fact::SubjectId;
use facts::photo::Piece;
use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Choice, Key, Move, Place, choices};
use crate::screen::{PressWeight, Screen, TouchedSpot, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// No label is smaller in a photo than this on its shorter side, ten-thousandths: two touches in one place are a slip.
const LEAST_SIDE: u32 = 150;

choices! {
    /// The pieces that can be chosen without a touch on the photo.
    ReadyPiece {
        /// All of it.
        Whole "whole",
        /// What lies in the middle.
        Middle "middle",
        /// What lies above.
        Upper "upper",
        /// What lies below.
        Lower "lower",
        /// What lies at the left.
        Left "left",
        /// What lies at the right.
        Right "right",
    }
}

impl ReadyPiece {
    /// Corners of it. A half is a little more than one, so that what stands in the middle is within either.
    fn piece(self) -> Option<Piece> {
        let (from, to) = match self {
            Self::Whole => ((0, 0), (10_000, 10_000)),
            Self::Middle => ((2_000, 2_000), (8_000, 8_000)),
            Self::Upper => ((0, 0), (10_000, 6_000)),
            Self::Lower => ((0, 4_000), (10_000, 10_000)),
            Self::Left => ((0, 0), (6_000, 10_000)),
            Self::Right => ((4_000, 0), (10_000, 10_000)),
        };
        Piece::between(from, to)
    }
}

/// The corner that was touched, as it is kept while the other is waited for.
#[derive(Debug, Clone, Copy)]
struct Corner(u32, u32);

impl Choice for Corner {
    fn key(&self) -> String {
        format!("{}-{}", self.0, self.1)
    }

    fn of(key: &str) -> Option<Self> {
        let (across, down) = key.split_once('-')?;
        Some(Self(across.parse().ok()?, down.parse().ok()?))
    }
}

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, photo: SubjectId) -> Screen {
    let asked = Phrase::new("photo-part");
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &asked.attribute("title"));
    if !snapshot.survey.photos.contains_key(&photo) {
        builder.words(WordsRole::Problem, &Phrase::new("free-gone"));
        builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Main);
        return builder.screen;
    }
    builder.words(WordsRole::Lead, &asked);
    let corner: Option<Corner> = snapshot.pending().one(&Key::Corner);
    let how = Phrase::new(if corner.is_some() { "photo-part-second" } else { "photo-part-first" });
    let part = snapshot.memory.part_of(photo);
    let corner_shown = corner.map(|Corner(across, down)| TouchedSpot { across, down });
    builder.photo_part(&Key::Corner, &how, photo, corner_shown, part);
    if corner.is_some() {
        builder.press(&Key::Again, &Phrase::new("photo-part-again"), PressWeight::Other);
    }
    let offers = ReadyPiece::ALL
        .iter()
        .map(|ready| Offer::new(ready, Phrase::new(format!("photo-part-{}", ready.word()))));
    let now = part.unwrap_or(Piece::WHOLE);
    let picked = ReadyPiece::ALL.iter().copied().find(|ready| ready.piece() == Some(now));
    builder.choice(&Key::Piece, &Phrase::new("photo-part-pieces"), false, offers.collect(), &picked);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(session: &mut Session, photo: SubjectId, done: &Done) -> Result<Move> {
    let memory = &mut session.open_survey()?.memory;
    match done {
        Done::Touch(Key::Corner, (across, down)) => {
            let here = Corner((*across).min(Piece::PARTS), (*down).min(Piece::PARTS));
            let Some(Corner(first_across, first_down)) = memory.pending.one(&Key::Corner) else {
                memory.pending.pick(&Key::Corner, [here]);
                return Ok(Move::Stay);
            };
            memory.pending.pick(&Key::Corner, Vec::<Corner>::new());
            let between = Piece::between((first_across, first_down), (here.0, here.1));
            let is_large = |piece: &Piece| {
                let [.., width, height] = piece.sides();
                width.min(height) >= LEAST_SIDE
            };
            let Some(part) = between.filter(is_large) else {
                session.tell(Phrase::new("photo-part-small"));
                return Ok(Move::Stay);
            };
            memory.choose_part(photo, part);
            Ok(Move::Back)
        }
        Done::Pick(Key::Piece, picked) => {
            let Some(part) = picked.first().and_then(|key| ReadyPiece::of(key)).and_then(ReadyPiece::piece)
            else {
                return Ok(Move::Stay);
            };
            memory.pending.pick(&Key::Corner, Vec::<Corner>::new());
            memory.choose_part(photo, part);
            Ok(Move::Back)
        }
        Done::Press(Key::Again) => {
            memory.pending.pick(&Key::Corner, Vec::<Corner>::new());
            Ok(Move::Stay)
        }
        Done::Press(Key::Overview) => Ok(Move::Go(Place::Overview)),
        _ => Ok(Move::Stay),
    }
}

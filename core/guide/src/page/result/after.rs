//! After a change: a photo, and whether everything else on the coax is still fine.

use facts::fact::{Edit, SubjectId, value_of};
use house::record::{Outcome, OutcomeKind, PhotoRole, Work, field};
use phrase::Phrase;

use super::put_back;
use super::still_fine::StillFine;
use crate::done::Done;
use crate::error::Result;
use crate::place::{Choice, Key, Move, Place, ResultPlace};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Scene, Session};
use crate::view::{Sketch, photo_slot};

/// The question about the other services, beside what [`Outcome`] says: that there are none, or that one is not sure.
const QUESTION: &str = "others-fine";

pub(crate) fn show(scene: &Scene<'_>, id: SubjectId) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("after"));
    let Some(work) = scene.survey.works.get(&id).filter(|work| work.outcome.end == OutcomeKind::Done) else {
        sketch.words(WordsRole::Problem, &Phrase::new("gone"));
        sketch.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Main);
        return sketch.screen;
    };
    let what = work.what(scene.survey);
    sketch.words(WordsRole::Plain, &what);
    sketch.words(WordsRole::Lead, &what.attribute("check"));
    sketch.words(WordsRole::Why, &Phrase::new("after-why"));
    let answer = answered(scene, work);
    StillFine::ask(&mut sketch, &Phrase::new("after-fine"), answer);
    if answer == Some(StillFine::No) {
        sketch.words(WordsRole::Problem, &Phrase::new("after-not-fine"));
        for caution in advice::worklist::cautions_of(work.change) {
            sketch.caution(&caution.phrase());
        }
        sketch.words_if_known(WordsRole::How, &what.attribute("back"));
    }
    photo_slot(scene, &mut sketch, &Key::After, work.change.at(), PhotoRole::After);
    sketch.confirm(&Key::PutBack, &Phrase::new("put-back"));
    // Not the main press: the answer itself leads on.
    sketch.press(&Key::Next, &Phrase::new("after-next"), PressWeight::Other);
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// The answer that stands.
fn answered(scene: &Scene<'_>, work: &Work) -> Option<StillFine> {
    match work.outcome.others_fine {
        Some(true) => Some(StillFine::Yes),
        Some(false) => Some(StillFine::No),
        None => StillFine::of(scene.survey.answer(work.id, QUESTION)?.as_str()?),
    }
}

pub(crate) fn take(session: &mut Session, id: SubjectId, done: &Done) -> Result<Move> {
    let on = Move::Swap(Place::Result(ResultPlace::Work));
    let open = session.open_survey()?;
    let Some(work) = open.survey.works.get(&id).cloned() else { return Ok(Move::Stay) };
    match done {
        Done::Photo(_, file) => {
            session.add_photo(file, Some(work.change.at()), Some(PhotoRole::After))?;
            Ok(Move::Stay)
        }
        Done::Pick(_, picked) => {
            let Some(told) = StillFine::picked(picked) else { return Ok(Move::Stay) };
            let fine = match told {
                StillFine::Yes => Some(true),
                StillFine::No => Some(false),
                StillFine::Nothing | StillFine::Unsure => None,
            };
            let outcome = Outcome { end: OutcomeKind::Done, others_fine: fine };
            open.write(&[
                Edit::new(id, field::OUTCOME, value_of(&outcome)?),
                Edit::new(id, field::asked_field(QUESTION), told.word()),
            ])?;
            Ok(if fine == Some(false) { Move::Stay } else { on })
        }
        Done::Press(Key::Next) => Ok(on),
        Done::Press(Key::PutBack) => {
            put_back::put_back(session, &work)?;
            Ok(on)
        }
        _ => Ok(Move::Stay),
    }
}

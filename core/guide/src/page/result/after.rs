//! After a change: a photo, and whether everything else on the coax is still fine.

use facts::fact::SubjectId;
use house::record::{Asked, Outcome, OutcomeKind, PhotoRole, Work, field};
use phrase::Phrase;

use super::put_back;
use super::still_fine::StillFine;
use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, ResultPlace};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, photo_slot};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, id: SubjectId) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("after"));
    let Some(work) = snapshot.survey.works.get(&id).filter(|work| work.outcome.end == OutcomeKind::Done)
    else {
        builder.words(WordsRole::Problem, &Phrase::new("gone"));
        builder.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Main);
        return builder.screen;
    };
    let what = work.what(snapshot.survey);
    builder.words(WordsRole::Plain, &what);
    builder.words(WordsRole::Lead, &what.attribute("check"));
    builder.words(WordsRole::Why, &Phrase::new("after-why"));
    let answer = answered(snapshot, work);
    StillFine::ask(&mut builder, &Phrase::new("after-fine"), answer);
    if answer == Some(StillFine::No) {
        builder.words(WordsRole::Problem, &Phrase::new("after-not-fine"));
        for caution in advice::worklist::cautions_in(work.change, snapshot.survey) {
            builder.caution(&caution.phrase());
        }
        builder.words_if_known(WordsRole::How, &what.attribute("back"));
    }
    photo_slot(snapshot, &mut builder, &Key::After, work.change.at(), PhotoRole::After);
    builder.confirm(&Key::PutBack, &Phrase::new("put-back"));
    // Not the main press: the answer itself leads on.
    builder.press(&Key::Next, &Phrase::new("after-next"), PressWeight::Other);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// The answer that stands. Beside what [`Outcome`] says, it may be that there are no others, or that one is not sure.
fn answered(snapshot: &SurveySnapshot<'_>, work: &Work) -> Option<StillFine> {
    match work.outcome.others_fine {
        Some(true) => Some(StillFine::Yes),
        Some(false) => Some(StillFine::No),
        None => StillFine::of_reply(snapshot.survey.reply(work.id, Asked::OthersFine)?),
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
            open.write(&[field::work::OUTCOME.set(id, &outcome), Asked::OthersFine.set(id, told.reply())])?;
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

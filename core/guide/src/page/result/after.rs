//! After a change: a photo, and whether everything else on the coax is still fine.

use facts::fact::{Edit, SubjectId, value_of};
use house::record::{Outcome, OutcomeKind, PhotoRole, Work, field};
use phrase::Phrase;

use super::put_back;
use crate::deed::Deed;
use crate::error::Result;
use crate::place::{Move, Place, ResultPlace};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Scene, Session};
use crate::view::{Offer, Sketch, UNSURE, photo_slot};

/// The question about the other services, beside what [`Outcome`] says: that there are none, or that one is not sure.
const QUESTION: &str = "others-fine";

pub(crate) fn show(scene: &Scene<'_>, id: SubjectId) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("after"));
    let Some(work) = scene.survey.works.get(&id).filter(|work| work.outcome.end == OutcomeKind::Done) else {
        sketch.words(WordsRole::Problem, &Phrase::new("gone"));
        sketch.press("work", &Phrase::new("to-work"), PressWeight::Main);
        return sketch.screen;
    };
    let what = work.what(scene.survey);
    sketch.words(WordsRole::Plain, &what);
    sketch.words(WordsRole::Lead, &what.attribute("check"));
    sketch.words(WordsRole::Why, &Phrase::new("after-why"));
    let answer = answered(scene, work);
    let offer = |key: &str| Offer::new(key, Phrase::new(format!("after-{key}")));
    let offers = vec![offer("yes"), offer("no"), offer("nothing"), Offer::unsure()];
    let now: Vec<_> = answer.map(str::to_owned).into_iter().collect();
    sketch.choice("fine", &Phrase::new("after-fine"), false, offers, &now);
    if answer == Some("no") {
        sketch.words(WordsRole::Problem, &Phrase::new("after-not-fine"));
        for caution in advice::worklist::cautions_of(work.change) {
            sketch.caution(&caution.phrase());
        }
        sketch.words_if_known(WordsRole::How, &what.attribute("back"));
    }
    photo_slot(scene, &mut sketch, "after", work.change.at(), PhotoRole::After);
    sketch.confirm("put-back", &Phrase::new("put-back"));
    // Not the main press: the answer itself leads on.
    sketch.press("next", &Phrase::new("after-next"), PressWeight::Other);
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// The key of the answer that stands.
fn answered<'a>(scene: &Scene<'a>, work: &Work) -> Option<&'a str> {
    match work.outcome.others_fine {
        Some(true) => Some("yes"),
        Some(false) => Some("no"),
        None => scene.survey.answer(work.id, QUESTION).and_then(|answer| answer.as_str()),
    }
}

pub(crate) fn take(session: &mut Session, id: SubjectId, deed: &Deed) -> Result<Move> {
    let on = Move::Swap(Place::Result(ResultPlace::Work));
    let open = session.open_survey()?;
    let Some(work) = open.survey.works.get(&id).cloned() else { return Ok(Move::Stay) };
    match deed {
        Deed::Photo { file, .. } => {
            open.add_photo(file, Some(work.change.at()), Some(PhotoRole::After))?;
            Ok(Move::Stay)
        }
        Deed::Pick { picked, .. } => {
            let told = picked.first().map(String::as_str);
            let fine = match told {
                Some("yes") => Some(true),
                Some("no") => Some(false),
                Some("nothing" | UNSURE) => None,
                _ => return Ok(Move::Stay),
            };
            let outcome = Outcome { end: OutcomeKind::Done, others_fine: fine };
            open.write(&[
                Edit::new(id, field::OUTCOME, value_of(&outcome)?),
                Edit::new(id, field::asked_field(QUESTION), told.unwrap_or_default()),
            ])?;
            Ok(if fine == Some(false) { Move::Stay } else { on })
        }
        Deed::Press { key } if key == "next" => Ok(on),
        Deed::Press { key } if key == "put-back" => {
            put_back::put_back(session, &work)?;
            Ok(on)
        }
        _ => Ok(Move::Stay),
    }
}

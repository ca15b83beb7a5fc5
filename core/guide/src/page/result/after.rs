//! After a change: a photo, and whether everything else on the coax is still fine.

use facts::fact::SubjectId;
use house::record::{Asked, Named, Outcome, OutcomeKind, PhotoRole, Reply, Work, field};
use phrase::Phrase;

use super::put_back;
use crate::deed::Deed;
use crate::error::Result;
use crate::place::{Move, Place, ResultPlace};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Scene, Session};
use crate::view::{Offer, Sketch, photo_slot};

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
    let now: Vec<_> = answer.map(|reply| reply.name().to_owned()).into_iter().collect();
    sketch.choice("fine", &Phrase::new("after-fine"), false, offers, &now);
    if answer == Some(Reply::No) {
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

/// The answer that stands. Beside what [`Outcome`] says, the question may be answered by that there are no others, or
/// that one is not sure.
fn answered(scene: &Scene<'_>, work: &Work) -> Option<Reply> {
    match work.outcome.others_fine {
        Some(true) => Some(Reply::Yes),
        Some(false) => Some(Reply::No),
        None => scene.survey.reply(work.id, Asked::OthersFine),
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
            let Some(told) = picked.first().and_then(|key| Reply::of_name(key)) else {
                return Ok(Move::Stay);
            };
            let fine = match told {
                Reply::Yes => Some(true),
                Reply::No => Some(false),
                Reply::Nothing | Reply::Unsure => None,
                _ => return Ok(Move::Stay),
            };
            let outcome = Outcome { end: OutcomeKind::Done, others_fine: fine };
            open.write(&[field::work::OUTCOME.set(id, &outcome), Asked::OthersFine.set(id, told)])?;
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

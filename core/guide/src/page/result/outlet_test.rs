//! The outlet test at one outlet: first what kind of test it was, since that decides what it tells of.

use advice::verdict::is_of_test;
use facts::fact::SubjectId;
use phrase::Phrase;

use super::reading;
use crate::deed::Deed;
use crate::error::Result;
use crate::place::{Move, Place, ResultPlace, TestKind, key_of};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Scene, Session};
use crate::view::{Offer, Sketch, shown};

pub(crate) fn show(scene: &Scene<'_>, outlet: SubjectId) -> Screen {
    let survey = scene.survey;
    let title = Phrase::new("test-title").phrase("outlet", shown::outlet(survey, outlet));
    let mut sketch = Sketch::new(scene.language, scene.pending(), &title);
    if !survey.parts.contains_key(&outlet) {
        sketch.words(WordsRole::Problem, &Phrase::new("gone"));
        sketch.press("tests", &Phrase::new("to-tests"), PressWeight::Main);
        return sketch.screen;
    }
    sketch.words(WordsRole::Lead, &Phrase::new("test-kind"));
    sketch.words(WordsRole::Why, &Phrase::new("test-kind-why"));
    let offers = TestKind::ALL.iter().map(|kind| {
        let words = Phrase::new(format!("test-kind-{}", kind.key()));
        let about = words.attribute("about");
        Offer::new(kind.key(), words).about(about)
    });
    sketch.choice("kind", &Phrase::new("test-kind"), false, offers.collect(), &[]);
    let rows = survey
        .readings_at(outlet)
        .filter(|told| is_of_test(told.measured))
        .take(60)
        .map(|told| {
            let how = told.how.map(reading::how);
            let key = key_of("reading", told.id);
            sketch.row(Some(key), &house::naming::reading(told.measured), how.as_ref(), None)
        })
        .collect();
    sketch.rows(&Phrase::new("test-readings"), rows);
    // Not the main press: the answer itself leads on.
    sketch.press("tests", &Phrase::new("to-tests"), PressWeight::Other);
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, outlet: SubjectId, deed: &Deed) -> Result<Move> {
    let Deed::Pick { picked, .. } = deed else { return Ok(Move::Stay) };
    let stands = session.open_survey()?.survey.parts.contains_key(&outlet);
    let kind = TestKind::ALL.into_iter().find(|kind| picked.iter().any(|picked| picked == kind.key()));
    Ok(match kind.filter(|_| stands) {
        Some(kind) => Move::Go(Place::Result(ResultPlace::Numbers(outlet, kind))),
        None => Move::Stay,
    })
}

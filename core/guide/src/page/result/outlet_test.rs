//! The outlet test at one outlet: first what kind of test it was, since that decides what it tells of.

use advice::verdict::is_of_test;
use facts::fact::SubjectId;
use phrase::Phrase;

use super::reading;
use crate::done::Done;
use crate::error::Result;
use crate::place::{Choice, Key, Move, Place, ResultPlace, TestKind};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder, shown};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, outlet: SubjectId) -> Screen {
    let survey = snapshot.survey;
    let title = Phrase::new("test-title").phrase("outlet", shown::outlet(survey, outlet));
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &title);
    if !survey.parts.contains_key(&outlet) {
        builder.words(WordsRole::Problem, &Phrase::new("gone"));
        builder.press(&Key::Tests, &Phrase::new("to-tests"), PressWeight::Main);
        return builder.screen;
    }
    builder.words(WordsRole::Lead, &Phrase::new("test-kind"));
    builder.words(WordsRole::Why, &Phrase::new("test-kind-why"));
    let offers = TestKind::ALL.iter().map(|kind| {
        let words = Phrase::new(format!("test-kind-{}", kind.word()));
        let about = words.attribute("about");
        Offer::new(kind, words).about(about)
    });
    builder.choice(&Key::Kind, &Phrase::new("test-kind"), false, offers.collect(), None::<&TestKind>);
    let rows = survey
        .readings_at(outlet)
        .filter(|told| is_of_test(told.measured))
        .take(60)
        .map(|told| {
            let how = told.how.map(reading::how);
            let key = Key::Reading(told.id);
            builder.row(Some(key), &house::naming::reading(told.measured), how.as_ref(), None)
        })
        .collect();
    builder.rows(&Phrase::new("test-readings"), rows);
    // Not the main press: the answer itself leads on.
    builder.press(&Key::Tests, &Phrase::new("to-tests"), PressWeight::Other);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(session: &mut Session, outlet: SubjectId, done: &Done) -> Result<Move> {
    let Done::Pick(_, picked) = done else { return Ok(Move::Stay) };
    let stands = session.open_survey()?.survey.parts.contains_key(&outlet);
    let kind = picked.first().and_then(|key| TestKind::of(key));
    Ok(match kind.filter(|_| stands) {
        Some(kind) => Move::Go(Place::Result(ResultPlace::Numbers(outlet, kind))),
        None => Move::Stay,
    })
}

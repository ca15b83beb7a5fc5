//! One change: what, why, what to mind, how, what it takes, and what it costs the other services.

use advice::finding::Caution;
use advice::worklist::Step;
use facts::fact::{Edit, SubjectId};
use house::record::{ChangeKind, Outcome, OutcomeKind, PhotoRole, field};
use phrase::{Arg, Phrase};
use telling::report::part_told;

use super::{waiting, work};
use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, ResultPlace};
use crate::screen::{Ability, PressWeight, Screen, WordsRole};
use crate::session::{Scene, Session};
use crate::view::{Sketch, photo_slot};

pub(crate) fn show(scene: &Scene<'_>, change: ChangeKind) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("step"));
    let Some(worked) = waiting::worked(scene, &mut sketch) else { return sketch.screen };
    let steps = &worked.list.steps;
    let found = steps.iter().enumerate().find(|(_, step)| step.change == change);
    let Some((place, step)) = found else {
        sketch.words(WordsRole::Lead, &Phrase::new("step-gone"));
        sketch.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Main);
        return sketch.screen;
    };
    let title = Phrase::new("step-of").with("number", Arg::Count(place as u64 + 1));
    sketch.screen.title = sketch.say(&title.with("of", Arg::Count(steps.len() as u64)));
    sketch.able(Ability::Torch);
    told(scene, &mut sketch, step);
    if applies(scene, change) {
        photo_slot(scene, &mut sketch, &Key::Before, change.at(), PhotoRole::Before);
        sketch.press(&Key::Done, &Phrase::new("step-done"), PressWeight::Main);
        sketch.press(&Key::CouldNot, &Phrase::new("step-could-not"), PressWeight::Other);
    } else {
        sketch.words(WordsRole::Plain, &Phrase::new("step-after-others"));
        sketch.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Main);
    }
    gained(&mut sketch, step);
    if place > 0 {
        sketch.words(WordsRole::Aside, &Phrase::new("step-not-first"));
    }
    sketch.press(&Key::Work, &Phrase::new("step-all"), PressWeight::Quiet);
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// What, why, how and with what; then the cautions, which so stand right above the word that it is done.
fn told(scene: &Scene<'_>, sketch: &mut Sketch<'_>, step: &Step) {
    let what = step.change.phrase(&step.before);
    sketch.words(WordsRole::Lead, &what);
    sketch.words_if_known(WordsRole::Why, &what.attribute("why"));
    sketch.words(WordsRole::Heading, &Phrase::new("term-how"));
    sketch.words_if_known(WordsRole::How, &what.attribute("how"));
    let minutes = Phrase::new("step-minutes").with("minutes", Arg::Minutes(step.effort.minutes));
    sketch.words(WordsRole::Plain, &minutes);
    if step.effort.parts.is_empty() {
        sketch.words(WordsRole::Plain, &Phrase::new("step-no-parts"));
    }
    let parts = &step.effort.parts;
    let rows = parts.iter().take(40).map(|part| sketch.row(None, &part_told(part), None, None)).collect();
    sketch.rows(&Phrase::new("step-parts"), rows);
    // What this house named itself stands in place of the general question about it.
    let cautions = step.cautions();
    crate::question::house::caution_of_people(scene, sketch, cautions.contains(&Caution::WhoDependsOnIt));
    for caution in cautions.iter().filter(|caution| **caution != Caution::WhoDependsOnIt) {
        sketch.caution(&caution.phrase());
    }
}

/// What it brings, and what the other services notice of it.
fn gained(sketch: &mut Sketch<'_>, step: &Step) {
    sketch.words(WordsRole::Plain, &work::gain(step));
    let services = step.service_words();
    let rows = services.iter().take(60).map(|words| sketch.row(None, words, None, None)).collect();
    sketch.rows(&Phrase::new("step-services"), rows);
}

/// Whether the house is such that this change can be made now: one that speaks of what an earlier step brings cannot.
fn applies(scene: &Scene<'_>, change: ChangeKind) -> bool {
    advice::worklist::applied(change, scene.survey) != *scene.survey
}

pub(crate) fn take(session: &mut Session, change: ChangeKind, done: &Done) -> Result<Move> {
    match done {
        Done::Photo(_, file) => {
            session.add_photo(file, Some(change.at()), Some(PhotoRole::Before))?;
            Ok(Move::Stay)
        }
        Done::Press(Key::Done) => {
            let applies = session.with_scene(|scene| applies(scene, change))?;
            if !applies {
                return Ok(Move::Stay);
            }
            let outcome = Outcome { end: OutcomeKind::Done, others_fine: None };
            let open = session.open_survey()?;
            let edits = change.done(
                &open.survey,
                &advice::worklist::applied(change, &open.survey),
                open.store.ledger(),
                outcome,
            )?;
            open.write(&edits)?;
            Ok(Move::Swap(Place::Result(over(&edits, ResultPlace::After))))
        }
        Done::Press(Key::CouldNot) => {
            let outcome = Outcome { end: OutcomeKind::CouldNot, others_fine: None };
            let edits = change.ended(outcome)?;
            session.open_survey()?.write(&edits)?;
            Ok(Move::Swap(Place::Result(over(&edits, ResultPlace::Ended))))
        }
        _ => Ok(Move::Stay),
    }
}

/// The screen of the work that these edits noted down.
fn over(edits: &[Edit], place: fn(SubjectId) -> ResultPlace) -> ResultPlace {
    let work = edits.iter().find(|edit| edit.field == field::CHANGE);
    work.map_or(ResultPlace::Work, |edit| place(edit.subject))
}

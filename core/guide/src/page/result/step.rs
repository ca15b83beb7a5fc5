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
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, photo_slot};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, change: ChangeKind) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("step"));
    let Some(worked) = waiting::worked(snapshot, &mut builder) else { return builder.screen };
    let steps = &worked.list.steps;
    let found = steps.iter().enumerate().find(|(_, step)| step.change == change);
    let Some((place, step)) = found else {
        builder.words(WordsRole::Lead, &Phrase::new("step-gone"));
        builder.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Main);
        return builder.screen;
    };
    let title = Phrase::new("step-of").with("number", Arg::Count(place as u64 + 1));
    builder.screen.title = builder.say(&title.with("of", Arg::Count(steps.len() as u64)));
    builder.able(Ability::Torch);
    told(snapshot, &mut builder, step);
    if applies(snapshot, change) {
        photo_slot(snapshot, &mut builder, &Key::Before, change.at(), PhotoRole::Before);
        builder.press(&Key::Done, &Phrase::new("step-done"), PressWeight::Main);
        builder.press(&Key::CouldNot, &Phrase::new("step-could-not"), PressWeight::Other);
    } else {
        builder.words(WordsRole::Plain, &Phrase::new("step-after-others"));
        builder.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Main);
    }
    gained(&mut builder, step);
    if place > 0 {
        builder.words(WordsRole::Aside, &Phrase::new("step-not-first"));
    }
    builder.press(&Key::Work, &Phrase::new("step-all"), PressWeight::Quiet);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// What, why, how and with what; then the cautions, which so stand right above the word that it is done.
fn told(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, step: &Step) {
    let what = step.change.phrase(&step.before);
    builder.words(WordsRole::Lead, &what);
    builder.words_if_known(WordsRole::Why, &what.attribute("why"));
    builder.words(WordsRole::Heading, &Phrase::new("term-how"));
    builder.words_if_known(WordsRole::How, &what.attribute("how"));
    let minutes = Phrase::new("step-minutes").with("minutes", Arg::Minutes(step.effort.minutes));
    builder.words(WordsRole::Plain, &minutes);
    if step.effort.parts.is_empty() {
        builder.words(WordsRole::Plain, &Phrase::new("step-no-parts"));
    }
    let parts = &step.effort.parts;
    let rows = parts.iter().take(40).map(|part| builder.row(None, &part_told(part), None, None)).collect();
    builder.rows(&Phrase::new("step-parts"), rows);
    // What this house named itself stands in place of the general question about it.
    let cautions = step.cautions();
    crate::question::house::caution_of_people(snapshot, builder, cautions.contains(&Caution::WhoDependsOnIt));
    for caution in cautions.iter().filter(|caution| **caution != Caution::WhoDependsOnIt) {
        builder.caution(&caution.phrase());
    }
}

/// What it brings, and what the other services notice of it.
fn gained(builder: &mut ScreenBuilder<'_>, step: &Step) {
    builder.words(WordsRole::Plain, &work::gain(step));
    let services = step.service_words();
    let rows = services.iter().take(60).map(|words| builder.row(None, words, None, None)).collect();
    builder.rows(&Phrase::new("step-services"), rows);
}

/// Whether the house is such that this change can be made now: one that speaks of what an earlier step brings cannot.
fn applies(snapshot: &SurveySnapshot<'_>, change: ChangeKind) -> bool {
    change.is_check() || advice::worklist::applied(change, snapshot.survey) != *snapshot.survey
}

pub(crate) fn take(session: &mut Session, change: ChangeKind, done: &Done) -> Result<Move> {
    match done {
        Done::Photo(_, file) => {
            session.add_photo(file, Some(change.at()), Some(PhotoRole::Before))?;
            Ok(Move::Stay)
        }
        Done::Press(Key::Done) => {
            let applies = session.with_snapshot(|snapshot| applies(snapshot, change))?;
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
            let edits = change.ended(outcome);
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

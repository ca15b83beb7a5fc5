//! Work that is over: done, not possible, put back.

use facts::fact::SubjectId;
use house::record::{Is, OutcomeKind, field};
use phrase::Phrase;

use super::put_back;
use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, ResultPlace};
use crate::screen::{PressWeight, Screen, WordsRole, WritingKind};
use crate::session::{Pending, Session, SurveySnapshot};
use crate::view::{ScreenBuilder, photo_slot};

/// The most notes on one thing that are shown.
const NOTES: usize = 8;

const ENDS: [(OutcomeKind, &str); 3] = [
    (OutcomeKind::Done, "ended-done"),
    (OutcomeKind::CouldNot, "ended-could-not"),
    (OutcomeKind::PutBack, "ended-put-back"),
];

/// What was done, what could not be, and what was put back, each under its own name; at most so many of each.
pub(super) fn rows(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, most: usize) {
    for (end, name) in ENDS {
        let works = snapshot.survey.works.values().filter(|work| work.outcome.end == end).take(most);
        let rows = works
            .map(|work| {
                let not_fine = work.outcome.others_fine == Some(false) && end == OutcomeKind::Done;
                let remark = not_fine.then(|| Phrase::new("ended-not-fine"));
                let row = builder.row(
                    Some(Key::Ended(work.id)),
                    &work.what(snapshot.survey),
                    None,
                    remark.as_ref(),
                );
                if end == OutcomeKind::Done { row.ticked(true) } else { row }
            })
            .collect();
        builder.rows(&Phrase::new(name), rows);
    }
}

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, id: SubjectId) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("ended"));
    let Some(work) = snapshot.survey.works.get(&id) else {
        builder.words(WordsRole::Problem, &Phrase::new("gone"));
        builder.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Main);
        return builder.screen;
    };
    let end = ENDS.iter().find(|(end, _)| *end == work.outcome.end);
    builder.screen.title = builder.say(&Phrase::new(end.map_or("ended", |(_, name)| name)));
    let what = work.what(snapshot.survey);
    builder.words(WordsRole::Lead, &what);
    let others = match work.outcome.others_fine {
        Some(true) => "ended-fine",
        Some(false) => "ended-not-fine",
        None => "ended-not-looked",
    };
    if work.outcome.end == OutcomeKind::Done {
        builder.words(WordsRole::Plain, &Phrase::new(others));
        for caution in advice::worklist::cautions_in(work.change, snapshot.survey) {
            builder.caution(&caution.phrase());
        }
        builder.words_if_known(WordsRole::How, &what.attribute("back"));
        photo_slot(snapshot, &mut builder, &Key::After, work.change.at(), house::record::PhotoRole::After);
        builder.press(&Key::Check, &Phrase::new("ended-check"), PressWeight::Other);
        builder.confirm(&Key::PutBack, &Phrase::new("put-back"));
    } else {
        if work.outcome.end == OutcomeKind::CouldNot {
            notes(snapshot, &mut builder, work.change.at());
        }
        builder.words(WordsRole::Why, &Phrase::new("ended-again-why"));
        builder.press(&Key::Again, &Phrase::new("ended-again"), PressWeight::Other);
    }
    builder.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Main);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// The notes on what the work was about, and a place for the reason.
fn notes(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, about: SubjectId) {
    for note in snapshot.survey.notes_on(Some(about)).take(NOTES) {
        builder.words(WordsRole::Plain, &Phrase::new("free-note").text("text", &note.text));
    }
    builder.writing(&Key::Note, &Phrase::new("ended-note"), None, WritingKind::Note, "");
    builder.submitted_by(&Key::KeepNote);
    builder.press(&Key::KeepNote, &Phrase::new("free-note-add"), PressWeight::Other);
}

/// Keeps the reason that was written as a note on the thing; nothing if none was.
fn keep_note(session: &mut Session, about: SubjectId) -> Result<()> {
    let open = session.open_survey()?;
    let Some(text) = open.memory.pending.written(&Key::Note).filter(|text| !text.is_empty()) else {
        return Ok(());
    };
    let note = SubjectId::random();
    let edits =
        [Is::Note.begin(note), field::note::ABOUT.set(note, &about), field::note::TEXT.set(note, text)];
    open.write(&edits)?;
    open.memory.pending = Pending::default();
    Ok(())
}

pub(crate) fn take(session: &mut Session, id: SubjectId, done: &Done) -> Result<Move> {
    let Some(work) = session.open_survey()?.survey.works.get(&id).cloned() else { return Ok(Move::Stay) };
    let open = session.open_survey()?;
    let to = |place| Ok(Move::Swap(Place::Result(place)));
    let is_done = work.outcome.end == OutcomeKind::Done;
    match done {
        Done::Photo(_, file) => {
            session.add_photo(file, Some(work.change.at()), Some(house::record::PhotoRole::After))?;
            Ok(Move::Stay)
        }
        Done::Press(Key::Check) if is_done => to(ResultPlace::After(id)),
        Done::Press(Key::PutBack) if is_done => {
            put_back::put_back(session, &work)?;
            to(ResultPlace::Work)
        }
        Done::Write(Key::Note, _) => {
            open.memory.pending.keep(done);
            Ok(Move::Stay)
        }
        Done::Press(Key::KeepNote) if !is_done => {
            keep_note(session, work.change.at())?;
            Ok(Move::Stay)
        }
        Done::Press(Key::Again) if !is_done => {
            let removal = open.store.ledger().remove(id);
            open.write(&[removal])?;
            to(ResultPlace::Work)
        }
        _ => Ok(Move::Stay),
    }
}

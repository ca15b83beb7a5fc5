//! All parts, and one part with everything about it.

use facts::fact::SubjectId;
use house::record::{Feed, FeedFrom, Is, Part, PortEnd, Run, field};
use house::{naming, story};
use phrase::Phrase;

use super::{builder, card, clear, finder, go, gone, reading, write};
use crate::error::Result;
use crate::place::{FieldPlace, Key, Move, Place, Question};
use crate::question::{Answer, Told, about};
use crate::screen::{PressWeight, RowEntry, WordsRole, WritingKind};
use crate::session::{Session, SurveySnapshot};
use crate::view::ScreenBuilder;

/// The most notes and readings that a part's screen shows.
const SHOWN: usize = 15;

pub(crate) fn show_all<'a>(snapshot: &SurveySnapshot<'a>) -> ScreenBuilder<'a> {
    let mut builder = builder(snapshot, &Phrase::new("free-parts"));
    finder::draw(snapshot, &mut builder, &Phrase::new("free-parts-rows"), None, |_| true);
    builder.press(&Key::Add, &Phrase::new("free-add-loose"), PressWeight::Other);
    builder
}

pub(crate) fn pressed_all(key: &Key) -> Move {
    match key {
        Key::Add => go(FieldPlace::Add(None)),
        Key::Part(part) => go(FieldPlace::Part(*part)),
        _ => Move::Stay,
    }
}

pub(crate) fn show<'a>(snapshot: &SurveySnapshot<'a>, id: SubjectId) -> ScreenBuilder<'a> {
    let survey = snapshot.survey;
    let Some(part) = survey.parts.get(&id) else {
        return gone(snapshot, "free-part");
    };
    let mut builder = builder(snapshot, &Phrase::new("free-part").phrase("part", naming::part(survey, id)));
    card::part(snapshot, &mut builder, part);
    let wiring = wiring(snapshot, &builder, part);
    builder.rows(&Phrase::new("free-wiring"), wiring);
    about::rows(snapshot, &mut builder, id);
    card::photos(snapshot, &mut builder, id, about::is_printed(part));
    reading::blocks(snapshot, &mut builder, survey.readings_at(id), SHOWN);
    notes(snapshot, &mut builder, id);
    let next = if is_noting(snapshot) { PressWeight::Other } else { PressWeight::Main };
    builder.press(&Key::Next, &Phrase::new("overview-next"), next);
    builder.press(&Key::Meter, &Phrase::new("free-measure-here"), PressWeight::Other);
    if part.outputs() > 0 {
        builder.press(&Key::Add, &Phrase::new("free-add-behind"), PressWeight::Other);
    }
    builder.press(&Key::Edit, &Phrase::new("free-edit"), PressWeight::Other);
    let remove = Phrase::new("free-remove-part").phrase("part", naming::part(survey, id));
    let remove = remove.phrase("hangs", naming::Hanging::on(survey, id).phrase());
    builder.confirm_loss(&Key::Remove, &remove);
    builder
}

/// Whether a note is being written.
fn is_noting(snapshot: &SurveySnapshot<'_>) -> bool {
    snapshot.pending().picked_keys(&Key::Noting).is_some()
}

/// The notes on a thing, and a place for one more once it was asked for.
pub(super) fn notes(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, about: SubjectId) {
    let mut notes: Vec<_> = snapshot.survey.notes_on(Some(about)).collect();
    notes.sort_by_cached_key(|note| std::cmp::Reverse(card::born_ms(snapshot, note.id)));
    for note in notes.into_iter().take(SHOWN) {
        builder.words(WordsRole::Plain, &Phrase::new("free-note").text("text", &note.text));
    }
    if is_noting(snapshot) {
        builder.writing(&Key::Note, &Phrase::new("free-note-new"), None, WritingKind::Note, "");
        builder.press(&Key::AddNote, &Phrase::new("free-note-add"), PressWeight::Main);
    } else {
        builder.press(&Key::NoteNew, &Phrase::new("free-note-write"), PressWeight::Other);
    }
}

/// Opens the place for a note.
pub(super) fn open_note(session: &mut Session) -> Result<Move> {
    session.open_survey()?.memory.pending.pick(&Key::Noting, [Key::Note]);
    Ok(Move::Stay)
}

/// A note half written is kept as it stands when something else is pressed.
pub(super) fn keep_note(session: &mut Session, about: SubjectId) -> Result<()> {
    let written = |snapshot: &SurveySnapshot<'_>| {
        snapshot.pending().written(&Key::Note).is_some_and(|note| !note.is_empty())
    };
    if session.with_snapshot(written)? {
        add_note(session, about)?;
    }
    Ok(())
}

/// Keeps the note that stands on the screen.
pub(super) fn add_note(session: &mut Session, about: SubjectId) -> Result<Move> {
    let told = session.with_snapshot(|snapshot| -> Told<Answer> {
        let text = snapshot.pending().written(&Key::Note).filter(|text| !text.is_empty());
        let text = text.ok_or_else(crate::question::not_answered)?;
        let note = SubjectId::random();
        let answer = Answer::new().is(note, Is::Note).says(note, field::note::ABOUT, &about);
        Ok(answer.says(note, field::note::TEXT, text))
    })?;
    if write(session, told)? {
        clear(session)?;
    }
    Ok(Move::Stay)
}

/// Where each port leads: the input first, then each output, with the cable on it.
fn wiring(snapshot: &SurveySnapshot<'_>, builder: &ScreenBuilder<'_>, part: &Part) -> Vec<RowEntry> {
    let survey = snapshot.survey;
    let mut rows = Vec::new();
    if let Some(feed) = survey.wiring.feed(part.id) {
        let says = naming::port(survey, feed.part, feed.port);
        let key = Key::Part(feed.part);
        rows.push(builder.row(Some(key), &Phrase::new("free-port-in"), Some(&says), None));
        rows.extend(feed.run.map(|run| run_row(snapshot, builder, run)));
    }
    for port in 1..=part.outputs() {
        let head = naming::with_port(Phrase::new("free-port"), Some(part), port);
        let mut children = survey.wiring.on_port(part.id, port).peekable();
        if children.peek().is_none() {
            let says = match part.end(port) {
                Some(PortEnd::Capped) => "value-end-capped",
                Some(PortEnd::Open) => "value-end-open",
                Some(PortEnd::LooseEnd) => "value-end-loose_end",
                Some(PortEnd::AnotherHome) => "value-end-another_home",
                None => "free-port-unknown",
            };
            rows.push(builder.row(Some(Key::PortHere(port)), &head, Some(&Phrase::new(says)), None));
        }
        for child in children {
            let says = naming::part(survey, child);
            rows.push(builder.row(Some(Key::Part(child)), &head, Some(&says), None));
            let run = survey.wiring.feed(child).and_then(|feed| feed.run);
            rows.extend(run.map(|run| run_row(snapshot, builder, run)));
        }
    }
    rows
}

fn run_row(snapshot: &SurveySnapshot<'_>, builder: &ScreenBuilder<'_>, run: SubjectId) -> RowEntry {
    let survey = snapshot.survey;
    let head = naming::run(survey, run);
    let found = survey.runs.get(&run).cloned().unwrap_or_else(|| Run::new(run));
    let series = serde_json::to_value(found.cable).unwrap_or_default();
    let series = story::value(survey, field::CABLE, &series);
    let length = found
        .length
        .map(|length| story::value(survey, field::LENGTH, &serde_json::to_value(length).unwrap_or_default()));
    builder.row(Some(Key::Run(run)), &head, Some(&series), length.as_ref())
}

pub(crate) fn pressed(session: &mut Session, id: SubjectId, key: &Key) -> Result<Move> {
    match key {
        Key::Next => {
            // On with the session, past this screen.
            session.open_survey()?.memory.go(Place::Overview);
            return Ok(Move::Next);
        }
        Key::Meter => return Ok(go(FieldPlace::Meter(id))),
        Key::Add => return Ok(go(FieldPlace::Add(Some(id)))),
        Key::Edit => return Ok(go(FieldPlace::Edit(id))),
        Key::NoteNew => return open_note(session),
        Key::AddNote => return add_note(session, id),
        Key::Remove => {
            let told = session.with_snapshot(|snapshot| remove(snapshot, id))?;
            write(session, Ok(told))?;
            return Ok(Move::Back);
        }
        Key::PortHere(port) => return Ok(Move::Go(Place::Ask(Question::LeadsTo(id, *port)))),
        _ => {}
    }
    if let Some(place) = subject_place(key) {
        return Ok(go(place));
    }
    let asked = session.with_snapshot(|snapshot| about::pressed(snapshot, id, key))?;
    Ok(asked.unwrap_or(Move::Stay))
}

/// The screen of the part, cable or photo that a key names.
pub(super) fn subject_place(key: &Key) -> Option<FieldPlace> {
    match key {
        Key::Part(part) => Some(FieldPlace::Part(*part)),
        Key::Run(run) => Some(FieldPlace::Run(*run)),
        Key::Photo(photo) => Some(FieldPlace::Photo(*photo)),
        _ => None,
    }
}

/// Removes a part. What hung on a part with one way through hangs on what fed it; what hung on a splitter becomes
/// loose, until somebody says where it hangs now.
fn remove(snapshot: &SurveySnapshot<'_>, id: SubjectId) -> Answer {
    let survey = snapshot.survey;
    let mut answer = Answer::new();
    let feed = survey.wiring.feed(id);
    let children = survey.wiring.fed_from(id);
    let passes = survey.parts.get(&id).is_some_and(|part| part.outputs() == 1);
    if let Some(feed) = feed {
        if passes {
            for child in children {
                let run = survey.wiring.feed(*child).and_then(|feed| feed.run).or(feed.run);
                let moved = Feed::From(FeedFrom { run, ..feed.clone() });
                answer = answer.says(*child, field::part::FEED, &moved);
            }
        }
        // A cable of which nobody said anything goes with it.
        let blank = |run: &SubjectId| survey.runs.get(run).is_some_and(|run| *run == Run::new(run.id));
        answer.edits.extend(feed.run.filter(blank).map(|run| snapshot.ledger.remove(run)));
    }
    if !passes || feed.is_none() {
        answer.edits.extend(children.iter().map(|child| field::part::FEED.clear(*child)));
    }
    answer.edits.push(snapshot.ledger.remove(id));
    answer
}

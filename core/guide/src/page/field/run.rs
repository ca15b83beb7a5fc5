//! All cables, and one cable with everything about it.

use facts::fact::{Edit, SubjectId};
use house::record::{Feed, FeedFrom, Is, Run, Survey, field};
use house::{naming, story};
use phrase::Phrase;

use super::finder::{ROWS, tag_order};
use super::{card, go, gone, part, sketch, write};
use crate::error::Result;
use crate::place::{FieldPlace, Key, Move};
use crate::question::{Answer, about};
use crate::screen::{PressWeight, WritingKind};
use crate::session::{Scene, Session};
use crate::view::{Sketch, paging};

pub(crate) fn show_all<'a>(scene: &Scene<'a>) -> Sketch<'a> {
    let survey = scene.survey;
    let mut sketch = sketch(scene, &Phrase::new("free-runs"));
    let wanted = scene.pending().written(&Key::Find).unwrap_or_default().to_lowercase();
    sketch.writing(
        &Key::Find,
        &Phrase::new("free-find"),
        Some(&Phrase::new("free-find.hint")),
        WritingKind::Search,
        "",
    );
    let mut runs: Vec<_> = survey.runs.values().map(|run| (run, fed(survey, run.id))).collect();
    runs.sort_by_cached_key(|(run, fed)| {
        let tag = fed.and_then(|part| survey.parts.get(&part)).and_then(|part| part.tag.clone());
        (tag_order(run.tag.as_deref().or(tag.as_deref())), run.id)
    });
    let named = runs.into_iter().map(|(run, fed)| (run, name(survey, run.id, fed)));
    let found: Vec<_> = named.filter(|(_, name)| sketch.say(name).to_lowercase().contains(&wanted)).collect();
    let page = paging::page(scene.pending());
    let row = |(run, name): &(&Run, Phrase)| {
        let series = serde_json::to_value(run.cable).unwrap_or_default();
        let series = story::value(survey, field::CABLE, &series);
        let length = run.length.and_then(|length| serde_json::to_value(length).ok());
        let length = length.map(|length| story::value(survey, field::LENGTH, &length));
        sketch.row(Some(Key::Run(run.id)), name, Some(&series), length.as_ref())
    };
    let rows = found.iter().skip(page * ROWS).take(ROWS).map(row).collect();
    sketch.rows(&Phrase::new("free-runs-rows"), rows);
    paging::presses_of(&mut sketch, page, found.len(), ROWS);
    sketch.press(&Key::Add, &Phrase::new("free-add-run"), PressWeight::Other);
    sketch
}

fn fed(survey: &Survey, run: SubjectId) -> Option<SubjectId> {
    survey.wiring.fed_over(run)
}

fn name(survey: &Survey, run: SubjectId, fed: Option<SubjectId>) -> Phrase {
    fed.map_or_else(|| story::thing(survey, run), |part| naming::run_to(survey, part))
}

/// A tag for a cable that nothing carries yet.
fn free_tag(survey: &Survey) -> String {
    let taken = |tag: &str| {
        survey.runs.values().any(|run| run.tag.as_deref() == Some(tag))
            || survey.parts.values().any(|part| part.tag.as_deref() == Some(tag))
    };
    // One more than there are things is free at the latest.
    let most = survey.runs.len() + survey.parts.len() + 1;
    (1..=most).map(|number| format!("R{number}")).find(|tag| !taken(tag)).unwrap_or_default()
}

pub(crate) fn pressed_all(session: &mut Session, key: &Key) -> Result<Move> {
    match key {
        Key::Run(run) => return Ok(go(FieldPlace::Run(*run))),
        Key::Add => {}
        _ => return Ok(Move::Stay),
    }
    let id = SubjectId::random();
    let tag = session.with_scene(|scene| free_tag(scene.survey))?;
    write(session, Ok(Answer::new().is(id, Is::Run).says(id, field::run::TAG, &tag)))?;
    Ok(go(FieldPlace::Run(id)))
}

/// Parts whose feed names no cable yet, or one of which nobody said anything: a cable found may be theirs.
fn may_feed(survey: &Survey) -> Vec<SubjectId> {
    let blank = |run: SubjectId| survey.runs.get(&run).is_none_or(|run| *run == Run::new(run.id));
    let mut parts: Vec<_> =
        survey.wiring.feeds().filter(|(_, feed)| feed.run.is_none_or(blank)).map(|(part, _)| part).collect();
    parts.sort_by_cached_key(|part| {
        (tag_order(survey.parts.get(part).and_then(|part| part.tag.as_deref())), *part)
    });
    parts
}

pub(crate) fn show<'a>(scene: &Scene<'a>, id: SubjectId) -> Sketch<'a> {
    let survey = scene.survey;
    let Some(run) = survey.runs.get(&id) else { return gone(scene, "free-run") };
    let name = card::run_name(survey, id);
    let mut sketch = sketch(scene, &Phrase::new("free-run").phrase("run", name.clone()));
    card::run(scene, &mut sketch, run);
    about::rows(scene, &mut sketch, id);
    if let Some(part) = fed(survey, id) {
        let row = sketch.row(Some(Key::Part(part)), &naming::part(survey, part), None, None);
        sketch.rows(&Phrase::new("free-run-feeds"), vec![row]);
    } else {
        let row = |part: &SubjectId| {
            sketch.row(Some(Key::Feeds(*part)), &naming::run_to(survey, *part), None, None)
        };
        let rows = may_feed(survey).iter().take(ROWS).map(row).collect();
        sketch.rows(&Phrase::new("free-run-may-feed"), rows);
    }
    card::photos(scene, &mut sketch, id, false);
    let tag = run.tag.clone().unwrap_or_default();
    sketch.writing(
        &Key::Tag,
        &Phrase::new("free-tag"),
        Some(&Phrase::new("free-tag.hint")),
        WritingKind::Tag,
        &tag,
    );
    sketch.submitted_by(&Key::Save);
    sketch.press(&Key::Save, &Phrase::new("free-save"), PressWeight::Other);
    part::notes(scene, &mut sketch, id);
    sketch.confirm_loss(&Key::Remove, &Phrase::new("free-remove-run").phrase("run", name));
    sketch
}

pub(crate) fn pressed(session: &mut Session, id: SubjectId, key: &Key) -> Result<Move> {
    match key {
        Key::Save => {
            let tag = session.with_scene(|scene| scene.pending().written(&Key::Tag).map(str::to_owned))?;
            if let Some(tag) = tag {
                let tag = (!tag.is_empty()).then_some(tag.as_str());
                write(session, Ok(Answer::new().with(field::run::TAG.put(id, tag))))?;
            }
            return Ok(Move::Stay);
        }
        Key::NoteNew => return part::open_note(session),
        Key::AddNote => return part::add_note(session, id),
        Key::Remove => {
            let told = session.with_scene(|scene| remove(scene, id))?;
            write(session, Ok(told))?;
            return Ok(Move::Back);
        }
        Key::Feeds(part) => {
            let told = session.with_scene(|scene| joined(scene, id, *part))?;
            write(session, Ok(told))?;
            return Ok(Move::Stay);
        }
        _ => {}
    }
    if let Some(place) = part::subject_place(key) {
        return Ok(go(place));
    }
    let asked = session.with_scene(|scene| about::pressed(scene, id, key))?;
    Ok(asked.unwrap_or(Move::Stay))
}

/// The feed of a part with another cable, or with none.
fn over(scene: &Scene<'_>, part: SubjectId, run: Option<SubjectId>) -> Option<Feed> {
    let feed = scene.survey.wiring.feed(part)?;
    Some(Feed::From(FeedFrom { run, ..feed.clone() }))
}

fn joined(scene: &Scene<'_>, id: SubjectId, part: SubjectId) -> Answer {
    let mut answer = Answer::new();
    if !may_feed(scene.survey).contains(&part) {
        return answer;
    }
    let blank = scene.survey.wiring.feed(part).and_then(|feed| feed.run);
    answer.edits.extend(blank.map(|run| scene.ledger.remove(run)));
    match over(scene, part, Some(id)) {
        Some(feed) => answer.says(part, field::part::FEED, &feed),
        None => answer,
    }
}

/// Removes what was said of a cable; what it fed stays fed, over a cable of which nothing is known.
fn remove(scene: &Scene<'_>, id: SubjectId) -> Answer {
    let mut answer = Answer::new();
    if let Some(part) = fed(scene.survey, id)
        && let Some(feed) = over(scene, part, None)
    {
        answer = answer.says(part, field::part::FEED, &feed);
    }
    let remove: Edit = scene.ledger.remove(id);
    answer.edits.push(remove);
    answer
}

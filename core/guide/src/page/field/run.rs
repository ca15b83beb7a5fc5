//! All cables, and one cable with everything about it.

use facts::fact::{Edit, SubjectId};
use house::record::{Feed, FeedFrom, Is, Run, Survey, field, tag_order};
use house::{naming, story};
use phrase::Phrase;
use serde_json::json;

use super::finder::ROWS;
use super::{builder, card, go, gone, part, write};
use crate::error::Result;
use crate::place::{FieldPlace, Key, Move};
use crate::question::{Answer, about};
use crate::screen::{PressWeight, WordsRole, WritingKind};
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, paging};

pub(crate) fn show_all<'a>(snapshot: &SurveySnapshot<'a>) -> ScreenBuilder<'a> {
    let survey = snapshot.survey;
    let mut builder = builder(snapshot, &Phrase::new("free-runs"));
    let wanted = snapshot.pending().written(&Key::Find).unwrap_or_default().to_lowercase();
    builder.writing(
        &Key::Find,
        &Phrase::new("free-find"),
        Some(&Phrase::new("free-find.hint")),
        WritingKind::Search,
        "",
    );
    let mut runs: Vec<_> = survey.runs.values().map(|run| (run, fed(survey, run.id))).collect();
    runs.sort_by_cached_key(|(run, fed)| {
        let tag = fed.and_then(|part| survey.parts.get(&part)).and_then(|part| part.tag.clone());
        tag_order(run.tag.as_deref().or(tag.as_deref()))
    });
    let fits = |run: &Run, name: &Phrase, fed: Option<SubjectId>| {
        let fed = fed.and_then(|part| survey.parts.get(&part));
        let holds = |words: &str| words.to_lowercase().contains(&wanted);
        wanted.is_empty()
            || holds(&builder.say(name))
            || holds(&builder.say(&story::value(survey, field::CABLE, &json!(run.cable))))
            || fed.is_some_and(|part| {
                holds(&builder.say(&naming::of_part(survey, part)))
                    || part.place.as_deref().is_some_and(holds)
            })
    };
    let named = runs.into_iter().map(|(run, fed)| (run, naming::run(survey, run.id), fed));
    let found: Vec<_> =
        named.filter(|(run, name, fed)| fits(run, name, *fed)).map(|(run, name, _)| (run, name)).collect();
    if found.is_empty() && !survey.runs.is_empty() {
        builder.words(WordsRole::Plain, &Phrase::new("free-find-none"));
    }
    let page = paging::page(snapshot.pending()).min(found.len().saturating_sub(1) / ROWS);
    let row = |(run, name): &(&Run, Phrase)| {
        let series = serde_json::to_value(run.cable).unwrap_or_default();
        let series = story::value(survey, field::CABLE, &series);
        let length = run.length.and_then(|length| serde_json::to_value(length).ok());
        let length = length.map(|length| story::value(survey, field::LENGTH, &length));
        builder.row(Some(Key::Run(run.id)), name, Some(&series), length.as_ref())
    };
    let rows = found.iter().skip(page * ROWS).take(ROWS).map(row).collect();
    builder.rows(&Phrase::new("free-runs-rows"), rows);
    paging::presses_of(&mut builder, page, found.len(), ROWS);
    builder.press(&Key::Add, &Phrase::new("free-add-run"), PressWeight::Other);
    builder
}

fn fed(survey: &Survey, run: SubjectId) -> Option<SubjectId> {
    survey.wiring.fed_over(run)
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
    let tag = session.with_snapshot(|snapshot| free_tag(snapshot.survey))?;
    write(session, Ok(Answer::new().is(id, Is::Run).says(id, field::run::TAG, &tag)))?;
    Ok(go(FieldPlace::Run(id)))
}

/// Parts whose feed names no cable yet, or one of which nobody said anything: a cable found may be theirs.
fn may_feed(survey: &Survey) -> Vec<SubjectId> {
    let blank = |run: SubjectId| survey.runs.get(&run).is_none_or(|run| *run == Run::new(run.id));
    let mut parts: Vec<_> =
        survey.wiring.feeds().filter(|(_, feed)| feed.run.is_none_or(blank)).map(|(part, _)| part).collect();
    parts.sort_by_cached_key(|part| tag_order(survey.parts.get(part).and_then(|part| part.tag.as_deref())));
    parts
}

pub(crate) fn show<'a>(snapshot: &SurveySnapshot<'a>, id: SubjectId) -> ScreenBuilder<'a> {
    let survey = snapshot.survey;
    let Some(run) = survey.runs.get(&id) else { return gone(snapshot, "free-run") };
    let name = naming::run(survey, id);
    let mut builder = builder(snapshot, &Phrase::new("free-run").phrase("run", name.clone()));
    card::run(snapshot, &mut builder, run);
    about::rows(snapshot, &mut builder, id);
    if let Some(part) = fed(survey, id) {
        let row = builder.row(Some(Key::Part(part)), &naming::part(survey, part), None, None);
        builder.rows(&Phrase::new("free-run-feeds"), vec![row]);
    } else {
        let row = |part: &SubjectId| {
            builder.row(Some(Key::Feeds(*part)), &naming::run_to(survey, *part), None, None)
        };
        let rows = may_feed(survey).iter().take(ROWS).map(row).collect();
        builder.rows(&Phrase::new("free-run-may-feed"), rows);
    }
    card::photos(snapshot, &mut builder, id, false);
    let tag = run.tag.clone().unwrap_or_default();
    builder.writing(
        &Key::Tag,
        &Phrase::new("free-tag"),
        Some(&Phrase::new("free-tag.hint")),
        WritingKind::Tag,
        &tag,
    );
    builder.submitted_by(&Key::Save);
    builder.press(&Key::Save, &Phrase::new("free-save"), PressWeight::Other);
    part::notes(snapshot, &mut builder, id);
    let remove = Phrase::new("free-remove-run").phrase("run", name);
    let remove = remove.phrase("hangs", naming::Hanging::on(survey, id).phrase());
    builder.confirm_loss(&Key::Remove, &remove);
    builder
}

pub(crate) fn pressed(session: &mut Session, id: SubjectId, key: &Key) -> Result<Move> {
    match key {
        Key::Save => {
            let tag =
                session.with_snapshot(|snapshot| snapshot.pending().written(&Key::Tag).map(str::to_owned))?;
            if let Some(tag) = tag {
                let tag = (!tag.is_empty()).then_some(tag.as_str());
                write(session, Ok(Answer::new().with(field::run::TAG.put(id, tag))))?;
            }
            return Ok(Move::Stay);
        }
        Key::NoteNew => return part::open_note(session),
        Key::AddNote => return part::add_note(session, id),
        Key::Remove => {
            let told = session.with_snapshot(|snapshot| remove(snapshot, id))?;
            write(session, Ok(told))?;
            return Ok(Move::Back);
        }
        Key::Feeds(part) => {
            let told = session.with_snapshot(|snapshot| joined(snapshot, id, *part))?;
            write(session, Ok(told))?;
            return Ok(Move::Stay);
        }
        _ => {}
    }
    if let Some(place) = part::subject_place(key) {
        return Ok(go(place));
    }
    let asked = session.with_snapshot(|snapshot| about::pressed(snapshot, id, key))?;
    Ok(asked.unwrap_or(Move::Stay))
}

/// The feed of a part with another cable, or with none.
fn over(snapshot: &SurveySnapshot<'_>, part: SubjectId, run: Option<SubjectId>) -> Option<Feed> {
    let feed = snapshot.survey.wiring.feed(part)?;
    Some(Feed::From(FeedFrom { run, ..feed.clone() }))
}

fn joined(snapshot: &SurveySnapshot<'_>, id: SubjectId, part: SubjectId) -> Answer {
    let mut answer = Answer::new();
    if !may_feed(snapshot.survey).contains(&part) {
        return answer;
    }
    let blank = snapshot.survey.wiring.feed(part).and_then(|feed| feed.run);
    answer.edits.extend(blank.map(|run| snapshot.ledger.remove(run)));
    match over(snapshot, part, Some(id)) {
        Some(feed) => answer.says(part, field::part::FEED, &feed),
        None => answer,
    }
}

/// Removes what was said of a cable; what it fed stays fed, over a cable of which nothing is known.
fn remove(snapshot: &SurveySnapshot<'_>, id: SubjectId) -> Answer {
    let mut answer = Answer::new();
    if let Some(part) = fed(snapshot.survey, id)
        && let Some(feed) = over(snapshot, part, None)
    {
        answer = answer.says(part, field::part::FEED, &feed);
    }
    let remove: Edit = snapshot.ledger.remove(id);
    answer.edits.push(remove);
    answer
}

//! Handover: what was done, what could not be, what is left; the report, and the one file for the next person.

use std::path::{Path, PathBuf};

use advice::verdict::is_tested;
use facts::file::{LeftOut, PackOptions};
use facts::written_kind::WrittenKind;
use house::record::{Asked, Named, OutcomeKind, Reply};
use phrase::{Arg, Phrase};
use telling::report::Extent;

use super::{ended, waiting, written};
use crate::done::Done;
use crate::error::Result;
use crate::place::{Choice, Key, MAY_STAY_OUT, Move, Place};
use crate::question::journey;
use crate::screen::{Ability, FileAsked, PressWeight, RowEntry, RowMark, Screen, WordsRole};
use crate::session::{Pending, Session, SurveySnapshot, folder_name, is_there, name_of, pack};
use crate::view::{Offer, ScreenBuilder, shown, stages};

/// The most rooms that are named.
const ROOMS: usize = 20;

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("handover"));
    builder.able(Ability::Share);
    if let Some(there) = snapshot.file_there {
        ask_replace(snapshot, &mut builder, there);
        return builder.screen;
    }
    let given = stages::GIVEN.iter().filter(|(_, name)| stages::is_given(snapshot, *name)).count();
    let lead = if given == stages::GIVEN.len() { "handover-all" } else { "handover-lead" };
    builder.words(WordsRole::Lead, &Phrase::new(lead));
    builder.words(WordsRole::Why, &Phrase::new("handover-why"));
    for (_, name) in stages::GIVEN.iter().filter(|(_, name)| stages::is_given(snapshot, *name)) {
        builder.words(WordsRole::Plain, &Phrase::new(format!("{name}-there")));
    }
    builder.words(WordsRole::Plain, &counts(snapshot));
    let out = snapshot.left_out();
    let rows: Vec<RowEntry> = MAY_STAY_OUT
        .iter()
        .map(|part| {
            let says = if out.contains(part) { "handover-stays-out" } else { "handover-goes-along" };
            let head = Phrase::new(format!("handover-{}", part.key()));
            let row = builder.row(Some(Key::Without(*part)), &head, Some(&Phrase::new(says)), None);
            row.switched(!out.contains(part))
        })
        .collect();
    builder.rows(&Phrase::new("handover-options"), rows);
    let extents = [Extent::Whole, Extent::OnePage];
    let offers = extents.map(|extent| {
        let words = Phrase::new(format!("handover-{}", extent.key()));
        let about = words.attribute("about");
        Offer::new(&extent, words).about(about)
    });
    let name = Phrase::new("handover-extent");
    builder.choice(&Key::Extent, &name, false, offers.into(), &[extent(snapshot.pending())]);
    if waiting::worked(snapshot, &mut builder).is_some() {
        left_open(snapshot, &mut builder);
        presses(snapshot, &mut builder);
        builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    }
    ended::rows(snapshot, &mut builder, 30);
    builder.screen
}

/// The key of the press for one of them, which proposes a name for it.
fn key(snapshot: &SurveySnapshot<'_>, end: &str) -> Key {
    let name = folder_name(snapshot.survey.name.as_deref().unwrap_or_default());
    Key::File(FileAsked::ToWrite { name: format!("{name}.{end}") })
}

/// Which of them a key is about, by the ending of its name.
fn given_by(key: &Key) -> Option<Asked> {
    let Key::File(FileAsked::ToWrite { name }) = key else { return None };
    let end = Path::new(name).extension()?;
    stages::GIVEN.iter().find(|(given, _)| end == *given).map(|(_, answer)| *answer)
}

/// The two things to give; the first that is not there yet stands out.
fn presses(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
    let mut main = true;
    for (end, name) in stages::GIVEN {
        let given = stages::is_given(snapshot, name);
        let key = key(snapshot, end);
        let weight = if main && !given { PressWeight::Main } else { PressWeight::Other };
        main &= given;
        let words = if given { format!("{name}-again") } else { name.name().to_owned() };
        builder.press(&key, &Phrase::new(words), weight);
    }
    if main {
        builder.press(&Key::Finish, &Phrase::new("handover-finish"), PressWeight::Main);
    }
}

fn counts(snapshot: &SurveySnapshot<'_>) -> Phrase {
    let of = |end| snapshot.survey.works.values().filter(|work| work.outcome.end == end).count() as u64;
    Phrase::new("handover-counts")
        .with("done", Arg::Count(of(OutcomeKind::Done)))
        .with("not", Arg::Count(of(OutcomeKind::CouldNot) + of(OutcomeKind::PutBack)))
}

fn left_open(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
    let Some(worked) = snapshot.worked() else { return };
    let mut rows = Vec::new();
    let steps = worked.list.steps.len() as u64;
    let questions = journey(snapshot).iter().filter(|on_way| !on_way.answered).count() as u64;
    let tests = stages::outlets(snapshot.survey)
        .into_iter()
        .filter(|outlet| !is_tested(snapshot.survey, *outlet))
        .count() as u64;
    // The rooms whose tests failed come first, by name.
    for failed in worked.list.failed.iter().take(ROOMS) {
        let head = failed.head("left-failed", shown::outlet(snapshot.survey, failed.outlet));
        let next = failed.phrase(snapshot.survey, &worked.list).attribute("short");
        rows.push(builder.row(Some(Key::Test(failed.outlet)), &head, Some(&next), None).ticked(false));
    }
    for (key, id, count) in [
        (Key::Work, "left-steps", steps),
        (Key::Tests, "left-tests", tests),
        (Key::Overview, "left-questions", questions),
    ] {
        if count > 0 {
            let head = Phrase::new(id).with("count", Arg::Count(count));
            rows.push(builder.row(Some(key), &head, None, None).ticked(false));
        }
    }
    let unknown = worked.unknowns.len() as u64;
    if unknown > 0 {
        let head = Phrase::new("left-unknown").with("count", Arg::Count(unknown));
        let row = builder.row(Some(Key::Unknowns), &head, None, None);
        rows.push(row.marked(RowMark::NotKnown));
    }
    builder.rows(&Phrase::new("handover-left"), rows);
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    match done {
        Done::Press(key) => Ok(pressed(session, key)?),
        Done::Pick(..) => {
            session.open_survey()?.memory.pending.keep(done);
            Ok(Move::Stay)
        }
        Done::File(key, file) => {
            let Some(answer) = given_by(key) else { return Ok(Move::Stay) };
            let file = PathBuf::from(file);
            if is_there(&file) {
                // Whether it is replaced is asked first; what is of another kind never is.
                kind_of(answer).refuse_unfit(&file)?;
                session.open_survey()?.file_there = Some(file);
                return Ok(Move::Stay);
            }
            give(session, answer, file, false)
        }
        _ => Ok(Move::Stay),
    }
}

/// What is written of each.
fn kind_of(answer: Asked) -> WrittenKind {
    if answer == stages::REPORT { WrittenKind::Report } else { WrittenKind::Packed }
}

/// How much of the report is to be written.
fn extent(pending: &Pending) -> Extent {
    pending.one(&Key::Extent).unwrap_or(Extent::Whole)
}

/// Writes one of them. One page alone is not the report that is handed over.
fn give(session: &mut Session, answer: Asked, file: PathBuf, replace: bool) -> Result<Move> {
    #[expect(clippy::redundant_closure_for_method_calls, reason = "the method is of one lifetime")]
    let left_out = session.with_snapshot(|snapshot| snapshot.left_out())?;
    session.open_survey()?.file_there = None;
    if answer == stages::REPORT {
        let extent = extent(&session.open_survey()?.memory.pending);
        let then: fn(&mut Session) -> Result<()> = match extent {
            Extent::Whole => |session| was_given(session, stages::REPORT),
            Extent::OnePage => |_| Ok(()),
        };
        written::report(session, (&left_out, extent), file, replace, then)?;
    } else {
        let options = PackOptions { left_out, replace };
        pack(session, options, file, |session| was_given(session, stages::FILE))?;
    }
    Ok(Move::Stay)
}

/// Asks whether the file that stands at the place is to be replaced.
fn ask_replace(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, there: &Path) {
    builder.words(WordsRole::Lead, &Phrase::new("share-pack-there").text("file", name_of(there)));
    builder.confirm_loss(&Key::Replace, &Phrase::new("share-pack-replace"));
    let is_report = WrittenKind::Report.is_named(there);
    let end = if is_report { "html" } else { facts::file::FILE_EXTENSION };
    builder.press_for_a_place(&key(snapshot, end), &Phrase::new("share-pack-elsewhere"), PressWeight::Main);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
}

/// Keeps that it was written.
fn was_given(session: &mut Session, name: Asked) -> Result<()> {
    let open = session.open_survey()?;
    if open.survey.answer(open.survey.id, name).is_none() {
        open.write(&[name.set(open.survey.id, Reply::Yes)])?;
    }
    Ok(())
}

fn pressed(session: &mut Session, key: &Key) -> Result<Move> {
    if *key == Key::Finish {
        return Ok(Move::Go(Place::Overview));
    }
    if *key == Key::Replace {
        let Some(there) = session.open_survey()?.file_there.clone() else { return Ok(Move::Stay) };
        let is_report = WrittenKind::Report.is_named(&there);
        return give(session, if is_report { stages::REPORT } else { stages::FILE }, there, true);
    }
    if given_by(key).is_some() {
        session.tell(Phrase::new("handover-where"));
    }
    let Key::Without(part) = key else { return Ok(Move::Stay) };
    let pending = &mut session.open_survey()?.memory.pending;
    let mut picked: Vec<LeftOut> = pending.picked(&Key::LeaveOut).unwrap_or_default();
    if picked.contains(part) {
        picked.retain(|picked| picked != part);
    } else {
        picked.push(*part);
    }
    pending.pick(&Key::LeaveOut, picked);
    Ok(Move::Stay)
}

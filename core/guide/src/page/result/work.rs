//! The work list: one change at a time, in order, with what each is expected to gain, and what to buy.

use std::collections::BTreeSet;

use advice::verdict::{answers_to_come, met};
use advice::worklist::{Step, chosen, nothing_to_do};
use house::record::{Survey, Without};
use phrase::{Arg, Phrase};
use telling::report::part_told;
use telling::words::{ToldGain, told_gains};

use super::{ended, placing, waiting};
use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, ResultPlace};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot, Worked};
use crate::view::{ScreenBuilder, shown};

/// How many rooms a step's gain names.
const ROOMS: usize = 3;

/// The most rows of one kind.
const ROWS: usize = 40;

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("work"));
    let Some(worked) = waiting::worked(snapshot, &mut builder) else { return builder.screen };
    let steps = &worked.list.steps;
    lead(snapshot, &mut builder, worked);
    if let Some(chosen) = chosen(snapshot.survey) {
        builder.words(WordsRole::Plain, &chosen);
    }
    let rows = steps
        .iter()
        .enumerate()
        .map(|(place, step)| {
            let number = Arg::Count(place as u64 + 1);
            let head = Phrase::new("work-step")
                .with("number", number)
                .phrase("what", step.change.phrase(&step.before));
            let minutes = Phrase::new("step-minutes").with("minutes", Arg::Minutes(step.effort.minutes));
            let remark = Phrase::new("work-remark").phrase("minutes", minutes).phrase("gain", gain(step));
            builder.row(Some(Key::StepNth(place)), &head, None, Some(&remark)).ticked(false)
        })
        .collect();
    builder.rows(&Phrase::new("work-steps"), rows);
    if let Some(searched) = worked.list.searched.filter(|_| !steps.is_empty()) {
        builder.words(WordsRole::Aside, &searched.phrase());
    }
    if let Some(cut_short) = worked.list.cut_short {
        builder.words(WordsRole::Plain, &cut_short.phrase());
    }
    others(snapshot, &mut builder, worked);
    let failed = worked.list.failed.iter().take(ROWS);
    let rows = failed
        .map(|room| {
            let next = room.phrase(snapshot.survey, &worked.list).attribute("short");
            let name = shown::outlet(snapshot.survey, room.outlet);
            builder.row(Some(Key::Test(room.outlet)), &name, Some(&next), None)
        })
        .collect();
    builder.rows(&Phrase::new("report-work-failed"), rows);
    let told = advice::level::told(snapshot.survey, &worked.list.levels, &worked.list.level_changes);
    let rows = told
        .iter()
        .filter(|_| !steps.is_empty())
        .take(ROWS)
        .map(|told| builder.row(None, &told.of(snapshot.survey), None, Some(&told.in_short())))
        .collect();
    builder.rows(&Phrase::new("work-levels"), rows);
    let bought = worked.list.shopping(snapshot.survey);
    let rows = bought.iter().take(ROWS).map(|part| builder.row(None, &part_told(part), None, None)).collect();
    builder.rows(&Phrase::new("work-shopping"), rows);
    ended::rows(snapshot, &mut builder, ROWS);
    let refused = worked.list.refused.iter().take(ROWS);
    let rows = refused
        .map(|(change, refusal)| {
            builder.row(None, &change.phrase(snapshot.survey), None, Some(&refusal.why(snapshot.survey)))
        })
        .collect();
    builder.rows(&Phrase::new("report-refused"), rows);
    let on = if placing::is_open(snapshot.survey) { Key::Placing } else { Key::Private };
    let weight = if steps.is_empty() { PressWeight::Main } else { PressWeight::Other };
    if !steps.is_empty() {
        builder.press(&Key::StepNth(0), &Phrase::new("work-begin"), PressWeight::Main);
    }
    builder.press(&on, &Phrase::new(format!("to-{on}")), weight);
    builder.press(&Key::Findings, &Phrase::new("to-findings"), PressWeight::Other);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// What the list might be instead: each is taken by one touch. Where some work was left out, there is always the way back.
fn others(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, worked: &Worked) {
    let others = &worked.list.others;
    let rows = others
        .iter()
        .map(|other| {
            let differs: Vec<_> =
                other.differs(&worked.list).iter().map(|differs| builder.say(differs)).collect();
            let differs = Phrase::new("text").text("text", differs.join(" "));
            let key = Key::ListWithout(other.without.clone());
            builder.row(Some(key), &other.name(), Some(&other.takes(snapshot.survey)), Some(&differs))
        })
        .collect();
    builder.rows(&Phrase::new("other-lists"), rows);
    if goes_back_alone(snapshot.survey, worked) {
        builder.press(
            &Key::ListWithout(BTreeSet::new()),
            &Phrase::new("without-nothing"),
            PressWeight::Other,
        );
    }
}

/// Whether work was left out of a list beside which no list with all of it is told: of a house too large to be searched.
fn goes_back_alone(survey: &Survey, worked: &Worked) -> bool {
    !survey.without().is_empty() && !worked.list.others.iter().any(|other| other.without.is_empty())
}

/// Whether the screen offers the list without these kinds of work.
fn is_offered(survey: &Survey, worked: &Worked, without: &BTreeSet<Without>) -> bool {
    let is_told = worked.list.others.iter().any(|other| other.without == *without);
    is_told || without.is_empty() && goes_back_alone(survey, worked)
}

fn lead(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, worked: &Worked) {
    let steps = &worked.list.steps;
    if steps.is_empty() && !worked.list.failed.is_empty() {
        builder.words(WordsRole::Lead, &Phrase::new("work-nothing-for-tests"));
        return;
    }
    if steps.is_empty() {
        for said in nothing_to_do(snapshot.survey) {
            builder.words(WordsRole::Lead, &said);
        }
        return;
    }
    let minutes = steps.iter().map(|step| step.effort.minutes).sum();
    let lead = if worked.list.is_only_checks() { "work-lead-checks" } else { "work-lead" };
    let lead = Phrase::new(lead).with("count", Arg::Count(steps.len() as u64));
    builder.words(WordsRole::Lead, &lead.with("minutes", Arg::Minutes(minutes)));
    builder.words(WordsRole::Why, &Phrase::new("work-why"));
    let then = answers_to_come(&worked.list.house_when_done, &worked.list.when_done);
    if !then.is_empty() {
        let phrase = Phrase::new("answer-when-done").with("met", Arg::Count(met(&then) as u64));
        builder.words(WordsRole::Plain, &phrase.with("asked", Arg::Count(then.len() as u64)));
    }
}

/// What a step gains, the rooms that gain most first.
pub(super) fn gain(step: &Step) -> Phrase {
    let gains = told_gains(&step.gains);
    if gains.is_empty() {
        let why = step.change.phrase(&step.before).attribute("why");
        return Phrase::new("step-no-gain").phrase("why", why);
    }
    // An outlet that the step itself brings has its name after it.
    let after = advice::worklist::applied(step.change, &step.before);
    let told = gains.into_iter().take(ROOMS).map(|(gain, told)| {
        let there = step.before.parts.contains_key(&gain.outlet);
        let room = shown::outlet(if there { &step.before } else { &after }, gain.outlet);
        let phrase = match told {
            ToldGain::More(rate) => Phrase::new("gain-room").with("rate", Arg::Rate(rate)),
            other => Phrase::new("gain-room-other").phrase("gain", other.phrase(gain)),
        };
        Arg::Phrase(Box::new(phrase.phrase("room", room)))
    });
    Phrase::new("step-gain").with("rooms", Arg::Several(told.collect()))
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    if let Done::Press(Key::ListWithout(without)) = done {
        let is_offered = session.with_snapshot(|snapshot| {
            snapshot.worked().is_some_and(|worked| is_offered(snapshot.survey, worked, without))
        })?;
        if is_offered {
            let open = session.open_survey()?;
            let edit = open.survey.set_without(without);
            open.write(&[edit])?;
        }
        return Ok(Move::Stay);
    }
    let Done::Press(Key::StepNth(place)) = done else { return Ok(Move::Stay) };
    let change = session.with_snapshot(|snapshot| Some(snapshot.worked()?.list.steps.get(*place)?.change))?;
    Ok(change.map_or(Move::Stay, |change| Move::Go(Place::Result(ResultPlace::Step(change)))))
}

//! One question on a screen.

use ::house::record::PhotoRole;
use phrase::Phrase;

use crate::deed::Deed;
use crate::error::Result;
use crate::place::{FieldPlace, Move, Place, Question};
use crate::question::{Answer, Problem, Told, cable, house, how_far, offer_labels, same_as_last, take_label};
use crate::screen::{Ability, Block, PressWeight, Screen, WordsRole};
use crate::session::{Pending, Scene, Session};
use crate::view::{Sketch, UNSURE};

pub(crate) fn show(scene: &Scene<'_>, question: &Question) -> Screen {
    let asked = question.phrase(scene);
    let mut sketch = Sketch::new(scene.language, scene.pending(), &asked.attribute("title"));
    sketch.able(Ability::Torch);
    if !question.stands(scene) {
        sketch.words(WordsRole::Problem, &Phrase::new("gone"));
        sketch.press("next", &Phrase::new("go-on"), PressWeight::Main);
        return sketch.screen;
    }
    sketch.words(WordsRole::Lead, &asked);
    sketch.words_if_known(WordsRole::Why, &asked.attribute("why"));
    sketch.words_if_known(WordsRole::How, &asked.attribute("how"));
    for (figure, drawn) in crate::view::picture::of(question, scene) {
        sketch.figure(&figure, &drawn);
    }
    let told = sketch.screen.blocks.len();
    question.draw(scene, &mut sketch);
    offer_labels(scene, &mut sketch, question);
    if let Some(same) = same_as_last(scene, question) {
        sketch.press("same", &same.words, PressWeight::Other);
    }
    if *question == Question::WaysIn {
        sketch.press("cannot-reach", &Phrase::new("free-cannot-reach"), PressWeight::Other);
    }
    // What can hurt someone is read before anything is answered; what leads elsewhere comes after the way on.
    let drawn = sketch.screen.blocks.split_off(told);
    let is_press = |block: &Block| matches!(block, Block::Press(_) | Block::Confirm(_));
    let (presses, rest): (Vec<_>, Vec<_>) = drawn.into_iter().partition(is_press);
    let (cautions, inputs): (Vec<_>, Vec<_>) =
        rest.into_iter().partition(|block| matches!(block, Block::Caution(_)));
    sketch.screen.blocks.extend(cautions);
    sketch.screen.blocks.extend(inputs);
    if !is_answered_by_one_pick(&sketch.screen) {
        sketch.press("next", &Phrase::new("go-on"), PressWeight::Main);
    }
    sketch.screen.blocks.extend(presses);
    let offers_unsure = sketch.screen.blocks.iter().any(|block| match block {
        Block::Choice(choice) => choice.options.iter().any(|option| option.unsure),
        _ => false,
    });
    if !offers_unsure && may_be_unsure(question) {
        sketch.press(UNSURE, &Phrase::new("not-sure"), PressWeight::Other);
    }
    sketch.press("later", &Phrase::new("later"), PressWeight::Quiet);
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen.how_far = Some(how_far(scene));
    sketch.screen
}

/// Whether the screen takes one answer out of a few, and nothing else: then the choice itself leads on.
fn is_answered_by_one_pick(screen: &Screen) -> bool {
    let mut inputs = screen.blocks.iter().filter(|block| {
        matches!(block, Block::Choice(_) | Block::Writing(_) | Block::Number(_) | Block::Label(_))
    });
    matches!((inputs.next(), inputs.next()), (Some(Block::Choice(choice)), None) if !choice.several)
}

/// Questions whose inputs offer no "not sure" of their own and may be answered so all the same.
fn may_be_unsure(question: &Question) -> bool {
    matches!(
        question,
        Question::Plan | Question::Label(_) | Question::Legs(_) | Question::Length(_) | Question::Marks(_)
    )
}

pub(crate) fn take(session: &mut Session, question: &Question, deed: &Deed) -> Result<Move> {
    let open = session.open_survey()?;
    match deed {
        Deed::Photo { file, .. } => {
            if let Question::Label(part) = question {
                open.add_photo(file, Some(*part), Some(PhotoRole::Label))?;
            }
            Ok(Move::Stay)
        }
        Deed::Press { key } => pressed(session, question, key),
        Deed::Pick { .. } => {
            open.memory.pending.keep(deed);
            let one = session.with_scene(|scene| is_answered_by_one_pick(&show(scene, question)))?;
            if one { answer(session, question) } else { Ok(Move::Stay) }
        }
        Deed::Write { .. } | Deed::Measure { .. } | Deed::Print { .. } => {
            open.memory.pending.keep(deed);
            Ok(Move::Stay)
        }
        Deed::File { .. } | Deed::Back => Ok(Move::Stay),
    }
}

fn pressed(session: &mut Session, question: &Question, key: &str) -> Result<Move> {
    match key {
        "next" => answer(session, question),
        "later" => {
            session.open_survey()?.memory.later.insert(question.clone());
            Ok(Move::Next)
        }
        "overview" => Ok(Move::Go(Place::Overview)),
        "same" => {
            if let Some(same) = session.with_scene(|scene| same_as_last(scene, question))? {
                let pending = &mut session.open_survey()?.memory.pending;
                for deed in &same.given {
                    pending.keep(deed);
                }
                return answer(session, question);
            }
            Ok(Move::Stay)
        }
        "cannot-reach" if *question == Question::WaysIn => {
            session.open_survey()?.memory.later.insert(question.clone());
            Ok(Move::Go(Place::Field(FieldPlace::Here)))
        }
        key if key.starts_with("seen:") => {
            match session.with_scene(|scene| take_label(scene, question, key))? {
                Some(told) => settle(session, question, told),
                None => Ok(Move::Stay),
            }
        }
        UNSURE => {
            let (subject, name) = unsure_field(session, question)?;
            let field = ::house::record::field::asked_field(name);
            session.open_survey()?.write(&[facts::fact::Edit::new(subject, field, UNSURE)])?;
            answered(session, question);
            Ok(Move::Next)
        }
        _ => {
            let place = match question {
                Question::Length(run) => cable::pressed(*run, key),
                Question::Wish(room) => house::wish_pressed(*room, key),
                _ => None,
            };
            if let Some(place) = place {
                return Ok(Move::Go(place));
            }
            // Touches on a label's figures: to correct one, or to take one that was recognised.
            for (prefix, list) in [("fix:", "fix"), ("take:", "taken")] {
                if let Some(name) = key.strip_prefix(prefix) {
                    let pending = &mut session.open_survey()?.memory.pending;
                    let mut names = pending.picked(list).unwrap_or_default().to_vec();
                    if names.iter().any(|one| one == name) {
                        names.retain(|one| one != name);
                    } else {
                        names.push(name.to_owned());
                    }
                    pending.keep(&Deed::Pick { key: list.into(), picked: names });
                }
            }
            Ok(Move::Stay)
        }
    }
}

/// Where it is written that somebody looked and could not tell.
fn unsure_field(
    session: &mut Session,
    question: &Question,
) -> Result<(facts::fact::SubjectId, &'static str)> {
    let survey = session.open_survey()?.survey.id;
    Ok(match question {
        Question::Label(part) => (*part, "label"),
        Question::Legs(part) => (*part, "legs"),
        Question::Length(run) | Question::Marks(run) => (*run, "length"),
        other => (survey, other.name()),
    })
}

/// Takes the answer that stands on the screen, or says what is wrong with it.
fn answer(session: &mut Session, question: &Question) -> Result<Move> {
    let stands = session.with_scene(|scene| question.stands(scene))?;
    if !stands {
        return Ok(Move::Next);
    }
    let told = session.with_scene(|scene| question.take(scene))?;
    settle(session, question, told)
}

/// Writes an answer, or says what is wrong with it.
fn settle(session: &mut Session, question: &Question, told: Told<Answer>) -> Result<Move> {
    match told {
        Ok(answer) => {
            session.open_survey()?.write(&answer.edits)?;
            answered(session, question);
            Ok(answer.then.map_or(Move::Next, Move::Go))
        }
        Err(Problem::Phrase(problem)) => {
            session.tell(problem);
            Ok(Move::Stay)
        }
        Err(Problem::Fact(fault)) => Err(fault.into()),
    }
}

fn answered(session: &mut Session, question: &Question) {
    if let Ok(open) = session.open_survey() {
        open.memory.later.remove(question);
        open.memory.pending = Pending::default();
    }
}

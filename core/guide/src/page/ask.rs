//! One question on a screen.

use facts::fact::SubjectId;
use house::record::{Asked, PhotoRole, Reply};
use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{FieldPlace, Key, LabelFigure, Move, Place, Question};
use crate::question::{
    Answer, Told, how_far, is_answered, is_touched, jacket_photo, not_answered, offer_labels, reason,
    same_as_last, take_label, with_sure_taken, with_touched,
};
use crate::screen::{Ability, Block, PressWeight, Screen, WordsRole};
use crate::session::{OpenSurvey, Pending, Session, SurveySnapshot, to_read};
use crate::view::ScreenBuilder;

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, question: &Question) -> Screen {
    let asked = question.phrase(snapshot);
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &asked.attribute("title"));
    builder.able(Ability::Torch);
    if !question.stands(snapshot) {
        builder.words(WordsRole::Problem, &Phrase::new("gone"));
        builder.press(&Key::Next, &Phrase::new("go-on"), PressWeight::Main);
        return builder.screen;
    }
    builder.words(WordsRole::Lead, &asked);
    if let Some(reason) = reason(snapshot, question) {
        builder.words(WordsRole::Plain, &reason);
    }
    builder.words_if_known(WordsRole::Why, &asked.attribute("why"));
    builder.words_if_known(WordsRole::How, &asked.attribute("how"));
    for (figure, drawn) in crate::view::picture::of(question, snapshot) {
        builder.figure(&figure, &drawn);
    }
    let told = builder.screen.blocks.len();
    question.draw(snapshot, &mut builder);
    offer_labels(snapshot, &mut builder, question);
    if let Some(same) = same_as_last(snapshot, question) {
        builder.press(&Key::Same, &same.words, PressWeight::Other);
    }
    if *question == Question::WaysIn {
        builder.press(&Key::CannotReach, &Phrase::new("free-cannot-reach"), PressWeight::Other);
    }
    // What can hurt someone is read before anything is answered; what leads elsewhere comes after the way on.
    let drawn = builder.screen.blocks.split_off(told);
    let is_press = |block: &Block| matches!(block, Block::Press(_) | Block::Confirm(_));
    let (presses, rest): (Vec<_>, Vec<_>) = drawn.into_iter().partition(is_press);
    let (cautions, inputs): (Vec<_>, Vec<_>) =
        rest.into_iter().partition(|block| matches!(block, Block::Caution(_)));
    builder.screen.blocks.extend(cautions);
    builder.screen.blocks.extend(inputs);
    if !is_answered_by_one_pick(question, &builder.screen) {
        let (key, words) = way_on(snapshot, question);
        builder.press(&key, &Phrase::new(words), PressWeight::Main);
    }
    builder.screen.blocks.extend(presses);
    let offers_unsure = builder.screen.blocks.iter().any(|block| match block {
        Block::Choice(choice) => choice.options.iter().any(|option| option.unsure),
        _ => false,
    });
    if !offers_unsure && may_be_unsure(question) {
        builder.press(&Key::Unsure, &Phrase::new("not-sure"), PressWeight::Other);
    }
    builder.press(&Key::Later, &Phrase::new("later"), PressWeight::Quiet);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen.how_far = Some(how_far(snapshot));
    builder.screen
}

/// The main press. Where it says something by itself it is not called a way on, which says nothing where nothing was
/// touched.
fn way_on(snapshot: &SurveySnapshot<'_>, question: &Question) -> (Key, &'static str) {
    match question {
        Question::LabelRead(_) if !is_answered(snapshot, question) => (Key::Keep, "label-is-right"),
        _ => (Key::Next, "go-on"),
    }
}

/// Whether the screen takes one answer out of a few, and nothing else: then the choice itself leads on.
fn is_answered_by_one_pick(question: &Question, screen: &Screen) -> bool {
    if question.is_folded() {
        return false;
    }
    let mut inputs = screen.blocks.iter().filter(|block| {
        matches!(block, Block::Choice(_) | Block::Writing(_) | Block::Number(_) | Block::Label(_))
    });
    matches!((inputs.next(), inputs.next()), (Some(Block::Choice(choice)), None) if !choice.several)
}

/// Questions whose inputs offer no "not sure" of their own and may be answered so all the same.
fn may_be_unsure(question: &Question) -> bool {
    matches!(question, Question::Plan | Question::Label(_) | Question::Legs(_) | Question::Marks(_))
}

pub(crate) fn take(session: &mut Session, question: &Question, done: &Done) -> Result<Move> {
    let open = session.open_survey()?;
    match done {
        Done::Photo(_, file) => {
            let (Question::Label(of) | Question::Cable(of)) = question else { return Ok(Move::Stay) };
            session.add_photo(file, Some(*of), Some(PhotoRole::Label))?;
            Ok(Move::Stay)
        }
        Done::Press(key) => pressed(session, question, key),
        Done::Pick(..) => {
            given(open, question, done);
            if matches!(done, Done::Pick(key, _) if question.goes_on_after(key)) {
                open.memory.pending.pick(&Key::Unfolded, Vec::<Key>::new());
            }
            let one = session
                .with_snapshot(|snapshot| is_answered_by_one_pick(question, &show(snapshot, question)))?;
            if one { answer(session, question) } else { Ok(Move::Stay) }
        }
        Done::Write(..) | Done::Measure(..) => {
            given(open, question, done);
            Ok(Move::Stay)
        }
        Done::Touch(..) | Done::File(..) | Done::Back => Ok(Move::Stay),
    }
}

/// Keeps what was picked, written or typed.
fn given(open: &mut OpenSurvey, question: &Question, done: &Done) {
    open.memory.pending.keep(done);
    if matches!(question, Question::Cable(_)) {
        jacket_photo::told_instead(&mut open.memory.pending);
    }
}

fn pressed(session: &mut Session, question: &Question, key: &Key) -> Result<Move> {
    match key {
        Key::Next | Key::Keep => answer(session, question),
        Key::Later => put_off(session, question),
        Key::Stop => {
            let open = session.open_survey()?;
            for photo in open.photos_asked_about(question) {
                open.prints.stop(&to_read(photo, &open.memory));
            }
            Ok(Move::Stay)
        }
        Key::ReadAgain => {
            let open = session.open_survey()?;
            for photo in open.photos_asked_about(question) {
                open.prints.take_back_stop(&to_read(photo, &open.memory));
            }
            session.read_prints_if_wanted();
            Ok(Move::Stay)
        }
        Key::TakeSure => {
            if matches!(question, Question::Cable(_)) {
                let sure = session.with_snapshot(|snapshot| jacket_photo::sure(snapshot, question))?;
                jacket_photo::take_sure(&mut session.open_survey()?.memory.pending, sure);
            } else {
                let taken = session.with_snapshot(|snapshot| with_sure_taken(snapshot, question))?;
                session.open_survey()?.memory.pending.pick(&Key::Taken, taken);
            }
            Ok(Move::Stay)
        }
        Key::Overview => Ok(Move::Go(Place::Overview)),
        Key::PhotoPart(photo) => Ok(Move::Go(Place::PhotoPart(*photo))),
        Key::Same => {
            if let Some(same) = session.with_snapshot(|snapshot| same_as_last(snapshot, question))? {
                let pending = &mut session.open_survey()?.memory.pending;
                for done in &same.given {
                    pending.keep(done);
                }
                return if same.leads_on { answer(session, question) } else { Ok(Move::Stay) };
            }
            Ok(Move::Stay)
        }
        Key::CannotReach if *question == Question::WaysIn => {
            session.open_survey()?.memory.later.insert(question.clone());
            Ok(Move::Go(Place::Field(FieldPlace::Here)))
        }
        Key::SeenNth(_) => match session.with_snapshot(|snapshot| take_label(snapshot, question, key))? {
            Some(told) => settle(session, question, told),
            None => Ok(Move::Stay),
        },
        Key::OthersToo | Key::OthersOpen | Key::Short | Key::AllShort => {
            match session.with_snapshot(|snapshot| question.take_at_once(snapshot, key))? {
                Some(told) => settle(session, question, told),
                None => Ok(Move::Stay),
            }
        }
        Key::Unsure => {
            let Some((subject, asked)) = unsure_about(session, question)? else { return Ok(Move::Stay) };
            session.open_survey()?.write(&[asked.set(subject, Reply::Unsure)])?;
            answered(session, question);
            Ok(Move::Next)
        }
        _ => {
            let place = match (question, key) {
                (Question::Cable(run), Key::Marks) => Question::Marks(*run),
                (Question::Wish(room), Key::OtherSpeed) => Question::WishOther(*room),
                _ => return touched(session, question, key),
            };
            Ok(Move::Go(Place::Ask(place)))
        }
    }
}

/// Leaves a question for later.
fn put_off(session: &mut Session, question: &Question) -> Result<Move> {
    session.open_survey()?.memory.later.insert(question.clone());
    Ok(Move::Next)
}

/// A touch on a label's figure: to correct it, or to take it where it was recognised. Another touch takes that back.
fn touched(session: &mut Session, question: &Question, key: &Key) -> Result<Move> {
    if question.unfolds(key) {
        session.open_survey()?.memory.pending.pick(&Key::Unfolded, [key.clone()]);
        return Ok(Move::Stay);
    }
    match key {
        Key::Take(figure) => {
            let taken = session.with_snapshot(|snapshot| with_touched(snapshot, question, *figure))?;
            let pending = &mut session.open_survey()?.memory.pending;
            if taken.is_empty() {
                // Whoever takes back all that was taken gave nothing.
                pending.forget(&Key::Taken);
            } else {
                pending.pick(&Key::Taken, taken);
            }
        }
        Key::TakeOff(figure) => {
            let read = session.with_snapshot(|snapshot| jacket_photo::read_off(snapshot, question))?;
            jacket_photo::touch(&mut session.open_survey()?.memory.pending, read, *figure);
        }
        Key::Fix(figure) => {
            let pending = &mut session.open_survey()?.memory.pending;
            let mut fixed: Vec<LabelFigure> = pending.picked(&Key::Fixed).unwrap_or_default();
            if fixed.contains(figure) {
                fixed.retain(|one| one != figure);
            } else {
                fixed.push(*figure);
            }
            pending.pick(&Key::Fixed, fixed);
        }
        _ => {}
    }
    Ok(Move::Stay)
}

/// Where it is written that somebody looked and could not tell.
fn unsure_about(session: &mut Session, question: &Question) -> Result<Option<(SubjectId, Asked)>> {
    let survey = session.open_survey()?.survey.id;
    Ok(match question {
        Question::Label(part) => Some((*part, Asked::Label)),
        Question::Legs(part) => Some((*part, Asked::Legs)),
        Question::Marks(run) => Some((*run, Asked::Length)),
        Question::Plan => Some((survey, Asked::Plan)),
        _ => None,
    })
}

/// Takes the answer that stands on the screen, or says what is wrong with it.
fn answer(session: &mut Session, question: &Question) -> Result<Move> {
    let stands = session.with_snapshot(|snapshot| question.stands(snapshot))?;
    if !stands {
        return Ok(Move::Next);
    }
    let (touched, stands_answered, has_photo) = session.with_snapshot(|snapshot| {
        let has_photo = match question {
            Question::Label(part) => snapshot.survey.photos_of(Some(*part)).next().is_some(),
            Question::Cable(run) => !snapshot.jacket_photos(*run).is_empty(),
            _ => false,
        };
        (is_touched(snapshot, question), is_answered(snapshot, question), has_photo)
    })?;
    // An answer is read from what was touched: who only looked says nothing, whether one stands or not.
    if !touched && stands_answered {
        answered(session, question);
        return Ok(Move::Next);
    }
    if !touched && has_photo {
        // The print is in the picture, and waits there until somebody types it.
        return put_off(session, question);
    }
    if !touched && !matches!(question, Question::LabelRead(_)) {
        return settle(session, question, Err(not_answered()));
    }
    let told = session.with_snapshot(|snapshot| question.take(snapshot))?;
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
        Err(problem) => {
            session.tell(problem);
            Ok(Move::Stay)
        }
    }
}

fn answered(session: &mut Session, question: &Question) {
    if let Ok(open) = session.open_survey() {
        open.memory.later.remove(question);
        open.memory.pending = Pending::default();
        if let Question::Marks(run) = question {
            let cable = Place::Ask(Question::Cable(*run));
            open.memory.change_left(&cable, jacket_photo::forget_length);
        }
    }
}

#[cfg(test)]
mod tests {
    use house::record::{Internet, Ownership};

    use super::*;
    use crate::screen::ChoiceBlock;
    use crate::session::InMemory;

    fn choice(screen: &Screen) -> &ChoiceBlock {
        let found = screen.blocks.iter().find_map(|block| match block {
            Block::Choice(choice) => Some(choice),
            _ => None,
        });
        found.expect("a choice")
    }

    /// The way of an answer without a disk: a page is drawn, a deed is taken, its edits stand in the records.
    fn answered(house: &mut InMemory, question: &Question, deeds: &[Done]) {
        for done in deeds {
            house.give(done);
        }
        let answer = question.take(&house.snapshot()).unwrap();
        house.write(&answer.edits);
    }

    #[test]
    fn a_pick_becomes_a_record_and_stands_on_the_screen() {
        let mut house = InMemory::new();
        let before = show(&house.snapshot(), &Question::Whose);
        assert!(choice(&before).options.iter().all(|option| !option.picked));
        let key = choice(&before).options[1].key.clone();
        answered(&mut house, &Question::Whose, &[Done::Pick(Key::Whose, vec![key])]);
        let building = house.snapshot().survey.building.unwrap();
        assert_eq!((building.ownership, building.shared), (Ownership::Rented, false));
        let after = show(&house.snapshot(), &Question::Whose);
        let picked: Vec<_> = choice(&after).options.iter().map(|option| option.picked).collect();
        assert_eq!(picked, [false, true, false]);
    }

    #[test]
    fn a_number_is_read_once_in_its_unit_and_a_wrong_one_says_what_to_do() {
        let mut house = InMemory::new();
        let typed = |typed: &str, unit: &str| Done::Measure(Key::Down, typed.into(), unit.into());
        answered(&mut house, &Question::Plan, &[typed("1", "gbps")]);
        assert_eq!(house.snapshot().survey.internet, Some(Internet { down_mbps: 1000.0, up_mbps: 100.0 }));
        house.give(&typed("fast", "mbps"));
        assert!(Question::Plan.take(&house.snapshot()).is_err());
    }
}

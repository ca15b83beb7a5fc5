//! Enough is asked for what a round of questions stands for: what that is good for, what it takes for granted, what is
//! left, and both ways on. Where a room cannot have a figure yet, what is missing for it, and the question that ends that.

use advice::verdict::Lacking;
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, ResultPlace, Round};
use crate::question::{Open, how_far, lacking};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::ScreenBuilder;

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, round: Round) -> Screen {
    let head = Phrase::new(format!("enough-{}", round.key()));
    let lacking = Lacking::of(snapshot.survey);
    // Nothing is enough while no room can have a figure.
    let title = if lacking.is_of_all() { Phrase::new("enough-lacking") } else { head.clone() };
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &title);
    let open = Open::of(snapshot);
    let said = |attribute: &str| {
        head.attribute(attribute)
            .with("open", Arg::Count(open.questions.len() as u64))
            .with("later", Arg::Count(open.later as u64))
            .with("unsure", Arg::Count(open.unsure as u64))
    };
    match lacking.phrase(snapshot.survey) {
        Some(missing) if lacking.is_of_all() => builder.words(WordsRole::Lead, &missing),
        Some(missing) => {
            builder.words(WordsRole::Lead, &said("lead"));
            builder.words(WordsRole::Lead, &missing);
        }
        None => builder.words(WordsRole::Lead, &said("lead")),
    }
    if !lacking.is_of_all() {
        builder.words(WordsRole::Plain, &said("left"));
    }
    if open.unsure + open.later > 0 {
        builder.words(WordsRole::Plain, &Phrase { id: "enough-not-told".into(), args: said("left").args });
    }
    taken_for_granted(&mut builder, &open);
    let forecast = if lacking.is_of_all() {
        let is_main_taken = lacking::presses(snapshot, &mut builder, &lacking, PressWeight::Main);
        let weight = if is_main_taken { PressWeight::Other } else { PressWeight::Main };
        (Phrase::new("to-forecast"), weight)
    } else {
        (head.attribute("to-forecast"), PressWeight::Main)
    };
    builder.press(&Key::Forecast, &forecast.0, forecast.1);
    if !lacking.is_of_all() {
        lacking::presses(snapshot, &mut builder, &lacking, PressWeight::Other);
    }
    if !open.questions.is_empty() {
        builder.press(&Key::Next, &head.attribute("on"), PressWeight::Other);
    }
    if open.later > 0 {
        builder.press(&Key::PutOff, &Phrase::new("put-off"), PressWeight::Other);
    }
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen.how_far = Some(how_far(snapshot));
    builder.screen
}

fn taken_for_granted(builder: &mut ScreenBuilder<'_>, open: &Open) {
    let rows = open.granted().iter().map(|granted| builder.row(None, granted, None, None)).collect();
    builder.rows(&Phrase::new("granted"), rows);
}

pub(crate) fn take(session: &mut Session, round: Round, done: &Done) -> Result<Move> {
    Ok(match done.pressed() {
        Some(Key::Forecast) => Move::Go(Place::Result(ResultPlace::Forecast)),
        Some(Key::Ask(question)) => Move::Go(Place::Ask(question.clone())),
        Some(Key::PutOff) => Move::Go(Place::PutOff),
        Some(Key::Overview) => Move::Go(Place::Overview),
        Some(Key::Next) => {
            session.open_survey()?.memory.ask_on(round);
            Move::Next
        }
        _ => Move::Stay,
    })
}

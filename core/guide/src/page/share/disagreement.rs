//! One field that people said differently: both values, who said them, what they came from, and the choice.

use facts::fact::{Disagreement, Fact, FactId, SubjectId};
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder, StoryTeller, day};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, subject: SubjectId, field: &str) -> Screen {
    let teller = StoryTeller::of(snapshot);
    let title = teller.about(subject, field);
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &title);
    let Some(found) = snapshot.ledger.disagreement(subject, field) else {
        builder.words(WordsRole::Lead, &Phrase::new("share-is-settled"));
        builder.press(&Key::List, &Phrase::new("share-disagreements"), PressWeight::Main);
        builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
        return builder.screen;
    };
    builder.words(WordsRole::Lead, &Phrase::new("share-which-is-right"));
    let origin = found.origin.iter().rev().find(|fact| !fact.is_forgotten() && !fact.value().is_null());
    match origin {
        Some(origin) => builder.words(
            WordsRole::Plain,
            &Phrase::new("share-origin")
                .phrase("value", teller.value(field, origin.value()))
                .phrase("author", teller.author(origin.by()))
                .text("day", day(origin.id().ms())),
        ),
        None => builder.words(WordsRole::Plain, &Phrase::new("share-no-origin")),
    }
    let offers = values(&found)
        .into_iter()
        .filter_map(|sides| {
            let first = sides.first()?;
            let words = teller.value(field, first.value());
            let by = |fact: &&Fact| {
                let by = Phrase::new("share-said-by")
                    .phrase("author", teller.author(fact.by()))
                    .text("day", day(fact.id().ms()));
                Arg::Phrase(Box::new(by))
            };
            let about =
                Phrase::new("value-several").with("several", Arg::Several(sides.iter().map(by).collect()));
            Some(Offer::new(&first.id(), words).about(about))
        })
        .collect();
    builder.choice(&Key::Right, &Phrase::new("share-right"), false, offers, None::<&FactId>);
    builder.words(WordsRole::Aside, &Phrase::new("share-settle-why"));
    builder.press(&Key::Settle, &Phrase::new("share-settle"), PressWeight::Main);
    builder.press(&Key::WholeThing, &Phrase::new("share-see-story"), PressWeight::Quiet);
    builder.press(&Key::List, &Phrase::new("share-leave-open"), PressWeight::Quiet);
    builder.screen
}

/// The different values, each with everybody who said it.
fn values<'a>(found: &Disagreement<'a>) -> Vec<Vec<&'a Fact>> {
    let mut values: Vec<Vec<&Fact>> = Vec::new();
    for side in &found.sides {
        let same = values.iter_mut().find(|one| one.first().is_some_and(|fact| fact.value() == side.value()));
        match same {
            Some(same) => same.push(side),
            None => values.push(vec![side]),
        }
    }
    values
}

pub(crate) fn take(session: &mut Session, subject: SubjectId, field: &str, done: &Done) -> Result<Move> {
    match done {
        Done::Pick(..) => {
            session.open_survey()?.memory.pending.keep(done);
            Ok(Move::Stay)
        }
        Done::Press(key) => match key {
            Key::Settle => settle(session, subject, field),
            Key::WholeThing => Ok(Move::Go(Place::Share(SharePlace::Field(subject, field.to_owned())))),
            Key::List => Ok(Move::Swap(Place::Share(SharePlace::Disagreements))),
            _ => Ok(Move::Stay),
        },
        _ => Ok(Move::Stay),
    }
}

fn settle(session: &mut Session, subject: SubjectId, field: &str) -> Result<Move> {
    let open = session.open_survey()?;
    let chosen: Option<FactId> = open.memory.pending.one(&Key::Right);
    let Some(chosen) = chosen else {
        session.tell(Phrase::new("share-choose-one"));
        return Ok(Move::Stay);
    };
    open.introduce()?;
    open.last_act = Some(open.store.settle(subject, field, chosen)?);
    open.read()?;
    let about = session.with_snapshot(|snapshot| {
        let teller = StoryTeller::of(snapshot);
        let shown = snapshot.ledger.shown(subject, field);
        Phrase::new("share-was-settled").phrase("about", teller.about(subject, field)).phrase(
            "value",
            shown.map_or_else(|| Phrase::new("value-empty"), |fact| teller.value(field, fact.value())),
        )
    })?;
    session.tell_done(about);
    Ok(Move::Swap(Place::Share(SharePlace::Disagreements)))
}

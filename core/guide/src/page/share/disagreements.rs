//! What people said differently: one row each.

use facts::fact::{Disagreement, Fact};
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, StoryTeller, paging};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let title = Phrase::new("share-disagreements");
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &title);
    let teller = StoryTeller::of(snapshot);
    let found = snapshot.ledger.disagreements();
    if found.is_empty() {
        builder.words(WordsRole::Lead, &Phrase::new("share-all-settled"));
    } else {
        builder.words(WordsRole::Lead, &Phrase::new("share-disagreements-lead"));
    }
    let rows: Vec<RowEntry> = found
        .iter()
        .enumerate()
        .skip(paging::first(snapshot.pending()))
        .take(paging::ROWS)
        .map(|(place, found)| {
            let key = Some(Key::SettleNth(place));
            let about = teller.about(found.subject, found.field);
            builder.row(key, &about, Some(&said(&teller, found)), None).ticked(false)
        })
        .collect();
    builder.rows(&Phrase::new("share-disagreements-rows"), rows);
    paging::presses(&mut builder, found.len());
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// Who said what, side by side.
fn said(teller: &StoryTeller<'_>, found: &Disagreement<'_>) -> Phrase {
    let side = |side: &&Fact| {
        let side = Phrase::new("disagreement-side")
            .phrase("author", teller.author(side.by()))
            .phrase("value", teller.value(found.field, side.value()));
        Arg::Phrase(Box::new(side))
    };
    let sides = found.sides.iter().map(side).collect();
    Phrase::new("value-several").with("several", Arg::Several(sides))
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    let Done::Press(Key::SettleNth(place)) = done else { return Ok(Move::Stay) };
    let about = session.with_snapshot(|snapshot| {
        let found = snapshot.ledger.disagreements().into_iter().nth(*place)?;
        Some((found.subject, found.field.to_owned()))
    })?;
    Ok(about.map_or(Move::Stay, |(subject, field)| {
        Move::Go(Place::Share(SharePlace::Disagreement(subject, field)))
    }))
}

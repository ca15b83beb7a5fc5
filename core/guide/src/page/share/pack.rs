//! Writing one file for the next person. Half done is fine.

use std::path::PathBuf;

use facts::fact::SurveyId;
use facts::file::{FILE_EXTENSION, LeftOut, PackOptions, still_told};
use facts::written_kind::WrittenKind;
use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Choice, Key, MAY_STAY_OUT, Move};
use crate::screen::{Ability, FileAsked, PressWeight, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot, folder_name, is_there, name_of, pack};
use crate::view::{Offer, ScreenBuilder};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("share-pack"));
    builder.able(Ability::Share);
    if let Some(there) = snapshot.file_there.filter(|there| WrittenKind::Packed.is_named(there)) {
        let there = Phrase::new("share-pack-there").text("file", name_of(there));
        builder.words(WordsRole::Lead, &there);
        builder.confirm_loss(&Key::Replace, &Phrase::new("share-pack-replace"));
        builder.press_for_a_place(&place(snapshot), &Phrase::new("share-pack-elsewhere"), PressWeight::Main);
        builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
        return builder.screen;
    }
    builder.words(WordsRole::Lead, &Phrase::new("share-pack-lead"));
    let offers = MAY_STAY_OUT.map(|what| {
        let words = Phrase::new(format!("share-leave-out-{}", what.key()));
        let about = words.attribute("about");
        Offer::new(&what, words).about(about)
    });
    builder.choice(&Key::LeaveOut, &Phrase::new("share-leave-out"), true, offers.into(), None::<&LeftOut>);
    let survey = SurveyId::from_uuid(snapshot.survey.id.uuid());
    let told: Vec<Phrase> = still_told(snapshot.ledger, survey, &snapshot.left_out())
        .into_iter()
        .map(|told| Phrase::new(format!("share-still-{}", told.word())))
        .collect();
    if !told.is_empty() {
        builder.words(WordsRole::Plain, &Phrase::new("share-still-told"));
        for told in &told {
            builder.words(WordsRole::Aside, told);
        }
    }
    builder.press(&place(snapshot), &Phrase::new("share-pack-do"), PressWeight::Main);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// The press that asks for the file's place. Its proposed name says whose house it is only if the file does.
fn place(snapshot: &SurveySnapshot<'_>) -> Key {
    let is_private = snapshot.left_out().contains(&LeftOut::Owner);
    let name = snapshot.survey.name.as_deref().filter(|_| !is_private).unwrap_or_default();
    Key::File(FileAsked::ToWrite { name: format!("{}.{FILE_EXTENSION}", folder_name(name)) })
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    match done {
        Done::File(Key::File(FileAsked::ToWrite { name }), file) => {
            let mut file = PathBuf::from(file);
            if file.is_dir() {
                file.push(name);
            }
            write(session, file, false)
        }
        Done::Press(Key::Replace) => {
            let there = session.open_survey()?.file_there.clone();
            let there = there.filter(|there| WrittenKind::Packed.is_named(there));
            there.map_or(Ok(Move::Stay), |file| write(session, file, true))
        }
        Done::Press(Key::File(_)) => {
            session.tell(Phrase::new("share-needs-place"));
            Ok(Move::Stay)
        }
        Done::Pick(..) => {
            session.open_survey()?.memory.pending.keep(done);
            Ok(Move::Stay)
        }
        _ => Ok(Move::Stay),
    }
}

fn write(session: &mut Session, file: PathBuf, replace: bool) -> Result<Move> {
    if !replace && is_there(&file) {
        // Nothing of another kind is ever replaced.
        WrittenKind::Packed.refuse_unfit(&file)?;
        session.open_survey()?.file_there = Some(file);
        return Ok(Move::Stay);
    }
    #[expect(clippy::redundant_closure_for_method_calls, reason = "the method is of one lifetime")]
    let left_out = session.with_snapshot(|snapshot| snapshot.left_out())?;
    pack(session, PackOptions { left_out, replace }, file, |session| {
        // The choice of what is left out stays: written again, the file must not bring back a name by itself.
        session.open_survey()?.file_there = None;
        Ok(())
    })?;
    Ok(Move::Stay)
}

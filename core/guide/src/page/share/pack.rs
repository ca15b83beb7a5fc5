//! Writing one file for the next person. Half done is fine.

use std::path::{Path, PathBuf};

use facts::file::{FILE_EXTENSION, LeftOut, PackOptions};
use phrase::Phrase;

use crate::deed::Deed;
use crate::error::Result;
use crate::place::Move;
use crate::screen::{Ability, FileAsked, PressWeight, Screen, WordsRole};
use crate::session::{Scene, Session, folder_name, is_there, name_of, pack};
use crate::view::{Offer, Sketch};

/// What can be left out, by the key of its option.
const LEFT_OUT: [(&str, LeftOut); 3] =
    [("owner", LeftOut::Owner), ("notes", LeftOut::Notes), ("photos", LeftOut::Photos)];

/// Where it is kept that a file of that name is there already.
const THERE: &str = "there";

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("share-pack"));
    sketch.able(Ability::Share);
    if let Some(there) = scene.pending().written(THERE).filter(|there| !there.is_empty()) {
        sketch
            .words(WordsRole::Lead, &Phrase::new("share-pack-there").text("file", name_of(Path::new(there))));
        sketch.confirm_loss("replace", &Phrase::new("share-pack-replace"));
        sketch.press_for_a_place(&place(scene), &Phrase::new("share-pack-elsewhere"), PressWeight::Main);
        sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
        return sketch.screen;
    }
    sketch.words(WordsRole::Lead, &Phrase::new("share-pack-lead"));
    let offers = LEFT_OUT.map(|(key, _)| {
        let words = Phrase::new(format!("share-leave-out-{key}"));
        let about = words.attribute("about");
        Offer::new(key, words).about(about)
    });
    sketch.choice("without", &Phrase::new("share-leave-out"), true, offers.into(), &[]);
    sketch.press(&place(scene), &Phrase::new("share-pack-do"), PressWeight::Main);
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// The press that asks for the file's place. Its proposed name says whose house it is only if the file does.
fn place(scene: &Scene<'_>) -> String {
    let is_private = left_out(scene).contains(&LeftOut::Owner);
    let name = scene.survey.name.as_deref().filter(|_| !is_private).unwrap_or_default();
    FileAsked::ToWrite { name: format!("{}.{FILE_EXTENSION}", folder_name(name)) }.key()
}

fn left_out(scene: &Scene<'_>) -> Vec<LeftOut> {
    let picked = scene.pending().picked("without").unwrap_or_default();
    LEFT_OUT.iter().filter(|(key, _)| picked.iter().any(|one| one == key)).map(|(_, what)| *what).collect()
}

pub(crate) fn take(session: &mut Session, deed: &Deed) -> Result<Move> {
    match deed {
        Deed::File { key, file } => match FileAsked::of(key) {
            Some(FileAsked::ToWrite { name }) => {
                let mut file = PathBuf::from(file);
                if file.is_dir() {
                    file.push(name);
                }
                write(session, file, false)
            }
            _ => Ok(Move::Stay),
        },
        Deed::Press { key } if key == "replace" => {
            let there = session.open_survey()?.memory.pending.written(THERE).map(PathBuf::from);
            there.map_or(Ok(Move::Stay), |file| write(session, file, true))
        }
        Deed::Press { key } if FileAsked::of(key).is_some() => {
            session.tell(Phrase::new("share-needs-place"));
            Ok(Move::Stay)
        }
        Deed::Pick { .. } => {
            session.open_survey()?.memory.pending.keep(deed);
            Ok(Move::Stay)
        }
        _ => Ok(Move::Stay),
    }
}

fn write(session: &mut Session, file: PathBuf, replace: bool) -> Result<Move> {
    if !replace && is_there(&file) {
        let there = file.display().to_string();
        let pending = &mut session.open_survey()?.memory.pending;
        pending.keep(&Deed::Write { key: THERE.into(), words: there });
        return Ok(Move::Stay);
    }
    let left_out = session.with_scene(left_out)?.into_iter().collect();
    pack(session, PackOptions { left_out, replace }, file, |session| {
        // The choice of what is left out stays: written again, the file must not bring back a name by itself.
        session.open_survey()?.memory.pending.keep(&Deed::Write { key: THERE.into(), words: String::new() });
        Ok(())
    })?;
    Ok(Move::Stay)
}

//! What all screens of field work have alike: what is typed or chosen is kept, the last act of this device can be taken
//! back, and there is a way to the overview.

use house::record::PhotoRole;
use phrase::Phrase;

use super::{finder, part, undo};
use crate::deed::Deed;
use crate::error::Result;
use crate::place::{FieldPlace, Move, Place};
use crate::question::about;
use crate::screen::{PressWeight, Screen};
use crate::session::{Scene, Session};
use crate::view::Sketch;

/// A screen with what stands on all of them.
pub(crate) fn show(scene: &Scene<'_>, mut sketch: Sketch<'_>) -> Screen {
    undo::offer(scene, &mut sketch);
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// Does what is done on all of them alike; `pressed` does what a press of the screen's own does.
pub(crate) fn take(
    session: &mut Session,
    place: &FieldPlace,
    deed: &Deed,
    pressed: impl FnOnce(&mut Session, &str) -> Result<Move>,
) -> Result<Move> {
    if let (Deed::Press { key }, FieldPlace::Part(about) | FieldPlace::Run(about)) = (deed, place)
        && !matches!(key.as_str(), "add-note" | "undo")
    {
        part::keep_note(session, *about)?;
    }
    match deed {
        Deed::Press { key } => match key.as_str() {
            "overview" => Ok(Move::Go(Place::Overview)),
            "undo" => undo::take(session),
            "more" | "first" => finder::turn(session, key),
            key => pressed(session, key),
        },
        Deed::Pick { .. } | Deed::Measure { .. } => {
            session.open_survey()?.memory.pending.keep(deed);
            Ok(Move::Stay)
        }
        Deed::Write { key, .. } => {
            let pending = &mut session.open_survey()?.memory.pending;
            pending.keep(deed);
            if key == "find" {
                // What is looked for stands on the first page.
                pending.keep(&Deed::Write { key: "page".into(), words: String::new() });
            }
            Ok(Move::Stay)
        }
        Deed::Photo { key, file } if key == "photo" => photographed(session, place, file),
        Deed::Photo { .. } | Deed::Print { .. } | Deed::File { .. } | Deed::Back => Ok(Move::Stay),
    }
}

/// Keeps a photo that was taken on one of these screens.
fn photographed(session: &mut Session, place: &FieldPlace, file: &str) -> Result<Move> {
    let (of, role) = match place {
        FieldPlace::Burst | FieldPlace::Assign => (None, None),
        FieldPlace::Part(part) => {
            let prints = |scene: &Scene<'_>| scene.survey.parts.get(part).is_some_and(about::is_printed);
            let role = if session.with_scene(prints)? { PhotoRole::Label } else { PhotoRole::Place };
            (Some(*part), Some(role))
        }
        FieldPlace::Run(run) => (Some(*run), Some(PhotoRole::Place)),
        _ => return Ok(Move::Stay),
    };
    session.open_survey()?.add_photo(file, of, role)?;
    Ok(Move::Stay)
}

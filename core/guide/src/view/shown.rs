//! Long lists in pages, and names of rooms and outlets.

use facts::fact::SubjectId;
use house::naming;
use house::record::Survey;
use phrase::Phrase;

use super::builder::ScreenBuilder;
use super::paging;
use crate::session::SurveySnapshot;

/// Rows of one page.
pub(crate) const ROWS: usize = paging::ROWS;

/// Which page of a long list is shown, 0 first.
pub(crate) fn page(snapshot: &SurveySnapshot<'_>, of: usize) -> usize {
    paging::page(snapshot.pending()).min(of.saturating_sub(1) / ROWS)
}

/// The presses that turn the page of a list of so many rows.
pub(crate) fn turn(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, of: usize) {
    paging::presses_of(builder, page(snapshot, of), of, ROWS);
}

/// An outlet by its room's name, where that is the only one of the room; else by its own.
pub(crate) fn outlet(survey: &Survey, outlet: SubjectId) -> Phrase {
    let Some(part) = survey.parts.get(&outlet) else { return naming::part(survey, outlet) };
    let alone = survey.parts.values().filter(|other| other.kind == part.kind && other.room == part.room);
    match survey.room_of(part) {
        Some(room) if !room.name.trim().is_empty() && alone.count() == 1 => {
            Phrase::new("text").text("text", &room.name)
        }
        _ => naming::of_part(survey, part),
    }
}

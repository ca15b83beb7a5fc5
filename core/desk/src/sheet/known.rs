//! What a survey that is there knows, so that a sheet onto it need not say it again: its parts by their tags, and its rooms.

use std::collections::BTreeMap;

use facts::fact::SubjectId;
use house::rating::PartRating;
use house::record::{Is, PartKind, Room, Survey};

use super::draft::{PartDraft, PartRow, RoomDraft, Told};
use super::edits::id_of;
use super::onto::{Called, feed_of};
use super::table::Section;

/// What is known besides what a sheet says; nothing, of a sheet that stands alone.
#[derive(Default)]
pub struct Known {
    parts: BTreeMap<String, KnownPart>,
    rooms: Vec<String>,
}

/// A part of the survey.
pub struct KnownPart {
    /// What it is.
    pub kind: PartKind,
    /// What it is rated for, typed or printed.
    pub rating: PartRating,
    /// The tag of the part that feeds it, and the output there.
    pub fed: Option<(String, u8)>,
}

impl Known {
    /// What a survey knows.
    pub fn of(survey: &Survey, called: &Called) -> Self {
        let names: BTreeMap<SubjectId, &str> = called.iter().map(|(name, id)| (id, name)).collect();
        let parts = called.iter().filter_map(|(name, id)| {
            let part = survey.parts.get(&id)?;
            let fed =
                feed_of(survey, id).and_then(|feed| Some(((*names.get(&feed.part)?).to_owned(), feed.port)));
            Some((name.to_owned(), KnownPart { kind: part.kind, rating: part.rating.clone(), fed }))
        });
        let rooms = survey.rooms.values().map(|room| room.name.clone()).collect();
        Self { parts: parts.collect(), rooms }
    }

    /// The part of this tag.
    pub fn part(&self, tag: &str) -> Option<&KnownPart> {
        self.parts.get(tag)
    }

    /// The parts that the sheet does not speak of, which others may name; they say nothing that does not stand so already.
    pub fn other_parts<'s>(
        &self,
        told: &[PartDraft<'s>],
        nothing: impl Fn() -> Section<'s>,
    ) -> Vec<PartDraft<'s>> {
        let is_told = |tag: &str| told.iter().any(|part| part.row.tag == tag);
        let others = self.parts.iter().filter(|(tag, _)| !is_told(tag));
        let draft = |(tag, part): (&String, &KnownPart)| PartDraft {
            row: PartRow::bare(tag.clone(), part.kind),
            of_label: part.rating.clone(),
            section: nothing(),
            tag: None,
            from: None,
            port: None,
            run: None,
            run_tag: None,
            measured: None,
            room: None,
            ends: Vec::new(),
        };
        others.map(draft).collect()
    }

    /// The rooms that the sheet does not speak of.
    pub fn other_rooms<'s>(&self, told: &[RoomDraft<'s>]) -> Vec<RoomDraft<'s>> {
        let is_told = |name: &String| told.iter().any(|room| room.room.record.name == *name);
        let room = |name: &String| {
            let record =
                Room { id: id_of(Is::Room, name), name: name.clone(), wish: None, served_from: None };
            RoomDraft { room: Told { record, notes: Vec::new() }, name: None, served_from: None }
        };
        self.rooms.iter().filter(|name| !is_told(name)).map(room).collect()
    }
}

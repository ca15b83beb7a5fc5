//! Questions: one thing a screen. Each reads from the survey what is known, and turns an answer into edits.
//!
//! To add a question: a variant of [`Question`], its file here (or a place in the file of its theme) with `draw` and
//! `take`, its line in `journey.rs` that says when it is asked and when it counts as answered, and its words
//! `ask-<name>` with `.title`, `.why` and, where a picture in words helps, `.how` in `words/en/ask.ftl`.

mod answer;
pub(crate) mod cable;
pub(crate) mod entry;
pub(crate) mod house;
mod label;
mod leads_to;
mod outlet;
pub(crate) mod router;
mod split;

use facts::fact::SubjectId;
use phrase::Phrase;
use serde::{Deserialize, Serialize};

use crate::scene::Scene;
use crate::sketch::Sketch;
use crate::stage::Stage;

pub(crate) use answer::{Answer, Problem, Told, not_answered};
pub(crate) use label::kind_printed;
pub(crate) use leads_to::free_tag;

/// One thing to ask.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Question {
    /// Whose the wiring is, and whether others share it.
    Whose,
    /// What uses the coax today.
    Uses,
    /// How new the cable modem is.
    ModemAge,
    /// What the internet plan gives.
    Plan,
    /// What must not be cut off.
    Depends,
    /// Which rooms there are.
    Rooms,
    /// What is wanted in a room.
    Wish(SubjectId),
    /// The same, by two numbers.
    WishOther(SubjectId),
    /// How cables come into the house.
    WaysIn,
    /// Whether an entry is joined to the world outside.
    Joined(SubjectId),
    /// Whether a ground block was seen at an entry.
    GroundBlock(SubjectId),
    /// Whether an entry filter is there.
    EntryFilter(SubjectId),
    /// What is printed on a part.
    Label(SubjectId),
    /// Whether what was read off a label is right.
    LabelRead(SubjectId),
    /// How many outputs a part has.
    Legs(SubjectId),
    /// Where a port of a part leads.
    LeadsTo(SubjectId, u8),
    /// How an amplifier is powered.
    Powered(SubjectId),
    /// What is printed on the cables' jackets, all at once.
    Cables,
    /// What is printed on one cable's jacket.
    Cable(SubjectId),
    /// How long a cable is.
    Length(SubjectId),
    /// The same, from the marks on its jacket.
    Marks(SubjectId),
    /// How the connectors are, all at once.
    Connectors,
    /// How the two connectors of one cable are.
    ConnectorsOf(SubjectId),
    /// What is plugged in at an outlet.
    Plugged(SubjectId),
    /// Which room an outlet is in.
    RoomOf(SubjectId),
    /// Outlets that nobody has come to yet.
    MoreOutlets,
    /// Where a loose part gets its signal.
    FedBy(SubjectId),
    /// Which outlet is near the router.
    RouterAt,
    /// Whether the router itself speaks MoCA.
    RouterSpeaks,
    /// Which adapters there are or shall be.
    Adapters,
}

impl Question {
    /// Its name, the same in every language; its words are the message `ask-<name>`.
    pub(crate) const fn name(&self) -> &'static str {
        match self {
            Self::Whose => "whose",
            Self::Uses => "uses",
            Self::ModemAge => "modem-age",
            Self::Plan => "plan",
            Self::Depends => "depends",
            Self::Rooms => "rooms",
            Self::Wish(_) => "wish",
            Self::WishOther(_) => "wish-other",
            Self::WaysIn => "ways-in",
            Self::Joined(_) => "joined",
            Self::GroundBlock(_) => "ground-block",
            Self::EntryFilter(_) => "entry-filter",
            Self::Label(_) => "label",
            Self::LabelRead(_) => "label-read",
            Self::Legs(_) => "legs",
            Self::LeadsTo(..) => "leads-to",
            Self::Powered(_) => "powered",
            Self::Cables => "cables",
            Self::Cable(_) => "cable",
            Self::Length(_) => "length",
            Self::Marks(_) => "marks",
            Self::Connectors => "connectors",
            Self::ConnectorsOf(_) => "connectors-of",
            Self::Plugged(_) => "plugged",
            Self::RoomOf(_) => "room-of",
            Self::MoreOutlets => "more-outlets",
            Self::FedBy(_) => "fed-by",
            Self::RouterAt => "router-at",
            Self::RouterSpeaks => "router-speaks",
            Self::Adapters => "adapters",
        }
    }

    /// The stage that it belongs to.
    pub(crate) const fn stage(&self) -> Stage {
        match self {
            Self::Whose
            | Self::Uses
            | Self::ModemAge
            | Self::Plan
            | Self::Depends
            | Self::Rooms
            | Self::Wish(_)
            | Self::WishOther(_) => Stage::House,
            Self::WaysIn | Self::Joined(_) | Self::GroundBlock(_) | Self::EntryFilter(_) => Stage::WayIn,
            Self::Label(_)
            | Self::LabelRead(_)
            | Self::Legs(_)
            | Self::LeadsTo(..)
            | Self::FedBy(_)
            | Self::Powered(_) => Stage::Splits,
            Self::Cables
            | Self::Cable(_)
            | Self::Length(_)
            | Self::Marks(_)
            | Self::Connectors
            | Self::ConnectorsOf(_) => Stage::Cables,
            Self::Plugged(_) | Self::RoomOf(_) | Self::MoreOutlets => Stage::Outlets,
            Self::RouterAt | Self::RouterSpeaks | Self::Adapters => Stage::Router,
        }
    }

    /// The message of the question, with what it speaks of.
    pub(crate) fn phrase(&self, scene: &Scene<'_>) -> Phrase {
        let phrase = Phrase::new(format!("ask-{}", self.name()));
        answer::name_subject(self, scene, phrase)
    }

    /// Whether the thing that it asks about is still there.
    pub(crate) fn stands(&self, scene: &Scene<'_>) -> bool {
        let survey = scene.survey;
        match self {
            Self::Wish(room) | Self::WishOther(room) => survey.rooms.contains_key(room),
            Self::Cable(run) | Self::Length(run) | Self::Marks(run) | Self::ConnectorsOf(run) => {
                survey.runs.contains_key(run)
            }
            Self::Joined(part)
            | Self::GroundBlock(part)
            | Self::EntryFilter(part)
            | Self::Label(part)
            | Self::LabelRead(part)
            | Self::Legs(part)
            | Self::LeadsTo(part, _)
            | Self::Powered(part)
            | Self::Plugged(part)
            | Self::RoomOf(part)
            | Self::FedBy(part) => survey.parts.contains_key(part),
            _ => true,
        }
    }

    /// Draws its inputs.
    pub(crate) fn draw(&self, scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
        match self {
            Self::Whose => house::draw_whose(scene, sketch),
            Self::Uses => house::draw_uses(scene, sketch),
            Self::ModemAge => house::draw_modem_age(scene, sketch),
            Self::Plan => house::draw_plan(scene, sketch),
            Self::Depends => house::draw_depends(scene, sketch),
            Self::Rooms => house::draw_rooms(scene, sketch),
            Self::Wish(room) => house::draw_wish(scene, sketch, *room),
            Self::WishOther(room) => house::draw_wish_other(scene, sketch, *room),
            Self::WaysIn => entry::draw_ways_in(scene, sketch),
            Self::Joined(entry) => entry::draw_joined(scene, sketch, *entry),
            Self::GroundBlock(entry) => entry::draw_ground_block(scene, sketch, *entry),
            Self::EntryFilter(entry) => entry::draw_filter(scene, sketch, *entry),
            Self::Label(part) => label::draw_label(scene, sketch, *part),
            Self::LabelRead(part) => label::draw_read(scene, sketch, *part),
            Self::Legs(part) => split::draw_legs(scene, sketch, *part),
            Self::LeadsTo(part, port) => leads_to::draw(scene, sketch, *part, *port),
            Self::Powered(part) => split::draw_powered(scene, sketch, *part),
            Self::Cables => cable::draw_all(scene, sketch),
            Self::Cable(run) => cable::draw_one(scene, sketch, *run),
            Self::Length(run) => cable::draw_length(scene, sketch, *run),
            Self::Marks(run) => cable::draw_marks(scene, sketch, *run),
            Self::Connectors => cable::draw_connectors(scene, sketch),
            Self::ConnectorsOf(run) => cable::draw_connectors_of(scene, sketch, *run),
            Self::Plugged(outlet) => outlet::draw_plugged(scene, sketch, *outlet),
            Self::RoomOf(outlet) => outlet::draw_room(scene, sketch, *outlet),
            Self::MoreOutlets => outlet::draw_more(scene, sketch),
            Self::FedBy(part) => split::draw_fed_by(scene, sketch, *part),
            Self::RouterAt => router::draw_at(scene, sketch),
            Self::RouterSpeaks => router::draw_speaks(scene, sketch),
            Self::Adapters => router::draw_adapters(scene, sketch),
        }
    }

    /// The edits that say what was given.
    ///
    /// # Errors
    /// What is wrong with what was given, and what to do.
    pub(crate) fn take(&self, scene: &Scene<'_>) -> Told<Answer> {
        match self {
            Self::Whose => house::take_whose(scene),
            Self::Uses => house::take_uses(scene),
            Self::ModemAge => house::take_modem_age(scene),
            Self::Plan => house::take_plan(scene),
            Self::Depends => house::take_depends(scene),
            Self::Rooms => house::take_rooms(scene),
            Self::Wish(room) => house::take_wish(scene, *room),
            Self::WishOther(room) => house::take_wish_other(scene, *room),
            Self::WaysIn => entry::take_ways_in(scene),
            Self::Joined(entry) => entry::take_joined(scene, *entry),
            Self::GroundBlock(entry) => entry::take_ground_block(scene, *entry),
            Self::EntryFilter(entry) => entry::take_filter(scene, *entry),
            Self::Label(part) => label::take_label(scene, *part),
            Self::LabelRead(part) => label::take_read(scene, *part),
            Self::Legs(part) => split::take_legs(scene, *part),
            Self::LeadsTo(part, port) => leads_to::take(scene, *part, *port),
            Self::Powered(part) => split::take_powered(scene, *part),
            Self::Cables => cable::take_all(scene),
            Self::Cable(run) => cable::take_one(scene, *run),
            Self::Length(run) => cable::take_length(scene, *run),
            Self::Marks(run) => cable::take_marks(scene, *run),
            Self::Connectors => cable::take_connectors(scene),
            Self::ConnectorsOf(run) => cable::take_connectors_of(scene, *run),
            Self::Plugged(outlet) => outlet::take_plugged(scene, *outlet),
            Self::RoomOf(outlet) => outlet::take_room(scene, *outlet),
            Self::MoreOutlets => outlet::take_more(scene),
            Self::FedBy(part) => split::take_fed_by(scene, *part),
            Self::RouterAt => router::take_at(scene),
            Self::RouterSpeaks => router::take_speaks(scene),
            Self::Adapters => router::take_adapters(scene),
        }
    }
}

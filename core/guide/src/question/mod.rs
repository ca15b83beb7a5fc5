//! Questions: one thing a screen. Each reads from the survey what is known, and turns an answer into edits.
//!
//! To add a question: a variant of [`Question`], its file here (or a place in the file of its theme) with `draw` and
//! `take`, its line in `journey.rs` that says when it is asked and when it counts as answered, and its words
//! `ask-<name>` with `.title`, `.why` and, where a picture in words helps, `.how` in `words/en/ask.ftl`.

pub(crate) mod about;
mod answer;
pub(crate) mod cable;
pub(crate) mod entry;
pub(crate) mod house;
mod how_far;
mod journey;
mod label;
mod labels_seen;
mod leads_to;
mod outlet;
pub(crate) mod router;
mod same_as_last;
mod split;
mod way_on;

use phrase::Phrase;

use crate::place::Question;
use crate::session::Scene;
use crate::view::Sketch;

pub(crate) use answer::{Answer, Problem, Told, not_answered};
pub(crate) use how_far::how_far;
pub(crate) use journey::{journey, next};
pub(crate) use label::kind_printed;
pub(crate) use labels_seen::{offer_labels, take_label};
pub(crate) use leads_to::free_tag;
pub(crate) use same_as_last::same_as_last;
pub(crate) use way_on::way_on;

impl Question {
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

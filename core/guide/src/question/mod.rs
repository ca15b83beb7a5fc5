//! Questions: one thing a screen. Each has an answer of its own type: `draw` offers it as the survey has it, `read`
//! takes it once from what was given, `answer` turns it into edits.
//!
//! To add a question: a variant of [`Question`], its answer in the file of its theme, its two lines below, its line in
//! `journey.rs` that says when it is asked and when it counts as answered, and its words
//! `ask-<name>` with `.title`, `.why` and, where a picture in words helps, `.how` in `words/en/ask.ftl`.

pub(crate) mod about;
mod answer;
mod asked;
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

use crate::place::Question;
use crate::session::Scene;
use crate::view::Sketch;

pub(crate) use answer::{Answer, Told, not_answered};
pub(crate) use how_far::how_far;
pub(crate) use journey::{journey, next};
pub(crate) use label::kind_printed;
pub(crate) use labels_seen::{offer_labels, take_label};
pub(crate) use leads_to::free_tag;
pub(crate) use same_as_last::same_as_last;
pub(crate) use way_on::way_on;

impl Question {
    /// Draws its inputs.
    pub(crate) fn draw(&self, scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
        match self {
            Self::Whose => house::WhoseAnswer::draw(scene, sketch),
            Self::Uses => house::UsesAnswer::draw(scene, sketch),
            Self::ModemAge => house::ModemAgeAnswer::draw(scene, sketch),
            Self::Plan => house::PlanAnswer::draw(scene, sketch),
            Self::Depends => house::DependsAnswer::draw(scene, sketch),
            Self::Rooms => house::RoomsAnswer::draw(scene, sketch),
            Self::Wish(room) => house::WishAnswer::draw(scene, sketch, *room),
            Self::WishOther(room) => house::WishOtherAnswer::draw(scene, sketch, *room),
            Self::WaysIn => entry::WaysInAnswer::draw(scene, sketch),
            Self::Joined(entry) => entry::JoinedAnswer::draw(scene, sketch, *entry),
            Self::GroundBlock(entry) => entry::SeenAnswer::draw_ground_block(scene, sketch, *entry),
            Self::EntryFilter(entry) => entry::SeenAnswer::draw_filter(scene, sketch, *entry),
            Self::Label(part) => label::LabelAnswer::draw(scene, sketch, *part),
            Self::LabelRead(part) => label::LabelReadAnswer::draw(scene, sketch, *part),
            Self::Legs(part) => split::LegsAnswer::draw(scene, sketch, *part),
            Self::LeadsTo(part, port) => leads_to::LeadsToAnswer::draw(scene, sketch, *part, *port),
            Self::Powered(part) => split::PoweredAnswer::draw(scene, sketch, *part),
            Self::Cables => cable::CablesAnswer::draw(scene, sketch),
            Self::Cable(run) => cable::CableAnswer::draw(scene, sketch, *run),
            Self::Length(run) => cable::LengthAnswer::draw(scene, sketch, *run),
            Self::Marks(run) => cable::MarksAnswer::draw(scene, sketch, *run),
            Self::Connectors => cable::ConnectorsAnswer::draw(scene, sketch),
            Self::ConnectorsOf(run) => cable::ConnectorsOfAnswer::draw(scene, sketch, *run),
            Self::Plugged(outlet) => outlet::PluggedAnswer::draw(scene, sketch, *outlet),
            Self::RoomOf(outlet) => outlet::RoomOfAnswer::draw(scene, sketch, *outlet),
            Self::MoreOutlets => outlet::MoreOutletsAnswer::draw(scene, sketch),
            Self::FedBy(part) => split::FedByAnswer::draw(scene, sketch, *part),
            Self::RouterAt => router::RouterAtAnswer::draw(scene, sketch),
            Self::RouterSpeaks => router::RouterSpeaksAnswer::draw(scene, sketch),
            Self::Adapters => router::AdaptersAnswer::draw(scene, sketch),
        }
    }

    /// What was given, read once as the question's own answer, as the edits that say it.
    ///
    /// # Errors
    /// What is wrong with what was given, and what to do.
    pub(crate) fn take(&self, scene: &Scene<'_>) -> Told<Answer> {
        let pending = scene.pending();
        match self {
            Self::Whose => Ok(house::WhoseAnswer::read(pending)?.answer(scene)),
            Self::Uses => Ok(house::UsesAnswer::read(pending)?.answer(scene)),
            Self::ModemAge => house::ModemAgeAnswer::read(pending)?.answer(scene),
            Self::Plan => house::PlanAnswer::read(pending)?.answer(scene),
            Self::Depends => Ok(house::DependsAnswer::read(pending)?.answer(scene)),
            Self::Rooms => house::RoomsAnswer::read(pending).answer(scene),
            Self::Wish(room) => Ok(house::WishAnswer::read(pending)?.answer(*room)),
            Self::WishOther(room) => house::WishOtherAnswer::read(pending)?.answer(scene, *room),
            Self::WaysIn => Ok(entry::WaysInAnswer::read(pending)?.answer(scene)),
            Self::Joined(entry) => Ok(entry::JoinedAnswer::read(pending)?.answer(*entry)),
            Self::GroundBlock(entry) => {
                Ok(entry::SeenAnswer::read(pending)?.answer_ground_block(scene, *entry))
            }
            Self::EntryFilter(entry) => Ok(entry::SeenAnswer::read(pending)?.answer_filter(scene, *entry)),
            Self::Label(part) => Ok(label::LabelAnswer::read(pending).answer(scene, *part)),
            Self::LabelRead(part) => {
                Ok(label::LabelReadAnswer::read(pending, scene, *part)?.answer(scene, *part))
            }
            Self::Legs(part) => Ok(split::LegsAnswer::read(pending)?.answer(scene, *part)),
            Self::LeadsTo(part, port) => {
                Ok(leads_to::LeadsToAnswer::read(pending)?.answer(scene, *part, *port))
            }
            Self::Powered(part) => Ok(split::PoweredAnswer::read(pending)?.answer(*part)),
            Self::Cables => Ok(cable::CablesAnswer::read(pending)?.answer(scene)),
            Self::Cable(run) => Ok(cable::CableAnswer::read(pending)?.answer(*run)),
            Self::Length(run) => cable::LengthAnswer::read(pending)?.answer(scene, *run),
            Self::Marks(run) => cable::MarksAnswer::read(pending)?.answer(*run),
            Self::Connectors => Ok(cable::ConnectorsAnswer::read(pending)?.answer(scene)),
            Self::ConnectorsOf(run) => Ok(cable::ConnectorsOfAnswer::read(pending).answer(*run)),
            Self::Plugged(outlet) => Ok(outlet::PluggedAnswer::read(pending)?.answer(*outlet)),
            Self::RoomOf(outlet) => Ok(outlet::RoomOfAnswer::read(pending)?.answer(*outlet)),
            Self::MoreOutlets => Ok(outlet::MoreOutletsAnswer::read(pending)?.answer(scene)),
            Self::FedBy(part) => split::FedByAnswer::read(pending)?.answer(scene, *part),
            Self::RouterAt => Ok(router::RouterAtAnswer::read(pending)?.answer(scene)),
            Self::RouterSpeaks => Ok(router::RouterSpeaksAnswer::read(pending)?.answer(scene)),
            Self::Adapters => Ok(router::AdaptersAnswer::read(pending)?.answer(scene)),
        }
    }
}

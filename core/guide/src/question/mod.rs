//! Questions: one thing a screen. Each has an answer of its own type: `draw` offers it as the survey has it, `read`
//! takes it once from what was given, `answer` turns it into edits.
//!
//! To add a question: a variant of [`Question`], its answer in the file of its theme, its two lines below, its line in
//! `journey.rs` that says when it is asked and when it counts as answered, and its words
//! `ask-<name>` with `.title`, `.why` and, where a picture in words helps, `.how` in `words/en/ask.ftl`.

pub(crate) mod about;
mod answer;
mod asked;
mod by_pass;
pub(crate) mod cable;
mod connectors;
mod drops_out;
pub(crate) mod entry;
pub(crate) mod house;
mod how_far;
pub(crate) mod jacket_photo;
mod journey;
mod label;
mod label_figures;
mod label_photo;
mod label_standing;
mod labels_seen;
pub(crate) mod lacking;
mod leads_to;
mod marks;
mod open;
mod outlet;
mod outputs;
mod outputs_drawn;
mod ports;
mod round;
pub(crate) mod router;
mod same_as_last;
mod some_order;
mod split;
mod standing;
mod way_on;

use ::house::record::PortEnd;

use crate::place::{Key, Question};
use crate::session::SurveySnapshot;
use crate::view::ScreenBuilder;

pub(crate) use answer::{Answer, Told, not_answered};
pub(crate) use how_far::how_far;
pub(crate) use journey::journey;
pub(crate) use label_photo::{with_sure_taken, with_touched};
pub(crate) use labels_seen::{offer_labels, take_label};
pub(crate) use leads_to::free_tag;
pub(crate) use open::Open;
pub(crate) use round::{Onward, onward, reason, round_of_next};
pub(crate) use same_as_last::same_as_last;
pub(crate) use standing::{is_answered, is_touched, said};
pub(crate) use way_on::way_on;

impl Question {
    /// Draws its inputs.
    pub(crate) fn draw(&self, snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        match self {
            Self::Whose => house::WhoseAnswer::draw(snapshot, builder),
            Self::Uses => house::UsesAnswer::draw(snapshot, builder),
            Self::ModemAge => house::ModemAgeAnswer::draw(snapshot, builder),
            Self::Plan => house::PlanAnswer::draw(snapshot, builder),
            Self::Depends => house::DependsAnswer::draw(snapshot, builder),
            Self::Rooms => house::RoomsAnswer::draw(snapshot, builder),
            Self::Wish(room) => house::WishAnswer::draw(snapshot, builder, *room),
            Self::WishOther(room) => house::WishOtherAnswer::draw(snapshot, builder, *room),
            Self::WaysIn => entry::WaysInAnswer::draw(snapshot, builder),
            Self::Joined(entry) => entry::JoinedAnswer::draw(snapshot, builder, *entry),
            Self::GroundBlock(entry) => entry::SeenTold::draw_ground_block(snapshot, builder, *entry),
            Self::EntryFilter(entry) => entry::SeenTold::draw_filter(snapshot, builder, *entry),
            Self::Label(part) => label::LabelAnswer::draw(snapshot, builder, *part),
            Self::LabelRead(part) => label::LabelReadAnswer::draw(snapshot, builder, *part),
            Self::Legs(part) => split::LegsAnswer::draw(snapshot, builder, *part),
            Self::LeadsTo(part, port) => leads_to::LeadsToAnswer::draw(snapshot, builder, *part, *port),
            Self::ByPass(part) => by_pass::ByPassAnswer::draw(snapshot, builder, *part),
            Self::Powered(part) => split::PoweredAnswer::draw(snapshot, builder, *part),
            Self::Outputs(part) => outputs::OutputsAnswer::draw(snapshot, builder, *part),
            Self::Cable(run) => cable::CableAnswer::draw(snapshot, builder, *run),
            Self::Marks(run) => marks::MarksAnswer::draw(snapshot, builder, *run),
            Self::Connectors => connectors::ConnectorsAnswer::draw(snapshot, builder),
            Self::ConnectorsOf(run) => connectors::ConnectorsOfAnswer::draw(snapshot, builder, *run),
            Self::Plugged(outlet) => outlet::PluggedAnswer::draw(snapshot, builder, *outlet),
            Self::RoomOf(outlet) => outlet::RoomOfAnswer::draw(snapshot, builder, *outlet),
            Self::MoreOutlets => outlet::MoreOutletsAnswer::draw(snapshot, builder),
            Self::FedBy(part) => split::FedByAnswer::draw(snapshot, builder, *part),
            Self::RouterAt => router::RouterAtAnswer::draw(snapshot, builder),
            Self::RouterSpeaks => router::RouterSpeaksAnswer::draw(snapshot, builder),
            Self::Adapters => router::AdaptersAnswer::draw(snapshot, builder),
            Self::Ports => ports::PortsAnswer::draw(snapshot, builder),
            Self::DropsOut => drops_out::DropsOutAnswer::draw(snapshot, builder),
        }
    }

    /// What a press answers that says more than what was given: of others too, or all of it at once.
    pub(crate) fn take_at_once(&self, snapshot: &SurveySnapshot<'_>, key: &Key) -> Option<Told<Answer>> {
        let pending = snapshot.pending();
        let outputs = |part, end| {
            let told = outputs::OutputsAnswer::read(pending, snapshot, part);
            told.answer_with_others(snapshot, part, end)
        };
        Some(match (self, key) {
            (Self::Outputs(part), Key::OthersToo) => outputs(*part, PortEnd::LooseEnd),
            (Self::Outputs(part), Key::OthersOpen) => outputs(*part, PortEnd::Open),
            (Self::Cable(run), Key::OthersToo) => {
                cable::CableAnswer::read(pending).and_then(|told| told.answer_for_all(snapshot, *run))
            }
            (Self::Cable(run), Key::Short) => Ok(cable::CableAnswer::short(snapshot, *run)),
            (Self::Cable(run), Key::AllShort) => Ok(cable::CableAnswer::all_short(snapshot, *run)),
            _ => return None,
        })
    }

    /// What was given, read once as the question's own answer, as the edits that say it.
    ///
    /// # Errors
    /// What is wrong with what was given, and what to do.
    pub(crate) fn take(&self, snapshot: &SurveySnapshot<'_>) -> Told<Answer> {
        let pending = snapshot.pending();
        match self {
            Self::Whose => Ok(house::WhoseAnswer::read(pending)?.answer(snapshot)),
            Self::Uses => Ok(house::UsesAnswer::read(pending)?.answer(snapshot)),
            Self::ModemAge => house::ModemAgeAnswer::read(pending)?.answer(snapshot),
            Self::Plan => house::PlanAnswer::read(pending)?.answer(snapshot),
            Self::Depends => Ok(house::DependsAnswer::read(pending)?.answer(snapshot)),
            Self::Rooms => house::RoomsAnswer::read(pending).answer(snapshot),
            Self::Wish(room) => Ok(house::WishAnswer::read(pending)?.answer(*room)),
            Self::WishOther(room) => house::WishOtherAnswer::read(pending)?.answer(snapshot, *room),
            Self::WaysIn => Ok(entry::WaysInAnswer::read(pending)?.answer(snapshot)),
            Self::Joined(entry) => Ok(entry::JoinedAnswer::read(pending)?.answer(*entry)),
            Self::GroundBlock(entry) => {
                Ok(entry::SeenTold::read(pending)?.answer_ground_block(snapshot, *entry))
            }
            Self::EntryFilter(entry) => Ok(entry::SeenTold::read(pending)?.answer_filter(snapshot, *entry)),
            Self::Label(part) => Ok(label::LabelAnswer::read(pending).answer(snapshot, *part)),
            Self::LabelRead(part) => {
                Ok(label::LabelReadAnswer::read(pending, snapshot, *part)?.answer(snapshot, *part))
            }
            Self::Legs(part) => Ok(split::LegsAnswer::read(pending)?.answer(snapshot, *part)),
            Self::LeadsTo(part, port) => {
                Ok(leads_to::LeadsToAnswer::read(pending)?.answer(snapshot, *part, *port))
            }
            Self::ByPass(part) => Ok(by_pass::ByPassAnswer::read(pending)?.answer(snapshot, *part)),
            Self::Powered(part) => Ok(split::PoweredAnswer::read(pending)?.answer(*part)),
            Self::Outputs(part) => {
                outputs::OutputsAnswer::read(pending, snapshot, *part).answer(snapshot, *part)
            }
            Self::Cable(run) => cable::CableAnswer::read(pending)?.answer(snapshot, *run),
            Self::Marks(run) => marks::MarksAnswer::read(pending)?.answer(*run),
            Self::Connectors => Ok(connectors::ConnectorsAnswer::read(pending)?.answer(snapshot)),
            Self::ConnectorsOf(run) => Ok(connectors::ConnectorsOfAnswer::read(pending).answer(*run)),
            Self::Plugged(outlet) => Ok(outlet::PluggedAnswer::read(pending)?.answer(snapshot, *outlet)),
            Self::RoomOf(outlet) => Ok(outlet::RoomOfAnswer::read(pending)?.answer(*outlet)),
            Self::MoreOutlets => Ok(outlet::MoreOutletsAnswer::read(pending)?.answer(snapshot)),
            Self::FedBy(part) => split::FedByAnswer::read(pending)?.answer(snapshot, *part),
            Self::RouterAt => Ok(router::RouterAtAnswer::read(pending)?.answer(snapshot)),
            Self::RouterSpeaks => Ok(router::RouterSpeaksAnswer::read(pending)?.answer(snapshot)),
            Self::Adapters => Ok(router::AdaptersAnswer::read(pending)?.answer(snapshot)),
            Self::Ports => Ok(ports::PortsAnswer::read(pending)?.answer(snapshot)),
            Self::DropsOut => drops_out::DropsOutAnswer::read(pending)?.answer(snapshot),
        }
    }
}

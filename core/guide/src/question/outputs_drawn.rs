//! The outputs of a part on one screen: a row an output with what it leads to, and one of them open to be told.

use facts::fact::SubjectId;
use house::record::Part;
use phrase::Phrase;

use super::house::cautions_of_tracing;
use super::leads_to::{LeadsToAnswer, current};
use super::outputs::{OutputsAnswer, is_told};
use super::some_order;
use crate::place::{Key, Question};
use crate::screen::{PressWeight, RowEntry};
use crate::session::SurveySnapshot;
use crate::view::{Offer, ScreenBuilder};

/// What stands open: an output, or which rooms there are in some order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Opened {
    Port(u8),
    InOrder,
    Nothing,
}

impl Opened {
    /// What was touched last, else the first output of which nothing is told.
    fn of(snapshot: &SurveySnapshot<'_>, found: &Part, told: &OutputsAnswer) -> Self {
        match snapshot.pending().one(&Key::Unfolded) {
            Some(Key::PortHere(port)) if port <= found.outputs() => Self::Port(port),
            Some(Key::InOrder) if !some_order::offers(snapshot, found, told).is_empty() => Self::InOrder,
            _ => told.open(snapshot, found).first().map_or(Self::Nothing, |port| Self::Port(*port)),
        }
    }
}

impl Question {
    /// Whether it is told on rows, of which one stands open.
    pub(crate) const fn is_folded(&self) -> bool {
        matches!(self, Self::Outputs(_))
    }

    /// Whether a touch on this key opens one of its rows.
    pub(crate) const fn unfolds(&self, key: &Key) -> bool {
        self.is_folded() && matches!(key, Key::PortHere(_) | Key::InOrder)
    }

    /// Whether the next row that is not told yet stands open, once this one is.
    pub(crate) const fn goes_on_after(&self, key: &Key) -> bool {
        self.is_folded() && matches!(key, Key::PortHere(_))
    }
}

pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, part: SubjectId) {
    let Some(found) = snapshot.survey.parts.get(&part) else { return };
    let told = OutputsAnswer::read(snapshot.pending(), snapshot, part);
    let opened = Opened::of(snapshot, found, &told);
    let before = |port: &u8| opened == Opened::Port(*port);
    let mut rows: Vec<RowEntry> = Vec::new();
    for port in 1..=found.outputs() {
        let name = port_name(snapshot, part, port);
        if before(&port) {
            builder.rows(&Phrase::new("outputs-before"), std::mem::take(&mut rows));
            let now = current(snapshot, part, port);
            builder.choice(&Key::PortHere(port), &name, false, LeadsToAnswer::offers(snapshot, part), &now);
        } else {
            rows.push(row(snapshot, builder, found, port, &told));
        }
    }
    builder.rows(&Phrase::new("outputs-after"), rows);
    let rooms = some_order::offers(snapshot, found, &told);
    if opened == Opened::InOrder {
        let now: [LeadsToAnswer; 0] = [];
        builder.choice(&Key::InOrder, &Phrase::new("outputs-in-order"), true, rooms, &now);
    } else if !rooms.is_empty() {
        builder.press(&Key::InOrder, &Phrase::new("outputs-to-order"), PressWeight::Other);
    }
    if !told.open(snapshot, found).is_empty() {
        builder.press(&Key::OthersToo, &Phrase::new("outputs-others-loose"), PressWeight::Other);
        builder.press(&Key::OthersOpen, &Phrase::new("outputs-others-open"), PressWeight::Other);
    }
    cautions_of_tracing(snapshot, builder);
}

/// What an output is called here.
fn port_name(snapshot: &SurveySnapshot<'_>, part: SubjectId, port: u8) -> Phrase {
    Phrase { id: "outputs-port".into(), args: Question::LeadsTo(part, port).phrase(snapshot).args }
}

/// An output that is folded: what it leads to, as far as that is told, and a touch opens it.
fn row(
    snapshot: &SurveySnapshot<'_>,
    builder: &ScreenBuilder<'_>,
    found: &Part,
    port: u8,
    told: &OutputsAnswer,
) -> RowEntry {
    let picked = told.picked(port);
    let says = match picked {
        Some(leads) => offered(snapshot, found.id, leads),
        None => stands(snapshot, found, port),
    };
    let is_guessed = picked.is_none() && some_order::is_guessed(snapshot.survey, found.id, port);
    let remark = is_guessed.then(|| Phrase::new("outputs-guessed"));
    let open = Phrase::new("outputs-open");
    let head = port_name(snapshot, found.id, port);
    let row =
        builder.row(Some(Key::PortHere(port)), &head, Some(says.as_ref().unwrap_or(&open)), remark.as_ref());
    row.ticked(says.is_some())
}

/// What stands of an output, in words.
fn stands(snapshot: &SurveySnapshot<'_>, found: &Part, port: u8) -> Option<Phrase> {
    match snapshot.survey.wiring.on_port(found.id, port).next() {
        Some(child) => Some(house::naming::part(snapshot.survey, child)),
        None if is_told(snapshot, found, port) => {
            offered(snapshot, found.id, current(snapshot, found.id, port)?)
        }
        None => None,
    }
}

/// The words of an option.
fn offered(snapshot: &SurveySnapshot<'_>, part: SubjectId, leads: LeadsToAnswer) -> Option<Phrase> {
    let offers = LeadsToAnswer::offers(snapshot, part);
    offers.into_iter().find(|offer| offer.is_of(&leads)).map(Offer::into_words)
}

//! The question that ends what keeps rooms from a figure.

use advice::verdict::{Lack, Lacking};
use house::record::{Part, PartKind, PortEnd, reading_order};

use super::{is_answered, outputs};
use crate::place::{Key, Question};
use crate::screen::PressWeight;
use crate::session::SurveySnapshot;
use crate::view::ScreenBuilder;

/// The question whose answer ends a lack.
pub(crate) fn question_for(snapshot: &SurveySnapshot<'_>, lack: Lack) -> Question {
    match lack {
        Lack::Router | Lack::OutletNearRouter => Question::RouterAt,
        Lack::Feed(part) => Question::FedBy(part),
        Lack::Outlet(_) => open_end(snapshot),
    }
}

/// Where a cable may lead to a room of which no outlet is known: an output of which somebody said that a cable is on it,
/// else one that nobody looked at, else an outlet not found yet.
fn open_end(snapshot: &SurveySnapshot<'_>) -> Question {
    let survey = snapshot.survey;
    let parts: Vec<&Part> =
        reading_order(survey).into_iter().filter_map(|id| survey.parts.get(&id)).collect();
    let free = |part: &Part, end: Option<PortEnd>| {
        let is_free =
            |port: &u8| survey.wiring.on_port(part.id, *port).next().is_none() && part.end(*port) == end;
        (1..=part.outputs()).find(is_free).filter(|_| part.kind != PartKind::Outlet)
    };
    let found = [Some(PortEnd::LooseEnd), None]
        .into_iter()
        .find_map(|end| parts.iter().find_map(|part| Some((*part, free(part, end)?))));
    match found {
        Some((part, _)) if outputs::are_asked_together(snapshot, part) => Question::Outputs(part.id),
        Some((part, port)) => Question::LeadsTo(part.id, port),
        None if survey.parts.is_empty() => Question::WaysIn,
        None => Question::MoreOutlets,
    }
}

/// So many questions are offered at once.
const MOST: usize = 3;

/// What is missing, a press for each question that ends it: the one that most rooms wait for first. Whether one of them took
/// the weight of the first: one that was answered before, if by "not sure", does not.
pub(crate) fn presses(
    snapshot: &SurveySnapshot<'_>,
    builder: &mut ScreenBuilder<'_>,
    lacking: &Lacking,
    first: PressWeight,
) -> bool {
    let mut is_first = false;
    let mut offered: Vec<Question> = Vec::new();
    for lack in lacking.lacks() {
        let question = question_for(snapshot, lack);
        let answered = is_answered(snapshot, &question);
        // That there are no more outlets was said: asked again it would lead in a circle.
        let ends_nothing = answered && question == Question::MoreOutlets;
        if offered.len() == MOST || offered.contains(&question) || ends_nothing {
            continue;
        }
        let leads = !answered && !is_first;
        builder.press(
            &Key::Ask(question.clone()),
            &question.phrase(snapshot),
            if leads { first } else { PressWeight::Other },
        );
        is_first |= leads;
        offered.push(question);
    }
    is_first
}

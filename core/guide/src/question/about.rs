//! Every question about one part or cable, answered or not.

use std::collections::BTreeMap;

use facts::fact::SubjectId;
use house::record::{Part, PartKind, Run};
use phrase::Phrase;

use crate::place::{Key, Move, Place, Question};
use crate::question::journey;
use crate::screen::RowEntry;
use crate::session::Scene;
use crate::view::Sketch;

/// Whether a part of this kind usually has print on it that says what it costs.
pub(crate) fn is_printed(part: &Part) -> bool {
    !matches!(
        part.kind,
        PartKind::Entry | PartKind::Outlet | PartKind::Barrel | PartKind::GroundBlock | PartKind::Terminator
    )
}

/// The questions about a part, in the order of who stands in front of it: itself first, then what it hangs on.
fn of_part(part: &Part) -> Vec<Question> {
    let id = part.id;
    let mut all = Vec::new();
    match part.kind {
        PartKind::Entry => {
            all.extend([Question::Joined(id), Question::GroundBlock(id), Question::EntryFilter(id)]);
        }
        PartKind::Outlet => all.extend([Question::RoomOf(id), Question::Plugged(id)]),
        _ => {}
    }
    if is_printed(part) {
        all.push(Question::Label(id));
        if part.label.is_some() {
            all.push(Question::LabelRead(id));
        }
    }
    if matches!(part.kind, PartKind::Splitter | PartKind::Tap | PartKind::Amplifier) {
        all.push(Question::Legs(id));
    }
    if part.kind == PartKind::Amplifier {
        all.push(Question::Powered(id));
    }
    all.extend((1..=part.outputs()).map(|port| Question::LeadsTo(id, port)));
    if part.kind != PartKind::Entry {
        all.push(Question::FedBy(id));
    }
    all
}

/// The questions about a cable.
fn of_run(run: &Run) -> Vec<Question> {
    vec![
        Question::Cable(run.id),
        Question::Length(run.id),
        Question::Marks(run.id),
        Question::ConnectorsOf(run.id),
    ]
}

/// The questions about a part or a cable.
pub(crate) fn about(scene: &Scene<'_>, subject: SubjectId) -> Vec<Question> {
    let survey = scene.survey;
    let of_run = || survey.runs.get(&subject).map(of_run);
    survey.parts.get(&subject).map(of_part).or_else(of_run).unwrap_or_default()
}

/// Whether each is answered.
fn answered(scene: &Scene<'_>, questions: Vec<Question>) -> Vec<(Question, bool)> {
    let led: BTreeMap<_, _> =
        journey(scene).into_iter().map(|on_way| (on_way.question, on_way.answered)).collect();
    let told = |question: &Question| led.get(question).copied().unwrap_or_else(|| stands(scene, question));
    questions.into_iter().map(|question| (question.clone(), told(&question))).collect()
}

/// Whether a question is answered that the guide would not come to by itself.
fn stands(scene: &Scene<'_>, question: &Question) -> bool {
    let survey = scene.survey;
    let told = |subject, name| survey.answer(subject, name).is_some();
    match question {
        Question::Label(part) => {
            told(*part, "label") || survey.parts.get(part).is_some_and(|part| part.label.is_some())
        }
        Question::LabelRead(part) => {
            told(*part, "label-read") || survey.parts.get(part).is_some_and(|part| !part.rating.doubtful)
        }
        Question::Legs(part) => {
            told(*part, "legs") || survey.parts.get(part).is_some_and(|part| part.rating.legs > 0)
        }
        Question::FedBy(part) => told(*part, "fed-by") || !survey.wiring.loose().contains_key(part),
        Question::EntryFilter(entry) => told(*entry, "entry-filter"),
        Question::LeadsTo(part, port) => {
            survey.wiring.on_port(*part, *port).next().is_some()
                || survey.parts.get(part).is_some_and(|part| part.end(*port).is_some())
        }
        Question::Cable(run) => {
            survey.runs.get(run).is_some_and(|run| run.cable != house::record::CableKind::Unknown)
        }
        Question::Length(run) | Question::Marks(run) => {
            survey.runs.get(run).is_some_and(|run| run.length.is_some())
        }
        Question::ConnectorsOf(run) => {
            told(*run, "connectors")
                || survey.runs.get(run).is_some_and(|run| {
                    run.connector_near != house::record::Connector::Unknown
                        && run.connector_far != house::record::Connector::Unknown
                })
        }
        _ => false,
    }
}

/// The first question about a part that is neither answered nor put off.
pub(crate) fn next(scene: &Scene<'_>, part: SubjectId) -> Option<Question> {
    let all = answered(scene, about(scene, part));
    all.into_iter()
        .find(|(question, told)| !told && !scene.memory.later.contains(question))
        .map(|(question, _)| question)
}

/// The questions about a part or cable as rows, with the keys `ask:0`, `ask:1` ...
pub(crate) fn rows(scene: &Scene<'_>, sketch: &mut Sketch<'_>, subject: SubjectId) {
    let all = answered(scene, about(scene, subject));
    let row = |(place, (question, told)): (usize, &(Question, bool))| -> RowEntry {
        let head = question.phrase(scene).attribute("title");
        let says = Phrase::new(if *told { "answered" } else { "open" });
        sketch.row(Some(Key::AskNth(place)), &head, Some(&says), None).ticked(*told)
    };
    let rows = all.iter().enumerate().map(row).collect();
    sketch.rows(&Phrase::new("free-questions"), rows);
}

/// Where a touch on such a row leads.
pub(crate) fn pressed(scene: &Scene<'_>, subject: SubjectId, key: &Key) -> Option<Move> {
    let Key::AskNth(place) = key else { return None };
    Some(Move::Go(Place::Ask(about(scene, subject).into_iter().nth(*place)?)))
}

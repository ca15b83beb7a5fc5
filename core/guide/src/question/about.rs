//! Every question about one part or cable, answered or not.

use std::collections::BTreeMap;

use facts::fact::SubjectId;
use house::record::{Asked, Part, PartKind, Reply, Run, ServiceKind};
use phrase::Phrase;

use super::cable::{is_length_told, is_series_told};
use super::outputs;
use crate::place::{Key, Move, Place, Question};
use crate::question::{journey, said};
use crate::screen::RowEntry;
use crate::session::SurveySnapshot;
use crate::view::ScreenBuilder;

/// Whether a part of this kind usually has print on it that says what it costs.
pub(crate) fn is_printed(part: &Part) -> bool {
    !matches!(
        part.kind,
        PartKind::Entry | PartKind::Outlet | PartKind::Barrel | PartKind::GroundBlock | PartKind::Terminator
    )
}

/// The questions about a part, in the order of who stands in front of it: itself first, then what it hangs on.
fn of_part(snapshot: &SurveySnapshot<'_>, part: &Part) -> Vec<Question> {
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
        all.extend([Question::ByPass(id), Question::Powered(id)]);
    }
    if outputs::are_asked_together(snapshot, part) {
        all.push(Question::Outputs(id));
    } else {
        all.extend((1..=part.outputs()).map(|port| Question::LeadsTo(id, port)));
    }
    if part.kind != PartKind::Entry {
        all.push(Question::FedBy(id));
    }
    all
}

/// The questions about a cable.
fn of_run(run: &Run) -> Vec<Question> {
    vec![Question::Cable(run.id), Question::Marks(run.id), Question::ConnectorsOf(run.id)]
}

/// The questions about a part or a cable.
pub(crate) fn about(snapshot: &SurveySnapshot<'_>, subject: SubjectId) -> Vec<Question> {
    let survey = snapshot.survey;
    let of_run = || survey.runs.get(&subject).map(of_run);
    survey.parts.get(&subject).map(|part| of_part(snapshot, part)).or_else(of_run).unwrap_or_default()
}

/// Whether each is answered.
fn answered(snapshot: &SurveySnapshot<'_>, questions: Vec<Question>) -> Vec<(Question, bool)> {
    let led: BTreeMap<_, _> =
        journey(snapshot).into_iter().map(|on_way| (on_way.question, on_way.answered)).collect();
    let told = |question: &Question| led.get(question).copied().unwrap_or_else(|| stands(snapshot, question));
    questions.into_iter().map(|question| (question.clone(), told(&question))).collect()
}

/// Whether a question is answered that the guide would not come to by itself.
pub(super) fn stands(snapshot: &SurveySnapshot<'_>, question: &Question) -> bool {
    let survey = snapshot.survey;
    let told = |subject, name| survey.answer(subject, name).is_some();
    match question {
        Question::Label(part) => {
            told(*part, Asked::Label) || survey.parts.get(part).is_some_and(|part| part.label.is_some())
        }
        Question::LabelRead(part) => {
            told(*part, Asked::LabelRead) || survey.parts.get(part).is_some_and(|part| !part.rating.doubtful)
        }
        Question::Legs(part) => {
            told(*part, Asked::Legs) || survey.parts.get(part).is_some_and(|part| part.rating.legs > 0)
        }
        Question::ByPass(part) => {
            told(*part, Asked::ByPass)
                || survey.parts.get(part).is_some_and(|part| part.rating.by_pass().is_some())
        }
        Question::FedBy(part) => {
            survey.reply(*part, Asked::FedBy) == Some(Reply::Unsure)
                || !survey.wiring.loose().contains_key(part)
        }
        Question::EntryFilter(entry) => told(*entry, Asked::EntryFilter),
        Question::LeadsTo(part, port) => {
            survey.wiring.on_port(*part, *port).next().is_some()
                || survey.parts.get(part).is_some_and(|part| part.end(*port).is_some())
        }
        Question::Outputs(part) => survey
            .parts
            .get(part)
            .is_some_and(|part| (1..=part.outputs()).all(|port| outputs::is_told(snapshot, part, port))),
        Question::Cable(run) => {
            survey.runs.get(run).is_some_and(|run| is_series_told(survey, run) && is_length_told(survey, run))
        }
        Question::Marks(run) => {
            told(*run, Asked::Length) || survey.runs.get(run).is_some_and(|run| run.length.is_some())
        }
        Question::WishOther(room) => survey.rooms.get(room).is_some_and(|room| room.wish.is_some()),
        Question::ConnectorsOf(run) => {
            told(*run, Asked::Connectors)
                || survey.runs.get(run).is_some_and(|run| {
                    run.connector_near != house::record::Connector::Unknown
                        && run.connector_far != house::record::Connector::Unknown
                })
        }
        _ => false,
    }
}

/// Whether somebody looked and could not tell, where nothing else is written of it.
pub(super) fn is_unsure(snapshot: &SurveySnapshot<'_>, question: &Question) -> bool {
    let survey = snapshot.survey;
    let (subject, asked) = match question {
        Question::Plan => (survey.id, Asked::Plan),
        Question::Label(part) => (*part, Asked::Label),
        Question::Legs(part) => (*part, Asked::Legs),
        Question::Marks(run) => (*run, Asked::Length),
        Question::ModemAge | Question::DropsOut => {
            let Some(service) = survey.services_of(ServiceKind::CableInternet).next() else { return false };
            let asked = if *question == Question::ModemAge { Asked::ModemAge } else { Asked::DropsOut };
            (service.id, asked)
        }
        _ => return false,
    };
    survey.reply(subject, asked) == Some(Reply::Unsure)
}

/// The first question about a part that is neither answered nor put off.
pub(crate) fn next(snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Option<Question> {
    let all = answered(snapshot, about(snapshot, part));
    all.into_iter()
        .find(|(question, told)| !told && !snapshot.memory.later.contains(question))
        .map(|(question, _)| question)
}

/// The questions about a part or cable as rows, with the keys `ask:0`, `ask:1` ...
pub(crate) fn rows(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, subject: SubjectId) {
    let all = answered(snapshot, about(snapshot, subject));
    let row = |(place, (question, told)): (usize, &(Question, bool))| -> RowEntry {
        let head = question.phrase(snapshot).attribute("title");
        let row = builder.row(Some(Key::AskNth(place)), &head, None, None).ticked(*told);
        RowEntry { says: said(snapshot, question, *told), ..row }
    };
    let rows = all.iter().enumerate().map(row).collect();
    builder.rows(&Phrase::new("free-questions"), rows);
}

/// Where a touch on such a row leads.
pub(crate) fn pressed(snapshot: &SurveySnapshot<'_>, subject: SubjectId, key: &Key) -> Option<Move> {
    let Key::AskNth(place) = key else { return None };
    Some(Move::Go(Place::Ask(about(snapshot, subject).into_iter().nth(*place)?)))
}

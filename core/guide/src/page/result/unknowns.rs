//! What is not known: which of it matters most and is worth going back for, and the question about it.

use advice::unknown::Matters;
use facts::fact::SubjectId;
use house::naming;
use house::record::{Ownership, Survey};
use phrase::{Arg, Phrase};

use super::waiting;
use crate::place::{Key, Question};
use crate::screen::{PressWeight, RowEntry, RowMark, Screen, WordsRole};
use crate::session::{SurveySnapshot, Weighed, Worked, question_of};
use crate::view::{ScreenBuilder, shown};

/// How many are offered as presses.
const FIRST: usize = 3;

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("unknowns"));
    let Some(worked) = waiting::worked(snapshot, &mut builder) else { return builder.screen };
    let worth: Vec<_> = worth_going_back(snapshot, worked).take(FIRST).collect();
    if worked.unknowns.is_empty() {
        builder.words(WordsRole::Lead, &Phrase::new("unknowns-none"));
    } else if worth.is_empty() {
        builder.words(WordsRole::Lead, &Phrase::new("unknowns-none-matters"));
    } else {
        builder.words(WordsRole::Lead, &Phrase::new("unknowns-lead"));
        builder.words(WordsRole::Why, &Phrase::new("unknowns-why"));
        let rows = worth.iter().map(|unknown| row(snapshot, &builder, unknown)).collect();
        builder.rows(&Phrase::new("unknowns-first"), rows);
    }
    let rest: Vec<_> =
        worked.unknowns.iter().filter(|unknown| !worth.iter().any(|first| first == unknown)).collect();
    let first = shown::page(snapshot, rest.len()) * shown::ROWS;
    let rows =
        rest.iter().skip(first).take(shown::ROWS).map(|unknown| row(snapshot, &builder, unknown)).collect();
    builder.rows(&Phrase::new("unknowns-rest"), rows);
    shown::turn(snapshot, &mut builder, rest.len());
    to_ask(snapshot, &mut builder);
    builder.press(&Key::Findings, &Phrase::new("to-findings"), PressWeight::Main);
    builder.press(&Key::Forecast, &Phrase::new("to-forecast"), PressWeight::Other);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// Where others have a say in the wiring: what to ask whoever looks after the building.
fn to_ask(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
    let building = snapshot.survey.building;
    let others = building.is_some_and(|building| building.shared || building.ownership == Ownership::Rented);
    if !others {
        return;
    }
    builder.words(WordsRole::Heading, &Phrase::new("to-ask"));
    let asked = ["to-ask-branch", "to-ask-filter", "to-ask-amplifier", "to-ask-leave"];
    let rows = asked.map(|id| builder.row(None, &Phrase::new(id), None, None)).into();
    builder.rows(&Phrase::new("to-ask-rows"), rows);
}

/// What is worth going back for and can be asked about, what is most at stake first.
pub(super) fn worth_going_back<'a>(
    snapshot: &SurveySnapshot<'a>,
    worked: &'a Worked,
) -> impl Iterator<Item = &'a Weighed> {
    let survey = snapshot.survey;
    let askable = move |weighed: &&Weighed| question_of(survey, &weighed.unknown).is_some();
    worked.unknowns.iter().filter(|weighed| weighed.is_worth_going_back()).filter(askable)
}

/// One unknown as a row that leads to its question.
pub(super) fn row(snapshot: &SurveySnapshot<'_>, builder: &ScreenBuilder<'_>, weighed: &Weighed) -> RowEntry {
    let survey = snapshot.survey;
    let unknown = &weighed.unknown;
    let key = question_of(survey, unknown).map(Key::Ask);
    let matters = match (weighed.worth(), weighed.stake) {
        _ if unknown.is_on_failed_way() => matters(survey, &unknown.matters),
        (Some(stake), _) => Phrase::new("worth-stake")
            .phrase("room", shown::outlet(survey, stake.outlet))
            .with("rate", Arg::Rate(stake.mbps)),
        (None, Some(_)) => Phrase::new("worth-little"),
        (None, None) => matters(survey, &unknown.matters),
    };
    builder.row(key, &unknown.place, Some(&unknown.what), Some(&matters)).marked(RowMark::NotKnown)
}

fn matters(survey: &Survey, matters: &Matters) -> Phrase {
    match matters {
        Matters::OnFailedWay(outlets) => Phrase::new("worth-failed").with("rooms", names(survey, outlets)),
        Matters::Weakest => Phrase::new("worth-weakest"),
        Matters::OnWayTo(outlets) => Phrase::new("worth-way").with("rooms", names(survey, outlets)),
        Matters::MayBeMissingLink => Phrase::new("worth-loose"),
        Matters::MayLeak => Phrase::new("worth-leak"),
        Matters::MayPass => Phrase::new("worth-pass"),
        Matters::Echo => Phrase::new("worth-echo"),
        Matters::Little => Phrase::new("worth-little"),
    }
}

fn names(survey: &Survey, outlets: &[SubjectId]) -> Arg {
    let names = outlets.iter().map(|outlet| Arg::Phrase(Box::new(naming::part(survey, *outlet))));
    Arg::Several(names.collect())
}

/// Whether a question is about a part or the run that feeds it.
pub(super) fn is_about(question: &Question, part: SubjectId, run: Option<SubjectId>) -> bool {
    match question {
        Question::Joined(id)
        | Question::GroundBlock(id)
        | Question::EntryFilter(id)
        | Question::Label(id)
        | Question::LabelRead(id)
        | Question::Legs(id)
        | Question::LeadsTo(id, _)
        | Question::Outputs(id)
        | Question::ByPass(id)
        | Question::Powered(id)
        | Question::Plugged(id)
        | Question::RoomOf(id)
        | Question::FedBy(id) => *id == part,
        Question::Cable(id) | Question::Marks(id) | Question::ConnectorsOf(id) => Some(*id) == run,
        _ => false,
    }
}

//! Place the adapters: where each goes and how it is joined, once the work on the cables is done.

use advice::adapters::{
    AdapterToCome, adapters_missing, adapters_needed, adapters_to_come, are_adapters_placed,
    are_adapters_to_place,
};
use advice::finding::Caution;
use advice::worklist::adapters_to_get;
use house::record::{Asked, NetworkPlan, Reply, Survey, field};
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, ResultPlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, shown};

/// What hands meet at an outlet.
const CAUTIONS: [Caution; 3] = [Caution::WhoDependsOnIt, Caution::SuppliesFirst, Caution::Thunderstorm];

/// Whether adapters are still to be placed.
pub(super) fn is_open(survey: &Survey) -> bool {
    are_adapters_to_place(survey)
}

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("placing"));
    let to_come = adapters_to_come(snapshot.survey);
    let placed = are_adapters_placed(snapshot.survey);
    let lead = match (to_come.is_empty(), placed) {
        (true, _) => "placing-none",
        (false, true) => "placing-done",
        (false, false) => "placing-lead",
    };
    builder.words(WordsRole::Lead, &Phrase::new(lead));
    if !to_come.is_empty() {
        builder.words(WordsRole::Why, &Phrase::new("placing-why"));
        for caution in CAUTIONS.into_iter().filter(|caution| caution.is_open_in(snapshot.survey)) {
            builder.caution(&caution.phrase());
        }
        builder.words(WordsRole::How, &Phrase::new("placing-how"));
    }
    if let Some(owned) = snapshot.survey.network.owned
        && adapters_missing(snapshot.survey) > 0
    {
        let said = Phrase::new("placing-missing").with("owned", Arg::Count(owned.into()));
        builder.words(WordsRole::Plain, &said.with("needed", Arg::Count(to_come.len() as u64)));
    }
    let needed = adapters_to_get(snapshot.survey);
    let rows = needed.iter().map(|part| builder.row(None, &telling::report::part_told(part), None, None));
    let rows = rows.take(shown::ROWS).collect();
    builder.rows(&Phrase::new("step-parts"), rows);
    let first = shown::page(snapshot, to_come.len()) * shown::ROWS;
    let page = to_come.iter().skip(first).take(shown::ROWS);
    let rows = page.map(|adapter| row(snapshot, &builder, adapter)).collect();
    builder.rows(&Phrase::new("placing-rows"), rows);
    shown::turn(snapshot, &mut builder, to_come.len());
    if is_open(snapshot.survey) {
        builder.press(&Key::Placed, &Phrase::new("placing-placed"), PressWeight::Main);
        builder.press(&Key::Private, &Phrase::new("placing-later"), PressWeight::Other);
    } else {
        builder.press(&Key::Private, &Phrase::new("to-private"), PressWeight::Main);
    }
    if placed {
        builder.press(&Key::NotPlaced, &Phrase::new("placing-not-placed"), PressWeight::Other);
    }
    builder.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Quiet);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

fn row(snapshot: &SurveySnapshot<'_>, builder: &ScreenBuilder<'_>, adapter: &AdapterToCome) -> RowEntry {
    let (says, remark) = (adapter.how(), adapter.sharing());
    let head = adapter.place(snapshot.survey);
    let key = adapter.outlet.map(Key::Part);
    builder.row(key, &head, Some(&says), remark.as_ref()).ticked(are_adapters_placed(snapshot.survey))
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    let open = session.open_survey()?;
    let told = match done {
        Done::Press(Key::Placed) if is_open(&open.survey) => Reply::Yes,
        Done::Press(Key::NotPlaced) => Reply::No,
        _ => return Ok(Move::Stay),
    };
    let mut edits = vec![Asked::AdaptersPlaced.set(open.survey.id, told)];
    // Who placed all that are needed has them by now.
    let needed = u32::try_from(adapters_needed(&open.survey).len()).unwrap_or(u32::MAX);
    let plan = &open.survey.network;
    if told == Reply::Yes && plan.owned.is_some_and(|owned| owned < needed) {
        edits.push(
            field::survey::NETWORK.set(open.survey.id, &NetworkPlan { owned: Some(needed), ..plan.clone() }),
        );
    }
    open.write(&edits)?;
    Ok(match told {
        Reply::Yes => Move::Go(Place::Result(ResultPlace::Private)),
        _ => Move::Stay,
    })
}

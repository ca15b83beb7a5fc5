//! Place the adapters: where each goes and how it is joined, once the work on the cables is done.

use advice::finding::Caution;
use advice::worklist::{AdapterToCome, adapters_to_come, adapters_to_get, are_adapters_placed};
use house::record::{Asked, Reply, Sharing, Survey};
use phrase::Phrase;

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
    !are_adapters_placed(survey) && !adapters_to_come(survey).is_empty()
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
        for caution in CAUTIONS {
            builder.caution(&caution.phrase());
        }
        builder.words(WordsRole::How, &Phrase::new("placing-how"));
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
    let says = Phrase::new(if adapter.at_router { "placing-at-router" } else { "placing-in-room" });
    let remark = adapter.shares.map(|sharing| {
        Phrase::new(match sharing {
            Sharing::ThroughPort => "placing-through-port",
            Sharing::Splitter => "placing-splitter",
        })
    });
    let head = adapter
        .outlet
        .map_or_else(|| Phrase::new("placing-router"), |outlet| shown::outlet(snapshot.survey, outlet));
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
    open.write(&[Asked::AdaptersPlaced.set(open.survey.id, told)])?;
    Ok(match told {
        Reply::Yes => Move::Go(Place::Result(ResultPlace::Private)),
        _ => Move::Stay,
    })
}

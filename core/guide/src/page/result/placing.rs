//! Place the adapters: where each goes and how it is joined, once the work on the cables is done.

use advice::finding::Caution;
use advice::worklist::{AdapterToCome, adapters_to_come, adapters_to_get, are_adapters_placed};
use facts::fact::Edit;
use house::record::asked::ADAPTERS_PLACED;
use house::record::{Sharing, Survey, field};
use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, ResultPlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Scene, Session};
use crate::view::{Sketch, shown};

/// What hands meet at an outlet.
const CAUTIONS: [Caution; 3] = [Caution::WhoDependsOnIt, Caution::SuppliesFirst, Caution::Thunderstorm];

/// Whether adapters are still to be placed.
pub(super) fn is_open(survey: &Survey) -> bool {
    !are_adapters_placed(survey) && !adapters_to_come(survey).is_empty()
}

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("placing"));
    let to_come = adapters_to_come(scene.survey);
    let placed = are_adapters_placed(scene.survey);
    let lead = match (to_come.is_empty(), placed) {
        (true, _) => "placing-none",
        (false, true) => "placing-done",
        (false, false) => "placing-lead",
    };
    sketch.words(WordsRole::Lead, &Phrase::new(lead));
    if !to_come.is_empty() {
        sketch.words(WordsRole::Why, &Phrase::new("placing-why"));
        for caution in CAUTIONS {
            sketch.caution(&caution.phrase());
        }
        sketch.words(WordsRole::How, &Phrase::new("placing-how"));
    }
    let needed = adapters_to_get(scene.survey);
    let rows = needed.iter().map(|part| sketch.row(None, &telling::report::part_told(part), None, None));
    let rows = rows.take(shown::ROWS).collect();
    sketch.rows(&Phrase::new("step-parts"), rows);
    let first = shown::page(scene, to_come.len()) * shown::ROWS;
    let page = to_come.iter().skip(first).take(shown::ROWS);
    let rows = page.map(|adapter| row(scene, &sketch, adapter)).collect();
    sketch.rows(&Phrase::new("placing-rows"), rows);
    shown::turn(scene, &mut sketch, to_come.len());
    if is_open(scene.survey) {
        sketch.press(&Key::Placed, &Phrase::new("placing-placed"), PressWeight::Main);
        sketch.press(&Key::Private, &Phrase::new("placing-later"), PressWeight::Other);
    } else {
        sketch.press(&Key::Private, &Phrase::new("to-private"), PressWeight::Main);
    }
    if placed {
        sketch.press(&Key::NotPlaced, &Phrase::new("placing-not-placed"), PressWeight::Other);
    }
    sketch.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Quiet);
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

fn row(scene: &Scene<'_>, sketch: &Sketch<'_>, adapter: &AdapterToCome) -> RowEntry {
    let says = Phrase::new(if adapter.at_router { "placing-at-router" } else { "placing-in-room" });
    let remark = adapter.shares.map(|sharing| {
        Phrase::new(match sharing {
            Sharing::ThroughPort => "placing-through-port",
            Sharing::Splitter => "placing-splitter",
        })
    });
    let head = adapter
        .outlet
        .map_or_else(|| Phrase::new("placing-router"), |outlet| shown::outlet(scene.survey, outlet));
    let key = adapter.outlet.map(Key::Part);
    sketch.row(key, &head, Some(&says), remark.as_ref()).ticked(are_adapters_placed(scene.survey))
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    let open = session.open_survey()?;
    let told = match done {
        Done::Press(Key::Placed) if is_open(&open.survey) => "yes",
        Done::Press(Key::NotPlaced) => "no",
        _ => return Ok(Move::Stay),
    };
    open.write(&[Edit::new(open.survey.id, field::asked_field(ADAPTERS_PLACED), told)])?;
    Ok(match told {
        "yes" => Move::Go(Place::Result(ResultPlace::Private)),
        _ => Move::Stay,
    })
}

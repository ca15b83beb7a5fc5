//! The wiring map and the loss over frequency.

use survey::figure::map::reading_order;
use survey::figure::{loss_plot, wiring_map};
use survey::naming;
use survey::words::Phrase;

use super::waiting;
use crate::place::key_of;
use crate::screen::{Block, FigureBlock, PressWeight, Screen, WordsRole};
use crate::session::{Scene, Worked};
use crate::view::{Sketch, shown};

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("map"));
    let survey = scene.survey;
    // The map of what was found needs no forecast.
    let forecast = scene.worked().map(Worked::forecast);
    let key = |part| key_of("part", part);
    sketch.words(WordsRole::How, &Phrase::new("map-how"));
    let map = wiring_map(survey, forecast, scene.language);
    sketch.block(Block::Figure(FigureBlock::of(&map, scene.language, key)));
    if let Some(worked) = waiting::worked(scene, &mut sketch) {
        if let Some(plot) = loss_plot(survey, worked.forecast(), scene.language) {
            sketch.words(WordsRole::How, &Phrase::new("report-plot-how"));
            sketch.block(Block::Figure(FigureBlock::of(&plot, scene.language, key)));
        }
        sketch.press("forecast", &Phrase::new("to-forecast"), PressWeight::Main);
        sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    }
    let order = reading_order(survey);
    let first = shown::page(scene, order.len()) * shown::ROWS;
    let rows = order
        .iter()
        .skip(first)
        .take(shown::ROWS)
        .map(|part| sketch.row(Some(key_of("part", *part)), &naming::part(survey, *part), None, None))
        .collect();
    sketch.rows(&Phrase::new("map-parts"), rows);
    shown::turn(scene, &mut sketch, order.len());
    sketch.screen
}

//! The wiring map and the loss over frequency.

use house::naming;
use house::record::reading_order;
use phrase::Phrase;
use telling::figure::{Figure, loss_plot, wiring_map};

use super::waiting;
use crate::place::Key;
use crate::screen::{FigureDrawn, PressWeight, Screen, WordsRole};
use crate::session::{Scene, Worked};
use crate::view::{Sketch, shown};

/// The map of what was found, which needs no forecast.
fn map(scene: &Scene<'_>) -> Figure {
    wiring_map(scene.survey, scene.worked().map(Worked::forecast), scene.language)
}

/// The loss over frequency, once it is worked out.
fn plot(scene: &Scene<'_>) -> Option<Figure> {
    loss_plot(scene.survey, scene.worked()?.forecast(), scene.language)
}

fn drawn(figure: &Figure) -> FigureDrawn {
    FigureDrawn::of(figure, |part| Key::Part(part).to_string())
}

/// Both, as a shell draws them.
pub(crate) fn figures(scene: &Scene<'_>) -> Vec<FigureDrawn> {
    std::iter::once(map(scene)).chain(plot(scene)).map(|figure| drawn(&figure)).collect()
}

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("map"));
    let survey = scene.survey;
    sketch.words(WordsRole::How, &Phrase::new("map-how"));
    let map = map(scene);
    sketch.figure(&map, &drawn(&map));
    if waiting::worked(scene, &mut sketch).is_some() {
        if let Some(plot) = plot(scene) {
            sketch.words(WordsRole::How, &Phrase::new("report-plot-how"));
            sketch.figure(&plot, &drawn(&plot));
        }
        sketch.press(&Key::Forecast, &Phrase::new("to-forecast"), PressWeight::Main);
        sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    }
    let order = reading_order(survey);
    let first = shown::page(scene, order.len()) * shown::ROWS;
    let rows = order
        .iter()
        .skip(first)
        .take(shown::ROWS)
        .map(|part| sketch.row(Some(Key::Part(*part)), &naming::part(survey, *part), None, None))
        .collect();
    sketch.rows(&Phrase::new("map-parts"), rows);
    shown::turn(scene, &mut sketch, order.len());
    sketch.screen
}

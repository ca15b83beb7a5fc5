//! The wiring map and the loss over frequency.

use house::naming;
use house::record::reading_order;
use phrase::Phrase;
use telling::figure::{Figure, loss_plot, wiring_map};

use super::waiting;
use crate::place::Key;
use crate::screen::{FigureDrawn, PressWeight, Screen, WordsRole};
use crate::session::{SurveySnapshot, Worked};
use crate::view::{ScreenBuilder, shown};

/// The map of what was found, which needs no forecast.
fn map(snapshot: &SurveySnapshot<'_>) -> Figure {
    wiring_map(snapshot.survey, snapshot.worked().map(Worked::forecast), snapshot.language)
}

/// The loss over frequency, once it is worked out.
fn plot(snapshot: &SurveySnapshot<'_>) -> Option<Figure> {
    loss_plot(snapshot.survey, snapshot.worked()?.forecast(), snapshot.language)
}

fn drawn(figure: &Figure) -> FigureDrawn {
    FigureDrawn::of(figure, |part| Key::Part(part).to_string())
}

/// Both, as a shell draws them.
pub(crate) fn figures(snapshot: &SurveySnapshot<'_>) -> Vec<FigureDrawn> {
    std::iter::once(map(snapshot)).chain(plot(snapshot)).map(|figure| drawn(&figure)).collect()
}

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("map"));
    let survey = snapshot.survey;
    builder.words(WordsRole::How, &Phrase::new("map-how"));
    let map = map(snapshot);
    builder.figure(&map, &drawn(&map));
    if waiting::worked(snapshot, &mut builder).is_some() {
        if let Some(plot) = plot(snapshot) {
            builder.words(WordsRole::How, &Phrase::new("report-plot-how"));
            builder.figure(&plot, &drawn(&plot));
        }
        builder.press(&Key::Forecast, &Phrase::new("to-forecast"), PressWeight::Main);
        builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    }
    let order = reading_order(survey);
    let first = shown::page(snapshot, order.len()) * shown::ROWS;
    let rows = order
        .iter()
        .skip(first)
        .take(shown::ROWS)
        .map(|part| builder.row(Some(Key::Part(*part)), &naming::part(survey, *part), None, None))
        .collect();
    builder.rows(&Phrase::new("map-parts"), rows);
    shown::turn(snapshot, &mut builder, order.len());
    builder.screen
}

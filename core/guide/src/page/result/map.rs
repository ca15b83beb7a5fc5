//! The wiring map, as it is and after the work, and the loss over frequency.

use std::collections::BTreeSet;

use facts::fact::SubjectId;
use house::naming;
use house::record::reading_order;
use phrase::Phrase;
use telling::figure::map::{COLUMN, NARROW, PAGE};
use telling::figure::{Figure, Folding, Layout, ShownMap, Touch, WiringMap, loss_plot_in};

use super::waiting;
use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move};
use crate::screen::{FigureDrawn, PressWeight, Screen, WordsRole};
use crate::session::{Pending, Session, SurveySnapshot, Worked};
use crate::view::{ScreenBuilder, picture, shown};

/// The layouts of the map, the narrowest first, and what each is called among the drawings.
const LAYOUTS: [(&str, Layout); 3] =
    [("map-narrow", Layout::Narrow), ("map-column", Layout::Wide(COLUMN)), ("map", Layout::Wide(PAGE))];

/// What the map is folded to: all but what was unfolded on the screen.
fn folding(pending: &Pending) -> Folding {
    match pending.written(&Key::Unfolded) {
        Some("all") => Folding::Nothing,
        unfolded => Folding::But(unfolded.map(parts).unwrap_or_default()),
    }
}

fn parts(text: &str) -> BTreeSet<SubjectId> {
    text.split(' ').filter_map(|part| part.parse().ok()).collect()
}

/// Whether the house after the work is shown. It is, once there is a work list.
fn shows_after(snapshot: &SurveySnapshot<'_>) -> bool {
    snapshot.pending().written(&Key::MapAfter).is_some_and(|shown| !shown.is_empty())
        && can_show_after(snapshot)
}

fn can_show_after(snapshot: &SurveySnapshot<'_>) -> bool {
    snapshot.worked().is_some_and(|worked| !worked.list.steps.is_empty())
}

/// The map, which needs no forecast to show what was found.
fn map<'a>(snapshot: &SurveySnapshot<'a>) -> WiringMap<'a> {
    let map = match snapshot.worked() {
        Some(worked) if shows_after(snapshot) => WiringMap::after(&worked.list),
        Some(worked) => {
            let map = WiringMap::of(snapshot.survey).with_forecast(Some(worked.forecast()));
            map.with_findings(&worked.findings)
        }
        None => WiringMap::of(snapshot.survey),
    };
    map.folded(folding(snapshot.pending()))
}

/// The map in each layout, drawn once from a snapshot.
fn maps<'s>(snapshot: &'s SurveySnapshot<'_>, map: &ShownMap<'_>) -> &'s [(Figure, FigureDrawn)] {
    snapshot.maps.get_or_init(|| drawn(snapshot, map))
}

fn drawn(snapshot: &SurveySnapshot<'_>, map: &ShownMap<'_>) -> Vec<(Figure, FigureDrawn)> {
    LAYOUTS.into_iter().map(|(name, layout)| map_drawn(snapshot, map, name, layout)).collect()
}

fn map_drawn(
    snapshot: &SurveySnapshot<'_>,
    map: &ShownMap<'_>,
    name: &str,
    layout: Layout,
) -> (Figure, FigureDrawn) {
    let to_unfold = snapshot.language.say(&Phrase::new("map-to-unfold"));
    let mut figure = map.figure(layout);
    for mark in &mut figure.marks {
        if let (Some(Touch::Unfold(_)), Some(about)) = (mark.touch, &mut mark.about) {
            *about = format!("{about}\n{to_unfold}");
        }
    }
    let drawn = FigureDrawn::of(&figure, name, |touch| picture::key_of(snapshot.survey, touch));
    (figure, drawn)
}

/// The widths of the plot, the narrowest first, and what each is called among the drawings.
const WIDTHS: [(&str, f64); 2] = [("plot-narrow", NARROW), ("plot", COLUMN)];

/// The loss over frequency in each width, once it is worked out.
fn plots(snapshot: &SurveySnapshot<'_>) -> Vec<(Figure, FigureDrawn)> {
    WIDTHS.into_iter().filter_map(|(name, width)| plot_drawn(snapshot, name, width)).collect()
}

fn plot_drawn(snapshot: &SurveySnapshot<'_>, name: &str, width: f64) -> Option<(Figure, FigureDrawn)> {
    let forecast = snapshot.worked().map(Worked::forecast)?;
    let figure = loss_plot_in(snapshot.survey, forecast, width, snapshot.language)?;
    let drawn = FigureDrawn::of(&figure, name, |_| None);
    Some((figure, drawn))
}

/// All of them, as a shell draws them.
pub(crate) fn figures(snapshot: &SurveySnapshot<'_>) -> Vec<FigureDrawn> {
    let map = map(snapshot).shown(snapshot.language);
    let maps = maps(snapshot, &map).iter().map(|(_, drawn)| drawn.clone());
    maps.chain(plots(snapshot).into_iter().map(|(_, drawn)| drawn)).collect()
}

/// One of them, by its name; no other is drawn.
pub(crate) fn figure(snapshot: &SurveySnapshot<'_>, name: &str) -> Option<FigureDrawn> {
    if let Some((name, layout)) = LAYOUTS.into_iter().find(|(layout, _)| *layout == name) {
        let map = map(snapshot).shown(snapshot.language);
        return Some(map_drawn(snapshot, &map, name, layout).1);
    }
    let (name, width) = WIDTHS.into_iter().find(|(width, _)| *width == name)?;
    plot_drawn(snapshot, name, width).map(|(_, drawn)| drawn)
}

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("map"));
    let survey = snapshot.survey;
    let after = shows_after(snapshot);
    builder.words(WordsRole::Lead, &lead(snapshot, after));
    let how = Phrase::new("map-how");
    builder.words(WordsRole::How, &if after { how.attribute("after") } else { how });
    let map = map(snapshot).shown(snapshot.language);
    let maps = maps(snapshot, &map);
    // Of a house in which nothing was found there is nothing to draw.
    if let Some((figure, _)) = maps.last().filter(|(figure, _)| !figure.marks.is_empty()) {
        let layouts: Vec<_> = maps.iter().map(|(_, drawn)| drawn).collect();
        builder.figure_laid_out(figure, &layouts, map.lines());
    }
    if map.is_folded() {
        builder.press(&Key::UnfoldAll, &Phrase::new("map-unfold-all"), PressWeight::Other);
    }
    if folding(snapshot.pending()) != Folding::But(BTreeSet::new()) {
        builder.press(&Key::FoldAgain, &Phrase::new("map-fold-again"), PressWeight::Other);
    }
    if after {
        builder.press(&Key::MapNow, &Phrase::new("map-now"), PressWeight::Other);
    } else if can_show_after(snapshot) {
        builder.press(&Key::MapAfter, &Phrase::new("map-after"), PressWeight::Other);
    }
    if waiting::worked(snapshot, &mut builder).is_some() {
        let plots = plots(snapshot);
        if let Some((plot, _)) = plots.last().filter(|_| !after) {
            builder.words(WordsRole::How, &Phrase::new("report-plot-how"));
            let layouts: Vec<_> = plots.iter().map(|(_, drawn)| drawn).collect();
            builder.figure_laid_out(plot, &layouts, Vec::new());
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

/// What the map shows first of all.
fn lead(snapshot: &SurveySnapshot<'_>, after: bool) -> Phrase {
    if after {
        return Phrase::new("map-lead-after");
    }
    let forecast = snapshot.worked().map(Worked::forecast);
    let weakest = forecast.and_then(|forecast| forecast.weakest_first().first().map(|(room, _)| room.outlet));
    match weakest {
        Some(outlet) => Phrase::new("map-lead").phrase("outlet", shown::outlet(snapshot.survey, outlet)),
        None => Phrase::new("map-lead-found"),
    }
}

/// Folds, unfolds, and turns between now and after the work.
pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    let Done::Press(key) = done else { return Ok(Move::Stay) };
    let pending = &mut session.open_survey()?.memory.pending;
    match key {
        Key::Unfold(part) => {
            let mut unfolded = pending.written(&Key::Unfolded).map(parts).unwrap_or_default();
            unfolded.insert(*part);
            let unfolded: Vec<_> = unfolded.iter().map(ToString::to_string).collect();
            pending.write(&Key::Unfolded, unfolded.join(" "));
        }
        Key::UnfoldAll => pending.write(&Key::Unfolded, "all"),
        Key::FoldAgain => pending.write(&Key::Unfolded, ""),
        Key::MapAfter => pending.write(&Key::MapAfter, "shown"),
        Key::MapNow => pending.write(&Key::MapAfter, ""),
        _ => {}
    }
    Ok(Move::Stay)
}

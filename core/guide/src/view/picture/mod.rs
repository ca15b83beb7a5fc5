//! Our own drawings of what to look for, as marks: one file each, drawn from the geometry of the trade's parts.

mod adapter;
mod entry_filter;
mod ground_block;
mod jacket;
mod marks_on_jacket;
mod outputs;
mod paper;
mod plugs;
mod router_ports;
mod splitter_print;

use facts::fact::SubjectId;
use house::record::{PartKind, Survey};
use telling::figure::{Figure, Touch};
use telling::words::Language;

use crate::place::{Key, Question};
use crate::screen::FigureDrawn;
use crate::session::SurveySnapshot;

/// One drawing.
type Draw = fn(&Language) -> Figure;

/// The key that a touch on a drawing of a house presses; none for a part that is not in the survey.
pub(crate) fn key_of(survey: &Survey, touch: Touch) -> Option<Key> {
    match touch {
        Touch::Part(part) => survey.parts.contains_key(&part).then_some(Key::Part(part)),
        Touch::Unfold(part) => Some(Key::Unfold(part)),
    }
}

/// The drawings that go with a question, as the core has them and as a shell draws them.
pub(crate) fn of(question: &Question, snapshot: &SurveySnapshot<'_>) -> Vec<(Figure, FigureDrawn)> {
    let draw = |draw: &Draw| {
        let figure = draw(snapshot.language);
        let drawn = as_drawn(&figure, snapshot);
        (figure, drawn)
    };
    drawings(question, snapshot).iter().map(draw).collect()
}

/// One of them, by its name.
pub(crate) fn named(question: &Question, snapshot: &SurveySnapshot<'_>, name: &str) -> Option<FigureDrawn> {
    let drawings = drawings(question, snapshot).iter();
    let figure = drawings.map(|draw| draw(snapshot.language)).find(|figure| figure.name.id == name)?;
    Some(as_drawn(&figure, snapshot))
}

fn as_drawn(figure: &Figure, snapshot: &SurveySnapshot<'_>) -> FigureDrawn {
    FigureDrawn::of(figure, figure.name.id.clone(), |touch| key_of(snapshot.survey, touch))
}

fn drawings(question: &Question, snapshot: &SurveySnapshot<'_>) -> &'static [Draw] {
    let kind = |part: &SubjectId| snapshot.survey.parts.get(part).map(|part| part.kind);
    match question {
        Question::GroundBlock(_) => &[ground_block::draw],
        Question::EntryFilter(_) => &[entry_filter::draw],
        Question::Label(part) => match kind(part) {
            Some(PartKind::EntryFilter) => &[entry_filter::draw],
            Some(PartKind::Splitter | PartKind::Tap) => &[splitter_print::draw],
            _ => &[],
        },
        Question::Legs(_) => &[outputs::draw],
        Question::LeadsTo(part, _) | Question::Outputs(part) if kind(part) == Some(PartKind::Splitter) => {
            &[outputs::draw]
        }
        Question::Cable(_) => &[jacket::draw],
        Question::Marks(_) => &[marks_on_jacket::draw],
        Question::Connectors | Question::ConnectorsOf(_) => &[plugs::draw],
        Question::RouterAt => &[router_ports::draw, adapter::draw],
        Question::Adapters => &[adapter::draw],
        _ => &[],
    }
}

#[cfg(test)]
mod tests {
    use telling::figure::{Shape, svg, text_width};
    use telling::words::Figures;

    use super::*;

    const ALL: [Draw; 9] = [
        adapter::draw,
        entry_filter::draw,
        ground_block::draw,
        jacket::draw,
        marks_on_jacket::draw,
        outputs::draw,
        plugs::draw,
        router_ports::draw,
        splitter_print::draw,
    ];

    fn languages() -> [Language; 3] {
        let figures = Figures::default();
        [crate::english(figures), crate::lengthened(figures), crate::right_to_left(figures)]
    }

    #[test]
    fn every_mark_and_every_word_stands_within_the_box() {
        for language in languages() {
            for draw in ALL {
                let figure = draw(&language);
                let bottom = 1.0 / figure.aspect;
                let within = |x: f64, y: f64| {
                    assert!(
                        (0.0..=1.0).contains(&x) && (0.0..=bottom).contains(&y),
                        "{:?}: {x} {y}",
                        figure.name
                    );
                };
                for mark in &figure.marks {
                    match &mark.shape {
                        Shape::Line { from, to } => [from, to].iter().for_each(|p| within(p.x, p.y)),
                        Shape::Polyline { points, .. } => points.iter().for_each(|p| within(p.x, p.y)),
                        Shape::Rect { corner, width, height, .. } => {
                            within(corner.x, corner.y);
                            within(corner.x + width, corner.y + height);
                        }
                        Shape::Text { at, text, size, anchor, strong, even: _ } => {
                            let width =
                                text_width(text, size * figure.natural_width, *strong) / figure.natural_width;
                            let left = match anchor {
                                telling::figure::Anchor::Start => at.x,
                                telling::figure::Anchor::Middle => at.x - width / 2.0,
                                telling::figure::Anchor::End => at.x - width,
                            };
                            within(left, at.y - size);
                            within(left + width, at.y);
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn every_drawing_has_a_name_and_says_what_it_shows() {
        for (language, draw) in languages().iter().flat_map(|language| ALL.map(|draw| (language, draw))) {
            let figure = draw(language);
            for phrase in [&figure.name, &figure.description] {
                assert!(language.knows(&phrase.id), "{}", phrase.id);
            }
            assert!(figure.marks.len() < 100, "{} has too many marks", figure.name.id);
            let picture = svg(&figure, "drawing", language);
            assert!(!picture.contains("picture-"), "{picture}");
            // To look at them: DRAWINGS=some/folder cargo test -p guide picture
            if let Ok(folder) = std::env::var("DRAWINGS") {
                let file = format!("{folder}/{}.{}.svg", figure.name.id, language.locale());
                std::fs::write(file, picture).unwrap();
            }
        }
    }
}

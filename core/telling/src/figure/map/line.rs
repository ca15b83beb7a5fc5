//! The line of a cable: its series, its state.

use super::node::Cable;
use crate::figure::mark::{Dash, Ink, Pen, Weight};
use crate::figure::sheet::{Sheet, pen};

/// The trunk of a fork: part of the splitter, no cable.
pub(super) const TRUNK: Pen = pen(Weight::Plain, Dash::Solid);
/// What is loose: in wide strokes, to an open ring.
pub(super) const LOOSE: Pen = pen(Weight::Plain, Dash::Dashed);

/// The line of a cable.
pub(super) const fn of(cable: Cable) -> Pen {
    match cable {
        Cable::Six => pen(Weight::Cable, Dash::Solid),
        Cable::Stout => pen(Weight::Thick, Dash::Solid),
        Cable::Thin => pen(Weight::Thin, Dash::Struck),
        Cable::Unknown => pen(Weight::Cable, Dash::Dotted),
        Cable::Provider => pen(Weight::Thin, Dash::Double),
        Cable::New => pen(Weight::Cable, Dash::Long),
    }
}

/// Draws a cable from its feeder's middle to its part's.
pub(super) fn put(sheet: &mut Sheet, from: (f64, f64), to: (f64, f64), cable: Cable) {
    sheet.dip(Ink::Cable);
    sheet.line(from, to, of(cable));
}

#[cfg(test)]
mod tests {
    use look::Tokens;
    use phrase::Phrase;

    use super::*;
    use crate::figure::{Shape, pieces, svg};
    use crate::words::Language;

    /// Width and dash of each cable are those of the look (`look/tokens.toml`), which the page takes from there too.
    #[test]
    fn cables_are_drawn_as_the_look_says() {
        let tokens = Tokens::of_project().unwrap();
        let english = Language::english(crate::words::Figures::default());
        let lines = [
            ("six", of(Cable::Six)),
            ("seven_eleven", of(Cable::Stout)),
            ("thin", of(Cable::Thin)),
            ("unknown", of(Cable::Unknown)),
            ("provider", of(Cable::Provider)),
            ("loose", LOOSE),
            ("new", of(Cable::New)),
        ];
        assert_eq!(lines.len(), tokens.cable.len());
        for (name, line) in lines {
            let cable = &tokens.cable[name];
            let mut sheet = Sheet::default();
            sheet.line((0.0, 9.0), (90.0, 9.0), line);
            let figure = sheet.figure((100.0, 20.0), Phrase::new("map-name"), Phrase::new("map-name"));
            let drawn = svg(&figure, "x", &english);
            assert!(drawn.contains(&format!("stroke-width=\"{}\"", cable.width)), "{name}: {drawn}");
            let dash = format!("stroke-dasharray=\"{}\"", cable.dashes());
            assert_eq!(drawn.contains("stroke-dasharray"), !cable.dash.is_empty(), "{name}: {drawn}");
            assert!(cable.dash.is_empty() || drawn.contains(&dash), "{name}: {drawn}");
            let has_more = figure.marks.iter().any(|mark| match &mark.shape {
                Shape::Line { from, to } => !pieces(&[*from, *to], mark.pen.dash).is_empty(),
                _ => false,
            });
            assert_eq!(has_more, matches!(name, "thin" | "provider"), "{name}");
        }
    }
}

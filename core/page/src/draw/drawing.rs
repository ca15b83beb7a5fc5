//! Drawings as SVG, in the inks of the page.

use std::fmt::Write;

use guide::screen::{
    FigureBlock, FigureDrawn, FigureMark, MarkAnchor, MarkDash, MarkFill, MarkInk, MarkShape, MarkWeight,
    Spot,
};
use maud::{Markup, PreEscaped, html};
use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, utf8_percent_encode};

use super::{Drawn, element};

/// Widths at which another layout of a drawing may be shown, CSS pixels; `page.css` knows the same.
const STEPS: [u32; 6] = [440, 560, 660, 840, 1000, 1080];

/// A drawing with its caption: in the one layout that fits, where it is known how wide it is shown, else in every one that it
/// has, and the widest that fits is shown. What can be touched in it is a link.
pub(super) fn figure(drawn: &Drawn<'_>, block: &FigureBlock) -> Markup {
    let names = block.narrower.iter().map(|layout| &layout.figure).chain([&block.figure]);
    let layouts: Vec<_> = names.filter_map(|name| drawn.figures.get(name)).collect();
    // The narrowest is for whatever is narrower still.
    let steps: Vec<_> = layouts
        .iter()
        .enumerate()
        .map(|(place, figure)| if place == 0 { 0 } else { step_of(figure.natural_width) })
        .collect();
    let fits = drawn.shown_wide.map(|wide| steps.partition_point(|step| *step <= wide).saturating_sub(1));
    let Some(widest) = layouts.last() else { return html! {} };
    html! {
        figure.figure id=(element(&block.id)) {
            div.pane data-drawing data-steps=(steps.iter().map(u32::to_string).collect::<Vec<_>>().join(" ")) {
                @for (place, figure) in layouts.iter().enumerate() {
                    @if fits.is_none_or(|fits| fits == place) {
                        @let known = fits.is_some();
                        @let from = steps.get(place).filter(|step| !known && **step > 0).map(|step| format!("from-{step}"));
                        @let to = steps.get(place + 1).filter(|_| !known).map(|step| format!("to-{step}"));
                        div.layout.(from.unwrap_or_default()).(to.unwrap_or_default()) data-step=[steps.get(place)] {
                            (svg(figure, block, drawn.ticket))
                        }
                    }
                }
            }
            figcaption {
                (block.description) " "
                a href={ "/drawing/" (widest.figure) } target="_blank" {
                    (drawn.word("page-all-of-it")) span.hide { ": " (block.name) }
                }
            }
        }
    }
}

/// The least step at which a drawing of this width is not made smaller by much.
fn step_of(width: f64) -> u32 {
    STEPS.into_iter().find(|step| f64::from(*step) >= width * 0.94).unwrap_or(1080)
}

/// The drawing alone.
pub(super) fn svg(figure: &FigureDrawn, block: &FigureBlock, ticket: &str) -> Markup {
    let (width, height) = (figure.natural_width, figure.natural_width / figure.aspect.max(1e-6));
    let touched = figure.marks.iter().any(|mark| mark.key.is_some());
    let mut out = String::new();
    for mark in &figure.marks {
        put(&mut out, mark, width, ticket);
    }
    html! {
        svg.drawing viewBox=(format!("0 0 {} {}", round(width), round(height))) width=(round(width))
            height=(round(height)) role=(if touched { "group" } else { "img" }) aria-label=(block.name) {
            (PreEscaped(out))
        }
    }
}

fn put(out: &mut String, mark: &FigureMark, width: f64, ticket: &str) {
    let name = escaped(&mark.aloud.label);
    let value = mark.aloud.value.lines().collect::<Vec<_>>().join("; ");
    let linked = mark.key.as_ref().filter(|_| !ticket.is_empty());
    if let Some(key) = linked {
        // Only one mark of each part is a stop for the keyboard and for a screen reader.
        let stop = if mark.repeats || name.is_empty() {
            " tabindex=\"-1\" aria-hidden=\"true\"".to_owned()
        } else {
            let said = if value.is_empty() { name.clone() } else { format!("{name}: {}", escaped(&value)) };
            format!(" aria-label=\"{said}\"")
        };
        let way = format!("/go/{ticket}/{}", utf8_percent_encode(key, PLAIN));
        let _ = write!(out, "<a href=\"{way}\"{stop}>");
    }
    shape(out, mark, width);
    if linked.is_some() {
        out.push_str("</a>");
    }
}

fn shape(out: &mut String, mark: &FigureMark, width: f64) {
    let class = classes(mark);
    let at = |spot: &Spot| [round(spot.x * width), round(spot.y * width)];
    let (way, closed) = match &mark.shape {
        MarkShape::Stroke { from, to } => (vec![*from, *to], false),
        MarkShape::Path { spots, closed } => (spots.clone(), *closed),
        MarkShape::Strokes { lines } => {
            let _ = write!(out, "<path class=\"{class}\" d=\"");
            for line in lines {
                let ([from, down], [to, end]) = (at(&line.from), at(&line.to));
                let _ = write!(out, "M{from} {down}L{to} {end}");
            }
            out.push_str("\"/>");
            return;
        }
        MarkShape::Frame { corner, width: wide, height, round: radius } => {
            let [x, y] = at(corner);
            let [wide, height, radius] = [wide * width, height * width, radius * width].map(round);
            let _ = write!(
                out,
                "<rect class=\"{class}\" x=\"{x}\" y=\"{y}\" width=\"{wide}\" height=\"{height}\" rx=\"{radius}\"/>"
            );
            return;
        }
        MarkShape::Lettering { at: place, words, size, anchor, strong, even } => {
            let [x, y] = at(place);
            let anchor = match anchor {
                MarkAnchor::Start => "start",
                MarkAnchor::Middle => "middle",
                MarkAnchor::End => "end",
            };
            let even = if *even { " even" } else { "" };
            let strong = if *strong { " font-weight=\"600\"" } else { "" };
            let _ = write!(
                out,
                "<text class=\"{class}{even}\" x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{anchor}\"{strong}>{}</text>",
                x,
                y,
                round(size * width),
                escaped(words)
            );
            return;
        }
    };
    let mut line = String::new();
    for (place, spot) in way.iter().enumerate() {
        let sign = if place == 0 { 'M' } else { 'L' };
        let [x, y] = at(spot);
        let _ = write!(line, "{sign}{x} {y}");
    }
    if closed {
        line.push('Z');
    }
    let _ = write!(out, "<path class=\"{class}\" d=\"{line}\"/>");
}

fn classes(mark: &FigureMark) -> String {
    let ink = match mark.ink {
        MarkInk::Text => "ink-text",
        MarkInk::Quiet => "ink-quiet",
        MarkInk::Accent => "ink-accent",
        MarkInk::Cable => "ink-cable",
        MarkInk::Weak => "ink-weak",
        MarkInk::Measured => "ink-measured",
        MarkInk::Warning => "ink-warning",
        MarkInk::Pencil => "ink-pencil",
    };
    let weight = match mark.weight {
        MarkWeight::Absent => "",
        MarkWeight::Thin => " line-thin",
        MarkWeight::Plain => " line-plain",
        MarkWeight::Cable => " line-cable",
        MarkWeight::Thick => " line-thick",
    };
    let dash = match mark.dash {
        MarkDash::Solid => "",
        MarkDash::Dashed => " dashed",
        MarkDash::Dotted => " dotted",
        MarkDash::Long => " long",
    };
    let fill = match mark.fill {
        MarkFill::Absent => "",
        MarkFill::Faint => " fill-faint",
        MarkFill::Medium => " fill-medium",
        MarkFill::Solid => " fill-solid",
        MarkFill::Ground => " fill-ground",
    };
    format!("{ink}{weight}{dash}{fill}")
}

/// A length with at most two decimals.
fn round(length: f64) -> f64 {
    (length * 100.0).round() / 100.0 + 0.0
}

fn escaped(text: &str) -> String {
    html! { (text) }.into_string()
}

/// What of a key stands in an address as it is: letters, digits, `-`, `.`, `_` and `~` (RFC 3986, 2.3).
const PLAIN: &AsciiSet = &NON_ALPHANUMERIC.remove(b'-').remove(b'.').remove(b'_').remove(b'~');

#[cfg(test)]
mod tests {
    use super::*;

    /// A layout is shown from its own step on, and up to the step of the next one: so says the style for each of them.
    #[test]
    fn the_style_knows_the_same_steps() {
        let style = include_str!("../../assets/page.css");
        for step in STEPS {
            let rule = format!(
                ".from-{step} {{ display: none; }} @container (min-width: {step}px) {{ .from-{step} {{ display: block; }} \
                 .to-{step} {{ display: none; }} }}"
            );
            assert!(style.contains(&rule), "{rule}");
        }
        assert_eq!(style.matches("{ .from-").count(), STEPS.len());
        assert!(STEPS.is_sorted());
    }
}

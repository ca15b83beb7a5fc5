//! A figure as SVG: text, lines and areas, nothing from outside. Every mark has the class `ink-<role>` and the ink of the
//! page around it; a page that has inks of its own gives that class a `color`, and `ground` the `fill` of what it lies on.

use std::fmt::Write;

use super::mark::{Anchor, Dash, Figure, Fill, Mark, Pen, Point, Shape, Touch, Weight};
use super::measure::legible;
use super::sheet::scaled;
use super::strokes::pieces;
use crate::words::Language;

/// The figure as one `<svg>` element, well-formed as XML and as HTML. `id` must be a plain name that no other figure
/// on the page has.
pub fn svg(figure: &Figure, id: &str, language: &Language) -> String {
    let (width, height) = (figure.natural_width, figure.natural_width / figure.aspect.max(1e-6));
    let id = escaped(id);
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {w} {h}\" width=\"{w}\" height=\"{h}\" role=\"img\" direction=\"ltr\" \
         aria-labelledby=\"{id}-name {id}-description\" fill=\"none\" stroke=\"none\">\n",
        w = number(width),
        h = number(height),
    );
    put(&mut out, format_args!("<title id=\"{id}-name\">{}</title>\n", escaped(&language.say(&figure.name))));
    put(
        &mut out,
        format_args!(
            "<desc id=\"{id}-description\">{}</desc>\n",
            escaped(&language.say(&figure.description))
        ),
    );
    for mark in &figure.marks {
        put_mark(&mut out, mark, width);
    }
    out.push_str("</svg>");
    out
}

fn put(out: &mut String, what: std::fmt::Arguments<'_>) {
    // Writing to a string never fails.
    let _ = out.write_fmt(what);
}

fn put_mark(out: &mut String, mark: &Mark, width: f64) {
    let shape = scaled(mark.shape.clone(), width);
    let (element, attributes, text) = match shape {
        shape if !pieces(&way(&shape), mark.pen.dash).is_empty() => {
            ("path", by_pieces(&shape, mark.pen), String::new())
        }
        Shape::Line { from, to } => {
            let Point { x, y } = from;
            let ends = [("x1", x), ("y1", y), ("x2", to.x), ("y2", to.y)];
            ("line", numbers(&ends) + &pen(mark.pen), String::new())
        }
        Shape::Rect { corner, width, height, round } => {
            let mut sides = vec![("x", corner.x), ("y", corner.y), ("width", width), ("height", height)];
            if round > 0.0 {
                sides.push(("rx", round));
            }
            ("rect", numbers(&sides) + &pen(mark.pen) + fill(mark.fill), String::new())
        }
        Shape::Polyline { points, closed } => {
            let points: Vec<_> = points.iter().map(|p| format!("{},{}", number(p.x), number(p.y))).collect();
            let element = if closed { "polygon" } else { "polyline" };
            let points = format!(" points=\"{}\"", points.join(" "));
            (element, points + &pen(mark.pen) + fill(mark.fill), String::new())
        }
        Shape::Text { at, text, size, anchor, strong, even } => {
            let mut attributes = numbers(&[("x", at.x), ("y", at.y), ("font-size", size)]);
            attributes.push_str(match anchor {
                Anchor::Start => "",
                Anchor::Middle => " text-anchor=\"middle\"",
                Anchor::End => " text-anchor=\"end\"",
            });
            if strong {
                attributes.push_str(" font-weight=\"bold\"");
            }
            if even {
                attributes.push_str(" font-family=\"ui-monospace, monospace\"");
            }
            ("text", attributes + fill(Fill::Solid), escaped(&text))
        }
    };
    let touch = match mark.touch {
        Some(Touch::Part(part)) => format!(" data-part=\"{part}\""),
        Some(Touch::Unfold(part)) => format!(" data-unfold=\"{part}\""),
        None => String::new(),
    };
    let said: Vec<_> = mark.name.iter().chain(&mark.about).map(String::as_str).collect();
    let title = match said.as_slice() {
        [] => String::new(),
        said => format!("<title>{}</title>", escaped(&said.join("\n"))),
    };
    let ink = mark.ink.name();
    let ground = if mark.fill == Fill::Ground { " ground" } else { "" };
    put(
        out,
        format_args!("<{element} class=\"ink-{ink}{ground}\"{attributes}{touch}>{title}{text}</{element}>\n"),
    );
}

/// The points that the line of a shape goes through.
fn way(shape: &Shape) -> Vec<Point> {
    match shape {
        Shape::Line { from, to } => vec![*from, *to],
        Shape::Rect { corner: Point { x, y }, width, height, .. } => {
            let (right, under) = (x + width, y + height);
            [(*x, *y), (right, *y), (right, under), (*x, under), (*x, *y)]
                .map(|(x, y)| Point { x, y })
                .to_vec()
        }
        Shape::Polyline { points, closed } => {
            let again = points.first().copied().filter(|_| *closed);
            points.iter().copied().chain(again).collect()
        }
        Shape::Text { .. } => Vec::new(),
    }
}

/// A line that no dash can draw, piece by piece.
fn by_pieces(shape: &Shape, line: Pen) -> String {
    let mut out = String::from(" d=\"");
    for (from, to) in pieces(&way(shape), line.dash) {
        let [x1, y1, x2, y2] = [from.x, from.y, to.x, to.y].map(number);
        put(&mut out, format_args!("M{x1} {y1}L{x2} {y2}"));
    }
    out.push('"');
    out + &pen(line)
}

fn numbers(named: &[(&str, f64)]) -> String {
    named.iter().fold(String::new(), |mut out, (name, value)| {
        put(&mut out, format_args!(" {name}=\"{}\"", number(*value)));
        out
    })
}

/// A length with at most two decimals, so that the same figure gives the same bytes on every machine.
fn number(value: f64) -> String {
    let rounded = (value * 100.0).round() / 100.0;
    // Adding zero turns a negative zero into a plain one.
    format!("{}", rounded + 0.0)
}

fn pen(pen: Pen) -> String {
    let width = match pen.weight {
        Weight::None => return String::new(),
        Weight::Thin => "1",
        Weight::Plain => "1.5",
        Weight::Cable => "2.25",
        Weight::Thick => "4",
    };
    let dash = match (pen.dash, pen.weight) {
        (Dash::Solid | Dash::Struck | Dash::Double, _) => "",
        (Dash::Dashed, Weight::Thick) => " stroke-dasharray=\"9 4\"",
        (Dash::Dashed, _) => " stroke-dasharray=\"8 5\"",
        (Dash::Dotted, Weight::Cable) => " stroke-dasharray=\"2 5\"",
        (Dash::Dotted, _) => " stroke-dasharray=\"3 2.5\"",
        (Dash::Long, _) => " stroke-dasharray=\"10 3\"",
    };
    format!(" stroke=\"currentColor\" stroke-width=\"{width}\"{dash}")
}

fn fill(fill: Fill) -> &'static str {
    match fill {
        Fill::None => "",
        Fill::Faint => " fill=\"currentColor\" fill-opacity=\"0.1\"",
        Fill::Medium => " fill=\"currentColor\" fill-opacity=\"0.25\"",
        Fill::Solid => " fill=\"currentColor\"",
        // A page that lies on another ground says so by the class.
        Fill::Ground => " fill=\"Canvas\"",
    }
}

/// Text for between tags or within double quotes.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in legible(text).chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            _ => out.push(letter),
        }
    }
    out
}

//! The page around the sections: page one, the rest in one flow, the tags.

use std::fmt::Write;

use maud::{DOCTYPE, Markup, PreEscaped, html};
use phrase::Phrase;

use super::teller::ReportTeller;

/// A section of the report, with an id to jump to and its heading.
pub(super) struct Section {
    /// A plain name, no other section has it.
    pub id: &'static str,
    /// The heading's message.
    pub heading: &'static str,
    /// What stands under it.
    pub body: Markup,
}

/// Nothing but what stands in this file may be shown; above all, no script and no address elsewhere.
const POLICY: &str = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

/// The inks and sizes of the look, then what the report makes of them.
const STYLE: &str =
    concat!(include_str!("../../../../look/look.css"), include_str!("style.css"), include_str!("print.css"));

/// The whole page.
pub(super) fn page(
    teller: &ReportTeller<'_>,
    page_one: &Markup,
    sections: &[Section],
    tags: Option<Section>,
) -> String {
    let body = html! {
        (page_one)
        (contents(teller, sections.iter().chain(&tags)))
        div.sheet.rest {
            @for section in sections { (one(teller, section)) }
            @if tags.is_none() { (notes(teller)) }
        }
        @if let Some(tags) = tags {
            div.sheet.cut-sheet { (one(teller, &tags)) (notes(teller)) }
        }
    };
    document(teller, &body)
}

/// A page with nothing but page one.
pub(super) fn one_page(teller: &ReportTeller<'_>, page_one: &Markup) -> String {
    document(teller, page_one)
}

/// A page with nothing but tags.
pub(super) fn tags_alone(teller: &ReportTeller<'_>, tags: &Section) -> String {
    document(teller, &html! { div.sheet.cut-sheet { (one(teller, tags)) } })
}

/// The file around what it shows.
fn document(teller: &ReportTeller<'_>, body: &Markup) -> String {
    let title = teller.say(&Phrase::new("report-page-title").text("name", teller.house_name()));
    let markup = html! {
        (DOCTYPE)
        html lang=(teller.word("report-language")) {
            head {
                meta charset="utf-8";
                meta http-equiv="Content-Security-Policy" content=(POLICY);
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                meta name="referrer" content="no-referrer";
                title { (title) }
                style { (PreEscaped(STYLE)) (PreEscaped(title_block(teller, &title))) }
            }
            body {
                main { (body) }
            }
        }
    };
    markup.into_string()
}

fn one(teller: &ReportTeller<'_>, section: &Section) -> Markup {
    html! {
        section aria-labelledby=(section.id) {
            h2 id=(section.id) { (teller.word(section.heading)) }
            (section.body)
        }
    }
}

fn contents<'a>(teller: &ReportTeller<'_>, sections: impl Iterator<Item = &'a Section>) -> Markup {
    html! {
        nav aria-labelledby="contents" {
            h2 id="contents" { (teller.word("report-contents")) }
            ol { @for section in sections { li { a href={ "#" (section.id) } { (teller.word(section.heading)) } } } }
        }
    }
}

/// Heads the ruled lines that are left of a sheet of paper.
fn notes(teller: &ReportTeller<'_>) -> Markup {
    html! { p.for-notes aria-hidden="true" { (teller.word("report-for-notes")) } }
}

/// The foot of each sheet of paper: what it belongs to, of which day, the how-manieth it is.
fn title_block(teller: &ReportTeller<'_>, title: &str) -> String {
    const NUMBER: &str = "\u{E000}";
    const OF: &str = "\u{E001}";
    let sheet = teller.say(&Phrase::new("report-sheet").text("number", NUMBER).text("of", OF));
    let sheet = css_text(&sheet)
        .replace(&css_text(NUMBER), "\" counter(page) \"")
        .replace(&css_text(OF), "\" counter(pages) \"");
    let short: String = title.chars().take(MOST_LETTERS).collect();
    let short = if short.len() < title.len() { short + "…" } else { short };
    let day = teller.day().map_or_else(String::new, |day| format!("{day}    "));
    format!(
        "@page{{@bottom-left{{content:\"{}\"}}@bottom-right{{content:\"{}{sheet}\"}}}}\
         @page:first{{@bottom-left{{content:none}}@bottom-right{{content:\"{sheet}\"}}}}",
        css_text(&short),
        css_text(&day),
    )
}

/// So many letters of the title fit into the foot of a sheet.
const MOST_LETTERS: usize = 56;

/// A text for between the double quotes of CSS: whatever is no plain letter stands as its number.
fn css_text(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        if letter.is_ascii_alphanumeric() || letter == ' ' {
            out.push(letter);
        } else {
            // Writing to a string never fails.
            let _ = write!(out, "\\{:x} ", u32::from(letter));
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::css_text;

    /// CSS Syntax Level 3, section 4.3.7: a backslash, hexadecimal digits, one white space.
    #[test]
    fn no_name_ends_the_text_it_stands_in() {
        assert_eq!(css_text("a 1\"}</style>"), "a 1\\22 \\7d \\3c \\2f style\\3e ");
    }
}

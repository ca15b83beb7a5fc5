//! The page around the sections.

use maud::{DOCTYPE, Markup, PreEscaped, html};
use phrase::Phrase;

use super::teller::ReportTeller;

/// A section of the report, with an id to jump to and its heading.
pub(super) struct Section {
    /// A plain name, no other section has it.
    pub id: &'static str,
    /// The heading's message.
    pub heading: &'static str,
    /// Whether it is printed on paper turned sideways.
    pub across: bool,
    /// What stands under it.
    pub body: Markup,
}

/// Nothing but what stands in this file may be shown; above all, no script and no address elsewhere.
const POLICY: &str = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

/// The whole page.
pub(super) fn page(teller: &ReportTeller<'_>, sections: &[Section]) -> String {
    let name = teller.survey().name.clone().filter(|name| !name.trim().is_empty());
    let name = name.unwrap_or_else(|| teller.word("report-untitled"));
    let markup = html! {
        (DOCTYPE)
        html lang=(teller.word("report-language")) {
            head {
                meta charset="utf-8";
                meta http-equiv="Content-Security-Policy" content=(POLICY);
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                meta name="referrer" content="no-referrer";
                title { (teller.say(&Phrase::new("report-page-title").text("name", &name))) }
                style { (PreEscaped(include_str!("style.css"))) }
            }
            body {
                header {
                    h1 { (ReportTeller::own(&name)) }
                    p.made { (teller.word("report-made")) }
                }
                nav aria-labelledby="contents" {
                    h2 id="contents" { (teller.word("report-contents")) }
                    ol {
                        @for section in sections {
                            li { a href={ "#" (section.id) } { (teller.word(section.heading)) } }
                        }
                    }
                }
                main {
                    @for section in sections {
                        section.across[section.across] aria-labelledby=(section.id) {
                            h2 id=(section.id) { (teller.word(section.heading)) }
                            (section.body)
                        }
                    }
                }
            }
        }
    };
    markup.into_string()
}

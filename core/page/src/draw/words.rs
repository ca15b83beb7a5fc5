//! Words to read.

use guide::Screen;
use guide::screen::{Block, Severity, WordsBlock, WordsRole};
use maud::{Markup, html};

use super::element;
use super::sign::{Sign, sign};

/// Whether this block is the first lead of its screen: what the screen is about.
pub(super) fn is_first_lead(screen: &Screen, at: usize) -> bool {
    let is_lead = |block: &Block| matches!(block, Block::Words(words) if words.role == WordsRole::Lead);
    screen.blocks.iter().position(is_lead) == Some(at)
}

/// Words, folded behind their head where they have one.
pub(super) fn words(block: &WordsBlock, first_lead: bool) -> Markup {
    let id = element(&block.id);
    if !block.head.is_empty() {
        return html! {
            details.fold id=(id) {
                summary { (block.head) (sign(Sign::Fold, 20)) }
                div { @for line in paragraphs(&block.words) { p { (line) } } }
            }
        };
    }
    match block.role {
        WordsRole::Lead if first_lead => {
            html! { h1.lead.(weight(block.severity)) id=(id) tabindex="-1" { (block.words) } }
        }
        WordsRole::Lead => html! { h2.lead.(weight(block.severity)) id=(id) { (block.words) } },
        WordsRole::Heading => html! { h2.head id=(id) { (block.words) } },
        WordsRole::Why => html! { p.why id=(id) { (block.words) } },
        WordsRole::How | WordsRole::Plain => {
            html! { div.plain id=(id) { @for line in paragraphs(&block.words) { p { (line) } } } }
        }
        WordsRole::Aside => html! { p.aside id=(id) { (block.words) } },
        WordsRole::Problem => {
            html! { p.problem id=(id) role="alert" { (sign(Sign::Cross, 20)) span { (block.words) } } }
        }
    }
}

fn paragraphs(words: &str) -> impl Iterator<Item = &str> {
    words.lines().filter(|line| !line.trim().is_empty())
}

/// How much something weighs, as a class.
pub(super) const fn weight(severity: Severity) -> &'static str {
    match severity {
        Severity::Calm => "calm",
        Severity::Note => "note",
        Severity::Minor => "minor",
        Severity::Costly => "costly",
        Severity::Grave => "grave",
    }
}

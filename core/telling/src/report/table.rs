//! Tables that a screen reader can walk and that stack on a narrow screen.

use maud::{Markup, html};

/// So many columns fit side by side on a phone.
const MOST_UNSTACKED: usize = 3;

/// A table whose first cell of each row heads the row.
pub(super) fn table(caption: &str, heads: &[String], rows: &[Vec<Markup>]) -> Markup {
    html! {
        table.stacks[heads.len() > MOST_UNSTACKED] {
            caption { (caption) }
            thead {
                tr {
                    @for head in heads { th scope="col" { (head) } }
                }
            }
            tbody {
                @for row in rows {
                    tr {
                        @for (place, (cell, head)) in row.iter().zip(heads).enumerate() {
                            @if place == 0 {
                                th scope="row" { (cell) }
                            } @else {
                                td data-head=(head) { div { (cell) } }
                            }
                        }
                    }
                }
            }
        }
    }
}

//! Tables that a screen reader can walk and that stack on a narrow screen.

use maud::{Markup, html};

/// So many columns fit side by side on a phone.
const MOST_UNSTACKED: usize = 3;

/// A table whose first cell of each row heads the row.
///
/// The roles say what the elements are anyhow: a browser that stacks the cells on a narrow screen (`display: block`)
/// forgets it otherwise.
pub(super) fn table(caption: &str, heads: &[String], rows: &[Vec<Markup>]) -> Markup {
    html! {
        table.stacks[heads.len() > MOST_UNSTACKED] role="table" {
            caption { (caption) }
            thead role="rowgroup" {
                tr role="row" {
                    @for head in heads { th scope="col" role="columnheader" { (head) } }
                }
            }
            tbody role="rowgroup" {
                @for row in rows {
                    tr role="row" {
                        @for (place, (cell, head)) in row.iter().zip(heads).enumerate() {
                            @if place == 0 {
                                th scope="row" role="rowheader" { (cell) }
                            } @else {
                                td role="cell" data-head=(head) { div { (cell) } }
                            }
                        }
                    }
                }
            }
        }
    }
}

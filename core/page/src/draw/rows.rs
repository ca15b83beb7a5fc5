//! Rows: lists of things, some of which lead on.

use guide::screen::{RowEntry, RowMark, RowsBlock, Severity};
use maud::{Markup, html};

use super::bar;
use super::sign::{Sign, sign};
use super::words::weight;
use super::{Drawn, element};

/// The rows under their name.
pub(super) fn rows(drawn: &Drawn<'_>, block: &RowsBlock) -> Markup {
    let id = element(&block.id);
    let stages = block.rows.iter().any(|row| row.done_of.is_some());
    let bars = block.rows.iter().any(|row| row.bar.is_some());
    html! {
        section.rows.line[stages].barlist[bars] aria-labelledby=(id) {
            h2.rname id=(id) { (block.name) }
            ul { @for row in &block.rows { (item(drawn, row)) } }
            @if bars { (bar::key(block.rows.iter().filter_map(|row| row.bar.as_ref()), &id, drawn.words)) }
        }
    }
}

fn item(drawn: &Drawn<'_>, row: &RowEntry) -> Markup {
    let stage = row.done_of.map(|of| match of.done {
        0 => "none",
        done if done >= of.of => "full",
        _ => "half",
    });
    let flagged = row.mark.is_none() && row.severity >= Severity::Grave;
    let inside = html! {
        @if stage.is_some() { span.station aria-hidden="true" {} }
        @if let Some(mark @ (RowMark::Box | RowMark::Done)) = row.mark { span.mk { (mark_sign(mark)) } }
        span.rw {
            b { (row.head) }
            @if !row.says.is_empty() { span { (row.says) } }
            @if let Some(share) = row.share { (bar::share(share)) }
            @if !row.remark.is_empty() { small { (row.remark) } }
        }
        @if let Some(mark @ (RowMark::Weak | RowMark::NotKnown)) = row.mark { span.mk { (mark_sign(mark)) } }
        @if flagged { span.mk { (sign(Sign::Flag, 22)) } }
        @if row.key.is_some() && row.switched.is_none() { (sign(Sign::On, 20)) }
        // Under the words, over the whole width: all bars of a list have one scale.
        @if let Some(bar) = &row.bar { span.over { (bar::bar(bar, &format!("{}-bar", element(&row.id)), drawn.words)) span.bsays { (bar.words) } } }
    };
    html! {
        li.(stage.unwrap_or("plain")).(weight(row.severity)) {
            @match &row.key {
                Some(key) => {
                    button.row type="submit" id=(element(&row.id)) name="press" value=(key)
                        aria-pressed=[row.switched.map(|on| if on { "true" } else { "false" })] { (inside) }
                }
                None => div.row.flat id=(element(&row.id)) { (inside) }
            }
        }
    }
}

fn mark_sign(mark: RowMark) -> Markup {
    sign(
        match mark {
            RowMark::Box => Sign::Box,
            RowMark::Done => Sign::BoxTicked,
            RowMark::Weak => Sign::Flag,
            RowMark::NotKnown => Sign::Doubt,
        },
        22,
    )
}

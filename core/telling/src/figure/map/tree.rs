//! The map as a tree in lines of text.

use super::fold::Row;
use super::node::{Cable, State};
use super::shown::ShownMap;

/// A line for each row, branches hanging from what feeds them, and headings over what is not traced.
pub(super) fn lines(map: &ShownMap<'_>) -> Vec<String> {
    let rows = map.rows();
    let mut lines = Vec::new();
    for ((place, row), heading) in rows.iter().enumerate().zip(map.headings()) {
        lines.extend(heading.map(|id| format!("-- {}", map.say(id))));
        lines.push(format!("{}{}", branches(rows, place), said(map, place, row)));
    }
    lines
}

/// What stands before a row's words: the branches that go on past it, and its own.
fn branches(rows: &[Row], place: usize) -> String {
    let mut before = Vec::new();
    let mut at = place;
    while let Some(feeder) = rows.get(at).and_then(|row| row.feeder) {
        let goes_on = rows.iter().skip(at + 1).take_while(|row| row.depth >= depth(rows, at));
        let has_next = goes_on.into_iter().any(|row| row.feeder == Some(feeder));
        before.push(match (at == place, has_next) {
            (true, true) => "├─ ",
            (true, false) => "└─ ",
            (false, true) => "│  ",
            (false, false) => "   ",
        });
        at = feeder;
    }
    before.into_iter().rev().collect()
}

fn depth(rows: &[Row], place: usize) -> usize {
    rows.get(place).map_or(0, |row| row.depth)
}

fn said(map: &ShownMap<'_>, place: usize, row: &Row) -> String {
    let Some(told) = map.told(place) else { return String::new() };
    let node = map.node(place);
    let mut words: Vec<String> = Vec::new();
    words.extend(Some(told.tag.clone()).filter(|tag| !tag.is_empty()));
    words.extend(told.names.first().cloned());
    let sign = node.filter(|_| row.is_single()).and_then(|node| match (node.step, node.state) {
        (Some(step), _) => Some(format!("[{step}]")),
        (None, State::Weak) => Some("(!)".to_owned()),
        (None, State::Unknown) => Some("(?)".to_owned()),
        (None, State::Well) => None,
    });
    words.extend(sign);
    let cable = node.filter(|_| row.feeder.is_some()).and_then(|node| match node.cable {
        Cable::Stout => Some("map-key-stout"),
        Cable::New => Some("map-key-new"),
        Cable::Six | Cable::Thin | Cable::Unknown | Cable::Provider => None,
    });
    let cable = cable.map(|id| map.say(id));
    let remarks: Vec<_> = cable.into_iter().chain(told.remarks.iter().cloned()).collect();
    let words = words.join(" ");
    if remarks.is_empty() { words } else { format!("{words}: {}", joined(&remarks)) }
}

/// Remarks in a row; one that asks ends by itself.
fn joined(remarks: &[String]) -> String {
    let mut out = String::new();
    for remark in remarks {
        if !out.is_empty() {
            out.push_str(if out.ends_with('?') { " " } else { "; " });
        }
        out.push_str(remark);
    }
    out
}

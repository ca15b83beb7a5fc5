//! The map as a tree in lines of text.

use phrase::Phrase;

use super::fold::Row;
use super::node::{Cable, Plan, Root, State};
use super::told::told;
use crate::words::Language;

/// A line for each row, branches hanging from what feeds them, and headings over what is not traced.
pub(super) fn lines(plan: &Plan, rows: &[Row], language: &Language) -> Vec<String> {
    let mut lines = Vec::new();
    let mut under = Root::Head;
    for (place, row) in rows.iter().enumerate() {
        let root = plan.node(row.shows.first()).and_then(|node| node.root);
        if let Some(root) = root.filter(|root| row.feeder.is_none() && *root != under) {
            under = root;
            let id = if root == Root::Wrong { "map-wrong-parts" } else { "map-loose-parts" };
            lines.push(format!("-- {}", language.say(&Phrase::new(id))));
        }
        lines.push(format!("{}{}", branches(rows, place), said(plan, row, language)));
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

fn said(plan: &Plan, row: &Row, language: &Language) -> String {
    let Some(told) = told(plan, row, language) else { return String::new() };
    let node = plan.node(row.shows.first());
    let mut words: Vec<String> = Vec::new();
    words.extend(Some(told.tag).filter(|tag| !tag.is_empty()));
    words.extend(told.names.first().cloned());
    let sign = node.filter(|_| row.is_single()).and_then(|node| match (node.step, node.state) {
        (Some(step), _) => Some(format!("[{step}]")),
        (None, State::Weak) => Some("(!)".to_owned()),
        (None, State::Unknown) => Some("(?)".to_owned()),
        (None, State::Well) => None,
    });
    words.extend(sign);
    let cable = node.filter(|_| row.feeder.is_some()).and_then(|node| match node.cable {
        Cable::Thin => Some("map-key-thin"),
        Cable::Stout => Some("map-key-stout"),
        Cable::New => Some("map-key-new"),
        Cable::Six | Cable::Unknown | Cable::Provider => None,
    });
    let cable = cable.map(|id| language.say(&Phrase::new(id)));
    let remarks: Vec<_> = cable.into_iter().chain(told.remarks).collect();
    let words = words.join(" ");
    if remarks.is_empty() { words } else { format!("{words}: {}", remarks.join("; ")) }
}

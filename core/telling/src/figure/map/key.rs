//! The key under the map: the lines and signs that stand in it, each with its words.

use super::narrow::REMARK;
use super::node::{Cable, Root, State};
use super::shown::ShownMap;
use super::{band, line, sign};
use crate::figure::mark::Ink;
use crate::figure::measure::{fitted, text_width};
use crate::figure::sheet::Sheet;

/// What the key explains.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Entry {
    Line(Cable),
    Weak,
    Loose,
    Step(usize),
    Flag,
    Question,
}

const LINES: [Cable; 6] =
    [Cable::Six, Cable::Stout, Cable::Thin, Cable::Unknown, Cable::Provider, Cable::New];
/// The length of a sample of a line.
const SAMPLE: f64 = 48.0;
/// What of a column is not for words.
const BESIDE_WORDS: f64 = SAMPLE + 14.0;
/// The least width of a column.
const LEAST: f64 = 172.0;
/// The height of a row.
const ROW: f64 = 25.0;

impl Entry {
    const fn message(self) -> &'static str {
        match self {
            Self::Line(Cable::Six) => "map-key-six",
            Self::Line(Cable::Stout) => "map-key-stout",
            Self::Line(Cable::Thin) => "map-key-thin",
            Self::Line(Cable::Unknown) => "map-key-unknown",
            Self::Line(Cable::Provider) => "map-key-provider",
            Self::Line(Cable::New) => "map-key-new",
            Self::Weak => "map-key-weak",
            Self::Loose => "map-key-loose",
            Self::Step(_) => "map-key-step",
            Self::Flag => "map-key-flag",
            Self::Question => "map-key-question",
        }
    }
}

/// What stands in the map, in the order of the key.
fn entries(map: &ShownMap<'_>) -> Vec<Entry> {
    let rows = map.rows();
    let shown: Vec<_> =
        rows.iter().enumerate().filter_map(|(place, row)| Some((row, map.node(place)?))).collect();
    let any = |is: &dyn Fn(&super::node::Node) -> bool| shown.iter().any(|(_, node)| is(node));
    let fed = |cable: Cable| shown.iter().any(|(row, node)| row.feeder.is_some() && node.cable == cable);
    let mut entries: Vec<_> = LINES.into_iter().filter(|cable| fed(*cable)).map(Entry::Line).collect();
    if any(&|node| node.cable_on_way) {
        entries.push(Entry::Weak);
    }
    if any(&|node| matches!(node.root, Some(Root::Loose | Root::Wrong))) {
        entries.push(Entry::Loose);
    }
    entries.extend(shown.iter().find_map(|(_, node)| node.step).map(Entry::Step));
    let states = |state: State| {
        shown.iter().any(|(row, node)| row.is_single() && node.step.is_none() && node.state == state)
    };
    if states(State::Weak) {
        entries.push(Entry::Flag);
    }
    if states(State::Unknown) {
        entries.push(Entry::Question);
    }
    entries
}

/// Puts the key from `top` down; gives the height of the whole.
pub(super) fn put(sheet: &mut Sheet, map: &ShownMap<'_>, (width, top): (f64, f64)) -> f64 {
    let entries = entries(map);
    let many = ((width / LEAST).floor()).max(1.0);
    let column = width / many;
    let (mut across, mut y) = (0.0, top);
    for entry in &entries {
        let words = map.say(entry.message());
        // Words that a column has no room for take two.
        let is_wide = text_width(&words, REMARK.size, false) > column - BESIDE_WORDS;
        let takes = if is_wide { 2.0_f64.min(many) } else { 1.0 };
        if across + takes > many {
            (across, y) = (0.0, y + ROW);
        }
        put_entry(sheet, *entry, (across * column + 2.0, y + 10.0));
        let words = fitted(&words, REMARK.size, false, takes * column - BESIDE_WORDS);
        sheet.dip(Ink::Quiet);
        sheet.text((across * column + SAMPLE + 10.0, y + 14.5), words, REMARK);
        across += takes;
    }
    if entries.is_empty() { top } else { y + ROW }
}

fn put_entry(sheet: &mut Sheet, entry: Entry, (x, y): (f64, f64)) {
    let (from, to, middle) = ((x, y), (x + SAMPLE, y), (x + SAMPLE / 2.0, y));
    match entry {
        Entry::Line(cable) => line::put(sheet, from, to, cable),
        Entry::Weak => {
            band::put(sheet, &[((x + 7.0, y), (x + SAMPLE - 7.0, y))]);
            line::put(sheet, from, to, Cable::Six);
        }
        Entry::Loose => {
            sheet.dip(Ink::Cable);
            sheet.line(from, to, line::LOOSE);
            sign::put_ring(sheet, (x + 3.5, y));
        }
        Entry::Step(step) => sign::put_step(sheet, step, middle),
        Entry::Flag => sign::put_flag(sheet, middle),
        Entry::Question => sign::put_question(sheet, middle),
    }
}

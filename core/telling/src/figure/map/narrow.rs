//! The narrow layout: the street on top, a row a part. A part with one way on keeps its column; only a fork moves what
//! it feeds one column inwards. Tags, names and remarks stand in one straight column at the right.

use super::fold::Row;
use super::node::{Node, Root, State};
use super::shown::ShownMap;
use super::told;
use super::ways::{self, Way};
use super::{NARROW, key, line, sign};
use crate::figure::mark::{Anchor, Dash, Fill, Ink, Weight};
use crate::figure::sheet::{NO_LINE, Sheet, Type, pen};

/// The height of a row: a finger's.
const ROW: f64 = 48.0;
/// The middle of the first column.
const FIRST: f64 = 14.0;
/// The widest and the closest that columns stand.
const STEPS: (f64, f64) = (38.0, 16.0);
/// So much of the width all columns take together, as long as they are not closest.
const COLUMNS: f64 = 132.0;
/// From the last column to the tags.
const TO_TAGS: f64 = 22.0;
/// What tag, name and remark need at least.
const WORDS: f64 = 180.0;
/// The far edge, where a part's state stands.
const EDGE: f64 = 24.0;
/// The widest frame of a tag.
const WIDEST_TAG: f64 = 96.0;

/// The type of a name.
pub(super) const NAME: Type = Type::of(15.0).strong(true);
/// The type of a remark.
pub(super) const REMARK: Type = Type::of(13.0);
/// The type of a tag.
pub(super) const TAG: Type = Type::of(14.0).strong(true).even();
/// The type of a heading.
pub(super) const CAPTION: Type = Type::of(13.0).strong(true);

struct Narrow<'a> {
    map: &'a ShownMap<'a>,
    rows: &'a [Row],
    step: f64,
    width: f64,
    tags: f64,
    middles: Vec<f64>,
}

/// Draws the rows and the key under them; gives width and height.
pub(super) fn draw(sheet: &mut Sheet, shown: &ShownMap<'_>) -> (f64, f64) {
    let rows = shown.rows();
    let deepest = rows.iter().map(|row| row.forks).max().unwrap_or(0) as f64;
    let step = (COLUMNS / deepest.max(1.0)).clamp(STEPS.1, STEPS.0);
    let tags = FIRST + deepest * step + TO_TAGS;
    let width = NARROW.max(tags + WORDS);
    let mut map = Narrow { map: shown, rows, step, width, tags, middles: Vec::new() };
    let mut y = 2.0;
    let mut captions = Vec::new();
    for heading in shown.headings() {
        if let Some(id) = heading {
            y += if map.middles.is_empty() { 0.0 } else { 8.0 };
            captions.push((y, id));
            y += 36.0;
        }
        map.middles.push(y + ROW / 2.0);
        y += ROW;
    }
    map.touch_fields(sheet);
    for (y, id) in captions {
        shown.put_heading(sheet, (y, width), id);
    }
    ways::put(sheet, shown, |row| map.way(row));
    for place in 0..rows.len() {
        map.row(sheet, place);
    }
    let height = key::put(sheet, shown, (width, y + 16.0));
    (width, height)
}

impl Narrow<'_> {
    fn spot(&self, place: usize) -> Option<(f64, f64)> {
        let row = self.rows.get(place)?;
        Some((FIRST + row.forks as f64 * self.step, *self.middles.get(place)?))
    }

    fn way(&self, place: usize) -> Option<Way> {
        let feeder = self.spot(self.rows.get(place)?.feeder?)?;
        let here = self.spot(place)?;
        // A fork's trunk goes down, and the cable from there across; else the cable goes straight down.
        Some(if here.0 > feeder.0 { [feeder, (feeder.0, here.1), here] } else { [feeder, feeder, here] })
    }

    fn touch_fields(&self, sheet: &mut Sheet) {
        for (place, middle) in self.middles.iter().enumerate() {
            let Some(told) = self.map.told(place) else { continue };
            sheet.touches(Some(told.touch));
            sheet.dip(Ink::Text);
            sheet.rect((0.0, middle - ROW / 2.0), (self.width, ROW), NO_LINE, Fill::None);
            sheet.stands_for(told.name.clone(), told.about.clone());
        }
        sheet.touches(None);
    }

    fn row(&self, sheet: &mut Sheet, place: usize) {
        let (Some(row), Some((x, y))) = (self.rows.get(place), self.spot(place)) else { return };
        let (Some(node), Some(told)) = (self.map.node(place), self.map.told(place)) else { return };
        sheet.touches(Some(told.touch));
        if matches!(node.root, Some(Root::Loose | Root::Wrong)) {
            sheet.dip(Ink::Cable);
            sheet.line((x, y - 17.0), (x, y), line::LOOSE);
            sign::put_ring(sheet, (x, y - 20.0));
        }
        let (folds, is_single) = (row.folds(), row.is_single());
        let sign_ends = x + sign::REACH + if is_single { 3.0 } else { 9.0 };
        if self.tags - sign_ends > 6.0 {
            sheet.hair((sign_ends, y), self.tags - 4.0 - sign_ends);
        }
        if is_single {
            sign::put(sheet, node, (x, y));
        } else {
            sign::put_stack(sheet, node, (x, y));
        }
        let words = put_tag(sheet, node, &told.tag, (self.tags, y), !is_single, WIDEST_TAG);
        let room = self.width - EDGE - words;
        let remark = told::remarks(&told.remarks, REMARK, room);
        sheet.dip(Ink::Text);
        let at = if remark.is_empty() { y + 5.0 } else { y - 2.0 };
        sheet.text((words, at), told::name(&told.names, NAME, room), NAME);
        if !remark.is_empty() {
            sheet.dip(Ink::Quiet);
            sheet.text((words, y + 15.0), remark, REMARK);
        }
        let edge = (self.width - 11.0, y);
        if folds {
            sign::put_fold(sheet, edge);
        } else {
            sign::put_state(sheet, node, edge);
        }
        sheet.touches(None);
    }
}

/// Puts a tag in its frame, its left edge at a place; gives where the words after it start.
pub(super) fn put_tag(
    sheet: &mut Sheet,
    node: &Node,
    tag: &str,
    (x, y): (f64, f64),
    is_several: bool,
    widest: f64,
) -> f64 {
    if tag.is_empty() {
        return x;
    }
    let tag = TAG.fitted(tag, widest - 10.0);
    let width = TAG.width(&tag) + 10.0;
    let (ink, line) = match node.state {
        _ if is_several => (Ink::Quiet, pen(Weight::Thin, Dash::Solid)),
        State::Weak => (Ink::Weak, pen(Weight::Cable, Dash::Solid)),
        State::Unknown => (Ink::Quiet, pen(Weight::Thin, Dash::Dotted)),
        State::Well => (Ink::Quiet, pen(Weight::Thin, Dash::Solid)),
    };
    sheet.dip(ink);
    sheet.about((x + width / 2.0, y), (width, 20.0), 2.0, line, Fill::Ground);
    sheet.dip(Ink::Text);
    let font = TAG.anchored(Anchor::Middle);
    sheet.text((x + width / 2.0, y + 5.0), tag, font);
    x + width + 8.0
}

/// How wide a tag's frame is, with what parts it from the words after it.
pub(super) fn tag_width(tag: &str, widest: f64) -> f64 {
    if tag.is_empty() { 0.0 } else { TAG.width(&TAG.fitted(tag, widest - 10.0)) + 18.0 }
}

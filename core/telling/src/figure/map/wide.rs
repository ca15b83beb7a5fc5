//! The wide layout: the street at the left, a column a part. The first branch goes straight on, others branch off below.
//! Tag and name stand above the line, remarks below it; what ends a line has its words behind it.

use super::columns::{self, Columns};
use super::fold::Row;
use super::narrow::{NAME, REMARK, put_tag};
use super::node::{Node, Root, State};
use super::shown::ShownMap;
use super::told::{self, Told};
use super::ways::{self, Way};
use super::{key, line, sign};
use crate::figure::mark::{Fill, Ink};
use crate::figure::measure::wrapped;
use crate::figure::sheet::{NO_LINE, Sheet};

/// The least distance of two lines.
const PITCH: f64 = 44.0;
/// Between the words of one line and those of the next.
const BETWEEN: f64 = 6.0;
/// The height of a line of remarks.
const REMARK_LINE: f64 = 15.0;
/// The most lines of remarks under a part in the line.
const MOST_REMARKS: usize = 2;
/// How far the words of a part in the line reach above it.
const ABOVE: f64 = 30.0;
/// How far a loose part's cable reaches to its left.
pub(super) const LOOSE: f64 = 44.0;

/// A row in its place.
struct Place<'a> {
    column: usize,
    line: usize,
    /// Whether anything is shown that it feeds.
    goes_on: bool,
    /// What a stack of signs before its tag, and the sign of a state behind that, take, pixels.
    signs: f64,
    told: &'a Told,
    /// The remarks as they are drawn.
    remarks: Vec<String>,
}

struct Wide<'a> {
    map: &'a ShownMap<'a>,
    rows: &'a [Row],
    places: Vec<Option<Place<'a>>>,
    columns: Columns,
    lines: Vec<f64>,
}

/// Draws the lines and the key under them; gives width and height.
pub(super) fn draw(sheet: &mut Sheet, shown: &ShownMap<'_>, width: f64) -> (f64, f64) {
    let rows = shown.rows();
    let mut places = placed(shown);
    let columns = {
        let needs = places.iter().flatten().map(|place| columns::Need {
            column: place.column,
            ends: !place.goes_on,
            signs: place.signs,
            tag: &place.told.tag,
            names: &place.told.names,
            remarks: &place.told.remarks,
        });
        columns::fitted(&needs.collect::<Vec<_>>(), width)
    };
    for place in places.iter_mut().flatten() {
        place.remarks = remarks(place, &columns);
    }
    let mut map = Wide { map: shown, rows, places, columns, lines: Vec::new() };
    let captions = map.lay_lines();
    map.touch_fields(sheet);
    for (y, id) in captions {
        shown.put_heading(sheet, (y, map.columns.width), id);
    }
    ways::put(sheet, shown, |row| map.way(row));
    for place in 0..rows.len() {
        map.row(sheet, place);
    }
    let bottom = map.lines.last().copied().unwrap_or(0.0) + 44.0;
    let height = key::put(sheet, shown, (map.columns.width, bottom));
    (map.columns.width, height)
}

/// The column and the line of each row.
fn placed<'a>(shown: &'a ShownMap<'_>) -> Vec<Option<Place<'a>>> {
    let rows = shown.rows();
    let mut goes_on = vec![false; rows.len()];
    let mut lines: Vec<usize> = Vec::with_capacity(rows.len());
    let mut is_loose: Vec<bool> = Vec::with_capacity(rows.len());
    let mut last = None;
    for (place, row) in rows.iter().enumerate() {
        let root = shown.node(place).and_then(|node| node.root);
        let feeder = row.feeder.filter(|feeder| *feeder < lines.len());
        let first = feeder
            .and_then(|feeder| goes_on.get_mut(feeder))
            .is_some_and(|fed| !std::mem::replace(fed, true));
        let line = match feeder.and_then(|feeder| lines.get(feeder)) {
            Some(line) if first => *line,
            _ => last.map_or(0, |last: usize| last + 1),
        };
        last = last.max(Some(line));
        lines.push(line);
        is_loose.push(match feeder {
            Some(feeder) => is_loose.get(feeder) == Some(&true),
            None => root != Some(Root::Head),
        });
    }
    let place = |(place, ((line, goes_on), loose)): (usize, ((&usize, &bool), &bool))| {
        let (row, told) = (rows.get(place)?, shown.told(place)?);
        let column = row.depth + usize::from(*loose);
        let node = shown.node(place)?;
        let has_sign = row.folds() || node.step.is_some() || node.state != State::Well;
        let stack = if row.is_single() { 0.0 } else { columns::STACK };
        let signs = stack + if has_sign { columns::STATE } else { 0.0 };
        Some(Place { column, line: *line, goes_on: *goes_on, signs, told, remarks: Vec::new() })
    };
    lines.iter().zip(&goes_on).zip(&is_loose).enumerate().map(place).collect()
}

/// The remarks of a part as they are drawn: under the line in as many as there is room for, or in one behind it.
fn remarks(place: &Place<'_>, columns: &Columns) -> Vec<String> {
    if place.goes_on {
        let room = columns.under(place.column);
        let mut lines: Vec<String> = Vec::new();
        for remark in &place.told.remarks {
            let left = MOST_REMARKS - lines.len().min(MOST_REMARKS);
            let wanted = wrapped(remark, REMARK.size, false, room, left.max(1));
            if left == 0 {
                break;
            }
            lines.extend(wanted);
        }
        lines.truncate(MOST_REMARKS);
        return lines;
    }
    let words = columns::SIGN + columns::before_words(&place.told.tag, place.signs);
    let room = columns.end(place.column, false) - columns.at(place.column) - words;
    let said = told::remarks(&place.told.remarks, REMARK, room);
    if said.is_empty() { Vec::new() } else { vec![said] }
}

impl Place<'_> {
    /// How far its words reach above its line, and below.
    fn reach(&self) -> (f64, f64) {
        let many = self.remarks.len() as f64;
        if self.goes_on {
            (ABOVE, 12.0 + many * REMARK_LINE)
        } else {
            (15.0, if many > 0.0 { 20.0 } else { 15.0 })
        }
    }
}

impl Wide<'_> {
    /// Lays the lines one under another; gives where a rule and its heading go.
    fn lay_lines(&mut self) -> Vec<(f64, &'static str)> {
        let many = self.places.iter().flatten().map(|place| place.line + 1).max().unwrap_or(0);
        let mut reach = vec![(0.0_f64, 0.0_f64); many];
        let mut headed: Vec<Option<&'static str>> = vec![None; many];
        for (place, heading) in self.places.iter().zip(self.map.headings()) {
            let Some(place) = place else { continue };
            let (above, below) = place.reach();
            if let Some(slot) = reach.get_mut(place.line) {
                *slot = (slot.0.max(above), slot.1.max(below));
            }
            if let (Some(id), Some(slot)) = (heading, headed.get_mut(place.line)) {
                *slot = Some(id);
            }
        }
        let mut captions = Vec::new();
        let mut floor = 0.0;
        let mut before: Option<f64> = None;
        for ((above, below), heading) in reach.into_iter().zip(headed) {
            if let Some(id) = heading {
                let rule = if before.is_some() { floor + 14.0 } else { 1.0 };
                captions.push((rule, id));
                (floor, before) = (rule + 28.0, None);
            }
            let y = (floor + above + BETWEEN).max(before.map_or(0.0, |before| before + PITCH));
            self.lines.push(y);
            (floor, before) = (y + below, Some(y));
        }
        captions
    }

    fn spot(&self, row: usize) -> Option<(f64, f64)> {
        let place = self.places.get(row)?.as_ref()?;
        Some((self.columns.at(place.column), *self.lines.get(place.line)?))
    }

    fn node(&self, row: usize) -> Option<&Node> {
        self.map.node(row)
    }

    fn way(&self, row: usize) -> Option<Way> {
        let feeder = self.spot(self.rows.get(row)?.feeder?)?;
        let here = self.spot(row)?;
        Some([feeder, (feeder.0, here.1), here])
    }

    fn touch_fields(&self, sheet: &mut Sheet) {
        for (row, place) in self.places.iter().enumerate() {
            let (Some(place), Some((x, y))) = (place, self.spot(row)) else { continue };
            let (above, below) = place.reach();
            let left = (x - 12.0).max(0.0);
            let right =
                if place.goes_on { self.columns.at(place.column + 1) - 12.0 } else { self.columns.width };
            sheet.touches(Some(place.told.touch));
            sheet.dip(Ink::Text);
            sheet.rect((left, y - above), (right - left, above + below), NO_LINE, Fill::None);
            sheet.stands_for(place.told.name.clone(), place.told.about.clone());
        }
        sheet.touches(None);
    }

    fn row(&self, sheet: &mut Sheet, row: usize) {
        let (Some(Some(place)), Some((x, y)), Some(node)) =
            (self.places.get(row), self.spot(row), self.node(row))
        else {
            return;
        };
        let Some((folds, is_single)) = self.rows.get(row).map(|row| (row.folds(), row.is_single())) else {
            return;
        };
        sheet.touches(Some(place.told.touch));
        if matches!(node.root, Some(Root::Loose | Root::Wrong)) {
            sheet.dip(Ink::Cable);
            sheet.line((x - LOOSE + 4.0, y), (x, y), line::LOOSE);
            sign::put_ring(sheet, (x - LOOSE + 4.0, y));
        }
        if is_single {
            sign::put(sheet, node, (x, y));
        } else {
            sign::put_stack(sheet, node, (x, y));
        }
        let (left, middle) =
            if place.goes_on { (x + columns::ABOVE_LINE, y - 18.0) } else { (x + columns::SIGN, y) };
        let tag = &place.told.tag;
        let tag_at = (left + if is_single { 0.0 } else { columns::STACK }, middle);
        let after_tag = put_tag(sheet, node, tag, tag_at, !is_single, columns::WIDEST_TAG);
        let state = (after_tag + 7.0, middle);
        if folds {
            sign::put_fold(sheet, state);
        } else {
            sign::put_state(sheet, node, state);
        }
        let words = left + columns::before_words(tag, place.signs);
        let room = self.columns.end(place.column, place.goes_on) - words;
        let (under, remarks_at) = match (place.goes_on, place.remarks.is_empty()) {
            (true, _) => (y - 13.0, (x + 15.0, y + 20.0)),
            (false, true) => (y + 5.0, (words, y)),
            (false, false) => (y - 2.0, (words, y + 15.0)),
        };
        sheet.dip(Ink::Text);
        sheet.text((words, under), told::name(&place.told.names, NAME, room), NAME);
        sheet.dip(Ink::Quiet);
        for (line, remark) in place.remarks.iter().enumerate() {
            let at = (remarks_at.0, remarks_at.1 + line as f64 * REMARK_LINE);
            sheet.text(at, remark.clone(), REMARK);
        }
        sheet.touches(None);
    }
}

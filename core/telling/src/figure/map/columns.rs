//! How wide the columns of the wide layout are: as wide as their words, and no wider than there is room for.

use super::narrow::{NAME, REMARK, tag_width};

/// From a sign's middle to the words behind it.
pub(super) const SIGN: f64 = 17.0;
/// What the sign of a state takes between tag and name.
pub(super) const STATE: f64 = 24.0;
/// How far several signs behind one another reach beyond the first.
pub(super) const STACK: f64 = 7.0;
/// The widest frame of a tag.
pub(super) const WIDEST_TAG: f64 = 110.0;
/// The middle of the first column.
const FIRST: f64 = 14.0;
/// From a sign's middle to the tag above its line.
pub(super) const ABOVE_LINE: f64 = 13.0;
/// Between the remarks of one column and the middle of the next sign, and between a name and that.
const GAPS: (f64, f64) = (15.0, 2.0);
/// So much wider than its words a column becomes at most where there is room.
const MOST_SLACK: f64 = 56.0;
/// The least that a name behind a line needs, pixels.
const LEAST_NAME: f64 = 67.0;
/// The least column: a loose part's cable fits into it.
const LEAST: f64 = 62.0;

/// What a row needs of its column.
#[derive(Debug, Clone, Copy)]
pub(super) struct Need<'a> {
    /// Which column it stands in.
    pub column: usize,
    /// Whether nothing is shown behind it.
    pub ends: bool,
    /// What the signs before its name take, pixels.
    pub signs: f64,
    /// Its tag.
    pub tag: &'a str,
    /// Its names, the longest first.
    pub names: &'a [String],
    /// Its remarks.
    pub remarks: &'a [String],
}

/// The columns.
#[derive(Debug, Clone)]
pub(super) struct Columns {
    at: Vec<f64>,
    /// The width of it all.
    pub width: f64,
}

/// How much is left out for want of room.
#[derive(Debug, Clone, Copy)]
struct Tightness {
    /// Whether a part has its short name.
    short: bool,
    /// The most that a remark asks for, pixels.
    remark: f64,
    /// The most that a name asks for, pixels.
    name: f64,
}

/// What is tried in turn: a name is cut last.
const TRIED: [Tightness; 8] = [
    Tightness { short: false, remark: 240.0, name: 260.0 },
    Tightness { short: false, remark: 150.0, name: 220.0 },
    Tightness { short: true, remark: 120.0, name: 160.0 },
    Tightness { short: true, remark: 60.0, name: 130.0 },
    Tightness { short: true, remark: 0.0, name: 130.0 },
    Tightness { short: true, remark: 0.0, name: 110.0 },
    Tightness { short: true, remark: 0.0, name: 94.0 },
    Tightness { short: true, remark: 0.0, name: LEAST_NAME },
];

/// What stands before a name: the tag, and signs that take so many pixels.
pub(super) fn before_words(tag: &str, signs: f64) -> f64 {
    tag_width(tag, WIDEST_TAG) + signs
}

impl Need<'_> {
    /// What it needs from the middle of its sign on.
    fn width(&self, tightness: Tightness) -> f64 {
        let name = if tightness.short { self.names.last() } else { self.names.first() };
        let name = name.map_or(0.0, |name| NAME.width(name)).min(tightness.name);
        let remark = self.remarks.first().map_or(0.0, |remark| REMARK.width(remark)).min(tightness.remark);
        let before = before_words(self.tag, self.signs);
        if self.ends {
            SIGN + before + name.max(remark)
        } else {
            (ABOVE_LINE + before + name + GAPS.1).max(GAPS.0 + remark + GAPS.0)
        }
    }
}

/// The columns that these rows need, in `width` pixels where that can be.
pub(super) fn fitted(needs: &[Need<'_>], width: f64) -> Columns {
    let tried = TRIED.into_iter().map(|tightness| columns(needs, tightness));
    let mut last = Columns { at: vec![FIRST], width };
    for columns in tried {
        last = columns;
        if last.width <= width {
            break;
        }
    }
    let slack = width - last.width;
    if slack > 0.0 {
        // What is left is shared among the columns, the last one too, where words may still be cut.
        let share = (slack / last.at.len().max(1) as f64).min(MOST_SLACK);
        for (column, at) in last.at.iter_mut().enumerate() {
            *at += share * column as f64;
        }
        last.width = width;
    }
    last
}

fn columns(needs: &[Need<'_>], tightness: Tightness) -> Columns {
    let many = needs.iter().map(|need| need.column + 1).max().unwrap_or(1);
    let mut widths = vec![LEAST; many];
    for need in needs.iter().filter(|need| !need.ends) {
        if let Some(width) = widths.get_mut(need.column) {
            *width = width.max(need.width(tightness));
        }
    }
    let mut at = Vec::with_capacity(many);
    let mut next = FIRST;
    for width in &widths {
        at.push(next);
        next += width;
    }
    let end = |need: &Need<'_>| at.get(need.column).copied().unwrap_or(FIRST) + need.width(tightness);
    let width = needs.iter().map(end).fold(0.0, f64::max);
    Columns { at, width }
}

impl Columns {
    /// The middle of a column's signs.
    pub(super) fn at(&self, column: usize) -> f64 {
        self.at.get(column).copied().unwrap_or(self.width)
    }

    /// The place where the name of a part must end: at the next column, or at the edge where its line ends.
    pub(super) fn end(&self, column: usize, goes_on: bool) -> f64 {
        if goes_on { self.at(column + 1) - GAPS.1 } else { self.width }
    }

    /// The room for remarks under a line.
    pub(super) fn under(&self, column: usize) -> f64 {
        self.at(column + 1) - self.at(column) - 2.0 * GAPS.0
    }
}

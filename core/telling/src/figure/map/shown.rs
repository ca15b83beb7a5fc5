//! The rows of a map with their words: worked out once, drawn in any layout.

use phrase::{Arg, Phrase};

use super::fold::{Row, folded};
use super::narrow::CAPTION;
use super::node::{Node, Plan, Root};
use super::told::{Told, told};
use super::{Folding, Layout, WiringMap, narrow, tree, wide};
use crate::figure::mark::{Figure, Ink};
use crate::figure::measure::legible;
use crate::figure::sheet::{Sheet, mirrored};
use crate::words::Language;

/// A map as it is shown, in a language: its rows, folded, with their words.
pub struct ShownMap<'a> {
    plan: Plan,
    rows: Vec<Row>,
    told: Vec<Option<Told>>,
    language: &'a Language,
    name: Phrase,
    description: Phrase,
}

impl<'a> ShownMap<'a> {
    pub(super) fn of(map: &WiringMap<'_>, folding: &Folding, language: &'a Language) -> Self {
        let plan = map.plan(language);
        let rows = folded(&plan, folding);
        let told = rows.iter().map(|row| told(&plan, row, language)).collect();
        let (name, description) = (map.name(), map.description());
        Self { plan, rows, told, language, name, description }
    }

    /// The map as a figure; mirrored for who reads from right to left.
    pub fn figure(&self, layout: Layout) -> Figure {
        let mut sheet = Sheet::default();
        let size = match layout {
            Layout::Narrow => narrow::draw(&mut sheet, self),
            Layout::Wide(width) => wide::draw(&mut sheet, self, width),
        };
        let figure = sheet.figure(size, self.name.clone(), self.description.clone());
        if self.language.is_right_to_left() { mirrored(figure) } else { figure }
    }

    /// Whether anything is folded in it.
    pub fn is_folded(&self) -> bool {
        self.rows.iter().any(Row::folds)
    }

    /// The map as a tree in lines of text, for where nothing can be drawn.
    pub fn lines(&self) -> Vec<String> {
        tree::lines(self)
    }

    /// The rows.
    pub(super) fn rows(&self) -> &[Row] {
        &self.rows
    }

    /// The part of a row, or the first of those that it shows.
    pub(super) fn node(&self, row: usize) -> Option<&Node> {
        self.plan.node(self.rows.get(row)?.shows.first())
    }

    /// The words of a row.
    pub(super) fn told(&self, row: usize) -> Option<&Told> {
        self.told.get(row)?.as_ref()
    }

    /// The heading over a row, where one is: what does not fit, and what is not traced, stand apart from the rest.
    pub(super) fn headings(&self) -> Vec<Option<&'static str>> {
        let mut under = Root::Head;
        let heading = |(place, row): (usize, &Row)| {
            let root = self.node(place)?.root.filter(|root| row.feeder.is_none() && *root != under)?;
            under = root;
            Some(if root == Root::Wrong { "map-wrong-parts" } else { "map-loose-parts" })
        };
        self.rows.iter().enumerate().map(heading).collect()
    }

    /// Draws a heading under a rule at `y`.
    pub(super) fn put_heading(&self, sheet: &mut Sheet, (y, width): (f64, f64), id: &str) {
        sheet.dip(Ink::Text);
        sheet.hair((0.0, y), width);
        sheet.text((0.0, y + 20.0), CAPTION.fitted(&self.say(id), width), CAPTION);
    }

    /// Says a message without arguments.
    pub(super) fn say(&self, id: &str) -> String {
        legible(&self.language.say(&Phrase::new(id))).into_owned()
    }
}

/// Several parts in one phrase.
pub(super) fn several(parts: Vec<Phrase>) -> Arg {
    Arg::Several(parts.into_iter().map(|part| Arg::Phrase(Box::new(part))).collect())
}

//! Reading a table of a sheet field by field, so that every mistake is told with its line and none ends the reading.

use std::cell::RefCell;
use std::ops::Range;

use house::record::too_long;
use phrase::{Arg, Phrase};
use serde_spanned::Spanned;
use toml::de::{DeTable, DeValue};

use super::problem::{Place, Problem, Problems, shown};
use super::size::MOST_PIECES;

/// The most entries of one list.
const MOST_IN_A_LIST: usize = 100;
/// Beyond so many problems no nearest name is looked for: nobody reads that far, and looking takes time.
const MOST_SUGGESTED: usize = 1_000;
/// Longer words are no misspelt names.
const LONGEST_NAME: usize = 60;

/// The text of a sheet, and what was found wrong with it so far.
pub struct Source<'s> {
    text: &'s str,
    line_starts: Vec<usize>,
    problems: RefCell<Problems>,
}

impl<'s> Source<'s> {
    /// A sheet of this text.
    pub fn new(text: &'s str) -> Self {
        let line_starts = std::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1));
        // Of a sheet with more lines nothing is read.
        let line_starts = line_starts.take(MOST_PIECES + 2).collect();
        Self { text, line_starts, problems: RefCell::default() }
    }

    /// How many lines there are; beyond [`MOST_PIECES`] they are not counted.
    pub const fn lines(&self) -> usize {
        self.line_starts.len()
    }

    /// The line of a place in the text, from 1.
    pub fn line(&self, at: usize) -> usize {
        self.line_starts.partition_point(|start| *start <= at)
    }

    /// The whole text.
    pub const fn text(&self) -> &'s str {
        self.text
    }

    /// The text of a line, which counts from 1.
    pub fn line_text(&self, number: usize) -> &'s str {
        let start = |number: usize| self.line_starts.get(number).copied().unwrap_or(self.text.len());
        self.slice(&(start(number.saturating_sub(1))..start(number)))
    }

    /// What stands in a span.
    pub fn slice(&self, span: &Range<usize>) -> &'s str {
        self.text.get(span.clone()).unwrap_or_default()
    }

    /// Notes a problem.
    pub fn refuse(
        &self,
        span: &Range<usize>,
        place: &Place,
        field: Option<&str>,
        found: &str,
        expected: Phrase,
    ) {
        self.problems.borrow_mut().add(Problem {
            at: span.start,
            line: self.line(span.start),
            column: 0,
            place: place.clone(),
            field: field.map(shown),
            found: shown(found),
            expected,
        });
    }

    /// Whether nothing was found wrong yet.
    pub fn is_right(&self) -> bool {
        self.problems.borrow().is_empty()
    }

    /// The nearest name, as long as there are few problems.
    fn nearest<'n>(&self, found: &str, names: impl Iterator<Item = &'n str>) -> Option<&'n str> {
        let few = self.problems.borrow().count() < MOST_SUGGESTED;
        if few { nearest(found, names) } else { None }
    }

    /// What was found wrong, by line.
    pub fn into_problems(self) -> Problems {
        let mut problems = self.problems.into_inner();
        problems.sort();
        for problem in problems.listed_mut() {
            let start = self.line_starts.get(problem.line - 1).copied().unwrap_or(0);
            problem.column = self.text.get(start..problem.at).map_or(0, |before| before.chars().count()) + 1;
        }
        problems
    }
}

/// One table of a sheet.
pub struct Section<'s> {
    source: &'s Source<'s>,
    table: &'s DeTable<'s>,
    span: Range<usize>,
    /// Which table it is.
    pub place: Place,
    /// The field that this table is the value of: `adapter` for `adapter = { ... }`.
    under: Option<String>,
    asked: RefCell<Vec<&'static str>>,
}

impl<'s> Section<'s> {
    /// A table of the sheet.
    pub fn new(source: &'s Source<'s>, table: &'s DeTable<'s>, span: Range<usize>, place: Place) -> Self {
        Self { source, table, span, place, under: None, asked: RefCell::default() }
    }

    /// This table, once it is known what it is: fields are called by their own names from here on.
    pub fn enter(&mut self, place: Place) {
        self.place = place;
        self.under = None;
    }

    /// Whether a field stands there.
    pub fn has(&self, name: &str) -> bool {
        self.table.contains_key(name)
    }

    /// A field's value as written, for messages only: the field does not count as asked for.
    pub fn peek(&self, name: &str) -> Option<&'s str> {
        let value = self.table.get(name)?;
        Some(self.field_of(name, value).written())
    }

    /// A field, if it stands there. Every field asked for counts as known.
    pub fn field(&self, name: &'static str) -> Option<Field<'s>> {
        self.asked.borrow_mut().push(name);
        let value = self.table.get(name)?;
        Some(self.field_of(name, value))
    }

    /// A field that must be there.
    pub fn required(&self, name: &'static str) -> Option<Field<'s>> {
        let field = self.field(name);
        if field.is_none() {
            let missing = Phrase::new("sheet-missing").text("field", name);
            self.refuse(name, "", missing);
        }
        field
    }

    /// A text, if the field stands there.
    pub fn text(&self, name: &'static str) -> Option<&'s str> {
        self.field(name)?.long_text()
    }

    /// A value read from text, if the field stands there.
    pub fn parse<T>(&self, name: &'static str, read: impl Fn(&str) -> Result<T, Phrase>) -> Option<T> {
        self.field(name)?.parse(read)
    }

    /// Whether a flag is set.
    pub fn flag(&self, name: &'static str) -> Option<bool> {
        self.field(name)?.flag()
    }

    /// Every field, whatever its name; all count as known.
    pub fn every_field(&self) -> impl Iterator<Item = (&'s str, Field<'s>)> + '_ {
        self.table.iter().map(|(name, value)| (name.get_ref().as_ref(), self.field_of(name.get_ref(), value)))
    }

    /// Notes a problem with a field of this table, or with the lack of it.
    pub fn refuse(&self, name: &str, found: &str, expected: Phrase) {
        let span = self.table.get(name).map_or_else(|| self.span.clone(), Spanned::span);
        self.source.refuse(&span, &self.place, Some(&self.path(name)), found, expected);
    }

    /// Notes a problem with this table as a whole.
    pub fn refuse_whole(&self, found: &str, expected: Phrase) {
        self.source.refuse(&self.span, &self.place, None, found, expected);
    }

    /// Notes every field that was never asked for. Call when all that are known have been asked for.
    pub fn finish(&self) {
        let asked = self.asked.borrow();
        for name in self.table.keys() {
            if asked.iter().any(|known| name.get_ref().as_ref() == *known) {
                continue;
            }
            let near = self.source.nearest(name.get_ref(), asked.iter().copied());
            let expected = suggesting("sheet-field", near, &list(asked.iter().copied()));
            let path = self.path(name.get_ref());
            self.source.refuse(&name.span(), &self.place, Some(&path), name.get_ref(), expected);
        }
    }

    fn path(&self, name: &str) -> String {
        self.under.as_ref().map_or_else(|| name.to_owned(), |under| format!("{under}.{name}"))
    }

    fn field_of(&self, name: &str, value: &'s Spanned<DeValue<'s>>) -> Field<'s> {
        let name = self.path(name);
        Field {
            source: self.source,
            place: self.place.clone(),
            name,
            span: value.span(),
            value: value.get_ref(),
        }
    }
}

/// One field of a table, with its value.
#[derive(Clone)]
pub struct Field<'s> {
    source: &'s Source<'s>,
    place: Place,
    name: String,
    span: Range<usize>,
    value: &'s DeValue<'s>,
}

impl<'s> Field<'s> {
    /// Its value as written.
    pub fn written(&self) -> &'s str {
        self.value.as_str().unwrap_or_else(|| self.source.slice(&self.span))
    }

    /// The line that it stands on.
    pub fn line(&self) -> usize {
        self.source.line(self.span.start)
    }

    /// Notes that its value is not what was expected.
    pub fn refuse(&self, expected: Phrase) {
        self.refuse_as(self.written(), expected);
    }

    /// Notes a problem with it, in other words than its value's.
    pub fn refuse_as(&self, found: &str, expected: Phrase) {
        self.source.refuse(&self.span, &self.place, Some(&self.name), found, expected);
    }

    /// Its text; anything else is noted.
    pub fn text(&self) -> Option<&'s str> {
        let text = self.value.as_str().filter(|text| !text.trim().is_empty());
        if text.is_none() {
            self.refuse(Phrase::new("sheet-text"));
        }
        text
    }

    /// Its text; refused beyond what one value of a survey holds (as JSON, which is how it is kept).
    pub fn long_text(&self) -> Option<&'s str> {
        let text = self.text()?;
        let Some((found, most)) = too_long(&self.name, text) else { return Some(text) };
        let count = |count: usize| Arg::Count(count as u64);
        self.refuse(Phrase::new("sheet-text-long").with("most", count(most)).with("found", count(found)));
        None
    }

    /// Notes that its value is none of the names there are, with the nearest.
    pub fn refuse_name<'n>(&self, message: &str, names: impl Iterator<Item = &'n str> + Clone) {
        const MOST_TOLD: usize = 8;
        let near = self.source.nearest(self.written(), names.clone());
        self.refuse(suggesting(message, near, &list(names.take(MOST_TOLD))));
    }

    /// A value read from its text, or from what stands there as a bare number.
    pub fn parse<T>(&self, read: impl Fn(&str) -> Result<T, Phrase>) -> Option<T> {
        read(self.written().trim()).map_err(|expected| self.refuse(expected)).ok()
    }

    /// Yes or no.
    pub fn flag(&self) -> Option<bool> {
        let flag = self.value.as_bool();
        if flag.is_none() {
            self.refuse(Phrase::new("sheet-flag"));
        }
        flag
    }

    /// A whole number of this range.
    pub fn whole(&self, low: u8, high: u8) -> Option<u8> {
        let number = self.value.as_integer().and_then(|number| number.as_str().parse().ok());
        let number = number.filter(|number| (low..=high).contains(number));
        if number.is_none() {
            let count = |number| Arg::Count(u64::from(number));
            self.refuse(Phrase::new("sheet-whole").with("low", count(low)).with("high", count(high)));
        }
        number
    }

    /// Whether its value is a table.
    pub fn is_table(&self) -> bool {
        self.value.is_table()
    }

    /// Its value as a table; anything else is noted with what was expected.
    pub fn table(&self, expected: Phrase) -> Option<Section<'s>> {
        let Some(table) = self.value.as_table() else {
            self.refuse(expected);
            return None;
        };
        Some(Section {
            source: self.source,
            table,
            span: self.span.clone(),
            place: self.place.clone(),
            under: Some(self.name.clone()),
            asked: RefCell::default(),
        })
    }

    /// Its values: those of a list, or the one that stands there. A very long list is noted and counts as empty.
    pub fn each(&self) -> Vec<Self> {
        let all = self.every();
        if all.len() > MOST_IN_A_LIST {
            let most = Arg::Count(MOST_IN_A_LIST as u64);
            self.refuse_as(&all.len().to_string(), Phrase::new("sheet-list-long").with("most", most));
            return Vec::new();
        }
        all
    }

    /// Its values, however many.
    pub fn every(&self) -> Vec<Self> {
        match self.value.as_array() {
            None => vec![self.clone()],
            Some(list) => list
                .iter()
                .map(|value| Field { span: value.span(), value: value.get_ref(), ..self.clone() })
                .collect(),
        }
    }
}

/// What to say where one of a few names was expected: all of them, and the nearest to what was found.
pub fn one_of<'n>(message: &str, found: &str, names: impl Iterator<Item = &'n str> + Clone) -> Phrase {
    suggesting(message, nearest(found, names.clone()), &list(names))
}

fn list<'n>(names: impl Iterator<Item = &'n str>) -> String {
    names.collect::<Vec<_>>().join(", ")
}

fn suggesting(message: &str, near: Option<&str>, names: &str) -> Phrase {
    match near {
        Some(near) => Phrase::new(format!("{message}-near")).text("near", near),
        None => Phrase::new(message),
    }
    .text("names", names)
}

/// The name that was probably meant.
fn nearest<'n>(found: &str, names: impl Iterator<Item = &'n str>) -> Option<&'n str> {
    if found.len() > LONGEST_NAME {
        return None;
    }
    let found = found.to_lowercase();
    let near = names.map(|name| (strsim::damerau_levenshtein(&found, &name.to_lowercase()), name)).min()?;
    let close = found.chars().count().max(near.1.chars().count()).div_ceil(3);
    (near.0 <= close).then_some(near.1)
}

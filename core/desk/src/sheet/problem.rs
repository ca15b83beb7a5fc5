//! What is wrong with a sheet: where, what was found, what was expected, what to do.

use phrase::{Arg, Phrase};

/// The most problems of one sheet that are listed; the rest is counted.
pub const MOST_LISTED: usize = 20;
/// So many are kept at a time: those that stand first.
const MOST_KEPT: usize = 1_000;

/// One thing wrong with a sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct Problem {
    /// Where in the text, in bytes.
    pub(super) at: usize,
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1; of those that are listed.
    pub column: usize,
    /// Which table of the sheet: `[[part]] S1`.
    pub place: Place,
    /// Which field of it, as it is shown; `None` where the whole table is meant.
    pub field: Option<String>,
    /// What stands there, as written.
    pub found: String,
    /// What was expected. Its attribute `do` says what to do.
    pub expected: Phrase,
}

/// A table of a sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// The sheet as a whole.
    Whole,
    /// The table `[survey]`.
    Survey,
    /// One of the tables that may stand several times.
    Row {
        /// Its heading: `part`, `room`, `service`, `reading`.
        heading: &'static str,
        /// Which one, from 1.
        number: usize,
        /// Its tag or name, if it has one.
        name: Option<String>,
    },
}

impl Place {
    /// How the place is named in a sentence.
    pub fn phrase(&self) -> Phrase {
        match self {
            Self::Whole => Phrase::new("sheet-place-whole"),
            Self::Survey => Phrase::new("sheet-place-survey"),
            Self::Row { heading, number, name: None } => Phrase::new("sheet-place-number")
                .text("heading", *heading)
                .with("number", Arg::Count(*number as u64)),
            Self::Row { heading, name: Some(name), .. } => {
                Phrase::new("sheet-place-named").text("heading", *heading).text("name", shown(name))
            }
        }
    }
}

/// All that is wrong with a sheet, in the order of its lines: the first of it, and how much it is.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Problems {
    list: Vec<Problem>,
    count: usize,
}

impl Problems {
    /// Adds a problem.
    pub fn add(&mut self, problem: Problem) {
        self.count += 1;
        self.list.push(problem);
        if self.list.len() == 2 * MOST_KEPT {
            self.sort();
            self.list.truncate(MOST_KEPT);
        }
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.count == 0
    }

    /// Those that are not among others, wherever they stand.
    #[must_use]
    pub fn without(self, others: &Self) -> Self {
        let is_new = |problem: &Problem| {
            let same = |other: &Problem| {
                (&other.place, &other.field, &other.found, &other.expected)
                    == (&problem.place, &problem.field, &problem.found, &problem.expected)
            };
            !others.list.iter().any(same)
        };
        let list: Vec<_> = self.list.into_iter().filter(is_new).collect();
        Self { count: list.len(), list }
    }

    /// How many there are, listed or not.
    pub fn count(&self) -> usize {
        self.count
    }

    /// The first [`MOST_LISTED`], by line.
    pub fn listed(&self) -> impl Iterator<Item = &Problem> {
        self.list.iter().take(MOST_LISTED)
    }

    /// The same, to be filled in.
    pub fn listed_mut(&mut self) -> impl Iterator<Item = &mut Problem> {
        self.list.iter_mut().take(MOST_LISTED)
    }

    /// Puts them in the order in which they stand.
    pub fn sort(&mut self) {
        self.list.sort_by_key(|problem| problem.at);
    }
}

/// What is wrong with a value.
#[derive(Debug)]
pub enum ValueFault {
    /// The thing has no such field, or none that is set so.
    NoField {
        /// Those that it has.
        known: Vec<&'static str>,
    },
    /// It cannot be left open.
    Needed,
    /// A tag or a name that something else has.
    Taken,
    /// A cable's field of a part that no cable is known to lead to.
    NoRun,
    /// What the sheet's reader says.
    Problems(Problems),
}

/// Text of a sheet as it is shown in a message: on one line, short, control characters made visible.
pub fn shown(text: &str) -> String {
    const MOST: usize = 60;
    let line = text.lines().next().unwrap_or_default();
    let cut = line.chars().nth(MOST).is_some() || text.lines().nth(1).is_some();
    let mut shown: String = line
        .chars()
        .take(MOST)
        .flat_map(|c| if c.is_control() { c.escape_unicode().collect::<Vec<_>>() } else { vec![c] })
        .collect();
    if cut {
        shown.push_str(" ...");
    }
    shown
}

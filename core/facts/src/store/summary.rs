//! What a list of surveys shows of each: derived from the facts, kept beside them in the same transaction.

use std::collections::BTreeSet;

use rusqlite::{Connection, OptionalExtension, params};
use serde_json::Value;
use uuid::Uuid;

use super::row::Bytes;
use super::sum;
use crate::fact::{FactId, Ledger, Removal, SubjectId, SurveyId, reserved};

/// What a list shows of one survey.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Summary {
    /// Its name.
    pub name: Option<String>,
    /// Where the house is, in the owner's words.
    pub place: Option<String>,
    /// The newest fact: [`FactId::ms`] is when something was last written.
    pub newest: Option<FactId>,
    /// How many facts there are.
    pub facts: u64,
    /// How far the survey has come.
    pub progress: Progress,
}

/// How many things of each kind are recorded and not removed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Progress {
    /// Rooms.
    pub rooms: u64,
    /// Parts on the coax.
    pub parts: u64,
    /// Cables between them.
    pub runs: u64,
    /// Photos.
    pub photos: u64,
    /// Notes.
    pub notes: u64,
    /// Readings.
    pub readings: u64,
}

impl Progress {
    fn count_of(&mut self, is: &str) -> Option<&mut u64> {
        match is {
            "room" => Some(&mut self.rooms),
            reserved::PART => Some(&mut self.parts),
            "run" => Some(&mut self.runs),
            reserved::PHOTO => Some(&mut self.photos),
            reserved::NOTE => Some(&mut self.notes),
            "reading" => Some(&mut self.readings),
            _ => None,
        }
    }
}

impl Summary {
    /// Works it out from all facts.
    pub(super) fn of(ledger: &Ledger, survey: SurveyId) -> Self {
        let mut summary = Self::default();
        for subject in ledger.subjects() {
            summary.count(ledger, subject, |count| count + 1);
        }
        summary.read_rest(ledger, survey);
        summary
    }

    /// Takes the subjects out before facts about them are added. [`Summary::add`] counts them again.
    pub(super) fn take_out(&mut self, ledger: &Ledger, subjects: &BTreeSet<SubjectId>) {
        for &subject in subjects {
            self.count(ledger, subject, |count| count.saturating_sub(1));
        }
    }

    /// Counts the subjects as they are now, and reads the rest again.
    pub(super) fn add(&mut self, ledger: &Ledger, survey: SurveyId, subjects: &BTreeSet<SubjectId>) {
        for &subject in subjects {
            self.count(ledger, subject, |count| count + 1);
        }
        self.read_rest(ledger, survey);
    }

    fn count(&mut self, ledger: &Ledger, subject: SubjectId, change: impl Fn(u64) -> u64) {
        let is = ledger.shown(subject, reserved::IS).and_then(|fact| fact.value().as_str());
        if let Some(count) = is.and_then(|is| self.progress.count_of(is))
            && !is_forgotten_photo(ledger, subject)
            && !matches!(ledger.removal(subject), Removal::Removed { .. })
        {
            *count = change(*count);
        }
    }

    fn read_rest(&mut self, ledger: &Ledger, survey: SurveyId) {
        let text = |name| {
            let shown = ledger.shown(survey.subject(), name)?;
            shown.value().as_str().map(str::to_owned)
        };
        self.name = text(reserved::NAME);
        self.place = text(reserved::PLACE);
        self.newest = ledger.facts().next_back().map(crate::fact::Fact::id);
        self.facts = u64::try_from(ledger.len()).unwrap_or(u64::MAX);
    }

    /// Whether it was made of these facts.
    pub(super) fn is_of(&self, ledger: &Ledger) -> bool {
        usize::try_from(self.facts).is_ok_and(|facts| facts == ledger.len())
            && self.newest == ledger.facts().next_back().map(crate::fact::Fact::id)
    }

    /// The row, if there is one, whole or changed since it was written.
    pub(super) fn read(connection: &Connection) -> rusqlite::Result<Kept> {
        if !super::meta::has_sums(connection)? {
            let columns = "name, place, newest, facts, rooms, parts, runs, photos, notes, readings, 0, 0";
            let older = Self::read_columns(connection, columns)?;
            return Ok(older.map_or(Kept::Nothing, |(summary, total, _)| Kept::Whole(summary, total)));
        }
        let columns = "name, place, newest, facts, rooms, parts, runs, photos, notes, readings, total, sum";
        Ok(match Self::read_columns(connection, columns) {
            Ok(None) => Kept::Nothing,
            Ok(Some((summary, total, sum))) if sum == summary.sum(total) => Kept::Whole(summary, total),
            Ok(Some(_))
            | Err(rusqlite::Error::FromSqlConversionFailure(..) | rusqlite::Error::InvalidColumnType(..)) => {
                Kept::Changed
            }
            Err(error) => return Err(error),
        })
    }

    fn read_columns(connection: &Connection, columns: &str) -> rusqlite::Result<Option<(Self, i64, i64)>> {
        let mut select = connection.prepare_cached(&format!("SELECT {columns} FROM summary"))?;
        select
            .query_row((), |row| {
                let count =
                    |column: usize| row.get::<_, i64>(column).map(|count| u64::try_from(count).unwrap_or(0));
                let newest: Option<Bytes> = row.get(2)?;
                let summary = Self {
                    name: row.get(0)?,
                    place: row.get(1)?,
                    newest: newest.and_then(|id| FactId::try_from(id.0).ok()),
                    facts: count(3)?,
                    progress: Progress {
                        rooms: count(4)?,
                        parts: count(5)?,
                        runs: count(6)?,
                        photos: count(7)?,
                        notes: count(8)?,
                        readings: count(9)?,
                    },
                };
                Ok((summary, row.get(10)?, row.get(11)?))
            })
            .optional()
    }

    /// The sum of its row.
    fn sum(&self, total: i64) -> i64 {
        let progress = self.progress;
        let counts = [
            self.facts,
            progress.rooms,
            progress.parts,
            progress.runs,
            progress.photos,
            progress.notes,
            progress.readings,
        ];
        let counts = counts.map(u64::to_le_bytes);
        let newest = self.newest.map(Uuid::from);
        let texts = [self.name.as_deref(), self.place.as_deref()].map(|text| text.map(str::as_bytes));
        let newest = newest.as_ref().map(|id| id.as_bytes().as_slice());
        let total = total.to_le_bytes();
        let numbers = counts.iter().map(<[u8; 8]>::as_slice).chain([total.as_slice()]).map(Some);
        sum::of_columns(texts.into_iter().chain([newest]).chain(numbers))
    }

    /// Writes the row in place of the one that is there. `total` is what the sums of all facts add up to.
    pub(super) fn write(&self, connection: &Connection, total: i64) -> rusqlite::Result<()> {
        let count = |count: u64| i64::try_from(count).unwrap_or(i64::MAX);
        let progress = self.progress;
        let mut insert = connection.prepare_cached(
            "INSERT OR REPLACE INTO summary (only_row, name, place, newest, facts, rooms, parts, runs, photos, notes, \
             readings, total, sum) VALUES (1, ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)",
        )?;
        insert.execute(params![
            self.name,
            self.place,
            self.newest.map(|id| Bytes(Uuid::from(id))),
            count(self.facts),
            count(progress.rooms),
            count(progress.parts),
            count(progress.runs),
            count(progress.photos),
            count(progress.notes),
            count(progress.readings),
            total,
            self.sum(total),
        ])?;
        Ok(())
    }
}

fn is_forgotten_photo(ledger: &Ledger, subject: SubjectId) -> bool {
    ledger.shown(subject, reserved::IMAGE).is_some_and(crate::fact::Fact::is_forgotten)
}

/// The row of the summary as it is found.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Kept {
    /// There is none.
    Nothing,
    /// It is not what was written.
    Changed,
    /// It is, with what the sums of all facts add up to; 0 in a layout without sums.
    Whole(Summary, i64),
}

/// What the sums of all facts add up to, as it was last written; nothing if that cannot be known.
pub(super) fn total(connection: &Connection) -> rusqlite::Result<Option<i64>> {
    match Summary::read(connection)? {
        Kept::Whole(_, total) => Ok(Some(total)),
        Kept::Nothing | Kept::Changed => Ok(None),
    }
}

/// Throws the row of an older layout away: it is made again from the facts at this opening.
pub(super) fn fill_sums(connection: &Connection) -> rusqlite::Result<()> {
    connection.execute("DELETE FROM summary", ()).map(drop)
}

/// What a row says without the whole survey having been read: for surveys of layout 1, which have no row, a list
/// shows only name and place.
pub(super) fn peek_layout_1(connection: &Connection, survey: SurveyId) -> rusqlite::Result<Summary> {
    let text = |name: &str| -> rusqlite::Result<Option<String>> {
        let value: Option<Option<String>> = connection
            .query_row(
                "SELECT value FROM fact WHERE subject = ?1 AND field = ?2 \
                 AND id NOT IN (SELECT replaced FROM fact_over) ORDER BY id DESC LIMIT 1",
                params![Bytes(survey.uuid()), name],
                |row| row.get(0),
            )
            .optional()?;
        let value: Option<Value> = value.flatten().and_then(|text| serde_json::from_str(&text).ok());
        Ok(value.and_then(|value| value.as_str().map(str::to_owned)))
    };
    let newest: Option<Bytes> = connection.query_row("SELECT max(id) FROM fact", (), |row| row.get(0))?;
    let facts: i64 = connection.query_row("SELECT count(*) FROM fact", (), |row| row.get(0))?;
    Ok(Summary {
        name: text(reserved::NAME)?,
        place: text(reserved::PLACE)?,
        newest: newest.and_then(|id| FactId::try_from(id.0).ok()),
        facts: u64::try_from(facts).unwrap_or(0),
        progress: Progress::default(),
    })
}

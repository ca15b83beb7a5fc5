//! Drafts: half-typed input. It belongs to this device, survives the app's death, is never exported, and goes when
//! it becomes a fact.

use rusqlite::{Connection, Row, params};
use serde_json::Value;

use super::row::Bytes;
use super::{Store, fault, pragma, repair, sum};
use crate::error::{FactsError, Result};
use crate::fact::{ActId, Edit, Fact, SubjectId};

/// The longest draft, in bytes of its text.
pub const MAX_DRAFT_BYTES: usize = 64 * 1024;

/// Half-typed input for one field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Draft {
    /// What it will speak of.
    pub subject: SubjectId,
    /// Which field it was typed into.
    pub field: String,
    /// The text as typed.
    pub text: String,
    /// When it was last saved, milliseconds since 1970 by this device's clock.
    pub saved_ms: u64,
}

impl Store {
    /// Saves what was typed so far, in place of what was saved before. When this returns, it is on the disk.
    ///
    /// # Errors
    /// `DraftTooLong` above [`MAX_DRAFT_BYTES`], `Fact` for a field name that no fact could have, or what a write
    /// reports.
    pub fn save_draft(&mut self, draft: &Draft) -> Result<()> {
        check(draft)?;
        write(&self.connection, draft).map_err(|error| fault::of_sqlite(&self.folder, error))
    }

    /// As [`Store::save_draft`], for each second while somebody types or looks around: it outlives the app's death, and the
    /// system brings it to the disk when it likes, so it may be lost with the power. It waits for nobody: returns false,
    /// with nothing saved, while another program writes.
    ///
    /// It costs no sync once the log has been begun, as [`Store::save_draft`] and every act do.
    ///
    /// # Errors
    /// As [`Store::save_draft`].
    pub fn save_draft_unsynced(&mut self, draft: &Draft) -> Result<bool> {
        check(draft)?;
        match pragma::unsynced(&self.connection, |connection| write(connection, draft)) {
            Ok(()) => Ok(true),
            Err(error) => match fault::of_sqlite(&self.folder, error) {
                FactsError::Busy { .. } => Ok(false),
                other => Err(other),
            },
        }
    }

    /// All drafts, by subject and field.
    ///
    /// # Errors
    /// What reading reports.
    pub fn drafts(&self) -> Result<Vec<Draft>> {
        self.read_drafts().map_err(|error| fault::of_sqlite(&self.folder, error))
    }

    fn read_drafts(&self) -> rusqlite::Result<Vec<Draft>> {
        let mut select = self.connection.prepare_cached(
            "SELECT subject, field, text, saved_ms, sum FROM draft ORDER BY subject, field",
        )?;
        let rows = select.query_map((), |row| Ok(whole_in(row)))?;
        rows.filter_map(Result::transpose).collect()
    }

    /// Throws a draft away; returns whether there was one.
    ///
    /// # Errors
    /// What a write reports.
    pub fn drop_draft(&mut self, subject: SubjectId, field: &str) -> Result<bool> {
        delete(&self.connection, subject, field).map_err(|error| fault::of_sqlite(&self.folder, error))
    }

    /// Makes a draft a fact: writes the edit and throws the draft of its field away, both or neither. For the
    /// moment when the field is left.
    ///
    /// # Errors
    /// As [`Store::write`]; the draft then stays.
    pub fn finish_draft(&mut self, edit: Edit) -> Result<ActId> {
        let (subject, field) = (edit.subject, edit.field.clone());
        let folder = self.folder.clone();
        self.write_with(&[edit], |transaction| {
            delete(transaction, subject, &field).map(drop).map_err(|error| fault::of_sqlite(&folder, error))
        })
    }
}

fn check(draft: &Draft) -> Result<()> {
    if draft.text.len() > MAX_DRAFT_BYTES {
        return Err(FactsError::DraftTooLong { bytes: draft.text.len(), limit: MAX_DRAFT_BYTES });
    }
    crate::fact::check_field(&draft.field)?;
    Ok(())
}

fn write(connection: &Connection, draft: &Draft) -> rusqlite::Result<()> {
    let saved_ms = i64::try_from(draft.saved_ms).unwrap_or(i64::MAX);
    connection
        .prepare_cached(
            "INSERT INTO draft (subject, field, text, saved_ms, sum) VALUES (?1, ?2, ?3, ?4, ?5) ON CONFLICT \
             (subject, field) DO UPDATE SET text = excluded.text, saved_ms = excluded.saved_ms, sum = excluded.sum",
        )?
        .execute(params![Bytes(draft.subject.uuid()), draft.field, draft.text, saved_ms, sum_of(draft)])
        .map(drop)
}

/// Drafts of a field that ends so hold nothing that anybody typed.
pub const NOTHING_TYPED: &str = ".later";

/// Drops whatever was half typed when something is forgotten: it may be what is to vanish, under whatever name it was typed.
/// What holds nothing typed stays, unless a text that was forgotten stands in it.
pub(super) fn forget(connection: &Connection, forgotten: &[Fact]) -> rusqlite::Result<()> {
    let mut texts = Vec::new();
    for was in forgotten {
        collect_texts(was.value(), &mut texts);
    }
    let kept: Vec<(Bytes, String, String)> = connection
        .prepare("SELECT subject, field, text FROM draft")?
        .query_map((), |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?
        .collect::<rusqlite::Result<_>>()?;
    for (subject, field, text) in kept {
        let is_typed = !field.ends_with(NOTHING_TYPED);
        if is_typed || texts.iter().any(|gone| text.contains(gone.as_str())) {
            delete(connection, SubjectId::from_uuid(subject.0), &field)?;
        }
    }
    Ok(())
}

/// The texts in a value, but those too short to tell anything by.
fn collect_texts(value: &Value, texts: &mut Vec<String>) {
    match value {
        Value::String(text) if text.len() > 2 => texts.push(text.clone()),
        Value::Array(values) => values.iter().for_each(|value| collect_texts(value, texts)),
        Value::Object(members) => members.values().for_each(|value| collect_texts(value, texts)),
        _ => {}
    }
}

fn sum_of(draft: &Draft) -> i64 {
    let (subject, saved_ms) = (draft.subject.uuid(), draft.saved_ms.to_le_bytes());
    let texts = [draft.field.as_bytes(), draft.text.as_bytes()];
    sum::of_columns([subject.as_bytes().as_slice(), &saved_ms].into_iter().chain(texts).map(Some))
}

/// The draft of a row, whatever stands in it.
fn in_row(row: &Row<'_>) -> rusqlite::Result<Draft> {
    Ok(Draft {
        subject: SubjectId::from_uuid(row.get::<_, Bytes>(0)?.0),
        field: row.get(1)?,
        text: row.get(2)?,
        saved_ms: u64::try_from(row.get::<_, i64>(3)?).unwrap_or(0),
    })
}

/// The draft of a row. One that has changed on the disk is none: nobody typed that.
fn whole_in(row: &Row<'_>) -> Option<Draft> {
    let draft = in_row(row).ok()?;
    (row.get::<_, i64>(4).ok()? == sum_of(&draft)).then_some(draft)
}

/// Carries what is whole in a damaged database over into one that is built anew. What an older layout holds has no sum.
pub(super) fn carry_over(from: &Connection, to: &Connection, with_sums: bool) -> rusqlite::Result<()> {
    let sum = if with_sums { "sum" } else { "NULL" };
    let select = format!("SELECT subject, field, text, saved_ms, {sum} FROM draft");
    let mut drafts = Vec::new();
    repair::read_both_ways(from, &select, "subject DIR, field DIR", |row| {
        let draft = if with_sums { whole_in(row) } else { in_row(row).ok() };
        let is_whole = draft.is_some();
        drafts.extend(draft);
        is_whole
    });
    drafts.iter().try_for_each(|draft| write(to, draft))
}

/// Gives the rows of an older layout their sums.
pub(super) fn fill_sums(connection: &Connection) -> rusqlite::Result<()> {
    let drafts: Vec<Draft> = connection
        .prepare("SELECT subject, field, text, saved_ms FROM draft")?
        .query_map((), in_row)?
        .collect::<rusqlite::Result<_>>()?;
    drafts.iter().try_for_each(|draft| write(connection, draft))
}

pub(super) fn delete(connection: &Connection, subject: SubjectId, field: &str) -> rusqlite::Result<bool> {
    let mut delete = connection.prepare_cached("DELETE FROM draft WHERE subject = ?1 AND field = ?2")?;
    Ok(delete.execute(params![Bytes(subject.uuid()), field])? > 0)
}

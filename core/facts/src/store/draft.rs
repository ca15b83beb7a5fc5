//! Drafts: half-typed input. It belongs to this device, survives the app's death, is never exported, and goes when
//! it becomes a fact.

use rusqlite::{Connection, params};

use super::row::Bytes;
use super::{Store, fault, pragma};
use crate::error::{FactsError, Result};
use crate::fact::{ActId, Edit, SubjectId};

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
        let mut select = self
            .connection
            .prepare_cached("SELECT subject, field, text, saved_ms FROM draft ORDER BY subject, field")?;
        let rows = select.query_map((), |row| {
            Ok(Draft {
                subject: SubjectId::from_uuid(row.get::<_, Bytes>(0)?.0),
                field: row.get(1)?,
                text: row.get(2)?,
                saved_ms: u64::try_from(row.get::<_, i64>(3)?).unwrap_or(0),
            })
        })?;
        rows.collect()
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
            "INSERT INTO draft (subject, field, text, saved_ms) VALUES (?1, ?2, ?3, ?4) \
             ON CONFLICT (subject, field) DO UPDATE SET text = excluded.text, saved_ms = excluded.saved_ms",
        )?
        .execute(params![Bytes(draft.subject.uuid()), draft.field, draft.text, saved_ms])
        .map(drop)
}

pub(super) fn delete(connection: &Connection, subject: SubjectId, field: &str) -> rusqlite::Result<bool> {
    let mut delete = connection.prepare_cached("DELETE FROM draft WHERE subject = ?1 AND field = ?2")?;
    Ok(delete.execute(params![Bytes(subject.uuid()), field])? > 0)
}

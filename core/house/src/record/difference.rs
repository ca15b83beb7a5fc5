//! A change that was really made, as edits of the record.

use std::collections::BTreeMap;

use facts::error::Result;
use facts::fact::{Edit, Ledger, Removal, SubjectId, value_of};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};

use super::{ChangeKind, Outcome, Part, PartKind, Room, Run, Survey, field};

impl ChangeKind {
    /// The edits that say that this change was made, and how it ended: what differs between the house before and after,
    /// and a piece of work of its own. Written as one act, they can be undone as one.
    ///
    /// # Errors
    /// `Fact` if a record cannot be written as a fact.
    pub fn done(
        self,
        before: &Survey,
        after: &Survey,
        ledger: &Ledger,
        outcome: Outcome,
    ) -> Result<Vec<Edit>> {
        let mut edits = edits_between(before, after, ledger)?;
        edits.extend(self.ended(outcome)?);
        Ok(edits)
    }

    /// The edits that say how this change ended where the house is as it was: it could not be done, or was put back.
    ///
    /// # Errors
    /// As [`ChangeKind::done`].
    pub fn ended(self, outcome: Outcome) -> Result<Vec<Edit>> {
        let work = SubjectId::random();
        Ok(vec![
            Edit::new(work, field::IS, "work"),
            Edit::new(work, field::CHANGE, value_of(&self)?),
            Edit::new(work, field::OUTCOME, value_of(&outcome)?),
        ])
    }
}

/// What has to be said so that the records of `before` stand as in `after`.
///
/// # Errors
/// `Fact` if a record cannot be written as a fact.
pub fn edits_between(before: &Survey, after: &Survey, ledger: &Ledger) -> Result<Vec<Edit>> {
    let mut changes = Changes { ledger, edits: Vec::new() };
    changes.take(&before.runs, &after.runs, "run", Changes::run)?;
    changes.take(&before.rooms, &after.rooms, "room", Changes::room)?;
    changes.take(&before.parts, &after.parts, "part", Changes::part)?;
    Ok(changes.edits)
}

struct Changes<'a> {
    ledger: &'a Ledger,
    edits: Vec<Edit>,
}

impl Changes<'_> {
    fn take<T: PartialEq>(
        &mut self,
        before: &BTreeMap<SubjectId, T>,
        after: &BTreeMap<SubjectId, T>,
        is: &str,
        differ: fn(&mut Self, SubjectId, Option<&T>, &T) -> Result<()>,
    ) -> Result<()> {
        for (id, there) in after {
            let was = before.get(id);
            if was.is_none() {
                // What was taken out once and comes again is the same thing.
                if self.ledger.removal(*id) != Removal::Present {
                    self.edits.push(Edit::bring_back(*id));
                }
                self.edits.push(Edit::new(*id, field::IS, is));
            }
            if was != Some(there) {
                differ(self, *id, was, there)?;
            }
        }
        for id in before.keys().filter(|id| !after.contains_key(id)) {
            self.edits.push(self.ledger.remove(*id));
        }
        Ok(())
    }

    fn field<T: PartialEq + Serialize + DeserializeOwned>(
        &mut self,
        id: SubjectId,
        name: impl Into<String>,
        was: Option<&T>,
        now: &T,
    ) -> Result<()> {
        if was != Some(now) {
            self.edits.push(Edit::new(id, name, value_of(now)?));
        }
        Ok(())
    }

    fn part(&mut self, id: SubjectId, was: Option<&Part>, now: &Part) -> Result<()> {
        self.field(id, field::KIND, was.map(|part| &part.kind), &now.kind)?;
        self.field(id, field::TAG, was.map(|part| &part.tag), &now.tag)?;
        self.field(id, field::WHERE, was.map(|part| &part.place), &now.place)?;
        self.field(id, field::FEED, was.map(|part| &part.feed), &now.feed)?;
        self.field(id, field::LABEL, was.map(|part| &part.label), &now.label)?;
        self.field(id, field::RATING, was.map(|part| &part.rating), &now.rating)?;
        self.field(id, field::ROOM, was.map(|part| &part.room), &now.room)?;
        self.field(id, field::PLUGGED, was.map(|part| &part.plugged), &now.plugged)?;
        self.field(id, field::ADAPTER, was.map(|part| &part.adapter), &now.adapter)?;
        self.field(id, field::SHARING, was.map(|part| &part.sharing), &now.sharing)?;
        self.field(id, field::DEVICE_FILTER, was.map(|part| &part.device_filter), &now.device_filter)?;
        if now.kind == PartKind::Entry {
            self.field(id, field::ENTRY_KIND, was.map(|part| &part.entry_kind), &now.entry_kind)?;
            self.field(id, field::ENTRY_STATE, was.map(|part| &part.entry_state), &now.entry_state)?;
        }
        if was.is_some_and(|part| part.measured.is_some()) && now.measured.is_none() {
            self.edits.push(Edit::new(id, field::MEASUREMENT, Value::Null));
        }
        for (port, end) in &now.ends {
            self.field(id, field::end_field(*port), was.and_then(|part| part.ends.get(port)), end)?;
        }
        for port in was.iter().flat_map(|part| part.ends.keys()).filter(|port| !now.ends.contains_key(port)) {
            self.edits.push(Edit::new(id, field::end_field(*port), Value::Null));
        }
        Ok(())
    }

    fn run(&mut self, id: SubjectId, was: Option<&Run>, now: &Run) -> Result<()> {
        self.field(id, field::TAG, was.map(|run| &run.tag), &now.tag)?;
        self.field(id, field::CABLE, was.map(|run| &run.cable), &now.cable)?;
        self.field(id, field::LENGTH, was.map(|run| &run.length), &now.length)?;
        self.field(id, field::CONNECTOR_NEAR, was.map(|run| &run.connector_near), &now.connector_near)?;
        self.field(id, field::CONNECTOR_FAR, was.map(|run| &run.connector_far), &now.connector_far)
    }

    fn room(&mut self, id: SubjectId, was: Option<&Room>, now: &Room) -> Result<()> {
        self.field(id, field::NAME, was.map(|room| &room.name), &now.name)?;
        self.field(id, field::WISH, was.map(|room| &room.wish), &now.wish)?;
        if was.map(|room| room.served_from) != Some(now.served_from) {
            self.edits.push(Edit::new(id, field::SERVED_FROM, json!(now.served_from)));
        }
        Ok(())
    }
}
